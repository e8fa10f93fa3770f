# Shared by the scripts beside it: stages, and system packages that are installed where missing.

stage() { printf '\n== %s\n' "$*"; }
fail() { printf '%s\n' "$*" >&2; exit 1; }

missing=()

# want PACKAGE COMMAND...: the Debian package is missing unless the command succeeds.
want() {
  local package=$1
  shift
  "$@" >/dev/null 2>&1 || missing+=("$package")
}

# What building the window program takes.
want_window_build() {
  want gcc command -v gcc
  want libc6-dev test -e /usr/include/stdlib.h
  want pkg-config command -v pkg-config
  want libgl1-mesa-dev pkg-config --exists gl
  want libxcursor-dev pkg-config --exists xcursor
  want libxi-dev pkg-config --exists xi
  want libxinerama-dev pkg-config --exists xinerama
  want libxrandr-dev pkg-config --exists xrandr
  want libxxf86vm-dev pkg-config --exists xxf86vm
  want libasound2-dev pkg-config --exists alsa
  want libgl1-mesa-dri compgen -G '/usr/lib/*/dri/swrast_dri.so'
}

install_missing() {
  if [ ${#missing[@]} -eq 0 ]; then
    echo "everything needed is there"
    return
  fi
  echo "missing: ${missing[*]}"
  command -v apt-get >/dev/null || fail "There is no apt-get here. Please install what these Debian 12 packages hold, then run this again: ${missing[*]}"
  local root=()
  if [ "$(id -u)" -ne 0 ]; then
    command -v sudo >/dev/null || fail "Installing takes root or sudo. Please have these packages installed, then run this again: ${missing[*]}"
    root=(sudo)
  fi
  "${root[@]}" apt-get update -q
  "${root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -q --no-install-recommends "${missing[@]}"
}

need_go() {
  command -v go >/dev/null || fail "Go is needed (the version in go.mod or newer): https://go.dev/dl/"
}
