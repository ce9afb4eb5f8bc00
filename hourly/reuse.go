package hourly

import (
	"suffice/people"
	"suffice/power"
	"suffice/quantity"
	"suffice/reuse"
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
	if c.waters[clock] || c.sprinkles {
		c.wantBeds(day, clock, s, row, r.water == nil || c.garden == nil || r.water.UsableShare(&s.Water) >= c.garden.Above)
		row.Draw[people.Outdoor] += u.Beds + u.Animals
	}
}

// use leads what the taps gave through drains, planter and well, and what leaves them to tank and trench.
func (r *Run) use(day, clock int, now *ahead, usual *custom, ask *asking, s *State, row *Row) {
	c, u, at := r.chain, &row.Chain, &s.Chain
	at.Persons += usual.persons
	poured := 1.0 // share of the water for beds that came
	if whole := r.water == nil || row.Taps.Whole; whole {
		u.GreyIn.Used = ask.used
	} else {
		share := served(&row.Draw, &row.Taps.Served)
		u.GreyIn.Used, poured = drained(row.Asks, &share), share[people.Outdoor]
	}
	outdoors, rain, light := now.reference, now.rain, now.light
	if c.parts != nil {
		c.drain(day, clock, at, row)
		if c.parts.Planter != nil {
			c.plant(at, u, c.planter.hour(outdoors, rain, light, &at.Shelters[0]), poured)
		}
		r.flush(usual.persons, at, row)
		r.bury(clock, day, at, u, outdoors, rain)
	}
	if c.garden != nil {
		for b := range c.garden.Beds {
			in := c.beds[b].hour(outdoors, rain, light, &at.Shelters[1+b])
			u.BedIn[b].Reference, u.BedIn[b].Rain = in.evaporation, in.rain
			u.BedIn[b].Given = u.Given[b] * quantity.Litres(poured)
			c.garden.Beds[b].Plot.Step(&at.Beds[b], &u.BedIn[b], &u.BedOut[b])
		}
	}
}

// drained gives what goes down each drain of wants of which so much of each kind came.
func drained(wants *people.Wants, share *[people.Kinds]float64) (used [reuse.Sources]quantity.Litres) {
	for k := range people.Kinds {
		if wants.Litres[k] == 0 {
			continue
		}
		for source := range reuse.Sources {
			used[source] += wants.Drained[k][source] * quantity.Litres(share[k])
		}
	}
	return used
}

// drain parts the waste of the taps: to the planter, or with the toilet's.
func (c *chain) drain(day, clock int, s *ChainState, row *Row) {
	u := &row.Chain
	in := &u.GreyIn
	in.Salt, in.Ill, in.Harsh = c.parts.Rain, c.days[day].ill, c.days[day].harsh
	in.Cleaned = s.TrapDue && clock == trapClock && row.Wants.Persons > 0
	c.parts.Grey.Step(&s.Grey, in, &u.Grey)
	s.TrapDue = u.Grey.TrapDue
}

// plant lets the planter live.
func (c *chain) plant(s *ChainState, u *ChainRow, at bedHour, poured float64) {
	p := c.parts.Planter
	in := &u.PlanterIn
	in.Grey.Set(&u.Grey.Fed)
	in.Rain, in.Evaporation = at.rain, at.evaporation
	in.Crop.Coefficient, in.Crop.Roots, in.Crop.Depletion = s.Crop.Coefficient, s.Crop.Roots, s.Crop.Depletion
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
//
// Water and loads go on number by number: a struct copied whole waits for its parts, written singly just before.
func (r *Run) flush(persons float64, s *ChainState, row *Row) {
	u, p := &row.Chain, r.chain.parts
	had := row.Draw[people.Flushing]
	if r.water != nil {
		had = row.Taps.Served[people.Flushing]
	}
	u.Topped.Litres, u.Topped.Salt = had, float64(had)*p.Rain
	down, left := &u.Topped, &u.Planter.Drained
	if p.Well != nil {
		in := &u.WellIn
		in.Drained.Set(&u.Planter.Drained)
		in.Topped.Set(&u.Topped)
		in.Wanted, in.Power = u.Flush, row.Power.ServiceShare
		p.Well.Step(&s.Well, in, &u.Well)
		down, left = &u.Well.Flushed, &u.Well.Overflowed
		u.Flushed = down.Litres
	} else {
		u.Flush, u.Flushed = row.Asks.Litres[people.Flushing], had
	}
	s.Bowl.Add(p.Toilet.Salt*persons, p.Toilet.BOD*persons, p.Toilet.Nitrogen*persons)
	sewage, sewer := &u.Sewage, u.Grey.Sewer()
	sewage.Inflow = sewer.Litres + left.Litres + down.Litres
	sewage.Load.Salt = sewer.Salt + left.Salt + down.Salt
	sewage.Load.BOD = sewer.BOD + left.BOD + down.BOD
	sewage.Load.Nitrogen = sewer.Nitrogen + left.Nitrogen + down.Nitrogen
	if u.Flushed > 0 {
		sewage.Load.Add(s.Bowl.Salt, s.Bowl.BOD, s.Bowl.Nitrogen)
		s.Bowl.Salt, s.Bowl.BOD, s.Bowl.Nitrogen = 0, 0, 0
	}
}

// bury leads sewage through tank and trench.
func (r *Run) bury(clock, day int, s *ChainState, u *ChainRow, outdoors, rain quantity.Millimetres) {
	p := r.chain.parts
	if p.Septic == nil {
		return
	}
	p.Septic.Step(&s.Septic, &u.Sewage, &u.Septic)
	if p.Trench == nil {
		return
	}
	if clock == 0 {
		begins := r.trenchDay(day)
		p.Trench.Day(&s.Trench, &begins)
	}
	in := &u.TrenchIn
	in.Hours, in.Rain, in.Reference = 1, rain, max(0, outdoors)
	in.Inflow = u.Septic.Outflow + s.Carry.Inflow
	in.Load.Salt, in.Load.BOD, in.Load.Nitrogen = u.Septic.Load.Salt, u.Septic.Load.BOD, u.Septic.Load.Nitrogen
	in.Load.Add(s.Carry.Load.Salt, s.Carry.Load.BOD, s.Carry.Load.Nitrogen)
	s.Carry.Inflow = 0
	s.Carry.Load.Salt, s.Carry.Load.BOD, s.Carry.Load.Nitrogen = 0, 0, 0
	p.Trench.Step(&s.Trench, in, &u.Trench)
}

// daysOfAYear is the mean of the calendar.
const daysOfAYear = 365.2425
