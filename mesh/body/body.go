// Package body describes a person by the measurements a patternmaker takes.
// Start at Body and FromChart.
package body

// Body holds body measurements in metres (angle in radians), without ease.
type Body struct {
	Bust, Waist, Hip float64 // girths
	BackWidth        float64 // across the back, armhole to armhole
	AcrossFront      float64 // across the front ("chest"), armhole to armhole
	Shoulder         float64 // neck point to shoulder tip
	Neck             float64 // girth at the neck base
	BustDart         float64 // width of the bust dart taken at the shoulder in the two-dart draft
	ArmscyeDepth     float64 // nape to the level of the armscye
	NapeToWaist      float64
	ShoulderSlope    float64 // rad below the horizontal
	BustSpan         float64 // apex to apex
	ApexDepth        float64 // apex below the level of the shoulder neck point
	WaistToHip       float64 // waist level to hip level
}
