package canvas

// headed gives a drawing with its title and summary above it, for where no page writes them.
func headed(c *Canvas, title, summary string) *Canvas {
	const margin = 14.0
	whole := New(c.Width+2*margin, 0)
	y := margin + 14
	for _, line := range Wrap(title, c.Width, 16, true) {
		whole.Text(Point{margin, y}, line, Lettering{Size: 16, Bold: true})
		y += 21
	}
	for _, line := range Wrap(summary, c.Width, 13, false) {
		whole.Text(Point{margin, y}, line, Lettering{})
		y += 18
	}
	y += 4
	for _, s := range c.whole() {
		moved := make([]Point, len(s.Points))
		for i, p := range s.Points {
			moved[i] = Point{p.X + margin, p.Y + y}
		}
		s.Points = moved
		whole.add(s)
	}
	whole.Height = y + c.Height + margin
	return whole
}
