package material

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

func TestEveryRowIsWhole(t *testing.T) {
	seen := make(map[string]bool)
	for _, m := range Table() {
		if err := m.Faults(); err != nil {
			t.Error(err)
		}
		if k := key(m.Name); seen[k] {
			t.Errorf("%s stands twice", m.Name)
		} else {
			seen[k] = true
		}
		if m.Density == 0 || m.Capacity == 0 || m.Kind == "" || m.Source == "" || m.Standing == "" {
			t.Errorf("%s: something is not filled in: %+v", m.Name, m)
		}
		if m.Standing == Assumed && m.Note == "" {
			t.Errorf("%s is assumed and does not say what", m.Name)
		}
		if m.Least > m.Most || m.Most > 0 && (m.Conductivity < m.Least || m.Conductivity > m.Most) {
			t.Errorf("%s: %g W/mK is not between %g and %g", m.Name, float64(m.Conductivity), float64(m.Least), float64(m.Most))
		}
		if strings.ContainsAny(m.Name, ",:") {
			t.Errorf("%s: a comma or colon parts the layers of a wall", m.Name)
		}
	}
}

func TestNamesAreFound(t *testing.T) {
	for _, m := range Table() {
		got, err := Named(strings.ToUpper(strings.ReplaceAll(m.Name, " ", "-")))
		if err != nil || got.Name != m.Name {
			t.Errorf("%s: got %q, %v", m.Name, got.Name, err)
		}
	}
	if _, err := Named("strwa bale"); err == nil || !strings.Contains(err.Error(), `"straw bale"`) {
		t.Errorf("got %v, want the nearest name", err)
	}
}

func TestOwnComesFirst(t *testing.T) {
	own := Material{Name: "Straw-Bale", Conductivity: 0.05, Density: 90, Capacity: 1800}
	l, err := NewLibrary(own)
	if err != nil {
		t.Fatal(err)
	}
	if got, _ := l.Named("straw bale"); got != own {
		t.Errorf("got %+v, want one's own", got)
	}
	if n := len(l.All()); n != len(Table()) {
		t.Errorf("%d materials, want %d: one's own replaces a row", n, len(Table()))
	}
	if got, err := l.Named("cork board"); err != nil || got.Name != "cork board" {
		t.Errorf("the table is gone: %v", err)
	}
	_, err = NewLibrary(own, own, Material{Name: "x", Conductivity: -1, Density: Density(math.NaN()), Capacity: 1e6})
	for _, want := range []string{"twice", "-1 W/mK", "NaN kg/m3", "1e+06 J/kgK"} {
		if err == nil || !strings.Contains(err.Error(), want) {
			t.Errorf("%v does not say %q", err, want)
		}
	}
}

// Heavier earth conducts more, between the rows too; beyond them there is no earth.
func TestEarthRises(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		a, b := rapid.Float64Range(1000, 2000).Draw(t, "a"), rapid.Float64Range(1000, 2000).Draw(t, "b")
		light, err1 := Earth(Density(min(a, b)))
		heavy, err2 := Earth(Density(max(a, b)))
		if err1 != nil || err2 != nil || light.Conductivity > heavy.Conductivity || light.Faults() != nil {
			t.Errorf("%g kg/m3 has %g W/mK, %g kg/m3 has %g W/mK; %v %v", min(a, b), float64(light.Conductivity), max(a, b), float64(heavy.Conductivity), err1, err2)
		}
	})
	for _, d := range []Density{999, 2001, Density(math.NaN())} {
		if _, err := Earth(d); err == nil {
			t.Errorf("earth of %g kg/m3 was made up", float64(d))
		}
	}
}

// Drying undoes wetting, and more water conducts more.
func TestWettingIsUndone(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		m := rapid.SampledFrom(Table()).Draw(t, "material")
		change := rapid.Float64Range(0, 0.1).Draw(t, "change")
		wet := m
		var known bool
		wet.Conductivity, known = m.Wetted(change)
		back, _ := wet.Wetted(-change)
		if math.Abs(float64(back/m.Conductivity)-1) > 1e-12 || wet.Conductivity < m.Conductivity || known != (m.Wetting > 0) {
			t.Errorf("%s wetted by %g: %g W/mK, back to %g from %g", m.Name, change, float64(wet.Conductivity), float64(back), float64(m.Conductivity))
		}
	})
}
