package warmth

import "suffice/quantity"

// Warms gives the heat through an hour that makes a room's air a kelvin warmer by its end, W/K, a share of it to the faces; vents, doors and machines
// apart. What people know who live with a room and lay on wood.
func (r *Rooms) Warms(room int, radiant float64) quantity.Watts {
	byFaces := r.lived.given[room*r.lived.inputs+r.rooms+room]
	return quantity.Watts(1 / ((1-radiant)*r.answers[room][room] + radiant*byFaces))
}

// Carries gives the heat that a cubic metre of the rooms' air holds for a kelvin, J/m3K.
func (r *Rooms) Carries() float64 { return r.carries }
