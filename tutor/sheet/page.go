package sheet

import (
	_ "embed"
	"html/template"
	"sync"
)

//go:embed page.html
var source string

//go:embed style.css
var style string

// Style is the style of every page that the program writes: sheets, reports and lab
// pages. A page adds to it only what it alone has. Its classes are boxed, warning,
// minor and number.
func Style() template.CSS { return template.CSS(style) }

// page is the layout of a sheet. Every text is escaped by the template.
var page = sync.OnceValue(func() *template.Template {
	return template.Must(template.New("sheet").Funcs(template.FuncMap{"style": Style}).Parse(source))
})
