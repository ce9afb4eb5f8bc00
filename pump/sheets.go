package pump

import (
	"fmt"
	"math"

	"suffice/quantity"
	"suffice/sheet"
)

// Sheets lists the worked calculations of this package.
func Sheets() []sheet.Sheet { return []sheet.Sheet{pumpSheet()} }

func pumpSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "pump", Title: "Head, power and energy of a water pump",
		Inputs: []sheet.Input{
			{Name: "flow", Unit: "m3/h", Default: "1.8 m3/h", Meaning: "while the pump runs", Low: sheet.At(1e-4), High: sheet.At(mostFlow)},
			{Name: "head_static", Unit: "m", Default: "14 m", Meaning: "from water level to outlet, with the pressure wanted there (1 bar is 10.2 m)", Low: sheet.At(-mostHead), High: sheet.At(mostHead)},
			{Name: "length", Unit: "m", Default: "35 m", Meaning: "of the pipe", Low: sheet.At(0), High: sheet.At(mostLength)},
			{Name: "bore", Unit: "mm", Default: "32 mm", Meaning: "inside diameter", Low: sheet.At(1), High: sheet.At(mostBore)},
			{Name: "roughness", Unit: "mm", Default: "0.0015 mm", Meaning: "of the wall: 0.0015 drawn plastic or copper, 0.046 steel, 0.15 galvanised, 0.26 cast iron", Low: sheet.At(0), High: sheet.At(50)},
			{Name: "fittings", Unit: "", Default: "4", Meaning: "sum of loss factors: a bend 0.3 to 1, an open gate valve 0.2, a check valve 2, inlet 0.5, outlet 1 (common practice, no source)", Low: sheet.At(0), High: sheet.At(1000)},
			{Name: "efficiency", Unit: "fraction", Default: "35 %", Meaning: "pump and motor together (common practice, no source: 20 to 60 % for small pumps)", Low: sheet.At(0.01), High: sheet.At(1)},
			{Name: "temperature", Unit: "degC", Default: "15 degC", Meaning: "of the water", Low: sheet.At(0), High: sheet.At(100)},
		},
		Sources: []string{
			"colebrook: friction factor of turbulent flow",
			"moody-chart: roughness of pipes",
			"kell-density: density of water",
			"vogel-viscosity: viscosity of water",
		},
		Cautions: []string{
			"Electricity near water kills: wiring, residual-current protection and earthing of a pump are for a licensed electrician.",
			"The figures are for one flow. Hold them against the maker's curve, and check the suction lift: water is not sucked higher than about 7 m.",
		},
		Do: workPump,
	}
}

func workPump(c *sheet.Calc) {
	l := Lift{
		Static: quantity.Metres(c.Number("head_static")),
		Pipe: Pipe{
			Length: quantity.Metres(c.Number("length")), Bore: quantity.Millimetres(c.Number("bore")),
			Roughness: quantity.Millimetres(c.Number("roughness")), Fittings: c.Number("fittings"),
		},
		Flow: c.Number("flow"), Efficiency: c.Number("efficiency"), Water: quantity.Celsius(c.Number("temperature")),
	}
	if err := l.Faults(); err != nil {
		c.Fail("%v", err)
		return
	}
	w := water(float64(l.Water))
	d, q := float64(l.Pipe.Bore)/1000, l.Flow/secondsPerHour
	v := c.Step("speed in the pipe", "v = Q/(π/4·D²)", fmt.Sprintf("%.4g m³/s / (0.7854·%.4g² m²)", q, d), q/(math.Pi/4*d*d), "m/s")
	re := c.Step("Reynolds number", "Re = ρ·v·D/μ", fmt.Sprintf("%.5g·%.4g·%.4g/%.4g", w.density, v, d, w.viscosity), w.density*v*d/w.viscosity, "")
	f := c.Step("friction factor", "1/√f = −2·log₁₀((ε/D)/3.7 + 2.51/(Re·√f)); 64/Re up to 2000", fmt.Sprintf("ε/D = %.4g", float64(l.Pipe.Roughness/l.Pipe.Bore)), FrictionFactor(re, float64(l.Pipe.Roughness/l.Pipe.Bore)), "")
	lost := c.Step("head lost", "h = (f·L/D + K)·v²/2g", fmt.Sprintf("(%.4g·%.4g/%.4g + %.4g)·%.4g²/(2·9.80665)", f, float64(l.Pipe.Length), d, l.Pipe.Fittings, v), float64(l.Pipe.Loss(l.Flow, l.Water)), "m")
	head := c.Step("whole head", "H = static + h", fmt.Sprintf("%.4g + %.4g", float64(l.Static), lost), float64(l.Head()), "m")
	power := c.Step("electric power", "P = ρ·g·Q·H/η", fmt.Sprintf("%.5g·9.80665·%.4g·%.4g/%.4g", w.density, q, head, l.Efficiency), float64(l.Power()), "W")
	perKL := c.Step("energy for 1000 L", "P/Q", fmt.Sprintf("%.4g W / %.4g m³/h", power, l.Flow), float64(l.EnergyPerKilolitre()), "Wh/kL")
	c.Result("head", head, "m")
	c.Result("power", power, "W")
	c.Result("energy_per_kl", perKL, "Wh/kL")
	c.Result("speed", v, "m/s")
	c.Result("friction", lost, "m")
	if v > 3 {
		c.Caution(fmt.Sprintf("At %.2g m/s the pipe is noisy and shutting a tap hammers it: under 2 m/s is common practice (no source). Take a wider bore.", v))
	}
}
