package hourly

import (
	"suffice/hotwater"
	"suffice/people"
	"suffice/power"
	"suffice/quantity"
	"suffice/water"
)

// hour lets an hour of the record pass of which all is told, the signs as well.
func (r *Run) hour(i int, s *State, row *Row) {
	now, usual := &r.sky[i], &r.customs[i/24][i%24]
	r.look(now, usual, s, row)
	r.live(i/24, i%24, now, usual, s, row)
}

// live lets one hour pass. The order matters and is explained in the package comment.
func (r *Run) live(day, clock int, now *ahead, usual *custom, s *State, row *Row) {
	// Income and wants.
	ask := r.decide(now, usual, s, row)
	if r.chain != nil {
		r.wantUsed(day, clock, s, row)
	}
	r.collect(now, ask, s, row)
	r.wantHeat(now, s, row)
	r.wantPower(now, usual, clock == 0, s, row)

	// Shares.
	r.sharePower(s, row)
	r.shareWater(s, row)

	// What happens.
	r.heat(s, row)
	r.burn(now, s, row)
	if r.chain != nil {
		r.use(day, clock, now, usual, ask, s, row)
	}
	if r.in != nil {
		r.warm(24*day+clock, s, row)
	}
	if r.chain != nil {
		r.endDay(day, clock, s, row)
	}
}

// decide lets the people look at their stores and the sky, and choose what they ask for.
func (r *Run) decide(now *ahead, usual *custom, s *State, row *Row) *asking {
	ask := &usual.full
	if row.Choice = (people.Choice{}); r.ruled && r.restless(now, s) {
		r.look(now, usual, s, row)
		if row.Choice = r.House.Rules.Decide(&s.Mind, &row.Signs); row.Choice.Save > 0 {
			ask = &usual.saving
		}
	}
	row.Wants, row.Asks = usual.full.wants, ask.wants
	row.Draw = ask.wants.Litres
	return ask
}

// collect lets the rain in and asks the water works what the taps could give.
func (r *Run) collect(now *ahead, ask *asking, s *State, row *Row) {
	w := r.water
	if w == nil {
		return
	}
	w.Income(&s.Water, water.SkyIn{Rain: now.rain, Temperature: now.air}, &row.Income)
	if r.chain == nil {
		w.Follow(&s.Water, &row.Draw, &ask.taps, row.Choice.ChangeTank, &row.Taps)
	} else { // beds and well have changed the draw
		w.Want(&s.Water, &row.Draw, row.Choice.ChangeTank, &row.Taps)
	}
	row.Supply.Services[power.WaterPump], row.Supply.Services[power.Treatment] = row.Taps.Pump, row.Taps.Treatment
}

// wantHeat asks the hot water system what power its pump and element want.
func (r *Run) wantHeat(now *ahead, s *State, row *Row) {
	h := r.hot
	if h == nil {
		return
	}
	// Field by field: a struct made here and copied would wait for its own parts.
	in := &row.HeatIn
	in.Light, in.Air, in.Cold = now.absorbed, now.air, now.cold
	if r.outdoors.store {
		in.Room = now.air
	} else {
		in.Room = r.inside(s)
	}
	in.Litres, in.Tap = row.Asks.HotLitres, row.Asks.Mix
	want := h.Want(&s.Hot, in)
	row.Supply.Services[power.HotPump] = want.Pump.For(1)
	row.Supply.HotWater = want.Electric.For(1)
}

// wantPower gathers what the loads and the house's own machines want of the power supply.
func (r *Run) wantPower(now *ahead, usual *custom, newDay bool, s *State, row *Row) {
	row.Cooked = 0
	if r.power == nil {
		return
	}
	wait := 0
	if row.Choice.Wait {
		wait = 1
	}
	wants := usual.loads[0][wait]
	if row.Choice.Swap {
		if swapped := usual.loads[1][wait]; r.gasFor(swapped.Gas, s, now.air) {
			wants = swapped
		} else {
			row.Choice.Swap = false // nobody cooks on an empty bottle
		}
	}
	row.Cooked = wants.Gas
	row.Supply.Wants = wants
	row.Supply.NewDay = newDay
	row.Supply.Panels = now.panels
	if r.outdoors.battery {
		row.Supply.Temperature = now.air
	} else {
		row.Supply.Temperature = r.inside(s)
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
	if share := row.Power.ServiceShare; share < 1 {
		r.water.Share(&s.Water, water.Power{Pump: share, Treatment: share}, &row.Taps)
		return
	}
	r.water.Pour(&s.Water, &row.Taps)
}

// heat lets the hot water system live with the litres that really flowed and the power
// and gas that were there.
func (r *Run) heat(s *State, row *Row) {
	h := r.hot
	if h == nil {
		return
	}
	in := &row.HeatIn
	if r.water != nil && !row.Taps.Whole {
		share := served(&row.Draw, &row.Taps.Served)
		in.Litres, in.Tap = row.Asks.HotServed(&share)
	}
	in.Pump, in.Electric, in.Fuel = row.Power.ServiceShare, row.Power.HotWater, 0
	if g := r.gas; g != nil && (in.Litres > 0 || h.Backup.By == hotwater.GasUpper) {
		if left := g.Available(&s.Gas, in.Air) - row.Cooked; left > 0 {
			in.Fuel = left
		}
	}
	h.Live(&s.Hot, in, &row.Heat)
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
func (r *Run) burn(now *ahead, s *State, row *Row) {
	if r.gas == nil {
		return
	}
	in := gasIn(row, now.air)
	if in.Want > 0 || !r.gas.Rests(&s.Gas, &row.Gas) {
		r.gas.Step(&s.Gas, in, &row.Gas)
	}
}
