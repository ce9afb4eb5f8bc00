package waste

import "suffice/quantity"

// A Soil is how fast clean and clogged ground takes water, through bottom and sides alike.
type Soil struct {
	Name  string
	Fresh float64 // mm/d before anything clogs it
	Long  float64 // mm/d it comes down to over the years, the long-term acceptance rate; not above Fresh
	Clogs float64 // g of BOD on each m2 of the bottom after which 63 % of the way is gone
}

// UsualClogs is two years of effluent of 150 g/m3 at 8 mm/d: assumed. Mats are said to settle within one to three
// years (common practice, no source).
const UsualClogs = 900

// Takes gives the rate for a mat grown to a share between 0 (none) and 1, in mm/d.
func (g Soil) Takes(mat float64) float64 { return g.Long + (g.Fresh-g.Long)*(1-mat) }

// A Trench is what was built: gravel under a cover of soil, with grass and perhaps trees.
type Trench struct {
	Length, Width, Gravel quantity.Metres       // Gravel is its depth
	Pores                 float64               // share of the gravel that water can fill
	Catch                 quantity.SquareMetres // ground whose rain comes down on the trench, from above
	RunsOff               float64               // share of that rain that runs away on the surface
	Cover                 quantity.Litres       // what the soil above the gravel holds for plants
	Soil                  Soil
	Grass                 float64 // crop coefficient of the grass on Catch; 1 is FAO-56's own reference
	Grove                 Grove
}

// A TrenchState is what must be remembered of a trench.
type TrenchState struct {
	Gravel quantity.Litres // in the pores
	Cover  quantity.Litres // in the soil above
	Load   Load            // in the gravel
	Mat    float64         // 0 fresh to 1 clogged for good
	Fed    float64         // g of BOD since the last Day
	Today  Today           // what Day worked out for the steps of the day
}

// Today is what holds for all steps of a day.
type Today struct {
	Grass, Trees float64         // wanted for each millimetre of reference evapotranspiration, L
	Bottom       float64         // what the floor takes, L/h
	Sides        float64         // what the sides take, L/h for each litre in the gravel
	Full         float64         // what floor and sides take when the gravel is full, L/h
	Room         quantity.Litres // what the gravel holds
}

// A TrenchIn is what a step brings.
type TrenchIn struct {
	Hours     float64 // length of the step: an hour, a day
	Inflow    quantity.Litres
	Load      Load
	Rain      quantity.Millimetres
	Reference quantity.Millimetres // FAO-56 reference evapotranspiration of the step
}

// A TrenchOut is where the water went.
type TrenchOut struct {
	RunOff       quantity.Litres // of the rain
	Infiltrated  quantity.Litres
	ToSoil       Load
	Grass, Trees quantity.Litres // evaporated
	Taken        Load            // nitrogen taken up with the trees' water from the gravel
	Surfaced     quantity.Litres // sewage on the ground: the short day of the waste budget
	SurfacedLoad Load
	Unmet        quantity.Litres // thirst that found no water
}

// Room gives the litres that the gravel holds.
func (t *Trench) Room() quantity.Litres {
	return quantity.Litres(1000 * float64(t.Length) * float64(t.Width) * float64(t.Gravel) * t.Pores)
}

// Bottom gives the trench's floor.
func (t *Trench) Bottom() quantity.SquareMetres { return quantity.SquareMetres(t.Length * t.Width) }

// Step, in a day that began with Day, lets rain and effluent in, plants drink and the ground take what it can. What then stands above
// the gravel surfaces.
//
// Inflow + rain on Catch + held before = held after + RunOff + Infiltrated + Grass + Trees + Surfaced; each
// gram likewise by ToSoil, Taken and SurfacedLoad.
func (t *Trench) Step(s *TrenchState, in *TrenchIn, out *TrenchOut) {
	s.Gravel += in.Inflow
	out.RunOff = 0
	if in.Rain > 0 {
		t.rain(s, in.Rain, out)
	}
	s.Load.Salt += in.Load.Salt
	s.Load.BOD += in.Load.BOD
	s.Load.Nitrogen += in.Load.Nitrogen
	s.Fed += in.Load.BOD
	t.drink(s, float64(in.Reference), out)
	out.Infiltrated = s.sink(in.Hours)
	s.leave(out)
}

// leave takes out what infiltrated, and what then stands above the gravel, each with its share of the load.
func (s *TrenchState) leave(out *TrenchOut) {
	rest := s.Gravel - out.Infiltrated
	if rest <= 0 {
		out.ToSoil, s.Gravel, s.Load = s.Load, 0, Load{}
		out.Surfaced, out.SurfacedLoad = 0, Load{}
		return
	}
	each := 1 / float64(s.Gravel)
	sunk := float64(out.Infiltrated) * each
	salt, bod, nitrogen := s.Load.Salt, s.Load.BOD, s.Load.Nitrogen
	out.ToSoil.Salt, out.ToSoil.BOD, out.ToSoil.Nitrogen = salt*sunk, bod*sunk, nitrogen*sunk
	over := rest - s.Today.Room
	if over < 0 {
		over = 0
	}
	up := float64(over) * each
	out.Surfaced = over
	out.SurfacedLoad.Salt, out.SurfacedLoad.BOD, out.SurfacedLoad.Nitrogen = salt*up, bod*up, nitrogen*up
	s.Gravel = rest - over
	gone := sunk + up
	s.Load.Salt, s.Load.BOD, s.Load.Nitrogen = salt-salt*gone, bod-bod*gone, nitrogen-nitrogen*gone
}

// rain fills the cover, and what the cover cannot hold goes down into the gravel.
func (t *Trench) rain(s *TrenchState, depth quantity.Millimetres, out *TrenchOut) {
	fallen := depth.On(t.Catch)
	out.RunOff = fallen * quantity.Litres(t.RunsOff)
	s.Cover += fallen - out.RunOff
	if over := s.Cover - t.Cover; over > 0 {
		s.Cover = t.Cover
		s.Gravel += over
	}
}

// drink waters grass and trees from the cover, and then trees from the gravel.
func (t *Trench) drink(s *TrenchState, reference float64, out *TrenchOut) {
	grass, trees := s.Today.Grass*reference, s.Today.Trees*reference
	out.Taken, out.Unmet = Load{}, 0
	out.Grass, out.Trees = quantity.Litres(grass), quantity.Litres(trees)
	want := out.Grass + out.Trees
	if want <= s.Cover {
		s.Cover -= want
		return
	}
	share := s.Cover / want
	out.Grass *= share
	out.Trees *= share
	s.Cover = 0
	deep := quantity.Litres(t.Grove.Reach*trees) * (1 - share)
	if deep > s.Gravel {
		deep = s.Gravel
	}
	if deep > 0 { // salt and BOD stay behind; nitrogen goes with the water
		out.Taken.Nitrogen = s.Load.Nitrogen * float64(deep/s.Gravel)
		s.Load.Nitrogen -= out.Taken.Nitrogen
		s.Gravel -= deep
		out.Trees += deep
	}
	out.Unmet = want - out.Grass - out.Trees
}

// sink gives what the ground takes in so many hours, by the wetted sides at the end of the step (implicit
// Euler): S' = S - (bottom + sides S') hours, or all there is.
func (s *TrenchState) sink(hours float64) quantity.Litres {
	lost := quantity.Litres(s.Today.Bottom * hours)
	if lost >= s.Gravel {
		return s.Gravel
	}
	after := (s.Gravel - lost) / quantity.Litres(1+s.Today.Sides*hours)
	if after > s.Today.Room { // sides wet to the top of the gravel and no higher
		return quantity.Litres(s.Today.Full * hours)
	}
	return s.Gravel - after
}

// A TrenchDayIn is where the year stands, and the age of the trees.
type TrenchDayIn struct {
	Day   int     // of the year, 1 to 366
	South bool    // of the equator
	Age   float64 // of the trees since planting, years
}

// Day comes before the first step of a day. It lets the mat grow by what the days since fed it, and works
// out what plants want and the ground takes.
func (t *Trench) Day(s *TrenchState, in *TrenchDayIn) {
	bottom := float64(t.Bottom())
	x := s.Fed / (bottom * t.Soil.Clogs)
	s.Mat += (1 - s.Mat) * x / (1 + x)
	s.Fed = 0
	hourly := t.Soil.Takes(s.Mat) / 24 // mm/h
	s.Today = Today{Grass: t.Grass * float64(t.Catch), Trees: t.Grove.Thirst(in), Bottom: hourly * bottom, Room: t.Room()}
	s.Today.Sides = hourly * 2 * float64(t.Length+t.Width) / (bottom * t.Pores * 1000)
	s.Today.Full = s.Today.Bottom + s.Today.Sides*float64(s.Today.Room)
}

// Start gives a dry trench in fresh ground, on the morning of that day.
func (t *Trench) Start(in *TrenchDayIn) TrenchState {
	var s TrenchState
	t.Day(&s, in)
	return s
}

// Stands gives the depth of water in the gravel.
func (t *Trench) Stands(s *TrenchState) quantity.Metres {
	return t.Gravel * quantity.Metres(s.Gravel/t.Room())
}
