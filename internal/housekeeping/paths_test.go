package housekeeping

import (
	"bytes"
	"os"
	"path/filepath"
	"regexp"
	"testing"
)

// machine finds what belongs to one machine or one network: folders of a user or
// of a workshop, and hosts packages are fetched from.
var machine = []*regexp.Regexp{
	regexp.MustCompile(`(^|[\s"'=(:` + "`" + `])/(wo` + `rk|ro` + `ot|ho` + `me|Us` + `ers)/[\w.-]`),
	regexp.MustCompile(`[A-Z]:\\Us` + `ers\\`),
	regexp.MustCompile(`pro` + `xy\.golang\.org|regis` + `try\.npmjs\.org|regis` + `try\.yarnpkg\.com|py` + `pi\.org`),
}

// TestNothingOfOneMachine reads every text file of the project.
func TestNothingOfOneMachine(t *testing.T) {
	root := filepath.Join("..", "..")
	read := 0
	eachFile(t, root, func(name string) {
		data, err := os.ReadFile(filepath.Join(root, name))
		if err != nil {
			t.Fatal(err)
		}
		if bytes.IndexByte(data[:min(len(data), 8000)], 0) >= 0 {
			return // not text
		}
		read++
		for i, line := range bytes.Split(data, []byte("\n")) {
			for _, m := range machine {
				if found := m.Find(line); found != nil {
					t.Errorf("%s:%d: %q belongs to one machine", name, i+1, found)
				}
			}
		}
	})
	if read < 100 {
		t.Errorf("only %d files were read", read)
	}
}
