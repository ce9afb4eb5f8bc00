package house

import (
	"os"
	"strings"
	"testing"

	"suffice/quantity"
)

// earthen reads the demo told by layers with some of its text changed.
func earthen(t *testing.T, pairs ...string) (*House, error) {
	t.Helper()
	text, err := os.ReadFile("../examples/earth-house.yaml")
	if err != nil {
		t.Fatal(err)
	}
	for i := 0; i < len(pairs); i += 2 {
		if !strings.Contains(string(text), pairs[i]) {
			t.Fatalf("the example does not say %q", pairs[i])
		}
	}
	f, err := Read("earth-house.yaml", []byte(strings.NewReplacer(pairs...).Replace(string(text))))
	if err != nil {
		return nil, err
	}
	return Compose(f)
}

// A section is drawn from the room's own walls: depth from area and length, layers from inside to outside, the site's earth.
func TestSectionFromTheFile(t *testing.T) {
	h, err := earthen(t)
	if err != nil {
		t.Fatal(err)
	}
	living := &h.Rooms.Design.Rooms[0]
	d := living.Dug
	if d == nil || living.Walls[d.Back].Name != "back" || living.Walls[d.Floor].Name != "floor" {
		t.Fatalf("the living room's section is %+v", d)
	}
	if d.Long != 10 || d.Cut.Room != 3.8 || d.Cut.Berm != 2.6 || d.Cut.Behind != 5 || d.Cut.Slope != 20 || d.Cut.Garden != 12 || len(d.Foot) != 1 || d.Foot[0].Thickness != .45 {
		t.Errorf("it is drawn as %+v with a foot of %+v", d.Cut, d.Foot)
	}
	if earth := h.Rooms.Earth; d.Cut.Earth.Conductivity != earth.Conductivity || d.Cut.Earth.Capacity != earth.Capacity {
		t.Errorf("its earth is %+v, the site's %+v", d.Cut.Earth, earth)
	}
	if h.Rooms.Design.Rooms[2].Dug != nil {
		t.Error("the workshop has a section that nobody wrote")
	}
}

// Berm and slope left out are the wall's height and level ground; wet earth and an umbrella are taken as written.
func TestSectionUsualValues(t *testing.T) {
	h, err := earthen(t, "section: {length: 10 m, berm: 2.6 m, crest: 1 m, slope: 20 deg, behind: 5 m, foot: 45 cm reclaimed stone, foundation: 0.5 m}",
		"section: {length: 10 m, foot: 45 cm reclaimed stone, earth: wet clay, umbrella: 10 cm cork board, umbrella_length: 3 m}")
	if err != nil {
		t.Fatal(err)
	}
	cut := h.Rooms.Design.Rooms[0].Dug.Cut
	if cut.Berm != 2.6 || cut.Behind != cut.Berm || cut.Earth.Name != "wet clay" {
		t.Errorf("drawn as %+v beside the site's %+v", cut, h.Rooms.Earth)
	}
	if u := cut.Umbrella; u.Thick != quantity.Metres(.1) || cut.UmbrellaLength != 3 || cut.UmbrellaDepth != .4 {
		t.Errorf("the umbrella is %+v, %v m long, %v m deep", u, cut.UmbrellaLength, cut.UmbrellaDepth)
	}
}

// What cannot be a section is told with the place in the file.
func TestSectionRefusals(t *testing.T) {
	const section = "section: {length: 10 m, berm: 2.6 m"
	for says, pairs := range map[string][]string{
		"rooms[0].section: wants just one upright wall and just one floor": {"{name: floor, area: 38 m2, faces: earth, perimeter: 14 m, layers: \"8 cm earth 1800, 10 cm cork board\"}", "{name: floor, area: 38 m2, faces: nothing, layers: \"8 cm earth 1800, 10 cm cork board\"}"},
		"10 m of length by 2.1 m of earth over the floor make 21 m2":       {section, "section: {length: 10 m, berm: 2.1 m"},
		"8 m of length by":                   {section, "section: {length: 8 m, berm: 2.6 m"},
		"rooms[0].section.umbrella":          {section, "section: {umbrella: \"10 cm cork board, 5 cm cob\", length: 10 m, berm: 2.6 m"},
		"is an air gap":                      {section + ", crest: 1 m, slope: 20 deg, behind: 5 m, foot: 45 cm reclaimed stone", section + ", foot: 4 cm air"},
		"rooms[0].section.foot":              {section + ", crest: 1 m, slope: 20 deg, behind: 5 m, foot: 45 cm reclaimed stone", section},
		"but the room's section computes it": {"depth: 1.4 m, layers: \"30 cm reclaimed stone, 10 cm cork board\"}\n      - {name: front, area: 12 m2", "behind: 12 degC, layers: \"30 cm reclaimed stone, 10 cm cork board\"}\n      - {name: front, area: 12 m2"},
		"rooms[0].section.slope: 80 deg":     {section + ", crest: 1 m, slope: 20 deg", section + ", crest: 1 m, slope: 80 deg"},
	} {
		_, err := earthen(t, pairs...)
		if err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("got %v, want words of %q", err, says)
		}
	}
}
