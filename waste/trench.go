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
	Stays        float64         // share of the gravel's water that the sides leave in an hour: 1/(1 + Sides)
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

// Gather adds to a step what another brings: with it a day's 24 hours make one step, which is as good for the year and twenty times
// cheaper. Stands and floods within the day are then not seen: over random years the litres that surface are less by
// at most 2 % of what came in, most where a house sends a day's water in an hour.
func (in *TrenchIn) Gather(more *TrenchIn) {
	in.Hours += more.Hours
	in.Inflow += more.Inflow
	in.Load.Salt += more.Load.Salt
	in.Load.BOD += more.Load.BOD
	in.Load.Nitrogen += more.Load.Nitrogen
	in.Rain += more.Rain
	in.Reference += more.Reference
}

// A TrenchOut is where the water went.
type TrenchOut struct {
	RunOff       quantity.Litres // of the rain
	Through      quantity.Litres // of the rain, down through the cover into the gravel
	Infiltrated  quantity.Litres
	ToSoil       Load
	Grass, Trees quantity.Litres // evaporated
	Deep         quantity.Litres // of Trees: out of the gravel
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
	gravel := float64(s.Gravel + in.Inflow)
	out.RunOff, out.Through = 0, 0
	if in.Rain > 0 {
		t.rain(s, in.Rain, out)
		gravel += float64(out.Through)
	}
	s.Load.Salt += in.Load.Salt
	s.Load.BOD += in.Load.BOD
	s.Load.Nitrogen += in.Load.Nitrogen
	s.Fed += in.Load.BOD
	out.Taken.Salt, out.Taken.BOD, out.Taken.Nitrogen = 0, 0, 0
	out.Grass, out.Trees, out.Deep, out.Unmet = 0, 0, 0, 0
	if in.Reference > 0 {
		t.drink(s, float64(in.Reference), gravel, out)
		gravel -= float64(out.Deep)
	}
	s.leave(gravel, s.sink(gravel, in.Hours), out)
}

// molecule is the litres of one molecule of water, 18 g/mol: what is less in the gravel goes down with the rest.
const molecule = 3e-26

// leave takes out of the gravel what sank, and what then stands above it, each with its share of the load.
func (s *TrenchState) leave(gravel, sunk float64, out *TrenchOut) {
	rest := gravel - sunk
	if rest < molecule {
		out.Infiltrated, out.ToSoil = quantity.Litres(gravel), s.Load
		s.Gravel, s.Load = 0, Load{}
		out.Surfaced, out.SurfacedLoad = 0, Load{}
		return
	}
	out.Infiltrated = quantity.Litres(sunk)
	each := 1 / gravel
	down, stays := sunk*each, rest*each
	salt, bod, nitrogen := s.Load.Salt, s.Load.BOD, s.Load.Nitrogen
	out.ToSoil.Salt, out.ToSoil.BOD, out.ToSoil.Nitrogen = salt*down, bod*down, nitrogen*down
	out.Surfaced, out.SurfacedLoad.Salt, out.SurfacedLoad.BOD, out.SurfacedLoad.Nitrogen = 0, 0, 0, 0
	if over := rest - float64(s.Today.Room); over > 0 {
		up := over * each
		out.Surfaced = quantity.Litres(over)
		out.SurfacedLoad.Salt, out.SurfacedLoad.BOD, out.SurfacedLoad.Nitrogen = salt*up, bod*up, nitrogen*up
		rest -= over
		stays -= up
	}
	s.Gravel = quantity.Litres(rest)
	s.Load.Salt, s.Load.BOD, s.Load.Nitrogen = salt*stays, bod*stays, nitrogen*stays
}

// rain fills the cover. What the cover cannot hold goes down into the gravel.
func (t *Trench) rain(s *TrenchState, depth quantity.Millimetres, out *TrenchOut) {
	fallen := depth.On(t.Catch)
	out.RunOff = fallen * quantity.Litres(t.RunsOff)
	s.Cover += fallen - out.RunOff
	if over := s.Cover - t.Cover; over > 0 {
		s.Cover, out.Through = t.Cover, over
	}
}

// drink waters grass and trees from the cover, and then trees from the gravel.
func (t *Trench) drink(s *TrenchState, reference, gravel float64, out *TrenchOut) {
	grass, trees := s.Today.Grass*reference, s.Today.Trees*reference
	want, cover := grass+trees, float64(s.Cover)
	if want <= cover {
		out.Grass, out.Trees = quantity.Litres(grass), quantity.Litres(trees)
		s.Cover = quantity.Litres(cover - want)
		return
	}
	share := 0.0
	if cover > 0 { // a dry cover is the rule in summer
		share = cover / want
	}
	s.Cover = 0
	deep := t.Grove.Reach * trees * (1 - share)
	if deep > gravel {
		deep = gravel
	}
	if deep > 0 { // salt and BOD stay behind; nitrogen goes with the water
		out.Taken.Nitrogen = s.Load.Nitrogen * (deep / gravel)
		s.Load.Nitrogen -= out.Taken.Nitrogen
	}
	grass *= share
	trees = trees*share + deep
	out.Grass, out.Trees, out.Deep, out.Unmet = quantity.Litres(grass), quantity.Litres(trees), quantity.Litres(deep), quantity.Litres(want-grass-trees)
}

// sink gives what the ground takes in so many hours, by the wetted sides at the end of the step (implicit
// Euler): S' = S - (bottom + sides S') hours, or all there is.
func (s *TrenchState) sink(gravel, hours float64) float64 {
	lost := s.Today.Bottom * hours
	if lost >= gravel {
		return gravel
	}
	stays := s.Today.Stays
	if hours != 1 {
		stays = 1 / (1 + s.Today.Sides*hours)
	}
	after := (gravel - lost) * stays
	if after > float64(s.Today.Room) { // sides wet to the top of the gravel and no higher
		return s.Today.Full * hours
	}
	return gravel - after
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
	s.Today.Stays = 1 / (1 + s.Today.Sides)
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
