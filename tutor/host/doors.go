package host

import (
	"context"
	"errors"
	"io"
	"slices"
	"strings"
	"sync"
	"time"

	"golang.org/x/crypto/ssh"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// doors know who may come in, and how that is proved.
type doors struct {
	record  *record.Record
	class   *tutor.Class
	teacher string
	now     func() time.Time
	checks  turnstile

	mu      sync.Mutex
	tries   map[string][]time.Time // by address and name: the last second's
	welcome map[string]time.Time   // by address and student: when they last came in
}

func newDoors(o *Options) *doors {
	return &doors{record: o.Tutor.Record, class: &o.Tutor.Class, teacher: o.Teacher, now: o.Now,
		tries: map[string][]time.Time{}, welcome: map[string]time.Time{}}
}

// owner finds whose door a name is: a student by the exact id, or the teacher. Neither
// names nor beginnings nor places on the list count.
func (d *doors) owner(name string) (id string, ok bool) {
	if d.teacher != "" && problems.Fold(name) == problems.Fold(d.teacher) {
		return d.teacher, true
	}
	if s, ok := d.student(name); ok {
		return s.ID, true
	}
	return "", false
}

func (d *doors) student(id string) (record.Student, bool) {
	for _, s := range d.class.Students {
		if problems.Fold(s.ID) == problems.Fold(id) {
			return s, true
		}
	}
	return record.Student{}, false
}

func (d *doors) isTeacher(id string) bool { return d.teacher != "" && id == d.teacher }

// Limits of trying.
const (
	triesASecond  = 5
	mostRemember  = 10_000
	longestPhrase = 200
)

// byPhrase checks a pass phrase and gives whose it is. What it takes does not depend on
// the name. The teacher has none.
func (d *doors) byPhrase(ctx context.Context, address, name, phrase string) (id string, ok bool) {
	id, known := d.owner(name)
	if d.tooMany(address+"\x00"+name) || len(phrase) > longestPhrase || len(name) > longestName {
		return "", false
	}
	if !d.checks.enter(ctx, known && d.cameToday(address, id)) {
		return "", false
	}
	defer d.checks.leave()
	// Looked up for a name that is nobody's as well, so that the answer takes as long.
	door, err := d.record.Door(id)
	if err != nil || !opens(door.Hash, phrase) || !known || d.isTeacher(id) {
		return "", false
	}
	d.cameIn(address, id)
	return id, true
}

// byKey looks whether a public key belongs to whoever has the name.
func (d *doors) byKey(name string, key ssh.PublicKey) (id string, ok bool) {
	id, known := d.owner(name)
	door, err := d.record.Door(id)
	if err != nil || !known {
		return "", false
	}
	return id, slices.ContainsFunc(door.Keys, func(line string) bool {
		own, _, _, _, err := ssh.ParseAuthorizedKey([]byte(line))
		return err == nil && string(own.Marshal()) == string(key.Marshal())
	})
}

const longestName = 256

// tooMany counts a try, and reports whether there were too many in the last second.
func (d *doors) tooMany(who string) bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	now := d.now()
	// Rather forgetting than growing: whoever makes up names fills the map.
	if len(d.tries) > mostRemember {
		clear(d.tries)
	}
	recent := slices.DeleteFunc(d.tries[who], func(t time.Time) bool { return now.Sub(t) >= time.Second })
	if len(recent) >= triesASecond {
		d.tries[who] = recent
		return true
	}
	d.tries[who] = append(recent, now)
	return false
}

func (d *doors) cameToday(address, id string) bool {
	d.mu.Lock()
	defer d.mu.Unlock()
	at, ok := d.welcome[address+"\x00"+id]
	return ok && d.now().Sub(at) < 24*time.Hour
}

func (d *doors) cameIn(address, id string) {
	d.mu.Lock()
	defer d.mu.Unlock()
	if len(d.welcome) > mostRemember {
		clear(d.welcome)
	}
	d.welcome[address+"\x00"+id] = d.now()
}

// A Slip is what a student is given: who it is for, and the pass phrase, which is kept
// nowhere else.
type Slip struct {
	ID     string `json:"id"`
	Name   string `json:"name"`
	Phrase string `json:"phrase"`
}

// Slips makes new pass phrases for students. Their old ones and their keys open nothing
// any more, and their visits end. random is crypto/rand's if nil.
func Slips(r *record.Record, students []record.Student, random io.Reader) ([]Slip, error) {
	var slips []Slip
	doors := map[string]record.Door{}
	for _, s := range students {
		phrase, err := newPhrase(random)
		if err != nil {
			return nil, err
		}
		hash, err := hashOf(phrase, random)
		if err != nil {
			return nil, err
		}
		doors[s.ID] = record.Door{Hash: hash}
		slips = append(slips, Slip{s.ID, s.Name, phrase})
	}
	// The doors first, so that nobody whose visit ends comes back with the old phrase.
	if err := r.SetDoors(doors); err != nil {
		return nil, err
	}
	return slips, endVisits(r, students)
}

// endVisits takes the places away from students, and writes down that their slips were
// renewed.
func endVisits(r *record.Record, students []record.Student) error {
	held, err1 := r.Leases()
	operator, err2 := r.Operator()
	if err := errors.Join(err1, err2); err != nil {
		return err
	}
	for _, s := range students {
		if _, ok := held[s.ID]; ok {
			// A lease that no visit has: the host sees that the student's was taken over, and ends the visit.
			if _, err := r.TakeLease(s.ID, ""); err != nil {
				return err
			}
		}
		if _, err := r.Append(record.Entry{Student: s.ID, Kind: record.Renewed, Detail: operator}); err != nil {
			return err
		}
	}
	return nil
}

// ErrKey says that a text is no public key.
var ErrKey = errors.New("not a public key")

// AddKey lets a public key, in the form of OpenSSH's .pub files, open the door of a
// student or the teacher. It gives the key's fingerprint; [ErrKey] for a text that is none.
func AddKey(r *record.Record, id, line string) (fingerprint string, err error) {
	key, _, options, _, err := ssh.ParseAuthorizedKey([]byte(line))
	// An option such as command="…" would promise a limit that the host does not keep.
	if err != nil || len(options) > 0 {
		return "", ErrKey
	}
	door, err := r.Door(id)
	if err != nil {
		return "", err
	}
	own := strings.TrimSpace(string(ssh.MarshalAuthorizedKey(key)))
	if !slices.Contains(door.Keys, own) {
		door.Keys = append(slices.Clone(door.Keys), own)
	}
	return ssh.FingerprintSHA256(key), r.SetDoors(map[string]record.Door{id: door})
}
