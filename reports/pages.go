package reports

import (
	"io"

	"etchbound/chemicals"
	"etchbound/hazards"
	"etchbound/reports/book"
	"etchbound/reports/change"
	"etchbound/reports/comparison"
	"etchbound/reports/failures"
	"etchbound/reports/growth"
	"etchbound/reports/holdings"
	"etchbound/reports/proposed"
	"etchbound/reports/record"
	"etchbound/scaling"
	"etchbound/scaling/levers"
)

// JSON writes a review for programs.
func JSON(w io.Writer, r hazards.Review, o Options) error { return record.JSON(w, r, o) }

// CSV writes the figures of a review, one a row.
func CSV(w io.Writer, r hazards.Review) error { return record.CSV(w, r) }

// Explain writes how one figure was made, down to data and to what the route states.
func Explain(w io.Writer, r hazards.Review, figureID string) error {
	return book.Explain(w, r, figureID)
}

// WriteData writes the rows of data about an id, a beginning of ids or a substance.
func WriteData(w io.Writer, st *chemicals.Store, query string) error {
	return book.WriteData(w, st, query)
}

// OnlyUpset is a review with nothing but the figures of failures, what they are held
// against, and the lines under them.
func OnlyUpset(r hazards.Review) hazards.Review { return failures.Only(r) }

// BuildGrowth lays out what becomes of a route as its batch grows.
func BuildGrowth(g *scaling.Growth, s scaling.Split, o Options) Document {
	return growth.Build(g, s, o)
}

// GrowthJSON writes a growing route for programs.
func GrowthJSON(w io.Writer, g *scaling.Growth, s scaling.Split, o Options) error {
	return growth.JSON(w, g, s, o)
}

// GrowthCSV writes the batches at which findings turn, one a row.
func GrowthCSV(w io.Writer, g *scaling.Growth) error { return growth.CSV(w, g) }

// BuildComparison lays out routes side by side.
func BuildComparison(c scaling.Comparison, o Options) Document { return comparison.Build(c, o) }

// CompareJSON writes a comparison for programs.
func CompareJSON(w io.Writer, c scaling.Comparison, o Options) error { return comparison.JSON(w, c, o) }

// CompareCSV writes a comparison, one value a row.
func CompareCSV(w io.Writer, c scaling.Comparison) error { return comparison.CSV(w, c) }

// BuildChange lays out what a proposed route changes of a reviewed one.
func BuildChange(c scaling.Change, o Options) Document { return change.Build(c, o) }

// ChangeJSON writes a change for programs.
func ChangeJSON(w io.Writer, c scaling.Change, o Options) error { return change.JSON(w, c, o) }

// ChangeCSV writes a change as rows: rules that fire, inputs, figures, verdicts.
func ChangeCSV(w io.Writer, c scaling.Change) error { return change.CSV(w, c) }

// MetAt says where a rule is met, what is no longer known or which hold point is new.
func MetAt(m *scaling.Met) string { return change.MetAt(m) }

// BuildStock lays out what a site holds and what one run of every route takes.
func BuildStock(h *scaling.Holdings, o Options) Document { return holdings.Build(h, o) }

// StockJSON writes holdings for programs.
func StockJSON(w io.Writer, h *scaling.Holdings, o Options) error { return holdings.JSON(w, h, o) }

// HoldingsCSV writes what a site holds and its routes need, for an inventory.
func HoldingsCSV(w io.Writer, h *scaling.Holdings) error { return holdings.CSV(w, h) }

// BuildProposal lays out what would have to change of a route.
func BuildProposal(f *levers.Found, o Options) Document { return proposed.Build(f, o) }

// ProposalJSON writes what would have to change of a route for programs.
func ProposalJSON(w io.Writer, f *levers.Found, o Options) error { return proposed.JSON(w, f, o) }
