package main

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(m, map[string]func(){"standstill": main})
}

// databaseVariable holds the address of a database that tests may fill.
const databaseVariable = "STANDSTILL_POSTGRES"

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
			e.Setenv("DATABASE", os.Getenv(databaseVariable))
			e.Setenv("BOOK", fmt.Sprint("story ", time.Now().UnixNano()))
			return nil
		},
		// A story of a database needs one that may be filled.
		Condition: func(name string) (bool, error) {
			if name != "database" {
				return false, fmt.Errorf("no such condition: %s", name)
			}
			return os.Getenv(databaseVariable) != "", nil
		},
		RequireExplicitExec: false,
	})
}
