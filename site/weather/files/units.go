package files

import (
	"strings"

	"suffice/site/weather"
)

// A scale turns a file's number into the unit of a record: value*factor + offset.
type scale struct{ factor, offset float64 }

// lightHourly and the tables below list spellings with spaces, carets and case taken
// off. Factors are exact: 1 kWh is 3.6 MJ, 1 MJ in an hour is 1e6/3600 W.
var (
	lightHourly = map[string]scale{
		"wh/m2": {1, 0}, "w/m2": {1, 0}, "wm-2": {1, 0}, "wh/m2/h": {1, 0}, "w-hr/m2": {1, 0},
		"kwh/m2": {1000, 0}, "kw-hr/m2": {1000, 0}, "kw-hr/m2/hr": {1000, 0}, "kwh/m2/h": {1000, 0},
		"mj/hr": {1e6 / 3600, 0}, "mj/m2/hr": {1e6 / 3600, 0}, "mj/m2/hour": {1e6 / 3600, 0}, "mj/m2/h": {1e6 / 3600, 0}, "mj/m2": {1e6 / 3600, 0},
	}
	lightDaily = map[string]scale{
		"kw-hr/m2/day": {1, 0}, "kwh/m2/day": {1, 0}, "kwh/m2/d": {1, 0}, "kwh/m2": {1, 0},
		"mj/m2/day": {1 / 3.6, 0}, "mj/m2/d": {1 / 3.6, 0}, "mj/m2": {1 / 3.6, 0}, "wh/m2/day": {0.001, 0}, "wh/m2/d": {0.001, 0},
		"wm-2": {0.024, 0}, "w/m2": {0.024, 0}, // mean power over 24 hours
	}
	rainHourly = map[string]scale{
		"mm/day": {1.0 / 24, 0}, "mm/d": {1.0 / 24, 0}, // a rate: what a whole day at it would bring
		"mm/hour": {1, 0}, "mm/hr": {1, 0}, "mm/h": {1, 0}, "mm": {1, 0},
	}
	rainDaily = map[string]scale{
		"mm/day": {1, 0}, "mm/d": {1, 0}, "mm": {1, 0},
		"mm/hour": {24, 0}, "mm/hr": {24, 0}, "mm/h": {24, 0},
	}
	warmth    = map[string]scale{"c": {1, 0}, "degc": {1, 0}, "°c": {1, 0}, "celsius": {1, 0}, "k": {1, -273.15}, "kelvin": {1, -273.15}}
	percent   = map[string]scale{"%": {1, 0}, "fraction": {100, 0}}
	speed     = map[string]scale{"m/s": {1, 0}, "ms-1": {1, 0}, "km/h": {1 / 3.6, 0}}
	direction = map[string]scale{"degrees": {1, 0}, "deg": {1, 0}, "°": {1, 0}}
	pressure  = map[string]scale{"kpa": {1, 0}, "hpa": {0.1, 0}, "mbar": {0.1, 0}, "pa": {0.001, 0}}
)

// scalesOf gives the units that a column may come in.
func scalesOf(c weather.Column, step weather.Step) map[string]scale {
	switch c {
	case weather.Global, weather.Beam, weather.Diffuse, weather.ClearSky:
		if step == weather.Daily {
			return lightDaily
		}
		return lightHourly
	case weather.Rain:
		if step == weather.Daily {
			return rainDaily
		}
		return rainHourly
	case weather.Humidity, weather.Cloud:
		return percent
	case weather.Wind, weather.Wind2m:
		return speed
	case weather.WindDirection:
		return direction
	case weather.Pressure:
		return pressure
	default:
		return warmth
	}
}

// scaleOf gives how to read a column in a unit, and false for a unit not known for it.
func scaleOf(c weather.Column, step weather.Step, unit string) (scale, bool) {
	plain := strings.NewReplacer(" ", "", "^", "", "²", "2").Replace(strings.ToLower(strings.TrimSpace(unit)))
	s, ok := scalesOf(c, step)[plain]
	return s, ok
}

// unitHint gives two spellings that serve, for an error.
func unitHint(c weather.Column, step weather.Step) string {
	switch {
	case c == weather.Rain && step == weather.Hourly:
		return "mm/h or mm/day"
	case c == weather.Rain:
		return "mm/day"
	case c <= weather.ClearSky && step == weather.Hourly:
		return "W/m2, Wh/m2 or MJ/m2/h"
	case c <= weather.ClearSky:
		return "kWh/m2/day, MJ/m2/day or W/m2"
	}
	return c.Unit(step)
}
