package report

import (
	"fmt"
	"math"
	"strings"

	"suffice/hourly"
)

// weekRows is how many rows the chart of a week has at most.
const weekRows = 14

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

// WeekColumns is how many columns of three hours a week is told in.
const WeekColumns = 56

// A WeekTold is a worst week in means of three hours.
type WeekTold struct {
	Outside, Light [WeekColumns]float64   // degC; W/m2 on the level
	Low, High      [WeekColumns]float64   // the band of comfort, degC
	Felt           [][WeekColumns]float64 // operative temperature of every room, degC
}

// TellWeek gathers what the pictures of a week show.
func (p *Proof) TellWeek(k *hourly.Week) WeekTold {
	const step = hourly.WeekHours / WeekColumns
	told := WeekTold{Felt: make([][WeekColumns]float64, len(p.Stated.Rooms))}
	hour := 24 * k.First
	for c := range WeekColumns {
		for h := c * step; h < (c+1)*step; h++ {
			told.Outside[c] += p.Run.Weather.Temperature[hour+h] / step
			told.Light[c] += p.Run.Weather.Global[hour+h] / step
			for room := range told.Felt {
				told.Felt[room][c] += float64(k.Felt[h][room]) / step
			}
		}
		band := p.Run.Band(k.First + c*step/24)
		told.Low[c], told.High[c] = float64(band.Low), float64(band.High)
	}
	return told
}

// weekChart draws a week on one scale of temperature, the sun as bars below.
func (p *Proof) weekChart(k *hourly.Week) []string {
	told := p.TellWeek(k)
	felt := &told.Felt[k.Room]
	least, most := math.Inf(1), math.Inf(-1)
	for c := range WeekColumns {
		least = min(least, told.Outside[c], felt[c], told.Low[c])
		most = max(most, told.Outside[c], felt[c], told.High[c])
	}
	rise := math.Ceil((most - least) / (weekRows - 1)) // K a row
	base := math.Floor(least/rise) * rise
	grid := make([][]rune, int(math.Round((most-base)/rise))+1)
	for r := range grid {
		grid[r] = []rune(strings.Repeat(" ", WeekColumns))
	}
	put := func(values *[WeekColumns]float64, mark rune) {
		for c, v := range values {
			grid[int(math.Round((v-base)/rise))][c] = mark
		}
	}
	put(&told.Low, '-')
	put(&told.High, '-')
	put(&told.Outside, '·')
	put(felt, '●')
	var list []string
	for r := len(grid) - 1; r >= 0; r-- {
		list = append(list, fmt.Sprintf("%4.0f |%s|", base+float64(r)*rise, string(grid[r])))
	}
	return append(list, " sun |"+sparks(told.Light[:], brightest)+"|", "      "+p.weekDays(k), "      ● in the room (as felt)   · outside   - the band of comfort; degC")
}

// brightest is the light that fills a bar, W/m2: about that of a clear noon in summer.
const brightest = 1000

// weekDays writes the day's number under the first column of each.
func (p *Proof) weekDays(k *hourly.Week) string {
	line := ""
	for d := range 7 {
		line += fmt.Sprintf("%-*d", WeekColumns/7, p.Run.Weather.Days[k.First+d].Date)
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
