package light

import (
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

// A Box is a room's inside: Width along Front, Depth from Front to Back.
type Box struct {
	Width, Depth, Height quantity.Metres
	Absorptance          [Sides]float64 // of the opaque part for sunlight, more than 0
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

// A Room is a Box made ready.
type Room struct {
	Box  Box
	from [Sides]Shares // where light that falls on a side ends up
	view [Sides][Sides]float64
}

// NewRoom makes a box ready.
func NewRoom(b Box) (*Room, error) { return &Room{Box: b}, nil }

// A Spot is where a window sits, as seen from inside looking out through it.
type Spot struct {
	Side  Side            // Front, Right, Back or Left
	Along quantity.Metres // from the wall's left end to the window's left side
	Sill  quantity.Metres // over the floor
}

// A Landing says where the light of one window ends up.
type Landing struct {
	Diffuse Shares   // of diffuse light let through
	Beam    []Shares // of the beam, by row of the year's table
	keys    []int16
}

// At gives the shares of the beam in an hour of the record. Where the sun does not reach the window they are those
// of diffuse light.
func (l *Landing) At(hour int) *Shares {
	return &l.Beam[int(l.keys[hour/dayHours])*dayHours+hour%dayHours]
}

// Landing gives where the light of a window of the room ends up.
func (o *Outdoors) Landing(r *Room, w Window, at Spot) (*Landing, error) {
	return &Landing{keys: o.keys}, nil
}
