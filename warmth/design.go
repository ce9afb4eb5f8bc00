package warmth

import (
	"suffice/glass"
	"suffice/material"
	"suffice/quantity"
	"suffice/site/sun"
	"suffice/warmth/fabric"
	"suffice/warmth/ground"
	"suffice/warmth/vent"
)

// Caps keep the state plain; a sentence says so when one is passed.
const (
	MostRooms    = 8
	MostWalls    = 16 // of a room
	MostWindows  = 16 // of a room
	MostOpenings = 8  // of a room
)

// A Design is the rooms as they are built.
//
// The ground's brightness, the skyline and the sky belong to the light.Outdoors it is prepared with.
type Design struct {
	Rooms []Room
	Films Films // the zero Films is refused: see UsualFilms
}

// A Room is one mixed air with what stands around it.
type Room struct {
	Name         string
	Area         quantity.SquareMetres // of its floor
	Height       quantity.Metres
	Wide         quantity.Metres // inside, along the wall of its first window; 0 is as deep as wide
	Contents     float64         // J/K for each square metre of floor, beside the air; see UsualContents
	Walls        []Wall
	Windows      []Window
	Openings     []Opening
	Vents        Vents
	Infiltration float64 // air changes with the outside, 1/h, with everything shut
	Fans         []Fan
	Heating      []Hold // the warmest that holds in an hour counts
	Cooling      []Hold // the coolest that holds in an hour counts
	Gains        []Gain
	Dug          *Dug // the earth behind and under it as a section; nil leaves it to what the walls tell
}

// UsualContents is the heat that furniture and air hold for one kelvin, J/K for a square metre of floor
// (iso52016-1, from memory).
const UsualContents = 10000

// A Side says what a wall has on its other side.
type Side int

// The sides of walls.
const (
	Air       Side = iota // outside: air, sky and sun
	Earth                 // ground: see Ground
	Neighbour             // another room of the design
	Nothing               // no heat passes: a room alike on the other side
)

// A Role is where a wall stands in its room, which says how air passes along its inside.
type Role int

// The roles of walls.
const (
	Upright Role = iota
	Roof         // or ceiling
	Floor
)

// A Wall is a wall, roof or floor. One between two rooms is told once, by one of them.
type Wall struct {
	Name   string
	Area   quantity.SquareMetres // without its windows
	Role   Role                  // seen from its room; to a neighbour a roof is a floor
	Faces  Side
	Other  int            // index of the neighbour, where it faces one
	Plane  sun.Plane      // of its outside, where it faces air
	Layers []fabric.Layer // from inside to outside
	Ground Ground         // where it faces earth
	Smooth bool           // outside, as glass is; else as rough as render or timber

	OutsideAbsorptance, OutsideEmissivity float64 // 0 to 1; matter where it faces air, and as the inside ones of a neighbour
	InsideAbsorptance, InsideEmissivity   float64
}

// Ground says how warm the earth is behind a wall, by one of three ways: a temperature that never changes (Fixed),
// undisturbed ground of a depth (Depth, Of), or a floor on the ground (Slab).
//
// Undisturbed ground stands at once behind the layers and Behind: earth that the room itself warms has to be told
// as the last of the layers, a metre or two of it. A slab brings its own.
type Ground struct {
	Fixed  *quantity.Celsius
	Depth  *quantity.Metres // of the wall's middle below the ground's face
	Of     *ground.Undisturbed
	Slab   *ground.Floor       // its Resists is that of the wall's layers
	Behind material.Resistance // m2K/W between the layers and the place with that temperature
}

// A Window is glass in a wall or roof, with its frame.
type Window struct {
	Name       string
	Area       quantity.SquareMetres // glass and frame
	Plane      sun.Plane
	Glazing    glass.Glazing
	Gaps       [glass.MostPanes - 1]material.Transmittance // of the gaps, gas and radiation together, from outside
	Frame      glass.Frame
	Shade      glass.Shade     // its width and height, and the boards round it
	Along      quantity.Metres // from the left end of its wall to its left side, seen from inside
	Sill       quantity.Metres // over the floor
	Emissivity float64         // of its inner face, 0 to 1
	Outer      float64         // emissivity of its outer face, 0 to 1
	Shutter    Shutter
}

// A Shutter lies over the glass. The zero Shutter is none. Whether it is closed is known from clock, sun and weather alone.
type Shutter struct {
	Adds  material.Resistance // with the air it shuts in; 0 is no shutter
	Hours [24]bool            // in which it may be closed
	Dark  bool                // closed only while the sun is down
	Below quantity.Celsius    // closed only while it is colder outside
}

// An Opening is a door or gap to another room, through which air passes both ways. It is told by one of the two.
type Opening struct {
	To    int // index of the other room
	Area  quantity.SquareMetres
	Tall  quantity.Metres // from its lower to its upper edge
	Hours [24]bool        // in which it stands open
}

// Vents are the openings that the people use against heat: an inlet below and an outlet above. With one of them only, air
// passes in and out through it. The zero Vents are none.
type Vents struct {
	Inlet, Outlet vent.Opening
	Rule          vent.Rule
	Terrain       vent.Terrain
}

// A Fan changes air with the outside by the clock.
type Fan struct {
	Flow  float64 // m3/h
	Hours [24]bool
}

// A Hold is an air temperature at which a machine without limit holds a room.
type Hold struct {
	At    quantity.Celsius
	Hours [24]bool
}

// A Gain is heat that comes by the clock.
type Gain struct {
	Name    string
	Power   quantity.Watts
	Radiant float64 // share that warms the faces and not the air, 0 to 1
	Hours   [24]bool
}

// Always is every hour of the day.
func Always() (hours [24]bool) {
	for h := range hours {
		hours[h] = true
	}
	return hours
}

// Films are what joins faces to air and sky, alike in every room of every house.
type Films struct {
	Upright float64          // convection inside at walls and windows: c of h = c |ΔT|^(1/3), W/m2K^(4/3)
	Roof    float64          // at ceilings
	Floor   float64          // at floors
	Fixed   bool             // the three are h itself, W/m2K
	Least   quantity.Kelvins // between face and air, where hardly any heat passes through the wall
	Warm    quantity.Celsius // of a room, at which films and the radiation between its faces are reckoned

	Outside material.Transmittance // convection outside in still air, or always where ByWind is 0; radiation to the sky is apart
	Smooth  material.Transmittance // the same at glass and what is as smooth
	ByWind  float64                // W/m2K more for each m/s of the record's wind
}

// UsualFilms are those of still air inside, and of usual wind outside.
//
// Inside, h = 1.31 |ΔT|^(1/3) at upright faces and 1.52 |ΔT|^(1/3) at level ones from which air rises or
// falls (ashrae-fundamentals, natural convection, turbulent range, from memory). Each face has its own, 1.6 to 2.8 W/m2K, and keeps
// it: a room's convection really follows the hour, which is left out. Level faces over which air lies still have a third
// to a half of it; what faces up is warmed by the sun and what faces down cools by night, so that stillness is the lesser part.
// Sun and storage keep faces 2 K from the air where nothing passes through (common practice, no source; span 1 to 4).
//
// Outside, iso6946 (annex, from memory) has 4 + 4 v, v in m/s near the face, where the wind is a third to a half of the
// weather mast's: 10 to 12 W/m2K for usual weather, with a span of 7 to 20. Glass has less: bestest-1995 gives it 16.7
// of convection (21 less radiation) where timber has 24.7 (29.3 less radiation): two thirds, 7.4 beside 11, taken as 8 (span 5 to 14).
func UsualFilms() Films {
	return Films{Upright: 1.31, Roof: 1.52, Floor: 1.52, Least: 2, Warm: 20, Outside: 11, Smooth: 8}
}
