package class

// Roster is where a class's list came from, if it came from a OneRoster folder:
// the version, and the ids that results must name. The zero value is no roster.
type Roster struct {
	Version string // "1.1" or "1.2"
	Class   string // sourcedId of the class
	School  string
	Term    string // of the academic session, or grading period
}
