package main

import (
	"bytes"
	"errors"
	"fmt"
	"io"
	"math/rand/v2"
	"os"
	"path/filepath"

	"github.com/spf13/cobra"

	"example.org/standstill/checker/pattern"
)

// output is a file that a command writes. Mark is a text that every file of this
// kind has near its beginning: one that has it was written by the same command and
// may be written again. Another file stays unless Force is set; a class file, a
// record and whatever is no file always do.
type output struct {
	Mark  string
	Force bool
}

func (o *output) flags(c *cobra.Command) {
	c.Flags().BoolVar(&o.Force, "force", false, "replace the file even if another program wrote it")
}

// headOfFile is how many bytes are looked at to tell what a file is.
const headOfFile = 64 << 10

// classKeyLines find what every class file has.
var classKeyLines = pattern.Of(`(?m)^["']?students["']?\s*:[\s\S]*^["']?problems["']?\s*:|^["']?problems["']?\s*:[\s\S]*^["']?students["']?\s*:`)

// write writes the file so that under its name there is the old content or the new,
// never a half. The file may be read by whom the umask lets.
func (o *output) write(path string, data []byte) error {
	if err := o.allowed(path); err != nil {
		return err
	}
	if err := writeWhole(path, data); err != nil {
		return fmt.Errorf(saidNotWritten, path, plainCause(err))
	}
	return nil
}

// allowed says in a sentence why a file may not be written, nil if it may.
func (o *output) allowed(path string) error {
	info, err := os.Stat(path)
	switch {
	case errors.Is(err, os.ErrNotExist):
		return nil
	case err != nil:
		return fmt.Errorf(saidNotWritten, path, plainCause(err))
	case !info.Mode().IsRegular():
		return fmt.Errorf(saidNoFile, path)
	}
	head, err := headOf(path)
	if err != nil {
		return fmt.Errorf(saidNotWritten, path, plainCause(err))
	}
	// Without a mark every file would contain it.
	mine := o.Mark != "" && bytes.Contains(head, []byte(o.Mark))
	switch {
	case mine || len(head) == 0:
		return nil
	// Before Force is asked: numbers that a class has lost never come back.
	case classKeyLines().Match(head):
		return fmt.Errorf(saidKeepsClass, path)
	case bytes.HasPrefix(head, []byte("SQLite format 3\x00")):
		return fmt.Errorf(saidKeepsRecord, path)
	case !o.Force:
		return fmt.Errorf(saidNotOurs, path)
	}
	return nil
}

func headOf(path string) ([]byte, error) {
	f, err := os.Open(path)
	if err != nil {
		return nil, err
	}
	defer f.Close()
	return io.ReadAll(io.LimitReader(f, headOfFile))
}

// writeWhole writes a file beside the place and then moves it there. A link leads to
// the file that is written.
func writeWhole(path string, data []byte) error {
	mode := os.FileMode(0o666)
	if real, err := filepath.EvalSymlinks(path); err == nil {
		// A rename would replace the link and leave the file behind it as it was.
		path = real
		if info, err := os.Stat(path); err == nil {
			mode = info.Mode().Perm()
		}
	}
	// In the same folder: a rename works within one file system only.
	name := filepath.Join(filepath.Dir(path), fmt.Sprintf(".standstill-%016x", rand.Uint64()))
	f, err := os.OpenFile(name, os.O_WRONLY|os.O_CREATE|os.O_EXCL, mode)
	if err != nil {
		return err
	}
	defer os.Remove(name)
	_, err = f.Write(data)
	// Synced first, or a power cut after the rename may leave an empty file under the name.
	if err = errors.Join(err, f.Sync(), f.Close()); err != nil {
		return err
	}
	return os.Rename(name, path)
}

// writeNew writes a file that must not be there yet.
func writeNew(path string, data []byte) error {
	f, err := os.OpenFile(path, os.O_WRONLY|os.O_CREATE|os.O_EXCL, 0o666)
	if err != nil {
		return err
	}
	_, err = f.Write(data)
	return errors.Join(err, f.Close())
}

// plainCause is what the system says, without the path and the call.
func plainCause(err error) string {
	var path *os.PathError
	if errors.As(err, &path) {
		return path.Err.Error()
	}
	return err.Error()
}
