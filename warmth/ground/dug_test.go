package ground

import (
	"math"
	"strings"
	"testing"

	"suffice/internal/check"
	"suffice/soil"
)

func earth() Material { return Material{"clay or silt", 1.5, 3e6} }

// invented is a house dug into a slope: tyre wall behind, concrete on insulation, insulated foot.
func invented() Dug {
	concrete, wool := Material{"concrete", 2, 2.4e6}, Material{"foam", 0.035, 4.5e4}
	return Dug{
		Earth: earth(), Garden: 15, Deep: 15,
		Room: 5, Floor: 0, Slab: []Layer{{concrete, 0.1}, {wool, 0.1}},
		Front: []Layer{{concrete, 0.2}, {wool, 0.1}}, Foundation: 0.8,
		Back: []Layer{{Material{"rammed earth", 1.1, 2e6}, 0.7}},
		Berm: 2.2, Crest: 1.5, Slope: 30, Behind: 0.5, Beyond: 15,
	}
}

func drawn(t *testing.T, d Dug, g Grid) (*Network, DugAirs) {
	t.Helper()
	s, airs, err := d.Section(g, UsualSurfaces())
	if err != nil {
		t.Fatal(err)
	}
	return network(t, s), airs
}

// loss gives what floor and wall lose to outside, W/mK.
func loss(t *testing.T, d Dug, g Grid) (floor, wall float64) {
	t.Helper()
	n, airs := drawn(t, d, g)
	temperatures := make([]float64, 4)
	temperatures[airs.Floor], temperatures[airs.Wall] = 1, 1
	f := steady(t, n, temperatures...)
	check.Balance(t, f.Flows[0]+f.Flows[1]+f.Flows[2]+f.Flows[3], 0, "heat in and out, W/m")
	return f.Flows[airs.Floor], f.Flows[airs.Wall]
}

// More insulation, more earth and an umbrella over it keep more heat in; a finer grid changes little.
func TestDugKeepsWarm(t *testing.T) {
	floor, wall := loss(t, invented(), Fine())
	half := Grid{Finest: 0.025, Grows: 1.25, Coarsest: 1}
	f2, w2 := loss(t, invented(), half)
	t.Logf("floor %.4f, wall %.4f W/mK; on a grid of half the steps %.4f and %.4f", floor, wall, f2, w2)
	if math.Abs(f2/floor-1) > 0.03 || math.Abs(w2/wall-1) > 0.03 {
		t.Errorf("floor %.4f, wall %.4f W/mK; on a grid of half the steps %.4f and %.4f: more than 3 %% apart", floor, wall, f2, w2)
	}
	insulated, umbrella, crest, sunk := invented(), invented(), invented(), invented()
	insulated.Back = append(insulated.Back, Layer{Material{"foam", 0.035, 4.5e4}, 0.1})
	umbrella.Umbrella, umbrella.UmbrellaDepth, umbrella.UmbrellaLength = Layer{Material{"foam", 0.035, 4.5e4}, 0.1}, 0.3, 3
	crest.Crest = 5
	sunk.Floor = -1
	for name, d := range map[string]Dug{"insulation": insulated, "umbrella": umbrella, "wider berm": crest} {
		if _, w := loss(t, d, Fine()); w >= wall {
			t.Errorf("%s: wall loses %.4f W/mK, without %.4f", name, w, wall)
		}
	}
	if f, _ := loss(t, sunk, Fine()); f >= floor {
		t.Errorf("sunk by a metre the floor loses %.4f W/mK, else %.4f", f, floor)
	}
}

// Sunk on both sides under level ground the section is a long basement, for which the standard has formulas. They are fits,
// and for shallow, poorly insulated walls the section lies 9 % above them.
func TestDugIsABasement(t *testing.T) {
	block := Material{"block", 0.5, 1.4e6}
	d := Dug{
		Earth: earth(), Garden: 40, Deep: 40, Room: 8, Floor: -2, Slab: []Layer{{block, 0.5}},
		Front: []Layer{{block, 0.3}}, Foundation: 2.5, Back: []Layer{{block, 0.3}}, Beyond: 40,
	}
	floor, walls := loss(t, d, Grid{Finest: 0.04, Grows: 1.3, Coarsest: 3})
	f := Floor{Area: 8, Perimeter: 2, Wall: 0.3, Ground: soil.Ground{Conductivity: 1.5}, Resists: 1, Inside: InsideDown, Outside: Outside}
	underFloor, inWalls := f.In(Basement{Depth: 2, Wall: 0.6, Side: InsideLevel})
	got, want := floor+walls, 8*underFloor+2*2*inWalls
	t.Logf("section %.3f W/mK, ISO 13370 %.3f", got, want)
	if math.Abs(got/want-1) > 0.1 {
		t.Errorf("section %.3f W/mK, ISO 13370 %.3f: more than 10 %% apart", got, want)
	}
}

// Through a year the room's wall gets most of its cold late, and less of it the deeper it stands.
func TestDugInTime(t *testing.T) {
	n, airs := drawn(t, invented(), Fine())
	const step = 5 * 86400.0
	s, err := n.Steps(step, 0.5)
	if err != nil {
		t.Fatal(err)
	}
	at := func(k int) []float64 {
		outside := 9 - 11*math.Cos(2*math.Pi*float64(k)/73)
		a := []float64{20, 20, 20, 20}
		a[airs.Garden], a[airs.Slope] = outside, outside
		return a
	}
	mean := at(0)
	mean[airs.Garden], mean[airs.Slope] = 9, 9
	want := steady(t, n, mean...)
	nodes, flows := append([]float64(nil), want.Nodes...), make([]float64, 4)
	yearly, most, when := 0.0, 0.0, 0
	for k := range 5 * 73 {
		s.Step(nodes, at(k), at(k+1), flows)
		if k < 4*73 {
			continue
		}
		yearly += flows[airs.Floor] / 73
		if flows[airs.Floor] > most {
			most, when = flows[airs.Floor], k-4*73
		}
	}
	if math.Abs(yearly/want.Flows[airs.Floor]-1) > 0.01 {
		t.Errorf("the floor loses %.3f W/m over a year, %.3f with everything at its mean", yearly, want.Flows[airs.Floor])
	}
	if lag := float64(when) * 5; lag < 5 || lag > 120 {
		t.Errorf("the floor loses most %g days after the coldest day, want 5 to 120", lag)
	}
}

func TestDugRefusesWhatCannotBe(t *testing.T) {
	d := invented()
	d.Slope, d.Garden, d.Back, d.Foundation = 95, 0, nil, 20
	_, _, err := d.Section(Fine(), UsualSurfaces())
	if err == nil {
		t.Fatal("taken")
	}
	for _, part := range []string{"slope is 95 deg", "garden in front is 0 m", "a layer each", "foundation of 20 m"} {
		if !strings.Contains(err.Error(), part) {
			t.Errorf("%q is missing in:\n%v", part, err)
		}
	}
}

func BenchmarkDugStep(b *testing.B) {
	s, _, err := invented().Section(Fine(), UsualSurfaces())
	if err != nil {
		b.Fatal(err)
	}
	n := network(b, s)
	step, err := n.Steps(3600, 1)
	if err != nil {
		b.Fatal(err)
	}
	airs, flows, nodes := []float64{0, 0, 20, 20}, make([]float64, 4), make([]float64, n.Nodes())
	b.ReportAllocs()
	b.ReportMetric(float64(n.Nodes()), "nodes")
	for b.Loop() {
		step.Step(nodes, airs, airs, flows)
	}
}
