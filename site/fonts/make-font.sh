#!/bin/sh
# Makes columnbowl-math.woff2: the part of STIX Two Math that the book's
# formulas need. Needs npm, Debian's fonttools and python3-brotli.
# Usage: site/fonts/make-font.sh   (writes beside itself)
set -eu
here=$(cd "$(dirname "$0")" && pwd)
version=5.3.0
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
cd "$work"
npm pack --silent "@fontsource/stix-two-math@$version" >/dev/null
tar xzf ./*.tgz
# Latin, Latin-1, Greek, dashes and spaces, super- and subscripts, arrows,
# operators, pieces of tall brackets, mathematical italics (Latin and Greek)
/usr/bin/python3 /usr/bin/pyftsubset package/files/stix-two-math-latin-400-normal.woff2 \
  --unicodes="U+0020-007E,U+00A0-00FF,U+0131,U+0237,U+0300-0308,U+030A,U+030C,U+0332,U+0338,U+0391-03A9,U+03B1-03C9,U+03D1,U+03D5,U+03F5,U+2009,U+200A,U+200B,U+2010-2015,U+2016,U+2018-201D,U+2020,U+2026,U+202F,U+2030,U+2032-2034,U+2044,U+205F,U+2061-2064,U+2070-208E,U+210E,U+2113,U+2190-2195,U+21D0-21D4,U+2202,U+2206-2208,U+220F,U+2211-2213,U+2215,U+2217-221A,U+221D,U+221E,U+2220,U+2223,U+2225,U+222B,U+2234,U+2235,U+2243,U+2245,U+2248,U+2260,U+2261,U+2264,U+2265,U+226A,U+226B,U+22C5,U+22EF,U+2308-230B,U+239B-23AE,U+23B4,U+23B5,U+23DC-23DF,U+27E8,U+27E9,U+1D434-1D467,U+1D6A4,U+1D6A5,U+1D6E2-1D71B" \
  --layout-features='*' --name-IDs='*' --notdef-outline --flavor=woff2 --output-file=subset.woff2
# a changed font carries a name of its own; copyright and licence stay in it
/usr/bin/python3 - "$here/columnbowl-math.woff2" <<'PY'
import sys
from fontTools.ttLib import TTFont
f = TTFont('subset.woff2', recalcTimestamp=False)
names = {1: 'ColumnBowlMath', 3: 'ColumnBowlMath subset of STIX Two Math', 4: 'ColumnBowlMath', 6: 'ColumnBowlMath', 16: 'ColumnBowlMath'}
for r in f['name'].names:
    if r.nameID in names:
        f['name'].setName(names[r.nameID], r.nameID, r.platformID, r.platEncID, r.langID)
assert 'MATH' in f, 'the MATH table is lost'
f.save(sys.argv[1])
PY
cp package/LICENSE "$here/OFL.txt"
ls -l "$here/columnbowl-math.woff2"
