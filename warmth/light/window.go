package light

import (
	"errors"
	"math"

	"suffice/glass"
	"suffice/material"
	"suffice/quantity"
	"suffice/site/sun"
)

// A Window is a window in its wall. Boards round it need an upright plane.
type Window struct {
	Plane sun.Plane
	Shade glass.Shade  // its size, and the boards
	Pane  glass.Window // its own Outside film is not used: Outer gives it
	Outer Outer
}

// WindowHours is what the sky does to an open window, hour by hour, for each m2 of it,
// frame included.
//
// To a room it is a conductance between Outside and the inner face of the panes, with Taken
// as heat put on that face, and Beam and Diffuse let through. A closed shutter outside
// multiplies Beam, Diffuse and Taken by what it lets past.
type WindowHours struct {
	Conductance material.Transmittance // from Outside to the inner face
	Outside     []float64              // degC: air and sky together, without sun
	Beam        []float64              // W/m2 let through from the sun and round it
	Diffuse     []float64              // W/m2 let through from the rest of the sky and the ground
	Taken       []float64              // W/m2 at the inner face, for what panes and frame take up
	Inward      float64                // share of Taken that enters a room with the declared inside film
	Sunlit      []float64              // share of the window that the sun reaches, by row of the year's table: 24 x day + hour
	Incident    float64                // kWh on each m2, as if nothing stood round it, whole record
	Through     float64                // kWh of Beam and Diffuse
}

// Window gives the hours of a window.
func (o *Outdoors) Window(w Window) (WindowHours, error) {
	if err := w.faults(); err != nil {
		return WindowHours{}, err
	}
	n := len(o.Hours.Temperature)
	out := WindowHours{
		Outside: make([]float64, n), Beam: make([]float64, n), Diffuse: make([]float64, n), Taken: make([]float64, n),
		Sunlit: o.sunlit(w),
	}
	w.Pane.Outside = o.outer(w.Outer, w.Plane.Slope, 0, nil, out.Outside)
	inside, u := float64(w.Pane.Inside), float64(w.Pane.U())
	if !(inside > u) {
		return WindowHours{}, errors.New("light: a window conducts more than its inside film: its frame's U does not fit the film")
	}
	out.Conductance = material.Transmittance(1 / (1/u - 1/inside))
	out.Inward = 1 - u/inside
	o.pass(w, &out)
	out.Through = sum(out.Beam) + sum(out.Diffuse)
	return out, nil
}

// opened is what a window does to light, made ready for the hours.
type opened struct {
	curve       *glass.Curve
	inward      [glass.MostPanes]float64
	clear       float64 // share of the window that is glass
	frame       float64 // of light on the window, what the frame sends inside
	diffuse     float64 // share of diffuse light let through
	taken       float64 // share of diffuse light taken up and sent inside
	sky, ground float64 // what boards leave of each
}

func (w Window) open() opened {
	f := w.Pane.Frame
	curve := w.Pane.Glazing.Curve()
	b := opened{curve: curve, inward: w.Pane.Inward(), clear: 1 - f.Share, sky: 1, ground: 1}
	b.frame = f.Share * f.Absorptance * float64(f.U/w.Pane.Outside)
	b.diffuse, b.taken = b.parts(curve.Diffuse)
	if w.boards() {
		views := w.Shade.Views()
		b.sky, b.ground = views.Sky/openHalf, views.Ground/openHalf
	}
	return b
}

// openHalf is what an open upright window sees of the sky, and of the ground.
const openHalf = 0.5

// parts gives the shares of light that glass lets through and that its panes send inside.
func (b *opened) parts(of glass.Optics) (through, inside float64) {
	for i, a := range of.Absorbed {
		inside += b.inward[i] * a
	}
	return of.Transmitted, inside
}

// pass fills the light of all hours.
func (o *Outdoors) pass(w Window, out *WindowHours) {
	b, boards := w.open(), w.boards()
	for i, l := range o.Light(w.Plane) {
		whole := float64(l.Total())
		if whole == 0 {
			continue
		}
		out.Incident += whole / 1000
		lit := 1.0
		if boards && l.Beam+l.Round > 0 {
			lit = out.Sunlit[o.row(i)]
		}
		var inside float64
		out.Beam[i], out.Diffuse[i], inside = b.hour(l, lit)
		out.Taken[i] = inside / out.Inward
	}
}

// hour gives what one hour sends inside for each m2 of window of which the sun reaches a share, W/m2: let through
// from the sun and round it, let through from elsewhere, and taken up and passed on. Light from
// round the sun goes as the beam does; all other light as if it came evenly from its half of the view.
func (b *opened) hour(l sun.PlaneLight, lit float64) (beam, diffuse, inside float64) {
	direct := float64(l.Beam+l.Round) * lit
	even := float64(l.Sky-l.Round)*b.sky + float64(l.Ground)*b.ground
	var through, kept float64
	if direct > 0 {
		through, kept = b.parts(b.curve.At(l.Incidence))
	}
	return b.clear * through * direct, b.clear * b.diffuse * even, b.clear*(kept*direct+b.taken*even) + b.frame*(direct+even)
}

// sunlit gives the table of the sunlit share: 0 where the sun is down or behind the wall.
func (o *Outdoors) sunlit(w Window) []float64 {
	table := make([]float64, yearDays*dayHours)
	boards := w.boards()
	o.eachSunny(w.Plane, func(row int, r glass.Ray) {
		table[row] = 1
		if boards {
			table[row] = min(max(w.Shade.Sunlit(r), 0), 1) // areas of polygons: rounding
		}
	})
	return table
}

// eachSunny calls for each row of the year's table in which the sun stands before a plane, with the
// ray from an upright window in it.
func (o *Outdoors) eachSunny(p sun.Plane, visit func(row int, r glass.Ray)) {
	lean, rise := math.Sincos(float64(p.Slope.Radians()))
	for key, day := range o.samples {
		for hour := range dayHours {
			i := int(day)*dayHours + hour
			if day < 0 || o.Track.Share[i] == 0 {
				continue
			}
			r := glass.RayTo(quantity.Radians(o.Track.Altitude[i]).Degrees(), quantity.Radians(o.Track.Azimuth[i]).Degrees(), p.Azimuth)
			if r.Out*lean+r.Up*rise > 0 {
				visit(key*dayHours+hour, r)
			}
		}
	}
}

// boards reports whether anything stands out of the wall.
func (w Window) boards() bool {
	return w.Shade.Overhang.Depth > 0 || w.Shade.Left.Depth > 0 || w.Shade.Right.Depth > 0
}

func (w Window) faults() error {
	pane := w.Pane
	pane.Outside = glass.FilmOutside // of which only Outer's counts
	faults := []error{w.Shade.Faults(), w.Outer.faults(), pane.Faults()}
	if w.boards() && w.Plane.Slope != 90 {
		faults = append(faults, errors.New("light: overhang and fins stand round upright windows only: leave them out of a sloping one"))
	}
	return errors.Join(faults...)
}
