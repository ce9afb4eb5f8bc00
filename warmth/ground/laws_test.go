package ground

import (
	"math"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/quantity"
	"suffice/site"
	"suffice/site/air"
	"suffice/soil"
)

func column(t interface{ Fatal(...any) }, cover Cover) *Column {
	c, err := Prepare(site.Place{}, cover, soil.Loam(), soil.LoamWater())
	if err != nil {
		t.Fatal(err)
	}
	return c
}

func anyWeather(t *rapid.T) ColumnIn {
	warm := quantity.Celsius(rapid.Float64Range(-35, 45).Draw(t, "air"))
	vapour := air.Saturation(warm) * rapid.Float64Range(0.05, 1).Draw(t, "damp")
	return ColumnIn{
		Air: warm, Vapour: vapour, Sky: SkyLight(warm, vapour, rapid.Float64Range(0.3, 1).Draw(t, "clear")),
		Light: quantity.Irradiance(rapid.Float64Range(0, 1000).Draw(t, "light")),
		Rain:  quantity.Millimetres(rapid.SampledFrom([]float64{0, 0, 0, 0.2, 3, 20}).Draw(t, "rain")),
		Wind:  rapid.Float64Range(0, 15).Draw(t, "wind"),
	}
}

// What the face lets into the ground is what the layers gain, as warmth and by thawing; rain is
// snow, soil water, evaporation and drainage.
func TestColumnLosesNothing(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := column(t, rapid.SampledFrom([]Cover{Grass(), Bare()}).Draw(t, "cover"))
		s := c.Start(quantity.Celsius(rapid.Float64Range(-10, 30).Draw(t, "start")))
		for range 40 {
			in, before := anyWeather(t), s
			out := c.Step(&s, in)
			after := s
			after.Store = before.Store // water comes as warm as the layer that it meets
			check.Balance(t, c.Holds(&before)+float64(out.IntoGround)*3600, c.Holds(&after), "heat of the column, J/m2")
			check.Balance(t, before.Snow+before.Store+float64(in.Rain), s.Snow+s.Store+float64(out.Evaporated+out.Drained), "water, mm")
			if s.Snow < 0 || s.Store < -1e-9 || s.Store > c.room()+1e-9 || out.Drained < 0 || out.Melted < 0 {
				t.Fatalf("snow %g, store %g, drained %g, melted %g mm", s.Snow, s.Store, float64(out.Drained), float64(out.Melted))
			}
		}
	})
}

// Without light, rain or water and under a sky as warm as the air, nothing gets warmer or
// colder than the air and the ground have been.
func TestColumnStaysBetween(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := column(t, Grass())
		start := rapid.Float64Range(-10, 30).Draw(t, "start")
		s := c.Start(quantity.Celsius(start))
		s.Store = 0
		low, high := start, start
		for range 60 {
			warm := quantity.Celsius(rapid.Float64Range(-30, 40).Draw(t, "air"))
			low, high = min(low, float64(warm)), max(high, float64(warm))
			out := c.Step(&s, ColumnIn{Air: warm, Sky: quantity.Irradiance(air.SkyLight(warm, 1)), Vapour: 0.5, Wind: 2})
			for i, layer := range append(s.Temperature[:], float64(out.Face), float64(out.Top)) {
				if layer < low-1e-9 || layer > high+1e-9 {
					t.Fatalf("layer %d at %g is outside %g to %g", i, layer, low, high)
				}
			}
		}
	})
}

// season is an hour of a year that swings as a cosine, light with the air.
func season(hour int, rain float64) ColumnIn {
	x := 2 * math.Pi * float64(hour) / 8760
	warm := quantity.Celsius(8 - 14*math.Cos(x))
	vapour := 0.7 * air.Saturation(warm)
	return ColumnIn{Air: warm, Light: quantity.Irradiance(160 - 110*math.Cos(x)), Sky: SkyLight(warm, vapour, 0.7),
		Rain: quantity.Millimetres(rain), Vapour: vapour, Wind: 2}
}

// Deeper layers never swing more, and are warmest later.
func TestDeeperSwingsLess(t *testing.T) {
	c := column(t, Grass())
	s := c.Start(10)
	var low, high [layers]float64
	var warmest [layers]int
	for i := range low {
		low[i], high[i] = math.Inf(1), math.Inf(-1)
	}
	for h := range 3 * 8760 {
		c.Step(&s, season(h, 0.05))
		if h < 2*8760 {
			continue
		}
		for i, t := range s.Temperature {
			low[i] = min(low[i], t)
			if t > high[i] {
				high[i], warmest[i] = t, h
			}
		}
	}
	for i := 1; i < layers; i++ {
		if high[i]-low[i] > high[i-1]-low[i-1] {
			t.Errorf("layer %d swings %.3f K, the one above %.3f K", i, high[i]-low[i], high[i-1]-low[i-1])
		}
		if c.depth[i] < 4 && warmest[i] < warmest[i-1] {
			t.Errorf("layer %d is warmest in hour %d, the one above in %d", i, warmest[i], warmest[i-1])
		}
	}
}

// Snow keeps the ground warm through dark frost, and grass keeps it cooler than bare earth in summer.
func TestCoverShelters(t *testing.T) {
	grass := column(t, Grass())
	snowy, open := grass.Start(5), grass.Start(5)
	snowy.Snow, snowy.Density, snowy.Albedo = 150, 250, 0.8
	night := ColumnIn{Air: -15, Sky: SkyLight(-15, 0.15, 0.6), Vapour: 0.15, Wind: 2}
	var under, none float64 // the soil's face, mean of 40 days
	for range 960 {
		a, b := grass.Step(&snowy, night), grass.Step(&open, night)
		under += float64(a.Top) / 960
		none += float64(b.Top) / 960
	}
	if under < none+5 {
		t.Errorf("a dark month at -15 degC: soil under snow %.2f degC, without %.2f", under, none)
	}
	bare := column(t, Bare())
	lawn, earth := grass.Start(8), bare.Start(8)
	for h := 2000; h < 4400; h++ {
		grass.Step(&lawn, season(h, 0.1))
		bare.Step(&earth, season(h, 0.1))
	}
	if grass.At(&lawn, 0.2) >= bare.At(&earth, 0.2) {
		t.Errorf("in summer %.2f degC under grass, %.2f under bare earth", float64(grass.At(&lawn, 0.2)), float64(bare.At(&earth, 0.2)))
	}
}

// Air rises faster the warmer the ground under it, is unmoved by equal warmth, and lies still over cold.
func TestBuoyancyGrows(t *testing.T) {
	if got := buoyant(0, 290, 2); got != 1 {
		t.Errorf("neutral air: %g, want 1", got)
	}
	for warmer := -30.0; warmer < 40; warmer++ {
		if a, b := buoyant(warmer, 290, 2), buoyant(warmer+1, 290, 2); b <= a || a <= 0 {
			t.Errorf("%g K warmer: %g, one more: %g", warmer, a, b)
		}
	}
}

// More light never cools the face, in the hour in which it falls.
func TestLightWarms(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		c := column(t, Grass())
		s := c.Start(quantity.Celsius(rapid.Float64Range(-10, 30).Draw(t, "start")))
		in := anyWeather(t)
		more, dim, bright := in, s, s
		more.Light += 100
		if a, b := c.Step(&dim, in), c.Step(&bright, more); b.Face < a.Face-1e-9 || b.IntoGround < a.IntoGround-1e-9 {
			t.Errorf("face %g and %g degC, into the ground %g and %g W/m2", float64(a.Face), float64(b.Face), float64(a.IntoGround), float64(b.IntoGround))
		}
	})
}

func TestColumnAllocatesNothing(t *testing.T) {
	c := column(t, Grass())
	s, h := c.Start(8), 0
	if n := testing.AllocsPerRun(100, func() { c.Step(&s, season(h, 0.1)); h++ }); n != 0 {
		t.Errorf("an hour makes %v allocations, want none", n)
	}
}

func TestColumnRefusesWhatCannotBe(t *testing.T) {
	bad := Grass()
	bad.Albedo, bad.Roots = 1.2, -1
	if _, err := Prepare(site.Place{}, bad, soil.Loam(), soil.Water{FieldCapacity: 0.1, Wilting: 0.2}); err == nil {
		t.Error("taken")
	}
}

// The cosine of the ground obeys the equation of conduction, fits itself again, and turns round for the south.
func TestUndisturbedConducts(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		u := Undisturbed{Mean: 9, Swing: 11, Coldest: rapid.Float64Range(1, 365).Draw(t, "coldest"), Diffusivity: rapid.Float64Range(0.02, 0.2).Draw(t, "diffusivity")}
		z, day := rapid.Float64Range(0.2, 5).Draw(t, "depth"), rapid.Float64Range(0, 365).Draw(t, "day")
		at := func(z, day float64) float64 { return float64(u.At(quantity.Metres(z), day)) }
		const dz, dt = 0.02, 0.2
		inTime := (at(z, day+dt) - at(z, day-dt)) / (2 * dt)
		inDepth := (at(z+dz, day) - 2*at(z, day) + at(z-dz, day)) / (dz * dz)
		// The differences leave out terms of (dz/δ)² and (2π dt/365)²: 2e-4 of the largest rate, 0.19 K/d.
		if math.Abs(inTime-u.Diffusivity*inDepth) > 1e-4 {
			t.Errorf("dT/dt %g, a d2T/dz2 %g", inTime, u.Diffusivity*inDepth)
		}
		south := u
		south.Coldest += yearDays / 2
		check.Balance(t, at(z, day)-9, -(float64(south.At(quantity.Metres(z), day)) - 9), "half a year later")
		var daily []float64
		for i := range 365 {
			daily = append(daily, at(0, float64(i+1)))
		}
		again := FitSurface(daily, u.Diffusivity)
		check.Balance(t, float64(again.Swing), 11, "swing fitted again")
		if d := math.Mod(again.Coldest-u.Coldest+1.5*365, 365) - 182.5; math.Abs(d) > 1e-6 {
			t.Errorf("coldest day fitted again: %g, was %g", again.Coldest, u.Coldest)
		}
	})
}

func anyFloor(t *rapid.T) Floor {
	area := rapid.Float64Range(10, 500).Draw(t, "area")
	return Floor{
		Area: quantity.SquareMetres(area), Perimeter: quantity.Metres(math.Sqrt(area) * rapid.Float64Range(3.6, 8).Draw(t, "shape")),
		Wall: quantity.Metres(rapid.Float64Range(0.1, 0.8).Draw(t, "wall")), Ground: rapid.SampledFrom(soil.Kinds()).Draw(t, "ground"),
		Resists: rapid.Float64Range(0, 6).Draw(t, "floor"), Inside: InsideDown, Outside: Outside,
	}
}

// Insulation, a thicker wall and fewer edges never let more heat out; edge insulation saves;
// the two branches of the standard meet within a hundredth.
func TestFloorsObeyInsulation(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := anyFloor(t)
		better, compact := f, f
		better.Resists += 0.5
		compact.Perimeter *= 0.9
		gap := Gap{Height: 0.4, Wall: 1, Vents: 0.0015, Wind: 4, Shelter: 0.05}
		if better.On() >= f.On() || better.Over(gap) >= f.Over(gap) {
			t.Errorf("insulated %g and %g, not %g and %g", better.On(), better.Over(gap), f.On(), f.Over(gap))
		}
		if compact.On() > f.On()*1.01 {
			t.Errorf("fewer edges: %g, more: %g", compact.On(), f.On())
		}
		edge := Edge{Reach: 0.5, Thickness: 0.1, Resistance: 2.5}
		upright := edge
		upright.Upright = true
		if l, u := f.Gain(edge), f.Gain(upright); l >= 0 || u >= l {
			t.Errorf("edge: lying %g, upright of the same reach %g W/mK", l, u)
		}
		if f.Gain(Edge{}) != 0 || f.OnEdged(edge) >= f.On() {
			t.Errorf("no edge insulation changes %g; with it %g, without %g", f.Gain(Edge{}), f.OnEdged(edge), f.On())
		}
		if y := f.YearlyOn(); y.Outside >= f.YearlyEdged(Edge{}).Outside+1e-9 || y.Inside <= 0 || y.Ahead < 0 || y.Ahead > 1.5 {
			t.Errorf("yearly %+v", y)
		}
		if err := f.Faults(); err != nil {
			t.Error(err)
		}
	})
}

// A basement with its floor hardly below ground is a slab; deeper, its floor loses less and its walls in all more.
func TestBasementGrowsFromASlab(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		f := anyFloor(t)
		b := Basement{Depth: 1e-6, Wall: rapid.Float64Range(0, 5).Draw(t, "wall"), Side: 0.13}
		shallow, _ := f.In(b)
		if math.Abs(shallow-f.On()) > 1e-5 {
			t.Errorf("at no depth %g, slab %g", shallow, f.On())
		}
		last, walls := shallow, 0.0
		for z := 0.5; z < 4; z += 0.5 {
			b.Depth = quantity.Metres(z)
			floor, side := f.In(b)
			if floor > last || side*z < walls {
				t.Errorf("at %g m: floor %g after %g, walls %g after %g", z, floor, last, side*z, walls)
			}
			last, walls = floor, side*z
		}
		if y := f.YearlyIn(b); y.Steady <= 0 || y.Inside <= 0 || y.Outside <= 0 {
			t.Errorf("yearly %+v", y)
		}
	})
}

// Over a year the swings cancel, and the slower the ground the later the loss.
func TestYearlyFlowAverages(t *testing.T) {
	f := floor(100, 40, 1)
	y := f.YearlyOn()
	c := Climate{InsideMean: 20, InsideSwing: 2, OutsideMean: 8, OutsideSwing: 10, Coldest: 1}
	sum, most, month := 0.0, 0.0, 0.0
	for m := range 120 {
		flow := y.Flow(c, float64(m)/10)
		sum += flow / 120
		if flow > most {
			most, month = flow, float64(m)/10
		}
	}
	check.Balance(t, sum, 12*y.Steady, "mean of a year, W")
	if month < 1 || month > 4 {
		t.Errorf("the loss is largest in month %g, want within three months after the coldest", month)
	}
	gap := f.YearlyOver(Gap{Height: 0.4, Wall: 1, Vents: 0.0015, Wind: 4, Shelter: 0.05})
	if gap.Outside < y.Outside || gap.Steady < y.Steady*0.5 {
		t.Errorf("over a gap %+v, on the ground %+v", gap, y)
	}
}
