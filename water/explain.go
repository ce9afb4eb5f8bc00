package water

import (
	"suffice/quantity"
	"suffice/sheet"
)

// An Hour is everything an hour began with.
type Hour struct {
	Before State
	Sky    SkyIn
	Wanted [Kinds]quantity.Litres
	Change bool
	Power  Power
}

// A Told is a sheet that works one part of an hour again.
type Told struct {
	Sheet  string
	Part   string // name of the roof or tank; "" for the taps
	Inputs map[string]sheet.Value
}

// Tell explains an hour: for every roof, every tank and the taps a sheet with the inputs that
// give what Income, Want and Share gave, to the last bit. Tanks stand in the order in which
// they spill; their sums over roofs and tanks follow the order told.
func (w *Works) Tell(h Hour) []Told {
	var told []Told
	for i := range w.roofs {
		told = append(told, w.tellRoof(h, i))
	}
	s := h.Before
	var inflow, took [MostTanks]float64
	var income IncomeOut
	if w.roadMoves(&s) {
		w.road(&s, &income)
	}
	w.fill(&s, h.Sky, &inflow, &income)
	for i := range w.vessels {
		w.vessels[i].drip(&s.Tanks[i])
	}
	var taps TapsOut
	available := w.Want(&s, &h.Wanted, h.Change, &taps)
	uses := w.tellTaps(h, available)
	if !h.Power.whole() {
		w.taps.Serve(h.Power, &taps)
	}
	w.draw(&s, float64(taps.Drawn), &took)
	for _, i := range w.order {
		told = append(told, w.tellTank(h, i, inflow[i], took[i]))
	}
	return append(told, uses)
}

func (w *Works) tellRoof(h Hour, i int) Told {
	r, s, n := &w.roofs[i], &h.Before.Roofs[i], w.design.Snow
	return Told{"roof-hour", r.Name, numbers(map[string]float64{
		"roof": float64(r.Area), "coefficient": r.Coefficient, "wetting": float64(r.Wetting),
		"flush_depth": float64(r.Flush.Depth), "flush_litres": float64(r.Flush.Litres), "after_dry": r.Flush.AfterDry,
		"snow_below": float64(n.Below), "melts_above": float64(n.Melts), "melt_factor": n.Factor,
		"rain": float64(h.Sky.Rain), "temperature": float64(h.Sky.Temperature), "snow": float64(h.Before.Snow),
		"dry": h.Before.Dry, "film": float64(s.Film), "flushed": float64(s.Flushed),
	})}
}

func (w *Works) tellTank(h Hour, i int, inflow, took float64) Told {
	k := &w.design.Tanks[i]
	return Told{"tank-hour", k.Name, numbers(map[string]float64{
		"holds": float64(k.Holds), "dead": float64(k.Dead), "fire": float64(k.Fire), "leak": float64(k.Leak),
		"held": float64(h.Before.Tanks[i].Held), "inflow": inflow, "wanted": took,
	})}
}

func (w *Works) tellTaps(h Hour, available quantity.Litres) Told {
	t := &w.taps
	inputs := numbers(map[string]float64{
		"available": float64(available), "pump_energy": t.Pump, "treatment_standing": t.Standing, "most": t.Most,
		"pump_power": h.Power.Pump, "treatment_power": h.Power.Treatment,
	})
	var electric, limits, serves []float64
	for k := range Kinds {
		inputs[k.String()] = number(float64(h.Wanted[k]))
		electric = append(electric, mark(t.Electric[k]))
	}
	for _, l := range t.Limits {
		limits = append(limits, l.Most)
		for _, on := range l.Serves {
			serves = append(serves, mark(on))
		}
	}
	inputs["drawn_per_litre"] = list(t.Drawn[:])
	inputs["treatment_energy"] = list(t.Treat[:])
	inputs["treatment_electric"] = list(electric)
	if len(limits) > 0 {
		inputs["limits"], inputs["limit_serves"] = list(limits), list(serves)
	}
	return Told{"uses-hour", "", inputs}
}

func mark(on bool) float64 {
	if on {
		return 1
	}
	return 0
}

func number(v float64) sheet.Value { return sheet.Value{Kind: sheet.Number, Number: v} }
func list(v []float64) sheet.Value { return sheet.Value{Kind: sheet.List, List: v} }

func numbers(m map[string]float64) map[string]sheet.Value {
	inputs := make(map[string]sheet.Value, len(m))
	for name, v := range m {
		inputs[name] = number(v)
	}
	return inputs
}
