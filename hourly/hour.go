package hourly

import (
	"suffice/hotwater"
	"suffice/people"
	"suffice/power"
	"suffice/quantity"
	"suffice/water"
)

// hour lets one hour pass. The order matters and is explained in the package comment.
func (r *Run) hour(i int, s *State, row *Row) {
	day, clock := i/24, i%24
	air := quantity.Celsius(r.Weather.Temperature[i])

	// Income and wants.
	r.decide(i, s, row)
	r.wantUsed(i, s, row)
	r.collect(i, s, row, air)
	r.wantHeat(i, s, row, air)
	r.wantPower(day, clock, s, row, air)

	// Shares.
	r.sharePower(s, row)
	r.shareWater(s, row)

	// What happens.
	r.heat(s, row)
	r.burn(s, row, air)
	r.use(i, s, row)
	r.warm(i, s, row)
	r.endDay(i, s, row)
}

// decide lets the people look at their stores and the sky, and choose what they ask for.
func (r *Run) decide(i int, s *State, row *Row) {
	row.Wants = r.diary.At(i/24, i%24)
	row.Asks = row.Wants
	if r.expected == nil {
		return
	}
	r.look(i, s, row)
	row.Choice = r.House.Rules.Decide(&s.Mind, &row.Signs)
	if row.Choice.Save > 0 {
		row.Asks = r.saving.At(i/24, i%24)
	}
}

// collect lets the rain in and asks the water works what the taps could give.
func (r *Run) collect(i int, s *State, row *Row, air quantity.Celsius) {
	w := r.water
	if w == nil {
		return
	}
	w.Income(&s.Water, water.SkyIn{Rain: quantity.Millimetres(r.Weather.Rain[i]), Temperature: air}, &row.Income)
	w.Want(&s.Water, &row.Draw, row.Choice.ChangeTank, &row.Taps)
	row.Supply.Services[power.WaterPump] = row.Taps.Pump
	row.Supply.Services[power.Treatment] = row.Taps.Treatment
}

// wantHeat asks the hot water system what power its pump and element want.
func (r *Run) wantHeat(i int, s *State, row *Row, air quantity.Celsius) {
	h := r.hot
	if h == nil {
		return
	}
	// Field by field: a struct made here and copied would wait for its own parts.
	in := &row.HeatIn
	in.Light, in.Air, in.Room, in.Cold = r.absorbed[i], air, r.room(s, air), quantity.Celsius(r.cold[i])
	in.Litres, in.Tap = row.Asks.HotLitres, row.Asks.Mix
	want := h.Want(&s.Hot, &row.HeatIn)
	row.Supply.Services[power.HotPump] = want.Pump.For(1)
	row.Supply.HotWater = want.Electric.For(1)
}

// room gives the air around the hot water store.
func (r *Run) room(s *State, air quantity.Celsius) quantity.Celsius {
	if r.House.HotWater.Outdoors {
		return air
	}
	return r.inside(s)
}

// wantPower gathers what the loads and the house's own machines want of the power supply.
func (r *Run) wantPower(day, clock int, s *State, row *Row, air quantity.Celsius) {
	row.Cooked = 0
	p := r.power
	if p == nil {
		return
	}
	weekday := int(r.Weather.Days[day].Weekday)
	choice := power.Choice{Swap: row.Choice.Swap, Wait: row.Choice.Wait}
	row.Loads = p.Loads.At(weekday, clock, row.Wants.Persons > 0, choice)
	if choice.Swap && !r.gasFor(row.Loads.Gas, s, air) {
		choice.Swap = false // nobody cooks on an empty bottle
		row.Choice.Swap = false
		row.Loads = p.Loads.At(weekday, clock, row.Wants.Persons > 0, choice)
	}
	row.Cooked = row.Loads.Gas
	row.Supply.Wants = row.Loads
	row.Supply.NewDay = clock == 0
	row.Supply.Panels = quantity.Watts(r.panels[day*24+clock])
	row.Supply.Temperature = r.inside(s)
	if r.House.Power.BatteryOutdoors {
		row.Supply.Temperature = air
	}
}

// gasFor reports whether the bottles can give so much in this hour.
func (r *Run) gasFor(fuel quantity.WattHours, s *State, air quantity.Celsius) bool {
	return r.gas != nil && r.gas.Available(&s.Gas, air) >= fuel
}

// sharePower gives out the hour's power by priority. A house file without power is
// silent about it: its pumps are then taken to be served, and a note says so.
func (r *Run) sharePower(s *State, row *Row) {
	if r.power == nil {
		row.Power.ServiceShare = 1
		return
	}
	r.power.Step(&s.Power, &row.Supply, &row.Power)
}

// shareWater gives out water as far as the pumps and lamps got power.
func (r *Run) shareWater(s *State, row *Row) {
	if r.water == nil {
		return
	}
	got := water.Power{Pump: row.Power.ServiceShare, Treatment: row.Power.ServiceShare}
	r.water.Share(&s.Water, got, &row.Taps)
}

// heat lets the hot water system live with the litres that really flowed and the power
// and gas that were there.
func (r *Run) heat(s *State, row *Row) {
	h := r.hot
	if h == nil {
		return
	}
	if r.water != nil && !row.Taps.Whole {
		share := served(&row.Draw, &row.Taps.Served)
		row.HeatIn.Litres, row.HeatIn.Tap = row.Asks.HotServed(&share)
	}
	row.HeatIn.Pump = row.Power.ServiceShare
	row.HeatIn.Electric = row.Power.HotWater
	row.HeatIn.Fuel = 0
	if g := r.gas; g != nil && (row.HeatIn.Litres > 0 || h.Backup.By == hotwater.GasUpper) {
		row.HeatIn.Fuel = max(0, g.Available(&s.Gas, row.HeatIn.Air)-row.Cooked)
	}
	h.Live(&s.Hot, &row.HeatIn, &row.Heat)
}

// served gives the share of each kind of water that was wanted and came.
func served(wanted, got *[people.Kinds]quantity.Litres) (share [people.Kinds]float64) {
	for k := range share {
		if wanted[k] > 0 {
			share[k] = float64(got[k] / wanted[k])
		}
	}
	return share
}

// burn takes from the bottles what cooking and hot water burned.
func (r *Run) burn(s *State, row *Row, air quantity.Celsius) {
	if r.gas == nil {
		return
	}
	in := gasIn(row, air)
	r.gas.Step(&s.Gas, in, &row.Gas)
}
