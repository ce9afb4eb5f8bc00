package house

import (
	"fmt"
	"slices"
	"strings"

	"suffice/crop"
	"suffice/people"
	"suffice/quantity"
	"suffice/reuse"
	"suffice/waste"
)

// chain looks over the way of used water, and the beds.
func (w *warner) chain(f *File, h *House) {
	if f.Planter != nil {
		w.planter(f, h.Drains.Planter)
	}
	if k := f.FlushWell; k != nil && k.Pump > 0 && f.Power == nil {
		w.warn("flush_well.pump", "the file has no power: the pump is taken to run whenever it is wanted")
	}
	if f.Septic != nil {
		w.septic(f.Septic, h.Drains)
		if f.Wants != nil && f.Wants.Waste != nil && f.Septic.Trench == nil {
			w.warn("wants.waste", "without septic.trench nothing can come to the surface: the want is reached whatever happens")
		}
	}
	if f.Garden == nil {
		return
	}
	for i := range f.Garden.Beds {
		where := fmt.Sprintf("garden.beds[%d]", i)
		if b := &f.Garden.Beds[i]; len(b.Crops) == 0 {
			w.warn(where, "nothing is sown in %s: it is lived as bare soil", b.Name)
		} else {
			w.calendar(where, b.Crops)
		}
	}
}

func (w *warner) planter(f *File, p *PlanterParts) {
	if f.People != nil && len(f.People.Uses) > 0 && !slices.ContainsFunc(f.People.Uses, func(u Use) bool { return feeds(f.Planter, &u) }) {
		w.warn("planter.fed_by", "no use of water runs into its drains: only what people pour and rain come to it")
	}
	var unknown []string
	for _, name := range f.Planter.Plants {
		if _, ok := reuse.ToleranceOf(name); !ok {
			unknown = append(unknown, name)
		}
	}
	if len(unknown) > 0 {
		w.warn("planter.plants", "no table here says how much salt %s can bear: taken to feel none", strings.Join(unknown, ", "))
	}
	if p.Stands.Indoors && p.Rinse == 0 {
		w.warn("planter.rinse", "no rain falls under glass, so that salt gathers about the roots: rinse with clean water, as  rinse: 30 mm  does")
	}
	w.calendar("planter", f.Planter.Crops)
	say, _ := reuse.Warnings(p.Bedding) // nothing that a file can describe leads a toilet to a bed
	for _, caution := range say {
		w.warn("planter", "%s", caution)
	}
}

// feeds reports whether a use runs into a drain that feeds the planter.
func feeds(p *Planter, u *Use) bool {
	d := drain(u)
	if d >= people.Drain(reuse.Sources) {
		return false
	}
	if len(p.FedBy) == 0 {
		return reuse.UsualGrey().Feeds[d]
	}
	return slices.Contains(p.FedBy, d.String())
}

// calendar doubts a crop that is sown while the one before is likely to stand, by the days of the table. Warmth decides in the end.
func (w *warner) calendar(bed string, crops []Planting) {
	if len(crops) < 2 {
		return
	}
	for i := range crops {
		c, err := crop.Named(crops[i].Crop)
		if err != nil {
			continue // composing has refused it
		}
		next, gap := i, daysOfYear
		for j := range crops {
			if days := (dayOfYear(crops[j].Sown) - dayOfYear(crops[i].Sown) + daysOfYear) % daysOfYear; j != i && days < gap {
				next, gap = j, days
			}
		}
		if season := c.Stages.Season(); float64(gap) < season {
			w.warn(fmt.Sprintf("%s.crops[%d].sown", bed, next), "%s is put in %d days after %s, which stands for about %g (%s): in a year in which the bed is still taken, it is left out",
				crops[next].Crop, gap, crops[i].Crop, season, c.Stages.From.Source)
		}
	}
}

// daysOfYear is a year without a leap day, as dayOfYear counts.
const daysOfYear = 365

func (w *warner) septic(s *Septic, d *DrainParts) {
	if s.Place != nil {
		w.ruled(s, d)
	}
	w.distances(s, d.Rules)
	t := s.Trench
	if t == nil {
		return
	}
	if t.Test != nil {
		if says := waste.Usable(d.Seeps); says != "yes" {
			w.warn("septic.trench.percolation", "%.3g s/mm: %s", d.Seeps, says)
		}
	}
	if t.Trees == nil {
		return
	}
	if len(d.Rules) == 0 {
		for _, says := range waste.TreeConflict(float64(t.Trees.Distance)) {
			w.warn("septic.trench.trees.distance", "%s", says)
		}
		return
	}
	w.breaches("septic.trench.trees.distance", "the place", d.Rules, waste.Setback{From: "field", To: "trees", Least: float64(t.Trees.Distance)})
}

// ruled holds the tank against the rule of a place.
func (w *warner) ruled(s *Septic, d *DrainParts) {
	rule, _ := waste.Ruling(*s.Place)
	asks, err := rule.Capacity(d.Told)
	switch {
	case err != nil:
		w.warn("septic.rules_of", "the rule %s cannot be held against this house: it %s", rule.Name, err)
	case float64(s.Holds) < asks:
		w.warn("septic.holds", "%s is less than %s asks for, %s (%s): ask the authority", litres(s.Holds), rule.Name, quantity.Text(asks, "L"), rule.Formula)
	}
}

// distances holds what is told against the rules of the place, or the printed tables where there are none.
func (w *warner) distances(s *Septic, local []waste.Setback) {
	tables := waste.SetbackTables()
	if len(local) > 0 {
		tables = []waste.SetbackTable{{Name: "the place", Rows: local}}
	}
	for i, b := range s.Setbacks {
		where := fmt.Sprintf("septic.setbacks[%d]", i)
		told := waste.Setback{From: b.From, To: b.To, Least: float64(b.Is)}
		var known []string
		judged := false
		for _, t := range tables {
			for _, row := range t.Rows {
				if row.From == b.From {
					known = append(known, row.To)
				}
				judged = judged || row.From == b.From && row.To == b.To
			}
			w.breaches(where, t.Name, t.Rows, told)
		}
		if !judged {
			slices.Sort(known)
			w.warn(where+".to", "no table asks for a distance from %s to %s, so it is not judged; known are %s", b.From, b.To, orElse(strings.Join(slices.Compact(known), ", "), "none"))
		}
	}
}

func (w *warner) breaches(where, table string, rows []waste.Setback, told waste.Setback) {
	for _, b := range waste.Breaches(rows, []waste.Setback{told}) {
		w.warn(where, "from %s to %s are %.3g m: %s asks for at least %.3g m; the authority decides", b.From, b.To, b.Planned, table, b.Least)
	}
}
