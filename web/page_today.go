package web

import (
	"errors"
	"fmt"
	"math"
	"net/http"
	"strings"
	"time"

	"suffice/people"
	"suffice/quantity"
	"suffice/water"
)

// A day is what one day of the record, or stores that a person states, mean for the house.
type today struct {
	Typed  struct{ Day, Tank, Charge string }
	Faults []string
	Said   string // the day, in words
	Budget []budgetToday
	Does   []string // what the people did
	Cut    picture  // the house on that day
	Would  []string // what their rules would have them do at the stores chosen
}

// A budgetToday is one budget in a sentence or two, with how the days left come about.
type budgetToday struct {
	Name  string
	Lead  string
	Lines []string
	Steps []string
}

// chosen is what the address asks for: a day, and stores in the place of the recorded ones.
type chosen struct {
	day          int
	tank, charge *float64 // 0 to 1; nil: as the day ended
}

func todayPage(v *view, r *http.Request) shown {
	var t today
	t.Typed.Day, t.Typed.Tank, t.Typed.Charge = strings.TrimSpace(r.FormValue("day")), strings.TrimSpace(r.FormValue("tank")), strings.TrimSpace(r.FormValue("charge"))
	p := shown{Here: "/", Title: v.Say("today.title"), Body: todayBody(v, &t)}
	c, err := v.choose(&t)
	if err != nil {
		p.Status, t.Faults = http.StatusBadRequest, lines(err)
		return p
	}
	t.Said = v.daySaid(c.day)
	if v.hasWater() {
		t.Budget = append(t.Budget, v.waterToday(c))
	}
	if v.hasPower() {
		t.Budget = append(t.Budget, v.powerToday(c))
	}
	t.Does, t.Would = v.deeds(c.day), v.would(c)
	t.Cut = v.section(c.day)
	return p
}

// choose reads the form; all faults come at once.
func (v *view) choose(t *today) (chosen, error) {
	c := chosen{day: len(v.Proof.Run.Weather.Days) - 1}
	var faults []error
	if t.Typed.Day == "" {
		t.Typed.Day = v.dayTyped(c.day)
	}
	if _, err := time.Parse(time.DateOnly, t.Typed.Day); err != nil {
		faults = append(faults, errors.New(v.Say("today.no_day", "day", t.Typed.Day)))
	} else if hour, err := v.Proof.Run.HourAt(t.Typed.Day + "T00"); err != nil {
		faults = append(faults, err)
	} else {
		c.day = hour / 24
	}
	var err error
	if c.tank, err = v.level("today.tank", t.Typed.Tank); err != nil {
		faults = append(faults, err)
	}
	if c.charge, err = v.level("today.charge", t.Typed.Charge); err != nil {
		faults = append(faults, err)
	}
	return c, errors.Join(faults...)
}

// level reads a share of a store; nothing written means as it was.
func (v *view) level(what, text string) (*float64, error) {
	if text == "" {
		return nil, nil
	}
	share, err := quantity.ReadIn(text, "%")
	if err == nil && (share < 0 || share > 100) {
		err = errors.New(v.Say("today.no_level", "level", text))
	}
	if err != nil {
		return nil, fmt.Errorf("%s: %w", v.Say(what), err)
	}
	share /= 100
	return &share, nil
}

// leastRain is the rain, mm, under which a day is called dry: the tenth that rain gauges are read to
// (common practice, no source).
const leastRain = 0.1

// waterToday tells how long the water lasts: usable water over what leaves a day, if no
// drop falls and people go on as in the week before.
func (v *view) waterToday(c chosen) budgetToday {
	works, share := v.Proof.Run.House.Water, v.Proof.Stated.Days[c.day].TankEnd
	if c.tank != nil {
		share = *c.tank
	}
	full := works.StartAt(1)
	usable := share * float64(works.Usable(&full))
	draw, leak := week(v.Seen.Drawn, c.day), week(v.Seen.Leaked, c.day)
	days := water.DryOut(quantity.Litres(usable), quantity.Litres(draw), quantity.Litres(leak), 0)
	b := budgetToday{Name: v.Say("water.title"), Lead: v.Say("today.water_for_ever")}
	if !math.IsInf(days, 1) {
		b.Lead = v.Count("today.water_days", int(days))
	}
	b.Lines = []string{v.Say("today.water_now", "share", percent(share), "litres", grouped(usable))}
	b.Steps = []string{v.Say("today.draw", "draw", amount(draw), "leak", amount(leak)),
		v.Say("today.division", "usable", grouped(usable), "draw", amount(draw), "leak", amount(leak), "days", amount(days))}
	t := &v.Proof.Stated.Days[c.day]
	rain := "today.rain"
	if t.Rain < leastRain {
		rain = "today.dry"
	}
	b.Lines = append(b.Lines, v.hadSaid(rain, withUnit(t.Rain, "mm"), t.WaterAsked-t.WaterMet, t.WaterAsked, "L"))
	return b
}

// powerToday tells the battery and what the day brought.
func (v *view) powerToday(c chosen) budgetToday {
	battery := &v.Proof.Run.House.Power.System.Battery
	t := &v.Proof.Stated.Days[c.day]
	charge := v.Seen.ChargeEnd[c.day]
	if c.charge != nil {
		charge = *c.charge
	}
	b := budgetToday{Name: v.Say("power.title"), Lead: v.Say("today.charge_now", "share", percent(charge))}
	switch room := charge - battery.Floor; {
	case room > 0:
		b.Lines = []string{v.Say("today.floor", "floor", percent(battery.Floor), "room", percent(room))}
	default:
		b.Lines = []string{v.Say("today.at_floor", "floor", percent(battery.Floor))}
	}
	b.Lines = append(b.Lines,
		v.Say("today.panels", "panels", withUnit(t.Panels/1000, "kWh"), "lowest", percent(t.ChargeLow)),
		v.hadSaid("today.asked", withUnit(t.PowerAsked/1000, "kWh"), (t.PowerAsked-t.PowerMet)/1000, t.PowerAsked/1000, "kWh"))
	return b
}

// hadSaid says whether what must run that day did.
func (v *view) hadSaid(key, what string, short, asked float64, unit string) string {
	had := v.Say("today.had")
	if lacks(short, asked) {
		had = v.Say("today.lacked", "short", withUnit(short, unit))
	}
	return v.Say(key, "amount", what, "had", had)
}

// week gives the mean of a day and the six before it, or as many as there are.
func week(days []float64, day int) float64 {
	from := max(0, day-6)
	sum := 0.0
	for _, v := range days[from : day+1] {
		sum += v
	}
	return sum / float64(day+1-from)
}

// would asks the rules of the house what people do at the stores chosen and the sky of the day,
// as if they had followed no rule before.
func (v *view) would(c chosen) []string {
	signs := people.Signs{Clearness: v.Seen.Clearness[c.day], Charge: math.NaN(), Tank: math.NaN(), Duty: math.NaN()}
	if v.hasWater() {
		signs.Tank = v.Proof.Stated.Days[c.day].TankEnd
		if c.tank != nil {
			signs.Tank = *c.tank
		}
	}
	if v.hasPower() {
		signs.Charge = v.Seen.ChargeEnd[c.day]
		if c.charge != nil {
			signs.Charge = *c.charge
		}
	}
	var mind people.Mind
	choice := v.Proof.Run.House.Rules.Decide(&mind, &signs)
	var list []string
	for _, deed := range []struct {
		does bool
		key  string
	}{{choice.Swap, "deed.swap"}, {choice.Wait, "deed.wait"}, {choice.Save > 0, "deed.save"}, {choice.ChangeTank, "deed.change_tank"}} {
		if deed.does {
			list = append(list, v.Say(deed.key))
		}
	}
	return list
}
