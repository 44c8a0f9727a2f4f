//go:build unix

// Inside the package: it uses the records of record_test.go.

package record

import (
	"bytes"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"syscall"
	"testing"
)

const ordinary = 65534

// Rights mean nothing to the administrator. Where the tests run as one, this
// test runs itself again as an ordinary user, on a copy of the test binary
// that such a user may read.
func TestRights(t *testing.T) {
	if os.Getuid() != 0 {
		testRights(t)
		return
	}
	folder, err := os.MkdirTemp("", "rights")
	if err != nil {
		t.Fatal(err)
	}
	defer os.RemoveAll(folder)
	self := filepath.Join(folder, "record.test")
	if err := copyProgram(self); err != nil {
		t.Fatal(err)
	}
	if err := os.Chown(folder, ordinary, ordinary); err != nil {
		t.Fatal(err)
	}
	c := exec.Command(self, "-test.run=^TestRights$", "-test.v", "-test.paniconexit0")
	c.Dir, c.Env = folder, append(os.Environ(), "TMPDIR="+folder, "HOME="+folder)
	c.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: ordinary, Gid: ordinary}}
	out, err := c.CombinedOutput()
	if err != nil || !bytes.Contains(out, []byte("--- PASS: TestRights")) {
		t.Fatalf("as an ordinary user: %v\n%s", err, out)
	}
}

func copyProgram(to string) error {
	from, err := os.Executable()
	if err != nil {
		return err
	}
	in, err := os.Open(from)
	if err != nil {
		return err
	}
	defer in.Close()
	out, err := os.OpenFile(to, os.O_CREATE|os.O_WRONLY, 0o755)
	if err != nil {
		return err
	}
	defer out.Close()
	_, err = io.Copy(out, in)
	return err
}

func testRights(t *testing.T) {
	t.Run("made for the owner alone", testMadeForOwner)
	t.Run("folder without writing", testFolderWithoutWriting)
	t.Run("file without rights", testFileWithoutRights)
	t.Run("taken away meanwhile", testRightsTakenAway)
	t.Run("foreign on a disk that cannot be written", testForeignReadOnly)
	t.Run("read only is told and can be read", testReadOnlyIsTold)
}

func chmod(t *testing.T, path string, mode os.FileMode) {
	t.Helper()
	if err := os.Chmod(path, mode); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.Chmod(path, 0o700) })
}

func mustHaveMode(t *testing.T, path string, want os.FileMode) {
	t.Helper()
	info, err := os.Stat(path)
	if err != nil {
		t.Fatal(err)
	}
	if info.Mode().Perm() != want {
		t.Errorf("%s has mode %v, want %v", filepath.Base(path), info.Mode().Perm(), want)
	}
}

func testMadeForOwner(t *testing.T) {
	defer syscall.Umask(syscall.Umask(0))
	top := filepath.Join(t.TempDir(), "share")
	path := filepath.Join(top, "standstill", "record.db")
	mustAppend(t, mustOpen(t, path), Entry{})
	mustHaveMode(t, top, 0o700)
	mustHaveMode(t, filepath.Dir(path), 0o700)
	mustHaveMode(t, path, 0o600)
	mustHaveMode(t, path+"-journal", 0o600)
}

func testFolderWithoutWriting(t *testing.T) {
	const noRight = "cannot be opened, because this account is not allowed to write to the record's folder. The record was not changed."
	const readOnly = "can be read but not changed, so nothing new can be saved."
	path := putFile(t, smallRecord(t, 3))
	folder := filepath.Dir(path)
	before := contents(t, folder)
	missing := filepath.Join(folder, "other.db")
	deeper := filepath.Join(folder, "more", "record.db")
	chmod(t, folder, 0o500)
	for _, c := range []struct{ path, says string }{{path, readOnly}, {missing, noRight}, {deeper, noRight}} {
		_, err := Open(c.path, Options{})
		mustBe(t, err, ErrUnopenable)
		if want := "The record " + c.path + " " + c.says; Sentence(err) != want {
			t.Errorf("got  %s\nwant %s (%v)", Sentence(err), want, err)
		}
	}
	mustBeUntouched(t, folder, before)
}

func testFileWithoutRights(t *testing.T) {
	for _, mode := range []os.FileMode{0o400, 0} {
		path := putFile(t, smallRecord(t, 3))
		before := mustRead(t, path)
		chmod(t, path, mode)
		_, err := Open(path, Options{})
		mustBe(t, err, ErrUnopenable)
		os.Chmod(path, 0o600)
		if !bytes.Equal(before, mustRead(t, path)) {
			t.Errorf("mode %v: the file was changed", mode)
		}
	}
}

func testRightsTakenAway(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record.db")
	r := mustOpen(t, path)
	kept := mustAppend(t, r, Entry{Text: "before"})
	if err := os.Remove(path + "-journal"); err != nil {
		t.Fatal(err)
	}
	chmod(t, filepath.Dir(path), 0o500)
	_, err := r.Append(Entry{Text: "meanwhile"})
	mustBe(t, err, ErrReadOnly)
	if got := collect(t, r.Entries(Filter{})); len(got) != 1 || got[0] != kept {
		t.Errorf("kept: %v", got)
	}
}

func testForeignReadOnly(t *testing.T) {
	path := putFile(t, smallRecord(t, 3))
	before := contents(t, filepath.Dir(path))
	chmod(t, path, 0o400)
	chmod(t, filepath.Dir(path), 0o500)
	f, err := OpenForeign(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if got := collect(t, f.Entries(Filter{})); len(got) != 3 {
		t.Errorf("%d entries, want 3", len(got))
	}
	mustBeUntouched(t, filepath.Dir(path), before)
}

// The journal cannot be read any more, as if a stick was pulled out while the
// program runs.
func TestDiskIsTakenAway(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record.db")
	r := mustOpen(t, path)
	kept := mustAppend(t, r, Entry{Text: "before"})
	if err := os.Remove(path + "-journal"); err != nil {
		t.Fatal(err)
	}
	if err := os.Mkdir(path+"-journal", 0o700); err != nil {
		t.Fatal(err)
	}
	_, err := r.Append(Entry{Text: "meanwhile"})
	mustBe(t, err, ErrDisk)
	if err := os.Remove(path + "-journal"); err != nil {
		t.Fatal(err)
	}
	after := mustAppend(t, r, Entry{Text: "after"})
	if got := collect(t, r.Entries(Filter{})); len(got) != 2 || got[0] != kept || got[1] != after {
		t.Errorf("kept: %v", got)
	}
}

func TestFileIsMovedAway(t *testing.T) {
	path := filepath.Join(t.TempDir(), "record.db")
	r := mustOpen(t, path)
	mustAppend(t, r, Entry{})
	if err := os.Rename(path, path+".moved"); err != nil {
		t.Fatal(err)
	}
	_, err := r.Append(Entry{})
	mustBe(t, err, ErrMoved)
	if got := collect(t, mustOpen(t, path+".moved").Entries(Filter{})); len(got) != 1 {
		t.Errorf("%d entries in the moved record, want 1", len(got))
	}
}

func testReadOnlyIsTold(t *testing.T) {
	path := putFile(t, smallRecord(t, 3))
	chmod(t, path, 0o400)
	_, err := Open(path, Options{})
	if !IsReadOnly(err) {
		t.Fatalf("a record without the right to write: %v", err)
	}
	f, err := OpenForeign(path)
	if err != nil {
		t.Fatal(err)
	}
	defer f.Close()
	if got := collect(t, f.Entries(Filter{})); len(got) != 3 {
		t.Errorf("%d entries, want 3", len(got))
	}
}
