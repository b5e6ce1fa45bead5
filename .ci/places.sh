# Where the tools are. Read by .ci/prepare and .ci/with-tools; changes nothing by itself but PATH and three variables.
#
#   kept          what the set-up builds for this person, shared by every clone of the project
#   wasm_home     our own toolchain for wasm32, where the ordinary one has no library for it
#   CHROMIUM, CHROMEDRIVER, RUSTUP_TOOLCHAIN (the last only through use_wasm_toolchain)

project=$(cd "$(dirname "${BASH_SOURCE[0]}")/.." && pwd)
kept=${XDG_CACHE_HOME:-$HOME/.cache}/eavewater
wasm_home=$kept/wasm-toolchain
wasm_name=eavewater-web
wasm_target=wasm32-unknown-unknown
trunk_version=0.21.14
node_least=20
gecko_version=0.37.1

# The version of a package in Cargo.lock.
locked_version() {
  sed -n "/^name = \"$1\"\$/{n;s/^version = \"\(.*\)\"\$/\1/p;q}" "$project/Cargo.lock"
}
bindgen_version=$(locked_version wasm-bindgen)

# One folder for each version, so that clones with different lock files live side by side.
trunk_home=$kept/trunk-$trunk_version
gecko_home=$kept/geckodriver-$gecko_version
bindgen_home=$kept/wasm-bindgen-$bindgen_version
node_home=$kept/node-$node_least

export PATH="$project/tests/journeys/node_modules/.bin:$bindgen_home/bin:$trunk_home/bin:$gecko_home/bin:$node_home/bin:$HOME/.cargo/bin:$PATH"

first_of() {
  local name
  for name in "$@"; do
    if command -v "$name" 2>/dev/null; then return 0; fi
  done
  return 1
}
export CHROMIUM=${CHROMIUM:-$(first_of chromium chromium-browser google-chrome google-chrome-stable)}
export CHROMEDRIVER=${CHROMEDRIVER:-$(first_of chromedriver)}

# True if the given toolchain folder holds a standard library for the wasm target.
has_wasm_library() {
  compgen -G "$1/lib/rustlib/$wasm_target/lib/libstd-*.rlib" >/dev/null
}

# True if the toolchain in use holds the sources of its standard library.
has_library_sources() {
  [ -e "$(rustc --print sysroot)/lib/rustlib/src/rust/library/Cargo.lock" ]
}

# The ordinary toolchain if it can build for wasm, else our own.
use_wasm_toolchain() {
  if ! has_wasm_library "$(rustc --print sysroot)"; then export RUSTUP_TOOLCHAIN=$wasm_name; fi
}
