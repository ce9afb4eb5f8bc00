package sun

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"suffice/quantity"
)

// ClockHours reads a time of day in hours, 0 to 24: 10:30, 10.5h or 10.5.
func ClockHours(text string) (float64, error) {
	refusal := fmt.Errorf("%q is not a time of day: write 10:30 or 10.5h, from 0 to 24", text)
	hours, minutes, colon := strings.Cut(strings.TrimSpace(text), ":")
	v, err := quantity.ReadIn(hours, "h")
	if err != nil {
		v, err = strconv.ParseFloat(hours, 64)
	}
	if err == nil && colon {
		var m float64
		m, err = strconv.ParseFloat(minutes, 64)
		if !(m >= 0 && m < 60) || v != math.Trunc(v) {
			return 0, refusal
		}
		v += m / 60
	}
	if err != nil || !(v >= 0 && v <= 24) {
		return 0, refusal
	}
	return v, nil
}
