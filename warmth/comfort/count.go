package comfort

import "suffice/quantity"

// Count is the discomfort of a room over some time.
type Count struct {
	Hours                 float64          // looked at
	Cold, Hot             float64          // h below and above the band
	ColdDegree, HotDegree float64          // K h by which
	Coldest, Hottest      quantity.Kelvins // farthest below and above, 0 or more
	Beyond                float64          // h in which the running mean lay outside the standard's range
}

// Add counts a time at an operative temperature. Hours are those cold, hot and the rest.
func (c *Count) Add(b Band, operative quantity.Celsius, hours float64) {
	c.Hours += hours
	if b.Beyond != 0 {
		c.Beyond += hours
	}
	switch {
	case operative < b.Low:
		under := b.Low.Above(operative)
		c.Cold += hours
		c.ColdDegree += float64(under) * hours
		c.Coldest = max(c.Coldest, under)
	case operative > b.High:
		over := operative.Above(b.High)
		c.Hot += hours
		c.HotDegree += float64(over) * hours
		c.Hottest = max(c.Hottest, over)
	}
}

// Plus gives two counts together.
func (c Count) Plus(d Count) Count {
	return Count{
		Hours: c.Hours + d.Hours, Cold: c.Cold + d.Cold, Hot: c.Hot + d.Hot,
		ColdDegree: c.ColdDegree + d.ColdDegree, HotDegree: c.HotDegree + d.HotDegree,
		Coldest: max(c.Coldest, d.Coldest), Hottest: max(c.Hottest, d.Hottest), Beyond: c.Beyond + d.Beyond,
	}
}

// Outside gives the share of the time outside the band.
func (c Count) Outside() float64 {
	if c.Hours == 0 {
		return 0
	}
	return (c.Cold + c.Hot) / c.Hours
}

// Operative gives what a person feels between still air and the surfaces about him (en16798-1: the mean of
// both, at air slower than 0.2 m/s).
func Operative(air, radiant quantity.Celsius) quantity.Celsius { return (air + radiant) / 2 }
