package house

import (
	"fmt"

	"suffice/hotwater"
	"suffice/people"
	"suffice/power"
	"suffice/quantity"
	"suffice/water"
)

// complete puts in the defaults that depend on other values of the file.
func (r *reader) complete(f *File) {
	if w := f.Weather; w != nil && w.Rain != "" {
		put(r, "weather.years", &w.Years, "matched", "matched", "this program's choice: only what was measured on the same days")
	}
	if f.People != nil {
		for i := range f.People.Uses {
			u := &f.People.Uses[i]
			put(r, fmt.Sprintf("people.uses[%d].savable", i), &u.Savable, u.Water != "drinking", yesOrNo(u.Water != "drinking"), "all but drinking can be cut down, this program's choice")
		}
	}
	if f.Water != nil {
		for i := range f.Water.Roofs {
			roof := &f.Water.Roofs[i]
			s := surface(roof.Surface)
			put(r, fmt.Sprintf("water.roofs[%d].coefficient", i), &roof.Coefficient, s.Usual, share(s.Usual), fmt.Sprintf("%s: %s, %s", s.Source, s.Name, s.Stands))
		}
	}
	if f.Power != nil {
		r.completePower(f.Power)
	}
	if f.HotWater != nil {
		r.completeHotWater(f.HotWater)
	}
	if f.Rules != nil {
		r.completeRules(f.Rules)
	}
	r.completeChain(f)
	if layered(f.Rooms) {
		put(r, "site.earth", &f.Site.Earth, "sand or gravel", "sand or gravel", "iso13370, where the ground is not known")
	}
}

// floors is the charge at which a bank of a kind is usually cut off; common practice, no source.
var floors = map[string]float64{"lead-acid": 0.5, "lithium": 0.1}

func (r *reader) completePower(p *Power) {
	floor := floors[p.Battery.Kind]
	put(r, "power.battery.floor", &p.Battery.Floor, floor, share(floor), "usual for "+p.Battery.Kind+", common practice, no source")
	if g := p.Generator; g != nil {
		put(r, "power.generator.no_load", &g.NoLoad, power.NoLoadFuel, fmt.Sprintf("%.1f %%", power.NoLoadFuel*100), "skarstein-uhlen-1989, remembered")
	}
}

// usual is the source of what package hotwater takes for usual.
const usual = "usual in the trade, common practice, no source"

func (r *reader) completeHotWater(h *HotWater) {
	u := hotwater.Usual()
	if c := h.Collector; c != nil {
		at := "hot_water.collector."
		put(r, at+"k50", &c.K50, u.Collector.K50, quantity.Text(u.Collector.K50, ""), usual)
		put(r, at+"flow", &c.Flow, u.Collector.Flow, quantity.Text(u.Collector.Flow, "L/h"), usual)
		put(r, at+"exchanger", &c.Exchanger, u.Collector.Exchanger, quantity.Text(u.Collector.Exchanger, "W/K"), usual)
		put(r, at+"difference", &c.Difference, u.Collector.Difference, quantity.Text(float64(u.Collector.Difference), "K"), usual)
		put(r, at+"pump", &c.Pump, u.Collector.Pump, watts(u.Collector.Pump), usual)
		if c.Frost == "antifreeze" {
			put(r, at+"freezes_at", &c.FreezesAt, u.Collector.FreezesAt, quantity.Text(float64(u.Collector.FreezesAt), "degC"), usual)
		}
	}
	at := "hot_water.store."
	put(r, at+"loss", &h.Store.Loss, u.Store.Loss, quantity.Text(u.Store.Loss, "W/K"), usual)
	put(r, at+"upper_share", &h.Store.UpperShare, u.Store.UpperShare, share(u.Store.UpperShare), usual)
	put(r, at+"limit", &h.Store.Limit, u.Store.Limit, quantity.Text(float64(u.Store.Limit), "degC"), usual)
	if b := h.Backup; b != nil {
		place := map[string]string{"gas": "after", "electricity": "inside"}[b.By]
		put(r, "hot_water.backup.place", &b.Place, place, place, "where such a heater usually stands, common practice, no source")
		efficiency := map[string]float64{"gas": 0.85, "electricity": 1}[b.By]
		put(r, "hot_water.backup.efficiency", &b.Efficiency, efficiency, share(efficiency), usual)
	}
}

// put sets a value that the file leaves out, and lists it.
func put[T any](r *reader, where string, to **T, v T, text, source string) {
	if *to == nil {
		*to = &v
		r.defaults = append(r.defaults, Default{where, text, source})
	}
}

func (r *reader) completeRules(rules *Rules) {
	until := func(rule string, below float64, to **float64) {
		v := min(1, below+people.Back)
		put(r, "rules."+rule+".until", to, v, share(v), fmt.Sprintf("%s above the line, common practice, no source", share(people.Back)))
	}
	if c := rules.ChargeBelow; c != nil {
		until("charge_below", c.Charge, &c.Until)
	}
	if t := rules.TankBelow; t != nil {
		until("tank_below", t.Tank, &t.Until)
	}
	if t := rules.InUseBelow; t != nil {
		until("tank_in_use_below", t.Tank, &t.Until)
	}
}

// surfaces gives the published surface that each word of the house file stands for.
var surfaces = map[string]string{
	"metal": "metal", "tiles": "clay or concrete tile", "glazed tiles": "glazed tile", "fibre cement": "fibre cement", "thatch": "thatch",
	"smooth": "pitched smooth", "rough": "pitched rough", "flat": "flat without gravel", "gravel": "flat with gravel", "green": "green extensive",
	"other": "any roof",
}

func surface(word string) water.Surface {
	for _, s := range water.Surfaces() {
		if s.Name == surfaces[word] {
			return s
		}
	}
	panic(fmt.Sprintf("house: surface %q has no coefficient", word))
}

func yesOrNo(v bool) string {
	if v {
		return "yes"
	}
	return "no"
}

// share prints a share in percent, without the noise of binary fractions.
func share(v float64) string {
	percent, err := quantity.ReadIn(fmt.Sprintf("%.10g", v), "%")
	if err != nil {
		panic(fmt.Sprintf("house: share %g: %v", v, err))
	}
	return fmt.Sprintf("%.10g %%", percent)
}
