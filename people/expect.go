package people

// Foresight says what people know of the day's sky when they decide.
type Foresight int

const (
	// Seen is what anybody can know: the light of the day so far, and yesterday's for the rest.
	Seen Foresight = iota
	// Yesterday is the day before alone, all day long.
	Yesterday
	// Forecast is a forecast of the day that is never wrong: an assumption that favours the rules.
	Forecast
)

// Expect gives, for every hour of whole days, the clearness index of that day as people
// expect it at the beginning of the hour. global is the light on the horizontal and top the
// light above the air, both W/m2, 24 a day. Where they cannot tell the value is not a number.
func Expect(global, top []float64, f Foresight) []float64 { return nil }
