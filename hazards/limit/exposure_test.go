package limit_test

import (
	"math"
	"slices"
	"testing"

	"etchbound/hazards/limit"
	"etchbound/schemas/nearly"
)

func exposure(t *testing.T, id string) *limit.Exposure {
	t.Helper()
	for _, e := range limit.Exposures() {
		if e.ID == id {
			return &e
		}
	}
	t.Fatal("no limit " + id)
	return nil
}

// Values as printed in the documents of each row: 29 CFR 1910.1000, the NIOSH
// pages and profiles, the TLV booklet, Directive 2000/39/EC, EH40/2005, TRGS 900.
func TestExposureValues(t *testing.T) {
	for _, c := range []struct {
		id             string
		value, average float64
	}{
		{"us_osha_hf_twa", 3, 480}, {"us_niosh_hf_twa", 3, 600}, {"us_niosh_hf_c", 6, 15}, {"us_acgih_hf_twa", 0.5, 480},
		{"us_acgih_hf_c", 2, 0},
		{"eu_hf_twa", 1.8, 480}, {"eu_hf_15min", 3, 15}, {"de_hf_twa", 1, 480}, {"idlh_hf", 30, 0},
		{"us_osha_hcl_c", 5, 0}, {"us_acgih_hcl_c", 2, 0}, {"eu_hcl_twa", 5, 480}, {"eu_hcl_15min", 10, 15},
		{"idlh_hcl", 45, 0},
		{"us_osha_ammonia_twa", 50, 480}, {"eu_ammonia_twa", 20, 480}, {"idlh_ammonia", 300, 0},
		{"us_niosh_hydrazine_2h", 0.03, 120}, {"us_osha_hydrazine_twa", 1, 480}, {"idlh_hydrazine", 50, 0},
	} {
		if e := exposure(t, c.id); e.Value != c.value || e.Average != c.average {
			t.Errorf("%s is %g ppm over %g min, want %g over %g", c.id, e.Value, e.Average, c.value, c.average)
		}
	}
}

// Twelve minutes against 8 hours, 15 minutes and a ceiling.
func TestAveraging(t *testing.T) {
	for _, c := range []struct {
		id            string
		minutes, want float64
	}{
		{"us_osha_hf_twa", 12, 120}, {"us_niosh_hf_c", 12, 7.5}, {"us_acgih_hf_c", 12, 2}, {"us_osha_hf_twa", 600, 3},
		{"us_osha_hf_twa", math.NaN(), 3},
	} {
		if got := exposure(t, c.id).Allowed(c.minutes); !nearly.To(got, c.want, 1e-12) {
			t.Errorf("%s for %g min: %g ppm, want %g", c.id, c.minutes, got, c.want)
		}
	}
}

// Final AEGLs (2004 and 2009). Between 30 min and 4 h those of HF follow a
// constant C^2 t; at 12 min the value for 30 min counts.
func TestAEGL(t *testing.T) {
	for _, c := range []struct {
		agent         string
		tier          int
		minutes, want float64
	}{
		{"hf", 2, 10, 95}, {"hf", 2, 12, 34}, {"hf", 3, 5, 170}, {"hf", 3, 30, 62}, {"hf", 3, 60, 44}, {"hf", 3, 240, 22},
		{"hf", 3, 300, 22}, {"hf", 3, 480, 22},
		{"hf", 3, 120, 44 / math.Sqrt2}, {"hcl", 2, 60, 22}, {"hcl", 2, 120, 11}, {"ammonia", 3, 61, 550},
	} {
		got, ok := limit.AEGL(c.agent, c.tier, c.minutes)
		if !ok || !nearly.Share(got.Value, c.want, 0.01) {
			t.Errorf("AEGL-%d of %s for %g min: %g (%v), want %g", c.tier, c.agent, c.minutes, got.Value, ok, c.want)
		}
	}
	if v, ok := limit.AEGL("hf", 3, 481); ok {
		t.Errorf("beyond eight hours: %g", v.Value)
	}
}

// A series of emergency levels is of one agent and one tier, and every level is of one.
func TestEmergencyLevelsAreOfOneSeries(t *testing.T) {
	type of struct {
		agent string
		tier  int
	}
	series, agents := map[string]of{}, map[of]string{}
	for _, e := range limit.Exposures() {
		if e.Kind != limit.Emergency || e.Series == "" && e.Tier != 2 { // of a gas that counts as another: tier 2 alone
			continue
		}
		k := of{e.Agent, e.Tier}
		if was, there := series[e.Series]; e.Series == "" || there && was != k || agents[k] != "" && agents[k] != e.Series {
			t.Errorf("%s is of the series %q, which is of %v", e.ID, e.Series, was)
		}
		series[e.Series], agents[k] = k, e.Series
	}
	if len(series) < 9 {
		t.Errorf("%d series", len(series))
	}
}

func TestWhichLimitsHold(t *testing.T) {
	has := func(agent, jurisdiction, id string) bool {
		for _, e := range limit.ExposureAt(agent, jurisdiction) {
			if e.ID == id {
				return true
			}
		}
		return false
	}
	for _, c := range []struct {
		jurisdiction, id string
		want             bool
	}{
		{"eu", "eu_hf_twa", true}, {"eu", "us_osha_hf_twa", false}, {"eu", "idlh_hf", true},
		{"us_california", "us_osha_hf_twa", true},
		{"us", "us_california_hf_twa", false}, {"", "uk_hf_twa", true}, {"", "de_hf_twa", true},
	} {
		if got := has("hf", c.jurisdiction, c.id); got != c.want {
			t.Errorf("%q and %s: %v", c.jurisdiction, c.id, got)
		}
	}
}

func TestExposureRowsAreWhole(t *testing.T) {
	for _, e := range limit.Exposures() {
		if e.Document == "" || e.Status == "" || !(e.Value > 0) || e.Agent == "" {
			t.Errorf("%+v", e)
		}
		if e.Kind == limit.Work && e.Jurisdiction == "" {
			t.Errorf("%s holds as law everywhere", e.ID)
		}
	}
}

// Leaving the jurisdiction out never loses a limit that one of them would give, and
// the strictest of an averaging time still stands first.
func TestNoJurisdictionHoldsWhatEveryOneDoes(t *testing.T) {
	for _, agent := range []string{"hf", "hcl", "ammonia", "carbon_dioxide"} {
		all := limit.Strictest(agent, "")
		first := map[float64]float64{}
		for _, e := range all {
			if v, there := first[e.Average]; there && e.Kind != limit.Escape && !(v <= e.Value) {
				t.Errorf("%s over %g min: %g ppm stands before %g", agent, e.Average, v, e.Value)
			} else if !there && e.Kind != limit.Escape {
				first[e.Average] = e.Value
			}
		}
		for _, at := range []string{"us", "us_california", "eu", "uk", "de"} {
			for _, e := range limit.Strictest(agent, at) {
				if !slices.ContainsFunc(all, func(x limit.Exposure) bool { return x.ID == e.ID }) {
					t.Errorf("%s at %s is held to %s, and not where no jurisdiction is stated", agent, at, e.ID)
				}
			}
		}
	}
}

// Limits added beside those of HF, HCl and ammonia: by mass they become ppm at 20 degC
// (1 mg/m3 of H2SO4, 98.08 g/mol: 0.245 ppm; 2.5 mg/m3 as F, 19.00 g/mol: 3.17 ppm),
// SiF4 counts as four HF (3/4 ppm) and SiCl4 as four HCl, California has its own HCl
// (8 CCR 5155: 0.3 ppm, sixteen times below the 5 ppm elsewhere).
func TestLimitsOfOtherAgents(t *testing.T) {
	for _, c := range []struct {
		id, agent      string
		value, average float64
	}{
		{"us_california_hcl_twa", "hcl", 0.3, 480}, {"us_california_ammonia_15min", "ammonia", 35, 15},
		{"us_osha_hf_twa_for_silicon_tetrafluoride", "silicon_tetrafluoride", 0.75, 480},
		{"idlh_hcl_for_silicon_tetrachloride", "silicon_tetrachloride", 11.25, 0},
		{"us_osha_sulfuric_acid_twa", "sulfuric_acid", 0.24526, 480}, {"us_osha_fluorides_twa", "fluoride", 3.1655, 480},
		{"us_osha_isopropanol_twa", "isopropanol", 400, 480}, {"de_mak_dmso_twa", "dmso", 50, 480},
		// from memory, stricter at their site than what holds everywhere: 0.1 mg/m3 of H2SO4 are 0.0245 ppm
		{"us_california_sulfuric_acid_twa", "sulfuric_acid", 0.024526, 480}, {"uk_nitric_acid_15min", "nitric_acid", 1, 15},
		{"us_california_nitrogen_dioxide_15min", "nitrogen_dioxide", 1, 15}, {"uk_nmp_twa", "nmp", 10, 480},
		{"us_osha_hydrazine_twa_for_hydrazine_monohydrate", "hydrazine_monohydrate", 1, 480}, // one N2H4 of each
	} {
		if e := exposure(t, c.id); e.Agent != c.agent || !nearly.Share(e.Value, c.value, 1e-3) || e.Average != c.average {
			t.Errorf("%s: %+v, want %+v", c.id, e, c)
		}
	}
	for _, agent := range []string{"silicon_tetrafluoride", "silicon_tetrachloride", "chlorine", "fluoride",
		"sulfuric_acid", "nitric_acid", "nitrogen_dioxide", "hydrogen_peroxide", "arsine", "phosphine",
		"hydrogen_sulfide", "isopropanol", "acetone", "dmf", "nmp", "dmso", "hydrazine_monohydrate"} {
		for _, site := range []string{"", "us", "us_california", "eu", "uk", "de"} {
			if len(limit.Strictest(agent, site)) == 0 && !(agent == "nmp" && site == "us") { // none is known of it there
				t.Errorf("no limit is held for %s at %q", agent, site)
			}
		}
	}
	if len(limit.Strictest("tmaoh", "")) > 0 {
		t.Error("a limit of TMAOH is held, of which none is known")
	}
}
