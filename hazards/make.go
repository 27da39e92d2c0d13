package hazards

import (
	"etchbound/chemicals/working"
	"etchbound/hazards/alone"
	"etchbound/hazards/doubt"
	"etchbound/hazards/figure"
	"etchbound/hazards/incompatible"
	"etchbound/hazards/labelling"
	"etchbound/hazards/phrase"
	"etchbound/hazards/process"
	"etchbound/hazards/ranges"
	"etchbound/hazards/residue"
	"etchbound/hazards/rinsing"
	"etchbound/hazards/route"
	"etchbound/hazards/speciation"
	"etchbound/hazards/stock"
	"etchbound/hazards/storage"
	"etchbound/hazards/treating"
	"etchbound/hazards/verdict"
	"etchbound/hazards/wetted"
)

// Make reviews a case: the traced centre, the swings and corners that give
// each figure its range, then the verdicts. Err of the assessment is returned
// as it is.
func Make(c route.Case) (Review, error) {
	w := working.NewSheet()
	a := Assess(c, w)
	if a.Err != nil {
		return Review{Case: c}, a.Err
	}
	for i := range a.Figures {
		a.Figures[i].Value = w.Keep(a.Figures[i].Value)
	}
	used := ranges.Used(c.Store, w)
	swung := ranges.Set(c, used, &a)
	out := Review{Case: c, Sheet: w, Walk: a.Walk, Runs: a.Runs, Courses: a.Courses, Used: used, Applied: c.Applied,
		Tables: doubt.Tables(c.Store, w)}
	out.Assumptions = doubt.Assumptions(swung.Data, a.Figures, swung.Ends)
	out.Doubts = doubt.Count(used, out.Tables)
	out.Leads = swung.Leads
	out.Speciated = speciation.Read(c, w, &a.Walk, a.Figures)
	a.Figures = append(a.Figures, residue.Read(c, w, &a.Walk)...)
	a.Figures = append(a.Figures, incompatible.Read(c, w, &a.Walk)...)
	a.Figures = append(a.Figures, wetted.Read(c, w, &a.Walk)...)
	a.Figures = append(a.Figures, treating.PH(c, w, &a.Walk)...)
	a.Figures = append(a.Figures, alone.Read(c, w, &a.Walk, figure.NewSet(a.Figures))...)
	out.Held, out.Sums = stock.Of(&c, &a.Walk, figure.NewSet(a.Figures))
	for _, f := range stock.Figures(&c, out.Held, out.Sums) {
		f.Value = w.Keep(f.Value)
		a.Figures = append(a.Figures, f)
	}
	undissolved := rinsing.Widen(c, &a.Walk, a.Figures)
	storage.Widen(c, &a.Walk, a.Figures)
	verdict.WidenClasses(c, &a.Walk, a.Figures)
	out.Figures = verdict.Bare(verdict.WithoutTraces(a.Figures))
	out.Findings = verdict.Judge(c, out.Figures, &a.Walk)
	if !c.Brief {
		out.Treated, out.Rinsed = treated(c, &a.Walk, out.Figures, out.Leads), rinsing.Read(c, &a.Walk)
		out.Containers = treating.Containers(c, &a.Walk)
		out.Turns = swung.Turns(out.Findings)
	}
	out.NotAssessed = NotAssessed()
	out.Warnings = append(phrase.AsAll(c.Route.Notices), a.Warnings...)
	out.Warnings = append(append(out.Warnings, c.Limits.Notices...), undissolved...)
	if c.Site == nil || c.Site.Jurisdiction == "" {
		out.Warnings = append(out.Warnings, phrase.Of("warn.no_jurisdiction"))
	}
	for _, at := range swung.Away {
		n, _ := at.Step()
		out.Warnings = append(out.Warnings, phrase.Of("warn.runs_away", n))
	}
	out.Warnings = append(out.Warnings, tooCold(c)...)
	if c.Brief {
		out.Warnings = append(out.Warnings, phrase.Of("warn.brief"))
	}
	out.Unknown = doubt.Unknown(c.Route, out.Figures, a.Walk.Contacts)
	out.Unknown = append(out.Unknown, doubt.Unjudged(c.Route, out.Figures, &a.Walk)...)
	out.Holds = verdict.Holds(c.Route, &a.Walk, figure.NewSet(out.Figures), out.Findings)
	out.Labels = labelling.Of(c, &a.Walk, out.Figures)
	var err error
	out.Milder, err = milder(c, out.Findings)
	return out, err
}

// treated sets the agents side by side, and again for the usual ones where the data stand
// at the dangerous end of the greatest heat of neutralising.
func treated(c route.Case, k *process.Walk, figures []figure.Figure, leads *ranges.Leads) []treating.Liquor {
	out := treating.Read(c, k)
	var worst *figure.Figure
	for i := range figures {
		f := &figures[i]
		if _, _, there := leads.Case(c, f.ID); f.Quantity == "neutralise.heat" && there &&
			(worst == nil || f.Danger().V > worst.Danger().V) {
			worst = f
		}
	}
	if worst == nil {
		return out
	}
	at, _, _ := leads.Case(c, worst.ID)
	end, err := process.Go(at, nil)
	if err != nil {
		return out
	}
	for _, l := range treating.Usual(at, &end) {
		for i := range out {
			if out[i].Step == l.Step && out[i].Place == l.Place {
				out[i].Worst = &l
			}
		}
	}
	return out
}

// tooCold are the jackets that a route wants colder than the shared cooling of the
// site is.
func tooCold(c route.Case) []phrase.Phrase {
	if c.Site == nil || !c.Site.CoolingPoint.Set {
		return nil
	}
	var out []phrase.Phrase
	for i := range c.Route.Places {
		p := &c.Route.Places[i]
		k := p.Cooling
		if k != nil && k.Kind == "jacket" && k.Temperature.Set && k.Temperature.SI < c.Site.CoolingPoint.SI {
			out = append(out, phrase.Of("warn.too_cold", p.Key, k.Temperature.Text, c.Site.CoolingPoint.Text))
		}
	}
	return out
}

// NotAssessed lists the catalogued quantities no model covers yet.
func NotAssessed() []string {
	var out []string
	for _, q := range figure.Catalogue() {
		if !q.Built {
			out = append(out, q.Name)
		}
	}
	return out
}
