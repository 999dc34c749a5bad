package bindery

import (
	"math"
	"strconv"
	"strings"
)

// ShortPath writes the way of a pen with fewer signs: every point counted from
// the one before, to a tenth of a pixel. What it does not understand stays as it
// is. The points do not drift: each is rounded where it lies.
func ShortPath(d string) string {
	p := pen{}
	for at := 0; at < len(d); {
		c := d[at]
		n, known := arguments[c|0x20]
		if !known {
			return d
		}
		at++
		first := true
		for first || at < len(d) && numberStarts(d[at:]) {
			first = false
			var v [7]float64
			for i := range n {
				value, size := number(d[at:])
				if size == 0 {
					return d
				}
				v[i] = value
				at += size
			}
			p.draw(c, v[:n])
			if c == 'M' {
				c = 'L'
			} else if c == 'm' {
				c = 'l'
			}
			if n == 0 {
				break
			}
		}
		for at < len(d) && (d[at] == ' ' || d[at] == ',') {
			at++
		}
	}
	return p.out.String()
}

// arguments of the commands that drawings use.
var arguments = map[byte]int{'m': 2, 'l': 2, 'h': 1, 'v': 1, 'c': 6, 'q': 4, 's': 4, 'a': 7, 'z': 0}

// pen follows a path: where it is exactly, and where the written path is, in
// tenths of a pixel.
type pen struct {
	x, y, startX, startY float64
	at, start            [2]int
	last                 byte
	out                  strings.Builder
}

func (p *pen) draw(c byte, v []float64) {
	relative := c >= 'a'
	lower := c | 0x20
	ox, oy := 0.0, 0.0
	if relative {
		ox, oy = p.x, p.y
	}
	switch lower {
	case 'z':
		p.write('z')
		p.x, p.y, p.at = p.startX, p.startY, p.start
		return
	case 'h':
		p.x = v[0] + ox
		to := tenth(p.x)
		p.write('h', to-p.at[0])
		p.at[0] = to
		return
	case 'v':
		p.y = v[0] + oy
		to := tenth(p.y)
		p.write('v', to-p.at[1])
		p.at[1] = to
		return
	case 'a':
		p.x, p.y = v[5]+ox, v[6]+oy
		to := [2]int{tenth(p.x), tenth(p.y)}
		p.write('a', tenth(v[0]), tenth(v[1]), tenth(v[2]), tenth(v[3]), tenth(v[4]), to[0]-p.at[0], to[1]-p.at[1])
		p.at = to
		return
	}
	var to [2]int
	var list []int
	for i := 0; i < len(v); i += 2 {
		x, y := v[i]+ox, v[i+1]+oy
		to = [2]int{tenth(x), tenth(y)}
		list = append(list, to[0]-p.at[0], to[1]-p.at[1])
		if i == len(v)-2 {
			p.x, p.y = x, y
		}
	}
	p.write(lower, list...)
	p.at = to
	if lower == 'm' {
		p.startX, p.startY, p.start = p.x, p.y, to
	}
}

// write adds a command; its name is left out where it repeats.
func (p *pen) write(c byte, tenths ...int) {
	joined := c == p.last && c != 'm' && c != 'z' || c == 'l' && p.last == 'm'
	if !joined {
		p.out.WriteByte(c)
	}
	p.last = c
	for i, t := range tenths {
		text := decimal(t)
		if (i > 0 || joined) && text[0] != '-' {
			p.out.WriteByte(' ')
		}
		p.out.WriteString(text)
	}
}

func tenth(v float64) int { return int(math.Round(v * 10)) }

// decimal writes tenths: -5 as "-.5".
func decimal(tenths int) string {
	sign := ""
	if tenths < 0 {
		sign, tenths = "-", -tenths
	}
	whole, part := tenths/10, tenths%10
	switch {
	case part == 0:
		return sign + strconv.Itoa(whole)
	case whole == 0:
		return sign + "." + strconv.Itoa(part)
	}
	return sign + strconv.Itoa(whole) + "." + strconv.Itoa(part)
}

// numberStarts says whether a number comes next.
func numberStarts(text string) bool {
	text = strings.TrimLeft(text, " ,")
	return text != "" && (text[0] >= '0' && text[0] <= '9' || text[0] == '-' || text[0] == '.')
}

// number reads a number and how many signs it took, with those before it.
func number(text string) (float64, int) {
	at := len(text) - len(strings.TrimLeft(text, " ,"))
	end, dot := at, false
	for end < len(text) {
		c := text[end]
		if c == '-' && end > at || c == '.' && dot || c != '-' && c != '.' && (c < '0' || c > '9') {
			break
		}
		dot = dot || c == '.'
		end++
	}
	v, err := strconv.ParseFloat(text[at:end], 64)
	if err != nil {
		return 0, 0
	}
	return v, end
}
