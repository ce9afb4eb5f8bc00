package power

import (
	"errors"
	"fmt"
	"math"
)

// A LifePoint is one row of a maker's cycle-life table.
type LifePoint struct {
	Depth  float64 // of discharge in each cycle, above 0 to 1
	Cycles float64 // that the battery lasts at this depth
}

// levels is how finely a Wear reads charge: 1/255. Swings of less than one level are not
// counted; at that depth a cycle wears less than a ten-thousandth of a full one by the tables here.
const levels = 255

// An Ager turns a history of charge into wear: rainflow cycles, Miner's sum over the
// cycle-life table, and the calendar. It is read-only.
type Ager struct {
	calendar float64             // years
	damage   [levels + 1]float64 // of one cycle, by its range in levels
}

// A Wear is what a battery has been through, in bounded memory: a plain value.
type Wear struct {
	hours   float64
	closed  float64 // Miner's sum of cycles that have closed
	swings  float64 // equivalent full cycles that have closed
	open    [levels + 2]uint8
	n       int16 // of open in use: turning points, the last one still moving; swings shrink along them
	rising  bool  // the last swing
	started bool
}

// NewAger reads a cycle-life table and a calendar life in years.
func NewAger(table []LifePoint, calendarYears float64) (*Ager, error) {
	if err := lifeFaults(table, calendarYears); err != nil {
		return nil, err
	}
	a := &Ager{calendar: calendarYears}
	for level := 1; level <= levels; level++ {
		a.damage[level] = 1 / CyclesAt(table, float64(level)/levels)
	}
	return a, nil
}

// Ager gives the ageing of the battery's own chemistry.
func (c Chemistry) Ager() (*Ager, error) { return NewAger(c.CycleLife, c.CalendarYears) }

func lifeFaults(table []LifePoint, calendarYears float64) error {
	var faults []error
	if len(table) < 2 {
		faults = append(faults, fmt.Errorf("cycle life: %d rows: a table has at least 2", len(table)))
	}
	for i, p := range table {
		if !(p.Depth > 0 && p.Depth <= 1 && p.Cycles > 0) {
			faults = append(faults, fmt.Errorf("cycle life: row %d: depth %g and %g cycles: depth is above 0 and at most 1, cycles are above 0", i+1, p.Depth, p.Cycles))
		}
		if i > 0 && !(p.Depth > table[i-1].Depth && p.Cycles < table[i-1].Cycles) {
			faults = append(faults, fmt.Errorf("cycle life: row %d: deeper cycles must stand below shallower ones and be fewer", i+1))
		}
	}
	if !(calendarYears > 0) {
		faults = append(faults, fmt.Errorf("calendar life is %g years: it is above 0", calendarYears))
	}
	return errors.Join(faults...)
}

// CyclesAt gives the cycles at a depth, in straight lines between the table's rows on
// logarithmic paper; the end pieces are drawn on beyond the table.
func CyclesAt(table []LifePoint, depth float64) float64 {
	i := 1
	for i < len(table)-1 && depth > table[i].Depth {
		i++
	}
	a, b := table[i-1], table[i]
	slope := math.Log(b.Cycles/a.Cycles) / math.Log(b.Depth/a.Depth)
	return a.Cycles * math.Pow(depth/a.Depth, slope)
}

// Miner gives the share of life used by cycles whose ranges are depths [miner-1945]: the sum
// of cycles done over cycles that the battery lasts at their depth.
func Miner(table []LifePoint, cycles []Cycle) float64 {
	sum := 0.0
	for _, c := range cycles {
		if c.Range > 0 {
			sum += c.Count / CyclesAt(table, c.Range)
		}
	}
	return sum
}

// Add reads the charge (0 to 1) at the end of one more hour.
func (a *Ager) Add(w *Wear, charge float64) {
	w.hours++
	level := uint8(math.Round(min(1, max(0, charge)) * levels))
	if !w.started {
		w.started = true
		w.open[0], w.n = level, 1
		return
	}
	last := w.open[w.n-1]
	if level == last {
		return
	}
	if rising := level > last; w.n > 1 && rising == w.rising {
		w.open[w.n-1] = level // further the same way
	} else {
		w.rising = rising
		w.open[w.n] = level
		w.n++
	}
	a.close(w)
}

// close counts the swings that the newest turning point has closed, as Rainflow does. What
// stays open are swings that shrink along the way: at most one for each level.
func (a *Ager) close(w *Wear) {
	for w.n >= 3 {
		x, y := gap(w.open[w.n-2], w.open[w.n-1]), gap(w.open[w.n-3], w.open[w.n-2])
		if x < y {
			return
		}
		count := 1.0
		if w.n == 3 {
			count = 0.5
			w.open[0], w.open[1] = w.open[1], w.open[2]
			w.n = 2
		} else {
			w.open[w.n-3] = w.open[w.n-1]
			w.n -= 2
		}
		w.closed += count * a.damage[y]
		w.swings += count * float64(y) / levels
	}
}

func gap(a, b uint8) uint8 {
	if a > b {
		return a - b
	}
	return b - a
}

// A Life is how long a battery lasts at the pace of a Wear.
type Life struct {
	Damage     float64 // Miner's sum so far: 1 is worn out
	FullCycles float64 // equivalent full cycles so far
	CycleYears float64 // years until worn out by cycles at this pace; infinite without cycles
	Years      float64 // years until replacement: by cycles or by the calendar, whichever comes first
	ByCycles   bool    // the cycles come first
}

// Life gives the wear so far, open swings counted half, and the years it lets the battery last.
func (a *Ager) Life(w *Wear, hoursPerYear float64) Life {
	l := Life{Damage: w.closed, FullCycles: w.swings}
	for i := int16(1); i < w.n; i++ {
		y := gap(w.open[i-1], w.open[i])
		l.Damage += 0.5 * a.damage[y]
		l.FullCycles += 0.5 * float64(y) / levels
	}
	l.CycleYears = w.hours / hoursPerYear / l.Damage
	l.Years, l.ByCycles = a.calendar, false
	if l.CycleYears < a.calendar {
		l.Years, l.ByCycles = l.CycleYears, true
	}
	return l
}
