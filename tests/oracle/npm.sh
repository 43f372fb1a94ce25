#!/usr/bin/env bash
# The official validator of glTF and a kernel of closed meshes, both from npm, look at what
# Barwright exports. They are installed by name, their scripts off, into a folder of the build.
# Exit status 77 (skipped, and said so) where there is no node, no npm or no network.
# Usage: tests/oracle/npm.sh EXPORT_FOR_ORACLES BUILD_FOLDER
set -euo pipefail
export_for_oracles=$(realpath "$1")
mkdir -p "$2/npm"
modules=$(realpath "$2/npm")
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)

skip() {
    echo "SKIPPED: exported files are not checked by outsiders from npm: $*"
    exit 77
}

command -v node >/dev/null || skip "there is no node"
if [[ ! -d $modules/node_modules/gltf-validator || ! -d $modules/node_modules/manifold-3d ]]; then
    command -v npm >/dev/null || skip "there is no npm"
    npm install --prefix "$modules" --ignore-scripts --no-audit --no-fund --loglevel=error \
        gltf-validator@2.0.0-dev.3.10 manifold-3d@3.5.3 </dev/null ||
        skip "npm could not install them"
fi

out=$(mktemp -d)
trap 'rm -rf "$out"' EXIT
"$export_for_oracles" "$out"
node "$here/check_glb.mjs" "$modules" "$out"/*.glb
node "$here/check_meshes.mjs" "$modules" "$out"/*.obj
