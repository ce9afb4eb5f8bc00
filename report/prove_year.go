package report

import (
	"fmt"
	"slices"

	"suffice/people"
	"suffice/power"
	"suffice/water"
)

// waterYear tells the mean year of the water.
func (p *Proof) waterYear(w *lines) {
	if p.Run.House.Water == nil {
		return
	}
	t, years := &p.Stated.Totals, float64(p.Years())
	row := func(name string, litres float64) {
		if litres != 0 {
			w.line("  %-34s %10s L", name, grouped(litres/years))
		}
	}
	in := &t.Income
	w.line("\nWater in a mean year")
	row("fell on the roofs", float64(in.Fell))
	row("  dried off the roofs", float64(in.Wetted))
	row("  went past the gutters", float64(in.Missed))
	row("  first flush, led away", float64(in.Diverted))
	row("  into the tanks", float64(in.Caught))
	row("brought by road", float64(in.Delivered))
	row("overflowed", float64(in.Spilled))
	row("leaked", float64(in.Leaked))
	for k := range people.Kinds {
		row("for "+k.String(), float64(t.Served[k]))
	}
	row("lost in treatment", float64(t.Backwash))
	for c := range water.Causes {
		row("not had: "+causeWords[c], float64(t.Cause[c]))
	}
	if in.Loads > 0 {
		w.line("  %-34s %10s  %s", "loads brought by road", short(float64(in.Loads)/years), p.money(in.Paid/years))
	}
	w.line("  %-34s %10s kWh", "electricity of pump and treatment", short(float64(t.Pump+t.Treatment)/1000/years))
}

func (p *Proof) money(amount float64) string {
	if amount == 0 {
		return ""
	}
	return fmt.Sprintf("(%.0f %s)", amount, p.Run.House.Money)
}

var causeWords = [water.Causes]string{
	water.TankLow: "tank too low", water.SupplyFlow: "pump or pipe too small", water.TreatmentFlow: "treatment too slow",
	water.PumpPower: "no power for the pump", water.TreatmentPower: "no power for treatment",
}

// powerYear tells the mean year of the power.
func (p *Proof) powerYear(w *lines) {
	if p.Run.House.Power == nil {
		return
	}
	t, years := &p.Stated.Totals, float64(p.Years())
	e := &t.Power
	row := func(name string, wh float64) {
		if wh != 0 {
			w.line("  %-34s %10s kWh", name, grouped(wh/1000/years))
		}
	}
	w.line("\nPower in a mean year")
	row("the panels could give", float64(e.Income))
	row("  not used: stores full, nobody asks", float64(e.Curtailed))
	row("generator", float64(e.Generator))
	row("into the battery", float64(e.Charged))
	row("out of the battery", float64(e.Discharged))
	row("lost in controller and inverter", float64(e.ControllerLoss+e.ChargerLoss+e.InverterLoss))
	row("lost in the battery", float64(e.BatteryLoss+e.SelfDischarge))
	row("to pump, treatment, solar loop", float64(t.Services-e.ServiceShort))
	for n := range power.Needs {
		row("to loads that "+n.String()+" run", float64(e.Met[n]))
		row("not had by loads that "+n.String()+" run", float64(e.Short[n]))
	}
	row("to tasks that waited for sun", float64(e.MadeUp))
	row("to the hot water element", float64(e.HotWater))
	if e.Fuel > 0 {
		w.line("  %-34s %10s L", "fuel of the generator", short(float64(e.Fuel)/years))
	}
}

// heatYear tells the mean year of hot water and gas.
func (p *Proof) heatYear(w *lines) {
	j, g := p.hotWaterJSON(), p.gasJSON()
	if j != nil {
		w.line("\nHot water in a mean year")
		w.line("  %-34s %10s kWh", "heat at the taps", grouped(j.DeliveredKWh))
		w.line("  %-34s %10s kWh  (%s of the heat brought in)", "from the sun", grouped(j.SolarKWh), percent(j.SolarShare))
		w.line("  %-34s %10s kWh  (%s times a year, %s days each)", "from the backup", grouped(j.BackupKWh), short(j.EpisodesPerYear), short(j.EpisodeDaysPerOne))
		if j.ShortKWh > 0 {
			w.line("  %-34s %10s kWh", "wanted and not had", short(j.ShortKWh))
		}
	}
	if g != nil {
		w.line("\nGas in a mean year")
		w.line("  %-34s %10s kg  (%s bottles)", "burned", short(g.Kilograms), short(g.Bottles))
		if g.ShortKWh > 0 {
			w.line("  %-34s %10s kWh", "wanted and not had", short(g.ShortKWh))
		}
	}
}

// months draws the stores through the year: the middle of all days of a month, and dots
// from the tenth to the ninetieth hundredth.
func (p *Proof) months(w *lines) {
	if p.Run.House.Water != nil {
		p.monthChart(w, "Usable water in the tanks at midnight, by month (● the middle day; the dots hold eight days of ten)",
			func(day int) float64 { return p.Stated.Days[day].TankEnd })
	}
	if p.Run.House.Power != nil {
		p.monthChart(w, "Lowest charge of the battery in a day, by month", func(day int) float64 { return p.Stated.Days[day].ChargeLow })
	}
}

const chartWidth = 51

func (p *Proof) monthChart(w *lines, title string, share func(day int) float64) {
	w.line("")
	for _, l := range wrap(title, 78) {
		w.line("%s", l)
	}
	w.line("            %s", ticks("0 %", "50 %", "100 %", chartWidth))
	for m := 1; m <= 12; m++ {
		low, middle, high := p.monthQuantiles(m, share)
		w.line("  %-9s |%s| %3.0f %%", monthNames[m], span(low, middle, high, chartWidth), 100*middle)
	}
}

func (p *Proof) monthQuantiles(month int, share func(day int) float64) (low, middle, high float64) {
	var all []float64
	for d := range p.Run.Weather.Days {
		if int(p.Run.Weather.Days[d].Month) == month {
			all = append(all, share(d))
		}
	}
	if len(all) == 0 {
		return 0, 0, 0
	}
	slices.Sort(all)
	at := func(q float64) float64 { return all[int(q*float64(len(all)-1)+0.5)] }
	return at(0.1), at(0.5), at(0.9)
}
