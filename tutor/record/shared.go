package record

// Shared gives the entries whose id stands under more than one student's name, by id
// and then by name: somebody put another name on entries.
func (r *Record) Shared() ([]Entry, error) {
	const query = "SELECT " + columns + " FROM entry WHERE {=} id IN (SELECT id FROM entry WHERE {=} 1 = 1 GROUP BY id HAVING count(*) > 1) ORDER BY id, student"
	var shared []Entry
	row := newRow()
	err := r.query(query, nil, func(scan scan) error {
		e, err := row.read(scan)
		shared = append(shared, e)
		return err
	})
	return shared, r.fault(err)
}
