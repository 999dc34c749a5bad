package bindery

import "testing"

func TestInksOfADrawing(t *testing.T) {
	const css = `:root{--a:1;--b:var(--c);--c:2;--unused:3}:root[data-theme=dark]{--a:4}@media(prefers-color-scheme:dark){:root[data-theme="auto"]{--a:5;--unused:6}}` +
		`.x .y,.z{fill:var(--a)}.x:not(.z,.y){fill:red}.y{stroke:var(--b)}[data-theme=contrast] .y{fill:#000}@media print{.z{fill:#fff}}@media(forced-colors:active){:root[data-theme] .y{fill:Canvas}}@font-face{font-family:F}`
	for svg, want := range map[string]string{
		`<svg class="x"><g class="y q"/></svg>`: `:root{--a:1;--b:var(--c);--c:2}@media(prefers-color-scheme:dark){:root{--a:5}}.x .y{fill:var(--a)}.y{stroke:var(--b)}@media(forced-colors:active){:root .y{fill:Canvas}}`,
		`<svg class="z"/>`:                      `:root{--a:1}@media(prefers-color-scheme:dark){:root{--a:5}}.z{fill:var(--a)}@media print{.z{fill:#fff}}`,
		`<svg/>`:                                ``,
	} {
		if got := readInks(css).of(svg); got != want {
			t.Errorf("%s has\n%s\nwant\n%s", svg, got, want)
		}
	}
}
