package house

import (
	"fmt"
	"math"
	"slices"
	"time"

	"suffice/crop"
	"suffice/garden"
	"suffice/people"
	"suffice/quantity"
	"suffice/reuse"
	"suffice/soil"
	"suffice/waste"
)

// Shares of what a person sends down all drains that toilets carry: nearly all of the nitrogen, about half of the rest [waste.UsualPerPerson].
const (
	toiletNitrogen = 0.9
	toiletRest     = 0.5
)

// drains builds the way of used water, or gives nil where nothing of it is told.
func (r *reader) drains(f *File) *DrainParts {
	if f.Planter == nil && f.FlushWell == nil && f.Septic == nil {
		return nil
	}
	each := waste.UsualPerPerson()
	d := &DrainParts{Grey: reuse.UsualGrey(), Rain: 0,
		Toilet: waste.Load{Salt: toiletRest * each.Salt, BOD: toiletRest * each.BOD, Nitrogen: toiletNitrogen * each.Nitrogen}}
	if f.Water != nil {
		d.Rain = f.Water.Salt
	}
	d.Grey.Feeds = [reuse.Sources]bool{}
	if f.Planter != nil {
		r.planter(f, d)
	}
	if w := f.FlushWell; w != nil {
		d.Well = &reuse.Well{Area: w.Area, Depth: w.Depth, Least: w.Least, Float: w.Float, Refill: w.Refill, MostPerHour: w.Most, PerKilo: w.Pump, StaleAfter: w.Stale}
		r.refuse("flush_well", d.Well.Faults())
	}
	if f.Septic != nil {
		r.septic(f, d)
	}
	return d
}

// planter builds the bed and the way to it.
func (r *reader) planter(f *File, d *DrainParts) {
	p := f.Planter
	g := &d.Grey
	usual := reuse.UsualGrey()
	g.Inlet, g.Trap = p.Surge, reuse.Trap{Keeps: p.Keeps, Holds: p.Holds, CleanEvery: int(math.Round(p.CleanTrap))}
	for s := range reuse.Sources {
		g.Feeds[s] = usual.Feeds[s] && len(p.FedBy) == 0 || slices.Contains(p.FedBy, s.String())
	}
	r.refuse("planter", g.Faults())
	d.Ill, d.Harsh = spans(p.Ill), spans(p.Harsh)
	built := reuse.UsualPlanter(quantity.Metres(float64(p.Area)/float64(p.Width)), p.Width)
	built.Name, built.Slope = "planter", p.Slope
	built.Gravel.Standing = built.Gravel.Standing / built.Gravel.Depth * p.Gravel
	built.Gravel.Depth, built.Soil.Depth = p.Gravel, p.Soil
	bed, err := reuse.Prepare(built)
	r.refuse("planter", err)
	parts := &PlanterParts{Name: "planter", Bed: bed, Stands: stand(f, p.Under, p.Room, p.Light, p.Damp), Names: p.Plants,
		Plants: reuse.Crop{Coefficient: p.Kc, Roots: float64(or(p.Roots, p.Soil)), Depletion: p.Depletion}, Rinse: p.Rinse, Every: int(math.Round(p.Every)),
		Bedding: reuse.Bedding{RawFood: p.Raw, Food: p.Raw || len(p.Crops) > 0, Children: p.Children}}
	parts.Feels = feels(p.Plants)
	if len(p.Crops) > 0 {
		parts.Plot = r.plot("planter", &garden.Bed{Name: "planter", Area: p.Area, Depth: p.Soil,
			Soil:    soil.Water{FieldCapacity: built.Soil.FieldCapacity, Wilting: built.Soil.WiltingPoint},
			Arrives: 1, Indoors: parts.Stands.Indoors}, p.Crops)
		parts.Names = nil
		for _, c := range p.Crops {
			parts.Names = append(parts.Names, c.Crop)
		}
	}
	d.Planter = parts
}

// feels gives the tolerance of the plant that salt harms first; the zero one where no table knows any of them.
func feels(plants []string) (least reuse.Tolerance) {
	for _, name := range plants {
		if t, known := reuse.ToleranceOf(name); known && (least == reuse.Tolerance{} || t.Threshold < least.Threshold) {
			least = t
		}
	}
	return least
}

// plot readies a bed with its crops of the year, no deeper than their roots reach.
func (r *reader) plot(where string, bed *garden.Bed, crops []Planting) *garden.Plot {
	for i := range crops {
		c, err := crop.Named(crops[i].Crop)
		if err != nil {
			r.refuse(fmt.Sprintf("%s.crops[%d].crop", where, i), err)
			continue
		}
		bed.Plantings = append(bed.Plantings, garden.Planting{Crop: c, Day: dayOfYear(crops[i].Sown)})
		bed.Depth = min(bed.Depth, quantity.Metres(c.Roots.High))
	}
	plot, err := bed.Prepare()
	if err != nil {
		r.refuse(where, err)
		return nil
	}
	return &plot
}

// dayOfYear counts as in a year without a leap day, 1 to 365; 29 February is 1 March.
func dayOfYear(d MonthDay) int {
	return min(365, time.Date(2001, time.Month(d.Month), d.Day, 0, 0, 0, 0, time.UTC).YearDay())
}

func spans(list []Span) []people.Dates {
	var all []people.Dates
	for _, s := range list {
		all = append(all, people.Dates{From: date(s.From), To: date(s.To)})
	}
	return all
}

// percent is the hundredths in a whole: a Stand's humidity is in percent, as weather's is.
const percent = 100

// stand places a bed. A room that is not told by layers has the air of indoors.
func stand(f *File, under string, room *string, light, damp float64) Stand {
	s := Stand{Indoors: under == "glass", Room: -1, Light: light, Damp: percent * damp}
	if s.Indoors && room != nil && layered(f.Rooms) {
		s.Room = slices.IndexFunc(f.Rooms, func(m Room) bool { return m.Name == *room })
	}
	return s
}

// septic builds tank and trench.
func (r *reader) septic(f *File, d *DrainParts) {
	s := f.Septic
	tank := waste.UsualTank(s.Holds)
	tank.Sludge = float64(s.Sludge)
	r.refuse("septic", tank.Faults())
	d.Septic, d.Empty = &tank, s.EmptyAt
	d.Told = told(f)
	for _, b := range s.Setbacks {
		d.Spacing = append(d.Spacing, waste.Setback{From: b.From, To: b.To, Least: float64(b.Is)})
	}
	for i, text := range s.Local {
		rules, err := waste.ReadSetbacks(text)
		r.refuse(fmt.Sprintf("septic.local_setbacks[%d]", i), err)
		d.Rules = append(d.Rules, rules...)
	}
	if s.Trench != nil {
		r.trench(s.Trench, f.Site.Latitude < 0, d)
	}
}

// told gives the house as rules for tanks and fields count it. Its daily flow is what all drains and toilets carry on the mean
// day on which everybody is at home and nobody else.
func told(f *File) waste.House {
	h := waste.House{Bedrooms: f.Septic.Bedrooms}
	if f.People == nil {
		return h
	}
	h.People = float64(f.People.Residents)
	for i := range f.People.Uses {
		u := &f.People.Uses[i]
		if drain(u) == people.Ground {
			continue
		}
		heads, days := 1.0, 0.0
		if u.Amount.PerPerson {
			heads = h.People
		}
		for _, on := range u.Days {
			if on {
				days++
			}
		}
		h.Daily += float64(u.Amount.Litres) * heads * days / 7
	}
	return h
}

// testFall is the fall of a percolation test as the file tells it, mm.
const testFall = 25

func (r *reader) trench(t *Trench, south bool, d *DrainParts) {
	ground, ok := waste.SoilNamed(t.Soil)
	if !ok {
		panic(fmt.Sprintf("house: %q passed as ground of a trench", t.Soil))
	}
	ground.Clogs = t.Clogs
	catch := 2 * quantity.SquareMetres(t.Length*t.Width)
	if t.Catch != nil {
		catch = *t.Catch
	}
	built := &waste.Trench{Length: t.Length, Width: t.Width, Gravel: t.Gravel, Pores: t.Pores, Catch: catch, RunsOff: t.RunsOff,
		Cover: t.Cover.On(catch), Soil: ground, Grass: 1}
	if t.Trees != nil {
		g := waste.UsualGrove(t.Trees.Count)
		g.Crown, g.Grown, g.Kc, g.Reach = t.Trees.Crown, t.Trees.Grown, t.Trees.Kc, t.Trees.Reach
		g.Leaves = leaves(t.Trees, south)
		built.Grove = g
		d.Age = t.Trees.Age
		d.Spacing = append(d.Spacing, waste.Setback{From: "field", To: "trees", Least: float64(t.Trees.Distance)})
	}
	r.refuse("septic.trench", built.Faults())
	d.Trench = built
	if t.Test != nil {
		d.Seeps = waste.PercolationRate(*t.Test, testFall)
	}
}

// opens is the days that leaves take to open, and to fall: a pecan's, common practice, no source.
const opens = 35

// leaves gives the calendar of trees as of a northern year.
func leaves(t *Trees, south bool) waste.Calendar {
	if t.Evergreen {
		return waste.Calendar{Evergreen: true}
	}
	from, to := northern(dayOfYear(*t.From), south), northern(dayOfYear(*t.To), south)
	return waste.Calendar{Out: from, Full: from + opens, Turn: to - opens, Bare: to}
}

// northern gives the day of a northern year with the season of a day here, as waste.Calendar turns it back.
func northern(day int, south bool) int {
	if !south {
		return day
	}
	return (day+181)%365 + 1
}

// arrives is the share of the watering that reaches the soil: common practice, no source.
var arrives = map[string]float64{"drip": 0.9, "can": 0.85, "sprinkler": 0.75, "nobody": 1}

// garden builds beds, animals and heap.
func (r *reader) garden(f *File) *GardenParts {
	if f.Garden == nil {
		return nil
	}
	g := f.Garden
	parts := &GardenParts{Stock: garden.Stock{Hens: g.Hens, Goats: g.Goats, Hives: g.Hives}, Scraps: g.Scraps, Above: g.WaterAbove, Kitchen: garden.UsualKitchen(1)}
	parts.Kitchen.Wants = g.Wants
	r.refuse("garden", parts.Stock.Faults())
	for i := range g.Beds {
		b := &g.Beds[i]
		where := fmt.Sprintf("garden.beds[%d]", i)
		at := stand(f, b.Under, b.Room, b.Light, b.Damp)
		holds, err := soil.WaterOf(b.Soil)
		r.refuse(where+".soil", err)
		plot := r.plot(where, &garden.Bed{Name: b.Name, Area: b.Area, Depth: b.Depth, Soil: holds, Arrives: arrives[b.By], Indoors: at.Indoors}, b.Crops)
		if plot == nil {
			continue
		}
		parts.Beds = append(parts.Beds, GardenBed{Plot: *plot, Stands: at, Watered: b.By != "nobody", Clock: b.Hour, Organic: b.Compost * float64(b.Area), Mineral: b.Mineral * float64(b.Area), Hand: b.Hand})
	}
	if g.Lawn != nil {
		parts.Beds = append(parts.Beds, r.lawn(g.Lawn))
	}
	return parts
}

// lawnName is what the lawn is called among the beds.
const lawnName = "lawn"

// lawn builds the grass as a bed under the sky that is never sown.
func (r *reader) lawn(l *Lawn) GardenBed {
	holds, err := soil.WaterOf(l.Soil)
	r.refuse("garden.lawn.soil", err)
	plot := r.plot("garden.lawn", &garden.Bed{Name: lawnName, Area: l.Area, Depth: l.Depth, Soil: holds, Arrives: arrives[l.By], Grass: garden.Grass{Kc: l.Kc, Depletion: l.Easy}}, nil)
	if plot == nil {
		return GardenBed{}
	}
	bed := GardenBed{Plot: *plot, Stands: Stand{Room: -1}, Watered: l.By != "nobody", Clock: l.Hour, Lawn: true}
	if l.By == "sprinkler" {
		bed.Flow = quantity.Litres(l.Flow)
	}
	return bed
}
