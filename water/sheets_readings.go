package water

import (
	"fmt"
	"strings"

	"suffice/sheet"
)

const (
	sampleCaution = "A test speaks of the water that was in the bottle on that day, and of nothing that was not asked for. Have the water tested after building, after every change, after floods and yearly, by a laboratory that sends the bottles."
	countryFirst  = "The figures are the World Health Organization's, from memory: the limits of the country go first, and the health authority says what may be drunk."
)

// waterTest holds a laboratory's readings against guidelines.
func waterTest() sheet.Sheet {
	usual := map[string]string{"ecoli": "0", "turbidity": "0.8", "ph": "7.2"}
	s := sheet.Sheet{
		Name: "water-test", Title: "What the readings of a water test mean",
		Cautions: []string{sampleCaution, countryFirst, healthCaution},
		Do:       workWaterTest,
	}
	seen := map[string]bool{}
	for _, g := range Guidelines() {
		in := limited(g.Name, g.Unit, usual[g.Name], 0, 1e6, g.Words+", as the laboratory wrote it")
		if in.Default == "" {
			in.Maybe = true
			in.Meaning = g.Words + ", where it was measured"
		}
		if g.Name == "ph" {
			in.High = sheet.At(14)
		}
		s.Inputs = append(s.Inputs, in)
		if !seen[g.Source] {
			seen[g.Source] = true
			s.Sources = append(s.Sources, g.Source)
		}
	}
	return s
}

func workWaterTest(c *sheet.Calc) {
	var beyond, ill, unread []string
	for _, g := range Guidelines() {
		if !c.Given(g.Name) && maybe(g.Name) {
			unread = append(unread, g.Words)
			continue
		}
		f := g.Find(c.Number(g.Name))
		formula, numbers := "reading/most", fmt.Sprintf("%g/%g", f.Reading, g.Most)
		switch {
		case g.Most == 0:
			c.Step(g.Words, "none may be found", fmt.Sprintf("%g", f.Reading), f.Reading, g.Unit)
		case g.Least > 0:
			c.Step(g.Words, fmt.Sprintf("from %g to %g", g.Least, g.Most), fmt.Sprintf("%g", f.Reading), f.Reading, g.Unit)
		default:
			c.Step(g.Words+", share of the guideline", formula, numbers, f.Share, "")
		}
		if !f.Beyond() {
			continue
		}
		beyond = append(beyond, g.Words)
		if g.Health && f.Over {
			ill = append(ill, g.Words)
		}
		c.Caution(f.Says())
	}
	c.Result("beyond", float64(len(beyond)), "")
	c.ResultText("which", orNone(beyond))
	c.ResultText("can_make_ill", orNone(ill))
	c.ResultText("not_measured", orNone(unread))
	if len(ill) > 0 {
		c.Caution("Until a new test is within the guidelines, drink and cook with other water.")
	}
}

// maybe reports whether a reading is one that a test may leave out.
func maybe(name string) bool { return name != "ecoli" && name != "turbidity" && name != "ph" }

func orNone(list []string) string {
	if len(list) == 0 {
		return "none"
	}
	return strings.Join(list, ", ")
}
