package draw

import (
	"math"
	"slices"
	"strconv"

	"suffice/draw/canvas"
	"suffice/hourly"
	"suffice/report"
)

// MonthsOfRoom shows how warm a room felt through the year beside its band of comfort: the middle day, eight days of ten, and the
// coldest and warmest hour of all.
func MonthsOfRoom(p *report.Proof, room int, say Sentences) Picture {
	y := &p.Stated.Rooms[room]
	d := MonthChart{Ink: canvas.Heat, Digits: 1, From: 15, To: 25, Beyond: &Beyond{BandSays: say.Say("room.key.band")}}
	means, counts := [12][]float64{}, [12]float64{}
	for m := range 12 {
		d.Names[m], d.Short[m] = say.Say("month."+strconv.Itoa(m+1)), say.Say("short."+strconv.Itoa(m+1))
		d.Least[m], d.Beyond.Most[m] = math.Inf(1), math.Inf(-1)
	}
	for i, day := range p.Run.Weather.Days {
		m, was, band := day.Month-1, y.Days[i], p.Run.Band(i)
		means[m] = append(means[m], float64(was.Mean))
		d.Least[m], d.Beyond.Most[m] = min(d.Least[m], float64(was.Coldest)), max(d.Beyond.Most[m], float64(was.Warmest))
		counts[m]++
		d.Beyond.Band[0][m] += (float64(band.Low) - d.Beyond.Band[0][m]) / counts[m]
		d.Beyond.Band[1][m] += (float64(band.High) - d.Beyond.Band[1][m]) / counts[m]
	}
	coldest, warmest := 0, 0
	for m := range 12 {
		slices.Sort(means[m])
		d.Low[m], d.Middle[m], d.High[m] = quantile(means[m], 0.1), quantile(means[m], 0.5), quantile(means[m], 0.9)
		if d.Middle[m] < d.Middle[coldest] {
			coldest = m
		}
		if d.Middle[m] > d.Middle[warmest] {
			warmest = m
		}
	}
	for i, column := range [5]string{"month", "tenth", "middle", "ninetieth", "least"} {
		d.Headers[i] = say.Say("room.head." + column)
	}
	d.Beyond.Headers = [3]string{say.Say("room.head.most"), say.Say("room.head.from"), say.Say("room.head.to")}
	d.Key = [3]string{say.Say("room.key.middle"), say.Say("room.key.span"), say.Say("room.key.hours")}
	d.About = About{"room-" + strconv.Itoa(room), say.Say("room.title", "room", y.Name), say.Say("room.unit"),
		say.Say("room.summary", "cold", d.Names[coldest], "low", number(d.Middle[coldest], 1), "hot", d.Names[warmest], "high", number(d.Middle[warmest], 1),
			"least", number(slices.Min(d.Least[:]), 1), "most", number(slices.Max(d.Beyond.Most[:]), 1))}
	return Months(d)
}

// ColdestWeek and HottestWeek draw the worst week of the rooms that people live in.
func ColdestWeek(p *report.Proof, say Sentences) Picture {
	return worstWeek(p, say, "coldest", &p.Stated.Coldest)
}

// HottestWeek is its twin of the hot side.
func HottestWeek(p *report.Proof, say Sentences) Picture {
	return worstWeek(p, say, "hottest", &p.Stated.Hottest)
}

// Looks of the rooms after the worst one, told apart by ink and dash.
var roomLooks = []struct {
	ink  canvas.Ink
	dash canvas.Dash
}{{canvas.Earth, canvas.Dashed}, {canvas.Power, canvas.Points}, {canvas.Glass, canvas.Dashed}, {canvas.Sun, canvas.Points}}

func worstWeek(p *report.Proof, say Sentences, what string, k *hourly.Week) Picture {
	told, rooms := p.TellWeek(k), p.Stated.Rooms
	d := WeekChart{Low: told.Low[:], High: told.High[:], BandSays: say.Say("room.key.band"), Digits: 1,
		Bars: DayRow{Says: say.Say("week.light"), Values: told.Light[:], Top: 200, Ink: canvas.Sun}}
	add := func(says, head string, values []float64, ink canvas.Ink, dash canvas.Dash) {
		d.Series = append(d.Series, Series{Says: says, Values: values, Ink: ink, Dash: dash})
		d.Headers = append(d.Headers, head)
	}
	d.Headers = []string{say.Say("week.head.time")}
	add(say.Say("week.outside"), say.Say("week.head.outside"), told.Outside[:], canvas.Water, canvas.Points)
	add(rooms[k.Room].Name, say.Say("week.head.room", "room", rooms[k.Room].Name), told.Felt[k.Room][:], canvas.Heat, canvas.Solid)
	others := 0
	for r := range rooms {
		if r != k.Room && rooms[r].LivedIn && others < len(roomLooks) {
			look := roomLooks[others]
			add(rooms[r].Name, say.Say("week.head.room", "room", rooms[r].Name), told.Felt[r][:], look.ink, look.dash)
			others++
		}
	}
	d.Headers = append(d.Headers, say.Say("room.head.from"), say.Say("room.head.to"), say.Say("week.light"))
	for c := range report.WeekColumns {
		day := p.Run.Weather.Days[k.First+c/8]
		month := say.Say("short." + strconv.Itoa(int(day.Month)))
		d.Times = append(d.Times, say.Say("week.time", "day", strconv.Itoa(int(day.Date)), "month", month, "from", strconv.Itoa(3*(c%8)), "to", strconv.Itoa(3*(c%8)+3)))
		if c%8 == 0 {
			d.Days = append(d.Days, Mark{c, say.Say("week.day", "day", strconv.Itoa(int(day.Date)), "month", month)})
		}
	}
	first := p.Run.Weather.Days[k.First]
	date := say.Say("date", "day", strconv.Itoa(int(first.Date)), "month", say.Say("month."+strconv.Itoa(int(first.Month))), "year", strconv.Itoa(int(first.Year)))
	d.About = About{"week-" + what, say.Say("week." + what + ".title"), say.Say("room.unit"),
		say.Say("week."+what+".summary", "date", date, "room", rooms[k.Room].Name, "mean", number(float64(k.Mean), 1), "outside", number(mean(told.Outside[:]), 1))}
	return Week(d)
}

func mean(values []float64) (m float64) {
	for _, v := range values {
		m += v / float64(len(values))
	}
	return m
}
