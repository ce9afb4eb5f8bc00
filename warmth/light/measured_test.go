package light

import (
	"bufio"
	"compress/gzip"
	"math"
	"os"
	"slices"
	"strconv"
	"strings"
	"testing"

	"suffice/site/sun"
	"suffice/site/weather"
	"suffice/site/weather/files"
)

// station reads a measured day. What one hour lacks is the mean of the two beside it.
func station(t *testing.T, file string) (*weather.Hours, *sun.Track) {
	t.Helper()
	r, err := files.Open(surfrad+file, files.Options{})
	if err != nil {
		t.Fatal(err)
	}
	column := func(c weather.Column) []float64 {
		v := slices.Clone(r.Of(c).Values)
		for i := range v {
			if math.IsNaN(v[i]) {
				v[i] = (v[i-1] + v[i+1]) / 2
			}
		}
		return v
	}
	day := weather.DayOf(r.Start)
	h := &weather.Hours{Place: r.Place, Days: []weather.Day{day}, Global: column(weather.Global), Temperature: column(weather.Temperature), Humidity: column(weather.Humidity)}
	return h, sun.NewTrack(r.Place, []sun.Date{{Year: day.Year, Month: day.Month, Date: day.Date}})
}

// longwave reads hourly means of the sky's measured long-wave light, W/m2, over the good minutes.
func longwave(t *testing.T, f string) []float64 {
	file, err := os.Open(surfrad + f)
	if err != nil {
		t.Fatal(err)
	}
	defer func() { _ = file.Close() }()
	z, err := gzip.NewReader(file)
	if err != nil {
		t.Fatal(err)
	}
	out, count := make([]float64, 24), make([]float64, 24)
	for lines := bufio.NewScanner(z); lines.Scan(); {
		w := strings.Fields(lines.Text())
		if len(w) != 48 || w[17] != "0" {
			continue
		}
		hour, err := strconv.Atoi(w[4])
		if err != nil {
			t.Fatal(err)
		}
		v, err := strconv.ParseFloat(w[16], 64)
		if err != nil {
			t.Fatal(err)
		}
		out[hour] += v
		count[hour]++
	}
	for i := range out {
		if count[i] < 30 {
			t.Fatalf("%s hour %d has %v minutes", f, i, count[i])
		}
		out[i] /= count[i]
	}
	return out
}

// Four measured days, cloud from the day's light alone. The best that such cloud can do is to tell the day: on the
// second of them an overcast night clears at dawn, which its bright day hides.
func TestMeasuredSky(t *testing.T) {
	stations := []struct {
		file, name string
		most       [2][2]float64 // bias and rms of each model, W/m2, as they are, rounded up to the next 5
	}{
		{"dra24048.dat.gz", "Desert Rock, partly cloudy", [2][2]float64{{10, 20}, {25, 30}}},
		{"psu17001.dat.gz", "Penn State, overcast, then clear", [2][2]float64{{30, 45}, {5, 40}}},
		{"slv15365.dat.gz", "Alamosa, nearly clear", [2][2]float64{{15, 25}, {20, 30}}},
		{"spo21001_south-pole.dat.gz", "South Pole, clear, then thin cloud", [2][2]float64{{5, 15}, {15, 20}}},
	}
	for _, st := range stations {
		measured := longwave(t, st.file)
		h, track := station(t, st.file)
		for k, m := range []SkyModel{BerdahlMartin, ClarkAllen} {
			s, err := NewSky(h, track, m)
			if err != nil {
				t.Fatal(err)
			}
			var bias, squares float64
			for i, v := range measured {
				d := s.Light[i] - v
				bias += d / float64(len(measured))
				squares += d * d / float64(len(measured))
			}
			rms := math.Sqrt(squares)
			t.Logf("%s, %v: cloud %.2f, bias %+.1f, rms %.1f W/m2", st.name, m, s.Cloud[0], bias, rms)
			if most := st.most[k]; !(math.Abs(bias) <= most[0] && rms <= most[1]) {
				t.Errorf("%s, %v: bias %+.1f (at most %v), rms %.1f (at most %v) W/m2", st.name, m, bias, most[0], rms, most[1])
			}
		}
	}
}
