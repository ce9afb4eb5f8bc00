package hourly

import (
	"math"

	"suffice/crop"
	"suffice/house"
	"suffice/quantity"
	"suffice/site/evap"
	"suffice/warmth"
)

// A shelter is where a bed stands, and the evaporation there where it does not hang on a lived room.
type shelter struct {
	house.Stand
	still evap.Shelter
}

// A bedHour is what the sky brings to a bed in an hour.
type bedHour struct {
	evaporation quantity.Millimetres // of reference grass
	rain        quantity.Millimetres
}

// shelter gives a bed's place with the evaporation of the air that the file assumes inside.
func (r *Run) shelter(at house.Stand) shelter {
	if r.in == nil {
		at.Room = -1
	}
	return shelter{at, evap.Under(r.House.Place.Altitude, r.House.Indoors, at.Damp)}
}

// hour gives the weather at the bed: the sky's, or light through the glass and the air of the room.
func (b *shelter) hour(outdoors, rain quantity.Millimetres, light float64, room *evap.Shelter) bedHour {
	switch {
	case !b.Indoors:
		return bedHour{outdoors, rain}
	case b.Room >= 0:
		return bedHour{room.Gives(b.Light * light), 0}
	}
	return bedHour{b.still.Gives(b.Light * light), 0}
}

// day gives the air at the plants and the warmth of their soil.
func (b *shelter) day(d *chainDay, inside crop.Swing) (air crop.Swing, soil float64) {
	if !b.Indoors {
		return d.air, d.soil
	}
	return inside, middle(inside)
}

// passes gives the share of the light outdoors that reaches the plants.
func (b *shelter) passes() float64 {
	if !b.Indoors {
		return 1
	}
	return b.Light
}

func middle(s crop.Swing) float64 { return (s.Warmest + s.Coolest) / 2 }

// stands goes through the planter and the garden's beds that stand indoors.
func (c *chain) stands(see func(k int, b *shelter)) {
	if c.planter.Indoors {
		see(0, &c.planter)
	}
	for b := range c.beds {
		if c.beds[b].Indoors {
			see(1+b, &c.beds[b])
		}
	}
}

// airAt gives the air at a bed that stands indoors.
func (r *Run) airAt(b *shelter, s *State) float64 {
	if b.Room >= 0 {
		return float64(s.Rooms.Air[b.Room])
	}
	return float64(r.House.Indoors)
}

// newDay begins a day at the beds: with the air as it is now, and the evaporation that the air of the day before makes
// likely in computed rooms.
func (r *Run) newDay(s *State) {
	at := &s.Chain
	at.Persons = 0
	r.chain.stands(func(k int, b *shelter) {
		now := r.airAt(b, s)
		if b.Room >= 0 {
			mean := quantity.Celsius(middle(at.Swing[k]))
			if at.Swing[k] == (crop.Swing{}) {
				mean = quantity.Celsius(now)
			}
			damp := warmth.HumidityOf(s.Rooms.Vapour[b.Room], s.Rooms.Air[b.Room])
			at.Shelters[k] = evap.Under(r.House.Place.Altitude, mean, math.Min(100, damp))
		}
		at.Swing[k] = crop.Swing{Warmest: now, Coolest: now}
	})
}

// feel notes how warm the rooms of beds became in this hour.
func (r *Run) feel(s *State) {
	r.chain.stands(func(k int, b *shelter) {
		now := r.airAt(b, s)
		swing := &s.Chain.Swing[k]
		swing.Warmest, swing.Coolest = max(swing.Warmest, now), min(swing.Coolest, now)
	})
}

// breathe gives the rooms the water that beds in them gave off, and takes its heat.
func (r *Run) breathe(row *Row) {
	wet := func(k int, litres quantity.Litres) {
		in := &row.RoomsIn.Rooms[k]
		in.Vapour += float64(litres)
		in.Air -= quantity.Watts(latent * float64(litres))
	}
	r.chain.stands(func(k int, b *shelter) {
		switch {
		case b.Room < 0:
		case k == 0:
			wet(b.Room, row.Chain.Planter.Evaporated)
		default:
			wet(b.Room, row.Chain.BedOut[k-1].Evaporated)
		}
	})
}

// latent is what the evaporation of a kilogram takes from a room in an hour, W h: 2.45 MJ [fao56 p. 31].
const latent = 2.45e6 / 3600
