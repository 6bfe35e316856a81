package job

import (
	"encoding/json"
	"fmt"
	"strings"
	"unicode/utf8"
)

// str reads a string; the parser stands on its opening quote.
func (p *parser) str() (string, *Problem) {
	start := p.at
	for i := p.at + 1; i < len(p.src); i++ {
		switch c := p.src[i]; {
		case c == '"':
			p.at = i + 1
			return p.unquote(start)
		case c == '\\':
			i++
		case c < 0x20:
			p.at = i
			line, _ := lineColumn(p.src, start)
			return "", p.fail("json-syntax", fmt.Sprintf("the text begun on line %d is not closed on its line", line), "a closing double quote", "Write a line break within a text as \\n.")
		}
	}
	p.at = len(p.src)
	p.opens = append(p.opens, start)
	return "", p.cutOff()
}

func (p *parser) unquote(start int) (string, *Problem) {
	raw := p.src[start:p.at]
	var s string
	if err := json.Unmarshal(raw, &s); err != nil {
		p.at = start
		return "", p.fail("json-syntax", "the text holds an escape JSON does not know", `\" \\ \/ \n \t or \u and four hex digits`, `Write a backslash in a path as / or \\.`)
	}
	if !utf8.Valid(raw) {
		p.at = start
		return "", p.fail("json-encoding", "the text is not UTF-8", "UTF-8", "Save the file again as UTF-8.")
	}
	return s, nil
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
