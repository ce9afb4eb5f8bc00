package glass

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"suffice/material"
	"suffice/quantity"
	"suffice/sheet"
)

// Sheets lists the worked calculations of this package.
func Sheets() []sheet.Sheet {
	return []sheet.Sheet{lightSheet(), windowSheet(), overhangSheet()}
}

var glassInputs = []sheet.Input{
	{Name: "panes", Default: "2", Meaning: "how many, one behind the other: 1, 2 or 3", Low: sheet.At(1), High: sheet.At(MostPanes)},
	{Name: "thickness", Unit: "mm", Default: "4 mm", Meaning: "of each pane", Low: sheet.At(0.1), High: sheet.At(100)},
	{Name: "index", Default: "1.526", Meaning: "refractive index", Low: sheet.At(1), High: sheet.At(3)},
	{Name: "extinction", Unit: "/m", Default: "19.6 /m", Meaning: "what the glass takes up on the way: 4 low-iron, 20 usual, 32 greenish", Low: sheet.At(0), High: sheet.At(1000)},
	{Name: "incidence", Unit: "deg", Default: "0 deg", Meaning: "from the line straight out of the glass", Low: sheet.At(0), High: sheet.At(90)},
}

// readPanes gives the glazing of the inputs.
func readPanes(c *sheet.Calc) (Glazing, bool) {
	n := c.Number("panes")
	if n != math.Trunc(n) {
		c.Fail("panes %g is not a whole number: 1 to %d", n, MostPanes)
		return Glazing{}, false
	}
	return Alike(int(n), Pane{Thickness: quantity.Millimetres(c.Number("thickness")), Index: c.Number("index"),
		Extinction: c.Number("extinction"), Conductivity: GlassConductivity}), true
}

func lightSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "glass-light", Title: "Light through panes of glass by its angle",
		Inputs:   glassInputs,
		Sources:  []string{"fresnel-bouguer: reflection, refraction, extinction", "duffie-beckman: ch. 5, eq. 5.1.1 to 5.3.3"},
		Cautions: []string{"Clean, bare glass. Dirt takes some parts in a hundred more; coatings have the maker's coefficients."},
		Do:       workLight,
	}
}

func workLight(c *sheet.Calc) {
	g, ok := readPanes(c)
	if !ok {
		return
	}
	o := g.At(quantity.Degrees(c.Number("incidence")))
	showLight(c, g, o)
	d := g.Diffuse()
	c.Result("transmitted", o.Transmitted, "fraction")
	c.Result("reflected", o.Reflected, "fraction")
	c.Result("absorbed", o.Taken(), "fraction")
	c.ResultList("absorbed_by_pane", o.Absorbed[:g.Count], "fraction")
	c.Result("diffuse_transmitted", d.Transmitted, "fraction")
	c.Result("diffuse_absorbed", d.Taken(), "fraction")
}

// showLight writes the working for one angle.
func showLight(c *sheet.Calc, g Glazing, o Optics) {
	p, theta := g.Panes[0], c.Number("incidence")
	cosine := math.Cos(float64(quantity.Degrees(theta).Radians()))
	if !(cosine > grazing) {
		c.Step("along the glass", "all light is thrown back", fmt.Sprintf("incidence %g deg", theta), o.Reflected, "fraction")
		return
	}
	rs, rp, inside := faces(cosine, p.Index)
	c.Step("angle inside the glass", "sin θ₂ = sin θ₁/n (Snell)", fmt.Sprintf("sin %.4g deg/%.4g", theta, p.Index), math.Acos(min(1, inside))*180/math.Pi, "deg")
	c.Step("thrown back by one face, across", "r⊥ = ((cos θ₁ − n cos θ₂)/(cos θ₁ + n cos θ₂))²", fmt.Sprintf("cos θ₁ = %.5f, cos θ₂ = %.5f", cosine, inside), rs, "fraction")
	c.Step("thrown back by one face, along", "r∥ = ((n cos θ₁ − cos θ₂)/(n cos θ₁ + cos θ₂))²", fmt.Sprintf("n = %.4g", p.Index), rp, "fraction")
	a := c.Step("left after one pane's thickness", "a = exp(−K L/cos θ₂) (Bouguer)", fmt.Sprintf("exp(−%.4g·%.4g/%.5f)", p.Extinction, float64(p.Thickness)/1000, inside),
		math.Exp(-p.Extinction*float64(p.Thickness)/1000/inside), "fraction")
	one := Alike(1, p).atCosine(cosine)
	c.Step("through one pane", "mean over both polarisations of a (1 − r)²/(1 − r² a²)", fmt.Sprintf("r⊥ = %.5f, r∥ = %.5f, a = %.5f", rs, rp, a), one.Transmitted, "fraction")
	c.Step("through all panes", "each polarisation followed through every pane, back and forth", fmt.Sprintf("%d panes", g.Count), o.Transmitted, "fraction")
}

func windowSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "window", Title: "Heat that a window loses and lets in",
		Inputs: append(glassInputs[:len(glassInputs):len(glassInputs)],
			sheet.Input{Name: "gap", Unit: "mm", Default: "12 mm", Meaning: "of air between the panes", Low: sheet.At(1), High: sheet.At(100)},
			sheet.Input{Name: "emissivity", Unit: "fraction", Default: "0.837", Meaning: "of one face in each gap: 0.837 bare glass, 0.03 to 0.2 with a coating for warmth", Low: sheet.At(0.01), High: sheet.At(1)},
			sheet.Input{Name: "inside", Unit: "W/m2K", Default: "7.7 W/m2K", Meaning: "film of air inside", Low: sheet.At(0.1), High: sheet.At(1000)},
			sheet.Input{Name: "outside", Unit: "W/m2K", Default: "25 W/m2K", Meaning: "film of air outside", Low: sheet.At(0.1), High: sheet.At(1000)},
			sheet.Input{Name: "frame_share", Unit: "fraction", Default: "0.25", Meaning: "of the window's area", Low: sheet.At(0), High: sheet.At(0.9)},
			sheet.Input{Name: "frame_u", Unit: "W/m2K", Default: "1.8 W/m2K", Meaning: "of the frame: timber 1.5 to 2.2, plastic 1.2 to 2.2, metal 2 to 7 (common practice, no source)", Low: sheet.At(0), High: sheet.At(50)},
			sheet.Input{Name: "shutter", Unit: "m2K/W", Default: "0 m2K/W", Meaning: "resistance that a shut shutter adds with its air", Low: sheet.At(0), High: sheet.At(10)},
		),
		Sources:  []string{"en673: gas and radiation in a gap", "iso10077-1: frame and shutter", "fresnel-bouguer: light"},
		Cautions: []string{"Air at 10 degC and 15 K shared by the gaps, as declared values are; a sloping window loses more.", "Large panes, low panes and overhead glass must be safety glass by the local code."},
		Do:       workWindow,
	}
}

func workWindow(c *sheet.Calc) {
	g, ok := readPanes(c)
	if !ok {
		return
	}
	w := Window{Glazing: g, Inside: material.Transmittance(c.Number("inside")), Outside: material.Transmittance(c.Number("outside")),
		Frame: Frame{Share: c.Number("frame_share"), U: material.Transmittance(c.Number("frame_u"))}}
	gap := Gap{Width: quantity.Millimetres(c.Number("gap")), Mean: 10, Difference: quantity.Kelvins(15 / max(1, float64(g.Count-1))), Emissivities: [2]float64{BareEmissivity, c.Number("emissivity")}}
	for i := range g.Count - 1 {
		w.Gaps[i] = gap.Conductance()
	}
	if err := w.Faults(); err != nil {
		c.Fail("%v", err)
		return
	}
	o := g.At(quantity.Degrees(c.Number("incidence")))
	if g.Count > 1 {
		c.Step("conductance of a gap", "Nu λ/s + 4 σ T³/(1/ε₁ + 1/ε₂ − 1)", fmt.Sprintf("s = %.4g mm, ε = %.4g, %.4g, T = 283.15 K", float64(gap.Width), gap.Emissivities[0], gap.Emissivities[1]), float64(w.Gaps[0]), "W/m2K")
	}
	u := c.Step("amid the glass", "U = 1/(1/ho + Σ d/λ + Σ 1/hg + 1/hi)", fmt.Sprintf("%d panes of %.4g mm, ho = %.4g, hi = %.4g", g.Count, float64(g.Panes[0].Thickness), float64(w.Outside), float64(w.Inside)), float64(w.CentreU()), "W/m2K")
	whole := c.Step("with its frame", "U = (1 − f) Ug + f Uf", fmt.Sprintf("f = %.4g, Ug = %.4g, Uf = %.4g", w.Frame.Share, u, float64(w.Frame.U)), float64(w.U()), "W/m2K")
	inward := w.Inward()
	gain := c.Step("heat in for each watt on the glass", "g = τ + Σ N α", fmt.Sprintf("τ = %.4f, N = %s, α = %s", o.Transmitted, list(inward[:g.Count]), list(o.Absorbed[:g.Count])), w.Gain(o), "fraction")
	c.Result("u", whole, "W/m2K")
	c.Result("u_centre", u, "W/m2K")
	c.Result("u_shuttered", float64(w.Shuttered(material.Resistance(c.Number("shutter")))), "W/m2K")
	c.Result("gain", w.WholeGain(o), "fraction")
	c.Result("gain_centre", gain, "fraction")
	c.Result("transmitted", o.Transmitted, "fraction")
	c.ResultList("inward", inward[:g.Count], "fraction")
}

func list(v []float64) string {
	var parts []string
	for _, x := range v {
		parts = append(parts, strconv.FormatFloat(x, 'f', 4, 64))
	}
	return strings.Join(parts, ", ")
}
