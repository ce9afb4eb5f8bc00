package warmth

import (
	"math"
	"slices"
	"testing"

	"pgregory.net/rapid"

	"suffice/quantity"
	"suffice/sheet"
)

// told is the sheets of an hour, worked.
type told struct {
	t interface {
		Helper()
		Fatal(args ...any)
		Fatalf(format string, args ...any)
		Errorf(format string, args ...any)
	}
	worked []sheet.Worked
}

func tellHour(t *told, r *Rooms, h *Hour) {
	t.t.Helper()
	all := Sheets()
	t.worked = nil
	for _, part := range r.Tell(h) {
		i := slices.IndexFunc(all, func(s sheet.Sheet) bool { return s.Name == part.Sheet })
		if i < 0 {
			t.t.Fatalf("there is no sheet %s", part.Sheet)
		}
		w, err := all[i].Work(part.Inputs)
		if err != nil {
			t.t.Fatalf("%s: %v", part.Sheet, err)
		}
		t.worked = append(t.worked, w)
	}
}

// list gives a result of the nth sheet of a name.
func (t *told) list(name string, nth int, result string) []float64 {
	t.t.Helper()
	for _, w := range t.worked {
		if w.Sheet.Name != name {
			continue
		}
		if nth--; nth >= 0 {
			continue
		}
		for _, r := range w.Results {
			if r.Name == result && r.Value.Kind == sheet.List {
				return r.Value.List
			}
			if r.Name == result {
				return []float64{r.Value.Number}
			}
		}
	}
	t.t.Fatalf("%s has no %s", name, result)
	return nil
}

func (t *told) same(what string, got, want float64) {
	t.t.Helper()
	if math.Float64bits(got) != math.Float64bits(want) {
		t.t.Errorf("%s is %.17g by its sheet, %.17g in the hour", what, got, want)
	}
}

// holdHour holds the sheets of an hour to what it did, bit by bit, and the balance of every room to rounding.
func holdHour(t *told, r *Rooms, h *Hour) {
	t.t.Helper()
	tellHour(t, r, h)
	var sums Sums
	sums.Add(r, h.Out)
	heats := r.Heats(&sums)
	vents := 0
	stored := 0.0
	for i := range r.rooms {
		o := &h.Out.Rooms[i]
		if r.tables[i].vents {
			t.same("open", t.list("vents-hour", vents, "open")[0], o.Open)
			t.same("flow", t.list("vents-hour", vents, "flow")[0], o.Flow)
			vents++
		}
		for name, want := range map[string]float64{"air_after": float64(o.Air), "heating": float64(o.Heating), "cooling": float64(o.Cooling), "vented": float64(o.Vented), "between": float64(o.Between)} {
			t.same(name, t.list("air-hour", 0, name)[i], want)
		}
		for name, want := range map[string]float64{"vented": float64(o.Vented), "between": float64(o.Between), "operative": float64(o.Operative)} {
			t.same(name, t.list("room-hour", i, name)[0], want)
		}
		for name, want := range map[string]float64{"fresh": o.Fresh, "carbon_after": o.Carbon, "vapour_after": o.Vapour, "condensed": float64(o.Condensed)} {
			t.same(name, t.list("damp-hour", 0, name)[i], want)
		}
		through, k := t.list("room-hour", i, "through"), 0
		size := math.Abs(float64(o.Vented)) + math.Abs(float64(o.Between)) + float64(o.Heating) + float64(o.Cooling)
		for _, x := range heats {
			if x.Room == i && x.Way != Sun {
				t.same("through "+x.Name, through[k], float64(x.Out))
				size += math.Abs(float64(x.Out))
				k++
			}
		}
		if k != len(through) {
			t.t.Errorf("%d ways of heat are told, %d are reckoned", len(through), k)
		}
		stored += t.list("room-hour", i, "stored")[0]
		_, held := r.held(i, &h.After)
		for _, wh := range held {
			size += math.Abs(wh)
		}
		if left := t.list("room-hour", i, "left_over")[0]; !(math.Abs(left) <= 1e-9*size) {
			t.t.Errorf("room %d: %g Wh are left over of %g Wh that it holds and moves", i, left, size)
		}
	}
	rise, whole := float64(r.Stored(&h.After)-r.Stored(&h.Before)), math.Abs(float64(r.Stored(&h.After)))
	if !(math.Abs(stored-rise) <= 1e-9*(whole+math.Abs(rise))) {
		t.t.Errorf("the rooms take up %g Wh one by one and %g Wh together, of %g", stored, rise, whole)
	}
}

// Any hour of any house is told as it was lived.
func TestHoursAreToldAsLived(t *testing.T) {
	sky := made(t, 10, daily)
	rapid.Check(t, func(rt *rapid.T) {
		d := drawn(rt)
		r, err := Prepare(d, sky)
		if err != nil {
			rt.Fatal(err)
		}
		hour := rapid.IntRange(0, 239).Draw(rt, "hour")
		s := r.warm(rapid.Float64Range(0, 30).Draw(rt, "at first"))
		for i := range r.rooms {
			s.Carbon[i], s.Vapour[i] = 500, 0.008
		}
		in := In{}
		in.Rooms[0] = RoomIn{Air: 150, Radiant: 50, Vapour: rapid.Float64Range(0, 3).Draw(rt, "vapour"), Carbon: 40}
		var out Out
		for in.Hour = 0; in.Hour < hour; in.Hour++ {
			r.Step(&s, &in, &out)
		}
		h := Hour{Before: s, In: &in, Out: &out}
		r.Step(&s, &in, &out)
		h.After = s
		holdHour(&told{t: rt}, r, &h)
	})
}

// The same of the room with every measure, through days in which shutters close, vents open and water settles: none of them is missing.
func TestRareHoursAreTold(t *testing.T) {
	const days = 20
	noon := func(h int) float64 { return max(0, math.Sin(2*math.Pi*float64(h%24-6)/24)) }
	r := prepared(t, measured(), made(t, days, func(h int) (float64, float64) { return -3 + 1.5*float64(h/24) + 6*noon(h), 500 * noon(h) }))
	s := r.warm(10)
	s.Vapour[0], s.Carbon[0] = 0.006, 500
	in := In{}
	in.Rooms[0] = RoomIn{Vapour: 0.8, Carbon: 40}
	var out Out
	shut, open, wet := 0, 0, 0
	for hour := range 24 * days {
		in.Hour = hour
		h := Hour{Before: s, In: &in, Out: &out}
		r.Step(&s, &in, &out)
		h.After = s
		holdHour(&told{t: t}, r, &h)
		if r.shutters[0].closed[hour] {
			shut++
		}
		if out.Rooms[0].Open > 0 {
			open++
		}
		if out.Rooms[0].Condensed > 0 {
			wet++
		}
	}
	if shut == 0 || open == 0 || wet == 0 {
		t.Errorf("in %d hours shutters were shut, in %d vents open, in %d water settled: want some of each", shut, open, wet)
	}
}

// Every sheet answers bare, and refuses lists that do not fit each other with a sentence.
func TestSheetsOfTheHourAnswer(t *testing.T) {
	for _, s := range Sheets() {
		w, err := s.Work(nil)
		if err != nil || len(w.Results) == 0 || len(w.Steps) == 0 || len(s.Sources) == 0 {
			t.Errorf("%s bare: %v, %d results, %d steps, %d sources", s.Name, err, len(w.Results), len(w.Steps), len(s.Sources))
		}
		for name, in := range map[string]string{"air-hour": "answers", "room-hour": "far", "damp-hour": "flow"} {
			if name != s.Name {
				continue
			}
			if _, err := s.Work(map[string]sheet.Value{in: list(1, 2, 3)}); err == nil {
				t.Errorf("%s took 3 values of %s", name, in)
			}
		}
		for _, from := range []float64{0, 3, 1} { // to room 1
			if s.Name != "air-hour" && s.Name != "damp-hour" {
				continue
			}
			if _, err := s.Work(map[string]sheet.Value{"door_from": list(from), "door_to": list(1), "door_conductance": list(5)}); err == nil {
				t.Errorf("%s took a door from room %g to room 1", s.Name, from)
			}
		}
	}
	if got := comfortable(20, 18); got != 19 {
		t.Errorf("air of 20 and faces of 18 degC feel like %v", got)
	}
}

func comfortable(air, faces float64) quantity.Celsius {
	for _, s := range Sheets() {
		if s.Name == "room-hour" {
			w, _ := s.Work(map[string]sheet.Value{"air": number(air), "faces": number(faces)})
			for _, r := range w.Results {
				if r.Name == "operative" {
					return quantity.Celsius(r.Value.Number)
				}
			}
		}
	}
	return 0
}
