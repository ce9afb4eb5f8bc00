package sun

import (
	"fmt"

	"suffice/quantity"
	"suffice/sheet"
	"suffice/site"
)

// Tell gives the inputs with which the sheet light-hour works an hour of light on this face
// again, to the last bit: the place and its skyline, the date and clock hour, and what the
// sky gave.
func (f *Face) Tell(at site.Place, skyline site.Horizon, day Date, hour int, l Light) map[string]sheet.Value {
	values := map[string]sheet.Value{
		"date":  {Kind: sheet.Text, Text: fmt.Sprintf("%d-%02d-%02d", day.Year, day.Month, day.Date)},
		"model": {Kind: sheet.Text, Text: f.Model.String()},
	}
	for name, v := range map[string]float64{
		"latitude": float64(at.Latitude), "longitude": float64(at.Longitude), "clock": at.Clock, "hour": float64(hour),
		"slope": float64(f.Plane.Slope), "azimuth": float64(f.Plane.Azimuth), "albedo": f.Albedo,
		"diffuse": float64(l.Diffuse), "beam_normal": float64(l.Beam),
	} {
		values[name] = sheet.Value{Kind: sheet.Number, Number: v}
	}
	var where, high []float64
	for _, p := range skyline.Points() {
		where, high = append(where, float64(p.Azimuth)), append(high, float64(p.Height))
	}
	if len(where) > 0 {
		values["skyline_azimuth"] = sheet.Value{Kind: sheet.List, List: where}
		values["skyline_height"] = sheet.Value{Kind: sheet.List, List: high}
	}
	return values
}

func lightHourSheet() sheet.Sheet {
	light := func(name, standard, meaning string) sheet.Input {
		return sheet.Input{Name: name, Unit: "W/m2", Default: standard, Meaning: meaning, Low: sheet.At(0)}
	}
	skyline := func(name, meaning string, high float64) sheet.Input {
		return sheet.Input{Name: name, Kind: sheet.List, Unit: "deg", Maybe: true, Meaning: meaning, Low: sheet.At(0), High: sheet.At(high)}
	}
	return sheet.Sheet{
		Name: "light-hour", Title: "Light on a surface in one clock hour",
		Inputs: []sheet.Input{
			latitudeInput,
			{Name: "longitude", Unit: "deg", Default: "15 deg", Meaning: "east counts positive, west negative", Low: sheet.At(-180), High: sheet.At(180)},
			{Name: "clock", Unit: "h", Default: "1 h", Meaning: "ahead of UTC, standard time", Low: sheet.At(-12), High: sheet.At(14)},
			{Name: "date", Kind: sheet.Text, Default: "2003-08-14", Meaning: "year, month and day"},
			{Name: "hour", Default: "15", Meaning: "the clock hour that begins then, 0 to 23", Low: sheet.At(0), High: sheet.At(23)},
			slopeInput, facingInput,
			{Name: "albedo", Unit: "fraction", Default: "0.2", Meaning: "what the ground throws back: grass 0.2, fresh snow 0.8", Low: sheet.At(0), High: sheet.At(1)},
			{Name: "model", Kind: sheet.Text, Default: Perez.String(), Choices: modelNames[:], Meaning: "how the diffuse light is spread over the sky"},
			light("diffuse", "150 W/m2", "on the horizontal, mean of the hour"),
			light("beam_normal", "600 W/m2", "straight from the sun, on a surface that faces it, mean of the hour"),
			skyline("skyline_azimuth", "directions in which the skyline was looked at; left out: it is level", 360),
			skyline("skyline_height", "how high it stands in each of them", 90),
		},
		Sources:  []string{"meeus: ch. 13, 25, the sun in the middle of the hour's sunlit part", "perez: eq. 1 to 9, table 6", "hay-davies: the part round the sun", "reindl: the horizon term of hdkr", "liu-jordan: isotropic"},
		Cautions: []string{"Light on a slope from light on the level is a model: single hours may be off by a tenth and more, under broken cloud much more.", eyeCaution},
		Do:       workLightHour,
	}
}

func workLightHour(c *sheet.Calc) {
	day, hour, skyline, err := lightAsked(c)
	if err != nil {
		c.Fail("light-hour: %w", err)
		return
	}
	model, err := ModelNamed(c.Text("model"))
	if err != nil {
		c.Fail("light-hour: %w", err)
		return
	}
	at := site.Place{Latitude: quantity.Degrees(c.Number("latitude")), Longitude: quantity.Degrees(c.Number("longitude")), Clock: c.Number("clock")}
	t := NewTrack(at, []Date{day})
	f := NewFace(Plane{Slope: quantity.Degrees(c.Number("slope")), Azimuth: quantity.Degrees(c.Number("azimuth"))}, c.Number("albedo"), model, skyline)
	var diffuse, beam [24]float64
	diffuse[hour], beam[hour] = c.Number("diffuse"), c.Number("beam_normal")
	out := f.Fill(nil, t, diffuse[:], beam[:])[hour]

	c.Step("part of the hour with the sun up", "between rise and set over a level horizon", fmt.Sprintf("solar time %.4f h in the middle of it", t.SolarTime[hour]), t.Share[hour], "h")
	c.Step("light outside the air, mean of the hour", "1367/distance² · part", fmt.Sprintf("%.5g·%.4f", t.Normal[hour], t.Share[hour]), t.Normal[hour]*t.Share[hour], "W/m2")
	planeSteps(c, f, t.At(hour), Light{Diffuse: quantity.Irradiance(diffuse[hour]), Beam: quantity.Irradiance(beam[hour])}, out)
	c.Step("part of the plane's sky over the skyline", "∫ cos θ dΩ over the skyline / over the level", fmt.Sprintf("%d points", len(skyline.Points())), f.seen, "fraction")
	c.Result("share", t.Share[hour], "h")
	c.Result("cos_zenith", t.CosZenith[hour], "")
	c.Result("sun_altitude", t.Altitude[hour]/degree, "deg")
	c.Result("sun_azimuth", t.Azimuth[hour]/degree, "deg")
	c.Result("cos_incidence", out.Incidence, "")
	c.Result("beam", float64(out.Beam), "W/m2")
	c.Result("sky", float64(out.Sky), "W/m2")
	c.Result("ground", float64(out.Ground), "W/m2")
	c.Result("shaded", float64(out.Shaded), "W/m2")
	c.Result("total", float64(out.Total()), "W/m2")
}

// lightAsked reads date, hour and skyline.
func lightAsked(c *sheet.Calc) (day Date, hour int, skyline site.Horizon, err error) {
	if n, _ := fmt.Sscanf(c.Text("date"), "%d-%d-%d", &day.Year, &day.Month, &day.Date); n != 3 || day.Month < 1 || day.Month > 12 || day.Date < 1 || day.Date > 31 {
		return day, 0, skyline, fmt.Errorf("%q is no date: write year, month and day, for example 2003-08-14", c.Text("date"))
	}
	hour = int(c.Number("hour"))
	if c.Number("hour") != float64(hour) || hour < 0 || hour > 23 {
		return day, 0, skyline, fmt.Errorf("hour %g is no clock hour: write a whole number from 0 to 23", c.Number("hour"))
	}
	var where, high []float64
	if c.Given("skyline_azimuth") {
		where = c.Numbers("skyline_azimuth")
	}
	if c.Given("skyline_height") {
		high = c.Numbers("skyline_height")
	}
	if len(where) != len(high) {
		return day, 0, skyline, fmt.Errorf("the skyline has %d directions and %d heights: give one height for each direction", len(where), len(high))
	}
	points := make([]site.HorizonPoint, len(where))
	for i := range where {
		points[i] = site.HorizonPoint{Azimuth: quantity.Degrees(where[i]), Height: quantity.Degrees(high[i])}
	}
	skyline, err = site.NewHorizon(points...)
	return day, hour, skyline, err
}
