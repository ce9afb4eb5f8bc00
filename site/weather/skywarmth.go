package weather

import (
	"math"

	"suffice/site/sun"
)

// readWarmth decides which temperature the record has, and lays daily extremes out by
// kept day.
func (s *skyMaker) readWarmth() {
	if s.g.step == Hourly {
		f, whole := s.filled(Temperature)
		if whole {
			s.hourly = f
		} else {
			s.sayLeft(Temperature, f)
		}
		return
	}
	low, wholeLow := s.filled(TemperatureMin)
	high, wholeHigh := s.filled(TemperatureMax)
	if wholeLow && wholeHigh {
		s.readExtremes(low, high)
		return
	}
	s.sayLeft(TemperatureMin, low)
	s.sayLeft(TemperatureMax, high)
	mean, whole := s.filled(Temperature)
	if !whole {
		s.sayLeft(Temperature, mean)
		return
	}
	s.readMeans(mean)
}

// readExtremes takes lowest and highest, and the mean where it is recorded and lies
// between them.
func (s *skyMaker) readExtremes(low, high filled) {
	n := len(s.days)
	s.low, s.high, s.mean, s.lowFrom = make([]float64, n), make([]float64, n), make([]float64, n), make([]Origin, n)
	for i, d := range s.days {
		s.low[i], s.high[i], s.mean[i] = low.values[d], high.values[d], math.NaN()
		s.lowFrom[i] = max(low.origin[d], high.origin[d])
		if s.low[i] > s.high[i] { // one of them was filled from another day
			middle := (s.low[i] + s.high[i]) / 2
			s.low[i], s.high[i] = middle, middle
			s.crossed++
		}
		if means := s.g.values[Temperature]; means != nil && means[d] >= s.low[i] && means[d] <= s.high[i] {
			s.mean[i] = means[d]
		}
	}
}

// readMeans takes a record that has only daily means: its range comes from its light, or
// is left at nothing.
func (s *skyMaker) readMeans(mean filled) {
	n := len(s.days)
	s.low, s.high, s.mean, s.lowFrom = make([]float64, n), make([]float64, n), make([]float64, n), make([]Origin, n)
	s.madeRange, s.flat = s.hasGlobal && s.global.left == 0, !(s.hasGlobal && s.global.left == 0)
	for i, d := range s.days {
		half := 0.0
		if s.madeRange {
			out := sun.OutsideDay(s.place.Latitude, int(s.hours.Days[i].DayOfYear))
			half = rangeOfLight(out, s.global.values[d], s.o.kRs()) / 2
		}
		s.mean[i], s.low[i], s.high[i], s.lowFrom[i] = mean.values[d], mean.values[d]-half, mean.values[d]+half, mean.origin[d]
	}
}

func (s *skyMaker) copyWarmth(from, to int) {
	for i := from; i < to; i++ {
		d := s.days[i]
		copy(s.hours.Temperature[24*i:24*i+24], s.hourly.values[24*d:24*d+24])
		copy(s.origin[Temperature][24*i:24*i+24], s.hourly.origin[24*d:24*d+24])
	}
}

// dayWarmth makes the temperatures of kept day i, which is day k of the track.
func (s *skyMaker) dayWarmth(t *sun.Track, i, k int) {
	now := sunDayOf(t, k)
	if i == 0 {
		s.yesterday = now
	}
	at := func(i int) extremes {
		i = max(0, min(len(s.days)-1, i))
		return extremes{s.low[i], s.high[i], s.mean[i]}
	}
	hours, kept := warmth(at(i-1), at(i), at(i+1), s.yesterday, now)
	s.yesterday = now
	if !kept {
		s.unkept++
	}
	copy(s.hours.Temperature[24*i:24*i+24], hours[:])
	for h := range 24 {
		s.origin[Temperature][24*i+h] = s.lowFrom[i]
	}
}

// readMoisture takes what the record has of moisture. Gaps of hourly records are filled
// as all columns; days without any are made from the lowest temperature.
func (s *skyMaker) readMoisture() {
	if s.g.step == Hourly {
		s.humid, _ = s.filled(Humidity)
		s.dew, _ = s.filled(DewPoint)
	} else {
		s.humid = s.recordedDays(Humidity)
		s.dew = s.recordedDays(DewPoint)
	}
	s.hasHumid, s.hasDew = s.humid.values != nil, s.dew.values != nil
}

// recordedDays gives a daily column with its gaps open.
func (s *skyMaker) recordedDays(c Column) filled {
	f := filled{values: s.g.values[c], origin: make([]Origin, len(s.g.days))}
	for i := range f.origin {
		f.origin[i] = FromDay
	}
	return f
}

// dayMoisture makes the humidity of kept day i: recorded, or from the dew point, or with
// the day's lowest temperature as dew point (fao56 eq. 48).
func (s *skyMaker) dayMoisture(i int) {
	d := s.days[i]
	hours, temperature := s.hours.Humidity[24*i:24*i+24], s.hours.Temperature[24*i:24*i+24]
	origin := s.origin[Humidity][24*i : 24*i+24]
	if s.g.step == Hourly {
		s.hourMoisture(d, hours, temperature, origin)
		return
	}
	from := Computed
	switch {
	case s.hasHumid && !math.IsNaN(s.humid.values[d]):
		s.held += humidityOfMean(hours, temperature, s.humid.values[d])
		from = s.humid.origin[d]
	case s.hasDew && !math.IsNaN(s.dew.values[d]):
		s.held += humidityOfDew(hours, temperature, s.dew.values[d])
	default:
		humidityOfDew(hours, temperature, s.low[i])
	}
	for h := range origin {
		origin[h] = from
	}
}

func (s *skyMaker) hourMoisture(d int, hours, temperature []float64, origin []Origin) {
	low := math.Inf(1)
	for _, T := range temperature {
		low = min(low, T)
	}
	for h := range hours {
		row := 24*d + h
		switch {
		case s.hasHumid && !math.IsNaN(s.humid.values[row]):
			hours[h], origin[h] = s.humid.values[row], s.humid.origin[row]
			if hours[h] > 100 {
				hours[h] = 100
				s.held++
			}
		case s.hasDew && !math.IsNaN(s.dew.values[row]):
			s.held += humidityOfDew(hours[h:h+1], temperature[h:h+1], s.dew.values[row])
			origin[h] = Computed
		default:
			humidityOfDew(hours[h:h+1], temperature[h:h+1], low)
			origin[h] = Computed
		}
	}
}

// sayWarmth tells how temperature and humidity were made.
func (s *skyMaker) sayWarmth() {
	if s.hours.Temperature == nil {
		return
	}
	if s.g.step == Daily {
		s.say("the hours of temperature are drawn from the day's lowest and highest (parton-logan): both are kept, and the mean where it is recorded")
	}
	if s.madeRange {
		s.say("the record has only daily means of temperature: lowest and highest are estimated from the day's light (fao56 eq. 50, turned round, kRs %.2f)", s.o.kRs())
	}
	if s.flat {
		s.say("the record has only daily means of temperature and no light: every hour has the mean, and no light is estimated")
	}
	if s.unkept > 0 {
		s.say("on %d days the recorded mean temperature lay too near an extreme to be kept", s.unkept)
	}
	if s.crossed > 0 {
		s.say("on %d days a filled temperature crossed the recorded one: both are put at their middle", s.crossed)
	}
	var dewless int
	for i := range s.days {
		dewless += b2i(s.origin[Humidity][24*i] == Computed && (!s.hasDew || math.IsNaN(s.dew.values[s.days[i]*s.g.step.perDay()])))
	}
	if dewless > 0 {
		s.say("humidity: on %d days the dew point is taken to be the lowest temperature (fao56 eq. 48): too damp in dry climates", dewless)
	}
	if s.held > 0 {
		s.say("humidity: %d hours would have passed 100 %% and are held there", s.held)
	}
}
