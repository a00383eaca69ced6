package toile

import (
	"bytes"
	"encoding/binary"
)

// orientation reads from a JPEG how the camera was held: 1 upright to 8; 1 where nothing
// is told (Exif 2.3, 4.6.2: the first directory of the TIFF in segment APP1).
func orientation(jpeg []byte) int {
	for at := 2; at+4 <= len(jpeg) && jpeg[at] == 0xff; {
		kind, size := jpeg[at+1], int(binary.BigEndian.Uint16(jpeg[at+2:]))
		if kind == 0xda || size < 2 || at+2+size > len(jpeg) {
			break // the picture begins
		}
		body := jpeg[at+4 : at+2+size]
		if tiff, ok := bytes.CutPrefix(body, []byte("Exif\x00\x00")); ok && kind == 0xe1 {
			return tiffOrientation(tiff)
		}
		at += 2 + size
	}
	return 1
}

// tiffOrientation looks for tag 0x0112 in the first directory.
func tiffOrientation(tiff []byte) int {
	if len(tiff) < 8 {
		return 1
	}
	var order binary.ByteOrder = binary.BigEndian
	if tiff[0] == 'I' {
		order = binary.LittleEndian
	}
	at := uint64(order.Uint32(tiff[4:]))
	if at+2 > uint64(len(tiff)) {
		return 1
	}
	n := uint64(order.Uint16(tiff[at:]))
	for k := range n {
		entry := at + 2 + 12*k
		if entry+12 > uint64(len(tiff)) {
			break
		}
		if order.Uint16(tiff[entry:]) == 0x0112 {
			return int(order.Uint16(tiff[entry+8:]))
		}
	}
	return 1
}
