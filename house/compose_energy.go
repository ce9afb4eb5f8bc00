package house

import (
	"fmt"

	"suffice/hotwater"
	"suffice/power"
	"suffice/quantity"
	"suffice/site/sun"
)

// power builds arrays, bank and loads. It gives the loads as well, for those who name them.
func (r *reader) power(p *Power) *PowerParts {
	parts := &PowerParts{BatteryOutdoors: p.Battery.Where == "outdoors"}
	for i := range p.Arrays {
		a := array(&p.Arrays[i])
		a.Prepare()
		parts.Arrays = append(parts.Arrays, a)
	}
	for i := range p.Loads {
		parts.Loads = append(parts.Loads, load(&p.Loads[i]))
	}
	schedule, err := power.Prepare(parts.Loads)
	r.refuse("power.loads", err)
	parts.System = power.System{
		Controller: power.Controller{Efficiency: 1}, // nothing stands between where there are no panels
		Battery:    r.battery(&p.Battery), Inverter: inverter(&p.Inverter), Loads: schedule,
		ShouldAbove: p.ShouldAbove, CouldAbove: p.CouldAbove,
	}
	if c := p.Controller; c != nil {
		parts.System.Controller = power.Controller{Current: or(c.Current, 0), Efficiency: c.Efficiency}
		parts.LimitVoltage = or(c.LimitVoltage, 0)
	}
	if g := p.Generator; g != nil {
		parts.System.Generator = power.Generator{Power: g.Power, Fuel: g.Fuel, NoLoad: *g.NoLoad, Charger: g.Charger,
			StartBelow: g.StartBelow, StopAbove: g.StopAbove, LeastRun: g.LeastRun}
	}
	r.refuse("power", parts.System.Prepare())
	return parts
}

func array(a *Array) power.Array {
	built := power.Array{Name: a.Name, Peak: a.Peak, Plane: sun.Plane{Slope: a.Slope, Azimuth: a.Azimuth}, NOCT: a.NOCT, Coefficient: a.Coefficient,
		Soiling: a.Soiling, Mismatch: a.Mismatch, Wiring: a.Wiring, Ageing: a.Ageing, Age: a.Age}
	if s := a.Module; s != nil {
		built.String = power.String{OpenVoltage: s.OpenVoltage, Coefficient: or(s.Coefficient, 0), ShortCurrent: or(s.ShortCurrent, 0), Series: s.Series, Parallel: s.Parallel}
	}
	return built
}

func (r *reader) battery(b *Battery) power.Battery {
	kind, known := power.ChemistryNamed(b.Kind)
	if !known {
		r.fault("power.battery.kind", "%q is not known to the power part", b.Kind)
	}
	return power.Battery{Chemistry: kind, Capacity: b.Capacity.in(b.Voltage), Voltage: b.Voltage, Floor: *b.Floor, Start: b.Start}
}

func inverter(v *Inverter) power.Inverter {
	return power.Inverter{Continuous: v.Continuous, Starting: or(v.Starting, 0), Idle: v.Idle,
		PeakEfficiency: v.Peak, FullLoadEfficiency: v.FullLoad, Sleeps: v.Sleeps}
}

func load(l *Load) power.Load {
	return power.Load{Name: l.Name, Need: need(l.Need), Power: or(l.Power, 0), Energy: or(l.Energy, 0), Hours: l.Hours.shares(), Days: l.Days,
		Starting: or(l.Starting, 0), Waits: int(l.Waits), Drops: l.Drops, Gas: l.Gas, WhenAway: l.WhenAway}
}

func need(name string) power.Need {
	for n := range power.Needs {
		if n.String() == name {
			return n
		}
	}
	panic(fmt.Sprintf("house: %q passed as a need", name))
}

// hotWater builds collector, store and backup.
func (r *reader) hotWater(h *HotWater) *HotWaterParts {
	system := &hotwater.System{Store: hotwater.Store{Holds: h.Store.Holds, Loss: *h.Store.Loss, UpperShare: *h.Store.UpperShare, Limit: *h.Store.Limit}}
	if c := h.Collector; c != nil {
		system.Collector = hotwater.Collector{Area: c.Area, Eta0: c.Eta0, A1: c.A1, A2: c.A2, K50: *c.K50, Slope: c.Slope, Azimuth: c.Azimuth,
			Flow: *c.Flow, Exchanger: *c.Exchanger, Difference: *c.Difference, Pump: *c.Pump, Frost: frost[c.Frost], FreezesAt: or(c.FreezesAt, 0)}
	}
	if b := h.Backup; b != nil {
		system.Backup = hotwater.Backup{By: source(b), Set: b.Set, Efficiency: *b.Efficiency, Power: or(b.Power, 0)}
	}
	r.refuse("hot_water", system.Prepare())
	inlet := hotwater.Inlet{Days: h.ColdLag, Swing: h.ColdSwing}
	return &HotWaterParts{System: system, Inlet: inlet, Outdoors: h.Store.Where == "outdoors"}
}

var frost = map[string]hotwater.Frost{"none": hotwater.NoFrost, "drain-back": hotwater.DrainBack, "antifreeze": hotwater.Antifreeze, "recirculate": hotwater.Recirculate}

func source(b *Backup) hotwater.Source {
	switch {
	case b.By == "electricity":
		return hotwater.ElectricUpper
	case *b.Place == "inside":
		return hotwater.GasUpper
	}
	return hotwater.GasAfter
}

// cold refuses strings whose voltage on the coldest morning would ruin the controller.
func (r *reader) cold(p *PowerParts, coldest quantity.Celsius) {
	for i := range p.Arrays {
		r.refuse(fmt.Sprintf("power.arrays[%d].module.series", i), p.Arrays[i].String.Check(p.Arrays[i].Name, coldest, p.LimitVoltage))
	}
}

// Cold holds the strings of all arrays against the coldest air of a record. The error
// names every string whose voltage passes the controller's limit.
func (p *PowerParts) Cold(coldest quantity.Celsius) []error {
	var faults []error
	for i := range p.Arrays {
		if err := p.Arrays[i].String.Check(p.Arrays[i].Name, coldest, p.LimitVoltage); err != nil {
			faults = append(faults, err)
		}
	}
	return faults
}
