package water

import (
	"fmt"

	"suffice/quantity"
)

// A Kind is what water is wanted for, in the order in which the tank serves them.
type Kind int

const (
	Drinking Kind = iota
	Washing
	Flushing
	Outdoor
	Kinds // how many kinds there are
)

// String names the kind as a house file does.
func (k Kind) String() string {
	names := [Kinds]string{"drinking", "washing", "flushing", "outdoor"}
	if k < 0 || k >= Kinds {
		return fmt.Sprintf("kind %d", int(k))
	}
	return names[k]
}

// Caps keep the state plain; a sentence says so when one is passed.
const (
	MostRoofs  = 8
	MostTanks  = 8
	MostStages = 8
)

// A Roof is a surface that rain is taken from. It does not change while the house lives.
type Roof struct {
	Name        string
	Area        quantity.SquareMetres // as seen from above
	Coefficient float64               // share of the rain beyond wetting that reaches the gutter and passes it, 0 to 1; see Surfaces
	Wetting     quantity.Millimetres  // held by the surface in each wet spell, dries off afterwards
	Flush       FirstFlush
	Into        int // index of the tank it feeds
}

// Snow says how roofs hold and lose snow, all alike; see UsualSnow. A Factor of 0 is refused, because nothing would ever melt.
type Snow struct {
	Below  quantity.Celsius // rain counts as snow below this air temperature
	Melts  quantity.Celsius // snow melts above this air temperature
	Factor float64          // mm/(K d), water melted
}

// A FirstFlush diverts the first water of a wet spell. The zero FirstFlush diverts nothing.
type FirstFlush struct {
	Depth    quantity.Millimetres // on the roof it serves
	Litres   quantity.Litres      // added to Depth
	AfterDry float64              // hours without water from the roof after which it is empty again
}

// A Tank is what was built; it does not change while the house lives.
type Tank struct {
	Name     string
	Holds    quantity.Litres // from the floor to the overflow
	Dead     quantity.Litres // below the outlet
	Fire     quantity.Litres // above Dead, kept for fire and never drawn by the house
	Leak     quantity.Litres // a day, while there is any water
	Start    quantity.Litres // in it when a run begins
	Overflow int             // index of the tank that takes the overflow; Away: it is spilled
}

// Away as Tank.Overflow lets the overflow leave.
const Away = -1

// A Supply brings water from the tank to the taps.
type Supply struct {
	WattHoursPerKilolitre float64         // electricity of the pump for what it lifts; 0: by gravity, and no power cut stops it
	MostPerHour           quantity.Litres // flow limit; 0: none
}

// A Stage is one step of treatment.
type Stage struct {
	Name                  string
	Serves                [Kinds]bool     // the kinds of use whose water passes it
	Loss                  float64         // share of what enters that is lost as backwash or reject, 0 to below 1
	Standing              quantity.Watts  // drawn all the time; without it none of its water is served
	WattHoursPerKilolitre float64         // while flowing, for what leaves it
	MostPerHour           quantity.Litres // flow limit for what is drawn from the tank on its account; 0: none
}

// A Delivery is water brought by road. The zero Delivery brings none.
type Delivery struct {
	Load       quantity.Litres // in one load
	Lead       int             // hours from order to arrival
	OrderBelow quantity.Litres // usable water in all tanks at which a load is ordered
	Price      float64         // of one load, in the money of the house
	Into       int             // index of the tank it is filled into
}

// A Design is all water works of a house on paper.
type Design struct {
	Roofs     []Roof
	Snow      Snow
	Tanks     []Tank
	Supply    Supply
	Treatment []Stage
	Delivery  Delivery
	// ChangesItself: when the tank in use cannot give what is wanted the next one is opened in
	// the same hour. Otherwise tanks are changed by people alone, through Works.Want.
	ChangesItself bool
}
