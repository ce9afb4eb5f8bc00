package sun

import "suffice/quantity"

// A Spread is the light of a track's hours as one model spreads it over the sky: all that does not depend on the plane it
// falls on. It is worked once and shared by all faces under that sky; it is read-only.
type Spread struct {
	Model Model
	Track *Track

	bright []bright // of the hours with sun or light, in order
}

// bright is an hour with sun or light.
type bright struct {
	row    int
	toward ray     // to the sun; meaningless while it is down
	sunny  bool    // some of the hour has sun
	beam   float64 // W/m2 facing the sun
	dome   float64 // W/m2 on the level, even over the sky
	bow    float64 // by which a plane that leans sees the dome brighter, times the cube of the sine of half its slope
	ring   float64 // W/m2 facing the sun, from round it
	band   float64 // W/m2 on a plane that stands, from the horizon: may be less than nothing
	level  float64 // W/m2 of all light on the level
}

// Spread spreads a column of diffuse light on the horizontal and of beam facing the sun, W/m2, means of the hour.
func (t *Track) Spread(m Model, diffuse, beam []float64) *Spread {
	lit := 0
	for i := range t.CosZenith {
		if t.lightIn(i, diffuse, beam) {
			lit++
		}
	}
	s := &Spread{Model: m, Track: t, bright: make([]bright, 0, lit)}
	for i := range t.CosZenith {
		if t.lightIn(i, diffuse, beam) {
			at := look{ray{t.CosZenith[i], t.north[i], t.east[i]}, t.Altitude[i], t.Azimuth[i], t.Normal[i] * t.Share[i]}
			s.bright = append(s.bright, m.spread(i, &at, diffuse[i], beam[i]))
		}
	}
	return s
}

// lightIn reports whether an hour has sun or light; light that is not known counts as light, so that it shows.
func (t *Track) lightIn(i int, diffuse, beam []float64) bool {
	return t.Normal[i]*t.Share[i] > 0 || diffuse[i] != 0 || beam[i] != 0
}

// spread spreads the light of one hour.
func (m Model) spread(row int, at *look, diffuse, beam float64) bright {
	b := m.brightness(at, diffuse, beam)
	return bright{
		row: row, toward: at.ray, sunny: at.outside > 0, beam: beam,
		dome: diffuse * (1 - b.round*b.taken), bow: b.bow, ring: diffuse * b.round / b.low, band: diffuse * b.band,
		level: diffuse + beam*max(0, at.up),
	}
}

// Fill gives the light on the face for every hour of a track. The columns are W/m2,
// diffuse on the horizontal, beam facing the sun, means of the hour; dst is reused if it is
// long enough. For several faces under one sky spread it once, and use Under.
func (f *Face) Fill(dst []PlaneLight, t *Track, diffuse, beam []float64) []PlaneLight {
	return f.Under(dst, t.Spread(f.Model, diffuse, beam))
}

// Under gives the light on the face for every hour of a sky, as its model spreads it, whatever the face's own is; dst
// is reused if it is long enough.
func (f *Face) Under(dst []PlaneLight, s *Spread) []PlaneLight {
	n := s.Track.Hours()
	if cap(dst) < n {
		dst = make([]PlaneLight, n)
	}
	dst = dst[:n]
	next := 0
	for k := range s.bright {
		b := &s.bright[k]
		for ; next < b.row; next++ {
			dst[next] = night
		}
		f.take(b, f.skyline != nil && f.hidden(b.toward.up, s.Track.Azimuth[b.row]), &dst[next])
		next++
	}
	for ; next < n; next++ {
		dst[next] = night
	}
	return dst
}

// night is an hour without sun or light.
var night = PlaneLight{Incidence: -1}

// take gives what of an hour's light falls on the face.
func (f *Face) take(b *bright, hidden bool, out *PlaneLight) {
	out.Incidence = -1
	if b.sunny {
		out.Incidence = f.cosSlope*b.toward.up + f.sinSlope*(b.toward.north*f.cosAzimuth+b.toward.east*f.sinAzimuth)
	}
	onPlane := max(0, out.Incidence)
	dome := b.dome * (1 + b.bow*f.leant) * (1 + f.cosSlope) / 2
	around, direct, lost := b.ring*onPlane, b.beam*onPlane, dome*(1-f.seen)
	if b.toward.up <= 0 || hidden {
		lost += direct + around
		direct, around = 0, 0
	}
	sky := dome*f.seen + around + b.band*f.sinSlope
	if sky < 0 && b.dome >= 0 {
		sky = 0 // the term at the horizon may ask for more than there is, on a plane turned from the sun
	}
	out.Beam, out.Sky, out.Shaded = quantity.Irradiance(direct), quantity.Irradiance(sky), quantity.Irradiance(lost)
	out.Round = quantity.Irradiance(min(around, sky))
	out.Ground = quantity.Irradiance(f.Albedo * b.level * (1 - f.cosSlope) / 2)
}

// light gives the light of one moment.
func (f *Face) light(at look, l Light) PlaneLight {
	out := night
	if at.outside > 0 || l.Diffuse != 0 || l.Beam != 0 {
		b := f.Model.spread(0, &at, float64(l.Diffuse), float64(l.Beam))
		f.take(&b, f.skyline != nil && f.hidden(at.up, at.azimuth), &out)
	}
	return out
}

// hidden reports whether the skyline stands before a sun whose sine of altitude and azimuth, rad, are given.
func (f *Face) hidden(up, azimuth float64) bool {
	d := turn(azimuth, 0) / degree
	i := min(int(d), 359)
	return up < f.skyline[i]+(f.skyline[i+1]-f.skyline[i])*(d-float64(i))
}
