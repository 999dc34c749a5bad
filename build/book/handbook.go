package book

import (
	"strconv"

	"go.yaml.in/yaml/v3"

	"columnbowl/build/markdown"
	"columnbowl/build/report"
)

// HandbookFile is the name of the file that orders the book.
const HandbookFile = "handbook.yaml"

func (h *Handbook) read(src []byte, found *report.List) {
	fields := []field{
		{"title", true, text(&h.Title)},
		{"id", true, text(&h.ID)},
		{"version", true, text(&h.Version)},
		{"units", false, oneOf(&h.Units, "us", "si")},
		{"money", false, text(&h.Money)},
		{"about", false, text(&h.About)},
		{"places", true, items(h.place)},
		{"chapters", true, texts(&h.Chapters)},
		{"chain", false, items(h.group)},
		{"chain-title", false, text(&h.ChainTitle)},
		{"chain-facts", false, pairs("a list of terms with their values, such as static-level: 140 ft", func(term, value string) {
			h.ChainFacts = append(h.ChainFacts, Fact{term, value})
		})},
		{"chain-want", false, text(&h.ChainWant)},
		{"desk", false, items(h.deskGroup)},
		{"desk-ask", false, pairs("a list of terms, each with why it is asked", func(term, why string) {
			h.DeskAsk = append(h.DeskAsk, Fact{term, why})
		})},
		{"desk-want", false, text(&h.DeskWant)},
	}
	all := markdown.Span{Len: len(src)}
	h.titled = readYAML(HandbookFile, src, all, "the file "+HandbookFile, fields, found)
	if h.Units == "" {
		h.Units = "us"
	}
}

func (h *Handbook) place(y *yamlReader, path string, n *yaml.Node) {
	var p Place
	y.mapping(path, "a place", n, []field{{"id", true, text(&p.ID)}, {"name", true, text(&p.Name)}, {"about", true, text(&p.About)}})
	h.Places = append(h.Places, p)
}

func (h *Handbook) group(y *yamlReader, path string, n *yaml.Node) {
	h.Chain = append(h.Chain, readGroup(y, path, "a group of the chain", n))
}

func (h *Handbook) deskGroup(y *yamlReader, path string, n *yaml.Node) {
	h.Desk = append(h.Desk, readGroup(y, path, "a group of the desk", n))
}

func readGroup(y *yamlReader, path, what string, n *yaml.Node) Group {
	var g Group
	y.mapping(path, what, n, []field{{"name", true, text(&g.Name)}, {"terms", true, texts(&g.Terms)}})
	return g
}

// item is the path of an item of a list.
func item(list string, i int) string { return list + "." + strconv.Itoa(i) }
