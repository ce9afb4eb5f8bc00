package web

import (
	"bytes"
	"errors"
	"net/http"
	"net/url"
	"slices"

	"suffice/house"
)

// A changed is a change that was made, with the verdicts around it.
type changed struct {
	Changes       []house.Changed
	Undone        bool // it was a step back
	Before, After []verdict
}

// change writes what a form states into the house file and lives the house anew. The house is
// proved before anything is written: what cannot be lived is not kept.
func (s *Site) change(w http.ResponseWriter, r *http.Request) {
	s.alter(w, r, func(now *lived) (*lived, error) {
		if err := same(now, r.PostFormValue("hash")); err != nil {
			return nil, err
		}
		changes := typed(now, r)
		if len(changes) == 0 {
			return nil, errors.New(s.say.Say("change.nothing"))
		}
		text, done, err := house.Splice(now.Name, now.Text, changes...)
		if err != nil {
			return nil, err
		}
		next, err := s.relive(now, text)
		if err != nil {
			return nil, err
		}
		next.Last = &changed{Changes: done}
		next.Earlier = append(slices.Clip(now.Earlier), now.Text)
		if now.Path != "" {
			_, err = house.Edit(now.Path, now.Hash, changes)
		}
		return next, err
	})
}

// typed gives the values of a form that are not those of the file. An empty field leaves its
// value as it is: a part is taken out by hand.
func typed(now *lived, r *http.Request) (changes []house.Change) {
	for _, f := range fields(now, r.PostFormValue("part")) {
		if value := r.PostFormValue(f.Path); value != "" && value != f.Value {
			changes = append(changes, house.Change{Path: f.Path, Value: value})
		}
	}
	return changes
}

// same refuses a form that was made from another text of the file.
func same(now *lived, hash string) error {
	of, err := house.ParseHash(hash)
	if err == nil && of != now.Hash {
		err = house.ErrChangedOnDisk
	}
	return err
}

// undo brings the text before the last change back.
func (s *Site) undo(w http.ResponseWriter, r *http.Request) {
	s.alter(w, r, func(now *lived) (*lived, error) {
		if err := same(now, r.PostFormValue("hash")); err != nil {
			return nil, err
		}
		var text []byte
		switch last := len(now.Earlier) - 1; {
		case now.Path != "":
			back, err := house.Undo(now.Path, now.Hash)
			if err != nil {
				return nil, err
			}
			text = back.Text
		case last >= 0:
			text = now.Earlier[last]
		default:
			return nil, errors.New(s.say.Say("change.first"))
		}
		next, err := s.relive(now, text)
		if err != nil {
			return nil, err
		}
		next.Last = &changed{Undone: true}
		next.Earlier = now.Earlier[:max(0, len(now.Earlier)-1)]
		return next, nil
	})
}

// reread takes the file as it now stands on disk.
func (s *Site) reread(w http.ResponseWriter, r *http.Request) {
	s.alter(w, r, func(now *lived) (*lived, error) {
		if now.Path == "" {
			return now, nil
		}
		text, _, err := house.ReadText(now.Path)
		if err != nil || bytes.Equal(text, now.Text) {
			return now, err
		}
		return s.relive(now, text)
	})
}

// relive reads and lives another text of the same file.
func (s *Site) relive(now *lived, text []byte) (*lived, error) {
	file, err := house.Read(now.Name, text)
	if err != nil {
		return nil, err
	}
	return s.live(&lived{Path: now.Path, Name: now.Name, Text: text}, file)
}

// alter makes one change at a time, and sends the reader to the form, or back to it with the faults.
func (s *Site) alter(w http.ResponseWriter, r *http.Request, make func(now *lived) (*lived, error)) {
	if err := r.ParseForm(); err != nil {
		http.Error(w, s.say.Say("change.unread", "fault", err), http.StatusBadRequest)
		return
	}
	s.making.Lock()
	defer s.making.Unlock()
	now := s.house.Load()
	next, err := make(now)
	if err != nil {
		s.send(w, r, func(v *view, r *http.Request) shown { return v.changing(r, err) })
		return
	}
	if next != now && next.Last != nil { // what is shown already is not written to
		next.Last.Before, next.Last.After = s.verdicts(now), s.verdicts(next)
	}
	s.house.Store(next)
	http.Redirect(w, r, "/change?"+url.Values{"part": {r.PostFormValue("part")}}.Encode(), http.StatusSeeOther)
}

// verdicts gives those of every budget.
func (s *Site) verdicts(l *lived) []verdict {
	v := &view{catalogue: s.say, lived: l}
	return []verdict{v.waterVerdict(), v.powerVerdict()}
}
