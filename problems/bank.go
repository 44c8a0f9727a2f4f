package problems

import (
	"bytes"
	"cmp"
	"embed"
	"fmt"
	"os"
	"path"
	"path/filepath"
	"runtime"
	"slices"
	"strings"
	"sync"

	"go.yaml.in/yaml/v4"
	"golang.org/x/sync/errgroup"
)

//go:embed bank/*.yaml
var embedded embed.FS

// Bank is a set of problems, each with an id of its own. It is never changed once
// made, and may be used by several goroutines.
type Bank struct {
	items []*item
	byID  map[string]*item
}

// item is a problem that may not have been read yet.
type item struct {
	Heading
	load     func() (*Problem, error)
	replaces bool // another problem had this id
}

// Embedded returns the bank that is built into the program. Only the headings are
// read, the first time; a problem is read when it is asked for.
func Embedded() *Bank { return embeddedBank() }

var embeddedBank = sync.OnceValue(readEmbedded)

func readEmbedded() *Bank {
	files, _ := embedded.ReadDir("bank")
	items := make([]*item, len(files))
	for i, f := range files {
		data, _ := embedded.ReadFile(path.Join("bank", f.Name()))
		// Read when it is first asked for: a list needs only the headings, and most commands one problem.
		items[i] = &item{Heading: headingOf(f.Name(), data), load: sync.OnceValues(func() (*Problem, error) {
			p, found := readTested(f.Name(), data)
			return p, found.Err()
		})}
	}
	return newBank(items)
}

// headingOf reads no more than the heading, which by habit stands above the text.
// A file that has none goes by its name, and says what is wrong when it is asked
// for.
func headingOf(name string, data []byte) Heading {
	var h Heading
	// The text and what follows are nearly all of the file, and a list shows none of it.
	head, _, _ := bytes.Cut(data, []byte("\ntext:"))
	err := yaml.Load(head, &h)
	if h.ID == "" || h.Title == "" || h.Topic == "" || h.Level == 0 {
		err = yaml.Load(data, &h)
	}
	if err != nil || h.ID == "" {
		h.ID = strings.TrimSuffix(name, path.Ext(name))
	}
	return h
}

// OpenFolder reads every problem file (.yaml, .yml) of a folder. A file with
// something wrong is left out and named in the findings; the others stand in the
// bank, which is never nil.
func OpenFolder(dir string) (*Bank, Findings) {
	files, trouble := listFolder(dir)
	if trouble != nil {
		return newBank(nil), trouble
	}
	problems := make([]*Problem, len(files))
	found := make([]Findings, len(files))
	var readers errgroup.Group
	readers.SetLimit(runtime.GOMAXPROCS(0))
	// In parallel, because reading a file also solves it and tries its draws. Each reader
	// has a place of its own in the results, which therefore stay in the order of the files.
	for i, file := range files {
		readers.Go(func() error {
			problems[i], found[i] = ReadFile(file)
			return nil
		})
	}
	_ = readers.Wait() // no reader returns an error
	return gather(problems, slices.Concat(found...))
}

// BankOf makes a bank of problems that were read; of two with one id the first
// stands.
func BankOf(list ...*Problem) *Bank {
	bank, _ := gather(list, nil)
	return bank
}

// gather makes a bank of the problems that could be read (nil for the others). Of
// two with one id the first stands.
func gather(problems []*Problem, found Findings) (*Bank, Findings) {
	var items []*item
	first := map[string]string{}
	for _, p := range problems {
		if p == nil {
			continue
		}
		// The files come by name, so it is always the same one that stays.
		if file, twice := first[p.ID]; twice {
			found = append(found, p.sameID(file))
			continue
		}
		first[p.ID] = p.File
		items = append(items, &item{Heading: p.Heading, load: func() (*Problem, error) { return p, nil }})
	}
	found.sort()
	return newBank(items), found
}

// sameID is the finding for the second file with an id.
func (p *Problem) sameID(first string) Finding {
	f := Finding{File: p.File, Line: 1, Column: 1, What: fmt.Sprintf("the id %s is also in %s", p.ID, filepath.Base(first)), Expected: "a different id for each problem in a folder"}
	for i, line := range strings.Split(string(normalNewlines(p.Raw)), "\n") {
		if strings.HasPrefix(line, "id:") {
			f.Line, f.Column, f.source = i+1, strings.Index(line, p.ID)+1, line
			break
		}
	}
	return f
}

// listFolder returns the problem files of a folder, by name.
func listFolder(dir string) ([]string, Findings) {
	entries, err := os.ReadDir(dir)
	if err != nil {
		cause := strings.Replace(plainCause(err), "file", "folder", 1)
		return nil, Findings{{File: dir, What: cause, Expected: "a folder of problem files that can be read"}}
	}
	var files []string
	for _, e := range entries {
		suffix := strings.ToLower(filepath.Ext(e.Name()))
		// Hidden files are copies that editors and synchronised folders leave behind.
		if e.IsDir() || strings.HasPrefix(e.Name(), ".") || suffix != ".yaml" && suffix != ".yml" {
			continue
		}
		files = append(files, filepath.Join(dir, e.Name()))
	}
	if files == nil {
		return nil, Findings{{File: dir, What: "there are no problem files in the folder", Expected: "files that end in .yaml"}}
	}
	return files, nil
}

func newBank(items []*item) *Bank {
	b := &Bank{items: items, byID: make(map[string]*item, len(items))}
	for _, i := range items {
		b.byID[i.ID] = i
	}
	slices.SortFunc(b.items, func(x, y *item) int {
		return cmp.Or(cmp.Compare(topicRank(x.Topic), topicRank(y.Topic)), cmp.Compare(x.Level, y.Level), cmp.Compare(x.ID, y.ID))
	})
	return b
}

// With returns the bank together with another, whose problems stand in the place
// of those with the same id.
func (b *Bank) With(other *Bank) *Bank {
	var items []*item
	for _, i := range other.items {
		// The other bank must not be changed.
		own := *i
		own.replaces = own.replaces || b.byID[i.ID] != nil
		items = append(items, &own)
	}
	for _, i := range b.items {
		if other.byID[i.ID] == nil {
			items = append(items, i)
		}
	}
	return newBank(items)
}

// Replaces reports whether a problem replaces another with the same id.
func (b *Bank) Replaces(id string) bool { return b.byID[id] != nil && b.byID[id].replaces }

// List returns the headings by topic (in the order of Topics), level and id.
func (b *Bank) List() []Heading {
	list := make([]Heading, len(b.items))
	for i, item := range b.items {
		list[i] = item.Heading
	}
	return list
}

// Get returns a problem with the numbers of its file. The error names the nearest
// id where there is none of that name.
func (b *Bank) Get(id string) (*Problem, error) {
	if i := b.byID[id]; i != nil {
		return i.load()
	}
	ids := make([]string, len(b.items))
	for i, item := range b.items {
		ids[i] = item.ID
	}
	if near := nearest(id, ids); near != "" {
		return nil, fmt.Errorf("there is no problem %q; did you mean %q?", shorten(id), near)
	}
	return nil, fmt.Errorf("there is no problem %q", shorten(id))
}
