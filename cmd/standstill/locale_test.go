package main

import "testing"

func TestPlainCharactersByThemselves(t *testing.T) {
	for _, c := range []struct {
		env  map[string]string
		want bool
	}{
		{map[string]string{"TERM": "xterm-256color"}, false},
		{map[string]string{"TERM": "xterm", "LANG": "de_DE.UTF-8"}, false},
		{map[string]string{"TERM": "xterm", "LANG": "C.utf8"}, false},
		{map[string]string{"TERM": "linux", "LANG": "en_GB.UTF-8"}, true},
		{map[string]string{"TERM": "xterm", "LANG": "C"}, true},
		{map[string]string{"TERM": "xterm", "LANG": "en_GB.UTF-8", "LC_ALL": "POSIX"}, true},
		{map[string]string{"TERM": "xterm", "LANG": "C", "LC_CTYPE": "en_GB.UTF-8"}, false},
		{map[string]string{"TERM": "xterm", "LANG": "en_GB.ISO-8859-1"}, true},
	} {
		if got := plainCharacters("linux", func(name string) string { return c.env[name] }); got != c.want {
			t.Errorf("%v: %v, want %v", c.env, got, c.want)
		}
	}
}

// What terminals on Windows set is from memory.
func TestPlainCharactersInTheOldConsoleOfWindows(t *testing.T) {
	for _, c := range []struct {
		env  map[string]string
		want bool
	}{
		{map[string]string{"ComSpec": `C:\Windows\system32\cmd.exe`}, true},
		{map[string]string{"WT_SESSION": "cf4cdc14"}, false},
		{map[string]string{"TERM_PROGRAM": "vscode"}, false},
		{map[string]string{"TERM": "xterm", "LANG": "en_GB.UTF-8"}, false},
		{map[string]string{"WT_SESSION": "cf4cdc14", "LANG": "C"}, true},
	} {
		if got := plainCharacters("windows", func(name string) string { return c.env[name] }); got != c.want {
			t.Errorf("%v: %v, want %v", c.env, got, c.want)
		}
	}
}
