# What .ci/quick and .ci/run share; source it from the root of the project.
export GOAMD64=v1 # higher levels fuse multiply and add, which changes bits

# stage NAME COMMAND… prints the name, and the time that the command took.
stage() {
	local name=$1 start=$SECONDS
	shift
	echo "== $name"
	"$@"
	echo "== $name: $((SECONDS - start)) s"
}

setup() { . .ci/setup.sh && go version; }

formatting() {
	local bad
	bad=$(gofmt -s -l .)
	[ -z "$bad" ] || { echo "gofmt -s would change: $bad"; return 1; }
}

linted() { go run honnef.co/go/tools/cmd/staticcheck@v0.8.2 ./...; }

# vetted looks at the table of laid folds too, which takes hours to run, and at
# what is built without C, where a test of drawing may lack its build line.
vetted() {
	go vet ./...
	go vet -tags laid ./sim/drape
	CGO_ENABLED=0 go vet ./...
}
