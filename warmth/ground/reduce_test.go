package ground

import (
	"bytes"
	"encoding/gob"
	"encoding/json"
	"math"
	"math/rand"
	"reflect"
	"strings"
	"testing"

	"suffice/internal/check"
	"suffice/internal/reduce"
)

const house = 12.0 // m

func few(t testing.TB, n *Network, o reduce.Options) *reduce.Model {
	t.Helper()
	m, err := n.Reduce(house, o)
	if err != nil {
		t.Fatal(err)
	}
	return m
}

// At rest the modes give what the section gives.
func TestReducedSectionAtRest(t *testing.T) {
	n, _ := drawn(t, invented(), Fine())
	coupling, err := n.Coupling()
	if err != nil {
		t.Fatal(err)
	}
	for _, o := range []reduce.Options{{}, UsualModes(), {Modes: 3}} {
		m := few(t, n, o)
		for b := range coupling {
			u, answers := make([]float64, 4), make([]float64, 4)
			u[b] = -1
			m.Answer(answers, m.Steady(u), u)
			for a := range coupling {
				if a != b {
					check.Balance(t, answers[a], house*coupling[a][b], n.Section.Airs[a].Name+" to "+n.Section.Airs[b].Name+", W/K")
				}
			}
		}
		held := 0.0
		for _, c := range n.capacity {
			held += c * house
		}
		check.Balance(t, m.Stored(m.Steady([]float64{1, 1, 1, 1}))/held, 1, "heat held by everything a degree warmer")
	}
}

// airsOf gives the airs of a dug room hour by hour: outside by season, day and chance, inside warmer and steadier.
func airsOf(airs DugAirs, hours int) [][]float64 {
	random := rand.New(rand.NewSource(3))
	spell := 0.0
	rows := make([][]float64, hours)
	for hour := range rows {
		if hour%8760 == 0 {
			random, spell = rand.New(rand.NewSource(3)), 0
		}
		year, day := 2*math.Pi*float64(hour)/8760, 2*math.Pi*float64(hour)/24
		spell = 0.98*spell + 0.7*random.NormFloat64()
		u := make([]float64, 4)
		u[airs.Garden] = 9 - 10*math.Cos(year-0.3) - 5*math.Cos(day-0.6) + spell
		u[airs.Slope] = u[airs.Garden] + 6*max(0, -math.Cos(day))
		u[airs.Floor] = 19 - 3*math.Cos(year-0.4) - 2*math.Cos(day-0.8) + 0.2*spell
		u[airs.Wall] = u[airs.Floor] + 0.3*math.Sin(day)
		rows[hour] = u
	}
	return rows
}

// Through a year of hours the modes give what the section gives in steps of the hour, and are as warm.
func TestReducedSectionInTime(t *testing.T) {
	n, airs := drawn(t, invented(), Grid{Finest: 0.1, Grows: 2, Coarsest: 4})
	m := few(t, n, UsualModes())
	lived(t, n, m, airsOf(airs, 2*8760), 1)
}

func lived(t *testing.T, n *Network, m *reduce.Model, rows [][]float64, parts int) {
	t.Helper()
	const airs = 4
	mean := make([]float64, airs)
	for _, u := range rows {
		for k, v := range u {
			mean[k] += v / float64(len(rows))
		}
	}
	field := steady(t, n, mean...)
	step, err := n.Steps(3600/float64(parts), 0.5)
	if err != nil {
		t.Fatal(err)
	}
	nodes, z, zs := field.Nodes, m.Steady(mean), m.Steps(3600)
	zm, answers, flows := make([]float64, m.Modes()), make([]float64, airs), make([]float64, airs)
	begin, entered, passed := m.Stored(z), 0.0, 0.0
	var squares, gotYear, wantYear [airs]float64
	long := n.Faces()
	for hour, u := range rows {
		want := make([]float64, airs)
		for range parts {
			step.Step(nodes, u, u, flows)
			for k, f := range flows {
				want[k] += f / float64(parts)
			}
		}
		zs.Go(z, zm, u)
		m.Answer(answers, zm, u)
		entered += 3600 * m.Entering(answers, u)
		for k, a := range answers {
			passed += 3600 * math.Abs(a)
			if hour < len(rows)/2 {
				continue
			}
			gotYear[k] += a
			wantYear[k] += want[k] * house
			d := (a/house - want[k]) / long[k] * n.Section.Airs[k].Resists
			squares[k] += d * d
		}
	}
	check.Balance(t, (m.Stored(z)-begin)/passed, entered/passed, "heat held and entered, of all that passed")
	for k, a := range n.Section.Airs {
		off, heat := math.Sqrt(squares[k]/float64(len(rows)/2)), gotYear[k]/wantYear[k]-1
		t.Logf("%s: %d modes for %d nodes, face %.4f K rms, yearly heat %.0f kWh, %.4f %% off", a.Name, m.Modes(), n.Nodes(), off, wantYear[k]/1000, 100*heat)
		if off > 0.05 || math.Abs(heat) > 0.001 {
			t.Errorf("%s: face %.4f K rms, yearly heat %.4f %% off", a.Name, off, 100*heat)
		}
	}
}

// A model outlives the program: it comes back from a file to the last bit.
func TestReducedSectionIsKept(t *testing.T) {
	n, _ := drawn(t, invented(), Grid{Finest: 0.1, Grows: 2, Coarsest: 4})
	m := few(t, n, UsualModes())
	var file bytes.Buffer
	var fromGob, fromJSON reduce.Model
	if err := gob.NewEncoder(&file).Encode(m); err != nil {
		t.Fatal(err)
	}
	size := file.Len()
	if err := gob.NewDecoder(&file).Decode(&fromGob); err != nil {
		t.Fatal(err)
	}
	text, err := json.Marshal(m)
	if err != nil {
		t.Fatal(err)
	}
	if err := json.Unmarshal(text, &fromJSON); err != nil {
		t.Fatal(err)
	}
	if !reflect.DeepEqual(&fromGob, m) || !reflect.DeepEqual(&fromJSON, m) {
		t.Error("what came back is not what went")
	}
	t.Logf("%d bytes as gob, %d as JSON", size, len(text))
}

func TestReduceRefusesNoLength(t *testing.T) {
	n, _ := drawn(t, invented(), Grid{Finest: 0.1, Grows: 2, Coarsest: 4})
	if _, err := n.Reduce(0, UsualModes()); err == nil || !strings.Contains(err.Error(), "length is above 0") {
		t.Errorf("got %v", err)
	}
}

// Preparing the fine section, beside a million multiplications that each wait for the one before; only the ratio of the two can be compared.
func BenchmarkReduce(b *testing.B) {
	b.Run("yardstick", func(b *testing.B) {
		for b.Loop() {
			if multiply(1, 1_000_000) <= 1 {
				b.Fatal("the yardstick was not worked")
			}
		}
	})
	b.Run("dug", func(b *testing.B) {
		s, _, err := invented().Section(Fine(), UsualSurfaces())
		if err != nil {
			b.Fatal(err)
		}
		b.ReportAllocs()
		for b.Loop() {
			few(b, network(b, s), UsualModes())
		}
	})
}

// multiply keeps its product in a register.
func multiply(product float64, times int) float64 {
	for range times {
		product *= 1.0000001
	}
	return product
}
