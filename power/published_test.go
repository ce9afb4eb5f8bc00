package power

import (
	"math"
	"testing"

	"suffice/internal/check"
	"suffice/quantity"
)

func TestCellTemperature(t *testing.T) {
	const haeberlin = "ch. 4, problem 1: NOCT 48 degC, air 40 degC, light 1000 and 200 W/m2"
	check.That(t, float64(CellTemperature(48, 40, 1000)), check.Published{Source: "haeberlin-pv", At: haeberlin, Value: "75", Unit: "degC"})
	check.That(t, float64(CellTemperature(48, 40, 200)), check.Published{Source: "haeberlin-pv", At: haeberlin, Value: "47", Unit: "degC"})
	check.That(t, float64(CellTemperature(47, 30, 1000)), check.Published{Source: "masters-renewable", At: "NOCT example: NOCT 47 degC, air 30 degC, light 1000 W/m2", Value: "64", Unit: "degC", Standing: "remembered"})
	check.That(t, float64(CellTemperature(45, 25, 1000)), check.Published{Source: "iec61215", At: "definition of NOCT: NOCT 45 degC, air 25 degC, light 1000 W/m2", Value: "56.25", Unit: "degC", Standing: "own"})
	check.That(t, float64(CellTemperature(45, 25, 0)), check.Published{Source: "iec61215", At: "definition of NOCT: in the dark", Value: "25", Unit: "degC", Standing: "own"})
}

func TestPowerOfHotPanel(t *testing.T) {
	a := Array{Peak: 150, NOCT: 47, Coefficient: -0.005}
	a.Prepare()
	check.That(t, float64(a.Power(1000, a.CellTemperature(30, 1000))), check.Published{Source: "masters-renewable", At: "NOCT example: 150 W at -0.5 %/K", Value: "121", Unit: "W", Standing: "remembered"})
	s := String{OpenVoltage: 42.8, Coefficient: -0.0037}
	v, _ := s.ColdVoltage(a.CellTemperature(30, 1000))
	check.That(t, v, check.Published{Source: "masters-renewable", At: "NOCT example: 42.8 V at -0.37 %/K", Value: "36.7", Unit: "V", Standing: "remembered"})
}

func TestColdString(t *testing.T) {
	const training = "string example: 49.5 V, -0.28 %/K, -5 degC, limit 1000 V"
	s := String{OpenVoltage: 49.5, Coefficient: -0.0028}
	v, _ := s.ColdVoltage(-5)
	check.That(t, v, check.Published{Source: "pv-training", At: training, Value: "53.66", Unit: "V"})
	check.That(t, float64(MostInSeries(v, 1000)), check.Published{Source: "pv-training", At: training, Value: "18", Unit: "panels"})

	s = String{OpenVoltage: 37.6, Coefficient: -0.0031}
	for _, c := range []struct {
		coldest quantity.Celsius
		print   check.Published
	}{
		{-25, check.Published{Source: "iec62548", At: "37.6 V, -0.31 %/K, -25 degC", Value: "43.43", Unit: "V", Standing: "own"}},
		{-10, check.Published{Source: "iec62548", At: "37.6 V, -0.31 %/K, -10 degC", Value: "41.68", Unit: "V", Standing: "own"}},
		{0, check.Published{Source: "iec62548", At: "37.6 V, -0.31 %/K, 0 degC", Value: "40.51", Unit: "V", Standing: "own"}},
	} {
		v, _ := s.ColdVoltage(c.coldest)
		check.That(t, v, c.print)
	}
}

func TestCodeTable(t *testing.T) {
	s := String{OpenVoltage: 1}
	for _, c := range []struct {
		coldest quantity.Celsius
		print   check.Published
	}{
		{22, check.Published{Source: "nec", At: "table 690.7(A), 24 to 20 degC", Value: "1.02", Standing: "remembered"}},
		{4, check.Published{Source: "nec", At: "table 690.7(A), 4 to 0 degC", Value: "1.10", Standing: "remembered"}},
		{-1, check.Published{Source: "nec", At: "table 690.7(A), -1 to -5 degC", Value: "1.12", Standing: "remembered"}},
		{-25, check.Published{Source: "nec", At: "table 690.7(A), -21 to -25 degC", Value: "1.20", Standing: "remembered"}},
		{-40, check.Published{Source: "nec", At: "table 690.7(A), -36 to -40 degC", Value: "1.25", Standing: "remembered"}},
	} {
		v, ok := s.ColdVoltage(c.coldest)
		if !ok {
			t.Errorf("%g degC is not in the table", c.coldest)
		}
		check.That(t, v, c.print)
	}
	if _, ok := s.ColdVoltage(-41); ok {
		t.Error("-41 degC got a factor from a table that ends at -40 degC")
	}
	check.That(t, String{ShortCurrent: 1}.DesignCurrent(), check.Published{Source: "nec", At: "690.8: 1.25 times 1.25 of the short-circuit current", Value: "1.56"})
}

func TestLossesMultiply(t *testing.T) {
	a := Array{Soiling: 0.02, Mismatch: 0.03, Wiring: 0.02, Ageing: 0.02, Age: 1}
	b := Array{Soiling: 0.005, Mismatch: 0.015, Wiring: 0.01, Ageing: 0.03, Age: 1}
	check.That(t, a.Kept()*b.Kept(), check.Published{Source: "iec61724-1", At: "chain of losses .98 .97 .98 .98 .995 .985 .99 .97", Value: "0.8592", Standing: "own"})
	year := Array{Peak: 1000, Coefficient: -0.004, Soiling: 0.25}
	year.Prepare()
	check.That(t, float64(year.Power(1000, 25))*5*365/1000, check.Published{Source: "iec61724-1", At: "1 kW, 5 kWh/m2 a day, performance ratio 0.75", Value: "1369", Unit: "kWh", Standing: "own"})
}

func TestGlass(t *testing.T) {
	across, along, _ := fresnel(1)
	check.That(t, (across+along)/2, check.Published{Source: "duffie-beckman", At: "ch. 5: one face, index 1.526, straight on", Value: "0.0434", Standing: "remembered"})
	across, along, inside := fresnel(0.5)
	const at60 = "ch. 5: one face, index 1.526, 60 deg"
	check.That(t, across, check.Published{Source: "duffie-beckman", At: at60, Value: "0.185", Standing: "remembered"})
	check.That(t, along, check.Published{Source: "duffie-beckman", At: at60, Value: "0.001", Standing: "remembered"})
	check.That(t, (across+along)/2, check.Published{Source: "duffie-beckman", At: at60, Value: "0.093", Standing: "remembered"})
	check.That(t, math.Acos(inside)*180/math.Pi, check.Published{Source: "duffie-beckman", At: at60, Value: "34.58", Unit: "deg", Standing: "remembered"})
}

// rao are the wells of the published discharge: 7200 As, c 0.625, k' 4.5e-5 /s; k = k'/(c(1-c)), here per hour.
var rao = Wells{Full: 2, Share: 0.625, Rate: 4.5e-5 / (0.625 * 0.375) * 3600}

// pulsed gives the minutes until the available well is empty at 0.96 A for half of each period, s.
func pulsed(w Wells, period float64) float64 {
	half := w.over(period / 2 / 3600)
	q := w.full()
	for seconds := 0.0; ; seconds += period {
		if q = half.after(q, 0.96); q.Available < 0 {
			return (seconds + period/2) / 60
		}
		q = half.after(q, 0)
	}
}

func TestWellsLast(t *testing.T) {
	check.That(t, rao.Lasts(rao.full(), 0.96)*60, check.Published{Source: "jongerden-haverkort-2008", At: "0.96 A without a break", Value: "91", Unit: "min"})
	check.That(t, pulsed(rao, 1), check.Published{Source: "jongerden-haverkort-2008", At: "0.96 A for half of every second", Value: "203", Unit: "min"})
	check.That(t, pulsed(rao, 5), check.Published{Source: "jongerden-haverkort-2008", At: "0.96 A for half of every five seconds", Value: "203", Unit: "min"})
}

// TestWellsAreNotTheOtherConstant makes sure that the check would notice k' taken for k.
func TestWellsAreNotTheOtherConstant(t *testing.T) {
	wrong := Wells{Full: 2, Share: 0.625, Rate: 4.5e-5 * 3600}
	check.That(t, wrong.Lasts(wrong.full(), 0.96)*60, check.Published{Source: "jongerden-haverkort-2008", At: "the same with k' mistaken for k, no break", Value: "81.2", Unit: "min", Standing: "own"})
	check.That(t, pulsed(wrong, 1), check.Published{Source: "jongerden-haverkort-2008", At: "the same with k' mistaken for k, half of every second", Value: "168.7", Unit: "min", Standing: "own"})
}

func TestWellsStep(t *testing.T) {
	w := Wells{Full: 400, Share: 0.3, Rate: 0.5}
	start := Charge{120, 280}
	const at = "q1 120, q2 280 Ah, c 0.3, k 0.5 /h, 40 A for 1 h; the closed form worked by hand"
	q := w.After(start, 40, 1)
	check.That(t, q.Available, check.Published{Source: "manwell-mcgowan-1993", At: at, Value: "85.966", Unit: "Ah", Standing: "own"})
	check.That(t, q.Bound, check.Published{Source: "manwell-mcgowan-1993", At: at, Value: "274.034", Unit: "Ah", Standing: "own"})
	check.That(t, w.MostOut(start, 1), check.Published{Source: "manwell-mcgowan-1993", At: "largest current for an hour from full", Value: "141.03", Unit: "A", Standing: "own"})
	check.That(t, -w.MostIn(Charge{60, 140}, 1), check.Published{Source: "manwell-mcgowan-1993", At: "largest charging current for an hour from q1 60, q2 140 Ah", Value: "-70.52", Unit: "A", Standing: "own"})
}

func TestWellsCapacity(t *testing.T) {
	w := Wells{Full: 400, Share: 0.3, Rate: 0.5}
	check.That(t, w.Capacity(1), check.Published{Source: "manwell-mcgowan-1993", At: "capacity over 1 h: 400 Ah, c 0.3, k 0.5 /h", Value: "141.03", Unit: "Ah", Standing: "own"})
	check.That(t, w.Capacity(5), check.Published{Source: "manwell-mcgowan-1993", At: "capacity over 5 h", Value: "215.43", Unit: "Ah", Standing: "own"})
	check.That(t, w.Capacity(10), check.Published{Source: "manwell-mcgowan-1993", At: "capacity over 10 h", Value: "273.31", Unit: "Ah", Standing: "own"})
	check.That(t, w.Capacity(20), check.Published{Source: "manwell-mcgowan-1993", At: "capacity over 20 h", Value: "324.33", Unit: "Ah", Standing: "own"})
	check.That(t, w.Capacity(100), check.Published{Source: "manwell-mcgowan-1993", At: "capacity over 100 h", Value: "382.17", Unit: "Ah", Standing: "own"})
}

func TestPeukert(t *testing.T) {
	const at = "100 Ah in 20 h, exponent 1.2"
	check.That(t, Peukert(100, 20, 1.2, 1), check.Published{Source: "peukert-1897", At: at + ", 1 A", Value: "138.0", Unit: "Ah", Standing: "own"})
	check.That(t, Peukert(100, 20, 1.2, 10), check.Published{Source: "peukert-1897", At: at + ", 10 A", Value: "87.1", Unit: "Ah", Standing: "own"})
	check.That(t, Peukert(100, 20, 1.2, 20), check.Published{Source: "peukert-1897", At: at + ", 20 A", Value: "75.8", Unit: "Ah", Standing: "own"})
	check.That(t, Peukert(100, 20, 1.2, 50), check.Published{Source: "peukert-1897", At: at + ", 50 A", Value: "63.1", Unit: "Ah", Standing: "own"})
}

func TestColdFactors(t *testing.T) {
	b := Battery{Chemistry: LeadAcid()}
	const straight = "we draw a straight line of 1.1 %/K through the table's curve"
	check.That(t, 1/b.ColdFactor(15.6), check.Published{Source: "ieee485", At: "table 1, sizing factor at 15.6 degC", Value: "1.11", Within: 0.02, Why: straight, Standing: "remembered"})
	check.That(t, 1/b.ColdFactor(10), check.Published{Source: "ieee485", At: "table 1, sizing factor at 10 degC", Value: "1.19", Within: 0.02, Why: straight, Standing: "remembered"})
	check.That(t, 1/b.ColdFactor(4.4), check.Published{Source: "ieee485", At: "table 1, sizing factor at 4.4 degC", Value: "1.30", Within: 0.02, Why: straight, Standing: "remembered"})
}

// figure6 is the history of the standard's example.
var figure6 = []float64{-2, 1, -3, 5, -1, 3, -4, 4, -2}

func TestRainflow(t *testing.T) {
	counts := map[float64]float64{}
	for _, c := range Rainflow(figure6) {
		counts[c.Range] = c.Count
	}
	if len(counts) != 5 {
		t.Errorf("ranges counted: %v, want five", counts)
	}
	check.That(t, counts[3], check.Published{Source: "astm-e1049", At: "5.4.4, fig. 6: cycles of range 3", Value: "0.5"})
	check.That(t, counts[4], check.Published{Source: "astm-e1049", At: "5.4.4, fig. 6: cycles of range 4", Value: "1.5"})
	check.That(t, counts[6], check.Published{Source: "astm-e1049", At: "5.4.4, fig. 6: cycles of range 6", Value: "0.5"})
	check.That(t, counts[8], check.Published{Source: "astm-e1049", At: "5.4.4, fig. 6: cycles of range 8", Value: "1.0"})
	check.That(t, counts[9], check.Published{Source: "astm-e1049", At: "5.4.4, fig. 6: cycles of range 9", Value: "0.5"})
}

func TestRainflowRepeating(t *testing.T) {
	counts := map[float64]float64{}
	for _, c := range RainflowRepeating(figure6) {
		counts[c.Range] = c.Count
	}
	if len(counts) != 4 {
		t.Errorf("ranges counted: %v, want four", counts)
	}
	check.That(t, counts[3], check.Published{Source: "astm-e1049", At: "5.4.5, fig. 7: cycles of range 3", Value: "1"})
	check.That(t, counts[4], check.Published{Source: "astm-e1049", At: "5.4.5, fig. 7: cycles of range 4", Value: "1"})
	check.That(t, counts[7], check.Published{Source: "astm-e1049", At: "5.4.5, fig. 7: cycles of range 7", Value: "1"})
	check.That(t, counts[9], check.Published{Source: "astm-e1049", At: "5.4.5, fig. 7: cycles of range 9", Value: "1"})
}

func TestRoomAir(t *testing.T) {
	const bank = "24 cells, 400 Ah"
	check.That(t, RoomAir(24, 400, Vented, Boost), check.Published{Source: "en62485-2", At: "7.2: " + bank + ", vented, boost", Value: "9.6", Unit: "m3/h", Standing: "own"})
	check.That(t, RoomAir(24, 400, Vented, Float), check.Published{Source: "en62485-2", At: "7.2: " + bank + ", vented, float", Value: "2.4", Unit: "m3/h", Standing: "own"})
	check.That(t, RoomAir(24, 400, Sealed, Float), check.Published{Source: "en62485-2", At: "7.2: " + bank + ", sealed, float", Value: "0.48", Unit: "m3/h", Standing: "own"})
	check.That(t, RoomAir(24, 400, Sealed, Boost), check.Published{Source: "en62485-2", At: "7.2: " + bank + ", sealed, boost", Value: "3.84", Unit: "m3/h", Standing: "own"})
	check.That(t, Opening(9.6), check.Published{Source: "en62485-2", At: "7.3: opening for 9.6 m3/h", Value: "269", Unit: "cm2", Standing: "own"})
	check.That(t, HydrogenPerAh(0), check.Published{Source: "faraday-law", At: "hydrogen of one cell and Ah at 0 degC", Value: "0.418", Unit: "L", Standing: "own"})
	check.That(t, HydrogenPerAh(25), check.Published{Source: "faraday-law", At: "hydrogen of one cell and Ah at 25 degC", Value: "0.456", Unit: "L", Standing: "own"})
	check.That(t, HydrogenPerAh(0), check.Published{Source: "en62485-2", At: "7.2: q, hydrogen of one cell and Ah", Value: "0.42", Unit: "L"})
}

func TestBankSize(t *testing.T) {
	const at = "2400 Wh a day, 24 V, 3 days, half drawn"
	check.That(t, float64(BankSize(2400, 3, 0.5, 1))/24, check.Published{Source: "off-grid-guide", At: at, Value: "600", Unit: "Ah", Standing: "own"})
	check.That(t, float64(BankSize(2400, 3, 0.5, 0.8))/24, check.Published{Source: "off-grid-guide", At: at + ", cold factor 0.8", Value: "750", Unit: "Ah", Standing: "own"})
}

func TestCable(t *testing.T) {
	const warm = "the table's largest resistance at 20 degC, taken to 70 degC with its own factor 0.833; the wiring standard's one figure for warm copper is rounded up"
	check.That(t, CableDrop(1, 500, 10, Copper), check.Published{Source: "iec60228", At: "class 2 plain copper, 10 mm2: 1.83 ohm/km at 20 degC, factor 0.833 at 70 degC", Value: "2.20", Unit: "V", Within: 0.06, Why: warm})
	check.That(t, CableDrop(1, 500, 35, Copper), check.Published{Source: "iec60228", At: "class 2 plain copper, 35 mm2: 0.524 ohm/km at 20 degC, factor 0.833 at 70 degC", Value: "0.629", Unit: "V", Within: 0.015, Why: warm})
}
