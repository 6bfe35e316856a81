package sparse

// scaleFine multiplies by Lᵀ from the left for the scale L of the level above.
func (t *transfer) scaleFine(l *level) {
	b, m := t.fine, t.coarse
	var lower [64]float64
	for i := range len(t.start) - 1 {
		invertLower(lower[:], l.scale[i*b*b:(i+1)*b*b], b)
		for k := t.start[i]; k < t.start[i+1]; k++ {
			v := t.value[int(k)*b*m : int(k+1)*b*m]
			for r := range b { // from the top, so that rows below are still old
				for c := range m {
					sum := 0.0
					for p := r; p < b; p++ {
						sum += lower[p*b+r] * float64(v[p*m+c])
					}
					v[r*m+c] = float32(sum)
				}
			}
		}
	}
}

// scaleCoarse multiplies by L⁻ᵀ from the right for the scale L of the level below.
func (t *transfer) scaleCoarse(l *level) {
	m := t.coarse
	for k, g := range t.node {
		s := l.scale[int(g)*m*m : int(g+1)*m*m]
		for r := range t.fine {
			row := t.value[(k*t.fine+r)*m : (k*t.fine+r+1)*m]
			for c := m - 1; c >= 0; c-- { // from the end, so that row is still old
				sum := 0.0
				for p := range c + 1 {
					sum += s[c*m+p] * float64(row[p])
				}
				row[c] = float32(sum)
			}
		}
	}
}

// invertLower sets to to the inverse of a small lower triangle.
func invertLower(to, l []float64, b int) {
	for c := range b {
		to[c*b+c] = 1 / l[c*b+c]
		for i := c + 1; i < b; i++ {
			s := 0.0
			for k := c; k < i; k++ {
				s -= l[i*b+k] * to[k*b+c]
			}
			to[i*b+c] = s / l[i*b+i]
		}
	}
}

// down sets coarse to the transposed times fine.
func (t *transfer) down(coarse, fine []float32) {
	clear(coarse)
	if t.fine == 2 && t.coarse == 3 {
		t.down23(coarse, fine)
		return
	}
	b, m := t.fine, t.coarse
	for i := range len(t.start) - 1 {
		for k := t.start[i]; k < t.start[i+1]; k++ {
			to := coarse[int(t.node[k])*m:][:m]
			v := t.value[int(k)*b*m : int(k+1)*b*m]
			for r := range b {
				x := fine[i*b+r]
				for c := range to {
					to[c] += v[r*m+c] * x
				}
			}
		}
	}
}

// down23 is down from a sheet.
func (t *transfer) down23(coarse, fine []float32) {
	for i := range len(t.start) - 1 {
		x0, x1 := fine[2*i], fine[2*i+1]
		for k := t.start[i]; k < t.start[i+1]; k++ {
			to := coarse[3*t.node[k]:][:3]
			v := t.value[6*int(k):][:6]
			to[0] += v[0]*x0 + v[3]*x1
			to[1] += v[1]*x0 + v[4]*x1
			to[2] += v[2]*x0 + v[5]*x1
		}
	}
}

// addUp adds coarse carried to the fine level.
func (t *transfer) addUp(fine, coarse []float32) {
	if t.fine == 2 && t.coarse == 3 {
		t.addUp23(fine, coarse)
		return
	}
	b, m := t.fine, t.coarse
	for i := range len(t.start) - 1 {
		for k := t.start[i]; k < t.start[i+1]; k++ {
			from := coarse[int(t.node[k])*m:][:m]
			v := t.value[int(k)*b*m : int(k+1)*b*m]
			for r := range b {
				sum := float32(0)
				for c, x := range from {
					sum += v[r*m+c] * x
				}
				fine[i*b+r] += sum
			}
		}
	}
}

// addUp23 is addUp to a sheet.
func (t *transfer) addUp23(fine, coarse []float32) {
	for i := range len(t.start) - 1 {
		y0, y1 := fine[2*i], fine[2*i+1]
		for k := t.start[i]; k < t.start[i+1]; k++ {
			x := coarse[3*t.node[k]:][:3]
			v := t.value[6*int(k):][:6]
			y0 += v[0]*x[0] + v[1]*x[1] + v[2]*x[2]
			y1 += v[3]*x[0] + v[4]*x[1] + v[5]*x[2]
		}
		fine[2*i], fine[2*i+1] = y0, y1
	}
}
