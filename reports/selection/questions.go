package selection

import (
	_ "embed"
	"sync"

	"etchbound/hazards/figure"
	"etchbound/schemas/columns"
)

//go:embed questions.csv
var questionTable string

// question is one thing that people ask.
type question struct {
	key        string
	how        string   // which composer answers it; empty: the worst of its quantities
	quantities []string // what answers it
	section    string
	asks       string
}

var questions = sync.OnceValue(func() []question {
	return columns.Must("reports/selection/questions.csv", questionTable, func(r columns.Row) question {
		return question{r.Named("key"), r.Text("how"), r.List("quantities"), r.Named("section"), r.Named("asks")}
	})
})

// composers answer what is more than a number held against its limits.
var composers = map[string]func(*reader, *Line){
	"all_at_once": (*reader).allAtOnce,
	"addition":    (*reader).addition,
	"cooling":     (*reader).cooling,
	"hydrogen":    (*reader).hydrogen,
	"lid":         (*reader).lid,
	"breathe":     (*reader).breathe,
	"neutralise":  (*reader).neutralise,
	"outgrown":    (*reader).outgrown,
	"skin":        (*reader).skin,
	"spill":       (*reader).spill,
	"stored":      (*reader).stored,
}

// questions answers every question of the table.
func (p *reader) questions() []Line {
	var out []Line
	for _, q := range questions() {
		l := Line{Key: q.key, Asks: q.asks, Section: q.section}
		if compose := composers[q.how]; compose != nil {
			compose(p, &l)
		} else {
			p.plain(&l, q.quantities)
		}
		out = append(out, l)
	}
	return out
}

// plain answers with the worst of some quantities as the route is written.
func (p *reader) plain(l *Line, quantities []string) {
	built := false
	m := matter{}
	for _, name := range quantities {
		q, _ := figure.Lookup(name)
		built = built || q.Built
		m = append(m, p.findings(name, asWritten)...)
	}
	switch {
	case !built:
		l.State, l.Answer = NotYet, say("not_yet")
	case len(m) > 0:
		p.judge(l, m)
	default:
		p.unheld(l, quantities)
	}
}

// unheld answers with the first figure of some quantities, which nothing is held
// against.
func (p *reader) unheld(l *Line, quantities []string) {
	for _, name := range quantities {
		if f := p.bare(name); f != nil {
			l.State, l.Answer, l.Against = Unjudged, p.named(f)+p.v.Value(f), say("against.nothing")
			return
		}
	}
	l.State, l.Answer = Absent, say("absent")
}
