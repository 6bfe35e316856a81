package housekeeping

import (
	"go/ast"
	"go/parser"
	"go/token"
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// banned are words that people must not read on screen, in a report or in a
// message, with the reason.
var banned = []struct {
	word *regexp.Regexp
	why  string
}{
	{regexp.MustCompile(`(?i)\bliab(le|ility)\b`), "a court decides that"},
	{regexp.MustCompile(`(?i)\bat fault\b`), "a court decides that"},
	{regexp.MustCompile(`(?i)\bnegligen(t|ce|tly)\b`), "a court decides that"},
	{regexp.MustCompile(`(?i)\bblam(e|ed|es|ing)\b`), "say who held the step, not who is to blame"},
	{regexp.MustCompile(`(?i)\bdefect(s|ive)?\b`), "a word of law; say finding"},
	{regexp.MustCompile(`(?i)\bseverity score\b`), "an index nobody can check"},
	{regexp.MustCompile(`(?i)\bhealth score\b`), "an index nobody can check"},
	{regexp.MustCompile(`\bAI\b`), "advertising"},
	{regexp.MustCompile(`(?i)\bsmart\b`), "advertising"},
	{regexp.MustCompile(`(?i)\bfailures?\b`), "say what happened: cracked, broke, did not settle"},
}

// TestBannedWords reads every string of the Go code, every string and text of the
// app, and every table that is shown. Titles of published works are as printed.
func TestBannedWords(t *testing.T) {
	read := 0
	see := func(name, where, text string) {
		read++
		for _, b := range banned {
			if found := b.word.FindString(text); found != "" {
				t.Errorf("%s:%s: %q in %.80q: %s", name, where, found, text, b.why)
			}
		}
	}
	root := filepath.Join("..", "..")
	eachFile(t, root, func(name string) {
		data := func() string {
			text, err := os.ReadFile(filepath.Join(root, name))
			if err != nil {
				t.Fatal(err)
			}
			return string(text)
		}
		switch ext := filepath.Ext(name); {
		case strings.HasSuffix(name, "_test.go") || strings.Contains(name, "testdata/"):
		case ext == ".go":
			goStrings(t, filepath.Join(root, name), func(line int, text string) { see(name, strconv.Itoa(line), text) })
		case ext == ".ts" || ext == ".tsx":
			for _, s := range appStrings(data()) {
				see(name, "", s)
			}
		case ext == ".html":
			see(name, "", data())
		case ext == ".csv" && filepath.Base(name) != "works.csv" || ext == ".txt" || strings.HasPrefix(name, "job/demo") && filepath.Base(name) == "job.json":
			for i, line := range strings.Split(data(), "\n") {
				if !strings.HasPrefix(line, "#") {
					see(name, strconv.Itoa(i+1), line)
				}
			}
		}
	})
	if read < 1000 {
		t.Errorf("only %d texts were read", read)
	}
}

// goStrings calls f for the string literals of a file, import paths and struct
// tags left out.
func goStrings(t *testing.T, name string, f func(line int, text string)) {
	files := token.NewFileSet()
	parsed, err := parser.ParseFile(files, name, nil, parser.SkipObjectResolution)
	if err != nil {
		t.Errorf("%v", err)
		return
	}
	ast.Inspect(parsed, func(n ast.Node) bool {
		switch x := n.(type) {
		case *ast.ImportSpec:
			return false
		case *ast.Field:
			if x.Type != nil {
				ast.Inspect(x.Type, func(ast.Node) bool { return true })
			}
			return x.Tag == nil
		case *ast.BasicLit:
			if x.Kind == token.STRING {
				if s, err := strconv.Unquote(x.Value); err == nil {
					f(files.Position(x.Pos()).Line, s)
				}
			}
		}
		return true
	})
}

var (
	appComment = regexp.MustCompile(`(?s:/\*.*?\*/)|(?m:(^|\s)//[^\n]*$)`)
	appString  = regexp.MustCompile("\"[^\"\n]*\"|'[^'\n]*'|`[^`]*`|>[^<>{}=]+<")
)

// appStrings returns the strings and texts of a TypeScript file, comments left out.
func appStrings(text string) []string {
	return appString.FindAllString(appComment.ReplaceAllString(text, ""), -1)
}

func TestAppStrings(t *testing.T) {
	got := strings.Join(appStrings("// \"no\"\nconst a = \"one\" /* 'two' */ + 'three';\n<p class=\"x\">Four five</p>"), "|")
	if want := `"one"|'three'|"x"|>Four five<`; got != want {
		t.Errorf("got %s, want %s", got, want)
	}
}

// eachFile calls f for every file of the project with its slashed name; what is
// vendored, built or made by a tool is left out.
func eachFile(t *testing.T, root string, f func(name string)) {
	t.Helper()
	err := filepath.WalkDir(root, func(path string, d fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		rel, err := filepath.Rel(root, path)
		if err != nil {
			return err
		}
		rel = filepath.ToSlash(rel)
		if d.IsDir() {
			switch {
			case rel == "third_party" || rel == "web/dist" || d.Name() == "node_modules" || d.Name() == "fuzz" || rel != "." && strings.HasPrefix(d.Name(), "."):
				return fs.SkipDir
			}
			return nil
		}
		f(rel)
		return nil
	})
	if err != nil {
		t.Fatal(err)
	}
}
