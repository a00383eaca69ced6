package rows

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"encoding/json"
	"errors"
	"fmt"
)

// rowVersion is that of the form of a row; a row of another is hung again.
const rowVersion = 2

// record is the file of a row. It says itself what it is, so that a row that was
// copied, made by another program or damaged is told from a good one.
type record[T any] struct {
	Version int               `json:"row"`
	Key     string            `json:"key"`
	Physics string            `json:"physics"`
	Name    string            `json:"name"`
	Failed  string            `json:"failed,omitempty"`
	Value   T                 `json:"value"`
	Files   map[string]string `json:"files,omitempty"` // checksum by ending
	Sum     string            `json:"sum"`             // of all bytes before it; last
}

// Checked is a value that knows whether its figures can be.
type Checked interface{ Check() error }

// check asks a value that can tell.
func check(v any) error {
	if c, ok := v.(Checked); ok {
		return c.Check()
	}
	return nil
}

// sum is the checksum of data.
func sum(data []byte) string {
	h := sha256.Sum256(data)
	return hex.EncodeToString(h[:])
}

const (
	sumKey = "\n \"sum\": \""
	sumEnd = "\"\n}\n"
)

// seal writes a record with its checksum.
func seal[T any](r record[T]) ([]byte, error) {
	r.Sum = ""
	data, err := json.MarshalIndent(r, "", " ")
	if err != nil {
		return nil, err
	}
	at := bytes.LastIndex(data, []byte(sumKey))
	body := data[:at]
	return append(append(bytes.Clone(body), sumKey+sum(body)...), sumEnd...), nil
}

// unseal reads what seal has written for a key. The error says what is wrong with
// the row.
func unseal[T any](data []byte, key string) (r record[T], err error) {
	at := bytes.LastIndex(data, []byte(sumKey))
	if at < 0 || string(data[at:]) != sumKey+sum(data[:at])+sumEnd {
		return r, errors.New("its checksum does not match")
	}
	if err := json.Unmarshal(data, &r); err != nil {
		return r, errors.New("it holds no row")
	}
	switch {
	case r.Version != rowVersion:
		return r, fmt.Errorf("it is of form %d, want %d", r.Version, rowVersion)
	case r.Key != key:
		return r, fmt.Errorf("it is the row %.24q", r.Key)
	case r.Physics != Physics():
		return r, fmt.Errorf("it is of physics %.16q, want %s", r.Physics, Physics())
	case r.Failed == "":
		err = check(&r.Value)
	}
	return r, err
}
