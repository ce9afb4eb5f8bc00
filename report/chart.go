package report

import (
	"math"
	"strings"
)

// span draws a range on a line of so many columns: dots from low to high, a filled
// circle at the middle value. All three are shares of the whole width, 0 to 1.
func span(low, middle, high float64, width int) string {
	line := []rune(strings.Repeat(" ", width))
	at := func(share float64) int {
		return min(max(int(math.Round(share*float64(width-1))), 0), width-1)
	}
	for i := at(low); i <= at(high); i++ {
		line[i] = '·'
	}
	line[at(middle)] = '●'
	return string(line)
}

var eighths = []rune(" ▏▎▍▌▋▊▉█")

// bar draws a share of so many columns as a solid bar, to an eighth of a column.
func bar(share float64, width int) string {
	parts := int(math.Round(min(max(share, 0), 1) * float64(width) * 8))
	s := strings.Repeat("█", parts/8)
	if parts%8 > 0 {
		s += string(eighths[parts%8])
	}
	return s + strings.Repeat(" ", width-len([]rune(s)))
}

// ticks writes the scale that stands above a chart of that width.
func ticks(left, middle, right string, width int) string {
	half := (width - len([]rune(middle))) / 2
	line := left + strings.Repeat(" ", max(1, half-len([]rune(left)))) + middle
	return line + strings.Repeat(" ", max(1, width-len([]rune(line))-len([]rune(right)))) + right
}
