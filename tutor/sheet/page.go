package sheet

import (
	_ "embed"
	"html/template"
)

//go:embed page.html
var source string

// page is the layout of a sheet. Every text is escaped by the template.
var page = template.Must(template.New("sheet").Parse(source))
