package web

import (
	"fmt"
	"math"
	"net/http"
	"strings"

	"suffice/draw"
	"suffice/hourly"
	"suffice/quantity"
	"suffice/report"
	"suffice/sheet"
	"suffice/warmth"
	"suffice/warmth/vent"
)

// A roomView is what the page tells of one room.
type roomView struct {
	Name     string
	LivedIn  bool
	Months   picture
	Seasons  []seasonRow
	Rhythms  []string
	Heat     tally
	Machines string // what machines without limit would have done; "" for none
}

// A seasonRow is a season of a room: hours and degrees times hours outside its band.
type seasonRow struct {
	Season           string
	Cold, ColdDegree string
	Hot, HotDegree   string
}

// A warmthView is the page.
type warmthView struct {
	Verdict  verdict
	Cautions []string
	Weeks    []weekView
	Rooms    []roomView
	Air      tally
	AirHeads []string
	AirRows  [][]string
	Lacks    leftOut
}

// A weekView is a worst week and its hardest hour, for an address.
type weekView struct {
	Picture picture
	At      string
}

func warmthPage(v *view, r *http.Request) shown {
	p := shown{Here: "/warmth", Title: v.Say("warmth.title")}
	if !v.hasRooms() {
		p.Body = warmthMissing(v, v.roomsLack())
		return p
	}
	w := warmthView{Verdict: v.warmthVerdict(), Cautions: v.airCautions(), Weeks: v.worstWeeks()}
	if r.FormValue("measures") != "" {
		w.Lacks = v.leaveOut()
	}
	if w.Lacks.Under {
		p.Refresh = "2; url=/warmth?measures=yes#measures"
	}
	if w.Lacks.Fault != nil {
		return v.faulty(w.Lacks.Fault)
	}
	hour, err := v.works(tellsWarmth, "room-hour")
	if err != nil {
		return v.faulty(err)
	}
	for k := range v.Proof.Stated.Rooms {
		w.Rooms = append(w.Rooms, v.roomTold(k, hour))
	}
	if w.Air, err = v.tallied(fromAir, func(*sums) {}); err != nil {
		return v.faulty(err)
	}
	w.AirHeads, w.AirRows = v.airTable()
	p.Body = warmthBody(v, &w)
	return p
}

// hasRooms reports whether rooms are computed.
func (l *lived) hasRooms() bool { return len(l.Proof.Stated.Rooms) > 0 }

// roomsLack lists what the file does not tell of its rooms: nothing where it has none.
func (v *view) roomsLack() (list []string) {
	for i := range v.File.Rooms {
		room := &v.File.Rooms[i]
		if len(room.Walls) == 0 {
			list = append(list, v.Say("warmth.no_walls", "room", room.Name))
			continue
		}
		var bare []string
		for k := range room.Walls {
			if len(room.Walls[k].Layers) == 0 {
				bare = append(bare, room.Walls[k].Name)
			}
		}
		if len(bare) > 0 {
			list = append(list, v.Count("warmth.no_layers", len(bare), "room", room.Name, "walls", listed(v, bare)))
		}
	}
	return list
}

func (v *view) warmthVerdict() verdict {
	w := &v.Proof.Stated.Warmth
	said := verdict{Name: v.Say("verdict.title"), Sign: "open", Word: v.Say("verdict.none")}
	if w.Room == "" {
		said.Lines = []string{v.Say("warmth.nobody")}
		return said
	}
	key := "warmth.outside"
	if w.Wanted {
		key = "warmth.outside_wanted"
		said.Sign, said.Word = "short", v.Say("verdict.short")
		if w.Suffices() {
			said.Sign, said.Word = "suffices", v.Say("verdict.suffices")
		}
	}
	said.Lines = []string{v.Say(key, "hours", grouped(w.Outside), "room", w.Room, "want", grouped(w.Want)), v.Say("warmth.band")}
	return said
}

// airCautions are those of shut rooms: what of it the file tells.
func (v *view) airCautions() []string {
	var s vent.Stands
	for _, fire := range v.Proof.Run.House.Rooms.Stoves {
		s.Stove = s.Stove || fire != nil
	}
	if h := v.Proof.Run.House; h.Gas != nil {
		s.OpenGas = true
	}
	for _, room := range v.Proof.Run.House.Rooms.Design.Rooms {
		s.Fan = s.Fan || len(room.Fans) > 0
		for _, w := range room.Walls {
			s.Earth = s.Earth || w.Faces == warmth.Earth
		}
	}
	return vent.Cautions(s)
}

func (v *view) worstWeeks() (list []weekView) {
	if v.Proof.Stated.Coldest.Found {
		list = append(list, weekView{v.pictured(draw.ColdestWeek, 1), v.worstHour(&v.Proof.Stated.Coldest, -1)},
			weekView{v.pictured(draw.HottestWeek, 1), v.worstHour(&v.Proof.Stated.Hottest, 1)})
	}
	return list
}

// worstHour gives, for an address, the hour of a week in which its room was coldest (-1) or hottest (1).
func (v *view) worstHour(k *hourly.Week, sign float32) string {
	worst := 0
	for h := range k.Felt {
		if sign*k.Felt[h][k.Room] > sign*k.Felt[worst][k.Room] {
			worst = h
		}
	}
	return string(v.Proof.Run.AppendHour(nil, 24*k.First+worst))
}

func (v *view) roomTold(k int, worked []sheet.Worked) roomView {
	y, years := &v.Proof.Stated.Rooms[k], v.years()
	r := roomView{Name: y.Name, LivedIn: y.LivedIn, Months: twice(draw.MonthsOfRoom(v.Proof, k, v.draws), 1), Heat: v.heatOf(k, worked)}
	for s := range hourly.Season(hourly.Seasons) {
		if c := &y.Seasons[s]; c.Hours > 0 {
			r.Seasons = append(r.Seasons, seasonRow{Season: v.Say(seasonKey(s)), Cold: grouped(c.Cold / years), ColdDegree: grouped(c.ColdDegree / years),
				Hot: grouped(c.Hot / years), HotDegree: grouped(c.HotDegree / years)})
		}
	}
	for _, s := range []hourly.Season{hourly.Winter, hourly.Summer} {
		r.Rhythms = append(r.Rhythms, v.rhythmSaid(s, &y.Rhythms[s]))
	}
	if y.PeakHeating > 0 || y.PeakCooling > 0 {
		r.Machines = v.Say("warmth.machines", "heat", withUnit(float64(y.Heating)/1000/years, "kWh"), "heat_peak", withUnit(float64(y.PeakHeating)/1000, "kW"),
			"cool", withUnit(float64(y.Cooling)/1000/years, "kWh"), "cool_peak", withUnit(float64(y.PeakCooling)/1000, "kW"))
	}
	return r
}

// rhythmSaid tells how far a room swings in a day of a season, how much less than outside, and how much later.
func (v *view) rhythmSaid(s hourly.Season, h *hourly.Rhythm) string {
	times, later := h.Damped()
	key := "warmth.rhythm"
	if later < 0 {
		key = "warmth.rhythm_before"
	}
	return v.Say(key, "season", v.Say(inKey(s)), "room", kelvins(float64(h.Swing)), "outside", kelvins(float64(h.SwingsOutside)),
		"times", fmt.Sprintf("%.1f", times), "hours", fmt.Sprintf("%.1f", math.Abs(later)))
}

// Keys of the catalogue.
func seasonKey(s hourly.Season) string {
	return [hourly.Seasons]string{"season.winter", "season.spring", "season.summer", "season.autumn"}[s]
}

// inKey is of the two seasons of which the day is told.
func inKey(s hourly.Season) string {
	if s == hourly.Winter {
		return "in.winter"
	}
	return "in.summer"
}

func lackKey(m warmth.Measure) string {
	return [warmth.Measures]string{"lack.mass", "lack.insulation", "lack.earth", "lack.glass", "lack.overhang", "lack.shutters", "lack.vents", "lack.section"}[m]
}

func flowKey(flow string) string {
	return map[string]string{
		"sun": "warmth.flow.sun", "given": "warmth.flow.given", "stove": "warmth.flow.stove", "heating": "warmth.flow.heating", "doors": "warmth.flow.doors", "air": "warmth.flow.air",
		"glass": "warmth.flow.glass", "earth": "warmth.flow.earth", "rooms": "warmth.flow.rooms", "leaks": "warmth.flow.leaks", "vents": "warmth.flow.vents",
		"cooling": "warmth.flow.cooling",
	}[flow]
}

// degrees writes a temperature in a table whose head has the unit.
func degrees(v quantity.Celsius) string {
	return strings.Replace(fmt.Sprintf("%.1f", float64(v)), "-", "\u2212", 1)
}

// measuresCount is how many measures are left out.
const measuresCount = warmth.Measures

// roomExample is the least that a room needs, as it is written.
const roomExample = `rooms:
  - name: living room
    area: 38 m2
    walls:
      - {name: back, area: 26 m2, faces: earth, azimuth: 0 deg, layers: "30 cm reclaimed stone, 10 cm cork board"}
      - {name: front, area: 12 m2, faces: air, azimuth: 180 deg, layers: 45 cm cob}
      - {name: roof, area: 40 m2, faces: air, layers: "22 mm timber, 24 cm cork board"}
      - {name: floor, area: 38 m2, faces: earth, layers: "8 cm earth 1800, 10 cm cork board"}
    windows:
      - {name: south glass, area: 10 m2, azimuth: 180 deg, panes: 2, overhang: 0.8 m, shutters: yes}
    vents: 0.5 m2`

func kelvins(v float64) string { return fmt.Sprintf("%.1f", v) + gap + "K" }

// heatOf is what warmed a room in the mean year and where it went.
func (v *view) heatOf(k int, worked []sheet.Worked) tally {
	hour := v.Seen.hours[tellsWarmth]
	t := tally{Title: v.Say("warmth.heat"), Hour: v.hourSaid(hour), Why: v.Say("why." + tellsWarmth), At: string(v.Proof.Run.AppendHour(nil, hour))}
	for _, f := range v.Proof.RoomBudget(k) {
		t.Rows = append(t.Rows, figure{Says: v.Say(flowKey(f.Key)), Value: f.KWh, Unit: "kWh"})
	}
	for _, w := range worked {
		if strings.HasSuffix(w.Sheet.Title, ": "+v.Proof.Stated.Rooms[k].Name) {
			t.Worked = append(t.Worked, w)
		}
	}
	return t
}

// airTable tells moisture and fresh air of the rooms.
func (v *view) airTable() (heads []string, rows [][]string) {
	years := v.years()
	damp := !math.IsNaN(v.Proof.Stated.Rooms[0].Air.Humidity)
	heads = []string{v.Say("air.room"), v.Say("air.fresh"), v.Say("air.carbon"), v.Say("air.stale"), v.Say("air.most")}
	if damp {
		heads = append(heads, v.Say("air.humidity"), v.Say("air.damp"), v.Say("air.wet"), v.Say("air.condensed"))
	}
	for i := range v.Proof.Stated.Rooms {
		b := &v.Proof.Stated.Rooms[i].Air
		row := []string{v.Proof.Stated.Rooms[i].Name, amount(b.Fresh), grouped(b.Carbon), grouped(b.Stale / years), grouped(b.Most)}
		if damp {
			row = append(row, grouped(b.Humidity), grouped(b.Damp/years), grouped(b.Wet/years), amount(float64(b.Condensed)/years))
		}
		rows = append(rows, row)
	}
	return heads, rows
}

// A lackRow is the rooms without one measure, or as they are.
type lackRow struct {
	Says  string
	Cells []string
}

// lackRows tells one room with everything, then without each measure.
func (v *view) lackRows(list []report.Lack, room int) []lackRow {
	row := func(says string, y *hourly.RoomYears) lackRow {
		years := v.years()
		winter, summer := &y.Seasons[hourly.Winter], &y.Seasons[hourly.Summer]
		return lackRow{says, []string{
			grouped(winter.ColdDegree / years), grouped((y.Comfort.ColdDegree - winter.ColdDegree) / years),
			grouped(summer.HotDegree / years), grouped((y.Comfort.HotDegree - summer.HotDegree) / years),
			fmt.Sprintf("%.1f", float64(y.Swing())), fmt.Sprintf("%.1f", float64(y.Coldest)), fmt.Sprintf("%.1f", float64(y.Warmest)),
		}}
	}
	rows := []lackRow{row(v.Say("lack.none"), &v.Proof.Stated.Rooms[room])}
	for i := range list {
		if list[i].Account != nil {
			rows = append(rows, row(v.Say(lackKey(list[i].Measure)), &list[i].Account.Rooms[room]))
		}
	}
	return rows
}
