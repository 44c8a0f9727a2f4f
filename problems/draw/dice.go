package draw

import (
	"crypto/sha256"
	"encoding/binary"
)

// Dice is the generator, fixed for good. Its k-th block of four 64-bit numbers is
// the SHA-256 of the key and k; numbers are big-endian. The key is the SHA-256 of
// the seed's parts, each with its length in 8 bytes before it.
type Dice struct {
	key   [sha256.Size]byte
	block [sha256.Size]byte
	taken uint64
}

// NewDice returns the generator whose seed has these parts.
func NewDice(parts ...string) *Dice {
	h := sha256.New()
	for _, part := range parts {
		var length [8]byte
		binary.BigEndian.PutUint64(length[:], uint64(len(part)))
		h.Write(length[:])
		h.Write([]byte(part))
	}
	d := &Dice{}
	h.Sum(d.key[:0])
	return d
}

func (d *Dice) next() uint64 {
	// A block of 32 bytes gives four numbers of 64 bits.
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

// Pick returns a number from 0 to n−1, each as likely as the others: what is left
// over above the largest multiple of n is drawn again.
func (d *Dice) Pick(n int) int {
	m := uint64(n)
	over := -m % m // 2^64 mod n
	for {
		if x := d.next(); x >= over {
			return int(x % m)
		}
	}
}
