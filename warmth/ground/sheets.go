package ground

import (
	"fmt"

	"suffice/quantity"
	"suffice/sheet"
	"suffice/soil"
)

// Sheets lists the worked calculations of this package.
func Sheets() []sheet.Sheet { return []sheet.Sheet{floorSheet(), temperatureSheet()} }

// input makes an input with a default, in the unit in which the default is written.
func input(name, unit, standard, meaning string, low, high float64) sheet.Input {
	return sheet.Input{Name: name, Unit: unit, Default: standard, Meaning: meaning, Low: sheet.At(low), High: sheet.At(high)}
}

const (
	upright = "upright"
	lying   = "lying"
)

func floorSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "ground-floor", Title: "Transmittance of a floor on the ground",
		Inputs: []sheet.Input{
			input("area", "m2", "100 m2", "of the floor, measured inside", 0.1, 1e6),
			input("perimeter", "m", "40 m", "of the part that faces outside or an unheated room", 0.1, 1e5),
			input("wall", "m", "0.3 m", "full thickness of the walls above", 0, 3),
			input("conductivity", "W/mK", "2 W/mK", "of the ground: 1.5 clay or silt, 2 sand or gravel, 3.5 rock; 2 where it is not known", 0.05, 10),
			input("insulation", "m2K/W", "0 m2K/W", "resistance of the floor's own layers", 0, 50),
			input("inside", "m2K/W", "0.17 m2K/W", "resistance of the surface inside", 0, 1),
			input("outside", "m2K/W", "0.04 m2K/W", "resistance of the surface outside", 0, 1),
			input("edge_depth", "m", "0 m", "reach of insulation along the edge, 0 for none", 0, 10),
			input("edge_resistance", "m2K/W", "1.43 m2K/W", "of that insulation: 1.43 is 50 mm at 0.035 W/mK", 0, 50),
			input("edge_thickness", "m", "0.05 m", "of that insulation", 0, 1),
			{Name: "edge", Kind: sheet.Text, Default: upright, Choices: []string{upright, lying}, Meaning: "down the foundation, or lying inward from the edge"},
		},
		Sources: []string{"iso13370: slab on the ground, edge insulation", "iso6946: surface resistances"},
		Cautions: []string{
			"For dry, still ground. Ground water that moves close below takes more heat: ask whoever knows the site.",
			"Earth against a heated floor can carry damp and radon into the room: membrane, drain and sealed joints belong to the design.",
		},
		Do: workFloor,
	}
}

func workFloor(c *sheet.Calc) {
	f := Floor{
		Area: quantity.SquareMetres(c.Number("area")), Perimeter: quantity.Metres(c.Number("perimeter")), Wall: quantity.Metres(c.Number("wall")),
		Ground: soil.Ground{Conductivity: c.Number("conductivity")}, Resists: c.Number("insulation"), Inside: c.Number("inside"), Outside: c.Number("outside"),
	}
	if err := f.Faults(); err != nil {
		c.Fail("ground-floor: %v", err)
		return
	}
	lambda := f.Ground.Conductivity
	B := c.Step("characteristic dimension", "B′ = A/(0.5 P)", fmt.Sprintf("%g/(0.5·%g)", float64(f.Area), float64(f.Perimeter)), f.Breadth(), "m")
	dt := c.Step("equivalent thickness", "dt = w + λ (Rsi + Rf + Rse)", fmt.Sprintf("%g + %g·(%g + %g + %g)", float64(f.Wall), lambda, f.Inside, f.Resists, f.Outside), f.Thickness(), "m")
	formula, numbers := "U = λ/(0.457 B′ + dt), well insulated", fmt.Sprintf("%g/(0.457·%.4g + %.4g)", lambda, B, dt)
	if dt < B {
		formula, numbers = "U = 2 λ/(π B′ + dt) ln(π B′/dt + 1)", fmt.Sprintf("2·%g/(π·%.4g + %.4g)·ln(π·%.4g/%.4g + 1)", lambda, B, dt, B, dt)
	}
	u := c.Step("transmittance", formula, numbers, f.On(), "W/m2K")
	if reach := c.Number("edge_depth"); reach > 0 {
		e := Edge{Upright: c.Text("edge") == upright, Reach: quantity.Metres(reach), Thickness: quantity.Metres(c.Number("edge_thickness")), Resistance: c.Number("edge_resistance")}
		u = workEdge(c, f, e)
	}
	c.Result("u", u, "W/m2K")
	c.Result("characteristic_dimension", B, "m")
	c.Result("equivalent_thickness", dt, "m")
	c.Result("loss", u*float64(f.Area), "W/K")
}

func workEdge(c *sheet.Calc, f Floor, e Edge) float64 {
	factor := ""
	if e.Upright {
		factor = "2"
	}
	extra := c.Step("thickness that the edge adds", "d′ = (Rn − dn/λ) λ", fmt.Sprintf("(%g − %g/%g)·%g", e.Resistance, float64(e.Thickness), f.Ground.Conductivity, f.Ground.Conductivity), f.extra(e), "m")
	gain := c.Step("edge", fmt.Sprintf("ψ = −λ/π (ln(%[1]sD/dt + 1) − ln(%[1]sD/(dt + d′) + 1))", factor),
		fmt.Sprintf("D = %g, d′ = %.4g", float64(e.Reach), extra), f.Gain(e), "W/mK")
	c.Result("edge_gain", gain, "W/mK")
	if extra < 0 {
		c.Caution("The insulation leads heat better than the ground that it replaces: the edge loses more with it.")
	}
	u := c.Step("with the edge", "U + 2 ψ/B′", fmt.Sprintf("%.4g + 2·%.4g/%.4g", f.On(), gain, f.Breadth()), f.OnEdged(e), "W/m2K")
	if u <= 0 {
		c.Fail("edge_depth: %g m with %g m2K/W would bring the floor's loss to %.3g W/m2K, which cannot be: the formula is for edges that are short beside the floor's breadth of %.3g m",
			float64(e.Reach), e.Resistance, u, f.Breadth())
	}
	return u
}

func temperatureSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "ground-temperature", Title: "Temperature of undisturbed ground at a depth on a day",
		Inputs: []sheet.Input{
			input("mean", "degC", "10 degC", "of the ground's surface through the year: 1 to 4 K above the air's at most places", -30, 50),
			input("amplitude", "K", "12 K", "half of warmest less coldest, of the surface", 0, 50),
			input("coldest_day", "", "35", "day of the year on which the surface is coldest: about 35 north of the equator, 215 south of it", 0, 366),
			input("diffusivity", "m2/d", "0.05 m2/d", "of the ground: 0.043 clay, 0.086 sand or gravel, 0.15 rock", 0.001, 1),
			input("depth", "m", "1 m", "below the surface", 0, 100),
			input("day_of_year", "", "35", "1 is 1 January", 0, 366),
		},
		Sources: []string{"kusuda-achenbach: the equation with its yearly cosine", "iso13370: table 7, for the diffusivities"},
		Cautions: []string{
			"For open ground, far from any house. Under snow, leaves or shade the surface is not as the air; beside a heated house the ground is warmer. How far off a computed ground may be: docs/soil-temperatures.md.",
		},
		Do: workTemperature,
	}
}

func workTemperature(c *sheet.Calc) {
	u := Undisturbed{Mean: quantity.Celsius(c.Number("mean")), Swing: quantity.Kelvins(c.Number("amplitude")), Coldest: c.Number("coldest_day"), Diffusivity: c.Number("diffusivity")}
	depth, day := quantity.Metres(c.Number("depth")), c.Number("day_of_year")
	damping := c.Step("damping depth", "d = √(365 a/π)", fmt.Sprintf("√(365·%g/π)", u.Diffusivity), float64(u.Damping()), "m")
	left := c.Step("swing that is left", "exp(−z/d)", fmt.Sprintf("exp(−%g/%.4g)", float64(depth), damping), u.Left(depth), "")
	lag := c.Step("lag", "z/2 √(365/(π a))", fmt.Sprintf("%g/2·√(365/(π·%g))", float64(depth), u.Diffusivity), u.Lag(depth), "d")
	t := c.Step("temperature", "T = Tm − A exp(−z/d) cos(2π/365 (t − t0 − lag))",
		fmt.Sprintf("%g − %g·%.4g·cos(2π/365·(%g − %g − %.4g))", float64(u.Mean), float64(u.Swing), left, day, u.Coldest, lag), float64(u.At(depth, day)), "degC")
	c.Result("temperature", t, "degC")
	c.Result("damping_depth", damping, "m")
	c.Result("lag", lag, "d")
	c.Result("coldest", float64(u.Mean)-float64(u.Swing)*left, "degC")
	c.Result("warmest", float64(u.Mean)+float64(u.Swing)*left, "degC")
}
