package people

import "math"

// Foresight says what people know of the day's sky when they decide.
type Foresight int

const (
	// Seen is what anybody can know: the light of the day so far, and for the light still to
	// come that the day goes on as clear as yesterday (persistence; an assumption).
	Seen Foresight = iota
	// Yesterday is the day before alone, all day long.
	Yesterday
	// Forecast is a forecast of the day that is never wrong: an assumption that favours the rules.
	Forecast
)

// Expect gives, for every hour of whole days, the clearness index of that day (light on
// the ground over light above the air) as people expect it at the beginning of the hour.
// global is the light on the horizontal and top the light above the air on the horizontal,
// both W/m2, 24 a day. Where they cannot tell (the first day before light, a day without
// sun) the value is not a number.
func Expect(global, top []float64, f Foresight) []float64 {
	expected := make([]float64, len(global))
	yesterday := math.NaN()
	for first := 0; first+24 <= len(global); first += 24 {
		light, above := global[first:first+24], top[first:first+24]
		allLight, allAbove := sum(light), sum(above)
		var seen, passed float64
		for h := range 24 {
			switch f {
			case Forecast:
				expected[first+h] = allLight / allAbove
			case Yesterday:
				expected[first+h] = yesterday
			default:
				expected[first+h] = soFar(seen, passed, allAbove, yesterday)
			}
			seen += light[h]
			passed += above[h]
		}
		if allAbove > 0 {
			yesterday = allLight / allAbove
		}
	}
	return expected
}

// soFar weighs what was seen by the light above the air that has passed, and yesterday by
// the rest, which astronomy tells in advance.
func soFar(seen, passed, all, yesterday float64) float64 {
	if math.IsNaN(yesterday) {
		return seen / passed
	}
	return (seen + (all-passed)*yesterday) / all
}

func sum(v []float64) float64 {
	var s float64
	for _, x := range v {
		s += x
	}
	return s
}
