package site

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"suffice/quantity"
)

// MostHorizon is how many points a horizon may have.
const MostHorizon = 36

// A HorizonPoint is how high the skyline stands in one direction.
type HorizonPoint struct {
	Azimuth quantity.Degrees // from north, east positive, 0 to 360
	Height  quantity.Degrees // above the level, 0 to 90
}

// A Horizon is the skyline round a place: hills, trees, neighbours. Between its points
// the height runs in a straight line of azimuth, round the circle. The zero Horizon is
// flat. It is a plain value: a copy is another horizon.
type Horizon struct {
	points [MostHorizon]HorizonPoint // by rising azimuth
	count  int
}

// NewHorizon makes a horizon from points in any order. One point is a skyline of the
// same height all round. The error joins every fault.
func NewHorizon(points ...HorizonPoint) (Horizon, error) {
	var h Horizon
	if len(points) > MostHorizon {
		return h, fmt.Errorf("horizon has %d points: the most is %d, take every second one", len(points), MostHorizon)
	}
	var faults []error
	for i, p := range points {
		faults = append(faults,
			outside(fmt.Sprintf("horizon point %d: azimuth", i+1), float64(p.Azimuth), 0, 360, "deg", "count from north by east"),
			outside(fmt.Sprintf("horizon point %d: height", i+1), float64(p.Height), 0, 90, "deg", "count from the level upwards"))
		if p.Azimuth == 360 {
			p.Azimuth = 0
		}
		h.points[i] = p
	}
	h.count = len(points)
	slices.SortFunc(h.points[:h.count], func(a, b HorizonPoint) int {
		return int(math.Copysign(1, float64(a.Azimuth-b.Azimuth)))
	})
	for i := 1; i < h.count; i++ {
		if h.points[i].Azimuth == h.points[i-1].Azimuth {
			faults = append(faults, fmt.Errorf("horizon has azimuth %g deg twice: keep one height for it", float64(h.points[i].Azimuth)))
		}
	}
	return h, errors.Join(faults...)
}

// Points gives the points by rising azimuth.
func (h *Horizon) Points() []HorizonPoint { return slices.Clone(h.points[:h.count]) }

// Flat reports whether nothing stands above the level.
func (h *Horizon) Flat() bool {
	return !slices.ContainsFunc(h.points[:h.count], func(p HorizonPoint) bool { return p.Height > 0 })
}

// Height gives how high the skyline stands in a direction, for any azimuth.
func (h *Horizon) Height(azimuth quantity.Degrees) quantity.Degrees {
	if h.count == 0 {
		return 0
	}
	a := quantity.Degrees(math.Mod(math.Mod(float64(azimuth), 360)+360, 360))
	after := 0
	for after < h.count && h.points[after].Azimuth <= a {
		after++
	}
	left, right := h.points[(after+h.count-1)%h.count], h.points[after%h.count]
	if after == 0 {
		left.Azimuth -= 360
	}
	if after == h.count {
		right.Azimuth += 360
	}
	return left.Height + (right.Height-left.Height)*(a-left.Azimuth)/(right.Azimuth-left.Azimuth)
}
