package draw

import (
	"math"

	"suffice/draw/canvas"
)

// A DayChart tells a spell day by day: small charts under each other over the same days.
type DayChart struct {
	About
	Dates   []string // in full, for the table
	Short   []string // day of the month, for the axis
	Months  []Mark   // the month, at the day on which it begins to be told
	Rows    []DayRow
	Deeds   []Deed
	Told    int      // the day that the summary speaks of
	Headers []string // of the table: day, rows, deeds
}

// A DayRow is one of the small charts. A value that is no number, or past 1e15, is left out of it.
type DayRow struct {
	Says   string // with its unit
	Unit   string
	Values []float64
	Lacks  []float64 // wanted and not had, stands on Values; nil for none
	Top    float64   // the axis holds at least this
	Ink    canvas.Ink
	Hatch  canvas.Hatch
	Digits int
}

// A Deed is what the people did, day by day.
type Deed struct {
	Says string
	Done []bool
	Yes  string // what the table says where it was done
}

// Days draws a spell.
func Days(d DayChart) Picture {
	t := canvas.Table{Headers: d.Headers}
	for i, date := range d.Dates {
		row := []string{date}
		for _, r := range d.Rows {
			row = append(row, number(r.Values[i], r.Digits))
			if r.Lacks != nil {
				row = append(row, number(r.Lacks[i], r.Digits))
			}
		}
		for _, deed := range d.Deeds {
			row = append(row, [2]string{"", deed.Yes}[one(deed.Done[i])])
		}
		t.Rows = append(t.Rows, row)
	}
	return d.picture(t, func(width float64) *canvas.Canvas { return d.lay(width, t) })
}

// Heights of a small chart and of the line of a deed, px.
const (
	smallTall = 96.0
	deedTall  = 36.0
)

func (d *DayChart) lay(width float64, t canvas.Table) *canvas.Canvas {
	c := canvas.New(width, smallTall*float64(len(d.Rows))+deedTall*float64(len(d.Deeds))+46)
	frames := make([]frame, len(d.Rows))
	left := 0.0
	for i, r := range d.Rows {
		top := r.Top
		for k, v := range r.Values {
			if drawable(v + r.lack(k)) {
				top = max(top, v+r.lack(k))
			}
		}
		y := smallTall * float64(i)
		frames[i] = newFrame(c, y+28, y+smallTall-6, RoundTicks(0, top, 3))
		left = max(left, frames[i].left)
	}
	for i, r := range d.Rows {
		frames[i].left = left
		frames[i].axis("")
		c.Text(canvas.Point{X: 0, Y: frames[i].top - 12}, r.Says, canvas.Lettering{Size: fine})
	}
	d.deedLines(c, left)
	for day := range d.Dates {
		c.Mark(day, tell(t, day))
		for i, r := range d.Rows {
			r.bar(&frames[i], day, len(d.Dates))
		}
		d.deeds(c, left, day)
		c.End()
	}
	d.feet(c, left)
	return c
}

func (r *DayRow) lack(day int) float64 {
	if r.Lacks == nil {
		return 0
	}
	return r.Lacks[day]
}

func (r *DayRow) bar(f *frame, day, days int) {
	x, w := f.column(day, days)
	at := func(dx, v float64) canvas.Point { return canvas.Point{X: x + dx*w, Y: f.at(v)} }
	v := r.Values[day]
	if !drawable(v + r.lack(day)) {
		return
	}
	f.c.Rect(at(-0.36, 0), at(0.36, v), canvas.Style{Fill: r.Ink, Shade: shade(r.Hatch), Hatch: r.Hatch, Line: r.Ink})
	if lack := r.lack(day); lack > 0 {
		f.c.Rect(at(-0.36, v), at(0.36, v+lack), canvas.Style{Fill: canvas.Paper, Hatch: canvas.Crossed, Line: canvas.Short})
	}
}

func (d *DayChart) deedTop(i int) float64 {
	return smallTall*float64(len(d.Rows)) + deedTall*float64(i)
}

// deeds draws what was done on one day as small squares.
func (d *DayChart) deeds(c *canvas.Canvas, left float64, day int) {
	f := frame{c: c, left: left, right: c.Width - 6}
	x, w := f.column(day, len(d.Dates))
	half := min(w/2-1, 5)
	for i, deed := range d.Deeds {
		if deed.Done[day] {
			y := d.deedTop(i) + 27
			c.Rect(canvas.Point{X: x - half, Y: y - 5}, canvas.Point{X: x + half, Y: y + 5}, canvas.Style{Fill: canvas.Text})
		}
	}
}

// deedLines writes the words of the deeds over their lines.
func (d *DayChart) deedLines(c *canvas.Canvas, left float64) {
	for i, deed := range d.Deeds {
		y := d.deedTop(i)
		c.Text(canvas.Point{X: 0, Y: y + 16}, deed.Says, canvas.Lettering{Size: fine})
		c.Line(canvas.Point{X: left, Y: y + 27}, canvas.Point{X: c.Width - 6, Y: y + 27}, gridLine)
	}
}

// feet writes the days and the months.
func (d *DayChart) feet(c *canvas.Canvas, left float64) {
	f := frame{c: c, left: left, right: c.Width - 6}
	step := d.dayStep(&f)
	for day, text := range d.Short {
		if x, _ := f.column(day, len(d.Short)); (day-d.Told)%step == 0 {
			c.Text(canvas.Point{X: x, Y: c.Height - 24}, text, d.dayLetters(day))
		}
	}
	free := math.Inf(-1)
	for _, m := range d.Months {
		x, w := f.column(m.At, len(d.Short))
		wide := canvas.TextWidth(m.Says, fine, false)
		if x = min(x-w/2, c.Width-wide); x > free {
			c.Text(canvas.Point{X: x, Y: c.Height - 8}, m.Says, quiet)
			free = x + wide + 6
		}
	}
}

// dayStep gives every how many days there is room for a word, counted from the day that the summary
// speaks of.
func (d *DayChart) dayStep(f *frame) int {
	widest := 0.0
	for _, text := range d.Short {
		widest = max(widest, canvas.TextWidth(text, fine, true))
	}
	_, w := f.column(0, len(d.Short))
	return max(1, int(math.Ceil((widest+3)/w)))
}

// dayLetters makes the day that the summary speaks of bold.
func (d *DayChart) dayLetters(day int) canvas.Lettering {
	l := anchored(quiet, canvas.Middle)
	if day == d.Told {
		l.Ink, l.Bold = canvas.Text, true
	}
	return l
}
