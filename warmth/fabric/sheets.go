package fabric

import (
	"fmt"
	"strings"

	"suffice/material"
	"suffice/quantity"
	"suffice/sheet"
)

// Sheets lists the worked calculations of this package.
func Sheets() []sheet.Sheet { return []sheet.Sheet{uValueSheet(), periodicSheet(), storeSheet()} }

var surfaceInputs = []sheet.Input{
	{Name: "inside", Unit: "m2K/W", Default: "0.13 m2K/W", Meaning: "surface resistance inside: 0.10 where heat flows up, 0.13 level, 0.17 down", Low: sheet.At(0), High: sheet.At(10)},
	{Name: "outside", Unit: "m2K/W", Default: "0.04 m2K/W", Meaning: "surface resistance outside", Low: sheet.At(0), High: sheet.At(10)},
}

const fabricCaution = "Conductivities are for dry, sound material; damp walls lose more. Where warm air reaches a cold layer, water gathers in it: have the layers' order checked for condensation by someone licensed."

func uValueSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "u-value", Title: "Heat through a wall, roof or floor of layers",
		Inputs: append([]sheet.Input{
			{Name: "layers", Kind: sheet.Text, Default: "lime plaster:15mm:0.8W/mK,straw bale:350mm:0.063W/mK,lime render:25mm:0.8W/mK",
				Meaning: "from inside to outside as name:thickness:conductivity; name:thickness for a known material; air:25mm or name:0.18m2K/W for an air gap"},
			{Name: "bridged", Kind: sheet.Text, Maybe: true, Meaning: "name:share:conductivity of what stands in a layer over a share of its area: straw bale:8%:0.13W/mK"},
		}, surfaceInputs...),
		Sources:  []string{"iso6946: surface resistances, air layers, upper and lower limit", "iso10456: conductivities of the table"},
		Cautions: []string{fabricCaution, "Corners, edges, metal ties and air that blows through are not in it."},
		Do:       workUValue,
	}
}

// elementOf reads the element of the inputs.
func elementOf(c *sheet.Calc, mass bool) (Element, bool) {
	layers, unread := ReadLayers(c.Text("layers"), mass, material.Library{})
	if unread != nil {
		c.Fail("layers: %v", unread)
	}
	if !mass && c.Given("bridged") {
		if err := ReadBridges(c.Text("bridged"), layers); err != nil {
			c.Fail("bridged: %v", err)
			return Element{}, false
		}
	}
	if unread != nil {
		return Element{}, false
	}
	e := Element{Layers: layers, Inside: material.Resistance(c.Number("inside")), Outside: material.Resistance(c.Number("outside"))}
	if err := e.Faults(); err != nil {
		c.Fail("%v", err)
		return Element{}, false
	}
	if e.Inside+e.Outside == 0 && !mass {
		c.Caution("Without surface resistances this is from surface to surface.")
	}
	return e, true
}

func workUValue(c *sheet.Calc) {
	e, ok := elementOf(c, false)
	if !ok {
		return
	}
	for _, l := range e.Layers {
		stepLayer(c, l)
	}
	b := e.Bounds()
	upper, lower := float64(b.Upper), float64(b.Lower)
	if b.Upper != b.Lower {
		c.Step("upper limit", "1/R′ = Σ f/R, each path straight through", fmt.Sprintf("Rsi = %g, Rse = %g", float64(e.Inside), float64(e.Outside)), upper, "m2K/W")
		c.Step("lower limit", "R″ = Rsi + Σ d/λ″ + Rse, λ″ = Σ f λ", fmt.Sprintf("Rsi = %g, Rse = %g", float64(e.Inside), float64(e.Outside)), lower, "m2K/W")
		c.Result("upper", upper, "m2K/W")
		c.Result("lower", lower, "m2K/W")
		c.Result("largest_error", b.Error(), "fraction")
	}
	r := c.Step("whole resistance", "R = Rsi + Σ d/λ + Rse; of bridged layers (R′ + R″)/2", resistances(e), float64(e.Resistance()), "m2K/W")
	u := c.Step("transmittance", "U = 1/R", fmt.Sprintf("1/%.5g", r), float64(e.U()), "W/m2K")
	c.Result("u", u, "W/m2K")
	c.Result("resistance", r, "m2K/W")
	c.Result("surface_to_surface", float64(e.SurfaceToSurface()), "W/m2K")
	if !b.Usable() {
		c.Caution(fmt.Sprintf("The limits of %.3g and %.3g m2K/W lie farther apart than 1.5 to 1: the method does not hold here (metal in insulation does this). It takes a calculation in two or three dimensions.", upper, lower))
	}
}

func stepLayer(c *sheet.Calc, l Layer) {
	if l.Gap > 0 {
		c.Step(l.Name, "R as given", "an air gap", float64(l.Gap), "m2K/W")
		return
	}
	formula, numbers := "R = d/λ", fmt.Sprintf("%.4g m/%.4g W/mK", float64(l.Thickness), float64(l.Conductivity))
	if l.Bridge.Share > 0 {
		formula = "R = d/((1 − f) λ + f λb)"
		numbers = fmt.Sprintf("%.4g/(%.4g·%.4g + %.4g·%.4g)", float64(l.Thickness), 1-l.Bridge.Share, float64(l.Conductivity), l.Bridge.Share, float64(l.Bridge.Conductivity))
	}
	c.Step(l.Name, formula, numbers, float64(l.Resistance()), "m2K/W")
}

func resistances(e Element) string {
	parts := []string{fmt.Sprintf("%.4g", float64(e.Inside))}
	for _, l := range e.Layers {
		parts = append(parts, fmt.Sprintf("%.4g", float64(l.Resistance())))
	}
	return strings.Join(append(parts, fmt.Sprintf("%.4g", float64(e.Outside))), " + ")
}

func periodicSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "periodic-wall", Title: "How a wall damps and delays the day's swing",
		Inputs: append([]sheet.Input{
			{Name: "layers", Kind: sheet.Text, Default: "rammed earth:400mm:1.1W/mK:2000kg/m3:1000J/kgK,cork board:100mm:0.045W/mK:120kg/m3:1560J/kgK,lime render:20mm:0.8W/mK:1600kg/m3:1000J/kgK",
				Meaning: "from inside to outside as name:thickness:conductivity:density:capacity; name:thickness for a known material; air:25mm or name:0.18m2K/W for an air gap"},
		}, append(surfaceInputs[:len(surfaceInputs):len(surfaceInputs)],
			sheet.Input{Name: "period", Unit: "h", Default: "24 h", Meaning: "of the swing", Low: sheet.At(0.1), High: sheet.At(100 * 8766)})...),
		Sources:  []string{"iso13786: transfer matrix of layers", "iso6946: surface resistances"},
		Cautions: []string{fabricCaution},
		Do:       workPeriodic,
	}
}

func workPeriodic(c *sheet.Calc) {
	e, ok := elementOf(c, true)
	if !ok {
		return
	}
	hours := c.Number("period")
	depths := e.Depths(hours)
	if depths > MostDepths {
		c.Fail("layers: %.3g depths of penetration thick at a period of %g h, the most is %d: nothing of the swing comes through; leave out what lies far from the room", depths, hours, MostDepths)
		return
	}
	s := e.Swing(hours)
	z := e.Transfer(hours)
	c.Step("thickness in depths of penetration", "ξ = Σ d/δ, δ = √(T λ/(π ρ c))", fmt.Sprintf("T = %g h, %d layers", hours, len(e.Layers)), depths, "")
	u := c.Step("transmittance", "U = 1/(Rsi + Σ d/λ + Rse)", resistances(e), float64(s.Steady), "W/m2K")
	c.Step("transfer matrix", "Z = Zse … Z2 Z1 Zsi; Z12", fmt.Sprintf("%.5g %+.5gi m2K/W", real(z.Z12), imag(z.Z12)), 1/float64(s.Transmittance), "m2K/W")
	y := c.Step("periodic transmittance", "Y = 1/|Z12|", fmt.Sprintf("1/%.5g", 1/float64(s.Transmittance)), float64(s.Transmittance), "W/m2K")
	c.Step("decrement", "f = Y/U", fmt.Sprintf("%.5g/%.5g", y, u), s.Decrement, "fraction")
	c.Step("lag", "−arg(−1/Z12)·T/2π, whole turns counted from slow swings on", fmt.Sprintf("shift within half a period %+.4g h", s.Wrapped), s.Lag, "h")
	c.Step("heat held inside", "κ1 = T/2π |(Z11 − 1)/Z12|", fmt.Sprintf("Z11 = %.5g %+.5gi", real(z.Z11), imag(z.Z11)), s.InnerStore, "kJ/m2K")
	c.Step("heat held outside", "κ2 = T/2π |(Z22 − 1)/Z12|", fmt.Sprintf("Z22 = %.5g %+.5gi", real(z.Z22), imag(z.Z22)), s.OuterStore, "kJ/m2K")
	c.Result("u", u, "W/m2K")
	c.Result("periodic_transmittance", y, "W/m2K")
	c.Result("decrement", s.Decrement, "fraction")
	c.Result("lag", s.Lag, "h")
	c.Result("lag_wrapped", s.Wrapped, "h")
	c.Result("inner_capacity", s.InnerStore, "kJ/m2K")
	c.Result("outer_capacity", s.OuterStore, "kJ/m2K")
	c.Result("inner_admittance", float64(s.Inner), "W/m2K")
	c.Result("outer_admittance", float64(s.Outer), "W/m2K")
	c.Result("inner_lead", s.InnerLead, "h")
	c.Result("outer_lead", s.OuterLead, "h")
	if s.Lag > hours/2 {
		c.Caution(fmt.Sprintf("A lag of %.4g h is more than half the period: printed as a shift within half a period it is %+.4g h.", s.Lag, s.Wrapped))
	}
}

func storeSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "heat-store", Title: "A warm room or store left to itself",
		Inputs: []sheet.Input{
			{Name: "heat_loss", Unit: "W/K", Default: "100 W/K", Meaning: "all that leaves for one kelvin: fabric and air", Low: sheet.At(1e-6), High: sheet.At(1e6)},
			{Name: "capacity", Unit: "MJ/K", Default: "10 MJ/K", Meaning: "heat stored for one kelvin", Low: sheet.At(1e-9), High: sheet.At(1e6)},
			{Name: "gain", Unit: "W", Default: "500 W", Meaning: "steady heat put in", Low: sheet.At(0), High: sheet.At(1e7)},
			{Name: "start", Unit: "degC", Default: "20 degC", Meaning: "temperature at first", Low: sheet.At(-100), High: sheet.At(1000)},
			{Name: "outside", Unit: "degC", Default: "0 degC", Meaning: "steady temperature around it", Low: sheet.At(-100), High: sheet.At(100)},
			{Name: "hours", Unit: "h", Default: "24 h", Meaning: "time that passes", Low: sheet.At(0), High: sheet.At(1e6)},
		},
		Sources:  []string{"one-store: C dT/dt = Q − UA (T − To)"},
		Cautions: []string{"One temperature for all: true for air with thin, well-coupled mass. Thick walls give up their inner heat later.", "A house kept warm by burning anything needs fresh air and a carbon monoxide alarm; flues and gas are for licensed people."},
		Do:       workStore,
	}
}

func workStore(c *sheet.Calc) {
	s := Store{Loss: c.Number("heat_loss"), Capacity: c.Number("capacity") * 1e6}
	start, outside, gain, hours := quantity.Celsius(c.Number("start")), quantity.Celsius(c.Number("outside")), quantity.Watts(c.Number("gain")), c.Number("hours")
	constant := c.Step("time constant", "τ = C/UA", fmt.Sprintf("%.4g MJ/K/%.4g W/K", s.Capacity/1e6, s.Loss), s.TimeConstant(), "h")
	end := c.Step("where it settles", "To + Q/UA", fmt.Sprintf("%.4g + %.4g/%.4g", float64(outside), float64(gain), s.Loss), float64(s.Settles(gain, outside)), "degC")
	t := c.Step("temperature after the time", "T = Te + (T0 − Te) exp(−t/τ)", fmt.Sprintf("%.4g + (%.4g − %.4g)·exp(−%.4g/%.4g)", end, float64(start), end, hours, constant), float64(s.After(hours, start, quantity.Celsius(end))), "degC")
	c.Result("temperature", t, "degC")
	c.Result("time_constant", constant, "h")
	c.Result("settles", end, "degC")
}
