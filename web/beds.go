package web

import (
	"suffice/crop"
	"suffice/garden"
	"suffice/hourly"
	"suffice/house"
	"suffice/quantity"
)

// A bedSeen is what was noted down of a bed while the record was lived: sums over all years.
type bedSeen struct {
	Given, Rain, Evaporated, Drained [12]quantity.Litres       // by month
	Crops                            []cropSeen                // in the order of their first growing
	Missed                           [garden.MostPlantings]int // years in which a planting found the bed still taken
}

// A cropSeen is what a crop did in a bed, kg.
type cropSeen struct {
	Crop                                          *crop.Crop
	Picked                                        float64
	Flowers, Light, Water, Salt, Nitrogen, Frosts float64 // lost
	Sown, Failed                                  int
}

// heapSeen is what people, beds and animals sent to the heap, kg, and what ripened.
type heapSeen struct{ Kitchen, Beds, Manure, Ripe float64 }

// chain notes an hour of beds, heap and people.
func (n *seen) chain(i, month int, h *house.House, row *hourly.Row) {
	u := &row.Chain
	n.Persons += row.Wants.Persons
	if g := h.Garden; g != nil {
		for b := range g.Beds {
			s := &n.Beds[1+b]
			s.Given[month-1] += u.BedIn[b].Given
			s.Rain[month-1] += u.BedIn[b].Rain.On(g.Beds[b].Plot.Bed.Area)
			s.Evaporated[month-1] += u.BedOut[b].Evaporated
			s.Drained[month-1] += u.BedOut[b].Drained
		}
	}
	if d := h.Drains; d != nil && d.Planter != nil {
		s := &n.Beds[0]
		s.Given[month-1] += u.PlanterIn.Grey.Litres + u.PlanterIn.Poured.Litres
		s.Rain[month-1] += u.Rain
		s.Evaporated[month-1] += u.Planter.Evaporated
		s.Drained[month-1] += u.Planter.Drained.Litres + u.Planter.Overflowed.Litres
	}
	if u.Ended {
		n.bedsDay(h, u)
	}
	n.tellsChain(i, row)
}

// bedsDay notes the end of a day.
func (n *seen) bedsDay(h *house.House, u *hourly.ChainRow) {
	if d := h.Drains; d != nil && d.Planter != nil && d.Planter.Plot != nil {
		n.Beds[0].day(u.Day.GrowthCrop, &u.Day.Growth)
		n.Heap.Beds += u.Day.Growth.Residue + u.Day.Growth.Died
	}
	if h.Garden == nil {
		return
	}
	for b := range h.Garden.Beds {
		n.Beds[1+b].day(u.Day.BedCrops[b], &u.Day.Beds[b])
		n.Heap.Beds += u.Day.Beds[b].Residue + u.Day.Beds[b].Died
	}
	n.Heap.Kitchen += u.Day.Scraps.Kitchen
	n.Heap.Manure += u.Day.Stock.Manure
	n.Heap.Ripe += u.Day.Heap.Ripe
}

func (s *bedSeen) day(grown *crop.Crop, d *garden.BedDayOut) {
	if d.Missed > 0 {
		s.Missed[d.Missed-1]++
	}
	if grown == nil {
		return
	}
	c := s.of(grown)
	c.Picked += d.Picked
	c.Flowers += d.LostToFlowers
	c.Light += d.LostToLight
	c.Water += d.LostToWater
	c.Salt += d.LostToSalt
	c.Nitrogen += d.LostToNitrogen
	c.Frosts += d.Died
	switch d.Event {
	case garden.Frozen, garden.Rotted, garden.GivenUp:
		c.Failed++
		c.Sown++
	case garden.Finished:
		c.Sown++
	case garden.Nothing:
	}
}

func (s *bedSeen) of(grown *crop.Crop) *cropSeen {
	for i := range s.Crops {
		if s.Crops[i].Crop.Name == grown.Name {
			return &s.Crops[i]
		}
	}
	s.Crops = append(s.Crops, cropSeen{Crop: grown})
	return &s.Crops[len(s.Crops)-1]
}

// tellsChain keeps the hours that show best how planter and well work: plants drink while water comes, and much is flushed.
func (n *seen) tellsChain(i int, row *hourly.Row) {
	u := &row.Chain
	n.tells(tellsPlanter, i, float64(u.Planter.Evaporated)*float64(u.Grey.Fed.Litres+u.PlanterIn.Poured.Litres))
	n.tells(tellsWell, i, float64(u.Flushed)*float64(1+u.Topped.Litres))
}

// roomAir widens a day's swing of the air in a room by an hour.
func (n *seen) roomAir(day, room, rooms int, air float64) {
	for len(n.Air) < rooms {
		n.Air = append(n.Air, nil)
	}
	if len(n.Air[room]) <= day {
		n.Air[room] = append(n.Air[room], crop.Swing{Warmest: air, Coolest: air})
		return
	}
	s := &n.Air[room][day]
	s.Warmest, s.Coolest = max(s.Warmest, air), min(s.Coolest, air)
}

// meanPersons gives the people at home, mean of all days.
func (l *lived) meanPersons() float64 { return l.Seen.Persons / float64(l.Proof.Run.Hours()) }

// has says what of the way of used water the file describes.
func (l *lived) hasPlanter() bool { return l.hasDrains() && l.Proof.Run.House.Drains.Planter != nil }
func (l *lived) hasWell() bool    { return l.hasDrains() && l.Proof.Run.House.Drains.Well != nil }
func (l *lived) hasSeptic() bool  { return l.hasDrains() && l.Proof.Run.House.Drains.Septic != nil }
func (l *lived) hasTrench() bool  { return l.hasDrains() && l.Proof.Run.House.Drains.Trench != nil }
func (l *lived) hasBeds() bool    { return l.Proof.Run.House.Garden != nil }

// growsFood reports whether anything to eat is sown.
func (l *lived) growsFood() bool {
	return l.hasBeds() || l.hasPlanter() && l.Proof.Run.House.Drains.Planter.Plot != nil
}
