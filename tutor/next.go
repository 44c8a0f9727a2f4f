package tutor

import (
	"cmp"
	"slices"
	"time"

	"example.org/standstill/problems"
)

// Advice is a problem to take next with the reason in one sentence. Again says
// that it is a problem to be begun anew, with Desk.Again. Idea is the one that the
// problem was chosen for, "" where it was not chosen for an idea; Returns says that
// it comes back because it went wrong.
type Advice struct {
	problems.Heading
	Why     string
	Again   bool
	Idea    Idea
	Returns bool
}

// Offer is a problem that can be taken. Ideas lists what it exercises; it is asked
// only where it matters, since the problem has to be read for it.
type Offer struct {
	problems.Heading
	Ideas func() []Idea
}

const (
	hardest   = 3
	levelUp   = 2 // problems of a level, at least, before the next
	othersFor = 2 // problems of a sitting before an idea comes back
	topicRun  = 2 // problems of one topic in a row, at most, once two are begun
)

// comeBack are the days after which an idea that went wrong comes back, the longest
// first. A day has passed after three quarters of one: what was done in the
// afternoon comes back the next morning.
var comeBack = []int{7, 3, 1}

func daysBetween(a, b time.Time) int { return int((b.Sub(a) + 6*time.Hour) / (24 * time.Hour)) }

// Next says which problem comes next for a student who did what the past tells. In
// turn: what is set for the class, the nearest date first; an idea that went wrong,
// in another topic; something new, topics mixed, at the level that the student
// holds; what was left unfinished; what was done longest ago. The choice is the
// student's always. ok is false for an empty bank.
func Next(past *Past, bank []Offer, work []Set, now time.Time) (a Advice, ok bool) {
	c := &choosing{past: past, bank: bank, work: work, now: now, byIdea: past.byIdea(), states: map[Idea]IdeaState{}, last: map[string]*PastPage{}}
	for i := range past.Pages {
		if p := &past.Pages[i]; !p.Measured {
			c.last[p.Problem] = p
			c.own = append(c.own, p)
		}
	}
	for idea, chances := range c.byIdea {
		c.states[idea] = stateOf(chances)
	}
	for _, choose := range []func() (Advice, bool){c.set, c.comesBack, c.fresh, c.leftBehind, c.longestAgo} {
		if a, ok := choose(); ok {
			return a, true
		}
	}
	return Advice{}, false
}

// choosing is the choice while it is made.
type choosing struct {
	past   *Past
	bank   []Offer
	work   []Set
	now    time.Time
	own    []*PastPage // pages that are not the bench's, as they were begun
	last   map[string]*PastPage
	byIdea map[Idea][]Chance
	states map[Idea]IdeaState
}

func (c *choosing) state(i Idea) IdeaState { return cmp.Or(c.states[i], NewIdea) }

func (c *choosing) offer(id string) (Offer, bool) {
	i := slices.IndexFunc(c.bank, func(o Offer) bool { return o.ID == id })
	if i < 0 {
		return Offer{}, false
	}
	return c.bank[i], true
}

// best is the best status of a problem.
func (c *choosing) best(id string) (best Status) {
	for _, p := range c.past.Pages {
		if p.Problem == id {
			best = max(best, p.Status)
		}
	}
	return best
}

// set finds the first set problem that is not over, that with the nearest date
// first.
func (c *choosing) set() (Advice, bool) {
	var open []Set
	for _, s := range c.work {
		if _, known := c.offer(s.ID); known && c.best(s.ID) <= Begun {
			open = append(open, s)
		}
	}
	if open == nil {
		return Advice{}, false
	}
	first := slices.MinFunc(open, func(a, b Set) int { return dateRank(a.Due, b.Due) })
	o, _ := c.offer(first.ID)
	return Advice{Heading: o.Heading, Why: saidSet(first.Due)}, true
}

// dueIdea is an idea that has to come back at a time, with where it went wrong last.
type dueIdea struct {
	Idea
	slip Chance
	days int // since then, 0 within the sitting
}

// due lists the ideas that come back at a time, those that went wrong first before
// the others.
func (c *choosing) due(at time.Time) []dueIdea {
	var all []dueIdea
	for _, row := range ideas {
		chances := until(c.byIdea[row.Idea], at)
		n := len(chances)
		for n > 0 && chances[n-1].Right {
			n--
		}
		if n == 0 {
			continue
		}
		slip, after := chances[n-1], chances[n:]
		if days, is := c.isDue(slip, after, at); is {
			all = append(all, dueIdea{row.Idea, slip, days})
		}
	}
	slices.SortStableFunc(all, func(a, b dueIdea) int { return a.slip.Time.Compare(b.slip.Time) })
	return all
}

// isDue reports whether an idea comes back, some days after it went wrong or within
// the same sitting.
func (c *choosing) isDue(slip Chance, after []Chance, at time.Time) (days int, is bool) {
	passed := daysBetween(slip.Time, at)
	for _, d := range comeBack {
		if passed >= d {
			return passed, !slices.ContainsFunc(after, func(one Chance) bool { return daysBetween(slip.Time, one.Time) >= d })
		}
	}
	return 0, len(after) == 0 && c.past.sitting(slip.Time) == c.past.sitting(at) && c.othersSince(slip, at) >= othersFor
}

// othersSince counts the other problems begun after a slip and over by a time; who only
// looks at a problem and goes on has not practised it.
func (c *choosing) othersSince(slip Chance, at time.Time) int {
	others := map[string]bool{}
	for i := range c.past.Pages {
		p := &c.past.Pages[i]
		if p.Problem != slip.Problem && p.Over && p.Begun.After(slip.Time) && !p.Last.After(at) {
			others[p.Problem] = true
		}
	}
	return len(others)
}

// wasReturn reports whether the problem begun last brought an idea back. What was
// advised then is not kept; it is found out again from what had happened.
func (c *choosing) wasReturn() bool {
	was := false
	for _, p := range c.own {
		if was {
			was = false // at most every second problem
			continue
		}
		was = slices.ContainsFunc(c.due(p.Begun), func(d dueIdea) bool { return c.exercises(p.Problem, d.Idea) })
	}
	return was
}

func (c *choosing) exercises(id string, i Idea) bool {
	o, ok := c.offer(id)
	return ok && slices.Contains(o.Ideas(), i)
}

// comesBack finds a problem for the idea that has waited longest to come back.
func (c *choosing) comesBack() (Advice, bool) {
	if len(c.own) == 0 || c.wasReturn() {
		return Advice{}, false
	}
	for _, d := range c.due(c.now) {
		if o, ok := c.forReturn(d); ok {
			where, _ := c.offer(d.slip.Problem)
			p := c.last[o.ID]
			return Advice{o.Heading, saidReturn(d, where.Title), p != nil && p.Over, d.Idea, true}, true
		}
	}
	return Advice{}, false
}

// forReturn finds a problem that exercises an idea: not far from what the student knows,
// in another topic than where it went wrong if there is one, at the level held, rather one
// that is new.
func (c *choosing) forReturn(d dueIdea) (Offer, bool) {
	wrong, _ := c.offer(d.slip.Problem)
	level, far := c.levelHeld(), c.far()
	// What matters most comes first; 0 is what is wanted.
	rank := func(o Offer) []int {
		return []int{yes(o.ID == d.slip.Problem), yes(far[o.Topic] || o.Level > level+1), yes(o.Topic == wrong.Topic), yes(!c.hasBegun(o.Topic)),
			away(o.Level, c.levelIn(o.Topic, level)), yes(c.last[o.ID] != nil)}
	}
	offers := slices.DeleteFunc(slices.Clone(c.bank), func(o Offer) bool { return len(c.bank) > 1 && o.ID == c.own[len(c.own)-1].Problem })
	slices.SortStableFunc(offers, func(a, b Offer) int {
		return cmp.Or(slices.Compare(rank(a), rank(b)), c.lastTouched(a.ID).Compare(c.lastTouched(b.ID)))
	})
	i := slices.IndexFunc(offers, func(o Offer) bool { return slices.Contains(o.Ideas(), d.Idea) })
	if i < 0 {
		return Offer{}, false
	}
	return offers[i], true
}

func yes(is bool) int {
	if is {
		return 1
	}
	return 0
}

// away is how far a level is from the one wanted; levels below are nearer than those
// above.
func away(level, wanted int) int {
	if level > wanted {
		return hardest + level - wanted
	}
	return wanted - level
}

func (c *choosing) hasBegun(topic string) bool {
	return slices.ContainsFunc(c.own, func(p *PastPage) bool { return p.Topic == topic })
}

// far are the topics beyond the next one after all that were begun, in the order of the
// bank.
func (c *choosing) far() map[string]bool {
	far := map[string]bool{}
	next := ""
	// From the end of the bank back to the last topic that was begun.
	for i := len(c.bank) - 1; i >= 0 && !c.hasBegun(c.bank[i].Topic); i-- {
		next = c.bank[i].Topic
		far[next] = true
	}
	delete(far, next)
	return far
}

// levelIn is the level offered in a topic: one below the level held where the topic
// is new, because it brings an idea that is.
func (c *choosing) levelIn(topic string, held int) int {
	if c.hasBegun(topic) {
		return held
	}
	return max(held-1, 1)
}

// levelHeld is the level that the student has reached. It rises when the ideas of
// the level's problems are steady, and is one lower after a page by trying or with
// its solution shown, until the next one that is right first time.
func (c *choosing) levelHeld() int {
	over := slices.DeleteFunc(slices.Clone(c.own), func(p *PastPage) bool { return !p.Over })
	// In the order in which they were finished, because the level goes up and down with them.
	slices.SortStableFunc(over, func(a, b *PastPage) int { return a.Last.Compare(b.Last) })
	level, at, lowered := 1, 0, false
	for _, p := range over {
		switch p.Status {
		case ByTrying, Shown:
			lowered = true
		case RightFirst:
			lowered = false
		}
		if p.Level >= level && p.Status.Done() {
			at++
		}
		if level < hardest && at >= levelUp && c.steadyAt(level, p.Last) {
			level, at = level+1, 0
		}
	}
	if lowered {
		return max(level-1, 1)
	}
	return level
}

// steadyAt reports whether the ideas of a level's problems that were exercised in
// two problems or more are all steady, and some are.
func (c *choosing) steadyAt(level int, at time.Time) bool {
	some := false
	for _, row := range ideas {
		chances := until(c.byIdea[row.Idea], at)
		if len(chances) == 0 || !slices.ContainsFunc(chances, func(one Chance) bool { return one.Problem != chances[0].Problem }) {
			continue
		}
		if stateOf(chances) == Steady {
			some = true
			continue
		}
		if slices.ContainsFunc(c.bank, func(o Offer) bool { return o.Level == level && slices.Contains(o.Ideas(), row.Idea) }) {
			return false
		}
	}
	return some
}

// fresh finds a problem that was not begun, topics mixed.
func (c *choosing) fresh() (Advice, bool) {
	held := c.levelHeld()
	lowest := 1
	if n := len(c.own); n > 0 && c.own[n-1].Level == hardest && c.own[n-1].Status == RightFirst {
		lowest = hardest - 1 // nobody gets the easiest after a hard one that was right first time
	}
	// A topic with a problem of the right level comes before one that has only others.
	for _, strict := range []bool{true, false} {
		for _, topic := range c.mixed(held) {
			list := slices.DeleteFunc(slices.Clone(c.bank), func(o Offer) bool {
				return o.Topic != topic || c.last[o.ID] != nil || o.Level < lowest
			})
			wanted := max(c.levelIn(topic, held), lowest)
			if len(list) == 0 || strict && !slices.ContainsFunc(list, func(o Offer) bool { return o.Level == wanted }) {
				continue
			}
			return c.newIn(list, wanted), true
		}
	}
	return Advice{}, false
}

// mixed lists the topics in the order in which something new is taken from them:
// those begun, the one that waited longest first; then the next of the bank. A topic
// that had its run waits, and a new topic comes first once all that was met is
// steady in the last one.
func (c *choosing) mixed(held int) []string {
	var begun, ahead, waits []string
	for _, o := range c.bank {
		switch {
		case slices.Contains(begun, o.Topic) || slices.Contains(ahead, o.Topic):
		case c.hasBegun(o.Topic):
			begun = append(begun, o.Topic)
		default:
			ahead = append(ahead, o.Topic)
		}
	}
	slices.SortStableFunc(begun, func(a, b string) int { return c.lastIn(a) - c.lastIn(b) })
	if n := len(begun); n > 1 && c.runOf(begun[n-1]) >= topicRun {
		begun, waits = begun[:n-1], begun[n-1:]
	}
	if c.isReadyForNew(len(begun) + len(waits)) {
		return slices.Concat(ahead[:min(1, len(ahead))], begun, ahead[min(1, len(ahead)):], waits)
	}
	return slices.Concat(begun, ahead, waits)
}

// isReadyForNew reports whether a new topic comes before those begun: the first had
// its run, or all that was exercised in two problems is steady, and the last new
// topic had its run.
func (c *choosing) isReadyForNew(begun int) bool {
	if begun == 0 {
		return true
	}
	inLast := 0
	first := map[string]bool{}
	last := ""
	for _, p := range c.own {
		if !first[p.Topic] {
			first[p.Topic], last = true, p.Topic
		}
	}
	for _, p := range c.own {
		if p.Topic == last {
			inLast++
		}
	}
	return inLast >= topicRun && (begun == 1 || c.steadyAt(1, c.now) || c.steadyAt(2, c.now))
}

// lastIn is the place of a topic's last page among all, −1 for none.
func (c *choosing) lastIn(topic string) int {
	last := -1
	for i, p := range c.own {
		if p.Topic == topic {
			last = i
		}
	}
	return last
}

// runOf counts the problems of a topic in a row up to the last.
func (c *choosing) runOf(topic string) (n int) {
	for i := len(c.own) - 1; i >= 0 && c.own[i].Topic == topic; i-- {
		n++
	}
	return n
}

// newIn chooses among new problems of one topic: at the level wanted, and rather one
// that exercises an idea which is not steady.
func (c *choosing) newIn(list []Offer, wanted int) Advice {
	nearest := slices.MinFunc(list, func(a, b Offer) int { return away(a.Level, wanted) - away(b.Level, wanted) }).Level
	list = slices.DeleteFunc(list, func(o Offer) bool { return o.Level != nearest })
	best := list[0]
	idea := c.neediest(best)
	for _, o := range list[1:] {
		if other := c.neediest(o); c.need(other) < c.need(idea) {
			best, idea = o, other
		}
	}
	if !c.hasBegun(best.Topic) {
		idea = c.unmet(best, idea)
	}
	return Advice{Heading: best.Heading, Why: c.whyNew(best, idea), Idea: idea}
}

// telling are the ideas in the order in which one is named as what a problem is for:
// the particular before what nearly every problem has.
var telling = []Idea{FromVertical, FromHorizontal, FrictionForce, NormalForce, TwoBodies, Tensions, AlongAxis, Signs, WeightAndMass, Direction, FindingForces, Solving, Units}

// need ranks an idea by how much it wants practice.
func (c *choosing) need(i Idea) int {
	return slices.Index([]IdeaState{Slipping, Learning, NewIdea, Steady}, c.state(i))
}

// neediest is the idea of a problem that wants practice most.
func (c *choosing) neediest(o Offer) Idea {
	exercised := slices.DeleteFunc(slices.Clone(telling), func(i Idea) bool { return !slices.Contains(o.Ideas(), i) })
	if len(exercised) == 0 {
		return ""
	}
	return slices.MinFunc(exercised, func(a, b Idea) int { return c.need(a) - c.need(b) })
}

// unmet is the first idea of a problem that the student has never had a chance at,
// else the one given.
func (c *choosing) unmet(o Offer, idea Idea) Idea {
	for _, i := range telling {
		if slices.Contains(o.Ideas(), i) && len(c.byIdea[i]) == 0 {
			return i
		}
	}
	return idea
}

// whyNew says why a new problem was chosen.
func (c *choosing) whyNew(o Offer, idea Idea) string {
	hardestBefore := 0
	for _, p := range c.own {
		hardestBefore = max(hardestBefore, p.Level)
	}
	switch {
	case idea == "":
		return saidNext
	case !c.hasBegun(o.Topic):
		return saidBegins(TopicTitle(o.Topic), idea)
	case o.Level > hardestBefore && o.Level == c.levelHeld() && c.steadyAt(o.Level-1, c.now):
		return saidHarder(o.Level, idea)
	case c.state(idea) == Steady:
		return saidSteady(idea)
	}
	return saidPractises(idea, c.state(idea))
}

// leftBehind finds a problem that was never finished.
func (c *choosing) leftBehind() (Advice, bool) {
	for _, o := range c.bank {
		if p := c.last[o.ID]; p != nil && !p.Over && c.best(o.ID) <= Begun {
			return Advice{Heading: o.Heading, Why: saidLeftBehind(p.Stage)}, true
		}
	}
	return Advice{}, false
}

// longestAgo finds the problem done longest ago, those that were not right first time
// before the others.
func (c *choosing) longestAgo() (Advice, bool) {
	if len(c.bank) == 0 {
		return Advice{}, false
	}
	o := slices.MinFunc(c.bank, func(a, b Offer) int {
		return cmp.Or(yes(c.best(a.ID) == RightFirst)-yes(c.best(b.ID) == RightFirst), c.lastTouched(a.ID).Compare(c.lastTouched(b.ID)))
	})
	return Advice{Heading: o.Heading, Why: saidAllDone, Again: true}, true
}

func (c *choosing) lastTouched(id string) time.Time {
	if p := c.last[id]; p != nil {
		return p.Last
	}
	return time.Time{}
}

// Next says which problem comes next for the student of this desk.
func (d *Desk) Next() (a Advice, ok bool) {
	return Next(d.Past(), d.offers(), d.tutor.Class.Work, d.tutor.Record.Now())
}

// offers lists the problems of the bank; each is read once its ideas are asked for.
func (d *Desk) offers() []Offer {
	list := d.tutor.Bank.List()
	offers := make([]Offer, len(list))
	for i, h := range list {
		offers[i] = Offer{h, func() []Idea {
			p, err := d.tutor.Bank.Get(h.ID)
			if err != nil {
				return nil
			}
			return ExercisedBy(p.System)
		}}
	}
	return offers
}

// Past sums up what the student did. Attempts whose problem cannot be read any more
// are left out.
func (d *Desk) Past() *Past {
	var past Past
	var times []time.Time
	for _, a := range d.history.Attempts {
		for _, e := range a.Entries {
			// When a teacher accepts a line, the student is not sitting there.
			if !OfTeacher(e) {
				times = append(times, e.Time)
			}
		}
		page, err := d.pageOf(a)
		if err != nil {
			continue
		}
		// Entries are only added, so the same number means that nothing has changed.
		if a.summed != len(a.Entries) {
			a.past, a.summed = PastOf(a, page), len(a.Entries)
		}
		past.Pages = append(past.Pages, a.past)
	}
	past.Sittings = SittingsOf(times)
	return &past
}

// heading finds a problem of the bank.
func (d *Desk) heading(id string) (problems.Heading, bool) {
	for _, h := range d.tutor.Bank.List() {
		if h.ID == id {
			return h, true
		}
	}
	return problems.Heading{}, false
}
