package glass

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"suffice/quantity"
	"suffice/sheet"
)

func maybe(in sheet.Input) sheet.Input {
	in.Default, in.Maybe = "", true
	return in
}

func overhangSheet() sheet.Sheet {
	azimuth := func(name, standard, meaning string) sheet.Input {
		return sheet.Input{Name: name, Unit: "deg", Default: standard, Meaning: meaning, Low: sheet.At(-360), High: sheet.At(360)}
	}
	length := func(name, standard, meaning string, low float64) sheet.Input {
		return sheet.Input{Name: name, Unit: "m", Default: standard, Meaning: meaning, Low: sheet.At(low), High: sheet.At(mostLength)}
	}
	return sheet.Sheet{
		Name: "overhang", Title: "Shadow of an overhang on a window",
		Inputs: []sheet.Input{
			{Name: "latitude", Unit: "deg", Default: "40 deg", Meaning: "north counts positive, south negative", Low: sheet.At(-90), High: sheet.At(90)},
			{Name: "declination", Unit: "deg", Default: "23.44 deg", Meaning: "of the sun: 23.44 in June, -23.44 in December, 0 at the equinoxes", Low: sheet.At(-23.6), High: sheet.At(23.6)},
			{Name: "solar_time", Kind: sheet.Text, Default: "12:00", Meaning: "hours by the sun, 10:30 or 10.5h"},
			maybe(sheet.Input{Name: "sun_altitude", Unit: "deg", Meaning: "with sun_azimuth, instead of the three above", Low: sheet.At(-90), High: sheet.At(90)}),
			maybe(azimuth("sun_azimuth", "", "of the sun, from north by east")),
			azimuth("facing", "180 deg", "where the window looks, from north by east: 90 east, 180 south"),
			length("depth", "1 m", "of the overhang, out of the wall", 0),
			length("gap", "0.5 m", "from the window's head up to the overhang", 0),
			length("height", "2 m", "of the window", 0.01),
			maybe(length("width", "", "of the window; without it the overhang counts as endless", 0.01)),
			length("left", "0 m", "reach of the overhang past the window's left side, seen from inside; needs width", -mostLength),
			length("right", "0 m", "the same on the right", -mostLength),
		},
		Sources:  []string{"duffie-beckman: eq. 1.6.5, section 14.4", "overhang-page: shadow angle"},
		Cautions: []string{"Direct sun only: the sky and the bright ground still send light past an overhang.", "A roof edge carries wind and snow: its fixing is for a licensed person and the local code."},
		Do:       workOverhang,
	}
}

// sunOf reads where the sun stands.
func sunOf(c *sheet.Calc) (altitude, azimuth quantity.Degrees, ok bool) {
	if c.Given("sun_altitude") != c.Given("sun_azimuth") {
		c.Fail("overhang: the sun's place takes both sun_altitude and sun_azimuth")
		return 0, 0, false
	}
	if c.Given("sun_altitude") {
		return quantity.Degrees(c.Number("sun_altitude")), quantity.Degrees(c.Number("sun_azimuth")), true
	}
	hours, err := clockHours(c.Text("solar_time"))
	if err != nil {
		c.Fail("overhang: solar_time %v", err)
		return 0, 0, false
	}
	latitude, declination := quantity.Degrees(c.Number("latitude")), quantity.Degrees(c.Number("declination"))
	altitude, azimuth = SunAt(latitude, declination, hours)
	c.Step("altitude of the sun", "sin h = sin φ sin δ + cos φ cos δ cos w", fmt.Sprintf("φ = %.4g, δ = %.4g, w = 15·(%.4g − 12) deg", float64(latitude), float64(declination), hours), float64(altitude), "deg")
	c.Step("azimuth of the sun", "from north by east", fmt.Sprintf("h = %.4f deg", float64(altitude)), float64(azimuth), "deg")
	return altitude, azimuth, true
}

// clockHours reads a time of day, 10:30, 10.5h or 10.5. Neighbours on a shelf do not import each other,
// so the sun's own reader is out of reach here.
func clockHours(text string) (float64, error) {
	hour, minutes, colon := strings.Cut(strings.TrimSpace(text), ":")
	v, err := strconv.ParseFloat(strings.TrimSuffix(hour, "h"), 64)
	if err == nil && colon {
		var m float64
		m, err = strconv.ParseFloat(minutes, 64)
		if !(m >= 0 && m < 60) || v != math.Trunc(v) {
			v = math.NaN()
		}
		v += m / 60
	}
	if err != nil || !(v >= 0 && v <= 24) {
		return 0, fmt.Errorf("%q is not a time of day: write 10:30 or 10.5h, from 0 to 24", text)
	}
	return v, nil
}

func workOverhang(c *sheet.Calc) {
	altitude, azimuth, ok := sunOf(c)
	if !ok {
		return
	}
	facing, depth, gap, height := quantity.Degrees(c.Number("facing")), c.Number("depth"), c.Number("gap"), c.Number("height")
	r := RayTo(altitude, azimuth, facing)
	profile := c.Step("profile angle", "tan p = tan h/cos(azimuth of the sun − facing)", fmt.Sprintf("h = %.4f, azimuth %.4f, facing %.4g deg", float64(altitude), float64(azimuth), float64(facing)), float64(r.Profile()), "deg")
	if r.Out <= grazing || altitude <= 0 {
		c.Result("profile_angle", profile, "deg")
		c.ResultText("shadow", "none: no direct sun on this wall")
		c.Result("shaded", 1, "fraction")
		c.Caution("The sun stands below the horizon, behind the wall or along it: the window has no direct sun at all, overhang or not.")
		return
	}
	s := overhangShade(c, r)
	shadow := c.Step("shadow below the overhang", "depth · tan p", fmt.Sprintf("%.4g·tan %.4f deg", depth, profile), depth*r.Up/r.Out, "m")
	shaded := c.Step("share of the window in shadow", "area of the shadow within the window over the window's", fmt.Sprintf("shadow %.4g m, gap %.4g m, height %.4g m, width %.4g m", shadow, gap, height, float64(s.Width)), 1-s.Sunlit(r), "fraction")
	c.Result("profile_angle", profile, "deg")
	c.Result("shadow", shadow, "m")
	c.Result("shaded", shaded, "fraction")
	views := s.Views()
	c.Result("sky_seen", views.Sky, "fraction")
	c.Result("sky_seen_bare", 0.5, "fraction")
	if shadow > gap+height {
		c.Caution("The whole window lies in shadow.")
	}
}

// overhangShade makes the window; without a width it is a metre of a long one, under an
// overhang that reaches past both sides as far as this ray can come round it, and at least
// mostLength.
func overhangShade(c *sheet.Calc, r Ray) Shade {
	s := Shade{Width: 1, Height: quantity.Metres(c.Number("height")),
		Overhang: Overhang{Depth: quantity.Metres(c.Number("depth")), Gap: quantity.Metres(c.Number("gap"))}}
	if c.Given("width") {
		s.Width = quantity.Metres(c.Number("width"))
		s.Overhang.Left, s.Overhang.Right = quantity.Metres(c.Number("left")), quantity.Metres(c.Number("right"))
		if err := s.Faults(); err != nil {
			c.Fail("%v", err)
		}
		return s
	}
	if c.Chosen("left") || c.Chosen("right") {
		c.Fail("overhang: left and right need the window's width")
	}
	reach := max(mostLength, s.Overhang.Depth*quantity.Metres(math.Abs(r.Right)/r.Out))
	s.Overhang.Left, s.Overhang.Right = reach, reach
	return s
}
