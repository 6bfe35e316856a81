package job

import "fmt"

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
