package report

import (
	"fmt"
	"math"
	"strings"

	"suffice/hourly"
)

// Size of the chart of a week: columns of three hours, and rows at most.
const (
	weekColumns = 56
	weekRows    = 14
)

// weeks draws the coldest and the hottest week of the rooms that people live in.
func (p *Proof) weeks(w *lines) {
	p.week(w, "coldest", &p.Stated.Coldest)
	p.week(w, "hottest", &p.Stated.Hottest)
}

func (p *Proof) week(w *lines, word string, k *hourly.Week) {
	if !k.Found {
		return
	}
	name := p.Stated.Rooms[k.Room].Name
	w.line("\nThe %s week in %s, from %s: %.1f degC in the mean", word, name, p.said(k.First), float64(k.Mean))
	for _, l := range p.weekChart(k) {
		w.line("  %s", l)
	}
}

// weekChart draws a week in columns of three hours: mean temperatures on one scale, and the sun as bars below.
func (p *Proof) weekChart(k *hourly.Week) []string {
	const step = hourly.WeekHours / weekColumns
	hour := 24 * k.First
	var outside, felt, low, high, light [weekColumns]float64
	least, most := math.Inf(1), math.Inf(-1)
	for c := range weekColumns {
		for h := c * step; h < (c+1)*step; h++ {
			outside[c] += p.Run.Weather.Temperature[hour+h] / step
			felt[c] += float64(k.Felt[h][k.Room]) / step
			light[c] += p.Run.Weather.Global[hour+h] / step
		}
		band := p.Run.Band(k.First + c*step/24)
		low[c], high[c] = float64(band.Low), float64(band.High)
		for _, v := range [4]float64{outside[c], felt[c], low[c], high[c]} {
			least, most = min(least, v), max(most, v)
		}
	}
	rise := math.Ceil((most - least) / (weekRows - 1)) // K a row
	base := math.Floor(least/rise) * rise
	rows := int(math.Round((most-base)/rise)) + 1
	grid := make([][]rune, rows)
	for r := range grid {
		grid[r] = []rune(strings.Repeat(" ", weekColumns))
	}
	put := func(values *[weekColumns]float64, mark rune) {
		for c, v := range values {
			grid[int(math.Round((v-base)/rise))][c] = mark
		}
	}
	put(&low, '-')
	put(&high, '-')
	put(&outside, '·')
	put(&felt, '●')
	var list []string
	for r := rows - 1; r >= 0; r-- {
		list = append(list, fmt.Sprintf("%4.0f |%s|", base+float64(r)*rise, string(grid[r])))
	}
	list = append(list, " sun |"+sparks(light[:], 1000)+"|", "      "+p.weekDays(k), "      ● in the room (as felt)   · outside   - the band of comfort; degC")
	return list
}

// weekDays writes the day's number under the first column of each.
func (p *Proof) weekDays(k *hourly.Week) string {
	line := ""
	for d := range 7 {
		line += fmt.Sprintf("%-*d", weekColumns/7, p.Run.Weather.Days[k.First+d].Date)
	}
	return line
}

var levels = []rune(" ▁▂▃▄▅▆▇█")

// sparks draws values as upright bars of one column, full at most or more.
func sparks(values []float64, most float64) string {
	line := make([]rune, len(values))
	for i, v := range values {
		line[i] = levels[int(math.Round(min(max(v/most, 0), 1)*float64(len(levels)-1)))]
	}
	return string(line)
}
