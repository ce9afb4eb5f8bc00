package sun

import (
	"math"
	"testing"
	"time"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/quantity"
	"suffice/site"
)

var allModels = []Model{Perez, HayDavies, HDKR, Isotropic}

// A level plane receives what the horizontal does, under every model and at every height of the sun.
func TestLevelPlaneCloses(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.SampledFrom(allModels).Draw(t, "model")
		cosZ := rapid.Float64Range(1e-6, 1).Draw(t, "cosine of zenith")
		diffuse := rapid.Float64Range(0.1, 600).Draw(t, "diffuse")
		beam := rapid.Float64Range(0, 1300).Draw(t, "beam")
		got := NewFace(Plane{Azimuth: 77}, 0.2, m, site.Horizon{}).Light(Moment{cosZ, 3, 1380, 1},
			Light{Diffuse: quantity.Irradiance(diffuse), Beam: quantity.Irradiance(beam)})
		check.Balance(t, float64(got.Total()), diffuse+beam*cosZ, m.String())
	})
}

// Seen from the other hemisphere half a year later, mirrored, everything is the same.
func TestHemispheresMirror(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		latitude := quantity.Degrees(rapid.Float64Range(-90, 90).Draw(t, "latitude"))
		declination := quantity.Degrees(rapid.Float64Range(-23.44, 23.44).Draw(t, "declination"))
		solar := rapid.Float64Range(0, 24).Draw(t, "solar time")
		slope := quantity.Degrees(rapid.Float64Range(0, 180).Draw(t, "slope"))
		azimuth := quantity.Degrees(rapid.Float64Range(0, 360).Draw(t, "azimuth"))
		incidence := func(latitude, declination, azimuth quantity.Degrees) float64 {
			at := SolarMoment(latitude, declination, solar, 80)
			at.Share = 1
			return NewFace(Plane{slope, azimuth}, 0, Isotropic, site.Horizon{}).Light(at, Light{}).Incidence
		}
		check.Balance(t, incidence(latitude, declination, azimuth), incidence(-latitude, -declination, 180-azimuth), "incidence")
	})
}

// anyPlace is a place with the clock of its longitude, or an hour off it.
func anyPlace(t *rapid.T) site.Place {
	longitude := rapid.Float64Range(-180, 180).Draw(t, "longitude")
	return site.Place{Latitude: quantity.Degrees(rapid.Float64Range(-90, 90).Draw(t, "latitude")), Longitude: quantity.Degrees(longitude),
		Clock: math.Round(longitude/15) + float64(rapid.IntRange(-1, 1).Draw(t, "off"))}
}

func anyDate(t *rapid.T) Date {
	return Date{int32(rapid.IntRange(1980, 2060).Draw(t, "year")), int8(rapid.IntRange(1, 12).Draw(t, "month")), int8(rapid.IntRange(1, 28).Draw(t, "date"))}
}

// A track stands where Look does, but for what it leaves out: parallax (0.0024 deg), the
// straight lines that declination and equation of time take through a day (0.002 deg), and
// the 67 s between clock and dynamical time in the mean sun (0.0008 deg).
func TestTrackIsLook(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, d := anyPlace(t), anyDate(t)
		track := NewTrack(p, []Date{d})
		for h := range 24 {
			if share := track.Share[h]; share > 0 && share < 1 {
				continue
			}
			seconds := (float64(h) + 0.5 - p.Clock) * 3600
			at := time.Date(int(d.Year), time.Month(d.Month), int(d.Date), 0, 0, 0, int(seconds*1e9), time.UTC)
			seen := Look(p, at, Sight{101.3, 10})
			ours := math.Asin(track.CosZenith[h]) / degree
			azimuth := float64(seen.Azimuth)
			if track.Share[h] == 1 {
				azimuth = track.Azimuth[h] / degree
			}
			if off := apart(ours, azimuth, float64(seen.True), float64(seen.Azimuth)); off > 0.0055 {
				t.Fatalf("hour %d of %v at %v: %.4f deg apart", h, d, p, off)
			}
		}
	})
}

// The lit hours of a day sum to its day length, 2 ws / 15 deg, to the minute: the solar day
// is up to half a minute longer or shorter than the clock's, and where noon stands 2 h beside
// the middle of the clock day its declination is 0.034 deg another, half a minute below 60 deg.
func TestLitHoursSumToDay(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, d := anyPlace(t), anyDate(t)
		p.Latitude *= 0.66
		track := NewTrack(p, []Date{d})
		var lit float64
		for _, share := range track.Share {
			lit += share
		}
		if want := track.Sunset[0] * 2 / hourTurn; math.Abs(lit-want) > 1.0/60 {
			t.Fatalf("%v at %v: %.4f h lit, day length %.4f h", d, p, lit, want)
		}
	})
}

// The share of an hour with sun is what counting finds, also in hours that hold the end of a
// polar night or the dip of a night that is minutes long.
func TestShareIsCounted(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, d := anyPlace(t), anyDate(t)
		if rapid.Bool().Draw(t, "polar") { // seek the edge of polar day or night of that date
			e := NewTrack(p, []Date{d}).ends[0]
			edge := quantity.Radians(math.Acos(math.Abs(e.noon.sin))).Degrees()
			p.Latitude = edge * quantity.Degrees(rapid.SampledFrom([]float64{-1, 1}).Draw(t, "half")) *
				quantity.Degrees(rapid.Float64Range(0.995, 1.0).Draw(t, "near"))
		}
		track := NewTrack(p, []Date{d})
		latitude := directionOf(float64(p.Latitude.Radians()))
		const pieces = 400
		for h, share := range track.Share {
			start, declination := track.hourStart(0, h), track.ends[0].declinationIn(h)
			up := 0
			for k := range pieces {
				if sight(latitude, declination, directionOf(start+hourTurn*(float64(k)+0.5)/pieces)).up > 0 {
					up++
				}
			}
			if math.Abs(share-float64(up)/pieces) > 2.0/pieces {
				t.Fatalf("hour %d of %v at %v: share %.4f, counted %.4f", h, d, p, share, float64(up)/pieces)
			}
			if share > 0 && track.CosZenith[h] <= 0 {
				t.Fatalf("hour %d of %v at %v: lit for %.4f, but seen at cosine %g", h, d, p, share, track.CosZenith[h])
			}
		}
	})
}

// Just south of the polar circle midsummer's night lasts half an hour, and at 7.5 W it lies
// within the first hour of the clock of Greenwich, whose edges are both in the sun.
func TestNightWithinAnHour(t *testing.T) {
	track := NewTrack(site.Place{Latitude: 66.515, Longitude: -7.5}, []Date{{2021, 6, 21}})
	if share := track.Share[0]; math.Abs(share-0.5) > 0.1 {
		t.Errorf("the hour of midnight is lit for %.3f of it, want about a half", share)
	}
	for h := 1; h < 24; h++ {
		if track.Share[h] != 1 {
			t.Errorf("hour %d is lit for %.3f", h, track.Share[h])
		}
	}
}

// The noon of a date lies in that date, wherever the clock was taken from.
func TestNoonIsOfTheDate(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, d := anyPlace(t), anyDate(t)
		p.Clock = float64(rapid.IntRange(-12, 14).Draw(t, "clock"))
		noon := DaylightOf(p, d).Noon
		// The mean sun's noon is taken: the true one may stand 17 minutes beside it, over midnight.
		early, late := noon.Add(-17*time.Minute), noon.Add(17*time.Minute)
		if early.Day() != int(d.Date) && late.Day() != int(d.Date) {
			t.Fatalf("%v at %v: noon is %v", d, p, noon)
		}
		jd := julianDay(noon)
		if w := sunAt(jd).hourAngle(jd, float64(p.Longitude.Radians())); math.Abs(w) > 1e-6 {
			t.Fatalf("%v at %v: the sun of noon stands at %g rad", d, p, w)
		}
	})
}

// The light outside, hour by hour, sums to the closed formula of the day, stretched by what
// the solar day is longer than 24 h, but for the excess of the middle of an hour over its
// mean: h2/24 sin ws/(sin ws - ws cos ws) for an hour's angle h, 0.29 % on long days and
// more on short ones (the midpoint rule's own error). Noon may stand 2 h from the middle of
// the clock day, where the declination is 0.034 deg another.
func TestHoursSumToLightOutside(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, d := anyPlace(t), anyDate(t)
		p.Latitude *= 0.66
		track := NewTrack(p, []Date{d})
		var sum float64
		for h := range 24 {
			sum += track.Normal[h] * track.CosZenith[h] * track.Share[h]
		}
		e, ws, phi := track.ends[0], track.Sunset[0], directionOf(float64(p.Latitude.Radians()))
		day := ws*phi.sin*e.noon.sin + phi.cos*e.noon.cos*math.Sin(ws)
		want := track.Normal[0] * 24 / math.Pi * day / (1 + (e.equation[1]-e.equation[0])/(2*math.Pi))
		excess := hourTurn * hourTurn / 24 * math.Sin(ws) / (math.Sin(ws) - ws*math.Cos(ws))
		moved := 0.034 * degree * math.Abs(ws*phi.sin*e.noon.cos-phi.cos*e.noon.sin*math.Sin(ws)) / day
		if ratio := sum / want; ratio < 1-moved || ratio > 1+1.02*excess+moved+1e-5 {
			t.Fatalf("%v at %v: hours sum to %.6f of the day, want up to %.6f", d, p, ratio, 1+excess)
		}
	})
}

// At the poles the sun circles for half a year and is gone for the other.
func TestPoles(t *testing.T) {
	for _, latitude := range []quantity.Degrees{90, -90} {
		track := NewTrack(site.Place{Latitude: latitude}, []Date{{2021, 6, 21}, {2021, 12, 21}})
		for i := range track.Share {
			summer := (latitude > 0) == (i < 24)
			if up := track.Share[i] == 1; up != summer || (!up && track.Share[i] != 0) {
				t.Errorf("latitude %g, hour %d: share %g", float64(latitude), i, track.Share[i])
			}
			if math.IsNaN(track.Azimuth[i] + track.Altitude[i] + track.CosZenith[i]) {
				t.Errorf("latitude %g, hour %d: not a number", float64(latitude), i)
			}
		}
		for day := range 2 {
			d := DaylightOf(site.Place{Latitude: latitude}, Date{2021, int8(6 + 6*day), 21})
			if d.Always == d.Never || !d.Rise.IsZero() || d.Always != (track.Share[24*day] == 1) {
				t.Errorf("latitude %g, day %d: %+v", float64(latitude), day, d)
			}
		}
	}
}

// A day's shares sum to one and none is negative; the polar night has none. Where clock and
// sun agree, morning mirrors evening.
func TestDaySharesKeepTheTotal(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, d := anyPlace(t), anyDate(t)
		track := NewTrack(p, []Date{d})
		var sum, lit float64
		for h, share := range track.DayShares(0) {
			if share < 0 {
				t.Fatalf("%v at %v: hour %d has share %g", d, p, h, share)
			}
			if share > 1e-8 && track.Share[h] == 0 { // the root of the precision: an arc cosine is that coarse
				t.Fatalf("%v at %v: hour %d has share %g without sun", d, p, h, share)
			}
			sum += share
			lit += track.Share[h]
		}
		if lit == 0 {
			check.Balance(t, sum, 0, "polar night")
		} else {
			check.Balance(t, sum, 1, "day")
		}
	})
	equator := NewTrack(site.Place{}, []Date{{2021, 4, 15}}) // equation of time within 10 s of zero
	shares := equator.DayShares(0)
	for h := range 12 {
		if math.Abs(shares[h]-shares[23-h]) > 0.0005 {
			t.Errorf("hour %d has %.5f of the day, its mirror %.5f", h, shares[h], shares[23-h])
		}
	}
}

// Splitting loses nothing: diffuse plus the beam's part on the level is the global light,
// whatever the record says, and what was moved is part of the diffuse.
func TestSplitClosesLaw(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p, d := anyPlace(t), anyDate(t)
		p.Altitude = quantity.Metres(rapid.Float64Range(0, 4000).Draw(t, "altitude"))
		track := NewTrack(p, []Date{d, {d.Year, d.Month, d.Date}})
		global := make([]float64, track.Hours())
		for i := range global {
			global[i] = rapid.Float64Range(-5, 1400).Draw(t, "global")
		}
		for _, m := range []SplitModel{BRL, Erbs} {
			s := track.Split(global, m)
			for i, g := range global {
				check.Balance(t, s.Diffuse[i]+s.Beam[i]*max(0, track.CosZenith[i]), g, m.String())
				if s.Beam[i] < 0 || s.Beam[i] > track.Normal[i]*track.Share[i] || s.Moved[i] < -1e-9 || s.Moved[i] > max(0, s.Diffuse[i])+1e-9 {
					t.Fatalf("%s, hour %d of %v: global %g, beam %g, moved %g, diffuse %g", m, i, p, g, s.Beam[i], s.Moved[i], s.Diffuse[i])
				}
			}
		}
	})
}

// A gap stays a gap and spoils nothing beside it.
func TestSplitKeepsGaps(t *testing.T) {
	track := NewTrack(site.Place{Latitude: 35}, []Date{{2021, 5, 1}})
	global := make([]float64, 24)
	for i := range global {
		global[i] = 500 * max(0, track.CosZenith[i])
	}
	global[11] = math.NaN()
	s := track.Split(global, BRL)
	for i := range global {
		if gap := math.IsNaN(s.Diffuse[i]); gap != (i == 11) {
			t.Errorf("hour %d: diffuse %g, beam %g", i, s.Diffuse[i], s.Beam[i])
		}
	}
}

// More light outside the sky's grey is less of it diffuse.
func TestBRLFallsWithClearness(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		in := BRLIn{Clearness: rapid.Float64Range(0, 1).Draw(t, "clearness"), Daily: 0.5, Persistence: 0.5, SolarTime: 10, Altitude: 40}
		clearer := in
		clearer.Clearness += 0.01
		if a, b := BRLFraction(in), BRLFraction(clearer); !(b < a && a < 1 && b > 0) {
			t.Fatalf("clearness %g: %g, then %g", in.Clearness, a, b)
		}
	})
}

func anyHorizon(t *rapid.T) site.Horizon {
	var points []site.HorizonPoint
	for a := range 12 {
		points = append(points, site.HorizonPoint{Azimuth: quantity.Degrees(30 * a), Height: quantity.Degrees(rapid.Float64Range(0, 60).Draw(t, "height"))})
	}
	h, err := site.NewHorizon(points...)
	if err != nil {
		t.Fatal(err)
	}
	return h
}

// What the skyline takes is named: light and Shaded together are the light of the open plane.
func TestShadedIsNamed(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := Plane{quantity.Degrees(rapid.Float64Range(0, 90).Draw(t, "slope")), quantity.Degrees(rapid.Float64Range(0, 360).Draw(t, "azimuth"))}
		m := rapid.SampledFrom([]Model{HayDavies, HDKR, Isotropic}).Draw(t, "model")
		at := Moment{rapid.Float64Range(0.001, 1).Draw(t, "cosine of zenith"), quantity.Radians(rapid.Float64Range(0, 6.28).Draw(t, "azimuth of sun")), 1380, 1}
		l := Light{Diffuse: 200, Beam: 600}
		open, walled := NewFace(p, 0.2, m, site.Horizon{}).Light(at, l), NewFace(p, 0.2, m, anyHorizon(t)).Light(at, l)
		check.Balance(t, float64(walled.Total()+walled.Shaded), float64(open.Total()), m.String())
		if open.Shaded != 0 || walled.Shaded < -1e-9 {
			t.Fatalf("shaded %g in the open, %g behind the skyline", float64(open.Shaded), float64(walled.Shaded))
		}
	})
}

// Under a skyline of the same height h all round, a level plane sees cos2 h of the sky and a
// wall 1 - (2h + sin 2h)/pi: both integrals can be done on paper.
func TestSkylineHidesSky(t *testing.T) {
	for _, h := range []float64{5, 20, 45, 80} {
		ring, err := site.NewHorizon(site.HorizonPoint{Azimuth: 0, Height: quantity.Degrees(h)})
		if err != nil {
			t.Fatal(err)
		}
		x := h * degree
		for _, c := range []struct {
			slope quantity.Degrees
			want  float64
		}{{0, math.Cos(x) * math.Cos(x)}, {90, 1 - (2*x+math.Sin(2*x))/math.Pi}} {
			got := NewFace(Plane{c.slope, 123}, 0, Isotropic, ring).seen
			if math.Abs(got-c.want) > 1e-4 {
				t.Errorf("slope %g behind %g deg: sees %.6f of its sky, want %.6f", float64(c.slope), h, got, c.want)
			}
		}
	}
}

// The open sky that a plane of any slope sees is (1 + cos slope)/2 of a level plane's, also
// where it leans over: the integral that hides sky gives the textbook's factor.
func TestOpenSkyIsTheTextbookFactor(t *testing.T) {
	for slope := quantity.Degrees(0); slope <= 180; slope += 15 {
		f := NewFace(Plane{slope, 200}, 0, Isotropic, site.Horizon{})
		if got, want := f.skyAbove(nil)/math.Pi, (1+f.cosSlope)/2; math.Abs(got-want) > 1e-3 {
			t.Errorf("slope %g: %.5f, want %.5f", float64(slope), got, want)
		}
	}
}

// No light is ever negative, on any plane under any sky that could be.
func TestLightIsNotNegative(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.SampledFrom([]Model{Perez, HayDavies, HDKR, Isotropic, Perez52010}).Draw(t, "model")
		p := Plane{quantity.Degrees(rapid.Float64Range(0, 180).Draw(t, "slope")), quantity.Degrees(rapid.Float64Range(0, 360).Draw(t, "azimuth"))}
		at := Moment{rapid.Float64Range(-1, 1).Draw(t, "cosine of zenith"), quantity.Radians(rapid.Float64Range(0, 6.28).Draw(t, "azimuth of sun")), 1380, rapid.Float64Range(0, 1).Draw(t, "share")}
		l := Light{quantity.Irradiance(rapid.Float64Range(0, 600).Draw(t, "diffuse")), quantity.Irradiance(rapid.Float64Range(0, 1400).Draw(t, "beam"))}
		got := NewFace(p, 0.3, m, site.Horizon{}).Light(at, l)
		if !(got.Beam >= 0 && got.Sky >= 0 && got.Ground >= 0 && got.Shaded >= 0) {
			t.Fatalf("%+v", got)
		}
	})
}

// Under allocates nothing when it is handed a column that is long enough.
func TestUnderAllocatesNothing(t *testing.T) {
	track, s := clearYear()
	f, dst := NewFace(Plane{35, 180}, 0.2, Perez, site.Horizon{}), make([]PlaneLight, track.Hours())
	sky := track.Spread(Perez, s.Diffuse, s.Beam)
	if n := testing.AllocsPerRun(3, func() { dst = f.Under(dst, sky) }); n != 0 {
		t.Errorf("a year made %v allocations, want none", n)
	}
}

// The season without a year stays near the sun of real years: the doc's 0.6 deg and 1 min.
func TestSeasonIsNear(t *testing.T) {
	var worstDeclination, worstEquation float64
	for d := range 4 * 365 {
		at := time.Date(2021, 1, 1+d, 12, 0, 0, 0, time.UTC)
		p := Look(site.Place{}, at, Sight{101.3, 10})
		declination, equation := Season(at.YearDay())
		worstDeclination = max(worstDeclination, math.Abs(float64(declination-p.Declination)))
		worstEquation = max(worstEquation, math.Abs(equation-p.EquationOfTime))
	}
	t.Logf("at most %.2f deg and %.2f min", worstDeclination, worstEquation)
	if worstDeclination > 0.6 || worstEquation > 1 {
		t.Errorf("%.2f deg and %.2f min off, want 0.6 and 1 at most", worstDeclination, worstEquation)
	}
}

// However bright the dusk of an hour in which the sun sets, light from round the sun is at most what the sun sends, and no plane gets more of
// the rest than a dome all round it would give.
func TestDuskIsNoSun(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		up, share := rapid.Float64Range(1e-4, 0.1).Draw(t, "cosine of zenith"), rapid.Float64Range(1e-6, 1).Draw(t, "share of the hour with sun")
		diffuse := rapid.Float64Range(0.1, 500).Draw(t, "diffuse light")
		f := NewFace(Plane{quantity.Degrees(rapid.Float64Range(0, 180).Draw(t, "slope")), quantity.Degrees(rapid.Float64Range(0, 360).Draw(t, "azimuth"))}, 0, Perez, site.Horizon{})
		out := f.Light(Moment{CosZenith: up, Azimuth: 4, Normal: 1360, Share: share}, Light{Diffuse: quantity.Irradiance(diffuse)})
		if most := 1360 * share * (1 + 1e-12); float64(out.Round) > most {
			t.Fatalf("%g W/m2 from round the sun, which sends %g", float64(out.Round), most)
		}
		if rest := float64(out.Sky - out.Round); rest > 1.2*diffuse {
			t.Fatalf("%g W/m2 of sky on a plane, of %g on the level", rest, diffuse)
		}
	})
}
