#!/bin/bash
# Refuses imports against the arrows in DEVELOPERS.md. Tests count too: a
# package that needs more to be tested than to be used has the wrong shape.
set -euo pipefail
cd "$(dirname "$0")/.."
fail=0

# reached has a line for every package and for every test program: its name, a tab, and
# all that it reaches, with commas between.
reached=$(go list -buildvcs=false -test -f $'{{.ImportPath}}\t{{join .Deps ","}}' ./...)

# packages lists those that ./a or ./a/... means.
packages() {
	local name=${1#.}
	case $name in
	*/...) grep -E "^cowl${name%/...}(/[^ ]*)?	" <<<"$reached" ;;
	*) grep "^cowl$name	" <<<"$reached" ;;
	esac | cut -f1 | grep -v '\.test$' || true
}

# deps lists everything that package $1 and its tests reach, without itself.
deps() { awk -F'\t' -v p="$1" '$1 == p || $1 == p ".test" {print $2}' <<<"$reached" | tr , '\n' | sed 's/ \[.*//; s/[._]test$//' | sort -u | grep -vx "$1" || true; }

# check WHO SED WHY: what sed leaves of the dependencies of the packages WHO is a breach.
check() {
	local packages package bad
	packages=$(packages "$1")
	[ -n "$packages" ] || { echo "imports: no package $1, the rule checks nothing"; fail=1; }
	for package in $packages; do
		bad=$(deps "$package" | sed -nE "$2")
		[ -z "$bad" ] || { echo "imports: $package reaches" $bad "— $3"; fail=1; }
	done
}

# never WHO WHAT WHY and only WHO WHAT WHY take extended regular expressions.
never() { check "$1" "\\#^($2)\$#p" "$3"; }
only() { check "$1" "\\#^($2)\$#!{\\#^cowl(/|\$)#p}" "$3"; }

gl='github.com/go-gl/.*'
only  ./mesh/...     'cowl/mesh(/.*)?'              'shapes know no physics, no fabric, no drawing'
only  ./mesh/limit   'cowl/mesh/limit'              'a limit knows nothing of what it limits'
only  ./sim/fault    'cowl/sim/fault'                 'a panic is carried by whoever has it'
only  ./cmd/cowl/internal/outfile 'cowl/cmd/cowl/internal/outfile'               'a writer of files knows nothing of what is in them'
only  ./materials/infile 'cowl/materials/infile'               'a reader of files knows nothing of what is in them'
only  ./materials/... 'cowl/(materials(/.*)?|mesh/limit)' 'fabrics know nothing of ours but what a limit is'
only  ./shaders/...  'cowl/shaders'                 'shaders are text'
only  ./cmd/cowl/internal/study/rows 'cowl/(cmd/cowl/internal/(study/rows|outfile)|materials/infile|sim/fault)' 'rows of a study know no cloth'
only  ./cmd/cowl/internal/study/stats 'cowl/cmd/cowl/internal/study/stats' 'statistics know no cloth'
only  ./cmd/cowl/internal/study/page 'cowl/cmd/cowl/internal/study/(page|stats)' 'sheets know words, tables and charts'
only  ./cmd/cowl/internal/study/readback 'cowl/cmd/cowl/internal/study/readback' 'a test reads back with readers of its own'
never ./cmd/cowl/internal/study/... 'cowl/cmd/cowl|cowl/cmd/cowl/internal/(window|panel)|github.com/alecthomas/kong' 'a study knows no command line and no window'
only  ./cmd/cowl/internal/toile/fit 'cowl/cmd/cowl/internal/toile/fit' 'a fit knows figures and no cloth'
never ./cmd/cowl/internal/toile 'cowl/cmd/cowl|cowl/cmd/cowl/internal/(window|panel)|github.com/alecthomas/kong' 'a book knows no command line and no window'
for verbs in flags labs cloths; do
	never ./cmd/cowl/internal/$verbs "cowl/cmd/cowl|cowl/cmd/cowl/internal/(study(/.*)?|window|panel|stage)|$gl" 'verbs apart know neither each other nor what draws'
done
for told in drafted treatment layplan; do
	never ./cmd/cowl/internal/$told "cowl/cmd/cowl|cowl/cmd/cowl/internal/(flags|console|drawn|study(/.*)?|window|panel|stage)|github.com/alecthomas/kong|$gl" 'what is told of a cowl knows no command line and draws nothing'
done
never ./cmd/cowl/internal/treatment 'cowl/cmd/cowl/internal/(drafted|layplan)' 'a treatment is told of without the draft around it'
never ./cmd/cowl/internal/layplan 'cowl/cmd/cowl/internal/(drafted|treatment)' 'pieces are laid without a word of their draft'
never ./cmd/cowl/internal/console 'cowl/(mesh/(draft|form|export.*)|cmd/cowl/internal/(study.*|drawn|style))' 'a console knows no cowl'
only  ./cmd/cowl/internal/say 'cowl/(cmd/cowl/internal/say|mesh/(ruler|limit))' 'words know nothing of what they are said of, but its units'
only  ./cmd/cowl/internal/sided 'cowl/(cmd/cowl/internal/sided|mesh/(draft|body|limit|polyline))' 'words of a side know no report'
only  ./mesh/ruler   'cowl/mesh/(ruler|limit)'      'a ruler knows nothing of what it measures'
never ./sim          'cowl/(mesh/(draft|form|export.*)|materials|sim/(fold|lab|drape|report))' 'the solver knows cloth, pins and an obstacle'
never ./sim/lab      'cowl/(mesh/(draft|form|export.*)|sim/(fold|drape|proof|report))' 'the lab tests cloth, not cowls'
never ./sim/contact  'cowl/(sim|mesh/(draft|form|export.*)|materials|sim/(fold|lab|drape|proof))' 'contact is below the solver'
only  ./sim/forkjoin     'cowl/sim/(forkjoin|fault)'              'sharing work out knows no work'
only  ./sim/fold     'cowl/mesh|cowl/sim/fold'      'folds are read off any mesh'
never ./mesh/paper/... 'cowl/mesh/(export|read)(/.*)?' 'a piece on paper knows no file'
never ./mesh/export/... 'cowl/mesh/read(/.*)?'      'a writer shares nothing with an importer'
for reader in outline dxf svg csv; do
	never ./mesh/read/$reader 'cowl/mesh/export(/.*)?' 'an importer shares nothing with a writer'
done
never ./sim/...      "cowl/(cmd|shaders)(/.*)?|$gl" 'physics draws nothing'
never ./mesh/...     "$gl"                          'shapes draw nothing'
never ./materials/... "$gl"                         'fabrics draw nothing'
never ./cmd/cowl/internal/panel "cowl/(cmd/cowl/internal/stage|shaders|sim|mesh|materials)(/.*)?|$gl" 'a panel yields triangles and knows neither cloth nor OpenGL'
exit $fail
