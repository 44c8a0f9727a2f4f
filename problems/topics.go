package problems

// Topic is a part of statics that is practised by itself.
type Topic struct {
	ID    string
	Title string
}

// Topics returns every topic in the order in which a beginner meets them: each
// adds one thing to those before it.
func Topics() []Topic {
	return []Topic{
		{"two-strings", "Two strings"},
		{"one-level-string", "One horizontal string"},
		{"one-line", "Forces along one line"},
		{"pulleys", "Pulleys"},
		{"springs", "Springs"},
		{"incline", "On a slope"},
		{"friction-limit", "About to slide"},
		{"steady-sliding", "Sliding steadily"},
		{"pushed-block", "A pushed block"},
		{"force-table", "The balancing force"},
		{"unknown-mass", "An unknown mass"},
		{"struts", "Struts"},
		{"contacts", "Bodies in contact"},
		{"two-rings", "Two rings"},
		{"unknown-angles", "Unknown angles"},
	}
}

// LevelWord says how hard a problem of a level from 1 to 3 is.
func LevelWord(level int) string {
	switch level {
	case 1:
		return "easy"
	case 2:
		return "medium"
	}
	return "hard"
}

// topicRank returns a topic's place in the order; −1 for one that is not known.
func topicRank(id string) int {
	for i, t := range Topics() {
		if t.ID == id {
			return i
		}
	}
	return -1
}

func topicIDs() []string {
	var ids []string
	for _, t := range Topics() {
		ids = append(ids, t.ID)
	}
	return ids
}
