#!/usr/bin/env python3
"""The Debian package: lintian has nothing to say of it, and what it holds runs from an empty folder.

    package.py BUILD-FOLDER SOURCE-FOLDER
"""
import pathlib
import sys
import tempfile

from run import run

NEEDED = ["libc6", "libcairo2", "libdeflate0", "libfmt9", "libfreetype6", "libnettle8", "libqpdf29", "libqrencode4",
          "libstdc++6", "libtomlplusplus3"]


def main(build, source):
    build, source = pathlib.Path(build), pathlib.Path(source)
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        packed = run("cpack", "-G", "DEB", "-B", folder, cwd=build)
        assert packed.returncode == 0, packed.stdout + packed.stderr
        package = next(folder.glob("kerfpacket_*.deb"))
        told = run("lintian", "--fail-on", "error,warning", package)
        assert told.returncode == 0, told.stdout + told.stderr
        depends = run("dpkg-deb", "-f", package, "Depends").stdout
        missing = [library for library in NEEDED if library not in depends]
        assert not missing, (missing, depends)
        unpacked = run("dpkg-deb", "-x", package, folder / "root")
        assert unpacked.returncode == 0, unpacked.stderr
        job = folder / "root/usr/share/doc/kerfpacket/examples/mill-lane/job.toml"
        packet = folder / "mill.pdf"
        built = run(folder / "root/usr/bin/kerfpacket", "build", job, "--out", packet)
        assert built.returncode in (0, 3), built.stderr
        # Stripped, and with its own words and faces, it prints what the build tree prints.
        assert run(build / "kerfpacket", "verify", packet, source / "out-samples/mill-lane/job.toml").returncode == 0


if __name__ == "__main__":
    main(*sys.argv[1:])
