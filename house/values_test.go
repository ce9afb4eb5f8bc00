package house

import (
	"slices"
	"testing"

	"suffice/examples"
)

// Values and ValueAt tell the same of every value of the demo, and the last entry of a list is there.
func TestValuesAreThoseOfTheText(t *testing.T) {
	found := 0
	for _, part := range []string{"site", "people", "water", "power", "rules", "wants"} {
		list, err := Values("demo.yaml", examples.Demo, part)
		if err != nil {
			t.Fatal(err)
		}
		for _, v := range list {
			text, there, err := ValueAt("demo.yaml", examples.Demo, v.Path)
			if err != nil || text != v.Text || there != v.Stated {
				t.Errorf("%s is %q, %v; ValueAt says %q, %v, %v", v.Path, v.Text, v.Stated, text, there, err)
			}
			found++
		}
	}
	if found < 200 {
		t.Errorf("only %d values were found", found)
	}
	water, _ := Values("demo.yaml", examples.Demo, "water")
	if !slices.ContainsFunc(water, func(v Value) bool { return v.Path == "water.tanks[1].holds" && v.Text == "20 kL" }) {
		t.Error("the second tank is not found")
	}
	if slices.ContainsFunc(water, func(v Value) bool { return v.Path == "water.delivery.load" || v.Path == "water.tanks[2].holds" }) {
		t.Error("a group or an entry is found that the file does not have")
	}
}
