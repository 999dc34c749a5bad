package bundle

import (
	"bytes"
	"strings"
	"testing"
	"testing/fstest"

	"columnbowl/site"
)

func files(pairs ...string) fstest.MapFS {
	m := fstest.MapFS{}
	for i := 0; i < len(pairs); i += 2 {
		m[pairs[i]] = &fstest.MapFile{Data: []byte(pairs[i+1])}
	}
	return m
}

func TestScriptsJoinModulesAndWords(t *testing.T) {
	page, hub, err := Scripts(files(
		"scripts/page.ts", `import { say } from "./say"; document.title = say("greeting" as const) ?? "";`,
		"scripts/say.ts", `import words from "../words.json"; export const say = (k: keyof typeof words): string => words[k];`,
		"scripts/hub.ts", `class Store { #kept = new Map<string, string>(); size(): number { return this.#kept.size; } } console.log(new Store().size());`,
		"words.json", `{"greeting": "levels in m³/h"}`,
	))
	if err != nil {
		t.Fatal(err)
	}
	for name, text := range map[string]string{"page": string(page), "hub": string(hub)} {
		if !strings.Contains(text, "(()=>{") || !strings.HasSuffix(text, "})();\n") {
			t.Errorf("%s script is not one classic function:\n%s", name, text)
		}
		if strings.Contains(text, "import") || strings.Contains(text, "/home/") {
			t.Errorf("%s script holds an import or a path:\n%s", name, text)
		}
	}
	if !strings.Contains(string(page), "levels in m³/h") {
		t.Errorf("the words did not arrive:\n%s", page)
	}
}

func TestStylesJoinAndLower(t *testing.T) {
	got, err := Styles(files(
		"styles/page.css", "@import \"./rail.css\";\n@font-face{font-family:F;src:url(\"columnbowl-math.woff2\") format(\"woff2\")}\nmain { color: red; & a { color: blue } }",
		"styles/rail.css", ".rail { inset: 0 }",
	))
	if err != nil {
		t.Fatal(err)
	}
	text := string(got)
	for _, want := range []string{".rail{inset:0}", "columnbowl-math.woff2", "main a{color:#00f}"} {
		if !strings.Contains(text, want) {
			t.Errorf("want %q in:\n%s", want, text)
		}
	}
	if strings.Contains(text, "&") {
		t.Errorf("nested rules are too new for the floor:\n%s", text)
	}
}

func TestErrorsAreForPeople(t *testing.T) {
	hub := []string{"scripts/hub.ts", ""}
	cases := []struct{ name, page, want string }{
		{"syntax", "const ä = 1;\nlet width = ;", "site/scripts/page.ts:2:13: Unexpected \";\"\n  let width = ;\n              ^"},
		{"file", "import './gone';", "site/scripts/page.ts:1:8: there is no file scripts/gone in the site"},
		{"package", "import 'left';", "the scripts use no package, write ./left"},
	}
	for _, c := range cases {
		t.Run(c.name, func(t *testing.T) {
			_, _, err := Scripts(files(append(hub, "scripts/page.ts", c.page)...))
			if err == nil || !strings.Contains(err.Error(), c.want) {
				t.Errorf("want %q in:\n%v", c.want, err)
			}
		})
	}
	if _, err := Styles(files("styles/page.css", "main { colour }")); err == nil || !strings.Contains(err.Error(), "site/styles/page.css:1:") {
		t.Errorf("a broken style sheet passed: %v", err)
	}
}

// TestSite bundles the real site: it must pass without a warning, twice alike.
func TestSite(t *testing.T) {
	page, hub, err := Scripts(site.Files)
	if err != nil {
		t.Fatal(err)
	}
	css, err := Styles(site.Files)
	if err != nil {
		t.Fatal(err)
	}
	page2, hub2, err := Scripts(site.Files)
	if err != nil {
		t.Fatal(err)
	}
	css2, err := Styles(site.Files)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Equal(page, page2) || !bytes.Equal(hub, hub2) || !bytes.Equal(css, css2) {
		t.Error("bundled twice, the bytes differ")
	}
	t.Logf("page.js %d, hub.js %d, page.css %d bytes", len(page), len(hub), len(css))
}
