package diagram

import (
	"regexp"
	"strings"

	"example.org/standstill/checker/expr"
	"example.org/standstill/checker/pattern"
)

// Sides in words, and where a force really points. Sides are those of the room,
// or of the slope where one is named.

// sideWord is one direction in words. A slope's word speaks of the body's own
// axes.
type sideWord struct {
	match func() *regexp.Regexp
	slope bool
	x, y  int
	word  string
}

const slopeWord = `(?:slope|incline|inclined plane|ramp|plane|hill|surface|plank|board)`

// sideWords is the table of directions, slope words first. On a slope x = +1 is
// up the slope.
var sideWords = []sideWord{
	{pattern.Of(`(?i)\b(?:up|uphill)\s+(?:along\s+)?(?:the\s+)?` + slopeWord + `\b|\buphill\b`), true, 1, 0, "up the slope"},
	{pattern.Of(`(?i)\b(?:down|downhill)\s+(?:along\s+)?(?:the\s+)?` + slopeWord + `\b|\bdownhill\b`), true, -1, 0, "down the slope"},
	{pattern.Of(`(?i)\b(?:out\s+of|away\s+from|off|perpendicular\s+to|normal\s+to)\s+(?:the\s+)?` + slopeWord + `\b|⊥\s*(?:to\s+)?(?:the\s+)?` + slopeWord + `\b`), true, 0, 1, "away from the slope"},
	{pattern.Of(`(?i)\b(?:into|in|towards?)\s+(?:the\s+)?` + slopeWord + `\b`), true, 0, -1, "into the slope"},
	{pattern.Of(`(?i)\bup(?:wards?|per)?\b|\babove\b|\btop\b`), false, 0, 1, "up"},
	{pattern.Of(`(?i)\bdown(?:wards?)?\b|\blower\b|\bbelow\b|\bbottom\b`), false, 0, -1, "down"},
	{pattern.Of(`(?i)\bleft(?:wards?)?\b`), false, -1, 0, "left"},
	{pattern.Of(`(?i)\bright(?:wards?)?\b`), false, 1, 0, "right"},
}

// fillers say nothing about a direction.
var fillers = pattern.Of(`(?i)\b(?:to|the|points?|pointing|pulls?|pulling|pushes|pushing|acts?|acting|is|goes|and|straight|vertically|horizontally|horizontal|vertical|diagonally|parallel|at|towards?|force|of|a|an|along|directly|both)\b|[-+:→=]|[(\[]\s*[)\]]`)

// sidesInOne are the ways of writing two sides as one word or sign, and the compass.
var sidesInOne = strings.NewReplacer("↖", " up left ", "↗", " up right ", "↘", " down right ", "↙", " down left ",
	"↑", " up ", "↓", " down ", "←", " left ")

const otherArrows = "↖↗↘↙↑↓←"

var (
	joinedSides = pattern.Of(`(?i)\b(up|down)(left|right)\b|\b(left|right)(up|down)\b`)
	compass     = pattern.Of(`(?i)\b(?:(north|south)(?:\s*-?\s*(east|west))?|(east|west))\b`)
	arrowRight  = pattern.Of(`→|[-−–=]+>`)
	arrowAlone  = pattern.Of(`→(\s*(?:$|[^\s` + otherArrows + `]))`)
	nextNumber  = pattern.Of(`(?i)\b(up|down|left|right|slope|ramp|incline)\s+\d{1,2}\s*$`)
	sizeBehind  = pattern.Of(`[(\[=,]\s*\d+(?:[.,]\d+)?\s*(?:k?N|lb)\b\s*[)\]]?`)
	// angleBehind matches the angle of a force behind its side, which the drawing has.
	angleBehind = pattern.Of(`(?i)[(\[,]?\s*\b(?:at\s+)?(?:an\s+)?(?:angle\s+)?(?:of\s+)?(?:\d+(?:[.,]\d+)?\s*(?:°|deg(?:rees?)?\b)|[αβγδθφ](?:\b|$|\s))(?:\s*(?:from|to|with|off)\s+(?:the\s+)?(?:[-+]?[xy](?:[-\s]*axis)?|horizontal|vertical|level)\b)?\s*[)\]]?`)
)

var compassSides = map[string]string{"north": "up", "south": "down", "east": "right", "west": "left"}

// plainSides writes arrows and the compass as up, down, left and right. A lone arrow to the
// right is a side, also among other arrows; beside words for sides it only points at them.
func plainSides(text string) string {
	if strings.ContainsAny(text, otherArrows) {
		text = arrowAlone().ReplaceAllString(text, " right $1")
	}
	text = sidesInOne.Replace(text)
	text = compass().ReplaceAllStringFunc(text, func(found string) string {
		m := compass().FindStringSubmatch(found)
		return " " + compassSides[strings.ToLower(m[1])] + " " + compassSides[strings.ToLower(m[2]+m[3])] + " "
	})
	text = joinedSides().ReplaceAllString(text, "$1$3 $2$4")
	for _, w := range sideWords {
		if w.match().MatchString(text) {
			return arrowRight().ReplaceAllString(text, " ")
		}
	}
	return arrowRight().ReplaceAllString(text, " right ")
}

// entry is one force of a typed diagram.
type entry struct {
	name  string // typed name, as it stands
	named bool   // there is a name besides words for sides
	words []sideWord
}

func parseEntry(text string) entry {
	plain, _ := expr.Transcribe(expr.Clean(text))
	rest := nextNumber().ReplaceAllString(plainSides(plain), "$1") // "T1 up left 2. T2 …"
	var e entry
	for _, w := range sideWords {
		if w.match().MatchString(rest) {
			e.words = append(e.words, w)
			// Taken out, or the "up" of "up the slope" would be found once more by itself.
			rest = w.match().ReplaceAllString(rest, " ")
		}
	}
	rest = sizeBehind().ReplaceAllString(angleBehind().ReplaceAllString(rest, " "), " ")
	named := strings.Join(strings.Fields(fillers().ReplaceAllString(rest, " ")), " ")
	if e.named = named != ""; !e.named {
		// "pull right", "A left": what leads is the force, not a filler.
		named, _, _ = strings.Cut(strings.TrimSpace(rest), " ")
		named = strings.Trim(named, ":-→=")
	}
	e.name = strings.TrimSpace(strings.Trim(named, ".*•·"))
	return e
}

// isOpposed reports whether the words speak of two opposite sides.
func (e entry) isOpposed() bool {
	for _, v := range e.words {
		for _, w := range e.words {
			// "Up the slope" and "left" do not contradict each other, and on many slopes are the same.
			if v.slope == w.slope && (v.x*w.x < 0 || v.y*w.y < 0) {
				return true
			}
		}
	}
	return false
}

// SaysForce reports whether a text names a force and a side to which it points.
func SaysForce(text string) bool {
	e := parseEntry(text)
	return e.named && len(e.words) > 0
}
