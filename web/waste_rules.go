package web

import (
	"fmt"
	"math"
	"strings"

	"suffice/draw"
	"suffice/draw/canvas"
	"suffice/house"
	"suffice/internal/check/table"
	"suffice/waste"
)

// A ruled is a size as it is built, beside what published rules ask for.
type ruled struct {
	Picture picture
	Lines   []string
	Printed []string // where each rule stands
	Working workings
}

// tankRules holds the septic tank's size against published rules.
func (v *view) tankRules(d *house.DrainParts) ruled {
	told := v.told(d)
	values, refused := map[string]float64{}, []string(nil)
	var names, printed []string
	for _, rule := range waste.TankRules() {
		litres, err := rule.Capacity(told)
		if err != nil {
			refused = append(refused, v.Say("rules.silent", "rule", rule.Name, "why", err))
			continue
		}
		names, values[rule.Name], printed = append(names, rule.Name), litres, append(printed, v.printed(rule.Name, rule.Source))
	}
	args := map[string]string{"people": inUnit(told.People, ""), "daily_flow": inUnit(told.Daily, "L/d")}
	if told.Bedrooms > 0 {
		args["bedrooms"] = inUnit(float64(told.Bedrooms), "")
	}
	r := v.rules("tank", float64(d.Septic.Holds), "L", names, values)
	r.Lines, r.Printed = append(r.Lines, refused...), printed
	r.Working = v.unfold(wanted{"septic-tank", "", args})
	if len(r.Working.Worked) == 0 { // a house that is outside the sheet's limits still reads its cautions
		r.Working.Worked = v.unfold(wanted{"septic-tank", v.Say("working.usual"), nil}).Worked
	}
	return r
}

// fieldRules holds the trench's floor against published rules; without a percolation test none can answer.
func (v *view) fieldRules(d *house.DrainParts) ruled {
	if d.Seeps == 0 {
		return ruled{Lines: []string{v.Say("waste.no_test")}}
	}
	told := v.told(d)
	values, refused := map[string]float64{}, []string(nil)
	var names, printed []string
	for _, rule := range waste.FieldRules() {
		area, err := rule.Area(told, d.Seeps, false)
		if err != nil {
			refused = append(refused, v.Say("rules.silent", "rule", rule.Name, "why", err))
			continue
		}
		if !rule.Printed(told) {
			refused = append(refused, v.Say("rules.stretched", "rule", rule.Name))
		}
		names, values[rule.Name], printed = append(names, rule.Name), area, append(printed, v.printed(rule.Name, rule.Source))
	}
	args := map[string]string{"people": inUnit(told.People, ""), "daily_flow": inUnit(told.Daily, "L/d"), "rate": inUnit(d.Seeps, "s/mm"), "trench_width": inUnit(float64(d.Trench.Width), "m")}
	if told.Bedrooms > 0 {
		args["bedrooms"] = inUnit(float64(told.Bedrooms), "")
	}
	r := v.rules("field", float64(d.Trench.Bottom()), "m2", names, values)
	r.Lines, r.Printed = append(r.Lines, refused...), printed
	r.Working = v.unfold(wanted{"drain-area", "", args})
	return r
}

// printed says where a rule stands.
func (v *view) printed(rule, source string) string {
	_, place, _ := strings.Cut(source, ": ")
	return v.Say("rules.printed", "rule", rule, "source", place, "publication", table.Publication(source))
}

// told gives the house as rules count it, with the flow that was lived.
func (v *view) told(d *house.DrainParts) waste.House {
	told := d.Told
	told.Daily = float64(v.Proof.Stated.Totals.Chain.Sewage.Inflow) / float64(len(v.Proof.Stated.Days))
	return told
}

// rules draws a size as it is built and the sizes that rules ask for, and tells their spread.
func (v *view) rules(what string, built float64, unit string, names []string, values map[string]float64) (r ruled) {
	shown := map[string]string{"L": "L", "m2": "m²"}[unit]
	d := draw.BarChart{Headers: [2]string{v.Say("rules.head"), v.Say(map[string]string{"tank": "rules.tank_head", "field": "rules.field_head"}[what])}}
	d.Bars = append(d.Bars, draw.Bar{Says: v.Say("rules.built"), Amount: built, Ink: canvas.Earth})
	low, high, under := math.Inf(1), 0.0, 0
	for _, name := range names {
		d.Bars = append(d.Bars, draw.Bar{Says: name, Amount: values[name], Ink: canvas.Earth, Hatch: canvas.Rising})
		low, high = min(low, values[name]), max(high, values[name])
		if values[name] > built {
			under++
		}
	}
	said := v.Say("rules.none")
	if len(names) > 0 {
		said = v.Count("rules.says", len(names), "low", withUnit(low, shown), "high", withUnit(high, shown), "times", fmt.Sprintf("%.1f", high/low), "under", under, "built", withUnit(built, shown))
	}
	d.About = draw.About{Name: "rules-" + what, Title: v.Say(map[string]string{"tank": "rules.tank", "field": "rules.field"}[what]), Unit: shown, Summary: said}
	r.Picture = twice(draw.Bars(d), 1)
	r.Lines = []string{v.Say("rules.place")}
	return r
}
