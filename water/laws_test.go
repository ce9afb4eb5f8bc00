package water

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/quantity"
)

func drawLitres(t *rapid.T, most float64, what string) quantity.Litres {
	if rapid.IntRange(0, 3).Draw(t, what+" none") == 0 {
		return 0
	}
	return quantity.Litres(rapid.Float64Range(0, most).Draw(t, what))
}

func drawDesign(t *rapid.T) Design {
	d := Design{Snow: UsualSnow(), ChangesItself: rapid.Bool().Draw(t, "changes itself")}
	tanks := rapid.IntRange(1, 4).Draw(t, "tanks")
	for i := range tanks {
		k := Tank{Name: "tank", Holds: quantity.Litres(rapid.Float64Range(100, 5000).Draw(t, "holds")), Overflow: Away}
		k.Dead = k.Holds * quantity.Litres(rapid.Float64Range(0, 0.3).Draw(t, "dead"))
		k.Fire = k.Holds * quantity.Litres(rapid.Float64Range(0, 0.3).Draw(t, "fire"))
		k.Leak = drawLitres(t, 50, "leak")
		k.Start = k.Holds * quantity.Litres(rapid.Float64Range(0, 1).Draw(t, "start"))
		if i > 0 && rapid.Bool().Draw(t, "overflow inside") {
			k.Overflow = rapid.IntRange(0, i-1).Draw(t, "overflow") // towards lower numbers: no ring
		}
		d.Tanks = append(d.Tanks, k)
	}
	for range rapid.IntRange(0, 4).Draw(t, "roofs") {
		d.Roofs = append(d.Roofs, Roof{Name: "roof", Area: quantity.SquareMetres(rapid.Float64Range(1, 200).Draw(t, "area")),
			Coefficient: rapid.Float64Range(0, 1).Draw(t, "coefficient"), Wetting: quantity.Millimetres(rapid.Float64Range(0, 2).Draw(t, "wetting")),
			Flush: FirstFlush{Depth: quantity.Millimetres(rapid.Float64Range(0, 2).Draw(t, "flush")), AfterDry: rapid.Float64Range(1, 100).Draw(t, "after dry")},
			Into:  rapid.IntRange(0, tanks-1).Draw(t, "into")})
	}
	if rapid.Bool().Draw(t, "pump") {
		d.Supply.WattHoursPerKilolitre = rapid.Float64Range(1, 500).Draw(t, "energy")
	}
	d.Supply.MostPerHour = drawLitres(t, 500, "most")
	for range rapid.IntRange(0, 3).Draw(t, "stages") {
		d.Treatment = append(d.Treatment, drawStage(t))
	}
	if rapid.Bool().Draw(t, "delivery") {
		d.Delivery = Delivery{Load: drawLitres(t, 8000, "load"), Lead: rapid.IntRange(0, 5).Draw(t, "lead"),
			OrderBelow: drawLitres(t, 1000, "order"), Price: 100, Into: rapid.IntRange(0, tanks-1).Draw(t, "delivered into")}
	}
	return d
}

func drawStage(t *rapid.T) Stage {
	g := Stage{Name: "stage", Loss: rapid.Float64Range(0, 0.5).Draw(t, "loss"), MostPerHour: drawLitres(t, 300, "stage most")}
	g.Serves[rapid.IntRange(0, int(Kinds)-1).Draw(t, "one kind")] = true
	for k := range Kinds {
		g.Serves[k] = g.Serves[k] || rapid.Bool().Draw(t, "serves")
	}
	if rapid.Bool().Draw(t, "standing") {
		g.Standing = quantity.Watts(rapid.Float64Range(1, 50).Draw(t, "watts"))
	}
	if rapid.Bool().Draw(t, "flowing") {
		g.WattHoursPerKilolitre = rapid.Float64Range(1, 50).Draw(t, "stage energy")
	}
	return g
}

func drawHour(t *rapid.T, before State) Hour {
	h := Hour{Before: before, Change: rapid.IntRange(0, 9).Draw(t, "change") == 0, Power: Power{1, 1}}
	h.Sky.Temperature = quantity.Celsius(rapid.Float64Range(-10, 25).Draw(t, "temperature"))
	if rapid.IntRange(0, 2).Draw(t, "wet") == 0 {
		h.Sky.Rain = quantity.Millimetres(rapid.Float64Range(0, 30).Draw(t, "rain"))
	}
	for k := range Kinds {
		h.Wanted[k] = drawLitres(t, 200, "wanted")
	}
	if rapid.IntRange(0, 2).Draw(t, "cut") == 0 {
		h.Power = Power{rapid.Float64Range(0, 1).Draw(t, "pump power"), rapid.Float64Range(0, 1).Draw(t, "treatment power")}
	}
	return h
}

// live lets an hour pass and gives what it did and the power that was asked for.
func live(w *Works, s *State, h Hour) (income IncomeOut, asked, out TapsOut) {
	w.Income(s, h.Sky, &income)
	w.Want(s, &h.Wanted, h.Change, &asked)
	out = asked
	w.Share(s, h.Power, &out)
	return income, asked, out
}

func build(t rapid.TB, d Design) *Works {
	t.Helper()
	w, err := Prepare(d)
	if err != nil {
		t.Fatalf("%v", err)
	}
	return w
}

// Every litre and every watt-hour of an hour is accounted for by its named doors.
func TestNothingIsLost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := build(t, drawDesign(t))
		s := w.Start()
		for range rapid.IntRange(1, 30).Draw(t, "hours") {
			h := drawHour(t, s)
			before := w.Held(&s) + w.Snow(&s)
			income, asked, out := live(w, &s, h)
			balanceOfWater(t, w, before, w.Held(&s)+w.Snow(&s), income, out)
			balanceOfTaps(t, w, h, asked, out)
			for i := range w.vessels {
				if held, holds := s.Tanks[i].Held, w.design.Tanks[i].Holds; held < 0 || held > holds {
					t.Fatalf("tank %d of %v L holds %v L", i, holds, held)
				}
			}
		}
	})
}

func balanceOfWater(t *rapid.T, w *Works, before, after quantity.Litres, in IncomeOut, out TapsOut) {
	came := before + in.Fell + in.Delivered
	left := after + in.Wetted + in.Missed + in.Diverted + in.Spilled + in.Leaked + out.Drawn
	check.Balance(t, float64(came), float64(left), "litres of the hour")
	if in.Quiet && in != (IncomeOut{Leaked: in.Leaked, Quiet: true}) {
		t.Fatalf("quiet, yet %+v", in)
	}
	for _, v := range []quantity.Litres{in.Wetted, in.Missed, in.Diverted, in.Caught, in.Spilled, in.Leaked} {
		if v < 0 {
			t.Fatalf("a door let %v L in: %+v", v, in)
		}
	}
}

func balanceOfTaps(t *rapid.T, w *Works, h Hour, asked, out TapsOut) {
	var short, cause, needed quantity.Litres
	for k := range Kinds {
		check.Balance(t, float64(h.Wanted[k]), float64(out.Served[k]+out.Short[k]), k.String()+" wanted")
		if out.Served[k] < -1e-9 || out.Short[k] < -1e-9 {
			t.Fatalf("%s: served %v L, short %v L", k, out.Served[k], out.Short[k])
		}
		short += out.Short[k]
		needed += out.Served[k] * quantity.Litres(w.taps.Drawn[k])
	}
	for _, c := range out.Cause {
		cause += c
	}
	check.Balance(t, float64(short), float64(cause), "shortage by kind and by cause")
	check.Balance(t, float64(needed), float64(out.Drawn), "drawn for what was served")
	check.Balance(t, float64(out.Drawn), float64(sum(&out.Served)+out.Backwash), "drawn, served and backwash")
	if out.Whole != (short == 0) {
		t.Fatalf("whole is %v with %v L short", out.Whole, short)
	}
	granted := float64(asked.Pump)*h.Power.Pump + float64(asked.Treatment)*h.Power.Treatment
	check.Balance(t, granted, float64(out.Pump+out.Treatment+out.Unused), "watt-hours granted")
	if out.Unused < -1e-9 || out.Pump > asked.Pump+1e-9 || out.Treatment > asked.Treatment+1e-9 {
		t.Fatalf("asked %v and %v Wh, used %v and %v, unused %v", asked.Pump, asked.Treatment, out.Pump, out.Treatment, out.Unused)
	}
}

// A copy of the state is a snapshot: from it the same hours give the same, bit for bit.
func TestCopyIsASnapshot(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := build(t, drawDesign(t))
		s := w.Start()
		for range rapid.IntRange(1, 10).Draw(t, "hours") {
			fork := s
			h := drawHour(t, s)
			income, _, out := live(w, &s, h)
			again, _, outAgain := live(w, &fork, h)
			if s != fork || income != again || out != outAgain {
				t.Fatalf("from a copy: %+v %+v %+v, before %+v %+v %+v", fork, again, outAgain, s, income, out)
			}
		}
	})
}

// one gives a single tank by gravity, so that laws about levels can be stated plainly.
func one(holds, fire quantity.Litres) Design {
	return Design{Snow: UsualSnow(),
		Roofs: []Roof{{Name: "main", Area: 100, Coefficient: 0.9, Wetting: 0.4}},
		Tanks: []Tank{{Name: "main", Holds: holds, Fire: fire, Leak: 5, Start: holds / 2, Overflow: Away}}}
}

// season gives the shortage, L, and the short hours of the same weather and wants.
func season(t *rapid.T, d Design, hours []Hour) (short quantity.Litres, shortHours int, drawn quantity.Litres) {
	w := build(t, d)
	s := w.Start()
	for _, h := range hours {
		h.Before = s
		_, _, out := live(w, &s, h)
		short += sum(&out.Short)
		drawn += out.Drawn
		if !out.Whole {
			shortHours++
		}
	}
	return short, shortHours, drawn
}

func drawSeason(t *rapid.T) []Hour {
	hours := make([]Hour, rapid.IntRange(5, 60).Draw(t, "hours"))
	for i := range hours {
		hours[i] = drawHour(t, State{})
		hours[i].Power = Power{1, 1}
	}
	return hours
}

// More fire litres never make fewer short hours, nor more water drawn.
func TestFireLitresCost(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		hours := drawSeason(t)
		low := drawLitres(t, 700, "fire")
		high := low + drawLitres(t, 700, "more fire")
		short, shortHours, drawn := season(t, one(3000, low), hours)
		shortMore, shortHoursMore, drawnLess := season(t, one(3000, high), hours)
		if shortHoursMore < shortHours || shortMore < short-1e-6 || drawnLess > drawn+1e-6 {
			t.Fatalf("fire %v L: %d hours, %v L short; fire %v L: %d hours, %v L short", low, shortHours, short, high, shortHoursMore, shortMore)
		}
	})
}

// A bigger tank that starts as full is never short of more, by one tank without delivery.
// With deliveries this need not hold: the smaller tank may order first and be filled earlier.
func TestBiggerTankIsNeverShorter(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		hours := drawSeason(t)
		small, big := one(2000, 200), one(2000, 200)
		big.Tanks[0].Holds += drawLitres(t, 3000, "more")
		short, _, _ := season(t, small, hours)
		less, _, _ := season(t, big, hours)
		if less > short+1e-6 {
			t.Fatalf("%v L hold: short %v L; %v L hold: short %v L", small.Tanks[0].Holds, short, big.Tanks[0].Holds, less)
		}
	})
}

// Wanting less, as when people save, never draws more in the hour, whatever limits bind. Stages
// with a flow limit serve nested sets of uses here: where they cross it need not hold (see Taps.cut).
func TestWantingLessDrawsLess(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDesign(t)
		for i := range d.Treatment {
			last := Kind(rapid.IntRange(0, int(Kinds)-1).Draw(t, "last use served"))
			for k := range Kinds {
				d.Treatment[i].Serves[k] = k <= last
			}
		}
		w := build(t, d)
		s := w.Start()
		h := drawHour(t, s)
		less := h
		for k := range Kinds {
			less.Wanted[k] *= quantity.Litres(rapid.Float64Range(0, 1).Draw(t, "left"))
		}
		h.Power, less.Power = Power{1, 1}, Power{1, 1}
		fork := s
		_, _, out := live(w, &s, h)
		_, _, outLess := live(w, &fork, less)
		if outLess.Drawn > out.Drawn+1e-9 || outLess.Pump > out.Pump+1e-9 {
			t.Fatalf("wanted %v L: drawn %v L; wanted %v L: drawn %v L", h.Wanted, out.Drawn, less.Wanted, outLess.Drawn)
		}
	})
}

// More power never serves less of anything that matters first: drinking, and all together.
func TestMorePowerServesMore(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		w := build(t, drawDesign(t))
		s := w.Start()
		h := drawHour(t, s)
		more := h
		h.Power = Power{rapid.Float64Range(0, 1).Draw(t, "pump"), rapid.Float64Range(0, 1).Draw(t, "treatment")}
		more.Power = Power{1, 1}
		fork := s
		_, _, out := live(w, &s, h)
		_, _, outMore := live(w, &fork, more)
		for k := range Kinds {
			if out.Served[k] > outMore.Served[k]+1e-9 {
				t.Fatalf("%s: power %+v serves %v L, all power %v L", k, h.Power, out.Served[k], outMore.Served[k])
			}
		}
	})
}

// Drinking is short only when nothing is left for what comes after it.
func TestDrinkingComesFirst(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		d := drawDesign(t)
		d.Treatment = nil
		w := build(t, d)
		s := w.Start()
		h := drawHour(t, s)
		_, _, out := live(w, &s, h)
		for k := Drinking; k < Outdoor; k++ {
			if out.Short[k] > 1e-9 && out.Served[k+1] > 1e-9 {
				t.Fatalf("%s is short of %v L while %s gets %v L", k, out.Short[k], k+1, out.Served[k+1])
			}
		}
	})
}

// Without power the lamp gives no drinking water and leaves the washing water running; the pump
// without power leaves the taps dry; by gravity they run.
func TestPowerCuts(t *testing.T) {
	d := house()
	d.Delivery = Delivery{}
	wants := [Kinds]quantity.Litres{5, 20, 10, 0}
	hour := func(d Design, p Power) TapsOut {
		w := build(t, d)
		s := w.Start()
		_, _, out := live(w, &s, Hour{Wanted: wants, Power: p, Sky: SkyIn{Temperature: 15}})
		return out
	}
	lamp := hour(d, Power{1, 0})
	if lamp.Served != [Kinds]quantity.Litres{0, 20, 10, 0} || lamp.Short[Drinking] != 5 || lamp.Cause[TreatmentPower] != 5 || lamp.Treatment != 0 {
		t.Errorf("lamp out: %+v", lamp)
	}
	pump := hour(d, Power{0, 1})
	if pump.Served != [Kinds]quantity.Litres{} || pump.Cause[PumpPower] != 35 || pump.Drawn != 0 || pump.Pump != 0 {
		t.Errorf("pump off: %+v", pump)
	}
	d.Supply = Supply{}
	gravity := hour(d, Power{0, 1})
	if gravity.Served != wants || !gravity.Whole {
		t.Errorf("by gravity with the power cut to the pump: %+v", gravity)
	}
	if half := hour(house(), Power{1, 0.5}); half.Served[Drinking] != 2.5 || half.Served[Washing] != 20 {
		t.Errorf("lamp lit for half the hour: %+v", half)
	}
}

// The hour's tank runs dry in the hour that the closed form says, dead storage and fire litres on.
func TestRunsDryWhenTheClosedFormSays(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := Tank{Name: "main", Holds: 40000, Start: 40000, Overflow: Away, Dead: drawLitres(t, 2000, "dead"), Fire: drawLitres(t, 4000, "fire"), Leak: drawLitres(t, 20, "leak")}
		week := quantity.Litres(rapid.Float64Range(500, 7000).Draw(t, "a week"))
		topUp := drawLitres(t, 100, "top-up a day")
		hours := 24 * DryOut(k.Start-k.Reserve(), week/7, k.Leak, topUp)
		slack := noticed / float64((week/7+topUp)/24) // of an hour: a shortage that is not noticed
		if got := float64(dryHour(t, k, week/7+topUp)); got < math.Floor(hours-slack) || got > math.Floor(hours+slack) {
			t.Fatalf("the taps fall short in hour %v, the closed form says after %v hours", got, hours)
		}
	})
	// 1 kL a week from a full 40 kL with nothing kept back lasts 40 weeks.
	if days := DryOut(40000, 1000./7, 0, 0); math.Abs(days-280) > 1e-9 {
		t.Errorf("40 kL at 1 kL a week last %v days, want 280", days)
	}
}

// noticed is a shortage, L, larger than what rounding makes in two years of hours.
const noticed = 1e-6

// dryHour lives without rain and gives the first hour in which a shortage is noticed; 80 kL
// would have gone by the last.
func dryHour(t *rapid.T, k Tank, daily quantity.Litres) int {
	w := build(t, Design{Tanks: []Tank{k}})
	s := w.Start()
	for hour := range 7 * 24 * 160 {
		_, _, out := live(w, &s, Hour{Wanted: [Kinds]quantity.Litres{0, daily / 24, 0, 0}, Power: Power{1, 1}})
		if out.Short[Washing] > noticed {
			return hour
		}
	}
	t.Fatalf("40 kL never run dry: %v L are left", s.Tanks[0].Held)
	return 0
}

// Snow lies in the cold, is not lost, and comes down when it melts.
func TestSnowWaits(t *testing.T) {
	d := one(5000, 0)
	d.Tanks[0].Leak, d.Tanks[0].Start = 0, 0
	w := build(t, d)
	s := w.Start()
	var in IncomeOut
	w.Income(&s, SkyIn{Rain: 10, Temperature: -5}, &in)
	if in.Fell != 1000 || in.Caught != 0 || w.Snow(&s) != 1000 {
		t.Errorf("10 mm of snow on 100 m2: %+v, %v L lying", in, w.Snow(&s))
	}
	var caught, wetted, missed quantity.Litres
	hours := 0
	for ; w.Snow(&s) > 0 && hours < 1000; hours++ {
		w.Income(&s, SkyIn{Temperature: 5}, &in)
		caught, wetted, missed = caught+in.Caught, wetted+in.Wetted, missed+in.Missed
	}
	// 10 mm at 3.51/24 mm/(K h) times 5 K: 13.7 hours.
	if hours != 14 {
		t.Errorf("it took %d hours to melt, want 14", hours)
	}
	check.Balance(t, 1000, float64(caught+wetted+missed), "melted snow")
	check.Balance(t, 40, float64(wetted), "one wetting for one melt")
}

// A first flush takes its litres once, and again only after it has been dry for long enough.
func TestFirstFlushTakesItsLitresOnce(t *testing.T) {
	r := Roof{Area: 100, Coefficient: 1, Flush: FirstFlush{Depth: 1, AfterDry: 48}}
	var s RoofState
	diverted := func(dry float64) (all quantity.Litres) {
		for i := range 5 {
			if i > 0 {
				dry = 0
			}
			all += r.Step(&s, RoofIn{Down: 0.6, Dry: dry}).Diverted
		}
		return all
	}
	for i, c := range []struct{ dry, want float64 }{{100, 100}, {47, 0}, {48, 100}} {
		if got := diverted(c.dry); math.Abs(float64(got)-c.want) > 1e-9 {
			t.Errorf("spell %d after %v dry hours: diverted %v L, want %v L", i, c.dry, got, c.want)
		}
	}
}

// A load arrives its lead after it is ordered, is paid once, and what does not fit is spilled.
func TestDeliveryComesInTime(t *testing.T) {
	d := Design{Tanks: []Tank{{Name: "main", Holds: 5000, Start: 1000, Overflow: Away}}, Delivery: Delivery{Load: 8000, Lead: 3, OrderBelow: 1001, Price: 110}}
	w := build(t, d)
	s := w.Start()
	var in IncomeOut
	for hour := range 6 {
		w.Income(&s, SkyIn{}, &in)
		if in.Ordered != (hour == 0) || (in.Loads == 1) != (hour == 3) || (in.Paid == 110) != (hour == 3) {
			t.Errorf("hour %d: %+v", hour, in)
		}
		if hour == 3 && (in.Spilled != 4000 || s.Tanks[0].Held != 5000) {
			t.Errorf("8000 L into 5000 L with 1000 L in it: spilled %v L, holds %v L", in.Spilled, s.Tanks[0].Held)
		}
	}
}

// Overflow runs on from tank to tank in one hour, and people change to the fullest.
func TestTanksInARow(t *testing.T) {
	d := Design{Snow: UsualSnow(), Roofs: []Roof{{Name: "roof", Area: 100, Coefficient: 1, Into: 0}}, Tanks: []Tank{
		{Name: "first", Holds: 1000, Start: 1000, Overflow: 2}, {Name: "spare", Holds: 500, Start: 100, Overflow: Away}, {Name: "second", Holds: 800, Overflow: 1}}}
	w := build(t, d)
	s := w.Start()
	var in IncomeOut
	w.Income(&s, SkyIn{Rain: 20, Temperature: 10}, &in) // 2000 L into a full tank
	if got := [3]quantity.Litres{s.Tanks[0].Held, s.Tanks[1].Held, s.Tanks[2].Held}; got != [3]quantity.Litres{1000, 500, 800} || in.Spilled != 800 {
		t.Errorf("tanks hold %v, spilled %v L, want 1000, 500, 800 and 800 spilled", got, in.Spilled)
	}
	want := [Kinds]quantity.Litres{0, 1400, 0, 0}
	var out TapsOut
	w.Want(&s, &want, false, &out)
	if out.Served[Washing] != 1000 || out.Cause[TankLow] != 400 {
		t.Errorf("by hand, 1400 L from the first tank: %+v", out)
	}
	d.ChangesItself = true
	w = build(t, d)
	w.Want(&s, &want, false, &out)
	w.Share(&s, Power{1, 1}, &out)
	if out.Served[Washing] != 1400 || s.Duty != 2 || s.Tanks[2].Held != 400 || s.Tanks[0].Held != 0 {
		t.Errorf("by itself, 1400 L: %+v, duty %d, second holds %v L", out, s.Duty, s.Tanks[2].Held)
	}
}

func TestFaultsComeTogether(t *testing.T) {
	d := Design{
		Roofs:     []Roof{{Name: "north", Area: -1, Coefficient: 1.2, Into: 7, Flush: FirstFlush{Depth: 1}}},
		Tanks:     []Tank{{Name: "a", Holds: 100, Dead: 80, Fire: 30, Start: 200, Overflow: 1}, {Name: "b", Holds: quantity.Litres(math.NaN()), Overflow: 0}},
		Treatment: []Stage{{Name: "filter", Loss: 1}}, Delivery: Delivery{Load: 10, Into: 5},
	}
	_, err := Prepare(d)
	if err == nil {
		t.Fatal("a faulty design was taken")
	}
	for _, want := range []string{`"north": area`, "coefficient", "no tank 7", "first flush empty again", "snow melts", `"a": start`, "leave something to draw",
		`"b": holds in L: it is not a number`, "in a ring", `"filter": it serves no use`, `"filter": loss`, "delivery: into"} {
		if !strings.Contains(err.Error(), want) {
			t.Errorf("the faults do not speak of %s:\n%v", want, err)
		}
	}
	if _, err := Prepare(Design{Tanks: make([]Tank, 9)}); err == nil || !strings.Contains(err.Error(), "the most is 8") {
		t.Errorf("nine tanks: %v", err)
	}
}

func TestHourAllocatesNothing(t *testing.T) {
	w := build(t, house())
	s := w.Start()
	wants := [Kinds]quantity.Litres{0.4, 1.2, 0.8, 0}
	var income IncomeOut
	var out TapsOut
	n := testing.AllocsPerRun(100, func() {
		w.Income(&s, SkyIn{Rain: 1, Temperature: 5}, &income)
		w.Want(&s, &wants, true, &out)
		w.Share(&s, Power{0.5, 0.5}, &out)
	})
	if n != 0 {
		t.Errorf("an hour made %v allocations", n)
	}
}
