package sun

import (
	"fmt"
	"math"
	"time"

	"suffice/quantity"
	"suffice/sheet"
	"suffice/site"
	"suffice/site/air"
)

// Sheets lists the worked calculations of this package.
func Sheets() []sheet.Sheet {
	return []sheet.Sheet{positionSheet(), dayLengthSheet(), planeLightSheet(), lightHourSheet()}
}

var (
	latitudeInput = sheet.Input{Name: "latitude", Unit: "deg", Default: "40 deg", Meaning: "north counts positive, south negative", Low: sheet.At(-90), High: sheet.At(90)}
	slopeInput    = sheet.Input{Name: "slope", Unit: "deg", Default: "30 deg", Meaning: "of the surface from horizontal: 0 lies flat, 90 stands", Low: sheet.At(0), High: sheet.At(180)}
	facingInput   = sheet.Input{Name: "azimuth", Unit: "deg", Default: "180 deg", Meaning: "where the surface faces, from north by east: 90 east, 180 south, 270 west", Low: sheet.At(-360), High: sheet.At(360)}
)

const eyeCaution = "Never look at the sun, nor through a lens or a mirror towards it."

// maybe makes an input that may be left out.
func maybe(in sheet.Input) sheet.Input {
	in.Default, in.Maybe = "", true
	return in
}

// dayInput is a day of the year; leap years have 366.
func dayInput(standard, meaning string) sheet.Input {
	return sheet.Input{Name: "day_of_year", Default: standard, Meaning: meaning, Low: sheet.At(1), High: sheet.At(366)}
}

func positionSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "sun-position", Title: "Where the sun stands",
		Inputs: []sheet.Input{
			latitudeInput,
			{Name: "longitude", Unit: "deg", Default: "-105 deg", Meaning: "east counts positive, west negative", Low: sheet.At(-180), High: sheet.At(180)},
			{Name: "time", Kind: sheet.Text, Default: "2024-06-20T12:00:00-07:00", Meaning: "date, time and hours from UTC (RFC 3339)"},
			{Name: "altitude", Unit: "m", Default: "0 m", Meaning: "above the sea", Low: sheet.At(-430), High: sheet.At(6000)},
			maybe(sheet.Input{Name: "pressure", Unit: "kPa", Meaning: "of the air, for what it bends; else the usual one of the altitude", Low: sheet.At(30), High: sheet.At(110)}),
			{Name: "temperature", Unit: "degC", Default: "10 degC", Meaning: "of the air, for what it bends", Low: sheet.At(-80), High: sheet.At(60)},
			maybe(dayInput("", "instead of time, with solar_time: the day when the year is not known")),
			maybe(sheet.Input{Name: "solar_time", Kind: sheet.Text, Meaning: "instead of time: hours by the sun, 10:30 or 10.5h"}),
			maybe(sheet.Input{Name: "declination", Unit: "deg", Meaning: "with solar_time, if it is known; else from the day", Low: sheet.At(-23.6), High: sheet.At(23.6)}),
			maybe(slopeInput), maybe(facingInput),
		},
		Sources:  []string{"meeus: ch. 7, 12, 13, 15, 16, 22, 25, 28, 40", "spencer: declination of a day without a year"},
		Cautions: []string{eyeCaution, "Rise and set are for a level horizon; hills and houses have their own. The air at the horizon may move them by half a minute and more."},
		Do: func(c *sheet.Calc) {
			if c.Chosen("solar_time") || c.Chosen("day_of_year") {
				positionBySolarTime(c)
			} else {
				positionByClock(c)
			}
		},
	}
}

func positionByClock(c *sheet.Calc) {
	at, err := time.Parse(time.RFC3339, c.Text("time"))
	if err != nil {
		c.Fail("sun-position: time %q is not a date and time with its hours from UTC: write for example 2024-06-20T12:00:00-07:00", c.Text("time"))
		return
	}
	_, offset := at.Zone()
	p := site.Place{Latitude: quantity.Degrees(c.Number("latitude")), Longitude: quantity.Degrees(c.Number("longitude")),
		Altitude: quantity.Metres(c.Number("altitude")), Clock: float64(offset) / 3600}
	through := Sight{Pressure: air.Pressure(p.Altitude), Temperature: quantity.Celsius(c.Number("temperature"))}
	if c.Given("pressure") {
		through.Pressure = c.Number("pressure")
	}
	seen := Look(p, at, through)
	jd := c.Step("Julian day", "JD of the time in UTC (meeus ch. 7)", at.UTC().Format(time.DateTime)+" UTC", julianDay(at), "d")
	c.Step("declination", "sin δ = sin ε sin λ (25.7)", fmt.Sprintf("at Julian day %.5f", jd), float64(seen.Declination), "deg")
	w := c.Step("hour angle", "H = Greenwich sidereal time + longitude − α", fmt.Sprintf("α = %.4f deg", float64(seen.RightAscension)), float64(seen.HourAngle), "deg")
	c.Step("true altitude", "sin h = sin φ sin δ + cos φ cos δ cos H, less the parallax (13.6)",
		fmt.Sprintf("φ = %.4f, δ = %.4f, H = %.4f deg", float64(p.Latitude), float64(seen.Declination), w), float64(seen.True), "deg")
	c.Step("raised by the air", "R = 1.02/tan(h + 10.3/(h + 5.11)) minutes, times P/101 · 283/T (16.4)",
		fmt.Sprintf("P = %.4g kPa, T = %.5g K", through.Pressure, through.Temperature.Kelvin()), Refraction(float64(seen.True), through), "deg")
	c.Result("zenith", float64(seen.Zenith), "deg")
	c.Result("azimuth", float64(seen.Azimuth), "deg")
	c.Result("altitude", float64(seen.Altitude), "deg")
	c.Result("declination", float64(seen.Declination), "deg")
	c.Result("equation_of_time", seen.EquationOfTime, "min")
	incidenceResult(c, Moment{CosZenith: math.Cos(float64(seen.Zenith.Radians())), Azimuth: seen.Azimuth.Radians(), Normal: SolarConstant, Share: 1})
	riseResults(c, DaylightOf(p, Date{int32(at.Year()), int8(at.Month()), int8(at.Day())}))
}

func riseResults(c *sheet.Calc, d Daylight) {
	rise, set := d.Rise.Format(time.RFC3339), d.Set.Format(time.RFC3339)
	if d.Always {
		rise, set = "none: the sun does not set", "none: the sun does not set"
	}
	if d.Never {
		rise, set = "none: the sun does not rise", "none: the sun does not rise"
	}
	c.ResultText("sunrise", rise)
	c.ResultText("sunset", set)
	c.ResultText("noon", d.Noon.Format(time.RFC3339))
	c.Result("day_length", d.Length.Hours(), "h")
}

func positionBySolarTime(c *sheet.Calc) {
	if !c.Given("solar_time") || !c.Given("day_of_year") && !c.Given("declination") {
		c.Fail("sun-position: without time it takes solar_time and day_of_year, or solar_time and declination")
		return
	}
	solar, err := ClockHours(c.Text("solar_time"))
	if err != nil {
		c.Fail("sun-position: solar_time %v", err)
		return
	}
	latitude, day := quantity.Degrees(c.Number("latitude")), max(1, wholeDay(c))
	declination, equation := Season(day)
	if c.Given("declination") {
		declination = quantity.Degrees(c.Number("declination"))
	}
	at := SolarMoment(latitude, declination, solar, day)
	at.Share = 1
	c.Step("declination", "series of Spencer, or as given", fmt.Sprintf("day %d", day), float64(declination), "deg")
	w := c.Step("hour angle", "H = 15 (t − 12)", fmt.Sprintf("15·(%.4f − 12)", solar), 15*(solar-12), "deg")
	h := c.Step("altitude", "sin h = sin φ sin δ + cos φ cos δ cos H", fmt.Sprintf("φ = %.4f, δ = %.4f, H = %.4f deg", float64(latitude), float64(declination), w),
		math.Asin(max(-1, min(1, at.CosZenith)))/degree, "deg")
	ws := sunsetAngle(directionOf(float64(latitude.Radians())), directionOf(float64(declination.Radians()))) / degree
	c.Step("hour angle of sunset", "cos ws = −tan φ tan δ", fmt.Sprintf("φ = %.4f, δ = %.4f deg", float64(latitude), float64(declination)), ws, "deg")
	c.Result("zenith", 90-h, "deg")
	c.Result("azimuth", float64(at.Azimuth.Degrees()), "deg")
	c.Result("altitude", h, "deg")
	c.Result("declination", float64(declination), "deg")
	if c.Given("day_of_year") {
		c.Result("equation_of_time", equation, "min")
	}
	incidenceResult(c, at)
	c.Result("sunrise_solar", 12-ws/15, "h")
	c.Result("sunset_solar", 12+ws/15, "h")
	c.Result("day_length", 2*ws/15, "h")
	c.Caution("A day without its year is uncertain by half a degree of declination; the air's bending is left out.")
}

// incidenceResult adds the angle of incidence where a surface was given.
func incidenceResult(c *sheet.Calc, at Moment) {
	if !c.Given("slope") && !c.Given("azimuth") {
		return
	}
	if !c.Given("slope") || !c.Given("azimuth") {
		c.Fail("sun-position: a surface takes both slope and azimuth")
		return
	}
	p := Plane{Slope: quantity.Degrees(c.Number("slope")), Azimuth: quantity.Degrees(c.Number("azimuth"))}
	cos := NewFace(p, 0, Isotropic, site.Horizon{}).Light(at, Light{}).Incidence
	incidence := c.Step("incidence", "cos θ = cos β cos z + sin β sin z cos(A − γ)",
		fmt.Sprintf("β = %.4g, z = %.4f, A = %.4f, γ = %.4g deg", float64(p.Slope), math.Acos(at.CosZenith)/degree, float64(at.Azimuth.Degrees()), float64(p.Azimuth)),
		math.Acos(max(-1, min(1, cos)))/degree, "deg")
	c.Result("incidence", incidence, "deg")
}

// wholeDay gives the day of the year, which has to be a whole number.
func wholeDay(c *sheet.Calc) int {
	day := c.Number("day_of_year")
	if day != math.Trunc(day) {
		c.Fail("day_of_year %g is not a whole number: 1 is 1 January", day)
	}
	return int(day)
}

func dayLengthSheet() sheet.Sheet {
	return sheet.Sheet{
		Name: "day-length", Title: "Length of the day and the light outside the air",
		Inputs:   []sheet.Input{latitudeInput, dayInput("172", "1 is 1 January, 366 the last of a leap year")},
		Sources:  []string{"fao56: eq. 21, 23, 24, 25, 34"},
		Cautions: []string{"The day is that of the sun's centre on a level horizon; the almanac's day, by the upper limb seen through the air, is 7 to 10 minutes longer at middle latitudes."},
		Do: func(c *sheet.Calc) {
			latitude, day := c.Number("latitude"), wholeDay(c)
			out := OutsideDay(quantity.Degrees(latitude), day)
			phi := float64(quantity.Degrees(latitude).Radians())
			c.Step("inverse relative distance", "dr = 1 + 0.033 cos(2π J/365)", fmt.Sprintf("J = %d", day), out.Distance, "")
			c.Step("declination", "δ = 0.409 sin(2π J/365 − 1.39)", fmt.Sprintf("J = %d", day), float64(out.Declination), "rad")
			c.Step("hour angle of sunset", "ws = arccos(−tan φ tan δ)", fmt.Sprintf("φ = %.4f, δ = %.4f rad", phi, float64(out.Declination)), float64(out.Sunset), "rad")
			c.Step("light outside", "Ra = 24·60/π · 0.0820 dr (ws sin φ sin δ + cos φ cos δ sin ws)",
				fmt.Sprintf("dr = %.4f, ws = %.4f, φ = %.4f, δ = %.4f", out.Distance, float64(out.Sunset), phi, float64(out.Declination)), out.Ra, "MJ/m2")
			c.Step("day length", "N = 24/π ws", fmt.Sprintf("24/π·%.4f", float64(out.Sunset)), out.DayLength, "h")
			c.Result("day_length", out.DayLength, "h")
			c.Result("sunset_hour_angle", float64(out.Sunset.Degrees()), "deg")
			c.Result("extraterrestrial", out.Ra, "MJ/m2")
		},
	}
}
