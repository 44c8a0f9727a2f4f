package problems

import (
	"crypto/sha256"
	"encoding/binary"
	"errors"
	"fmt"
	"strings"

	"golang.org/x/text/cases"
	"golang.org/x/text/unicode/norm"
)

// Seed says whose copy of a problem is drawn. Class and Student are compared after
// NFC, trimming and case folding. Repeat counts how often the student has begun
// the problem anew.
type Seed struct {
	Class, Student string
	Repeat         int
}

// mostTries is how many draws may be thrown back before a problem counts as one
// that cannot be drawn.
const mostTries = 3000

// Draw returns the student's own copy. Without a class, and at the first time, it
// is the problem with the numbers of its file, as it is for a problem that does
// not vary. The same seed gives the same numbers on every machine and in every
// version of the program. The error says that no usable numbers were found, which
// for a file that Read has passed is all but impossible.
func (p *Problem) Draw(s Seed) (*Problem, error) {
	if len(p.Vary) == 0 || Fold(s.Class) == "" && s.Repeat == 0 {
		return p, nil
	}
	return p.draw(s.dice(p.ID, p.Hash), mostTries)
}

func (p *Problem) draw(d *dice, tries int) (*Problem, error) {
	for range tries {
		own := p.roll(d)
		if own.thrownBack() == "" {
			return own, nil
		}
	}
	return nil, errors.New("no usable numbers for " + p.ID)
}

// roll draws every varied given once, in the order of the file.
func (p *Problem) roll(d *dice) *Problem {
	values := make([]int, len(p.Vary))
	for i, v := range p.Vary {
		values[i] = d.pick(v.Count())
	}
	return p.pickedOut(values)
}

func Fold(id string) string {
	return norm.NFC.String(cases.Fold().String(norm.NFC.String(strings.TrimSpace(id))))
}

// dice is the generator, fixed for good. Its k-th block of four 64-bit numbers is
// the SHA-256 of the key and k; numbers are big-endian. The key is the SHA-256 of
// the seed's parts, each with its length in 8 bytes before it.
type dice struct {
	key   [sha256.Size]byte
	block [sha256.Size]byte
	taken uint64
}

func (s Seed) dice(id, hash string) *dice {
	var repeat [8]byte
	binary.BigEndian.PutUint64(repeat[:], uint64(s.Repeat))
	return newDice("own copy", Fold(s.Class), Fold(s.Student), id, hash, string(repeat[:]))
}

func newDice(parts ...string) *dice {
	h := sha256.New()
	for _, part := range parts {
		var length [8]byte
		binary.BigEndian.PutUint64(length[:], uint64(len(part)))
		h.Write(length[:])
		h.Write([]byte(part))
	}
	d := &dice{}
	h.Sum(d.key[:0])
	return d
}

func (d *dice) next() uint64 {
	in := d.taken % 4
	if in == 0 {
		var counted [sha256.Size + 8]byte
		copy(counted[:], d.key[:])
		binary.BigEndian.PutUint64(counted[sha256.Size:], d.taken/4)
		d.block = sha256.Sum256(counted[:])
	}
	d.taken++
	return binary.BigEndian.Uint64(d.block[8*in:])
}

// pick returns a number from 0 to n−1, each as likely as the others: what is left
// over above the largest multiple of n is drawn again.
func (d *dice) pick(n int) int {
	m := uint64(n)
	over := -m % m // 2^64 mod n
	for {
		if x := d.next(); x >= over {
			return int(x % m)
		}
	}
}

// drawTries is how many draws the reader of files tries before it says that a
// problem has none.
const drawTries = 400

// drawable checks that "vary" leaves usable numbers, and says what stands in the
// way most often if it does not. It does not look into paths that are exactly right:
// they are so always, or for hardly any numbers.
func (r *reader) drawable(d *draft) {
	n := d.top.values["vary"]
	if len(d.Vary) == 0 || n == nil {
		return
	}
	dice := newDice("sample", d.Hash)
	refused := map[string]int{}
	for range drawTries {
		why, _ := d.roll(dice).nearPaths()
		if why == "" {
			return
		}
		refused[why]++
	}
	r.at(n, fmt.Sprintf("the ranges leave no usable numbers in %d draws: %s", drawTries, mostOften(refused)), "ranges in which every mistake shows in the number")
}

func mostOften(refused map[string]int) string {
	most := ""
	for why, n := range refused {
		if most == "" || n > refused[most] || n == refused[most] && why < most {
			most = why
		}
	}
	return sayThrownBack(most)
}

// sayThrownBack words a reason for which a draw is thrown back.
func sayThrownBack(why string) string {
	switch why {
	case NoSolution:
		return "the sums have no single solution"
	case Unphysical:
		return "a force or an angle comes out as it cannot be"
	case TooSpread:
		return "one force is over ten times another"
	}
	return "the mistake " + why + " gives nearly the right number"
}
