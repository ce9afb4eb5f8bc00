package light

import (
	"math"
	"slices"
	"strings"
	"testing"

	"suffice/glass"
	"suffice/quantity"
	"suffice/site/sun"
	"suffice/site/weather"
)

// What cannot be is said, with its value and its limit, all at once.
func TestFaultsAreSaid(t *testing.T) {
	o := outdoors(t, denver, Options{})
	leaning := suiteWindow(180, twoPanes(), hung)
	leaning.Plane.Slope = 30
	leaning.Outer.Emissivity = 1.2
	_, window := o.Window(leaning)
	_, face := o.Face(Face{Absorptance: 1.5, Outer: Outer{Convection: -1}})
	_, room := NewRoom(Box{Width: 4, Depth: 200, Height: 2.5})
	_, landing := o.Landing(suiteRoom(t), suiteWindow(180, twoPanes(), bare), Spot{Side: Front, Along: 6, Sill: 1})
	_, floor := o.Landing(suiteRoom(t), suiteWindow(180, twoPanes(), bare), Spot{Side: Floor})
	_, outdoors := NewOutdoors(&weather.Hours{Days: make([]weather.Day, 1)}, &sun.Track{}, Options{Albedo: 2})
	for _, c := range []struct {
		err  error
		says []string
	}{
		{window, []string{"upright windows only", "emissivity of 1.2"}},
		{face, []string{"takes up 1.5", "convection of -1"}},
		{room, []string{"200 m", "takes up 0 of the light"}},
		{landing, []string{"from 6 m to 9 m", "wall 8 m long", "from 1 m to 3 m up", "wall 2.7 m high"}},
		{floor, []string{"four walls"}},
		{outdoors, []string{"no light", "0 hours, the record 24", "albedo of 2"}},
	} {
		for _, says := range c.says {
			if c.err == nil || !strings.Contains(c.err.Error(), says) {
				t.Errorf("got %v, want an error saying %q", c.err, says)
			}
		}
	}
}

// Days that tell no cloud lie straight between those that do, level at the ends, and half clouded where none does.
func TestBridge(t *testing.T) {
	dark := math.NaN()
	for _, c := range []struct{ days, want []float64 }{
		{[]float64{dark, 0.2, dark, dark, 0.8, dark}, []float64{0.2, 0.2, 0.4, 0.6, 0.8, 0.8}},
		{[]float64{dark, dark}, []float64{0.5, 0.5}},
		{[]float64{0.1}, []float64{0.1}},
	} {
		got := slices.Clone(c.days)
		bridge(got)
		for i := range got {
			if math.Abs(got[i]-c.want[i]) > 1e-12 {
				t.Errorf("%v became %v, want %v", c.days, got, c.want)
			}
		}
	}
}

// A mirrored sun falls on mirrored walls.
func TestBeamMirrored(t *testing.T) {
	r := suiteRoom(t)
	w := suiteWindow(180, twoPanes(), hung)
	mirrored := w
	mirrored.Shade.Overhang.Left, mirrored.Shade.Overhang.Right = w.Shade.Overhang.Right, w.Shade.Overhang.Left
	for _, azimuth := range []quantity.Degrees{5, 20, 45, 70} {
		for _, altitude := range []quantity.Degrees{5, 15, 30, 50} {
			east := r.First(w, Spot{Side: Front, Along: 0.5, Sill: 0.2}, glass.RayTo(altitude, 180-azimuth, 180))
			west := r.First(mirrored, Spot{Side: Front, Along: 4.5, Sill: 0.2}, glass.RayTo(altitude, 180+azimuth, 180))
			west[Left], west[Right] = west[Right], west[Left]
			for j := range east {
				if math.Abs(east[j]-west[j]) > 1e-9 {
					t.Errorf("azimuth %v, altitude %v: %v of one, %v of the other", float64(azimuth), float64(altitude), east, west)
					break
				}
			}
		}
	}
}

// Eight pieces along a shaded edge are enough: cut four times finer, no side gains or loses more than a
// hundredth of what the open window would let in.
func TestPiecesAreEnough(t *testing.T) {
	r, worst := suiteRoom(t), 0.0
	at := Spot{Side: Front, Along: 0.5, Sill: 0.2}
	for _, shade := range []glass.Shade{hung, finned} {
		w := suiteWindow(180, twoPanes(), shade)
		var fine []cell
		for _, c := range cut(w) {
			part := w
			part.Shade = c.shade
			for _, f := range cutInto(part, 4, 4) {
				f.x, f.y = f.x+c.x, f.y+c.y
				fine = append(fine, f)
			}
		}
		for azimuth := quantity.Degrees(100); azimuth <= 260; azimuth += 20 {
			for altitude := quantity.Degrees(5); altitude <= 65; altitude += 10 {
				ray := glass.RayTo(altitude, azimuth, 180)
				got, reached := r.lands(cut(w), at, ray)
				want, _ := r.lands(fine, at, ray)
				for j := range got {
					if reached {
						worst = max(worst, math.Abs(got[j]-want[j])*w.Shade.Sunlit(ray))
					}
				}
			}
		}
	}
	t.Logf("at most %.4f of an open window's beam on another side", worst)
	if worst > 0.01 {
		t.Errorf("%.4f of an open window's beam falls on another side when the window is cut finer, want 0.01 at most", worst)
	}
}
