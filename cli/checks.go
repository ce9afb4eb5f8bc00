package cli

import (
	"fmt"
	"slices"
	"strings"

	"suffice/internal/check/table"
)

type checksVerb struct {
	Part string `arg:"" optional:"" complete:"part" help:"A package, such as power or site/sun; without it, all."`
	JSON bool   `name:"json" help:"Print JSON."`
}

func (v *checksVerb) Help() string {
	return `Lists what the figures of each part were checked against: the source, the place in
it, the printed value and what distance is allowed. It lists; make test runs the checks.

Examples:
  suffice checks
  suffice checks power`
}

func (v *checksVerb) Run(s Streams) error {
	picked, err := table.Of(v.Part)
	if err != nil {
		return ownFault{err}
	}
	if len(picked) == 0 {
		return fmt.Errorf("no part %q has a published check; suffice checks lists all", v.Part)
	}
	if v.JSON {
		return writeJSON(s.Out, picked)
	}
	last, keys := "", []string(nil)
	for _, r := range picked {
		if r.Package != last {
			fmt.Fprintf(s.Out, "%s\n", r.Package)
			last = r.Package
		}
		fmt.Fprintf(s.Out, "  %s, %s: %s, within %.3g (%s)\n", r.Source, r.At, strings.TrimSpace(r.Printed+" "+r.Unit), r.Allowed, r.Standing)
		keys = append(keys, r.Source)
	}
	slices.Sort(keys)
	printList(s.Out, "Sources", published(slices.Compact(keys)))
	return nil
}
