package record

import (
	"context"
	"database/sql"
	"encoding/base64"
	"strconv"
	"strings"
	"unicode/utf8"
)

// A dialect turns the one text of a statement into what a store understands. The zero
// dialect is SQLite's, for a file with one book in it. In a database with many books
// every key begins with the book, and places are numbered:
//
//	{=} x = ?       x = ?      book = $1 AND x = $2
//	({,} x)         (x)        (book, x)
//	VALUES ({?} ?)  VALUES (?) VALUES ($1, $2)
type dialect struct {
	numbered bool
	book     string
}

func (d dialect) translate(statement string, args []any) (string, []any) {
	if !d.numbered {
		return plainBook.Replace(statement), args
	}
	n, named := 0, strings.ContainsRune(statement, '{')
	if named {
		// The marks in braces all mean $1, which is the book.
		n, args = 1, append([]any{d.book}, args...)
	}
	for i, a := range args {
		if text, ok := a.(string); ok {
			args[i] = encoded(text)
		}
	}
	var b strings.Builder
	for _, r := range numberedBook.Replace(statement) {
		if r != '?' {
			b.WriteRune(r)
			continue
		}
		n++
		b.WriteString("$" + strconv.Itoa(n))
	}
	return b.String(), args
}

// Both are read only.
var (
	plainBook    = strings.NewReplacer("{=} ", "", "{,} ", "", "{?} ", "")
	numberedBook = strings.NewReplacer("{=}", "book = $1 AND", "{,}", "book,", "{?}", "$1,")
)

// PostgreSQL takes neither the character zero nor bytes that are no text. What a record
// holds is kept as it came: such texts are written in base64 behind this mark.
const encodedMark = "\ue000base64:"

func encoded(text string) string {
	if utf8.ValidString(text) && !strings.ContainsRune(text, 0) && !strings.HasPrefix(text, encodedMark) {
		return text
	}
	return encodedMark + base64.StdEncoding.EncodeToString([]byte(text))
}

func decoded(text string) string {
	if code, ok := strings.CutPrefix(text, encodedMark); ok {
		if b, err := base64.StdEncoding.DecodeString(code); err == nil {
			return string(b)
		}
	}
	return text
}

// tx is an open transaction.
type tx struct {
	*sql.Tx
	dialect
	ctx context.Context
}

func (t *tx) exec(statement string, args ...any) (sql.Result, error) {
	statement, args = t.translate(statement, args)
	return t.ExecContext(t.ctx, statement, args...)
}

// row runs a statement that gives one row and scans it.
func (t *tx) row(statement string, args []any, into ...any) error {
	statement, args = t.translate(statement, args)
	return t.scanned(t.QueryRowContext(t.ctx, statement, args...).Scan, into)
}

// each calls do for every row.
func (t *tx) each(statement string, args []any, do func(scan) error) error {
	statement, args = t.translate(statement, args)
	rows, err := t.QueryContext(t.ctx, statement, args...)
	if err != nil {
		return err
	}
	return t.readAll(rows, do)
}

func (d dialect) readAll(rows *sql.Rows, do func(scan) error) error {
	defer rows.Close()
	read := func(into ...any) error { return scanned(d.scanned(rows.Scan, into)) }
	for rows.Next() {
		if err := do(read); err != nil {
			return err
		}
	}
	return rows.Err()
}

// scanned reads a row and decodes its texts.
func (d dialect) scanned(scan func(...any) error, into []any) error {
	if err := scan(into...); err != nil || !d.numbered {
		return err
	}
	for _, v := range into {
		if text, ok := v.(*string); ok {
			*text = decoded(*text)
		}
	}
	return nil
}

// execute runs a statement whose result says nothing.
func execute(t *tx, statement string, args ...any) error {
	_, err := t.exec(statement, args...)
	return err
}
