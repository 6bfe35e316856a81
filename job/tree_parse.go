package job

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// parser reads JSON (RFC 8259) and remembers what is open, for messages.
type parser struct {
	src   []byte
	at    int
	path  []string // "slabs", "[0]", "outline_m"
	opens []int    // where each open object or list began
	twice []Problem
}

// deepest is the nesting a job file may have; the types need nine.
const deepest = 100

// parseTree reads a whole text. Keys used twice are gathered, not fatal.
func parseTree(src []byte) (*node, []Problem, *Problem) {
	p := &parser{src: src}
	if strings.HasPrefix(string(src), "\xef\xbb\xbf") {
		p.at = 3
	}
	if len(src) > 1 && (src[0] == 0xff && src[1] == 0xfe || src[0] == 0xfe && src[1] == 0xff) {
		return nil, nil, &Problem{Level: Error, Code: "json-encoding", Found: "the file is UTF-16", Want: "UTF-8", Mend: "Save it again as UTF-8."}
	}
	p.space()
	if p.at == len(src) {
		return nil, nil, &Problem{Level: Error, Code: "json-empty", Found: "the file is empty", Want: "an object with version, id, title, place and slabs",
			Mend: "Take the file from a copy, or start again with slabwright new."}
	}
	n, bad := p.value()
	if bad == nil {
		if p.space(); p.at < len(src) {
			bad = p.fail("json-syntax", "text goes on after the closing bracket: "+p.near(), "the end of the file", "Take out what follows, or a bracket too many.")
		}
	}
	return n, p.twice, bad
}

func (p *parser) space() {
	for p.at < len(p.src) && strings.IndexByte(" \t\r\n", p.src[p.at]) >= 0 {
		p.at++
	}
}

func (p *parser) near() string {
	end := min(p.at+12, len(p.src))
	for end < len(p.src) && !utf8.RuneStart(p.src[end]) {
		end++
	}
	return strconv.Quote(strings.ToValidUTF8(string(p.src[p.at:end]), "?"))
}

func (p *parser) field() string {
	return strings.ReplaceAll(strings.Join(p.path, "."), ".[", "[")
}

// lineColumn counts columns in characters, from 1.
func lineColumn(src []byte, at int) (line, column int) {
	before := string(src[:at])
	last := strings.LastIndexByte(before, '\n')
	return 1 + strings.Count(before, "\n"), 1 + utf8.RuneCountInString(before[last+1:])
}

func (p *parser) fail(code, found, want, mend string) *Problem {
	line, column := lineColumn(p.src, p.at)
	return &Problem{Level: Error, Code: code, Field: p.field(), Line: line,
		Found: fmt.Sprintf("line %d, column %d: %s", line, column, found), Want: want, Mend: mend}
}

// cutOff is the problem of a file that ends too early: it says what was open.
func (p *parser) cutOff() *Problem {
	var open []string
	for i := len(p.opens) - 1; i >= 0 && len(open) < 3; i-- {
		line, _ := lineColumn(p.src, p.opens[i])
		open = append(open, fmt.Sprintf("%q from line %d", string(p.src[p.opens[i]]), line))
	}
	found := "the file ends here"
	if len(open) > 0 {
		found += " with " + strings.Join(open, ", ") + " still open"
	}
	return p.fail("json-cut-off", found, "the closing brackets", "The file was cut off when it was copied or sent: take it again from where it came.")
}

func (p *parser) value() (*node, *Problem) {
	p.space()
	if p.at == len(p.src) {
		return nil, p.cutOff()
	}
	if len(p.opens) >= deepest {
		return nil, p.fail("json-syntax", "brackets are nested too deep", fmt.Sprintf("at most %d", deepest), "")
	}
	switch c := p.src[p.at]; {
	case c == '{':
		return p.object()
	case c == '[':
		return p.list()
	case c == '"':
		start := p.at
		s, bad := p.str()
		return &node{kind: 's', text: s, src: p.src, start: start, end: p.at}, bad
	case c == '-' || c >= '0' && c <= '9':
		return p.num()
	}
	for word, kind := range map[string]byte{"true": 't', "false": 'f', "null": 'z'} {
		if strings.HasPrefix(string(p.src[p.at:]), word) {
			p.at += len(word)
			return &node{kind: kind, src: p.src, start: p.at - len(word), end: p.at}, nil
		}
		if rest := string(p.src[p.at:]); strings.HasPrefix(word, rest) {
			p.at = len(p.src)
			return nil, p.cutOff()
		}
	}
	return nil, p.fail("json-syntax", "no value begins with "+p.near(), "a number, a \"text\" in double quotes, true, false, null, [ or {", p.valueMend())
}

func (p *parser) valueMend() string {
	switch p.src[p.at] {
	case ',', ']', '}':
		return "A value is missing, or there is a comma too many before this."
	case '\'':
		return "Use double quotes."
	case '/', '#':
		return "Comments are not part of JSON; put the words in a \"note\"."
	case '.', '+':
		return "Write 0.5 for .5 and 5 for +5."
	case 'N', 'I':
		return "Leave out what nobody knows; there is no NaN."
	}
	return "Put texts in double quotes."
}
