package people

import (
	"fmt"
	"strings"

	"suffice/quantity"
	"suffice/sheet"
)

// Sheets gives the sheets of this package.
func Sheets() []sheet.Sheet { return []sheet.Sheet{wantsHour(), rulesHour()} }

// Tell gives the inputs with which the sheet wants-hour works an hour of this household
// again, to the last bit: those of its uses that happen on the weekday.
func (h *Household) Tell(weekday, hour int, persons, save float64) map[string]sheet.Value {
	var perPerson, perHouse, shares, mix []float64
	var kinds, savable, empty []string
	for i := range h.Uses {
		u := &h.Uses[i]
		if !u.Days.on(weekday) {
			continue
		}
		perPerson = append(perPerson, float64(u.PerPerson))
		perHouse = append(perHouse, float64(u.PerHouse))
		shares = append(shares, u.share(hour))
		kinds = append(kinds, u.Kind.String())
		savable = append(savable, yes(u.Savable))
		empty = append(empty, yes(u.WhenEmpty))
		if u.Hot {
			mix = append(mix, float64(u.Mix))
		} else {
			mix = append(mix, 0)
		}
	}
	list := func(v []float64) sheet.Value { return sheet.Value{Kind: sheet.List, List: v} }
	words := func(v []string) sheet.Value { return sheet.Value{Kind: sheet.Text, Text: strings.Join(v, ",")} }
	number := func(v float64) sheet.Value { return sheet.Value{Kind: sheet.Number, Number: v} }
	return map[string]sheet.Value{
		"persons": number(persons), "save": number(save),
		"per_person": list(perPerson), "per_house": list(perHouse), "share": list(shares), "mix": list(mix),
		"kind": words(kinds), "savable": words(savable), "when_empty": words(empty),
	}
}

func yes(b bool) string {
	if b {
		return "yes"
	}
	return "no"
}

func wantsHour() sheet.Sheet {
	return sheet.Sheet{
		Name: "wants-hour", Title: "Water people want in one hour",
		Inputs: []sheet.Input{
			{Name: "persons", Default: "4", Low: sheet.At(0), High: sheet.At(MostAhead), Meaning: "people in the house"},
			{Name: "kind", Kind: sheet.Text, Default: "drinking,washing,flushing", Meaning: "kind of each use, in order: drinking, washing, flushing, outdoor"},
			{Name: "per_person", Kind: sheet.List, Unit: "L", Default: "8L,30L,20L", Low: sheet.At(0), Meaning: "amount of each use on the day, for every person"},
			{Name: "per_house", Kind: sheet.List, Unit: "L", Default: "0L,0L,0L", Low: sheet.At(0), Meaning: "amount of each use on the day, for the house"},
			{Name: "share", Kind: sheet.List, Unit: "fraction", Default: "0.1,0.2,0.05", Low: sheet.At(0), High: sheet.At(1), Meaning: "part of the day's amount that falls in this hour"},
			{Name: "mix", Kind: sheet.List, Unit: "degC", Default: "0degC,38degC,0degC", Low: sheet.At(0), High: sheet.At(65), Meaning: "temperature at the tap; 0 degC: cold"},
			{Name: "savable", Kind: sheet.Text, Default: "no,yes,yes", Meaning: "yes or no for each use: may be cut down"},
			{Name: "when_empty", Kind: sheet.Text, Default: "no,no,no", Meaning: "yes or no for each use: the house amount is used when nobody is there"},
			{Name: "save", Unit: "fraction", Default: "0", Low: sheet.At(0), High: sheet.At(1), Meaning: "share saved on savable uses"},
		},
		Cautions: []string{"Water drawn warm can scald: 38 degC suits a shower; local codes limit the temperature at taps and ask for stored hot water to be kept hot against legionella."},
		Do:       doWantsHour,
	}
}

func doWantsHour(c *sheet.Calc) {
	uses, shares, err := readUses(c)
	if err != nil {
		c.Fail("%w", err)
		return
	}
	w := Wants{Persons: c.Number("persons")}
	for i := range uses {
		before := w.Litres[uses[i].Kind]
		w.add(&uses[i], shares[i])
		c.Step(fmt.Sprintf("use %d (%s)", i+1, uses[i].Kind), "(per_person persons + per_house) share",
			fmt.Sprintf("(%g x %g + %g) x %g", float64(uses[i].PerPerson), w.Persons, float64(uses[i].PerHouse), shares[i]),
			float64(w.Litres[uses[i].Kind]-before), "L")
	}
	w.sum()
	if save := c.Number("save"); save > 0 {
		w = w.Save(save)
	}
	for k := range Kinds {
		c.Result(k.String(), float64(w.Litres[k]), "L")
	}
	c.Result("hot", float64(w.HotLitres), "L")
	c.Result("mix", float64(w.Mix), "degC")
}

// readUses makes uses of the sheet's lists, which must be of one length.
func readUses(c *sheet.Calc) ([]Use, []float64, error) {
	kinds, savable, empty := words(c.Text("kind")), words(c.Text("savable")), words(c.Text("when_empty"))
	perPerson, perHouse, shares, mix := c.Numbers("per_person"), c.Numbers("per_house"), c.Numbers("share"), c.Numbers("mix")
	uses := make([]Use, len(kinds))
	for _, n := range []int{len(savable), len(empty), len(perPerson), len(perHouse), len(shares), len(mix)} {
		if n != len(kinds) {
			return nil, nil, fmt.Errorf("%d kinds but a list of %d: give every list one entry for each use", len(kinds), n)
		}
	}
	for i := range uses {
		k, err := kindNamed(kinds[i])
		if err != nil {
			return nil, nil, err
		}
		uses[i] = Use{Kind: k, PerPerson: quantity.Litres(perPerson[i]), PerHouse: quantity.Litres(perHouse[i]),
			Hot: mix[i] > 0, Mix: quantity.Celsius(mix[i]), Savable: savable[i] == "yes", WhenEmpty: empty[i] == "yes"}
	}
	return uses, shares, nil
}

func words(text string) []string {
	if text == "" {
		return nil
	}
	return strings.Split(text, ",")
}

func kindNamed(name string) (Kind, error) {
	for k := range Kinds {
		if k.String() == strings.TrimSpace(name) {
			return k, nil
		}
	}
	return 0, fmt.Errorf("kind %q is not known: it is drinking, washing, flushing or outdoor", name)
}
