package sparse

// A supernode is a run of columns of the factor with the same rows below them,
// eliminated together as one dense front. All counts here are in nodes.

// joinLimits says how much of a front may be zeros when a supernode is joined with
// one of its children, by the columns the two have together. Small fronts cost more
// in bookkeeping than in arithmetic; large ones the other way round. Values found by
// trial on plane meshes.
var joinLimits = []struct {
	columns int
	share   float64
}{
	{4, 0.8},
	{12, 0.35},
	{32, 0.12},
	{1 << 30, 0.04},
}

// superTree is the tree of supernodes, children before parents.
type superTree struct {
	columns [][2]int32 // first and last+1 column of each, before joining
	front   []int32    // nodes in the front: own columns and the rows below
	parent  []int32
	entries []int64 // true entries of the factor
	into    []int32 // supernode each was joined into; itself if none
	size    []int32 // columns after joining
}

// findSupernodes groups columns whose rows are the same.
func findSupernodes(parent, count []int32) *superTree {
	n := len(parent)
	t := &superTree{}
	owner := make([]int32, n)
	for j := 0; j < n; {
		end := j + 1
		for end < n && parent[end-1] == int32(end) && count[end-1] == count[end]+1 {
			end++
		}
		entries := int64(0)
		for k := j; k < end; k++ {
			owner[k] = int32(len(t.columns))
			entries += int64(count[k])
		}
		t.columns = append(t.columns, [2]int32{int32(j), int32(end)})
		t.front = append(t.front, count[j])
		t.size = append(t.size, int32(end-j))
		t.entries = append(t.entries, entries)
		j = end
	}
	t.parent = make([]int32, len(t.columns))
	t.into = make([]int32, len(t.columns))
	for s, c := range t.columns {
		t.parent[s], t.into[s] = -1, int32(s)
		if p := parent[c[1]-1]; p >= 0 {
			t.parent[s] = owner[p]
		}
	}
	return t
}

// join merges children into parents where few zeros are added. Children are tried
// from the last down, the one with the largest front usually.
func (t *superTree) join() {
	children := make([][]int32, len(t.columns))
	for s := range t.columns {
		for k := len(children[s]) - 1; k >= 0; k-- {
			c := children[s][k]
			own, front := t.size[c]+t.size[s], t.size[c]+t.front[s]
			whole := trapezoid(own, front)
			zeros := whole - t.entries[c] - t.entries[s]
			if !joinWorth(int(own), zeros, whole) {
				continue
			}
			t.into[c] = int32(s)
			t.size[s], t.front[s] = own, front
			t.entries[s] += t.entries[c]
		}
		if p := t.parent[s]; p >= 0 {
			children[p] = append(children[p], int32(s))
		}
	}
}

func joinWorth(columns int, zeros, whole int64) bool {
	for _, l := range joinLimits {
		if columns <= l.columns {
			return float64(zeros) <= l.share*float64(whole)
		}
	}
	return false
}

// trapezoid returns the entries of the lower part of a front's own columns.
func trapezoid(columns, front int32) int64 {
	n, f := int64(columns), int64(front)
	return n*f - n*(n-1)/2
}

// final returns the supernode that s ended up in.
func (t *superTree) final(s int32) int32 {
	for t.into[s] != s {
		s = t.into[s]
	}
	return s
}

// joined returns which supernode each ended up in and the parents after joining.
// What was joined hangs below its front, for a traversal in order only.
func (t *superTree) joined() (final, up []int32) {
	final, up = make([]int32, len(t.columns)), make([]int32, len(t.columns))
	for i := range final {
		final[i] = t.final(int32(i))
	}
	for i, p := range t.parent {
		switch {
		case int(final[i]) != i:
			up[i] = final[i]
		case p >= 0:
			up[i] = final[p]
		default:
			up[i] = -1
		}
	}
	return final, up
}
