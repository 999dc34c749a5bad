package cutaway

// bowlSheet: the bowl assembly with two stages; the ones between lie behind a
// break.
func (c *canvas) bowlSheet() {
	c.words = append(c.words, "bowl-sheet")
	drawn := min(c.pump.Stages, 2)
	sub := holds("submersible", c.words)
	wide, below := 1.16, suctionEnd-.08
	if holds("strainer", c.words) && !sub {
		below = 1.36
	}
	if sub {
		wide, below = 1.22, 1.70
	}
	k := c.fitScale(wide, 350)
	top := c.margin + 14
	oy := top + (float64(drawn)*pitch+outletTop-.03)*k
	c.stack(c.axis, oy, k, drawn)
	end := oy + below*k
	if !sub && holds("strainer", c.words) {
		c.strainer(c.axis, oy, k)
	}
	c.h = end + c.margin + 6
	half := .60 * k
	c.centre(c.axis, top-10, end)
	c.tear(c.axis-half, c.axis+half, top, 2*k, true)
	if sub || holds("tailpipe", c.words) {
		c.tear(c.axis-half, c.axis+half, end-6, 2*k, false)
	}
	if n := c.pump.Stages - drawn; n > 0 {
		c.stagesBand(c.axis-half, c.axis+half, oy-.50*k, n)
	}
}

// stageSheet: one stage, large, with the eye of the next above it.
func (c *canvas) stageSheet() {
	k := c.fitScale(1.06, 600)
	top := c.margin + 10
	oy := top + 1.06*k
	radial := c.bowlScale()
	var wall []point
	for i := -1; i < 2; i++ {
		p := &place{ox: c.axis, oy: oy - float64(i)*pitch*k, k: k, radial: radial}
		c.put("stage", p, i, i == 0, i == 0)
		wall = append(wall, c.wall("stage", p)...)
	}
	c.words = append(c.words, "stage-sheet")
	c.one("shaft", &place{ox: c.axis, oy: oy, k: k, radial: radial})
	c.water(c.axis, wall)
	end := oy + .20*k
	c.h = end + c.margin + 8
	c.centre(c.axis, top-6, end+6)
	half := .53 * k
	c.tear(c.axis-half, c.axis+half, top, 2*k, true)
	c.tear(c.axis-half, c.axis+half, end, 2*k, false)
}

// columnSheet: a joint of the column, and the cut across it.
func (c *canvas) columnSheet() {
	left, right := .72, .72
	sub := holds("submersible", c.words)
	if sub {
		left = .82
	}
	k := c.fitScale(left+right, 400)
	ox := c.axis + (left-right)/2*k
	top := c.margin + 12
	oy := top + 1.12*k
	c.one("column", &place{ox: ox, oy: oy, k: k, radial: c.columnScale()})
	end := oy + 1.12*k
	c.centre(ox, top-8, end+8)
	c.tear(ox-left*k, ox+right*k, top, k, true)
	c.tear(ox-left*k, ox+right*k, end, .12*k, false)
	c.h = end + c.margin + 10
	if sub {
		return
	}
	kp := min(.62*k, 190)
	py := end + .14*k + 10 + .66*kp
	c.one("plan", &place{ox: ox, oy: py, k: kp, plan: true, radial: c.columnScale()})
	c.centre(ox, py-.66*kp, py+.66*kp)
	c.level(ox-.68*kp, ox+.68*kp, py)
	c.h = py + .66*kp + c.margin
}

// headSheet: the discharge head with the driver on it.
func (c *canvas) headSheet() {
	left, right := 1.36, 1.52
	switch {
	case holds("oil-lubricated", c.words):
		left = 1.46
	case holds("!submersible gear", c.words):
		right = 1.68
	}
	c.words = append(c.words, "no-well")
	k := c.fitScale(left+right, 215)
	ox := c.axis + (left-right)/2*k
	high := 2.97 + c.driverHeight() + .12
	if holds("submersible", c.words) {
		high = c.plateHeight()
	}
	top := c.margin + 6
	oy := top + high*k
	c.smallBelow(k, 150)
	c.head(ox, oy, k)
	end := oy + .86*k
	c.tear(ox-.78*k, ox+.78*k, end-8, .12*k, false)
	c.centre(ox, top, end)
	c.h = end + c.margin + 8
}

// smallBelow takes finer lines and closer hatches where a drawing is small.
func (c *canvas) smallBelow(k, limit float64) {
	if k < limit {
		c.fine = .62
	}
}

func (c *canvas) head(ox, oy, k float64) {
	p := &place{ox: ox, oy: oy, k: k, radial: c.columnScale()}
	c.one("driver", &place{ox: ox, oy: oy - 2.97*k, k: k})
	c.one("head", p)
}

// driverHeight is how far the driver stands above its foot, in column diameters.
func (c *canvas) driverHeight() float64 {
	switch {
	case holds("submersible", c.words):
		return 0
	case holds("gear", c.words):
		return 2.13
	case holds("solid-shaft", c.words):
		return 2.92
	}
	return 3.27
}

// plateHeight is how far the head of a submersible stands above its base.
func (c *canvas) plateHeight() float64 {
	if holds("pitless", c.words) {
		return .92
	}
	return 1.66
}

// motorSheet: the driver alone, or the submersible motor.
func (c *canvas) motorSheet() {
	if holds("submersible", c.words) {
		k := c.fitScale(1.0, 400)
		c.h = c.margin*2 + 3.2*k
		c.one("submotor", &place{ox: c.axis, oy: c.margin + 3.12*k, k: k})
		c.centre(c.axis, c.margin, c.h-c.margin)
		return
	}
	left, right := 1.0, 1.0
	if holds("gear", c.words) {
		right = 1.66
	}
	k := c.fitScale(left+right, 330)
	ox := c.axis + (left-right)/2*k
	top := c.margin + 8
	oy := top + (c.driverHeight()+.08)*k
	c.one("driver", &place{ox: ox, oy: oy, k: k})
	c.words = append(c.words, "motor-sheet")
	c.one("foot", &place{ox: ox, oy: oy + 2.97*k, k: k, radial: c.columnScale()})
	end := oy + .80*k
	c.h = end + c.margin
	c.centre(ox, top-6, end)
	c.tear(ox-.95*k, ox+.95*k, end-10, k, false)
}

// closureSheet: where the shaft leaves the water, large.
func (c *canvas) closureSheet(from, to, right float64) {
	c.words = append(c.words, "detail")
	left := .46
	k := c.fitScale(left+right, 480)
	ox := c.axis + (left-right)/2*k
	top := c.margin + 10
	oy := top + to*k
	p := &place{ox: ox, oy: oy, k: k, radial: c.columnScale()}
	c.one("neck", p)
	c.one("head", p)
	end := oy - from*k
	c.h = end + c.margin + 8
	c.centre(ox, top-8, end+6)
	c.tear(ox-.44*k, ox+.44*k, end, 2*k, false)
	c.tear(ox-.13*k, ox+.13*k, top+4, k, true)
}

// motorsSheet: the two kinds of submersible motor side by side.
func (c *canvas) motorsSheet() {
	base := c.words
	half := c.w / 2
	free := half - c.margin - c.side - 30
	if c.numbered() {
		free = half - 2*balloonR - c.margin - 18
	}
	k := min(free/.92, 400)
	c.h = c.margin*2 + 3.2*k
	for i, kind := range [2]string{"sealed", "water-filled"} {
		c.block = i
		c.words = nil
		for _, w := range base {
			if w != "sealed" && w != "water-filled" {
				c.words = append(c.words, w)
			}
		}
		c.words = append(c.words, kind, "pair")
		x0 := float64(i) * half
		ox := x0 + c.margin + .44*k
		if c.side > 0 {
			ox = x0 + (half-c.side-24)/2
		}
		c.one("submotor", &place{ox: ox, oy: c.margin + 3.12*k, k: k})
		c.centre(ox, c.margin, c.h-c.margin)
		c.cols = append(c.cols, c.pair(i, x0, x0+half)...)
	}
}

// lineSheet: the discharge line, along its axis.
func (c *canvas) lineSheet() {
	c.lies = true
	left, right := .32, 4.85
	k := c.fitScale(left+right, 150)
	oy := c.margin + max(1.05*k, 60)
	if c.numbered() {
		k = min(150, (c.w-2*c.margin)/(left+right))
		oy = c.margin + 2*balloonR + 26 + 1.0*k
	}
	ox := c.axis + (left-right)/2*k
	c.smallBelow(k, 100)
	c.one("line", &place{ox: ox, oy: oy, k: k})
	c.h = oy + max(.80*k, 50) + c.margin
	c.tearSide(ox-.26*k, oy-.72*k, oy+.72*k, -k)
	c.tearSide(ox+4.80*k, oy-.52*k, oy+.52*k, k)
	c.level(ox-left*k, ox+right*k, oy)
}

// powerSheet: the panel beside the well, and the well open as far down as the
// electrodes hang.
func (c *canvas) powerSheet() {
	left, right := 2.62, 1.32
	k := c.fitScale(left+right, 175)
	ox := c.axis + (left-right)/2*k
	oy := c.margin + 2.1*k
	c.smallBelow(k, 150)
	c.one("power", &place{ox: ox, oy: oy, k: k})
	end := oy + 3*k
	c.h = end + c.margin + 6
	c.centre(ox, oy-1.1*k, end)
	c.tear(ox-.4*k, ox+.4*k, oy-1.0*k, k, true)
	c.window = nil // the panel stands beside this tear, not behind it
	c.tear(ox-.9*k, ox+.9*k, end-4, .2*k, false)
}
