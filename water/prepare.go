package water

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"suffice/quantity"
)

// longDry is how dry a roof is when a run begins, h: longer than any diverter or film needs.
const longDry = 10 * 366 * 24

// Prepare checks a design and builds it; the error joins every fault.
func Prepare(d Design) (*Works, error) {
	if err := d.Check(); err != nil {
		return nil, err
	}
	w := &Works{design: d, roofs: slices.Clone(d.Roofs), taps: NewTaps(d.Supply, d.Treatment), order: d.order(), joined: d.ChangesItself && len(d.Tanks) > 1}
	w.design.Roofs, w.design.Tanks, w.design.Treatment = slices.Clone(d.Roofs), slices.Clone(d.Tanks), slices.Clone(d.Treatment)
	for i := range d.Roofs {
		w.area += d.Roofs[i].Area
	}
	for i := range d.Tanks {
		v := vesselOf(&d.Tanks[i])
		w.vessels = append(w.vessels, v)
		w.full += v.holds - v.reserve
	}
	w.perFull = 1 / w.full
	return w, nil
}

// Start gives the state in which a run begins: tanks as the design says, roofs dry and bare.
func (w *Works) Start() State { return w.start(func(k *Tank) quantity.Litres { return k.Start }) }

// StartAt gives the same with every tank filled to a share, 0 to 1, of what it holds.
func (w *Works) StartAt(share float64) State {
	return w.start(func(k *Tank) quantity.Litres { return quantity.Litres(share) * k.Holds })
}

func (w *Works) start(held func(*Tank) quantity.Litres) State {
	s := State{Dry: longDry}
	for i := range w.design.Tanks {
		s.Tanks[i].Held = held(&w.design.Tanks[i])
	}
	return s
}

// order gives the tanks so that each stands before the one that takes its overflow; nil
// where they run in a ring.
func (d *Design) order() []int {
	var order []int
	above := make([]int, len(d.Tanks)) // tanks that still spill into this one
	for _, k := range d.Tanks {
		if k.Overflow >= 0 && k.Overflow < len(d.Tanks) {
			above[k.Overflow]++
		}
	}
	for len(order) < len(d.Tanks) {
		next := slices.Index(above, 0)
		if next < 0 {
			return nil
		}
		above[next] = -1
		order = append(order, next)
		if to := d.Tanks[next].Overflow; to >= 0 && to < len(d.Tanks) {
			above[to]--
		}
	}
	return order
}

// Check gives every fault of the design at once.
func (d *Design) Check() error {
	faults := []error{
		most("water.roofs", len(d.Roofs), MostRoofs),
		most("water.tanks", len(d.Tanks), MostTanks),
		most("water.treatment", len(d.Treatment), MostStages),
	}
	if len(d.Tanks) == 0 {
		faults = append(faults, errors.New("water: there is no tank: give at least one, or leave the water part out"))
	}
	if len(d.Roofs) > 0 {
		faults = append(faults, within("water: snow melts by mm/(K d)", d.Snow.Factor, 0.1, 100))
	}
	for i := range d.Roofs {
		faults = append(faults, d.Roofs[i].check(len(d.Tanks)))
	}
	for i := range d.Tanks {
		faults = append(faults, d.Tanks[i].check(len(d.Tanks)))
	}
	if len(d.Tanks) > 0 && d.order() == nil {
		faults = append(faults, errors.New("water.tanks: the overflows run in a ring: let one of them lead away"))
	}
	for i := range d.Treatment {
		faults = append(faults, d.Treatment[i].check())
	}
	faults = append(faults,
		within("water.supply: energy in Wh/kL", d.Supply.WattHoursPerKilolitre, 0, 1e5),
		within("water.supply: flow in L/h", float64(d.Supply.MostPerHour), 0, 1e7),
		d.Delivery.check(len(d.Tanks)))
	return errors.Join(faults...)
}

func (r *Roof) check(tanks int) error {
	where := fmt.Sprintf("water.roofs %q", r.Name)
	return errors.Join(
		within(where+": area in m2", float64(r.Area), 0, 1e6),
		within(where+": coefficient", r.Coefficient, 0, 1),
		within(where+": wetting in mm", float64(r.Wetting), 0, 100),
		within(where+": first flush in mm", float64(r.Flush.Depth), 0, 100),
		within(where+": first flush in L", float64(r.Flush.Litres), 0, 1e6),
		r.Flush.check(where),
		known(where+": into", r.Into, tanks),
	)
}

// check refuses a diverter that would be empty again within the rain that filled it.
func (f FirstFlush) check(where string) error {
	if f.Depth == 0 && f.Litres == 0 {
		return nil
	}
	return within(where+": first flush empty again after dry hours", f.AfterDry, 1, longDry)
}

func (k *Tank) check(tanks int) error {
	where := fmt.Sprintf("water.tanks %q", k.Name)
	faults := []error{
		within(where+": holds in L", float64(k.Holds), 1, 1e8),
		within(where+": dead in L", float64(k.Dead), 0, 1e8),
		within(where+": fire in L", float64(k.Fire), 0, 1e8),
		within(where+": leak in L/d", float64(k.Leak), 0, 1e6),
		within(where+": start in L", float64(k.Start), 0, float64(k.Holds)),
	}
	if k.Overflow != Away {
		faults = append(faults, known(where+": overflow", k.Overflow, tanks))
	}
	if k.Reserve() >= k.Holds {
		faults = append(faults, fmt.Errorf("%s: dead storage and fire litres are %v L of %v L: leave something to draw", where, float64(k.Reserve()), float64(k.Holds)))
	}
	return errors.Join(faults...)
}

func (g *Stage) check() error {
	where := fmt.Sprintf("water.treatment %q", g.Name)
	var none error
	if g.Serves == [Kinds]bool{} {
		none = fmt.Errorf("%s: it serves no use: name the uses whose water passes it", where)
	}
	return errors.Join(none,
		within(where+": loss", g.Loss, 0, 0.99),
		within(where+": power in W", float64(g.Standing), 0, 1e5),
		within(where+": energy in Wh/kL", g.WattHoursPerKilolitre, 0, 1e6),
		within(where+": flow in L/h", float64(g.MostPerHour), 0, 1e7))
}

func (v *Delivery) check(tanks int) error {
	if v.Load == 0 {
		return nil
	}
	return errors.Join(
		within("water.delivery: load in L", float64(v.Load), 0, 1e6),
		within("water.delivery: lead in h", float64(v.Lead), 0, 366*24),
		within("water.delivery: order below in L", float64(v.OrderBelow), 0, 1e8),
		within("water.delivery: price", v.Price, 0, 1e9),
		known("water.delivery: into", v.Into, tanks))
}

func most(where string, n, limit int) error {
	if n > limit {
		return fmt.Errorf("%s: %d of them: the most is %d, so put similar ones together", where, n, limit)
	}
	return nil
}

// within refuses what is outside, and what is not a number.
func within(where string, v, low, high float64) error {
	if v >= low && v <= high {
		return nil
	}
	if math.IsNaN(v) {
		return fmt.Errorf("%s: it is not a number", where)
	}
	return fmt.Errorf("%s: %v is out of range: write %v to %v", where, v, low, high)
}

func known(where string, tank, tanks int) error {
	if tank < 0 || tank >= tanks {
		return fmt.Errorf("%s: there is no tank %d among %d", where, tank, tanks)
	}
	return nil
}
