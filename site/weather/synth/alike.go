package synth

import (
	"math"
	"math/rand/v2"
	"slices"

	"suffice/site/weather"
)

// seasonWindow is how many days from a date a sky day may come: near enough that the sun
// is alike (its height at noon moves by at most 0.4 degrees a day), far enough for choice
// (rajagopalan-lall take 14 days).
const seasonWindow = 14

// near is how many of the most alike days one is drawn from, the k-th with a chance as 1/k
// (rajagopalan-lall).
const near = 5

// alike is what days are compared by.
type alike struct {
	day       weather.Day
	known     bool // whether the sky of the day is whole
	wet       int8 // 1 wet, 0 dry, -1 unknown
	before    int8 // the same of the day before
	mean, ran float64
	clear     float64 // share of the light outside the air
}

type candidate struct {
	day  int
	away float64
}

// pick gives the sky day for a day of the gauge.
func (s *stretcher) pick(i int, draw *rand.Rand) (from int, own bool) {
	t := &s.targets[i]
	u := draw.Float64() // drawn for every day, so that one day's sky never moves the next one's numbers
	if k, ok := s.own[t.day.Number()]; ok {
		s.told.Own++
		return k, true
	}
	for window := seasonWindow; ; window *= 2 {
		s.gatherNear(t, min(window, halfYear), true)
		if len(s.list) >= near || window > halfYear {
			break
		}
		if window == seasonWindow {
			s.told.Widened++
		}
	}
	if len(s.list) == 0 { // the sky has no wet day at all, or no dry one
		s.gatherNear(t, halfYear, false)
		s.told.Unlike++
	}
	sum := 0.0
	for k := range s.list {
		sum += 1 / float64(k+1)
	}
	for k, c := range s.list {
		if u -= 1 / float64(k+1) / sum; u < 0 {
			return c.day, false
		}
	}
	return s.list[len(s.list)-1].day, false
}

// halfYear is a window that holds every day of the year once.
const halfYear = 182

// gatherNear lists the most alike days within a window of the season, best first.
func (s *stretcher) gatherNear(t *alike, window int, sameWet bool) {
	s.list = s.list[:0]
	for off := -window; off <= window; off++ {
		day := (int(t.day.DayOfYear)-1+off+2*366)%366 + 1
		for _, k := range s.bySeason[day] {
			c := &s.days[k]
			if sameWet && c.wet >= 0 && t.wet >= 0 && c.wet != t.wet {
				continue
			}
			s.insert(candidate{k, s.distance(t, c) + s.unlikeYesterday(k)})
		}
	}
}

// insert keeps the list at the nearest few, in order.
func (s *stretcher) insert(c candidate) {
	k := len(s.list)
	for k > 0 && s.list[k-1].away > c.away {
		k--
	}
	if k >= near {
		return
	}
	s.list = slices.Insert(s.list, k, c)
	s.list = s.list[:min(near, len(s.list))]
}

// distance of two days in deviations: of temperature, of its range, and one more where the
// day before was wet beside one and dry beside the other.
func (s *stretcher) distance(t, c *alike) float64 {
	away := 0.0
	if t.before >= 0 && c.before >= 0 && t.before != c.before {
		away++
	}
	if s.told.Warm && !math.IsNaN(t.ran) {
		a, b := (t.mean-c.mean)/s.meanScale, (t.ran-c.ran)/s.ranScale
		away += a*a + b*b
	}
	return away
}

// unlikeYesterday is how far the sky before a sky day is from the sky given to the day
// before, in deviations: so dull days follow each other as they do.
func (s *stretcher) unlikeYesterday(k int) float64 {
	if k == 0 || math.IsNaN(s.yesterday) || math.IsNaN(s.days[k-1].clear) {
		return 1 // about what a day gets that is neither like nor unlike
	}
	a := (s.days[k-1].clear - s.yesterday) / s.clearness
	return a * a
}

// withinSeason gives a deviation of temperatures that the year's course does not count
// to: of the differences of days that follow each other, over root two.
func withinSeason(v []float64) float64 {
	sum := 0.0
	for i := 1; i < len(v); i++ {
		sum += (v[i] - v[i-1]) * (v[i] - v[i-1])
	}
	return math.Sqrt(sum / float64(len(v)-1) / 2)
}
