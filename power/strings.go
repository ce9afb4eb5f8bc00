package power

import (
	"errors"
	"fmt"
	"math"

	"suffice/quantity"
)

// A String is how panels of an array are wired. Zero fields are not checked.
type String struct {
	OpenVoltage  float64 // V of one panel in open circuit at standard conditions
	Coefficient  float64 // change of that voltage per kelvin, 1/K, negative; 0: the code's table is used
	ShortCurrent float64 // A of one panel in short circuit at standard conditions
	Series       int     // panels in one string
	Parallel     int     // strings side by side
}

// coldTable is the multiplier of open-circuit voltage for crystalline silicon down to a
// temperature in degC [nec, table 690.7(A), remembered].
var coldTable = [...]struct {
	DownTo quantity.Celsius
	Factor float64
}{
	{25, 1.00}, {20, 1.02}, {15, 1.04}, {10, 1.06}, {5, 1.08}, {0, 1.10}, {-5, 1.12}, {-10, 1.14},
	{-15, 1.16}, {-20, 1.18}, {-25, 1.20}, {-30, 1.21}, {-35, 1.23}, {-40, 1.25},
}

// coldFactor gives the code's multiplier, and false below the table's end.
func coldFactor(coldest quantity.Celsius) (float64, bool) {
	for _, row := range coldTable {
		if coldest >= row.DownTo {
			return row.Factor, true
		}
	}
	return 0, false
}

// ColdVoltage gives the open-circuit voltage of one panel, V, at the coldest air: at dawn
// no sun has warmed the cells. With no coefficient the code's table serves, which ends at -40 degC: false below.
func (s String) ColdVoltage(coldest quantity.Celsius) (float64, bool) {
	if s.Coefficient == 0 {
		factor, ok := coldFactor(coldest)
		return s.OpenVoltage * factor, ok
	}
	return s.OpenVoltage * (1 + s.Coefficient*float64(coldest-25)), true // [iec62548]
}

// MostInSeries gives how many panels of that voltage a limit, V, allows.
func MostInSeries(voltage, limit float64) int { return int(math.Floor(limit / voltage)) }

// DesignCurrent gives the current, A, that cables and fuses of one string are chosen for:
// 1.25 for light above standard, and 1.25 again for lasting current [nec, 690.8].
func (s String) DesignCurrent() float64 { return 1.25 * 1.25 * s.ShortCurrent }

// Check gives the faults of the string for a place's coldest air and a controller's limit, V.
// A limit of zero is not checked.
func (s String) Check(name string, coldest quantity.Celsius, limit float64) error {
	if s.OpenVoltage == 0 || limit == 0 {
		return nil
	}
	var faults []error
	if s.Series < 1 {
		faults = append(faults, fmt.Errorf("array %s: %d panels in series: at least 1 is needed", name, s.Series))
	}
	one, ok := s.ColdVoltage(coldest)
	switch {
	case !ok:
		faults = append(faults, fmt.Errorf("array %s: %g degC is colder than the code's table of voltages, which ends at -40 degC: give the panel's voltage coefficient", name, float64(coldest)))
	case one*float64(s.Series) > limit:
		faults = append(faults, fmt.Errorf("array %s: %d panels in series make %.1f V in open circuit at %g degC, more than the controller's limit of %g V: wire at most %d in series",
			name, s.Series, one*float64(s.Series), float64(coldest), limit, MostInSeries(one, limit)))
	}
	return errors.Join(faults...)
}
