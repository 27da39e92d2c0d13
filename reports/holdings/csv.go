package holdings

import (
	"encoding/csv"
	"io"

	"etchbound/chemicals/working"
	"etchbound/hazards/route"
	"etchbound/reports/record"
	"etchbound/reports/words"
	"etchbound/scaling"
)

// Columns are those of an inventory as safety officers keep it, then
// what the routes need, which is no stock.
var Columns = []string{"chemical_name", "concentration", "concentration_unit", "cas", "amount_per_container",
	"unit", "container_type", "container_count",
	"maximum_on_hand", "maximum_unit", "average_on_hand", "average_unit", "physical_state", "hazard_class", "building",
	"room", "cabinet", "owner", "telephone", "date",
	"sds_on_file", "waste_stream", "storage_group", "pure_mass_of_stock", "computed_need_largest_run",
	"computed_need_one_run_of_each", "mass_unit", "missing"}

// CSV writes what a site holds and its routes need, one bottle or
// substance a row, for an inventory. Columns that only people can fill are
// there and empty. The pure masses stand in the first row of a substance.
func CSV(w io.Writer, h *scaling.Holdings) error {
	c := csv.NewWriter(w)
	c.Write(Columns)
	for i := range h.Substances {
		s := &h.Substances[i]
		need := []string{kg(s.Stock.Mid), kg(s.Largest.Mid), kg(s.Sum.Mid), "kg", record.Guard(fewOf(missingOf(s)))}
		rows := 0
		if h.Site != nil {
			for j := range h.Site.Stock {
				if x := &h.Site.Stock[j]; x.Substance.CAS == s.CAS && s.CAS != "" {
					c.Write(append(inventoryRow(s, x), need...))
					need = []string{"", "", "", "", ""}
					rows++
				}
			}
		}
		if rows == 0 {
			c.Write(append(inventoryRow(s, &route.Stock{}), need...))
		}
	}
	c.Flush()
	return c.Error()
}

func missingOf(s *scaling.Holding) []string {
	return append(words.Names(s.Stock.Mid.Missing()), words.Names(s.Sum.Mid.Missing())...)
}

func inventoryRow(s *scaling.Holding, x *route.Stock) []string {
	held := record.FirstSet(x.Mass, x.Volume)
	return []string{record.Guard(s.Name), record.Bare(x.Strength), record.Guard(record.UnitWritten(x.Strength)),
		record.Guard(s.CAS), record.Bare(x.Bottle),
		record.Guard(record.UnitWritten(x.Bottle)), "", "",
		record.Bare(held), record.Guard(record.UnitWritten(held)), "", "", record.Guard(stateWord(s, x)), "", "", "", "",
		"", "", "", "", "", ""}
}

// stateWord is how the substance is kept.
func stateWord(s *scaling.Holding, x *route.Stock) string {
	switch {
	case x.Strength.Set:
		return words.Of("stock.state_l")
	case s.State == "s":
		return words.Of("stock.state_s")
	case s.State == "l":
		return words.Of("stock.state_l")
	}
	return ""
}

func kg(n working.Num) string {
	if n.Unknown() {
		return ""
	}
	return record.Shortest(n.V)
}
