#!/usr/bin/env bash
# Builds the .deb and the .tar.gz into build/release/packages and examines them.
# Usage: editor/desktop/pack.sh
set -euo pipefail
umask 022 # of what is packed
root=$(cd "$(dirname "${BASH_SOURCE[0]}")/../.." && pwd)
cd "$root"
source editor/packages.sh
install_packages "${program_packages[@]}" "${desktop_packages[@]}"
packages=build/release/packages

fail() {
    echo "pack: $*" >&2
    exit 1
}

pack() {
    rm -rf "$packages"
    cmake --build --preset release --target packages
}

same_bytes_again() {
    local first
    first=$(cd "$packages" && sha256sum barwright*)
    pack >/dev/null
    (cd "$packages" && sha256sum --check --quiet <<<"$first") || fail "packed again, they are others"
    echo "$first"
}

lint() {
    if ! command -v lintian >/dev/null; then
        echo "pack: SKIPPED lintian: it is not installed"
        return
    fi
    lintian --fail-on error,warning --tag-display-limit 0 --info "$packages"/*.deb
}

# Nor does it depend on where it was built, nor tell it.
names_no_folder_of_ours() {
    local unpacked
    unpacked=$(mktemp -d)
    dpkg-deb --extract "$packages"/*.deb "$unpacked/deb"
    tar -xzf "$packages"/*.tar.gz -C "$unpacked"
    if grep -rlF "$root" "$unpacked"; then fail "these name the folder that they were built in"; fi
    rm -rf "$unpacked"
}

[[ -f build/release/build.ninja ]] || cmake --preset release -D BUILD_TESTING=OFF
pack
same_bytes_again
lint
names_no_folder_of_ours
for package in "$packages"/barwright*.{deb,tar.gz}; do tests/desktop/installed.sh "$package"; done
