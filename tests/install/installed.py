#!/usr/bin/env python3
"""cmake --install to a prefix, which is then moved: the program there prints the packet that the build tree prints.

    installed.py BUILD-FOLDER SOURCE-FOLDER
"""
import pathlib
import sys
import tempfile

from run import run

EXPECTED = ["bin/kerfpacket", "share/kerfpacket/templates/en/page.toml", "share/kerfpacket/templates/es/page.toml",
            "share/kerfpacket/fonts/faces.toml", "share/kerfpacket/fonts/Gray.icc",
            "share/kerfpacket/schema/job.schema.json", "share/kerfpacket/schema/shop.schema.json",
            "share/man/man1/kerfpacket.1.gz", "share/man/man5/kerfpacket-job.5.gz",
            "share/man/man5/kerfpacket-shop.5.gz", "share/bash-completion/completions/kerfpacket",
            "share/zsh/site-functions/_kerfpacket", "share/fish/vendor_completions.d/kerfpacket.fish",
            "share/doc/kerfpacket/copyright", "share/doc/kerfpacket/changelog.gz",
            "share/doc/kerfpacket/examples/mill-lane/job.toml", "share/doc/kerfpacket/examples/every-key.toml"]


def main(build, source):
    build, source = pathlib.Path(build), pathlib.Path(source)
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        done = run("cmake", "--install", build, "--prefix", folder / "first")
        assert done.returncode == 0, done.stderr
        # Nothing of it stands where it was installed to.
        moved = folder / "a place with spaces"
        (folder / "first").rename(moved)
        missing = [file for file in EXPECTED if not (moved / file).is_file()]
        assert not missing, missing
        job = source / "out-samples/mill-lane/job.toml"
        for program, packet in ((moved / "bin/kerfpacket", "installed.pdf"), (build / "kerfpacket", "built.pdf")):
            printed = run(program, "build", job, "--out", folder / packet)
            assert printed.returncode in (0, 3), printed.stderr
        assert (folder / "installed.pdf").read_bytes() == (folder / "built.pdf").read_bytes()
        example = moved / "share/doc/kerfpacket/examples/mill-lane/job.toml"
        assert run(moved / "bin/kerfpacket", "check", example).returncode in (0, 3)
        # By a link to it, as in ~/bin, and by PATH.
        (folder / "link").symlink_to(moved / "bin/kerfpacket")
        assert run(folder / "link", "check", job).returncode in (0, 3)
        # Where there is no /proc, as in a bare chroot; not tried where nobody may make namespaces.
        bare = ["unshare", "--map-root-user", "--mount", "sh", "-c", 'mount -t tmpfs none /proc && "$@"', "sh"]
        # An address sanitizer reads its own maps there, and stops without.
        sanitized = b"__asan_init" in (build / "kerfpacket").read_bytes()
        if not sanitized and run(*bare, "true").returncode == 0:
            assert run(*bare, folder / "link", "check", job).returncode in (0, 3)
        # Without its words it says so, and where they belong.
        (moved / "share/kerfpacket/templates").rename(folder / "taken")
        told = run(moved / "bin/kerfpacket", "check", job)
        assert told.returncode == 2 and "install it again" in told.stderr, told.stderr
    started = run("sh", source / "src/get-started.sh", "--instal")
    assert started.returncode == 2 and "unknown option" in started.stderr, started.stderr
    started = run("sh", source / "src/get-started.sh", "--install", "here")
    assert started.returncode == 2 and "whole path" in started.stderr, started.stderr


if __name__ == "__main__":
    main(*sys.argv[1:])
