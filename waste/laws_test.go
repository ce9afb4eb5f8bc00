package waste

import (
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/quantity"
)

func within(t *rapid.T, low, high float64, what string) float64 {
	return rapid.Float64Range(low, high).Draw(t, what)
}

// often gives nothing in one of four draws.
func often(t *rapid.T, most float64, what string) float64 {
	if rapid.IntRange(0, 3).Draw(t, what+" none") == 0 {
		return 0
	}
	return within(t, 0, most, what)
}

func drawLoad(t *rapid.T) Load {
	return Load{often(t, 300, "salt"), often(t, 300, "bod"), often(t, 100, "nitrogen")}
}

func drawTank(t *rapid.T) (SepticTank, TankState) {
	k := UsualTank(quantity.Litres(within(t, 50, 5000, "holds")))
	k.Settles, k.Binds, k.Scum = within(t, 0, 1, "settles"), within(t, 0, 1, "binds"), within(t, 0, 1, "scum")
	k.Sludge, k.Most, k.Digests, k.Leaves = often(t, 5000, "rate"), within(t, 0, 1, "most"), within(t, 0, 1, "digests"), within(t, 0, 1, "leaves")
	s := k.Start()
	s.Dissolved = drawLoad(t)
	return k, s
}

func drawTrench(t *rapid.T) Trench {
	g := Trench{Length: quantity.Metres(within(t, 1, 100, "length")), Width: quantity.Metres(within(t, 0.2, 2, "width")), Gravel: quantity.Metres(within(t, 0.1, 1, "gravel")),
		Pores: within(t, 0.1, 0.9, "pores"), Catch: quantity.SquareMetres(often(t, 100, "catch")), RunsOff: within(t, 0, 1, "runs off"),
		Cover: quantity.Litres(often(t, 5000, "cover")), Grass: within(t, 0, 1.3, "grass"), Grove: UsualGrove(rapid.IntRange(0, 5).Draw(t, "trees"))}
	g.Soil = Soil{Long: often(t, 40, "long"), Clogs: within(t, 10, 3000, "clogs")}
	g.Soil.Fresh = g.Soil.Long + often(t, 500, "fresh above long")
	g.Grove.Reach = within(t, 0, 1, "reach")
	return g
}

func drawTrenchIn(t *rapid.T) TrenchIn {
	return TrenchIn{Hours: rapid.SampledFrom([]float64{1, 24}).Draw(t, "hours"), Inflow: quantity.Litres(often(t, 2000, "inflow")), Load: drawLoad(t),
		Rain: quantity.Millimetres(often(t, 60, "rain")), Reference: quantity.Millimetres(often(t, 10, "reference"))}
}

func balanceLoads(t *rapid.T, left, right Load) {
	check.Balance(t, left.Salt, right.Salt, "g of salt")
	check.Balance(t, left.BOD, right.BOD, "g of BOD")
	check.Balance(t, left.Nitrogen, right.Nitrogen, "g of nitrogen")
}

func notNegative(t *rapid.T, what string, values ...float64) {
	for i, v := range values {
		if !(v >= -1e-9) {
			t.Fatalf("%s, number %d: %g", what, i, v)
		}
	}
}

func TestTankKeepsEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k, s := drawTank(t)
		for range rapid.IntRange(1, 20).Draw(t, "days") {
			before, in := s, TankIn{Inflow: quantity.Litres(often(t, 3000, "inflow")), Load: drawLoad(t)}
			var out TankOut
			k.Step(&s, &in, &out)
			check.Balance(t, float64(in.Inflow+before.Held()), float64(s.Held()+out.Outflow), "litres of the step")
			balanceLoads(t, in.Load.Plus(before.Dissolved).Plus(before.Settled), s.Dissolved.Plus(s.Settled).Plus(out.Load))
			tankDayKeeps(t, &k, &s)
			notNegative(t, "tank", float64(s.Liquid), float64(s.Sludge), float64(s.Scum), float64(out.Outflow), out.Load.BOD, out.Load.Salt, out.Load.Nitrogen,
				s.Dissolved.BOD, s.Dissolved.Salt, s.Dissolved.Nitrogen, s.Settled.BOD, s.Settled.Salt, s.Settled.Nitrogen)
		}
	})
}

func tankDayKeeps(t *rapid.T, k *SepticTank, s *TankState) {
	before, in := *s, TankDayIn{People: often(t, 20, "people"), Desludge: rapid.IntRange(0, 4).Draw(t, "desludge") == 0}
	var out TankDayOut
	k.Day(s, &in, &out)
	check.Balance(t, float64(before.Held()), float64(s.Held()+out.Carried+out.Removed), "litres of the day")
	all := s.Dissolved.Plus(s.Settled).Plus(out.CarriedLoad).Plus(out.RemovedLoad)
	all.BOD += out.Gas
	balanceLoads(t, before.Dissolved.Plus(before.Settled), all)
	check.Balance(t, in.People*k.Sludge/daysPerYear, float64(out.Grown+out.Carried+out.Ungrown), "growth")
}

func TestTrenchKeepsEverything(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawTrench(t)
		var s TrenchState
		day := TrenchDayIn{Day: rapid.IntRange(1, 366).Draw(t, "day"), Age: within(t, 0, 30, "age")}
		for range rapid.IntRange(1, 30).Draw(t, "steps") {
			g.Day(&s, &day)
			before, in := s, drawTrenchIn(t)
			var out TrenchOut
			g.Step(&s, &in, &out)
			check.Balance(t, float64(in.Inflow+in.Rain.On(g.Catch)+before.Gravel+before.Cover),
				float64(s.Gravel+s.Cover+out.RunOff+out.Infiltrated+out.Grass+out.Trees+out.Surfaced), "litres")
			balanceLoads(t, in.Load.Plus(before.Load), s.Load.Plus(out.ToSoil).Plus(out.Taken).Plus(out.SurfacedLoad))
			check.Balance(t, (s.Today.Grass+s.Today.Trees)*float64(in.Reference), float64(out.Grass+out.Trees+out.Unmet), "thirst")
			notNegative(t, "trench", float64(s.Gravel), float64(s.Cover), float64(out.Infiltrated), float64(out.Surfaced), float64(out.Unmet), s.Load.Salt, s.Load.BOD, s.Load.Nitrogen)
			if s.Mat < 0 || s.Mat > 1 || s.Gravel > g.Room()*(1+1e-12) || s.Cover > g.Cover {
				t.Fatalf("mat %g, gravel %g of %g L, cover %g of %g L", s.Mat, s.Gravel, g.Room(), s.Cover, g.Cover)
			}
		}
	})
}

// The ground never takes more than its bottom and its sides at their full depth can.
func TestGroundTakesWhatItCan(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawTrench(t)
		s := TrenchState{Mat: within(t, 0, 1, "mat")}
		in := drawTrenchIn(t)
		in.Inflow = g.Room() * quantity.Litres(within(t, 1, 2, "times full"))
		g.Day(&s, &TrenchDayIn{Day: 1})
		var out TrenchOut
		g.Step(&s, &in, &out)
		rate, days := g.Soil.Takes(s.Mat), in.Hours/24
		whole := rate * days * (float64(g.Bottom()) + 2*float64((g.Length+g.Width)*g.Gravel))
		bottom := min(rate*days*float64(g.Bottom()), float64(out.Infiltrated+s.Gravel))
		if got := float64(out.Infiltrated); got < bottom*(1-1e-9)-1e-9 || got > whole*(1+1e-9)+1e-9 {
			t.Fatalf("%g L went into ground that takes from %g to %g L", got, bottom, whole)
		}
	})
}

// Of two tanks that live through the same days, the one with more people is never due later.
func TestMorePeopleNeverLengthenDesludging(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k, s := drawTank(t)
		few := within(t, 0.1, 10, "people")
		many := few * within(t, 1, 5, "times")
		share := within(t, 0.05, 0.9, "share")
		volume, rate := float64(k.Holds), k.Sludge
		if a, b := YearsToDesludge(volume, share, few, rate+1), YearsToDesludge(volume, share, many, rate+1); b > a {
			t.Fatalf("%g people %g years, %g people %g years", few, a, many, b)
		}
		for w := Hot; w <= Cold; w++ {
			if a, b := WHOYears(volume, share, few, rate+1, w), WHOYears(volume, share, many, rate+1, w); b > a*(1+1e-12) {
				t.Fatalf("by factors: %g people %g years, %g people %g years", few, a, many, b)
			}
		}
		lone, crowd := s, s
		var out TankDayOut
		for range rapid.IntRange(1, 400).Draw(t, "days") {
			k.Day(&lone, &TankDayIn{People: few}, &out)
			k.Day(&crowd, &TankDayIn{People: many}, &out)
			if k.Full(&crowd) < k.Full(&lone)*(1-1e-12) || k.DesludgeDay(&crowd, many, share) > k.DesludgeDay(&lone, few, share)*(1+1e-12) {
				t.Fatalf("%g people fill %g, %g people %g", few, k.Full(&lone), many, k.Full(&crowd))
			}
		}
	})
}

// More people never ask for a smaller tank or field, slower ground never for a smaller field.
func TestRulesGrowWithPeopleAndSlowness(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		few, beds, rate := within(t, 1, 20, "people"), rapid.IntRange(1, 5).Draw(t, "bedrooms"), within(t, 1, 200, "rate")
		h := House{People: few, Bedrooms: beds, Daily: few * 150}
		more := within(t, 1, 3, "times")
		big := House{People: few * more, Bedrooms: beds + rapid.IntRange(0, 2).Draw(t, "more bedrooms"), Daily: few * more * 150}
		for _, r := range TankRules() {
			a, err := r.Capacity(h)
			b, err2 := r.Capacity(big)
			if err == nil && err2 == nil && b < a*(1-1e-12) {
				t.Fatalf("%s: %g L for %+v, %g L for %+v", r.Name, a, h, b, big)
			}
		}
		for _, r := range FieldRules() {
			a, err := r.Area(h, rate, false)
			b, err2 := r.Area(big, rate*within(t, 1, 3, "slower"), false)
			if err == nil && err2 == nil && b < a*(1-1e-12) {
				t.Fatalf("%s: %g m2 for %+v, %g m2 for %+v on slower ground", r.Name, a, h, b, big)
			}
		}
	})
}

// With equal inflow and rain a leafless winter never drains better than summer.
func TestLeaflessWinterNeverDrainsBetter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		g := drawTrench(t)
		south, age := rapid.Bool().Draw(t, "south"), within(t, 0, 30, "age")
		bare, leafy := 15, 196
		if south {
			bare, leafy = leafy, bare
		}
		var winter, summer TrenchState
		var a, b TrenchOut
		for range rapid.IntRange(1, 40).Draw(t, "steps") {
			g.Day(&winter, &TrenchDayIn{Day: bare, South: south, Age: age})
			g.Day(&summer, &TrenchDayIn{Day: leafy, South: south, Age: age})
			if winter.Today.Trees != 0 {
				t.Fatalf("leafless trees want %g L/mm", winter.Today.Trees)
			}
			in := drawTrenchIn(t)
			warm := in
			in.Reference *= quantity.Millimetres(within(t, 0, 1, "winter's reference"))
			g.Step(&winter, &in, &a)
			g.Step(&summer, &warm, &b)
			if winter.Gravel < summer.Gravel*(1-1e-9)-1e-9 || winter.Cover < summer.Cover*(1-1e-9)-1e-9 || a.Surfaced < b.Surfaced*(1-1e-9)-1e-9 || a.Trees != 0 {
				t.Fatalf("winter holds %g and %g, surfaces %g; summer %g and %g, %g", winter.Gravel, winter.Cover, a.Surfaced, summer.Gravel, summer.Cover, b.Surfaced)
			}
		}
	})
}

// A clogged, a smaller or a slower trench never surfaces less.
func TestWorseTrenchNeverSurfacesLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		good := drawTrench(t)
		bad := good
		bad.Soil.Long *= within(t, 0, 1, "slower")
		bad.Soil.Fresh = bad.Soil.Long + (good.Soil.Fresh-good.Soil.Long)*within(t, 0, 1, "less fresh")
		var g, b TrenchState
		b.Mat = within(t, 0, 1, "mat")
		var x, y TrenchOut
		for range rapid.IntRange(1, 40).Draw(t, "steps") {
			in := drawTrenchIn(t)
			good.Day(&g, &TrenchDayIn{Day: 196, Age: 10})
			bad.Day(&b, &TrenchDayIn{Day: 196, Age: 10})
			good.Step(&g, &in, &x)
			bad.Step(&b, &in, &y)
			if b.Gravel < g.Gravel*(1-1e-9)-1e-9 || y.Surfaced < x.Surfaced*(1-1e-9)-1e-9 || b.Mat < g.Mat-1e-12 { // a dozen roundings of a number up to 1
				t.Fatalf("worse trench holds %g L and surfaces %g, better one %g and %g", b.Gravel, y.Surfaced, g.Gravel, x.Surfaced)
			}
		}
	})
}

// The mat comes down slowly: after one Clogs of BOD in small doses 63 % of the way, never back.
func TestMatGrowsSlowly(t *testing.T) {
	g := Trench{Length: 30, Width: 0.6, Gravel: 0.3, Pores: 0.35, Soil: Soil{Fresh: 40, Long: 8.1, Clogs: UsualClogs}}
	var s TrenchState
	const days = 2000
	for range days {
		s.Fed = UsualClogs * float64(g.Bottom()) / days
		before := s.Mat
		g.Day(&s, &TrenchDayIn{Day: 1})
		if s.Mat <= before {
			t.Fatalf("mat went from %g to %g", before, s.Mat)
		}
	}
	if d := s.Mat - 0.6321; d < -1e-3 || d > 1e-3 {
		t.Errorf("mat %g after one Clogs, want 0.632", s.Mat)
	}
	if got := g.Soil.Takes(1); got != 8.1 {
		t.Errorf("clogged ground takes %g mm/d, want 8.1", got)
	}
}

// The distance rules judge what they know and nothing else.
func TestFlushWellIsNoGroundwaterWell(t *testing.T) {
	for _, table := range SetbackTables() {
		if got := Breaches(table.Rows, []Setback{{"field", "flush well", 0.5}, {"tank", "flush well", 0.5}}); len(got) != 0 {
			t.Errorf("%s judges the basin for flushing as a well: %+v", table.Name, got)
		}
		if got := Breaches(table.Rows, []Setback{{"field", "well", 5}}); len(got) != 1 {
			t.Errorf("%s lets a groundwater well stand at 5 m: %+v", table.Name, got)
		}
	}
	if len(TreeConflict(0)) != 1 || len(TreeConflict(3)) != 0 {
		t.Errorf("trees on the trench: %q, at 3 m: %q", TreeConflict(0), TreeConflict(3))
	}
}

func FuzzReadSetbacks(f *testing.F) {
	f.Add("field to well 30 m, tank to building 1.5 m")
	f.Add("tank to 5m")
	f.Add("field to well -1m,")
	f.Fuzz(func(t *testing.T, text string) {
		rows, err := ReadSetbacks(text)
		for _, r := range rows {
			if r.From != "tank" && r.From != "field" || r.To == "" || !(r.Least >= 0 && r.Least <= 10000) {
				t.Fatalf("%q gave %+v (%v)", text, r, err)
			}
		}
		if err == nil && len(rows) == 0 {
			t.Fatalf("%q gave nothing and no fault", text)
		}
	})
}
