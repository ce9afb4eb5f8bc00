package people

import (
	"suffice/quantity"
	"suffice/site/weather"
)

// Wants is the water people would draw in one hour if all went well. The arrays
// are counted by Kind. It is a plain value; a Diary hands out pointers to its own,
// which must not be written to. What every hour looks at stands first and close together.
type Wants struct {
	Persons   float64                // in the house
	Litres    [Kinds]quantity.Litres // at the tap, warm and cold together
	HotLitres quantity.Litres        // sum of Hot
	Mix       quantity.Celsius       // mean temperature of HotLitres by litres; 0 where nothing is drawn warm

	Hot    [Kinds]quantity.Litres // of Litres, those drawn warm
	Warmth [Kinds]float64         // warm litres times their temperature at the tap, L degC

	Savable       [Kinds]quantity.Litres // of Litres, what belongs to uses that may be cut down
	SavableHot    [Kinds]quantity.Litres // of Hot
	SavableWarmth [Kinds]float64         // of Warmth

	Drained        [Kinds][Drains]quantity.Litres // of Litres, what goes down each drain
	SavableDrained [Kinds][Drains]quantity.Litres // of Drained
}

// A Diary is a household written out over the days of a record: who is there and
// what each hour wants, as look-ups. It is read-only after Prepare.
type Diary struct {
	days []*[24]Wants // one for each day of the record; days alike share theirs
}

// Prepare writes out the household over the days of a record. The error joins every
// fault of the household.
func Prepare(h *Household, days []weather.Day) (*Diary, error) {
	if err := h.Check(); err != nil {
		return nil, err
	}
	return h.write(days), nil
}

// write makes one table of 24 hours for all days on which the people want the same: few, so
// that they stay in the processor's nearest memory.
func (h *Household) write(days []weather.Day) *Diary {
	type sort struct {
		weekday int8
		persons float64
	}
	seen := make(map[sort]*[24]Wants)
	same := make(map[[24]Wants]*[24]Wants)
	d := &Diary{days: make([]*[24]Wants, len(days))}
	for i, day := range days {
		k := sort{day.Weekday, h.Persons(day)}
		if seen[k] == nil {
			seen[k] = shared(same, h.day(int(k.weekday), k.persons))
		}
		d.days[i] = seen[k]
	}
	return d
}

// shared gives the one table among those seen that says the same.
func shared(seen map[[24]Wants]*[24]Wants, hours [24]Wants) *[24]Wants {
	if seen[hours] == nil {
		seen[hours] = &hours
	}
	return seen[hours]
}

// day gives the hours of a day of this weekday with so many people in the house.
func (h *Household) day(weekday int, persons float64) (hours [24]Wants) {
	for hour := range hours {
		hours[hour] = h.Hour(weekday, hour, persons)
	}
	return hours
}

// Hour gives what the people would draw in a clock hour (0 to 23) of a day of this
// weekday (0 is Sunday) with so many people in the house.
func (h *Household) Hour(weekday, hour int, persons float64) Wants {
	w := Wants{Persons: persons}
	for i := range h.Uses {
		if u := &h.Uses[i]; u.Days.on(weekday) {
			w.add(u, u.share(hour))
		}
	}
	w.sum()
	return w
}

// on reports whether a use happens on a day of the week.
func (d Weekdays) on(weekday int) bool { return d == Weekdays{} || d[weekday] }

// share gives the part of the day's amount that falls in a clock hour.
func (u *Use) share(hour int) float64 {
	var all float64
	for _, s := range u.Hours {
		all += s
	}
	if all == 0 {
		return 1. / 24
	}
	return u.Hours[hour] / all
}

// add puts a use into the hour that has a share of its day's amount.
func (w *Wants) add(u *Use, share float64) {
	amount := float64(u.PerPerson) * w.Persons
	if w.Persons > 0 || u.WhenEmpty {
		amount += float64(u.PerHouse)
	}
	litres, k := quantity.Litres(amount*share), u.Kind
	w.Litres[k] += litres
	w.Drained[k][u.Drain] += litres
	if u.Savable {
		w.Savable[k] += litres
		w.SavableDrained[k][u.Drain] += litres
	}
	if !u.Hot {
		return
	}
	warmth := float64(litres) * float64(u.Mix)
	w.Hot[k] += litres
	w.Warmth[k] += warmth
	if u.Savable {
		w.SavableHot[k] += litres
		w.SavableWarmth[k] += warmth
	}
}

// sum brings HotLitres and Mix up to date.
func (w *Wants) sum() {
	w.HotLitres, w.Mix = mixed(&w.Hot, &w.Warmth)
}

// mixed gives the litres of all kinds and their mean temperature. The heat they need
// above any cold inlet is the same as that of their parts, because it is linear in both.
func mixed(hot *[Kinds]quantity.Litres, warmth *[Kinds]float64) (quantity.Litres, quantity.Celsius) {
	var litres, heat float64
	for k := range Kinds {
		litres += float64(hot[k])
		heat += warmth[k]
	}
	if litres == 0 {
		return 0, 0
	}
	return quantity.Litres(litres), quantity.Celsius(heat / litres)
}

// At gives the wants of a clock hour (0 to 23) of a day of the record.
func (d *Diary) At(day, hour int) *Wants { return &d.days[day][hour] }

// Save gives the diary of people who cut the savable uses down by a share, 0 to 1, in every hour.
func (d *Diary) Save(share float64) *Diary {
	saved := &Diary{days: make([]*[24]Wants, len(d.days))}
	seen := make(map[*[24]Wants]*[24]Wants)
	for i, hours := range d.days {
		if seen[hours] == nil {
			seen[hours] = new([24]Wants)
			for hour := range hours {
				seen[hours][hour] = hours[hour].Save(share)
			}
		}
		saved.days[i] = seen[hours]
	}
	return saved
}

// Persons gives how many people are in the house on a day of the record.
func (d *Diary) Persons(day int) float64 { return d.days[day][0].Persons }

// Empty reports whether nobody is in the house on a day of the record.
func (d *Diary) Empty(day int) bool { return d.Persons(day) == 0 }

// Save gives the wants when people cut the savable uses down by a share, 0 to 1. What
// is left of them is still savable.
func (w *Wants) Save(share float64) Wants {
	s := *w
	if share == 0 {
		return s
	}
	left := 1 - share
	for k := range Kinds {
		s.Litres[k] -= quantity.Litres(share) * w.Savable[k]
		s.Hot[k] -= quantity.Litres(share) * w.SavableHot[k]
		s.Warmth[k] -= share * w.SavableWarmth[k]
		s.Savable[k] *= quantity.Litres(left)
		s.SavableHot[k] *= quantity.Litres(left)
		s.SavableWarmth[k] *= left
		for d := range Drains {
			s.Drained[k][d] -= quantity.Litres(share) * w.SavableDrained[k][d]
			s.SavableDrained[k][d] *= quantity.Litres(left)
		}
	}
	s.sum()
	return s
}

// HotServed gives the warm litres and their mean temperature when each kind got
// only a share, 0 to 1, of its litres: warm and cold taps of a kind fall short alike.
func (w *Wants) HotServed(share *[Kinds]float64) (quantity.Litres, quantity.Celsius) {
	var hot [Kinds]quantity.Litres
	var warmth [Kinds]float64
	for k := range Kinds {
		hot[k] = w.Hot[k] * quantity.Litres(share[k])
		warmth[k] = w.Warmth[k] * share[k]
	}
	return mixed(&hot, &warmth)
}
