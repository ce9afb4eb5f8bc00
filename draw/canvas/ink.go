package canvas

import (
	"fmt"
	"strings"
)

// An Ink is a colour by what it means.
type Ink uint8

// The inks.
const (
	None  Ink = iota // draws nothing
	Text             // words and outlines
	Quiet            // words beside, axes
	Grid             // lines behind
	Paper            // what everything lies on
	Water
	Sun
	Power
	Heat
	Earth
	Plant
	Glass
	Lost  // what went unused or away
	Short // what was wanted and not had
	Inks
)

// A Tone is one ink's colour on light and on dark paper, as RRGGBB.
type Tone struct{ Name, Light, Dark string }

var tones = [Inks]Tone{
	None: {"none", "", ""}, Text: {"text", "22262b", "ece8df"}, Quiet: {"quiet", "585e64", "aba79d"},
	Grid: {"grid", "dbd7cc", "3b3e42"}, Paper: {"paper", "fffdf8", "191b1e"},
	Water: {"water", "1f618f", "7fb9e0"}, Sun: {"sun", "96690a", "e3b54f"}, Power: {"power", "6d4a97", "c4a7e4"},
	Heat: {"heat", "ab4428", "f0977d"}, Earth: {"earth", "76593b", "c6a681"}, Plant: {"plant", "3b7341", "8fca95"},
	Glass: {"glass", "2f7880", "8fd3dc"}, Lost: {"lost", "6e7378", "9a9da1"}, Short: {"short", "a81f1c", "ff8f85"},
}

// Tone gives an ink's name and colours.
func (i Ink) Tone() Tone { return tones[i%Inks] }

// Rules gives the style rules that hand the custom properties (--water, --sun and so on) to the
// classes that pictures carry, and the look of the mark that has the keyboard's focus.
func Rules() string {
	var b strings.Builder
	for i := Text; i < Inks; i++ {
		n := tones[i].Name
		fmt.Fprintf(&b, ".picture .f-%s{fill:var(--%s)}.picture .s-%s{stroke:var(--%s)}\n", n, n, n, n)
	}
	b.WriteString(".picture{max-width:100%;height:auto}\n" +
		".picture [data-row]:focus{outline:2px solid var(--text);outline-offset:1px}\n")
	return b.String()
}

// Colours gives the custom properties themselves: light, dark where the reader's system asks for it,
// and light again on paper.
func Colours() string {
	return properties(":root", false) + "@media (prefers-color-scheme:dark){" + properties(":root", true) + "}\n" +
		"@media print{" + properties(":root", false) + "}\n"
}

func properties(of string, dark bool) string {
	var b strings.Builder
	b.WriteString(of + "{")
	for i := Text; i < Inks; i++ {
		colour := tones[i].Light
		if dark {
			colour = tones[i].Dark
		}
		fmt.Fprintf(&b, "--%s:#%s;", tones[i].Name, colour)
	}
	return b.String() + "}"
}

// A Hatch is a pattern of fine lines that carries meaning where colour cannot.
type Hatch uint8

// The hatches.
const (
	Plain   Hatch = iota
	Rising        // lines that rise to the right
	Falling       // lines that fall to the right
	Level         // level lines
	Upright       // upright lines
	Crossed       // rising and falling lines
	Dotted        // short level dashes
)

// A Dash is how a line is broken.
type Dash uint8

// The dashes.
const (
	Solid Dash = iota
	Dashed
	Points
)

// lengths of stroke and gap, px.
func (d Dash) lengths() []float64 {
	switch d {
	case Dashed:
		return []float64{6, 4}
	case Points:
		return []float64{1.5, 3}
	}
	return nil
}
