package quantity_test

import (
	"testing"

	"example.org/standstill/checker/quantity"
)

func TestNumberKnowsItsFigures(t *testing.T) {
	for _, c := range []struct {
		text             string
		value            float64
		figures, certain int
		half             float64
	}{
		{"7.6", 7.6, 2, 2, 0.05},
		{"20", 20, 2, 1, 0.5},
		{"0.0202", 0.0202, 3, 3, 0.00005},
		{"3.40", 3.4, 3, 3, 0.005},
		{".5", 0.5, 1, 1, 0.05},
		{"5.", 5, 1, 1, 0.5},
		{"1e3", 1000, 1, 1, 500},
		{"1.2×10^3", 1200, 2, 2, 50},
	} {
		n, err := quantity.ParseNumber(c.text)
		if err != nil || n.Value != c.value || n.Figures != c.figures || n.Certain != c.certain || n.Half-c.half > 1e-12 {
			t.Errorf("ParseNumber(%q) = %+v, %v", c.text, n, err)
		}
	}
}

func TestStands(t *testing.T) {
	for _, c := range []struct {
		text   string
		x      float64
		stands bool
		coarse bool
	}{
		{"20", 20.23, true, false},
		{"30", 25.8, false, true},
		{"26", 25.79, true, false},
		{"8", 7.6, false, true},
		{"31", 31.36, true, false},
		{"32", 31.36, false, false},
	} {
		n, err := quantity.ParseNumber(c.text)
		if err != nil || n.Stands(c.x) != c.stands || (!c.stands && n.Coarse(c.x) != c.coarse) {
			t.Errorf("%s for %v: stands %v coarse %v", c.text, c.x, n.Stands(c.x), n.Coarse(c.x))
		}
	}
}

func TestFormat(t *testing.T) {
	for _, c := range []struct {
		x       float64
		figures int
		want    string
	}{{20.2349, 3, "20.2"}, {0.07849, 3, "0.0785"}, {1250.4, 3, "1250"}, {99.96, 3, "100"}, {0, 3, "0"}, {-4.905, 3, "-4.91"}, {6.53e9, 3, "6.53×10^9"}} {
		if got := quantity.Format(c.x, c.figures); got != c.want {
			t.Errorf("Format(%v, %d) = %q, want %q", c.x, c.figures, got, c.want)
		}
	}
}

func TestEverySpellingFindsItsUnit(t *testing.T) {
	if len(quantity.Spellings()) < 40 {
		t.Fatal("the table of units is nearly empty")
	}
	for _, s := range quantity.Spellings() {
		u, ok := quantity.Find(s)
		if !ok || u.Factor <= 0 {
			t.Errorf("Find(%q) = %+v, %v", s, u, ok)
		}
	}
}
