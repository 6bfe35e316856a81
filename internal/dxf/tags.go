package dxf

import (
	"bytes"
	"fmt"
	"strconv"
	"strings"
)

// Error says where a drawing cannot be read.
type Error struct {
	Line  int    // of the file, from 1; of a binary file the byte, from 0
	Code  int    // group code, -1 where there is none
	Found string // what stands there
	Want  string // what must stand there
	Bytes bool   // Line counts bytes
}

func (e *Error) Error() string {
	where := fmt.Sprintf("line %d", e.Line)
	if e.Bytes {
		where = fmt.Sprintf("byte %d", e.Line)
	}
	if e.Code >= 0 {
		where += fmt.Sprintf(", group code %d", e.Code)
	}
	return fmt.Sprintf("%s: found %s, expected %s", where, e.Found, e.Want)
}

// tag is one group code with its value as it stands in the file.
type tag struct {
	code  int
	value string
	line  int // of the value
}

// quoted shows a value in a message, shortened.
func quoted(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		s = string(r[:most]) + "…"
	}
	return strconv.Quote(s)
}

// textTags reads the pairs of lines of a text file up to the end of file mark;
// after says whether anything but blank stands behind it, ended whether the mark
// was there.
func textTags(data []byte) (tags []tag, ended, after bool, err error) {
	data = bytes.TrimPrefix(data, []byte("\xef\xbb\xbf"))
	lines := splitLines(data)
	for i := 0; i+1 < len(lines); i += 2 {
		word := strings.TrimSpace(lines[i])
		code, err := strconv.Atoi(word)
		if err != nil || code < -10 || code > 1100 {
			return nil, false, false, &Error{Line: i + 1, Code: -1, Found: quoted(word), Want: "a group code, a whole number"}
		}
		t := tag{code, lines[i+1], i + 2}
		if code == 0 && strings.TrimSpace(t.value) == "EOF" {
			return tags, true, !blank(lines[i+2:]), nil
		}
		tags = append(tags, t)
	}
	if n := len(lines); n%2 == 1 && !blank(lines[n-1:]) {
		return nil, false, false, &Error{Line: n, Code: -1, Found: quoted(lines[n-1]) + " and then the end of the file", Want: "a group code and its value on the next line; the file may be cut short"}
	}
	return tags, false, false, nil
}

// splitLines parts text at line feeds, carriage returns or both together.
func splitLines(data []byte) []string {
	text := strings.ReplaceAll(string(data), "\r\n", "\n")
	text = strings.ReplaceAll(text, "\r", "\n")
	return strings.Split(strings.TrimSuffix(text, "\n"), "\n")
}

func blank(lines []string) bool {
	for _, l := range lines {
		if strings.Trim(l, " \t\x1a\x00") != "" {
			return false
		}
	}
	return true
}
