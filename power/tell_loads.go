package power

import (
	"fmt"
	"strings"

	"suffice/quantity"
	"suffice/sheet"
)

// TellLoads gives the inputs with which the sheet loads-hour works the wants of a clock hour
// again: the loads that want something in this hour of the weekday, whoever is at home.
func TellLoads(loads []Load, weekday, hour int, home bool, c Choice) map[string]sheet.Value {
	var names, needs, whenAway []string
	var energy, waits, gas []float64
	for i := range loads {
		l := &loads[i]
		e := l.inHour(hour)
		if e == 0 || !l.on(weekday) {
			continue
		}
		names = append(names, strings.ReplaceAll(l.Name, ",", ""))
		needs, whenAway = append(needs, l.Need.String()), append(whenAway, yes(l.WhenAway))
		energy, waits, gas = append(energy, float64(e)), append(waits, float64(l.Waits)), append(gas, l.Gas)
	}
	values := map[string]sheet.Value{
		"home": {Kind: sheet.Text, Text: yes(home)}, "swap": {Kind: sheet.Text, Text: yes(c.Swap)}, "wait": {Kind: sheet.Text, Text: yes(c.Wait)},
	}
	for name, list := range map[string][]string{"loads": names, "need": needs, "when_away": whenAway} {
		values[name] = sheet.Value{Kind: sheet.Text, Text: strings.Join(list, ",")}
	}
	for name, list := range map[string][]float64{"energy": energy, "waits": waits, "gas": gas} {
		values[name] = sheet.Value{Kind: sheet.List, List: list}
	}
	return values
}

func loadsHour() sheet.Sheet {
	choice := func(name, usual, meaning string) sheet.Input {
		return sheet.Input{Name: name, Kind: sheet.Text, Default: usual, Choices: []string{"yes", "no"}, Meaning: meaning}
	}
	return sheet.Sheet{
		Name: "loads-hour", Title: "Power that the loads want in one hour",
		Inputs: []sheet.Input{
			choice("home", "yes", "somebody is at home"),
			choice("swap", "no", "gas does what gas can do"),
			choice("wait", "no", "what can wait is put off; this goes before swap"),
			{Name: "loads", Kind: sheet.Text, Default: "refrigerator,hob,saw", Meaning: "names of the loads that run in this hour of the day"},
			{Name: "energy", Kind: sheet.List, Unit: "Wh", Default: "40Wh,600Wh,900Wh", Low: sheet.At(0), Meaning: "of each, in this hour"},
			{Name: "need", Kind: sheet.Text, Default: "must,must,should", Meaning: "must, should or could for each"},
			{Name: "waits", Kind: sheet.List, Default: "0,0,3", Low: sheet.At(0), High: sheet.At(MostWait), Meaning: "days that each may wait; 0: it does not"},
			{Name: "gas", Kind: sheet.List, Unit: "fraction", Default: "0,0.5,0", Low: sheet.At(0), High: sheet.At(1), Meaning: "efficiency at which gas can do it; 0: it cannot"},
			{Name: "when_away", Kind: sheet.Text, Default: "yes,no,no", Meaning: "yes or no for each: it runs while nobody is at home"},
		},
		Sources:  []string{"lpg-supplier: fuel is counted by its net heating value"},
		Cautions: []string{electricCaution, "Cooking with gas needs air: keep the ventilation of the kitchen open and an alarm for carbon monoxide beside it."},
		Do:       doLoadsHour,
	}
}

func doLoadsHour(c *sheet.Calc) {
	loads, err := loadsOf(c)
	if err != nil {
		c.Fail("%w", err)
		return
	}
	home, choice := c.Text("home") == "yes", Choice{Swap: c.Text("swap") == "yes", Wait: c.Text("wait") == "yes"}
	for i := range loads {
		one := wantsOf(loads[i:i+1], home, choice, 0, 0)
		now := one.Now[Must] + (one.Now[Should] + one.Now[Could])
		c.Step(loads[i].Name+", "+loads[i].Need.String(), "its energy of the hour; 0 where it is put off, done with gas, or nobody is at home",
			say("%g Wh, of which put off %g, done with gas %g", loads[i].inHour(0), one.PutOff, one.Swapped), float64(now), "Wh")
	}
	w := wantsOf(loads, home, choice, 0, 0)
	c.Step("all that is wanted now", "must + should + could", say("%g + %g + %g", w.Now[Must], w.Now[Should], w.Now[Could]), float64(w.Now[Must]+(w.Now[Should]+w.Now[Could])), "Wh")
	for n := range Needs {
		c.Result(n.String(), float64(w.Now[n]), "Wh")
	}
	c.Result("gas", float64(w.Gas), "Wh")
	c.Result("swapped", float64(w.Swapped), "Wh")
	c.Result("put_off", float64(w.PutOff), "Wh")
}

// loadsOf makes loads that want in clock hour 0 what the sheet's lists say.
func loadsOf(c *sheet.Calc) ([]Load, error) {
	split := func(name string) []string {
		if c.Text(name) == "" {
			return nil
		}
		return strings.Split(c.Text(name), ",")
	}
	names, needs, whenAway := split("loads"), split("need"), split("when_away")
	energy, waits, gas := c.Numbers("energy"), c.Numbers("waits"), c.Numbers("gas")
	for _, n := range []int{len(needs), len(whenAway), len(energy), len(waits), len(gas)} {
		if n != len(names) {
			return nil, fmt.Errorf("%d loads but a list of %d: give every list one entry for each load", len(names), n)
		}
	}
	loads, waiting := make([]Load, len(names)), 0
	for i := range loads {
		loads[i] = Load{Name: strings.TrimSpace(names[i]), Energy: quantity.WattHours(energy[i]), Hours: [24]float64{0: 1},
			Waits: int(waits[i]), Gas: gas[i], WhenAway: strings.TrimSpace(whenAway[i]) == "yes"}
		if loads[i].Waits > 0 {
			waiting++
		}
		if !loads[i].Need.named(needs[i]) {
			return nil, fmt.Errorf("need: %q is not known: it is must, should or could", needs[i])
		}
	}
	if waiting > MostWaiting {
		return nil, fmt.Errorf("%d loads that can wait are too many: the most is %d", waiting, MostWaiting)
	}
	return loads, nil
}
