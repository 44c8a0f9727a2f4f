package problems

import (
	"fmt"
	"maps"
	"slices"
	"strconv"
	"strings"

	"example.org/standstill/checker/pattern"
)

// Count returns how many values there are.
func (v Vary) Count() int { return int((v.High-v.Low)/v.Step) + 1 }

// Text returns the k-th value as it is printed, with the places of the bounds:
// "2.3", never 2.3000000000000003.
func (v Vary) Text(k int) string {
	n := v.Low + int64(k)*v.Step
	sign := ""
	if n < 0 {
		sign, n = "-", -n
	}
	digits := strconv.FormatInt(n, 10)
	if v.Places == 0 {
		return sign + digits
	}
	// 0.05 is the whole number 5 with two places.
	if missing := v.Places + 1 - len(digits); missing > 0 {
		digits = strings.Repeat("0", missing) + digits
	}
	point := len(digits) - v.Places
	return sign + digits[:point] + "." + digits[point:]
}

// mostValues is the most values of one given, mostPlaces the most decimal places.
const (
	mostValues = 1_000_000
	mostPlaces = 6
)

var varyForm = pattern.Of(`^(\S+)\s+to\s+(\S+)\s+step\s+(\S+)$`)

// readVary reads "1.5 to 5.0 step 0.1".
func readVary(name, text string) (Vary, *misread) {
	m := varyForm().FindStringSubmatch(text)
	if m == nil {
		return Vary{}, &misread{fmt.Sprintf("%q is not a range", shorten(text)), "LOW to HIGH step STEP, such as 1.5 to 5.0 step 0.1"}
	}
	v := Vary{Name: name}
	for _, number := range m[1:] {
		// All three numbers are counted in the finest place of any of them.
		_, decimals, _ := strings.Cut(number, ".")
		v.Places = max(v.Places, len(decimals))
	}
	for i, into := range []*int64{&v.Low, &v.High, &v.Step} {
		n, ok := scaled(m[i+1], v.Places)
		if !ok {
			return v, &misread{fmt.Sprintf("%q is not a decimal number", shorten(m[i+1])), fmt.Sprintf("a number in the unit of %s, such as 1.5", name)}
		}
		*into = n
	}
	switch {
	case v.Step <= 0:
		return v, &misread{"the step is zero or negative", "a step greater than zero"}
	case v.High < v.Low+v.Step:
		return v, &misread{"the range has only one value", "HIGH at least one step above LOW"}
	case (v.High-v.Low)/v.Step >= mostValues:
		return v, &misread{"the range has too many steps", fmt.Sprintf("at most %d", mostValues)}
	}
	return v, nil
}

// scaled returns the decimal number times 10^places.
func scaled(number string, places int) (int64, bool) {
	whole, decimals, _ := strings.Cut(number, ".")
	digits := strings.TrimPrefix(whole, "-") + decimals
	// Twelve digits and six places stay well within 64 bits.
	if len(digits) > 12 || places > mostPlaces || digits == "" || strings.Trim(digits, "0123456789") != "" {
		return 0, false
	}
	n, err := strconv.ParseInt(digits+strings.Repeat("0", places-len(decimals)), 10, 64)
	if strings.HasPrefix(whole, "-") {
		n = -n
	}
	return n, err == nil
}

// vary reads the part "vary".
func (r *reader) vary(d *draft) []Vary {
	var list []Vary
	// While a given cannot be read, what is found about its range would only follow from that.
	if d.unreadableGivens() {
		return nil
	}
	for _, e := range r.mapping(d.top.values["vary"], `"vary"`, "m: 1.5 to 5.0 step 0.1") {
		name := canonical(e.key.Value)
		if d.given[name] == nil {
			r.at(e.key, fmt.Sprintf("%s is not given", shorten(name)), instead(name, slices.Sorted(maps.Keys(d.given))))
			continue
		}
		if d.follows(name) {
			r.at(e.key, name+" follows from other given values", "ranges for these values")
			continue
		}
		if g, ok := d.System.Given(name); ok && g.Any {
			r.at(e.key, name+" has no number that can vary", "a given value with a number")
			continue
		}
		text, ok := r.word(e.value, "the range of "+name, "1.5 to 5.0 step 0.1")
		if !ok {
			continue
		}
		v, wrong := readVary(name, text)
		if wrong != nil {
			r.at(e.value, wrong.what, wrong.expected)
			continue
		}
		list = append(list, v)
	}
	return list
}
