package weather

import "fmt"

// A Column is a kind of thing that a record tells. The list is closed: what a file
// holds beside it is named in Record.Notes and left unread.
type Column uint8

const (
	Global         Column = iota // light on the horizontal
	Beam                         // light on a plane facing the sun
	Diffuse                      // light of the sky on the horizontal
	ClearSky                     // global light had there been no cloud
	Temperature                  // of the air at 2 m, mean of the step
	TemperatureMin               // lowest of the day
	TemperatureMax               // highest of the day
	DewPoint                     // at 2 m
	WetBulb                      // at 2 m
	Humidity                     // relative, at 2 m
	Wind                         // speed at 10 m
	Wind2m                       // speed at 2 m
	WindDirection                // from where, from north by east
	Pressure                     // of the air at the station
	Cloud                        // share of the sky covered
	Rain                         // depth in the step, snow as water
	Soil5                        // temperature of the ground 5 cm down
	Soil10                       // 10 cm down
	Soil20                       // 20 cm down
	Soil50                       // 50 cm down
	Soil100                      // 1 m down
	Columns                      // how many there are; not a column
)

// A Step is the time that one row of a record covers.
type Step uint8

const (
	Hourly Step = iota
	Daily
)

// String gives "hourly" or "daily".
func (s Step) String() string { return [...]string{"hourly", "daily"}[s] }

// perDay gives how many steps a day has.
func (s Step) perDay() int { return [...]int{24, 1}[s] }

// traits says of each column its name in our own files and in JSON, its units, and
// the bounds no true value passes.
var traits = [Columns]struct {
	name          string
	hourly, daily string
	low, high     float64 // in the hourly unit; for light and rain see highest
}{
	Global:   {"global", "W/m2", "kWh/m2/d", 0, 1500}, // 1.1 of what falls outside the air: cloud edges lift an hour that far, not more
	Beam:     {"beam", "W/m2", "kWh/m2/d", 0, 1420},   // outside the air in January, 1367 * 1.034
	Diffuse:  {"diffuse", "W/m2", "kWh/m2/d", 0, 1000},
	ClearSky: {"clear_global", "W/m2", "kWh/m2/d", 0, 1420},
	// The coldest and hottest air measured: -89.2 (Vostok 1983) and 56.7 degC (Death Valley 1913), wmo-extremes.
	Temperature:    {"temperature", "degC", "degC", -90, 60},
	TemperatureMin: {"temperature_min", "degC", "degC", -90, 60},
	TemperatureMax: {"temperature_max", "degC", "degC", -90, 60},
	DewPoint:       {"dew_point", "degC", "degC", -100, 36}, // above 35 has been read once (Dhahran 2003), from memory
	WetBulb:        {"wet_bulb", "degC", "degC", -90, 40},
	Humidity:       {"humidity", "%", "%", 0, 105}, // instruments read a little over 100 in fog
	Wind:           {"wind", "m/s", "m/s", 0, 90},
	Wind2m:         {"wind_2m", "m/s", "m/s", 0, 90},
	WindDirection:  {"wind_direction", "deg", "deg", 0, 360},
	Pressure:       {"pressure", "kPa", "kPa", 45, 110},
	Cloud:          {"cloud", "%", "%", 0, 100},
	// The greatest falls measured: 305 mm in an hour (Holt 1947), 1825 mm in 24 h (Foc-Foc 1966), wmo-extremes;
	// 401 mm in an hour is claimed (Shangdi 1975).
	Rain: {"rain", "mm/h", "mm/d", 0, 401},
	// Bare desert has been read near 90 degC at its skin (from memory); 5 cm down it is damped.
	Soil5:   {"soil_temperature_5", "degC", "degC", -50, 80},
	Soil10:  {"soil_temperature_10", "degC", "degC", -50, 70},
	Soil20:  {"soil_temperature_20", "degC", "degC", -50, 60},
	Soil50:  {"soil_temperature_50", "degC", "degC", -40, 60},
	Soil100: {"soil_temperature_100", "degC", "degC", -40, 50},
}

// String gives the column's name in files and JSON.
func (c Column) String() string {
	if c >= Columns {
		return fmt.Sprintf("column %d", uint8(c))
	}
	return traits[c].name
}

// Unit gives the unit in which a record keeps the column: light as W/m2 (mean of the
// hour) or kWh/m2 in the day, rain as mm in the hour or the day.
func (c Column) Unit(s Step) string {
	if s == Daily {
		return traits[c].daily
	}
	return traits[c].hourly
}

// ColumnNamed gives the column of a name as String writes it.
func ColumnNamed(name string) (Column, bool) {
	for c := range Columns {
		if traits[c].name == name {
			return c, true
		}
	}
	return 0, false
}

// light reports whether the column is light.
func (c Column) light() bool { return c <= ClearSky }
