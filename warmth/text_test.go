package warmth

import (
	"bufio"
	"flag"
	"fmt"
	"io"
	"math"
	"os"
	"testing"

	"suffice/warmth/light"
)

// A general integrator under bench/ lives the same rooms: go test ./warmth -run SameRooms -rooms FILE writes them for it.
var roomsFile = flag.String("rooms", "", "file to write the rooms and their year to, for bench/stiff.c")

// shutRooms are the two rooms with door and vents shut: what heat passes is the same in every hour, as an integrator of given equations needs it.
func shutRooms() *Design {
	d := twoRooms()
	d.Rooms[0].Openings, d.Rooms[0].Vents = nil, Vents{}
	return d
}

// BenchmarkShutRooms lives the year that bench/stiff.c integrates.
func BenchmarkShutRooms(b *testing.B) {
	r := prepared(b, shutRooms(), outdoors(b, light.Options{Albedo: .2}))
	liveYears(b, r)
}

// beginWarm is what every node begins the year with, degC.
const beginWarm = 20

// What is written for the integrator is the year that all modes live, and how far the few are from it.
func TestSameRoomsForAnIntegrator(t *testing.T) {
	sky := outdoors(t, light.Options{Albedo: .2})
	all, err := prepare(shutRooms(), sky, detail{})
	if err != nil {
		t.Fatal(err)
	}
	few := prepared(t, shutRooms(), sky)
	truth, lived := endsOf(all), endsOf(few)
	var squares float64
	for i, v := range truth {
		squares += (v - lived[i]) * (v - lived[i]) / float64(len(truth))
	}
	asked := math.Sqrt(squares)
	t.Logf("%d modes of %d: air at the hours' ends off by %.5f K rms", few.modes, all.modes, asked)
	if !(asked > 0 && asked <= .05) {
		t.Errorf("air at the hours' ends is off by %g K rms, want up to 0.05", asked)
	}
	w := io.Discard
	if *roomsFile != "" {
		f, err := os.Create(*roomsFile)
		if err != nil {
			t.Fatal(err)
		}
		defer func() {
			if err := f.Close(); err != nil {
				t.Error(err)
			}
		}()
		w = f
	}
	if err := all.writeYear(w, truth, asked); err != nil {
		t.Fatal(err)
	}
}

// endsOf gives the air of every room at the end of every hour of a year, from rooms that begin equally warm.
func endsOf(r *Rooms) (ends []float64) {
	s := r.warm(beginWarm)
	var out Out
	for h := range 8760 {
		r.Step(&s, &In{Hour: h}, &out)
		for i := range r.rooms {
			ends = append(ends, float64(out.Rooms[i].Air))
		}
	}
	return ends
}

// writeYear writes the network, its inputs hour by hour and beside them the air of the rooms.
func (r *Rooms) writeYear(w io.Writer, ends []float64, asked float64) error {
	if err := r.plan.net.WriteText(w); err != nil {
		return err
	}
	out := bufio.NewWriter(w)
	for _, node := range r.plan.air {
		fmt.Fprintln(out, "room", node)
	}
	fmt.Fprintln(out, "begin", beginWarm)
	fmt.Fprintln(out, "asked", asked)
	fmt.Fprintln(out, "hours", len(ends)/r.rooms)
	for h := range len(ends) / r.rooms {
		for _, c := range r.columns {
			fmt.Fprint(out, c.at(h), " ")
		}
		for _, v := range ends[h*r.rooms : (h+1)*r.rooms] {
			fmt.Fprint(out, v, " ")
		}
		fmt.Fprintln(out)
	}
	return out.Flush()
}
