package picture

// panel is one of the parts that share a drawing.
type panel struct {
	wanted     bool
	cols, rows int  // the least it needs beside others
	weight     int  // its share of what is left
	low        bool // it rather lies under the others than beside them
	draw       func(*drawing, *Scene, box)
}

// panels draws what the scene holds, side by side where the width allows, else
// one above the other. Where even that is too tight only the last is drawn: it
// is what the lesson has come to.
func (d *drawing) panels(s *Scene, all box) {
	var wanted []panel
	for _, p := range d.parts(s) {
		if p.wanted {
			wanted = append(wanted, p)
		}
	}
	if len(wanted) == 0 {
		return
	}
	for i, area := range share(wanted, all) {
		if area.cols() > 0 && area.rows() > 0 {
			d.grid.clip = area
			wanted[i].draw(d, s, area)
			// Panel by panel: a label must not wander into the next one.
			d.place()
		}
	}
	d.grid.clip = all
}

func (d *drawing) parts(s *Scene) []panel {
	chain := panel{wanted: s.Chain != nil, cols: 26, rows: 9, weight: 3, low: true, draw: (*drawing).chain}
	return []panel{
		{wanted: s.Setup != nil && len(s.Setup.Objects) > 0, cols: 30, rows: 9, weight: 3, draw: (*drawing).setup},
		{wanted: len(s.Bodies) > 0, cols: 20, rows: 9, weight: 3, draw: (*drawing).figure},
		chain,
		{wanted: s.Polygon != nil, cols: 16, rows: 7, weight: 3, draw: (*drawing).polygon},
		{wanted: s.Plot != nil, cols: 28, rows: 8, weight: 4, draw: (*drawing).plot},
	}
}

// share cuts the room into one area for each panel.
func share(ps []panel, all box) []box {
	cols, rows, high, weight, low := len(ps)-1, 0, 0, 0, false
	for _, p := range ps {
		cols, rows, high, weight = cols+p.cols, rows+p.rows, max(high, p.rows), weight+p.weight
		low = low || p.low
	}
	areas := make([]box, len(ps))
	beside := cols <= all.cols() && high <= all.rows()
	switch flat := rows <= all.rows() && (low || !beside); {
	case len(ps) == 1, !beside && !flat:
		areas[len(ps)-1] = all
	case flat:
		top := all.top
		for i, p := range ps {
			areas[i] = box{all.left, top, all.right, top + p.rows + (all.rows()-rows)*p.weight/weight}
			top = areas[i].bottom
		}
		areas[len(ps)-1].bottom = all.bottom
	default:
		left := all.left
		for i, p := range ps {
			areas[i] = box{left, all.top, left + p.cols + (all.cols()-cols)*p.weight/weight, all.bottom}
			left = areas[i].right + 1
		}
		areas[len(ps)-1].right = all.right
	}
	return areas
}
