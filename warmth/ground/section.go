package ground

import (
	"errors"
	"fmt"
	"math"
	"slices"
)

// Material is what a part of a section is made of.
type Material struct {
	Name         string
	Conductivity float64 // W/mK
	Capacity     float64 // J/m3K; matters in time only
}

// Air is what a section's faces meet: a temperature behind a surface resistance. Several
// may stand for one room, where floor and walls have different resistances.
type Air struct {
	Name    string
	Resists float64 // m2K/W; 0 holds the face itself at the temperature
}

// Rect is a part of a section, m: x to the right, y upward.
type Rect struct{ Left, Right, Bottom, Top float64 }

// Section is a cut through earth and building on a grid of rectangles: each is a material, an air,
// or nothing. Where material meets nothing, or the grid ends, no heat passes. All its figures are for a metre of length
// across the cut.
type Section struct {
	X, Y      []float64 // the grid's lines, m, rising
	Materials []Material
	Airs      []Air
	cells     []int32 // by row from below: nothing 0, material 1, 2, ..., air -1, -2, ...
}

// NewSection makes a section of nothing.
func NewSection(x, y []float64) (*Section, error) {
	if !rising(x) || !rising(y) {
		return nil, errors.New("section: the grid needs two lines or more each way, each farther than the one before")
	}
	return &Section{X: x, Y: y, cells: make([]int32, (len(x)-1)*(len(y)-1))}, nil
}

func rising(lines []float64) bool {
	for i := 1; i < len(lines); i++ {
		if !(lines[i] > lines[i-1]) {
			return false
		}
	}
	return len(lines) >= 2 && !math.IsInf(lines[0], 0) && !math.IsInf(lines[len(lines)-1], 0)
}

// Fill makes everything of a part that one material, what was there before included.
func (s *Section) Fill(r Rect, m Material) {
	at := slices.Index(s.Materials, m)
	if at < 0 {
		at = len(s.Materials)
		s.Materials = append(s.Materials, m)
	}
	s.paint(r, int32(at+1))
}

// Open makes a part air, and gives the number by which that air is known in this section.
func (s *Section) Open(r Rect, a Air) int {
	at := slices.Index(s.Airs, a)
	if at < 0 {
		at = len(s.Airs)
		s.Airs = append(s.Airs, a)
	}
	s.paint(r, int32(-at-1))
	return at
}

// Clear makes a part nothing.
func (s *Section) Clear(r Rect) { s.paint(r, 0) }

func (s *Section) paint(r Rect, what int32) {
	columns := len(s.X) - 1
	for j := range len(s.Y) - 1 {
		for i := range columns {
			x, y := (s.X[i]+s.X[i+1])/2, (s.Y[j]+s.Y[j+1])/2
			if x > r.Left && x < r.Right && y > r.Bottom && y < r.Top {
				s.cells[j*columns+i] = what
			}
		}
	}
}

// Faults gives everything about the section that cannot be computed, or nil.
func (s *Section) Faults() error {
	var faults []error
	for _, m := range s.Materials {
		if !(m.Conductivity > 0) || !(m.Capacity >= 0) || math.IsInf(m.Conductivity+m.Capacity, 0) {
			faults = append(faults, fmt.Errorf("section: %s has %g W/mK and %g J/m3K: the first is above 0, the second not below", m.Name, m.Conductivity, m.Capacity))
		}
	}
	for _, a := range s.Airs {
		if !(a.Resists >= 0) {
			faults = append(faults, fmt.Errorf("section: %s has a surface of %g m2K/W: it is not below 0", a.Name, a.Resists))
		}
	}
	return errors.Join(faults...)
}

// half gives the resistance from the middle of a cell to its face, m2K/W, d from face to face.
func (s *Section) half(what int32, d float64) float64 {
	if what < 0 {
		return s.Airs[-what-1].Resists
	}
	return d / 2 / s.Materials[what-1].Conductivity
}

// merged is how near two places of a grid are taken as one, m: less than any layer is thick.
const merged = 1e-6

// Lines makes a grid: a line at each of the given places and between them steps that grow from
// finest by the factor grows, from both ends of each gap, to coarsest at most.
func Lines(places []float64, finest, grows, coarsest float64) []float64 {
	places = slices.CompactFunc(slices.Sorted(slices.Values(places)), func(a, b float64) bool { return math.Abs(a-b) < merged })
	var lines []float64
	for i := 1; i < len(places); i++ {
		lines = append(lines, places[i-1])
		gap := places[i] - places[i-1]
		var steps []float64 // of half the gap
		sum := 0.0
		for step := finest; sum < gap/2; step = min(step*grows, coarsest) {
			steps = append(steps, step)
			sum += step
		}
		shrink := gap / 2 / sum
		x := places[i-1]
		for _, step := range steps {
			x += step * shrink
			lines = append(lines, x)
		}
		for k := len(steps) - 1; k > 0; k-- {
			x += steps[k] * shrink
			lines = append(lines, x)
		}
	}
	return append(lines, places[len(places)-1])
}
