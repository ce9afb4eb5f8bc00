package hourly

import (
	"suffice/gas"
	"suffice/people"
	"suffice/power"
	"suffice/quantity"
	"suffice/water"
)

// A Tally is what one day came to. Sums are over its hours.
type Tally struct {
	WaterAsked, WaterMet float64 // L that must run: drinking, washing, flushing
	PowerAsked, PowerMet float64 // Wh that must run: the house's own machines and the loads marked must
	Unpowered            float64 // L not had, of any use, because pump or treatment had no power
	Rain                 float64 // mm
	Caught, Delivered    float64 // L into the tanks
	Spilled              float64 // L
	Panels               float64 // Wh the panels could give, before anything was curtailed
	Curtailed            float64 // Wh
	Generator            float64 // Wh
	Solar                float64 // Wh of heat into the hot water store
	Backup               float64 // Wh of heat from gas or electricity into hot water
	HeatShort            float64 // Wh of heat wanted at the taps and not had
	Gas                  float64 // kg burned
	ChargeLow            float64 // lowest reading of the battery, 0 to 1
	TankEnd              float64 // usable water at midnight over what full tanks give, 0 to 1
	Swapped, Waited      uint8   // hours in which the people did so
	Saved                uint8
	Hours                uint8 // lived of this day

	TopUp      float64 // L from the tanks into the flush well
	Greywater  float64 // L to the planter
	PlantWater float64 // L that the planter gave off
	Sewage     float64 // L to the septic tank, or to the sewer
	Surfaced   float64 // L of sewage on the ground
	Picked     float64 // kg from planter and beds
	WellAge    float64 // days, of the flush well's water at midnight
	Salinity   float64 // dS/m of the planter's soil at midnight
	Stress     float64 // evaporated of what the planter's plants wanted, 0 to 1
	Sludge     float64 // share of the septic tank that sludge and scum fill at midnight
}

// add takes in one hour.
func (t *Tally) add(row *Row, rain quantity.Millimetres) {
	wants := &row.Asks.Litres
	asked := wants[people.Drinking] + wants[people.Washing] + wants[people.Flushing]
	t.WaterAsked += float64(asked)
	if row.Taps.Whole && row.Chain.Flush == 0 {
		t.WaterMet += float64(asked)
	} else {
		t.short(row)
	}
	if !row.Income.Quiet {
		t.Rain += float64(rain)
		t.Caught += float64(row.Income.Caught)
		t.Delivered += float64(row.Income.Delivered)
		t.Spilled += float64(row.Income.Spilled)
	}

	p := &row.Power
	served := &row.Supply.Services
	must := served[power.WaterPump] + served[power.Treatment] + served[power.HotPump] + served[power.FlushPump] + p.Met[power.Must]
	met := must
	if !p.Plain {
		must += p.Short[power.Must]
		met = must - (p.ServiceShort + p.Short[power.Must])
		t.Generator += float64(p.Generator)
	}
	t.PowerAsked += float64(must)
	t.PowerMet += float64(met)
	t.Panels += float64(p.Income)
	t.Curtailed += float64(p.Curtailed)
	if t.Hours == 0 || p.Charge < t.ChargeLow {
		t.ChargeLow = p.Charge
	}

	t.Solar += float64(row.Heat.Solar)
	t.Backup += float64(row.Heat.Gas + row.Heat.Electric)
	t.HeatShort += float64(row.Heat.Short)
	if !row.Gas.Still {
		t.Gas += float64(row.Gas.Burned)
	}
	t.choice(&row.Choice)
	t.Hours++
}

// short takes in what came of the water that must run where not all of it did, or some came from the flush well.
func (t *Tally) short(row *Row) {
	got := &row.Taps.Served
	met := got[people.Drinking] + got[people.Washing] + got[people.Flushing]
	if row.Chain.Flush > 0 { // the cisterns drink from the well, which the tanks top up
		met += row.Chain.Flushed - got[people.Flushing]
	}
	t.WaterMet += float64(met)
	t.Unpowered += float64(row.Taps.Cause[water.PumpPower] + row.Taps.Cause[water.TreatmentPower])
}

// chain takes in what an hour of used water and beds did.
func (t *Tally) chain(u *ChainRow) {
	t.TopUp += float64(u.Topped.Litres)
	t.Greywater += float64(u.Grey.Fed.Litres)
	t.PlantWater += float64(u.Planter.Evaporated)
	t.Sewage += float64(u.Sewage.Inflow)
	t.Surfaced += float64(u.Trench.Surfaced)
	if !u.Ended {
		return
	}
	t.Salinity, t.Stress = u.Day.Planter.Salinity, u.Day.Planter.Stress
	t.Picked = u.Day.Growth.Picked
	for b := range u.Day.Beds {
		t.Picked += u.Day.Beds[b].Picked
	}
}

func (t *Tally) choice(c *people.Choice) {
	if c.Swap {
		t.Swapped++
	}
	if c.Wait {
		t.Waited++
	}
	if c.Save > 0 {
		t.Saved++
	}
}

// gasIn says what cooking and hot water burn.
func gasIn(row *Row, air quantity.Celsius) gas.SupplyIn {
	return gas.SupplyIn{Want: row.Cooked + row.Heat.Fuel, Air: air}
}
