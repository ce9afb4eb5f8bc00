package web

import (
	"runtime"
	"sync"

	"suffice/report"
)

// A leaving is the work of living a house without each of its measures, begun when a reader first asks for it.
type leaving struct {
	lock  sync.Mutex
	begun bool
	ended bool
	done  int
	list  []report.Lack
	fault error
}

// leftOut is how far that work is.
type leftOut struct {
	Asked bool
	Under bool // on its way
	Done  int
	List  []report.Lack // where it has ended
	Fault error
}

// leaveOut begins the work, or tells how far it is. It goes on beside the pages and leaves them a processor, where there are two.
func (v *view) leaveOut() leftOut {
	l := &v.leaving
	l.lock.Lock()
	defer l.lock.Unlock()
	if !l.begun {
		l.begun = true
		go l.work(v.Proof)
	}
	return leftOut{Asked: true, Under: !l.ended, Done: l.done, List: l.list, Fault: l.fault}
}

func (l *leaving) work(p *report.Proof) {
	list, err := p.Measures(max(1, runtime.GOMAXPROCS(0)-1), func(done int) {
		l.lock.Lock()
		defer l.lock.Unlock()
		l.done = done
	})
	l.lock.Lock()
	defer l.lock.Unlock()
	l.list, l.fault, l.ended = list, err, true
}
