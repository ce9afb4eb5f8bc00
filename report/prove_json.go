package report

import (
	"math"
	"slices"

	"suffice/hourly"
	"suffice/people"
	"suffice/power"
)

// ProofJSON is the stable form of a proof for programs.
type ProofJSON struct {
	House     string                `json:"house"`
	Years     int                   `json:"years"`
	Hours     int                   `json:"hours"`
	Budgets   map[string]BudgetJSON `json:"budgets"`
	Starts    map[string]StartJSON  `json:"starts"`
	Rooms     []RoomJSON            `json:"rooms"`
	Measures  []MeasureJSON         `json:"measures,omitempty"` // only where they were asked for
	Flows     []FlowJSON            `json:"flows"`
	HotWater  *HotWaterJSON         `json:"hot_water"`
	Gas       *GasJSON              `json:"gas"`
	UsedWater *UsedWaterJSON        `json:"used_water"` // null where nobody follows it
	Residuals ResidualsJSON         `json:"residuals"`
	Weather   WeatherJSON           `json:"weather"`
	Notes     []string              `json:"notes"`
	Described []string              `json:"described_not_computed"`
	Warnings  []string              `json:"warnings"`
}

// BudgetJSON is one budget. Suffices is null without a want, and the whole is so for a budget that is not computed yet.
type BudgetJSON struct {
	Computed         bool     `json:"computed"`
	Want             *float64 `json:"want"` // short days a year; of warmth, hours outside the band
	Suffices         *bool    `json:"suffices"`
	ShortDays        *int     `json:"short_days"`
	ShortDaysPerYear *float64 `json:"short_days_per_year"`
	ShortYears       *int     `json:"short_years"`
	Upper95          *float64 `json:"upper_95"`
	LongestSpellDays *int     `json:"longest_spell_days"`
	LongestSpellFrom *string  `json:"longest_spell_from"`
	ShareMet         *float64 `json:"share_met"`

	Fresh  *float64 `json:"share_fresh,omitempty"`      // of food, if nothing is kept beyond its month
	Energy *float64 `json:"share_of_energy,omitempty"`  // of food
	Worst  *float64 `json:"share_worst_year,omitempty"` // of food

	HoursOutsidePerYear *float64 `json:"hours_outside_per_year,omitempty"` // of warmth
	WorstRoom           string   `json:"worst_room,omitempty"`
}

// StartJSON is the verdict from another start.
type StartJSON struct {
	Water BudgetJSON `json:"water"`
	Power BudgetJSON `json:"power"`
}

// RoomJSON is one room that is computed: means of hours of its air, and by the year what machines without limit would do.
type RoomJSON struct {
	Name          string  `json:"name"`
	LivedIn       bool    `json:"lived_in"`
	MaxC          float64 `json:"max_c"`
	MinC          float64 `json:"min_c"`
	MeanC         float64 `json:"mean_c"`
	HeatingKWh    float64 `json:"heating_kwh"`
	CoolingKWh    float64 `json:"cooling_kwh"`
	PeakHeatingKW float64 `json:"peak_heating_kw"`
	PeakCoolingKW float64 `json:"peak_cooling_kw"`
	ColdHours     float64 `json:"too_cold_hours_per_year"`
	HotHours      float64 `json:"too_hot_hours_per_year"`

	Seasons map[string]SeasonJSON `json:"seasons"`
	Air     AirJSON               `json:"air"`
	Stove   *StoveJSON            `json:"stove,omitempty"`
}

// StoveJSON is a room's wood stove by the mean year.
type StoveJSON struct {
	Wood    float64 `json:"wood_kg"`
	Hours   float64 `json:"hours"`
	HeatKWh float64 `json:"heat_kwh"` // to the room, less what the fire's air costs
	FlueKWh float64 `json:"flue_kwh"`
	Most    float64 `json:"most_in_a_winter_kg"`
	Winter  int32   `json:"that_winter"` // year in which it began; 0 where there was no fire
}

func (p *Proof) stove(room int) *StoveJSON {
	if p.Run.House.Rooms.Stoves[room] == nil {
		return nil
	}
	b, years := &p.Stated.Rooms[room].Stove, float64(p.Years())
	return &StoveJSON{Wood: float64(b.Wood) / years, Hours: b.Hours / years, HeatKWh: float64(b.Heat) / 1000 / years, FlueKWh: float64(b.Flue) / 1000 / years,
		Most: float64(b.Most), Winter: b.Winter}
}

// SeasonJSON is a room in a season: hours and degrees times hours of a mean year outside its band, and how its air swings in a day.
type SeasonJSON struct {
	ColdHours  float64 `json:"too_cold_hours_per_year"`
	ColdKH     float64 `json:"too_cold_kh_per_year"`
	HotHours   float64 `json:"too_hot_hours_per_year"`
	HotKH      float64 `json:"too_hot_kh_per_year"`
	SwingK     float64 `json:"swing_k"`
	OutsideK   float64 `json:"swing_outside_k"`
	Damped     float64 `json:"damped"` // times, of the daily wave
	LaterHours float64 `json:"later_hours"`
}

// AirJSON is a room's moisture and fresh air. Humidity and damp hours are null where the record tells no humidity.
type AirJSON struct {
	Humidity   *float64 `json:"humidity_percent"`
	DampHours  *float64 `json:"damp_hours_per_year"` // over 70 %
	Condensed  *float64 `json:"condensed_kg_per_year"`
	WetHours   *float64 `json:"wet_hours_per_year"`
	FreshM3H   float64  `json:"fresh_m3_h"`
	Carbon     float64  `json:"co2_ppm"`
	StaleHours float64  `json:"stale_hours_per_year"` // over 1200 ppm
	MostCarbon float64  `json:"most_co2_ppm"`
}

func seasonsJSON(y *hourly.RoomYears, years float64) map[string]SeasonJSON {
	list := map[string]SeasonJSON{}
	for s := range hourly.Season(hourly.Seasons) {
		c, h := &y.Seasons[s], &y.Rhythms[s]
		times, later := h.Damped()
		list[s.String()] = SeasonJSON{ColdHours: c.Cold / years, ColdKH: c.ColdDegree / years, HotHours: c.Hot / years, HotKH: c.HotDegree / years,
			SwingK: float64(h.Swing), OutsideK: float64(h.SwingsOutside), Damped: times, LaterHours: later}
	}
	return list
}

func airJSON(b *hourly.Breathing, years float64) AirJSON {
	j := AirJSON{FreshM3H: b.Fresh, Carbon: b.Carbon, StaleHours: b.Stale / years, MostCarbon: b.Most}
	if !math.IsNaN(b.Humidity) {
		damp, condensed, wet := b.Damp/years, float64(b.Condensed)/years, b.Wet/years
		j.Humidity, j.DampHours, j.Condensed, j.WetHours = &b.Humidity, &damp, &condensed, &wet
	}
	return j
}

// rooms gives those that are computed.
func (p *Proof) rooms() []RoomJSON {
	list, years := []RoomJSON{}, float64(p.Years())
	for i := range p.Stated.Rooms {
		y := &p.Stated.Rooms[i]
		list = append(list, RoomJSON{
			Name: y.Name, LivedIn: y.LivedIn, MaxC: float64(y.Warmest), MinC: float64(y.Coldest), MeanC: float64(y.Mean),
			HeatingKWh: float64(y.Heating) / 1000 / years, CoolingKWh: float64(y.Cooling) / 1000 / years,
			PeakHeatingKW: float64(y.PeakHeating) / 1000, PeakCoolingKW: float64(y.PeakCooling) / 1000,
			ColdHours: y.Comfort.Cold / years, HotHours: y.Comfort.Hot / years, Seasons: seasonsJSON(y, years), Air: airJSON(&y.Air, years), Stove: p.stove(i),
		})
	}
	return list
}

// warmthJSON is the budget of warmth: short days are not counted, since its want is hours.
func (p *Proof) warmthJSON() BudgetJSON {
	if len(p.Stated.Rooms) == 0 {
		return BudgetJSON{}
	}
	w := &p.Stated.Warmth
	out := BudgetJSON{Computed: true, HoursOutsidePerYear: &w.Outside, WorstRoom: w.Room}
	if w.Wanted {
		suffices := w.Suffices()
		out.Want, out.Suffices = &w.Want, &suffices
	}
	return out
}

// FlowJSON is a yearly mean flow from one thing to another, in L, kWh or g.
type FlowJSON struct {
	From    string  `json:"from"`
	To      string  `json:"to"`
	Unit    string  `json:"unit"`
	PerYear float64 `json:"per_year"`
}

// HotWaterJSON is the yearly mean of the hot water system.
type HotWaterJSON struct {
	DeliveredKWh      float64 `json:"delivered_kwh"`
	ShortKWh          float64 `json:"short_kwh"`
	SolarKWh          float64 `json:"solar_kwh"`
	BackupKWh         float64 `json:"backup_kwh"`
	SolarShare        float64 `json:"solar_share"` // of the heat brought into the water
	EpisodesPerYear   float64 `json:"backup_episodes_per_year"`
	EpisodeDaysPerOne float64 `json:"backup_days_per_episode"`
	StagnantHours     float64 `json:"stagnant_hours"`
}

// GasJSON is the yearly mean of the bottles.
type GasJSON struct {
	Kilograms float64 `json:"kg"`
	Bottles   float64 `json:"bottles_emptied"`
	ShortKWh  float64 `json:"short_kwh"`
}

// ResidualsJSON is what the sums do not explain. Null: not computed yet.
type ResidualsJSON struct {
	WaterL    float64  `json:"water_l"`
	PowerKWh  float64  `json:"power_kwh"`
	HeatKWh   float64  `json:"heat_kwh"`     // of the hot water
	RoomsKWh  float64  `json:"rooms_kwh"`    // of the rooms' heat
	UsedL     *float64 `json:"used_water_l"` // from the drains to the ground
	SaltG     *float64 `json:"salt_g"`
	BODG      *float64 `json:"bod_g"`
	NitrogenG *float64 `json:"nitrogen_g"`
}

// WeatherJSON says which weather was lived through, and what was made or filled in it.
type WeatherJSON struct {
	Source    string         `json:"source"`
	Latitude  float64        `json:"latitude"`
	Longitude float64        `json:"longitude"`
	First     string         `json:"first"`
	Last      string         `json:"last"`
	Years     []int32        `json:"years"`
	Dropped   []int32        `json:"years_left_out"`
	Hours     map[string]any `json:"hours_by_origin"`
	Notes     []string       `json:"notes"`
	Warnings  []string       `json:"warnings"`
}

// JSON gives the proof in its stable form.
func (p *Proof) JSON() ProofJSON {
	a, h := p.Stated, p.Run.House
	out := ProofJSON{
		House: h.Name, Years: p.Years(), Hours: p.Run.Hours(),
		Budgets: map[string]BudgetJSON{
			"water": p.budgetJSON(&a.Water, h.Water != nil), "power": p.budgetJSON(&a.Power, h.Power != nil),
			"warmth": p.warmthJSON(), "food": p.foodJSON(), "waste": p.wasteJSON(),
		},
		Starts: map[string]StartJSON{
			"full":      {p.budgetJSON(&p.Full.Water, h.Water != nil), p.budgetJSON(&p.Full.Power, h.Power != nil)},
			"half_full": {p.budgetJSON(&p.HalfFull.Water, h.Water != nil), p.budgetJSON(&p.HalfFull.Power, h.Power != nil)},
		},
		Rooms: p.rooms(), Flows: p.Flows(),
		Residuals: ResidualsJSON{WaterL: a.Residuals.WaterLitres, PowerKWh: a.Residuals.PowerKilowatt, HeatKWh: a.Residuals.HeatKilowatt, RoomsKWh: a.Residuals.RoomsKilowatt},
		Weather:   p.weatherJSON(), Notes: orNone(p.Run.Notes), Described: orNone(h.Described), Warnings: orNone(slices.Concat(p.Run.Alarms, h.Warnings)),
	}
	if h.Drains != nil {
		c := &a.Residuals.Chain
		out.Residuals.UsedL, out.Residuals.SaltG, out.Residuals.BODG, out.Residuals.NitrogenG = &c.Litres, &c.Salt, &c.BOD, &c.Nitrogen
	}
	out.HotWater, out.Gas, out.UsedWater = p.hotWaterJSON(), p.gasJSON(), p.usedWaterJSON()
	return out
}

func orNone(list []string) []string {
	if list == nil {
		return []string{}
	}
	return list
}

func (p *Proof) budgetJSON(b *hourly.Budget, computed bool) BudgetJSON {
	if !computed {
		return BudgetJSON{}
	}
	perYear, upper, met := b.ShortDaysPerYear(), b.Upper95(), b.ShareMet()
	out := BudgetJSON{
		Computed: true, ShortDays: &b.ShortDays, ShortDaysPerYear: &perYear, ShortYears: &b.ShortYears,
		Upper95: &upper, LongestSpellDays: &b.Spell.Days, ShareMet: &met,
	}
	if b.Spell.Days > 0 {
		from := p.date(b.Spell.First)
		out.LongestSpellFrom = &from
	}
	if b.Wanted {
		suffices := b.Suffices()
		out.Want, out.Suffices = &b.Want, &suffices
	}
	return out
}

func (p *Proof) weatherJSON() WeatherJSON {
	w := p.Run.Weather
	out := WeatherJSON{
		Source: p.Weather.Source, Latitude: float64(w.Place.Latitude), Longitude: float64(w.Place.Longitude),
		First: p.date(0), Last: p.date(len(w.Days) - 1), Years: p.Weather.Report.Years, Dropped: p.Weather.Report.Dropped,
		Hours: map[string]any{}, Notes: orNone(w.Notes), Warnings: orNone(p.Weather.Report.Warnings),
	}
	for _, t := range p.Weather.Report.Tallies {
		by := map[string]int{}
		for o, n := range t.Hours {
			if n > 0 {
				by[weatherOrigin(o)] = n
			}
		}
		out.Hours[t.Column.String()] = by
	}
	return out
}

func (p *Proof) hotWaterJSON() *HotWaterJSON {
	if p.Run.House.HotWater == nil {
		return nil
	}
	t, years := &p.Stated.Totals, float64(p.Years())
	kwh := func(wh float64) float64 { return wh / 1000 / years }
	backup := float64(t.Heat.Gas + t.Heat.Electric)
	out := &HotWaterJSON{
		DeliveredKWh: kwh(float64(t.Heat.Delivered)), ShortKWh: kwh(float64(t.Heat.Short)), SolarKWh: kwh(float64(t.Heat.Solar)),
		BackupKWh: kwh(backup), EpisodesPerYear: float64(t.Episodes.Count) / years, StagnantHours: t.Heat.Stagnant / years,
	}
	if all := float64(t.Heat.Solar) + backup; all > 0 {
		out.SolarShare = float64(t.Heat.Solar) / all
	}
	if t.Episodes.Count > 0 {
		out.EpisodeDaysPerOne = float64(t.Episodes.Days) / float64(t.Episodes.Count)
	}
	return out
}

func (p *Proof) gasJSON() *GasJSON {
	if p.Run.House.Gas == nil {
		return nil
	}
	t, years := &p.Stated.Totals, float64(p.Years())
	return &GasJSON{Kilograms: float64(t.Gas) / years, Bottles: float64(t.Bottles) / years, ShortKWh: float64(t.GasShort) / 1000 / years}
}

// Flows gives the yearly mean flows of the house, those of zero left out.
func (p *Proof) Flows() []FlowJSON {
	t, years := &p.Stated.Totals, float64(p.Years())
	list := []FlowJSON{}
	flow := func(from, to, unit string, total float64) {
		if total != 0 {
			list = append(list, FlowJSON{from, to, unit, total / years})
		}
	}
	litres := func(from, to string, v float64) { flow(from, to, "L", v) }
	in := &t.Income
	litres("sky", "roofs", float64(in.Fell))
	litres("roofs", "air", float64(in.Wetted))
	litres("roofs", "past the gutters", float64(in.Missed))
	litres("roofs", "first flush", float64(in.Diverted))
	litres("roofs", "tanks", float64(in.Caught))
	litres("road", "tanks", float64(in.Delivered))
	litres("tanks", "overflow", float64(in.Spilled))
	litres("tanks", "leak", float64(in.Leaked))
	litres("tanks", "backwash", float64(t.Backwash))
	for k := range people.Kinds {
		litres("tanks", k.String(), float64(t.Served[k]))
	}
	p.chainFlows(flow)
	energy := func(from, to string, v float64) { flow(from, to, "kWh", v/1000) }
	e := &t.Power
	energy("panels", "curtailed", float64(e.Curtailed))
	energy("panels", "controller loss", float64(e.ControllerLoss))
	energy("panels", "bus", float64(e.Income-e.Curtailed-e.ControllerLoss))
	energy("generator", "charger loss", float64(e.ChargerLoss))
	energy("generator", "bus", float64(e.Generator-e.ChargerLoss))
	energy("bus", "battery", float64(e.Charged))
	energy("battery", "bus", float64(e.Discharged))
	energy("battery", "battery loss", float64(e.BatteryLoss+e.SelfDischarge))
	energy("bus", "inverter loss", float64(e.InverterLoss))
	energy("inverter", "water works and solar pump", float64(t.Services-e.ServiceShort))
	for n := range power.Needs {
		energy("inverter", n.String(), float64(e.Met[n]))
	}
	energy("inverter", "hot water element", float64(e.HotWater))
	energy("inverter", "tasks made up for", float64(e.MadeUp))
	heat := &t.Heat
	energy("collector", "hot water", float64(heat.Solar))
	energy("gas", "hot water", float64(heat.Gas))
	energy("element", "hot water", float64(heat.Electric))
	energy("hot water", "taps", float64(heat.Delivered))
	energy("hot water", "room", float64(heat.Loss))
	energy("hot water", "frost protection", float64(heat.FrostHeat))
	energy("gas", "cooking", float64(t.Cooked))
	flow("bottles", "burned", "g", float64(t.Gas)*1000)
	return list
}
