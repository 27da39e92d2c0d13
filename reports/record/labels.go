package record

import (
	"etchbound/chemicals/classifying"
	"etchbound/hazards/labelling"
)

type labelJSON struct {
	Substance    string      `json:"substance"`
	Strength     string      `json:"strength"`
	Place        string      `json:"place"`
	Steps        []int       `json:"steps"`
	Hydrofluoric bool        `json:"hydrofluoric_acid"`
	FormsIn      int         `json:"forms_hf_in"`
	Neutralised  bool        `json:"as_before_neutralised"`
	Extreme      bool        `json:"extreme_ph"`
	Product      bool        `json:"flakes"`
	Dried        bool        `json:"dried"`
	Dry          bool        `json:"dry_salts"`
	Signal       string      `json:"signal"`
	Classes      []classJSON `json:"classes"`
	Pictograms   []string    `json:"pictograms"`
	NotHeld      []string    `json:"not_held"`
	Carried      []entryJSON `json:"carried"`
	Stands       []storeJSON `json:"stands"`
}

type classJSON struct {
	Class     string   `json:"class"`
	Name      string   `json:"name"`
	Code      string   `json:"code"`
	Statement string   `json:"statement"`
	Of        []string `json:"of"`
	Source    string   `json:"source"`
	Status    string   `json:"how_known"`
}

type entryJSON struct {
	Number     string `json:"number"`
	Name       string `json:"name"`
	Class      string `json:"class"`
	Subsidiary string `json:"subsidiary"`
	Group      string `json:"packing_group"`
	Source     string `json:"source"`
	Status     string `json:"how_known"`
}

type storeJSON struct {
	Group  string `json:"group"`
	Apart  string `json:"apart"`
	Source string `json:"source"`
	Status string `json:"how_known"`
}

func labelToJSON(l *labelling.Label) labelJSON {
	out := labelJSON{Strength: l.Strength, Place: l.Place, Steps: append([]int{}, l.Steps...),
		Hydrofluoric: l.Hydrofluoric, FormsIn: l.FormsIn, Neutralised: l.Neutralised, Product: l.Product,
		Dried: l.Dried, Dry: l.Dry, Extreme: l.Extreme,
		Signal: l.Signal(), Pictograms: list(l.Pictograms()), NotHeld: list(l.NotHeld), Carried: []entryJSON{},
		Classes: each(l.Classes, func(f *classifying.Found) classJSON {
			return classJSON{f.Class.Key, f.Class.Name, f.Class.Code, f.Class.Statement, list(f.Of), f.Source,
				classifying.LessSure(f.Status, f.Class.Status)}
		}),
		Stands: each(l.Stands, func(s *classifying.Store) storeJSON {
			return storeJSON{s.Group, s.Apart, s.Source, s.Status}
		})}
	if l.Substance != nil {
		out.Substance = l.Substance.Name
	}
	if e := l.Carried; e != nil {
		out.Carried = append(out.Carried, entryJSON{e.Number, e.Name, e.Class, e.Subsidiary, e.Group, e.Source, e.Status})
	}
	return out
}
