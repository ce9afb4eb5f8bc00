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
	Thirst Thirst          // of the day
}

// Thirst is what plants want for each millimetre of reference evapotranspiration, in litres.
type Thirst struct{ Grass, Trees float64 }

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

// Step lets rain and effluent in, plants drink and the ground take what it can. What then stands above
// the gravel surfaces.
//
// Inflow + rain on Catch + held before = held after + RunOff + Infiltrated + Grass + Trees + Surfaced; each
// gram likewise by ToSoil, Taken and SurfacedLoad.
func (t *Trench) Step(s *TrenchState, in *TrenchIn, out *TrenchOut) {
	rain := in.Rain.On(t.Catch)
	out.RunOff = rain * quantity.Litres(t.RunsOff)
	wet := s.Cover + rain - out.RunOff
	s.Cover = min(t.Cover, wet)
	s.Gravel += in.Inflow + wet - s.Cover
	s.Load = s.Load.Plus(in.Load)
	s.Fed += in.Load.BOD
	t.drink(s, float64(in.Reference), out)
	out.Infiltrated = t.sink(s, in.Hours/24)
	out.ToSoil = draw(&s.Gravel, &s.Load, out.Infiltrated)
	out.Surfaced = max(0, s.Gravel-t.Room())
	out.SurfacedLoad = draw(&s.Gravel, &s.Load, out.Surfaced)
}

// drink waters grass and trees from the cover, and then trees from the gravel.
func (t *Trench) drink(s *TrenchState, reference float64, out *TrenchOut) {
	grass, trees := s.Thirst.Grass*reference, s.Thirst.Trees*reference
	out.Grass, out.Trees, out.Taken, out.Unmet = 0, 0, Load{}, 0
	want := grass + trees
	if want <= 0 {
		return
	}
	share := min(1, float64(s.Cover)/want)
	out.Grass, out.Trees = quantity.Litres(grass*share), quantity.Litres(trees*share)
	s.Cover -= out.Grass + out.Trees
	if share == 1 {
		return
	}
	s.Cover = 0
	out.Grass = quantity.Litres(grass * share)
	deep := min(s.Gravel, quantity.Litres(t.Grove.Reach*trees*(1-share)))
	if deep > 0 { // salt and BOD stay behind; nitrogen goes with the water
		out.Taken.Nitrogen = s.Load.Nitrogen * float64(deep/s.Gravel)
		s.Load.Nitrogen -= out.Taken.Nitrogen
		s.Gravel -= deep
		out.Trees += deep
	}
	out.Unmet = quantity.Litres(want) - out.Grass - out.Trees
}

// sink gives what the ground takes in so many days, by the wetted sides at the end of the step (implicit
// Euler): S' = S - r (bottom + rim S'/(bottom pores)) days, or all there is.
func (t *Trench) sink(s *TrenchState, days float64) quantity.Litres {
	bottom := float64(t.Bottom())
	r := t.Soil.Takes(s.Mat) * days // mm in the step
	perLitre := 2 * float64(t.Length+t.Width) / (bottom * t.Pores * 1000)
	after := (float64(s.Gravel) - r*bottom) / (1 + r*perLitre)
	if after <= 0 {
		return s.Gravel
	}
	return s.Gravel - quantity.Litres(after)
}

// A TrenchDayIn is where the year stands, and the age of the trees.
type TrenchDayIn struct {
	Day   int     // of the year, 1 to 366
	South bool    // of the equator
	Age   float64 // of the trees since planting, years
}

// Day sets what the plants want of the day to come, and lets the mat grow by what the days since fed it.
func (t *Trench) Day(s *TrenchState, in *TrenchDayIn) {
	s.Thirst.Grass = t.Grass * float64(t.Catch)
	s.Thirst.Trees = t.Grove.Thirst(in)
	x := s.Fed / (float64(t.Bottom()) * t.Soil.Clogs)
	s.Mat += (1 - s.Mat) * x / (1 + x)
	s.Fed = 0
}

// Stands gives the depth of water in the gravel.
func (t *Trench) Stands(s *TrenchState) quantity.Metres {
	return t.Gravel * quantity.Metres(s.Gravel/t.Room())
}
