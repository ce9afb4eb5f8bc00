package report

import (
	"fmt"
	"strings"

	"suffice/hourly"
	"suffice/warmth/comfort"
)

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
	p.stoves(w)
	p.seasons(w)
	p.rhythms(w)
	w.line("")
}

// seasons tells when the rooms lie outside their band, in hours and in degrees times hours.
func (p *Proof) seasons(w *lines) {
	w.line("        %-16s   %-25s    %s", "a year, by season", "too cold", "too hot")
	line := "        %-16s "
	heads := []any{""}
	for range 2 {
		for s := range hourly.Season(hourly.Seasons) {
			line += " %6s"
			heads = append(heads, s)
		}
		line += "  "
	}
	line = strings.TrimRight(line, " ")
	w.line(line, heads...)
	years := float64(p.Years())
	for i := range p.Stated.Rooms {
		y := &p.Stated.Rooms[i]
		if !y.LivedIn {
			continue
		}
		hours, degrees := []any{headed(y.Name, 13) + ", h"}, []any{"  K h"}
		for _, of := range []func(c *comfort.Count) (hours, degrees float64){
			func(c *comfort.Count) (float64, float64) { return c.Cold, c.ColdDegree },
			func(c *comfort.Count) (float64, float64) { return c.Hot, c.HotDegree },
		} {
			for s := range y.Seasons {
				h, d := of(&y.Seasons[s])
				hours, degrees = append(hours, grouped(h/years)), append(degrees, grouped(d/years))
			}
		}
		w.line(line, hours...)
		w.line(line, degrees...)
	}
}

// headed cuts a name to so many letters.
func headed(name string, most int) string {
	letters := []rune(name)
	return string(letters[:min(most, len(letters))])
}

// rhythms tells how far the rooms swing in a day, how many times less their daily wave goes than that outside, and how much later it
// stands highest.
func (p *Proof) rhythms(w *lines) {
	w.line("        %-16s   %-25s    %s", "in a day", "winter", "summer")
	w.line("        %-16s %8s %8s %8s   %8s %8s %8s", "", "swing, K", "damped", "later, h", "swing, K", "damped", "later, h")
	told := [2]hourly.Season{hourly.Winter, hourly.Summer}
	first := &p.Stated.Rooms[0].Rhythms
	w.line("        %-16s %8.1f %17s   %8.1f", "outside", float64(first[told[0]].SwingsOutside), "", float64(first[told[1]].SwingsOutside))
	for i := range p.Stated.Rooms {
		y := &p.Stated.Rooms[i]
		cells := []any{headed(y.Name, 16)}
		for _, s := range told {
			times, later := y.Rhythms[s].Damped()
			cells = append(cells, float64(y.Rhythms[s].Swing), times, later)
		}
		w.line("        %-16s %8.1f %8.1f %+8.1f   %8.1f %8.1f %+8.1f", cells...)
	}
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

// stoves tells the wood that was burned.
func (p *Proof) stoves(w *lines) {
	years := float64(p.Years())
	for i := range p.Stated.Rooms {
		y := &p.Stated.Rooms[i]
		v := p.Run.House.Rooms.Stoves[i]
		if v == nil {
			continue
		}
		b := &y.Stove
		told := fmt.Sprintf("the stove in %s burns %s kg of wood a year in %s hours, of which %s kWh warm the room", y.Name, grouped(float64(b.Wood)/years), grouped(b.Hours/years), grouped(float64(b.Heat)/1000/years))
		if b.Wood > 0 {
			told += fmt.Sprintf("; most in one winter, %s kg, in that of %d", grouped(float64(b.Most)), b.Winter)
		}
		for _, l := range wrap(told, 70) {
			w.line("        %s", l)
		}
	}
}
