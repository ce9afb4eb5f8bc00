package power

import (
	"math/bits"

	"suffice/quantity"
)

// TaskState is the work that waits. Its zero value is nothing waiting.
type TaskState struct {
	Held    [MostWaiting][MostWait + 1]float64 // Wh by task and days waited
	waiting uint8                              // tasks with something held, a bit each
}

// Waiting gives all that waits.
func (t *TaskState) Waiting() quantity.WattHours {
	sum := 0.0
	for m := t.waiting; m != 0; m &= m - 1 {
		for _, e := range t.Held[bits.TrailingZeros8(m)] {
			sum += e
		}
	}
	return quantity.WattHours(sum)
}

// wait lets the tasks wait for an hour: at the start of a day what is held grows a day older,
// and what waited too long is given up; what is put off now is held. It gives what is on its
// last day and must run now, W, and the tasks that may be made up for from sun.
func (y *System) wait(t *TaskState, in *SystemIn, out *SystemOut) (due float64, mayRun uint8) {
	w, tasks := in.Wants, y.Loads.tasks
	if in.NewDay {
		for m := t.waiting; m != 0; m &= m - 1 {
			k := bits.TrailingZeros8(m)
			old := quantity.WattHours(t.older(k, &tasks[k]))
			out.GivenUp[tasks[k].need] += old
			out.Short[tasks[k].need] += old
		}
	}
	for m := w.putOff; m != 0; m &= m - 1 {
		k := bits.TrailingZeros8(m)
		t.Held[k][0] += tasks[k].hours[w.hour]
		t.waiting |= 1 << k
	}
	mayRun = w.mayRun
	for m := t.waiting & w.mustRun; m != 0; m &= m - 1 {
		k := bits.TrailingZeros8(m)
		if last := tasks[k].days; !tasks[k].drops && t.Held[k][last] > 0 {
			due += t.take(k, last, tasks[k].room(w, k))
			mayRun &^= 1 << k // its machine is taken for this hour
		}
	}
	out.Due = quantity.WattHours(due)
	return due, mayRun
}

// older moves what a task holds to the next day and gives what is given up.
func (t *TaskState) older(k int, of *task) (givenUp float64) {
	held := &t.Held[k]
	last := held[of.days]
	copy(held[1:of.days+1], held[:of.days])
	held[0] = 0
	if of.drops {
		t.mark(k)
		return last
	}
	held[of.days] += last
	return 0
}

// take takes up to so much, Wh, from what a task holds since some days, and gives it.
func (t *TaskState) take(k, days int, most float64) float64 {
	got := min(most, t.Held[k][days])
	t.Held[k][days] -= got
	t.mark(k)
	return got
}

// mark says whether a task holds anything.
func (t *TaskState) mark(k int) {
	t.waiting &^= 1 << k
	if t.Held[k] != [MostWait + 1]float64{} {
		t.waiting |= 1 << k
	}
}

// room gives what a task's machine can do in the hour beside its usual work, Wh.
func (k *task) room(w *Wants, bit int) float64 {
	if w.putOff&(1<<bit) != 0 {
		return k.power
	}
	return k.power - k.hours[w.hour]
}

// makeUp runs tasks that had waited, oldest first, from what sun is left on the bus, W.
func (y *System) makeUp(t *TaskState, in *SystemIn, mayRun uint8, c carried, bus float64, out *SystemOut) carried {
	left := y.Inverter.Most(bus) - c.load
	if left <= 0 {
		return c
	}
	for m := t.waiting & mayRun; m != 0; m &= m - 1 {
		k := bits.TrailingZeros8(m)
		task := &y.Loads.tasks[k]
		room := min(left, task.room(in.Wants, k))
		for days := task.days; days >= 0 && room > 0; days-- {
			got := t.take(k, days, room)
			room -= got
			left -= got
			out.MadeUp += quantity.WattHours(got)
		}
	}
	if out.MadeUp == 0 {
		return c
	}
	return y.Inverter.fits(c.load+float64(out.MadeUp), bus)
}
