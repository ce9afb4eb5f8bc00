package synth

import "errors"

func (n *Normals) generator() (*Generator, error) {
	return nil, errors.New("normals cannot be turned into years yet: fit a record")
}

// usualChance and usualAmount set how the index shares itself between wet days and amounts
// where no record tells.
const usualChance, usualAmount = 0.3, 0.3
