package waste

import "suffice/quantity"

// A Calendar says when a tree has leaves, as days of a northern year. Between Out and Full leaves
// open, between Turn and Bare they fall; the share is a straight line in between, and 0 outside.
type Calendar struct {
	Evergreen             bool
	Out, Full, Turn, Bare int // in that order, 1 to 365
}

// PecanCalendar is a late tree in leaf from mid April to early November: common practice, no source.
func PecanCalendar() Calendar { return Calendar{Out: 105, Full: 140, Turn: 275, Bare: 310} }

// Leaf gives the share of the leaves that a day has, exactly 0 when bare. South of the equator the
// calendar lies half a year later.
func (c Calendar) Leaf(day int, south bool) float64 {
	if c.Evergreen {
		return 1
	}
	if south {
		day = (day+182-1)%365 + 1
	}
	switch {
	case day <= c.Out || day >= c.Bare:
		return 0
	case day < c.Full:
		return float64(day-c.Out) / float64(c.Full-c.Out)
	case day <= c.Turn:
		return 1
	}
	return float64(c.Bare-day) / float64(c.Bare-c.Turn)
}

// A Grove is the trees on a trench.
type Grove struct {
	Trees  int
	Crown  quantity.SquareMetres // of one grown tree, from above
	Grown  float64               // years until the crown has that size; it widens evenly (assumed)
	Kc     float64               // crop coefficient in full leaf, over the crown
	Reach  float64               // share of the thirst the cover does not still that roots may take from the gravel: assumed
	Leaves Calendar
}

// UsualGrove gives pecans with crowns of 20 m2 at 12 years. FAO-56 has no pecan, so the
// coefficient is its walnut's (fao56 table 12, 1.10 in mid season); half the thirst may come from the gravel.
func UsualGrove(trees int) Grove {
	return Grove{Trees: trees, Crown: 20, Grown: 12, Kc: 1.10, Reach: 0.5, Leaves: PecanCalendar()}
}

// CrownAt gives the crown of one tree at an age in years.
func (g *Grove) CrownAt(age float64) quantity.SquareMetres {
	return g.Crown * quantity.SquareMetres(max(0, min(1, age/g.Grown)))
}

// WaterAt gives what one tree in full leaf wants in a day at an age and a reference evapotranspiration.
func (g *Grove) WaterAt(age float64, reference quantity.Millimetres) quantity.Litres {
	return quantity.Litres(g.Kc) * reference.On(g.CrownAt(age))
}

// Thirst gives the litres that all trees want for each millimetre of reference evapotranspiration.
func (g *Grove) Thirst(in *TrenchDayIn) float64 {
	if g.Trees == 0 {
		return 0
	}
	return float64(g.Trees) * float64(g.WaterAt(in.Age, 1)) * g.Leaves.Leaf(in.Day, in.South)
}

// Bearing is when a tree begins to bear, in years from planting.
type Bearing struct {
	Tree        string
	Early, Late float64
}

// PecansBear after five to ten years: common practice, no source.
func PecansBear() Bearing { return Bearing{Tree: "pecan", Early: 5, Late: 10} }

// Bears says whether a tree of that age bears: no, may, or yes.
func (b Bearing) Bears(age float64) string {
	switch {
	case age < b.Early:
		return "no"
	case age < b.Late:
		return "may"
	}
	return "yes"
}
