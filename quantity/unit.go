package quantity

import (
	"fmt"
	"math"
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// dimension counts the powers of the base kinds a unit is made of.
type dimension [baseKinds]int8

const (
	length = iota
	mass
	time
	current
	warmth // a difference of temperature
	point  // a point on a temperature scale; never part of a compound
	amount
	angle
	person
	money
	charges // equivalents of ions, for water analyses
	baseKinds
)

// A Unit is what a number is counted in. The zero Unit is a plain number.
type Unit struct {
	text   string
	factor float64 // how many of the base unit (m, kg, s, A, K, mol, rad ...) one of these is
	dim    dimension
}

// String gives the unit as it was written.
func (u Unit) String() string { return u.text }

// Same reports whether two units count the same kind of thing.
func (u Unit) Same(v Unit) bool { return u.dim == v.dim && (u.dim[money] == 0 || u.text == v.text) }

var (
	volume   = dimension{length: 3}
	force    = dimension{length: 1, mass: 1, time: -2}
	pressure = dimension{length: -1, mass: 1, time: -2}
	energy   = dimension{length: 2, mass: 1, time: -2}
	power    = dimension{length: 2, mass: 1, time: -3}
	voltage  = dimension{length: 2, mass: 1, time: -3, current: -1}
)

// units lists the symbols. Factors are exact by definition (BIPM SI Brochure 9th ed.,
// tables 2, 4, 8; the calorie, gallons and inches by international agreement).
// "m" is the metre and never a minute or a month; "C" and "F" are refused.
var units = map[string]Unit{
	"m": {factor: 1, dim: dimension{length: 1}}, "km": {factor: 1e3, dim: dimension{length: 1}},
	"cm": {factor: 1e-2, dim: dimension{length: 1}}, "mm": {factor: 1e-3, dim: dimension{length: 1}},
	"um": {factor: 1e-6, dim: dimension{length: 1}}, "inch": {factor: 0.0254, dim: dimension{length: 1}},
	"foot": {factor: 0.3048, dim: dimension{length: 1}}, "feet": {factor: 0.3048, dim: dimension{length: 1}},
	"m2": {factor: 1, dim: dimension{length: 2}}, "cm2": {factor: 1e-4, dim: dimension{length: 2}},
	"mm2": {factor: 1e-6, dim: dimension{length: 2}}, "ha": {factor: 1e4, dim: dimension{length: 2}},
	"m3": {factor: 1, dim: volume}, "L": {factor: 1e-3, dim: volume}, "l": {factor: 1e-3, dim: volume},
	"kL": {factor: 1, dim: volume}, "mL": {factor: 1e-6, dim: volume}, "ml": {factor: 1e-6, dim: volume},
	"US-gallon": {factor: 3.785411784e-3, dim: volume}, "imperial-gallon": {factor: 4.54609e-3, dim: volume},
	"kg": {factor: 1, dim: dimension{mass: 1}}, "g": {factor: 1e-3, dim: dimension{mass: 1}},
	"mg": {factor: 1e-6, dim: dimension{mass: 1}}, "t": {factor: 1e3, dim: dimension{mass: 1}},
	"s": {factor: 1, dim: dimension{time: 1}}, "min": {factor: 60, dim: dimension{time: 1}},
	"h": {factor: 3600, dim: dimension{time: 1}}, "hour": {factor: 3600, dim: dimension{time: 1}},
	"hours": {factor: 3600, dim: dimension{time: 1}}, "d": {factor: 86400, dim: dimension{time: 1}},
	"day": {factor: 86400, dim: dimension{time: 1}}, "days": {factor: 86400, dim: dimension{time: 1}},
	"week": {factor: 7 * 86400, dim: dimension{time: 1}}, "weeks": {factor: 7 * 86400, dim: dimension{time: 1}},
	"year": {factor: 365.25 * 86400, dim: dimension{time: 1}}, "years": {factor: 365.25 * 86400, dim: dimension{time: 1}},
	"A": {factor: 1, dim: dimension{current: 1}}, "mA": {factor: 1e-3, dim: dimension{current: 1}},
	"Ah": {factor: 3600, dim: dimension{current: 1, time: 1}},
	"K":  {factor: 1, dim: dimension{warmth: 1}}, "K2": {factor: 1, dim: dimension{warmth: 2}}, "degC": {factor: 1, dim: dimension{point: 1}},
	"mol": {factor: 1, dim: dimension{amount: 1}}, "umol": {factor: 1e-6, dim: dimension{amount: 1}},
	"meq": {factor: 1e-3, dim: dimension{charges: 1}},
	"deg": {factor: math.Pi / 180, dim: dimension{angle: 1}}, "rad": {factor: 1, dim: dimension{angle: 1}},
	"person": {factor: 1, dim: dimension{person: 1}}, "people": {factor: 1, dim: dimension{person: 1}},
	"N": {factor: 1, dim: force}, "kN": {factor: 1e3, dim: force},
	"Pa": {factor: 1, dim: pressure}, "hPa": {factor: 100, dim: pressure}, "kPa": {factor: 1e3, dim: pressure},
	"mbar": {factor: 100, dim: pressure}, "bar": {factor: 1e5, dim: pressure},
	"mJ": {factor: 1e-3, dim: energy}, "J": {factor: 1, dim: energy}, "kJ": {factor: 1e3, dim: energy}, "MJ": {factor: 1e6, dim: energy},
	"GJ": {factor: 1e9, dim: energy}, "Wh": {factor: 3600, dim: energy}, "kWh": {factor: 3.6e6, dim: energy},
	"W": {factor: 1, dim: power}, "mW": {factor: 1e-3, dim: power}, "kW": {factor: 1e3, dim: power}, "V": {factor: 1, dim: voltage},
	"ohm": {factor: 1, dim: dimension{length: 2, mass: 1, time: -3, current: -2}},
	"dS":  {factor: 0.1, dim: dimension{length: -2, mass: -1, time: 3, current: 2}},
	"%":   {factor: 0.01}, "fraction": {factor: 1}, "log10": {factor: 1}, "each": {factor: 1},
}

// misread gives the remedy for symbols that mean two things.
var misread = map[string]string{
	"C": "write degC for a temperature, K for a difference", "F": "write degC",
	"kw": "write kW", "KW": "write kW", "kwh": "write kWh", "KWh": "write kWh", "kl": "write kL", "KL": "write kL",
	"gal": "write US-gallon or imperial-gallon", "gallon": "write US-gallon or imperial-gallon",
	"month": "months differ in length: write days", "months": "months differ in length: write days",
	"w": "write W", "wh": "write Wh", "ltr": "write L", "sqm": "write m2", "Kg": "write kg",
	"hr": "write h", "hrs": "write h", "kVA": "write kW", "VA": "write W", "M": "write m", "in": "write inch",
}

// ParseUnit reads a unit such as "kL", "W/m2K", "L/person/d" or "%/K".
// Each slash divides by the whole group after it. In a compound, degC counts as K.
func ParseUnit(text string) (Unit, error) {
	u := Unit{text: text, factor: 1}
	clean := strings.NewReplacer("²", "2", "³", "3", "°C", "degC", "°", "deg", "µ", "u", "μ", "u", "·", ".", "Ω", "ohm", "^", "").Replace(strings.TrimSpace(text))
	if clean == "" || clean == "1" {
		return u, nil
	}
	for i, group := range strings.Split(clean, "/") {
		sign := int8(1)
		if i > 0 {
			sign = -1
		}
		if group == "" && i == 0 {
			continue // "/d" is one per day
		}
		if err := u.multiply(group, sign); err != nil {
			return Unit{}, err
		}
	}
	if u.dim[point] != 0 && u.dim != (dimension{point: 1}) {
		u.dim[warmth] += u.dim[point]
		u.dim[point] = 0
	}
	return u, nil
}

// multiply takes a group of symbols without a slash into u.
func (u *Unit) multiply(group string, sign int8) error {
	for _, symbols := range strings.FieldsFunc(group, func(r rune) bool { return r == '.' || unicode.IsSpace(r) }) {
		for symbols != "" {
			v, rest, err := longest(symbols)
			if err != nil {
				return err
			}
			u.factor *= math.Pow(v.factor, float64(sign))
			for k := range u.dim {
				u.dim[k] += sign * v.dim[k]
			}
			symbols = rest
		}
	}
	return nil
}

// longest takes the longest known symbol off the front, so that "m2K" is m2 times K.
func longest(text string) (Unit, string, error) {
	if remedy, ok := misread[text]; ok {
		return Unit{}, "", fmt.Errorf("unit %q can be misread: %s", text, remedy)
	}
	for n := len(text); n > 0; n-- {
		if u, ok := units[text[:n]]; ok {
			return u, text[n:], nil
		}
	}
	if len(text) == 3 && strings.ToUpper(text) == text && !strings.ContainsFunc(text, func(r rune) bool { return r < 'A' || r > 'Z' }) {
		return Unit{text: text, factor: 1, dim: dimension{money: 1}}, "", nil // a currency by its ISO 4217 code
	}
	return Unit{}, "", fmt.Errorf("unit %q is not known: write for example L, kL, m2, mm, kWh, W, degC, K, h, d, %%", text)
}

// A Quantity is a number in a unit, as a person wrote it.
type Quantity struct {
	Value float64
	Unit  Unit
}

// Parse reads a number and its unit, "40 kL" or "40kL". Any space may stand between
// them. A decimal comma is refused, since a comma separates lists.
func Parse(text string) (Quantity, error) {
	if len(text) > 80 {
		return Quantity{}, fmt.Errorf("a quantity of %d characters is too long: the most is 80", len(text))
	}
	if !utf8.ValidString(text) {
		return Quantity{}, fmt.Errorf("%q is not text", text)
	}
	clean := strings.TrimSpace(strings.Map(func(r rune) rune {
		if unicode.IsSpace(r) {
			return ' '
		}
		if r == '−' {
			return '-'
		}
		return r
	}, text))
	n := numberLength(clean)
	if n == 0 {
		return Quantity{}, fmt.Errorf("%q does not begin with a number: write for example 40 kL", text)
	}
	if n < len(clean) && clean[n] == ',' {
		return Quantity{}, fmt.Errorf("%q has a comma: write a decimal point, and no mark between thousands", text)
	}
	v, err := strconv.ParseFloat(clean[:n], 64)
	if err != nil || math.IsInf(v, 0) || math.IsNaN(v) {
		return Quantity{}, fmt.Errorf("%q is not a number", clean[:n])
	}
	u, err := ParseUnit(clean[n:])
	if err != nil {
		return Quantity{}, fmt.Errorf("%q: %w", text, err)
	}
	return Quantity{Value: v, Unit: Unit{text: strings.TrimSpace(clean[n:]), factor: u.factor, dim: u.dim}}, nil
}

// numberLength gives how many bytes at the front are a decimal number.
func numberLength(s string) int {
	i, digits := 0, 0
	if i < len(s) && (s[i] == '+' || s[i] == '-') {
		i++
	}
	for ; i < len(s) && (s[i] >= '0' && s[i] <= '9' || s[i] == '.'); i++ {
		if s[i] != '.' {
			digits++
		}
	}
	if digits == 0 {
		return 0
	}
	if i+1 < len(s) && (s[i] == 'e' || s[i] == 'E') {
		j := i + 1
		if s[j] == '+' || s[j] == '-' {
			j++
		}
		k := j
		for k < len(s) && s[k] >= '0' && s[k] <= '9' {
			k++
		}
		if k > j {
			i = k
		}
	}
	return i
}

// In gives the number in another unit of the same kind.
func (q Quantity) In(unit string) (float64, error) {
	u, err := ParseUnit(unit)
	if err != nil {
		return 0, err
	}
	if q.Unit.dim != u.dim {
		if q.Unit.dim == (dimension{}) && q.Unit.text == "" {
			return 0, fmt.Errorf("%g has no unit: write it in %s, for example %q", q.Value, unit, Text(q.Value, unit))
		}
		return 0, fmt.Errorf("%g %s is not a quantity in %s", q.Value, q.Unit, orNone(unit))
	}
	if q.Unit.factor == u.factor {
		return q.Value, nil
	}
	if q.Unit.factor < u.factor {
		return q.Value / (u.factor / q.Unit.factor), nil // 94 % is 0.94 and not its neighbour
	}
	return q.Value * (q.Unit.factor / u.factor), nil
}

func orNone(unit string) string {
	if unit == "" {
		return "plain numbers"
	}
	return unit
}

// ReadIn reads a quantity and gives its number in the unit wanted. Where a plain
// number or a share is wanted, "0.8" and "80 %" both serve; elsewhere a number
// without its unit is refused.
func ReadIn(text, unit string) (float64, error) {
	q, err := Parse(text)
	if err != nil {
		return 0, err
	}
	return q.In(unit)
}

// Text prints a number with its unit, in as few digits as give it back exactly.
func Text(value float64, unit string) string {
	number := strconv.FormatFloat(value, 'g', -1, 64)
	if e := math.Abs(value); e == 0 || e >= 1e-4 && e < 1e9 {
		number = strconv.FormatFloat(value, 'f', -1, 64)
	}
	if unit == "" || unit == "fraction" {
		return number
	}
	return number + " " + unit
}
