package proposal_test

import (
	"bytes"
	"errors"
	"os"
	"testing"

	"etchbound/hazards/limit"
	"etchbound/hazards/proposal"
	"etchbound/hazards/route"
	"etchbound/schemas/edit"
	"etchbound/schemas/quantity"
)

func demo(t *testing.T) proposal.File {
	t.Helper()
	raw, err := os.ReadFile("../../testdata/routes/demo-lif-hcl-2g.yaml")
	if err != nil {
		t.Fatal(err)
	}
	r, problems, err := route.Load("demo.yaml", bytes.NewReader(raw))
	if err != nil || r == nil {
		t.Fatal(err, problems)
	}
	c, err := route.NewCase(r, nil, limit.Base())
	if err != nil {
		t.Fatal(err)
	}
	return proposal.File{Case: c, Text: raw}
}

func change(path, to string) proposal.Change {
	return proposal.Change{Edit: edit.Edit{Path: path, To: to}}
}

func TestWhatIsJudgedIsWhatTheFileSays(t *testing.T) {
	f := demo(t)
	g, err := f.With(change("steps[1].over", "40 min"), change("places.etch.vent", "6 mm"))
	if err != nil {
		t.Fatal(err)
	}
	again, problems, err := route.Load("demo.yaml", bytes.NewReader(g.Text))
	if err != nil || again == nil {
		t.Fatal(err, problems)
	}
	if got := g.Case.Route.Steps[1].Over.In("min"); got != 40 || again.Digest != g.Case.Route.Digest {
		t.Errorf("over %v min, digest %s and %s", got, g.Case.Route.Digest, again.Digest)
	}
	if f.Case.Route.Steps[1].Over.In("min") != 20 {
		t.Error("the file itself was changed")
	}
}

func TestChangesKeepTheBatch(t *testing.T) {
	f := demo(t)
	m, err := quantity.Parse("4 g", quantity.Mass)
	if err != nil {
		t.Fatal(err)
	}
	f.Case.Route = f.Case.Route.Scaled(m)
	g, err := f.With(change("places.etch.capacity", "300 mL"))
	if err != nil {
		t.Fatal(err)
	}
	if got := g.Case.Route.Place("etch").Capacity.Text; got != "600 mL" {
		t.Errorf("a bottle of %s", got)
	}
}

func TestWhatTheLoaderRefusesIsRefused(t *testing.T) {
	_, err := demo(t).With(change("steps[1].over", "40"))
	var refused *proposal.Refused
	if !errors.As(err, &refused) || len(refused.Problems) == 0 || refused.Error() == "" {
		t.Error(err)
	}
	if _, err := demo(t).With(change("places.nowhere.vent", "1 mm")); !errors.Is(err, edit.ErrPlace) {
		t.Error(err)
	}
}
