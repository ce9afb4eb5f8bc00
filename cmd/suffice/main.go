// Command suffice says whether a self-sufficient house suffices.
package main

import (
	"context"
	"os"
	"os/signal"

	"golang.org/x/term"

	"suffice/cli"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt)
	status := cli.Run(ctx, os.Args[1:], streams())
	stop()
	os.Exit(status)
}

func streams() cli.Streams {
	s := cli.Streams{In: os.Stdin, Out: os.Stdout, Err: os.Stderr, Width: 80,
		Terminal: term.IsTerminal(int(os.Stderr.Fd())), Typed: term.IsTerminal(int(os.Stdin.Fd()))}
	if width, _, err := term.GetSize(int(os.Stdout.Fd())); err == nil && width >= 40 {
		s.Width = min(width, 120)
		s.Colour = os.Getenv("NO_COLOR") == "" && os.Getenv("TERM") != "dumb"
	}
	return s
}
