package canvas

import "math"

// Sizes of a table on paper, pt.
const (
	tableSize    = 8.0
	tableLeading = 11.0
)

// table writes a picture's table under it and on as many pages as it takes.
func (w *pdf) table(t Table, top float64) {
	if len(t.Headers) == 0 {
		return
	}
	wide := fieldWide * point / float64(len(t.Headers))
	y := w.row(t.Headers, top+tableLeading, wide, true)
	for _, row := range t.Rows {
		if y+w.tall(row, wide) > pageTall-margin {
			w.f.AddPage()
			y = w.row(t.Headers, margin, wide, true)
		}
		y = w.row(row, y, wide, false)
	}
}

func cellLines(cell string, wide float64, bold bool) []string {
	return Wrap(cell, wide-6, tableSize, bold) // widths are proportional: pt in, pt out
}

func (w *pdf) tall(row []string, wide float64) float64 {
	most := 1.0
	for _, cell := range row {
		most = math.Max(most, float64(len(cellLines(cell, wide, false))))
	}
	return most * tableLeading
}

// row writes one row with its top at y and gives the next row's top.
func (w *pdf) row(row []string, y, wide float64, bold bool) float64 {
	style := map[bool]string{true: "B", false: ""}[bold]
	w.f.SetFont("sans", style, tableSize)
	w.f.SetTextColor(parts(Text))
	lines := 1
	for i, cell := range row {
		for k, line := range cellLines(cell, wide, bold) {
			w.f.Text(margin+float64(i)*wide, y+float64(k+1)*tableLeading-3, line)
			lines = max(lines, k+1)
		}
	}
	return y + float64(lines)*tableLeading
}
