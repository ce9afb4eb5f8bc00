package house

import (
	"math"
	"slices"
	"strings"
	"testing"

	"suffice/crop"
	"suffice/examples"
	"suffice/garden"
	"suffice/people"
	"suffice/reuse"
	"suffice/soil"
	"suffice/waste"
)

func TestEveryValueOfUsedWaterComesToItsPlace(t *testing.T) {
	h := composed(t, "h", []byte(full))
	d, p := h.Drains, h.Drains.Planter
	grey := reuse.UsualGrey()
	grey.Feeds, grey.Inlet, grey.Trap = [reuse.Sources]bool{reuse.Dishwasher: true}, 210, reuse.Trap{Keeps: 0.25, Holds: 1500, CleanEvery: 20}
	same(t, "drains", d.Grey, grey)
	same(t, "illness", d.Ill, []people.Dates{{From: people.Date{Month: 1, Day: 10}, To: people.Date{Month: 1, Day: 17}}})
	same(t, "harsh days", d.Harsh, []people.Dates{{From: people.Date{Month: 3, Day: 1}, To: people.Date{Month: 3, Day: 2}}})
	bed := reuse.UsualPlanter(4, 1.5)
	bed.Name, bed.Slope, bed.Soil.Depth = "planter", 0.02, 0.5
	bed.Gravel.Standing = bed.Gravel.Standing / bed.Gravel.Depth * 0.45 // two thirds wet
	bed.Gravel.Depth = 0.45
	same(t, "bed", p.Bed.Planter, bed)
	strawberry, _ := reuse.ToleranceOf("strawberry")
	same(t, "planter", *p, PlanterParts{Name: "planter", Bed: p.Bed, Stands: Stand{Indoors: true, Room: -1, Light: 0.45, Damp: 65}, Plants: reuse.Crop{Coefficient: 1.1, Roots: 0.6, Depletion: 0.4},
		Feels: strawberry, Names: []string{"strawberry", "broccoli", "banana"}, Rinse: 25, Every: 21}, reuse.Bed{})
	same(t, "well", *d.Well, reuse.Well{Area: 0.7, Depth: 1.2, Least: 0.15, Float: 0.3, Refill: 0.5, MostPerHour: 500, PerKilo: 90, StaleAfter: 5})
	each := waste.UsualPerPerson()
	if d.Rain != 0.05 || d.Toilet.Nitrogen != 0.9*each.Nitrogen || d.Toilet.BOD != 0.5*each.BOD || d.Toilet.Salt != 0.5*each.Salt {
		t.Errorf("tap water has %g g/L of salt, toilets carry %+v", d.Rain, d.Toilet)
	}
}

func TestEveryValueOfWasteComesToItsPlace(t *testing.T) {
	d := composed(t, "h", []byte(full)).Drains
	tank := waste.UsualTank(3500)
	tank.Sludge = 55
	same(t, "tank", *d.Septic, tank)
	ground, _ := waste.SoilNamed("loam-weak")
	ground.Clogs = 800
	same(t, "trench", *d.Trench, waste.Trench{Length: 20, Width: 0.7, Gravel: 0.35, Pores: 0.38, Catch: 30, RunsOff: 0.25, Cover: 1650, Soil: ground, Grass: 1,
		Grove: waste.Grove{Trees: 3, Crown: 18, Grown: 10, Kc: 1.05, Reach: 0.45,
			Leaves: waste.Calendar{Out: 91, Full: 126, Turn: 268, Bare: 303}}}) // 1 October and 1 May, 182 days on
	same(t, "told", d.Told, waste.House{People: 3, Bedrooms: 4, Daily: 8.*3*2/7 + 7*3})
	same(t, "distances", d.Spacing, []waste.Setback{{From: "tank", To: "building", Least: 9}, {From: "field", To: "trees", Least: 4}})
	same(t, "rules", d.Rules, []waste.Setback{{From: "field", To: "well", Least: 31}, {From: "tank", To: "building", Least: 1.5}})
	if d.Empty != 0.3 || d.Age != 2 || d.Seeps != 24 { // 600 s for 25 mm
		t.Errorf("emptied at %g, trees of %g years, %g s/mm", d.Empty, d.Age, d.Seeps)
	}
}

func TestEveryValueOfTheGardenComesToItsPlace(t *testing.T) {
	h := composed(t, "h", []byte(full))
	g := h.Garden
	clay, err := soil.WaterOf("clay")
	if err != nil {
		t.Fatal(err)
	}
	same(t, "garden", *g, GardenParts{Beds: g.Beds, Stock: garden.Stock{Hens: 6, Goats: 1, Hives: 2}, Kitchen: garden.Kitchen{People: 1, Wants: 95, Energy: garden.UsualKitchen(1).Energy},
		Above: 0.4}, garden.Plot{})
	silt, err := soil.WaterOf("silt loam")
	if err != nil {
		t.Fatal(err)
	}
	lawn := g.Beds[len(g.Beds)-1]
	same(t, "lawn", lawn, GardenBed{Plot: lawn.Plot, Stands: Stand{Room: -1}, Watered: true, Clock: 4, Lawn: true, Flow: 700}, garden.Plot{})
	same(t, "grass", *lawn.Plot.Bed, garden.Bed{Name: "lawn", Area: 40, Depth: 0.45, Soil: silt, Arrives: 0.75, Grass: garden.Grass{Kc: 0.85, Depletion: 0.5}})
	b := g.Beds[0]
	same(t, "bed", b, GardenBed{Plot: b.Plot, Stands: Stand{Indoors: true, Room: -1, Light: 0.55, Damp: 70}, Watered: true, Clock: 7, Organic: 600, Mineral: 36}, garden.Plot{})
	built := *b.Plot.Bed
	same(t, "plot", built, garden.Bed{Name: "g", Area: 12, Depth: 0.3, Soil: clay, Arrives: 0.85, Indoors: true, Plantings: built.Plantings})
	if p := built.Plantings; len(p) != 2 || p[0].Crop.Name != "lettuce" || p[0].Day != 64 || p[1].Crop.Name != "radish" || p[1].Day != 364 {
		t.Errorf("plantings are %+v", p)
	}
	if len(h.Described) != 0 {
		t.Errorf("described only are %q, want none", h.Described)
	}
}

// Vegetables make a plot of the planter; its soil is no deeper than their roots.
func TestPlanterOfVegetables(t *testing.T) {
	h := composed(t, "demo", examples.Demo)
	p := h.Drains.Planter
	if p.Plot == nil || len(p.Plot.Bed.Plantings) != 2 || !slices.Equal(p.Names, []string{"spinach", "tomato"}) || p.Plot.Bed.Area != 7 || !p.Plot.Bed.Indoors {
		t.Errorf("the demo's planter grows %q on %+v", p.Names, p.Plot)
	}
	if !p.Bedding.RawFood || !p.Bedding.Food || p.Bedding.Toilet {
		t.Errorf("its bedding is %+v", p.Bedding)
	}
	same(t, "feeds", h.Drains.Grey.Feeds, reuse.UsualGrey().Feeds)
}

// A bed stands in a computed room by its index, and under the air of indoors where rooms are only described.
func TestBedsStandInComputedRooms(t *testing.T) {
	const beds = "planter: {area: 2 m2, room: night}\ngarden: {beds: [{name: b, area: 3 m2, under: glass, room: day}]}\n"
	h := composed(t, "h", []byte(twoRooms+beds))
	if p, b := h.Drains.Planter.Stands.Room, h.Garden.Beds[0].Stands.Room; p != 1 || b != 0 {
		t.Errorf("planter in room %d, bed in room %d; want 1 and 0", p, b)
	}
	h = composed(t, "h", []byte(strings.Replace(twoRooms, "layers: 10 cm cob", "build: cob", 1)+beds))
	if p, b := h.Drains.Planter.Stands.Room, h.Garden.Beds[0].Stands.Room; p != -1 || b != -1 {
		t.Errorf("planter in room %d, bed in room %d, though none is computed", p, b)
	}
}

func TestPartsOfTheChainStandAlone(t *testing.T) {
	for _, c := range []struct {
		text                          string
		planter, well, septic, garden bool
	}{
		{"", false, false, false, false},
		{"planter: {area: 2 m2}\n", true, false, false, false},
		{"septic: {holds: 3 kL}\n", false, false, true, false},
		{"planter: {area: 2 m2}\nflush_well: {}\n", true, true, false, false},
		{"garden: {beds: []}\n", false, false, false, true},
	} {
		h := composed(t, "h", []byte(top+c.text))
		d := h.Drains
		if none := !c.planter && !c.septic; none != (d == nil) || c.garden != (h.Garden != nil) {
			t.Errorf("%q: drains %+v, garden %+v", c.text, d, h.Garden)
		} else if d != nil && (c.planter != (d.Planter != nil) || c.well != (d.Well != nil) || c.septic != (d.Septic != nil) || d.Trench != nil) {
			t.Errorf("%q: drains %+v", c.text, d)
		}
		if d != nil && d.Planter == nil && d.Grey.Feeds != [reuse.Sources]bool{} {
			t.Errorf("%q: drains feed %v, but no planter is there", c.text, d.Grey.Feeds)
		}
	}
}

func TestFlushWellIsTheUsualOneWhereNothingIsSaid(t *testing.T) {
	h := composed(t, "h", []byte(top+"planter: {area: 2 m2}\nflush_well: {}\nseptic: {holds: 3 kL}\n"))
	same(t, "well", *h.Drains.Well, reuse.UsualWell())
	same(t, "tank", *h.Drains.Septic, waste.UsualTank(3000))
	bed := reuse.UsualPlanter(2, 1)
	bed.Name = "planter"
	same(t, "bed", h.Drains.Planter.Bed.Planter, bed)
	same(t, "trap", h.Drains.Grey, reuse.UsualGrey())
	if math.Abs(h.Drains.Empty-waste.UsualShare) > 0.0005 { // 33.3 % as printed
		t.Errorf("emptied at %g, want %g", h.Drains.Empty, waste.UsualShare)
	}
}

// The words of the file are those of the packages that know them.
func TestChoicesAreThePackagesNames(t *testing.T) {
	var drains, sources, textures []string
	for d := range people.Drains {
		drains = append(drains, d.String())
	}
	for s := range reuse.Sources {
		sources = append(sources, s.String())
		if people.Drain(s).String() != s.String() {
			t.Errorf("drain %d is %s in package people and %s in package reuse", s, people.Drain(s), s)
		}
	}
	for _, x := range soil.Textures() {
		textures = append(textures, x.Name)
	}
	var grounds []string
	for _, s := range waste.SoilRates() {
		if _, ok := waste.SoilNamed(s.Soil); ok && !slices.Contains(grounds, s.Soil) {
			grounds = append(grounds, s.Soil)
		}
	}
	want := map[string][]string{"people.uses[].drains": drains, "planter.fed_by": sources, "garden.beds[].soil": textures, "septic.trench.soil": grounds,
		"septic.rules_of": waste.Places(), "planter.crops[].crop": crop.Names(), "garden.beds[].crops[].crop": crop.Names()}
	for _, k := range Keys() {
		if names, ok := want[k.Path]; ok {
			if got := slices.Sorted(slices.Values(k.Choices)); !slices.Equal(got, slices.Sorted(slices.Values(names))) {
				t.Errorf("%s: choices\n%q\nwant\n%q", k.Path, got, names)
			}
			delete(want, k.Path)
		}
	}
	if len(want) > 0 {
		t.Errorf("no such keys: %v", want)
	}
}

// Every published rate of sludge can be named, and comes to its figure.
func TestSludgeByName(t *testing.T) {
	for _, rate := range waste.SludgeRates() {
		h := composed(t, "h", []byte(top+"septic: {holds: 3 kL, sludge: "+rate.Name+"}\n"))
		if got := h.Drains.Septic.Sludge; got != rate.Rate {
			t.Errorf("%s is %g L a year, want %g", rate.Name, got, rate.Rate)
		}
	}
}

// Seasons south of the equator come back to the same date.
func TestSeasonsTurnBack(t *testing.T) {
	for day := 1; day <= 365; day++ {
		for _, south := range []bool{false, true} {
			if got := northern(here(day, south), south); got != day {
				t.Errorf("day %d, south %t: comes back as %d", day, south, got)
			}
		}
		if got := dayOfYear(monthDay(day)); got != day {
			t.Errorf("day %d is %+v and comes back as %d", day, monthDay(day), got)
		}
	}
	trees := top + "septic: {holds: 3 kL, trench: {length: 9 m, soil: sand, trees: {count: 1}}}\n"
	for _, south := range []bool{false, true} {
		text := trees
		if south {
			text = strings.Replace(text, "latitude: 35", "latitude: -35", 1)
		}
		f, err := Read("h", []byte(text))
		if err != nil {
			t.Fatal(err)
		}
		h, err := Compose(f)
		if err != nil {
			t.Fatal(err)
		}
		leaves, first := h.Drains.Trench.Grove.Leaves, dayOfYear(*f.Septic.Trench.Trees.From)
		if leaves != waste.PecanCalendar() || leaves.Leaf(first, south) != 0 || leaves.Leaf(first+1, south) == 0 {
			t.Errorf("south %t: leaves from day %d by %+v", south, first, leaves)
		}
	}
}

// The flow that rules are held against is what the people's own hours send down the drains.
func TestDailyFlowIsTheWeeksMean(t *testing.T) {
	for _, text := range [][]byte{examples.Demo, []byte(full)} {
		h := composed(t, "h", text)
		week := 0.0
		for day := range 7 {
			for hour := range 24 {
				w := h.People.Hour(day, hour, h.People.Residents)
				for k := range people.Kinds {
					week += float64(w.Litres[k] - w.Drained[k][people.Ground])
				}
			}
		}
		if got := h.Drains.Told.Daily; math.Abs(got-week/7) > 1e-9*got {
			t.Errorf("%s: %g L a day, by the hours %g", h.Name, got, week/7)
		}
	}
}

func TestWarningsOfTheChain(t *testing.T) {
	const salty = "planter.rinse: no rain falls under glass, so that salt gathers about the roots: rinse with clean water, as  rinse: 30 mm  does"
	for _, c := range []struct {
		old, new, says string
		gone           bool // the warning is there before the change, and not after it
	}{
		{old: "rinse: 30 mm", new: "rinse: 0 mm", says: salty},
		{old: "rinse: 30 mm", new: "eaten_raw: no", says: "planter: What grows here is eaten raw", gone: true},
		{old: "rinse: 30 mm", new: "children: no", says: "planter: Children play with what is wet", gone: true},
		{old: "{name: s, water: washing, amount: 9 L/d}, {name: t, water: flushing, amount: 9 L/d}]}\nplanter: {area: 6 m2, fed_by: [shower], ",
			new: "{name: t, water: flushing, amount: 9 L/d}]}\nplanter: {area: 6 m2, ", says: "planter.fed_by: no use of water runs into its drains"},
		{old: "crops: [{crop: tomato, sown: 03-15}, {crop: spinach, sown: 10-01}]", new: "plants: [banana, strawberry, mint]",
			says: "planter.plants: no table here says how much salt banana, mint can bear: taken to feel none"},
		{old: "sown: 10-01", new: "sown: 06-15",
			says: "planter.crops[1].sown: spinach is put in 92 days after tomato, which stands for about 145 (fao56: table 11): in a year in which the bed is still taken, it is left out"},
		{old: "sown: 03-15", new: "sown: 11-15",
			says: "planter.crops[0].sown: tomato is put in 45 days after spinach, which stands for about 65 (fao56: table 11)"},
		{old: "flush_well: {area: 1 m2}", new: "flush_well: {area: 1 m2, pump: 0 Wh/kL}", says: "flush_well.pump: the file has no power", gone: true},
		{old: "holds: 3 kL, ", new: "holds: 3 kL, rules_of: south-africa, ", says: "septic.holds: 3000 L is less than south-africa-bylaw asks for, 7000 L (max(7000, 7 Q)): ask the authority"},
		{old: "holds: 3 kL, ", new: "holds: 2700 L, rules_of: england, ", says: "", gone: true},
		{old: "holds: 3 kL, ", new: "holds: 3 kL, rules_of: usa-upc, ", says: "septic.rules_of: the rule usa-upc cannot be held against this house: it is printed for 1 to 6 bedrooms, not 0"},
		{old: "is: 8 m}", new: "is: 1 m}", says: "septic.setbacks[0]: from tank to building are 1 m: usa-county asks for at least 1.52 m; the authority decides"},
		{old: "is: 8 m}", new: "is: 2 m}], local_setbacks: [tank to building 3 m, field to trees 10 m", says: "septic.setbacks[0]: from tank to building are 2 m: the place asks for at least 3 m"},
		{old: "is: 8 m}", new: "is: 2 m}], local_setbacks: [tank to building 3 m, field to trees 10 m", says: "septic.trench.trees.distance: from field to trees are 9 m: the place asks for at least 10 m"},
		{old: "to: building, is: 8 m}", new: "to: bilding, is: 8 m}", says: "septic.setbacks[0].to: no table asks for a distance from tank to bilding, so it is not judged; known are basement, boundary, building, ditch, public well, stream, suction pipe, water pipe, well"},
		{old: "distance: 9 m}", new: "distance: 1 m}", says: "septic.trench.trees.distance: trees at 1 m from the drain trench: india asks for at least 3 m"},
		{old: "soil: sand,", new: "soil: sand, percolation: 60 s,", says: "septic.trench.percolation: 2.4 s/mm: no: the ground is too fast to clean the water before it reaches groundwater"},
		{old: ", trench: {length: 9 m, soil: sand, trees: {count: 1, distance: 9 m}}", new: "", says: "wants.waste: without septic.trench nothing can come to the surface: the want is reached whatever happens"},
		{old: "{name: c, area: 2 m2, under: glass}", new: "{name: c, area: 2 m2, under: glass, crops: [{crop: lettuce, sown: 10-10}]}", says: "garden.beds[1]: nothing is sown in c: it is lived as bare soil", gone: true},
		{old: "sown: 11-15}]", new: "sown: 11-15}, {crop: radish, sown: 12-01}]", says: "garden.beds[0].crops[1].sown: radish is put in 16 days after onion"},
	} {
		if strings.Count(chained, c.old) != 1 {
			t.Errorf("%q stands %d times in the chained house", c.old, strings.Count(chained, c.old))
			continue
		}
		before := strings.Join(composed(t, "h", []byte(chained)).Warnings, "\n")
		after := strings.Join(composed(t, "h", []byte(strings.Replace(chained, c.old, c.new, 1))).Warnings, "\n")
		if says, other := after, before; c.says != "" {
			if c.gone {
				says, other = before, after
			}
			if !strings.Contains(says, c.says) || strings.Contains(other, c.says) {
				t.Errorf("%q for %q, gone %t: got warnings\n%s\nand before\n%s\nwant among them\n%s", c.new, c.old, c.gone, after, before, c.says)
			}
		}
	}
}
