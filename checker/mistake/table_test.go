package mistake_test

import (
	"reflect"
	"testing"

	"example.org/standstill/checker/mistake"
)

// TestTable holds every row against what its fields mean together.
func TestTable(t *testing.T) {
	mains := map[mistake.Code]mistake.Row{}
	for _, row := range mistake.Table() {
		if row.Meaning != "" {
			if _, twice := mains[row.Code]; twice {
				t.Errorf("%s: two rows say what the code means", row.Code)
			}
			mains[row.Code] = row
		}
	}
	found := map[[10]any]bool{}
	for _, row := range mistake.Table() {
		if row.Code == mistake.NoAttempt {
			continue // it holds hints, and is no mistake
		}
		main, ok := mains[row.Code]
		if !ok {
			t.Errorf("%s: no row says what the code means", row.Code)
		}
		if by := foundBy(&row); row.Meaning == "" {
			if by == foundBy(&mistake.Row{Code: row.Code}) {
				t.Errorf("%s: a second row is found by nothing but the code", row.Code)
			}
			if found[by] {
				t.Errorf("%s: two rows are found by the same", row.Code)
			}
			found[by] = true
		}
		checkFields(t, &row)
		checkWords(t, &row, &main)
	}
	if len(mains) < 40 {
		t.Errorf("only %d codes have a meaning", len(mains))
	}
}

// foundBy lists what tells a row from the others of its code.
func foundBy(row *mistake.Row) [10]any {
	of := func(function any) any { return reflect.ValueOf(function).Pointer() }
	return [...]any{row.Code, of(row.Term), of(row.Sum), of(row.Line), of(row.Tree), of(row.Value), of(row.Digits), row.Strange, row.NoLetter, row.OfGiven}
}

// checkFields looks for costs that are none, and for fields that mean nothing without another.
func checkFields(t *testing.T, row *mistake.Row) {
	changes := row.Term != nil || row.Sum != nil
	numbers := changes || row.Value != nil
	ofCode := row.Passing || row.OfKind || row.OtherList || row.UnitOnly || row.Elsewhere || row.OfAxis || row.OfValue || row.Absent
	for _, c := range []struct {
		says  string
		holds bool
	}{
		{"Cost is above zero", row.Cost > 0},
		{"InNumbers needs Term, Sum or Value, and leaves the cost above zero", row.InNumbers == 0 || numbers && row.Cost+row.InNumbers > 0},
		{"Tells needs Term or Sum", row.Tells == 0 || changes && row.Tells > 0},
		{"AllTerms and Everywhere need Term", !(row.AllTerms || row.Everywhere) || row.Term != nil},
		{"Alone, AtLast, NotInSums, OfSums, Seen, SameZero, Signed and Shows need Term or Sum",
			changes || !(row.Alone || row.AtLast || row.NotInSums || row.OfSums || row.Seen || row.SameZero || row.Signed) && row.Shows == nil},
		{"what is tried Alone is not made Everywhere", !row.Alone || !row.Everywhere},
		{"LineLast needs Line", !row.LineLast || row.Line != nil},
		{"Formula needs Value", row.Formula == nil || row.Value != nil},
		{"Digits and DigitsCost need each other", (row.Digits != nil) == (row.DigitsCost > 0)},
		{"a code is described in the row with its Meaning", !ofCode || row.Meaning != ""},
		{"Open needs Meaning or Value", !row.Open || row.Meaning != "" || row.Value != nil},
	} {
		if !c.holds {
			t.Errorf("%s, cost %v: %s", row.Code, row.Cost, c.says)
		}
	}
}

// checkWords asks for words for each kind of evidence that a row is tried on: its own, or those of
// the row that says what its code means.
func checkWords(t *testing.T, row, main *mistake.Row) {
	said, usual := row.Said, main.Said
	inLine := said.Line+said.Lines+usual.Line+usual.Lines != ""
	inComponent := said.Component+said.Line+usual.Component+usual.Line != ""
	inValue := said.Value+usual.Value != ""
	if (row.Term != nil || row.Sum != nil || row.Line != nil || row.Tree != nil) && !inLine {
		t.Errorf("%s, cost %v: no words for a line", row.Code, row.Cost)
	}
	if (row.Term != nil || row.Sum != nil) && !inComponent {
		t.Errorf("%s, cost %v: no words for a component", row.Code, row.Cost)
	}
	solved := (row.Term != nil || row.Sum != nil) && !row.NotInSums
	if (row.Value != nil || row.Digits != nil || solved) && !inValue {
		t.Errorf("%s, cost %v: no words for a value", row.Code, row.Cost)
	}
	if row.Strange != mistake.NotStrange && said.Line+said.List+said.Stranger == "" {
		t.Errorf("%s, cost %v: no words for a force that the problem does not have", row.Code, row.Cost)
	}
}
