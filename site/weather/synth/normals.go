package synth

import "suffice/site"

// Normals are what people know of a place without a record: monthly means, January
// first. What is not known is nil or NaN, and Generator says what it takes instead.
type Normals struct {
	Place site.Place

	Rain      *[12]float64 // mm in the month
	WetDays   *[12]float64 // days in the month with WetDay or more
	WetDay    float64      // mm; 1 if 0 (the WMO's count of wet days)
	Deviation float64      // mm, standard deviation of the yearly rain; 0: not known

	Light     *[12]float64 // kWh/m2 in the day on the horizontal
	Clearness *[12]float64 // share of the light outside the air, 0 to 1
	Sunshine  *[12]float64 // h of bright sun in the day

	High     *[12]float64 // degC, mean of the daily highest temperatures
	Low      *[12]float64 // degC, mean of the daily lowest
	Mean     *[12]float64 // degC, mean temperature, where highest and lowest are not known
	Humidity *[12]float64 // percent, mean of the day
	Dew      *[12]float64 // degC, dew point
	Wind     *[12]float64 // m/s at 10 m
	Coast    bool         // takes the coefficient of coasts where light comes from temperature (fao56 eq. 50)
}

// Generator makes a generator of normals: it reports what contradicts itself, all at
// once, and its notes say what was assumed.
func (n *Normals) Generator() (*Generator, error) { return n.generator() }
