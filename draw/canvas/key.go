package canvas

// A KeyItem explains one look by a sample of it.
type KeyItem struct {
	Says string
	Look Style
}

// Measures of a key, px.
const (
	keySize    = 11.5
	keyLeading = 16.0
	sampleWide = 20.0
)

// Key writes what the looks mean along the top, in as many lines as it takes, and gives where it ends.
func (c *Canvas) Key(items []KeyItem) (bottom float64) {
	x, y := 0.0, 8.0
	for _, item := range items {
		wide := sampleWide + 6 + TextWidth(item.Says, keySize, false)
		if x > 0 && x+wide > c.Width {
			x, y = 0, y+keyLeading
		}
		if item.Look.Fill != None {
			c.Rect(Point{x, y - 5}, Point{x + sampleWide, y + 5}, item.Look)
		} else {
			c.Line(Point{x, y}, Point{x + sampleWide, y}, item.Look)
		}
		c.Text(Point{x + sampleWide + 6, y + 4}, item.Says, Lettering{Size: keySize})
		x += wide + 16
	}
	return y + keyLeading/2
}
