package hourly

import (
	"fmt"
	"slices"

	"suffice/garden"
	"suffice/gas"
	"suffice/hotwater"
	"suffice/people"
	"suffice/power"
	"suffice/quantity"
	"suffice/reuse"
	"suffice/sheet"
	"suffice/site/sun"
	"suffice/stove"
	"suffice/warmth"
	"suffice/waste"
	"suffice/water"
)

// Explain lives the record from the stated start to an hour, lives that hour, and gives its
// working as sheets in the order of its phases. The sheets call the very functions that the
// hour calls, with its own numbers: every result is that of the hour, to the last bit.
func (r *Run) Explain(hour int) ([]sheet.Worked, error) {
	if hour < 0 || hour >= r.Hours() {
		return nil, fmt.Errorf("hourly: there is no hour %d among %d", hour, r.Hours())
	}
	w := r.witness(hour/24 + 1)
	if err := w.liveTo(hour); err != nil {
		return nil, err
	}
	return w.explain()
}

// A witness stands at the beginning of an hour and knows what that hour begins with: the
// house's state, and what Prepare led through the weather and kept no record of.
type witness struct {
	r     *Run
	hour  int
	state State

	track  *sun.Track
	arrays []underLight
	plate  underLight // the collector of the hot water
	inlet  hotwater.Inlet
	ground hotwater.InletState

	after State // of the hour explained
	row   Row
}

// underLight is a plane in the sun: its light in every hour, and the snow that lies on it.
type underLight struct {
	face  *sun.Face
	light []sun.PlaneLight
	snow  power.SnowState
}

// witness stands at the first hour and can go on for so many days.
func (r *Run) witness(days int) *witness {
	w := &witness{r: r, state: r.Start()}
	if r.power == nil && r.hot == nil {
		return w
	}
	w.track = sun.NewTrack(r.House.Place, dates(r.Weather.Days[:days]))
	if r.power != nil {
		for i := range r.House.Power.Arrays {
			w.arrays = append(w.arrays, w.under(r.House.Power.Arrays[i].Plane))
		}
	}
	if r.hot != nil {
		w.plate = w.under(sun.Plane{Slope: r.hot.Collector.Slope, Azimuth: r.hot.Collector.Azimuth})
		w.startInlet()
	}
	return w
}

func (w *witness) under(p sun.Plane) underLight {
	f := sun.NewFace(p, groundAlbedo, sun.Perez, w.r.House.Horizon)
	return underLight{face: f, light: f.Fill(nil, w.track, w.r.Weather.Diffuse, w.r.Weather.Beam)}
}

// startInlet brings the slow mean of the inlet to its season, as Prepare does.
func (w *witness) startInlet() {
	air := w.r.Weather.Temperature
	w.inlet = w.r.House.HotWater.Inlet
	w.inlet.Mean = quantity.Celsius(mean(air))
	if err := w.inlet.Prepare(); err != nil {
		panic(err) // Prepare of the run has taken it
	}
	w.ground = w.inlet.Start()
	for _, t := range air[:min(len(air), firstYear)] {
		w.inlet.Step(&w.ground, quantity.Celsius(t))
	}
}

// liveTo goes on to the beginning of a later hour.
func (w *witness) liveTo(hour int) error {
	for i := w.hour; i < hour; i++ {
		for k := range w.arrays {
			w.dark(&w.arrays[k].snow, k, i)
		}
		if w.r.hot != nil {
			w.inlet.Step(&w.ground, quantity.Celsius(w.r.Weather.Temperature[i]))
		}
	}
	span := Span{First: w.hour, Last: hour}
	w.hour = hour
	return w.r.Live(&w.state, &span)
}

// dark moves the snow of an array on by an hour and gives the share of it that was dark.
func (w *witness) dark(s *power.SnowState, k, i int) float64 {
	if w.r.Weather.Rain == nil {
		return 0
	}
	a := &w.r.House.Power.Arrays[k]
	return a.Snow(s, w.arrays[k].light[i].Total(), quantity.Celsius(w.r.Weather.Temperature[i]), quantity.Millimetres(w.r.Weather.Rain[i]))
}

// explain lives the hour on a copy of the state and works its sheets.
func (w *witness) explain() ([]sheet.Worked, error) {
	w.after, w.row = w.state, Row{}
	w.r.hour(w.hour, &w.after, &w.row)
	list := slices.Concat(people.Sheets(), sun.Sheets(), water.Sheets(), power.Sheets(), hotwater.Sheets(), gas.Sheets(), stove.Sheets(), warmth.Sheets(), reuse.Sheets(), waste.Sheets(), garden.Sheets())
	var worked []sheet.Worked
	for _, part := range w.tell() {
		one, err := part.work(list)
		if err != nil {
			return nil, err
		}
		worked = append(worked, one)
	}
	return worked, nil
}

// told is a sheet to be worked for a part of the house.
type told struct {
	sheet, part string
	inputs      map[string]sheet.Value
	caution     string // that the sheet cannot know of; "" for none
}

func (p *told) work(list []sheet.Sheet) (sheet.Worked, error) {
	i := slices.IndexFunc(list, func(s sheet.Sheet) bool { return s.Name == p.sheet })
	if i < 0 {
		return sheet.Worked{}, fmt.Errorf("hourly: there is no sheet %s", p.sheet)
	}
	s := list[i]
	if p.part != "" {
		s.Title += ": " + p.part
	}
	worked, err := s.Work(p.inputs)
	if err != nil {
		return worked, fmt.Errorf("hourly: %s: %w", p.sheet, err)
	}
	if p.caution != "" {
		worked.Cautions = append(worked.Cautions, p.caution)
	}
	return worked, nil
}
