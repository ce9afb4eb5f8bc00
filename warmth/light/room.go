package light

import (
	"errors"
	"fmt"
	"math"

	"suffice/glass"
	"suffice/quantity"
)

// A Side is one of the six of a room that is a box.
type Side int8

// Sides go round clockwise as seen from above: Right is on the right hand of who looks out through Front.
const (
	Floor Side = iota
	Ceiling
	Front
	Right
	Back
	Left
	Sides // how many there are
)

// String names the side.
func (s Side) String() string {
	return [...]string{"floor", "ceiling", "front", "right", "back", "left", "sides"}[s]
}

// A Box is a room's inside: Width along Front, Depth from Front to Back.
type Box struct {
	Width, Depth, Height quantity.Metres
	Absorptance          [Sides]float64 // of the opaque part for sunlight, 0.05 to 1
	Glass                [Sides]Opening // in each side
}

// An Opening is the glass in a side, seen from inside.
type Opening struct {
	Area  quantity.SquareMetres
	Lost  float64 // of diffuse light that falls on it, the share that leaves
	Taken float64 // and the share that the panes take up
}

// Shares says where light ends up: the shares sum to 1.
type Shares struct {
	Side  [Sides]float64 // taken up by the opaque part of each
	Panes float64        // taken up by panes on the way out
	Lost  float64        // out through glass
}

// add adds a share of other shares.
func (s *Shares) add(share float64, of *Shares) {
	for j := range s.Side {
		s.Side[j] += share * of.Side[j]
	}
	s.Panes += share * of.Panes
	s.Lost += share * of.Lost
}

// Sum gives the sum of all: 1.
func (s *Shares) Sum() float64 {
	sum := s.Panes + s.Lost
	for _, v := range s.Side {
		sum += v
	}
	return sum
}

// A Room is a Box made ready: what falls on a side is taken up there or thrown on evenly
// (Lambert), to the other sides as it sees them, over and over.
type Room struct {
	Box  Box
	from [Sides]Shares         // where light that falls on a side ends up
	view [Sides][Sides]float64 // share of what leaves a side that falls on another
}

// NewRoom makes a box ready.
func NewRoom(b Box) (*Room, error) {
	if err := b.faults(); err != nil {
		return nil, err
	}
	r := &Room{Box: b, view: b.views()}
	for k := range r.from {
		r.from[k] = b.settle(Side(k), &r.view)
	}
	return r, nil
}

// areas gives the sides' areas, glass included, m2.
func (b *Box) areas() (a [Sides]float64) {
	w, d, h := float64(b.Width), float64(b.Depth), float64(b.Height)
	a[Floor], a[Ceiling] = w*d, w*d
	a[Front], a[Back] = w*h, w*h
	a[Left], a[Right] = d*h, d*h
	return a
}

// views gives the view factors of a box: each pair of opposite sides by closed form, the
// neighbours from what is left over, since what leaves a side falls on the other five and
// a pair of sides sees each neighbour alike.
func (b *Box) views() (f [Sides][Sides]float64) {
	pairs := [3][2]Side{{Floor, Ceiling}, {Front, Back}, {Right, Left}}
	size := [3]float64{float64(b.Height), float64(b.Depth), float64(b.Width)} // the edge along which each pair lies apart
	var area, rest [3]float64
	for i := range pairs {
		x, y := size[(i+1)%3], size[(i+2)%3]
		area[i] = x * y
		facing := opposite(x/size[i], y/size[i])
		f[pairs[i][0]][pairs[i][1]], f[pairs[i][1]][pairs[i][0]] = facing, facing
		rest[i] = area[i] * (1 - facing) / 2 // to one of each pair beside it, summed
	}
	for i := range pairs {
		k, other := (i+1)%3, (i+2)%3
		between := (rest[i] + rest[k] - rest[other]) / 2 // area x view, one side of pair i to one of pair k
		for _, p := range pairs[i] {
			for _, q := range pairs[k] {
				f[p][q], f[q][p] = between/area[i], between/area[k]
			}
		}
	}
	return f
}

// opposite gives the view factor between equal rectangles that face each other, of sides x and y
// in units of their distance (howell-facing).
func opposite(x, y float64) float64 {
	p, q := math.Sqrt(1+x*x), math.Sqrt(1+y*y)
	return 2 / (math.Pi * x * y) * (math.Log(p*q/math.Sqrt(1+x*x+y*y)) +
		x*q*math.Atan(x/q) + y*p*math.Atan(y/p) - x*math.Atan(x) - y*math.Atan(y))
}

// enough is the light still under way, of 1, that is left out of the shares and spread over
// them: rounding.
const enough = 1e-15

// settle follows light that falls on a side until all is taken up.
func (b *Box) settle(on Side, view *[Sides][Sides]float64) (s Shares) {
	areas := b.areas()
	var light [Sides]float64
	light[on] = 1
	for under := 1.0; under > enough; {
		var next [Sides]float64
		under = 0
		for j, falls := range light {
			g := b.Glass[j]
			glazed := float64(g.Area) / areas[j]
			taken := (1 - glazed) * b.Absorptance[j]
			s.Side[j] += falls * taken
			s.Panes += falls * glazed * g.Taken
			s.Lost += falls * glazed * g.Lost
			thrown := falls * (1 - taken - glazed*(g.Taken+g.Lost))
			for k, share := range view[j] {
				next[k] += thrown * share
			}
			under += thrown
		}
		light = next
	}
	var even Shares
	even.add(1/s.Sum(), &s)
	return even
}

func (b *Box) faults() error {
	var faults []error
	for _, edge := range []quantity.Metres{b.Width, b.Depth, b.Height} {
		if !(edge >= 0.1 && edge <= 100) {
			faults = append(faults, fmt.Errorf("light: a room %g m wide, deep or high is out of range: 0.1 to 100 m", float64(edge)))
		}
	}
	areas := b.areas()
	for j, g := range b.Glass {
		if a := b.Absorptance[j]; !(a >= 0.05 && a <= 1) {
			faults = append(faults, fmt.Errorf("light: a %v that takes up %g of the light is out of range: 0.05 to 1", Side(j), a))
		}
		if !(g.Area >= 0 && float64(g.Area) <= areas[j]+hair) {
			faults = append(faults, fmt.Errorf("light: %g m2 of glass do not fit the %v of %g m2", float64(g.Area), Side(j), areas[j]))
		}
		if !(g.Lost >= 0 && g.Taken >= 0 && g.Lost+g.Taken <= 1) {
			faults = append(faults, fmt.Errorf("light: glass that loses %g and takes up %g of the light from inside is out of range: 0 to 1 together", g.Lost, g.Taken))
		}
	}
	return errors.Join(faults...)
}

// OpeningOf gives the glass of a window as the room sees it.
func OpeningOf(area quantity.SquareMetres, g glass.Glazing) Opening {
	o := g.Reversed().Diffuse()
	return Opening{Area: area, Lost: o.Transmitted, Taken: o.Taken()}
}
