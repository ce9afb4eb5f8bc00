package synth

import (
	"fmt"
	"math/rand/v2"

	"suffice/site"
	"suffice/site/weather"
)

// A Generator makes years of weather for one place. It is not changed by use: any number
// of goroutines may share it, and the same seed gives the same years to each.
type Generator struct {
	Place site.Place
	Lost  bool     // nobody said where the place is: the hours need to be told
	First int      // the calendar year of the first made year, 2001 if 0
	Rain  *Rain    // nil: no rain is made
	Sky   *Sky     // nil: neither light nor temperature is made
	Notes []string // where each figure comes from, and what was assumed
}

// defaultFirst is the year of the calendar on which made years begin.
const defaultFirst = 2001

// Streams of random numbers: one for each purpose and year, so that a year's rain does
// not depend on how many numbers its sky took.
const (
	streamBetween uint64 = iota + 1 // how wet the months are
	streamRain
	streamSky
	streamStretch
	streamChange
	streamBlocks
)

// stream begins the numbers (PCG) of one purpose and year.
func stream(seed, purpose uint64, year int) *rand.Rand {
	return rand.New(rand.NewPCG(seed, purpose<<32|uint64(uint32(year))))
}

// Years makes so many calendar years of days, at least one.
func (g *Generator) Years(years int, seed uint64) *weather.Record {
	first := g.First
	if first == 0 {
		first = defaultFirst
	}
	years = max(1, years)
	start := weather.DayNumber(first, 1, 1)
	n := weather.DayNumber(first+years, 1, 1) - start
	r := &weather.Record{File: "made weather", Format: "made weather", Place: g.Place, Placed: !g.Lost, Step: weather.Daily,
		Time: weather.StandardTime, Start: start, Steps: n}
	r.Notes = append(r.Notes, fmt.Sprintf("made weather: %d years drawn by seed %d; no such year has been", years, seed))
	r.Notes = append(r.Notes, g.Notes...)
	days := make([]weather.Day, n)
	for i := range days {
		days[i] = weather.DayOf(start + i)
	}
	wet := make([]bool, n)
	if g.Rain != nil {
		rain := make([]float64, n)
		g.Rain.fill(rain, wet, days, seed)
		r.Series = append(r.Series, series(weather.Rain, rain))
	}
	if g.Sky != nil {
		r.Series = append(r.Series, g.Sky.make(g.Place, days, wet, seed)...)
	}
	return r
}

// Hours makes so many years of days and lays them into hours as any daily record is.
func (g *Generator) Hours(years int, seed uint64) (*weather.Hours, weather.Report, error) {
	return weather.Complete(g.Years(years, seed), weather.Options{})
}

// series names a made column.
func series(c weather.Column, values []float64) weather.Series {
	return weather.Series{Column: c, Source: "made", Unit: c.Unit(weather.Daily), Values: values}
}
