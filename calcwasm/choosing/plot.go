package choosing

import (
	"math"
	"strconv"

	"columnbowl/calcwasm/curve"
	"columnbowl/calcwasm/drawing"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
	"columnbowl/calcwasm/unit"
)

// Plot is what a drawing of curves is told.
type Plot struct {
	System                      formula.System
	Prefix                      string
	Narrow                      bool
	Head, Efficiency, Power     string // headings of the panels
	NPSH, SystemName, Available string // of the lines
	Duty, Settles, Title, Motor string
}

// Say gives the words of a plot by their keys.
func Say(words func(key string) string) Plot {
	return Plot{Head: words("picture.curves.head"), Efficiency: words("picture.curves.efficiency"), Power: words("picture.curves.power"),
		NPSH: words("picture.curves.npsh"), SystemName: words("picture.curves.system"), Available: words("picture.curves.available"),
		Duty: words("picture.curves.duty"), Settles: words("picture.curves.settles"), Title: words("picture.curves"), Motor: words("picture.curves.motor")}
}

// samples is how many pieces a curve is drawn with.
const samples = 60

// Axis is the capacity axis of a family: from no flow to the end of its curve at
// the speed it runs at, in SI.
func (c *Candidate) Axis() (most float64) {
	ratio := c.value("speed") / c.Bowl.Value("speed").SI
	if !(ratio > 0) {
		ratio = 1
	}
	return c.Bowl.Points[len(c.Bowl.Points)-1].Capacity.SI * ratio
}

// At is the place of the duty on the axis, from 0 to 1; NaN if there is none.
func (c *Candidate) At() float64 { return c.value("capacity") / c.Axis() }

// Move is the capacity at a place of the axis, written with three digits at most
// in a system of units, as a fact is typed.
func (c *Candidate) Move(share float64, s formula.System) string {
	t, ok := c.Result.Book.Find("capacity")
	if !ok || share != share {
		return ""
	}
	u := c.Result.Book.Terms[t].In(s)
	step := fine(u.FromSI(c.Axis()))
	n := math.Round(u.FromSI(min(max(share, 0), 1)*c.Axis())/step) * step
	n = min(max(n, step), math.Floor(u.FromSI(c.Axis())/step)*step)
	return strconv.FormatFloat(n, 'f', -1, 64) + " " + u.Symbol
}

// fine is a step that divides an axis in about four hundred, so that a step of the slider always moves the point: 1, 2 or 5 times a power of ten.
func fine(most float64) float64 { return round125(most / 400) }

func round125(x float64) float64 {
	if !(x > 0) {
		return 1
	}
	p := math.Pow10(int(math.Floor(math.Log10(x))))
	switch r := x / p; {
	case r <= 1.001:
		return p
	case r <= 2.001:
		return 2 * p
	case r <= 5.001:
		return 5 * p
	}
	return 10 * p
}

// panel is one graph over the common axis of capacity.
type panel struct {
	top, height float64
	most        float64 // SI, at its top
	unit        *unit.Unit
}

// sheetOfCurves is a plot being drawn.
type sheetOfCurves struct {
	*Candidate
	Plot
	scene             *drawing.Scene
	left, width, axis float64
	flow              *unit.Unit
	ratio, trim       float64
}

// Draw lays out the curves of the whole pump: head with the system, efficiency,
// power and NPSH required over one axis of capacity. What is not known is left out.
func (c *Candidate) Draw(p Plot) *drawing.Scene {
	book := c.Result.Book
	capacity, ok := book.Find("capacity")
	if !ok {
		return &drawing.Scene{Prefix: p.Prefix, Class: "fig", Box: drawing.Box{W: 1, H: 1}}
	}
	d := &sheetOfCurves{Candidate: c, Plot: p, left: 58, width: 560, axis: c.Axis(), flow: book.Terms[capacity].In(p.System)}
	d.ratio, d.trim = c.Axis()/c.Bowl.Points[len(c.Bowl.Points)-1].Capacity.SI, c.value("trim-ratio")
	if d.trim != d.trim {
		d.trim = 1
	}
	full := 690.0
	if p.Narrow {
		d.width, full = 270, 340
	}
	title := p.Title + ": " + c.Bowl.Name
	d.scene = &drawing.Scene{Prefix: p.Prefix, Class: "fig", Title: title, Desc: c.described(p.System), Width: full}
	top := d.heading(full)
	d.scene.Box = drawing.Box{Y: -top, W: full, H: 640 + top}
	d.head(panel{top: 26, height: 230, unit: d.unitOf("total-head")})
	d.single(panel{top: 288, height: 90, unit: d.unitOf("bowl-efficiency"), most: 1}, p.Efficiency, 2, nil)
	d.power(panel{top: 410, height: 90, unit: d.unitOf("brake-power")})
	d.npsh(panel{top: 532, height: 70, unit: d.unitOf("npsh-required")})
	d.flowAxis(602)
	d.handle()
	return d.scene
}

// heading writes whose curves these are over them, on as many lines as it needs,
// and tells how high it is.
func (d *sheetOfCurves) heading(full float64) (height float64) {
	const line, foot, spare = 18.0, 6.0, .9 // spare: some faces run wider than is reckoned
	x := d.left
	if d.Narrow {
		x = 0
	}
	room := (full - x) * spare
	words := drawing.Wrap(d.Bowl.Name, "b", room)
	if d.Bowl.Origin == reckon.Invented {
		whole := drawing.Wrap(d.Bowl.Name+". "+reckon.Demonstration, "b", room)
		if len(whole) > 1 { // the sentence begins a line of its own
			whole = append(words, drawing.Wrap(reckon.Demonstration, "b", room)...)
		}
		words = whole
	}
	for i, w := range words {
		d.scene.Add(drawing.Text{X: x, Y: -foot - line*float64(len(words)-1-i), Words: w, Class: "b"})
	}
	return foot + line*float64(len(words))
}

func (c *Candidate) described(s formula.System) string {
	text := ""
	for _, id := range []string{"capacity", "total-head", "stages", "bowl-efficiency", "brake-power", "largest-power", "npsh-required", "operating-capacity"} {
		if v := c.Text(id, s); v != "" {
			t := &c.Result.Book.Terms[c.at(id)]
			if text != "" {
				text += ", "
			}
			text += t.Name + " " + v
		}
	}
	return text
}

func (d *sheetOfCurves) unitOf(id string) *unit.Unit {
	t, ok := d.Result.Book.Find(id)
	if !ok {
		u, _ := unit.Lookup("1")
		return u
	}
	return d.Result.Book.Terms[t].In(d.System)
}

func (d *sheetOfCurves) x(flow float64) float64 { return d.left + d.width*flow/d.axis }

func (p *panel) y(v float64) float64 { return p.top + p.height*(1-v/p.most) }

// line is one column of the points, smooth as the network reads it; nil if it has
// too few points.
func (d *sheetOfCurves) line(column int) *curve.Curve {
	var points []curve.Point
	for i := range d.Bowl.Points {
		p := &d.Bowl.Points[i]
		f := [...]*reckon.Figure{&p.Capacity, &p.Head, &p.Efficiency, &p.NPSHRequired}[column]
		if f.Known() {
			points = append(points, curve.Point{X: p.Capacity.SI, Y: f.SI})
		}
	}
	if len(points) < 2 {
		return nil
	}
	c, err := curve.New(points)
	if err != nil {
		return nil
	}
	return c
}

// trace draws a function of the capacity; where it is NaN the pen is lifted.
func (d *sheetOfCurves) trace(p *panel, class string, weight float64, f func(flow float64) float64) {
	path, down := drawing.NewPath(class).Weight(weight), false
	for i := range samples + 1 {
		q := d.axis * float64(i) / samples
		y := f(q)
		if y != y || y < 0 || y > p.most*1.0001 {
			down = false
			continue
		}
		if down {
			path.L(d.x(q), p.y(y))
		} else {
			path.M(d.x(q), p.y(y))
		}
		down = true
	}
	d.scene.Add(path)
}

// frame draws a panel with its ticks and its heading.
func (d *sheetOfCurves) frame(p *panel, heading string) {
	s := d.scene
	name := heading
	if p.unit.Print != "" {
		name += ", " + p.unit.Print
	}
	s.Add(drawing.Text{X: d.left, Y: p.top - 7, Words: name, Class: "b"})
	most := p.unit.FromSI(p.most)
	step := round125(most / 4)
	for n := 0.0; n <= most*1.0001; n += step {
		y := p.y(p.unit.ToSI(n))
		s.Add(drawing.Line{X1: d.left, Y1: y, X2: d.left + d.width, Y2: y, Class: "dim"},
			drawing.Text{X: d.left - 6, Y: y + 5, Words: unit.Format(p.unit.ToSI(n), p.unit), Class: "f e"})
	}
	s.Add(drawing.NewPath("out").M(d.left, p.top).V(p.top + p.height).H(d.left + d.width))
}

func (d *sheetOfCurves) flowAxis(y float64) {
	most := d.flow.FromSI(d.axis)
	parts := 6.0
	if d.Narrow {
		parts = 3
	}
	step := round125(most / parts)
	for n := 0.0; n <= most; n += step {
		x := d.x(d.flow.ToSI(n))
		d.scene.Add(drawing.Line{X1: x, Y1: y, X2: x, Y2: y + 5, Class: "out"}, drawing.Text{X: x, Y: y + 20, Words: unit.Format(d.flow.ToSI(n), d.flow), Class: "f m"})
	}
	d.scene.Add(drawing.Text{X: d.left + d.width, Y: y + 36, Words: d.Result.Book.Terms[d.at("capacity")].Title + ", " + d.flow.Print, Class: "b e"})
}

// stageHead is the head of one stage at a flow, carried to speed and trim.
func (d *sheetOfCurves) stageHead(line *curve.Curve) func(float64) float64 {
	k := d.ratio * d.trim
	return func(flow float64) float64 {
		h, _ := line.At(flow / k)
		return h * k * k
	}
}

func (d *sheetOfCurves) head(p panel) {
	line, stages := d.line(1), d.value("stages")
	if line == nil || stages != stages {
		return
	}
	stage := d.stageHead(line)
	pump := func(q float64) float64 { return stages * stage(q) }
	p.most = max(pump(0), d.value("total-head")) * 1.08
	if p.most != p.most {
		p.most = max(stages*stage(d.Bowl.Points[0].Capacity.SI*d.ratio*d.trim), d.value("total-head")) * 1.08
	}
	d.frame(&p, d.Head)
	d.trace(&p, "s-turn", 2.4, pump)
	static, down, rub, at := d.value("static-head"), d.value("system-drawdown"), d.value("system-friction"), d.value("capacity")
	if system := (static + down + rub); system == system {
		f := func(q float64) float64 { return static + down*q/at + rub*(q/at)*(q/at) }
		d.trace(&p, "s-water", 2.4, f)
		d.scene.Add(drawing.Text{X: d.left + 8, Y: p.y(max(f(0), 0)) - 8, Words: d.SystemName, Class: "c-water ha"})
	}
	if q, h := d.value("operating-capacity"), d.value("operating-head"); q <= d.axis && h > 0 && math.Abs(q/at-1) > 0.005 {
		d.scene.Add(drawing.Circle{X: d.x(q), Y: p.y(h), R: 5, Class: "out"}, drawing.Text{X: d.x(q) - 8, Y: p.y(h) + 20, Words: d.Settles, Class: "f e ha"})
	}
	if h := d.value("total-head"); at <= d.axis && h == h {
		d.scene.Add(drawing.Circle{X: d.x(at), Y: p.y(h), R: 6, Class: "ink"}, drawing.Text{X: d.x(at) - 8, Y: p.y(h) - 12, Words: d.Duty, Class: "b e ha"})
	}
}

// single is a panel with one column of the points.
func (d *sheetOfCurves) single(p panel, heading string, column int, scale func(float64) float64) {
	line := d.line(column)
	if line == nil {
		return
	}
	f := func(q float64) float64 {
		v, _ := line.At(q / d.ratio)
		if scale != nil {
			v = scale(v)
		}
		return v
	}
	d.frame(&p, heading)
	d.trace(&p, "s-turn", 2.4, f)
	d.mark(&p, f)
}

func (d *sheetOfCurves) mark(p *panel, f func(float64) float64) {
	if at := d.value("capacity"); at <= d.axis && f(at) == f(at) && f(at) <= p.most {
		d.scene.Add(drawing.Circle{X: d.x(at), Y: p.y(f(at)), R: 4, Class: "ink"})
	}
}

// power is what the pump takes at every flow: water power over the efficiency,
// and the losses of shaft and thrust bearing where these are known. Where no
// water flows the efficiency is nothing and the quotient has no value: the line
// begins beyond.
func (d *sheetOfCurves) power(p panel) {
	heads, effs, stages := d.line(1), d.line(2), d.value("stages")
	if heads == nil || effs == nil || stages != stages {
		return
	}
	stage, losses := d.stageHead(heads), 0.0
	if d.known("shaft-loss") && d.known("thrust-bearing-loss") {
		losses = d.value("shaft-loss") + d.value("thrust-bearing-loss")
	}
	gravity := d.value("specific-gravity")
	f := func(q float64) float64 {
		e, _ := effs.At(q / d.ratio)
		if e < 0.05 {
			return nan
		}
		return stages*stage(q)*q*weight*gravity/e + losses
	}
	motor := d.value("motor-rating")
	p.most = max(d.value("largest-power"), d.value("brake-power"))
	if motor == motor {
		p.most = max(p.most, motor)
	}
	if p.most *= 1.15; p.most != p.most {
		return
	}
	d.frame(&p, d.Power)
	if motor == motor {
		d.scene.Add(drawing.Line{X1: d.left, Y1: p.y(motor), X2: d.left + d.width, Y2: p.y(motor), Class: "hid"},
			drawing.Text{X: d.left + 8, Y: p.y(motor) + 17, Words: d.Motor + " " + d.Text("motor-rating", d.System), Class: "f ha"})
	}
	d.trace(&p, "s-turn", 2.4, f)
	d.mark(&p, f)
}

func (d *sheetOfCurves) npsh(p panel) {
	line := d.line(3)
	if line == nil {
		return
	}
	last := d.Bowl.Points[len(d.Bowl.Points)-1].NPSHRequired.SI * d.ratio * d.ratio
	have := d.value("npsh-available")
	p.most = last * 1.15
	if have > 0 && have < 3*last {
		p.most = max(p.most, have*1.15)
	}
	d.single(p, d.NPSH, 3, func(v float64) float64 { return v * d.ratio * d.ratio })
	if have > 0 && have <= p.most {
		d.scene.Add(drawing.Line{X1: d.left, Y1: p.y(have), X2: d.left + d.width, Y2: p.y(have), Class: "s-water", Stroke: 2},
			drawing.Text{X: d.left + 8, Y: p.y(have) + 17, Words: d.Available, Class: "c-water ha"})
	}
}

// handle is the line through all panels that the page lets a reader draw along.
func (d *sheetOfCurves) handle() {
	at := d.value("capacity")
	if !(at > 0 && at <= d.axis) {
		return
	}
	g := drawing.Group{ID: "point", Attrs: [][2]string{{"data-left", strconv.FormatFloat(d.left/d.scene.Box.W, 'f', 4, 64)},
		{"data-right", strconv.FormatFloat((d.left+d.width)/d.scene.Box.W, 'f', 4, 64)}}}
	g.Add(drawing.Line{X1: d.x(at), Y1: 26, X2: d.x(at), Y2: 602, Class: "thin"})
	d.scene.Add(g)
}
