package files

import (
	"slices"

	"suffice/site/weather"
)

// A powerColumn is a parameter of NASA POWER that is read. The unit is that of files
// that do not say; where units have varied between versions of the service it is empty.
type powerColumn struct {
	name   string
	column weather.Column
	unit   string
}

// powerColumns follows the service's list of parameters. Where two names mean one
// column the first is preferred.
var powerColumns = []powerColumn{
	{"ALLSKY_SFC_SW_DWN", weather.Global, ""},
	{"ALLSKY_SFC_SW_DNI", weather.Beam, ""},
	{"ALLSKY_SFC_SW_DIFF", weather.Diffuse, ""},
	{"CLRSKY_SFC_SW_DWN", weather.ClearSky, ""},
	{"T2M", weather.Temperature, "C"},
	{"T2M_MIN", weather.TemperatureMin, "C"},
	{"T2M_MAX", weather.TemperatureMax, "C"},
	{"T2MDEW", weather.DewPoint, "C"},
	{"T2MWET", weather.WetBulb, "C"},
	{"RH2M", weather.Humidity, "%"},
	{"WS10M", weather.Wind, "m/s"},
	{"WS2M", weather.Wind2m, "m/s"},
	{"WD10M", weather.WindDirection, "degrees"},
	{"WD2M", weather.WindDirection, "degrees"},
	{"PS", weather.Pressure, "kPa"},
	{"CLOUD_AMT", weather.Cloud, "%"},
	{"PRECTOTCORR", weather.Rain, ""},
	{"PRECTOT", weather.Rain, ""}, // older name, before correction by gauges
}

// powerNamed gives the parameter of a name, unless the table also has a name that is
// preferred for the same column.
func powerNamed(name string, head []string) (powerColumn, bool) {
	for i, p := range powerColumns {
		if p.name != name {
			continue
		}
		better := slices.ContainsFunc(powerColumns[:i], func(q powerColumn) bool {
			return q.column == p.column && slices.Contains(head, q.name)
		})
		return p, !better
	}
	return powerColumn{}, false
}

const (
	// powerThanks is what the project asks to be said.
	powerThanks = "these data were obtained from the NASA Langley Research Center (LaRC) POWER Project funded through the NASA Earth Science/Applied Science Program"
	powerRain   = "rain is of a reanalysis (MERRA-2), no gauge: it may drift and jump between years; take rain from a gauge where there is one"
)
