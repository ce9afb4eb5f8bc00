package web

import (
	"fmt"
	"math"
	"os"
	"regexp"
	"strconv"
	"strings"
	"testing"

	"suffice/draw/canvas"
)

// luminance is the relative luminance of a colour RRGGBB [wcag22: relative luminance].
func luminance(t *testing.T, colour string) float64 {
	t.Helper()
	part := func(at int) float64 {
		n, err := strconv.ParseUint(colour[at:at+2], 16, 8)
		if err != nil {
			t.Fatal(err)
		}
		c := float64(n) / 255
		if c <= 0.04045 {
			return c / 12.92
		}
		return math.Pow((c+0.055)/1.055, 2.4)
	}
	return 0.2126*part(0) + 0.7152*part(2) + 0.0722*part(4)
}

// contrast is the ratio of two colours, 1 to 21 [wcag22: contrast ratio].
func contrast(t *testing.T, a, b string) float64 {
	t.Helper()
	x, y := luminance(t, a), luminance(t, b)
	return (max(x, y) + 0.05) / (min(x, y) + 0.05)
}

func TestContrastIsThatOfBlackAndWhite(t *testing.T) {
	if got := contrast(t, "000000", "ffffff"); math.Abs(got-21) > 1e-9 {
		t.Errorf("black on white has %v, want 21", got)
	}
	// A grey that is often given as the lightest that passes on white.
	if got := contrast(t, "767676", "ffffff"); got < 4.5 || got > 4.6 {
		t.Errorf("767676 on white has %v, want just over 4.5", got)
	}
}

// Every ink that can carry words stands off the paper by 4.5 or more, in light and in dark
// [wcag22: 1.4.3], and docs/look.md states the ratio that it has.
func TestInksCanBeRead(t *testing.T) {
	page, err := os.ReadFile("../docs/look.md")
	if err != nil {
		t.Fatal(err)
	}
	paper := canvas.Paper.Tone()
	for ink := canvas.Text; ink < canvas.Inks; ink++ {
		if ink == canvas.Paper || ink == canvas.Grid {
			continue
		}
		tone := ink.Tone()
		light, dark := contrast(t, tone.Light, paper.Light), contrast(t, tone.Dark, paper.Dark)
		if light < 4.5 || dark < 4.5 {
			t.Errorf("%s has a contrast of %.2f in light and %.2f in dark, want 4.5", tone.Name, light, dark)
		}
		row := fmt.Sprintf("| %s | `#%s` | %.1f | `#%s` | %.1f |", tone.Name, tone.Light, light, tone.Dark, dark)
		if !strings.Contains(string(page), row) {
			t.Errorf("docs/look.md does not have the line\n%s", row)
		}
	}
}

// The style asks for nothing from elsewhere and names no colour of its own: all are the palette's.
func TestTheStyleHoldsToThePalette(t *testing.T) {
	text, err := static.ReadFile("static/look.css")
	if err != nil {
		t.Fatal(err)
	}
	for _, pattern := range []string{`url\(`, `@import`, `@font-face`, `#[0-9a-fA-F]{3,8}\b`, `rgba?\(`, `hsl`} {
		if found := regexp.MustCompile(pattern).FindString(string(text)); found != "" {
			t.Errorf("look.css has %q", found)
		}
	}
	for _, m := range regexp.MustCompile(`var\(--([a-z]+)\)`).FindAllStringSubmatch(string(text), -1) {
		if m[1] != "step" && m[1] != "line" && !strings.Contains(canvas.Colours(), "--"+m[1]+":") {
			t.Errorf("look.css uses --%s, which is not in the palette", m[1])
		}
	}
}
