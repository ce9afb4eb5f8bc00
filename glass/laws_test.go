package glass

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/material"
	"suffice/quantity"
)

func anyPane(t *rapid.T) Pane {
	p := Pane{Thickness: quantity.Millimetres(rapid.Float64Range(0.5, 20).Draw(t, "thickness")), Index: rapid.Float64Range(1.3, 1.8).Draw(t, "index"),
		Extinction: rapid.Float64Range(0, 100).Draw(t, "extinction"), Conductivity: 1}
	if rapid.Bool().Draw(t, "coated") {
		c := Coating{Transmitted: rapid.Float64Range(0.01, 0.95).Draw(t, "through")}
		c.Front = (1 - c.Transmitted) * rapid.Float64Range(0, 1).Draw(t, "front")
		c.Back = (1 - c.Transmitted) * rapid.Float64Range(0, 1).Draw(t, "back")
		p.Coating = c
	}
	return p
}

func anyGlazing(t *rapid.T) Glazing {
	g := Glazing{Count: rapid.IntRange(1, MostPanes).Draw(t, "panes")}
	for i := range g.Count {
		g.Panes[i] = anyPane(t)
	}
	if err := g.Faults(); err != nil {
		t.Fatal(err)
	}
	return g
}

func anyIncidence(t *rapid.T) quantity.Degrees {
	return quantity.Degrees(rapid.Float64Range(0, 90).Draw(t, "incidence"))
}

// whole fails t unless all parts are shares and sum to 1.
func whole(t check.Tester, o Optics, what string) {
	t.Helper()
	check.Balance(t, o.Transmitted+o.Reflected+o.Taken(), 1, what)
	for _, share := range append(o.Absorbed[:], o.Transmitted, o.Reflected) {
		if share < -1e-12 || share > 1+1e-12 {
			t.Errorf("%s: %g is no share: %+v", what, share, o)
		}
	}
}

// No light is lost or made: for each polarisation, for both, for even light, and in the table of the hour.
func TestLightIsConserved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, theta := anyGlazing(t), anyIncidence(t)
		if cosine := math.Cos(float64(theta.Radians())); cosine > 1e-6 {
			across, along := g.Polarised(cosine)
			whole(t, across, "across")
			whole(t, along, "along")
		}
		whole(t, g.At(theta), "unpolarised")
		whole(t, g.Diffuse(), "diffuse")
		whole(t, g.Curve().At(math.Cos(float64(theta.Radians()))), "table")
	})
}

// As much light passes outward as inward; what is thrown back and taken up may differ.
func TestLightPassesBothWays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g, theta := anyGlazing(t), anyIncidence(t)
		if a, b := g.At(theta).Transmitted, g.Reversed().At(theta).Transmitted; math.Abs(a-b) > 1e-12 {
			t.Errorf("%g inward, %g outward", a, b)
		}
	})
}

// Thicker or darker glass, and one pane more, never let more light through.
func TestMoreGlassIsDarker(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, theta := anyPane(t), anyIncidence(t)
		count := rapid.IntRange(1, MostPanes-1).Draw(t, "panes")
		o := Alike(count, p).At(theta).Transmitted
		thicker, darker := p, p
		thicker.Thickness *= quantity.Millimetres(rapid.Float64Range(1, 3).Draw(t, "thicker"))
		darker.Extinction *= rapid.Float64Range(1, 3).Draw(t, "darker")
		for what, more := range map[string]float64{"thicker": Alike(count, thicker).At(theta).Transmitted,
			"darker": Alike(count, darker).At(theta).Transmitted, "a pane more": Alike(count+1, p).At(theta).Transmitted} {
			if more > o+1e-12 {
				t.Errorf("%s: %g let through, before %g", what, more, o)
			}
		}
	})
}

// A coated pane is its coefficients at normal incidence, and a coating like bare, clear glass is bare, clear glass there.
func TestCoatingKeepsItsCoefficients(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := anyPane(t)
		if p.Coating == (Coating{}) {
			o := Alike(1, p).At(0)
			p.Coating = Coating{Transmitted: o.Transmitted, Front: o.Reflected, Back: o.Reflected}
		}
		o, back := Alike(1, p).At(0), Alike(1, p).Reversed().At(0)
		for _, pair := range [][2]float64{{o.Transmitted, p.Coating.Transmitted}, {o.Reflected, p.Coating.Front}, {back.Reflected, p.Coating.Back}} {
			if math.Abs(pair[0]-pair[1]) > 1e-12 {
				t.Errorf("got %g, coefficient %g", pair[0], pair[1])
			}
		}
	})
	bare := Alike(1, clearCover)
	like := clearCover
	o := bare.At(0)
	like.Coating = Coating{Transmitted: o.Transmitted, Front: o.Reflected, Back: o.Reflected}
	for theta := quantity.Degrees(0); theta < 90; theta += 5 {
		if a, b := bare.At(theta).Transmitted, Alike(1, like).At(theta).Transmitted; math.Abs(a-b) > 1e-12 {
			t.Errorf("%g deg: bare %g, by coefficients %g", float64(theta), a, b)
		}
	}
}

// The rule of Gauss is right for powers up to 39, and the diffuse sum agrees with two thousand strips.
func TestDiffuseSum(t *testing.T) {
	for power := range 40 {
		var sum float64
		for i, x := range gaussPoints {
			sum += gaussWeights[i] * math.Pow(x, float64(power))
		}
		check.Balance(t, sum, 1/float64(power+1), "integral of a power")
	}
	for _, g := range []Glazing{Alike(1, suitePane), Alike(2, suitePane), Alike(3, clearCover)} {
		const strips = 2000
		var sum float64
		for i := range strips {
			theta := (float64(i) + 0.5) / strips * math.Pi / 2
			sum += g.atCosine(math.Cos(theta)).Transmitted * math.Sin(2*theta) * math.Pi / 2 / strips
		}
		got := g.Diffuse().Transmitted
		t.Logf("%d panes: diffuse %.6f, strips %.6f", g.Count, got, sum)
		if math.Abs(got-sum) > 2e-5 {
			t.Errorf("%d panes: diffuse %.6f, by strips %.6f", g.Count, got, sum)
		}
	}
}

// The table of the hour is within 0.0005 of the glazing at every angle.
func TestCurveIsClose(t *testing.T) {
	for _, g := range []Glazing{Alike(1, suitePane), Alike(2, suitePane), Alike(3, suitePane), Alike(3, clearCover)} {
		c, worst := g.Curve(), 0.0
		for i := range 9001 {
			cosine := math.Cos(float64(i) / 100 * math.Pi / 180)
			a, b := c.At(cosine), g.atCosine(cosine)
			worst = max(worst, math.Abs(a.Transmitted-b.Transmitted), math.Abs(a.Reflected-b.Reflected), math.Abs(a.Taken()-b.Taken()))
		}
		t.Logf("%d panes: table off by %.1e at most", g.Count, worst)
		if worst > 0.0005 {
			t.Errorf("%d panes: table off by %g, promised 0.0005", g.Count, worst)
		}
	}
	if o := Alike(1, suitePane).Curve().At(-0.5); o.Reflected != 1 || o.Transmitted != 0 {
		t.Errorf("light from behind: %+v", o)
	}
}

func anyWindow(t *rapid.T) Window {
	w := Window{Glazing: anyGlazing(t), Inside: 8, Outside: 20}
	for i := range w.Glazing.Count - 1 {
		w.Gaps[i] = material.Transmittance(rapid.Float64Range(0.5, 10).Draw(t, "gap"))
	}
	return w
}

// What falls on a window goes in or out: the gain, what is thrown back, and the outward share of the heat.
// Inner panes give more of theirs to the room; a wider gap keeps more heat in.
func TestHeatOfAWindow(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w, theta := anyWindow(t), anyIncidence(t)
		o, inward := w.Glazing.At(theta), w.Inward()
		out := o.Reflected
		for i, a := range o.Absorbed {
			out += (1 - inward[i]) * a
			if i > 0 && i < w.Glazing.Count && !(inward[i] > inward[i-1]) {
				t.Errorf("pane %d gives %g inward, the one outside it %g", i+1, inward[i], inward[i-1])
			}
		}
		check.Balance(t, w.Gain(o)+out, 1, "light on a window")
		if g := w.Gain(o); g < o.Transmitted-1e-12 || g > o.Transmitted+o.Taken()+1e-12 {
			t.Errorf("gain %g with %g let through and %g taken up", g, o.Transmitted, o.Taken())
		}
		shut := w.Shuttered(0.2)
		if back := 1 / (1/float64(shut) - 0.2); !(shut < w.U()) || math.Abs(back-float64(w.U())) > 1e-9 {
			t.Errorf("U %g, shuttered %g W/m2K", float64(w.U()), float64(shut))
		}
	})
}

// One pane warmed in the middle of its thickness, solved as two nodes by hand: the shares are those of a
// steady balance of currents.
func TestInwardIsABalance(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := anyWindow(t)
		_, total := w.resistances()
		inward := w.Inward()
		for _, n := range inward[:w.Glazing.Count] {
			// 1 W/m2 at the pane lifts it by the two ways out in parallel.
			outer := n * total
			lift := 1 / (1/outer + 1/(total-outer))
			check.Balance(t, lift/(total-outer), n, "heat inward of one watt at a pane")
		}
	})
}

func TestFaultsAreTold(t *testing.T) {
	w := Window{Glazing: Alike(2, Pane{Thickness: 4, Index: 1.5, Extinction: -1, Conductivity: 1}), Inside: 8, Outside: math.MaxFloat32, Frame: Frame{Share: 1}}
	if err := w.Faults(); err == nil || len(err.Error()) < 150 {
		t.Errorf("five faults, told: %v", err)
	}
	if err := Alike(4, suitePane).Faults(); err == nil {
		t.Error("four panes passed")
	}
	s := Shade{Width: 1, Height: 1, Overhang: Overhang{Depth: 1, Left: -1}}
	if err := s.Faults(); err == nil {
		t.Error("an overhang of no width passed")
	}
}
