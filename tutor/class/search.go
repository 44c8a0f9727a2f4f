package class

import (
	"bytes"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
)

// Bounds of a search in folders: how deep, and how many files.
const (
	deepest   = 8
	mostFiles = 20_000
)

// fileKind is what a file begins like.
type fileKind uint8

const (
	otherFile fileKind = iota
	handInFile
	recordFile
)

// filesIn lists the ordinary files at the paths: those named, and those in folders
// below. Links are not followed, and what is hidden is left alone. A path that is
// not there is an error.
func filesIn(paths []string) ([]string, error) {
	var files []string
	for _, root := range paths {
		info, err := os.Stat(root)
		if err != nil {
			return nil, err
		}
		if !info.IsDir() {
			files = append(files, root)
			continue
		}
		err = filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
			depth := strings.Count(strings.TrimPrefix(path, root), string(filepath.Separator))
			hidden := path != root && strings.HasPrefix(d.Name(), ".")
			switch {
			// A folder that may not be read is left out; the others are searched.
			case d != nil && d.IsDir() && (err != nil || hidden || depth > deepest):
				return fs.SkipDir
			case err != nil || hidden || !d.Type().IsRegular():
				return nil
			case len(files) >= mostFiles:
				return fs.SkipAll
			}
			files = append(files, path)
			return nil
		})
		if err != nil {
			return nil, err
		}
	}
	return files, nil
}

// kindOf looks at the first bytes of a file; whether it is a hand-in its first line
// will tell.
func kindOf(path string) (fileKind, error) {
	if info, err := os.Stat(path); err != nil || !info.Mode().IsRegular() {
		return otherFile, err // a pipe would be waited for
	}
	f, err := os.Open(path)
	if err != nil {
		return otherFile, err
	}
	defer f.Close()
	head := make([]byte, 64)
	n, err := io.ReadFull(f, head)
	if err != nil && n == 0 {
		return otherFile, nil
	}
	head = bytes.TrimPrefix(head[:n], []byte("\ufeff"))
	switch {
	case bytes.HasPrefix(head, []byte("\x1f\x8b")), bytes.HasPrefix(head, []byte("{")):
		return handInFile, nil
	case bytes.HasPrefix(head, []byte("SQLite format 3\x00")):
		return recordFile, nil
	}
	return otherFile, nil
}
