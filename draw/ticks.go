package draw

import (
	"math"
	"strconv"
	"strings"
)

// Ticks are round values along an axis.
type Ticks struct {
	From, To, Step float64 // From and To are whole steps
	Digits         int     // behind the point
}

// Values farther from zero than this are not drawn, as if they were no numbers: nothing of a house is so
// large, and the steps of an axis could not be told apart.
const farthest = 1e15

func drawable(v float64) bool { return math.Abs(v) <= farthest }

// RoundTicks gives the finest steps of 1, 2 or 5 times a power of ten with at most so many
// intervals that hold low to high. Where the two are equal to twelve digits, or not drawable, the axis is
// chosen to show them.
func RoundTicks(low, high float64, intervals int) Ticks {
	if !drawable(low) || !drawable(high) {
		low, high = 0, 1
	}
	if high < low {
		low, high = high, low
	}
	if high-low <= 1e-12*max(math.Abs(low), math.Abs(high), 1) {
		width := max(math.Abs(high), 1)
		if high == 0 {
			high = 1
		} else {
			low, high = min(0, low), max(width, high)
		}
	}
	intervals = max(intervals, 2)
	power := math.Floor(math.Log10((high - low) / float64(intervals)))
	for ; ; power++ {
		for _, head := range [3]float64{1, 2, 5} {
			step := head * math.Pow(10, power)
			from, to := math.Floor(low/step*(1+1e-12)), math.Ceil(high/step*(1-1e-12))
			if int(to-from) <= intervals {
				return Ticks{From: from * step, To: to * step, Step: step, Digits: int(max(0, -power))}
			}
		}
	}
}

// Values lists the ticks.
func (t Ticks) Values() []float64 {
	n := int(math.Round((t.To - t.From) / t.Step))
	list := make([]float64, n+1)
	for i := range list {
		list[i] = t.From + float64(i)*t.Step
	}
	return list
}

// Text writes a value of the axis.
func (t Ticks) Text(v float64) string { return number(v, t.Digits) }

// gap stands between thousands and before units, narrow, and never breaks a line.
const gap = "\u202f"

// number writes a value with so many digits behind the point and thousands set apart.
func number(v float64, digits int) string {
	text := strconv.FormatFloat(v, 'f', digits, 64)
	sign := ""
	if strings.HasPrefix(text, "-") {
		sign, text = "-", text[1:]
	}
	if strings.Trim(text, "0.") == "" {
		sign = ""
	}
	whole, part, _ := strings.Cut(text, ".")
	for i := len(whole) - 3; i > 0; i -= 3 {
		whole = whole[:i] + gap + whole[i:]
	}
	if part != "" {
		whole += "." + part
	}
	return sign + whole
}

// figures writes a value with about three figures that count.
func figures(v float64) string {
	switch a := math.Abs(v); {
	case a >= 99.95 || a == 0:
		return number(v, 0)
	case a >= 9.995:
		return number(v, 1)
	case a >= 0.9995:
		return number(v, 2)
	}
	return strconv.FormatFloat(v, 'g', 2, 64)
}

// percent writes a share in hundredths; one short of all is never written as all of it.
func percent(share float64) string {
	text := number(100*share, 0)
	for digits := 1; digits < 6 && share < 1 && strings.HasPrefix(text, "100"); digits++ {
		text = number(100*share, digits)
	}
	return text
}
