package people

import (
	"suffice/quantity"
	"suffice/site/weather"
)

// Wants is the water people would draw in one hour if all went well. The arrays
// are counted by Kind. It is a plain value; a Diary hands out pointers to its own,
// which must not be written to.
type Wants struct {
	Persons float64 // in the house

	Litres [Kinds]quantity.Litres // at the tap, warm and cold together
	Hot    [Kinds]quantity.Litres // of these, the litres drawn warm
	Warmth [Kinds]float64         // warm litres times their temperature at the tap, L degC

	Savable       [Kinds]quantity.Litres // of Litres, what belongs to uses that may be cut down
	SavableHot    [Kinds]quantity.Litres // of Hot
	SavableWarmth [Kinds]float64         // of Warmth

	HotLitres quantity.Litres  // sum of Hot
	Mix       quantity.Celsius // mean temperature of HotLitres by litres; 0 where nothing is drawn warm
}

// A Diary is a household written out over the days of a record: who is there and
// what each hour wants, as look-ups. It is read-only after Prepare.
type Diary struct {
	days  []uint16 // the kind of day, an index into tables
	hours []Wants  // 24 for every kind of day
}

// Prepare writes out the household over the days of a record.
func Prepare(h *Household, days []weather.Day) (*Diary, error) {
	if err := h.Check(); err != nil {
		return nil, err
	}
	return h.write(days), nil
}

// Hour gives what the people would draw in an hour (0 to 23) of a day of this weekday (0 is Sunday)
// with so many people in the house.
func (h *Household) Hour(weekday, hour int, persons float64) Wants { return Wants{} }

// write makes the look-up tables.
func (h *Household) write(days []weather.Day) *Diary { return nil }

// At gives the wants of a clock hour (0 to 23) of a day of the record.
func (d *Diary) At(day, hour int) *Wants { return &d.hours[int(d.days[day])*24+hour] }

// Persons gives how many people are in the house on a day of the record.
func (d *Diary) Persons(day int) float64 { return d.hours[int(d.days[day])*24].Persons }

// Empty reports whether nobody is in the house on a day of the record.
func (d *Diary) Empty(day int) bool { return d.Persons(day) == 0 }

// Save gives the wants when people cut the savable uses down by a share, 0 to 1.
func (w *Wants) Save(share float64) Wants { return *w }

// HotServed gives the warm litres and their mean temperature when each kind got
// only a share, 0 to 1, of its litres.
func (w *Wants) HotServed(share *[Kinds]float64) (quantity.Litres, quantity.Celsius) {
	return w.HotLitres, w.Mix
}
