package reduce

import (
	"bufio"
	"fmt"
	"io"
)

// WriteText writes a network in plain lines, for a program of another kind to work on the same: its size in states and inputs, what each
// state holds (J/K), and each place on or off the diagonal of the symmetric matrix that gives the heats which leave states and
// inputs (W) by the temperatures of both. Inputs count from -1 down, states from 0 up; a place off the diagonal stands for its mirror too.
func (n *Network) WriteText(w io.Writer) error {
	out := bufio.NewWriter(w)
	fmt.Fprintln(out, "size", len(n.capacity), len(n.inputs))
	for i, c := range n.capacity {
		fmt.Fprintln(out, "holds", i, c)
	}
	for _, e := range n.form {
		fmt.Fprintln(out, "element", e.a, e.b, e.v)
	}
	return out.Flush()
}
