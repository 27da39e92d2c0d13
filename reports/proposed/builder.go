package proposed

import (
	"etchbound/hazards"
	"etchbound/reports/draft"
)

// builder is a review on its way to these pages.
type builder struct{ *draft.Draft }

func newBuilder(r *hazards.Review, o draft.Options) *builder { return &builder{draft.New(r, o)} }
