package weather

import (
	"fmt"
	"math"
	"strings"

	"suffice/site/sun"
)

const (
	// clockOff is how far the middle of the light may be from the computed noon, h, before
	// the record's clock is doubted. Cloudy afternoons move the middle by up to half an hour;
	// a clock that is wrong is wrong by a whole one.
	clockOff = 0.75
	// dimmest is the mean light, W/m2, below which a month says nothing about noon.
	dimmest = 20
)

// checkClock compares the middle of each month's light with the computed noon: it finds
// hours named by their end, a wrong zone, and summer time.
func (r *Record) checkClock(s *Series, track *sun.Track) {
	type sum struct{ east, up, light, hours float64 }
	var all sum
	months := make(map[[2]int]*sum)
	var order [][2]int
	for i, g := range s.Values {
		if math.IsNaN(g) {
			continue
		}
		k := r.StartHour + i
		sinW, cosW := math.Sincos((track.SolarTime[k] - 12) * math.Pi / 12)
		d := DayOf(r.Start + k/24)
		key := [2]int{int(d.Year), int(d.Month)}
		m := months[key]
		if m == nil {
			m = new(sum)
			months[key], order = m, append(order, key)
		}
		for _, x := range []*sum{&all, m} {
			x.east, x.up, x.light, x.hours = x.east+g*sinW, x.up+g*cosW, x.light+g, x.hours+1
		}
	}
	off := func(x *sum) float64 { return math.Atan2(x.east, x.up) * 12 / math.Pi }
	if all.hours == 0 || all.light/all.hours < dimmest/4 {
		return
	}
	var wrong []string
	bright := 0
	for _, key := range order {
		m := months[key]
		if m.light/m.hours < dimmest {
			continue
		}
		bright++
		if o := off(m); math.Abs(o) > clockOff {
			wrong = append(wrong, fmt.Sprintf("%04d-%02d (%+.1f h)", key[0], key[1], o))
		}
	}
	if len(wrong) == 0 {
		return
	}
	r.warn("the light lies %.1f h %s the sun as computed for this place and clock, in %d of %d months by most of an hour or more: %s: "+
		"is the zone right, was summer time kept, do the hours name their beginning", math.Abs(off(&all)), lateEarly(off(&all)), len(wrong), bright, firstFew(wrong, 6))
}

func lateEarly(o float64) string {
	if o > 0 {
		return "after"
	}
	return "before"
}

// firstFew lists the first n of texts and says how many more there are.
func firstFew(texts []string, n int) string {
	if len(texts) <= n {
		return strings.Join(texts, ", ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(texts[:n], ", "), len(texts)-n)
}
