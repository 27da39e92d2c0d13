package process

import (
	"slices"

	"etchbound/chemicals"
	"etchbound/chemicals/etching"
	"etchbound/chemicals/working"
	"etchbound/hazards/meeting"
	"etchbound/hazards/phrase"
	"etchbound/hazards/route"
)

// Walk is the whole route, walked.
type Walk struct {
	Layered  *etching.Layered // nil where the route has no powder
	Powder   *Powder          // nil likewise
	Steps    []Done           // one a step of the route, in order
	Etches   []Etch           // in the order they happened
	Releases []Release        // gas given off
	Evolved  []Evolved        // poisonous gas that can form, in the order it can
	Washes   []Wash
	Treated  []Liquor // each liquor as it stood before it was neutralised, or at the end
	Ends     []State  // contents of every place at the end
	Account  []Balance
	Error    working.Num // largest relative error of the account
	Warnings []phrase.Phrase
	Open     []working.Missing // what has to be known to say how much went into the route at all
	Facts    []Fact
	Fullest  []Fullest // the most liquid in each place that is filled, in the order they are first filled
	Contacts []Contact // what the parts of the places meet, in the order it comes

	Unfollowed []Unfollowed // what gives gas that nobody works out, by place
}

// Fullest is the most liquid and solid that a place holds at any time.
type Fullest struct {
	Place  string
	Step   int         // in which it holds that
	Volume working.Num // mL of liquid; unknown where it is in any step
	Solid  working.Num // mL of powder and of what was charged as a solid
}

// Balance is one element of the account, in mol.
type Balance struct {
	Element string
	In      float64
	Out     map[string]float64 // key of a place, "gas", "evaporated" or "unresolved"
	Error   float64            // |in - out| / in
}

// Fact is something the walk found that a reader or a page has to say.
type Fact struct {
	ID   string // such as hf_formed, oxidant, toxic_metal, hydride
	Step int
	Says phrase.Phrase
}

// Told is what a fact says, with its step before it where its sentence names none.
func (f *Fact) Told() phrase.Phrase {
	if _, named := f.Says.Step(); named || f.Step == 0 {
		return f.Says
	}
	return phrase.Of("fact.at", phrase.Step(f.Step), f.Says)
}

// Powder is the precursor as it was weighed.
type Powder struct {
	Mass       working.Num // g
	N          working.Num // mol of layered phase
	Impurities []Foreign
	Remainder  working.Num // mass fraction nobody explained
}

// Foreign is an impurity of the powder.
type Foreign struct {
	Formula  chemicals.Formula
	N        working.Num // mol
	Mass     working.Num // g
	Unstated bool
}

// Release is gas that leaves a place.
type Release struct {
	Step  int
	Place string
	Gas   string // H2, CO2, CH4, or the chloride of the A element
	Cause string // etch, impurity, metal, residual, neutralise, carbide
	N     working.Num
}

// Done is one step as it went.
type Done struct {
	Number int
	Place  string
	Before State  // the place the step worked in, before it
	After  State  // and after it
	Filled *State // where it poured to, after it; nil: nowhere
	Full   *State // the place before it parts liquid in it, or filled for a cycle of washing; nil: it parts none
	Mixed  *Mixing
	Parted *Mixing     // what the first decant of a wash mixes with, where it goes; nil: nothing that gives much heat
	Hot    working.Num // degC, the highest temperature set in the step; unknown if none is
	First  *State      // a wash in which something reacts, as its first liquid meets what is there; nil elsewhere
	Etches []int       // etches whose liquor is still whole in the place during the step
	Melts  bool        // dry salt in it is melted, whatever the verb

	Quenched *Quenched // what was poured in from another place; nil elsewhere
	Behind   *Done     // as it went where it poured from, if something not held may etch where it poured to; nil elsewhere
}

// Mixing is what a step dissolved and diluted.
type Mixing struct {
	Before, After []Portion
	Salts         []Entry     // solids that went into solution
	Fed           bool        // a liquid or a salt went in
	Met           float64     // mol of acid that met base in the step, central
	Strange       string      // something that met another liquid and whose heat of mixing no model gives
	StrangeMol    float64     // mol of all such, central
	Diluted       bool        // water or another liquid without a model went in with a solute there
	AcidBefore    working.Num // mol of acid equivalents there to dissolve them
	There         *State      // where the liquids came together, if not all of it stayed there; nil: the place of the step
	Came          []Came      // water that the materials of the step brought
}

// Came is water that a material of a step brought, mol.
type Came struct {
	Of    *route.Material
	Water working.Num
}

// Portion is one solute in the water it shares.
type Portion struct {
	Model       string // key of the aqueous model
	Sub         *chemicals.Substance
	Acid, Water working.Num // mol
}

// Liquor is a pool with the place and step it stood in.
type Liquor struct {
	Step  int // 0: at the end of the route
	Place string
	Pool  Pool
	Doses []Dose      // what the step brings that is neither acid nor fluoride, in the order written
	Added working.Num // kg of what of it brings base
	First working.Num // mol of water of the step that is there before acid and base meet, or comes with one of them
	Later bool        // water of the step comes when they have met
	Held  working.Num // mol of fluoride that cold base leaves in its complex; not there where it has no symbol
}

// Dose is a substance that a step neutralises with, or tries to.
type Dose struct {
	Sub  *chemicals.Substance
	N    working.Num // mol
	Mass working.Num // kg
}

// Go walks the route of c. It fails only where the route cannot be walked at
// all; what it cannot model it moves to the place unresolved and says so.
func Go(c route.Case, w *working.Sheet) (Walk, error) { return Met(c.Route).Go(c, w) }

// Meetings are what meets what in the places of a route, and how long its steps take. No
// datum moves them, so that walks of the same route with other data share them; nobody
// changes them.
type Meetings struct {
	of    []meeting.Contents
	pairs [][]paired // of each place that is not open
	hours []hours    // of each step

	common *Common // what the route begins with as others do; nil: as none is known to
}

// paired is a pair whose sides have both been in a place.
type paired struct {
	*meeting.Pair
	step int // from which on; 0: before the first
}

// hours are how long a step takes, as lasts and stated say.
type hours struct{ lasts, stated float64 }

// Met are the meetings of a route.
func Met(r *route.Route) Meetings {
	m := Meetings{of: meeting.Of(r)}
	m.pairs = make([][]paired, len(m.of))
	for i := range m.of {
		c := &m.of[i]
		if c.Place.Closure == route.Open || len(c.Tags) == 0 {
			continue
		}
		for j := range meeting.Pairs() {
			p := &meeting.Pairs()[j]
			if step, met := c.Meets(p); met {
				m.pairs[i] = append(m.pairs[i], paired{p, step})
			}
		}
	}
	m.hours = make([]hours, len(r.Steps))
	for i := range r.Steps {
		m.hours[i] = hours{lasts(&r.Steps[i]), stated(&r.Steps[i])}
	}
	return m
}

// Go is the Go of the package, of a case whose route has these meetings.
func (m Meetings) Go(c route.Case, w *working.Sheet) (Walk, error) {
	k, from, err := m.begin(c, w)
	if err != nil {
		return Walk{}, err
	}
	for i := from; i < len(c.Route.Steps); i++ {
		k.step(&c.Route.Steps[i])
		if w == nil && m.common != nil && i+1 == m.common.steps {
			m.common.keep(k)
		}
	}
	k.contacts()
	k.unfollowed()
	k.end()
	return k.out, nil
}

// begin is a walk before its first step, or, without a sheet, one that has the beginning behind it
// which the route has in common with others; and the step, from 0, from which it goes on.
func (m Meetings) begin(c route.Case, w *working.Sheet) (k *walker, from int, err error) {
	if w == nil && m.common != nil {
		if k = m.common.begun(c.Store); k != nil {
			k.c, k.st, k.met = c, c.Store, m
			return k, m.common.steps, nil
		}
	}
	k = &walker{c: c, w: w, st: c.Store, places: map[string]*State{}, met: m,
		often: map[string][]working.Missing{}}
	for i := range c.Route.Places {
		p := &c.Route.Places[i]
		k.places[p.Key] = &State{Place: p.Key}
	}
	return k, 0, k.weigh()
}

// walker carries the state of one walk.
type walker struct {
	c       route.Case
	w       *working.Sheet
	st      *chemicals.Store
	places  map[string]*State
	met     Meetings
	in      chemicals.Composition
	gross   chemicals.Composition // what was entered and taken back, without sign
	gas     chemicals.Composition
	lost    chemicals.Composition // evaporated
	unres   chemicals.Composition
	charged bool                  // the powder has gone in
	ahead   bool                  // it looked at steps to come
	touched []touch               // by place
	passing []touch               // of steps that say what their liquor meets
	told    map[gasAt]float64     // mol of each poisonous gas that was told of a place
	aged    map[gasAt]working.Num // k t of what gives a gas slowly, in a place

	strange map[gasAt]bool // what is not held of which it was told, by place

	often map[string][]working.Missing // what has to be known to say how often a place is poured into

	unclosed []working.Missing // what has to be known to close the account
	decanted []working.Missing // what has to be known to say how much was parted off
	out      Walk
}

func (k *walker) fact(id string, step int, says phrase.Phrase) {
	for _, f := range k.out.Facts {
		if f.ID == id && f.Step == step && f.Says.Equal(says) {
			return
		}
	}
	k.out.Facts = append(k.out.Facts, Fact{id, step, says})
}

func (k *walker) warn(says phrase.Phrase) { k.out.Warnings = append(k.out.Warnings, says) }

// step does one step in order: what goes in, what it does, what reacts.
func (k *walker) step(s *route.Step) {
	p := k.places[s.In]
	d := Done{Number: s.Number, Place: s.In, Before: p.copy(), Hot: k.hot(p, s)}
	verb, began, from := s.Verb(), len(k.out.Etches), d.Before
	if verb.Does != route.Neutralises && len(s.What) > 0 {
		p.Neutralised = false
	}
	var to State // before anything comes, also in a wash, which decants as it goes on
	if t := k.places[s.Into]; t != nil {
		t.Neutralised = false // what comes is waste again
		to = t.copy()
	}
	switch verb.Does {
	case route.Washes, route.Prewashes:
		k.wash(p, s, &d)
	case route.Neutralises:
		k.neutralise(p, s)
	default:
		k.put(p, s, &d)
		if d.Melts = k.melts(p, s); d.Melts {
			k.melt(p, s)
			break
		}
		k.react(p, s, reaction{current: verb.Does == route.Conducts, closed: verb.Does == route.Shuts})
		k.electrolyte(p, s)
	}
	k.fumes(p, s)
	k.furnace(s)
	k.evolve(p, s, "", d.Melts)
	k.ledOver(p, s)
	d.Etches = append([]int(nil), p.Etches...)
	switch verb.Does {
	case route.Moves:
		k.move(p, s)
	case route.Parts:
		full := p.copy()
		d.Full = &full
		k.separate(p, s)
		d.Etches = nil
	case route.Dries:
		k.dry(p)
	case route.Washes, route.Prewashes:
		d.Etches = k.begun(began, p.Place)
	}
	d.After = p.copy()
	if verb.Receives {
		k.quench(s, from, to, &d)
	} else {
		k.arrive(s, to, &d)
	}
	k.watch(p, s)
	if t := k.places[s.Into]; t != nil {
		k.watch(t, s)
	}
	k.out.Steps = append(k.out.Steps, d)
}

// begun are the etches from a number on that began in a place.
func (k *walker) begun(from int, place string) []int {
	var out []int
	for i := from; i < len(k.out.Etches); i++ {
		if k.out.Etches[i].Place == place {
			out = append(out, i)
		}
	}
	return out
}

// arrive lets what a step sent on react with what was there. Where powder meets
// etchant only there, the step is told of that place; not so where an etch came along that
// something unheld may go on with.
func (k *walker) arrive(s *route.Step, before State, d *Done) {
	to := k.places[s.Into]
	if to == nil {
		return
	}
	k.join(to, before, s, d)
	to.Fumes = (to.Fumes || k.places[s.In].Fumes) && !to.wet()
	if len(to.Liquid) > 0 {
		k.carbonate(to, s)
		k.sayAmmonia(k.merged(to), s)
		k.sayHF(k.merged(to), s)
	}
	etches := len(k.out.Etches)
	k.react(to, s, reaction{})
	goesOn := k.followed(d.Etches) || len(d.Etches) > 0 && len(before.Liquid) == 0 // nothing was there to begin with
	if goesOn && k.strangeFrom(etches) || len(k.out.Etches) == etches {
		filled := to.copy()
		d.Filled = &filled
		for e := etches; e < len(k.out.Etches); e++ { // what may begin there begins in this step
			d.Etches = append(d.Etches, e)
		}
	} else {
		hot := to.Set
		if k.strangeFrom(etches) { // nothing may: what stays behind counts as before
			was := *d
			d.Behind = &was
			if was.Hot.Unknown() || was.Hot.V > hot.V { // and so does how warm it comes
				hot = was.Hot
			}
		}
		d.Place, d.Before, d.After, d.Hot, d.First = to.Place, before, to.copy(), hot, nil
		d.Etches = append([]int(nil), to.Etches...)
	}
	k.evolve(to, s, s.In, false)
}

// followed reports whether some etch of a list is one by what is held.
func (k *walker) followed(etches []int) bool {
	return slices.ContainsFunc(etches, func(e int) bool { return k.out.Etches[e].Family != Unheld })
}

// strangeFrom reports whether every etch from a number on is one by what is not held.
func (k *walker) strangeFrom(from int) bool {
	return !slices.ContainsFunc(k.out.Etches[from:], func(e Etch) bool { return e.Family != Unheld })
}

// join mixes the liquor that came into a place with the one that was there.
// Acid that meets base there counts whatever the verb; the heat of diluting is
// that of a transfer.
func (k *walker) join(to *State, before State, s *route.Step, d *Done) {
	there := before.copy()
	if len(there.Liquid) == 0 || len(to.Liquid) == 0 {
		return
	}
	come := State{Place: to.Place}
	if len(to.Liquid) > len(there.Liquid) {
		come.Liquid = append(come.Liquid, to.Liquid[len(there.Liquid):]...)
	}
	a, q := k.merged(&there), k.merged(to)
	acid0, base0 := sides(a)
	acid, base := sides(q)
	meet := met(q, acid0, base0) - max(min(acid-acid0, base-base0), 0) // what comes may be spent acid
	state := to.copy()
	switch {
	case (s.Verb().Does == route.Moves || s.Verb().Does == route.Parts) && s.Verb().Mixes && len(come.Liquid) > 0:
		d.Mixed = k.poured(a, k.merged(&come), q, s)
		d.Mixed.Met, d.Mixed.There = meet, &state
	case d.Mixed != nil:
		d.Mixed.Met += meet
	default:
		d.Mixed = &Mixing{Met: meet, There: &state}
	}
}

// poured is what a liquor b that comes into a place mixes with what stood there, a, to q.
func (k *walker) poured(a, b, q *Pool, s *route.Step) *Mixing {
	mix := &Mixing{Fed: true, Before: append(k.portions(a), k.portions(b)...), After: k.portions(q),
		AcidBefore: working.Exact("n_acid", "mol", 0, "no salt goes in")}
	mix.Diluted = len(mix.After) > 0
	if k.wetted(q, mix); len(mix.Salts) > 0 {
		mix.AcidBefore = Total(k.w, q, "n_acid", func(e *Entry) float64 { return max(e.Acid, 0) })
	}
	if s.Verb().Waste == "" || !sameLiquids(a, b) { // more of the same in the waste mixes with itself
		mix.Strange, mix.StrangeMol = strange(q)
	}
	return mix
}

// hot is the temperature of a step: the one it sets, or, of a verb in which none is
// set, the one last set in the place. What quenches is cold: of a quench that sets none
// it is as warm as it was, and no credit is given for what comes being colder, but for
// that of a room:
//
//	T = max(T_0, T_r)
func (k *walker) hot(p *State, s *route.Step) working.Num {
	switch {
	case s.Verb().Receives: // what it sets is set where it pours to
		return p.Set
	case s.Temperature.Set:
		p.Set = k.c.Given("T", "degC", s.Temperature)
	case s.Verb().Does == route.Fills && s.Verb().EndsEtch && !p.Set.None():
		was, room := p.Set.As("T_0"), k.st.Num("room.temperature").As("T_r")
		p.Set = k.w.Line("T", "degC", "max(T_0,T_r)", max(was.V, room.V), was, room).Worse(working.Bound)
	case !s.Verb().Passive:
		p.Set = working.Absent("T", "degC", working.Lacks(working.NotGiven, route.At(s.Number, "temperature")))
	case p.Set.None():
		p.Set = working.Absent("T", "degC", working.Lacks(working.NotGiven, route.At(s.Number, "temperature")))
	}
	return p.Set
}
