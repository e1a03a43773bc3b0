# shellcheck shell=sh
# Sourced by get-started.sh and tests/run.sh: Debian packages, installed only where they are missing.

# What building needs.
build_packages="g++ cmake ninja-build pkg-config libdeflate-dev libcairo2-dev libqpdf-dev libcli11-dev
    libtomlplusplus-dev libfmt-dev libexpected-dev nlohmann-json3-dev libfreetype-dev nettle-dev
    libboost-dev libeigen3-dev libqrencode-dev libedit-dev libharfbuzz-bin fonts-dejavu-core
    fonts-dejavu-extra icc-profiles-free python3-minimal gzip"

# What the tests need besides: frameworks and reference libraries, then the programs that read and measure the PDFs.
test_packages="libgtest-dev libbenchmark-dev libhpdf-dev librapidcheck-dev libgeos-dev locales libxml2-utils
    qpdf poppler-utils mupdf-tools ghostscript cups-filters libcups2-dev tesseract-ocr tesseract-ocr-eng libzbar-dev
    default-jre-headless libpdfbox2-java libactivation-java libjaxb-api-java faketime python3-fitz python3-numpy
    python3-ezdxf python3-pypdf python3-gi gir1.2-poppler-0.18 librsvg2-bin python3-jsonschema bash-completion zsh fish man-db mandoc dpkg-dev lintian tmux
    nodejs libjs-pdf"

# Installs those of the named packages that are missing; asks nothing, and touches no network, when none is.
install_missing() {
    missing=
    for package in "$@"; do
        state=$(dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null) || state=none
        [ "$state" = installed ] || missing="$missing $package"
    done
    [ -n "$missing" ] || return 0
    as_root=
    if [ "$(id -u)" -ne 0 ]; then
        command -v sudo >/dev/null || { echo "Run this as root, or install sudo, to install:$missing" >&2; exit 1; }
        as_root=sudo
    fi
    echo "Installing:$missing"
    $as_root apt-get update -q
    # shellcheck disable=SC2086 # one word a package
    $as_root env DEBIAN_FRONTEND=noninteractive apt-get install -q -y --no-install-recommends $missing
}
