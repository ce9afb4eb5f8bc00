package pump

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"suffice/internal/check"
	"suffice/quantity"
)

func drawPipe(t *rapid.T) Pipe {
	bore := rapid.Float64Range(5, 200).Draw(t, "bore")
	return Pipe{
		Length:    quantity.Metres(rapid.Float64Range(0, 500).Draw(t, "length")),
		Bore:      quantity.Millimetres(bore),
		Roughness: quantity.Millimetres(bore / 20 * rapid.Float64Range(0, 1).Draw(t, "rough")),
		Fittings:  rapid.Float64Range(0, 20).Draw(t, "fittings"),
	}
}

// The factor that comes out must satisfy the implicit equation it came from.
func TestColebrookIsSolved(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		re := math.Exp(rapid.Float64Range(math.Log(turbulentFrom), math.Log(1e8)).Draw(t, "ln Re"))
		rough := rapid.Float64Range(0, 0.05).Draw(t, "roughness")
		f := FrictionFactor(re, rough)
		check.Balance(t, 1/math.Sqrt(f), -2*math.Log10(rough/3.7+2.51/(re*math.Sqrt(f))), "Colebrook")
	})
}

// Two explicit formulas are twins, each within what its author claims: Haaland 2 % and
// Swamee & Jain (1976) 1 % for roughness 1e-6 to 1e-2 and Re 5000 to 1e8. Their claims
// are from memory; the latter is off by up to 3 % at the low end.
func TestExplicitTwins(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		re := math.Exp(rapid.Float64Range(math.Log(5000), math.Log(1e8)).Draw(t, "ln Re"))
		rough := math.Exp(rapid.Float64Range(math.Log(1e-6), math.Log(1e-2)).Draw(t, "ln roughness"))
		f := FrictionFactor(re, rough)
		swamee := 0.25 / math.Pow(math.Log10(rough/3.7+5.74/math.Pow(re, 0.9)), 2)
		if off := haaland(re, rough)/f - 1; math.Abs(off) > 0.02 {
			t.Errorf("Re %g, roughness %g: Haaland off by %.4f", re, rough, off)
		}
		if off := swamee/f - 1; math.Abs(off) > 0.03 {
			t.Errorf("Re %g, roughness %g: Swamee & Jain off by %.4f", re, rough, off)
		}
	})
}

// Poiseuille: dp = 128 mu L Q / (pi D^4), exact for laminar flow.
func TestLaminarIsPoiseuille(t *testing.T) {
	w := water(20)
	p := Pipe{Length: 10, Bore: 10}
	const q = 5e-6 // m3/s, Re about 630
	want := 128 * w.viscosity * 10 * q / (math.Pi * math.Pow(0.01, 4)) / (w.density * gravity)
	check.Balance(t, p.loss(q, w), want, "head of laminar flow")
}

// More flow, length, roughness or fittings never loses less; a wider bore never loses more.
func TestLossGrows(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPipe(t)
		flow := rapid.Float64Range(0, 20).Draw(t, "flow")
		loss := p.Loss(flow, 15)
		more := flow + rapid.Float64Range(0, 5).Draw(t, "more")
		longer, fitted := p, p
		longer.Length *= 1.5
		fitted.Fittings += 2
		wider := p
		wider.Bore *= 1.1
		for what, greater := range map[string]quantity.Metres{"more flow": p.Loss(more, 15), "longer": longer.Loss(flow, 15), "more fittings": fitted.Loss(flow, 15)} {
			if greater < loss*(1-1e-12) {
				t.Errorf("%s loses %g m, less than %g m: %+v at %g m3/h", what, float64(greater), float64(loss), p, flow)
			}
		}
		if w := wider.Loss(flow, 15); w > loss*(1+1e-12) {
			t.Errorf("wider loses %g m, more than %g m: %+v at %g m3/h", float64(w), float64(loss), p, flow)
		}
	})
}

// What gravity drives loses exactly the fall, with the speed at the outlet.
func TestGravityFlowUsesTheFall(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		p := drawPipe(t)
		fall := rapid.Float64Range(0.01, 100).Draw(t, "fall")
		flow := p.GravityFlow(quantity.Metres(fall), 15)
		p.Fittings++
		check.Balance(t, float64(p.Loss(flow, 15)), fall, "fall and loss")
	})
	if q := (Pipe{Length: 10, Bore: 20}).GravityFlow(-1, 15); q != 0 {
		t.Errorf("water flows uphill by itself: %g m3/h", q)
	}
}

// Energy is head times weight over efficiency, whatever the way it is asked for.
func TestEnergyIsWeightTimesHead(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		l := Lift{Static: quantity.Metres(rapid.Float64Range(0, 60).Draw(t, "static")), Pipe: drawPipe(t),
			Flow: rapid.Float64Range(0.1, 5).Draw(t, "flow"), Efficiency: rapid.Float64Range(0.1, 0.9).Draw(t, "efficiency"), Water: 15}
		weight := densityOfWater(15) * gravity // N of 1000 L
		check.Balance(t, float64(l.EnergyPerKilolitre()), weight*float64(l.Head())/l.Efficiency/secondsPerHour, "Wh for 1000 L")
		check.Balance(t, float64(l.Power()), float64(l.EnergyPerKilolitre())*l.Flow, "W while it runs")
		if l.Head() < l.Static {
			t.Errorf("head %g m under the static %g m", float64(l.Head()), float64(l.Static))
		}
	})
}

func TestFaultsComeTogether(t *testing.T) {
	err := Lift{Flow: -1, Efficiency: 2, Pipe: Pipe{Bore: 0, Length: -3}}.Faults()
	if err == nil {
		t.Fatal("an impossible pump was taken")
	}
	for _, what := range []string{"flow", "efficiency", "bore", "of -3 m"} {
		if !strings.Contains(err.Error(), what) {
			t.Errorf("the faults do not name the %s: %v", what, err)
		}
	}
	ok := Lift{Static: 14, Flow: 1.8, Efficiency: 0.35, Water: 15, Pipe: Pipe{Length: 35, Bore: 32, Roughness: PipeRoughness}}
	if err := ok.Faults(); err != nil {
		t.Errorf("%+v: %v", ok, err)
	}
}

func TestSheetsAnswerBare(t *testing.T) {
	for _, s := range Sheets() {
		w, err := s.Work(nil)
		if err != nil {
			t.Errorf("%s: %v", s.Name, err)
		}
		results := make(map[string]float64)
		for _, r := range w.Results {
			results[r.Name] = r.Value.Number
		}
		l := Lift{Static: 14, Flow: 1.8, Efficiency: 0.35, Water: 15, Pipe: Pipe{Length: 35, Bore: 32, Roughness: PipeRoughness, Fittings: 4}}
		for name, want := range map[string]float64{"head": float64(l.Head()), "power": float64(l.Power()), "energy_per_kl": float64(l.EnergyPerKilolitre())} {
			if results[name] != want {
				t.Errorf("%s: %s is %v, the hour's functions give %v", s.Name, name, results[name], want)
			}
		}
	}
}
