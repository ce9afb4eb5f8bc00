package web

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"suffice/crop"
	"suffice/draw"
	"suffice/draw/canvas"
	"suffice/garden"
	"suffice/house"
)

// meanLight gives the mean of a month's light on the level outdoors, MJ/m2d.
func (v *view) meanLight(month int) float64 {
	sum, count := 0.0, 0
	for i, day := range v.Proof.Run.Weather.Days {
		if int(day.Month) == month {
			sum += v.dayLight(i)
			count++
		}
	}
	return sum / float64(max(1, count))
}

// dayLight gives the light of a day on the level outdoors, MJ/m2.
func (v *view) dayLight(day int) (sum float64) {
	for _, watts := range v.Proof.Run.Weather.Global[24*day : 24*day+24] {
		sum += watts * 0.0036
	}
	return sum
}

// passes gives the share of the light outdoors that reaches a bed.
func passes(s house.Stand) float64 {
	if s.Indoors {
		return s.Light
	}
	return 1
}

// darkest gives the month of least light at a bed, and its mean, mol/m2d.
func (v *view) darkest(p *plot) (month int, least float64) {
	least = math.Inf(1)
	for m := 1; m <= 12; m++ {
		if light := crop.DailyLight(v.meanLight(m), passes(p.Stands)); light < least {
			month, least = m, light
		}
	}
	return month, least
}

// lightPicture shows the light at a bed through the year beside the need of the crop that wants most.
func (v *view) lightPicture(p *plot) picture {
	c := slices.MaxFunc(p.Plot.Bed.Plantings, func(a, b garden.Planting) int { return cmp.Compare(a.Crop.Light.High, b.Crop.Light.High) }).Crop
	d := draw.MonthChart{Ink: canvas.Sun, Digits: 1, To: c.Light.High * 1.1, Rule: draw.Rule{Says: v.Say("light.rule", "crop", c.Name, "need", amount(c.Light.High)), At: c.Light.High},
		Key: [3]string{v.drawn("months.key.middle"), v.drawn("months.key.span"), v.Say("light.least_key")}}
	var days [12][]float64
	for i, day := range v.Proof.Run.Weather.Days {
		days[day.Month-1] = append(days[day.Month-1], crop.DailyLight(v.dayLight(i), passes(p.Stands)))
	}
	under := 0
	for m := range 12 {
		d.Names[m], d.Short[m] = v.month(m+1), v.drawn(fmt.Sprintf("short.%d", m+1))
		slices.Sort(days[m])
		at := func(share float64) float64 {
			if len(days[m]) == 0 {
				return 0
			}
			return days[m][int(share*float64(len(days[m])-1))]
		}
		d.Least[m], d.Low[m], d.Middle[m], d.High[m] = at(0), at(0.1), at(0.5), at(0.9)
		if d.Middle[m] < c.Light.High {
			under++
		}
	}
	for i, key := range [5]string{"column.month", "light.tenth", "light.middle", "light.ninetieth", "light.least"} {
		d.Headers[i] = v.Say(key)
	}
	d.About = draw.About{Name: "light-" + strings.ReplaceAll(strings.ToLower(p.Name), " ", "-"), Title: v.Say("light.title", "bed", p.Name), Unit: v.Say("light.unit"),
		Summary: v.Count("light.says", under, "crop", c.Name, "need", amount(c.Light.High))}
	return twice(draw.Months(d), 1)
}
