package main

import (
	"os"
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"suffice": main})
}

// TestStories plays the whole program: one file a story, the reason on its first line.
// A story finds the real weather records under $RECORDS.
func TestStories(t *testing.T) {
	records, err := filepath.Abs("../../site/weather/files/testdata")
	if err != nil {
		t.Fatal(err)
	}
	testscript.Run(t, testscript.Params{
		Dir: "testdata/stories",
		Setup: func(env *testscript.Env) error {
			env.Setenv("RECORDS", records)
			env.Setenv("NO_COLOR", "1")
			return nil
		},
		Cmds: map[string]func(*testscript.TestScript, bool, []string){
			"garbage": garbage,
			"deep":    deep,
		},
	})
}

// garbage writes a file of so many megabytes that is no text: garbage FILE MEGABYTES.
func garbage(ts *testscript.TestScript, neg bool, args []string) {
	var size int
	for _, c := range args[1] {
		size = size*10 + int(c-'0')
	}
	block := make([]byte, 1<<20)
	for i := range block {
		block[i] = byte(i*7 + i>>8)
	}
	f, err := os.Create(ts.MkAbs(args[0]))
	ts.Check(err)
	for range size {
		_, err = f.Write(block)
		ts.Check(err)
	}
	ts.Check(f.Close())
}

// deep writes a YAML file of lists inside each other: deep FILE LEVELS.
func deep(ts *testscript.TestScript, neg bool, args []string) {
	var levels int
	for _, c := range args[1] {
		levels = levels*10 + int(c-'0')
	}
	text := make([]byte, 0, 2*levels+8)
	text = append(text, "name: "...)
	for range levels {
		text = append(text, '[')
	}
	for range levels {
		text = append(text, ']')
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), text, 0o644))
}
