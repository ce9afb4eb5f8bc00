package rain

import (
	"cmp"
	"math"
	"slices"
)

// A Spell is a run of days.
type Spell struct{ First, Days int } // First counts days of the record from 0

// DrySpells gives the runs of days on which less than a depth, mm, fell. A missing day
// (not a number) is neither wet nor dry and ends a spell.
func DrySpells(daily []float64, below float64) []Spell {
	var spells []Spell
	run := 0
	for i, mm := range daily {
		if mm < below {
			run++
			continue
		}
		if run > 0 {
			spells = append(spells, Spell{i - run, run})
		}
		run = 0
	}
	if run > 0 {
		spells = append(spells, Spell{len(daily) - run, run})
	}
	return spells
}

// Longest gives the longest spell, the first of them where several are as long; none gives the zero Spell.
func Longest(spells []Spell) Spell {
	var longest Spell
	for _, s := range spells {
		if s.Days > longest.Days {
			longest = s
		}
	}
	return longest
}

// ReachedOnceIn gives the length, days, that spells of a record of so many years reached or
// passed once in a number of years on average: the longest, second longest and so on, the
// rank being the years of the record over that number. It is not a number where the record
// is shorter than that, since nothing was seen then; no curve is laid through the tail.
func ReachedOnceIn(spells []Spell, record, every float64) float64 {
	rank := int(record / every)
	if rank < 1 {
		return math.NaN()
	}
	if rank > len(spells) {
		return 0
	}
	sorted := slices.SortedFunc(slices.Values(spells), func(a, b Spell) int { return cmp.Compare(b.Days, a.Days) })
	return float64(sorted[rank-1].Days)
}

// A Storm is a wet spell of an hourly record.
type Storm struct {
	First, Hours int     // from its first wet hour to its last
	Depth        float64 // mm
	Peak         float64 // mm in its wettest hour
}

// Storms parts the hours of a record, mm each, into storms: dry hours fewer than the gap belong
// to the storm around them. Gaps in use run from a quarter of an hour to a day, and the number
// of storms with them [dunkerley-events, abstract]; 6 h is common practice, no source.
func Storms(hourly []float64, gap int) []Storm {
	var storms []Storm
	dry := gap
	for i, mm := range hourly {
		if !(mm > 0) {
			dry++
			continue
		}
		if dry >= gap {
			storms = append(storms, Storm{First: i})
		}
		dry = 0
		s := &storms[len(storms)-1]
		s.Hours = i - s.First + 1
		s.Depth += mm
		s.Peak = max(s.Peak, mm)
	}
	return storms
}
