package web

import (
	"fmt"
	"net/http"
	"slices"
	"strings"

	"suffice/draw"
	"suffice/draw/canvas"
	"suffice/garden"
	"suffice/hourly"
	"suffice/house"
	"suffice/quantity"
)

// A gardenView is the page.
type gardenView struct {
	Verdict  verdict
	Cautions []string
	Harvest  picture
	Sums     []figure
	Crops    grid
	Missed   []string // plantings that found their bed taken
	Beds     []bedView
	Water    picture
	Planter  []string // what is to be said of its soil
	Salt     workings
	Sowing   []sowing
	Seed     grid
	Seeds    workings
	Stock    []figure
}

// A bedView is what the page tells of a bed.
type bedView struct {
	Name  string
	Lines []string
	Light picture // behind glass
	Work  workings
}

// A sowing is when a crop may be put in where it stands, and what it asks for.
type sowing struct {
	Title  string
	Lines  []string
	Chores []garden.Chore
}

// A plot is a bed with what grows in it: the planter's is the first.
type plot struct {
	Name   string
	Plot   *garden.Plot
	Stands house.Stand
	Seen   *bedSeen
}

func gardenPage(v *view, _ *http.Request) shown {
	p := shown{Here: "/garden", Title: v.Say("garden.title")}
	if !v.growsFood() && !v.hasPlanter() {
		p.Body = gardenMissing(v)
		return p
	}
	plots := v.plots()
	w := gardenView{Verdict: v.foodVerdict(), Sums: v.harvestSums(), Crops: v.cropTable(plots), Water: v.bedWater(plots), Stock: v.stock()}
	w.Cautions, w.Missed = v.bedCautions(), v.missed(plots)
	if v.growsFood() {
		w.Harvest = v.harvestPicture()
	}
	for i := range plots {
		w.Beds = append(w.Beds, v.bedTold(&plots[i]))
		for _, s := range v.sowings(&plots[i]) {
			if !slices.ContainsFunc(w.Sowing, func(o sowing) bool { return o.Title == s.Title }) {
				w.Sowing = append(w.Sowing, s)
			}
		}
	}
	w.Planter, w.Salt = v.planterSoil(plots)
	w.Seed, w.Seeds = v.seedTable(plots)
	p.Body = gardenBody(v, &w)
	return p
}

// plots lists the beds in which something is sown.
func (v *view) plots() (list []plot) {
	if v.hasPlanter() {
		if p := v.Proof.Run.House.Drains.Planter; p.Plot != nil {
			list = append(list, plot{Name: v.Say("garden.planter"), Plot: p.Plot, Stands: p.Stands, Seen: &v.Seen.Beds[0]})
		}
	}
	if g := v.Proof.Run.House.Garden; g != nil {
		for b := range g.Beds {
			list = append(list, plot{Name: g.Beds[b].Plot.Bed.Name, Plot: &g.Beds[b].Plot, Stands: g.Beds[b].Stands, Seen: &v.Seen.Beds[1+b]})
		}
	}
	return list
}

func (v *view) foodVerdict() verdict {
	f := &v.Proof.Stated.Food
	said := verdict{Name: v.Say("verdict.title"), Sign: "open", Word: v.Say("verdict.none")}
	if !v.growsFood() {
		said.Lines = []string{v.Say("garden.nothing_sown")}
		return said
	}
	key := "garden.share"
	if f.Wanted {
		key = "garden.share_wanted"
		said.Sign, said.Word = "short", v.Say("verdict.short")
		if f.Suffices() {
			said.Sign, said.Word = "suffices", v.Say("verdict.suffices")
		}
	}
	said.Lines = []string{v.Say(key, "share", percent(f.Share), "want", percent(f.Want)), v.Say("garden.fresh", "fresh", percent(f.Fresh), "worst", percent(f.Worst)),
		v.Say("garden.energy", "energy", percentOf(f.Energy))}
	return said
}

// percentOf writes a small share with a digit after the point.
func percentOf(share float64) string { return fmt.Sprintf("%.1f", 100*share) + gap + "%" }

// bedCautions stand over everything that is grown: sprays, manure, greywater on food.
func (v *view) bedCautions() (list []string) {
	if v.hasPlanter() {
		list = append(list, v.Say("caution.greywater"))
	}
	list = append(list, v.Say("caution.spray"))
	if g := v.Proof.Run.House.Garden; g != nil && g.Stock != (garden.Stock{}) {
		list = append(list, garden.StockCautions()...)
	}
	return list
}

// wholeYears lists the years of the record that count.
func (v *view) wholeYears() (list []*hourly.FoodYear) {
	for i := range v.Proof.Stated.Food.Years {
		if y := &v.Proof.Stated.Food.Years[i]; y.Days >= 360 {
			list = append(list, y)
		}
	}
	return list
}

// harvestPicture shows what is eaten of each month's harvest beside what the household eats in a month.
func (v *view) harvestPicture() picture {
	k := &v.Proof.Stated.Food.Kitchen
	month := k.People * k.Wants / 12
	d := draw.ColumnChart{Headers: []string{v.Say("column.month"), v.Say("garden.eaten_head"), v.Say("garden.kept_head")}, Rule: draw.Rule{Says: v.Say("garden.eats", "kg", withUnit(month, "kg")), At: month},
		Parts: []draw.ColumnPart{{Says: v.Say("garden.eaten"), Ink: canvas.Plant}, {Says: v.Say("garden.kept"), Ink: canvas.Sun, Hatch: canvas.Rising}}}
	v.months(&d)
	years := v.wholeYears()
	most, empty := 0, []string(nil)
	for m := range 12 {
		for _, y := range years {
			eaten := min(y.Harvest.Eaten[m], month)
			d.Parts[0].Values[m] += eaten / float64(len(years))
			d.Parts[1].Values[m] += (y.Harvest.Eaten[m] - eaten) / float64(len(years))
		}
		if d.Parts[0].Values[m]+d.Parts[1].Values[m] > d.Parts[0].Values[most]+d.Parts[1].Values[most] {
			most = m
		}
		if d.Parts[0].Values[m] < month/20 {
			empty = append(empty, d.Names[m])
		}
	}
	says := v.Say("garden.harvest_says", "most", d.Names[most], "kg", withUnit(d.Parts[0].Values[most]+d.Parts[1].Values[most], "kg"), "eats", withUnit(month, "kg"))
	if len(empty) > 0 {
		says += " " + v.Say("garden.harvest_empty", "months", listed(v, empty))
	}
	d.About = draw.About{Name: "harvest", Title: v.Say("garden.harvest"), Unit: v.Say("garden.harvest_unit"), Summary: says}
	return twice(draw.Columns(d), 1)
}

func (v *view) harvestSums() []figure {
	s := sums{v: v, years: float64(max(1, len(v.wholeYears())))}
	var picked, eaten, energy float64
	var lost hourly.Lost
	for _, y := range v.wholeYears() {
		picked, energy = picked+y.Harvest.Total(), energy+y.Harvest.Energy
		for _, kg := range y.Harvest.Eaten {
			eaten += kg
		}
		lost.Add(&y.Lost)
	}
	s.add("garden.picked", picked, "kg", false)
	s.add("garden.edible", eaten, "kg", true)
	s.add("garden.kilocalories", energy, "kcal", false)
	s.add("garden.lost_light", lost.ToLight, "kg", false)
	s.add("garden.lost_water", lost.ToWater, "kg", false)
	s.add("garden.lost_salt", lost.ToSalt, "kg", false)
	s.add("garden.lost_nitrogen", lost.ToNitrogen, "kg", false)
	s.add("garden.lost_flowers", lost.ToFlowers, "kg", false)
	s.add("garden.lost_frost", lost.Died, "kg", false)
	return s.rows
}

// cropTable tells every crop of every bed in a mean year.
func (v *view) cropTable(plots []plot) grid {
	g := grid{Label: v.Say("garden.crops"), Words: 3, Heads: []string{v.Say("crops.crop"), v.Say("crops.bed"), v.Say("crops.sown"),
		v.Say("crops.picked"), v.Say("crops.usual"), v.Say("crops.failed"), v.Say("crops.energy")}}
	years := v.years()
	for i := range plots {
		p := &plots[i]
		for _, at := range p.Plot.Bed.Plantings {
			seen := cropSeen{}
			for _, c := range p.Seen.Crops {
				if c.Crop.Name == at.Crop.Name {
					seen = c
				}
			}
			g.Rows = append(g.Rows, []string{at.Crop.Name, p.Name, v.dayOfYear(at.Day), amount(seen.Picked / years), amount(at.Crop.Usual.Value * float64(p.Plot.Bed.Area)),
				v.Say("crops.of", "failed", seen.Failed, "all", seen.Sown), grouped(seen.Picked / years * at.Crop.Edible.Value * at.Crop.Energy.Value)})
		}
	}
	return g
}

// missed tells of plantings for which there was no room on their day.
func (v *view) missed(plots []plot) (list []string) {
	for i := range plots {
		for k, at := range plots[i].Plot.Bed.Plantings {
			if n := plots[i].Seen.Missed[k]; n > 0 {
				list = append(list, v.Count("crops.missed", n, "crop", capital(at.Crop.Name), "bed", plots[i].Name, "day", v.dayOfYear(at.Day), "years", v.Proof.Years()))
			}
		}
	}
	return list
}

// dayOfYear writes a day of the year, 1 to 365, as people do.
func (v *view) dayOfYear(day int) string {
	for m, long := range [12]int{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31} {
		if day <= long {
			return v.Say("day_month", "day", day, "month", v.month(m+1))
		}
		day -= long
	}
	return v.Say("day_month", "day", 31, "month", v.month(12))
}

// bedWater shows what beds drink through the year.
func (v *view) bedWater(plots []plot) picture {
	d := draw.ColumnChart{Headers: []string{v.Say("column.month")}}
	v.months(&d)
	inks := [...]canvas.Ink{canvas.Plant, canvas.Water, canvas.Earth, canvas.Glass, canvas.Sun, canvas.Heat, canvas.Power, canvas.Lost, canvas.Text}
	hatches := [...]canvas.Hatch{canvas.Plain, canvas.Rising, canvas.Falling, canvas.Level, canvas.Upright, canvas.Crossed, canvas.Dotted, canvas.Plain, canvas.Rising}
	add := func(name string, litres *[12]quantity.Litres) {
		k := len(d.Parts)
		part := draw.ColumnPart{Says: name, Ink: inks[k%len(inks)], Hatch: hatches[k%len(hatches)]}
		for m := range 12 {
			part.Values[m] = float64(litres[m]) / v.years()
		}
		d.Parts, d.Headers = append(d.Parts, part), append(d.Headers, v.Say("garden.water_head", "bed", name))
	}
	if v.hasPlanter() {
		add(v.Say("garden.planter"), &v.Seen.Beds[0].Evaporated)
	}
	given := quantity.Litres(0)
	for i := range plots {
		if plots[i].Seen != &v.Seen.Beds[0] {
			add(plots[i].Name, &plots[i].Seen.Evaporated)
			for _, litres := range plots[i].Seen.Given {
				given += litres
			}
		}
	}
	worst, sums := 0, [12]float64{}
	for m := range 12 {
		for _, p := range d.Parts {
			sums[m] += p.Values[m]
		}
		if sums[m] > sums[worst] {
			worst = m
		}
	}
	says := v.Say("garden.water_says", "month", d.Names[worst], "litres", withUnit(sums[worst], "L"))
	if v.hasBeds() {
		says += " " + v.Say("garden.water_given", "litres", withUnit(float64(given)/v.years(), "L"))
	}
	d.About = draw.About{Name: "bed-water", Title: v.Say("garden.water"), Unit: v.Say("garden.water_unit"), Summary: says}
	return twice(draw.Columns(d), 1)
}

// bedTold tells of a bed where it is, what grows in it, and how much light comes to it behind glass.
func (v *view) bedTold(p *plot) bedView {
	b := bedView{Name: p.Name}
	where := "garden.bed_sky"
	if p.Stands.Indoors {
		where = "garden.bed_glass"
	}
	b.Lines = append(b.Lines, v.Say(where, "area", withUnit(float64(p.Plot.Bed.Area), "m²"), "light", percent(p.Stands.Light)))
	dark, least := v.darkest(p)
	for _, at := range p.Plot.Bed.Plantings {
		c := at.Crop
		key := "garden.light_enough"
		if least < c.Light.High {
			key = "garden.light_short"
		}
		if least < c.Light.Low {
			key = "garden.light_dark"
		}
		if p.Stands.Indoors {
			b.Lines = append(b.Lines, v.Say(key, "crop", capital(c.Name), "low", amount(c.Light.Low), "high", amount(c.Light.High), "month", v.month(dark), "is", fmt.Sprintf("%.1f", least)))
		}
	}
	if p.Stands.Indoors && len(p.Plot.Bed.Plantings) > 0 {
		b.Light = v.lightPicture(p)
		c := p.Plot.Bed.Plantings[0].Crop
		b.Work = v.unfold(wanted{"daily-light", v.Say("garden.light_of", "month", v.month(dark)), map[string]string{"radiation": inUnit(v.meanLight(dark), "MJ/m2d"), "transmission": inUnit(p.Stands.Light, ""), "crop": c.Name}})
	}
	return b
}

// planterSoil tells of salt and wetness in the planter.
func (v *view) planterSoil(plots []plot) (list []string, u workings) {
	if !v.hasPlanter() {
		return []string{v.Say("garden.no_planter")}, u
	}
	t, years := &v.Proof.Stated.Totals.Chain, v.years()
	days := v.Proof.Stated.Days
	saltiest, mean := 0, 0.0
	for i := range days {
		mean += days[i].Salinity / float64(len(days))
		if days[i].Salinity > days[saltiest].Salinity {
			saltiest = i
		}
	}
	list = append(list, v.Say("planter.had", "share", percent(float64(t.Evaporated/max(1, t.PlanterWanted)))),
		v.Say("planter.wet_dry", "dry", amount(float64(t.Dry)/years), "wet", amount(float64(t.Wet)/years)),
		v.Say("planter.salt", "mean", fmt.Sprintf("%.1f", mean), "most", fmt.Sprintf("%.1f", days[saltiest].Salinity), "day", v.daySaid(saltiest), "end", fmt.Sprintf("%.1f", days[len(days)-1].Salinity)))
	if len(plots) == 0 || plots[0].Seen != &v.Seen.Beds[0] {
		return list, u
	}
	for _, at := range plots[0].Plot.Bed.Plantings {
		key := "planter.bears_salt"
		if days[saltiest].Salinity > at.Crop.Salt.Threshold {
			key = "planter.suffers_salt"
		}
		list = append(list, v.Say(key, "crop", capital(at.Crop.Name), "from", amount(at.Crop.Salt.Threshold)))
		u.add(v.unfold(wanted{"salt-yield", at.Crop.Name, map[string]string{"crop": at.Crop.Name, "salinity": inUnit(days[saltiest].Salinity, "dS/m"),
			"threshold": inUnit(at.Crop.Salt.Threshold, "dS/m"), "slope": inUnit(at.Crop.Salt.Slope, "%m/dS")}}))
	}
	return list, u
}

func (u *workings) add(more workings) {
	u.Worked, u.Refused = append(u.Worked, more.Worked...), append(u.Refused, more.Refused...)
}

// stock is what animals take and give in a mean year.
func (v *view) stock() []figure {
	g := v.Proof.Run.House.Garden
	if g == nil || g.Stock == (garden.Stock{}) {
		return nil
	}
	s := sums{v: v, years: float64(max(1, len(v.wholeYears())))}
	var eggs, milk, honey float64
	for _, y := range v.wholeYears() {
		eggs, milk, honey = eggs+y.Eggs, milk+y.Milk, honey+y.Honey
	}
	s.add("stock.eggs", eggs, "", false)
	s.add("stock.milk", milk, "L", false)
	s.add("stock.honey", honey, "kg", false)
	s.years = v.years()
	s.add("stock.water", float64(v.Proof.Stated.Totals.Chain.Animals), "L", false)
	return s.rows
}

// capital begins a text with a capital letter.
func capital(text string) string {
	if text == "" {
		return text
	}
	return strings.ToUpper(text[:1]) + text[1:]
}

// Examples are the least that beds and planter need, as they are written.
const (
	bedExample = `garden:
  beds:
    - name: terrace
      area: 20 m2
      crops:
        - {crop: onion, sown: 11-15}
        - {crop: green bean, sown: 06-20}
    - {name: lean-to, area: 6 m2, under: glass, crops: [{crop: lettuce, sown: 10-10}]}`
	planterExample = `planter:
  area: 7 m2
  under: glass
  crops: [{crop: tomato, sown: 03-15}]
flush_well: {area: 0.3 m2}`
)

// drawn gives a sentence of the pictures' own catalogue.
func (v *view) drawn(key string) string { return v.draws.Say(key) }
