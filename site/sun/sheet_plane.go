package sun

import (
	"fmt"
	"math"

	"suffice/quantity"
	"suffice/sheet"
	"suffice/site"
)

func planeLightSheet() sheet.Sheet {
	light := func(name, standard, meaning string) sheet.Input {
		return sheet.Input{Name: name, Unit: "W/m2", Default: standard, Meaning: meaning, Low: sheet.At(0), High: sheet.At(1500)}
	}
	return sheet.Sheet{
		Name: "plane-light", Title: "Light on a sloping surface",
		Inputs: []sheet.Input{
			latitudeInput, dayInput("80", "1 is 1 January"),
			{Name: "solar_time", Kind: sheet.Text, Default: "12:00", Meaning: "hours by the sun, 10:30 or 10.5h"},
			maybe(sheet.Input{Name: "declination", Unit: "deg", Meaning: "of the sun, if it is known; else from the day", Low: sheet.At(-23.6), High: sheet.At(23.6)}),
			maybe(sheet.Input{Name: "zenith", Unit: "deg", Meaning: "with sun_azimuth, instead of latitude and time", Low: sheet.At(0), High: sheet.At(90)}),
			maybe(sheet.Input{Name: "sun_azimuth", Unit: "deg", Meaning: "of the sun, from north by east", Low: sheet.At(-360), High: sheet.At(360)}),
			slopeInput, facingInput,
			light("global", "600 W/m2", "on the horizontal"), light("diffuse", "150 W/m2", "on the horizontal"),
			maybe(light("beam_normal", "", "straight from the sun, on a surface that faces it")),
			{Name: "albedo", Unit: "fraction", Default: "0.2", Meaning: "what the ground throws back: grass 0.2, fresh snow 0.8", Low: sheet.At(0), High: sheet.At(1)},
			{Name: "model", Kind: sheet.Text, Default: Perez.String(), Choices: modelNames[:], Meaning: "how the diffuse light is spread over the sky"},
			maybe(light("extraterrestrial", "", "outside the air, facing the sun; else from the day")),
		},
		Sources: []string{"perez: eq. 1 to 9, table 6", "hay-davies: the part round the sun", "reindl: the horizon term of hdkr",
			"liu-jordan: isotropic", "iso52010-1: its own clearness and air mass", "erbs-klein-duffie: diffuse share where only global is given"},
		Cautions: []string{"Light on a slope from light on the level is a model: single hours may be off by a tenth and more, under broken cloud much more.", eyeCaution},
		Do:       workPlaneLight,
	}
}

func workPlaneLight(c *sheet.Calc) {
	at, ok := planeSun(c)
	if !ok {
		return
	}
	l, ok := planeSky(c, at)
	if !ok {
		return
	}
	model, err := ModelNamed(c.Text("model"))
	if err != nil {
		c.Fail("plane-light: %v", err)
		return
	}
	p := Plane{Slope: quantity.Degrees(c.Number("slope")), Azimuth: quantity.Degrees(c.Number("azimuth"))}
	totals := make(map[string]float64, len(modelNames))
	for m, name := range modelNames {
		totals[name] = float64(NewFace(p, c.Number("albedo"), Model(m), site.Horizon{}).Light(at, l).Total())
	}
	f := NewFace(p, c.Number("albedo"), model, site.Horizon{})
	out := f.Light(at, l)
	planeSteps(c, f, at, l, out)
	c.Result("incidence", math.Acos(max(-1, min(1, out.Incidence)))/degree, "deg")
	c.Result("beam", float64(out.Beam), "W/m2")
	c.Result("sky", float64(out.Sky), "W/m2")
	c.Result("ground", float64(out.Ground), "W/m2")
	c.Result("total", float64(out.Total()), "W/m2")
	c.Result("clearness", (float64(l.Diffuse)+float64(l.Beam)*at.CosZenith)/(float64(at.Normal)*at.CosZenith), "")
	c.ResultByMethod("total_by_method", totals, "W/m2")
	if at.CosZenith < cos85 {
		c.Caution("The sun is lower than 5 deg: the models were not made for that.")
	}
}

// planeSun gives where the sun stands, from its angles or from place, day and hour.
func planeSun(c *sheet.Calc) (at Moment, ok bool) {
	day := wholeDay(c)
	switch {
	case c.Given("zenith") != c.Given("sun_azimuth"):
		c.Fail("plane-light: zenith and sun_azimuth go together")
		return at, false
	case c.Given("zenith"):
		at = Moment{CosZenith: math.Cos(c.Number("zenith") * degree), Azimuth: quantity.Degrees(c.Number("sun_azimuth")).Radians(), Normal: NormalOutside(day), Share: 1}
	default:
		solar, err := ClockHours(c.Text("solar_time"))
		if err != nil {
			c.Fail("plane-light: solar_time %v", err)
			return at, false
		}
		declination, _ := Season(day)
		if c.Given("declination") {
			declination = quantity.Degrees(c.Number("declination"))
		}
		at = SolarMoment(quantity.Degrees(c.Number("latitude")), declination, solar, day)
		c.Step("cosine of zenith", "cos z = sin φ sin δ + cos φ cos δ cos H",
			fmt.Sprintf("φ = %g, δ = %.4f, H = %.4f deg", c.Number("latitude"), float64(declination), 15*(solar-12)), at.CosZenith, "")
	}
	if c.Given("extraterrestrial") {
		at.Normal = quantity.Irradiance(c.Number("extraterrestrial"))
	}
	if at.CosZenith <= 0 {
		c.Fail("plane-light: the sun is down at that hour: take one between sunrise and sunset")
		return at, false
	}
	return at, true
}

// planeSky gives diffuse and beam from the two of three that were given.
func planeSky(c *sheet.Calc, at Moment) (l Light, ok bool) {
	global, diffuse := c.Number("global"), c.Number("diffuse")
	hasGlobal, hasDiffuse, hasBeam := c.Chosen("global"), c.Chosen("diffuse"), c.Chosen("beam_normal")
	switch {
	case hasBeam && hasGlobal && hasDiffuse:
		c.Fail("plane-light: give two of global, diffuse and beam_normal: the third follows")
		return l, false
	case hasBeam && hasGlobal:
		beam := c.Number("beam_normal")
		diffuse = c.Step("diffuse light", "D = G − B cos z", fmt.Sprintf("%g − %g·%.4f", global, beam, at.CosZenith), global-beam*at.CosZenith, "W/m2")
		l = Light{Diffuse: quantity.Irradiance(diffuse), Beam: quantity.Irradiance(beam)}
	case hasBeam:
		l = Light{Diffuse: quantity.Irradiance(diffuse), Beam: quantity.Irradiance(c.Number("beam_normal"))}
	default:
		if hasGlobal && !hasDiffuse {
			k := c.Step("clearness", "kT = G/(G0 cos z)", fmt.Sprintf("%g/(%.5g·%.4f)", global, float64(at.Normal), at.CosZenith), global/(float64(at.Normal)*at.CosZenith), "")
			diffuse = c.Step("diffuse light", "D = G f(kT), Erbs", fmt.Sprintf("%g·%.4f", global, ErbsFraction(k)), global*ErbsFraction(k), "W/m2")
			c.Caution("Only global was given: the diffuse share is a model's, and a single hour may be far from it.")
		}
		beam := c.Step("beam facing the sun", "B = (G − D)/cos z", fmt.Sprintf("(%g − %.5g)/%.4f", global, diffuse, at.CosZenith), (global-diffuse)/at.CosZenith, "W/m2")
		l = Light{Diffuse: quantity.Irradiance(diffuse), Beam: quantity.Irradiance(beam)}
	}
	if l.Diffuse < 0 || l.Beam < 0 {
		c.Fail("plane-light: these do not fit together: diffuse would be %.4g and beam %.4g W/m2; global is at least diffuse, and at least beam times %.3f", float64(l.Diffuse), float64(l.Beam), at.CosZenith)
		return l, false
	}
	return l, true
}

// planeSteps shows the working of a face's light.
func planeSteps(c *sheet.Calc, f *Face, at Moment, l Light, out PlaneLight) {
	seen := lookOf(at)
	b := f.Model.brightness(&seen, float64(l.Diffuse), float64(l.Beam))
	c.Step("cosine of incidence", "cos θ = cos β cos z + sin β sin z cos(A − γ)",
		fmt.Sprintf("β = %g, z = %.4f, A = %.4f, γ = %g deg", float64(f.Plane.Slope), math.Acos(at.CosZenith)/degree, float64(at.Azimuth.Degrees()), float64(f.Plane.Azimuth)), out.Incidence, "")
	c.Step("beam on the plane", "B max(0, cos θ)", fmt.Sprintf("%.5g·max(0, %.4f)", float64(l.Beam), out.Incidence), float64(out.Beam), "W/m2")
	c.Step("share of diffuse from round the sun", "F1 (perez), B/G0 (hay-davies, hdkr), 0 (isotropic)", "model "+f.Model.String(), b.round, "")
	c.Step("share of diffuse at the horizon", "F2 (perez), else 0", "model "+f.Model.String(), b.band, "")
	c.Step("sky on the plane", "D [(1 − F1)(1 + cos β)/2 · h + F1 max(0, cos θ)/max(cos 85, cos z) + F2 sin β], h = 1 + f sin³(β/2) for hdkr",
		fmt.Sprintf("D = %.5g, F1 = %.4f, F2 = %.4f, h = %.4f", float64(l.Diffuse), b.round*b.taken, b.band, 1+b.bow*f.leant), float64(out.Sky), "W/m2")
	c.Step("ground on the plane", "ρ (D + B cos z)(1 − cos β)/2", fmt.Sprintf("%g·(%.5g + %.5g·%.4f)·(1 − %.4f)/2", f.Albedo, float64(l.Diffuse), float64(l.Beam), at.CosZenith, f.cosSlope), float64(out.Ground), "W/m2")
}
