// Package memory estimates what drapes take of memory and refuses what this machine has
// not got. Start at [Afford].
package memory

import (
	"fmt"
	"math"
	"os"
	"strconv"
	"strings"

	"cowl/mesh/draft"
)

// What a drape takes of memory, bytes. cowl bench read 30 to 218 MB for 1203 to
// 26,356 points: 7 to 9 kB a point while it hangs beside the form. A drape that has
// been hung by one of several hands is kept until all are.
const (
	formMemory = 40e6
	hangMemory = 9e3 // a point
	keptMemory = 4e3 // a point
)

// memoryShare is how much of the memory that is free a run may take; where nobody
// can tell how much is free, unknownMemory is taken for it.
const (
	memoryShare   = 0.75
	unknownMemory = 4e9
)

// Tries is how many drapes a first hand tries at the same time where it is to find
// out how many folds the cloth keeps.
const Tries = 4

// Points estimates how many points the lattice of a piece has.
func Points(p draft.Cowl, spacing float64) float64 {
	r := p.Report()
	return (r.AreaFront + r.AreaFacing) / (spacing * spacing)
}

// estimate estimates what so many drapes take, as many at a time as there are
// processors or jobs.
func estimate(points float64, drapes, atOnce int) float64 {
	atOnce = min(drapes, atOnce)
	return formMemory + points*(hangMemory*float64(atOnce)+keptMemory*float64(drapes-atOnce))
}

// Afford refuses before anything is hung what this machine has not the memory for,
// which would end the program in the middle. How says what to give instead.
func Afford(points float64, drapes, atOnce int, how string) error {
	need, free := estimate(points, drapes, atOnce), Free()
	if need <= memoryShare*free {
		return nil
	}
	return fmt.Errorf("%.0f points, %d drapes, %d at a time, take about %.1f GB of memory, want at most %.1f GB, "+
		"three quarters of what is free: give %s",
		points, drapes, min(drapes, atOnce), need/1e9, memoryShare*free/1e9, how)
}

// Free returns how much memory this program can have, bytes: what Linux says is
// to be had, and what the group of the process leaves it.
var Free = func() float64 {
	free := figureIn("/proc/meminfo", "MemAvailable:") * 1024
	if free == 0 {
		free = unknownMemory
	}
	if limit := figureIn("/sys/fs/cgroup/memory.max", ""); limit > 0 {
		free = math.Min(free, limit-figureIn("/sys/fs/cgroup/memory.current", ""))
	}
	return free
}

// figureIn returns the number behind a word in a file of the system; 0: there is none.
func figureIn(path, word string) float64 {
	data, err := os.ReadFile(path)
	if err != nil {
		return 0
	}
	_, rest, _ := strings.Cut(string(data), word)
	fields := strings.Fields(rest)
	if len(fields) == 0 {
		return 0
	}
	v, err := strconv.ParseFloat(fields[0], 64)
	if err != nil {
		return 0 // "max": no limit
	}
	return v
}
