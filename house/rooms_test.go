package house

import (
	"math"
	"path/filepath"
	"strings"
	"testing"

	"suffice/material"
	"suffice/stove"
	"suffice/warmth"
	"suffice/warmth/ground"
)

const twoRooms = top + `
materials: [{name: clay straw, conductivity: 0.12 W/mK, density: 600 kg/m3, heat: 1100 J/kgK}]
rooms:
  - name: day
    area: 30 m2
    height: 2.6 m
    vents: 0.4 m2
    walls:
      - {name: south, area: 12 m2, faces: air, azimuth: 180 deg, layers: "30 cm clay straw, 0.18 m2K/W gap, 20 mm timber with 10 % steel"}
      - {name: back, area: 20 m2, faces: earth, azimuth: 0 deg, depth: 1.2 m, layers: 30 cm rammed earth}
      - {name: roof, area: 32 m2, faces: air, layers: 24 cm cork board}
      - {name: floor, area: 30 m2, faces: earth, perimeter: 11 m, layers: "8 cm earth 1800, 10 cm foam glass gravel"}
      - {name: between, area: 10 m2, faces: night, azimuth: 90 deg, layers: 20 cm adobe}
    windows:
      - {name: glass, area: 8 m2, width: 4 m, azimuth: 180 deg, overhang: 0.8 m, overhang_left: 1 m, shutters: yes}
    openings: [{to: night, area: 1.8 m2}]
  - name: night
    area: 20 m2
    lived_in: no
    walls: [{name: floor, area: 20 m2, faces: earth, behind: 11 degC, layers: 10 cm cob}]
`

func TestRoomsAreBuilt(t *testing.T) {
	h := composed(t, "h", []byte(twoRooms))
	d := h.Rooms.Design
	day, night := d.Rooms[0], d.Rooms[1]
	south := day.Walls[0].Layers
	if len(south) != 3 || south[0].Conductivity != 0.12 || south[1].Gap != 0.18 || south[2].Bridge.Share != 0.1 || south[2].Bridge.Conductivity != 45 {
		t.Errorf("the south wall is %+v", south)
	}
	for i, want := range []struct {
		role  warmth.Role
		faces warmth.Side
	}{{warmth.Upright, warmth.Air}, {warmth.Upright, warmth.Earth}, {warmth.Roof, warmth.Air}, {warmth.Floor, warmth.Earth}, {warmth.Upright, warmth.Neighbour}} {
		if w := day.Walls[i]; w.Role != want.role || w.Faces != want.faces {
			t.Errorf("wall %s has role %d and faces %d, want %d and %d", w.Name, w.Role, w.Faces, want.role, want.faces)
		}
	}
	if got, want := day.Walls[1].Ground.Behind, material.Resistance(1.2/2.0); got != want {
		t.Errorf("%g m2K/W of earth behind the back wall, want %g: 1.2 m of sand", got, want)
	}
	floor := ground.Floor{Area: 30, Perimeter: 11, Wall: 0.3, Ground: h.Rooms.Earth, Resists: 0.08/0.91 + 0.1/0.08, Inside: 0.17, Outside: 0.04}
	if s := day.Walls[3].Ground.Slab; math.Abs(s.Resists-floor.Resists) > 1e-12 || s.Perimeter != floor.Perimeter || s.Ground != floor.Ground {
		t.Errorf("the floor is %+v, want %+v", s, floor)
	}
	if w := day.Windows[0]; w.Shade.Height != 2 || w.Shade.Overhang.Left != 1 || w.Glazing.Count != 2 || w.Shutter.Adds != 0.2 || !w.Shutter.Dark {
		t.Errorf("the window is %+v", w)
	}
	if day.Walls[4].Other != 1 || day.Openings[0].To != 1 || day.Vents.Outlet.Area != 0.4 || day.Vents.Inlet.Area != 0.4 {
		t.Errorf("the day room is %+v", day)
	}
	if g := night.Walls[0].Ground; g.Fixed == nil || *g.Fixed != 11 || !h.Rooms.LivedIn[0] || h.Rooms.LivedIn[1] {
		t.Errorf("the night room has ground %+v, lived in %v", g, h.Rooms.LivedIn)
	}
}

func TestRoomsWithoutLayersAreOnlyDescribed(t *testing.T) {
	h := composed(t, "h", []byte(strings.Replace(twoRooms, "layers: 10 cm cob", "build: cob", 1)))
	if h.Rooms != nil || len(h.Described) != 1 {
		t.Errorf("rooms %v are computed though a wall tells no layers; described are %q", h.Rooms, h.Described)
	}
}

func TestLayersAreRefusedWithASentence(t *testing.T) {
	for _, c := range []struct{ old, new, says string }{
		{"24 cm cork board", "cork board", `"cork board" is no layer: write its thickness and its material, for example 30 cm rammed earth`},
		{"24 cm cork board", "24 km cork board", `"24 km cork board" is no layer`},
		{"24 cm cork board", "90 m cork board", `it is 0.5 mm to 20 m thick`},
		{"0.18 m2K/W gap", "80 m2K/W gap", `is no gap`},
		{"with 10 % steel", "with 100 % steel", `what crosses it takes more than 0 % and less than 100 % of the area`},
		{"24 cm cork board", "24 cm cork bord", `rooms[0].walls[2].layers`},
		{"10 cm cob", `"10 cm cob` + strings.Repeat(", 1 cm cob", 16) + `"`, `has 17 layers: the most is 16`},
		{"name: roof, area", "name: lid, area", `says nothing of where its outside looks`},
		{"overhang: 0.8 m", "slope: 30 deg, overhang: 0.8 m", `shadows of roofs and fins are known for upright glass only`},
	} {
		f, err := Read("h", []byte(strings.Replace(twoRooms, c.old, c.new, 1)))
		if err == nil {
			_, err = Compose(f)
		}
		if err == nil || !strings.Contains(err.Error(), c.says) {
			t.Errorf("%q for %q: got %v, want ... %s ...", c.new, c.old, err, c.says)
		}
	}
}

// The rooms of the standard's fabric suite are files like any other.
func TestSuiteComposes(t *testing.T) {
	paths, err := filepath.Glob("../examples/suite/*.yaml")
	if err != nil || len(paths) < 40 {
		t.Fatalf("%d files of the suite, %v", len(paths), err)
	}
	for _, path := range paths {
		f, err := Open(path)
		if err != nil {
			t.Error(err)
			continue
		}
		if h, err := Compose(f); err != nil || h.Rooms == nil {
			t.Errorf("%s: rooms %v, %v", path, h, err)
		}
	}
}

func TestStoveIsBuilt(t *testing.T) {
	h := composed(t, "h", []byte(strings.Replace(twoRooms, "    vents: 0.4 m2", "    stove: {burns: 2 kg/h, least: 0.4 kg/h, moisture: 15 %, dry_wood: 5.2 kWh/kg, efficiency: 80 %, radiant: 70 %, air: outside, light_below: 17 degC, until: 21 degC, hours: 5-9}\n    vents: 0.4 m2", 1)))
	v := h.Rooms.Stoves[0]
	want := stove.Stove{Burns: 2, Least: 0.4, Wood: stove.Wood{Dry: 5.2, Moisture: 0.15}, Efficiency: 0.8, Radiant: 0.7, Rule: stove.Rule{Below: 17, Until: 21}}
	for hour := 5; hour < 9; hour++ {
		want.Rule.Hours[hour] = true
	}
	if v == nil || *v != want || h.Rooms.Stoves[1] != nil {
		t.Errorf("the stove is %+v, want %+v", v, want)
	}
}

func TestStovesAreDoubted(t *testing.T) {
	for _, c := range []struct{ stove, says string }{
		{"{moisture: 40 %}", "rooms[0].stove.moisture: 40 % of water in the wood makes smoke, and tar that burns in the flue: let it dry to 20 %, which takes a year or two under a roof"},
		{"{light_below: 19 degC}", "rooms[0].stove.light_below: the room is held at 20 degC by heating, so that a stove lit below 19 degC never burns in those hours: take one of the two out"},
		{"{burns: 3 kg/h}", "rooms[0].stove.air: at full fire it draws 32 m3 an hour out of the room, whose gaps let in 23: it smokes and can kill; give it air from outside by a pipe of its own"},
		{"{air: outside}", "rooms[0].stove: a fan that draws air out of the room can pull smoke and carbon monoxide back down the flue: have a licensed person test both running together"},
	} {
		h := composed(t, "h", []byte(strings.Replace(twoRooms, "    vents: 0.4 m2", "    fans: [{flow: 30 m3/h}]\n    heating: [{at: 20 degC}]\n    stove: "+c.stove, 1)))
		if said := strings.Join(h.Warnings, "\n"); !strings.Contains(said, c.says) {
			t.Errorf("%s: got\n%s\nwant among them\n%s", c.stove, said, c.says)
		}
	}
}
