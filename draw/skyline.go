package draw

import (
	"suffice/house"
	"suffice/quantity"
)

// Skyline shows what hides the sun around a house, all the way round from north.
func Skyline(h *house.House, say Sentences) Picture {
	d := Profile{Distance: say.Say("skyline.axis"), Larger: say.Say("terrain.larger"),
		Headers: [3]string{say.Say("skyline.head.what"), say.Say("skyline.head.azimuth"), say.Say("skyline.head.height")}}
	for i, quarter := range [5]string{"north", "east", "south", "west", "north"} {
		d.Along = append(d.Along, Spot{Along: 90 * float64(i), Says: say.Say("quarter." + quarter)})
	}
	edge := float64(h.Horizon.Height(0))
	d.Ground = append(d.Ground, Spot{0, edge, say.Say("skyline.edge")})
	highest := Spot{}
	for _, point := range h.Horizon.Points() {
		s := Spot{float64(point.Azimuth), float64(point.Height), say.Say("skyline.point")}
		if s.Height > highest.Height {
			highest = s
		}
		if s.Along > 0 && s.Along < 360 {
			d.Ground = append(d.Ground, s)
		}
	}
	d.Ground = append(d.Ground, Spot{360, float64(h.Horizon.Height(quantity.Degrees(360))), say.Say("skyline.edge")})
	summary := say.Say("skyline.flat")
	if !h.Horizon.Flat() {
		summary = say.Say("skyline.summary", "azimuth", number(highest.Along, 0), "height", number(highest.Height, 0))
	}
	d.About = About{"skyline", say.Say("skyline.title"), say.Say("skyline.unit"), summary}
	return Terrain(d)
}
