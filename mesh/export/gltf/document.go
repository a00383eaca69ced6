package gltf

// The JSON part of a GLB, as far as this package writes it. Names and numbers
// are those of the Khronos Group's glTF 2.0 Specification (2021), §5.

type document struct {
	Asset       asset        `json:"asset"`
	Scene       int          `json:"scene"`
	Scenes      []scene      `json:"scenes"`
	Nodes       []node       `json:"nodes"`
	Meshes      []shape      `json:"meshes"`
	Materials   []material   `json:"materials"`
	Accessors   []accessor   `json:"accessors"`
	BufferViews []bufferView `json:"bufferViews"`
	Buffers     []buffer     `json:"buffers"`

	ExtensionsUsed []string `json:"extensionsUsed,omitempty"`
}

type asset struct {
	Version   string `json:"version"`
	Generator string `json:"generator"`
	Extras    extras `json:"extras"`
}

type extras struct {
	Title    string `json:"title,omitempty"`
	Caution  string `json:"caution"`
	TexCoord string `json:"texcoord_0"`
}

type scene struct {
	Name  string `json:"name,omitempty"`
	Nodes []int  `json:"nodes"`
}

type node struct {
	Name string `json:"name"`
	Mesh int    `json:"mesh"`
}

type shape struct {
	Name       string      `json:"name"`
	Primitives []primitive `json:"primitives"`
}

type primitive struct {
	Attributes attributes `json:"attributes"`
	Indices    int        `json:"indices"`
	Material   int        `json:"material"`
	Mode       int        `json:"mode"`
}

type attributes struct {
	Position int  `json:"POSITION"`
	Normal   int  `json:"NORMAL"`
	TexCoord *int `json:"TEXCOORD_0,omitempty"`
}

type material struct {
	Name        string `json:"name"`
	Surface     pbr    `json:"pbrMetallicRoughness"`
	DoubleSided bool   `json:"doubleSided"`

	Extensions map[string]any `json:"extensions,omitempty"`
}

type pbr struct {
	BaseColor [4]float64 `json:"baseColorFactor"` // linear, not sRGB
	Metallic  float64    `json:"metallicFactor"`
	Roughness float64    `json:"roughnessFactor"`
}

type accessor struct {
	BufferView    int       `json:"bufferView"`
	ComponentType int       `json:"componentType"`
	Count         int       `json:"count"`
	Type          string    `json:"type"`
	Min           []float64 `json:"min,omitempty"`
	Max           []float64 `json:"max,omitempty"`
}

type bufferView struct {
	Buffer     int `json:"buffer"`
	ByteOffset int `json:"byteOffset"`
	ByteLength int `json:"byteLength"`
	Target     int `json:"target"`
}

type buffer struct {
	ByteLength int `json:"byteLength"`
}

const (
	typeFloat   = 5126  // accessor.componentType
	typeUint32  = 5125  // accessor.componentType
	targetArray = 34962 // bufferView.target, vertex data
	targetIndex = 34963 // bufferView.target, indices
	modeTris    = 4     // primitive.mode
)
