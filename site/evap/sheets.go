package evap

import (
	"fmt"
	"math"

	"suffice/quantity"
	"suffice/sheet"
	"suffice/site/sun"
)

// Sheets lists the worked calculations of this package.
func Sheets() []sheet.Sheet { return []sheet.Sheet{daySheet(), hourSheet()} }

const (
	penman     = "penman-monteith"
	hargreaves = "hargreaves"

	roofCaution = "For open ground only. Indoors or under glass the light, the wind (at most 0.5 m/s) and the damp are the room's own, and a weather station's figures do not apply."
	lawnCaution = "This is what a wide, watered lawn gives off. A crop takes it times its coefficient; dry soil gives less."
)

// maybe makes an input that may be left out.
func maybe(name, unit, meaning string, low, high float64) sheet.Input {
	return sheet.Input{Name: name, Unit: unit, Meaning: meaning, Low: sheet.At(low), High: sheet.At(high), Maybe: true}
}

// with makes an input with a default.
func with(name, unit, standard, meaning string, low, high float64) sheet.Input {
	return sheet.Input{Name: name, Unit: unit, Default: standard, Meaning: meaning, Low: sheet.At(low), High: sheet.At(high)}
}

func daySheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "evaporation-day", Title: "Reference evaporation of a day",
		Inputs: []sheet.Input{
			with("latitude", "deg", "40 deg", "north counts positive, south negative", -90, 90),
			with("day_of_year", "", "196", "1 is 1 January", 1, 366),
			with("altitude", "m", "0 m", "above the sea", -430, 6000),
			with("tmax", "degC", "27 degC", "highest air temperature of the day", -60, 60),
			with("tmin", "degC", "15 degC", "lowest air temperature of the day", -60, 60),
			maybe("vapour_pressure", "kPa", "mean of the day; the first that is given of this, dew_point, rh_max with rh_min, rh_mean is used", 0, 12),
			maybe("dew_point", "degC", "mean of the day", -60, 40),
			maybe("rh_max", "%", "highest relative humidity of the day", 0, 100),
			maybe("rh_min", "%", "lowest relative humidity of the day", 0, 100),
			maybe("rh_mean", "%", "mean relative humidity of the day", 0, 100),
			with("wind", "m/s", "2 m/s", "mean of the day; 2 m/s is the source's where it is not known", 0, 60),
			with("wind_height", "m", "2 m", "of the instrument over the ground", 0.5, 200),
			maybe("radiation", "MJ/m2d", "global light on the horizontal; with neither this nor sunshine it is estimated from the temperatures", 0, 45),
			maybe("sunshine", "h", "hours of bright sun", 0, 24),
			with("krs", "", "0.16", "for the estimate from temperatures: 0.16 inland, 0.19 at the coast", 0.05, 0.3),
			with("soil_heat", "MJ/m2d", "0 MJ/m2d", "into the soil; 0 for single days", -10, 10),
			{Name: "method", Kind: sheet.Text, Default: penman, Choices: []string{penman, hargreaves}, Meaning: "the full equation, or the estimate from temperatures"},
		},
		Sources:  []string{"fao56: eq. 6 to 52, ch. 2 to 4"},
		Cautions: []string{roofCaution, lawnCaution},
		Do:       workDay,
	}
}

func workDay(c *sheet.Calc) {
	in := dayOf(c)
	if faults := in.Faults(); faults != nil {
		c.Fail("evaporation-day: %v", faults)
		return
	}
	out := Daily(in)
	byTemperature := float64(Hargreaves(in))
	daySteps(c, in, out)
	eto := float64(out.ETo)
	if c.Text("method") == hargreaves {
		eto = c.Step("from temperatures alone", "0.0023 (Tmean + 17.8) √(Tmax − Tmin) 0.408 Ra (eq. 52)",
			fmt.Sprintf("0.0023·(%.4g + 17.8)·√(%.4g − %.4g)·0.408·%.4g", out.Mean, float64(in.Warmest), float64(in.Coolest), out.Ra), byTemperature, "mm/d")
	}
	c.Result("eto", eto, "mm/d")
	for _, r := range []struct {
		name  string
		value float64
		unit  string
	}{
		{"ra", out.Ra, "MJ/m2d"}, {"rs", out.Rs, "MJ/m2d"}, {"rso", out.Rso, "MJ/m2d"}, {"rns", out.Rns, "MJ/m2d"}, {"rnl", out.Rnl, "MJ/m2d"},
		{"rn", out.Rn, "MJ/m2d"}, {"es", out.Es, "kPa"}, {"ea", out.Ea, "kPa"}, {"slope", out.Slope, "kPa/K"}, {"gamma", out.Gamma, "kPa/K"},
		{"pressure", out.Pressure, "kPa"}, {"wind_2m", out.Wind, "m/s"}, {"day_length", out.DayLength, "h"},
	} {
		c.Result(r.name, r.value, r.unit)
	}
	c.ResultByMethod("eto_by_method", map[string]float64{penman: float64(out.ETo), hargreaves: byTemperature}, "mm/d")
	for _, a := range out.Assumed {
		c.Caution("Assumed: " + a + ".")
	}
}

// dayOf takes the inputs into a Day.
func dayOf(c *sheet.Calc) Day {
	given := func(name string) *float64 {
		if !c.Given(name) {
			return nil
		}
		v := c.Number(name)
		return &v
	}
	in := Day{
		Latitude: quantity.Degrees(c.Number("latitude")), DayOfYear: wholeDay(c), Altitude: quantity.Metres(c.Number("altitude")),
		Warmest: quantity.Celsius(c.Number("tmax")), Coolest: quantity.Celsius(c.Number("tmin")),
		Vapour: given("vapour_pressure"), DampMost: given("rh_max"), DampLeast: given("rh_min"), DampMean: given("rh_mean"),
		Wind: given("wind"), WindHeight: quantity.Metres(c.Number("wind_height")),
		Radiation: given("radiation"), Sunshine: given("sunshine"), KRs: c.Number("krs"), SoilHeat: c.Number("soil_heat"),
	}
	if d := given("dew_point"); d != nil {
		dewPoint := quantity.Celsius(*d)
		in.DewPoint = &dewPoint
	}
	return in
}

func daySteps(c *sheet.Calc, in Day, out DayOut) {
	c.Step("wind at 2 m", "u2 = uz 4.87/ln(67.8 z − 5.42), as it is at 2 m (eq. 47)", fmt.Sprintf("z = %g m", float64(in.WindHeight)), out.Wind, "m/s")
	c.Step("pressure", "P = 101.3 ((293 − 0.0065 z)/293)^5.26 (eq. 7)", fmt.Sprintf("z = %g m", float64(in.Altitude)), out.Pressure, "kPa")
	c.Step("psychrometric constant", "γ = 0.665e-3 P (eq. 8)", fmt.Sprintf("0.665e-3·%.4f", out.Pressure), out.Gamma, "kPa/K")
	c.Step("slope of saturation", "Δ = 4098 e°(T)/(T + 237.3)² (eq. 13)", fmt.Sprintf("T = %.4g degC", out.Mean), out.Slope, "kPa/K")
	c.Step("saturation", "es = (e°(Tmax) + e°(Tmin))/2, e°(T) = 0.6108 exp(17.27 T/(T + 237.3)) (eq. 11, 12)", fmt.Sprintf("Tmax = %g, Tmin = %g degC", float64(in.Warmest), float64(in.Coolest)), out.Es, "kPa")
	c.Step("vapour pressure", "ea as given, or from dew point (eq. 14), humidity (eq. 17 to 19), or e°(Tmin) (eq. 48)", "", out.Ea, "kPa")
	c.Step("light outside", "Ra = 24·60/π · 0.0820 dr (ws sin φ sin δ + cos φ cos δ sin ws) (eq. 21)",
		fmt.Sprintf("dr = %.4f, ws = %.4f, δ = %.4f rad", out.Distance, float64(out.Sunset), float64(out.Declination)), out.Ra, "MJ/m2d")
	c.Step("light on the ground", "Rs as given, (0.25 + 0.50 n/N) Ra (eq. 35), or kRs √(Tmax − Tmin) Ra (eq. 50)", fmt.Sprintf("N = %.4f h, Ra = %.4f", out.DayLength, out.Ra), out.Rs, "MJ/m2d")
	c.Step("clear-sky light", "Rso = (0.75 + 2e-5 z) Ra (eq. 37)", fmt.Sprintf("(0.75 + 2e-5·%g)·%.4f", float64(in.Altitude), out.Ra), out.Rso, "MJ/m2d")
	c.Step("net short-wave", "Rns = 0.77 Rs (eq. 38)", fmt.Sprintf("0.77·%.4f", out.Rs), out.Rns, "MJ/m2d")
	c.Step("net long-wave", "Rnl = σ (Tmax⁴ + Tmin⁴)/2 (0.34 − 0.14 √ea)(1.35 Rs/Rso − 0.35) (eq. 39)", fmt.Sprintf("ea = %.4f, Rs/Rso = %.4f", out.Ea, out.Relative), out.Rnl, "MJ/m2d")
	c.Step("net radiation", "Rn = Rns − Rnl (eq. 40)", fmt.Sprintf("%.4f − %.4f", out.Rns, out.Rnl), out.Rn, "MJ/m2d")
	c.Step("part driven by light", "0.408 Δ (Rn − G)/(Δ + γ(1 + 0.34 u2)) (eq. 6)", fmt.Sprintf("G = %g", out.SoilHeat), out.ByLight, "mm/d")
	c.Step("part driven by air", "γ 900/(T + 273) u2 (es − ea)/(Δ + γ(1 + 0.34 u2)) (eq. 6)", fmt.Sprintf("es − ea = %.4f", out.Es-out.Ea), out.ByAir, "mm/d")
	c.Step("reference evaporation", "sum of both parts", fmt.Sprintf("%.4f + %.4f", out.ByLight, out.ByAir), float64(out.ETo), "mm/d")
}

func hourSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "evaporation-hour", Title: "Reference evaporation of an hour",
		Inputs: []sheet.Input{
			with("latitude", "deg", "40 deg", "north counts positive, south negative", -90, 90),
			with("longitude", "deg", "25 deg", "east counts positive, west negative", -180, 180),
			with("zone_meridian", "deg", "30 deg", "of the clock, east positive: 15 deg for each hour ahead of UTC", -180, 210),
			with("day_of_year", "", "196", "1 is 1 January", 1, 366),
			{Name: "hour", Kind: sheet.Text, Default: "13:30", Meaning: "middle of the hour on the clock: 14:30 or 14.5h for 14 to 15 h"},
			with("altitude", "m", "0 m", "above the sea", -430, 6000),
			with("temperature", "degC", "27 degC", "mean of the hour", -60, 60),
			with("rh", "%", "50 %", "relative humidity, mean of the hour", 0, 100),
			with("wind", "m/s", "2 m/s", "mean of the hour", 0, 60),
			with("wind_height", "m", "2 m", "of the instrument over the ground", 0.5, 200),
			with("radiation", "MJ/m2h", "2.5 MJ/m2h", "global light on the horizontal in the hour", 0, 5),
			with("cloudiness", "", "0.8", "Rs/Rso of the late afternoon, for hours without sun: 1 clear, 0.3 overcast", 0.25, 1),
		},
		Sources:  []string{"fao56: eq. 28 to 33, 37 to 39, 45, 46, 53, 54"},
		Cautions: []string{roofCaution, lawnCaution},
		Do:       workHour,
	}
}

func workHour(c *sheet.Calc) {
	at, err := sun.ClockHours(c.Text("hour"))
	if err != nil {
		c.Fail("evaporation-hour: hour %v", err)
		return
	}
	in := Hour{
		Latitude: quantity.Degrees(c.Number("latitude")), Longitude: quantity.Degrees(c.Number("longitude")), Zone: c.Number("zone_meridian") / 15,
		DayOfYear: wholeDay(c), At: at, Altitude: quantity.Metres(c.Number("altitude")),
		Temperature: quantity.Celsius(c.Number("temperature")), Humidity: c.Number("rh"), Wind: c.Number("wind"),
		WindHeight: quantity.Metres(c.Number("wind_height")), Radiation: c.Number("radiation"), Cloudiness: c.Number("cloudiness"),
	}
	if d := float64(in.Longitude) - c.Number("zone_meridian"); math.Abs(d) > 60 {
		c.Fail("evaporation-hour: longitude %g deg and zone_meridian %g deg are %.0f deg apart: both count east positive, west negative", float64(in.Longitude), c.Number("zone_meridian"), math.Abs(d))
		return
	} else if math.Abs(d) > 30 {
		c.Caution(fmt.Sprintf("Longitude and zone meridian are %.0f deg apart: look at the signs, west is negative.", math.Abs(d)))
	}
	out := Hourly(in)
	hourSteps(c, in, out)
	for _, r := range []struct {
		name  string
		value float64
		unit  string
	}{
		{"eto", float64(out.ETo), "mm/h"}, {"rn", out.Rn, "MJ/m2h"}, {"g", out.SoilHeat, "MJ/m2h"}, {"ra", out.Ra, "MJ/m2h"}, {"rso", out.Rso, "MJ/m2h"},
		{"rns", out.Rns, "MJ/m2h"}, {"rnl", out.Rnl, "MJ/m2h"}, {"es", out.Es, "kPa"}, {"ea", out.Ea, "kPa"}, {"slope", out.Slope, "kPa/K"}, {"gamma", out.Gamma, "kPa/K"},
	} {
		c.Result(r.name, r.value, r.unit)
	}
	for _, a := range out.Assumed {
		c.Caution("Assumed: " + a + ".")
	}
}

func hourSteps(c *sheet.Calc, in Hour, out HourOut) {
	c.Step("hour angle", "w = π/12 ((t + (longitude − meridian)/15 + Sc) − 12) (eq. 31 to 33)", fmt.Sprintf("t = %g h, Sc = %.4f h", in.At, out.SeasonShift), float64(out.HourAngle), "rad")
	c.Step("light outside", "Ra = 12·60/π · 0.0820 dr ((w2 − w1) sin φ sin δ + cos φ cos δ (sin w2 − sin w1)) (eq. 28)", fmt.Sprintf("dr = %.4f, δ = %.4f rad", out.Distance, float64(out.Declination)), out.Ra, "MJ/m2h")
	c.Step("clear-sky light", "Rso = (0.75 + 2e-5 z) Ra (eq. 37)", fmt.Sprintf("(0.75 + 2e-5·%g)·%.4f", float64(in.Altitude), out.Ra), out.Rso, "MJ/m2h")
	c.Step("vapour pressure", "ea = e°(T) RH/100 (eq. 54)", fmt.Sprintf("%.4f·%g/100", out.Es, in.Humidity), out.Ea, "kPa")
	c.Step("net short-wave", "Rns = 0.77 Rs (eq. 38)", fmt.Sprintf("0.77·%g", in.Radiation), out.Rns, "MJ/m2h")
	c.Step("net long-wave", "Rnl = σ T⁴ (0.34 − 0.14 √ea)(1.35 Rs/Rso − 0.35) (eq. 39)", fmt.Sprintf("ea = %.4f, Rs/Rso = %.4f", out.Ea, out.Relative), out.Rnl, "MJ/m2h")
	c.Step("net radiation", "Rn = Rns − Rnl (eq. 40)", fmt.Sprintf("%.4f − %.4f", out.Rns, out.Rnl), out.Rn, "MJ/m2h")
	c.Step("into the soil", "G = 0.1 Rn by day, 0.5 Rn by night (eq. 45, 46)", fmt.Sprintf("Rn = %.4f", out.Rn), out.SoilHeat, "MJ/m2h")
	c.Step("reference evaporation", "(0.408 Δ (Rn − G) + γ 37/(T + 273) u2 (e°(T) − ea))/(Δ + γ(1 + 0.34 u2)) (eq. 53)",
		fmt.Sprintf("Δ = %.4f, γ = %.4f, u2 = %.4f", out.Slope, out.Gamma, out.Wind), float64(out.ETo), "mm/h")
}

// wholeDay gives the day of the year, which has to be a whole number.
func wholeDay(c *sheet.Calc) int {
	day := c.Number("day_of_year")
	if day != math.Trunc(day) {
		c.Fail("day_of_year %g is not a whole number: 1 is 1 January", day)
	}
	return int(day)
}
