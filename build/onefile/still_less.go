package onefile

import (
	"slices"
	"strings"

	"columnbowl/build/leaf"
)

// What a plain form leaves out, of parts of a page that say much again.

// examples leaves the further worked examples of a page to the scripts, and of
// those that stay the results that their steps have told already.
func (s *still) examples(n *leaf.Node) {
	count := 0
	n.Change(func(k *leaf.Node) []*leaf.Node {
		switch {
		case k.Is("worked"):
			if count++; count > s.doc.examples {
				return nil
			}
		case k.Is("result") && len(items(k)) > 1:
			list := items(k)
			k.Kids = list[len(list)-1:]
		}
		return []*leaf.Node{k}
	})
}

// items are the entries of a list.
func items(list *leaf.Node) []*leaf.Node {
	return slices.DeleteFunc(slices.Clone(list.Kids), func(k *leaf.Node) bool { return k.Tag != "li" })
}

// firstFigure keeps the drawing of the first pump that has a part; of the others
// the links to their drawings stay. Paper has these few sheets further on.
func (s *still) firstFigure(n *leaf.Node) {
	seen := s.whole
	n.Change(func(k *leaf.Node) []*leaf.Node {
		if k.Tag == "picture" {
			if seen {
				return nil
			}
			seen = true
		}
		return []*leaf.Node{k}
	})
}

// inWords is a formula that is a row of names and signs as text; false if it has
// fractions, roots or the like.
func inWords(math *leaf.Node) (string, bool) {
	var b strings.Builder
	for _, k := range math.Kids {
		switch k.Tag {
		case "mo":
			b.WriteString(" " + k.Plain() + " ")
		case "mtext", "mi", "mn":
			b.WriteString(k.Plain())
		case "":
		default:
			return "", false
		}
	}
	return b.String(), true
}

// around leaves out what follows from a term: these pages lead back to it.
func (s *still) around(n *leaf.Node) {
	used := s.doc.loose.Words["used-by"]
	n.Change(func(k *leaf.Node) []*leaf.Node {
		if h := k.Find(leaf.Tagged("h3")); k.Tag == "div" && !k.Is("lists") && h != nil && h.Plain() == used {
			return nil
		}
		return []*leaf.Node{k}
	})
}

// lines are the facts and results of a worked example. Their names are links
// in the text above already.
func (s *still) lines(n *leaf.Node) {
	n.Change(func(k *leaf.Node) []*leaf.Node {
		if k.Tag == "a" {
			return k.Kids
		}
		return []*leaf.Node{k}
	})
}

// bare leaves out of a list or table what its entries are: the pages that they
// lead to begin with it.
func (s *still) bare(n *leaf.Node) {
	n.Change(func(k *leaf.Node) []*leaf.Node {
		if k.Is("o") || k.Is("what") || k.Has("data-h") || k.Tag == "thead" {
			return nil
		}
		return []*leaf.Node{k}
	})
}
