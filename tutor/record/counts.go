package record

import "strings"

// Counts gives the number of entries for each id of a student, without reading
// the entries. As entries are only added, or forgotten all together, the same
// number means the same entries.
func (r *Record) Counts() (map[string]int, error) {
	counts := map[string]int{}
	err := r.query("SELECT student, count(*) FROM entry WHERE {=} student <> '' GROUP BY student", nil, func(scan scan) error {
		var student string
		var n int
		err := scan(&student, &n)
		counts[student] = n
		return err
	})
	return counts, r.fault(err)
}

// Find gives the entries whose id begins with the hexadecimal digits, two at most:
// enough to tell one from several. An id that stands under two students' names is
// two entries. None is no error.
func (r *Record) Find(prefix string) ([]Entry, error) {
	const longest = 32
	if len(prefix) > longest || strings.Trim(prefix, "0123456789abcdef") != "" {
		// A word that is no beginning of an id is found nowhere, which is no fault.
		return nil, nil
	}
	rest := longest - len(prefix)
	from := idBytes(prefix + strings.Repeat("0", rest))
	to := idBytes(prefix + strings.Repeat("f", rest))
	var found []Entry
	row := newRow()
	err := r.query("SELECT "+columns+" FROM entry WHERE {=} id BETWEEN ? AND ? ORDER BY id, student LIMIT 2", []any{from, to}, func(scan scan) error {
		e, err := row.read(scan)
		found = append(found, e)
		return err
	})
	return found, r.fault(err)
}
