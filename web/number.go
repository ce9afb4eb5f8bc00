package web

import (
	"fmt"
	"math"
	"strconv"
	"strings"

	"suffice/quantity"
	"suffice/sheet"
)

// gap stands between thousands and before units, and never breaks a line.
const gap = "\u202f"

// grouped writes a whole number with narrow gaps between thousands.
func grouped(v float64) string {
	digits := strconv.FormatFloat(math.Abs(v), 'f', 0, 64)
	for i := len(digits) - 3; i > 0; i -= 3 {
		digits = digits[:i] + gap + digits[i:]
	}
	if v < 0 && digits != "0" {
		return "\u2212" + digits
	}
	return digits
}

// amount writes a number as its size deserves: whole from 10 on, else two digits.
func amount(v float64) string {
	if v == 0 || math.Abs(v) >= 9.95 {
		return grouped(v)
	}
	return strconv.FormatFloat(v, 'g', 2, 64)
}

// withUnit writes a number and its unit on one line.
func withUnit(v float64, unit string) string { return amount(v) + gap + unit }

// percent writes a share. A share short of all is never written as all of it.
func percent(share float64) string {
	text := strconv.FormatFloat(100*share, 'f', 0, 64)
	for decimals := 1; decimals < 6 && share < 1 && strings.HasPrefix(text, "100"); decimals++ {
		text = strconv.FormatFloat(100*share, 'f', decimals, 64)
	}
	return text + gap + "%"
}

// worth writes the value of a sheet's input or result in five digits.
func worth(v sheet.Value, unit string) string {
	switch v.Kind {
	case sheet.Text:
		return v.Text
	case sheet.List:
		parts := make([]string, len(v.List))
		for i, n := range v.List {
			parts[i] = strconv.FormatFloat(n, 'g', 5, 64)
		}
		return strings.TrimSpace(strings.Join(parts, ", ") + " " + unit)
	}
	return five(v.Number, unit)
}

func five(v float64, unit string) string {
	short, err := strconv.ParseFloat(strconv.FormatFloat(v, 'g', 5, 64), 64)
	if err != nil {
		return fmt.Sprint(v)
	}
	return quantity.Text(short, unit)
}
