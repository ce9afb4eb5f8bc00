package warmth

import (
	"math"
	"strings"
	"testing"

	"suffice/internal/reduce"
	"suffice/quantity"
	"suffice/soil"
	"suffice/warmth/fabric"
	"suffice/warmth/ground"
	"suffice/warmth/light"
)

// dugRoom is a room of 10 m by 4 m, glazed in front, with 2.5 m of earth behind and a slope above it.
func dugRoom(sky *light.Outdoors) *Design {
	stone, cork, cob := layer("stone", .3, 1.7, 2000, 1000), layer("cork", .1, .04, 110, 1560), layer("cob", .45, .8, 1700, 1000)
	clay := soil.Kinds()[0]
	deep := quantity.Metres(1.25)
	far := &ground.Undisturbed{Mean: 12, Swing: 8, Coldest: 35, Diffusivity: clay.DiffusivityPerDay()}
	wall := func(name string, area float64, role Role, layers ...fabric.Layer) Wall {
		return Wall{Name: name, Area: quantity.SquareMetres(area), Role: role, Layers: layers, OutsideAbsorptance: .6, OutsideEmissivity: .9, InsideAbsorptance: .6, InsideEmissivity: .9}
	}
	back, floor := wall("back", 25, Upright, stone, cork), wall("floor", 40, Floor, stone, cork)
	back.Faces, back.Ground, back.Plane = Earth, Ground{Depth: &deep, Of: far, Behind: .8}, upright(0)
	resists := float64(fabric.Element{Layers: floor.Layers}.Resistance())
	floor.Faces = Earth
	floor.Ground = Ground{Slab: &ground.Floor{Area: 40, Perimeter: 18, Wall: .3, Ground: clay, Resists: resists, Inside: ground.InsideDown, Outside: ground.Outside}}
	front, roof := wall("front", 15, Upright, cob), wall("roof", 40, Roof, cork, cork)
	front.Plane = upright(180)
	glass := suiteCase{windows: "south"}.glass()[0]
	d := &Design{Films: UsualFilms(), Rooms: []Room{{
		Name: "dug", Area: 40, Height: 2.5, Contents: UsualContents, Infiltration: .4, Walls: []Wall{back, front, roof, floor}, Windows: []Window{glass},
		Dug: &Dug{Back: 0, Floor: 3, Long: 10, Foot: []fabric.Layer{stone}, Face: sky.Hours.Temperature, Cut: ground.Dug{
			Earth:  ground.Material{Name: clay.Name, Conductivity: clay.Conductivity, Capacity: clay.Capacity},
			Garden: 12, Deep: 12, Room: 4, Foundation: .5, Berm: 2.5, Crest: 1, Slope: 20, Behind: 5, Beyond: 10,
		}},
	}}}
	return d
}

// seasons is a year of weather, then the same again.
func seasons(h int) (temperature, light float64) {
	year, day := 2*math.Pi*float64(h%8760)/8760, 2*math.Pi*float64(h%24-9)/24
	return 12 - 9*math.Cos(year) + 5*math.Sin(day) + 3*math.Sin(float64(h%8760)/97), max(0, 400*math.Sin(day+math.Pi/6))
}

// A section of a few modes in the rooms is what all its modes are: the room floats within 0.05 K rms, and the year's heat through floor, wall and ground's face
// is within a thousandth of the largest. Drawn coarsely, so that all modes can be lived.
func TestSectionInFewModes(t *testing.T) {
	sky := made(t, 365, seasons)
	coarse := ground.Grid{Finest: .4, Grows: 2.5, Coarsest: 6}
	live := func(in detail) (air []float64, heats []Heat, surfaced, modes float64) {
		r, err := prepare(dugRoom(sky), sky, in)
		if err != nil {
			t.Fatal(err)
		}
		s := r.Start(In{})
		var out Out
		var sums Sums
		for h := range 8760 {
			r.Step(&s, &In{Hour: h}, &out)
			sums.Add(r, &out)
			air = append(air, float64(out.Rooms[0].Mean))
		}
		return air, r.Heats(&sums), float64(r.Surfaced(&sums)), float64(r.modes)
	}
	all, heatsAll, upAll, modesAll := live(detail{grid: coarse, modes: reduce.Options{}})
	few, heats, up, modes := live(detail{within: within, grid: coarse, modes: ground.UsualModes()})
	squares, most, worst := 0.0, math.Abs(upAll), math.Abs(up-upAll)
	for h := range all {
		squares += (all[h] - few[h]) * (all[h] - few[h]) / 8760
	}
	for i := range heats {
		worst = max(worst, math.Abs(float64(heats[i].Out-heatsAll[i].Out)))
		if n := heats[i].Name; n == "back" || n == "floor" {
			t.Logf("%s: %.2f kWh a year, of all modes %.2f", n, float64(heats[i].Out)/1000, float64(heatsAll[i].Out)/1000)
		}
		most = max(most, math.Abs(float64(heatsAll[i].Out)))
	}
	t.Logf("%g modes of %g: %.4f K rms, heats off by %.4f %% of the largest", modes, modesAll, math.Sqrt(squares), 100*worst/most)
	if math.Sqrt(squares) > .05 || worst > .001*most {
		t.Errorf("%g modes of %g: %.4f K rms, heats off by %.4f %% of the largest", modes, modesAll, math.Sqrt(squares), 100*worst/most)
	}
}

// Under weather that never changes, floor and back wall lose what the section at rest says for what touches their films, and the earth gives it on to
// its face.
func TestSectionAtRest(t *testing.T) {
	sky := made(t, 365, func(int) (float64, float64) { return 4, 0 })
	d := dugRoom(sky)
	d.Rooms[0].Heating = []Hold{{20, Always()}}
	r := prepared(t, d, sky)
	s := r.Start(In{})
	var out Out
	var sums Sums
	for h := range 48 {
		r.Step(&s, &In{Hour: h}, &out)
		sums.Add(r, &out)
	}
	seen := r.means(&sums).seen
	got := map[string]float64{}
	for _, x := range r.Heats(&sums) {
		got[x.Name] += float64(x.Out) / 48
	}
	floor, back := r.plan.wallAt(0, 3).buried, r.plan.wallAt(0, 0).buried
	cut, airs, err := d.Rooms[0].drawn().Section(ground.Fine(), ground.Surfaces{Outside: ground.Outside, Floor: 40 / floor.films(), Wall: 25 / back.films()})
	if err != nil {
		t.Fatal(err)
	}
	n, err := cut.Network()
	if err != nil {
		t.Fatal(err)
	}
	at := make([]float64, 4)
	at[airs.Garden], at[airs.Slope] = 4, 4
	for air, b := range map[int]*buried{airs.Floor: floor, airs.Wall: back} {
		_, near, _ := b.through(seen)
		at[air] = near / 48
	}
	f, err := n.Steady(at)
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("floor %.4f W, back wall %.4f W", got["floor"], got["back"])
	for name, air := range map[string]int{"floor": airs.Floor, "back": airs.Wall} {
		if want := 10 * f.Flows[air]; math.Abs(got[name]-want) > 1e-6*math.Abs(want) {
			t.Errorf("%s loses %.6f W, its section %.6f W", name, got[name], want)
		}
	}
	// The first state is found to 1e-6 K of what is read of it.
	if up, into := float64(r.Surfaced(&sums))/48, got["floor"]+got["back"]; math.Abs(up-into) > 1e-5*into {
		t.Errorf("%.6f W come out of the ground's face, %.6f W go into the earth", up, into)
	}
}

// The earth loses nothing: what it holds more is what floor and back wall gave, less what left by the ground's face.
func TestEarthBalances(t *testing.T) {
	sky := made(t, 40, daily)
	r := prepared(t, dugRoom(sky), sky)
	s := r.warm(17)
	before := r.Earth(&s)
	var out Out
	var sums Sums
	passed := 0.0
	for h := range 24 * 40 {
		r.Step(&s, &In{Hour: h}, &out)
		sums.Add(r, &out)
	}
	given := 0.0
	for _, x := range r.Heats(&sums) {
		if x.Faces == Earth && x.Way == ThroughWall {
			given += float64(x.Out)
			passed += math.Abs(float64(x.Out))
		}
	}
	up := float64(r.Surfaced(&sums))
	passed += math.Abs(up) + math.Abs(float64(before))
	if left := float64(r.Earth(&s)-before) - (given - up); math.Abs(left) > 1e-9*passed {
		t.Errorf("%g Wh are not explained, of %g that passed or were held", left, passed)
	}
}

// A warmer ground never cools the room, more earth behind lets it swing less, and an umbrella of cork over the berm keeps it warmer.
func TestSectionsFollowTheirEarth(t *testing.T) {
	sky := made(t, 365, seasons)
	live := func(change func(*Dug)) (mean, range90 float64) {
		d := dugRoom(sky)
		change(d.Rooms[0].Dug)
		wall, dug := &d.Rooms[0].Walls[0], d.Rooms[0].Dug
		wall.Area = quantity.SquareMetres(float64(dug.Long) * float64(dug.Cut.Berm-dug.Cut.Floor))
		r := prepared(t, d, sky)
		s := r.Start(In{})
		var out Out
		low, high := math.Inf(1), math.Inf(-1)
		for h := range 8760 {
			r.Step(&s, &In{Hour: h}, &out)
			at := float64(out.Rooms[0].Mean)
			mean += at / 8760
			low, high = min(low, at), max(high, at)
		}
		return mean, high - low
	}
	plain, swing := live(func(*Dug) {})
	warmer, _ := live(func(d *Dug) {
		face := make([]float64, len(d.Face))
		for i, v := range d.Face {
			face[i] = v + 2
		}
		d.Face = face
	})
	_, thin := live(func(d *Dug) { d.Cut.Crest, d.Cut.Behind = 0, 0 })
	under, _ := live(func(d *Dug) {
		d.Cut.Umbrella, d.Cut.UmbrellaDepth, d.Cut.UmbrellaLength = ground.Layer{Material: ground.Material{Name: "cork", Conductivity: .04, Capacity: 1.7e5}, Thick: .1}, .4, 4
	})
	t.Logf("mean %.2f degC, with a ground's face 2 K warmer %.2f, under an umbrella %.2f; from coldest to warmest %.2f K, with a thin berm %.2f", plain, warmer, under, swing, thin)
	if !(warmer > plain+.1) || !(under > plain) || !(thin > swing) {
		t.Errorf("mean %.2f degC, with a ground's face 2 K warmer %.2f, under an umbrella %.2f; from coldest to warmest %.2f K, with a thin berm %.2f", plain, warmer, under, swing, thin)
	}
}

// An hour of a dug room is told as it was lived.
func TestDugHoursAreTold(t *testing.T) {
	sky := made(t, 10, daily)
	r := prepared(t, dugRoom(sky), sky)
	s := r.warm(12)
	s.Vapour[0], s.Carbon[0] = .008, 500
	in := In{}
	in.Rooms[0] = RoomIn{Air: 150, Radiant: 50, Vapour: .3, Carbon: 40}
	var out Out
	for in.Hour = 0; in.Hour < 240; in.Hour++ {
		h := Hour{Before: s, In: &in, Out: &out}
		r.Step(&s, &in, &out)
		h.After = s
		if in.Hour%7 == 0 {
			holdHour(&told{t: t}, r, &h)
		}
	}
}

// What cannot be a section is refused with a sentence.
func TestSectionsAreRefused(t *testing.T) {
	sky := made(t, 2, daily)
	for says, change := range map[string]func(*Room){
		"needs an upright wall and a floor":  func(r *Room) { r.Dug.Back = 1 },
		"the room is 0 m long":               func(r *Room) { r.Dug.Long = 0 },
		`wall "back" has 20 m2, and 10 m of`: func(r *Room) { r.Walls[0].Area = 20 },
		"layer gap is an air gap":            func(r *Room) { r.Dug.Foot = append(r.Dug.Foot, fabric.Layer{Name: "gap", Gap: .2}) },
		"berm ends at":                       func(r *Room) { r.Dug.Cut.Berm = -1 },
		"is told for 5 hours of 48":          func(r *Room) { r.Dug.Face = make([]float64, 5) },
	} {
		d := dugRoom(sky)
		change(&d.Rooms[0])
		_, err := Prepare(d, sky)
		if err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("got %v, want words of %q", err, says)
		}
	}
}
