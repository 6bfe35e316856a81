package job

import "strings"

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
