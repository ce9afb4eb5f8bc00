package sheet

import (
	"strings"
	"testing"
)

var area = Sheet{
	Name: "area", Title: "Area of a rectangle",
	Inputs: []Input{
		{Name: "width", Unit: "m", Default: "2 m", Meaning: "one side", Low: At(0)},
		{Name: "sides", Kind: List, Unit: "m", Default: "1 m, 50 cm", Meaning: "the other sides, end to end"},
		{Name: "kind", Kind: Text, Default: "plain", Choices: []string{"plain", "half"}},
		{Name: "tilt", Unit: "deg", Maybe: true, Meaning: "slope, if any"},
	},
	Cautions: []string{"measure twice"},
	Do: func(c *Calc) {
		length := 0.0
		for _, s := range c.Numbers("sides") {
			length += s
		}
		a := c.Step("area", "A = w·l", "", c.Number("width")*length, "m2")
		if c.Text("kind") == "half" {
			a /= 2
		}
		if c.Given("tilt") {
			c.Caution("slope is left out of the area")
		}
		if a > 100 {
			c.Fail("%g m2 is too much: the most is 100 m2", a)
		}
		c.Result("area", a, "m2")
	},
}

func work(t *testing.T, args map[string]string) (Worked, error) {
	t.Helper()
	in, err := area.Read(args)
	if err != nil {
		t.Fatal(err)
	}
	return area.Work(in)
}

func TestBareUsesDefaults(t *testing.T) {
	w, err := work(t, nil)
	if err != nil || w.Results[0].Value.Number != 3 || w.Results[0].Unit != "m2" || len(w.Cautions) != 1 {
		t.Errorf("got %+v, %v, want 3 m2 and one caution", w.Results, err)
	}
}

func TestGivenInputsAreConverted(t *testing.T) {
	w, err := work(t, map[string]string{"width": "400cm", "sides": "1m,1m", "kind": "half", "tilt": "10deg"})
	if err != nil || w.Results[0].Value.Number != 4 || len(w.Cautions) != 2 {
		t.Errorf("got %+v, %v, want 4 m2 and two cautions", w.Results, err)
	}
	if len(area.Cautions) != 1 {
		t.Error("a caution of one calculation stayed on the sheet")
	}
}

func TestAllFaultsAtOnce(t *testing.T) {
	_, err := area.Read(map[string]string{"width": "-1 m", "sides": "2 kg", "kind": "round", "length": "3 m"})
	if err == nil {
		t.Fatal("faults were taken")
	}
	for _, part := range []string{"the least is 0 m", "not a quantity in m", "one of plain, half", `no input "length"`} {
		if !strings.Contains(err.Error(), part) {
			t.Errorf("%q is missing in:\n%v", part, err)
		}
	}
}

func TestFailOfTheCalculationIsTold(t *testing.T) {
	if _, err := work(t, map[string]string{"width": "1km"}); err == nil || !strings.Contains(err.Error(), "the most is 100 m2") {
		t.Errorf("got %v", err)
	}
}
