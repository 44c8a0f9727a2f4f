package expr

import (
	"math/bits"
	"slices"

	"example.org/standstill/checker/memory"
)

// Read reads one line: an expression, an equation or a chain of equations. The
// error is a *ReadError. Unknown letters are no error here; their nodes say so. What is
// returned is not to be changed: it may be remembered.
func (l *Letters) Read(text string) (Reading, error) {
	if l.memory == nil || len(text) > memory.LongestText {
		return l.read(text)
	}
	q := question{text, l.mass}
	if known, ok := l.memory.Recall(q); ok {
		return known.reading, known.err
	}
	reading, err := l.read(text)
	l.memory.Keep(q, outcome{reading, err})
	return reading, err
}

func (l *Letters) read(text string) (Reading, error) {
	clean := Clean(text)
	reading := Reading{Text: clean}
	if n := runesIn(clean); n > maxLength {
		return reading, &ReadError{Text: string([]rune(clean)[:maxLength]), Pos: maxLength, End: maxLength, Message: saidLong}
	}
	p := pageOf(clean)
	if p.isBlank() {
		return reading, &ReadError{Text: clean, Message: saidEmpty}
	}
	if len(p.runes) > 2*maxLength {
		return reading, &ReadError{Text: clean, Pos: 0, End: 0, Message: saidLong}
	}
	// On the page and not in the text: what is blanked keeps its place, so positions still point
	// into what was typed.
	p.withoutInnerNames(l)
	r := &rereading{letters: l, page: p, scanned: map[choice]scanning{}}
	first := r.readAs(way{})
	if first.err == nil {
		reading.Lines = append(reading.Lines, first.line)
	}
	ranks := []int{l.rank(first)}
	// The first attempt says which choices there are; a choice that only shows in a later one is
	// not tried, so that the ways stay few.
	for _, w := range first.ways(len(p.runes)) {
		if again := r.readAs(w); again.err == nil && reading.isNew(again.line) {
			reading.Lines = append(reading.Lines, again.line)
			ranks = append(ranks, l.rank(again))
		}
	}
	if len(reading.Lines) == 0 {
		first.err.Text = clean
		return reading, first.err
	}
	// The ranks begin with the first attempt, which is no reading where it failed.
	if first.err == nil {
		reading.order(ranks)
	}
	return reading, nil
}

func (r *Reading) isNew(line Line) bool {
	for _, have := range r.Lines {
		if EqualLines(have, line) {
			return false
		}
	}
	return true
}

// way is one way of reading a text that can be read in several.
type way struct {
	take  choice
	flips uint8
}

func (w way) changes() int { return bits.OnesCount8(uint8(w.take)) + bits.OnesCount8(w.flips) }

// attempt is what came of reading a text in one way.
type attempt struct {
	way
	line     Line
	err      *ReadError
	met      choice // the choices that there were
	free     int    // the units that could be letters
	letterly int    // those that are letters
	past     bool   // a function acts on more than the brackets behind it
}

// A text of ordinary length is read in so many ways at most, a long one in few.
const (
	mostWays = 16
	longWays = 3
	longText = 150
)

// ways lists the other ways that a first attempt has met, those first that differ from it
// in one place.
func (a attempt) ways(length int) []way {
	most := mostWays
	if length > longText {
		most = longWays
	}
	var all []way
	for flips := range 1 << a.free {
		for take := choice(0); take <= allChoices; take++ {
			if take&^a.met == 0 && (flips > 0 || take > 0) {
				all = append(all, way{take, uint8(flips)})
			}
		}
	}
	slices.SortStableFunc(all, func(v, w way) int { return v.changes() - w.changes() })
	return all[:min(len(all), most-1)]
}

// rank says how likely a reading is, the least first: one that adds and compares like with
// like, then one that speaks of some letter, then one with few units taken as letters. On paper a slash
// between letters has all that touches it below the line.
func (l *Letters) rank(a attempt) int {
	rank := 4 * bits.OnesCount8(a.flips)
	if a.line.Paper != a.line.Slash && a.met&choosePaper != 0 {
		rank++
	}
	if a.free > 0 && len(a.line.Sides) > 1 && !hasNames(a.line) {
		// A line of two sides without a letter says nothing; likelier a unit in it is one.
		rank += 50
	}
	if a.past {
		// Brackets end what a function acts on; that they do not is the last thing to believe.
		rank += 200
	}
	if a.free+int(a.met&^choosePaper) > 0 && !l.agrees(a.line) {
		rank += 100
	}
	return rank
}

func hasNames(line Line) bool {
	return slices.ContainsFunc(line.Sides, func(n *Node) bool { return len(n.Names()) > 0 })
}

// order sorts the readings by their ranks.
func (r *Reading) order(ranks []int) {
	places := make([]int, len(ranks))
	for i := range places {
		places[i] = i
	}
	slices.SortStableFunc(places, func(a, b int) int { return ranks[a] - ranks[b] })
	lines := make([]Line, len(places))
	for i, at := range places {
		lines[i] = r.Lines[at]
	}
	r.Lines = lines
}

// rereading reads one page in several ways. Units and letters are told apart behind the
// scanner, so that ways that differ in nothing else share what it found.
type rereading struct {
	letters *Letters
	page    *page
	scanned map[choice]scanning
}

// scanning is what came of scanning a page: its tokens, the label in front, and the error, if
// there was one.
type scanning struct {
	stream
	label opening
	named bool   // "Fx =" was taken for the name of a sum
	met   choice // the choices that the text left open
	err   *ReadError
}

func (r *rereading) scan(take choice) scanning {
	if done, ok := r.scanned[take]; ok {
		return done
	}
	front := labels{letters: r.letters, take: take}
	done := scanning{label: front.opening(string(r.page.runes)), named: front.named}
	s := &scanner{letters: r.letters, runes: r.page.runes, at: done.label.length, take: take, met: front.met}
	if err := s.scan(); err != nil {
		done.err = err.(*ReadError)
		done.err.Pos, done.err.End = r.page.from(done.err.Pos), r.page.from(done.err.End)
	} else {
		done.stream = stream{letters: r.letters, tokens: s.tokens}
		done.trim(r.page.runes)
		done.gather()
	}
	done.met = s.met
	r.scanned[take] = done
	return done
}

// readAs reads in one way and says which others there were.
func (r *rereading) readAs(w way) attempt {
	found := r.scan(w.take)
	if found.err != nil {
		return attempt{way: w, err: found.err, met: found.met}
	}
	s := stream{letters: r.letters, tokens: slices.Clone(found.tokens)} // decideUnits writes into them
	free, letterly := s.decideUnits(w.flips)
	s.place(r.page)
	p := &parser{letters: r.letters, tokens: s.tokens, take: w.take, met: found.met}
	line, err := p.line()
	a := attempt{way: w, line: line, err: err, met: p.met, free: free, letterly: letterly, past: p.past}
	if err != nil {
		return a
	}
	a.line.Axis, a.line.Body = found.label.axis, found.label.body
	a.line.Paper = w.take&choosePaper != 0
	a.line.Named = found.named
	a.line.Slash = p.slash
	a.line.Lettered = w.flips != 0
	degrees(a.line.Sides, r.letters)
	return a
}
