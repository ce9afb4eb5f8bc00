package reuse

import (
	"errors"
	"fmt"

	"suffice/quantity"
)

// A Well takes what drains from the bed and gives it to the cisterns. It is a lined pit at the bed's
// end and no well into groundwater.
type Well struct {
	Area        quantity.SquareMetres // in plan
	Depth       quantity.Metres       // from floor to overflow, about 1 m
	Least       quantity.Metres       // level at which the float stops the pump
	Float       quantity.Metres       // level below which water is asked from the tank
	Refill      quantity.Metres       // level to which it is then filled
	MostPerHour quantity.Litres       // that the pump gives; 0: no limit
	PerKilo     float64               // Wh that the pump takes for a kilolitre
	StaleAfter  float64               // days of mean age after which the water is called stale
}

// UsualWell is 0.8 m2 and 1 m deep, its pump stops at 0.10 m, water is asked below 0.25 m and up to 0.35 m, and
// it is stale after 7 days: common practice, no source.
func UsualWell() Well {
	return Well{Area: 0.8, Depth: 1, Least: 0.1, Float: 0.25, Refill: 0.35, MostPerHour: 1200, PerKilo: 60, StaleAfter: 7}
}

// Faults says what a well cannot be.
func (k *Well) Faults() error {
	var faults []error
	if !(k.Area > 0 && k.Depth > 0 && k.Depth <= 5) {
		faults = append(faults, fmt.Errorf("flush well: %g m2 and %g m deep: both more than 0, at most 5 m deep", float64(k.Area), float64(k.Depth)))
	}
	if !(k.Least >= 0 && k.Least <= k.Float && k.Float <= k.Refill && k.Refill <= k.Depth) {
		faults = append(faults, fmt.Errorf("flush well: pump stops at %g m, top-up below %g m and to %g m, overflow at %g m: each at or above the one before", float64(k.Least), float64(k.Float), float64(k.Refill), float64(k.Depth)))
	}
	if !(k.MostPerHour >= 0 && k.PerKilo >= 0 && k.StaleAfter > 0) {
		faults = append(faults, fmt.Errorf("flush well: pump %g L an hour at %g Wh a kilolitre, stale after %g days: none negative, days more than 0", float64(k.MostPerHour), k.PerKilo, k.StaleAfter))
	}
	return errors.Join(faults...)
}

// WellState is what the well remembers.
type WellState struct {
	Held Water
	Age  float64 // h, mean of its litres since they came in
}

// WellAsk is what the well wants before the hour's shares are known.
type WellAsk struct {
	TopUp quantity.Litres    // from the tank
	Pump  quantity.WattHours // to flush what is wanted, if it is there
}

// WellIn is what an hour brings.
type WellIn struct {
	Drained Water           // from the bed
	Topped  Water           // from the tank
	Wanted  quantity.Litres // for flushing
	Power   float64         // share of the pump's power that was served, 0 to 1
}

// WellOut is what the well did.
type WellOut struct {
	Flushed    Water
	Short      quantity.Litres // Wanted and not pumped
	NoPower    quantity.Litres // of Short: for want of power
	Overflowed Water           // to the septic tank or the trench
	Pump       quantity.WattHours
	Stale      bool // older than the well's StaleAfter at the end of the hour
}

// Level gives how high the water stands.
func (k *Well) Level(s *WellState) quantity.Metres {
	return quantity.Metres(float64(s.Held.Litres) / (1000 * float64(k.Area)))
}

// volume gives the litres below a level.
func (k *Well) volume(level quantity.Metres) quantity.Litres {
	return quantity.Litres(1000 * float64(k.Area) * float64(level))
}

// Asks gives what the well wants of the tank and of the battery for litres to be flushed.
func (k *Well) Asks(s *WellState, wanted quantity.Litres) WellAsk {
	var ask WellAsk
	if s.Held.Litres < k.volume(k.Float) {
		ask.TopUp = k.volume(k.Refill) - s.Held.Litres
	}
	if k.MostPerHour > 0 {
		wanted = min(wanted, k.MostPerHour)
	}
	ask.Pump = quantity.WattHours(float64(wanted) * k.PerKilo / 1000)
	return ask
}

// Step ages the water, takes in, overflows and flushes. What comes in is new: age counts the stay in the
// well, where warm still water with food in it turns foul.
//
// Litres, salt, BOD and nitrogen: Drained + Topped + held before = Flushed + Overflowed + held after.
// Wanted = Flushed + Short.
func (k *Well) Step(s *WellState, in *WellIn, out *WellOut) {
	*out = WellOut{}
	s.Age++
	if in.Drained.Litres+in.Topped.Litres+in.Wanted > 0 {
		k.moves(s, in, out)
	}
	if s.Held.Litres == 0 {
		s.Age = 0
	}
	out.Stale = s.Age > 24*k.StaleAfter
}

// moves takes in, overflows and flushes. All that leaves has the one strength of the well, so that one division serves.
func (k *Well) moves(s *WellState, in *WellIn, out *WellOut) {
	old := float64(s.Held.Litres)
	s.Held.add(&in.Drained)
	s.Held.add(&in.Topped)
	held, salt, dirt, nitrogen := float64(s.Held.Litres), s.Held.Salt, s.Held.BOD, s.Held.Nitrogen
	if held < molecule {
		out.Short = in.Wanted
		return
	}
	each := 1 / held
	if held > old {
		s.Age *= old * each
	}
	if over := held - float64(k.volume(k.Depth)); over > 0 {
		part := over * each
		out.Overflowed.Litres = quantity.Litres(over)
		out.Overflowed.Salt, out.Overflowed.BOD, out.Overflowed.Nitrogen = salt*part, dirt*part, nitrogen*part
		held -= over
	}
	if in.Wanted > 0 {
		pumped := k.pumps(held, in, out)
		part := pumped * each
		out.Flushed.Litres = quantity.Litres(pumped)
		out.Flushed.Salt, out.Flushed.BOD, out.Flushed.Nitrogen = salt*part, dirt*part, nitrogen*part
		held -= pumped
	}
	part := held * each
	s.Held.Litres = quantity.Litres(held)
	s.Held.Salt, s.Held.BOD, s.Held.Nitrogen = salt*part, dirt*part, nitrogen*part
}

// pumps gives what is pumped of what is wanted, as far as power, pump and float let it.
func (k *Well) pumps(held float64, in *WellIn, out *WellOut) float64 {
	could := float64(in.Wanted)
	if there := held - float64(k.volume(k.Least)); could > there {
		could = max(0, there)
	}
	if most := float64(k.MostPerHour); most > 0 && could > most {
		could = most
	}
	pumped := could
	if k.PerKilo > 0 {
		pumped *= in.Power
	}
	out.NoPower = quantity.Litres(could - pumped)
	out.Short = in.Wanted - quantity.Litres(pumped)
	out.Pump = quantity.WattHours(pumped * k.PerKilo * perMilli)
	return pumped
}
