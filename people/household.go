package people

import (
	"errors"
	"fmt"
	"math"

	"suffice/quantity"
	"suffice/site/weather"
)

// A Kind is what water is wanted for, in the order in which people go without last.
type Kind int

const (
	Drinking Kind = iota // drinking, cooking, washing up: must be fit to drink
	Washing              // shower, bath, basin, laundry
	Flushing             // toilets
	Outdoor              // garden, yard, animals
	Kinds                // how many kinds there are
)

// String names the kind as a house file does.
func (k Kind) String() string {
	names := [Kinds]string{"drinking", "washing", "flushing", "outdoor"}
	if k < 0 || k >= Kinds {
		return fmt.Sprintf("kind %d", int(k))
	}
	return names[k]
}

// A Drain is where used water goes.
type Drain int

const (
	Basin Drain = iota
	Shower
	Bath
	Laundry
	Dishwasher
	Kitchen
	Toilet
	Ground // into the garden or yard: no drain
	Drains // how many there are
)

// String names the drain as a house file does.
func (d Drain) String() string {
	names := [Drains]string{"basin", "shower", "bath", "laundry", "dishwasher", "kitchen", "toilet", "ground"}
	if d < 0 || d >= Drains {
		return fmt.Sprintf("drain %d", int(d))
	}
	return names[d]
}

// UsualDrain gives where water of a kind is taken to go when nobody says: common practice, no source. What people drink counts
// with the kitchen's.
func (k Kind) UsualDrain() Drain {
	return [Kinds]Drain{Kitchen, Shower, Toilet, Ground}[k]
}

// Caps keep a household readable; a sentence says so when one is passed.
const (
	MostUses  = 32
	MostDates = 16 // of visits, and of weeks away
	MostAhead = 100
)

// A Use is one thing people do with water.
type Use struct {
	Name      string
	Kind      Kind
	Drain     Drain
	PerPerson quantity.Litres  // on each of its days, for every person in the house
	PerHouse  quantity.Litres  // on each of its days, however many people there are
	Hours     [24]float64      // share of the day's amount in each clock hour, in any scale; all zero: evenly
	Days      Weekdays         // the days of the week it happens on; none set: every day
	Hot       bool             // drawn warm
	Mix       quantity.Celsius // temperature at the tap, for a hot use
	WhenEmpty bool             // a PerHouse use that goes on when nobody is in the house
	Savable   bool             // may be cut down when people save
}

// Weekdays has one mark a day, Sunday first.
type Weekdays [7]bool

// Workdays are Monday to Friday.
var workdays = Weekdays{false, true, true, true, true, true, false}

// Workdays gives Monday to Friday.
func Workdays() Weekdays { return workdays }

// A Date is a day of any year.
type Date struct{ Month, Day int8 }

// Dates run from one day to another, both included, and over New Year where To is before From.
type Dates struct{ From, To Date }

// Visitors are people who come every year.
type Visitors struct {
	People float64
	Dates  Dates
}

// A Household is who lives in the house and what they do with water. It does not
// change while the house lives.
type Household struct {
	Residents float64
	Uses      []Use
	Visitors  []Visitors
	Away      []Dates // the residents are gone; visitors whose dates fall in still come
}

// Include reports whether a day of the calendar is one of these dates.
func (d Dates) Include(day weather.Day) bool {
	from, to, at := d.From.order(), d.To.order(), Date{day.Month, day.Date}.order()
	if from <= to {
		return from <= at && at <= to
	}
	return at >= from || at <= to
}

func (d Date) order() int { return int(d.Month)*32 + int(d.Day) }

// longest days of the months; 29 February counts as a date of any year.
var monthDays = [13]int8{0, 31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}

func (d Date) check() error {
	if d.Month < 1 || d.Month > 12 || d.Day < 1 || d.Day > monthDays[d.Month] {
		return fmt.Errorf("%02d-%02d is no date: write month and day, for example 12-20", d.Month, d.Day)
	}
	return nil
}

// Persons gives how many people are in the house on a day.
func (h *Household) Persons(day weather.Day) float64 {
	n := h.Residents
	for _, a := range h.Away {
		if a.Include(day) {
			n = 0
		}
	}
	for _, v := range h.Visitors {
		if v.Dates.Include(day) {
			n += v.People
		}
	}
	return n
}

// Check gives every fault of the household at once.
func (h *Household) Check() error {
	faults := []error{
		count("people.residents", h.Residents),
		most("people.uses", len(h.Uses), MostUses),
		most("people.visitors", len(h.Visitors), MostDates),
		most("people.away", len(h.Away), MostDates),
	}
	for i := range h.Uses {
		faults = append(faults, h.Uses[i].check())
	}
	for i, v := range h.Visitors {
		where := fmt.Sprintf("people.visitors[%d]", i)
		faults = append(faults, count(where, v.People), v.Dates.check(where))
	}
	for i, a := range h.Away {
		faults = append(faults, a.check(fmt.Sprintf("people.away[%d]", i)))
	}
	return errors.Join(faults...)
}

func count(where string, n float64) error {
	if !(n >= 0 && n <= MostAhead) {
		return fmt.Errorf("%s: %v people: write 0 to %d", where, n, MostAhead)
	}
	return nil
}

func most(where string, n, limit int) error {
	if n > limit {
		return fmt.Errorf("%s: %d entries: the most is %d, so put similar ones together", where, n, limit)
	}
	return nil
}

func (d Dates) check(where string) error {
	if err := errors.Join(d.From.check(), d.To.check()); err != nil {
		return fmt.Errorf("%s: %w", where, err)
	}
	return nil
}

// check holds a use against what its words can mean.
func (u *Use) check() error {
	where := fmt.Sprintf("people.uses %q", u.Name)
	var faults []error
	if u.Kind < 0 || u.Kind >= Kinds {
		faults = append(faults, fmt.Errorf("%s: water %s is not known: it is drinking, washing, flushing or outdoor", where, u.Kind))
	}
	if u.Drain < 0 || u.Drain >= Drains {
		faults = append(faults, fmt.Errorf("%s: %s is not known: it is basin, shower, bath, laundry, dishwasher, kitchen, toilet or ground", where, u.Drain))
	}
	for _, amount := range []quantity.Litres{u.PerPerson, u.PerHouse} {
		if !(amount >= 0) || math.IsInf(float64(amount), 0) {
			faults = append(faults, fmt.Errorf("%s: amount %v L a day: write 0 or more", where, float64(amount)))
		}
	}
	for hour, share := range u.Hours {
		if !(share >= 0) || math.IsInf(share, 0) {
			faults = append(faults, fmt.Errorf("%s: hour %d has share %v: write 0 or more", where, hour, share))
		}
	}
	if u.Hot && !(u.Mix >= 10 && u.Mix <= 65) {
		faults = append(faults, fmt.Errorf("%s: hot at %v degC: write 10 to 65 degC at the tap", where, float64(u.Mix)))
	}
	return errors.Join(faults...)
}
