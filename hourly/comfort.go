package hourly

import (
	"math"

	"suffice/quantity"
	"suffice/warmth"
	"suffice/warmth/comfort"
)

// A Season is a quarter of the year as people call it where the house stands: winter is December to February in the north, June to
// August in the south.
type Season int

// The seasons.
const (
	Winter Season = iota
	Spring
	Summer
	Autumn
	Seasons int = iota
)

func (s Season) String() string { return [Seasons]string{"winter", "spring", "summer", "autumn"}[s] }

// Season gives the season of a day of the record.
func (r *Run) Season(day int) Season {
	quarter := int(r.Weather.Days[day].Month) % 12 / 3
	if r.House.Place.Latitude < 0 {
		quarter += 2
	}
	return Season(quarter % Seasons)
}

// Band gives the comfort band of a day; only a run with rooms has it.
func (r *Run) Band(day int) comfort.Band { return r.in.bands[day] }

// A RoomDay is how a room felt on a day: operative temperatures, degC, means of an hour.
type RoomDay struct{ Coldest, Mean, Warmest float32 }

// Air limits that are told; see RoomYears.
const (
	dampFrom  = 70   // percent: mould grows on faces a little cooler than such air (common practice, no source)
	staleFrom = 1200 // ppm: 800 over outside, the third of four categories (en16798-1 annex B, from memory)
)

// A Breathing is a room's moisture and fresh air over all hours lived. Where the record tells no humidity, Humidity is no number.
type Breathing struct {
	Humidity  float64            // relative, percent, mean of hours
	Damp      float64            // h of more than 70 %
	Condensed quantity.Kilograms // on the coldest face
	Wet       float64            // h in which something condensed
	Fresh     float64            // air from outside, m3/h, mean of hours
	Carbon    float64            // ppm of carbon dioxide, mean of hours
	Stale     float64            // h of more than 1200 ppm
	Most      float64            // ppm, of the worst hour
}

func (b *Breathing) add(o *warmth.RoomOut, hours float64) {
	humidity := warmth.HumidityOf(o.Vapour, o.Air)
	b.Humidity += (humidity - b.Humidity) / hours
	b.Fresh += (o.Fresh - b.Fresh) / hours
	b.Carbon += (o.Carbon - b.Carbon) / hours
	b.Most = max(b.Most, o.Carbon)
	if humidity > dampFrom {
		b.Damp++
	}
	if o.Carbon > staleFrom {
		b.Stale++
	}
	if o.Condensed > 0 {
		b.Wet++
		b.Condensed += o.Condensed
	}
}

// A Rhythm is the mean day of a season, hour by hour, of the air in a room and outside.
type Rhythm struct {
	days          float64
	Inside        [24]float64 // degC
	Outside       [24]float64
	Swing         quantity.Kelvins // of the room, from the day's coldest to its warmest hour, mean of days
	SwingsOutside quantity.Kelvins
}

// Damped gives how many times as far outside swings as the room in the daily wave of the mean day, and how many hours later the
// room's wave stands highest, above -12 and up to 12.
func (h *Rhythm) Damped() (times, later float64) {
	out, outAt := wave(&h.Outside)
	in, inAt := wave(&h.Inside)
	later = math.Mod(inAt-outAt+36, 24) - 12
	if later <= -12 {
		later += 24
	}
	return out / in, later
}

// wave gives the first harmonic of a day: its swing up and down, and the hour of its highest point (Fourier's sums).
func wave(day *[24]float64) (swing, highest float64) {
	var a, b float64
	for h, v := range day {
		x := 2 * math.Pi * (float64(h) + 0.5) / 24
		a += v * math.Cos(x) / 12
		b += v * math.Sin(x) / 12
	}
	return math.Hypot(a, b), math.Mod(math.Atan2(b, a)/(2*math.Pi)*24+24, 24)
}

// A comfortDiary notes what the years of each come to, hour by hour, for the account.
type comfortDiary struct {
	r     *Run
	rooms []RoomYears
	days  [warmth.MostRooms]dayOfRoom
	weeks weeks
	sums  warmth.Sums
}

// dayOfRoom is the day so far.
type dayOfRoom struct{ low, high, sum, airLow, airHigh float64 }

func (r *Run) comfortDiary(rooms []RoomYears) *comfortDiary {
	d := &comfortDiary{r: r, rooms: rooms}
	for k := range rooms {
		rooms[k].Days = make([]RoomDay, len(r.Weather.Days))
	}
	return d
}

// add takes in one hour.
func (d *comfortDiary) add(i int, row *Row) {
	day, clock := i/24, i%24
	season, band, winter := d.r.Season(day), d.r.in.bands[day], d.r.winter(day)
	outside := d.r.Weather.Temperature[i]
	d.sums.Add(d.r.in.rooms, &row.Rooms)
	for k := range d.rooms {
		y, o := &d.rooms[k], &row.Rooms.Rooms[k]
		y.add(o, band)
		y.Vented += o.Vented.For(1)
		y.Between += o.Between.For(1)
		fire := &row.Stoves[k]
		y.Given += (row.RoomsIn.Rooms[k].Air + row.RoomsIn.Rooms[k].Radiant - (fire.Air + fire.Faces - fire.Draught)).For(1)
		y.Stove.add(fire, winter)
		y.Seasons[season].Add(band, o.Operative, 1)
		y.Air.add(o, y.hours)
		h := &y.Rhythms[season]
		h.Inside[clock] += (float64(o.Mean) - h.Inside[clock]) / (h.days + 1)
		h.Outside[clock] += (outside - h.Outside[clock]) / (h.days + 1)
		felt, at := float64(o.Operative), &d.days[k]
		if clock == 0 {
			*at = dayOfRoom{low: math.Inf(1), high: math.Inf(-1), airLow: math.Inf(1), airHigh: math.Inf(-1)}
		}
		at.low, at.high, at.sum = min(at.low, felt), max(at.high, felt), at.sum+felt
		at.airLow, at.airHigh = min(at.airLow, float64(o.Mean)), max(at.airHigh, float64(o.Mean))
		d.weeks.note(i, k, o.Operative)
		if clock == 23 {
			y.Days[day] = RoomDay{float32(at.low), float32(at.sum / 24), float32(at.high)}
			h.endDay(at.airHigh-at.airLow, d.r.rangeOf(day))
		}
	}
	if clock == 23 {
		d.weeks.endDay(day, d.rooms)
	}
}

// end gives every room the heat that went by each of its ways.
func (d *comfortDiary) end() {
	if d.r.in == nil {
		return
	}
	for _, h := range d.r.in.rooms.Heats(&d.sums) {
		d.rooms[h.Room].Heats = append(d.rooms[h.Room].Heats, h)
	}
	for k := range d.rooms {
		d.rooms[k].Given += d.r.in.rooms.Clocked(&d.sums, k)
	}
}

func (h *Rhythm) endDay(inside, outside float64) {
	h.days++
	h.Swing += quantity.Kelvins((inside - float64(h.Swing)) / h.days)
	h.SwingsOutside += quantity.Kelvins((outside - float64(h.SwingsOutside)) / h.days)
}

// rangeOf gives how far it is from the coldest to the warmest hour outside, K.
func (r *Run) rangeOf(day int) float64 {
	low, high := math.Inf(1), math.Inf(-1)
	for _, t := range r.Weather.Temperature[24*day : 24*day+24] {
		low, high = min(low, t), max(high, t)
	}
	return high - low
}

// Swing gives the mean of all days of how far a room's air is from its coldest to its warmest hour, K.
func (y *RoomYears) Swing() quantity.Kelvins {
	var sum, days float64
	for s := range y.Rhythms {
		sum += float64(y.Rhythms[s].Swing) * y.Rhythms[s].days
		days += y.Rhythms[s].days
	}
	if days == 0 {
		return 0
	}
	return quantity.Kelvins(sum / days)
}
