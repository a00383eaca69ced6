#!/bin/bash
# Checks that the README says what the program does: its commands, its style
# examples, flags, fabrics and the keys of result.json. It hangs the demo.
set -euo pipefail
cd "$(dirname "$0")/.."
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
fail=0
wrong() { echo "readme: $*"; fail=1; }
# The reference of the command line, the fabrics and the checks lie beside their packages.
cat README.md cmd/cowl/README.md materials/README.md sim/proof/README.md >"$work/README.md"
same() { diff "$work/readme" "$work/program" || wrong "$1: < README, > program"; }

# The commands are there to be run; the demo runs as it stands.
awk '/^```sh/{f=1; next} /^```/{f=0} f' "$work/README.md" >"$work/commands"
[ "$(wc -l <"$work/commands")" -ge 7 ] || wrong "found $(wc -l <"$work/commands") commands, want 7 or more"
.ci/demo --json --out "$work/out" >"$work/result.json"
[ -s "$work/out/drape.png" ] || wrong "the demo drew no picture"
grep '^\./cowl' "$work/commands" | while read -r _ verb rest; do
	case $verb in
	drape) echo "./cowl draft --out $work/d -q ${rest/--style cowl-out/--style $work/out}" | sed -E 's/--(fabric-file|fabric|placings|folds|edge-depth|waist) [^ ]+//g; s/--shake//' ;;
	draft) echo "./cowl draft --out $work/d -q $rest" ;;
	proof) echo "./cowl proof --help >/dev/null" ;; # half an hour; its quick rows are tested in sim/proof
	view | compare | sweep | seek | sure | teach | toile | gather) echo "./cowl $verb --help >/dev/null" ;; # a window, or minutes each; tested in cmd/cowl
	true) echo "./cowl true --folds 1 -q --out $work/true ${rest/12mm/20mm}" ;; # the same
	lab) # coarse: that they run is seen here, what they say in sim/lab
		rest=${rest/#disc/disc --spacing 8mm --placings 1} rest=${rest/#swag/swag --spacing 18mm}
		[[ $rest != loop* ]] || rest=${rest/2mm/2.5mm}
		echo "./cowl lab ${rest/#hang/hang --spacing 20mm --placings 1} >/dev/null" ;;
	*) echo "./cowl $verb ${rest/--out /--out $work/} >/dev/null" ;;
	esac
done >"$work/try"
bash -euo pipefail "$work/try" || wrong "a command fails: $(cat "$work/try")"

# The style examples are cut.
awk -v to="$work/style" '/^```yaml/{f=1; n++; next} /^```/{f=0} f{print >(to n ".yaml")}' "$work/README.md"
for s in "$work"/style*.yaml; do
	./cowl draft -q --style "$s" --out "$work/d" || wrong "a style example is refused"
done

# Flags, fabrics, keys: the same in the README and in the program.
sed -nE 's/^\| `(--[a-z-]+).*/\1/p' "$work/README.md" | sort -u >"$work/readme"
{ for verb in draft drape true lay; do ./cowl $verb --help; done; } | sed -nE 's/^ *(-[a-z], )? *(--[a-z-]+).*/\2/p' | grep -vxE -- '--(help|version)' | sort -u >"$work/program"
same flags
grep -oE '[a-z]+(-[a-z]+)+' "$work/README.md" | sort -u >"$work/words"
./cowl fabrics --json | sed -nE 's/^ *"name": "([^"]+)".*/\1/p' | sort >"$work/program"
comm -13 "$work/words" "$work/program" >"$work/missing"
[ ! -s "$work/missing" ] || wrong "fabrics not named: $(tr '\n' ' ' <"$work/missing")"
[ -s "$work/program" ] || wrong 'found no fabrics'
awk '/^## /{f = /^## result.json/} f && /^\| `/' "$work/README.md" | cut -d'|' -f2 | grep -oE '[a-zA-Z0-9_]+' | grep -vxE 'warning|edge_depth_set_mm|hem_mm|hem_front_mm|hem_sides_mm|survives_a|lean|coarser' | sort -u >"$work/readme"
grep -oE '"[a-zA-Z0-9_]+":' "$work/result.json" | tr -d '":' | grep -vxE 'warning|edge_depth_set_mm|hem_mm|hem_front_mm|hem_sides_mm|survives_a|lean|coarser' | sort -u >"$work/program"
same 'keys of result.json'

# The picture is there and light.
size=$(stat -c %s testdata/readme/demo.png)
[ "$size" -le 307200 ] || wrong "testdata/readme/demo.png has $size bytes, want at most 300 KB"
exit $fail
