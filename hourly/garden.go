package hourly

import (
	"suffice/crop"
	"suffice/garden"
	"suffice/quantity"
	"suffice/reuse"
	"suffice/waste"
)

// wantBeds asks for the water of beds, animals and the planter's rinsing, at the hours at which people give it: beds while
// there is plenty, and less while the people save.
func (c *chain) wantBeds(day, clock int, s *State, row *Row, plenty bool) {
	u := &row.Chain
	if g := c.garden; g != nil {
		for b := range g.Beds {
			left := &s.Chain.Sprays[b]
			if bed := &g.Beds[b]; bed.Watered && bed.Clock == clock {
				*left = 0
				if plenty {
					*left = bed.Plot.Want(&s.Chain.Beds[b]) * quantity.Litres(1-row.Choice.Save)
				}
			}
			u.Given[b] = 0
			if *left > 0 && plenty {
				u.Given[b] = *left
				if most := g.Beds[b].Flow; most > 0 && most < *left {
					u.Given[b] = most
				}
				*left -= u.Given[b]
				u.Beds += u.Given[b]
			}
		}
		if clock == animalsClock {
			u.Animals = g.Stock.Day(quantity.Celsius(middle(c.days[day].air))).Water
		}
	}
	if p := c.parts; p != nil && p.Planter != nil && p.Planter.Rinse > 0 && row.Wants.Persons > 0 && clock == rinseClock && (day+1)%p.Planter.Every == 0 {
		u.Rinse = p.Planter.Rinse.On(p.Planter.Bed.Area())
		u.Beds += u.Rinse
	}
}

// endDay lets crops grow, salt and sludge gather and scraps ripen.
func (r *Run) endDay(day, clock int, s *State, row *Row) {
	c, u, at := r.chain, &row.Chain, &s.Chain
	if c.lived {
		r.feel(s)
	}
	if u.Ended = clock == 23; !u.Ended {
		return
	}
	d := &c.days[day]
	if p := c.parts; p != nil {
		if p.Planter != nil {
			c.growPlanter(d, at, u)
		}
		if p.Septic != nil {
			in := waste.TankDayIn{People: at.Persons, Desludge: p.Septic.Full(&at.Septic) >= p.Empty}
			u.Day.Desludged = in.Desludge
			p.Septic.Day(&at.Septic, &in, &u.Day.Septic)
			if p.Trench != nil {
				at.Carry = waste.TankIn{Inflow: u.Day.Septic.Carried, Load: u.Day.Septic.CarriedLoad}
			}
		}
	}
	if c.garden != nil {
		c.growBeds(d, at, u)
		c.compost(d, at, u)
	}
	r.newDay(s)
}

// growPlanter closes the planter's day.
func (c *chain) growPlanter(d *chainDay, s *ChainState, u *ChainRow) {
	p := c.parts.Planter
	air, soil := c.planter.day(d, s.Swing[0])
	in := reuse.PlanterDayIn{Water: quantity.Celsius(soil), Tolerance: c.feels, Depletion: s.Crop.Depletion}
	u.Day.GrowthCrop = nil
	if p.Plot != nil {
		in.Nitrogen = p.Plot.Appetite(&s.Grown)
		if s.Grown.Growing > 0 {
			u.Day.GrowthCrop = p.Plot.Growth(&s.Grown)
			in.Tolerance = c.feelsOf[s.Grown.Growing-1]
		}
	}
	u.Day.Planter = p.Bed.Day(&s.Planter, &in)
	if p.Plot == nil {
		return
	}
	s.Grown.Mineral += u.Day.Planter.Nitrogen
	p.Plot.Day(&s.Grown, &garden.BedDayIn{Day: d.ofYear, Air: air, Soil: soil, Light: crop.DailyLight(d.light, c.planter.passes()),
		Salt: u.Day.Planter.Salinity, Pollinated: true}, &u.Day.Growth)
	s.Crop.Coefficient, s.Crop.Depletion = s.Grown.Thirst()
	s.Crop.Roots = p.Plants.Roots
	if grown := p.Plot.Growth(&s.Grown); grown != nil {
		s.Crop.Roots = float64(grown.Reaches(p.Bed.Soil.Depth))
	}
}

// growBeds closes the day of the garden's beds. Compost that ripened on the day before is shared by area.
func (c *chain) growBeds(d *chainDay, s *ChainState, u *ChainRow) {
	for b := range c.garden.Beds {
		bed := &c.garden.Beds[b]
		air, soil := c.beds[b].day(d, s.Swing[1+b])
		u.Day.BedCrops[b] = bed.Plot.Growth(&s.Beds[b])
		in := garden.BedDayIn{Day: d.ofYear, Air: air, Soil: soil, Light: crop.DailyLight(d.light, c.beds[b].passes()),
			Pollinated: !bed.Stands.Indoors || bed.Hand}
		if !bed.Lawn {
			in.Compost = s.Ripe.RipeN * float64(bed.Plot.Bed.Area) / c.area
		}
		bed.Plot.Day(&s.Beds[b], &in, &u.Day.Beds[b])
	}
}

// compost brings the day's scraps, residues and manure to the heap.
func (c *chain) compost(d *chainDay, s *ChainState, u *ChainRow) {
	g := c.garden
	u.Day.Stock = g.Stock.Day(quantity.Celsius(middle(d.air)))
	u.Day.Scraps, s.Ripe = garden.Scraps{}, garden.HeapOut{}
	if !g.Scraps {
		return
	}
	u.Day.Scraps = garden.KitchenScraps(s.Persons)
	in := garden.HeapIn{Mass: u.Day.Scraps.Kitchen + u.Day.Stock.Manure + u.Day.Growth.Residue + u.Day.Growth.Died,
		Nitrogen: u.Day.Scraps.Nitrogen + u.Day.Stock.ManureN + u.Day.Growth.ResidueN}
	for b := range g.Beds {
		in.Mass += u.Day.Beds[b].Residue + u.Day.Beds[b].Died
		in.Nitrogen += u.Day.Beds[b].ResidueN
	}
	s.Heap.Day(&in, &s.Ripe)
	u.Day.Heap = s.Ripe
}
