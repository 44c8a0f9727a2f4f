package classfile

import (
	"fmt"
	"slices"
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
			r.At(v["tolerance"], fmt.Sprintf("%q is not a tolerance", Shown(text)), "a tolerance from 0.1 % to 10 %")
		}
		r.class.Tolerance = share
	}
	for _, c := range choices {
		if n := v[c.key]; n != nil {
			if word, ok := r.OneOf(n, fmt.Sprintf("the choice for %q", c.key), c.words); ok {
				c.set(&r.class.Settings, slices.Index(c.words, word))
			}
		}
	}
}

// choice is a setting with a few words to choose from, the usual one first. Set and get
// go by the place of a word.
type choice struct {
	key   string
	words []string
	what  string // for whoever makes a class file
	set   func(*tutor.Settings, int)
	get   func(*tutor.Settings) int
}

// choices are such settings, in the order in which they are read and written. A later
// one has the last word: questions are both the predictions and those after Solve.
var choices = []choice{
	yesOrNo("hints", "whether students can ask for hints", func(s *tutor.Settings) *bool { return &s.NoHints }),
	yesOrNo("solution", "whether students can see the worked solution before they have solved the problem", func(s *tutor.Settings) *bool { return &s.NoSolution }),
	yesOrNo("scenes", "whether students see a drawing of the situation", func(s *tutor.Settings) *bool { return &s.NoScenes }),
	freeOrRequired("signs", "whether students must type the sign of each component", func(s *tutor.Settings) *bool { return &s.SignsRequired }),
	freeOrRequired("working", "whether students must type a line of working before a value", func(s *tutor.Settings) *bool { return &s.Working }),
	{"figures", []string{"2", "free", "3", "4"}, "how many significant figures a value must have",
		func(s *tutor.Settings, at int) { s.Figures = [...]int{0, 1, 3, 4}[at] },
		func(s *tutor.Settings) int { return max(slices.Index([]int{0, 1, 3, 4}, s.Figures), 0) }},
	{"questions", []string{"yes", "no", "required"}, "whether the program asks a question before the equations and after the last stage",
		func(s *tutor.Settings, at int) { s.Limits, s.Predictions = tutor.Questions(at), tutor.Questions(at) },
		func(s *tutor.Settings) int { return int(s.Limits) }},
	{"predictions", []string{"yes", "no", "required"}, "the same as --questions, but only for the prediction before the equations",
		func(s *tutor.Settings, at int) { s.Predictions = tutor.Questions(at) },
		func(s *tutor.Settings) int { return int(s.Predictions) }},
}

func yesOrNo(key, what string, no func(*tutor.Settings) *bool) choice {
	return choice{key, []string{"yes", "no"}, what, setBool(no), getBool(no)}
}

func freeOrRequired(key, what string, required func(*tutor.Settings) *bool) choice {
	return choice{key, []string{"free", "required"}, what, setBool(required), getBool(required)}
}

func setBool(of func(*tutor.Settings) *bool) func(*tutor.Settings, int) {
	return func(s *tutor.Settings, at int) { *of(s) = at == 1 }
}

func getBool(of func(*tutor.Settings) *bool) func(*tutor.Settings) int {
	return func(s *tutor.Settings) int {
		if *of(s) {
			return 1
		}
		return 0
	}
}

// Choice is a setting that a class file can have, for whoever makes one.
type Choice struct {
	Key, What string
	Words     []string
}

// Choices lists them.
func Choices() (all []Choice) {
	for _, c := range choices {
		all = append(all, Choice{c.key, c.what, c.words})
	}
	return all
}

// gravity takes a g that a problem of the bank can have.
func (r *reader) gravity(n *yaml.Node, text string) {
	number, unit, _ := strings.Cut(text, " ")
	g, err := strconv.ParseFloat(number, 64)
	if unit = strings.TrimSpace(unit); err != nil || g <= 0 || g > 100 || unit != "m/s^2" && unit != "N/kg" {
		r.At(n, fmt.Sprintf("%q cannot be g", Shown(text)), "a value such as 9.81 m/s^2")
		return
	}
	// With one space, as problem files have it.
	r.class.Gravity = number + " " + unit
}

func readShare(text string) (float64, error) {
	share, err := strconv.ParseFloat(strings.TrimSpace(strings.TrimSuffix(text, "%")), 64)
	return share / 100, err
}
