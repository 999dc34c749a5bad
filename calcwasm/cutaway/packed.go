package cutaway

import (
	"errors"
	"math"
	"strconv"
)

// Outlines go to the page as whole numbers of a two-thousandth of their unit
// (what is rounded off is at most .15 px on the largest sheet), each pair as the
// step from the pair before it, control points included. That is half of what
// the written form weighs when it is compressed. h and v are
// level and upright lines, z closes; a space stands only where no sign parts two
// numbers.

const packUnit = 2e3

// PackPath turns the data of an outline into the packed form that Load reads.
func PackPath(d string) (string, error) {
	segs, err := parsePath(d)
	if err != nil {
		return "", err
	}
	var out []byte
	x, y := 0, 0
	for _, s := range segs {
		n := pairs(s.op)
		if n == 0 {
			out = append(out, 'z')
			continue
		}
		var v []int
		for k := range n {
			nx, ny := int(math.Round(s.p[2*k]*packUnit)), int(math.Round(s.p[2*k+1]*packUnit))
			v = append(v, nx-x, ny-y)
			x, y = nx, ny
		}
		switch {
		case s.op == 'L' && v[0] == 0:
			out = strconv.AppendInt(append(out, 'v'), int64(v[1]), 10)
		case s.op == 'L' && v[1] == 0:
			out = strconv.AppendInt(append(out, 'h'), int64(v[0]), 10)
		default:
			out = append(out, s.op+'a'-'A')
			for k, n := range v {
				if k > 0 && n >= 0 {
					out = append(out, ' ')
				}
				out = strconv.AppendInt(out, int64(n), 10)
			}
		}
	}
	return string(out), nil
}

// pairs of numbers that a step has.
func pairs(op byte) int {
	switch op {
	case 'C':
		return 3
	case 'Z':
		return 0
	}
	return 1
}

func unpackPath(d string) ([]seg, error) {
	var out []seg
	x, y := 0, 0
	for i := 0; i < len(d); {
		op := d[i]
		i++
		step := func() (n int) { n, i = whole(d, i); return n }
		switch op {
		case 'z':
			out = append(out, seg{op: 'Z'})
			continue
		case 'h':
			x += step()
		case 'v':
			y += step()
		case 'm', 'l', 'c':
			s := seg{op: op - 'a' + 'A'}
			for k := range pairs(s.op) {
				x += step()
				y += step()
				s.p[2*k], s.p[2*k+1] = float64(x)/packUnit, float64(y)/packUnit
			}
			out = append(out, s)
			continue
		default:
			return nil, errors.New("a packed outline has no step " + strconv.Quote(string(op)))
		}
		out = append(out, seg{op: 'L', p: [6]float64{float64(x) / packUnit, float64(y) / packUnit}})
	}
	if len(out) < 2 || out[0].op != 'M' {
		return nil, errors.New("a packed outline has two points at least and begins with m")
	}
	return out, nil
}

// whole reads a whole number and the space before it.
func whole(d string, i int) (n, next int) {
	if i < len(d) && d[i] == ' ' {
		i++
	}
	minus := i < len(d) && d[i] == '-'
	if minus {
		i++
	}
	for i < len(d) && d[i] >= '0' && d[i] <= '9' {
		n = n*10 + int(d[i]-'0')
		i++
	}
	if minus {
		n = -n
	}
	return n, i
}
