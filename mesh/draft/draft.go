// Package draft turns a body, or a block of one's own, into the flat cowl
// piece: one-dart block, dart closed into the centre front (CF), extension
// added, edge squared from CF, facing mirrored, allowance added. Everything is
// in metres and radians, X to the wearer's left, Y up, CF at X = 0.
// Start at FromBody and Draft.
package draft

import (
	"cowl/mesh/limit"

	"gonum.org/v1/gonum/spatial/r2"
)

// Draft cuts the cowl front described by c from the block b:
//
//  1. mark the cowl point on the shoulder and cut away the neck,
//  2. close the dart into CF by the share that is asked for or needed,
//  3. add what is still missing of the extension by c.How, and spread for pleats,
//  4. square the edge from a straight CF to the cowl point,
//  5. mirror the facing about the edge, go on below the waist to the Hem, fold out
//     the other half, add Trim.
//
// A value of c out of its range, an extension that cannot be reached, a facing
// too deep for the front and an outline that crosses itself are errors.
func Draft(b Block, c Cut) (Cowl, error) {
	if err := b.check(); err != nil {
		return Cowl{}, limit.Errorf("block", "block: %v", err)
	}
	if err := c.check(b); err != nil {
		return Cowl{}, err
	}
	f, how, err := shape(b, c)
	if err != nil {
		return Cowl{}, err
	}
	end, edge, err := facing(f, c.Facing)
	if err != nil {
		return Cowl{}, err
	}
	p := newCowl(b, c, how)
	if err := p.draw(f, end, edge, c.Hem); err != nil {
		return Cowl{}, err
	}
	if err := checkOutline(p.corners()); err != nil {
		return Cowl{}, err
	}
	p.CutLine = offset(p.Outline, c.Trim)
	return p, nil
}

// mirrored returns p on the other side of CF.
func mirrored(p r2.Vec) r2.Vec { return r2.Vec{X: -p.X, Y: p.Y} }
