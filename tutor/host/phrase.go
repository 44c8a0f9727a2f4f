package host

import (
	"crypto/rand"
	"crypto/subtle"
	_ "embed"
	"encoding/base64"
	"fmt"
	"io"
	"math/big"
	"strings"

	"golang.org/x/crypto/argon2"
)

// A pass phrase is phraseWords words of a list of 1,024: 40 bits, at 10 bits a word.
const phraseWords = 4

//go:embed words.txt
var wordList string

// newPhrase makes a pass phrase. random is crypto/rand's if nil.
func newPhrase(random io.Reader) (string, error) {
	if random == nil {
		random = rand.Reader
	}
	words := strings.Fields(wordList)
	chosen := make([]string, phraseWords)
	for i := range chosen {
		n, err := rand.Int(random, big.NewInt(int64(len(words))))
		if err != nil {
			return "", fmt.Errorf("choose a word: %w", err)
		}
		chosen[i] = words[n.Int64()]
	}
	return strings.Join(chosen, " "), nil
}

// bare is what counts of a phrase as it was typed: neither case nor blanks nor hyphens.
func bare(phrase string) string {
	return strings.Map(func(r rune) rune {
		switch r {
		// Words copied from a slip in a document bring its own blanks and hyphens along.
		case ' ', '\t', '\r', '\n', '-', '\u00a0', '\u2010', '\u2011', '\u2013':
			return -1
		}
		return r
	}, strings.ToLower(phrase))
}

// The cost of a hash: argon2id with 19 MiB and two passes, what OWASP's cheat sheet on
// password storage gives as its first choice (from memory). RFC 9106 holds the function.
const (
	hashTime   = 2
	hashMemory = 19 << 10 // KiB
	hashLanes  = 1
	hashLength = 32
	saltLength = 16
)

// hashOf makes the text that is kept of a phrase, in the usual form
// $argon2id$v=19$m=19456,t=2,p=1$salt$hash.
func hashOf(phrase string, random io.Reader) (string, error) {
	if random == nil {
		random = rand.Reader
	}
	salt := make([]byte, saltLength)
	if _, err := io.ReadFull(random, salt); err != nil {
		return "", fmt.Errorf("choose a salt: %w", err)
	}
	return hashPrefix() + base64.RawStdEncoding.EncodeToString(salt) + "$" + base64.RawStdEncoding.EncodeToString(hashed(phrase, salt)), nil
}

func hashPrefix() string {
	return fmt.Sprintf("$argon2id$v=%d$m=%d,t=%d,p=%d$", argon2.Version, hashMemory, hashTime, hashLanes)
}

func hashed(phrase string, salt []byte) []byte {
	return argon2.IDKey([]byte(bare(phrase)), salt, hashTime, hashMemory, hashLanes, hashLength)
}

// opens reports whether a phrase is the one that was hashed. It takes the same time
// whatever the hash is, one that is no hash included.
func opens(hash, phrase string) bool {
	salt, want := make([]byte, saltLength), []byte(nil)
	if rest, ok := strings.CutPrefix(hash, hashPrefix()); ok {
		first, second, _ := strings.Cut(rest, "$")
		s, err1 := base64.RawStdEncoding.DecodeString(first)
		w, err2 := base64.RawStdEncoding.DecodeString(second)
		if err1 == nil && err2 == nil && len(s) == saltLength {
			salt, want = s, w
		}
	}
	return subtle.ConstantTimeCompare(hashed(phrase, salt), want) == 1
}
