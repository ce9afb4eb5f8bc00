package report

import (
	"fmt"
	"strings"

	"suffice/garden"
	"suffice/hourly"
	"suffice/people"
	"suffice/quantity"
	"suffice/reuse"
	"suffice/waste"
)

// waste tells the verdict on sewage.
func (p *Proof) waste(w *lines) {
	d := p.Run.House.Drains
	if d == nil || d.Septic == nil {
		return
	}
	b := &p.Stated.Waste
	word := "no want is stated, so no verdict"
	if b.Wanted {
		word = "FALLS SHORT"
		if b.Suffices() {
			word = "SUFFICES"
		}
	}
	w.line("%-7s %s", "WASTE", word)
	if d.Trench == nil {
		w.line("        no trench is described: what leaves the tank is taken away")
	} else {
		w.line("        foul water comes up on %s days a year", short(b.ShortDaysPerYear()))
		if b.ShortDays > 0 {
			p.years(w, b)
			w.line("        longest spell %s, from %s", plural(b.Spell.Days, "day"), p.said(b.Spell.First))
		}
	}
	if n := p.Stated.Totals.Chain.Desludgings; n > 0 {
		w.line("        the tank is emptied every %s years", short(float64(p.Years())/float64(n)))
	} else {
		w.line("        the tank is never full enough to be emptied in %s", plural(p.Years(), "year"))
	}
	w.line("")
}

// food tells the verdict on what the beds bear.
func (p *Proof) food(w *lines) {
	if p.Run.House.Garden == nil && !p.grows() {
		return
	}
	f := &p.Stated.Food
	word, want := "no want is stated, so no verdict", ""
	if f.Wanted {
		word, want = "FALLS SHORT", fmt.Sprintf("; the file asks for %s", percent(f.Want))
		if f.Suffices() {
			word = "SUFFICES"
		}
	}
	w.line("%-7s %s", "FOOD", word)
	w.line("        %s of the household's vegetables, if all can be kept%s", percent(f.Share), want)
	w.line("        %s if nothing is kept beyond its month; %s in the poorest year", percent(f.Fresh), percent(f.Worst))
	w.line("        %s of what people burn: vegetables are mostly water", percent(f.Energy))
	w.line("")
}

// grows reports whether vegetables stand in the planter.
func (p *Proof) grows() bool {
	d := p.Run.House.Drains
	return d != nil && d.Planter != nil && d.Planter.Plot != nil
}

// chainYear tells the way of used water in a mean year.
func (p *Proof) chainYear(w *lines) {
	d := p.Run.House.Drains
	if d == nil {
		return
	}
	t, years := &p.Stated.Totals.Chain, float64(p.Years())
	row := func(name string, litres quantity.Litres) {
		if litres != 0 {
			w.line("  %-34s %10s L", name, grouped(float64(litres)/years))
		}
	}
	w.line("\nUsed water in a mean year")
	for s := range reuse.Sources {
		row("down the drain of "+drainWords[s], t.Used[s])
	}
	if d.Planter != nil {
		row("to the planter", t.Fed.Litres)
		row("past it: illness, harsh chemicals", t.Diverted.Litres)
		row("past it: a surge", t.Surged.Litres)
		row("poured on it against salt", t.Poured.Litres)
		row("rain on it", t.Rain)
		row("  given off by its plants", t.Evaporated)
		row("  its plants wanted and had not", t.PlanterWanted-t.Evaporated)
		row("  over its rim", t.Rim.Litres)
		row("  to the flush well", t.Drained.Litres)
	}
	if d.Well != nil {
		row("topped up from the tanks", t.Topped.Litres)
		row("overflow of the flush well", t.WellOverflow.Litres)
	}
	row("flushed", t.Flushed)
	row("wanted for flushing and not had", t.Flush-t.Flushed)
	row("sewage", t.Sewage.Inflow)
	if d.Trench != nil {
		o := &t.Trench
		row("rain on the trench", t.CatchRain)
		row("  ran off on the surface", o.RunOff)
		row("  given off by grass", o.Grass)
		row("  drunk by its trees", o.Trees)
		row("  into the ground", o.Infiltrated)
		row("  foul water on the ground", o.Surfaced)
	}
	p.chainWords(w)
}

var drainWords = [reuse.Sources]string{"the basins", "the shower", "the bath", "the laundry", "the dishwasher", "the kitchen"}

// foodYear tells what planter, beds and animals bear in a mean year.
func (p *Proof) foodYear(w *lines) {
	f := &p.Stated.Food
	if len(f.Years) == 0 || p.Run.House.Garden == nil && !p.grows() {
		return
	}
	years := float64(len(f.Years))
	var all garden.Harvest
	var eggs, milk, honey float64
	var lost hourly.Lost
	for i := range f.Years {
		y := &f.Years[i]
		for m := range all.Eaten {
			all.Eaten[m] += y.Harvest.Eaten[m] / years
			all.Picked[m] += y.Harvest.Picked[m] / years
		}
		eggs, milk, honey = eggs+y.Eggs/years, milk+y.Milk/years, honey+y.Honey/years
		lost.Add(&y.Lost)
	}
	w.line("\nFood in a mean year")
	w.line("  %-34s %10s kg", "picked", short(all.Total()))
	for _, l := range []struct {
		why string
		kg  float64
	}{{"lost for want of light", lost.ToLight}, {"lost for want of water", lost.ToWater}, {"lost to salt", lost.ToSalt},
		{"lost for want of nitrogen", lost.ToNitrogen}, {"lost for want of pollination", lost.ToFlowers}, {"perished on the plant", lost.Died}} {
		if l.kg > 0 {
			w.line("    %-32s %10s kg", l.why, short(l.kg/years))
		}
	}
	w.line("  %-34s %10s of %s", "plantings that failed", short(float64(lost.Failed)/years), short(float64(lost.Plantings)/years))
	for _, s := range []struct {
		what, unit string
		n          float64
	}{{"eggs", "", eggs}, {"milk", " L", milk}, {"honey", " kg", honey}} {
		if s.n > 0 {
			w.line("  %-34s %10s%s", s.what, short(s.n), s.unit)
		}
	}
	p.bedWater(w)
	line := "  by month, kg eaten: "
	for m, kg := range all.Eaten {
		line += fmt.Sprintf(" %s %.0f", monthNames[m+1][:3], kg)
	}
	w.line("%s", line)
}

// bedWater tells what the beds outside the planter, the lawn among them, got and gave in a mean year.
func (p *Proof) bedWater(w *lines) {
	if p.Run.House.Garden == nil {
		return
	}
	t, years := &p.Stated.Totals.Chain, float64(p.Years())
	row := func(name string, litres quantity.Litres) {
		if litres > 0 {
			w.line("  %-34s %10s L", name, grouped(float64(litres)/years))
		}
	}
	row("watering of the beds, from the tanks", t.BedGiven-t.LawnGiven)
	row("watering of the lawn, from the tanks", t.LawnGiven)
	if t.LawnHours > 0 {
		w.line("    in %s hours, %s L in the thirstiest; beds and lawn are watered while the tanks hold %s",
			short(float64(t.LawnHours)/years), grouped(float64(t.LawnMost)), percent(p.Run.House.Garden.Above))
	}
	row("rain on beds and lawn", t.BedRain)
	row("  given off by their plants", t.Beds.Evaporated)
	row("  drained below their roots", t.Beds.Drained)
	row("  blown or splashed away", t.Beds.Sprayed)
}

// septicRules holds the septic tank against printed rules of size, and the trench against rules of area.
func (p *Proof) septicRules(w *lines) {
	d := p.Run.House.Drains
	if d == nil || d.Septic == nil {
		return
	}
	told := d.Told
	told.Daily = float64(p.Stated.Totals.Chain.Sewage.Inflow) / float64(len(p.Stated.Days))
	w.line("\nSeptic tank of %s beside printed rules; the place decides which one holds (what a key names: suffice sheet septic-tank)", quantity.Text(float64(d.Septic.Holds), "L"))
	for _, rule := range waste.TankRules() {
		litres, err := rule.Capacity(told)
		if err != nil {
			w.line("  %-28s says nothing here: %v", rule.Name, err)
			continue
		}
		w.line("  %-28s %10s L   %s", rule.Name, grouped(litres), rule.Source)
	}
	if d.Trench == nil || d.Seeps == 0 {
		return
	}
	w.line("Trench floor of %s beside rules for %s s/mm (suffice sheet drain-area)", short3(float64(d.Trench.Bottom()))+" m2", short(d.Seeps))
	for _, rule := range waste.FieldRules() {
		area, err := rule.Area(told, d.Seeps, false)
		if err != nil {
			w.line("  %-28s says nothing here: %v", rule.Name, err)
			continue
		}
		w.line("  %-28s %10s m2  %s%s", rule.Name, short3(area), rule.Source, stretched(rule, told))
	}
}

// stretched says of a rule that it is used beyond the flows it is printed for.
func stretched(rule waste.FieldRule, told waste.House) string {
	if rule.Printed(told) {
		return ""
	}
	return "; not printed for so small or large a flow"
}

// chainWarnings says what planter and septic works conflict with.
func (p *Proof) chainWarnings() (all []string) {
	d := p.Run.House.Drains
	if d == nil {
		return nil
	}
	if d.Planter != nil {
		say, _ := reuse.Warnings(d.Planter.Bedding)
		all = append(all, say...)
	}
	if d.Septic == nil {
		return all
	}
	tables := waste.SetbackTables()
	if len(d.Rules) > 0 {
		tables = []waste.SetbackTable{{Name: "the house file's own table", Rows: d.Rules}}
	}
	for _, t := range tables {
		for _, b := range waste.Breaches(t.Rows, d.Spacing) {
			all = append(all, fmt.Sprintf("%s to %s is %g m: %s asks for at least %g m", b.From, b.To, b.Planned, t.Name, b.Least))
		}
	}
	return append(all, "sewage carries germs and its gases kill in closed pits: nobody enters a septic tank; local code and a licensed person decide on tank, trench and distances")
}

// wasteJSON is the budget of waste, in days with foul water on the ground.
func (p *Proof) wasteJSON() BudgetJSON {
	d := p.Run.House.Drains
	return p.budgetJSON(&p.Stated.Waste, d != nil && d.Septic != nil)
}

// foodJSON is the budget of food.
func (p *Proof) foodJSON() BudgetJSON {
	if p.Run.House.Garden == nil && !p.grows() {
		return BudgetJSON{}
	}
	f := &p.Stated.Food
	out := BudgetJSON{Computed: true, ShareMet: &f.Share, Fresh: &f.Fresh, Energy: &f.Energy, Worst: &f.Worst}
	if f.Wanted {
		suffices := f.Suffices()
		out.Want, out.Suffices = &f.Want, &suffices
	}
	return out
}

// chainFlows adds the way of used water to the flows.
func (p *Proof) chainFlows(flow func(from, to, unit string, total float64)) {
	d := p.Run.House.Drains
	if d == nil {
		return
	}
	t := &p.Stated.Totals.Chain
	water := func(from, to string, v reuse.Water) {
		flow(from, to, "L", float64(v.Litres))
		flow(from, to+" (salt)", "g", v.Salt)
		flow(from, to+" (BOD)", "g", v.BOD)
		flow(from, to+" (nitrogen)", "g", v.Nitrogen)
	}
	if d.Planter != nil {
		water("drains", "planter", t.Fed)
		water("outdoor", "planter", t.Poured)
		flow("sky", "planter", "L", float64(t.Rain))
		flow("planter", "air", "L", float64(t.Evaporated))
		water("planter", "over the rim", t.Rim)
		flow("planter", "plants (nitrogen)", "g", t.Nitrogen)
		flow("planter", "decay (BOD)", "g", t.Decayed)
	}
	if d.Well != nil {
		water("planter", "flush well", t.Drained)
		water("flushing", "flush well", t.Topped)
		flow("flush well", "toilets", "L", float64(t.Flushed))
		water("flush well", "overflow to sewage", t.WellOverflow)
	}
	to := "sewer"
	if d.Septic != nil {
		to = "septic tank"
	}
	flow("house", to, "L", float64(t.Sewage.Inflow))
	flow("house", to+" (salt)", "g", t.Sewage.Load.Salt)
	flow("house", to+" (BOD)", "g", t.Sewage.Load.BOD)
	flow("house", to+" (nitrogen)", "g", t.Sewage.Load.Nitrogen)
	if d.Septic != nil {
		flow("septic tank", "trench", "L", float64(t.Effluent.Inflow))
		flow("septic tank", "sludge taken away", "L", float64(t.Removed.Inflow))
	}
	if d.Trench != nil {
		flow("sky", "trench", "L", float64(t.CatchRain))
		flow("trench", "run-off", "L", float64(t.Trench.RunOff))
		flow("trench", "grass", "L", float64(t.Trench.Grass))
		flow("trench", "trees", "L", float64(t.Trench.Trees))
		flow("trench", "ground", "L", float64(t.Trench.Infiltrated))
		flow("trench", "surface", "L", float64(t.Trench.Surfaced))
	}
}

// chainColumns are the hours of used water, waste and beds.
func chainColumns(r *hourly.Run) (list []RowColumn) {
	h := r.House
	if d := h.Drains; d != nil {
		if d.Planter != nil {
			list = append(list,
				RowColumn{"greywater_l", func(v *RowView) float64 { return float64(v.Row.Chain.Grey.Fed.Litres) }},
				RowColumn{"planter_wanted_l", func(v *RowView) float64 { return float64(v.Row.Chain.Planter.Wanted) }},
				RowColumn{"planter_evaporated_l", func(v *RowView) float64 { return float64(v.Row.Chain.Planter.Evaporated) }},
				RowColumn{"planter_drained_l", func(v *RowView) float64 { return float64(v.Row.Chain.Planter.Drained.Litres) }},
				RowColumn{"planter_soil_l", func(v *RowView) float64 { return float64(v.After.Chain.Planter.Soil.Litres) }},
				RowColumn{"planter_gravel_l", func(v *RowView) float64 { return float64(v.After.Chain.Planter.Gravel.Litres) }},
				RowColumn{"planter_salt_g", func(v *RowView) float64 {
					return v.After.Chain.Planter.Soil.Salt + v.After.Chain.Planter.Gravel.Salt
				}})
		}
		if d.Well != nil {
			list = append(list,
				RowColumn{"well_topped_up_l", func(v *RowView) float64 { return float64(v.Row.Chain.Topped.Litres) }},
				RowColumn{"well_l", func(v *RowView) float64 { return float64(v.After.Chain.Well.Held.Litres) }},
				RowColumn{"well_age_h", func(v *RowView) float64 { return v.After.Chain.Well.Age }})
		}
		list = append(list,
			RowColumn{"flush_wanted_l", func(v *RowView) float64 { return float64(v.Row.Chain.Flush) }},
			RowColumn{"flushed_l", func(v *RowView) float64 { return float64(v.Row.Chain.Flushed) }},
			RowColumn{"sewage_l", func(v *RowView) float64 { return float64(v.Row.Chain.Sewage.Inflow) }})
		if d.Septic != nil {
			list = append(list, RowColumn{"septic_out_l", func(v *RowView) float64 { return float64(v.Row.Chain.Septic.Outflow) }},
				RowColumn{"sludge_l", func(v *RowView) float64 { return float64(v.After.Chain.Septic.Sludge + v.After.Chain.Septic.Scum) }})
		}
		if d.Trench != nil {
			list = append(list, RowColumn{"trench_l", func(v *RowView) float64 { return float64(v.After.Chain.Trench.Gravel) }},
				RowColumn{"trench_ground_l", func(v *RowView) float64 { return float64(v.Row.Chain.Trench.Infiltrated) }},
				RowColumn{"trench_trees_l", func(v *RowView) float64 { return float64(v.Row.Chain.Trench.Trees) }},
				RowColumn{"trench_surfaced_l", func(v *RowView) float64 { return float64(v.Row.Chain.Trench.Surfaced) }})
		}
	}
	if g := h.Garden; g != nil {
		for b := range g.Beds {
			word := strings.ReplaceAll(strings.ToLower(g.Beds[b].Plot.Bed.Name), " ", "_")
			list = append(list,
				RowColumn{word + "_given_l", func(v *RowView) float64 { return float64(v.Row.Chain.BedIn[b].Given) }},
				RowColumn{word + "_evaporated_l", func(v *RowView) float64 { return float64(v.Row.Chain.BedOut[b].Evaporated) }},
				RowColumn{word + "_soil_l", func(v *RowView) float64 { return float64(v.After.Chain.Beds[b].Held) }})
		}
	}
	if h.Drains != nil || h.Garden != nil {
		list = append(list, RowColumn{people.Outdoor.String() + "_beds_and_animals_l", func(v *RowView) float64 {
			return float64(v.Row.Chain.Beds + v.Row.Chain.Animals)
		}})
	}
	return list
}
