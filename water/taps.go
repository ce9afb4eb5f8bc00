package water

import "suffice/quantity"

// noLimit is more than flows in any hour, L; a plain number, so that a sheet can show it.
const noLimit = 1e12

// Taps is the way from the tank to the taps, supply and treatment, with everything worked
// out that depends on the design alone. Read-only; it has no state.
type Taps struct {
	Drawn    [Kinds]float64 // litres drawn from the tank for a litre at the tap, 1 or more
	Pump     float64        // Wh for a litre drawn; 0: by gravity, needs no power
	Treat    [Kinds]float64 // Wh for a litre at the tap, of stages that run while it flows
	Standing float64        // Wh an hour, of stages that run all the time
	Electric [Kinds]bool    // no power for the treatment, none of this water
	Most     float64        // litres drawn in an hour, limit of the supply
	Limits   []Limit        // of stages
}

// A Limit is the flow a stage of treatment lets through.
type Limit struct {
	Serves [Kinds]bool
	Most   float64 // litres drawn in an hour for the kinds it serves
}

// NewTaps works out supply and treatment.
func NewTaps(s Supply, train []Stage) Taps {
	t := Taps{Pump: s.WattHoursPerKilolitre / 1000, Most: noLimit}
	if s.MostPerHour > 0 {
		t.Most = float64(s.MostPerHour)
	}
	for k := range Kinds {
		t.Drawn[k] = 1
	}
	// From the tap back to the tank, so that each stage knows what leaves it for a litre at the tap.
	for i := len(train) - 1; i >= 0; i-- {
		t.take(&train[i])
	}
	return t
}

func (t *Taps) take(g *Stage) {
	t.Standing += float64(g.Standing)
	for k := range Kinds {
		if !g.Serves[k] {
			continue
		}
		t.Treat[k] += t.Drawn[k] * g.WattHoursPerKilolitre / 1000
		t.Electric[k] = t.Electric[k] || g.Standing > 0 || g.WattHoursPerKilolitre > 0
		t.Drawn[k] /= 1 - g.Loss
	}
	if g.MostPerHour > 0 {
		t.Limits = append(t.Limits, Limit{g.Serves, float64(g.MostPerHour)})
	}
}

// Plan says what the taps can give of what is wanted, with so much usable water in the
// tank, if the power it asks for is served. Where something is short, drinking comes first,
// then washing, flushing and outdoor.
//
// Wanted = Served + Short for each kind; the sum of Short = the sum of Cause; Drawn is at most
// available. What stood in out before must be the zero TapsOut or an earlier hour's.
func (t *Taps) Plan(available quantity.Litres, wanted *[Kinds]quantity.Litres, out *TapsOut) {
	// Litres are carried one by one: copying the array whole stalls the processor where its
	// parts were written singly, and cost as much as all the rest of a dry hour.
	drinking, washing, flushing, outdoor := wanted[Drinking], wanted[Washing], wanted[Flushing], wanted[Outdoor]
	out.Served[Drinking], out.Served[Washing], out.Served[Flushing], out.Served[Outdoor] = drinking, washing, flushing, outdoor
	if !out.Whole { // else nothing is short in it yet
		out.Short, out.Cause = [Kinds]quantity.Litres{}, [Causes]quantity.Litres{}
		out.Whole = true
	}
	out.plenty = false
	drawn := t.at(&t.Drawn, drinking, washing, flushing, outdoor)
	if !(drawn <= float64(available) && drawn <= t.Most) || len(t.Limits) > 0 {
		t.cut(float64(available), out)
		t.tellServed(float64(available), out)
		return
	}
	t.tell(drawn, t.at(&t.Treat, drinking, washing, flushing, outdoor), drinking+washing+(flushing+outdoor), out)
}

// A Plan is what the taps give of some wants where the tank holds enough: it can be made once for
// hours that want the same.
type Plan struct {
	whole bool // supply and treatment let it all through
	out   TapsOut
}

// Plan works out what the taps give of what is wanted, for Follow.
func (w *Works) Plan(wanted *[Kinds]quantity.Litres) (p Plan) {
	w.taps.Plan(noLimit, wanted, &p.out)
	p.whole = p.out.Whole
	return p
}

// Follow is Want for wants of which a Plan was made; the litres must be the same.
func (w *Works) Follow(s *State, wanted *[Kinds]quantity.Litres, p *Plan, change bool, out *TapsOut) {
	plenty := p.whole && !change && !w.joined && w.plenty(s, p.out.Drawn)
	if !plenty {
		if available := w.offers(s, change); !p.whole || p.out.Drawn > available {
			w.taps.Plan(available, wanted, out)
			return
		}
	}
	if !out.Whole {
		*out = p.out
	} else {
		out.Served = p.out.Served
		out.Drawn, out.Backwash, out.Pump, out.Treatment, out.Unused = p.out.Drawn, p.out.Backwash, p.out.Pump, p.out.Treatment, 0
	}
	out.plenty = plenty
}

// tellServed works out anew what is drawn for what is served; rounding must not take it over
// what there was.
func (t *Taps) tellServed(most float64, out *TapsOut) {
	t.tell(min(most, t.of(&t.Drawn, &out.Served)), t.of(&t.Treat, &out.Served), sum(&out.Served), out)
}

// tell puts down what is drawn for what is served, and the power it takes.
func (t *Taps) tell(drawn, treatment float64, served quantity.Litres, out *TapsOut) {
	out.Drawn = quantity.Litres(drawn)
	out.Backwash = out.Drawn - served
	out.Pump = quantity.WattHours(drawn * t.Pump)
	out.Treatment = quantity.WattHours(t.Standing + treatment)
	out.Unused = 0
}

// at gives what litres of each kind come to at so much a litre.
func (t *Taps) at(per *[Kinds]float64, drinking, washing, flushing, outdoor quantity.Litres) float64 {
	return float64(drinking)*per[Drinking] + float64(washing)*per[Washing] + (float64(flushing)*per[Flushing] + float64(outdoor)*per[Outdoor])
}

func (t *Taps) of(per *[Kinds]float64, l *[Kinds]quantity.Litres) float64 {
	return t.at(per, l[Drinking], l[Washing], l[Flushing], l[Outdoor])
}

// cut takes from what is served what stages, supply and tank cannot give: the kinds come in
// their order, and what one takes of a limit is gone for the next. Where limits of stages cross
// (two uses share one stage, one of them another stage with a third use), a use that wants less
// may let two others run more.
func (t *Taps) cut(available float64, out *TapsOut) {
	var stages [MostStages]float64
	for i := range t.Limits {
		stages[i] = t.Limits[i].Most
	}
	supply := t.Most
	for k := range Kinds {
		least, why := available, TankLow
		if supply < least {
			least, why = supply, SupplyFlow
		}
		for i := range t.Limits {
			if t.Limits[i].Serves[k] && stages[i] < least {
				least, why = stages[i], TreatmentFlow
			}
		}
		drawn := float64(out.Served[k]) * t.Drawn[k]
		if drawn > least {
			drawn = least
			out.miss(k, why, out.Served[k]-quantity.Litres(least/t.Drawn[k]))
		}
		available -= drawn
		supply -= drawn
		for i := range t.Limits {
			if t.Limits[i].Serves[k] {
				stages[i] -= drawn
			}
		}
	}
}

// miss moves litres from served to short.
func (o *TapsOut) miss(k Kind, why Cause, litres quantity.Litres) {
	o.Served[k] -= litres
	o.Short[k] += litres
	o.Cause[why] += litres
	o.Whole, o.plenty = false, false
}

// Serve takes a plan and makes it what comes out of the taps with the power that was served. A
// share of the power runs pump or treatment for that share of the hour: what the pump can then
// lift goes to drinking first; of water that needs electric treatment no more than that share of
// the plan is served. By gravity, and without electric treatment, no share matters.
//
// Wanted = Served + Short for each kind; the sum of Short = the sum of Cause;
// Pump + Treatment + Unused = the power that was served.
func (t *Taps) Serve(got Power, out *TapsOut) {
	pump, treatment := min(1, max(0, got.Pump)), min(1, max(0, got.Treatment))
	granted := float64(out.Pump)*pump + float64(out.Treatment)*treatment
	lifts := float64(out.Drawn) * pump // L
	for k := range Kinds {
		if t.Electric[k] && treatment < 1 && out.Served[k] > 0 {
			out.miss(k, TreatmentPower, out.Served[k]*quantity.Litres(1-treatment))
		}
	}
	if t.Pump > 0 && pump < 1 {
		t.lift(lifts, out)
	}
	t.tellServed(float64(out.Drawn), out)
	out.Treatment -= quantity.WattHours(t.Standing * (1 - treatment))
	out.Unused = quantity.WattHours(granted) - out.Pump - out.Treatment
}

// lift cuts what is served down to so many litres drawn, the last kind first.
func (t *Taps) lift(litres float64, out *TapsOut) {
	for k := range Kinds {
		drawn := float64(out.Served[k]) * t.Drawn[k]
		if drawn > litres {
			out.miss(k, PumpPower, out.Served[k]-quantity.Litres(litres/t.Drawn[k]))
			drawn = litres
		}
		litres -= drawn
	}
}
