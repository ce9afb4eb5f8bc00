package web

import (
	"sync"

	"suffice/crop"
	"suffice/garden"
)

// A climateOf names the air that a bed stands in: a lived room's number, or one of these.
type climateOf int

// The air outside, and the air that the file assumes inside.
const (
	openAir climateOf = -2
	assumed climateOf = -1
)

// sowingWindows are the days on which crops may be put in, each worked out once: it takes a crop a tenth of a second.
type sowingWindows struct {
	lock  sync.Mutex
	known map[windowOf]garden.Window
}

type windowOf struct {
	crop string
	air  climateOf
}

// window gives the days on which a crop bears in four years of five where a bed stands.
func (l *lived) window(c *crop.Crop, at climateOf) (garden.Window, error) {
	l.sowing.lock.Lock()
	defer l.sowing.lock.Unlock()
	key := windowOf{c.Name, at}
	if w, known := l.sowing.known[key]; known {
		return w, nil
	}
	climate, err := l.climate(at)
	if err != nil {
		return garden.Window{}, err
	}
	w, err := climate.Window(c)
	if err != nil {
		return w, err
	}
	if l.sowing.known == nil {
		l.sowing.known = make(map[windowOf]garden.Window)
	}
	l.sowing.known[key] = w
	return w, nil
}

func (l *lived) climate(at climateOf) (garden.Climate, error) {
	outside := garden.Outside(l.Proof.Run.Weather)
	if at == openAir {
		return outside, nil
	}
	air := make([]crop.Swing, len(outside.DayOfYear))
	if at == assumed {
		inside := float64(l.Proof.Run.House.Indoors)
		for i := range air {
			air[i] = crop.Swing{Warmest: inside, Coolest: inside}
		}
	} else {
		copy(air, l.Seen.Air[at])
	}
	return garden.Room(outside.DayOfYear, air)
}

// airOf says in which air a bed stands.
func (l *lived) airOf(p *plot) climateOf {
	switch {
	case !p.Stands.Indoors:
		return openAir
	case p.Stands.Room >= 0 && l.hasRooms():
		return climateOf(p.Stands.Room)
	}
	return assumed
}

// sowings tells for each crop of a bed when it may be put in, whether its day is such a day, and its chores.
func (v *view) sowings(p *plot) (list []sowing) {
	air := v.airOf(p)
	where := v.Say("sowing.outdoors")
	if p.Stands.Indoors {
		where = v.Say("sowing.glass")
	}
	for _, at := range p.Plot.Bed.Plantings {
		s := sowing{Title: v.Say("sowing.of", "crop", capital(at.Crop.Name), "where", where), Chores: garden.Chores(at.Crop, p.Stands.Indoors)}
		w, err := v.window(at.Crop, air)
		if err != nil {
			s.Lines = append(s.Lines, v.Say("sentence", "says", capital(err.Error())))
			list = append(list, s)
			continue
		}
		s.Lines = append(s.Lines, v.Say("sowing.days", "days", w.Says()))
		if err := w.Check(at.Day); err != nil {
			s.Lines = append(s.Lines, v.Say("sentence", "says", capital(err.Error())))
		} else {
			s.Lines = append(s.Lines, v.Say("sowing.day_good", "day", v.dayOfYear(at.Day), "bears", w.Trials[at.Day-1].Of[garden.Bears], "years", w.Trials[at.Day-1].Years))
		}
		if air == assumed {
			s.Lines = append(s.Lines, v.Say("sowing.assumed", "degrees", amount(float64(v.Proof.Run.House.Indoors))))
		}
		list = append(list, s)
	}
	return list
}

// soilAt gives the mean temperature where seed lies on a day of the year.
func (v *view) soilAt(p *plot, day int) (float64, error) {
	c, err := v.climate(v.airOf(p))
	if err != nil {
		return 0, err
	}
	sum, count := 0.0, 0
	for i := range c.DayOfYear {
		if int(c.DayOfYear[i]) == day {
			sum += c.Soil(i)
			count++
		}
	}
	return sum / float64(max(1, count)), nil
}

// seedTable tells how much seed each planting takes and what it stands for, and which may be kept.
func (v *view) seedTable(plots []plot) (g grid, u workings) {
	g = grid{Label: v.Say("seed.title"), Words: 2, Heads: []string{v.Say("crops.crop"), v.Say("crops.bed"), v.Say("seed.plants"), v.Say("seed.seeds"), v.Say("seed.grams"), v.Say("seed.kilos"), v.Say("seed.keeps")}}
	for i := range plots {
		p := &plots[i]
		for _, at := range p.Plot.Bed.Plantings {
			soil, err := v.soilAt(p, at.Day)
			if err != nil {
				u.Refused = append(u.Refused, v.Say("sentence", "says", capital(err.Error())))
				continue
			}
			row := []string{at.Crop.Name, p.Name}
			bill, ok := garden.Seed(at.Crop, float64(p.Plot.Bed.Area), soil)
			switch {
			case at.Crop.Sprouts == nil:
				row = append(row, amount(bill.Plants), v.Say("seed.tubers"), "–", amount(bill.Kilos), "–")
			case !ok:
				row = append(row, amount(bill.Plants), v.Say("seed.hardly", "degrees", amount(soil)), "–", amount(bill.Kilos), amount(at.Crop.Seed.Keeps.Value))
			default:
				row = append(row, amount(bill.Plants), amount(bill.Seeds), amount(bill.Grams), amount(bill.Kilos), amount(at.Crop.Seed.Keeps.Value))
			}
			g.Rows = append(g.Rows, row)
			if at.Crop.Sprouts != nil {
				u.add(v.unfold(wanted{"seed", at.Crop.Name, map[string]string{"crop": at.Crop.Name, "temperature": inUnit(soil, "degC")}}))
			}
		}
	}
	return g, u
}
