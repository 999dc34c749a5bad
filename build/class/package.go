package class

import (
	"archive/zip"
	"bytes"
	"strings"
)

// The package of a question bank: a ZIP file with imsmanifest.xml at its top and
// an item in each further file (1EdTech Content Packaging as QTI 3.0 uses it).

const (
	packageSpace  = "http://www.imsglobal.org/xsd/qti/qtiv3p0/imscp_v1p1"
	packageSchema = packageSpace + " https://purl.imsglobal.org/spec/qti/v3p0/schema/xsd/imsqtiv3p0_imscpv1p2_v1p0.xsd"
	itemType      = "imsqti_item_xmlv3p0"
)

// Package writes questions as a QTI 3.0 package. The same questions give the
// same bytes: no time stands in it.
func Package(id string, questions []Question) ([]byte, error) {
	var out bytes.Buffer
	z := zip.NewWriter(&out)
	write := func(name string, text []byte) error {
		w, err := z.CreateHeader(&zip.FileHeader{Name: name, Method: zip.Deflate})
		if err == nil {
			_, err = w.Write(text)
		}
		return err
	}
	if err := write("imsmanifest.xml", manifest(id, questions)); err != nil {
		return nil, err
	}
	for i := range questions {
		text, err := questions[i].QTI()
		if err == nil {
			err = write(questions[i].file(), text)
		}
		if err != nil {
			return nil, err
		}
	}
	err := z.Close()
	return out.Bytes(), err
}

func (q *Question) file() string { return "items/" + q.ID + ".xml" }

func manifest(id string, questions []Question) []byte {
	resources := tag("resources", nil)
	for i := range questions {
		q := &questions[i]
		resources.kids = append(resources.kids, tag("resource", at("identifier", q.ID, "type", itemType, "href", q.file()), tag("file", at("href", q.file()))))
	}
	root := tag("manifest", at("xmlns", packageSpace, "xmlns:xsi", xsiSpace, "xsi:schemaLocation", packageSchema, "identifier", id),
		tag("metadata", nil, tag("schema", nil, "QTI Package"), tag("schemaversion", nil, "3.0.0")), tag("organizations", nil), resources)
	var b strings.Builder
	b.WriteString(xmlHead)
	root.write(&b, 0)
	b.WriteString("\n")
	return []byte(b.String())
}
