package hazards_test

import (
	"slices"
	"testing"

	"etchbound/chemicals/datum"
	"etchbound/chemicals/working"
	"etchbound/hazards"
	"etchbound/hazards/ranges"
	"etchbound/schemas/long"
)

// looked are the data that a run may look at without a figure standing on them, each
// with the reason; elsewhere they stand on lines and are swung.
var looked = map[datum.ID]string{
	"conductivity.carbon_steel":  "compared, to find the wall that passes least heat: that one counts",
	"cake.heat.thick":            "looked up, and that of the phase itself counts",
	"storage.family.thick":       "looked up, and that of the phase itself counts",
	"dissolution_acid.NH4HF2(s)": "no strong acid is beside it, and another heat counts",
	"impurity.unstated":          "what the route states leaves nothing that nobody explained",
	"kinetics.activation":        "of a run that other data leave unknown",
	"kinetics.hold_share":        "of a run that other data leave unknown",
	"kinetics.metal_time":        "of a run that other data leave unknown",
	"kinetics.seed":              "of a run that other data leave unknown",
	"stirrer.power":              "compared, to see whether it can warm the liquor: it counts where it can",
	"room.temperature":           "of an exchange with the room that other data leave unknown",
	"wash.retained.acid":         "the route says how much its solid keeps",
	"wash.retained.swollen":      "the route says how much its solid keeps",
}

// Data with a range that a run reads stand on its sheet and so are swung, but for
// those that are listed.
func TestWhatIsReadWithARangeIsSwung(t *testing.T) {
	long.NotShort(t)
	for name, text := range bundledTexts(t) {
		c := newCase(t, load(t, text))
		c.Brief, c.Site = true, fullSite(t)
		st, reads := c.Store.Noting()
		w := working.NewSheet()
		c.Store = st
		if a := hazards.Assess(c, w); a.Err != nil {
			t.Fatal(name, a.Err)
		}
		on := map[datum.ID]bool{}
		for _, d := range ranges.Used(c.Store, w) {
			on[d.ID] = true
		}
		read := reads.Indices()
		for _, d := range st.Rows() {
			if d.Swings() && slices.Contains(read, d.Index) && !on[d.ID] && looked[d.ID] == "" {
				t.Errorf("%s reads %s, which is on no line", name, d.ID)
			}
		}
	}
}
