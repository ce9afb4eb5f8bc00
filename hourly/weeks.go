package hourly

import (
	"suffice/quantity"
	"suffice/warmth"
)

// WeekHours is how long a week is.
const WeekHours = 7 * 24

// A Week is the seven days in which a room that people live in was coldest or hottest, by the mean of its operative temperature.
type Week struct {
	Found bool // the record has a week, and people live in a room
	Room  int
	First int                                  // day
	Mean  quantity.Celsius                     // of that room, operative
	Felt  [WeekHours][warmth.MostRooms]float32 // operative temperature of each room by hours, degC
}

// weeks looks for them: it keeps the last seven days and copies them where they are the worst so far.
type weeks struct {
	last             [WeekHours][warmth.MostRooms]float32
	sum              [warmth.MostRooms]float64 // of the last seven days' means, degC
	coldest, hottest Week
}

func (w *weeks) note(hour, room int, felt quantity.Celsius) {
	w.last[hour%WeekHours][room] = float32(felt)
}

// endDay looks at the seven days that a day ends.
func (w *weeks) endDay(day int, rooms []RoomYears) {
	for k := range rooms {
		y := &rooms[k]
		w.sum[k] += float64(y.Days[day].Mean)
		if day >= 7 {
			w.sum[k] -= float64(y.Days[day-7].Mean)
		}
		if day < 6 || !y.LivedIn {
			continue
		}
		mean := quantity.Celsius(w.sum[k] / 7)
		if c := &w.coldest; !c.Found || mean < c.Mean {
			w.keep(c, k, day-6, mean)
		}
		if h := &w.hottest; !h.Found || mean > h.Mean {
			w.keep(h, k, day-6, mean)
		}
	}
}

// keep copies the last seven days, turned so that the first hour stands first.
func (w *weeks) keep(into *Week, room, first int, mean quantity.Celsius) {
	into.Found, into.Room, into.First, into.Mean = true, room, first, mean
	begin := 24 * first % WeekHours
	n := copy(into.Felt[:], w.last[begin:])
	copy(into.Felt[n:], w.last[:begin])
}
