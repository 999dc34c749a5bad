package onefile

import "encoding/binary"

// The pages in the store repeat each other, and the plain forms of them that
// stand in the document already, over distances that gzip does not see. So what
// stands somewhere before is told by its place, and only the rest is packed.
//
// An echo is: the number of bytes of the steps; the steps; the bytes that are
// new. A step is three numbers: how many new bytes come, how many are copied
// then, and from where, counted from the end of the copy before. Numbers are
// varints, the last one with its sign.
const (
	echoWindow = 16 // bytes that must agree before a place is looked at
	echoStep   = 8  // every how many bytes a place is noted
	echoLeast  = 24 // bytes that are worth a step
	echoBits   = 20 // of the table of places
)

// echo writes text by what is known before it.
func echo(known, text []byte) []byte {
	e := echoer{all: append(append(make([]byte, 0, len(known)+len(text)), known...), text...), from: len(known)}
	for at := range e.places {
		e.places[at] = -1
	}
	e.note(len(known))
	start, at := len(known), len(known)
	for at+echoWindow <= len(e.all) {
		e.note(at)
		place, begin, length := e.match(start, at)
		if length < echoLeast {
			at++
			continue
		}
		e.step(start, begin, length, place)
		at = begin + length
		start = at
	}
	if start < len(e.all) {
		e.step(start, len(e.all), 0, e.last)
	}
	out := binary.AppendUvarint(nil, uint64(len(e.steps)))
	return append(append(out, e.steps...), e.fresh...)
}

type echoer struct {
	all          []byte
	from         int // where the text begins
	noted        int // places before this one are in the table
	places       [1 << echoBits]int32
	last         int // the end of the copy before, at its source
	steps, fresh []byte
}

func (e *echoer) key(at int) uint32 {
	a, b := binary.LittleEndian.Uint64(e.all[at:]), binary.LittleEndian.Uint64(e.all[at+8:])
	return uint32((a*0x9e3779b97f4a7c15 ^ b*0xc2b2ae3d27d4eb4f) >> (64 - echoBits))
}

// note puts the places before one into the table.
func (e *echoer) note(before int) {
	for ; e.noted+echoWindow <= before; e.noted += echoStep {
		e.places[e.key(e.noted)] = int32(e.noted)
	}
}

// match finds where the bytes round a place stood before: the place, where the
// agreement begins in the text, not before start, and how long it is.
func (e *echoer) match(start, at int) (place, begin, length int) {
	p := int(e.places[e.key(at)])
	if p < 0 {
		return 0, 0, 0
	}
	n := 0
	for at+n < len(e.all) && e.all[p+n] == e.all[at+n] && p+n < at {
		n++
	}
	if n < echoWindow {
		return 0, 0, 0
	}
	back := 0
	for p-back > 0 && at-back > start && e.all[p-back-1] == e.all[at-back-1] {
		back++
	}
	// what is copied must stand whole before the place it goes to
	n = min(n, at-back-p)
	return p - back, at - back, n + back
}

// step tells that the bytes from start to begin are new, and the next ones stood
// at a place before.
func (e *echoer) step(start, begin, length, place int) {
	e.fresh = append(e.fresh, e.all[start:begin]...)
	e.steps = binary.AppendUvarint(e.steps, uint64(begin-start))
	e.steps = binary.AppendUvarint(e.steps, uint64(length))
	e.steps = binary.AppendVarint(e.steps, int64(place-e.last))
	e.last = place + length
}

// unecho reads what echo wrote; the scripts do the same.
func unecho(known, data []byte) []byte {
	out := append([]byte(nil), known...)
	size, n := binary.Uvarint(data)
	steps, fresh := data[n:n+int(size)], data[n+int(size):]
	last := 0
	for len(steps) > 0 {
		news, a := binary.Uvarint(steps)
		length, b := binary.Uvarint(steps[a:])
		from, c := binary.Varint(steps[a+b:])
		steps = steps[a+b+c:]
		out = append(out, fresh[:news]...)
		fresh = fresh[news:]
		place := last + int(from)
		out = append(out, out[place:place+int(length)]...)
		last = place + int(length)
	}
	return out[len(known):]
}
