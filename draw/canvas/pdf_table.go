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
	wide := columnWidths(len(t.Headers))
	y := w.row(t.Headers, top+tableLeading, wide, true)
	for _, row := range t.Rows {
		if y+w.tall(row, wide) > pageTall-margin {
			w.f.AddPage()
			y = w.row(t.Headers, margin, wide, true)
		}
		y = w.row(row, y, wide, false)
	}
}

// columnWidths shares the page's width out; the first column, which names the row, gets half as much again.
func columnWidths(n int) []float64 {
	wide := make([]float64, n)
	for i := range wide {
		wide[i] = fieldWide * point / (float64(n) + 0.5)
	}
	wide[0] *= 1.5
	return wide
}

func cellLines(cell string, wide float64, bold bool) []string {
	return Wrap(cell, wide-6, tableSize, bold) // widths are proportional: pt in, pt out
}

func (w *pdf) tall(row []string, wide []float64) float64 {
	most := 1.0
	for i, cell := range row {
		most = math.Max(most, float64(len(cellLines(cell, wide[i], false))))
	}
	return most * tableLeading
}

// row writes one row with its top at y and gives the next row's top.
func (w *pdf) row(row []string, y float64, wide []float64, bold bool) float64 {
	style := map[bool]string{true: "B", false: ""}[bold]
	w.f.SetFont("sans", style, tableSize)
	w.f.SetTextColor(parts(Text))
	lines, x := 1, margin
	for i, cell := range row {
		for k, line := range cellLines(cell, wide[i], bold) {
			w.f.Text(x, y+float64(k+1)*tableLeading-3, line)
			lines = max(lines, k+1)
		}
		x += wide[i]
	}
	return y + float64(lines)*tableLeading
}
