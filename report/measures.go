package report

import (
	"io"
	"strings"
	"sync"

	"suffice/hourly"
	"suffice/warmth"
	"suffice/warmth/comfort"
)

// A Lack is the house without one measure, lived through the same weather from the same start.
type Lack struct {
	Measure warmth.Measure
	Taken   int             // from how many walls, windows or rooms
	Account *hourly.Account // nil where the house never had it
}

// Measures leaves each measure out of the house, one at a time, and lives it again: so many side by side. told, if any, hears how many are done.
func (p *Proof) Measures(atOnce int, told func(done int)) ([]Lack, error) {
	list := make([]Lack, warmth.Measures)
	faults := make([]error, len(list))
	free := make(chan bool, atOnce)
	var wait sync.WaitGroup
	var counting sync.Mutex
	done := 0
	for i := range list {
		wait.Go(func() {
			free <- true
			defer func() { <-free }()
			list[i], faults[i] = p.without(warmth.Measure(i))
			counting.Lock()
			defer counting.Unlock()
			if done++; told != nil {
				told(done)
			}
		})
	}
	wait.Wait()
	for _, err := range faults {
		if err != nil {
			return nil, err
		}
	}
	return list, nil
}

func (p *Proof) without(m warmth.Measure) (Lack, error) {
	run, taken, err := p.Run.Without(m)
	if err != nil || run == nil {
		return Lack{Measure: m}, err
	}
	a, err := run.Account(run.Start())
	return Lack{m, taken, a}, err
}

// TextOfMeasures prints what each measure does for the rooms that people live in.
func (p *Proof) TextOfMeasures(list []Lack, to io.Writer) error {
	w := &lines{to: to}
	w.line("\nWhat each measure does: the house without it, one at a time, in the same weather")
	for k := range p.Stated.Rooms {
		if !p.Stated.Rooms[k].LivedIn {
			continue
		}
		w.line("\n  %-16s %-27s %-27s", headed(p.Stated.Rooms[k].Name, 16), "too cold, K h a year", "too hot, K h a year")
		w.line("  %-16s %6s %6s %6s %6s %6s %6s %6s %6s %5s %5s %5s", "", "winter", "spring", "summer", "autumn", "winter", "spring", "summer", "autumn",
			"swing", "cold", "warm")
		p.roomWithout(w, "as it is", &p.Stated.Rooms[k])
		for i := range list {
			if list[i].Account != nil {
				p.roomWithout(w, "no "+list[i].Measure.String(), &list[i].Account.Rooms[k])
			}
		}
	}
	w.line("")
	w.line("  Swing is the mean of days, K; cold and warm are the room's coldest and warmest hour, degC.")
	for i := range list {
		says := "no " + list[i].Measure.String() + ": " + list[i].Measure.Says()
		if list[i].Account == nil {
			says = list[i].Measure.String() + ": this house has none to leave out"
		}
		for n, l := range wrap(says, 74) {
			w.line("  %s%s", strings.Repeat("  ", min(n, 1)), l)
		}
	}
	return w.err
}

func (p *Proof) roomWithout(w *lines, name string, y *hourly.RoomYears) {
	cells := []any{name}
	years := float64(p.Years())
	for _, of := range []func(c *comfort.Count) float64{
		func(c *comfort.Count) float64 { return c.ColdDegree }, func(c *comfort.Count) float64 { return c.HotDegree },
	} {
		for s := range y.Seasons {
			cells = append(cells, grouped(of(&y.Seasons[s])/years))
		}
	}
	cells = append(cells, float64(y.Swing()), float64(y.Coldest), float64(y.Warmest))
	w.line("  %-16s %6s %6s %6s %6s %6s %6s %6s %6s %5.1f %5.1f %5.1f", cells...)
}

// MeasureJSON is the house without one measure. Rooms are null where the house never had it.
type MeasureJSON struct {
	Measure string              `json:"measure"`
	Without string              `json:"without"` // in words, what the house without it is
	Taken   int                 `json:"taken_from"`
	Rooms   []MeasuredRoomsJSON `json:"rooms"`
}

// MeasuredRoomsJSON is a room by the mean year: degrees times hours outside its band of comfort.
type MeasuredRoomsJSON struct {
	Name       string             `json:"name"`
	Cold       map[string]float64 `json:"too_cold_kh_per_year"` // by season
	Hot        map[string]float64 `json:"too_hot_kh_per_year"`
	ColdHours  float64            `json:"too_cold_hours_per_year"`
	HotHours   float64            `json:"too_hot_hours_per_year"`
	SwingK     float64            `json:"swing_k"` // in a day, mean of days
	MinC       float64            `json:"min_c"`
	MaxC       float64            `json:"max_c"`
	HeatingKWh float64            `json:"heating_kwh"`
	CoolingKWh float64            `json:"cooling_kwh"`
}

// JSONOfMeasures gives the same for programs; the house as it is stands first.
func (p *Proof) JSONOfMeasures(list []Lack) []MeasureJSON {
	out := []MeasureJSON{{Measure: "none", Without: "the house as it is", Rooms: p.measured(p.Stated)}}
	for i := range list {
		j := MeasureJSON{Measure: list[i].Measure.String(), Without: list[i].Measure.Says(), Taken: list[i].Taken}
		if list[i].Account != nil {
			j.Rooms = p.measured(list[i].Account)
		}
		out = append(out, j)
	}
	return out
}

func (p *Proof) measured(a *hourly.Account) (list []MeasuredRoomsJSON) {
	years := float64(p.Years())
	for k := range a.Rooms {
		y := &a.Rooms[k]
		j := MeasuredRoomsJSON{Name: y.Name, Cold: map[string]float64{}, Hot: map[string]float64{}, ColdHours: y.Comfort.Cold / years, HotHours: y.Comfort.Hot / years,
			SwingK: float64(y.Swing()), MinC: float64(y.Coldest), MaxC: float64(y.Warmest), HeatingKWh: float64(y.Heating) / 1000 / years, CoolingKWh: float64(y.Cooling) / 1000 / years}
		for s := range hourly.Season(hourly.Seasons) {
			j.Cold[s.String()], j.Hot[s.String()] = y.Seasons[s].ColdDegree/years, y.Seasons[s].HotDegree/years
		}
		list = append(list, j)
	}
	return list
}
