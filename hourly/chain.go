package hourly

import (
	"errors"
	"fmt"

	"suffice/crop"
	"suffice/garden"
	"suffice/house"
	"suffice/people"
	"suffice/quantity"
	"suffice/reuse"
	"suffice/site/evap"
	"suffice/site/weather"
	"suffice/waste"
)

// MostBeds is how many garden beds a house may have, its lawn among them; a State has room for no more.
const MostBeds = 9

const (
	// rinseClock and trapClock are the hours of the day at which people pour and clean: any by daylight serves.
	rinseClock, trapClock = 9, 10
	// animalsClock is when animals are given their water for the day.
	animalsClock = 7
)

// A chain is the second to fourth use of water made ready: what the design and the weather alone decide.
type chain struct {
	parts  *house.DrainParts // nil: nobody follows used water
	garden *house.GardenParts

	days      []chainDay
	planter   shelter
	beds      [MostBeds]shelter
	waters    [24]bool        // hours at which people look after beds and animals
	sprinkles bool            // some bed has a sprinkler, which runs on for hours
	lived     bool            // some bed stands in a computed room
	feels     reuse.Tolerance // of what is perennial in the planter
	feelsOf   []reuse.Tolerance
	area      float64 // m2 of all garden beds
}

// A chainDay is a day of the record as beds and trench see it.
type chainDay struct {
	ofYear int
	month  int
	air    crop.Swing
	soil   float64 // degC: mean of the air of a week
	light  float64 // MJ/m2 on the level outdoors
	ill    bool
	harsh  bool
}

// ChainState is what the chain remembers. It is a plain value.
type ChainState struct {
	Grey    reuse.GreyState
	TrapDue bool
	Planter reuse.PlanterState
	Grown   garden.BedState // in the planter
	Well    reuse.WellState
	Bowl    waste.Load // in the toilet, not flushed yet
	Septic  waste.TankState
	Carry   waste.TankIn // solids of yesterday on their way to the trench
	Trench  waste.TrenchState
	Beds    [MostBeds]garden.BedState
	Heap    garden.Heap
	Ripe    garden.HeapOut            // of the last day, for the beds
	Sprays  [MostBeds]quantity.Litres // still to be given of what a bed with a sprinkler was found to want today

	Persons  float64 // hours of people at home today, over 24
	Swing    [1 + MostBeds]crop.Swing
	Shelters [1 + MostBeds]evap.Shelter
	Crop     reuse.Crop // in the planter, by the last day
}

// A ChainRow is all that one hour of the chain did.
type ChainRow struct {
	Ask     reuse.WellAsk
	Flush   quantity.Litres // wanted for flushing
	Flushed quantity.Litres // had for it
	Beds    quantity.Litres // wanted of the tanks for beds and rinsing
	Animals quantity.Litres // wanted of the tanks

	GreyIn    reuse.GreyIn
	Grey      reuse.GreyOut
	PlanterIn reuse.PlanterIn
	Planter   reuse.PlanterOut
	Rain      quantity.Litres // on the planter
	Topped    reuse.Water     // from the tanks to the well, or to the cisterns where there is none
	WellIn    reuse.WellIn
	Well      reuse.WellOut
	Sewage    waste.TankIn // from drains and toilets
	Septic    waste.TankOut
	TrenchIn  waste.TrenchIn
	Trench    waste.TrenchOut
	BedIn     [MostBeds]garden.BedIn
	BedOut    [MostBeds]garden.BedOut
	Given     [MostBeds]quantity.Litres // wanted for each bed
	Rinse     quantity.Litres           // wanted for the planter's soil

	Ended bool // the day ended with this hour, and Day tells of it
	Day   ChainDayRow
}

// A ChainDayRow is what a day of the chain came to, at its end.
type ChainDayRow struct {
	Planter    reuse.PlanterDayOut
	Growth     garden.BedDayOut
	GrowthCrop *crop.Crop
	Septic     waste.TankDayOut
	Desludged  bool
	Beds       [MostBeds]garden.BedDayOut
	BedCrops   [MostBeds]*crop.Crop // what stood there before the day ended
	Stock      garden.StockDay
	Scraps     garden.Scraps
	Heap       garden.HeapOut
}

// prepareChain makes drains, beds and trench ready under the record's weather.
func (r *Run) prepareChain(to *columns) error {
	parts, beds := r.House.Drains, r.House.Garden
	if parts == nil && beds == nil {
		return nil
	}
	c := &chain{parts: parts, garden: beds}
	if err := r.beddable(); err != nil {
		return err
	}
	if beds != nil && len(beds.Beds) > MostBeds {
		return fmt.Errorf("garden.beds: %d beds are more than %d: take beds that are treated alike together", len(beds.Beds), MostBeds)
	}
	to.light = r.Weather.Global
	to.reference = evap.Column(evap.Columns{Place: r.Weather.Place, DayOfYear: daysOfYear(r.Weather.Days), Temperature: r.Weather.Temperature,
		Humidity: r.Weather.Humidity, Wind: r.Weather.Wind, Light: r.Weather.Global})
	if len(r.Weather.Wind) == 0 {
		r.Notes = append(r.Notes, "the weather tells no wind: beds and trench dry as in a wind of 2 m/s, the world's mean (FAO-56)")
	}
	c.days = r.chainDays(parts)
	if parts != nil && parts.Planter != nil {
		c.planter = r.shelter(parts.Planter.Stands)
		c.feels = parts.Planter.Feels
		if plot := parts.Planter.Plot; plot != nil {
			for _, p := range plot.Bed.Plantings {
				feels, _ := reuse.ToleranceOf(p.Crop.Name)
				c.feelsOf = append(c.feelsOf, feels)
			}
		}
	}
	if beds != nil {
		for i := range beds.Beds {
			c.beds[i] = r.shelter(beds.Beds[i].Stands)
			bed := &beds.Beds[i]
			if !bed.Lawn {
				c.area += float64(bed.Plot.Bed.Area)
			}
			c.waters[bed.Clock] = true
			c.sprinkles = c.sprinkles || bed.Flow > 0
		}
		c.waters[animalsClock] = true
	}
	c.waters[rinseClock] = true
	c.stands(func(_ int, b *shelter) { c.lived = c.lived || b.Room >= 0 })
	r.chain = c
	return nil
}

// beddable tells what beds and trench need of the weather and the record does not have.
func (r *Run) beddable() error {
	var faults []error
	for _, need := range []struct {
		column []float64
		what   string
	}{{r.Weather.Rain, "rain"}, {r.Weather.Global, "light of the sun"}, {r.Weather.Humidity, "humidity"}} {
		if len(need.column) == 0 {
			faults = append(faults, fmt.Errorf("the weather has no %s, which beds and trench need: name a record that has it in weather.record", need.what))
		}
	}
	return errors.Join(faults...)
}

// chainDays works out what beds and trench want to know of each day.
func (r *Run) chainDays(parts *house.DrainParts) []chainDay {
	w := r.Weather
	outside := garden.Outside(w)
	year := daysOfYear(w.Days)
	days := make([]chainDay, len(w.Days))
	for d := range days {
		light := 0.0
		for _, g := range w.Global[24*d : 24*d+24] {
			light += g
		}
		days[d] = chainDay{ofYear: year[d], month: int(w.Days[d].Month), air: outside.Air[d], soil: outside.Soil(d), light: light * megajoules}
		if parts != nil {
			days[d].ill, days[d].harsh = within(parts.Ill, w.Days[d]), within(parts.Harsh, w.Days[d])
		}
	}
	return days
}

// megajoules is a watt for an hour.
const megajoules = 0.0036

func within(spans []people.Dates, d weather.Day) bool {
	for _, s := range spans {
		if s.Include(d) {
			return true
		}
	}
	return false
}

// daysOfYear gives each day's number in its year, 1 to 366.
func daysOfYear(days []weather.Day) []int {
	list := make([]int, len(days))
	for i, d := range days {
		list[i] = int(d.DayOfYear)
	}
	return list
}

// startChain gives the chain as it is before the first hour.
func (r *Run) startChain(whole *State) {
	c, s := r.chain, &whole.Chain
	if c == nil {
		return
	}
	if p := c.parts; p != nil {
		if p.Planter != nil {
			s.Planter = p.Planter.Bed.Start()
			s.Crop = p.Planter.Plants
			if plot := p.Planter.Plot; plot != nil {
				s.Grown = plot.Start(0, 0)
			}
		}
		if p.Septic != nil {
			s.Septic = p.Septic.Start()
		}
		if p.Trench != nil {
			first := r.trenchDay(0)
			s.Trench = p.Trench.Start(&first)
		}
	}
	if g := c.garden; g != nil {
		for i := range g.Beds {
			s.Beds[i] = g.Beds[i].Plot.Start(g.Beds[i].Organic, g.Beds[i].Mineral)
		}
	}
	r.newDay(whole)
}
