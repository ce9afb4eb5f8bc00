package power

import (
	"math"

	"suffice/quantity"
	"suffice/sheet"
	"suffice/site/sun"
)

// Tell gives the inputs with which the sheet panel-hour works an hour of the array's column
// again, to the last bit; dark is the share of it under snow, from Snow.
func (a *Array) Tell(l sun.PlaneLight, ambient quantity.Celsius, dark float64) map[string]sheet.Value {
	return told(map[string]float64{
		"peak": float64(a.Peak), "slope": float64(a.Plane.Slope), "noct": float64(a.NOCT), "coefficient": a.Coefficient,
		"soiling": a.Soiling, "mismatch": a.Mismatch, "wiring": a.Wiring, "ageing": a.Ageing, "age": a.Age,
		"cosine": l.Incidence, "beam": float64(l.Beam), "sky": float64(l.Sky), "ground": float64(l.Ground),
		"ambient": float64(ambient), "snow": dark,
	})
}

// Tell gives the inputs with which the sheet battery-hour works an hour of the bank again.
func (b *Battery) Tell(before BatteryState, in BatteryIn) map[string]sheet.Value {
	values := told(map[string]float64{
		"capacity": float64(b.Capacity), "floor": b.Floor, "available": float64(before.Available), "bound": float64(before.Bound),
		"offered": float64(in.Offered), "wanted": float64(in.Wanted), "temperature": float64(in.Temperature),
	})
	values["kind"] = sheet.Value{Kind: sheet.Text, Text: b.Name}
	return values
}

// Tell gives the inputs with which the sheet inverter-hour works an hour of the inverter again:
// all loads together stand as what must run.
func (v *Inverter) Tell(out *SystemOut) map[string]sheet.Value {
	load, drawn := float64(out.Delivered), float64(out.Drawn)
	wanted := load
	if v.carry(load, drawn) != (carried{load, drawn}) {
		// The supply ran short, and more was wanted than the inverter could carry with it.
		wanted = max(math.Nextafter(load, math.Inf(1)), load+float64(out.ServiceShort+out.Short[Must]+out.Short[Should]+out.Short[Could]+out.OverLimit))
	}
	return told(map[string]float64{
		"continuous": float64(v.Continuous), "idle": float64(v.Idle), "peak_efficiency": v.PeakEfficiency, "full_load_efficiency": v.FullLoadEfficiency,
		"supply": drawn, "services": 0, "must": wanted, "should": 0, "could": 0,
	})
}

func told(numbers map[string]float64) map[string]sheet.Value {
	values := make(map[string]sheet.Value)
	for name, v := range numbers {
		values[name] = sheet.Value{Kind: sheet.Number, Number: v}
	}
	return values
}
