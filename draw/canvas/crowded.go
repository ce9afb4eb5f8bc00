package canvas

import "fmt"

// Crowded tells every pair of texts that run into each other, and every text that leaves the canvas.
func (c *Canvas) Crowded() (faults []string) {
	var letters []*Shape
	for i := range c.Shapes {
		s := &c.Shapes[i]
		if s.Kind != Letters {
			continue
		}
		box := s.Box()
		if box.Left < -0.5 || box.Right > c.Width+0.5 || box.Top < -0.5 || box.Bottom > c.Height+0.5 {
			faults = append(faults, fmt.Sprintf("%q leaves the canvas of %.0f x %.0f: %.0f", s.Text, c.Width, c.Height, box))
		}
		for _, other := range letters {
			if box.Overlaps(other.Box()) {
				faults = append(faults, fmt.Sprintf("%q runs into %q", s.Text, other.Text))
			}
		}
		letters = append(letters, s)
	}
	return faults
}
