package house

import (
	"fmt"
	"slices"

	"suffice/internal/words"
	"suffice/quantity"
)

func (w *Water) tankNames() []string {
	names := make([]string, len(w.Tanks))
	for i := range w.Tanks {
		names[i] = w.Tanks[i].Name
	}
	return names
}

func (r *reader) checkWater(w *Water) {
	unique(r, "water.roofs", w.Roofs, func(f *Roof) string { return f.Name })
	unique(r, "water.tanks", w.Tanks, func(t *Tank) string { return t.Name })
	unique(r, "water.treatment", w.Treatment, func(t *Treatment) string { return t.Name })
	for _, list := range []string{"water.roofs", "water.tanks"} {
		empty := list == "water.roofs" && len(w.Roofs) == 0 || list == "water.tanks" && len(w.Tanks) == 0
		if empty && r.given(list) && r.sound(list) {
			r.fault(list, "is an empty list: describe at least one, or take water out")
		}
	}
	for i := range w.Roofs {
		if into := w.Roofs[i].Into; into != nil && r.sound("water.tanks") && len(w.Tanks) > 0 {
			r.oneOf(fmt.Sprintf("water.roofs[%d].into", i), *into, "tank", w.tankNames())
		}
	}
	for i := range w.Tanks {
		r.checkTank(w, i)
	}
	r.checkOverflows(w)
	if w.Supply != nil {
		r.checkSupply(w.Supply)
	}
	r.checkTreatment(w)
	if w.Delivery != nil {
		r.checkDelivery(w)
	}
}

func litres(v quantity.Litres) string { return quantity.Text(float64(v), "L") }

func (r *reader) checkTank(w *Water, i int) {
	t, where := &w.Tanks[i], fmt.Sprintf("water.tanks[%d]", i)
	if r.sound(where+".holds", where+".dead", where+".fire") && t.Dead+t.Fire >= t.Holds {
		r.fault(where+".holds", "%s is no more than dead and fire water together, %s: nothing would be left to draw", litres(t.Holds), litres(t.Dead+t.Fire))
	}
	if r.sound(where+".holds", where+".start") && t.Start.Litres > t.Holds {
		r.fault(where+".start", "%s is more than the tank holds, %s", litres(t.Start.Litres), litres(t.Holds))
	}
	if near := nearest(t.Overflow, w.tankNames()); near != t.Overflow && r.sound(where+".overflow") && words.Distance(near, t.Overflow) <= min(2, len(near)/2) {
		r.fault(where+".overflow", "%q is no tank, but nearly the name of tank %q: write that, or another word for a place outside", short(t.Overflow), near)
	}
}

// checkOverflows refuses tanks that spill into each other in a ring.
func (r *reader) checkOverflows(w *Water) {
	names := w.tankNames()
	for i := range w.Tanks {
		at := i
		for range w.Tanks {
			if at = slices.Index(names, w.Tanks[at].Overflow); at < 0 {
				break
			}
			if at == i {
				r.fault(fmt.Sprintf("water.tanks[%d].overflow", i), "leads back to tank %q: let the last tank spill to the ground", names[i])
				return
			}
		}
	}
}

func (r *reader) checkSupply(s *Supply) {
	const at = "water.supply"
	pump, gravity := s.By == "pump", s.By == "gravity"
	for _, k := range []struct {
		name          string
		given, needed bool
		senseless     bool
		example       string
	}{
		{"head", s.Head != nil, pump || s.Bore != nil || s.PipeLength != nil, false, "14 m"},
		{"flow", s.Flow != nil, pump, gravity, "1.8 m3/h"},
		{"efficiency", s.Efficiency != nil, pump, gravity, "35 %"},
		{"pipe_length", s.PipeLength != nil, pump || s.Bore != nil || gravity && s.Head != nil, false, "35 m"},
		{"bore", s.Bore != nil, pump || s.PipeLength != nil || gravity && s.Head != nil, false, "32 mm"},
	} {
		where := at + "." + k.name
		switch {
		case !r.sound(where, at+".by"):
		case k.needed && !k.given:
			r.fault(where, "is missing for a supply by %s: write for example  %s: %s", s.By, k.name, k.example)
		case k.senseless && k.given:
			r.fault(where, "means nothing where water falls by itself: take it out, or write  by: pump")
		}
	}
}

func (r *reader) checkTreatment(w *Water) {
	for i, t := range w.Treatment {
		where := fmt.Sprintf("water.treatment[%d]", i)
		noFlow := t.Flow == nil && (w.Supply == nil || w.Supply.Flow == nil)
		if t.Power > 0 && t.Running == "flow" && noFlow && r.sound(where+".power", where+".running", where+".flow", "water.supply") {
			r.fault(where+".flow", "is missing: a stage that takes power only while water flows needs it; write for example  flow: 0.5 m3/h")
		}
	}
}

func (r *reader) checkDelivery(w *Water) {
	const at = "water.delivery"
	d := w.Delivery
	if d.Into != nil && r.sound("water.tanks") && len(w.Tanks) > 0 {
		r.oneOf(at+".into", *d.Into, "tank", w.tankNames())
	}
	usable, sound := quantity.Litres(0), r.sound("water.tanks", at+".order_below")
	for i, t := range w.Tanks {
		where := fmt.Sprintf("water.tanks[%d]", i)
		sound = sound && r.sound(where+".holds", where+".dead", where+".fire")
		usable += t.Holds - t.Dead - t.Fire
	}
	if sound && d.OrderBelow >= usable {
		r.fault(at+".order_below", "%s is no less than what full tanks give, %s: water would be ordered all the time", litres(d.OrderBelow), litres(usable))
	}
}
