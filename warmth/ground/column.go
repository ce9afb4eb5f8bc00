package ground

import (
	"errors"
	"fmt"

	"suffice/quantity"
	"suffice/site"
	"suffice/site/air"
	"suffice/soil"
)

// layers is how many layers the column has, thicker downward: 4 cm at the top, 14 m in all,
// so that the yearly swing at its foot is under 1 % of the surface's.
const layers = 20

// wetnesses is how many states of the soil are worked out beforehand; between them lie straight lines.
const wetnesses = 17

// Column is undisturbed ground from the surface down, under one kind of cover. It is only read.
type Column struct {
	Cover Cover
	Earth soil.Earth
	Water soil.Water

	gamma float64 // kPa/K, psychrometric
	holds float64 // J/m3K, of the air

	thick [layers]float64 // m
	depth [layers]float64 // m, of the middles
	wet   [wetnesses]wetSoil
}

// wetSoil is the soil at one wetness.
type wetSoil struct {
	thawed, frozen float64 // W/mK
	holds          float64 // J/m3K, thawed
	water          float64 // m3/m3
}

// ColumnState is what the column must remember from one hour to the next.
type ColumnState struct {
	Temperature [layers]float64 // degC
	Ice         [layers]float64 // m3/m3, counted as the water it was
	Store       float64         // mm of water within the reach of roots, above wilting
	Snow        float64         // mm of water lying as snow
	Density     float64         // kg/m3 of that snow
	Albedo      float64         // of that snow
	Face        float64         // degC, of what meets the air
}

// ColumnIn is an hour's weather over the column.
type ColumnIn struct {
	Air    quantity.Celsius
	Light  quantity.Irradiance  // on the horizontal
	Sky    quantity.Irradiance  // long-wave light from above, as SkyLight or a record gives it
	Rain   quantity.Millimetres // in the hour, snow as water
	Vapour float64              // kPa, in the air
	Wind   float64              // m/s at 2 m
}

// ColumnOut is what the hour did.
type ColumnOut struct {
	Face       quantity.Celsius     // of what meets the air: grass, soil or snow
	Top        quantity.Celsius     // of the soil just under it
	IntoGround quantity.Irradiance  // W/m2 downward
	Evaporated quantity.Millimetres // from soil and plants, dew below 0
	Melted     quantity.Millimetres // of snow
	Drained    quantity.Millimetres // rain and melt that found the soil full
}

// Prepare builds the column of a place.
func Prepare(place site.Place, cover Cover, earth soil.Earth, water soil.Water) (*Column, error) {
	faults := cover.faults()
	if !(water.Wilting > 0 && water.FieldCapacity > water.Wilting && water.FieldCapacity < earth.Pores()) {
		faults = errors.Join(faults, fmt.Errorf("ground: soil water of %.3g at field capacity and %.3g at wilting does not fit pores of %.3g: wilting is above 0, field capacity between it and the pores",
			water.FieldCapacity, water.Wilting, earth.Pores()))
	}
	if faults != nil {
		return nil, faults
	}
	pressure := air.Pressure(place.Altitude)
	c := &Column{
		Cover: cover, Earth: earth, Water: water,
		gamma: air.Psychrometric(pressure),
		holds: airHolds * air.Density(15, pressure, 1), // the moderate day: ±8 % with the season
	}
	thick, top := 0.04, 0.0
	for i := range c.thick {
		c.thick[i], c.depth[i] = thick, top+thick/2
		top += thick
		thick *= 1.25
	}
	for i := range c.wet {
		w := water.Wilting + (water.FieldCapacity-water.Wilting)*float64(i)/(wetnesses-1)
		thawed, frozen := earth.At(w), earth.Frozen(w)
		c.wet[i] = wetSoil{thawed.Conductivity, frozen.Conductivity, thawed.Capacity, w}
	}
	return c, nil
}

// Start gives a column at one temperature, its soil half wet, without snow.
func (c *Column) Start(t quantity.Celsius) ColumnState {
	s := ColumnState{Store: c.room() / 2, Face: float64(t)}
	wet := c.soil(&s)
	for i := range s.Temperature {
		s.Temperature[i] = float64(t)
		if t < 0 {
			s.Ice[i] = wet.water
		}
	}
	return s
}

// room gives the water, mm, that roots can take from a full soil.
func (c *Column) room() float64 { return float64(c.Water.Held(c.Cover.Roots)) }

// soil gives the soil at the wetness of the state.
func (c *Column) soil(s *ColumnState) wetSoil {
	x := s.Store / c.room() * (wetnesses - 1)
	i := min(int(x), wetnesses-2)
	f := x - float64(i)
	a, b := c.wet[i], c.wet[i+1]
	return wetSoil{
		thawed: a.thawed + f*(b.thawed-a.thawed), frozen: a.frozen + f*(b.frozen-a.frozen),
		holds: a.holds + f*(b.holds-a.holds), water: a.water + f*(b.water-a.water),
	}
}

// At gives the temperature at a depth, on a straight line between the middles of layers.
func (c *Column) At(s *ColumnState, depth quantity.Metres) quantity.Celsius {
	z := float64(depth)
	if z <= c.depth[0] {
		return quantity.Celsius(s.Temperature[0])
	}
	for i := 1; i < layers; i++ {
		if z <= c.depth[i] {
			f := (z - c.depth[i-1]) / (c.depth[i] - c.depth[i-1])
			return quantity.Celsius(s.Temperature[i-1] + f*(s.Temperature[i]-s.Temperature[i-1]))
		}
	}
	return quantity.Celsius(s.Temperature[layers-1])
}
