package crop

// Temperatures are what a plant wants of the air, degC.
type Temperatures struct {
	Base     Figure // below it nothing grows: for degree-days
	Upper    Figure // above it more warmth gives no more
	Least    float64
	BestLow  float64
	BestHigh float64
	Most     float64
	Tender   bool // killed by frost
	From          // of Least to Most
}

// A Method says how degree-days meet the base temperature (mcmaster-1997).
type Method int8

// The methods: which one is meant must be said, since a night below the base tells them apart.
const (
	Average Method = iota // the mean first, then held to base and upper
	Cut                   // highest and lowest are held to base and upper, then the mean
)

// DegreeDays gives the warmth of a day above base, K d, never below 0.
func DegreeDays(m Method, day Swing, base, upper float64) float64 {
	hold := func(t float64) float64 { return min(upper, max(base, t)) }
	if m == Cut {
		return (hold(day.Warmest)+hold(day.Coolest))/2 - base
	}
	return hold((day.Warmest+day.Coolest)/2) - base
}

// A Swing is a day's air, degC.
type Swing struct{ Warmest, Coolest float64 }

// DegreeDays gives a day's warmth for a crop, by the second method, as cold nights are common in beds.
func (c *Crop) DegreeDays(day Swing) float64 {
	return DegreeDays(Cut, day, c.Air.Base.Value, c.Air.Upper.Value)
}

// Season gives the degree-days of a whole season, K d: the days of the stages at the middle of the best
// temperatures. Worked out here; for the two crops whose sum a source prints (fao56-2025) it is 3 and 15 % below.
func (c *Crop) Season() float64 {
	return c.Stages.Season() * ((c.Air.BestLow+c.Air.BestHigh)/2 - c.Air.Base.Value)
}
