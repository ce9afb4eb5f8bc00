package reduce

import "testing"

// A step makes nothing that has to be cleared away.
func TestStepsAllocateNothing(t *testing.T) {
	m, err := built().Reduce(Options{Within: 0.05})
	if err != nil {
		t.Fatal(err)
	}
	s, u := m.Steps(3600), make([]float64, len(m.Inputs))
	z, mean, answers, seen := make([]float64, m.Modes()), make([]float64, m.Modes()), make([]float64, len(u)), make([]float64, len(m.Outputs))
	for k := range u {
		u[k] = 10
	}
	if n := testing.AllocsPerRun(20, func() {
		s.Go(z, mean, u)
		m.Answer(answers, mean, u)
		m.See(seen, mean, u)
	}); n != 0 {
		t.Errorf("a step makes %v allocations, want none", n)
	}
}

func BenchmarkHouse(b *testing.B) {
	h := built()
	b.Run("reduce", func(b *testing.B) {
		b.ReportAllocs()
		for b.Loop() {
			if _, err := h.Reduce(Options{Within: 0.05}); err != nil {
				b.Fatal(err)
			}
		}
	})
	m, err := h.Reduce(Options{Within: 0.05})
	if err != nil {
		b.Fatal(err)
	}
	s, u, z, mean := m.Steps(3600), make([]float64, len(m.Inputs)), make([]float64, m.Modes()), make([]float64, m.Modes())
	for k := range u {
		u[k] = 10
	}
	b.Run("step", func(b *testing.B) {
		b.ReportAllocs()
		b.ReportMetric(float64(m.Modes()), "modes")
		for b.Loop() {
			s.Go(z, mean, u)
		}
	})
}
