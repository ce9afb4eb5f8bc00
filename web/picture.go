package web

import (
	"suffice/draw"
	"suffice/draw/section"
	"suffice/hourly"
	"suffice/quantity"
	"suffice/report"
)

// A picture is a drawing as a page shows it, laid out twice: for a desk and for a phone.
type picture struct {
	Title, Summary string
	Broad, Narrow  string // SVG, made by this program
	Heads          []string
	Rows           [][]string
	Words          int // columns of the table that hold words, from the left
}

// Widths that pictures are laid out for, px.
const (
	broad  = 880
	narrow = 340
)

// pictured draws a picture of the proof; words is how many columns of its table hold words.
func (v *view) pictured(of func(*report.Proof, draw.Sentences) draw.Picture, words int) picture {
	return twice(of(v.Proof, v.draws), words)
}

// section is the house cut through, with its stores and flows on a day of the record.
func (v *view) section(day int) picture {
	p := section.Of(v.File, v.sectionDay(day), v.sections)
	return twice(p, len(p.Table.Headers))
}

// sectionDay gives what section.DayOf gives, from what was noted down while the record was lived.
func (v *view) sectionDay(day int) *section.Day {
	t := &v.Proof.Stated.Days[day]
	d := &section.Day{
		Says: v.daySaid(day), Tanks: v.Seen.Tanks[day], Served: v.Seen.Served[day], Charge: t.ChargeLow,
		Rain: quantity.Litres(t.Caught), Road: quantity.Litres(t.Delivered), Overflow: quantity.Litres(t.Spilled),
	}
	return d
}

// twice lays a picture out for a desk and for a phone.
func twice(p draw.Picture, words int) picture {
	out := picture{Title: p.Title, Summary: p.Summary, Heads: p.Table.Headers, Rows: p.Table.Rows, Words: words}
	out.Broad = p.SVG(broad)
	p.Name += "-narrow" // no id may stand twice
	out.Narrow = p.SVG(narrow)
	return out
}

func tankEnd(t *hourly.Tally) float64   { return t.TankEnd }
func chargeLow(t *hourly.Tally) float64 { return t.ChargeLow }

// hardest gives, for an address, noon of the first day of the longest spell, or of the day on which
// the store stood lowest where no day was short.
func (v *view) hardest(b *hourly.Budget, level func(*hourly.Tally) float64) string {
	if b.Spell.Days > 0 {
		return v.dayTyped(b.Spell.First) + "T12"
	}
	days, lowest := v.Proof.Stated.Days, 0
	for d := range days {
		if level(&days[d]) < level(&days[lowest]) {
			lowest = d
		}
	}
	return v.dayTyped(lowest) + "T12"
}
