package bindery

import (
	"slices"

	"columnbowl/build/book"
	"columnbowl/calcwasm/cutaway"
	"columnbowl/site"
)

const buildsPath = "builds/index.html"

func buildPath(id string) string { return "builds/" + id + ".html" }

// buildView fills the page of one of the three pumps.
func (w *work) buildView(build string) (any, error) {
	path := buildPath(build)
	root := rootOf(path)
	s := stand{path: path, title: capital(w.words["build."+build]), say: w.words["build."+build+".says"], nav: "builds",
		trail: []site.Link{{Name: w.words["builds.title"], URL: buildsPath}}, block: site.TitleBlock{Scope: w.words["build."+build]}}
	s.prev, s.next = neighbours(book.Builds, build, func(id string) site.Link {
		return site.Link{Name: capital(w.words["build."+id]), URL: buildPath(id)}
	})
	v := &site.Build{Frame: w.frame(s), ID: build, Name: s.title, Says: paragraph(s.say)}
	for _, sheet := range cutaway.Sheets(build) {
		v.Cuts = append(v.Cuts, w.cuts.sheet(build, sheet, root))
	}
	v.Made = w.cuts.choices(build, root)
	return v, nil
}

// buildsView fills the page that compares the three pumps: side by side, with
// the parts that tell them apart.
func (w *work) buildsView() (any, error) {
	root := rootOf(buildsPath)
	v := &site.Builds{Frame: w.frame(stand{path: buildsPath, title: w.words["builds.title"], nav: "builds", block: site.TitleBlock{Scope: bookScope}})}
	for _, build := range book.Builds {
		c := w.cuts.sheet(build, cutaway.Whole, root)
		c.Title = capital(w.words["build."+build])
		v.Pumps = append(v.Pumps, site.Pump{Cut: c, Plain: w.cuts.plain(build, root), URL: root + buildPath(build), Says: paragraph(w.words["build."+build+".says"])})
	}
	for _, place := range w.book.Handbook.Places {
		g := site.PartGroup{Place: w.placeLink(place.ID, root)}
		for _, id := range w.partList {
			p := w.book.PartByID[id]
			if p.Place != place.ID {
				continue
			}
			row := site.PartRow{ID: id, Link: w.partLink(id, root)}
			for _, build := range book.Builds {
				row.In = append(row.In, slices.Contains(p.Builds, build))
			}
			g.Parts = append(g.Parts, row)
		}
		if len(g.Parts) > 0 {
			v.Groups = append(v.Groups, g)
		}
	}
	return v, nil
}
