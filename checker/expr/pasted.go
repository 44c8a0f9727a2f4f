package expr

import (
	"regexp"

	"example.org/standstill/checker/pattern"
)

// library matches the name of a program's library in front of one of its functions, as
// in math.cos, np.deg2rad, Math.PI. Group 1 is what is left out.
var library = pattern.Of(`(?i)\b((?:math|cmath|np|numpy|sympy|sp|wf)\.)(?:a?(?:sin|cos|tan)|arc(?:sin|cos|tan)|sqrt|radians|degrees|deg2rad|rad2deg|pi|abs|fabs)\b`)

// piCall matches the circle's number as spreadsheets write it. Group 1 is what is left out: all
// of it, or what is left would be matched again.
var piCall = pattern.Of(`(?i)\bpi\s*([(\[]\s*[)\]](?:\s*[(\[]\s*[)\]])*)`)

// unprogrammed blanks what only a program or a spreadsheet needs.
func (p *page) unprogrammed() *page {
	for _, known := range []*regexp.Regexp{library(), piCall()} {
		text := p.String()
		for _, m := range known.FindAllStringSubmatchIndex(text, -1) {
			start := len([]rune(text[:m[2]]))
			p.blank(start, start+len([]rune(text[m[2]:m[3]])))
		}
	}
	return p
}
