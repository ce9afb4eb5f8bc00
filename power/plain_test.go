package power

import (
	"testing"

	"pgregory.net/rapid"

	"suffice/quantity"
)

// An hour taken the short way is the same, to the last bit, as the long way would have it; and where the short way gives
// up it has touched nothing.
func TestPlainHourIsAnyHour(t *testing.T) {
	plain, refused := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		y := anySystem(t)
		s := y.Start()
		for hour := range rapid.IntRange(1, 96).Draw(t, "hours") {
			in := anyHour(t, y, hour)
			short, long := s, s
			outShort, outLong := SystemOut{ServiceShare: 1, Plain: true}, SystemOut{}
			y.anyHour(&long, &in, &outLong)
			if y.plain(&short, &in, &outShort) {
				plain++
				outLong.Plain = true
				if short != long || outShort != outLong {
					t.Fatalf("hour %d, %+v:\n got %+v %+v\nwant %+v %+v", hour, in, short.Battery, outShort, long.Battery, outLong)
				}
			} else if refused++; short != s {
				t.Fatalf("hour %d was refused and moved the state: %+v, was %+v", hour, short, s)
			}
			y.Step(&s, &in, &outShort)
			if s != long || outShort != outLong {
				t.Fatalf("hour %d, %+v:\n got %+v\nwant %+v", hour, in, outShort, outLong)
			}
		}
	})
	if plain == 0 || refused == 0 {
		t.Errorf("%d hours went the short way and %d were refused: both must occur", plain, refused)
	}
}

// A generator that runs into a battery that neither takes nor gives carries an inverter without load at whatever little the
// panels give: no bit is missing on the bus by rounding.
func TestGeneratorKeepsTheInverterOn(t *testing.T) {
	y := &System{
		Controller: Controller{Efficiency: 0.8},
		Battery:    Battery{Chemistry: Lithium(), Capacity: 200, Voltage: 24, Floor: 0.9, Start: 0.9},
		Inverter:   Inverter{Continuous: 300, Idle: 0.1757, PeakEfficiency: 0.95, FullLoadEfficiency: 0.85},
		Generator:  Generator{Power: 200, Fuel: 0.5, NoLoad: NoLoadFuel, Charger: 1, StartBelow: 0.95, StopAbove: 1},
	}
	if err := y.Prepare(); err != nil {
		t.Fatal(err)
	}
	for n := range 200 {
		s := y.Start()
		in := SystemIn{Panels: quantity.Watts(0.001 * float64(n)), Wants: y.Loads.At(0, 0, true, Choice{}), Temperature: -1}
		var out SystemOut
		y.Step(&s, &in, &out)
		if float64(out.Drawn) != float64(y.Inverter.Idle) || out.ControllerLoss < 0 {
			t.Errorf("at %g W of sun the inverter drew %v Wh and the controller lost %v Wh", float64(in.Panels), out.Drawn, out.ControllerLoss)
		}
	}
}
