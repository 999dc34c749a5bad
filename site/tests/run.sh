#!/usr/bin/env bash
# The checks of the pages in real browsers: types, then every kind of page from a folder, with the
# network off. Called by `make test`.
#
#   site/tests/run.sh               everything
#   site/tests/run.sh types chain   only these (types, or the names of the test files)
#
# A machine with Go and Node alone is enough: what is missing is installed when this runs as root
# on Debian; otherwise it says what to install and fails. Nothing is ever skipped.
set -eu

tests=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
site=$(dirname "$tests")
project=$(dirname "$site")
cd "$project"

fail() { echo "site/tests/run.sh: $*" >&2; exit 1; }
has() { command -v "$1" >/dev/null 2>&1; }

# Programs of the system. The names are Debian's.
packages=""
has chromium || has chromium-browser || packages="$packages chromium"
has firefox-esr || has firefox || packages="$packages firefox-esr"
has java || packages="$packages default-jre-headless"
{ has pdftotext && has pdfinfo; } || packages="$packages poppler-utils"
[ -f /usr/share/java/epubcheck.jar ] || packages="$packages epubcheck"
if [ -n "$packages" ]; then
  by_hand="apt-get update && apt-get install -y --no-install-recommends$packages"
  [ "$(id -u)" = 0 ] && has apt-get || fail "these programs are missing; as root: $by_hand"
  echo "installing$packages"
  export DEBIAN_FRONTEND=noninteractive
  # a browser is large and a line may be slow, but a dead line must not hang the checks
  { timeout 120 apt-get update -qq && timeout 600 apt-get install -y -qq --no-install-recommends $packages >/dev/null; } \
    || fail "these programs could not be installed; with the network on, as root: $by_hand"
fi

# Node and its packages.
has go || fail "the go command is missing: install Go, the version that go.mod names, from the system or from go.dev"
has node && has npm || fail "node and npm are missing: install Node 20 or newer, with npm"
[ "$(node -p 'process.versions.node.split(".")[0]')" -ge 20 ] || fail "Node $(node -v) is too old: install Node 20 or newer"
kept="$site/node_modules/.package-lock.json"
if [ ! -f "$kept" ] || [ "$site/package-lock.json" -nt "$kept" ]; then
  echo "installing the packages of the checks"
  (cd "$site" && timeout 300 npm ci --no-progress --loglevel=error) \
    || fail "the packages could not be installed; with the network on: (cd site && npm ci)"
  touch "$kept"
fi

# What to check.
[ $# -gt 0 ] || set -- types $(cd "$tests" && ls *.test.mjs | sed 's/\.test\.mjs$//')
files=""
types=no
for what in "$@"; do
  if [ "$what" = types ]; then types=yes; continue; fi
  [ -f "$tests/$what.test.mjs" ] || fail "there is no check $what; there are: types $(cd "$tests" && ls *.test.mjs | sed 's/\.test\.mjs$//' | tr '\n' ' ')"
  files="$files site/tests/$what.test.mjs"
done

if [ $types = yes ]; then
  "$site/node_modules/.bin/tsc" --noEmit -p "$site"
  echo "types: the scripts are sound"
fi
[ -n "$files" ] || exit 0

# One edition of the real content for all checks, from a copy: the native engine, which the checks
# compare with, must read the same content to the end even if somebody edits it meanwhile.
work=$(mktemp -d "${TMPDIR:-/tmp}/columnbowl-tests.XXXXXX")
trap 'rm -rf "$work"' EXIT
cp -r content "$work/content"
go build -o "$work/columnbowl" ./build
"$work/columnbowl" bind --content "$work/content" --checks testdata/published/checks --out "$work/out" >"$work/bind.txt" || { cat "$work/bind.txt"; fail "the content could not be bound"; }
head -n 2 "$work/bind.txt"
export COLUMNBOWL_COMMAND="$work/columnbowl" COLUMNBOWL_EDITION="$work/out" COLUMNBOWL_CONTENT="$work/content"

# Two files at a time: a browser and the checks that drive it seldom want a processor at once.
node --test --test-concurrency=2 --test-reporter=spec $files
