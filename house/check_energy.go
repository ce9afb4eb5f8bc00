package house

import (
	"fmt"
	"math"

	"suffice/power"
	"suffice/quantity"
)

func (r *reader) checkPower(f *File) {
	p := f.Power
	unique(r, "power.arrays", p.Arrays, func(a *Array) string { return a.Name })
	unique(r, "power.loads", p.Loads, func(l *Load) string { return l.Name })
	if len(p.Arrays) > 0 && p.Controller == nil && r.sound("power.controller") {
		r.fault("power.controller", "is missing: panels need one; write for example  controller: {current: 60 A, limit_voltage: 150 V}")
	}
	r.checkBattery(&p.Battery)
	v := &p.Inverter
	if r.sound("power.inverter.peak_efficiency", "power.inverter.full_load_efficiency") && v.FullLoad > v.Peak {
		r.fault("power.inverter.full_load_efficiency", "%s is above the efficiency at its best load, %s: exchange them, or look at the data sheet", share(v.FullLoad), share(v.Peak))
	}
	if v.Starting != nil && *v.Starting < v.Continuous && r.sound("power.inverter.starting", "power.inverter.continuous") {
		r.fault("power.inverter.starting", "%s is less than its continuous power, %s", watts(*v.Starting), watts(v.Continuous))
	}
	if g := p.Generator; g != nil && g.StopAbove <= g.StartBelow && r.sound("power.generator.stop_above", "power.generator.start_below") {
		r.fault("power.generator.stop_above", "%s is not above the charge at which it is started, %s: it would stop at once", share(g.StopAbove), share(g.StartBelow))
	}
	waiting := 0
	for i := range p.Loads {
		r.checkLoad(f, i)
		if p.Loads[i].Waits > 0 {
			waiting++
		}
	}
	if waiting > power.MostWaiting {
		r.fault("power.loads", "%d of them may wait: the most is %d, so put some together", waiting, power.MostWaiting)
	}
}

func watts(v quantity.Watts) string { return quantity.Text(float64(v), "W") }

func (r *reader) checkBattery(b *Battery) {
	const at = "power.battery"
	floor := or(b.Floor, floors[b.Kind])
	if b.Start < floor && r.sound(at+".start", at+".floor", at+".kind") {
		r.fault(at+".start", "%s is below the floor, %s: begin with the same or more", share(b.Start), share(floor))
	}
}

func (r *reader) checkLoad(f *File, i int) {
	l, where := &f.Power.Loads[i], fmt.Sprintf("power.loads[%d]", i)
	if l.Power == nil && l.Energy == nil && r.sound(where+".power", where+".energy") {
		r.fault(where, "says neither power nor energy: write for example  power: 45 W  or  energy: 0.8 kWh/d")
	}
	if l.Waits != math.Trunc(l.Waits) && r.sound(where+".waits") {
		r.fault(where+".waits", "%s are no whole days: write for example 3 days", quantity.Text(l.Waits, "days"))
	}
	if l.Waits > 0 && l.Power == nil && r.sound(where+".power", where+".waits") {
		r.fault(where+".waits", "the task may wait, so its power while it runs is needed: write for example  power: 1.5 kW")
	}
	if l.Drops && l.Waits == 0 && r.sound(where+".drops", where+".waits") {
		r.fault(where+".drops", "only a task that may wait can be given up: write for example  waits: 3 days, or take this key out")
	}
	if l.Gas > 0 && f.Gas == nil && r.sound(where+".gas", "gas") {
		r.fault(where+".gas", "there is no gas in this file: describe gas, or take this key out")
	}
	if l.Power != nil && l.Energy != nil && r.sound(where+".power", where+".energy", where+".hours") {
		hours := 0
		for _, on := range l.Hours {
			if on {
				hours++
			}
		}
		if most := l.Power.For(float64(hours)); *l.Energy > most {
			r.fault(where+".energy", "%s cannot be used in %d hours at %s: give it more hours or more power",
				quantity.Text(float64(*l.Energy), "Wh/d"), hours, watts(*l.Power))
		}
	}
	if l.Starting != nil && l.Power != nil && *l.Starting < *l.Power && r.sound(where+".starting", where+".power") {
		r.fault(where+".starting", "%s is less than it takes while it runs, %s: a motor takes more at the start", watts(*l.Starting), watts(*l.Power))
	}
}

func (r *reader) checkHotWater(f *File) {
	h := f.HotWater
	const at = "hot_water"
	if h.Collector == nil && h.Backup == nil && r.sound(at+".collector", at+".backup") {
		r.fault(at, "nothing heats this store: describe hot_water.collector or hot_water.backup")
	}
	b := h.Backup
	if b == nil {
		return
	}
	switch {
	case !r.sound(at + ".backup.by"):
	case b.By == "gas" && f.Gas == nil && r.sound("gas"):
		r.fault(at+".backup.by", "there is no gas in this file: describe gas, or write  by: electricity")
	case b.By == "electricity" && b.Power == nil && r.sound(at+".backup.power"):
		r.fault(at+".backup.power", "is missing for an electric element: write for example  power: 1.5 kW")
	case b.By == "gas" && or(b.Place, "") == "inside" && b.Power == nil && r.sound(at+".backup.power", at+".backup.place"):
		r.fault(at+".backup.power", "is missing for a burner inside the store: write for example  power: 6 kW")
	case b.By == "electricity" && or(b.Place, "") == "after" && r.sound(at+".backup.place"):
		r.fault(at+".backup.place", "an electric element stands inside the store: write  place: inside, or take this key out")
	}
	if limit := h.Store.Limit; limit != nil && b.Set > *limit && r.sound(at+".backup.set", at+".store.limit") {
		r.fault(at+".backup.set", "%g degC is above the limit of the store, %g degC: set it lower", float64(b.Set), float64(*limit))
	}
}
