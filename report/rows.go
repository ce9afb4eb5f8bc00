package report

import (
	"fmt"
	"io"
	"strconv"
	"strings"

	"suffice/hourly"
	"suffice/people"
	"suffice/power"
)

// A RowColumn is one column of the hours written out. Its name ends in its unit.
type RowColumn struct {
	Name string
	Of   func(v *RowView) float64
}

// A RowView is what a column may look at: an hour, what it did, and what is left after it.
type RowView struct {
	Run   *hourly.Run
	Hour  int
	Row   *hourly.Row
	After *hourly.State
}

// RowColumns lists the columns for a house: those of parts it has.
func RowColumns(r *hourly.Run) []RowColumn {
	list := []RowColumn{
		{"persons", func(v *RowView) float64 { return v.Row.Wants.Persons }},
		{"air_degc", func(v *RowView) float64 { return v.Run.Weather.Temperature[v.Hour] }},
	}
	if len(r.Weather.Rain) > 0 {
		list = append(list, RowColumn{"rain_mm", func(v *RowView) float64 { return v.Run.Weather.Rain[v.Hour] }})
	}
	if len(r.Weather.Global) > 0 {
		list = append(list, RowColumn{"global_w_m2", func(v *RowView) float64 { return v.Run.Weather.Global[v.Hour] }},
			RowColumn{"diffuse_w_m2", func(v *RowView) float64 { return v.Run.Weather.Diffuse[v.Hour] }},
			RowColumn{"beam_w_m2", func(v *RowView) float64 { return v.Run.Weather.Beam[v.Hour] }})
	}
	list = append(list,
		RowColumn{"swap_yes", func(v *RowView) float64 { return yes(v.Row.Choice.Swap) }},
		RowColumn{"wait_yes", func(v *RowView) float64 { return yes(v.Row.Choice.Wait) }},
		RowColumn{"save_share", func(v *RowView) float64 { return v.Row.Choice.Save }})
	if r.House.Water != nil {
		list = append(list, waterColumns()...)
	}
	if r.House.Power != nil {
		list = append(list, powerColumns()...)
	}
	if r.House.HotWater != nil {
		list = append(list, heatColumns()...)
	}
	if r.House.Gas != nil {
		list = append(list, RowColumn{"gas_burned_kg", func(v *RowView) float64 { return float64(v.Row.Gas.Burned) }},
			RowColumn{"gas_short_wh", func(v *RowView) float64 { return float64(v.Row.Gas.Short) }},
			RowColumn{"gas_held_kg", func(v *RowView) float64 { return float64(v.After.Gas.Held) }})
	}
	list = append(list, chainColumns(r)...)
	return append(list, roomColumns(r)...)
}

// roomColumns tells air, faces and machines of each room.
func roomColumns(r *hourly.Run) (list []RowColumn) {
	for k, name := range r.Rooms() {
		word := strings.ReplaceAll(strings.ToLower(name), " ", "_")
		list = append(list,
			RowColumn{word + "_air_degc", func(v *RowView) float64 { return float64(v.Row.Rooms.Rooms[k].Mean) }},
			RowColumn{word + "_faces_degc", func(v *RowView) float64 { return float64(v.Row.Rooms.Rooms[k].Radiant) }},
			RowColumn{word + "_coldest_face_degc", func(v *RowView) float64 { return float64(v.Row.Rooms.Rooms[k].Face) }},
			RowColumn{word + "_vapour_kg_m3", func(v *RowView) float64 { return v.Row.Rooms.Rooms[k].Vapour }},
			RowColumn{word + "_condensed_kg", func(v *RowView) float64 { return float64(v.Row.Rooms.Rooms[k].Condensed) }},
			RowColumn{word + "_carbon_dioxide_ppm", func(v *RowView) float64 { return v.Row.Rooms.Rooms[k].Carbon }},
			RowColumn{word + "_vents_open_share", func(v *RowView) float64 { return v.Row.Rooms.Rooms[k].Open }},
			RowColumn{word + "_heating_w", func(v *RowView) float64 { return float64(v.Row.Rooms.Rooms[k].Heating) }},
			RowColumn{word + "_cooling_w", func(v *RowView) float64 { return float64(v.Row.Rooms.Rooms[k].Cooling) }})
		if r.House.Rooms.Stoves[k] != nil {
			list = append(list, RowColumn{word + "_wood_kg", func(v *RowView) float64 { return float64(v.Row.Stoves[k].Wood) }})
		}
	}
	return list
}

func yes(b bool) float64 {
	if b {
		return 1
	}
	return 0
}

func waterColumns() []RowColumn {
	list := []RowColumn{
		{"roof_fell_l", func(v *RowView) float64 { return float64(v.Row.Income.Fell) }},
		{"roof_wetted_l", func(v *RowView) float64 { return float64(v.Row.Income.Wetted) }},
		{"roof_missed_l", func(v *RowView) float64 { return float64(v.Row.Income.Missed) }},
		{"first_flush_l", func(v *RowView) float64 { return float64(v.Row.Income.Diverted) }},
		{"caught_l", func(v *RowView) float64 { return float64(v.Row.Income.Caught) }},
		{"delivered_l", func(v *RowView) float64 { return float64(v.Row.Income.Delivered) }},
		{"overflow_l", func(v *RowView) float64 { return float64(v.Row.Income.Spilled) }},
		{"leak_l", func(v *RowView) float64 { return float64(v.Row.Income.Leaked) }},
	}
	for k := range people.Kinds {
		list = append(list,
			RowColumn{k.String() + "_asked_l", func(v *RowView) float64 { return float64(v.Row.Asks.Litres[k]) }},
			RowColumn{k.String() + "_had_l", func(v *RowView) float64 { return float64(v.Row.Taps.Served[k]) }})
	}
	return append(list,
		RowColumn{"drawn_l", func(v *RowView) float64 { return float64(v.Row.Taps.Drawn) }},
		RowColumn{"backwash_l", func(v *RowView) float64 { return float64(v.Row.Taps.Backwash) }},
		RowColumn{"pump_wh", func(v *RowView) float64 { return float64(v.Row.Taps.Pump) }},
		RowColumn{"treatment_wh", func(v *RowView) float64 { return float64(v.Row.Taps.Treatment) }},
		RowColumn{"snow_l", func(v *RowView) float64 { return float64(v.Run.House.Water.Snow(&v.After.Water)) }},
		RowColumn{"tank_l", func(v *RowView) float64 { return float64(v.Run.House.Water.Held(&v.After.Water)) }})
}

func powerColumns() []RowColumn {
	list := []RowColumn{
		{"panels_wh", func(v *RowView) float64 { return float64(v.Row.Power.Income) }},
		{"curtailed_wh", func(v *RowView) float64 { return float64(v.Row.Power.Curtailed) }},
		{"generator_wh", func(v *RowView) float64 { return float64(v.Row.Power.Generator) }},
		{"charged_wh", func(v *RowView) float64 { return float64(v.Row.Power.Charged) }},
		{"discharged_wh", func(v *RowView) float64 { return float64(v.Row.Power.Discharged) }},
		{"losses_wh", func(v *RowView) float64 {
			p := &v.Row.Power
			return float64(p.ControllerLoss + p.ChargerLoss + p.InverterLoss + p.BatteryLoss + p.SelfDischarge)
		}},
		{"delivered_wh", func(v *RowView) float64 { return float64(v.Row.Power.Delivered) }},
		{"services_short_wh", func(v *RowView) float64 { return float64(v.Row.Power.ServiceShort) }},
	}
	for n := range power.Needs {
		list = append(list,
			RowColumn{n.String() + "_had_wh", func(v *RowView) float64 { return float64(v.Row.Power.Met[n]) }},
			RowColumn{n.String() + "_short_wh", func(v *RowView) float64 { return float64(v.Row.Power.Short[n]) }})
	}
	return append(list,
		RowColumn{"made_up_wh", func(v *RowView) float64 { return float64(v.Row.Power.MadeUp) }},
		RowColumn{"waiting_wh", func(v *RowView) float64 { return float64(v.After.Power.Tasks.Waiting()) }},
		RowColumn{"battery_wh", func(v *RowView) float64 {
			return float64(v.After.Power.Battery.Available + v.After.Power.Battery.Bound)
		}},
		RowColumn{"charge_share", func(v *RowView) float64 { return v.Row.Power.Charge }})
}

func heatColumns() []RowColumn {
	return []RowColumn{
		{"cold_inlet_degc", func(v *RowView) float64 { return float64(v.Row.HeatIn.Cold) }},
		{"hot_drawn_l", func(v *RowView) float64 { return float64(v.Row.HeatIn.Litres) }},
		{"solar_heat_wh", func(v *RowView) float64 { return float64(v.Row.Heat.Solar) }},
		{"gas_heat_wh", func(v *RowView) float64 { return float64(v.Row.Heat.Gas) }},
		{"element_heat_wh", func(v *RowView) float64 { return float64(v.Row.Heat.Electric) }},
		{"tap_heat_wh", func(v *RowView) float64 { return float64(v.Row.Heat.Delivered) }},
		{"heat_short_wh", func(v *RowView) float64 { return float64(v.Row.Heat.Short) }},
		{"store_loss_wh", func(v *RowView) float64 { return float64(v.Row.Heat.Loss) }},
		{"store_upper_degc", func(v *RowView) float64 { return float64(v.After.Hot.Upper) }},
		{"store_lower_degc", func(v *RowView) float64 { return float64(v.After.Hot.Lower) }},
	}
}

// Rows lives the record once more from the stated start and writes every hour as CSV. The
// first column is the beginning of the hour in standard time. done is told the hours written.
func Rows(out io.Writer, r *hourly.Run, done func(hours int)) error {
	columns := RowColumns(r)
	line := []byte("hour")
	for _, c := range columns {
		line = append(append(line, ','), c.Name...)
	}
	_, fault := out.Write(append(line, '\n'))
	state := r.Start()
	view := RowView{Run: r, After: &state}
	span := hourly.Span{Last: r.Hours(), See: func(hour int, row *hourly.Row) {
		view.Hour, view.Row = hour, row
		line = r.AppendHour(line[:0], hour)
		for _, c := range columns {
			line = strconv.AppendFloat(append(line, ','), c.Of(&view), 'g', -1, 64)
		}
		if fault == nil {
			_, fault = out.Write(append(line, '\n'))
		}
		done(hour + 1)
	}}
	if err := r.Live(&state, &span); err != nil {
		return err
	}
	if fault != nil {
		return fmt.Errorf("the rows cannot be written: %w", fault)
	}
	return nil
}
