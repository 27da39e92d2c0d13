package holdings

import (
	"encoding/csv"
	"io"
	"strings"

	"etchbound/chemicals/working"
	"etchbound/hazards/stock"
	"etchbound/reports/number"
	"etchbound/reports/record"
	"etchbound/reports/words"
	"etchbound/scaling"
)

// Columns are those of an inventory as safety officers keep it, then what the routes need,
// which is no stock, and what of it has a threshold. Every number is in the unit that its
// column names.
var Columns = []string{"chemical_name", "cas", "physical_state", "concentration_wt_percent", "container_kg",
	"container_type", "container_count", "maximum_on_hand_kg", "average_on_hand_kg", "hazard_class", "signal_word",
	"storage_group", "building", "room", "cabinet", "owner", "telephone", "date", "sds_on_file", "waste_stream",
	"pure_mass_of_stock_kg", "computed_need_largest_run_kg", "computed_need_one_run_of_each_kg", "nearest_threshold",
	"threshold_share_percent", "threshold_shares", "missing"}

// CSV writes what a site holds and its routes need, one entry of the stock or one
// substance a row, for an inventory. Columns that only people can fill are there and
// empty. What is of the substance stands in its first row only.
func CSV(w io.Writer, h *scaling.Holdings) error {
	c := csv.NewWriter(w)
	c.Write(Columns)
	for i := range h.Substances {
		s := &h.Substances[i]
		once := ofSubstance(s)
		for j := range s.Bottles {
			c.Write(append(entry(s, &s.Bottles[j]), once...))
			once = make([]string, len(once))
		}
		if len(s.Bottles) == 0 {
			c.Write(append(entry(s, nil), once...))
		}
	}
	c.Flush()
	return c.Error()
}

// entry is a row of the stock; of a substance that has none only what it is.
func entry(s *stock.Holding, x *stock.Bottle) []string {
	head := []string{record.Guard(s.Name), record.Guard(s.CAS), record.Guard(stateWord(s, x))}
	tail := []string{"", "", "", "", "", "", "", ""}
	if x == nil {
		return append(append(head, "", "", "", "", "", "", "", "", ""), tail...)
	}
	return append(append(head, percent(x.Strength), kg(x.Each), "", kg(x.Count), kg(x.Whole), "",
		strings.Join(x.Classes, " "), record.Guard(x.Signal), record.Guard(strings.Join(x.Groups, "; "))), tail...)
}

// ofSubstance is what is told of a substance once: masses, and its shares of thresholds. What is
// of a release stands among them; it is the nearest only where none is of what is held.
func ofSubstance(s *stock.Holding) []string {
	name, most, released := "", working.Absent("x", "1"), true
	var all []string
	for i := range s.Shares {
		x := &s.Shares[i]
		share := words.Of("value.unknown")
		if !x.Ratio.Unknown() {
			share = percent(x.Ratio) + " %"
		}
		all = append(all, x.Threshold.ID+" "+share)
		of := x.Threshold.Release()
		more := !most.Unknown() && (x.Ratio.Unknown() || x.Ratio.V > most.V)
		if name == "" || released && !of || released == of && more {
			name, most, released = x.Threshold.ID, x.Ratio, of
		}
	}
	return []string{kg(s.Stock.Mid), kg(s.Largest.Mid), kg(s.Sum.Mid), record.Guard(name), percent(most),
		record.Guard(strings.Join(all, "; ")), record.Guard(fewOf(missingOf(s)))}
}

func missingOf(s *stock.Holding) []string {
	return append(words.Names(s.Stock.Mid.Missing()), words.Names(s.Sum.Mid.Missing())...)
}

func percent(n working.Num) string {
	if n.Unknown() {
		return ""
	}
	return record.Shortest(number.Round9(100 * n.V))
}

// stateWord is how the substance is kept.
func stateWord(s *stock.Holding, x *stock.Bottle) string {
	switch {
	case x != nil && x.Stock.Strength.Set:
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
