package ground

import (
	"fmt"
	"sync"

	"suffice/internal/reduce"
	"suffice/quantity"
)

// A Kept keeps reduced sections, so that a house that is tried in many ways reduces each but once. The zero Kept holds none; it may be
// used by several at a time.
type Kept struct {
	mutex  sync.Mutex
	models map[string]reduced
}

type reduced struct {
	model *reduce.Model
	airs  DugAirs
}

// most is how many are kept, 20 kB each: then all are forgotten.
const most = 64

// Reduced gives a dug room's section for so many metres of house as few modes, from what is kept where all that decides it is the same to the last bit. The model
// is shared and must not be changed. A nil Kept keeps nothing.
func (k *Kept) Reduced(d Dug, grid Grid, resists Surfaces, length quantity.Metres, o reduce.Options) (*reduce.Model, DugAirs, error) {
	if k == nil {
		return d.reduced(grid, resists, length, o)
	}
	key := fmt.Sprintf("%#v %#v %#v %#v %#v", d, grid, resists, length, o)
	k.mutex.Lock()
	defer k.mutex.Unlock()
	if r, found := k.models[key]; found {
		return r.model, r.airs, nil
	}
	m, airs, err := d.reduced(grid, resists, length, o)
	if err != nil {
		return nil, airs, err
	}
	if k.models == nil || len(k.models) == most {
		k.models = map[string]reduced{}
	}
	k.models[key] = reduced{m, airs}
	return m, airs, nil
}

func (d Dug) reduced(grid Grid, resists Surfaces, length quantity.Metres, o reduce.Options) (*reduce.Model, DugAirs, error) {
	section, airs, err := d.Section(grid, resists)
	if err != nil {
		return nil, airs, err
	}
	n, err := section.Network()
	if err != nil {
		return nil, airs, err
	}
	m, err := n.Reduce(length, o)
	return m, airs, err
}
