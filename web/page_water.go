package web

import (
	"fmt"
	"net/http"
	"strings"

	"suffice/people"
	"suffice/water"
)

// A waterView is the page.
type waterView struct {
	Tallies  []tally
	Uses     []string // how often a litre is used
	Months   grid     // planter, flushing and top-up
	Well     []string
	Train    grid
	Credited []string
	Barriers workings
}

func waterPage(v *view, _ *http.Request) shown {
	title := v.Say("water.title")
	if !v.hasWater() {
		return shown{Here: "/water", Title: title, Body: absent(v, title, v.Say("water.absent"))}
	}
	var w waterView
	var err error
	if w.Tallies, err = v.tallies(v.roofs, v.tanks, v.taps); err != nil {
		return v.faulty(err)
	}
	w.Uses, w.Well, w.Months = v.usesSaid(), v.wellSaid(), v.usedMonths()
	w.treat(v)
	return shown{Here: "/water", Title: title, Body: waterBody(v, &w)}
}

// faulty is the page of a fault that is the program's own.
func (v *view) faulty(err error) shown {
	return shown{Status: http.StatusInternalServerError, Title: v.Say("fault.title"), Body: absent(v, v.Say("fault.title"), v.Say("fault.own", "fault", err))}
}

// usesSaid tells how often a litre is used, and by which way most often.
func (v *view) usesSaid() (list []string) {
	t := &v.Proof.Stated.Totals
	uses := v.Proof.Run.Uses(t)
	mean, offered := uses.Mean(), uses.MeanOffered()
	if mean == 0 {
		return []string{v.Say("uses.untold")}
	}
	ways := []string{v.Say("uses.tap")}
	if v.hasPlanter() {
		ways = append(ways, v.Say("uses.planter"))
	}
	if v.hasWell() {
		ways = append(ways, v.Say("uses.flush"))
	}
	if v.hasTrench() && v.Proof.Run.House.Drains.Trench.Grove.Trees > 0 {
		ways = append(ways, v.Say("uses.trees"))
	}
	list = append(list, v.Say("uses.mean", "mean", fmt.Sprintf("%.1f", mean)), v.Count("uses.longest", len(ways), "ways", listed(v, ways)))
	if offered > mean+0.05 {
		list = append(list, v.Say("uses.offered", "offered", fmt.Sprintf("%.1f", offered)))
	}
	if month, ok := v.Proof.Run.ScarcestMonth(t); ok {
		area, _ := v.Proof.Run.LargestBed(t, month)
		bed := v.Proof.Run.House.Drains.Planter.Bed
		list = append(list, v.Say("uses.largest", "is", withUnit(float64(bed.Area()), "m²"), "could", withUnit(float64(area), "m²"), "month", v.month(month)))
	}
	return list
}

// wellSaid tells the age of the flush well's water and its top-up.
func (v *view) wellSaid() []string {
	if !v.hasWell() {
		return []string{v.Say("well.absent")}
	}
	t, k := &v.Proof.Stated.Totals.Chain, v.Proof.Run.House.Drains.Well
	mean, oldest := 0.0, 0
	days := v.Proof.Stated.Days
	for i := range days {
		mean += days[i].WellAge / float64(len(days))
		if days[i].WellAge > days[oldest].WellAge {
			oldest = i
		}
	}
	return []string{
		v.Say("well.age", "mean", amount(mean), "oldest", amount(days[oldest].WellAge), "day", v.daySaid(oldest)),
		v.Say("well.stale", "limit", amount(k.StaleAfter), "share", percentOf(float64(t.Stale)/float64(v.Proof.Run.Hours()))),
		v.Say("well.topped", "litres", withUnit(float64(t.Topped.Litres)/v.years(), "L"), "flushed", withUnit(float64(t.Flushed)/v.years(), "L"), "over", withUnit(float64(t.WellOverflow.Litres)/v.years(), "L")),
	}
}

// usedMonths is the way of used water by month of a mean year.
func (v *view) usedMonths() (g grid) {
	if !v.hasDrains() {
		return g
	}
	t := &v.Proof.Stated.Totals.Chain
	g = grid{Label: v.Say("used.title"), Heads: []string{v.Say("column.month")}, Words: 1}
	if v.hasPlanter() {
		g.Heads = append(g.Heads, v.Say("used.planter"), v.Say("used.plants"))
	}
	g.Heads = append(g.Heads, v.Say("used.flushed"), v.Say("used.topped"))
	for m := 1; m <= 12; m++ {
		row := []string{v.month(m)}
		if v.hasPlanter() {
			row = append(row, grouped(float64(t.FedIn[m])/v.years()), grouped(float64(t.EvaporatedIn[m])/v.years()))
		}
		g.Rows = append(g.Rows, append(row, grouped(float64(t.FlushIn[m])/v.years()), grouped(float64(t.TopUpIn[m])/v.years())))
	}
	return g
}

// treat tells the stages of the treatment, and what publications credit those with that drinking water passes.
func (w *waterView) treat(v *view) {
	stages := v.Proof.Run.House.WaterDesign.Treatment
	if len(stages) == 0 {
		w.Credited = []string{v.Say("train.none")}
		return
	}
	w.Train = grid{Label: v.Say("train.title"), Words: 3, Heads: []string{v.Say("train.stage"), v.Say("train.passes"), v.Say("train.as"),
		v.Say("train.bacteria"), v.Say("train.viruses"), v.Say("train.protozoa"), v.Say("train.loss"), v.Say("train.power")}}
	var drunk []water.Barrier
	var names []string
	for i := range stages {
		b, known := water.BarrierIn(stages[i].Name)
		as := v.Say("train.unknown")
		if known {
			as = b.Name
			if stages[i].Serves[people.Drinking] {
				drunk, names = append(drunk, b), append(names, b.Name)
			}
		}
		row := []string{stages[i].Name, v.passing(&stages[i]), as}
		for p := range water.Pathogens {
			row = append(row, credit(b.Low[p], b.High[p], known))
		}
		w.Train.Rows = append(w.Train.Rows, append(row, percent(stages[i].Loss), v.takes(&stages[i])))
	}
	if len(drunk) == 0 {
		w.Credited = []string{v.Say("train.credited_nothing")}
		return
	}
	t := water.InRow(drunk)
	w.Credited = []string{v.Say("train.least", "bacteria", amount(t.Low[water.Bacteria]), "viruses", amount(t.Low[water.Viruses]), "protozoa", amount(t.Low[water.Protozoa])),
		v.Say("train.governs", "group", t.Governing.String(), "reaches", t.Low.Reaches())}
	if t.Powerless != t.Low {
		w.Credited = append(w.Credited, v.Say("train.powerless", "bacteria", amount(t.Powerless[water.Bacteria]), "viruses", amount(t.Powerless[water.Viruses]), "protozoa", amount(t.Powerless[water.Protozoa])))
	}
	w.Barriers = v.unfold(wanted{"log-reduction", "", map[string]string{"stages": strings.Join(names, ",")}})
}

// credit writes the powers of ten that a stage is credited with, from the least to the most.
func credit(low, high float64, known bool) string {
	if !known {
		return "–"
	}
	return amount(low) + " – " + amount(high)
}

// passing says which water passes a stage.
func (v *view) passing(s *water.Stage) string {
	var list []string
	for k, key := range [people.Kinds]string{"kind.drinking", "kind.washing", "kind.flushing", "kind.outdoor"} {
		if s.Serves[k] {
			list = append(list, v.Say(key))
		}
	}
	if len(list) == int(people.Kinds) {
		return v.Say("kind.all")
	}
	return listed(v, list)
}

// takes says what power a stage takes.
func (v *view) takes(s *water.Stage) string {
	switch {
	case s.Standing > 0:
		return withUnit(float64(s.Standing), "W")
	case s.WattHoursPerKilolitre > 0:
		return withUnit(s.WattHoursPerKilolitre, "Wh/kL")
	}
	return "–"
}

// trainExample is a train of treatment as it is written.
const trainExample = `water:
  treatment:
    - {name: sediment filter, uses: all, loss: 1 %}
    - {name: ultraviolet lamp, uses: drinking, power: 20 W, running: always}`
