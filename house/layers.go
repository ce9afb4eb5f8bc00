package house

import (
	"fmt"
	"regexp"
	"strings"

	"suffice/quantity"
)

// Layers is what a wall is made of, from inside to outside.
type Layers []Course

// A Course is one layer as it is written. Resistance is told for a gap of air only.
type Course struct {
	Of         string
	Thickness  quantity.Metres
	Resistance float64 // m2K/W, 0 where the thickness is told
	Bridge     string  // what crosses it, "" for nothing
	Share      float64 // of the area that is Bridge
}

func (l *Layers) form() string {
	return "30 cm rammed earth, 10 cm cork; 140 mm straw with 12 % softwood; 25 mm air; 0.18 m2K/W gap"
}

// mostLayers is more than any wall has.
const mostLayers = 16

var (
	courseForm = regexp.MustCompile(`^([0-9.]+ ?(?:mm|cm|m)) +([^0-9].*?)(?: with ([0-9.]+ ?%) +([^0-9].*))?$`)
	gapForm    = regexp.MustCompile(`^([0-9.]+ ?m2K/W) +gap$`)
)

func (l *Layers) read(text string) string {
	parts := strings.Split(text, ",")
	if len(parts) > mostLayers {
		return fmt.Sprintf("has %d layers: the most is %d, so put thin ones together", len(parts), mostLayers)
	}
	for _, part := range parts {
		c, says := course(strings.TrimSpace(part))
		if says != "" {
			return says
		}
		*l = append(*l, c)
	}
	return ""
}

func course(text string) (c Course, says string) {
	if m := gapForm.FindStringSubmatch(text); m != nil {
		v, err := quantity.ReadIn(m[1], "m2K/W")
		if err != nil || v <= 0 || v > 10 {
			return c, fmt.Sprintf("%q is no gap: its resistance is more than 0 and at most 10 m2K/W", short(text))
		}
		return Course{Of: "gap", Resistance: v}, ""
	}
	m := courseForm.FindStringSubmatch(text)
	if m == nil {
		return c, fmt.Sprintf("%q is no layer: write its thickness and its material, for example 30 cm rammed earth", short(text))
	}
	thick, err := quantity.ReadIn(m[1], "m")
	if err != nil || thick < 0.0005 || thick > 20 {
		return c, fmt.Sprintf("%q is no layer: it is 0.5 mm to 20 m thick", short(text))
	}
	c = Course{Of: strings.TrimSpace(m[2]), Thickness: quantity.Metres(thick), Bridge: strings.TrimSpace(m[4])}
	if m[3] != "" {
		if c.Share, err = quantity.ReadIn(m[3], ""); err != nil || c.Share <= 0 || c.Share >= 1 {
			return c, fmt.Sprintf("%q is no layer: what crosses it takes more than 0 %% and less than 100 %% of the area", short(text))
		}
	}
	return c, ""
}

func (l *Layers) pattern() string {
	one := `([0-9.]+ ?(mm|cm|m) +[^0-9,][^,]*|[0-9.]+ ?m2K/W +gap)`
	return `^` + one + `( *, *` + one + `)*$`
}
