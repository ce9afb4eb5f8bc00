package hourly

import (
	"errors"
	"fmt"

	"suffice/power"
	"suffice/quantity"
	"suffice/site/sun"
	"suffice/warmth"
	"suffice/warmth/comfort"
	"suffice/warmth/ground"
	"suffice/warmth/light"
	"suffice/warmth/vent"
)

// What a person at home gives to a room, W, dry heat, and the share of it that goes to the faces and not to the air: seated,
// very light work [ashrae-fundamentals ch. 18, remembered: 70 to 75 W; 27 to 60 % radiant].
const (
	personHeat    = 75
	personRadiant = 0.5
)

// personVapour is the water that a person at home gives to the air, kg/h: 50 g/h by breath and skin [common practice, no source].
// Cooking, washing and plants come on top and are not in it.
const personVapour = 0.05

// machineRadiant is the share of the heat of lamps, machines and stoves that goes to the faces; common practice, no source.
const machineRadiant = 0.5

// yearDays is a year without leap day.
const yearDays = 365

// indoors is the rooms made ready, and what the house's other parts ask about them.
type indoors struct {
	rooms  *warmth.Rooms
	names  []string
	livers []bool                    // rooms that people live in
	shares [warmth.MostRooms]float64 // of what people and machines give, by floor area of the rooms lived in
	home   int                       // the room in which store and battery stand: the first that is lived in
	bands  []comfort.Band            // of each day

	hearths []hearth
}

// prepareRooms makes the rooms ready under the sky.
func (r *Run) prepareRooms(track *sun.Track) error {
	parts := r.House.Rooms
	if parts == nil {
		return nil
	}
	if track == nil {
		return errors.New("the weather has no light of the sun, which rooms need: name a record that has it in weather.record, or take the layers out of the walls")
	}
	in := &indoors{home: -1, livers: parts.LivedIn}
	design := parts.Design
	design.Rooms = r.onGround(parts.Design.Rooms)
	if err := r.overSections(design.Rooms); err != nil {
		return err
	}
	area := 0.0
	for i := range design.Rooms {
		in.names = append(in.names, design.Rooms[i].Name)
		if parts.LivedIn[i] {
			if in.home < 0 {
				in.home = i
			}
			in.shares[i] = float64(design.Rooms[i].Area)
			area += in.shares[i]
		}
	}
	for i := range in.shares {
		if area > 0 {
			in.shares[i] /= area
		}
	}
	in.home = max(0, in.home)
	sky, err := light.NewOutdoors(r.Weather, track, light.Options{Albedo: groundAlbedo, Horizon: r.House.Horizon, Spread: sun.Perez})
	if err != nil {
		return err
	}
	if in.rooms, err = warmth.Prepare(&design, sky); err != nil {
		return err
	}
	in.hearths = r.hearths(in)
	if in.bands, err = r.bands(); err != nil {
		return err
	}
	r.in = in
	return nil
}

// onGround gives the rooms with the ground of this weather behind their walls.
func (r *Run) onGround(rooms []warmth.Room) []warmth.Room {
	far := r.undisturbed()
	own := append([]warmth.Room(nil), rooms...)
	for i := range own {
		own[i].Walls = append([]warmth.Wall(nil), own[i].Walls...)
		for j := range own[i].Walls {
			if w := &own[i].Walls[j]; w.Faces == warmth.Earth && w.Ground.Fixed == nil {
				w.Ground.Of = far
			}
		}
	}
	return own
}

// undisturbed gives ground whose face follows the air of a mean year of the record.
func (r *Run) undisturbed() *ground.Undisturbed {
	sums, counts := make([]float64, yearDays), make([]float64, yearDays)
	day := 0
	for d := range r.Weather.Days {
		if w := r.Weather.Days[d]; w.Month == 1 && w.Date == 1 {
			day = 0
		}
		at := min(day, yearDays-1)
		sums[at] += mean(r.Weather.Temperature[24*d : 24*d+24])
		counts[at]++
		day++
	}
	for i := range sums {
		if counts[i] > 0 {
			sums[i] /= counts[i]
		}
	}
	u := ground.FitSurface(sums, r.House.Rooms.Earth.DiffusivityPerDay())
	return &u
}

// bands gives the comfort band of each day, category II of EN 16798-1, from the air of the days before it.
func (r *Run) bands() ([]comfort.Band, error) {
	all := make([]comfort.Band, len(r.Weather.Days))
	running := quantity.Celsius(mean(r.Weather.Temperature[:24]))
	for d := range all {
		var err error
		if all[d], err = comfort.At(comfort.EN16798, "II", running); err != nil {
			return nil, err
		}
		running = comfort.Next(running, quantity.Celsius(mean(r.Weather.Temperature[24*d:24*d+24])))
	}
	return all, nil
}

// usualGains gives what people and machines put into the rooms as a mean of the first week, all of it had: with it the walls'
// first state is solved.
func (r *Run) usualGains() (in warmth.In) {
	const week = 7 * 24
	var row Row
	total := 0.0
	for i := range min(week, r.Hours()) {
		row.Wants = r.diary.At(i/24, i%24)
		if r.power != nil {
			loads := r.power.Loads.At(int(r.Weather.Days[i/24].Weekday), i%24, row.Wants.Persons > 0, power.Choice{})
			row.Power.Delivered = 0
			for _, wanted := range loads.Now {
				row.Power.Delivered += wanted
			}
		}
		total += personHeat*row.Wants.Persons + r.machines(&row)
	}
	r.spread(&in, total/float64(min(week, r.Hours()))/2, total/float64(min(week, r.Hours()))/2)
	return in
}

// spread shares heat to air and faces, W, among the rooms that are lived in.
func (r *Run) spread(in *warmth.In, air, radiant float64) {
	for k := range r.in.names {
		in.Rooms[k] = warmth.RoomIn{Air: quantity.Watts(r.in.shares[k] * air), Radiant: quantity.Watts(r.in.shares[k] * radiant)}
	}
}

// warm lets the rooms live with the heat of what really ran.
func (r *Run) warm(i int, s *State, row *Row) {
	people := personHeat * row.Wants.Persons
	machines := r.machines(row)
	row.RoomsIn.Hour = i
	radiant := people*personRadiant + machines*machineRadiant
	r.spread(&row.RoomsIn, people+machines-radiant, radiant)
	for k := range r.in.names {
		share := r.in.shares[k] * row.Wants.Persons
		row.RoomsIn.Rooms[k].Vapour, row.RoomsIn.Rooms[k].Carbon = share*personVapour, share*vent.Sitting
	}
	if r.chain != nil && r.chain.lived {
		r.breathe(row)
	}
	r.fire(i, s, row)
	r.in.rooms.Step(&s.Rooms, &row.RoomsIn, &row.Rooms)
}

// machines gives the heat of all that runs indoors, W: loads, inverter and battery, gas that cooks, the hot water store.
func (r *Run) machines(row *Row) float64 {
	p := &row.Power
	heat := float64(p.Delivered+p.InverterLoss-p.HotWater) + float64(row.Cooked)
	if r.power != nil && !r.outdoors.battery {
		heat += float64(p.BatteryLoss + p.SelfDischarge)
	}
	if r.hot != nil && !r.outdoors.store {
		heat += float64(row.Heat.Loss)
	}
	return heat
}

// Rooms lists the rooms that are computed.
func (r *Run) Rooms() []string {
	if r.in == nil {
		return nil
	}
	return r.in.names
}

// inside gives the air around what stands indoors.
func (r *Run) inside(s *State) quantity.Celsius {
	if r.in == nil {
		return r.indoors
	}
	return s.Rooms.Air[r.in.home]
}

// A RoomYears is what a room came to over all hours lived.
type RoomYears struct {
	Name                     string
	LivedIn                  bool
	Warmest, Coldest, Mean   quantity.Celsius // of the air, means of an hour
	Heating, Cooling         quantity.WattHours
	PeakHeating, PeakCooling quantity.Watts // means of an hour
	Comfort                  comfort.Count
	Seasons                  [Seasons]comfort.Count
	Rhythms                  [Seasons]Rhythm
	Air                      Breathing
	Days                     []RoomDay
	Heats                    []warmth.Heat      // by every way of walls, windows, leaks and sun
	Given                    quantity.WattHours // by people and machines, and by the clock
	Vented                   quantity.WattHours // out by vents and fans
	Between                  quantity.WattHours // in by doors to other rooms
	Stove                    Burning
	hours                    float64
}

// rooms begins their years.
func (r *Run) roomYears() []RoomYears {
	if r.in == nil {
		return nil
	}
	list := make([]RoomYears, len(r.in.names))
	for k := range list {
		list[k] = RoomYears{Name: r.in.names[k], LivedIn: r.in.livers[k], Warmest: -300, Coldest: 300}
	}
	return list
}

// add takes in one hour.
func (y *RoomYears) add(o *warmth.RoomOut, b comfort.Band) {
	y.Warmest, y.Coldest = max(y.Warmest, o.Mean), min(y.Coldest, o.Mean)
	y.hours++
	y.Mean += (o.Mean - y.Mean) / quantity.Celsius(y.hours)
	y.Heating += o.Heating.For(1)
	y.Cooling += o.Cooling.For(1)
	y.PeakHeating, y.PeakCooling = max(y.PeakHeating, o.Heating), max(y.PeakCooling, o.Cooling)
	y.Comfort.Add(b, o.Operative, 1)
}

// A Warmth is the verdict on the rooms: the hours a year in which the worst room that people live in lies outside its band.
type Warmth struct {
	Wanted  bool
	Want    float64 // hours a year that the file allows
	Outside float64 // hours a year
	Room    string
}

// Suffices reports whether the hours stay at or under the want.
func (w *Warmth) Suffices() bool { return w.Outside <= w.Want }

// warmthOf looks for the worst room.
func (r *Run) warmthOf(rooms []RoomYears, years int) Warmth {
	v := Warmth{Wanted: r.House.Wants.Warmth.Stated && r.in != nil, Want: r.House.Wants.Warmth.HoursOutside}
	for k := range rooms {
		if c := &rooms[k].Comfort; rooms[k].LivedIn && years > 0 {
			if outside := (c.Cold + c.Hot) / float64(years); v.Room == "" || outside > v.Outside {
				v.Outside, v.Room = outside, rooms[k].Name
			}
		}
	}
	return v
}

// roomNotes says what of the rooms is assumed.
func (r *Run) roomNotes() {
	if r.in == nil {
		return
	}
	r.Notes = append(r.Notes,
		fmt.Sprintf("people and machines warm the rooms that are lived in by their floor area; store and battery, where indoors, stand in %s", r.in.names[r.in.home]),
		"a person at home gives 75 W of dry heat, 50 g of vapour and 19 L of carbon dioxide an hour; vapour of cooking, washing and plants is not in the rooms' balance yet",
		"comfort is counted by category II of EN 16798-1 for rooms without machines, in every hour of the year, at home or away")
}
