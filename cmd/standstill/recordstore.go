package main

import (
	"encoding/json"
	"errors"
	"fmt"

	"github.com/spf13/cobra"

	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

func recordMigrateCommand(a *app) *cobra.Command {
	return &cobra.Command{
		Use:   "migrate",
		Short: "Create or update the tables of a database",
		Long: `This command creates the tables in the database that --record names, or updates
older tables. Only the owner of the database can do this; hosts never change the
tables.`,
		Example: "  standstill record migrate --record postgres://owner@db.school.example/standstill",
		Args:    exactly(0, ""),
		RunE: func(*cobra.Command, []string) error {
			if !record.IsDatabase(a.recordFile) {
				return misuse{errors.New(saidMigrateWhat)}
			}
			done, err := record.Migrate(a.recordFile, record.Options{Wait: longestOpening})
			if err != nil {
				return said(err)
			}
			_, err = fmt.Fprintf(a.Out, saidMigrated+"\n", record.Shown(a.recordFile), done)
			return err
		},
	}
}

func recordCopyCommand(a *app) *cobra.Command {
	return &cobra.Command{
		Use:   "copy FROM TO",
		Short: "Copy a record into another record",
		Long: `This command copies all entries from one record to another. A record is
either a file or the address of a database. To choose the class in a database,
end the address with ?book= and the number key of the class. The entries keep
their ids and numbers. Other programs can use both records during the copy. If
you copy again later, the command adds only the new entries.`,
		Example: "  standstill record copy record.db 'postgres://host@db.school.example/standstill?book=harbour-2'",
		Args:    exactly(2, "two records, one to copy from and one to copy to"),
		RunE: func(_ *cobra.Command, args []string) error {
			return a.copyRecord(args[0], args[1])
		},
	}
}

func (a *app) copyRecord(from, to string) error {
	if err := isThere(from); err != nil {
		return err
	}
	source, err := a.openToRead(from)
	if err != nil {
		return said(err)
	}
	defer source.Close()
	// A record read and written at once would wait for itself.
	if source.IsAt(to) {
		return misuse{errors.New(saidSameRecord)}
	}
	target, err := a.opened(to, record.Options{})
	if err != nil {
		return said(err)
	}
	defer target.Close()
	sum, err := record.Copy(source, target)
	if err != nil {
		return said(err)
	}
	fmt.Fprintf(a.Out, saidCopied+"\n", record.Shown(from), record.Shown(to), sum.Added, sum.Known)
	if sum.Forgotten > 0 {
		fmt.Fprintf(a.Out, saidCopyForgotten+"\n", sum.Forgotten)
	}
	// What could be copied is; the exit code tells a script that something is left.
	if n := len(sum.Conflicts) + len(sum.Refused); n > 0 {
		fmt.Fprintf(a.Err, saidNotCopied+"\n", n)
		return errFound
	}
	return nil
}

func recordExportCommand(a *app) *cobra.Command {
	var classFile string
	c := &cobra.Command{
		Use:     "export STUDENT",
		Short:   "Print all entries of a student, one JSON object per line",
		Example: "  standstill record export Nele > nele.jsonl",
		Args:    exactly(1, "the name or the id of a student"),
		RunE: func(_ *cobra.Command, args []string) error {
			desk, done, err := a.seat(classFile, args)
			if err != nil {
				return err
			}
			defer done()
			return said(a.exportStudent(desk))
		},
	}
	c.Flags().StringVar(&classFile, "class", "", "the class `file` that lists the student; the default is class.yaml in the program's folder or in the data folder")
	return c
}

// exported is one entry, with the names of its fields as the record has them.
type exported struct {
	Record  string `json:"record"`
	Number  int64  `json:"number"`
	ID      string `json:"id"`
	Time    string `json:"time"`
	Student string `json:"student"`
	Kind    string `json:"kind"`
	Problem string `json:"problem,omitempty"`
	Hash    string `json:"hash,omitempty"`
	Copy    int    `json:"copy,omitempty"`
	Givens  string `json:"givens,omitempty"`
	Stage   string `json:"stage,omitempty"`
	Item    string `json:"item,omitempty"`
	Text    string `json:"text,omitempty"`
	Ref     string `json:"ref,omitempty"`
	Detail  string `json:"detail,omitempty"`
}

// milliseconds is how times are written: in UTC, as exactly as they are kept.
const milliseconds = "2006-01-02T15:04:05.000Z07:00"

func exportedEntry(e record.Entry) exported {
	return exported{e.Record, e.Number, e.ID, e.Time.UTC().Format(milliseconds), e.Student, e.Kind,
		e.Problem, e.Hash, e.Copy, e.Givens, e.Stage, e.Item, e.Text, e.Ref, e.Detail}
}

func (a *app) exportStudent(desk *tutor.Desk) error {
	out := json.NewEncoder(a.Out)
	out.SetEscapeHTML(false)
	for e, err := range desk.Record().Entries(record.Filter{Student: desk.Student.ID}) {
		if err != nil {
			return err
		}
		if err := out.Encode(exportedEntry(e)); err != nil {
			return err
		}
	}
	// A student may ask for everything that is stored about them, typed and not checked too.
	drafts, err := desk.Record().Drafts(desk.Student.ID)
	for _, d := range drafts {
		if err := out.Encode(exported{Time: d.Time.UTC().Format(milliseconds), Student: d.Student, Kind: record.Unsent,
			Problem: d.Problem, Hash: d.Hash, Copy: d.Copy, Givens: d.Givens, Stage: d.Stage, Item: d.Item, Text: d.Text}); err != nil {
			return err
		}
	}
	return err
}
