package power

import (
	"errors"
	"fmt"
	"slices"

	"suffice/quantity"
)

// A Need says who gets power first.
type Need int8

const (
	Must   Need = iota // makes a short day when it goes without
	Should             // comfort
	Could              // a use for what is over
	Needs              // how many needs there are
)

// String names the need as a house file does.
func (n Need) String() string {
	names := [Needs]string{"must", "should", "could"}
	if n < 0 || n >= Needs {
		return fmt.Sprintf("need %d", int(n))
	}
	return names[n]
}

// Caps keep the state plain; a sentence says so when one is passed.
const (
	MostLoads   = 32
	MostWaiting = 8  // loads that may wait
	MostWait    = 14 // days that a load may wait
)

// A Load is one thing that runs on power.
type Load struct {
	Name     string
	Need     Need
	Power    quantity.Watts     // while it runs; with no Energy it runs through all its hours
	Energy   quantity.WattHours // on each of its days, spread over its hours; 0: from Power
	Hours    [24]float64        // share in each clock hour, in any scale; all zero: evenly
	Days     [7]bool            // days of the week, Sunday first; none set: every day
	Starting quantity.Watts     // at the moment of starting; 0: no more than Power
	Waits    int                // days that the task may wait for sun; 0: it does not wait
	Drops    bool               // given up after waiting, and counted short; else it must run on its last day
	Gas      float64            // efficiency at which gas can do it instead; 0: it cannot
	WhenAway bool               // runs while nobody is at home
}

// A Choice is what the people do in an hour, by their house rules.
type Choice struct {
	Swap bool // gas does what gas can do
	Wait bool // what can wait is put off; this goes before Swap where a load can do both
}

// Wants is what the loads want in one hour.
type Wants struct {
	Now     [Needs]quantity.WattHours // by need
	Gas     quantity.WattHours        // of fuel, net heating value, for the tasks swapped to gas
	Swapped quantity.WattHours        // electricity that those tasks would have wanted
	PutOff  quantity.WattHours        // electricity of the tasks that are put off in this hour
	putOff  uint8                     // the waiting tasks that are put off, a bit each
	mayRun  uint8                     // the waiting tasks that may be made up for now
	mustRun uint8                     // the waiting tasks that must be made up for when due

	hour uint8 // of the clock
}

// A Schedule is the loads written out as look-ups. It is read-only.
type Schedule struct {
	rows  [2][2][2][7][24]Wants // by nobody or somebody at home, swap, wait, weekday, hour
	tasks []task
}

// A task is a load that may wait.
type task struct {
	need  Need
	days  int
	drops bool
	power float64     // W at most
	hours [24]float64 // Wh in each clock hour of its days
}

// Prepare checks loads and writes them out.
func Prepare(loads []Load) (*Schedule, error) {
	if err := loadFaults(loads); err != nil {
		return nil, err
	}
	s := new(Schedule)
	for i := range loads {
		if loads[i].Waits > 0 {
			s.tasks = append(s.tasks, loads[i].task())
		}
	}
	for home := range 2 {
		for swap := range 2 {
			for wait := range 2 {
				for day := range 7 {
					for hour := range 24 {
						s.rows[home][swap][wait][day][hour] = wantsOf(loads, home == 1, Choice{swap == 1, wait == 1}, day, hour)
					}
				}
			}
		}
	}
	return s, nil
}

// At gives the wants of a clock hour (0 to 23) of a day of the week (0 is Sunday). The
// result belongs to the schedule and must not be written to.
func (s *Schedule) At(weekday, hour int, home bool, c Choice) *Wants {
	return &s.rows[bit(home)][bit(c.Swap)][bit(c.Wait)][weekday][hour]
}

func bit(b bool) int {
	if b {
		return 1
	}
	return 0
}

// wantsOf adds up the loads of one hour.
func wantsOf(loads []Load, home bool, c Choice, day, hour int) (w Wants) {
	w.hour = uint8(hour)
	waiting := -1
	for i := range loads {
		l := &loads[i]
		if l.Waits > 0 {
			waiting++
		}
		e := l.inHour(hour)
		if e == 0 || !l.on(day) || !home && !l.WhenAway {
			continue
		}
		if l.Waits > 0 {
			w.mustRun |= 1 << waiting
			if c.Wait {
				w.putOff |= 1 << waiting
				w.PutOff += e
				continue
			}
			w.mayRun |= 1 << waiting
		}
		if c.Swap && l.Gas > 0 {
			w.Swapped += e
			w.Gas += e / quantity.WattHours(l.Gas)
			continue
		}
		w.Now[l.Need] += e
	}
	return w
}

// on reports whether the load runs on a day of the week.
func (l *Load) on(day int) bool { return l.Days == [7]bool{} || l.Days[day] }

// inHour gives what the load wants in a clock hour of one of its days.
func (l *Load) inHour(hour int) quantity.WattHours {
	shares := l.Hours
	if shares == [24]float64{} {
		for i := range shares {
			shares[i] = 1
		}
	}
	if l.Energy == 0 {
		return l.Power.For(shares[hour] / slices.Max(shares[:]))
	}
	sum := 0.0
	for _, share := range shares {
		sum += share
	}
	return l.Energy * quantity.WattHours(shares[hour]/sum)
}

// highest gives the largest power the load takes while it runs.
func (l *Load) highest() quantity.Watts {
	highest := l.Power
	for hour := range 24 {
		highest = max(highest, l.inHour(hour).Over(1))
	}
	return highest
}

func (l *Load) task() task {
	t := task{need: l.Need, days: l.Waits, drops: l.Drops, power: float64(l.highest())}
	for hour := range 24 {
		t.hours[hour] = float64(l.inHour(hour))
	}
	return t
}

// loadFaults gives every fault of the loads at once.
func loadFaults(loads []Load) error {
	var faults []error
	waiting := 0
	for i := range loads {
		faults = append(faults, loads[i].faults()...)
		if loads[i].Waits > 0 {
			waiting++
		}
	}
	if len(loads) > MostLoads {
		faults = append(faults, fmt.Errorf("%d loads are too many: the most is %d, put small ones together", len(loads), MostLoads))
	}
	if waiting > MostWaiting {
		faults = append(faults, fmt.Errorf("%d loads that can wait are too many: the most is %d, put some together", waiting, MostWaiting))
	}
	return errors.Join(faults...)
}

func (l *Load) faults() (faults []error) {
	fault := func(format string, args ...any) {
		faults = append(faults, fmt.Errorf("load %s: "+format, append([]any{l.Name}, args...)...))
	}
	if l.Power < 0 || l.Energy < 0 || l.Power == 0 && l.Energy == 0 {
		fault("power is %s and energy %s a day: give one of them, above 0", quantity.Text(float64(l.Power), "W"), quantity.Text(float64(l.Energy), "Wh"))
	}
	if l.Need < 0 || l.Need >= Needs {
		fault("need is %d: it is must, should or could", l.Need)
	}
	if l.Waits < 0 || l.Waits > MostWait {
		fault("it waits %d days: the most is %d", l.Waits, MostWait)
	}
	if l.Waits > 0 && l.Power == 0 {
		fault("it may wait, so its power while it runs is needed")
	}
	if l.Gas < 0 || l.Gas > 1 {
		fault("gas does it at an efficiency of %g: that is a share from 0 to 1", l.Gas)
	}
	for _, share := range l.Hours {
		if !(share >= 0) {
			fault("an hour's share is %g: shares are 0 or more", share)
			return faults
		}
	}
	if most := l.Power; l.Energy > 0 && most > 0 && l.highest() > most*(1+1e-12) {
		fault("its %s a day cannot be used in its hours at %s: give it more hours or more power",
			quantity.Text(float64(l.Energy), "Wh"), quantity.Text(float64(most), "W"))
	}
	return faults
}
