package glass

import "math"

// Views are the shares of what a vertical window faces, for even light: Sky + Ground + Hidden is
// 1. An open window sees half of each.
type Views struct {
	Sky    float64 // of all that falls on the window from an even sky and ground of one brightness, what comes from the sky
	Ground float64
	Hidden float64 // behind overhang and fins, which are taken as black
}

// Rings and spokes of the sum over directions. With them sky and ground are right to 0.0005 (held in
// the tests against closed form and against a sum over areas).
const (
	spokes = 96 // from one side over the top to the other
	rings  = 24
)

// Views gives the shares, averaged over the window. The half-space before the glass is laid flat on the
// wall (Nusselt's disk), where even light has one weight everywhere, and the sunlit share is summed over it: rings
// by equal areas, so the grazing ones are narrow, spokes by equal angles, both by their middles.
func (s *Shade) Views() Views {
	var v Views
	for i := range rings {
		radius := math.Sqrt((float64(i) + 0.5) / rings) // sin theta
		out := math.Sqrt(1 - radius*radius)
		for k := range spokes {
			angle := math.Pi * (float64(k) + 0.5) / spokes
			r := Ray{Right: radius * math.Cos(angle), Up: radius * math.Sin(angle), Out: out}
			v.Sky += s.Sunlit(r)
			v.Ground += s.Sunlit(Ray{r.Right, -r.Up, r.Out})
		}
	}
	v.Sky /= 2 * rings * spokes
	v.Ground /= 2 * rings * spokes
	v.Hidden = 1 - v.Sky - v.Ground
	return v
}
