package synth_test

import (
	"strings"
	"testing"

	"suffice/site/weather/synth"
)

const hillFarm = `
name: hill farm
latitude: 37 deg
longitude: -5.5 deg
altitude: 420 m
rain: 83 70 55 48 30 9 2 4 22 61 85 95 mm
wet_days: 7 6.5 5.5 6 4 1.5 0.3 0.5 2.5 5.5 7 8 d
yearly_rain_deviation: 165 mm
sunshine: 5.9 6.7 7.2 8.3 9.8 11.3 12.0 11.2 8.8 7.1 6.2 5.2 h/d
temperature_max: 15 17 20 22 26 31 35 35 31 25 19 16 degC
temperature_min: 5 6 8 10 13 17 19 19 17 14 9 6 degC
humidity: 74 70 64 61 55 48 44 47 54 65 72 77 %
`

func TestNormalsAreRead(t *testing.T) {
	n, err := synth.ReadNormals("farm.yaml", strings.NewReader(hillFarm))
	if err != nil {
		t.Fatal(err)
	}
	if n.Rain[11] != 95 || n.Sunshine[6] != 12 || n.Humidity[0] != 74 || n.Deviation != 165 || n.Place.Clock != 0 || n.WetDays[6] != 0.3 {
		t.Errorf("read %+v", n)
	}
	table := "quantity,unit,1,2,3,4,5,6,7,8,9,10,11,12\nlatitude,deg,37\nlongitude,deg,-5.5\nrain,mm,83,70,55,48,30,9,2,4,22,61,85,95\nlight,MJ/m2/d,9,12,16,20,24,27,27,24,19,14,10,8\n"
	c, err := synth.ReadNormals("farm.csv", strings.NewReader(table))
	if err != nil {
		t.Fatal(err)
	}
	if *c.Rain != *n.Rain || c.Light[0] != 2.5 {
		t.Errorf("the table reads %v and %v", *c.Rain, *c.Light)
	}
}

func TestNormalsRefused(t *testing.T) {
	for text, says := range map[string]string{
		"":               "there are none",
		"rain: 1 2 3 mm": "twelve numbers",
		"latitude: 37 deg\nlongitude: 0 deg\nrain: 1 1 1 1 1 1 1 1 1 1 1 1": "no unit",
		"latitude: 37 deg\nlongitude: 0 deg\nrian: 1 mm":                    "is not known",
		"latitude: 37 deg": "longitude is missing",
		"latitude: 37 deg\nlongitude: 0 deg\ntemperature_max: 1 1 1 1 1 1 1 1 1 1 1 1 degC":                         "go together",
		"latitude: 37 deg\nlongitude: 0 deg\nlight: 9 9 9 9 9 9 9 9 9 9 9 9 kWh/m2/d":                               "outside the air",
		"latitude: 37 deg\nlongitude: 0 deg\nrain: [1, 2]":                                                          "on one line",
		"latitude: 37 deg\nlatitude: 37 deg":                                                                        "already",
		"latitude: 37 deg\nlongitude: 0 deg\nrain: 9 9 9 9 9 9 9 9 9 9 9 9 mm\nwet_days: 9 9 9 9 9 9 9 9 9 9 9 9 d": "not possible",
	} {
		if n, err := synth.ReadNormals("x.yaml", strings.NewReader(text)); err == nil || !strings.Contains(err.Error(), says) {
			t.Errorf("%q: got %v, %v, want an error that says %q", text, n, err, says)
		}
	}
}

func FuzzReadNormals(f *testing.F) {
	f.Add(hillFarm, false)
	f.Add("quantity,unit\nrain,mm,1,2,3,4,5,6,7,8,9,10,11,12\nlatitude,deg,1\nlongitude,deg,1", true)
	f.Add("latitude: 89 deg\nlongitude: 0 deg\nclearness: .1 .1 .1 .1 .1 .1 .1 .1 .1 .1 .1 .1", false)
	f.Fuzz(func(t *testing.T, text string, table bool) {
		name := "x.yaml"
		if table {
			name = "x.csv"
		}
		n, err := synth.ReadNormals(name, strings.NewReader(text))
		if err != nil {
			return
		}
		g, err := n.Generator()
		if err != nil {
			return
		}
		for _, s := range g.Years(1, 1).Series {
			for i, v := range s.Values {
				if v != v || v > 1e6 || v < -1e6 {
					t.Fatalf("%s of day %d is %g", s.Column, i, v)
				}
			}
		}
	})
}
