package main

import (
	"path/filepath"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"standstill": main})
}

// TestStories runs the program as it is run by hand: each file of testdata/script
// is one story, with a record of its own.
func TestStories(t *testing.T) {
	stories, err := filepath.Glob("testdata/script/*.txtar")
	if err != nil || len(stories) == 0 {
		t.Fatal("no stories were found", err)
	}
	testscript.Run(t, testscript.Params{
		Files: stories,
		Setup: func(e *testscript.Env) error {
			e.Setenv("STANDSTILL_DATA", filepath.Join(e.WorkDir, "data"))
			return nil
		},
		RequireExplicitExec: false,
	})
}
