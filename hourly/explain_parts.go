package hourly

import (
	"suffice/people"
	"suffice/power"
	"suffice/quantity"
	"suffice/site/sun"
	"suffice/warmth"
	"suffice/water"
)

// tell lists the sheets of the hour in the order of its phases.
func (w *witness) tell() []told {
	var list []told
	list = append(list, w.tellPeople()...)
	list = append(list, w.tellWater()...)
	list = append(list, w.tellSun()...)
	list = append(list, w.tellPower()...)
	list = append(list, w.tellHeat()...)
	list = append(list, w.tellChain()...)
	return append(list, w.tellRooms()...)
}

func (w *witness) air() quantity.Celsius { return quantity.Celsius(w.r.Weather.Temperature[w.hour]) }

func (w *witness) weekday() int { return int(w.r.Weather.Days[w.hour/24].Weekday) }

// tellPeople tells what people want and what they decide.
func (w *witness) tellPeople() (list []told) {
	h, row := w.r.House, &w.row
	if h.People != nil && len(h.People.Uses) > 0 {
		list = append(list, told{sheet: "wants-hour", inputs: h.People.Tell(w.weekday(), w.hour%24, row.Wants.Persons, row.Choice.Save)})
	}
	if !w.r.ruled || h.Rules == (people.Rules{}) {
		return list
	}
	rules := told{sheet: "rules-hour", inputs: h.Rules.Tell(w.state.Mind, row.Signs)}
	if w.swapRefused() {
		rules.caution = "The bottles could not give the gas for it in this hour, so nobody swapped."
	}
	return append(list, rules)
}

// swapRefused reports whether people would have cooked with gas and the bottles had none to give.
func (w *witness) swapRefused() bool {
	mind := w.state.Mind
	return w.r.power != nil && w.r.House.Rules.Decide(&mind, &w.row.Signs).Swap && !w.row.Choice.Swap
}

// tellWater tells roofs, tanks and taps.
func (w *witness) tellWater() (list []told) {
	if w.r.water == nil {
		return nil
	}
	row := &w.row
	for _, part := range w.r.water.Tell(water.Hour{
		Before: w.state.Water,
		Sky:    water.SkyIn{Rain: quantity.Millimetres(w.r.Weather.Rain[w.hour]), Temperature: w.air()},
		Wanted: row.Draw, Change: row.Choice.ChangeTank,
		Power: water.Power{Pump: row.Power.ServiceShare, Treatment: row.Power.ServiceShare},
	}) {
		list = append(list, told{sheet: part.Sheet, part: part.Part, inputs: part.Inputs})
	}
	return list
}

// tellSun tells the light on collector and arrays, and what they make of it.
func (w *witness) tellSun() (list []told) {
	if h := w.r.hot; h != nil {
		if h.Collector.Area > 0 {
			list = append(list, w.tellLight(&w.plate, "collector"), told{sheet: "collector-hour", inputs: h.Collector.Tell(w.plate.light[w.hour])})
		}
		list = append(list, told{sheet: "inlet-hour", inputs: w.inlet.Tell(w.ground, w.air())})
	}
	for k := range w.arrays {
		a, lying := &w.r.House.Power.Arrays[k], w.arrays[k].snow
		list = append(list, w.tellLight(&w.arrays[k], a.Name),
			told{sheet: "panel-hour", part: a.Name, inputs: a.Tell(w.arrays[k].light[w.hour], w.air(), w.dark(&lying, k, w.hour))})
	}
	return list
}

func (w *witness) tellLight(p *underLight, name string) told {
	day := dates(w.r.Weather.Days[w.hour/24 : w.hour/24+1])[0]
	l := sun.Light{Diffuse: quantity.Irradiance(w.r.Weather.Diffuse[w.hour]), Beam: quantity.Irradiance(w.r.Weather.Beam[w.hour])}
	return told{sheet: "light-hour", part: name, inputs: p.face.Tell(w.r.House.Place, w.r.House.Horizon, day, w.hour%24, l)}
}

// tellPower tells what the loads want, who gets it, and what battery and inverter did for it.
func (w *witness) tellPower() []told {
	y, row := w.r.power, &w.row
	if y == nil {
		return nil
	}
	choice := power.Choice{Swap: row.Choice.Swap, Wait: row.Choice.Wait}
	bank := power.BatteryIn{Offered: row.Power.Charged, Wanted: row.Power.Discharged, Temperature: row.Supply.Temperature}
	return []told{
		{sheet: "loads-hour", inputs: power.TellLoads(w.r.House.Power.Loads, w.weekday(), w.hour%24, row.Wants.Persons > 0, choice)},
		{sheet: "power-hour", inputs: y.Tell(w.state.Power, row.Supply)},
		{sheet: "battery-hour", inputs: y.Battery.Tell(w.state.Power.Battery, bank), caution: "Offered and wanted are what the sharing of the hour put in and took out."},
		{sheet: "inverter-hour", inputs: y.Inverter.Tell(&row.Power), caution: "All loads together stand here as what must run; the sharing of the hour says who they are."},
	}
}

// tellHeat tells hot water and gas.
func (w *witness) tellHeat() (list []told) {
	if h := w.r.hot; h != nil {
		list = append(list, told{sheet: "hot-water-hour", inputs: h.Tell(w.state.Hot, w.row.HeatIn)})
	}
	if g := w.r.gas; g != nil {
		list = append(list, told{sheet: "gas-hour", inputs: g.Tell(w.state.Gas, gasIn(&w.row, w.air()))})
	}
	return list
}

// tellRooms tells stoves, vents, air, heat and moisture of the rooms.
func (w *witness) tellRooms() (list []told) {
	if w.r.in == nil {
		return nil
	}
	for k := range w.r.in.hearths {
		h := &w.r.in.hearths[k]
		in := w.r.wood(h, w.hour, &w.state, &w.row)
		list = append(list, told{sheet: "stove-hour", part: w.r.in.names[h.room], inputs: h.stove.Tell(w.state.Stoves[h.room], &in)})
	}
	for _, part := range w.r.in.rooms.Tell(&warmth.Hour{Before: w.state.Rooms, After: w.after.Rooms, In: &w.row.RoomsIn, Out: &w.row.Rooms}) {
		list = append(list, told{sheet: part.Sheet, part: part.Part, inputs: part.Inputs})
	}
	return list
}
