package evap

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/quantity"
	"suffice/site/sun"
)

func anyDay(t *rapid.T) Day {
	coolest := rapid.Float64Range(-10, 30).Draw(t, "coolest")
	return Day{
		Latitude:  quantity.Degrees(rapid.Float64Range(-60, 60).Draw(t, "latitude")),
		DayOfYear: rapid.IntRange(1, 366).Draw(t, "day"),
		Altitude:  quantity.Metres(rapid.Float64Range(0, 3000).Draw(t, "altitude")),
		Coolest:   quantity.Celsius(coolest), Warmest: quantity.Celsius(coolest + rapid.Float64Range(1, 20).Draw(t, "range")),
		DampMost: at(rapid.Float64Range(40, 100).Draw(t, "damp most")), DampLeast: at(rapid.Float64Range(10, 40).Draw(t, "damp least")),
		Wind: at(rapid.Float64Range(0, 8).Draw(t, "wind")), Sunshine: at(0.0),
	}
}

// The intermediates are the result's own: their sums and differences hold, and evaporation
// is the water that the net heat and the dry wind together take up.
func TestPartsMakeTheWhole(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		out := Daily(anyDay(t))
		check.Balance(t, out.ByLight+out.ByAir, float64(out.ETo), "parts of ETo")
		check.Balance(t, out.Rns-out.Rnl, out.Rn, "net radiation")
		check.Balance(t, 0.77*out.Rs, out.Rns, "net short-wave")
	})
}

// More sun, more wind in dry air and drier air each evaporate more. Sun does so where it is
// strong: on short days a clear sky may lose more by night than it brings by day.
func TestMoreSunWindAndDrynessEvaporateMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := anyDay(t)
		base := Daily(in)
		sunny, windy, dry := in, in, in
		sunny.Sunshine = at(base.DayLength / 2)
		windy.Wind = at(*in.Wind + 1)
		dry.DampLeast = at(*in.DampLeast - 5)
		if got := Daily(sunny); got.ETo <= base.ETo && base.Ra > 30 {
			t.Fatalf("half a day of sun: %g mm, none %g mm", float64(got.ETo), float64(base.ETo))
		}
		if got := Daily(dry); got.ETo < base.ETo && *in.Wind > 0.5 {
			t.Fatalf("drier: %g mm, before %g mm", float64(got.ETo), float64(base.ETo))
		}
		if got := Daily(windy); got.ByAir <= base.ByAir && base.Es > base.Ea {
			t.Fatalf("windier: %g mm by air, before %g mm", got.ByAir, base.ByAir)
		}
	})
}

// The hours of a day see the light outside that the day sees, but for the shift of the clock.
func TestHoursSumToTheDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		latitude := quantity.Degrees(rapid.Float64Range(-89, 89).Draw(t, "latitude"))
		longitude := quantity.Degrees(rapid.Float64Range(-180, 180).Draw(t, "longitude"))
		day := rapid.IntRange(1, 366).Draw(t, "day")
		var sum float64
		for h := range 24 {
			sum += sun.OutsideHour(latitude, longitude, math.Round(float64(longitude)/15), day, float64(h)+0.5).Ra
		}
		check.Balance(t, sum, sun.OutsideDay(latitude, day).Ra, "light outside")
	})
}

// Wind at 2 m stays as it is, and higher instruments read more than blows at 2 m.
func TestWindProfile(t *testing.T) {
	if got := WindAt2(3, 2); got != 3 {
		t.Errorf("at 2 m: %g", got)
	}
	// The profile's factor at 2 m is 1.0000 to four digits: 4.87/ln(67.8*2 - 5.42) = 0.99999.
	if got := WindAt2(3, 2.0000001); math.Abs(got-3) > 1e-3 {
		t.Errorf("just over 2 m: %g", got)
	}
	for _, h := range []quantity.Metres{3, 5, 10, 30} {
		if WindAt2(3, h) >= WindAt2(3, h-1) {
			t.Errorf("at %g m not less than a metre lower", float64(h))
		}
	}
}

// What was not measured is said, never filled in silence.
func TestAssumptionsAreSaid(t *testing.T) {
	out := Daily(Day{Latitude: 45, DayOfYear: 196, Warmest: 26.6, Coolest: 14.8})
	said := strings.Join(out.Assumed, "; ")
	for _, word := range []string{"wind", "humidity", "light"} {
		if !strings.Contains(said, word) {
			t.Errorf("nothing said of %s in %q", word, said)
		}
	}
	whole := Daily(Day{Latitude: 45, DayOfYear: 196, Warmest: 26.6, Coolest: 14.8, Vapour: at(1.5), Wind: at(2.0), Radiation: at(20.0)})
	if whole.Assumed != nil {
		t.Errorf("a whole day was completed: %v", whole.Assumed)
	}
	bright := Daily(Day{Latitude: 45, DayOfYear: 196, Warmest: 26.6, Coolest: 14.8, Vapour: at(1.5), Wind: at(2.0), Radiation: at(60.0)})
	if len(bright.Assumed) != 1 || bright.Relative != 1 {
		t.Errorf("more light than a clear sky's: %v, relative %g", bright.Assumed, bright.Relative)
	}
}

// A cloudy night keeps its warmth: the cloud handed on from the afternoon counts.
func TestCloudyNightLosesLess(t *testing.T) {
	night := Hour{Latitude: 40, DayOfYear: 200, At: 1.5, Temperature: 15, Humidity: 80, Wind: 1}
	clear, cloudy := night, night
	clear.Cloudiness, cloudy.Cloudiness = 1, 0.4
	a, b, unknown := Hourly(clear), Hourly(cloudy), Hourly(night)
	if !(a.Rn < unknown.Rn && unknown.Rn < b.Rn && b.Rn < 0) || a.Assumed != nil || len(unknown.Assumed) != 1 {
		t.Errorf("net radiation clear %g, unknown %g (%v), cloudy %g", a.Rn, unknown.Rn, unknown.Assumed, b.Rn)
	}
}

// Each way of telling the damp of the air ends at the same vapour when they say the same.
func TestWaysOfTellingDamp(t *testing.T) {
	day := Day{Latitude: 40, DayOfYear: 200, Warmest: 25, Coolest: 15, Wind: at(2.0), Radiation: at(20.0)}
	most, dew, mean := day, day, day
	most.DampMost = at(80.0)
	dew.DewPoint = at(quantity.Celsius(15))
	check.Balance(t, Daily(most).Ea, 0.8*Daily(day).Ea, "highest humidity of 80 % and saturation at the lowest temperature")
	check.Balance(t, Daily(dew).Ea, Daily(day).Ea, "dew point at the lowest temperature and none given")
	mean.DampMean = at(50.0)
	check.Balance(t, Daily(mean).Ea, Daily(mean).Es/2, "half the saturation")
}

// Polar night evaporates by wind alone and stays a number.
func TestPolarNight(t *testing.T) {
	out := Daily(Day{Latitude: 80, DayOfYear: 355, Warmest: -5, Coolest: -15, Sunshine: at(0.0), Wind: at(3.0)})
	if out.Ra != 0 || out.Rs != 0 || math.IsNaN(float64(out.ETo)) {
		t.Errorf("%+v", out)
	}
}
