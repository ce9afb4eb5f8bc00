package canvas

// A Table is a picture's data in words: one row for each mark.
type Table struct {
	Headers []string // with units
	Rows    [][]string
}

// A Picture is a drawing with everything that lets one do without seeing it.
type Picture struct {
	Name    string // one word, for ids and file names
	Title   string
	Unit    string // of what is drawn, as it stands at the axis
	Summary string // one sentence or two, worked out from the figures
	Table   Table
	Draw    func(width float64) *Canvas // lays the drawing out for a width, px
}

// Narrowest is the least width, px, that a drawing is laid out for; a narrower page shows it smaller.
const Narrowest = 320

// Lay gives the drawing at a width, px; under Narrowest it is laid out at Narrowest.
func (p *Picture) Lay(width int) *Canvas { return p.Draw(float64(max(width, Narrowest))) }

// SVG gives the drawing for a page: its colours are the page's (Rules, Colours), its text is
// text, its marks can be reached by keyboard and name their row of the table.
func (p *Picture) SVG(width int) string {
	w := svg{name: p.Name, title: p.Title, summary: p.Summary}
	return w.write(p.Lay(width))
}

// Alone gives the drawing as a file of its own, with title and summary above it and its colours for
// light, dark and print.
func (p *Picture) Alone(width int) string {
	w := svg{name: p.Name, title: p.Title, summary: p.Summary, alone: true}
	return w.write(headed(p.Lay(width-28), p.Title, p.Summary))
}
