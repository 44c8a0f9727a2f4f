package record

import (
	"errors"
	"os"
	"path/filepath"
	"runtime"
)

// FolderVariable names the environment variable whose value, if there is one,
// is the folder of the record in place of the user's data folder.
const FolderVariable = "STANDSTILL_DATA"

const fileName = "record.db"

// DefaultPath is where a user's record is: record.db in the folder that
// STANDSTILL_DATA names, else in the folder standstill of the user's data
// folder. It makes nothing.
func DefaultPath() (string, error) {
	folder, err := dataFolder(runtime.GOOS, os.Getenv)
	if err != nil {
		return "", err
	}
	return filepath.Join(folder, fileName), nil
}

// dataFolder follows the habit of each system. On Windows it is the folder
// that stays on the machine: records that travelled with an account would be
// merged by copying one over the other.
func dataFolder(goos string, getenv func(string) string) (string, error) {
	if folder := getenv(FolderVariable); folder != "" {
		return filepath.Abs(folder)
	}
	var base string
	var below []string
	switch goos {
	case "windows":
		base = getenv("LocalAppData")
	case "darwin", "ios":
		base, below = getenv("HOME"), []string{"Library", "Application Support"}
	default:
		// The base directory specification: a relative path counts as unset.
		if base = getenv("XDG_DATA_HOME"); !filepath.IsAbs(base) {
			base, below = getenv("HOME"), []string{".local", "share"}
		}
	}
	if base == "" {
		return "", &Error{Kind: ErrUnopenable, Cause: errNoHome}
	}
	return filepath.Join(append(append([]string{base}, below...), "standstill")...), nil
}

var errNoHome = errors.New("no home folder is known")
