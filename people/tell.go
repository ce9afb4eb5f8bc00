package people

import (
	"fmt"
	"math"
	"strings"

	"suffice/sheet"
)

// Tell gives the inputs with which the sheet rules-hour works a decision again: what was
// remembered before it and the signs that were seen.
func (r *Rules) Tell(before Mind, s Signs) map[string]sheet.Value {
	values := map[string]sheet.Value{
		"away":       {Kind: sheet.Text, Text: yes(s.Away)},
		"bad_before": {Kind: sheet.Text, Text: marked(signNames[:], before.Dull, before.Charge, before.Tank, before.Duty)},
		"saves":      {Kind: sheet.Number, Number: r.Saves},
	}
	var unseen [4]bool
	for i, sign := range []float64{s.Clearness, s.Charge, s.Tank, s.Duty} {
		name, rule := signNames[i], r.rule(i)
		if unseen[i] = math.IsNaN(sign); unseen[i] {
			sign = 0 // no sheet holds what is not a number
		}
		values[name] = sheet.Value{Kind: sheet.Number, Number: sign}
		values[name+"_below"] = sheet.Value{Kind: sheet.Number, Number: rule.line.Below}
		values[name+"_until"] = sheet.Value{Kind: sheet.Number, Number: rule.line.Until}
		do := *rule.do
		values["when_"+name] = sheet.Value{Kind: sheet.Text, Text: marked(deedNames[:], do.Swap, do.Wait, do.Save, do.ChangeTank)}
	}
	values["unseen"] = sheet.Value{Kind: sheet.Text, Text: marked(signNames[:], unseen[:]...)}
	return values
}

var (
	signNames = [...]string{"clearness", "charge", "tank", "duty"}
	deedNames = [...]string{"swap", "wait", "save", "change"}
)

// aRule is a line and what is done beyond it.
type aRule struct {
	line *Line
	do   *Do
}

// rule gives the rule of a sign, in the order of signNames.
func (r *Rules) rule(i int) aRule {
	return [...]aRule{{&r.Dull, &r.WhenDull}, {&r.Charge, &r.WhenCharge}, {&r.Tank, &r.WhenTank}, {&r.Duty, &r.WhenDuty}}[i]
}

// marked joins the words that are marked; "none" if none is.
func marked(names []string, marks ...bool) string {
	var said []string
	for i, on := range marks {
		if on {
			said = append(said, names[i])
		}
	}
	if said == nil {
		return "none"
	}
	return strings.Join(said, ",")
}

// marks reads such a list back.
func marks(text string, names []string) ([4]bool, error) {
	var on [4]bool
	if text == "none" {
		return on, nil
	}
next:
	for _, word := range words(text) {
		for i, name := range names {
			if strings.TrimSpace(word) == name {
				on[i] = true
				continue next
			}
		}
		return on, fmt.Errorf("%q is not known: it is one of %s, or none", word, strings.Join(names, ", "))
	}
	return on, nil
}

func rulesHour() sheet.Sheet {
	s := sheet.Sheet{
		Name: "rules-hour", Title: "What people decide in one hour",
		Inputs: []sheet.Input{
			{Name: "away", Kind: sheet.Text, Default: "no", Choices: []string{"yes", "no"}, Meaning: "nobody is there to see or do anything"},
			{Name: "bad_before", Kind: sheet.Text, Default: "none", Meaning: "signs that were bad in the hour before: clearness, charge, tank, duty, or none"},
			{Name: "unseen", Kind: sheet.Text, Default: "none", Meaning: "signs that cannot be told, by the same names: no battery, no tank, no light yet"},
		},
		Cautions: []string{"Drinking, cooking and washing hands are not the place to save water.", "What guards people, and what keeps food and medicine cold, is not to be put off."},
		Do:       doRulesHour,
	}
	for i, d := range []struct{ sign, below, when, meaning string }{
		{"0.3", "0.35", "swap,wait", "clearness of the day, as people expect it"},
		{"0.8", "0.65", "swap,wait", "charge of the battery"},
		{"0.5", "0.3", "save", "usable water in all tanks"},
		{"0.5", "0", "none", "usable water in the tank in use"},
	} {
		name := signNames[i]
		fraction := func(name, otherwise, meaning string) sheet.Input {
			return sheet.Input{Name: name, Unit: "fraction", Default: otherwise, Meaning: meaning}
		}
		s.Inputs = append(s.Inputs,
			fraction(name, d.sign, d.meaning),
			fraction(name+"_below", d.below, "bad when it falls under this; 0: never"),
			fraction(name+"_until", "0", "good again at this; less than the line counts as the line"),
			sheet.Input{Name: "when_" + name, Kind: sheet.Text, Default: d.when, Meaning: "what is done while it is bad: swap, wait, save, change, or none"})
	}
	s.Inputs = append(s.Inputs, sheet.Input{Name: "saves", Unit: "fraction", Default: "0.3", Low: sheet.At(0), High: sheet.At(1), Meaning: "share saved on savable uses"})
	return s
}

func doRulesHour(c *sheet.Calc) {
	r, mind, signs, err := rulesOf(c)
	if err != nil {
		c.Fail("%w", err)
		return
	}
	before := mind
	choice := r.Decide(&mind, &signs)
	was, is := [...]bool{before.Dull, before.Charge, before.Tank, before.Duty}, [...]bool{mind.Dull, mind.Charge, mind.Tank, mind.Duty}
	seen := [...]float64{signs.Clearness, signs.Charge, signs.Tank, signs.Duty}
	for i, name := range signNames {
		tellSign(c, name, r.rule(i).line, !math.IsNaN(seen[i]), was[i], is[i])
	}
	c.ResultText("bad_after", marked(signNames[:], is[:]...))
	c.ResultText("swap", yes(choice.Swap))
	c.ResultText("wait", yes(choice.Wait))
	c.ResultText("change_tank", yes(choice.ChangeTank))
	c.Result("save", choice.Save, "fraction")
}

// tellSign shows how a sign is held against its line.
func tellSign(c *sheet.Calc, name string, l *Line, seen, was, is bool) {
	level := l.Below
	if was {
		level = max(l.Below, l.Until)
	}
	numbers := fmt.Sprintf("%.4g against %.4g", c.Number(name), level)
	if !seen {
		numbers = "it cannot be told"
	}
	if c.Text("away") == "yes" {
		numbers = "nobody is there to look"
	}
	c.Step("is "+name+" bad (1) or not (0)", "sign < below; where it was bad, sign < max(below, until)", numbers, bit(is), "")
}

func bit(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

// rulesOf makes rules, mind and signs of the sheet's inputs.
func rulesOf(c *sheet.Calc) (r Rules, m Mind, s Signs, err error) {
	bad, err := marks(c.Text("bad_before"), signNames[:])
	if err != nil {
		return r, m, s, err
	}
	unseen, err := marks(c.Text("unseen"), signNames[:])
	if err != nil {
		return r, m, s, err
	}
	m = Mind{bad[0], bad[1], bad[2], bad[3]}
	r.Saves, s.Away = c.Number("saves"), c.Text("away") == "yes"
	for i, sign := range []*float64{&s.Clearness, &s.Charge, &s.Tank, &s.Duty} {
		name, rule := signNames[i], r.rule(i)
		if *sign = c.Number(name); unseen[i] {
			*sign = math.NaN()
		}
		*rule.line = Line{c.Number(name + "_below"), c.Number(name + "_until")}
		deeds, err := marks(c.Text("when_"+name), deedNames[:])
		if err != nil {
			return r, m, s, err
		}
		*rule.do = Do{Swap: deeds[0], Wait: deeds[1], Save: deeds[2], ChangeTank: deeds[3]}
	}
	return r, m, s, nil
}
