package scalar

import "bytes"

var byteOrder = []byte("\ufeff")

// Text returns a file as the parser counts its lines: without the mark of byte
// order that some editors put first, and with every line ended by \n, whether
// it was \r\n or \r (YAML 1.2.2, 5.2 and 5.4).
func Text(data []byte) []byte {
	data = bytes.TrimPrefix(data, byteOrder)
	data = bytes.ReplaceAll(data, []byte("\r\n"), []byte("\n"))
	return bytes.ReplaceAll(data, []byte("\r"), []byte("\n"))
}
