"""That the reader can fail: packets of one job are held against another that differs in one figure or word, and each
difference must be found, of its kind."""
import multiprocessing
import pathlib
import sys
import tempfile

import apprentice
import jobs
import judge

HEAD = """[job]
number = "R-1"
title = "Reader"
revision = "A"
date = 2026-11-20
units = "in"
[saw]
blade_diameter = 10
kerf = 0.12
[printer]
media = "na_letter_8.5x11in"
"""
ARCH = HEAD + """[[opening]]
id = "A"
shape = "segmental"
span = 48
rise = 10
legs = 72
depth = 5
[opening.liner]
material = "mdf"
thickness = 0.5
trim = 3
zero = "right"
[opening.casing]
width = 3
reveal = 0.25
"""
WALL = HEAD + """[[wall]]
id = "B"
chord = 72
rise = 9
measured_to = "finish"
side = "concave"
[wall.board]
material = "mdf"
thickness = 0.5
width = 5
[wall.form]
"""
CASES = [
    (ARCH, "rise = 10", "rise = 10.25", "blank length"),
    (ARCH, "rise = 10", "rise = 10.125", "template wall line"),
    (ARCH, "thickness = 0.5", "thickness = 0.625", "template finished line"),
    (ARCH, "width = 3", "width = 3.125", "template casing outside"),
    (ARCH, "reveal = 0.25", "reveal = 0.375", "template casing inside"),
    (ARCH, "rise = 10", "rise = 11", "mitre angle"),
    (ARCH, 'zero = "right"', 'zero = "left"', "ticks"),
    (ARCH, "trim = 3", "trim = 3.25", "mark BEND ENDS"),
    (WALL, 'side = "concave"', 'side = "convex"', "open or close"),
    (WALL, 'side = "concave"', 'side = "convex"', "form's face"),
    (WALL, "rise = 9", "rise = 9.125", "form ordinates"),
    (WALL, "kerf = 0.12", "kerf = 0.13", "set-up card"),
]


def kinds(text, packet):
    return {k for k, _ in judge.judge(jobs.read(text), packet).found}


def main():
    missed = 0
    with tempfile.TemporaryDirectory() as folder:
        packets = {}
        for text in (ARCH, WALL):
            file = pathlib.Path(folder, f"{len(packets)}.toml")
            file.write_text(text)
            apprentice.build(file)
            packets[text] = file.with_suffix(".pdf")
        for text, old, new, kind in CASES:
            assert old in text
            with multiprocessing.Pool(1) as pool:
                found = pool.apply(kinds, (text.replace(old, new), packets[text]))
            if kind not in found:
                print(f'"{old}" read as "{new}": {kind} was not found, but {sorted(found)}')
                missed += 1
    print(f"{len(CASES) - missed} of {len(CASES)} differences found")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
