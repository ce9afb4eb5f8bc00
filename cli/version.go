package cli

import (
	"fmt"
	"runtime/debug"
)

type versionVerb struct{}

func (versionVerb) Run(s Streams) error {
	version, revision := "unreleased", ""
	if info, ok := debug.ReadBuildInfo(); ok {
		if v := info.Main.Version; v != "" && v != "(devel)" {
			version = v
		}
		for _, setting := range info.Settings {
			if setting.Key == "vcs.revision" {
				revision = " (" + setting.Value + ")"
			}
		}
	}
	_, err := fmt.Fprintf(s.Out, "suffice %s%s\n", version, revision)
	return err
}
