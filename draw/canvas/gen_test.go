package canvas

import (
	"bytes"
	"flag"
	"fmt"
	"go/format"
	"os"
	"testing"

	"codeberg.org/go-fonts/liberation/liberationsansbold"
	"codeberg.org/go-fonts/liberation/liberationsansregular"
	"codeberg.org/go-pdf/fpdf"
)

var update = flag.Bool("update", false, "write the tables and golden files anew")

// fontWidths reads the advance widths of a font, in thousandths of its size.
func fontWidths(ttf []byte) func(r rune) int {
	pdf := fpdf.New("P", "pt", "A4", "")
	pdf.AddUTF8FontFromBytes("f", "", ttf)
	pdf.SetFont("f", "", 1000)
	return func(r rune) int { return int(pdf.GetStringWidth(string(r)) + 0.5) }
}

// TestWidthsAreTheFonts holds the tables of widths to the fonts that come with the program.
func TestWidthsAreTheFonts(t *testing.T) {
	regular, bold := fontWidths(liberationsansregular.TTF), fontWidths(liberationsansbold.TTF)
	if *update {
		writeWidths(t, regular, bold)
		return
	}
	others := []rune{'–', '…', '→', '\u202f', 'm'}
	for r := rune(firstLetter); r <= lastLetter; r++ {
		others = append(others, r)
	}
	for _, r := range others {
		if r >= 0x7f && r < 0xa0 || r == 0xad {
			continue // no letters
		}
		if got, want := TextWidth(string(r), 1000, false), regular(r); int(got) != want {
			t.Errorf("%q: %v wide, the font says %d", r, got, want)
		}
		if got, want := TextWidth(string(r), 1000, true), bold(r); r <= lastLetter && r != 'm' && int(got) != want {
			t.Errorf("bold %q: %v wide, the font says %d", r, got, want)
		}
	}
}

func writeWidths(t *testing.T, regular, bold func(rune) int) {
	var b bytes.Buffer
	fmt.Fprintf(&b, "package canvas\n\n// Made from the fonts by go test ./draw/canvas -run Widths -update.\n\nconst (\nfirstLetter = ' '\nlastLetter = 'ſ'\n)\n")
	for _, table := range []struct {
		name, says string
		of         func(rune) int
	}{{"regularWidths", "Liberation Sans Regular", regular}, {"boldWidths", "Liberation Sans Bold", bold}} {
		fmt.Fprintf(&b, "\n// %s holds the advance widths of %s, in thousandths of the size.\nvar %s = [lastLetter - firstLetter + 1]uint16{", table.name, table.says, table.name)
		for r := rune(' '); r <= 'ſ'; r++ {
			if (r-' ')%24 == 0 {
				b.WriteString("\n")
			}
			fmt.Fprintf(&b, "%d, ", table.of(r))
		}
		b.WriteString("\n}\n")
	}
	text, err := format.Source(b.Bytes())
	if err != nil {
		t.Fatal(err)
	}
	if err := os.WriteFile("letters_table.go", text, 0o644); err != nil {
		t.Fatal(err)
	}
}
