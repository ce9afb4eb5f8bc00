package hourly

import (
	"suffice/people"
	"suffice/power"
	"suffice/quantity"
	"suffice/reuse"
	"suffice/waste"
)

// wantUsed says what the chain asks of tanks and power: the well in the place of the cisterns, beds, lawn and animals.
func (r *Run) wantUsed(day, clock int, s *State, row *Row) {
	c, u := r.chain, &row.Chain
	if c.parts != nil && c.parts.Well != nil {
		u.Flush = row.Asks.Litres[people.Flushing]
		u.Ask = c.parts.Well.Asks(&s.Chain.Well, u.Flush)
		row.Draw[people.Flushing] = u.Ask.TopUp
		row.Supply.Services[power.FlushPump] = u.Ask.Pump
	}
	u.Beds, u.Animals, u.Rinse = 0, 0, 0
	if c.waters[clock] {
		c.wantBeds(day, clock, s, row, r.water == nil || c.garden == nil || r.water.UsableShare(&s.Water) >= c.garden.Above)
		row.Draw[people.Outdoor] += u.Beds + u.Animals
	}
}

// use leads what the taps gave through drains, planter and well, and what leaves them to tank and trench.
func (r *Run) use(day, clock int, now *ahead, s *State, row *Row) {
	c, u, at := r.chain, &row.Chain, &s.Chain
	at.Persons += row.Wants.Persons / 24
	share := r.had(row)
	outdoors, rain, light := now.reference, now.rain, now.light
	if c.parts != nil {
		c.drain(day, clock, at, row, &share)
		if c.parts.Planter != nil {
			c.plant(at, u, c.planter.hour(outdoors, rain, light, &at.Shelters[0]), share[people.Outdoor])
		}
		r.flush(at, row)
		c.bury(clock, day, at, u, outdoors, rain, r.south())
	}
	if c.garden != nil {
		for b := range c.garden.Beds {
			in := c.beds[b].hour(outdoors, rain, light, &at.Shelters[1+b])
			u.BedIn[b].Reference, u.BedIn[b].Rain = in.evaporation, in.rain
			u.BedIn[b].Given = u.Given[b] * quantity.Litres(share[people.Outdoor])
			c.garden.Beds[b].Plot.Step(&at.Beds[b], &u.BedIn[b], &u.BedOut[b])
		}
	}
}

// had gives the share of each kind of water asked of the tanks that came; all of it where the file describes no water works.
func (r *Run) had(row *Row) (share [people.Kinds]float64) {
	if r.water == nil || row.Taps.Whole {
		return [people.Kinds]float64{1, 1, 1, 1}
	}
	return served(&row.Draw, &row.Taps.Served)
}

// drain parts the waste of the taps: to the planter, or with the toilet's.
func (c *chain) drain(day, clock int, s *ChainState, row *Row, share *[people.Kinds]float64) {
	u := &row.Chain
	in := &u.GreyIn
	in.Used = [reuse.Sources]quantity.Litres{}
	for k := range people.Kinds {
		if row.Asks.Litres[k] == 0 {
			continue
		}
		for source := range reuse.Sources {
			in.Used[source] += row.Asks.Drained[k][source] * quantity.Litres(share[k])
		}
	}
	in.Salt, in.Ill, in.Harsh = c.parts.Rain, c.days[day].ill, c.days[day].harsh
	in.Cleaned = s.TrapDue && clock == trapClock && row.Wants.Persons > 0
	c.parts.Grey.Step(&s.Grey, in, &u.Grey)
	s.TrapDue = u.Grey.TrapDue
}

// plant lets the planter live.
func (c *chain) plant(s *ChainState, u *ChainRow, at bedHour, poured float64) {
	p := c.parts.Planter
	in := &u.PlanterIn
	in.Grey, in.Rain, in.Evaporation, in.Crop = u.Grey.Fed, at.rain, at.evaporation, s.Crop
	in.Poured = reuse.Water{}
	if u.Rinse > 0 {
		in.Poured = c.tapWater(u.Rinse * quantity.Litres(poured))
	}
	salted := s.Planter.Salted
	u.Rain = at.rain.On(p.Bed.Area())
	p.Bed.Step(&s.Planter, in, &u.Planter)
	if p.Plot != nil { // the yield of salty soil has a law of its own
		s.Grown.Drank(u.Planter.Wanted*quantity.Litres(salted), u.Planter.Evaporated)
	}
}

// tapWater gives litres from the taps with the salt they carry.
func (c *chain) tapWater(litres quantity.Litres) reuse.Water {
	return reuse.Water{Litres: litres, Load: reuse.Load{Salt: float64(litres) * c.parts.Rain}}
}

// flush lets the cisterns have water from the well, or from the taps, and sends it down with what the bowl held.
func (r *Run) flush(s *ChainState, row *Row) {
	u, p := &row.Chain, r.chain.parts
	had := row.Draw[people.Flushing]
	if r.water != nil {
		had = row.Taps.Served[people.Flushing]
	}
	u.Topped = r.chain.tapWater(had)
	down, left := u.Topped, u.Planter.Drained
	if p.Well != nil {
		u.WellIn = reuse.WellIn{Drained: u.Planter.Drained, Topped: u.Topped, Wanted: u.Flush, Power: row.Power.ServiceShare}
		p.Well.Step(&s.Well, &u.WellIn, &u.Well)
		down, left = u.Well.Flushed, u.Well.Overflowed
		u.Flushed = down.Litres
	} else {
		u.Flush, u.Flushed = row.Asks.Litres[people.Flushing], had
	}
	s.Bowl = s.Bowl.Plus(p.Toilet.Times(row.Wants.Persons / 24))
	sewer := u.Grey.Sewer()
	u.Sewage = waste.TankIn{Inflow: sewer.Litres + left.Litres + down.Litres, Load: waste.Load(sewer.Load).Plus(waste.Load(left.Load)).Plus(waste.Load(down.Load))}
	if u.Flushed > 0 {
		u.Sewage.Load = u.Sewage.Load.Plus(s.Bowl)
		s.Bowl = waste.Load{}
	}
}

// bury leads sewage through tank and trench.
func (c *chain) bury(clock, day int, s *ChainState, u *ChainRow, outdoors, rain quantity.Millimetres, south bool) {
	p := c.parts
	if p.Septic == nil {
		return
	}
	p.Septic.Step(&s.Septic, &u.Sewage, &u.Septic)
	if p.Trench == nil {
		return
	}
	if clock == 0 {
		p.Trench.Day(&s.Trench, &waste.TrenchDayIn{Day: c.days[day].ofYear, South: south, Age: p.Age + float64(day)/daysOfAYear})
	}
	u.TrenchIn = waste.TrenchIn{Hours: 1, Inflow: u.Septic.Outflow + s.Carry.Inflow, Load: u.Septic.Load.Plus(s.Carry.Load), Rain: rain, Reference: max(0, outdoors)}
	s.Carry = waste.TankIn{}
	p.Trench.Step(&s.Trench, &u.TrenchIn, &u.Trench)
}

// daysOfAYear is the mean of the calendar.
const daysOfAYear = 365.2425
