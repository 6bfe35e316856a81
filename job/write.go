package job

import (
	"bytes"
	"encoding/json"
	"reflect"
	"strings"
)

// longestLine is how long a value may be to stand on one line.
const longestLine = 110

// unbind frees a tree from the text it was read from, so that it is laid out anew,
// and writes a list that has no items as [] rather than null.
func unbind(n *node, t reflect.Type) {
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	n.src = nil
	for i, v := range n.values {
		item := reflect.TypeFor[float64]()
		switch {
		case n.kind == 'o' && t.Kind() == reflect.Struct:
			item = fieldsOf(t)[n.keys[i]].Type
		case t.Kind() == reflect.Slice || t.Kind() == reflect.Map:
			item = t.Elem()
		}
		if v.kind == 'z' && item.Kind() == reflect.Slice {
			v.kind = 'a'
		}
		unbind(v, item)
	}
}

// written lays a tree out: two blanks a level, short values on one line, and the
// bytes it was read from for what did not change.
func written(n *node) []byte {
	var b bytes.Buffer
	writeNode(&b, n, 0)
	return b.Bytes()
}

func writeNode(b *bytes.Buffer, n *node, level int) {
	if n.src != nil {
		b.Write(n.src[n.start:n.end])
		return
	}
	nested := n.kind == 'o' || n.kind == 'a'
	if line, ok := oneLine(n, level > 0); ok && (!nested || len(line)+2*level <= longestLine) {
		b.WriteString(line)
		return
	}
	open, closing := byte('{'), byte('}')
	if n.kind == 'a' {
		open, closing = '[', ']'
	}
	b.WriteByte(open)
	for i, v := range n.values {
		if i > 0 {
			b.WriteByte(',')
		}
		b.WriteString("\n" + strings.Repeat("  ", level+1))
		if n.kind == 'o' {
			b.WriteString(quoted(n.keys[i]) + ": ")
		}
		writeNode(b, v, level+1)
	}
	b.WriteString("\n" + strings.Repeat("  ", level))
	b.WriteByte(closing)
}

// oneLine writes a value on one line; objects only when nothing in them is an
// object, and none at the top.
func oneLine(n *node, inner bool) (string, bool) {
	if n.src != nil {
		s := string(n.src[n.start:n.end])
		return s, !strings.Contains(s, "\n")
	}
	var parts []string
	for i, v := range n.values {
		if !inner || v.kind == 'o' {
			return "", false
		}
		s, ok := oneLine(v, true)
		if !ok {
			return "", false
		}
		if n.kind == 'o' {
			s = quoted(n.keys[i]) + ": " + s
		}
		parts = append(parts, s)
	}
	switch n.kind {
	case 'o':
		if len(parts) == 0 {
			return "{}", true
		}
		return "{ " + strings.Join(parts, ", ") + " }", true
	case 'a':
		return "[" + strings.Join(parts, ", ") + "]", true
	case 's':
		return quoted(n.text), true
	case 'n':
		return n.text, true
	}
	return map[byte]string{'t': "true", 'f': "false", 'z': "null"}[n.kind], true
}

func quoted(s string) string {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(s); err != nil {
		panic("job: " + err.Error())
	}
	return strings.TrimSuffix(b.String(), "\n")
}
