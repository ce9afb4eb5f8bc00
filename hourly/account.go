package hourly

import (
	"suffice/hotwater"
	"suffice/people"
	"suffice/power"
	"suffice/quantity"
	"suffice/water"
)

// An Account is what a whole record came to from one start.
type Account struct {
	Days         []Tally
	Totals       Totals
	Water, Power Budget
	Waste        Budget // its short days are those with sewage on the ground
	Food         Food
	Rooms        []RoomYears
	Warmth       Warmth
	Coldest      Week
	Hottest      Week
	Residuals    Residuals
	End          State
}

// Totals are sums over all hours, in the units of the parts.
type Totals struct {
	Income    water.IncomeOut
	Served    [water.Kinds]quantity.Litres
	Short     [water.Kinds]quantity.Litres
	Cause     [water.Causes]quantity.Litres
	Backwash  quantity.Litres
	Pump      quantity.WattHours // electricity used
	Treatment quantity.WattHours
	Power     power.SystemOut // Charge and ServiceShare are those of the last hour
	Services  quantity.WattHours
	Heat      hotwater.Out
	Episodes  hotwater.EpisodesState // runs of days on which the backup heated
	Cooked    quantity.WattHours     // of fuel
	Gas       quantity.Kilograms
	GasShort  quantity.WattHours
	Bottles   int                           // emptied
	Asked     [people.Kinds]quantity.Litres // of the tanks
	Chain     ChainTotals
}

// Residuals are what the sums of a whole run do not explain: rounding, if nothing is wrong.
type Residuals struct {
	WaterLitres   float64
	PowerKilowatt float64 // kWh
	HeatKilowatt  float64 // kWh, of the hot water
	RoomsKilowatt float64 // kWh
	Chain         ChainResiduals
}

// backupTrifle is the heat in a day below which nobody would say that the backup ran:
// a washing-up bowl of 5 L warmed by 30 K. Assumed.
const backupTrifle quantity.WattHours = 175

// Account lives the whole record from one start and adds up.
func (r *Run) Account(start State) (*Account, error) {
	a := &Account{Days: make([]Tally, len(r.Weather.Days)), End: start}
	a.Rooms = r.roomYears()
	diary := r.comfortDiary(a.Rooms)
	episodes := hotwater.Episodes{Trifle: backupTrifle}
	span := Span{Last: r.Hours(), Days: a.Days, See: func(i int, row *Row) {
		a.Totals.add(row)
		if r.in != nil {
			diary.add(i, row)
		}
		if c := r.chain; c != nil {
			a.Totals.Chain.add(c, c.days[i/24].month, row)
			if row.Chain.Ended {
				a.Food.Years = c.addFood(a.Food.Years, i/24, r.Weather.Days[i/24].Year, &row.Chain)
			}
		}
		if i%24 == 23 {
			episodes.EndDay(&a.Totals.Episodes, quantity.WattHours(a.Days[i/24].Backup))
		}
	}}
	if err := r.Live(&a.End, &span); err != nil {
		return nil, err
	}
	a.Water = budgetOf(r.Weather.Days, func(d int) float64 { return a.Days[d].WaterAsked }, func(d int) float64 { return a.Days[d].WaterMet })
	a.Power = budgetOf(r.Weather.Days, func(d int) float64 { return a.Days[d].PowerAsked }, func(d int) float64 { return a.Days[d].PowerMet })
	a.Water.Wanted, a.Water.Want = r.House.Wants.Water.Stated && r.water != nil, r.House.Wants.Water.ShortDays
	a.Power.Wanted, a.Power.Want = r.House.Wants.Power.Stated && r.power != nil, r.House.Wants.Power.ShortDays
	if r.chain != nil {
		a.Waste = budgetOf(r.Weather.Days, func(d int) float64 { return a.Days[d].Sewage }, func(d int) float64 { return a.Days[d].Sewage - a.Days[d].Surfaced })
		a.Waste.Wanted, a.Waste.Want = r.House.Wants.Waste.Stated && r.House.Drains != nil && r.House.Drains.Septic != nil, r.House.Wants.Waste.ShortDays
		a.Food = r.foodOf(a.Food.Years)
	}
	diary.end()
	a.Coldest, a.Hottest = diary.weeks.coldest, diary.weeks.hottest
	a.Warmth = r.warmthOf(a.Rooms, a.Power.Years)
	a.Residuals = r.residuals(&start, a)
	return a, nil
}

// add takes in one hour.
func (t *Totals) add(row *Row) {
	t.addWater(row)
	t.addPower(row)
	t.addHeat(row)
}

func (t *Totals) addWater(row *Row) {
	in, out := &row.Income, &t.Income
	out.Fell += in.Fell
	out.Wetted += in.Wetted
	out.Missed += in.Missed
	out.Diverted += in.Diverted
	out.Caught += in.Caught
	out.Delivered += in.Delivered
	out.Loads += in.Loads
	out.Paid += in.Paid
	out.Spilled += in.Spilled
	out.Leaked += in.Leaked
	for k := range water.Kinds {
		t.Served[k] += row.Taps.Served[k]
		t.Short[k] += row.Taps.Short[k]
	}
	for k := range people.Kinds {
		t.Asked[k] += row.Draw[k]
	}
	for c := range water.Causes {
		t.Cause[c] += row.Taps.Cause[c]
	}
	t.Backwash += row.Taps.Backwash
	t.Pump += row.Taps.Pump
	t.Treatment += row.Taps.Treatment
}

func (t *Totals) addPower(row *Row) {
	in, out := &row.Power, &t.Power
	out.Income += in.Income
	out.Curtailed += in.Curtailed
	out.ControllerLoss += in.ControllerLoss
	out.Generator += in.Generator
	out.ChargerLoss += in.ChargerLoss
	out.Fuel += in.Fuel
	out.Charged += in.Charged
	out.Discharged += in.Discharged
	out.BatteryLoss += in.BatteryLoss
	out.SelfDischarge += in.SelfDischarge
	out.Drawn += in.Drawn
	out.InverterLoss += in.InverterLoss
	out.Delivered += in.Delivered
	out.ServiceShort += in.ServiceShort
	for n := range power.Needs {
		out.Met[n] += in.Met[n]
		out.Short[n] += in.Short[n]
		out.GivenUp[n] += in.GivenUp[n]
	}
	out.HotWater += in.HotWater
	out.MadeUp += in.MadeUp
	out.OverLimit += in.OverLimit
	out.ServiceShare, out.Charge = in.ServiceShare, in.Charge
	for _, wanted := range row.Supply.Services {
		t.Services += wanted
	}
}

func (t *Totals) addHeat(row *Row) {
	in, out := &row.Heat, &t.Heat
	out.Solar += in.Solar
	out.Gas += in.Gas
	out.Fuel += in.Fuel
	out.Electric += in.Electric
	out.ElectricUsed += in.ElectricUsed
	out.PumpUsed += in.PumpUsed
	out.Frost += in.Frost
	out.Under50 += in.Under50
	out.Delivered += in.Delivered
	out.Short += in.Short
	out.Loss += in.Loss
	out.FrostHeat += in.FrostHeat
	out.Refused += in.Refused
	out.Hot += in.Hot
	out.Stagnant += in.Stagnant
	out.Unpumped += in.Unpumped
	t.Cooked += row.Cooked
	t.Gas += row.Gas.Burned
	t.GasShort += row.Gas.Short
	t.Bottles += row.Gas.Emptied
}

// residuals holds what came against what went and what the stores gained.
func (r *Run) residuals(start *State, a *Account) (left Residuals) {
	t := &a.Totals
	if w := r.water; w != nil {
		held := func(s *State) float64 { return float64(w.Held(&s.Water) + w.Snow(&s.Water)) }
		in := float64(t.Income.Fell + t.Income.Delivered)
		out := float64(t.Income.Wetted + t.Income.Missed + t.Income.Diverted + t.Income.Spilled + t.Income.Leaked + t.Backwash)
		for _, served := range t.Served {
			out += float64(served)
		}
		left.WaterLitres = in - out - (held(&a.End) - held(start))
	}
	if r.power != nil {
		held := func(s *State) float64 { return float64(s.Power.Battery.Available + s.Power.Battery.Bound) }
		p := &t.Power
		in := float64(p.Income + p.Generator)
		out := float64(p.Delivered + p.ControllerLoss + p.ChargerLoss + p.InverterLoss + p.Curtailed + p.BatteryLoss + p.SelfDischarge)
		left.PowerKilowatt = (in - out - (held(&a.End) - held(start))) / 1000
	}
	if h := r.hot; h != nil {
		in := float64(t.Heat.Solar + t.Heat.Gas + t.Heat.Electric)
		out := float64(t.Heat.Delivered + t.Heat.Loss + t.Heat.FrostHeat)
		left.HeatKilowatt = (in - out - float64(h.Held(&a.End.Hot, 0)-h.Held(&start.Hot, 0))) / 1000
	}
	if r.in != nil {
		in, out := 0.0, 0.0
		for k := range a.Rooms {
			y := &a.Rooms[k]
			in += float64(y.Given + y.Stove.Heat + y.Heating + y.Between)
			out += float64(y.Vented + y.Cooling)
			for _, h := range y.Heats {
				out += float64(h.Out)
			}
		}
		left.RoomsKilowatt = (in - out - float64(r.in.rooms.Stored(&a.End.Rooms)-r.in.rooms.Stored(&start.Rooms))) / 1000
	}
	if r.chain != nil {
		left.Chain = r.chain.residuals(&start.Chain, &a.End.Chain, &t.Chain)
	}
	return left
}
