package canvas

import (
	"bytes"
	"strings"
	"testing"
	"unicode/utf16"
)

// sample has every kind of shape.
func sample() Picture {
	return Picture{Name: "sample", Title: "A pond & its <level>", Unit: "m", Summary: "The pond holds 3 m.",
		Table: Table{Headers: []string{"Day", "Level, m"}, Rows: [][]string{{"Monday", "3"}, {"Tuesday", "2.5"}}},
		Draw: func(width float64) *Canvas {
			c := New(width, 120)
			c.Clip(Point{0, 0}, Point{width, 60})
			c.Rect(Point{10, 10}, Point{60, 80}, Style{Fill: Water, Shade: 0.4, Hatch: Crossed, Line: Water})
			c.End()
			c.Mark(0, "Monday; level 3 m")
			c.Circle(Point{90, 40}, 9, Style{Fill: Sun, Line: Text})
			c.End()
			c.Mark(1, "Tuesday; level 2.5 m")
			c.Area([]Point{{120, 20}, {160, 20}, {140, 60}}, Style{Fill: Earth, Hatch: Dotted})
			c.End()
			c.Polyline([]Point{{0, 100}, {50, 90}, {100, 100}}, Style{Line: Short, Width: 2, Dash: Dashed})
			c.Text(Point{width, 115}, "21 °C, 180 m², Süd → Žižkov", Lettering{Anchor: End, Halo: true})
			c.Text(Point{10, 115}, "(bold) \\", Lettering{Bold: true})
			return c
		}}
}

// shown reads the texts out of a PDF that is not packed: fpdf writes each as UTF-16, big end
// first, in round brackets with \ before (, ) and \.
func shown(pdf []byte) (texts []string) {
	for _, piece := range bytes.Split(pdf, []byte(") Tj")) {
		at := bytes.LastIndex(piece, []byte("Td ("))
		if at < 0 {
			continue
		}
		var raw []byte
		for i := at + 4; i < len(piece); i++ {
			if piece[i] == '\\' && i+1 < len(piece) {
				i++
				if piece[i] == 'r' {
					piece[i] = '\r'
				}
			}
			raw = append(raw, piece[i])
		}
		var units []uint16
		for i := 0; i+1 < len(raw); i += 2 {
			units = append(units, uint16(raw[i])<<8|uint16(raw[i+1]))
		}
		texts = append(texts, string(utf16.Decode(units)))
	}
	return texts
}

func TestPDFShowsWhatTheSVGShows(t *testing.T) {
	p := sample()
	var b bytes.Buffer
	if err := (Document{Title: "Pond", plain: true}).WritePDF(&b, p, p); err != nil {
		t.Fatal(err)
	}
	if !bytes.HasPrefix(b.Bytes(), []byte("%PDF-1.")) || !bytes.HasSuffix(bytes.TrimSpace(b.Bytes()), []byte("%%EOF")) {
		t.Errorf("begins %q", b.Bytes()[:12])
	}
	if n := bytes.Count(b.Bytes(), []byte("/Type /Page\n")); n != 2 {
		t.Errorf("%d pages for two pictures", n)
	}
	all := strings.Join(shown(b.Bytes()), "\n")
	want := []string{p.Title, p.Summary, "Monday", "Level, m", "2.5"}
	for _, s := range p.Draw(400).Shapes {
		if s.Kind == Letters {
			want = append(want, s.Text)
		}
	}
	for _, text := range want {
		if !strings.Contains(all, text) {
			t.Errorf("%q is not in the PDF, which shows %q", text, all)
		}
	}
}

func TestPDFIsTheSameEachTime(t *testing.T) {
	var a, b bytes.Buffer
	for _, to := range []*bytes.Buffer{&a, &b} {
		if err := (Document{Title: "Pond"}).WritePDF(to, sample()); err != nil {
			t.Fatal(err)
		}
	}
	if !bytes.Equal(a.Bytes(), b.Bytes()) {
		t.Error("the same picture gave other bytes")
	}
}
