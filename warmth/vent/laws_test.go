package vent

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/quantity"
)

func anyOpening(t *rapid.T, name string) Opening {
	return Opening{
		Area: quantity.SquareMetres(rapid.Float64Range(0.01, 5).Draw(t, name)), Height: quantity.Metres(rapid.Float64Range(0, 10).Draw(t, name)),
		Tall: 1, Discharge: rapid.Float64Range(0.3, 1).Draw(t, name), Pressure: rapid.Float64Range(-1, 1).Draw(t, name),
	}
}

func anyWeather(t *rapid.T) Weather {
	return Weather{
		Inside: quantity.Celsius(rapid.Float64Range(0, 40).Draw(t, "inside")), Outside: quantity.Celsius(rapid.Float64Range(-30, 45).Draw(t, "outside")),
		Wind: rapid.Float64Range(0, 15).Draw(t, "wind"),
	}
}

// What comes in by one goes out by the other: each opening passes the same flow at its own pressure, and
// counted the other way round it is the same with the other sign.
func TestFlowInIsFlowOut(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b, w := anyOpening(t, "first"), anyOpening(t, "second"), anyWeather(t)
		p, back := Through(a, b, w), Through(b, a, w)
		check.Balance(t, p.Flow, -back.Flow, "flow the other way round")
		if !p.Level || math.Abs(w.warmer()) < 1e-6 {
			return
		}
		// The pressure at an opening is the wind's, less what the room has over still air there.
		at := func(o Opening) float64 {
			over := gravity * w.warmer() * float64(o.Height-p.Neutral) // (pi − po)/ρ
			return o.effective() * signedRoot(2*(0.5*w.Wind*w.Wind*o.Pressure-over))
		}
		if math.Abs(at(a)-p.Flow) > 1e-6 || math.Abs(at(b)+p.Flow) > 1e-6 {
			t.Errorf("in by the first %g, by the second %g, through %g m3/s", at(a), at(b), p.Flow)
		}
	})
}

// Without wind the neutral level lies between the openings, nearer to the larger, and the room's flow turns round
// with the warmth; a larger opening never lets less through.
func TestStackTurnsRound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		low, high := anyOpening(t, "low"), anyOpening(t, "high")
		high.Height = low.Height + quantity.Metres(rapid.Float64Range(0.5, 5).Draw(t, "height"))
		w := anyWeather(t)
		w.Wind = 0
		w.Inside = w.Outside + quantity.Celsius(rapid.Float64Range(0.1, 30).Draw(t, "warmer"))
		p := Through(low, high, w)
		middle := (low.Height + high.Height) / 2
		if p.Flow <= 0 || p.Neutral < low.Height || p.Neutral > high.Height || (low.effective() > high.effective()) != (p.Neutral < middle) {
			t.Errorf("%+v with %+v and %+v", p, low, high)
		}
		turned := Through(low, high, Weather{Inside: w.Outside, Outside: w.Inside})
		check.Balance(t, turned.Flow, -p.Flow, "colder inside by as much")
		wider := high
		wider.Area *= 2
		if more := Through(low, wider, w); more.Flow < p.Flow {
			t.Errorf("wider: %g, before %g m3/s", more.Flow, p.Flow)
		}
		// The handbook's form, from the neutral level up, divides by the inside's kelvin instead of the mean.
		if handbook := Stack(high, high.Height-p.Neutral, w); math.Abs(handbook/p.Flow-1) > 0.06 {
			t.Errorf("handbook %g, series %g m3/s", handbook, p.Flow)
		}
	})
}

// With everything equally warm and still nothing flows; a shut opening passes nothing.
func TestNothingDrivesNothing(t *testing.T) {
	o := Opening{Area: 1, Tall: 1, Discharge: Sharp}
	up := o
	up.Height = 3
	still := Weather{Inside: 20, Outside: 20}
	if p := Through(o, up, still); p.Flow != 0 || p.Level {
		t.Errorf("%+v", p)
	}
	if Alone(o, still) != 0 || Through(Opening{}, up, Weather{Inside: 30, Outside: 10}).Flow != 0 {
		t.Error("a flow out of nothing")
	}
	if warm, windy := Alone(o, Weather{Inside: 25, Outside: 18}), Alone(o, Weather{Inside: 25, Outside: 18, Wind: 10}); windy <= warm || warm <= 0 {
		t.Errorf("still %g, windy %g m3/s", warm, windy)
	}
}

// The people open by share, never more for a cooler room, and shut in frost, storm and rain and where the air outside is no cooler.
func TestPeopleOpenWithReason(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := UsualRule()
		indoor := quantity.Celsius(rapid.Float64Range(10, 40).Draw(t, "indoor"))
		out := Outdoors{Temperature: quantity.Celsius(rapid.Float64Range(-10, 40).Draw(t, "outdoor")),
			Wind: rapid.Float64Range(0, 20).Draw(t, "wind"), Rain: quantity.Millimetres(rapid.Float64Range(0, 4).Draw(t, "rain"))}
		share := Open(indoor, out, r)
		if share < 0 || share > 1 || Open(indoor+1, out, r) < share {
			t.Errorf("share %g, one kelvin warmer %g", share, Open(indoor+1, out, r))
		}
		if share > 0 && (out.Temperature > indoor || out.Wind >= r.Storm || out.Rain >= r.Wet || out.Temperature < r.Frost) {
			t.Errorf("open by %g in %+v at %g inside", share, out, float64(indoor))
		}
	})
	if share := Open(26, Outdoors{Temperature: 25.5}, UsualRule()); share != 0 {
		t.Errorf("air half a kelvin cooler opens %g of the vents, want none before it is one kelvin cooler", share)
	}
	if r := (Rule{Begin: 25, Full: 25, Storm: 99, Wet: 9}); Open(25, Outdoors{Temperature: 10}, r) != 1 || Open(24.9, Outdoors{Temperature: 10}, r) != 0 {
		t.Error("all or nothing is not")
	}
}

// Warmth and wind drive a house's leaks, shelter hinders them.
func TestLeaksObeyWeather(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anyWeather(t)
		l := Leaks{Area: 400, Storeys: rapid.IntRange(1, 3).Draw(t, "storeys"), Shelter: rapid.IntRange(1, 4).Draw(t, "shelter")}
		hidden, windier := l, w
		hidden.Shelter++
		windier.Wind++
		if hidden.Infiltration(w) > l.Infiltration(w) || l.Infiltration(windier) < l.Infiltration(w) {
			t.Errorf("%+v in %+v: %g, hidden %g, windier %g", l, w, l.Infiltration(w), hidden.Infiltration(w), l.Infiltration(windier))
		}
	})
	check.Balance(t, FromFifty(10), 0.5, "ten changes at 50 Pa")
}

// What was breathed out is in the room or was carried away, the way there does not matter, and the
// time to a limit is the time after which it is reached.
func TestBreathBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := Breath{Volume: rapid.Float64Range(10, 400).Draw(t, "volume"), Gives: rapid.Float64Range(5, 200).Draw(t, "gives"),
			Fresh: rapid.SampledFrom([]float64{0, 3, 20, 200}).Draw(t, "fresh"), Outside: OutsideCarbon}
		start, hours := rapid.Float64Range(400, 5000).Draw(t, "start"), rapid.Float64Range(0.1, 10).Draw(t, "hours")
		end := b.After(start, hours)
		check.Balance(t, b.After(b.After(start, hours/2), hours/2), end, "in two halves, ppm")
		const steps = 2000
		carried := 0.0 // L, by Simpson's rule over the course
		for i := range steps {
			h := hours / steps
			a, m, z := b.After(start, float64(i)*h), b.After(start, (float64(i)+0.5)*h), b.After(start, float64(i+1)*h)
			carried += b.Fresh / 1000 * ((a+4*m+z)/6 - b.Outside) * h
		}
		// Simpson's rule over at most a tenth of the time constant errs by (0.1)⁴/2880 of what is carried.
		if left, right := b.Volume*(end-start)/1000, b.Gives*hours-carried; math.Abs(left-right) > 1e-6*max(1, carried) {
			t.Errorf("%g L more in the room, %g L breathed out and not carried away", left, right)
		}
		if limit := start + 300; !math.IsInf(b.Until(start, limit), 1) {
			if got := b.After(start, b.Until(start, limit)); math.Abs(got-limit) > 1e-6*limit {
				t.Errorf("at the time of %g ppm it is %g", limit, got)
			}
		} else if b.After(start, 1e4) > limit+1e-6 {
			t.Errorf("%g ppm is said never to be reached, and is", limit)
		}
	})
	empty := Breath{Volume: 10, Outside: OutsideCarbon}
	if !math.IsInf(empty.Until(500, 1000), 1) || !math.IsInf(empty.Settles(), 1) || empty.Until(1200, 1000) != 0 {
		t.Error("an empty shut room changes")
	}
}

// Each danger brings its own words, and gas, stoves and fans are warned of together.
func TestCautionsNameTheDanger(t *testing.T) {
	all := strings.Join(Cautions(Stands{OpenGas: true, Stove: true, Fan: true, Earth: true}), " ")
	for _, word := range []string{"carbon monoxide", "flue", "fan", "radon", "licensed", "alarm"} {
		if !strings.Contains(all, word) {
			t.Errorf("%q is missing", word)
		}
	}
	if n := len(Cautions(Stands{})); n != 1 {
		t.Errorf("%d cautions without any danger, want the general one", n)
	}
}
