package hourly

import (
	"fmt"
	"math"

	"suffice/gas"
	"suffice/hotwater"
	"suffice/house"
	"suffice/people"
	"suffice/power"
	"suffice/quantity"
	"suffice/site/weather"
	"suffice/warmth"
	"suffice/water"
)

// A Run is a house made ready for the hours of one record. It is read-only and may be
// shared by any number of goroutines, each with a State of its own.
type Run struct {
	House   *house.House
	Weather *weather.Hours
	Notes   []string // what was assumed, for the reader of a verdict
	Alarms  []string // what the weather shows to be wrong with the design

	diary   *people.Diary
	customs []*[24]custom // of each day
	sky     []ahead       // of each hour

	looks    looks
	ruled    bool                          // there is something to look at
	indoors  quantity.Celsius              // where rooms are not computed
	outdoors struct{ store, battery bool } // what stands there
	frozen   int                           // hours in which the water coming in would be ice

	water *water.Works
	power *power.System
	hot   *hotwater.System
	gas   *gas.Supply
	in    *indoors // nil where rooms are not computed
	chain *chain   // nil where used water and beds are not described
}

// State is all that the house remembers from one hour to the next. It is a plain value: a
// copy is a snapshot.
type State struct {
	Mind  people.Mind
	Water water.State
	Power power.SystemState
	Hot   hotwater.State
	Gas   gas.SupplyState
	Rooms warmth.State
	Chain ChainState

	Stoves StoveStates
}

// A Row is all that one hour did. What a house does not have stays zero.
type Row struct {
	Signs  people.Signs // told where somebody looks on, and where there was something to decide
	Choice people.Choice
	Wants  *people.Wants // of water, as the people would have it; belongs to the run
	Asks   *people.Wants // the same, or less while they save; belongs to the run

	Draw   [people.Kinds]quantity.Litres // of the tanks: Asks with the water of beds and animals, and what the flush well asks instead of the cisterns
	Income water.IncomeOut
	Taps   water.TapsOut

	Supply power.SystemIn
	Power  power.SystemOut

	HeatIn hotwater.In
	Heat   hotwater.Out
	Cooked quantity.WattHours // of fuel, for tasks swapped to gas
	Gas    gas.SupplyOut

	RoomsIn warmth.In
	Rooms   warmth.Out
	Stoves  StoveOuts

	Chain ChainRow
}

// Start gives the state of the first hour as the house file says it.
func (r *Run) Start() State {
	var s State
	if w := r.water; w != nil {
		s.Water = w.Start()
	}
	if p := r.power; p != nil {
		s.Power = p.Start()
	}
	if h := r.hot; h != nil {
		cold := r.sky[0].cold
		s.Hot = hotwater.State{Upper: cold, Lower: cold}
	}
	if g := r.gas; g != nil {
		s.Gas = g.Full()
	}
	if r.in != nil {
		s.Rooms = r.in.rooms.Start(r.usualGains())
	}
	r.startChain(&s)
	return s
}

// StartAt gives the state of the first hour with tanks and battery at a share of what they
// hold, 0 to 1; the battery not below its floor.
func (r *Run) StartAt(share float64) State {
	s := r.Start()
	if w := r.water; w != nil {
		s.Water = w.StartAt(share)
	}
	if p := r.power; p != nil {
		s.Power.Battery = p.Battery.At(max(share, p.Battery.Floor))
	}
	return s
}

// Hours gives how many hours there are to live.
func (r *Run) Hours() int { return len(r.Weather.Temperature) }

// A Span is a stretch of hours to live and who looks on.
type Span struct {
	First, Last int                      // hours; Last is not lived any more
	Days        []Tally                  // added to, one for each day of the record; nil: not kept
	See         func(hour int, row *Row) // shown every hour; nil: nobody looks
	Row         Row                      // of the last hour lived
}

// Live lets the hours of a span pass. It stops with a sentence at an hour after which a
// store no longer holds a number.
func (r *Run) Live(s *State, p *Span) error {
	for i := p.First; i < p.Last; {
		first := i - i%24
		r.liveDay(i-first, min(24, p.Last-first), first/24, s, p)
		if i = first + 24; i > p.Last {
			return nil
		}
		if p.Days != nil {
			r.midnight(&p.Days[first/24], s)
		}
		if err := r.sound(i-1, s); err != nil {
			return err
		}
	}
	return nil
}

// liveDay lets the hours of one day pass, from a clock hour to another that is not lived any more.
func (r *Run) liveDay(from, to, day int, s *State, p *Span) {
	sky, usual, row := r.sky[24*day+from:24*day+to], r.customs[day][from:to], &p.Row
	var tally *Tally
	if p.Days != nil {
		tally = &p.Days[day]
	}
	for i := range usual[:len(sky)] {
		now, custom, clock := &sky[i], &usual[i], from+i
		if p.See != nil {
			r.look(now, custom, s, row)
		}
		r.live(day, clock, now, custom, s, row)
		if tally != nil {
			tally.add(row, now.rain)
			if r.chain != nil {
				tally.chain(&row.Chain)
			}
		}
		if p.See != nil {
			p.See(24*day+clock, row)
		}
	}
}

// midnight notes what stands in the stores as a day ends.
func (r *Run) midnight(t *Tally, s *State) {
	if r.water != nil {
		t.TankEnd = r.water.UsableShare(&s.Water)
	}
	if r.chain != nil {
		r.chain.midnight(t, &s.Chain)
	}
}

// sound looks once a day whether the stores hold numbers.
func (r *Run) sound(i int, s *State) error {
	held := 0.0
	if r.water != nil {
		held += float64(r.water.Held(&s.Water))
	}
	held += float64(s.Power.Battery.Available+s.Power.Battery.Bound) + float64(s.Hot.Upper+s.Hot.Lower) + float64(s.Gas.Held)
	if r.in != nil {
		for k := range r.in.names {
			held += float64(s.Rooms.Air[k])
		}
	}
	if r.chain != nil {
		litres, load := r.chain.held(&s.Chain)
		held += litres + load.Salt + load.BOD + load.Nitrogen
	}
	if math.IsNaN(held) || math.IsInf(held, 0) {
		d := r.Weather.Days[i/24]
		return fmt.Errorf("hourly: on %d-%02d-%02d a store no longer holds a number (water %v, battery %v, hot water %v)",
			d.Year, d.Month, d.Date, s.Water.Tanks, s.Power.Battery, s.Hot)
	}
	return nil
}
