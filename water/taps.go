package water

import (
	"math"

	"suffice/quantity"
)

// Taps is the way from the tank to the taps, supply and treatment, with everything worked
// out that depends on the design alone. Read-only; it has no state.
type Taps struct {
	Drawn    [Kinds]float64 // litres drawn from the tank for a litre at the tap, 1 or more
	Pump     float64        // Wh for a litre drawn; 0: by gravity, needs no power
	Treat    [Kinds]float64 // Wh for a litre at the tap, of stages that run while it flows
	Standing float64        // Wh an hour, of stages that run all the time
	Electric [Kinds]bool    // no power for the treatment, none of this water
	Most     float64        // litres drawn in an hour, limit of the supply; +Inf: none
	Limits   []Limit        // of stages
}

// A Limit is the flow a stage of treatment lets through.
type Limit struct {
	Serves [Kinds]bool
	Most   float64 // litres drawn in an hour for the kinds it serves
}

// NewTaps works out supply and treatment.
func NewTaps(s Supply, train []Stage) Taps {
	t := Taps{Pump: s.WattHoursPerKilolitre / 1000, Most: math.Inf(1)}
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
// Wanted = Served + Short for each kind; the sum of Short = the sum of Cause; Drawn is at most available.
func (t *Taps) Plan(available quantity.Litres, wanted *[Kinds]quantity.Litres, out *TapsOut) {
	// Litres are carried one by one: copying the array whole stalls the processor where its
	// parts were written singly, and cost as much as all the rest of a dry hour.
	drinking, washing, flushing, outdoor := wanted[Drinking], wanted[Washing], wanted[Flushing], wanted[Outdoor]
	out.Served[Drinking], out.Served[Washing], out.Served[Flushing], out.Served[Outdoor] = drinking, washing, flushing, outdoor
	out.Short = [Kinds]quantity.Litres{}
	out.Cause = [Causes]quantity.Litres{}
	drawn := t.at(&t.Drawn, drinking, washing, flushing, outdoor)
	if drawn <= float64(available) && drawn <= t.Most && len(t.Limits) == 0 {
		out.Whole = true
		t.tell(drawn, t.at(&t.Treat, drinking, washing, flushing, outdoor), drinking+washing+(flushing+outdoor), out)
		return
	}
	t.cut(float64(available), out)
	t.tell(t.of(&t.Drawn, &out.Served), t.of(&t.Treat, &out.Served), sum(&out.Served), out)
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

// all marks every kind.
var all = [Kinds]bool{true, true, true, true}

// cut takes from what is served what stages, supply and tank cannot give.
func (t *Taps) cut(available float64, out *TapsOut) {
	for i := range t.Limits {
		t.narrow(out, TreatmentFlow, &t.Limits[i].Serves, t.Limits[i].Most)
	}
	t.narrow(out, SupplyFlow, &all, t.Most)
	t.narrow(out, TankLow, &all, available)
	out.Whole = out.Cause == [Causes]quantity.Litres{}
}

// narrow cuts what is served of some kinds down so that no more than a limit is drawn for them,
// the last kind first.
func (t *Taps) narrow(out *TapsOut, why Cause, which *[Kinds]bool, limit float64) {
	for k := range Kinds {
		if !which[k] {
			continue
		}
		need := float64(out.Served[k]) * t.Drawn[k]
		if need <= limit {
			limit -= need
			continue
		}
		out.miss(k, why, out.Served[k]-quantity.Litres(limit/t.Drawn[k]))
		limit = 0
	}
}

// miss moves litres from served to short.
func (o *TapsOut) miss(k Kind, why Cause, litres quantity.Litres) {
	o.Served[k] -= litres
	o.Short[k] += litres
	o.Cause[why] += litres
	o.Whole = false
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
	lifts := float64(out.Drawn) * pump
	for k := range Kinds {
		if t.Electric[k] && treatment < 1 && out.Served[k] > 0 {
			out.miss(k, TreatmentPower, out.Served[k]*quantity.Litres(1-treatment))
		}
	}
	if t.Pump > 0 && pump < 1 {
		t.narrow(out, PumpPower, &all, lifts)
	}
	t.tell(t.of(&t.Drawn, &out.Served), t.of(&t.Treat, &out.Served), sum(&out.Served), out)
	out.Treatment -= quantity.WattHours(t.Standing * (1 - treatment))
	out.Unused = quantity.WattHours(granted) - out.Pump - out.Treatment
}
