package chemicals_test

import (
	"math"
	"testing"

	"etchbound/chemicals"
	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
)

var nan = math.NaN()

func TestOverride(t *testing.T) {
	base := chemicals.Base()
	st, applied, err := base.Override([]chemicals.Override{
		{ID: "etch_heat.Ti3AlC2", Value: 720, Low: 650, High: 790, Unit: "kJ/mol", Source: "calorimeter",
			At: "measured.etch_heat", From: "route"},
		{ID: "etch_heat.Ti3AlC2", Value: 740, Low: nan, High: nan, Source: "older", At: "data[0]", From: "site"},
		{ID: "etch_heat.Mo2Ga2C", Value: 500, Low: nan, High: nan, At: "data[1]", From: "site"},
		{ID: "electrons.In", Value: 3, Low: nan, High: nan, Source: "textbook", At: "data[0]", From: "route"},
	})
	if err != nil {
		t.Fatal(err)
	}
	// The site stands first in the list, the route stands in the store.
	if len(applied) != 4 || applied[0].Old != 760 || applied[0].From != "site" || applied[2].Old != 740 ||
		applied[0].OldStatus != "estimated" {
		t.Errorf("%+v", applied)
	}
	d, _ := st.Row("etch_heat.Ti3AlC2")
	if d.Value != 720 || d.Low != 650 || d.OverriddenBy != "route measured.etch_heat" || d.Old != 740 || !d.Swings() {
		t.Errorf("%+v", d)
	}
	if n := st.Num("etch_heat.Ti3AlC2"); n.Status != working.Known || n.V != 720 {
		t.Errorf("%v", n)
	}
	if n := st.Num("electrons.In"); n.Status != working.Known {
		t.Errorf("sourced override is %v", n)
	}
	if n := st.Num("etch_heat.Mo2Ga2C"); n.V != 500 || n.Status != working.Estimated || n.Unit != "kJ/mol" {
		t.Errorf("added without a source: %v", n)
	}
	if base.Num("etch_heat.Ti3AlC2").V != 760 || !base.Num("etch_heat.Mo2Ga2C").Unknown() {
		t.Error("the base store was changed")
	}
	if i, _ := st.Row("etch_heat.Mo2Ga2C"); st.With(map[int]float64{i.Index: 1}).Num("etch_heat.Mo2Ga2C").V != 1 {
		t.Error("an added row cannot be drawn")
	}
}

func TestOverrideRefuses(t *testing.T) {
	ok := chemicals.Override{ID: "etch_heat.Ti3AlC2", Value: 720, Low: nan, High: nan, From: "route"}
	for name, change := range map[string]func(*chemicals.Override){
		"no such id":         func(o *chemicals.Override) { o.ID = "wash.retained.accid" },
		"family without one": func(o *chemicals.Override) { o.ID = "etch_heat." },
		"not a number":       func(o *chemicals.Override) { o.Value = nan },
		"infinite":           func(o *chemicals.Override) { o.Value = math.Inf(1) },
		"other unit":         func(o *chemicals.Override) { o.Unit = "J/mol" },
		"one end":            func(o *chemicals.Override) { o.Low = 600 },
		"outside its range":  func(o *chemicals.Override) { o.Low, o.High = 730, 800 },
	} {
		o := ok
		change(&o)
		if _, _, err := chemicals.Base().Override([]chemicals.Override{o}); err == nil {
			t.Errorf("%s was taken", name)
		} else if _, alike := chemicals.Base().Takes(o); alike == nil || alike.Error() != err.Error() {
			t.Errorf("%s: refused for %v, asked first: %v", name, err, alike)
		}
	}
	if _, _, err := chemicals.Base().Override([]chemicals.Override{ok, ok}); err == nil {
		t.Error("the same id twice from one file was taken")
	}
	for id, unit := range map[datum.ID]string{ok.ID: "kJ/mol", "etch_heat.Zr2InC": "kJ/mol"} {
		o := ok
		o.ID = id
		if got, err := chemicals.Base().Takes(o); got != unit || err != nil {
			t.Errorf("%s is taken in %q: %v", id, got, err)
		}
	}
	if st, applied, err := chemicals.Base().Override(nil); err != nil || st != chemicals.Base() || applied != nil {
		t.Error("nothing to override is not nothing")
	}
}

// Stores are alike where they hold the same rows with the same values, however they were made.
func TestStoresAlike(t *testing.T) {
	with := func(v float64) *chemicals.Store {
		st, _, err := chemicals.Base().Override([]chemicals.Override{{ID: "room.temperature", Value: v, Low: math.NaN(),
			High: math.NaN(), At: "data", From: "route"}})
		if err != nil {
			t.Fatal(err)
		}
		return st
	}
	row, _ := with(22).Row("room.temperature")
	for _, x := range []struct {
		name string
		a, b *chemicals.Store
		want bool
	}{
		{"the tables", chemicals.Base(), chemicals.Base(), true},
		{"the same put in twice", with(22), with(22), true},
		{"another value", with(22), with(23), false},
		{"the tables and one put in", chemicals.Base(), with(22), false},
		{"one moved", with(22), with(22).With(map[int]float64{row.Index: 23}), false},
	} {
		if got := x.a.Alike(x.b); got != x.want {
			t.Errorf("%s: %v", x.name, got)
		}
	}
}
