package canvas

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
	case r == '–' || r == '…' || r == '→' || r == '●':
		return map[rune]int{'–': 556, '…': 1000, '→': 1000, '●': 604}[r]
	}
	return emWide
}
