package class

import (
	"fmt"
	"strconv"
	"strings"

	"go.yaml.in/yaml/v4"

	"example.org/standstill/tutor"
)

func (r *reader) settings(n *yaml.Node) {
	if n == nil {
		return
	}
	v := r.Fields(n, `"settings"`, settingKeys)
	if g, ok := r.Word(v["g"], "g", "9.81 m/s^2"); ok {
		r.gravity(v["g"], g)
	}
	if text, ok := r.Word(v["tolerance"], "the tolerance", "1 %"); ok {
		share, err := readShare(text)
		if err != nil || share < leastTolerate || share > mostTolerate {
			r.At(v["tolerance"], fmt.Sprintf("%q is no tolerance", shown(text)), "from 0.1 % to 10 %")
		}
		r.class.Tolerance = share
	}
	r.class.NoHints = r.refused(v["hints"], `"hints"`)
	r.class.NoSolution = r.refused(v["solution"], `"solution"`)
	r.questions(v["questions"])
}

// questions reads whether a prediction and a limit are asked.
func (r *reader) questions(n *yaml.Node) {
	if n == nil {
		return
	}
	word, _ := r.OneOf(n, `the choice for "questions"`, []string{"yes", "no", "required"})
	r.class.Questions = map[string]tutor.Questions{"no": tutor.QuestionsOff, "required": tutor.QuestionsRequired}[word]
}

// gravity takes a g that a problem of the bank can have.
func (r *reader) gravity(n *yaml.Node, text string) {
	number, unit, _ := strings.Cut(text, " ")
	g, err := strconv.ParseFloat(number, 64)
	if unit = strings.TrimSpace(unit); err != nil || g <= 0 || g > 100 || unit != "m/s^2" && unit != "N/kg" {
		r.At(n, fmt.Sprintf("%q cannot be g", shown(text)), "a value such as 9.81 m/s^2")
		return
	}
	r.class.Gravity = number + " " + unit
}

func readShare(text string) (float64, error) {
	share, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(text, "%")), 64)
	return share / 100, err
}

// refused reads a yes or no; no refuses.
func (r *reader) refused(n *yaml.Node, what string) bool {
	if n == nil {
		return false
	}
	word, _ := r.OneOf(n, "the choice for "+what, []string{"yes", "no"})
	return word == "no"
}
