package hourly

import (
	"errors"
	"fmt"
	"math"
	"slices"

	"suffice/house"
	"suffice/people"
	"suffice/power"
	"suffice/quantity"
	"suffice/site/sun"
	"suffice/site/weather"
	"suffice/water"
)

// groundAlbedo is the share of light that grass, gravel and soil throw back; fresh snow
// throws back three to four times as much [iso52010-1]: 0.2 unless the site is known better.
const groundAlbedo = 0.2

// Prepare makes a house ready to live through hours of weather: everything that does not
// depend on what the house remembers is worked out once.
func Prepare(h *house.House, w *weather.Hours) (*Run, error) {
	if len(w.Days) == 0 || len(w.Temperature) != 24*len(w.Days) {
		return nil, errors.New("the weather has no whole day to live through: name a record with at least one complete year")
	}
	r := &Run{House: h, Weather: w, water: h.Water, gas: h.Gas, indoors: h.Indoors}
	if h.Power != nil {
		r.power, r.outdoors.battery = &h.Power.System, h.Power.BatteryOutdoors
	}
	if h.HotWater != nil {
		r.hot, r.outdoors.store = h.HotWater.System, h.HotWater.Outdoors
	}
	if err := r.missing(); err != nil {
		return nil, err
	}
	diary, err := people.Prepare(orNobody(h.People), w.Days)
	if err != nil {
		return nil, err
	}
	r.diary = diary
	r.prepareCustoms()
	var c columns
	track := r.prepareSky(&c)
	c.clear = r.prepareRules(track)
	if err := r.prepareRooms(track); err != nil {
		return nil, err
	}
	if err := r.prepareChain(&c); err != nil {
		return nil, err
	}
	if c.cold, err = r.prepareCold(); err != nil {
		return nil, err
	}
	r.weave(&c)
	r.assumptions()
	r.alarms()
	return r, nil
}

// missing tells what the house needs of the weather and the record does not have.
func (r *Run) missing() error {
	var faults []error
	need := func(column []float64, what, whom string) {
		if len(column) == 0 {
			faults = append(faults, fmt.Errorf("the weather has no %s, which %s need: name a record that has it in weather.record", what, whom))
		}
	}
	if r.water != nil {
		need(r.Weather.Rain, "rain", "the roofs")
	}
	if r.power != nil || r.hot != nil {
		need(r.Weather.Beam, "light of the sun", "panels and collector")
	}
	return errors.Join(faults...)
}

func orNobody(h *people.Household) *people.Household {
	if h == nil {
		return new(people.Household)
	}
	return h
}

// prepareSky works out what light on the faces gives. It gives the sun's way, or nil where
// the record tells no light.
func (r *Run) prepareSky(c *columns) *sun.Track {
	h, w := r.House, r.Weather
	if len(w.Beam) == 0 {
		return nil
	}
	at := h.Place
	at.Clock = w.Place.Clock // where the place's own has half an hour, the hours run on a whole one
	t := sun.NewTrack(at, dates(w.Days))
	sky := t.Spread(sun.Perez, w.Diffuse, w.Beam)
	var light []sun.PlaneLight
	if r.power != nil {
		c.panels = make([]float64, r.Hours())
		for i := range h.Power.Arrays {
			a := &h.Power.Arrays[i]
			light = sun.NewFace(a.Plane, groundAlbedo, sun.Perez, h.Horizon).Under(light, sky)
			r.addPanels(c.panels, a, light)
		}
	}
	if r.hot != nil {
		plate := &r.hot.Collector
		plane := sun.Plane{Slope: plate.Slope, Azimuth: plate.Azimuth}
		light = sun.NewFace(plane, groundAlbedo, sun.Perez, h.Horizon).Under(light, sky)
		c.absorbed = plate.Fill(nil, light)
	}
	return t
}

func dates(days []weather.Day) []sun.Date {
	list := make([]sun.Date, len(days))
	for i, d := range days {
		list[i] = sun.Date{Year: d.Year, Month: d.Month, Date: d.Date}
	}
	return list
}

// addPanels adds the direct current of one array to that of the others.
func (r *Run) addPanels(all []float64, a *power.Array, light []sun.PlaneLight) {
	var c power.Column
	a.Fill(&c, light, r.Weather.Temperature, r.Weather.Rain)
	for i, p := range c.Watts {
		all[i] += p
	}
}

// prepareCold works out the temperature of the water coming in.
func (r *Run) prepareCold() ([]float64, error) {
	if r.hot == nil {
		return nil, nil
	}
	inlet := r.House.HotWater.Inlet
	inlet.Mean = quantity.Celsius(mean(r.Weather.Temperature))
	if err := inlet.Prepare(); err != nil {
		return nil, err
	}
	column := make([]float64, r.Hours())
	s := inlet.Start()
	for _, air := range r.Weather.Temperature[:min(r.Hours(), firstYear)] {
		inlet.Step(&s, quantity.Celsius(air)) // brings the slow mean to its season
	}
	for i, air := range r.Weather.Temperature {
		out := inlet.Step(&s, quantity.Celsius(air))
		column[i] = float64(out.Cold)
		if out.Frozen {
			r.frozen++
		}
	}
	return column, nil
}

// firstYear is how many hours at most the slow mean of the inlet is led through beforehand.
const firstYear = 365 * 24

func mean(column []float64) float64 {
	sum := 0.0
	for _, v := range column {
		sum += v
	}
	return sum / float64(len(column))
}

// assumptions says what stands in the place of what is not known or not computed yet.
func (r *Run) assumptions() {
	h := r.House
	r.roomNotes()
	if r.in == nil && (r.hot != nil || r.power != nil && !r.outdoors.battery) {
		r.Notes = append(r.Notes, fmt.Sprintf("the air inside is taken as %g degC all year, since the file does not tell rooms by their layers", float64(h.Indoors)))
	}
	if r.power == nil && r.water != nil && electric(h.WaterDesign) {
		r.Notes = append(r.Notes, "the file describes no power supply: pumps and lamps are taken to have all the power they ask for")
	}
	if r.water == nil && h.People != nil && len(h.People.Uses) > 0 {
		r.Notes = append(r.Notes, "the file describes no water works: all water asked for is taken to be there")
	}
	if r.frozen > 0 {
		r.Notes = append(r.Notes, fmt.Sprintf("in %d hours the water coming in would have been ice; it was taken as 0 degC, so keep that pipe from freezing", r.frozen))
	}
	r.Notes = append(r.Notes, r.Weather.Notes...)
}

// alarms holds the design against the coldest hour there was.
func (r *Run) alarms() {
	if r.House.Power == nil {
		return
	}
	for _, err := range r.House.Power.Cold(quantity.Celsius(slices.Min(r.Weather.Temperature))) {
		r.Alarms = append(r.Alarms, err.Error())
	}
}

// electric reports whether water works need power.
func electric(d *water.Design) bool {
	if d.Supply.WattHoursPerKilolitre > 0 {
		return true
	}
	for _, stage := range d.Treatment {
		if stage.Standing > 0 || stage.WattHoursPerKilolitre > 0 {
			return true
		}
	}
	return false
}

// looks are the lines at which what people look at turns bad; 0 where no rule speaks of it, or nobody can tell.
type looks struct{ dull, charge, tank, duty float64 }

// prepareRules works out what people look at, and gives what they expect of the day; nil where no rule asks.
func (r *Run) prepareRules(track *sun.Track) []float64 {
	rules, w := &r.House.Rules, r.Weather
	if r.power != nil {
		r.looks.charge = rules.Charge.Below
	}
	if r.water != nil {
		r.looks.tank, r.looks.duty = rules.Tank.Below, rules.Duty.Below
	}
	if track != nil {
		r.looks.dull = rules.Dull.Below
	}
	if r.ruled = r.looks != (looks{}); r.looks.dull == 0 {
		return nil
	}
	top := make([]float64, r.Hours())
	for i := range top {
		top[i] = track.Normal[i] * max(0, track.CosZenith[i]) * track.Share[i]
	}
	return people.Expect(w.Global, top, r.House.Foresight)
}

// restless reports whether a sign is bad or was: only then people have anything to decide.
func (r *Run) restless(now *ahead, s *State) bool {
	k := &r.looks
	return s.Mind.Any() || now.clear < k.dull ||
		k.charge > 0 && r.power.Battery.Charge(&s.Power.Battery) < k.charge ||
		k.tank > 0 && r.water.UsableShare(&s.Water) < k.tank ||
		k.duty > 0 && r.water.DutyShare(&s.Water) < k.duty
}

// look shows people the sky and those stores that a rule speaks of; of the others nobody can tell.
func (r *Run) look(now *ahead, usual *custom, s *State, row *Row) {
	g := &row.Signs
	g.Clearness, g.Away = now.clear, usual.persons == 0
	unseen := math.NaN()
	g.Charge, g.Tank, g.Duty = unseen, unseen, unseen
	if r.looks.tank > 0 {
		g.Tank = r.water.UsableShare(&s.Water)
	}
	if r.looks.duty > 0 {
		g.Duty = r.water.DutyShare(&s.Water)
	}
	if r.looks.charge > 0 {
		g.Charge = r.power.Battery.Charge(&s.Power.Battery)
	}
}

// south reports whether the seasons are those south of the equator.
func (r *Run) south() bool { return r.House.Place.Latitude < 0 }
