package web

import (
	"fmt"
	"net/http"
	"strconv"

	"suffice/draw"
	"suffice/draw/canvas"
	"suffice/garden"
	"suffice/house"
	"suffice/waste"
)

// A wasteView is the page.
type wasteView struct {
	Verdict  verdict
	Cautions []string
	Sums     []figure // of the mean year
	Day      workings // of the trench
	Sludge   picture
	Emptied  []string // what is to be said of it
	Tank     ruled
	Field    ruled
	Dates    workings // of the sludge
	Trench   []string
	Surfaced picture
	Trees    []string
	Grove    workings
	Spacing  grid
	Breaches []string
	Setbacks workings
	Rubbish  []figure
	Heap     []figure
}

func wastePage(v *view, _ *http.Request) shown {
	p := shown{Here: "/waste", Title: v.Say("waste.title")}
	if !v.hasSeptic() {
		p.Body = wasteMissing(v)
		return p
	}
	d := v.Proof.Run.House.Drains
	w := wasteView{Verdict: v.wasteVerdict(), Sums: v.wasteSums(), Sludge: v.sludgePicture(), Emptied: v.emptied(d), Tank: v.tankRules(d),
		Dates:    v.unfold(wanted{"sludge", "", map[string]string{"people": inUnit(v.meanPersons(), ""), "rate": inUnit(d.Septic.Sludge, "L/person/year"), "volume": inUnit(float64(d.Septic.Holds), "L"), "share": inUnit(d.Empty, "")}}),
		Setbacks: v.unfold(wanted{"setbacks", "", v.plan(d)}), Rubbish: v.rubbish(), Heap: v.heap()}
	w.Cautions = w.Tank.Working.Worked[0].Sheet.Cautions
	w.Spacing, w.Breaches = v.spacing(d)
	if d.Trench != nil {
		w.Field, w.Trench, w.Surfaced = v.fieldRules(d), v.trenchSaid(d), v.surfacedPicture()
		w.Trees, w.Grove = v.treesSaid(d)
		w.Day = v.unfold(v.meanDay(d))
	}
	p.Body = wasteBody(v, &w)
	return p
}

func (v *view) wasteVerdict() verdict {
	b := &v.Proof.Stated.Waste
	said := verdict{Name: v.Say("verdict.title"), Sign: "open", Word: v.Say("verdict.none")}
	if b.Wanted {
		said.Sign, said.Word = "short", v.Say("verdict.short")
		if b.Suffices() {
			said.Sign, said.Word = "suffices", v.Say("verdict.suffices")
		}
	}
	if !v.hasTrench() {
		said.Lines = append(said.Lines, v.Say("waste.no_trench"))
		return said
	}
	said.Lines = append(said.Lines, v.Say("waste.rate", "rate", amount(b.ShortDaysPerYear())))
	if b.ShortDays > 0 {
		said.Lines = append(said.Lines, v.yearsSaid(b), v.Count("verdict.spell", b.Spell.Days, "from", v.daySaid(b.Spell.First)))
	}
	return said
}

func (v *view) wasteSums() []figure {
	t := &v.Proof.Stated.Totals.Chain
	s := sums{v: v, years: v.years()}
	s.add("waste.sewage", float64(t.Sewage.Inflow), "L", false)
	s.add("waste.removed", float64(t.Removed.Inflow), "L", false)
	s.add("waste.effluent", float64(t.Effluent.Inflow+t.Carried.Inflow), "L", false)
	s.add("waste.carried", float64(t.Carried.Inflow), "L", true)
	if v.hasTrench() {
		o := &t.Trench
		s.add("waste.rain", float64(t.CatchRain), "L", false)
		s.add("waste.run_off", float64(o.RunOff), "L", true)
		s.add("waste.trees", float64(o.Trees), "L", true)
		s.add("waste.grass", float64(o.Grass), "L", true)
		s.add("waste.ground", float64(o.Infiltrated), "L", true)
		s.add("waste.surfaced", float64(o.Surfaced), "L", true)
	}
	s.add("waste.nitrogen", t.Sewage.Load.Nitrogen/1000, "kg", false)
	s.add("waste.nitrogen_ground", t.Trench.ToSoil.Nitrogen/1000, "kg", true)
	return s.rows
}

// sludgePicture shows how full of sludge the tank is through the year: the rule is the share at which it is emptied.
func (v *view) sludgePicture() picture {
	days := v.Proof.Run.Weather.Days
	d := draw.LineChart{From: 0, To: 10, Digits: 1, Headers: []string{v.Say("column.month"), v.Say("waste.sludge_head")},
		Rule:   draw.Rule{Says: v.Say("waste.sludge_rule", "share", percent(v.Proof.Run.House.Drains.Empty)), At: 100 * v.Proof.Run.House.Drains.Empty},
		Series: []draw.Series{{Says: v.Say("waste.sludge_head"), Ink: canvas.Earth}}}
	most, years := 0.0, v.Proof.Years()
	for i := range days {
		if i+1 < len(days) && days[i+1].Date != 1 { // the last day of each month stands for it
			continue
		}
		share := 100 * v.Proof.Stated.Days[i].Sludge
		most = max(most, share)
		if days[i].Month == 1 && (years <= 6 || int(days[i].Year)%5 == 0) {
			d.Marks = append(d.Marks, draw.Mark{At: len(d.Times), Says: strconv.Itoa(int(days[i].Year))})
		}
		d.Times = append(d.Times, v.Say("month_year", "month", v.month(int(days[i].Month)), "year", days[i].Year))
		d.Series[0].Values = append(d.Series[0].Values, share)
	}
	d.About = draw.About{Name: "sludge", Title: v.Say("waste.sludge_title"), Unit: v.Say("waste.sludge_unit"), Summary: v.Say("waste.sludge_says", "most", grouped(most))}
	return twice(draw.Lines(d), 1)
}

// emptied tells when the tank was emptied in the record, and when a new one would be for the first time.
func (v *view) emptied(d *house.DrainParts) (list []string) {
	first, count := -1, 0
	days := v.Proof.Stated.Days
	for i := 1; i < len(days); i++ {
		if days[i].Sludge < days[i-1].Sludge/2 {
			if first < 0 {
				first = i
			}
			count++
		}
	}
	if count == 0 {
		return append(list, v.Count("waste.never_emptied", v.Proof.Years(), "share", percent(days[len(days)-1].Sludge)))
	}
	list = append(list, v.Say("waste.first_emptied", "years", fmt.Sprintf("%.1f", float64(first)/365.25), "day", v.daySaid(first), "share", percent(d.Empty)))
	if count > 1 {
		list = append(list, v.Say("waste.then_emptied", "years", fmt.Sprintf("%.1f", v.years()/float64(count))))
	}
	return append(list, v.Say("waste.measure_it"))
}

func (v *view) trenchSaid(d *house.DrainParts) []string {
	b := &v.Proof.Stated.Waste
	if b.ShortDays == 0 {
		return []string{v.Count("waste.never_up", v.Proof.Years(), "floor", withUnit(float64(d.Trench.Bottom()), "m²"))}
	}
	return []string{v.Count("waste.comes_up", b.ShortDays, "litres", withUnit(float64(v.Proof.Stated.Totals.Chain.Trench.Surfaced)/v.years(), "L")), v.Say("waste.what_to_do")}
}

// surfacedPicture shows in which months foul water comes up; without such days it is empty and not shown.
func (v *view) surfacedPicture() picture {
	d := draw.ColumnChart{Headers: []string{v.Say("column.month"), v.Say("waste.up_head")}, Parts: []draw.ColumnPart{{Says: v.Say("waste.up_head"), Ink: canvas.Short, Hatch: canvas.Crossed}}}
	v.months(&d)
	worst := 0
	for i, day := range v.Proof.Run.Weather.Days {
		if v.Proof.Stated.Days[i].Surfaced > 0 {
			d.Parts[0].Values[day.Month-1] += 1 / v.years()
		}
	}
	for m, n := range d.Parts[0].Values {
		if n > d.Parts[0].Values[worst] {
			worst = m
		}
	}
	if d.Parts[0].Values[worst] == 0 {
		return picture{}
	}
	d.About = draw.About{Name: "surfaced", Title: v.Say("waste.up_title"), Unit: v.Say("waste.up_unit"), Summary: v.Say("waste.up_says", "month", d.Names[worst], "days", amount(d.Parts[0].Values[worst]))}
	return twice(draw.Columns(d), 1)
}

// meanDay asks the sheet of the trench for a day of mean flow and rain.
func (v *view) meanDay(d *house.DrainParts) wanted {
	t, c, days := d.Trench, &v.Proof.Stated.Totals.Chain, float64(len(v.Proof.Stated.Days))
	in, load := float64(c.Effluent.Inflow+c.Carried.Inflow)/days, c.Effluent.Load.Plus(c.Carried.Load).Times(1/days)
	return wanted{"trench-day", "", map[string]string{"length": inUnit(float64(t.Length), "m"), "width": inUnit(float64(t.Width), "m"), "gravel_depth": inUnit(float64(t.Gravel), "m"),
		"pores": inUnit(t.Pores, ""), "catch": inUnit(float64(t.Catch), "m2"), "runs_off": inUnit(t.RunsOff, ""), "cover_holds": inUnit(float64(t.Cover), "L"),
		"long": inUnit(t.Soil.Long, "mm/d"), "fresh": inUnit(t.Soil.Fresh, "mm/d"), "trees": inUnit(float64(t.Grove.Trees), ""), "age": inUnit(d.Age, "years"),
		"south": yesNo(v.Proof.Run.House.Place.Latitude < 0), "inflow": inUnit(in, "L"), "bod": inUnit(load.BOD, "g"), "salt": inUnit(load.Salt, "g"), "nitrogen": inUnit(load.Nitrogen, "g"),
		"rain": inUnit(float64(c.CatchRain)/days/float64(t.Catch), "mm"), "gravel": inUnit(0, "L"), "cover": inUnit(float64(t.Cover)/2, "L")}}
}

func yesNo(is bool) string {
	if is {
		return "yes"
	}
	return "no"
}

// months names the months of a chart.
func (v *view) months(d *draw.ColumnChart) {
	for m := range 12 {
		d.Names[m], d.Short[m] = v.month(m+1), v.drawn("short."+strconv.Itoa(m+1))
	}
}

func (v *view) treesSaid(d *house.DrainParts) (list []string, u workings) {
	g := &d.Trench.Grove
	if g.Trees == 0 {
		return []string{v.Say("waste.no_trees")}, u
	}
	t := &v.Proof.Stated.Totals.Chain.Trench
	end := d.Age + v.years()
	list = append(list, v.Count("waste.trees_drink", g.Trees, "litres", withUnit(float64(t.Trees)/v.years(), "L"), "gravel", withUnit(float64(t.Deep)/v.years(), "L")),
		v.Say("waste.trees_age", "young", grouped(d.Age), "old", grouped(end), "crown_young", amount(float64(g.CrownAt(d.Age))), "crown_old", amount(float64(g.CrownAt(end)))),
		v.Say("waste.trees_bear"))
	for _, says := range v.treeConflicts(d) {
		list = append(list, v.Say("sentence", "says", capital(says)))
	}
	return list, v.unfold(wanted{"trench-trees", "", map[string]string{"age": inUnit(d.Age, "years"), "distance": inUnit(v.treesAt(), "m")}})
}

// treesAt is how far the trees stand from the trench, m.
func (v *view) treesAt() float64 {
	if s := v.File.Septic; s != nil && s.Trench != nil && s.Trench.Trees != nil {
		return float64(s.Trench.Trees.Distance)
	}
	return 0
}

func (v *view) treeConflicts(d *house.DrainParts) []string {
	if len(d.Rules) > 0 {
		return nil // the file's own table is told with the distances
	}
	return waste.TreeConflict(v.treesAt())
}

// spacing is the distances as they are beside those that tables ask for.
func (v *view) spacing(d *house.DrainParts) (g grid, breaches []string) {
	tables := waste.SetbackTables()
	if len(d.Rules) > 0 {
		tables = []waste.SetbackTable{{Name: v.Say("setbacks.own"), Rows: d.Rules}}
	}
	g = grid{Label: v.Say("setbacks.title"), Heads: []string{v.Say("setbacks.what"), v.Say("setbacks.is")}, Words: 1}
	type way struct{ from, to string }
	var order []way
	known := map[way]bool{}
	note := func(list []waste.Setback) {
		for _, s := range list {
			if k := (way{s.From, s.To}); !known[k] {
				known[k] = true
				order = append(order, k)
			}
		}
	}
	note(d.Spacing)
	for _, t := range tables {
		g.Heads = append(g.Heads, t.Name)
		note(t.Rows)
		for _, b := range waste.Breaches(t.Rows, d.Spacing) {
			breaches = append(breaches, v.Say("setbacks.breach", "from", b.From, "to", b.To, "is", amount(b.Planned), "table", t.Name, "least", amount(b.Least)))
		}
	}
	find := func(list []waste.Setback, k way) string {
		for _, s := range list {
			if s.From == k.from && s.To == k.to {
				return amount(s.Least)
			}
		}
		return "–"
	}
	for _, k := range order {
		row := []string{v.Say("setbacks.way", "from", k.from, "to", k.to), find(d.Spacing, k)}
		for _, t := range tables {
			row = append(row, find(t.Rows, k))
		}
		g.Rows = append(g.Rows, row)
	}
	return g, breaches
}

// plan writes the file's distances as the sheet of distances reads them.
func (v *view) plan(d *house.DrainParts) map[string]string {
	args := map[string]string{"trees": inUnit(v.treesAt(), "m")}
	for _, s := range d.Spacing {
		if args["plan"] != "" {
			args["plan"] += ", "
		}
		args["plan"] += s.From + " to " + s.To + " " + inUnit(s.Least, "m")
	}
	return args
}

// rubbish is what leaves the house otherwise, by the mean of the world.
func (v *view) rubbish() []figure {
	r := garden.HouseRubbish(v.meanPersons())
	return []figure{{Says: v.Say("waste.rubbish_taken"), Value: r.Recycled * 365.25, Unit: "kg"}, {Says: v.Say("waste.rubbish_left"), Value: r.Leaves * 365.25, Unit: "kg"}}
}

// heap is what ripens to compost in a mean year.
func (v *view) heap() []figure {
	s := sums{v: v, years: v.years()}
	if !v.hasBeds() || !v.Proof.Run.House.Garden.Scraps {
		return nil
	}
	s.add("heap.kitchen", v.Seen.Heap.Kitchen, "kg", false)
	s.add("heap.beds", v.Seen.Heap.Beds, "kg", false)
	s.add("heap.manure", v.Seen.Heap.Manure, "kg", false)
	s.add("heap.ripe", v.Seen.Heap.Ripe, "kg", false)
	return s.rows
}

// wasteExample is the least that tank and trench need, as it is written.
const wasteExample = `septic:
  holds: 3 kL
  bedrooms: 3
  trench: {length: 18 m, soil: loam-strong, percolation: 12 min}
  setbacks:
    - {from: tank, to: building, is: 8 m}
    - {from: field, to: well, is: 60 m}`
