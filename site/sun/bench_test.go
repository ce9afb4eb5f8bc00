package sun

import (
	"testing"

	"suffice/site"
)

// every gives every day from the first of January of one year to the end of another.
func every(first, last int32) []Date {
	var days []Date
	for y := first; y <= last; y++ {
		months := [...]int8{31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31}
		if y%4 == 0 && (y%100 != 0 || y%400 == 0) {
			months[1] = 29
		}
		for m, n := range months {
			for d := range n {
				days = append(days, Date{y, int8(m + 1), d + 1})
			}
		}
	}
	return days
}

// clearYear is a year at a mid latitude with seven tenths of the light outside.
func clearYear() (*Track, Split) {
	t := NewTrack(site.Place{Latitude: 35, Longitude: 24.8, Clock: 2}, every(2019, 2019))
	global := make([]float64, t.Hours())
	for i := range global {
		global[i] = 0.7 * t.Normal[i] * max(0, t.CosZenith[i]) * t.Share[i]
	}
	return t, t.Split(global, BRL)
}

func BenchmarkTrackOf37Years(b *testing.B) {
	days := every(1984, 2020)
	b.ReportAllocs()
	for b.Loop() {
		NewTrack(site.Place{Latitude: 35, Longitude: 24.8, Clock: 2}, days)
	}
}

func BenchmarkSplitOfAYear(b *testing.B) {
	t, s := clearYear()
	for b.Loop() {
		t.Split(s.Diffuse, BRL)
	}
}

func BenchmarkFillOfAYear(b *testing.B) {
	t, s := clearYear()
	for _, m := range []Model{Perez, HayDavies, Isotropic} {
		b.Run(m.String(), func(b *testing.B) {
			f := NewFace(Plane{35, 180}, 0.2, m, site.Horizon{})
			dst := make([]PlaneLight, t.Hours())
			b.ReportAllocs()
			for b.Loop() {
				dst = f.Fill(dst, t, s.Diffuse, s.Beam)
			}
		})
	}
}
