package warmth

import (
	"testing"

	"suffice/glass"
	"suffice/internal/check"
	"suffice/warmth/fabric"
	"suffice/warmth/vent"
)

// conducts gives what a watt in the air does in the long run, turned: the room's whole conductance, W/K.
func conducts(t *testing.T, r *Rooms) float64 {
	t.Helper()
	u, seen := make([]float64, r.plan.inputs), make([]float64, len(r.plan.sights))
	u[r.plan.airHeat[0]] = 1
	r.model.See(seen, r.model.Steady(u), u)
	return 1 / seen[0]
}

// The first edition's films join convection and radiation, so faces that exchange (almost) no radiation and have the whole film as convection are its room.
func TestSuiteConductance(t *testing.T) {
	c := with(func(c *suiteCase) { c.outside[1], c.inside[1], c.infiltration = .01, .01, 0 })
	d := c.design()
	d.Films = Films{Upright: 8.29, Roof: 8.29, Floor: 8.29, Fixed: true, Least: 1, Warm: 20, Outside: 29.3, Smooth: 21}
	for k := range d.Rooms[0].Windows {
		w := &d.Rooms[0].Windows[k]
		w.Glazing = glass.Alike(2, glass.Pane{Thickness: 3.175, Index: 1.526, Extinction: 19.6, Conductivity: 1.06})
		w.Gaps[0], w.Emissivity, w.Outer = 6.297, .01, .01
	}
	r := prepared(t, d, made(t, 2, daily))
	check.That(t, conducts(t, r), check.Published{Source: "bestest-1995", At: "case 600: walls 32.715, floor 1.892, roof 15.253, windows 36.0 W/K", Value: "85.86", Unit: "W/K", Within: .15, Why: "0.01 of emissivity is left on every face, 0.05 W/m2K of film"})
}

// The exact cooling of one store.
func TestOneStore(t *testing.T) {
	adiabatic := func(name string) Wall {
		return Wall{Name: name, Area: 40, Faces: Nothing, Layers: []fabric.Layer{{Name: "gap", Gap: 1}}, InsideEmissivity: .9}
	}
	sky := made(t, 2, func(int) (float64, float64) { return 0, 0 })
	volume := 40 * 2.5
	carries := float64(vent.Carries(1, 101.3))
	d := &Design{Films: UsualFilms(), Rooms: []Room{{Name: "store", Area: 40, Height: 2.5, Contents: (1e7 - carries*volume) / 40, Infiltration: 100 / (carries * volume / 3600),
		Walls: []Wall{adiabatic("a"), adiabatic("b")}, Gains: []Gain{{Power: 500, Hours: Always()}}}}}
	r := prepared(t, d, sky)
	s := r.warm(20)
	var out Out
	for h := range 24 {
		r.Step(&s, &In{Hour: h}, &out)
	}
	check.That(t, float64(out.Rooms[0].Air), check.Published{Source: "one-store", At: "C dT/dt = Q - UA (T - To): UA 100 W/K, C 10 MJ/K, Q 500 W, To 0, T0 20 degC, after 24 h", Value: "11.32", Unit: "degC", Standing: "own"})
}
