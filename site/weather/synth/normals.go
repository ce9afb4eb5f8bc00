package synth

import (
	"errors"
	"fmt"

	"suffice/quantity"
	"suffice/site"
)

// Normals are what people know of a place without a record: monthly means, January
// first. What is not known is nil or 0, and Generator says what it takes instead.
type Normals struct {
	Place site.Place

	Rain      *[12]float64 // mm in the month
	WetDays   *[12]float64 // days in the month with WetDay or more
	WetDay    float64      // mm; 1 if 0 (the count of the WMO's normals)
	Deviation float64      // mm, standard deviation of the yearly rain; 0: not known

	Light     *[12]float64 // kWh/m2 in the day on the horizontal
	Clearness *[12]float64 // share of the light outside the air, 0 to 1
	Sunshine  *[12]float64 // h of bright sun in the day

	High     *[12]float64 // degC, mean of the daily highest temperatures; goes with Low
	Low      *[12]float64 // degC, mean of the daily lowest
	Mean     *[12]float64 // degC, mean temperature, where highest and lowest are not known
	Humidity *[12]float64 // percent, mean of the day
	Dew      *[12]float64 // degC, dew point
	Wind     *[12]float64 // m/s at 10 m
	Coast    bool         // takes the coefficient of coasts where light and range of temperature stand for each other (fao56 eq. 50)
}

func (n *Normals) wetDay() float64 {
	if n.WetDay > 0 {
		return n.WetDay
	}
	return 1
}

// A monthly is one row of normals: its name in files, its unit, and the bounds of what it
// can be.
type monthly struct {
	name, unit, says string
	low, high        float64
	at               func(*Normals) **[12]float64
}

// The bounds are those of weather's columns, or what the quantity itself allows.
var monthlies = []monthly{
	{"rain", "mm", "rain of the month", 0, 5000, func(n *Normals) **[12]float64 { return &n.Rain }},
	{"wet_days", "d", "days of the month with rain", 0, 31, func(n *Normals) **[12]float64 { return &n.WetDays }},
	{"light", "kWh/m2/d", "light on the horizontal", 0, 13, func(n *Normals) **[12]float64 { return &n.Light }},
	{"clearness", "", "share of the light outside the air that reaches the ground", 0.05, 0.8, func(n *Normals) **[12]float64 { return &n.Clearness }},
	{"sunshine", "h/d", "bright sunshine", 0, 24, func(n *Normals) **[12]float64 { return &n.Sunshine }},
	{"temperature_max", "degC", "mean of the highest of each day", -80, 60, func(n *Normals) **[12]float64 { return &n.High }},
	{"temperature_min", "degC", "mean of the lowest of each day", -90, 45, func(n *Normals) **[12]float64 { return &n.Low }},
	{"temperature", "degC", "mean temperature", -80, 50, func(n *Normals) **[12]float64 { return &n.Mean }},
	{"humidity", "%", "relative humidity", 1, 100, func(n *Normals) **[12]float64 { return &n.Humidity }},
	{"dew_point", "degC", "dew point", -90, 36, func(n *Normals) **[12]float64 { return &n.Dew }},
	{"wind", "m/s", "wind at 10 m", 0, 40, func(n *Normals) **[12]float64 { return &n.Wind }},
}

// Faults gives everything that cannot be true of normals, or nil.
func (n *Normals) Faults() error {
	faults := []error{n.Place.Faults()}
	add := func(format string, args ...any) { faults = append(faults, fmt.Errorf(format, args...)) }
	for _, k := range monthlies {
		v := *k.at(n)
		for m := 0; v != nil && m < 12; m++ {
			if !(v[m] >= k.low && v[m] <= k.high) {
				add("%s of month %d is %s: it lies between %s and %s", k.name, m+1, quantity.Text(v[m], k.unit), quantity.Text(k.low, k.unit), quantity.Text(k.high, k.unit))
			}
		}
	}
	if !(n.WetDay >= 0 && n.WetDay <= 10) {
		add("wet_day is %g mm: a wet day begins between 0 and 10 mm", n.WetDay)
	}
	if !(n.Deviation >= 0 && n.Deviation <= 5000) {
		add("yearly_rain_deviation is %g mm: it lies between 0 and 5000 mm", n.Deviation)
	}
	if (n.High == nil) != (n.Low == nil) {
		add("temperature_max and temperature_min go together: give both, or temperature alone")
	}
	n.faultsOfMonths(add)
	return errors.Join(faults...)
}

// faultsOfMonths looks for figures of a month that contradict each other.
func (n *Normals) faultsOfMonths(add func(string, ...any)) {
	outside, length := monthsOutside(n.Place)
	for m := range 12 {
		if n.High != nil && n.Low != nil && n.Low[m] > n.High[m] {
			add("month %d: the lowest temperature %.1f degC is above the highest %.1f", m+1, n.Low[m], n.High[m])
		}
		if n.Light != nil && n.Light[m] > 0.8*outside[m] {
			add("month %d: %.2f kWh/m2 a day of light are more than 80 %% of the %.2f outside the air: look at unit and latitude", m+1, n.Light[m], outside[m])
		}
		if n.Sunshine != nil && n.Sunshine[m] > length[m]+0.5 {
			add("month %d: %.1f h of sunshine are more than the day's %.1f h", m+1, n.Sunshine[m], length[m])
		}
		if n.Rain != nil && n.WetDays != nil {
			switch days, rain := n.WetDays[m], n.Rain[m]; {
			case days > 0.97*meanDays[m]:
				add("month %d: %.1f wet days leave no dry one: the chain takes up to 97 %% of the month's %.4g", m+1, days, meanDays[m])
			case days == 0 && rain > 0:
				add("month %d: %.4g mm of rain have no wet day to fall on", m+1, rain)
			case rain > days*1825: // mm in 24 h, Foc-Foc 1966 (wmo-extremes)
				add("month %d: %.4g mm of rain on %.3g wet days are more than the 1825 mm a day that have ever been measured", m+1, rain, days)
			case rain <= days*n.wetDay() && days > 0:
				add("month %d: %.4g mm on %.4g wet days of more than %.3g mm each is not possible", m+1, rain, days, n.wetDay())
			}
		}
	}
}
