package power

import "slices"

// A Cycle is a swing of a history that closes, or half of one.
type Cycle struct {
	Range float64 // of the swing, in the history's unit
	Count float64 // 1, or 0.5 for a half cycle; more where equal ranges were put together
}

// turns gives the history's ends and reversals: plateaus and steps on the way are left out.
func turns(history []float64) []float64 {
	var out []float64
	for _, v := range history {
		n := len(out)
		switch {
		case n > 0 && v == out[n-1]:
		case n > 1 && (out[n-1] > out[n-2]) == (v > out[n-1]):
			out[n-1] = v
		default:
			out = append(out, v)
		}
	}
	return out
}

// Rainflow counts the cycles of a history as it stands [astm-e1049, 5.4.4]: swings that
// close count one, what is left over counts half. Equal ranges are put together, smallest first.
func Rainflow(history []float64) []Cycle { return count(history, 0.5) }

// RainflowRepeating counts the cycles of a history that repeats itself without end
// [astm-e1049, 5.4.5]: it is begun at its largest value, and every swing closes.
func RainflowRepeating(history []float64) []Cycle {
	if len(history) == 0 {
		return nil
	}
	top := slices.Index(history, slices.Max(history))
	return count(slices.Concat(history[top:], history[:top], history[top:top+1]), 1)
}

// count counts swings as they close. One that holds the history's first point counts as
// first says: half where nothing comes before it.
func count(history []float64, first float64) []Cycle {
	var counted []Cycle
	var open []float64
	for _, v := range turns(history) {
		open = append(open, v)
		for n := len(open); n >= 3; n = len(open) {
			x, y := swing(open[n-2], open[n-1]), swing(open[n-3], open[n-2])
			if x < y {
				break
			}
			if n == 3 && first < 1 {
				counted = append(counted, Cycle{y, first})
				open = slices.Delete(open, 0, 1)
				continue
			}
			counted = append(counted, Cycle{y, 1})
			open = slices.Delete(open, n-3, n-1)
		}
	}
	for i := 1; i < len(open); i++ {
		counted = append(counted, Cycle{swing(open[i-1], open[i]), 0.5})
	}
	return gather(counted)
}

func swing(a, b float64) float64 {
	if a > b {
		return a - b
	}
	return b - a
}

// gather puts equal ranges together and sorts them, smallest first.
func gather(cycles []Cycle) []Cycle {
	slices.SortFunc(cycles, func(a, b Cycle) int {
		switch {
		case a.Range < b.Range:
			return -1
		case a.Range > b.Range:
			return 1
		}
		return 0
	})
	var out []Cycle
	for _, c := range cycles {
		if n := len(out); n > 0 && out[n-1].Range == c.Range {
			out[n-1].Count += c.Count
			continue
		}
		out = append(out, c)
	}
	return out
}

// FullCycles gives how many swings of the whole range do as much throughput as the cycles.
func FullCycles(cycles []Cycle, whole float64) float64 {
	sum := 0.0
	for _, c := range cycles {
		sum += c.Range / whole * c.Count
	}
	return sum
}
