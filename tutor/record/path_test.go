// Inside the package: it takes addresses apart without opening them.

package record

import (
	"net/url"
	"path/filepath"
	"testing"
)

func TestDataFolder(t *testing.T) {
	// What counts as a whole path depends on the system that the test runs on.
	whole := t.TempDir()
	data, stick := filepath.Join(whole, "data"), filepath.Join(whole, "stick")
	for _, c := range []struct {
		goos string
		env  map[string]string
		want string
	}{
		{"linux", map[string]string{"HOME": "/home/ada"}, "/home/ada/.local/share/standstill"},
		{"linux", map[string]string{"HOME": "/home/ada", "XDG_DATA_HOME": data}, filepath.Join(data, "standstill")},
		{"linux", map[string]string{"HOME": "/home/ada", "XDG_DATA_HOME": "data"}, "/home/ada/.local/share/standstill"},
		{"darwin", map[string]string{"HOME": "/Users/ada", "XDG_DATA_HOME": data}, "/Users/ada/Library/Application Support/standstill"},
		{"windows", map[string]string{"LocalAppData": "/ada/Local", "AppData": "/ada/Roaming"}, "/ada/Local/standstill"},
		{"windows", map[string]string{FolderVariable: stick, "LocalAppData": "/ada/Local"}, stick},
		{"linux", map[string]string{FolderVariable: stick}, stick},
	} {
		got, err := dataFolder(c.goos, func(key string) string { return c.env[key] })
		if got != filepath.FromSlash(c.want) || err != nil {
			t.Errorf("%s %v: %q, %v; want %q", c.goos, c.env, got, err, c.want)
		}
	}
	_, err := dataFolder("linux", func(string) string { return "" })
	mustBe(t, err, ErrUnopenable)

	folder := t.TempDir()
	t.Setenv(FolderVariable, folder)
	if path, err := DefaultPath(); path != filepath.Join(folder, "record.db") || err != nil {
		t.Errorf("DefaultPath = %q, %v", path, err)
	}
}

func TestSourceNameEscapes(t *testing.T) {
	got := sourceName("/a b/c?d#e%f&g=h", readOnly, []string{"busy_timeout(1)"})
	want := "file:///a%20b/c%3Fd%23e%25f&g=h?_defensive=1&_dqs=0&_error_rc=1&_pragma=busy_timeout%281%29&_txlock=immediate&mode=ro"
	if got != want {
		t.Errorf("got  %s\nwant %s", got, want)
	}
}

// SQLite takes what stands between the second and the third slash for the name of a machine,
// and refuses any but its own (source: sqlite.org/uri.html, section 3.1, from memory).
func TestAddressesOfFiles(t *testing.T) {
	for _, c := range []struct {
		path, volume string
		separator    rune
		want         string
	}{
		{"/home/ada/record.db", "", '/', "file:///home/ada/record.db"},
		{`/home/ada\x/record.db`, "", '/', "file:///home/ada%5Cx/record.db"},
		{`C:\lab\record.db`, "C:", '\\', "file:///C:/lab/record.db"},
		{`\\server\share\lab 2\record.db`, `\\server\share`, '\\', "file:////server/share/lab%202/record.db"},
		{`\\server\share\50%?#.db`, `\\server\share`, '\\', "file:////server/share/50%25%3F%23.db"},
	} {
		u := url.URL{Scheme: "file", Path: addressPath(c.path, c.volume, c.separator)}
		if got := u.String(); got != c.want {
			t.Errorf("%s becomes %s, want %s", c.path, got, c.want)
		}
	}
}
