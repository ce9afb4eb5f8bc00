package report

import "fmt"

// warmth tells the verdict on the rooms, and what each was like.
func (p *Proof) warmth(w *lines) {
	a := p.Stated
	if len(a.Rooms) == 0 {
		return
	}
	word, want := "no want is stated, so no verdict", ""
	if a.Warmth.Wanted {
		word, want = "FALLS SHORT", fmt.Sprintf("; the file allows %.0f", a.Warmth.Want)
		if a.Warmth.Suffices() {
			word = "SUFFICES"
		}
	}
	w.line("%-7s %s", "WARMTH", word)
	if a.Warmth.Room != "" {
		w.line("        %s hours a year outside the band of comfort in %s%s", grouped(a.Warmth.Outside), a.Warmth.Room, want)
	}
	years := float64(p.Years())
	w.line("        %-20s %8s %8s %8s %10s %10s", "room, degC", "coldest", "mean", "warmest", "too cold", "too hot")
	machines := false
	for i := range a.Rooms {
		y := &a.Rooms[i]
		machines = machines || y.PeakHeating > 0 || y.PeakCooling > 0
		w.line("        %-20s %8.1f %8.1f %8.1f %8s h %8s h", y.Name, float64(y.Coldest), float64(y.Mean), float64(y.Warmest),
			grouped(y.Comfort.Cold/years), grouped(y.Comfort.Hot/years))
	}
	if machines {
		p.machines(w)
	}
	w.line("")
}

// machines tells what heating and cooling without limit would have done.
func (p *Proof) machines(w *lines) {
	w.line("        %-20s %12s %10s %12s %10s", "held by machines", "heat a year", "at most", "cooling", "at most")
	years := float64(p.Years())
	for i := range p.Stated.Rooms {
		if y := &p.Stated.Rooms[i]; y.PeakHeating > 0 || y.PeakCooling > 0 {
			w.line("        %-20s %8s kWh %7s kW %8s kWh %7s kW", y.Name, grouped(float64(y.Heating)/1000/years), short3(float64(y.PeakHeating)/1000),
				grouped(float64(y.Cooling)/1000/years), short3(float64(y.PeakCooling)/1000))
		}
	}
}
