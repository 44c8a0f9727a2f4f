package tutor

import (
	"slices"
	"strings"
	"unicode"

	"example.org/standstill/checker"
)

// Cries for help are no answers. A text is one if all of its words are words of
// asking, and one of them asks.

// asking are the words that ask by themselves.
var asking = strings.Fields(`help idk dunno stuck lost what whats how why confused clue idea understand
	understood explain know sense give up hard easier start begin where which positive negative`)

// beside are the words that may stand beside them: whatever a sentence about the task
// may hold that is no formula.
var beside = strings.Fields(`i im id me my mine you your we us it its is am are was be been this that these those there here
	a an the any some no not dont do does did doing done can cant could should would will wont must have has had got get
	to of for with on in at by from about and or but so if then than as up next now again first please pls ok okay sorry
	um er hm hmm hey hi hello really still just even too very so at all anything something nothing one more thing
	mean means meant meaning need want wanted supposed going go gonna wanna make makes made find finding calculate work out
	write type enter put say tell show see use using answer answers question step steps way line problem exercise task
	force forces component components angle angles axis sum sums equation equations tension weight diagram drawing
	x y left right upwards downwards direction directions plus minus sign signs u r wtf think thing wrong right unsure sure uncertain`)

// isCry reports whether a line asks for help in words of its own: "?", "what do I do",
// "i don't know how to start".
func isCry(line string) bool {
	if strings.Trim(line, "?¿!. ") == "" {
		return strings.ContainsAny(line, "?¿")
	}
	// The lists have “dont” and “whats”: many leave the apostrophe out.
	line = strings.NewReplacer("'", "", "’", "", "`", "").Replace(line)
	words := strings.FieldsFunc(line, func(r rune) bool { return unicode.IsSpace(r) || strings.ContainsRune(",.!?;:…-", r) })
	asks := false
	for _, w := range words {
		switch {
		case slices.Contains(asking, w):
			asks = true
		case !slices.Contains(beside, w):
			return false
		}
	}
	return asks && (len(words) > 1 || !slices.Contains(weak, words[0])) && !strings.ContainsAny(line, "=+*/^0123456789")
}

// weak are words that ask for something only beside others.
var weak = strings.Fields("up give sense hard know start begin easier idea which positive negative")

// Lost is what somebody hears who does not know what to do: what is asked now, in other
// words, and an example of the kind of line that is meant, about another force. Nothing
// of it is kept.
type Lost struct {
	Now     string
	Example string // "" once nothing is asked
}

// Lost says what is asked now to somebody who asks for help.
func (g *Page) Lost() Lost {
	stage, item, ok := g.InHand()
	if !ok {
		return Lost{Now: saidLostDone}
	}
	return Lost{Now: g.saidLost(stage, item), Example: g.sample(stage)}
}

func (g *Page) saidLost(stage checker.Stage, item string) string {
	switch stage {
	case checker.Diagram:
		return saidLostForces(item)
	case checker.Components:
		// The item ends in its axis, as T1x does.
		force, axis := item[:len(item)-1], item[len(item)-1:]
		return saidLostComponent(saidItem(Place{stage, item}), saidItem(Place{Item: force}), axis) + saidLostAxes(g.Directions(item))
	case checker.XSum, checker.YSum:
		return saidLostSum(string(stage[0]), item) + saidLostAxes(g.Directions(item))
	}
	var open []string
	for _, u := range g.open(checker.Solve) {
		open = append(open, g.wanted(u))
	}
	return saidLostSolve(listed(open))
}
