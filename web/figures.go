package web

import (
	"suffice/people"
	"suffice/power"
	"suffice/sheet"
	"suffice/water"
)

// A figure is one line of a mean year.
type figure struct {
	Says  string
	Value float64
	Unit  string
	Part  bool // of the line above it
}

// A tally is figures that come about in one kind of hour, which unfolds as sheets.
type tally struct {
	Title  string
	Rows   []figure
	Hour   string // the hour that is unfolded, as people say it
	At     string // the same for an address
	Worked []sheet.Worked
	Why    string // why this hour
}

// A source says which sheets unfold the figures of a tally: the one table of what shows what.
type source struct {
	title  string // key of the catalogue
	group  string // of the telling hour
	sheets []string
}

var (
	fromRoofs    = source{"water.roofs", tellsWater, []string{"roof-hour"}}
	fromTanks    = source{"water.tanks", tellsWater, []string{"tank-hour"}}
	fromTaps     = source{"water.taps", tellsWater, []string{"wants-hour", "uses-hour"}}
	fromPanels   = source{"power.panels", tellsPower, []string{"light-hour", "panel-hour"}}
	fromBattery  = source{"power.battery", tellsPower, []string{"battery-hour"}}
	fromInverter = source{"power.sharing", tellsPower, []string{"loads-hour", "power-hour", "inverter-hour"}}
	fromStore    = source{"heat.store", tellsHeat, []string{"collector-hour", "inlet-hour", "hot-water-hour"}}
	fromBottles  = source{"heat.bottles", tellsHeat, []string{"gas-hour"}}
	fromPlanter  = source{"garden.planter", tellsPlanter, []string{"planter-hour"}}
	fromWell     = source{"well.title", tellsWell, []string{"well-hour"}}
	fromAir      = source{"air.title", tellsAir, []string{"vents-hour", "damp-hour"}}
)

// sums are figures before they are divided by the years and shown.
type sums struct {
	v     *view
	years float64
	rows  []figure
}

// add takes in a sum over all years; nothing at all is left out.
func (s *sums) add(key string, total float64, unit string, part bool) {
	if total != 0 {
		s.rows = append(s.rows, figure{Says: s.v.Say(key), Value: total / s.years, Unit: unit, Part: part})
	}
}

// tallied makes a tally of the figures that its source unfolds.
func (v *view) tallied(from source, fill func(*sums)) (tally, error) {
	s := sums{v: v, years: v.years()}
	fill(&s)
	hour := v.Seen.hours[from.group]
	t := tally{Title: v.Say(from.title), Rows: s.rows, Hour: v.hourSaid(hour), Why: v.Say("why." + from.group),
		At: string(v.Proof.Run.AppendHour(nil, hour))}
	var err error
	t.Worked, err = v.works(from.group, from.sheets...)
	return t, err
}

// tallies makes those of a page and leaves empty ones out.
func (v *view) tallies(list ...func() (tally, error)) ([]tally, error) {
	var all []tally
	for _, make := range list {
		t, err := make()
		if err != nil {
			return nil, err
		}
		if len(t.Rows) > 0 {
			all = append(all, t)
		}
	}
	return all, nil
}

func (v *view) roofs() (tally, error) {
	in := &v.Proof.Stated.Totals.Income
	return v.tallied(fromRoofs, func(s *sums) {
		s.add("water.fell", float64(in.Fell), "L", false)
		s.add("water.wetted", float64(in.Wetted), "L", true)
		s.add("water.missed", float64(in.Missed), "L", true)
		s.add("water.diverted", float64(in.Diverted), "L", true)
		s.add("water.caught", float64(in.Caught), "L", true)
	})
}

func (v *view) tanks() (tally, error) {
	t := &v.Proof.Stated.Totals
	return v.tallied(fromTanks, func(s *sums) {
		s.add("water.delivered", float64(t.Income.Delivered), "L", false)
		s.add("water.spilled", float64(t.Income.Spilled), "L", false)
		s.add("water.leaked", float64(t.Income.Leaked), "L", false)
	})
}

func (v *view) taps() (tally, error) {
	t := &v.Proof.Stated.Totals
	return v.tallied(fromTaps, func(s *sums) {
		for k, key := range [people.Kinds]string{"water.drinking", "water.washing", "water.flushing", "water.outdoor"} {
			s.add(key, float64(t.Served[k]), "L", false)
		}
		s.add("water.backwash", float64(t.Backwash), "L", false)
		for c, key := range [water.Causes]string{"water.low", "water.flow", "water.treat", "water.unpumped", "water.unlit"} {
			s.add(key, float64(t.Cause[c]), "L", false)
		}
		s.add("water.electricity", float64(t.Pump+t.Treatment)/1000, "kWh", false)
	})
}

func (v *view) panels() (tally, error) {
	e := &v.Proof.Stated.Totals.Power
	return v.tallied(fromPanels, func(s *sums) {
		s.add("power.income", float64(e.Income)/1000, "kWh", false)
		s.add("power.curtailed", float64(e.Curtailed)/1000, "kWh", true)
	})
}

func (v *view) battery() (tally, error) {
	e := &v.Proof.Stated.Totals.Power
	return v.tallied(fromBattery, func(s *sums) {
		s.add("power.charged", float64(e.Charged)/1000, "kWh", false)
		s.add("power.discharged", float64(e.Discharged)/1000, "kWh", false)
		s.add("power.battery_loss", float64(e.BatteryLoss+e.SelfDischarge)/1000, "kWh", false)
	})
}

func (v *view) sharing() (tally, error) {
	t := &v.Proof.Stated.Totals
	e := &t.Power
	return v.tallied(fromInverter, func(s *sums) {
		s.add("power.services", float64(t.Services-e.ServiceShort)/1000, "kWh", false)
		for n, key := range [power.Needs]string{"power.must", "power.should", "power.could"} {
			s.add(key, float64(e.Met[n])/1000, "kWh", false)
		}
		s.add("power.made_up", float64(e.MadeUp)/1000, "kWh", false)
		s.add("power.element", float64(e.HotWater)/1000, "kWh", false)
		for n, key := range [power.Needs]string{"power.short_must", "power.short_should", "power.short_could"} {
			s.add(key, float64(e.Short[n])/1000, "kWh", false)
		}
		s.add("power.converted", float64(e.ControllerLoss+e.ChargerLoss+e.InverterLoss)/1000, "kWh", false)
		s.add("power.generator", float64(e.Generator)/1000, "kWh", false)
		s.add("power.fuel", float64(e.Fuel), "L", false)
	})
}

func (v *view) store() (tally, error) {
	h := &v.Proof.Stated.Totals.Heat
	return v.tallied(fromStore, func(s *sums) {
		s.add("heat.delivered", float64(h.Delivered)/1000, "kWh", false)
		s.add("heat.solar", float64(h.Solar)/1000, "kWh", false)
		s.add("heat.backup", float64(h.Gas+h.Electric)/1000, "kWh", false)
		s.add("heat.loss", float64(h.Loss)/1000, "kWh", false)
		s.add("heat.short", float64(h.Short)/1000, "kWh", false)
	})
}

func (v *view) bottles() (tally, error) {
	t := &v.Proof.Stated.Totals
	return v.tallied(fromBottles, func(s *sums) {
		s.add("heat.burned", float64(t.Gas), "kg", false)
		s.add("heat.emptied", float64(t.Bottles), "", false)
		s.add("heat.cooked", float64(t.Cooked)/1000, "kWh", false)
		s.add("heat.gas_short", float64(t.GasShort)/1000, "kWh", false)
	})
}
