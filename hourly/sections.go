package hourly

import (
	"fmt"

	"suffice/quantity"
	"suffice/soil"
	"suffice/warmth"
	"suffice/warmth/ground"
)

// overSections gives the rooms' sections the temperature of the ground's face, which lives through the record under what grows on it. The rooms must be the
// run's own. Its soil is loam whatever lies deeper: what matters there is how it dries.
func (r *Run) overSections(rooms []warmth.Room) error {
	faces := map[ground.Cover][]float64{}
	for k := range rooms {
		if rooms[k].Dug == nil {
			continue
		}
		cover := r.House.Rooms.Covers[k]
		if faces[cover] == nil {
			face, err := r.GroundFace(cover)
			if err != nil {
				return fmt.Errorf("the section of room %q: %w", rooms[k].Name, err)
			}
			faces[cover] = face
		}
		own := *rooms[k].Dug
		own.Face = faces[cover]
		rooms[k].Dug = &own
	}
	return nil
}

// GroundFace gives the soil's temperature just under its cover for every hour, degC, the ground below having lived a year of the record before.
func (r *Run) GroundFace(cover ground.Cover) ([]float64, error) {
	h := r.Weather
	if err := ground.Needs(h); err != nil {
		return nil, err
	}
	column, err := ground.Prepare(h.Place, cover, soil.Loam(), soil.LoamWater())
	if err != nil {
		return nil, err
	}
	face := make([]float64, r.Hours())
	s := column.Start(quantity.Celsius(mean(h.Temperature)))
	for _, days := range [][2]int{{0, min(firstYear/24, len(h.Days))}, {0, len(h.Days)}} {
		for day := days[0]; day < days[1]; day++ {
			clear := ground.Clear(h, day)
			for hour := 24 * day; hour < 24*day+24; hour++ {
				face[hour] = float64(column.Step(&s, ground.Over(h, hour, clear)).Top)
			}
		}
	}
	return face, nil
}
