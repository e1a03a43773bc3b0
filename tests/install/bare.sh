#!/bin/sh
# A bare Debian 12 is given the package, what that asks for and nothing else: does the program run there, and go again?
# Not part of the suite, as it loads some 80 MB and takes some minutes. Needs mmdebstrap; as root, or where anybody may make
# namespaces. A build tree packs the package: cpack -G DEB.
#     sh tests/install/bare.sh PACKAGE.deb
set -eu

# 3 is done, with cautions.
done_with() { "$@" || [ $? -eq 3 ]; }

completed() {
    bash --norc -c 'source /usr/share/bash-completion/completions/kerfpacket
        COMP_WORDS=(kerfpacket "$1") COMP_CWORD=1; _kerfpacket; echo "${COMPREPLY[@]}"' sh "$1"
}

try_out() {
    kerfpacket --version
    kerfpacket --help | grep -q '^  build '
    for shape in segmental wall stair splayed ordinates; do
        kerfpacket start --example "$shape" "$shape.toml"
        done_with kerfpacket build "$shape.toml"
        kerfpacket verify "$shape.pdf"
    done
    done_with kerfpacket preview segmental.toml --out pictures
    [ -s pictures/page-01-cover.png ]
    kerfpacket outlines splayed.toml >outlines.dxf
    [ -s outlines.dxf ]
    kerfpacket stops segmental.toml >stops.csv
    [ -s stops.csv ]
    kerfpacket field-sheet
    kerfpacket printer-check
    for page in man1/kerfpacket.1 man5/kerfpacket-job.5 man5/kerfpacket-shop.5; do
        zcat "/usr/share/man/$page.gz" | grep -q '^.TH KERFPACKET'
    done
    [ "$(completed bui)" = build ]
    done_with kerfpacket build /usr/share/doc/kerfpacket/examples/mill-lane/job.toml --out mill.pdf
}

inside() {
    export DEBIAN_FRONTEND=noninteractive
    apt-get install -q -y --no-install-recommends /tmp/kerfpacket.deb
    cd "$(mktemp -d)"
    try_out
    apt-get purge -q -y kerfpacket
    left=$(find /etc /usr /var -name '*kerfpacket*')
    [ -z "$left" ] || { echo "left behind: $left"; exit 1; }
    echo "bare.sh: installed, ran and went again"
}

[ "${1:?the package, as kerfpacket_1.0.0_amd64.deb}" != inside ] || { inside; exit; }
exec mmdebstrap --variant=minbase --format=null --customize-hook="copy-in '$0' /tmp" \
    --customize-hook="upload '$1' /tmp/kerfpacket.deb" --customize-hook='chroot "$1" sh /tmp/bare.sh inside' bookworm -
