// Command pack makes the archives that are given away: for each target one file with the
// program and what goes with it. The same sources give the same bytes, whoever packs them,
// where and when: files are in order, belong to nobody, and have the time of the last commit.
//
//	go run ./.ci/pack -version 0.9.0 -time 1790000000 -programs DIR -papers DIR -notices DIR -out DIR OS/PROCESSOR…
//
// It also writes the checksums of all that is in the folder to OUT/checksums.txt.
package main

import (
	"archive/tar"
	"archive/zip"
	"bytes"
	"compress/gzip"
	"crypto/sha256"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"slices"
	"strings"
	"time"
)

// from says where the parts of an archive are.
type from struct {
	version, programs, papers, notices, out string
	seconds                                 int64
}

func main() {
	var f from
	flag.StringVar(&f.version, "version", "", "the `version` in the names")
	flag.Int64Var(&f.seconds, "time", 0, "the time of every file, in `seconds` since 1970")
	flag.StringVar(&f.programs, "programs", "", "the `folder` of the programs, OS_PROCESSOR")
	flag.StringVar(&f.papers, "papers", "", "the `folder` that standstill papers wrote")
	flag.StringVar(&f.notices, "notices", "", "the `folder` of the notices, OS_PROCESSOR.txt")
	flag.StringVar(&f.out, "out", "", "the `folder` of the archives")
	flag.Parse()
	if flag.NArg() == 0 || f.version == "" || f.seconds == 0 || f.out == "" {
		flag.Usage()
		os.Exit(2)
	}
	if err := f.packAll(flag.Args()); err != nil {
		fmt.Fprintln(os.Stderr, err)
		os.Exit(1)
	}
}

func (f *from) packAll(targets []string) error {
	for _, target := range targets {
		if err := f.pack(target); err != nil {
			return fmt.Errorf("%s: %w", target, err)
		}
	}
	return f.checksums()
}

// file is one in an archive.
type file struct {
	name    string
	content []byte
	mode    fs.FileMode
}

// inWindows says for which system a zip file is made: there it opens by a click.
func inWindows(target string) bool { return strings.HasPrefix(target, "windows/") }

func (f *from) pack(target string) error {
	folder := "standstill-" + f.version + "-" + strings.ReplaceAll(target, "/", "-")
	files, err := f.gather(target)
	if err != nil {
		return err
	}
	for i := range files {
		files[i].name = path.Join(folder, files[i].name)
	}
	slices.SortFunc(files, func(a, b file) int { return strings.Compare(a.name, b.name) })
	write, ending := f.tar, ".tar.gz"
	if inWindows(target) {
		write, ending = f.zip, ".zip"
	}
	data, err := write(files)
	if err != nil {
		return err
	}
	return os.WriteFile(filepath.Join(f.out, folder+ending), data, 0o666)
}

// gather reads all that goes into the archive of a target.
func (f *from) gather(target string) ([]file, error) {
	name := strings.ReplaceAll(target, "/", "_")
	program := "standstill"
	if inWindows(target) {
		program += ".exe"
	}
	where := map[string]string{
		program: filepath.Join(f.programs, name), "NOTICES.txt": filepath.Join(f.notices, name+".txt"),
		"README.md": "README.md", "LICENSE": "LICENSE",
	}
	err := filepath.WalkDir(f.papers, func(p string, e fs.DirEntry, err error) error {
		if err == nil && !e.IsDir() {
			inside, _ := filepath.Rel(f.papers, p) // p is below
			where[filepath.ToSlash(inside)] = p
		}
		return err
	})
	var files []file
	for inside, p := range where {
		content, readErr := os.ReadFile(p)
		if readErr == nil && len(content) == 0 {
			readErr = fmt.Errorf("%s is empty", p)
		}
		err = errors.Join(err, readErr)
		mode := fs.FileMode(0o644)
		if inside == program {
			mode = 0o755
		}
		files = append(files, file{inside, content, mode})
	}
	return files, err
}

func (f *from) tar(files []file) ([]byte, error) {
	var b bytes.Buffer
	z := gzip.NewWriter(&b)
	w := tar.NewWriter(z)
	for _, one := range files {
		h := &tar.Header{Typeflag: tar.TypeReg, Name: one.name, Mode: int64(one.mode), Size: int64(len(one.content)), ModTime: time.Unix(f.seconds, 0), Format: tar.FormatUSTAR}
		if err := w.WriteHeader(h); err != nil {
			return nil, err
		}
		if _, err := w.Write(one.content); err != nil {
			return nil, err
		}
	}
	if err := errors.Join(w.Close(), z.Close()); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

func (f *from) zip(files []file) ([]byte, error) {
	var b bytes.Buffer
	w := zip.NewWriter(&b)
	for _, one := range files {
		h := &zip.FileHeader{Name: one.name, Method: zip.Deflate, Modified: time.Unix(f.seconds, 0).UTC()}
		h.SetMode(one.mode)
		entry, err := w.CreateHeader(h)
		if err != nil {
			return nil, err
		}
		if _, err := entry.Write(one.content); err != nil {
			return nil, err
		}
	}
	if err := w.Close(); err != nil {
		return nil, err
	}
	return b.Bytes(), nil
}

// checksums writes what sha256sum -c reads.
func (f *from) checksums() error {
	const name = "checksums.txt"
	entries, err := os.ReadDir(f.out)
	if err != nil {
		return err
	}
	var sums strings.Builder
	for _, e := range entries {
		if e.Name() == name {
			continue
		}
		content, err := os.ReadFile(filepath.Join(f.out, e.Name()))
		if err != nil {
			return err
		}
		fmt.Fprintf(&sums, "%x  %s\n", sha256.Sum256(content), e.Name())
	}
	return os.WriteFile(filepath.Join(f.out, name), []byte(sums.String()), 0o666)
}
