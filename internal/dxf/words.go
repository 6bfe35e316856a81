package dxf

import (
	_ "embed"
	"strconv"
	"strings"
	"unicode/utf8"
)

// codepages.txt holds the upper halves of the single-byte code pages, 128 letters
// each, U+FFFD where a page has none.
//
//go:embed codepages.txt
var codepagesText string

// codepages maps a page's number to its letters from 0x80 on.
var codepages = func() map[string][]rune {
	pages := map[string][]rune{}
	for _, line := range strings.Split(codepagesText, "\n") {
		if name, letters, ok := strings.Cut(line, "\t"); ok && !strings.HasPrefix(line, "#") {
			pages[name] = []rune(letters)
		}
	}
	return pages
}()

// decoder turns the bytes of a value into words.
type decoder struct {
	page []rune // nil: UTF-8
	name string
}

// firstUTF8 is the first release whose text files are UTF-8 (2007).
const firstUTF8 = "AC1021"

// decoderFor chooses how words are written: UTF-8 from 2007 on, and wherever the
// bytes are sound UTF-8; else the code page the file names, else 1252.
func decoderFor(version, page string, data []byte) decoder {
	if version >= firstUTF8 || utf8.Valid(data) {
		return decoder{name: "UTF-8"}
	}
	number := strings.TrimLeft(strings.TrimSpace(page), "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz_- ")
	if letters, ok := codepages[number]; ok {
		return decoder{letters, "code page " + number}
	}
	if page == "" {
		return decoder{codepages["1252"], "code page 1252, for want of a word of it"}
	}
	return decoder{codepages["1252"], "code page 1252, though the file names " + quoted(page) + ", which is not known here: some letters may be wrong"}
}

// bytes turns the bytes of a value into letters.
func (d decoder) bytes(s string) string {
	if d.page == nil {
		return strings.ToValidUTF8(s, "\uFFFD")
	}
	var b strings.Builder
	for i := 0; i < len(s); i++ {
		if s[i] < 0x80 {
			b.WriteByte(s[i])
		} else {
			b.WriteRune(d.page[s[i]-0x80])
		}
	}
	return b.String()
}

// plain turns the bytes of a name or a text into what it shows: letters written by
// number (\U+00E9, %%233) and the signs behind %% (d degrees, p plus-minus, c
// diameter, o and u lines over and under).
func (d decoder) plain(s string) string {
	s = d.bytes(s)
	if !strings.ContainsAny(s, `\%^`) {
		return s
	}
	var b strings.Builder
	for i := 0; i < len(s); {
		words, n := special(s[i:])
		if n == 0 {
			b.WriteByte(s[i])
			n = 1
		} else {
			b.WriteString(words)
		}
		i += n
	}
	return b.String()
}

// special reads a letter written otherwise at the start of s and returns how many
// bytes it takes, 0 for none.
func special(s string) (words string, n int) {
	switch {
	case strings.HasPrefix(s, `\U+`) && len(s) >= 7:
		if v, err := strconv.ParseUint(s[3:7], 16, 32); err == nil {
			return string(rune(v)), 7
		}
	case strings.HasPrefix(s, "^ "):
		return "^", 2
	case strings.HasPrefix(s, "%%") && len(s) >= 3:
		switch s[2] {
		case '%':
			return "%", 3
		case 'd', 'D':
			return "°", 3
		case 'p', 'P':
			return "±", 3
		case 'c', 'C':
			return "⌀", 3
		case 'o', 'O', 'u', 'U', 'k', 'K':
			return "", 3
		}
		if len(s) >= 5 {
			if v, err := strconv.ParseUint(s[2:5], 10, 8); err == nil {
				return string(rune(v)), 5
			}
		}
	}
	return "", 0
}

// escaped writes words in the letters of release 12: what is not ASCII by its
// number, the signs that would be read as something else doubled.
func escaped(s string) string {
	var b strings.Builder
	for _, r := range strings.ReplaceAll(s, "%%", "%%%%%%") {
		switch {
		case r == '^':
			b.WriteString("^ ")
		case r < 0x20 || r == 0x7f:
			b.WriteByte(' ') // a line end would break the file
		case r < 0x7f:
			b.WriteRune(r)
		case r > 0xffff:
			b.WriteByte('?') // no way to write it
		default:
			b.WriteString(`\U+` + strings.ToUpper(strconv.FormatUint(0x10000+uint64(r), 16)[1:]))
		}
	}
	return b.String()
}
