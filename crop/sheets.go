package crop

import (
	"fmt"
	"strings"

	"suffice/sheet"
)

// Sheets lists the worked calculations of this package.
func Sheets() []sheet.Sheet {
	return []sheet.Sheet{waterSheet(), degreeSheet(), lightSheet(), seedSheet()}
}

const (
	first, second  = "1998", "2025"
	average, cut   = "average", "cut"
	openAirCaution = "For beds in the open. Under glass the reference evaporation is the room's own: other light, still air, other damp."
	kindsCaution   = "A row stands for a kind of plant: varieties differ by a third and more."
)

func with(name, unit, standard, meaning string, low, high float64) sheet.Input {
	return sheet.Input{Name: name, Unit: unit, Default: standard, Meaning: meaning, Low: sheet.At(low), High: sheet.At(high)}
}

func maybe(name, unit, meaning string, low, high float64) sheet.Input {
	return sheet.Input{Name: name, Unit: unit, Meaning: meaning, Low: sheet.At(low), High: sheet.At(high), Maybe: true}
}

func list(name, unit, meaning string, low, high float64) sheet.Input {
	return sheet.Input{Name: name, Kind: sheet.List, Unit: unit, Meaning: meaning, Low: sheet.At(low), High: sheet.At(high), Maybe: true}
}

func which(standard string) sheet.Input {
	return sheet.Input{Name: "crop", Kind: sheet.Text, Default: standard, Choices: Names(), Meaning: "what grows"}
}

// chosen gives the crop that the sheet's Choices let through.
func chosen(c *sheet.Calc) *Crop {
	plant, err := Named(c.Text("crop"))
	if err != nil {
		panic(err) // Choices are Names
	}
	return plant
}

func waterSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "crop-water", Title: "Water that a crop gives off",
		Inputs: []sheet.Input{
			which("tomato"),
			{Name: "edition", Kind: sheet.Text, Default: first, Choices: []string{first, second}, Meaning: "of FAO-56: the first, or the revision, of which three crops are known here"},
			with("eto", "mm/d", "5 mm/d", "reference evaporation, from evaporation-day", 0, 20),
			with("day", "", "50", "of the season, 0 at its beginning", 0, 400),
			list("stages", "", "your own days of the four stages: initial, development, middle, late", 1, 300),
			list("kc", "", "your own coefficients: initial, middle, end", 0, 2),
			maybe("wind", "m/s", "at 2 m, mean of the middle stage: with rh_min it corrects the coefficients", 0, 20),
			maybe("rh_min", "%", "mean of the days' lowest humidity in the middle stage", 0, 100),
			maybe("height", "m", "of the plants; the table's where it is not given", 0.05, 10),
		},
		Sources:  []string{"fao56: tables 11, 12, eq. 58, 62, 65, 66", "fao56-2025: table 6.1"},
		Cautions: []string{openAirCaution, kindsCaution},
		Do:       workWater,
	}
}

func workWater(c *sheet.Calc) {
	plant := chosen(c)
	stages, kc := plant.Stages, plant.Kc
	if c.Text("edition") == second {
		if plant.Revised == nil {
			c.Fail("crop-water: %s is not among the rows of the 2025 revision that are known here (zucchini, winter squash, green bean): take edition=1998 or give kc", plant.Name)
			return
		}
		kc = *plant.Revised
	}
	if !own(c, &stages, &kc) || !corrected(c, plant, &kc) {
		return
	}
	day, eto := c.Number("day"), c.Number("eto")
	if day > stages.Season() {
		c.Caution(fmt.Sprintf("Day %g is after the season of %g days: the last coefficient is shown.", day, stages.Season()))
	}
	at := c.Step("coefficient of the day", "Kc,i = Kc,prev + (i − ΣLprev)/Lstage (Kc,next − Kc,prev) (eq. 66)",
		fmt.Sprintf("stages %g, %g, %g, %g d; Kc %.4g, %.4g, %.4g; i = %g", stages.Initial, stages.Development, stages.Middle, stages.Late, kc.Initial, kc.Middle, kc.End, day), kc.At(stages, day), "")
	etc := c.Step("the crop's water", "ETc = Kc ETo (eq. 58)", fmt.Sprintf("%.4f·%g", at, eto), at*eto, "mm/d")
	season := c.Step("of the season, at a steady ETo", "ETo (Kini Lini + (Kini + Kmid)/2 Ldev + Kmid Lmid + (Kmid + Kend)/2 Llate)",
		fmt.Sprintf("%g·%.4f", eto, kc.Sum(stages)), kc.Sum(stages)*eto, "mm")
	c.Result("kc", at, "")
	c.Result("etc", etc, "mm/d")
	c.Result("season", season, "mm")
	c.Result("mean_kc", kc.Sum(stages)/stages.Season(), "")
	c.ResultText("known", "coefficients "+kc.Says()+"; stages "+stages.Says())
}

// own puts in the stages and coefficients that the person gave.
func own(c *sheet.Calc, stages *Stages, kc *Kc) bool {
	yours := From{Source: "as given"}
	if c.Given("stages") {
		s := c.Numbers("stages")
		if len(s) != 4 {
			c.Fail("crop-water: stages has %d numbers: it takes four, initial, development, middle and late", len(s))
			return false
		}
		*stages = Stages{s[0], s[1], s[2], s[3], yours}
	}
	if c.Given("kc") {
		k := c.Numbers("kc")
		if len(k) != 3 {
			c.Fail("crop-water: kc has %d numbers: it takes three, initial, middle and end", len(k))
			return false
		}
		*kc = Kc{k[0], k[1], k[2], yours}
	}
	return true
}

// corrected puts in wind and damp, which go together.
func corrected(c *sheet.Calc, plant *Crop, kc *Kc) bool {
	if !c.Given("wind") && !c.Given("rh_min") {
		return true
	}
	if !c.Given("wind") || !c.Given("rh_min") {
		c.Fail("crop-water: wind and rh_min correct together: give both or neither")
		return false
	}
	a := Air{Wind: c.Number("wind"), LeastRH: c.Number("rh_min"), Height: plant.Height.Value}
	if c.Given("height") {
		a.Height = c.Number("height")
	}
	for _, fault := range a.Faults() {
		c.Caution("The " + fault + ".")
	}
	c.Step("wind and damp add to middle and end", "(0.04 (u2 − 2) − 0.004 (RHmin − 45)) (h/3)^0.3 (eq. 62, 65)",
		fmt.Sprintf("(0.04·(%g − 2) − 0.004·(%g − 45))·(%g/3)^0.3", a.Wind, a.LeastRH, a.Height), a.shift(), "")
	*kc = kc.In(a)
	return true
}

func degreeSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "degree-days", Title: "Warmth of a day for plants",
		Inputs: []sheet.Input{
			with("tmax", "degC", "28 degC", "highest air temperature of the day", -60, 60),
			with("tmin", "degC", "14 degC", "lowest air temperature of the day", -60, 60),
			with("base", "degC", "10 degC", "below it the plant does not grow: 10 for tomato, 4.5 for lettuce", -10, 30),
			maybe("upper", "degC", "above it more warmth gives no more", 0, 60),
			{Name: "method", Kind: sheet.Text, Default: average, Choices: []string{average, cut}, Meaning: "the mean held to the base, or highest and lowest each held to it first"},
		},
		Sources:  []string{"mcmaster-1997: methods 1 and 2"},
		Cautions: []string{"The two methods differ whenever the night falls below the base: sums of one must not be held against a crop's sum by the other."},
		Do:       workDegrees,
	}
}

func workDegrees(c *sheet.Calc) {
	day, base, upper := Swing{Warmest: c.Number("tmax"), Coolest: c.Number("tmin")}, c.Number("base"), 100.0
	if day.Coolest > day.Warmest {
		c.Fail("degree-days: tmin %g degC is above tmax %g degC", day.Coolest, day.Warmest)
	}
	if c.Given("upper") {
		if upper = c.Number("upper"); upper <= base {
			c.Fail("degree-days: upper %g degC is not above base %g degC", upper, base)
		}
	}
	numbers := fmt.Sprintf("Tmax = %g, Tmin = %g, Tbase = %g degC", day.Warmest, day.Coolest, base)
	by := map[string]float64{
		average: c.Step("mean first", "max(Tbase, (Tmax + Tmin)/2) − Tbase", numbers, DegreeDays(Average, day, base, upper), "K"),
		cut:     c.Step("each held to the base first", "(max(Tbase, Tmax) + max(Tbase, Tmin))/2 − Tbase", numbers, DegreeDays(Cut, day, base, upper), "K"),
	}
	c.Result("degree_days", by[c.Text("method")], "K")
	c.ResultByMethod("by_method", by, "K")
}

func lightSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "daily-light", Title: "Light of a day for plants",
		Inputs: []sheet.Input{
			with("radiation", "MJ/m2d", "15 MJ/m2d", "global light on the plane of the glass", 0, 45),
			with("transmission", "", "1", "share that the glass lets through and the frame leaves: 1 in the open", 0, 1),
			maybe("ppfd", "umol/m2s", "of lamps instead of the sun, at the leaves", 0, 3000),
			maybe("hours", "h", "of lamps a day", 0, 24),
			{Name: "crop", Kind: sheet.Text, Default: "lettuce", Choices: Names(), Meaning: "to hold the light against"},
		},
		Sources: []string{"mccree-1972: 4.57 µmol/J of sunlight between 400 and 700 nm", "light-needs: needs by crop", "flux-photons: two other conversions", "monteith-1977: growth follows light"},
		Do:      workLight,
	}
}

func workLight(c *sheet.Calc) {
	plant := chosen(c)
	lamps := c.Given("ppfd")
	if lamps != c.Given("hours") {
		c.Fail("daily-light: ppfd and hours go together: give both for lamps, neither for the sun")
		return
	}
	var dli float64
	if lamps {
		if c.Chosen("radiation") || c.Chosen("transmission") {
			c.Fail("daily-light: the sun's radiation and lamps are two sums: work them one after the other and add")
			return
		}
		dli = c.Step("light of lamps", "DLI = PPFD 3600 h/10⁶", fmt.Sprintf("%g·3600·%g/10⁶", c.Number("ppfd"), c.Number("hours")), LampLight(c.Number("ppfd"), c.Number("hours")), "mol/m2d")
	} else {
		dli = c.Step("light of the sun", "DLI = Rs τ 0.45 · 4.57", fmt.Sprintf("%g·%g·%g·%g", c.Number("radiation"), c.Number("transmission"), Visible, PhotonsPerJoule),
			DailyLight(c.Number("radiation"), c.Number("transmission")), "mol/m2d")
		c.ResultByMethod("by_conversion", byConversion(c.Number("radiation"), c.Number("transmission")), "mol/m2d")
	}
	if dli > brightest {
		c.Caution(fmt.Sprintf("%.3g mol/m2d is more than the %d that open places are said to have (light-needs): look at what was given again.", dli, brightest))
	}
	share := c.Step("share of full growth that it allows", "min(1, DLI/need)", fmt.Sprintf("%.4g/%g", dli, plant.Light.High), plant.LightYield(dli), "fraction")
	if dli < plant.Light.Low {
		c.Caution(fmt.Sprintf("Below %g mol/m2d %s hardly bears (%s).", plant.Light.Low, plant.Name, plant.Light.Says()))
	}
	c.Result("dli", dli, "mol/m2d")
	c.Result("growth", share, "fraction")
	c.Result("need", plant.Light.High, "mol/m2d")
}

// byConversion gives the sun's light by each conversion.
func byConversion(radiation, passes float64) map[string]float64 {
	by := make(map[string]float64)
	for _, v := range Conversions() {
		by[v.Name] = v.Day(radiation, passes)
	}
	return by
}

func seedSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "seed", Title: "Seed: what comes up, when, and whether to keep it",
		Inputs: []sheet.Input{
			which("tomato"),
			with("temperature", "degC", "20 degC", "of the soil where the seed lies", -10, 50),
			with("age", "", "0", "of the seed, years since it was ripe", 0, 50),
		},
		Sources:  []string{"harrington-1954: germination at nine soil temperatures", "knott-1997: seed life", "seed-saving-2025: what crosses", "texas-soil: least and realistic soil temperatures"},
		Cautions: []string{kindsCaution, "Do not eat or feed bought seed: it may be coated with poison."},
		Do:       workSeed,
	}
}

func workSeed(c *sheet.Calc) {
	plant := chosen(c)
	if plant.Sprouts == nil {
		c.Fail("seed: %s is grown from tubers, not from seed", plant.Name)
		return
	}
	soil := c.Number("temperature")
	share := c.Step("that come up", "between Harrington's temperatures, along a line", fmt.Sprintf("%g degC", soil), plant.Sprouts.ShareAt(soil), "%")
	if days, ok := plant.Sprouts.DaysAt(soil); ok {
		c.Result("days", c.Step("until they do", "1/days, along a line", fmt.Sprintf("%g degC", soil), days, "d"), "d")
	} else {
		c.ResultText("days", "not known: hardly any come up at this temperature")
	}
	if err := plant.KeptSeed(c.Number("age")); err != nil {
		c.Caution("The share is that of fresh seed; " + err.Error() + ".")
	}
	if err := plant.ColdSoil(soil); err != nil {
		c.Caution(strings.ToUpper(err.Error()[:1]) + err.Error()[1:] + ".")
	}
	if f := plant.Soil.Least; f != nil {
		c.Result("least_soil", f.Value, "degC")
	}
	if f := plant.Soil.Good; f != nil {
		c.Result("good_soil", f.Value, "degC")
	}
	c.Result("germination", share, "%")
	c.ResultText("breeds_true", plant.BreedsTrue())
	c.Result("keeps_years", plant.Seed.Keeps.Value, "")
	c.ResultText("known", "germination "+plant.Sprouts.Says()+"; seed life "+plant.Seed.Keeps.Says())
}
