package sparse

// entry is a block of the matrix that enters a front, places in nodes of the front.
type entry struct {
	slot     int32 // ^slot if transposed
	row, col int32
}

// mapBlocks finds where each block of the matrix goes.
func (s *Symbolic) mapBlocks() {
	p := s.Pattern
	owner := make([]int32, len(s.order))
	for f := range s.rows {
		for k := s.first[f]; k < s.first[f+1]; k++ {
			owner[k] = int32(f)
		}
	}
	s.entryAt = make([]int32, len(s.rows)+2)
	for j := range p.Nodes {
		for _, i := range p.Row[p.Start[j]:p.Start[j+1]] {
			s.entryAt[owner[min(s.inverse[i], s.inverse[j])]+2]++
		}
	}
	for f := range s.rows {
		s.entryAt[f+2] += s.entryAt[f+1]
	}
	s.entry = make([]entry, len(p.Row))
	for j := range p.Nodes {
		for slot := p.Start[j]; slot < p.Start[j+1]; slot++ {
			row, col := s.inverse[p.Row[slot]], s.inverse[j]
			e := entry{slot: slot, row: row, col: col}
			if row < col {
				e = entry{slot: ^slot, row: col, col: row}
			}
			at := &s.entryAt[owner[e.col]+1]
			s.entry[*at] = e
			*at++
		}
	}
	s.entryAt = s.entryAt[:len(s.rows)+1]
	s.placeEntries()
}

// placeEntries turns rows and columns of the entries into places in their fronts.
func (s *Symbolic) placeEntries() {
	place := make([]int32, len(s.order))
	for f := range s.rows {
		first, end := s.first[f], s.first[f+1]
		for k := first; k < end; k++ {
			place[k] = k - first
		}
		for k, i := range s.rows[f] {
			place[i] = end - first + int32(k)
		}
		entries := s.entry[s.entryAt[f]:s.entryAt[f+1]]
		for k := range entries {
			entries[k].row, entries[k].col = place[entries[k].row], place[entries[k].col]
		}
	}
}
