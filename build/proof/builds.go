package proof

import (
	"fmt"
	"slices"
	"strconv"

	"columnbowl/build/book"
	"columnbowl/calcwasm/assembly"
	"columnbowl/calcwasm/formula"
	"columnbowl/calcwasm/reckon"
)

// inBuild tells an error at a value of a build's file.
func (c *checker) inBuild(b *book.Build, field, message, suggest string) {
	s := b.Where(field)
	c.found.Add(b.File, s.Off, s.Len, message, suggest)
}

// builds follows the names in the files of the builds: each part has a page
// that knows the build, and what it comes with is in the same build.
func (c *checker) builds() {
	parts := keys(c.book.PartByID)
	for _, b := range c.book.Builds {
		var here, groups []string
		for _, g := range b.Groups {
			for _, line := range g.Lines {
				here = append(here, line.Part)
			}
		}
		for g, group := range b.Groups {
			at := "groups." + strconv.Itoa(g)
			if slices.Contains(groups, group.ID) {
				c.inBuild(b, at+".id", "The group “"+group.ID+"” stands here twice.", "")
			}
			groups = append(groups, group.ID)
			for i := range group.Lines {
				c.buildPart(b, at+".parts."+strconv.Itoa(i), &group.Lines[i], parts, here)
			}
		}
	}
}

func (c *checker) buildPart(b *book.Build, at string, line *assembly.LineSource, parts, here []string) {
	p := c.book.PartByID[line.Part]
	switch {
	case line.Part == "":
		return // it has been told
	case p == nil:
		c.inBuild(b, at+".part", "There is no part “"+line.Part+"”: every part of a build has a page.", formula.Nearest(line.Part, parts))
	case !slices.Contains(p.Builds, b.ID):
		c.inBuild(b, at+".part", "The page of “"+line.Part+"” says that a pump of the build “"+b.ID+"” does not have it: name the build there, or take the part out here.", "")
	}
	c.summary.Links++
	if line.With != "" && !slices.Contains(here, line.With) {
		c.inBuild(b, at+".with", "“"+line.With+"” is no part of this build, so nothing can come with it.", formula.Nearest(line.With, here))
	}
}

// tried are settings that the pieces of a build must add up to, in feet: whole
// sections, their halves, and what is neither.
var tried = []string{"20", "37", "100", "237", "240", "245", "500", "1000"}

// sums sees that the pieces of each run make the setting, for the settings
// tried and the assumptions of the book.
func (c *checker) sums() {
	for i := range c.book.Assembly.Builds {
		b := &c.book.Assembly.Builds[i]
		for _, feet := range tried {
			if message := c.sum(b, feet+" ft"); message != "" {
				c.inBuild(c.book.Builds[i], "groups", message, "")
				break
			}
		}
	}
}

// sum takes a pump off for a setting, and says what does not come out.
func (c *checker) sum(b *assembly.Build, setting string) string {
	e := c.book.Engine
	asked, err := e.Read(b.Asked, setting)
	build, ok := e.Find(reckon.BuildTerm)
	if err != nil || !ok {
		return ""
	}
	word, err := e.Read(build, b.ID)
	if err != nil {
		return ""
	}
	q := reckon.Question{Want: -1, Facts: []reckon.Fact{word, asked}}
	if speed, ok := e.Find("speed"); ok {
		if f, err := e.Read(speed, "1770 rpm"); err == nil {
			q.Facts = append(q.Facts, f)
		}
	}
	list := assembly.Pieces(e.Reckon(q), b)
	made := list.Result.Values[b.Made].Likely
	if made < asked.Likely*(1-1e-9) {
		return "Asked for " + setting + ", this build makes less: " + spaced(list.Result.Text(b.Made, formula.US)) + "."
	}
	for _, r := range list.Runs {
		if r.Length == r.Length && !r.Agrees {
			return fmt.Sprintf("Asked for %s, the setting is %s, and the pieces of the run “%s” add up to %s.", setting,
				spaced(list.Result.Text(b.Made, formula.US)), r.Name, spaced(e.Format(b.Made, r.Length, formula.US)))
		}
	}
	return ""
}
