# The Debian 12 packages that Barwright is built, run, tested and checked with, in one place.
# Sourced by editor/run.sh, tests/run.sh and .ci/run.

program_packages=(
    ccache cmake g++ ninja-build pkg-config
    libcairo2-dev libcli11-dev libegl-dev libeigen3-dev libfreetype-dev libglfw3-dev libglm-dev libimgui-dev
    libstb-dev nlohmann-json3-dev python3-glad zlib1g-dev
    fonts-dejavu-core fonts-roboto-unhinted # built into the program
    librsvg2-bin                            # its icon as pixels, built in too
    libgl1-mesa-dri                         # draws, with a graphics card or without
)
test_packages=(
    catch2 python3 python3-jsonschema xauth xdotool xvfb
    libxml2-utils mupdf-tools poppler-utils # read the drawn pages back
    python3-ezdxf                           # and the DXF files
)
# Independent kernels, for tests/oracle alone; it is left out where they are missing.
oracle_packages=(libboost-dev libfcl-dev libocct-data-exchange-dev libocct-modeling-algorithms-dev)
# For packing, and for tests/desktop, which skips the checks whose tools are missing.
desktop_packages=(
    appstream desktop-file-utils dpkg-dev libglib2.0-bin libxml2-utils lintian man-db
    shared-mime-info x11-utils
)
check_packages=(clang clang-format git libclang-rt-14-dev shellcheck)

missing_packages() {
    comm -23 <(printf '%s\n' "$@" | sort -u) \
        <(dpkg-query -W -f '${db:Status-Abbrev} ${Package}\n' "$@" 2>/dev/null |
            sed -n 's/^.i  *//p' | sort -u)
}

as_root() {
    if ((EUID == 0)); then "$@"; else sudo "$@"; fi
}

apt_install() {
    as_root env DEBIAN_FRONTEND=noninteractive apt-get -o DPkg::Lock::Timeout=240 \
        install -y --no-install-recommends "$@"
}

apt_knows() {
    apt-get install --dry-run --no-install-recommends "$@" >/dev/null 2>&1
}

# Installs those of the named packages that are not there yet. When all are there it asks for
# nothing and needs no root.
install_packages() {
    if ! command -v dpkg-query >/dev/null; then
        echo "This is not a Debian system: see to it that what these packages hold is there: $*"
        return
    fi
    local missing
    mapfile -t missing < <(missing_packages "$@")
    ((${#missing[@]} > 0)) || return 0
    local by_hand="apt-get update && apt-get install --no-install-recommends ${missing[*]}"
    if ((EUID != 0)) && ! command -v sudo >/dev/null; then
        printf 'Packages are missing. As root, run this, then try again:\n  %s\n' "$by_hand" >&2
        return 1
    fi
    echo "Installing ${missing[*]}"
    apt_knows "${missing[@]}" && apt_install "${missing[@]}" && return
    as_root apt-get update && apt_install "${missing[@]}" && return
    printf 'Packages could not be installed. As root, run this, then try again:\n  %s\n' \
        "$by_hand" >&2
    return 1
}
