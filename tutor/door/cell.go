package door

import "strings"

// Inert writes a cell of a table so that no spreadsheet works it out.
func Inert(text string) string {
	// Some spreadsheets take the wide forms for these signs, too.
	if text != "" && strings.ContainsRune("=+-@＝＋－＠'", []rune(text)[0]) {
		return "'" + text
	}
	return text
}

// Plain is the text of a cell that Inert may have written.
func Plain(cell string) string {
	if text := strings.TrimPrefix(cell, "'"); Inert(text) == cell {
		return text
	}
	return cell
}
