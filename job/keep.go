package job

import (
	"reflect"
	"strconv"
	"time"
)

// keep lays a value as it is now (fresh) over the text it was read from (old), so
// that what the program does not know survives, what did not change keeps its
// bytes, and what changed is written anew. It returns old itself when nothing did.
func keep(old, fresh *node, t reflect.Type) *node {
	for t.Kind() == reflect.Pointer {
		t = t.Elem()
	}
	switch {
	case old.kind == 'o' && fresh.kind == 'o' && t.Kind() == reflect.Struct:
		fields := fieldsOf(t)
		return keepObject(old, fresh, func(key string) (reflect.Type, bool) { return fields[key].Type, fields[key].Type != nil })
	case old.kind == 'o' && fresh.kind == 'o' && t.Kind() == reflect.Map:
		return keepObject(old, fresh, func(string) (reflect.Type, bool) { return t.Elem(), true })
	case old.kind == 'a' && fresh.kind == 'a' && t.Kind() == reflect.Slice:
		return keepList(old, fresh, pair(old, fresh, t.Elem()), t.Elem())
	case old.kind == 'a' && fresh.kind == 'a':
		return keepList(old, fresh, byIndex(old, fresh), reflect.TypeFor[float64]())
	}
	if same(old, fresh) {
		return old
	}
	return fresh
}

func keepObject(old, fresh *node, known func(key string) (reflect.Type, bool)) *node {
	out := &node{kind: 'o'}
	changed := false
	for i, key := range old.keys {
		v := old.values[i]
		if t, ok := known(key); ok {
			switch now := fresh.member(key); {
			case now != nil:
				v = keep(v, now, t)
			case !empty(v):
				changed = true // taken away since
				continue
			}
		}
		changed = changed || v != old.values[i]
		out.keys, out.values = append(out.keys, key), append(out.values, v)
	}
	after := 0 // new fields go behind the one they follow in the types
	for i, key := range fresh.keys {
		at := -1
		for k := range out.keys {
			if out.keys[k] == key {
				at = k
			}
		}
		if at < 0 {
			if empty(fresh.values[i]) {
				continue
			}
			at, changed = after, true
			out.keys = append(out.keys[:at], append([]string{key}, out.keys[at:]...)...)
			out.values = append(out.values[:at], append([]*node{fresh.values[i]}, out.values[at:]...)...)
		}
		after = at + 1
	}
	if !changed {
		return old
	}
	return out
}

func keepList(old, fresh *node, partner []int, t reflect.Type) *node {
	out := &node{kind: 'a'}
	changed := len(old.values) != len(fresh.values)
	for i, v := range fresh.values {
		if k := partner[i]; k >= 0 {
			v = keep(old.values[k], v, t)
			changed = changed || k != i || v != old.values[k]
		} else {
			changed = true
		}
		out.values = append(out.values, v)
	}
	if !changed {
		return old
	}
	return out
}

// pair finds for each item of a list the item it was read from: by id where all
// have one, else by equal contents, else by place in the list. -1: it is new.
func pair(old, fresh *node, t reflect.Type) []int {
	ids, ok := identities(old)
	_, all := identities(fresh)
	if !ok || !all {
		return byContents(old, fresh, t)
	}
	partner := make([]int, len(fresh.values))
	for i, v := range fresh.values {
		k, found := ids[identity(v)]
		if !found {
			k = -1
		}
		partner[i] = k
	}
	return partner
}

func byContents(old, fresh *node, t reflect.Type) []int {
	partner, taken := make([]int, len(fresh.values)), make([]bool, len(old.values))
	for i, v := range fresh.values {
		partner[i] = -1
		if i < len(old.values) && !taken[i] && keep(old.values[i], v, t) == old.values[i] {
			partner[i], taken[i] = i, true
			continue
		}
		for k, o := range old.values {
			if !taken[k] && keep(o, v, t) == o {
				partner[i], taken[k] = k, true
				break
			}
		}
	}
	for i := range fresh.values {
		if partner[i] < 0 && i < len(old.values) && !taken[i] {
			partner[i], taken[i] = i, true
		}
	}
	return partner
}

func byIndex(old, fresh *node) []int {
	partner := make([]int, len(fresh.values))
	for i := range partner {
		if partner[i] = i; i >= len(old.values) {
			partner[i] = -1
		}
	}
	return partner
}

// identities maps the id of each item to its place; false when one has none or
// two have the same.
func identities(list *node) (map[string]int, bool) {
	ids := map[string]int{}
	for i, v := range list.values {
		id := identity(v)
		if _, twice := ids[id]; twice || id == "" {
			return nil, false
		}
		ids[id] = i
	}
	return ids, len(ids) > 0
}

func identity(n *node) string {
	for _, key := range []string{"id", "ticket", "joint", "remedy"} {
		if v := n.member(key); v != nil && v.kind == 's' && v.text != "" {
			return key + ":" + v.text
		}
	}
	return ""
}

// same reports whether two plain values mean the same.
func same(a, b *node) bool {
	if a.kind != b.kind {
		return empty(a) && empty(b)
	}
	switch a.kind {
	case 'n':
		if a.text == b.text {
			return true
		}
		x, err1 := strconv.ParseFloat(a.text, 64)
		y, err2 := strconv.ParseFloat(b.text, 64)
		_, whole := strconv.ParseUint(b.text, 10, 64)
		_, wholeA := strconv.ParseUint(a.text, 10, 64)
		return err1 == nil && err2 == nil && x == y && !(whole == nil && wholeA == nil)
	case 's':
		if a.text == b.text {
			return true
		}
		s, err1 := time.Parse(time.RFC3339, a.text)
		t, err2 := time.Parse(time.RFC3339, b.text)
		return err1 == nil && err2 == nil && s.Equal(t)
	case 'o', 'a':
		return len(a.values) == 0 && len(b.values) == 0
	}
	return true
}

// noTime is how a time that was never set is written.
const noTime = "0001-01-01T00:00:00Z"

// empty reports whether a value says nothing more than its absence does.
func empty(n *node) bool {
	switch n.kind {
	case 'z', 'f':
		return true
	case 's':
		return n.text == "" || n.text == noTime
	case 'n':
		v, err := strconv.ParseFloat(n.text, 64)
		return err == nil && v == 0
	case 'a':
		return len(n.values) == 0
	case 'o':
		for _, v := range n.values {
			if !empty(v) {
				return false
			}
		}
	}
	return n.kind == 'o'
}
