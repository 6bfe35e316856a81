package job

import (
	"fmt"
	"strconv"
	"strings"
	"unicode/utf8"
)

// node is one value of a JSON text as it stands there: members in their order,
// numbers and strings with their spelling, and its place in the text.
type node struct {
	kind       byte // o object, a array, s string, n number, t f true false, z null
	text       string
	keys       []string
	values     []*node // of an object or array
	src        []byte  // the text it was read from; nil for a value made here
	start, end int
}

func (n *node) member(key string) *node {
	if n == nil || n.kind != 'o' {
		return nil
	}
	for i, k := range n.keys {
		if k == key {
			return n.values[i]
		}
	}
	return nil
}

// kindName is what a person calls the kind of value.
func (n *node) kindName() string {
	return map[byte]string{'o': "an object {...}", 'a': "a list [...]", 's': "a text", 'n': "a number", 't': "true", 'f': "false", 'z': "null"}[n.kind]
}

// shown is a value cut to a length that fits a message.
func (n *node) shown() string {
	s := strings.Join(strings.Fields(string(n.src[n.start:n.end])), " ")
	if r := []rune(s); len(r) > 40 {
		s = string(r[:37]) + "..."
	}
	return s
}

func (n *node) line() int { return 1 + strings.Count(string(n.src[:n.start]), "\n") }

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

func (p *parser) object() (*node, *Problem) {
	n := &node{kind: 'o', src: p.src, start: p.at}
	p.opens = append(p.opens, p.at)
	p.at++
	for first := true; ; first = false {
		p.space()
		if p.at == len(p.src) {
			return nil, p.cutOff()
		}
		if p.src[p.at] == '}' && first {
			break
		}
		if p.src[p.at] != '"' {
			return nil, p.fail("json-syntax", "a field name in double quotes must stand here, not "+p.near(), "\"name\": value", "Look for a comma too many before this, or missing quotes.")
		}
		key, bad := p.str()
		if bad != nil {
			return nil, bad
		}
		p.path = append(p.path, key)
		if n.member(key) != nil {
			p.twice = append(p.twice, *p.fail("json-twice", fmt.Sprintf("the field %q stands twice in one object", key), "each field once", "Keep the right one and take the other out."))
		}
		if p.space(); p.at == len(p.src) {
			return nil, p.cutOff()
		}
		if p.src[p.at] != ':' {
			return nil, p.fail("json-syntax", "a colon is missing before "+p.near(), "\"name\": value", "")
		}
		p.at++
		v, bad := p.value()
		if bad != nil {
			return nil, bad
		}
		n.keys, n.values = append(n.keys, key), append(n.values, v)
		p.path = p.path[:len(p.path)-1]
		more, bad := p.more('}')
		if bad != nil {
			return nil, bad
		}
		if !more {
			break
		}
	}
	return p.close(n)
}

func (p *parser) list() (*node, *Problem) {
	n := &node{kind: 'a', src: p.src, start: p.at}
	p.opens = append(p.opens, p.at)
	p.at++
	if p.space(); p.at < len(p.src) && p.src[p.at] == ']' {
		return p.close(n)
	}
	for {
		p.path = append(p.path, fmt.Sprintf("[%d]", len(n.values)))
		v, bad := p.value()
		if bad != nil {
			return nil, bad
		}
		n.values = append(n.values, v)
		p.path = p.path[:len(p.path)-1]
		more, bad := p.more(']')
		if bad != nil {
			return nil, bad
		}
		if !more {
			return p.close(n)
		}
	}
}

func (p *parser) close(n *node) (*node, *Problem) {
	p.at++
	p.opens = p.opens[:len(p.opens)-1]
	n.end = p.at
	return n, nil
}

// more reports whether a comma stands here, or the closing bracket.
func (p *parser) more(closing byte) (bool, *Problem) {
	p.space()
	switch {
	case p.at == len(p.src):
		return false, p.cutOff()
	case p.src[p.at] == ',':
		p.at++
		return true, nil
	case p.src[p.at] == closing:
		return false, nil
	}
	line, _ := lineColumn(p.src, p.opens[len(p.opens)-1])
	return false, p.fail("json-syntax", fmt.Sprintf("a comma or %q is missing before %s", string(closing), p.near()),
		fmt.Sprintf("%q of line %d goes on or is closed", string(p.src[p.opens[len(p.opens)-1]]), line), "A comma is probably missing at the end of the line before.")
}

func (p *parser) num() (*node, *Problem) {
	start := p.at
	digits := func() bool {
		from := p.at
		for p.at < len(p.src) && p.src[p.at] >= '0' && p.src[p.at] <= '9' {
			p.at++
		}
		return p.at > from
	}
	is := func(set string) bool { return p.at < len(p.src) && strings.IndexByte(set, p.src[p.at]) >= 0 }
	if is("-") {
		p.at++
	}
	zero := is("0")
	from := p.at
	ok := digits() && !(zero && p.at > from+1)
	if ok && is(".") {
		p.at++
		ok = digits()
	}
	if ok && is("eE") {
		if p.at++; is("+-") {
			p.at++
		}
		ok = digits()
	}
	if !ok {
		if p.at == len(p.src) {
			return nil, p.cutOff()
		}
		return nil, p.fail("json-syntax", fmt.Sprintf("%q is no JSON number", p.src[start:p.at]), "digits, a point, digits", "No leading zeros; 0.5 rather than .5; a point, not a comma.")
	}
	return &node{kind: 'n', text: string(p.src[start:p.at]), src: p.src, start: start, end: p.at}, nil
}
