// Inside the package: it goes through the table of results of the store, so that each has its sentence.

package record

import (
	"crypto/tls"
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/jackc/pgx/v5/pgconn"
)

func TestEveryKindHasItsSentence(t *testing.T) {
	kinds := sentences()
	if len(kinds) == 0 {
		t.Fatal("no sentences")
	}
	for kind, text := range kinds {
		if kindOf(fmt.Errorf("somewhere: %w", kind)) != kind {
			t.Errorf("%v is not found again", kind)
		}
		said := Sentence(&Error{Kind: kind, Path: "a/record.db"})
		if strings.Count(text, "%s") == 1 && !strings.Contains(said, " a/record.db") {
			t.Errorf("%q does not name the file", said)
		}
		for _, said := range []string{said, Sentence(&Error{Kind: kind}), Sentence(kind)} {
			if strings.ContainsAny(said, "%!") || strings.Contains(said, "  ") || !strings.HasSuffix(said, ".") {
				t.Errorf("%q is not a sentence", said)
			}
		}
	}
	for code, kind := range resultCodes() {
		if _, ok := kinds[kind]; !ok {
			t.Errorf("result code %d has no sentence", code)
		}
	}
}

func TestSentences(t *testing.T) {
	const path = "/home/kim/record.db"
	for _, c := range []struct {
		err  error
		want string
	}{
		{&Error{Kind: ErrNewer, Path: path}, "The record /home/kim/record.db was written by a newer version of this program. The record was not changed."},
		{&Error{Kind: ErrUnopenable, Path: path, Cause: errNoFile}, "The record /home/kim/record.db cannot be opened, because it is a folder or a device, not a file."},
		{&Error{Kind: ErrUnopenable, Path: "postgres://db/x", Cause: &tls.CertificateVerificationError{Err: errors.New("unknown authority")}},
			"The certificate of the database postgres://db/x cannot be verified. Put the root certificate of the database's owner into ~/.postgresql/root.crt, or name the certificate file with sslrootcert=FILE in the address."},
		{&Error{Kind: ErrUnopenable, Path: "postgres://db/x", Cause: &pgconn.PgError{Code: "28P01"}},
			"The database postgres://db/x does not accept this user. Check the user name in the address and the password in the file that PGPASSFILE names (~/.pgpass)."},
		{&Error{Kind: ErrUnopenable, Path: "postgres://db/x", Cause: &pgconn.PgError{Code: "3D000"}}, "There is no database postgres://db/x on the server."},
		{&Error{Kind: ErrFull}, "The disk with the record is full. Earlier entries are safe, but the last entry was not saved."},
		{&Error{Path: path, Cause: errors.New("out of memory")}, "The record /home/kim/record.db cannot be used."},
		{errors.New("something else"), "The record cannot be used."},
	} {
		if got := Sentence(c.err); got != c.want {
			t.Errorf("got  %s\nwant %s", got, c.want)
		}
	}
}
