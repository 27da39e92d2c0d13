package reports

import (
	"etchbound/hazards"
	"etchbound/reports/aid"
	"etchbound/reports/draft"
)

// builder is one review on its way to its pages.
type builder struct {
	*draft.Draft
	*aid.Aid
}

func newBuilder(r *hazards.Review, o draft.Options) *builder {
	d := draft.New(r, o)
	return &builder{d, aid.Of(d)}
}
