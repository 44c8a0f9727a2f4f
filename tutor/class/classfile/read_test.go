// Inside the package: it goes through the table of settings, so that a new row is tested.

package classfile

import (
	"archive/zip"
	"bytes"
	"fmt"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"testing/fstest"
	"time"

	"golang.org/x/tools/txtar"

	"example.org/standstill/problems"
	"example.org/standstill/tutor"
	"example.org/standstill/tutor/record"
)

// TestBrokenClassFiles holds everything that is said about a file against the
// comment of its archive: one line of each file's findings, in order.
func TestBrokenClassFiles(t *testing.T) {
	archives, err := filepath.Glob("testdata/*.txtar")
	if err != nil || len(archives) == 0 {
		t.Fatal("no broken files were found", err)
	}
	for _, name := range archives {
		archive, err := txtar.ParseFile(name)
		must(t, err)
		var got []string
		for _, f := range archive.Files {
			c, found := Read(f.Name, f.Data, problems.Embedded())
			if (c == nil) != (len(found) > 0) {
				t.Errorf("%s gives %v and %v", f.Name, c, found)
			}
			for _, one := range found {
				got = append(got, one.String())
			}
		}
		want(t, name, strings.Join(got, "\n"), strings.TrimSpace(string(archive.Comment)))
	}
}

func TestFormatIsReadBack(t *testing.T) {
	bank := problems.Embedded()
	h := bank.List()
	c := &Class{Class: tutor.Class{Name: "It's 10b: # \"x\" {y}", Code: "- harbour, 2", Students: []record.Student{{ID: "yes", Name: "=1+1"}, {ID: "007", Name: "Zoë *O'Neil*"}, {ID: "1e3", Name: "null"}},
		Work:     []tutor.Set{{Heading: h[0]}, {Heading: h[3], Due: time.Date(2030, 3, 9, 23, 59, 59, 0, time.Local)}, {Heading: h[5], Due: time.Date(2030, 3, 10, 14, 0, 0, 0, time.Local)}},
		Settings: tutor.Settings{Gravity: "9.81 m/s^2", Tolerance: 0.02, NoHints: true, NoSolution: true}},
		Roster: Roster{Version: "1.2", Class: "phys-10b", School: "sch@1", Term: "t-1"}}
	back, found := Read("x", Format(c), bank)
	if err := found.Err(); err != nil {
		t.Fatalf("%v\n%s", err, Format(c))
	}
	if c.Bank = back.Bank; !reflect.DeepEqual(c, back) {
		t.Errorf("%+v\nbecomes\n%+v", c, back)
	}
}

// Every setting with few words is read, written and read back, each of its words alone
// and together with every word of the setting after it.
func TestChoicesAreReadBack(t *testing.T) {
	file := func(lines string) []byte {
		return []byte(strings.Replace(classText, "{problem: letter-scale}", "{problem: letter-scale, weight: 2.5}", 1) + "settings:\n" + lines)
	}
	n := 0
	for i, c := range choices {
		for at, word := range c.words {
			next := choices[(i+1)%len(choices)]
			for _, other := range next.words {
				text := file("  " + c.key + ": " + word + "\n  " + next.key + ": " + other + "\n")
				read, found := Read("x", text, problems.Embedded())
				must(t, found.Err())
				if got := c.get(&read.Settings); got != at {
					t.Errorf("%s: %s is read as %s", c.key, word, c.words[got])
				}
				back, found := Read("x", Format(read), problems.Embedded())
				must(t, found.Err())
				if n++; back.Settings != read.Settings || !reflect.DeepEqual(back.Work, read.Work) || back.Work[1].Weight != 2.5 {
					t.Errorf("%s becomes %+v\n%s", text, back.Settings, Format(read))
				}
			}
		}
	}
	if n < 30 {
		t.Errorf("%d were tried", n)
	}
}

// README names every such setting with its words, the usual one first.
func TestReadmeNamesTheChoices(t *testing.T) {
	text, err := os.ReadFile("../../../README.md")
	must(t, err)
	for _, c := range choices {
		if row := fmt.Sprintf("\n| `%s` | `%s` |", c.key, strings.Join(c.words, "` `")); !strings.Contains(string(text), row) {
			t.Errorf("README has no row %q", row)
		}
	}
}

func TestTopicsLevelsAndDates(t *testing.T) {
	c, found := Read("x", []byte(strings.Replace(classText, "- {problem: letter-scale}", "- {topic: springs, level: 1, due: 2030-04-01 09:30}\n  - {problem: canal-lantern}", 1)), problems.Embedded())
	must(t, found.Err())
	var ids []string
	for _, s := range c.Work {
		ids = append(ids, s.ID)
		if s.Topic == "springs" && s.Due != time.Date(2030, 4, 1, 9, 30, 0, 0, time.Local) {
			t.Errorf("%s is due %v", s.ID, s.Due)
		}
	}
	if ids[0] != "canal-lantern" || ids[1] != "letter-scale" || len(ids) < 3 {
		t.Errorf("set are %v", ids)
	}
}

func TestListsOfStudents(t *testing.T) {
	for text, names := range map[string]string{
		"id,name\ns1,Ada Berg\ns2,\"Roos, Ben\"\n":                              "s1=Ada Berg; s2=Roos, Ben",
		"\ufeffFirst name;Last name;Student ID\r\nAda;Berg;7\r\nBen;Roos;8\r\n": "7=Ada Berg; 8=Ben Roos",
		"Ada Berg\nBen Roos\n":                                                  "ada berg=Ada Berg; ben roos=Ben Roos",
		"s1\tAda\ns2\tBen\n":                                                    "s1=Ada; s2=Ben",
		"name\nAda\n\n  \nBen\x1b[2J\n":                                         "ada=Ada; ben\ufffd[2j=Ben\ufffd[2J",
		"id,name\ns1,A\nS1,B\n":                                                 "error line 3: the id S1 is also on line 2",
		"":                                                                      "error the file is empty",
		"id,name\n":                                                             "error there are no students in it",
		"\xff\xfea\x00":                                                         "error the file is not UTF-8 text",
		"id,name\n1,\"Bo\" Larsen\n2,Cy\n3,\"Di\n4,Ed\n5,\"Roos, Fi\"\n": "1=\"Bo\" Larsen; 2=Cy; 3=\"Di; 4=Ed; 5=Roos, Fi",
		"id,name\n3,\"Di\n4,Ed\"\n":                                      "3=\"Di; 4=Ed\"",
		"sep=;\nid;name\ns1;Berg, Ada\n":                                 "s1=Berg, Ada",
		"\ufeffsep=,\r\nid,name\r\ns1,A;B;C\r\n\r\ns1,D\r\n":             "error line 5: the id s1 is also on line 3",
		"id,name\rs1,Ada\rs2,Ben":                                        "s1=Ada; s2=Ben",
		strings.Repeat(",", 1000):                                        "error line 1 has 1000 characters and 1001 cells, which is too many for a list of students",
	} {
		students, err := readCSV([]byte(text))
		var got []string
		for _, s := range students {
			got = append(got, s.ID+"="+s.Name)
		}
		said := strings.Join(got, "; ")
		if err != nil {
			said = "error " + err.Error()
		}
		want(t, text, said, names)
	}
}

// rosterFolder is a OneRoster folder of two classes.
func rosterFolder(version string) fstest.MapFS {
	users := "sourcedId,status,dateLastModified,enabledUser,orgSourcedIds,role,username,userIds,givenName,familyName,middleName,identifier,email,sms,phone,agentSourcedIds,grades,password\n" +
		"u1,,,true,o1,student,ada,,Ada,Berg,,,ada@example.org,,,,10,\nu2,,,false,o1,student,ben,,Ben,Roos,,,,,,,10,\nu3,,,true,o1,teacher,tea,,Tea,Cher,,,,,,,,\n"
	if version == "1.2" {
		users = "sourcedId,status,dateLastModified,enabledUser,username,userIds,givenName,familyName,middleName,identifier,email,sms,phone,agentSourcedIds,grades,password,userMasterIdentifier,preferredGivenName,preferredMiddleName,preferredFamilyName,primaryOrgSourcedId,pronouns\n" +
			"u1,,,true,ada,,Adelheid,Berg,,,,,,,,,,Ada,,,o1,\nu2,,,false,ben,,Ben,Roos,,,,,,,,,,,,,o1,\nu3,,,true,tea,,Tea,Cher,,,,,,,,,,,,,o1,\n"
	}
	return fstest.MapFS{
		"manifest.csv":    {Data: []byte("propertyName,value\nmanifest.version,1.0\noneroster.version," + version + "\n")},
		"users.csv":       {Data: []byte(users)},
		"classes.csv":     {Data: []byte("sourcedId,status,dateLastModified,title,grades,courseSourcedId,classCode,classType,location,schoolSourcedId,termSourcedIds,subjects,subjectCodes,periods\nc1,,,Physics 10b,,k1,,scheduled,,o1,\"t1,t2\",,,\nc2,,,Art,,k2,,scheduled,,o1,t1,,,\n")},
		"enrollments.csv": {Data: []byte("sourcedId,status,dateLastModified,classSourcedId,schoolSourcedId,userSourcedId,role,primary,beginDate,endDate\ne1,,,c1,o1,u1,student,,,\ne2,,,c1,o1,u2,student,,,\ne3,,,c1,o1,u3,teacher,,,\ne4,tobedeleted,,c1,o1,u3,student,,,\n")},
	}
}

func TestOneRosterInAZipFile(t *testing.T) {
	for _, at := range []string{"", "export/"} {
		var b bytes.Buffer
		z := zip.NewWriter(&b)
		for name, file := range rosterFolder("1.2") {
			w, err := z.Create(at + name)
			must(t, err)
			_, err = w.Write(file.Data)
			must(t, err)
		}
		must(t, z.Close())
		path := filepath.Join(t.TempDir(), "roster.zip")
		must(t, os.WriteFile(path, b.Bytes(), 0o600))
		list, err := ReadList(path, "c1")
		must(t, err)
		if len(list.Students) != 1 || list.Roster.Version != "1.2" {
			t.Errorf("read %+v", list)
		}
		must(t, os.WriteFile(path, b.Bytes()[:b.Len()/2], 0o600))
		if _, err := ReadList(path, "c1"); err == nil || err.Error() != "the zip file is damaged" {
			t.Error(err)
		}
	}
}

func TestOneRosterIn(t *testing.T) {
	for _, version := range []string{"1.1", "1.2"} {
		list, err := readRoster(rosterFolder(version), "c1")
		must(t, err)
		if !reflect.DeepEqual(list, &List{Students: []record.Student{{ID: "u1", Name: "Ada Berg"}}, Name: "Physics 10b", Roster: Roster{version, "c1", "o1", "t1"}}) {
			t.Errorf("%s reads as %+v", version, list)
		}
		for id, said := range map[string]string{"": "several classes", "c9": `no class "c9"`, "c2": "has no students"} {
			if _, err := readRoster(rosterFolder(version), id); err == nil || !strings.Contains(err.Error(), said) {
				t.Errorf("class %q: %v", id, err)
			}
		}
	}
}
