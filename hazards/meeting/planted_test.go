package meeting

import (
	"fmt"
	"strings"
	"testing"

	"etchbound/hazards/route"
	"etchbound/schemas/columns"
)

// planted is one of each pair of the table: two that are put in one after the other, in
// a place of some material. P is the powder of the route.
var planted = []struct{ id, wall, first, then string }{
	{"not_held", "PTFE", "substance: florbide, not_held: true, mass: 1 g", "water"},
	{"not_held_alone", "PTFE", "substance: florbide, not_held: true, mass: 1 g", ""},
	{"oxidant_organic", "PTFE", "ethanol", "hydrogen peroxide, strength: 10 wt%"},
	{"oxidant_organic", "PTFE", "dmf", "potassium permanganate"},
	{"nitric_organic", "PTFE", "methanol", "nitric acid, strength: 65 wt%"},
	{"acid_fluoride_salt", "PTFE", "lithium fluoride", "hydrochloric acid, strength: 20 wt%"},
	{"acid_bifluoride", "PTFE", "ammonium bifluoride", "hydrochloric acid, strength: 20 wt%"},
	{"hf_glass", "glass", "hydrofluoric acid, strength: 5 wt%", ""},
	{"hf_glass", "quartz", "sodium fluoride", "hydrochloric acid, strength: 5 wt%"},
	{"acid_powder", "PTFE", "hydrofluoric acid, strength: 5 wt%", "P"},
	{"hf_ammonia", "PTFE", "hydrofluoric acid, strength: 5 wt%", "ammonia, strength: 5 wt%"},
	{"carbonate_acid", "PTFE", "calcium carbonate", "hydrochloric acid, strength: 5 wt%"},
	{"base_ammonium", "PTFE", "ammonium chloride", "sodium hydroxide, strength: 5 wt%"},
	{"base_powder", "PTFE", "P", "tmaoh, strength: 25 wt%"},
	{"calcium_hf", "PTFE", "hydrofluoric acid, strength: 5 wt%", "calcium chloride"},
	{"oxidant_powder", "PTFE", "P", "ammonium persulfate"},
	{"peroxide_powder", "PTFE", "P", "hydrogen peroxide, strength: 10 wt%"},
	{"persulfate_chloride", "PTFE", "ammonium persulfate", "lithium chloride"},
	{"persulfate_base", "PTFE", "ammonium persulfate", "sodium hydroxide, strength: 5 wt%"},
	{"persulfate_ammonia", "PTFE", "ammonium persulfate", "ammonia, strength: 5 wt%"},
	{"persulfate_acid", "PTFE", "ammonium persulfate", "sulfuric acid, strength: 50 wt%"},
	{"hypochlorite_acid", "PTFE", "sodium hypochlorite, strength: 5 wt%", "hydrochloric acid, strength: 5 wt%"},
	{"hypochlorite_ammonium", "PTFE", "sodium hypochlorite, strength: 5 wt%", "ammonium fluoride"},
	{"hypochlorite_ammonia", "PTFE", "sodium hypochlorite, strength: 5 wt%", "ammonia, strength: 5 wt%"},
	{"dmso_acid", "PTFE", "dmso", "hydrochloric acid, strength: 5 wt%"},
	{"dmso_chloride", "PTFE", "dmso", "lithium chloride"},
	{"dmso_base", "PTFE", "dmso", "tmaoh, strength: 25 wt%"},
	{"dmso_nitric", "PTFE", "dmso", "nitric acid, strength: 65 wt%"},
	{"dmso_perchloric", "PTFE", "dmso", "substance: perchloric acid, not_held: true, mass: 1 g"},
	{"azide_acid", "PTFE", "substance: sodium azide, not_held: true, mass: 1 g", "hydrochloric acid, strength: 5 wt%"},
	{"cyanide_acid", "PTFE", "substance: potassium cyanide, not_held: true, mass: 1 g", "nitric acid, strength: 5 wt%"},
	{"acid_metal_can", "aluminium", "hydrochloric acid, strength: 5 wt%", ""},
	{"acid_metal_can", "stainless steel", "hydrofluoric acid, strength: 5 wt%", ""},
	{"base_aluminium_wall", "aluminium", "sodium hydroxide, strength: 5 wt%", ""},
	{"fluoride_foil", "aluminium foil", "lithium fluoride", ""},
	{"acid_loose_powder", "PTFE", "aluminium", "hydrochloric acid, strength: 5 wt%"},
	{"base_loose_powder", "PTFE", "aluminium", "sodium hydroxide, strength: 5 wt%"},
	{"nitric_chloride", "PTFE", "hydrochloric acid, strength: 20 wt%", "nitric acid, strength: 65 wt%"},
	{"nitric_hf", "PTFE", "hydrofluoric acid, strength: 20 wt%", "nitric acid, strength: 65 wt%"},
	{"nitric_sulfuric", "PTFE", "sulfuric acid, strength: 96 wt%", "nitric acid, strength: 65 wt%"},
	{"oxidiser_hydrochloric", "PTFE", "hydrochloric acid, strength: 20 wt%", "potassium permanganate"},
	{"peroxide_sulfuric", "PTFE", "sulfuric acid, strength: 96 wt%", "hydrogen peroxide, strength: 30 wt%"},
	{"peroxide_alone", "PTFE", "hydrogen peroxide, strength: 10 wt%", ""},
	{"persulfate_alone", "PTFE", "sodium persulfate", ""},
	{"hypochlorite_alone", "PTFE", "sodium hypochlorite, strength: 5 wt%", ""},
	{"formic_alone", "PTFE", "formic acid, strength: 98 wt%", ""},
	{"nitric_alone", "PTFE", "nitric acid, strength: 60 wt%", ""},
	{"nitric_alone", "PTFE", "nitric acid, strength: 58 (55 to 61) wt%", ""},
	{"nitric_alone", "PTFE", "nitric acid, strength: 13 mol/L", ""},
	{"dry_ice_alone", "PTFE", "dry ice", ""},
	{"sulfuric_carbon_monoxide", "PTFE", "formic acid, strength: 90 wt%", "sulfuric acid, strength: 96 wt%"},
	{"sulfuric_carbon_monoxide", "PTFE", "oxalic acid", "sulfuric acid, strength: 96 wt%"},
	{"sulfite_acid", "PTFE", "sodium sulfite", "hydrochloric acid, strength: 5 wt%"},
	{"sulfite_acid", "PTFE", "sodium thiosulfate", "hydrofluoric acid, strength: 5 wt%"},
	{"hydrazine_oxidant", "PTFE", "hydrazine monohydrate", "hydrogen peroxide, strength: 10 wt%"},
	{"hydrazine_acid", "PTFE", "hydrazine monohydrate", "hydrochloric acid, strength: 20 wt%"},
	{"peroxide_ketone", "PTFE", "hydrogen peroxide, strength: 10 wt%", "acetone"},
	{"base_halocarbon", "PTFE", "substance: chloroform, not_held: true, mass: 1 g", "tmaoh, strength: 25 wt%"},
	{"ammonium_nitrite", "PTFE", "ammonium chloride", "substance: sodium nitrite, not_held: true, mass: 1 g"},
	{"silver_ammonia", "PTFE", "silver chloride", "ammonia, strength: 5 wt%"},
	{"sulfuric_chloride", "PTFE", "lithium chloride", "sulfuric acid, strength: 96 wt%"},
	{"chelate_calcium", "PTFE", "oxalic acid", "calcium hydroxide"},
	{"carbide_water", "PTFE", "aluminium carbide", "water"},
	{"silicon_hf", "PTFE", "silicon carbide", "hydrofluoric acid, strength: 5 wt%"},
	{"silica_hf", "PTFE", "silicon dioxide", "hydrofluoric acid, strength: 5 wt%"},
	{"sulfuric_hf", "PTFE", "hydrofluoric acid, strength: 5 wt%", "sulfuric acid, strength: 96 wt%"},
	{"sulfuric_permanganate", "PTFE", "potassium permanganate", "sulfuric acid, strength: 96 wt%"},
	{"permanganate_peroxide", "PTFE", "potassium permanganate", "hydrogen peroxide, strength: 10 wt%"},
	{"peroxide_metal_salt", "PTFE", "copper(II) chloride", "hydrogen peroxide, strength: 10 wt%"},
	{"dmso_hydride", "PTFE", "dmso", "substance: sodium borohydride, not_held: true, mass: 1 g"},
	{"dmso_acid_chloride", "PTFE", "dmso", "substance: acetyl chloride, not_held: true, mass: 1 g"},
	{"dmso_drying_oxide", "PTFE", "dmso", "substance: phosphorus pentoxide, not_held: true, mass: 1 g"},
	{"dmso_perchlorate", "PTFE", "dmso", "substance: silver perchlorate, not_held: true, mass: 1 g"},
	{"amide_oxidant", "PTFE", "nmp", "hydrogen peroxide, strength: 10 wt%"},
	{"amide_halocarbon", "PTFE", "dmf", "substance: carbon tetrachloride, not_held: true, formula: CCl4, mass: 1 g"},
	{"amide_hydride", "PTFE", "dmf", "substance: sodium hydride, not_held: true, mass: 1 g"},
	{"hydride_water", "PTFE", "substance: lithium aluminium hydride, not_held: true, mass: 1 g", "water"},
	{"hydride_acid", "PTFE", "substance: sodium borohydride, not_held: true, mass: 1 g", "acetic acid, strength: 5 wt%"},
	{"metal_water", "PTFE", "substance: sodium metal, not_held: true, mass: 1 g", "water"},
	{"metal_acid", "PTFE", "substance: lithium metal, not_held: true, mass: 1 g", "acetic acid, strength: 5 wt%"},
	{"acid_chloride_water", "PTFE", "aluminium chloride", "water"},
	{"drying_oxide_water", "PTFE", "substance: phosphorus pentoxide, not_held: true, mass: 1 g", "water"},
	{"halocarbon_powder", "PTFE", "P", "substance: dichloromethane, not_held: true, mass: 1 g"},
	{"halocarbon_metal", "PTFE", "substance: sodium metal, not_held: true, mass: 1 g",
		"substance: chloroform, not_held: true, mass: 1 g"},
	{"ketone_halogen", "PTFE", "acetone", "bromine"},
	{"ketone_hypochlorite", "PTFE", "acetone", "sodium hypochlorite, strength: 5 wt%"},
	{"ketone_nitric", "PTFE", "acetone", "nitric acid, strength: 65 wt%"},
	{"azide_alone", "PTFE", "substance: sodium azide, not_held: true, mass: 1 g", ""},
	{"cyanide_alone", "PTFE", "substance: potassium cyanide, not_held: true, mass: 1 g", ""},
	{"nitrite_acid", "PTFE", "substance: sodium nitrite, not_held: true, mass: 1 g", "hydrochloric acid, strength: 5 wt%"},
	{"sulfite_oxidant", "PTFE", "sodium sulfite", "hydrogen peroxide, strength: 10 wt%"},
	{"perchloric_organic", "PTFE", "ethanol", "substance: perchloric acid, not_held: true, mass: 1 g"},
	{"perchloric_powder", "PTFE", "P", "substance: perchloric acid, not_held: true, mass: 1 g"},
	{"perchlorate_organic", "PTFE", "ethanol", "substance: lithium perchlorate, not_held: true, mass: 1 g"},
	{"ether_old", "PTFE", "tetrahydrofuran", ""},
	{"lime_water", "PTFE", "calcium oxide", "water"},
	{"silicon_phase_hf", "Ti3SiC2", "P", "hydrofluoric acid, strength: 5 wt%"},
	{"sulfide_phase_acid", "Ti2SC", "P", "hydrofluoric acid, strength: 5 wt%"},
	{"phosphide_phase_acid", "V2PC", "P", "hydrofluoric acid, strength: 5 wt%"},
	{"phosphide_phase_acid", "V2AsC", "P", "hydrochloric acid, strength: 5 wt%"},
	{"melt_water", "melt", "lithium chloride", "water"},
	{"hydrazine_metal_salt", "PTFE", "hydrazine monohydrate", "copper(II) chloride"},
	{"halogen_ammonia", "PTFE", "bromine", "ammonia, strength: 5 wt%"},
	{"halogen_alcohol", "PTFE", "bromine", "ethanol"},
	{"oxidant_loose_powder", "PTFE", "aluminium", "potassium permanganate"},
	{"chloride_current", "current", "ammonium chloride", "water"},
	{"chloride_current_acid", "current", "ammonium chloride", "hydrochloric acid, strength: 5 wt%"},
}

// Each pair of the table is planted in a route and meets there, in the step that brings
// the second of it (own chemistry of the rows).
func TestEachPairIsFoundWhereItIsPlanted(t *testing.T) {
	seen := map[string]bool{}
	for _, c := range planted {
		seen[c.id] = true
		all := Of(plantedRoute(t, c.wall, c.first, c.then))
		found := false
		for i := range Pairs() {
			if p := &Pairs()[i]; p.ID == c.id {
				step, met := all[0].Meets(p)
				found = met && (c.then == "" || step >= 2)
			}
		}
		if !found {
			t.Errorf("%s does not meet: %q, then %q in %s: tags %v", c.id, c.first, c.then, c.wall, all[0].Tags)
		}
	}
	for i := range Pairs() {
		if !seen[Pairs()[i].ID] {
			t.Errorf("no route of this test plants %s", Pairs()[i].ID)
		}
	}
}

// plantedRoute puts one thing in after the other. wall names a layered phase instead, or
// that a current flows.
func plantedRoute(t *testing.T, wall, first, then string) *route.Route {
	t.Helper()
	phase, more := "Ti3AlC2", ""
	switch {
	case wall == "melt":
		wall, more = "PTFE", "  - {do: add, in: pot, what: ["+put(then)+"], over: 10 min, temperature: 400 degC}\n"
		text := "  - {do: melt, in: pot, what: [" + put(first) + "], time: 1 h, temperature: 600 degC}\n"
		first, then, more = "", "", text+more
	case wall == "current":
		wall, more = "PTFE", "  - {do: electrolyse, in: pot, current: 1 A, time: 1 h, temperature: 20 degC}\n"
	case strings.HasPrefix(wall, "Ti") && wall != "Ti", strings.HasPrefix(wall, "V2"):
		wall, phase = "PTFE", wall
	}
	text := "route: etchbound/1\ntitle: check\nbasis: {status: invented}\n"
	if first == "P" || then == "P" || more != "" {
		text += fmt.Sprintf("precursor: {phase: %s, mass: 1 g, purity: 0.9 g/g}\n", phase)
	}
	text += fmt.Sprintf("places:\n  pot: {kind: vessel, material: %s, capacity: 1 L, closure: vented}\nsteps:\n", wall)
	for _, what := range []string{first, then} {
		if what != "" {
			text += "  - {do: add, in: pot, what: [" + put(what) + "], over: 10 min, temperature: 20 degC}\n"
		}
	}
	r, problems, err := route.Load("r.yaml", strings.NewReader(text+more))
	if err != nil || len(problems) > 0 {
		t.Fatal(err, problems, text)
	}
	return r
}

// put is what is put in, as a route writes it.
func put(what string) string {
	switch name, more, strong := strings.Cut(what, ", strength"); {
	case what == "P":
		return "precursor"
	case strings.HasPrefix(what, "substance:"):
		return "{" + what + "}"
	case strong:
		return "{substance: " + name + ", volume: 10 mL, strength" + more + "}"
	default:
		return "{substance: " + name + ", mass: 10 g}"
	}
}

// A pair of a tag that nothing can bring into a place would never meet: it is a fault of its
// row, that names the column.
func TestATagThatNothingBringsIsAFault(t *testing.T) {
	const head = "id,a,b,mixed,pair,result,severity,gas,meant,judged,source,status\n"
	for tags, want := range map[string]string{"acid,strong_base": "", "powder:Si|S,water": "", "nitric,does:sonicate": "",
		"acid+water,wall:steel": "", "acid,base": `"base"`, "fluoride,acid": `"fluoride"`, "acid+hfl,water": `"hfl"`} {
		_, err := columns.Read("pairs", head+"x,"+tags+",,a pair,what it gives,2,none,,,own,memory\n", pairOf)
		if said := fmt.Sprint(err); want == "" && err != nil || !strings.Contains(said, want) {
			t.Errorf("%s: %v", tags, err)
		}
	}
}
