#!/bin/bash
# Compares the benchmarks of the working tree with those of another commit:
#   bash .ci/bench.sh              the working tree against HEAD
#   bash .ci/bench.sh v1 Step      against the commit v1, benchmarks called Step…
# Close what else runs; a change below the ± of the table is no change. A claim
# of speed comes with this table.
set -euo pipefail
cd "$(dirname "$0")/.."
. .ci/setup.sh

old=${1:-HEAD} pattern=${2:-.} count=${COUNT:-6}
benchstat=golang.org/x/perf/cmd/benchstat@v0.0.0-20260908200009-22c9c6c9d4da
work=$(mktemp -d)
trap 'git worktree remove --force "$work/tree" 2>/dev/null; rm -rf "$work"' EXIT
git worktree add --quiet --detach "$work/tree" "$old"

# bench runs the benchmarks of the tree at $1 once and adds to $2. Old and new
# take turns, so that a machine that slows down slows both.
bench() { (cd "$1" && xvfb-run -a go test -run '^$' -bench "$pattern" -count 1 ./... | grep -E '^(Benchmark|goos|goarch|pkg|cpu)' >>"$2") || true; }
for i in $(seq "$count"); do
	echo "bench: round $i of $count"
	bench "$work/tree" "$work/old.txt"
	bench . "$work/new.txt"
done
[ -s "$work/old.txt" ] && [ -s "$work/new.txt" ] || { echo "bench: no benchmark called $pattern ran in both trees"; exit 1; }
go run "$benchstat" "old=$work/old.txt" "new=$work/new.txt"
