package report

import (
	"sync"

	"suffice/hourly"
	"suffice/site/weather"
)

// A Proof is what a house's life through its weather came to: from the start that its file
// states, and from full and half-full stores beside it.
type Proof struct {
	Run            *hourly.Run
	Stated         *hourly.Account // the verdict
	Full, HalfFull *hourly.Account // how much the start matters
	Weather        Sky
}

// Sky is what stands behind the hours.
type Sky struct {
	Source string // the file or built-in record
	Report weather.Report
}

// Prove lives the record from the three starts.
func Prove(r *hourly.Run) (*Proof, error) {
	p := &Proof{Run: r}
	starts := []struct {
		to    **hourly.Account
		state hourly.State
	}{{&p.Stated, r.Start()}, {&p.Full, r.StartAt(1)}, {&p.HalfFull, r.StartAt(0.5)}}
	faults := make([]error, len(starts))
	var wait sync.WaitGroup
	for i, s := range starts {
		wait.Go(func() { *s.to, faults[i] = r.Account(s.state) })
	}
	wait.Wait()
	for _, err := range faults {
		if err != nil {
			return nil, err
		}
	}
	return p, nil
}

// Suffices reports whether every budget with a want suffices from the stated start.
func (p *Proof) Suffices() bool {
	a := p.Stated
	return (!a.Water.Wanted || a.Water.Suffices()) && (!a.Power.Wanted || a.Power.Suffices()) && (!a.Warmth.Wanted || a.Warmth.Suffices()) &&
		(!a.Waste.Wanted || a.Waste.Suffices()) && (!a.Food.Wanted || a.Food.Suffices())
}

// Years gives how many calendar years were lived.
func (p *Proof) Years() int { return p.Stated.Power.Years }
