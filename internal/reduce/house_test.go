package reduce

import (
	"math"
	"math/rand"
	"testing"

	"suffice/internal/check"
)

// A layer has thickness, m, conductivity, W/mK, and capacity, J/m3K.
type layer struct{ thick, conducts, holds float64 }

func brick(t float64) layer    { return layer{t, 0.77, 1.4e6} }
func concrete(t float64) layer { return layer{t, 1.8, 2.1e6} }
func wool(t float64) layer     { return layer{t, 0.037, 3e4} }
func board(t float64) layer    { return layer{t, 0.21, 7e5} }

// A house of two rooms: a glazed one in front and one behind, earth below, a wall between. Inside faces are nodes without capacity between air
// (2.5 W/m2K) and what radiates (5.1 W/m2K).
type house struct {
	*Network
	air, star   [2]int
	stove, rays [2]int
}

func (h *house) face(room int, area float64) int {
	f := h.Node(0)
	h.Link(f, h.air[room], 2.5*area)
	h.Link(f, h.star[room], 5.1*area)
	return f
}

// wall lays layers from an inside face outward in cells of a few centimetres, and gives the last node and the resistance, K/W, left from there.
func (h *house) wall(face int, area float64, layers ...layer) (last int, left float64) {
	last = face
	for _, l := range layers {
		cells := int(math.Ceil(l.thick / 0.03))
		half := l.thick / float64(cells) / 2 / l.conducts / area
		for range cells {
			c := h.Node(l.holds * l.thick / float64(cells) * area)
			h.Link(last, c, 1/(left+half))
			last, left = c, half
		}
	}
	return last, left
}

func (h *house) outer(room int, name string, area, film float64, layers ...layer) {
	f := h.face(room, area)
	last, left := h.wall(f, area, layers...)
	h.Meet(last, h.Boundary(name), 1/(left+film/area))
	h.Spread(f, h.stove[room], 0) // nothing of the stove falls on a wall by itself
}

func built() *house {
	h := &house{Network: NewNetwork(0)}
	outside := h.Boundary("outside")
	for i, name := range []string{"front", "back"} {
		h.air[i], h.star[i] = h.Node(1.2e5), h.Node(0)
		h.stove[i], h.rays[i] = h.Heat(name+" air"), h.Heat(name+" rays")
		h.Spread(h.air[i], h.stove[i], 1)
		h.Spread(h.star[i], h.rays[i], 1)
		h.Meet(h.air[i], outside, 12)
		h.See(h.air[i], h.Output(name+" air"), 1)
		h.See(h.star[i], h.Output(name+" star"), 1)
	}
	glass := h.face(0, 12)
	h.Meet(glass, outside, 12/(1/1.6-1/7.6))
	sun := h.Heat("sun on the floor")
	floor := h.face(0, 40)
	h.Spread(floor, sun, 1)
	last, left := h.wall(floor, 40, concrete(0.12), wool(0.1), layer{0.5, 1.5, 3e6})
	h.Meet(last, h.Boundary("ground, front"), 1/(left+1.0/40))
	h.outer(1, "ground, back", 30, 1.0, concrete(0.12), wool(0.1), layer{0.5, 1.5, 3e6})
	h.outer(0, "south wall", 15, 0.04, brick(0.2), wool(0.12), board(0.02))
	h.outer(0, "roof, front", 42, 0.04, board(0.02), wool(0.25), board(0.02))
	h.outer(1, "roof, back", 31, 0.04, board(0.02), wool(0.25), board(0.02))
	h.outer(1, "north wall", 25, 0.04, brick(0.2), wool(0.12), board(0.02))
	last, left = h.wall(h.face(0, 25), 25, brick(0.24))
	h.Link(last, h.face(1, 25), 1/left)
	return h
}

// weather drives the house for so many hours: season, day and noise of days and hours; sun.
func weather(m *Model, hours int) [][]float64 {
	random := rand.New(rand.NewSource(7))
	rows := make([][]float64, hours)
	spell, gust := 0.0, 0.0
	for hour := range rows {
		u := make([]float64, len(m.Inputs))
		year, day := 2*math.Pi*float64(hour%8760)/8760, 2*math.Pi*float64(hour%24)/24
		if hour%8760 == 0 {
			random, spell, gust = rand.New(rand.NewSource(7)), 0, 0 // each year alike
		}
		spell = 0.98*spell + 0.8*random.NormFloat64()
		gust = 0.6*gust + 0.8*random.NormFloat64()
		air := 10 - 10*math.Cos(year) - 5*math.Cos(day-0.5) + spell + gust
		sun := max(0, -math.Cos(day)-0.2+0.4*(1-math.Cos(year))/2) * (0.3 + 0.7*math.Abs(math.Sin(float64(hour/24))))
		for k, in := range m.Inputs {
			switch in.Name {
			case "outside":
				u[k] = air
			case "ground, front", "ground, back":
				u[k] = 10 - 4*math.Cos(year-0.8)
			case "south wall":
				u[k] = air + 25*sun
			case "roof, front", "roof, back":
				u[k] = air + 20*sun - 3
			case "north wall":
				u[k] = air + 3*sun
			case "sun on the floor":
				u[k] = 3000 * sun
			case "front air":
				u[k] = []float64{150, 400}[hour%24/17]
			case "back air":
				u[k] = []float64{50, 200}[(hour+3)%24/17]
			default:
				u[k] = 60
			}
		}
		rows[hour] = u
	}
	return rows
}

// rms gives how far each input goes up and down about its mean.
func rms(rows [][]float64) []float64 {
	swings, mean := make([]float64, len(rows[0])), means(rows)
	for _, u := range rows {
		for k, v := range u {
			swings[k] += (v - mean[k]) * (v - mean[k]) / float64(len(rows))
		}
	}
	for k, square := range swings {
		swings[k] = math.Sqrt(square)
	}
	return swings
}

// means gives the mean of each input.
func means(rows [][]float64) []float64 {
	means := make([]float64, len(rows[0]))
	for _, u := range rows {
		for k, v := range u {
			means[k] += v / float64(len(rows))
		}
	}
	return means
}

// A life is what a model saw in its second year.
type life struct {
	outputs [][]float64 // of each hour, means
	heats   []float64   // Wh by each input
	lacks   float64     // most that the balance lacked since the beginning, over the heat that had passed boundaries
}

func live(m *Model, rows [][]float64) (l life) {
	s := m.Steps(3600)
	z, mean, answers := m.Steady(means(rows)), make([]float64, m.Modes()), make([]float64, len(m.Inputs))
	l.heats = make([]float64, len(m.Inputs))
	begin, entered, passed := m.Stored(z), 0.0, 0.0
	for hour, u := range rows {
		s.Go(z, mean, u)
		m.Answer(answers, mean, u)
		for k, a := range answers {
			if !m.Inputs[k].Heat {
				passed += 3600 * math.Abs(a)
			}
		}
		entered += 3600 * m.Entering(answers, u)
		l.lacks = max(l.lacks, math.Abs(m.Stored(z)-begin-entered)/passed)
		if hour < len(rows)/2 {
			continue
		}
		y := make([]float64, len(m.Outputs))
		m.See(y, mean, u)
		l.outputs = append(l.outputs, y)
		for k, a := range answers {
			l.heats[k] += a
		}
	}
	return l
}

// apart gives the worst rms of an output, K, and the worst difference of a year's heat by a boundary, as a share of it.
func apart(m *Model, a, b life) (rms, heat float64, where string) {
	for y := range m.Outputs {
		sum := 0.0
		for hour := range a.outputs {
			d := a.outputs[hour][y] - b.outputs[hour][y]
			sum += d * d
		}
		rms = max(rms, math.Sqrt(sum/float64(len(a.outputs))))
	}
	for k, in := range m.Inputs {
		if d := math.Abs(a.heats[k]/b.heats[k] - 1); !in.Heat && d > heat {
			heat, where = d, in.Name
		}
	}
	return rms, heat, where
}

// Fewer modes are enough where fewer outputs need be right in the hour, and what is not looked at keeps its gain at rest.
func TestWatchSparesModes(t *testing.T) {
	h := built()
	all, err := h.Reduce(Options{Within: 0.01})
	if err != nil {
		t.Fatal(err)
	}
	one, err := h.Reduce(Options{Within: 0.01, Watch: []float64{1, 0, 0, 0}})
	if err != nil {
		t.Fatal(err)
	}
	t.Logf("%d modes for four outputs, %d for one", all.Modes(), one.Modes())
	if one.Modes() >= all.Modes() {
		t.Errorf("%d modes for one output, %d for all four", one.Modes(), all.Modes())
	}
	u := make([]float64, len(all.Inputs))
	for k := range u {
		u[k] = float64(k*k%7) + 1
	}
	a, b := make([]float64, 4), make([]float64, 4)
	all.See(a, all.Steady(u), u)
	one.See(b, one.Steady(u), u)
	for y := range a {
		check.Balance(t, a[y], b[y], all.Outputs[y]+" at rest, degC")
	}
}

// Few modes live the year as all of them do: free temperatures within 0.05 K rms, the year's heat through each boundary within 0.1 %.
// Both close their balance in every hour.
func TestHouseOfTwoRooms(t *testing.T) {
	h := built()
	full, err := h.Reduce(Options{})
	if err != nil {
		t.Fatal(err)
	}
	rows := weather(full, 2*8760)
	swings := rms(rows)
	want := live(full, rows)
	t.Logf("%d nodes, %d modes, balance %.2g", len(h.capacity), full.Modes(), want.lacks)
	for _, o := range []Options{{Modes: 4}, {Modes: 6}, {Modes: 8}, {Modes: 10}, {Modes: 12}, {Modes: 16}, {Modes: 20}, {Within: 0.05}, {Within: 0.02}, {Within: 0.005}, {Within: 0.0005}} {
		o.Inputs = swings
		m, err := h.Reduce(o)
		if err != nil {
			t.Fatal(err)
		}
		got := live(m, rows)
		off, heat, where := apart(m, got, want)
		t.Logf("%2d modes (%d, %g): off %.4f K, rms %.4f K, yearly heat %.5f %% (%s), balance %.2g", m.Modes(), o.Modes, o.Within, m.Off, off, 100*heat, where, got.lacks)
		if got.lacks > 1e-9 {
			t.Errorf("%d modes: the balance lacks %.3g of the heat", m.Modes(), got.lacks)
		}
		if enough := o.Within > 0 && o.Within <= 0.05; enough && (off > 0.05 || heat > 0.001) {
			t.Errorf("%d modes: rms %.4f K, yearly heat %.4f %% (%s)", m.Modes(), off, 100*heat, where)
		}
	}
}
