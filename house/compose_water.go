package house

import (
	"math"
	"slices"

	"suffice/pump"
	"suffice/quantity"
	"suffice/water"
)

// litresPerCubicMetre is exact by definition of the litre.
const litresPerCubicMetre = 1000

// water builds the water works: the design, and what it comes to.
func (r *reader) water(w *Water) (*water.Design, *water.Works) {
	d := &water.Design{Snow: water.UsualSnow(), ChangesItself: w.ChangesItself, Supply: r.supply(w.Supply)}
	for i := range w.Roofs {
		d.Roofs = append(d.Roofs, roof(w, &w.Roofs[i]))
	}
	for i := range w.Tanks {
		d.Tanks = append(d.Tanks, tank(w, &w.Tanks[i]))
	}
	for i := range w.Treatment {
		d.Treatment = append(d.Treatment, stage(w, &w.Treatment[i]))
	}
	if v := w.Delivery; v != nil {
		d.Delivery = water.Delivery{Load: v.Load, Lead: int(math.Ceil(v.Lead)), OrderBelow: v.OrderBelow, Into: w.tankAt(v.Into)}
		if v.Price != nil {
			d.Delivery.Price = v.Price.Amount
		}
	}
	works, err := water.Prepare(*d)
	r.refuse("water", err)
	return d, works
}

// tankAt gives the index of a named tank, the first where none is named.
func (w *Water) tankAt(name *string) int {
	if name == nil {
		return 0
	}
	return slices.Index(w.tankNames(), *name)
}

func roof(w *Water, f *Roof) water.Roof {
	built := water.Roof{Name: f.Name, Area: f.Area, Coefficient: *f.Coefficient, Wetting: f.Wetting, Into: w.tankAt(f.Into)}
	if flush := w.FirstFlush; flush != nil {
		built.Flush = water.FirstFlush{Depth: flush.Depth, Litres: flush.Litres, AfterDry: flush.AfterDry}
	}
	return built
}

func tank(w *Water, t *Tank) water.Tank {
	built := water.Tank{Name: t.Name, Holds: t.Holds, Dead: t.Dead, Fire: t.Fire, Leak: t.Leak, Start: t.Start.of(t.Holds), Overflow: water.Away}
	if to := slices.Index(w.tankNames(), t.Overflow); to >= 0 {
		built.Overflow = to
	}
	return built
}

// of gives the litres that a level means in a store.
func (l Level) of(holds quantity.Litres) quantity.Litres {
	if math.IsNaN(l.Share) {
		return l.Litres
	}
	return quantity.Litres(l.Share) * holds
}

// tapWater is the temperature at which pipes are reckoned; water is thinner when warmer.
const tapWater quantity.Celsius = 15 // common practice, no source

// supply asks the pump, or the pipe alone, what it moves.
func (r *reader) supply(s *Supply) water.Supply {
	if s == nil {
		return water.Supply{}
	}
	pipe := pump.Pipe{Length: or(s.PipeLength, 0), Bore: or(s.Bore, 0), Roughness: s.Roughness, Fittings: s.Fittings}
	if s.By == "gravity" {
		if s.Head == nil {
			return water.Supply{}
		}
		return water.Supply{MostPerHour: quantity.Litres(pipe.GravityFlow(*s.Head, tapWater) * litresPerCubicMetre)}
	}
	lift := pump.Lift{Static: *s.Head, Pipe: pipe, Flow: *s.Flow, Efficiency: *s.Efficiency, Water: tapWater}
	if err := lift.Faults(); err != nil {
		r.refuse("water.supply", err)
		return water.Supply{}
	}
	return water.Supply{WattHoursPerKilolitre: float64(lift.EnergyPerKilolitre()), MostPerHour: quantity.Litres(lift.Flow * litresPerCubicMetre)}
}

func or[T any](p *T, otherwise T) T {
	if p == nil {
		return otherwise
	}
	return *p
}

// stage turns what a stage takes while water flows into energy for each kilolitre.
func stage(w *Water, t *Treatment) water.Stage {
	built := water.Stage{Name: t.Name, Serves: [water.Kinds]bool(t.Uses), Loss: t.Loss}
	if t.Flow != nil {
		built.MostPerHour = quantity.Litres(*t.Flow * litresPerCubicMetre)
	}
	switch flow := t.Flow; {
	case t.Power == 0:
	case t.Running == "always":
		built.Standing = t.Power
	default:
		if flow == nil {
			flow = w.Supply.Flow
		}
		built.WattHoursPerKilolitre = float64(t.Power.For(1)) / *flow // W over m3/h is Wh/kL
	}
	return built
}
