package weather

import (
	"math"

	"suffice/site/sun"
)

// A skyMaker makes light, temperature, humidity and wind, one calendar year at a time so
// that the sun of 160 years need not be held.
type skyMaker struct {
	*maker
	global, beam, diffuse filled
	hasGlobal, ownBeam    bool // global as recorded; beam and diffuse as recorded
	ownDiffuse            bool
	low, high, mean       []float64 // daily records: of each kept day; mean NaN where not stated
	lowFrom               []Origin  // of low and high
	hourly                filled    // hourly records: temperature
	humid, dew            filled
	hasHumid, hasDew      bool
	yesterday             sunDay

	unkept, crossed, held, cut  int     // days whose mean was not kept, whose extremes crossed; hours at 100 %, days cut at clear sky
	lostPolar, over, closing, n float64 // kWh/m2 of light in polar night, of diffuse above global, of beam and diffuse beside global in n hours
	beamDays, beamMade          float64 // kWh/m2 of beam recorded by days, and made
	madeRange, flat             bool
}

func (m *maker) makeSky() {
	s := &skyMaker{maker: m}
	s.readLight()
	s.readWarmth()
	s.readMoisture()
	if s.canLight() {
		m.hours.Global, m.hours.Beam, m.hours.Diffuse = m.column(Global), m.column(Beam), m.column(Diffuse)
	}
	if s.canWarmth() {
		m.hours.Temperature, m.hours.Humidity = m.column(Temperature), m.column(Humidity)
	}
	for from := 0; from < len(m.days); {
		to := from + 1
		for to < len(m.days) && m.days[to] == m.days[to-1]+1 && m.hours.Days[to].Year == m.hours.Days[from].Year {
			to++
		}
		s.stretch(from, to)
		from = to
	}
	s.makeWind()
	s.saySky()
}

func (s *skyMaker) canWarmth() bool { return s.low != nil || s.hourly.values != nil }

// canLight tells whether every hour can have its light: recorded and filled, or made from
// a recorded range of temperature.
func (s *skyMaker) canLight() bool {
	return s.hasGlobal && s.global.left == 0 || s.canWarmth() && !s.madeRange && !s.flat
}

// stretch makes the sky of the kept days from one to before another, which follow each
// other.
func (s *skyMaker) stretch(from, to int) {
	t := sun.NewTrack(s.place, sunDates(s.hours.Days[from:to]))
	if s.canWarmth() && s.g.step == Hourly {
		s.copyWarmth(from, to)
	}
	if s.hours.Global != nil {
		for i := from; i < to; i++ {
			s.dayLight(t, i, i-from)
		}
		s.split(t, from, to)
	}
	if !s.canWarmth() {
		return
	}
	for i := from; i < to; i++ {
		if s.g.step == Daily {
			s.dayWarmth(t, i, i-from)
		}
		s.dayMoisture(i)
	}
}

// readLight decides which light the record has.
func (s *skyMaker) readLight() {
	s.global, s.hasGlobal = s.filled(Global)
	var whole bool
	if s.beam, whole = s.filled(Beam); whole {
		s.ownBeam = true
	}
	s.diffuse, s.ownDiffuse = s.filled(Diffuse)
	s.ownBeam = s.ownBeam && s.ownDiffuse
	if s.global.values == nil && s.ownBeam && s.g.step == Hourly {
		s.sumLight()
	}
	// What no rule could fill is made from temperature, day by day.
	s.hasGlobal = s.global.values != nil
	if s.hasGlobal && s.global.left > 0 {
		s.ownBeam, s.ownDiffuse = false, false
	}
}

// sumLight makes global light from beam and diffuse where the record has only those.
func (s *skyMaker) sumLight() {
	t := sun.NewTrack(s.place, sunDates(s.g.days))
	s.global = filled{values: make([]float64, t.Hours()), origin: make([]Origin, t.Hours())}
	for i := range s.global.values {
		s.global.values[i] = s.diffuse.values[i] + s.beam.values[i]*max(0, t.CosZenith[i])
		s.global.origin[i] = Computed
	}
}

// dayLight makes the global light of kept day i, which is day k of the track.
func (s *skyMaker) dayLight(t *sun.Track, i, k int) {
	d, hours := s.days[i], s.hours.Global[24*i:24*i+24]
	origin := s.origin[Global][24*i : 24*i+24]
	if s.g.step == Hourly && s.hasGlobal {
		copy(hours, s.global.values[24*d:24*d+24])
		copy(origin, s.global.origin[24*d:24*d+24])
		for h := range hours {
			if math.IsNaN(hours[h]) {
				s.warmthHours(t, i, k, hours, origin)
				break
			}
		}
		return
	}
	light, from := math.NaN(), Computed
	if s.hasGlobal {
		light, from = s.global.values[d], s.global.origin[d]
	}
	if math.IsNaN(light) {
		light, from = s.warmthLightOf(i), Computed
	}
	shares := t.DayShares(k)
	var sum float64
	for h, share := range shares {
		hours[h], origin[h] = 1000*light*share, from
		sum += share
	}
	if sum == 0 {
		s.lostPolar += light
	}
}

// warmthHours makes the missing hours of a day from its range of temperature.
func (s *skyMaker) warmthHours(t *sun.Track, i, k int, hours []float64, origin []Origin) {
	light, shares := s.warmthLightOf(i), t.DayShares(k)
	for h := range hours {
		if math.IsNaN(hours[h]) {
			hours[h], origin[h] = 1000*light*shares[h], Computed
		}
	}
}

// warmthLightOf estimates the light of kept day i, kWh/m2, from its range of temperature;
// NaN where there is none.
func (s *skyMaker) warmthLightOf(i int) float64 {
	low, high := math.NaN(), math.NaN()
	switch {
	case s.hourly.values != nil:
		low, high = math.Inf(1), math.Inf(-1)
		for _, T := range s.hours.Temperature[24*i : 24*i+24] {
			low, high = min(low, T), max(high, T)
		}
	case s.low != nil:
		low, high = s.low[i], s.high[i]
	}
	out := sun.OutsideDay(s.place.Latitude, int(s.hours.Days[i].DayOfYear))
	light, cut := warmthLight(out, s.place.Altitude, high-low, s.o.kRs())
	if cut > 0 {
		s.cut++
	}
	return light
}

// split divides the global light of a stretch, or takes the record's own parts.
func (s *skyMaker) split(t *sun.Track, from, to int) {
	a, b := 24*from, 24*to
	global, beam, diffuse := s.hours.Global[a:b], s.hours.Beam[a:b], s.hours.Diffuse[a:b]
	own := s.ownDiffuse && s.hasGlobal
	switch {
	case own && s.g.step == Hourly:
		for i := from; i < to; i++ {
			s.ownParts(t, i, i-from)
		}
	case own:
		parts := t.Split(global, sun.BRL)
		for i := from; i < to; i++ {
			s.ownDay(t, i, i-from, parts.Diffuse[24*(i-from):24*(i-from)+24])
		}
	default:
		parts := t.Split(global, sun.BRL)
		copy(beam, parts.Beam)
		copy(diffuse, parts.Diffuse)
		for i := a; i < b; i++ {
			s.origin[Beam][i], s.origin[Diffuse][i] = Computed, Computed
			s.moved += parts.Moved[i-a] / 1000
		}
	}
}

// ownParts takes the record's own hourly diffuse light, and its beam or what is left.
func (s *skyMaker) ownParts(t *sun.Track, i, k int) {
	d := s.days[i]
	for h := range 24 {
		at, row := 24*i+h, 24*d+h
		s.hours.Diffuse[at], s.origin[Diffuse][at] = s.diffuse.values[row], s.diffuse.origin[row]
		moment := t.At(24*k + h)
		if s.ownBeam {
			s.hours.Beam[at], s.origin[Beam][at] = s.beam.values[row], s.beam.origin[row]
			off := s.hours.Beam[at]*max(0, moment.CosZenith) + s.hours.Diffuse[at] - s.hours.Global[at]
			s.closing, s.n = s.closing+off/1000, s.n+1
			continue
		}
		beam, moved := beamFrom(s.hours.Global[at], s.hours.Diffuse[at], moment)
		s.hours.Beam[at], s.origin[Beam][at] = beam, Computed
		s.hours.Diffuse[at] += moved
		s.moved += moved / 1000
	}
}

// ownDay lays the record's own daily diffuse light into hours; the beam is what is left.
func (s *skyMaker) ownDay(t *sun.Track, i, k int, modelled []float64) {
	d := s.days[i]
	diffuse, over := diffuseDay(s.hours.Global[24*i:24*i+24], modelled, s.diffuse.values[d])
	s.over += over
	if s.ownBeam {
		s.beamDays += s.beam.values[d]
	}
	for h := range 24 {
		at := 24*i + h
		beam, moved := beamFrom(s.hours.Global[at], diffuse[h], t.At(24*k+h))
		s.hours.Beam[at], s.hours.Diffuse[at] = beam, diffuse[h]+moved
		s.beamMade += beam / 1000
		s.origin[Beam][at], s.origin[Diffuse][at] = Computed, s.diffuse.origin[d]
		s.moved += moved / 1000
	}
}

func (s *skyMaker) makeWind() {
	c, factor := Wind, 1.0
	if s.g.values[Wind] == nil {
		c, factor = Wind2m, windAt10
	}
	f, whole := s.filled(c)
	if !whole {
		s.sayLeft(c, f)
		return
	}
	s.hours.Wind = s.spreadHours(Wind, f, factor)
	if c == Wind2m {
		s.say("wind at 10 m is %.2f times that recorded at 2 m (fao56 eq. 47)", windAt10)
	}
	if s.g.step == Daily {
		s.say("wind is even over each day")
	}
}

// saySky tells how the sky was made.
func (s *skyMaker) saySky() {
	years := float64(len(s.days)) / 365.25
	switch {
	case s.hours.Global == nil && s.hasGlobal:
		s.sayLeft(Global, s.global)
	case s.hours.Global == nil:
		s.say("the record tells nothing of light: it is left out")
	case !s.hasGlobal:
		s.say("a made sky: light is estimated from the day's range of temperature (fao56 eq. 50, kRs %.2f), %d days held at a clear sky's: single days are wrong by up to a third and years by up to a quarter, mostly too dull", s.o.kRs(), s.cut)
	}
	if s.hours.Global != nil && s.g.step == Daily {
		s.say("the hours of light are made from days (collares-pereira-rabl): the totals are kept, passing clouds are not there")
	}
	if s.hours.Global != nil && !s.ownDiffuse {
		s.say("global light is split into beam and diffuse by ridley-boland-lauret")
	}
	if s.moved > 0.05*years {
		s.say("%.1f kWh/m2 a year of beam were more than reaches the ground and count as diffuse", s.moved/years)
	}
	if s.over > 0 {
		s.say("%.1f kWh/m2 a year of recorded diffuse light were above the global light and are left out", s.over/years)
	}
	if s.beamDays > 0 {
		s.say("daily totals of global and diffuse light are kept; the beam that is left sums to %.0f kWh/m2 a year, recorded are %.0f", s.beamMade/years, s.beamDays/years)
	}
	if s.lostPolar > 0 {
		s.say("%.2f kWh/m2 a year were recorded on days on which the sun does not rise and are left out", s.lostPolar/years)
	}
	if s.n > 0 {
		s.say("recorded beam and diffuse sum to %+.1f kWh/m2 a year beside recorded global: all three are kept as they are", s.closing/years)
	}
	s.sayWarmth()
}
