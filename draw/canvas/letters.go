package canvas

import "strings"

// TextWidth gives how wide a text stands in Liberation Sans at a size, px, without kerning.
func TextWidth(text string, size float64, bold bool) float64 {
	table := &regularWidths
	if bold {
		table = &boldWidths
	}
	sum := 0
	for _, r := range text {
		sum += advance(r, table)
	}
	return float64(sum) * size / 1000
}

// emWide is the width of letters that the tables do not hold: that of an m.
const emWide = 833

func advance(r rune, table *[lastLetter - firstLetter + 1]uint16) int {
	switch {
	case r >= firstLetter && r <= lastLetter && table[r-firstLetter] > 0:
		return int(table[r-firstLetter])
	case r == '\u202f':
		return 200
	case r == '–':
		return 556
	case r == '→' || r == '…':
		return 1000
	}
	return emWide
}

// Wrap breaks a text at spaces into lines no wider than so many px; a longer word stands alone.
func Wrap(text string, width, size float64, bold bool) []string {
	var lines []string
	line := ""
	for word := range strings.SplitSeq(text, " ") { // other spaces do not break
		longer := strings.TrimSpace(line + " " + word)
		if line != "" && TextWidth(longer, size, bold) > width {
			lines = append(lines, line)
			longer = word
		}
		line = longer
	}
	if line != "" {
		lines = append(lines, line)
	}
	return lines
}
