package failures

import (
	"etchbound/reports/aid"
	"etchbound/reports/draft"
)

// builder is a review on its way to these pages.
type builder struct {
	*draft.Draft
	*aid.Aid
}

func from(d *draft.Draft) *builder { return &builder{d, aid.Of(d)} }
