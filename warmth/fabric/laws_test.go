package fabric

import (
	"math"
	"math/cmplx"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/material"
	"suffice/quantity"
)

// anyElement draws a wall of one to five layers; mass and gaps mixed.
func anyElement(t *rapid.T) Element {
	e := Element{Inside: InsideLevel, Outside: Outside}
	for range rapid.IntRange(1, 5).Draw(t, "layers") {
		if rapid.IntRange(0, 5).Draw(t, "gap") == 0 {
			e.Layers = append(e.Layers, Layer{Name: "gap", Gap: material.Resistance(rapid.Float64Range(0.05, 2).Draw(t, "resistance"))})
			continue
		}
		l := layer(quantity.Metres(rapid.Float64Range(0.005, 0.4).Draw(t, "thickness")), material.Conductivity(rapid.Float64Range(0.03, 3).Draw(t, "conductivity")),
			material.Density(rapid.Float64Range(0, 2500).Draw(t, "density")), material.Capacity(rapid.Float64Range(800, 2000).Draw(t, "capacity")))
		if rapid.Bool().Draw(t, "bridged") {
			l.Bridge = Bridge{Share: rapid.Float64Range(0.01, 0.99).Draw(t, "share"), Conductivity: material.Conductivity(rapid.Float64Range(0.03, 3).Draw(t, "bridge")), Density: 500, Capacity: 1600}
		}
		e.Layers = append(e.Layers, l)
	}
	return e
}

func near(a, b, within float64) bool { return math.Abs(a-b) <= within*max(math.Abs(a), math.Abs(b)) }

// The upper limit is never under the lower one, and both lie between the best and the worst path.
func TestLimitsAreInOrder(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := anyElement(t)
		if err := e.Faults(); err != nil {
			t.Fatal(err)
		}
		b := e.Bounds()
		least, most := e.Inside+e.Outside, e.Inside+e.Outside
		bridged := false
		for _, l := range e.Layers {
			if l.Gap > 0 || l.Bridge.Share == 0 {
				least, most = least+l.Resistance(), most+l.Resistance()
				continue
			}
			bridged = true
			r1, r2 := material.Resistance(float64(l.Thickness)/float64(l.Conductivity)), material.Resistance(float64(l.Thickness)/float64(l.Bridge.Conductivity))
			least, most = least+min(r1, r2), most+max(r1, r2)
		}
		slack := material.Resistance(1e-12) * most
		if b.Upper < b.Lower-slack || b.Lower < least-slack || b.Upper > most+slack {
			t.Errorf("least %g, lower %g, upper %g, most %g m2K/W", float64(least), float64(b.Lower), float64(b.Upper), float64(most))
		}
		if !bridged && !near(float64(b.Upper), float64(b.Lower), 1e-12) {
			t.Errorf("nothing bridges, yet the limits are %g and %g", float64(b.Lower), float64(b.Upper))
		}
	})
}

// Made even, an element keeps its resistance and what it holds.
func TestEvenKeepsTheSums(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := anyElement(t)
		even := e.Even()
		check.Balance(t, float64(even.Resistance()), float64(e.Resistance()), "resistance, m2K/W")
		check.Balance(t, float64(even.Bounds().Upper), float64(even.Bounds().Lower), "limits of an even element, m2K/W")
		for i := range e.Layers {
			check.Balance(t, even.Layers[i].Areal(), e.Layers[i].Areal(), "heat held by a layer, J/m2K")
		}
	})
}

// Air resists more the thicker it is, and most where the heat flows down; as layer and as row.
func TestAirLayers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.Float64Range(0.1, 300).Draw(t, "a"), rapid.Float64Range(0.1, 300).Draw(t, "b")
		gap := func(mm float64, d Direction) material.Resistance {
			l, err := AirLayer(quantity.Millimetres(mm), d)
			if err != nil {
				t.Fatal(err)
			}
			return l.Gap
		}
		for _, d := range []Direction{Level, Up, Down} {
			if thin, thick := gap(min(a, b), d), gap(max(a, b), d); thin > thick {
				t.Errorf("%g mm resists %g, %g mm %g m2K/W", min(a, b), float64(thin), max(a, b), float64(thick))
			}
		}
		if up, level, down := gap(a, Up), gap(a, Level), gap(a, Down); up > level || level > down {
			t.Errorf("%g mm: up %g, level %g, down %g m2K/W", a, float64(up), float64(level), float64(down))
		}
	})
	for _, mm := range []quantity.Millimetres{0, -1, 301, quantity.Millimetres(math.NaN())} {
		if l, err := AirLayer(mm, Level); err == nil {
			t.Errorf("%g mm of air passed as %+v", float64(mm), l)
		}
	}
}

// A swing never comes through better than a steady difference, the lag is positive, what
// the two ways of counting the lag say differs by whole periods, and the two sides' shares are
// what the determinant of 1 says.
func TestSwingsKeepTheirLimits(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := anyElement(t)
		hours := rapid.Float64Range(3, 8760).Draw(t, "period")
		if e.Depths(hours) > MostDepths/4 {
			t.Skip("thicker than the rounding of the determinant allows")
		}
		s := e.Swing(hours)
		if s.Decrement > 1+1e-12 || s.Decrement < 0 || s.Lag < -1e-9 {
			t.Errorf("decrement %g, lag %g h", s.Decrement, s.Lag)
		}
		if turns := (s.Lag + s.Wrapped) / hours; math.Abs(turns-math.Round(turns)) > 1e-9 || math.Abs(s.Wrapped) > hours/2*(1+1e-9) {
			t.Errorf("lag %g h and shift %g h are %g periods apart", s.Lag, s.Wrapped, turns)
		}
		z := e.Transfer(hours)
		if d, size := z.Determinant(), cmplx.Abs(z.Z11*z.Z22); cmplx.Abs(d-1) > 1e-12*(1+size) {
			t.Errorf("determinant %v with products of %g", d, size)
		}
	})
}

// Seen from the other side, what comes through is the same and the two sides swap.
func TestReversalSwaps(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := anyElement(t)
		a, b := e.Swing(24), e.Reversed().Swing(24)
		for _, pair := range [][2]float64{
			{float64(a.Transmittance), float64(b.Transmittance)}, {float64(a.Steady), float64(b.Steady)}, {a.Lag, b.Lag},
			{float64(a.Inner), float64(b.Outer)}, {a.InnerStore, b.OuterStore}, {a.OuterStore, b.InnerStore},
		} {
			if !near(pair[0], pair[1], 1e-8) && math.Abs(pair[0]-pair[1]) > 1e-8 {
				t.Errorf("%g one way, %g the other", pair[0], pair[1])
			}
		}
	})
}

// Slow swings end in the steady state; a layer cut in two is the same layer.
func TestSlowSwingsAndCutLayers(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		e := anyElement(t)
		slow := e.Swing(1e9)
		if !near(slow.Decrement, 1, 1e-4) || !near(float64(slow.Inner), float64(slow.Steady), 1e-2) {
			t.Errorf("decrement %.9g, admittance %g, U %g at a period of a hundred thousand years", slow.Decrement, float64(slow.Inner), float64(slow.Steady))
		}
		cut := Element{Inside: e.Inside, Outside: e.Outside}
		for _, l := range e.Even().Layers { // the halves of a bridge run on into each other, they do not cross
			l.Thickness, l.Gap = l.Thickness/2, l.Gap/2
			cut.Layers = append(cut.Layers, l, l)
		}
		if a, b := e.Swing(24), cut.Swing(24); !near(float64(a.Transmittance), float64(b.Transmittance), 1e-9) || !near(a.InnerStore, b.InnerStore, 1e-8) && math.Abs(a.InnerStore-b.InnerStore) > 1e-9 {
			t.Errorf("whole %+v, cut %+v", a, b)
		}
	})
}

// Insulation outside leaves the mass to the room, insulation inside takes it away.
func TestInsulationOutsideKeepsTheMass(t *testing.T) {
	bare, outside := concreteWall.Swing(24), insulatedWall.Swing(24)
	turned := insulatedWall.Reversed()
	turned.Inside, turned.Outside = InsideLevel, Outside
	inside := turned.Swing(24)
	if outside.InnerStore < 0.9*bare.InnerStore || inside.InnerStore > 0.2*bare.InnerStore {
		t.Errorf("kappa 1: bare %.1f, insulated outside %.1f, inside %.1f kJ/m2K", bare.InnerStore, outside.InnerStore, inside.InnerStore)
	}
}

// Faults come all at once, with the value and the remedy.
func TestElementFaults(t *testing.T) {
	e := Element{Inside: -1, Layers: []Layer{layer(0, .04, 30, 1000), {Name: "gap", Gap: -2}, layer(.1, 0, 30, quantityNaN())}}
	e.Layers[0].Bridge = Bridge{Share: 1.5, Conductivity: .13}
	err := e.Faults()
	for _, want := range []string{"-1 m2K/W", "layer 1", "0 m is out", "1.5 of the area", "layer 2 (gap)", "-2 m2K/W", "0 W/mK", "NaN J/kgK"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v\ndoes not say %q", err, want)
		}
	}
	if err := (Element{}).Faults(); err == nil || !strings.Contains(err.Error(), "no layers") {
		t.Errorf("an element of nothing: %v", err)
	}
}

func quantityNaN() material.Capacity { return material.Capacity(math.NaN()) }

// One store between steady gain and outside: two halves of an hour are the hour, what it takes up is
// what came in less what went out, and it tends to where it settles.
func TestStoreBalances(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		s := Store{Loss: rapid.Float64Range(1, 1000).Draw(t, "loss"), Capacity: rapid.Float64Range(1e5, 1e9).Draw(t, "capacity")}
		hours := rapid.Float64Range(0, 1000).Draw(t, "hours")
		start, outside := quantity.Celsius(rapid.Float64Range(-20, 60).Draw(t, "start")), quantity.Celsius(rapid.Float64Range(-30, 40).Draw(t, "outside"))
		gain := quantity.Watts(rapid.Float64Range(0, 5000).Draw(t, "gain"))
		end := s.Settles(gain, outside)
		whole, half := s.After(hours, start, end), s.After(hours/2, s.After(hours/2, start, end), end)
		if math.Abs(float64(whole-half)) > 1e-9*(1+math.Abs(float64(end))) {
			t.Errorf("%g h at once %g degC, in two %g degC", hours, float64(whole), float64(half))
		}
		if (whole-start)*(end-whole) < -1e-9*(1+end*end) {
			t.Errorf("from %g towards %g it passed to %g degC", float64(start), float64(end), float64(whole))
		}
	})
}
