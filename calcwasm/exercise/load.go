package exercise

import (
	"strconv"
	"strings"

	"columnbowl/calcwasm/formula"
)

// Source is a template as its author wrote it.
type Source struct {
	ID, Name string
	Level    int
	Place    string
	Text     string // the situation, without the blocks
	Pick     int
	Allow    []string
	Blocks   []Block
}

// Block is one fenced block of a template.
type Block struct{ Kind, Body string }

// The kinds of blocks.
const (
	DrawBlock   = "draw"
	AskBlock    = "ask"
	ChooseBlock = "choose"
	OrderBlock  = "order"
)

// Problem is one thing wrong with a template.
type Problem struct {
	Block    int    // the block it is in; -1 for the text or the title block
	Whole    bool   // it is about the block as a whole
	Off, Len int    // bytes of the block's body, or of the text
	Title    string // the field of the title block it is about; empty if none
	Message  string
	Suggest  string
}

// loader reads one template.
type loader struct {
	set      *Set
	src      *Source
	t        Template
	problems []Problem
}

// Load parses and checks a template and adds it to the set, unless there are
// problems.
func (s *Set) Load(src *Source) []Problem {
	l := &loader{set: s, src: src}
	l.t = Template{ID: src.ID, Name: src.Name, Level: src.Level, Place: src.Place, Text: src.Text, Pick: src.Pick, Allow: src.Allow}
	for i := range src.Blocks {
		l.block(i)
	}
	if len(l.problems) == 0 {
		l.whole()
	}
	if len(l.problems) == 0 {
		if why := s.learn(&l.t); why != "" {
			l.about(DrawBlock, "No facts can be drawn here: "+strings.TrimSuffix(why, ".")+".")
		}
	}
	if len(l.problems) == 0 {
		s.Templates = append(s.Templates, l.t)
	}
	return l.problems
}

// block parses one block.
func (l *loader) block(i int) {
	k, scope := &l.src.Blocks[i], l.set.Book.Scope
	var err error
	switch k.Kind {
	case DrawBlock:
		if len(l.t.Facts) > 0 {
			l.wrong(i, "The facts of an exercise are drawn in one block.")
			return
		}
		var d *formula.Draw
		d, err = formula.ParseDraw(k.Body, scope)
		l.t.Facts, l.t.Keep = d.Facts, d.Keep
	case AskBlock:
		if len(l.t.Ask) > 0 {
			l.wrong(i, "What is asked stands in one block, in its order.")
			return
		}
		l.t.Ask, err = formula.ParseAsk(k.Body, scope)
	case ChooseBlock:
		var c *formula.Choose
		c, err = formula.ParseChoose(k.Body)
		l.t.Choose = append(l.t.Choose, *c)
	case OrderBlock:
		var o *formula.Order
		o, err = formula.ParseOrder(k.Body)
		l.t.Order = append(l.t.Order, *o)
	}
	l.fail(i, err)
}

func (l *loader) fail(block int, err error) {
	add := func(e *formula.Error) {
		l.problems = append(l.problems, Problem{Block: block, Off: e.Off, Len: e.Len, Message: e.Message, Suggest: e.Suggest})
	}
	switch err := err.(type) {
	case formula.Errors:
		for _, e := range err {
			add(e)
		}
	case *formula.Error:
		add(err)
	}
}

func (l *loader) wrong(block int, message string) {
	l.problems = append(l.problems, Problem{Block: block, Whole: true, Message: message})
}

// about tells a problem of the first block of a kind.
func (l *loader) about(kind, message string) {
	for i := range l.src.Blocks {
		if l.src.Blocks[i].Kind == kind {
			l.wrong(i, message)
			return
		}
	}
	l.problems = append(l.problems, Problem{Block: -1, Whole: true, Message: message})
}

// whole checks what shows only when all blocks are read.
func (l *loader) whole() {
	t := &l.t
	if len(t.Ask) == 0 && len(t.Choose) == 0 && len(t.Order) == 0 {
		l.problems = append(l.problems, Problem{Block: -1, Whole: true, Message: "This exercise asks nothing: it needs a block ask, choose or order."})
	}
	if len(t.Ask) > 0 && len(t.Facts) == 0 {
		l.about(AskBlock, "Numbers are asked, and no facts are drawn: write a block “draw”.")
	}
	if t.Pick < 0 || t.Pick > len(t.Choose) {
		l.problems = append(l.problems, Problem{Block: -1, Title: "pick", Message: "“pick” says how many of the choices a sheet shows: no more than there are."})
	}
	l.allowed()
	l.told()
}

// allowed sees that the cautions named in the title exist.
func (l *loader) allowed() {
	var ids []string
	for i := range l.set.Book.Cautions {
		ids = append(ids, l.set.Book.Cautions[i].ID)
	}
next:
	for i, a := range l.t.Allow {
		for _, id := range ids {
			if a == id {
				continue next
			}
		}
		l.problems = append(l.problems, Problem{Block: -1, Title: "allow." + strconv.Itoa(i), Message: "There is no caution “" + a + "”: write term/caution.", Suggest: formula.Nearest(a, ids)})
	}
}

// told sees that the situation names facts that are drawn, and tells every fact
// that a learner needs.
func (l *loader) told() {
	names, at := Names(l.t.Text)
	drawnIDs := make([]string, len(l.t.Facts))
	for i := range l.t.Facts {
		drawnIDs[i] = l.set.Book.Terms[l.t.Facts[i].Term].ID
	}
	for i, name := range names {
		if !contains(drawnIDs, name) {
			l.problems = append(l.problems, Problem{Block: -1, Off: at[i], Len: max(len(name), 1),
				Message: "“" + name + "” is not drawn in this exercise, so its value cannot stand here.", Suggest: formula.Nearest(name, drawnIDs)})
		}
	}
	for i := range l.t.Facts {
		f := &l.t.Facts[i]
		if l.set.Book.Terms[f.Term].Kind == formula.Choice || contains(names, drawnIDs[i]) || l.asks(f.Term) {
			continue
		}
		for k := range l.src.Blocks {
			if l.src.Blocks[k].Kind == DrawBlock {
				l.problems = append(l.problems, Problem{Block: k, Off: f.Off, Len: f.Len,
					Message: "“" + drawnIDs[i] + "” is drawn, and the situation does not tell it: write {" + drawnIDs[i] + "} there."})
			}
		}
	}
}

func (l *loader) asks(term int) bool {
	for _, a := range l.t.Ask {
		if a.Term == term {
			return true
		}
	}
	return false
}

func contains(list []string, s string) bool {
	for _, have := range list {
		if have == s {
			return true
		}
	}
	return false
}
