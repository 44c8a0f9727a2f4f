package main

import (
	"io"

	"example.org/standstill/tutor/class/classfile"
)

// writeJSON writes a value, indented or on one line, so that nothing in it acts.
func writeJSON(w io.Writer, value any, indent string) error {
	return classfile.WriteJSON(w, value, indent)
}
