package checker_test

import "math"

// open returns a world with the problem's givens in which no sum need be zero.
func (w *writer) open() env {
	at := w.givens()
	for _, name := range w.unknowns {
		at[name] = w.at[name] * (0.7 + 0.6*w.Float64())
	}
	w.fill(at)
	return at
}

// on returns a world in which this sum is zero, found by moving one unknown.
func (w *writer) on(s sum) (env, bool) {
	at := w.open()
	for _, name := range w.unknowns {
		if w.balance(s, at, name) {
			return at, true
		}
		at = w.open()
	}
	return nil, false
}

func (w *writer) balance(s sum, at env, name string) bool {
	f := func(x float64) float64 {
		at[name] = x
		w.fill(at)
		return total(s.terms, at)
	}
	x := at[name]
	for range 30 {
		h := 1e-6 * math.Max(math.Abs(x), 1e-3)
		slope := (f(x+h) - f(x-h)) / (2 * h)
		if slope == 0 {
			return false
		}
		x -= f(x) / slope
	}
	return share(s.terms, at) < 1e-9 && f(x) == f(x)
}

// isTrue reports whether a line holds, but for rounding, at rest and wherever
// the sum that it was made of is zero.
func (w *writer) isTrue(l line, s *sum) bool {
	const rounding = 0.004
	if !(l.miss(w.at) < rounding) {
		return false
	}
	if s == nil {
		return true
	}
	for range 2 {
		if at, ok := w.on(*s); ok && !(l.miss(at) < rounding) {
			return false
		}
	}
	return true
}

// empty reports whether a line holds whatever the unknowns are.
func (w *writer) empty(l line) bool {
	for range 3 {
		if l.miss(w.open()) > 1e-3 {
			return false
		}
	}
	return true
}
