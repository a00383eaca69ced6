# Installs what is missing to build, test and draw on Debian 12 or 13, and finds
# a Go that is new enough. Quick when all is there.
#
# Source it from the root of the project:  . .ci/setup.sh
# It may change PATH, GOTOOLCHAIN and GOFLAGS for the rest of the script.

cowl_packages='ca-certificates gcc libc6-dev pkg-config libgl-dev libegl-dev
libx11-dev libxcursor-dev libxrandr-dev libxinerama-dev libxi-dev libxxf86vm-dev
libgl1-mesa-dri libegl1 xvfb xauth xdotool
poppler-utils librsvg2-bin'

# cowl_apt installs packages, as root or through sudo.
cowl_apt() {
	if ! command -v apt-get >/dev/null; then
		echo "setup: no apt-get here; install what these Debian packages hold: $*" >&2
		return 1
	fi
	if [ "$(id -u)" = 0 ]; then
		as_root=
	elif command -v sudo >/dev/null; then
		as_root=sudo
	else
		echo "setup: not root and no sudo; as root run: apt-get install $*" >&2
		return 1
	fi
	echo "setup: installing $*"
	$as_root apt-get update -q >/dev/null &&
		$as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends "$@" >/dev/null
}

# cowl_missing prints those of the packages that are not installed.
cowl_missing() {
	for p; do
		[ "$(dpkg-query -W -f '${db:Status-Status}' "$p" 2>/dev/null)" = installed ] || echo "$p"
	done
}

# cowl_older tells whether version $1 is older than version $2.
cowl_older() {
	[ "$1" != "$2" ] && [ "$(printf '%s\n' "$1" "$2" | sort -V | head -n 1)" = "$1" ]
}

# cowl_go prints the version of the Go on the PATH, 0 if there is none. It asks
# outside the project, where no go.mod makes it fetch another Go.
cowl_go() {
	if command -v go >/dev/null; then
		(cd / && GOTOOLCHAIN=local go version) | sed 's/^go version go\([0-9.]*\).*/\1/'
	else
		echo 0
	fi
}

# cowl_toolchain fetches the Go that go.mod wants from the module proxy by hand.
# Go 1.21 and later do this themselves; the Go 1.19 of Debian 12 does not.
cowl_toolchain() {
	mod="golang.org/toolchain@v0.0.1-go$1.linux-$(go env GOARCH)"
	echo "setup: fetching Go $1 from the module proxy"
	dir=$(cd / && go mod download -json "$mod" | sed -n 's/^\t"Dir": "\(.*\)",*$/\1/p')
	[ -n "$dir" ] || return 1
	# The module cache keeps no file executable.
	chmod a+x "$dir"/bin/* "$dir"/pkg/tool/*/* && PATH="$dir/bin:$PATH" && export PATH
}

# cowl_setup does it all.
cowl_setup() {
	missing=$(cowl_missing $cowl_packages)
	[ -z "$missing" ] || cowl_apt $missing || return 1
	wanted=$(sed -n 's/^go //p' go.mod)
	[ "$(cowl_go)" != 0 ] || cowl_apt golang-go || return 1
	if cowl_older "$(cowl_go)" 1.21; then
		cowl_toolchain "$wanted" || { echo "setup: Go $(cowl_go) is too old and Go $wanted could not be fetched" >&2; return 1; }
	elif cowl_older "$(cowl_go)" "$wanted"; then
		GOTOOLCHAIN=auto
		export GOTOOLCHAIN
	fi
	# Where git refuses the checkout, Go cannot stamp its commit.
	if ! git status >/dev/null 2>&1; then
		GOFLAGS="${GOFLAGS:-} -buildvcs=false"
		export GOFLAGS
	fi
}

cowl_setup
