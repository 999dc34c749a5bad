package drawing

// Scale ties pictures to one datum and one scale of depth. Depths count
// downwards from the datum (the head base), heights above it are negative. The
// zero Scale lets a picture choose its own.
type Scale struct {
	Datum  float64 // y of the datum, px
	Per    float64 // px per unit of depth
	Height float64 // height of the scenes, px
}

// Y is the place of a depth.
func (c Scale) Y(depth float64) float64 { return c.Datum + depth*c.Per }

func (c Scale) set() bool {
	return finite(c.Datum, c.Per, c.Height) && c.Per > 0 && c.Height > 0
}

// room a picture needs beside what is to scale: motor and labels above the
// datum, the turn of the power flow below the deepest depth.
const (
	roomTop   = 34.0
	roomMotor = 156.0
	roomFoot  = 100.0
)

// ChainScale is the common scale of the three pictures of the chain page: both
// the highest point of the ladder and the bowls find room in height px (680 in
// the wide page). Pictures with nothing known get a nominal scale.
func ChainScale(w WellSection, l Ladder, height float64) Scale {
	if !finite(height) || height < 480 {
		height = 480
	}
	return fitScale(max(l.above(), w.above()), max(l.below(), w.below()), height)
}

// fitScale finds the largest scale at which up units above and down units below
// the datum fit.
func fitScale(up, down, height float64) Scale {
	up, down = max(up, 0), max(down, 0)
	if up+down < tiny {
		up, down = 0, 1
	}
	per := (height - roomTop - roomFoot) / (up + down)
	if up*per+roomTop < roomMotor { // the motor needs more room than the ladder
		per = 0
		if down > tiny {
			per = (height - roomMotor - roomFoot) / down
		}
		if up > tiny && (per == 0 || up*per+roomTop > roomMotor) {
			per = (roomMotor - roomTop) / up
		}
	}
	return Scale{Datum: max(roomMotor, roomTop+up*per), Per: per, Height: height}
}
