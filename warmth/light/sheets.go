package light

import (
	"fmt"
	"math"

	"suffice/glass"
	"suffice/material"
	"suffice/quantity"
	"suffice/sheet"
	"suffice/site/air"
	"suffice/site/sun"
)

// Sheets lists the worked calculations of this package.
func Sheets() []sheet.Sheet { return []sheet.Sheet{skySheet(), windowSheet()} }

func skySheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "sky-temperature", Title: "How cold the sky is",
		Inputs: []sheet.Input{
			{Name: "temperature", Unit: "degC", Default: "10 degC", Low: sheet.At(-60), High: sheet.At(50), Meaning: "of the air"},
			{Name: "humidity", Unit: "%", Default: "60 %", Low: sheet.At(1), High: sheet.At(100), Meaning: "relative, of the air"},
			{Name: "clearness", Default: "1", Low: sheet.At(0), High: sheet.At(1.5), Meaning: "the day's light over that of a clear day: 1 clear, 0.3 overcast"},
			{Name: "solar_time", Unit: "h", Default: "0 h", Low: sheet.At(0), High: sheet.At(24), Meaning: "by the sun: 0 h midnight, 12 h noon"},
			{Name: "method", Kind: sheet.Text, Default: BerdahlMartin.String(), Choices: []string{BerdahlMartin.String(), ClarkAllen.String()}, Meaning: "whose clear sky and whose cloud"},
		},
		Sources: []string{"berdahl-martin: clear sky", "martin-berdahl: cloud", "fao56: eq. 35, light and sunshine", "clark-allen: clear sky", "walton: cloud", "kasten-czeplak: light under cloud"},
		Cautions: []string{"An hour may lie 40 W/m2 from what a station measures: cloud is told by the light of the day only, and the night's may differ.",
			"Roofs freeze under a clear sky while the air is above freezing: pipes and collectors are to be protected for the sky, by a licensed person where the local code asks."},
		Do: workSky,
	}
}

func workSky(c *sheet.Calc) {
	t := quantity.Celsius(c.Number("temperature"))
	dew := air.DewPoint(air.VapourOfHumidity(t, c.Number("humidity")))
	c.Step("dew point", "where the vapour saturates the air", fmt.Sprintf("%g degC, %g %%", float64(t), c.Number("humidity")), float64(dew), "degC")
	by := make(map[string]float64)
	for _, m := range []SkyModel{BerdahlMartin, ClarkAllen} {
		cloud := m.Cloud(c.Number("clearness"))
		emissivity := m.Emissivity(dew, c.Number("solar_time"), cloud)
		cold := blackAs(t, emissivity)
		by[m.String()] = float64(cold)
		if m.String() != c.Text("method") {
			continue
		}
		c.Step("cloud", m.cloudFormula(), fmt.Sprintf("1 − light = 1 − %g", c.Number("clearness")), cloud, "fraction")
		c.Step("emissivity", m.formula(), fmt.Sprintf("Td = %.2f degC, t = %g h, N = %.3f", float64(dew), c.Number("solar_time"), cloud), emissivity, "fraction")
		c.Result("sky_temperature", float64(cold), "degC")
		c.Result("emissivity", emissivity, "fraction")
		c.Result("cloud", cloud, "fraction")
		c.Result("light", air.SkyLight(t, emissivity), "W/m2")
	}
	c.Step("temperature", "T sky = ε^¼ T", fmt.Sprintf("T = %.2f K, less 273.15", t.Kelvin()), by[c.Text("method")], "degC")
	c.ResultByMethod("by_method", by, "degC")
}

func (m SkyModel) cloudFormula() string {
	if m == ClarkAllen {
		return "N = ((1 − light)/0.75)^(1/3.4), 0 to 1"
	}
	return "N = (1 − light)·0.75/0.50, 0 to 1"
}

func (m SkyModel) formula() string {
	if m == ClarkAllen {
		return "(0.787 + 0.764 ln(Td/273))·(1 + 0.0224 n − 0.0035 n² + 0.00028 n³), n = 10 N"
	}
	return "ε₀ + (1 − ε₀) 0.7835 N, ε₀ = 0.711 + 0.56 Td/100 + 0.73 (Td/100)² + 0.013 cos(2πt/24)"
}

func windowSheet() sheet.Sheet {
	light := func(name, standard, meaning string) sheet.Input {
		return sheet.Input{Name: name, Unit: "W/m2", Default: standard, Low: sheet.At(0), High: sheet.At(2000), Meaning: meaning}
	}
	share := func(name, standard string, most float64, meaning string) sheet.Input {
		return sheet.Input{Name: name, Unit: "fraction", Default: standard, Low: sheet.At(0), High: sheet.At(most), Meaning: meaning}
	}
	return sheet.Sheet{
		Name: "window-hour", Title: "Sun that a window lets in, in one hour",
		Inputs: []sheet.Input{
			light("beam", "400 W/m2", "straight from the sun, on the window's plane"),
			{Name: "incidence", Unit: "deg", Default: "45 deg", Low: sheet.At(0), High: sheet.At(90), Meaning: "between the sun and straight out of the window"},
			light("sky", "80 W/m2", "from the sky, on the plane"),
			light("ground", "40 W/m2", "from the ground, on the plane"),
			share("sunlit", "1", 1, "share of the window that the sun reaches past overhang and fins"),
			{Name: "panes", Default: "2", Low: sheet.At(1), High: sheet.At(glass.MostPanes), Meaning: "of bare glass, a whole number"},
			{Name: "thickness", Unit: "mm", Default: "4 mm", Low: sheet.At(0.5), High: sheet.At(30), Meaning: "of each pane"},
			{Name: "extinction", Unit: "/m", Default: "20 /m", Low: sheet.At(0), High: sheet.At(200), Meaning: "4 for low-iron glass, 20 for usual, 32 for greenish"},
			{Name: "gap", Unit: "W/m2K", Default: "6 W/m2K", Low: sheet.At(0.1), High: sheet.At(1000), Meaning: "conductance of the air between panes, radiation included"},
			share("frame_share", "0.25", 0.9, "of the window's area that is frame"),
		},
		Sources:  []string{"fresnel-bouguer: light through panes", "en673: films of 7.7 and 25 W/m2K", "iso10077-1: shares of glass and frame"},
		Cautions: []string{"Clean glass, no curtain. Under an overhang the sky's and the ground's light are less too: the hourly run counts it."},
		Do:       workWindow,
	}
}

func workWindow(c *sheet.Calc) {
	count := c.Number("panes")
	if count != math.Trunc(count) {
		c.Fail("panes %g is not a whole number: 1 to %d", count, glass.MostPanes)
		return
	}
	pane := glass.Pane{Thickness: quantity.Millimetres(c.Number("thickness")), Index: glass.GlassIndex, Extinction: c.Number("extinction"), Conductivity: glass.GlassConductivity}
	w := Window{Pane: glass.Window{Glazing: glass.Alike(int(count), pane), Inside: glass.FilmInside, Outside: glass.FilmOutside, Frame: glass.Frame{Share: c.Number("frame_share")}}}
	for i := range w.Pane.Gaps {
		w.Pane.Gaps[i] = material.Transmittance(c.Number("gap"))
	}
	b := w.open()
	cosine := math.Cos(float64(quantity.Degrees(c.Number("incidence")).Radians()))
	l := sun.PlaneLight{Incidence: cosine, Beam: quantity.Irradiance(c.Number("beam")), Sky: quantity.Irradiance(c.Number("sky")), Ground: quantity.Irradiance(c.Number("ground"))}
	beam, diffuse, inside := b.hour(l, c.Number("sunlit"))
	through, kept := b.parts(b.curve.At(cosine))
	c.Step("share let through at that angle", "τ(θ)", fmt.Sprintf("cos θ = %.4f", cosine), through, "fraction")
	c.Step("share of it taken up and sent inside", "Σ Nᵢ αᵢ(θ)", fmt.Sprintf("%g panes", count), kept, "fraction")
	c.Step("share of even light let through", "τd", fmt.Sprintf("%g panes", count), b.diffuse, "fraction")
	c.Result("beam", c.Step("beam let through", "(1 − frame) τ(θ) sunlit beam", fmt.Sprintf("%.4g·%.4f·%.4g·%.4g W/m2", b.clear, through, c.Number("sunlit"), c.Number("beam")), beam, "W/m2"), "W/m2")
	c.Result("diffuse", c.Step("diffuse let through", "(1 − frame) τd (sky + ground)", fmt.Sprintf("%.4g·%.4f·(%.4g + %.4g) W/m2", b.clear, b.diffuse, c.Number("sky"), c.Number("ground")), diffuse, "W/m2"), "W/m2")
	c.Result("taken_up", inside, "W/m2")
	c.Result("total", beam+diffuse+inside, "W/m2")
}
