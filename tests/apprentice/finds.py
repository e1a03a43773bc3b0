"""That the reader can fail, whatever the program's state. A packet is held against a job that differs from its own in
one figure or word, and packets in which one thing drawn or printed was altered are held against their own job: each
difference must be found, of its kind. The unaltered packets must give no finding, or one found would prove nothing."""
import math
import multiprocessing
import pathlib
import re
import sys
import tempfile

import fitz

import apprentice
import jobs
import judge
import paper
import printer
import refusals

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
FULL = ARCH + "[opening.template]\nhalf = false\n"
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
# Through a printer that is 1 % long, measured by nobody.
UNTRUE = '# printer {"media": "na_letter_8.5x11in", "first": "top", "level": 1.01, "upright": 1.01}\n' + WALL
ALONG = ARCH[:ARCH.index("[opening.casing]")].replace("na_letter_8.5x11in", "na_ledger_11x17in") \
    + '[opening.template]\nsheets = "along"\nhalf = false\n'
# A roll too narrow for captions above its strips: they stand ahead of them, also of an end's own without kerfs.
ROLL = ARCH.replace('media = "na_letter_8.5x11in"', 'media = "na_letter_8.5x11in"\nstrip_media = "custom_roll_29mm"') \
    .replace('"segmental"', '"semicircular"').replace("rise = 10\n", "") \
    .replace("depth = 5\n", "through_legs = true\ndepth = 5\n")
CATENARY = FULL.replace('"segmental"', '"catenary"').replace("span = 48", 'span = 48\nmeasured_to = "finish"')
# Half of it lies on itself turned about, and its one sheet is turned on its paper.
WAVE = ARCH.replace('"segmental"', '"eyebrow"').replace("[printer]", '[printer]\ntemplate_media = "custom_roll_36in"') \
    + '[opening.template]\nsheets = "along"\nhalf = true\n'
# Segments of a head that comes to a point lie on either of its halves, and nearly on more places.
POINTED = ARCH.replace('"segmental"', '"pointed"').replace("rise = 10", "rise = 46")
# A wall as a tape measured it, to the sixteenth; what it is in truth stands beside it.
MEASURED = '# truth {"id": "B", "shape": "segmental", "span": 72, "rise": 9}\n' + WALL.replace(
    "chord = 72\nrise = 9\n", "ordinates = [[0, 0], [12, 5.125], [24, 8.0625], [36, 9], [48, 8.0625], [60, 5.125], [72, 0]]\n")
CASES = [
    (FULL, "span = 48", "span = 48.25", ["blank length", "template finished line"]),
    (FULL, "rise = 10", "rise = 10.25", ["blank length", "template wall line"]),
    (FULL, "thickness = 0.5", "thickness = 0.625", ["template finished line"]),
    (FULL, "width = 3", "width = 3.125", ["template casing outside"]),
    (FULL, "reveal = 0.25", "reveal = 0.375", ["template casing inside"]),
    (FULL, "rise = 10", "rise = 11", ["mitre angle"]),
    (FULL, "legs = 72\n", "", ["mitre of a square end"]),
    (FULL, 'zero = "right"', 'zero = "left"', ["ticks"]),
    (FULL, "trim = 3", "trim = 3.25", ["mark BEND ENDS", "trim's figure"]),
    (WALL, "chord = 72", "chord = 72.25", ["blank length", "form ordinates"]),
    (WALL, "chord = 72", "chord = 96", ["board on the wall"]),
    (WALL, 'measured_to = "finish"', 'measured_to = "wall"', ["blank length", "form ordinates"]),
    (WALL, 'side = "concave"', 'side = "convex"', ["open or close", "form's face"]),
    (WALL, "rise = 9", "rise = 9.125", ["form ordinates"]),
    (WALL, "kerf = 0.12", "kerf = 0.13", ["set-up card"]),
    (POINTED, "width = 3", "width = 3.125", ["casing segments"]),
    (POINTED, "rise = 46", "rise = 48", ["casing segments"]),
    (FULL, "width = 3", "width = 3.125", ["casing segments"]),
    (MEASURED, '"rise": 9', '"rise": 9.25', ["form ordinates", "blank length"]),
    (ALONG, "rise = 10", "rise = 10.25", ["template wall line"]),
    (CATENARY, "rise = 10", "rise = 10.25", ["template finished line", "template casing outside"]),
    (CATENARY, "width = 3", "width = 3.125", ["template casing outside"]),
    (WAVE, "width = 3", "width = 3.125", ["template casing outside"]),
    (WAVE, "rise = 10", "rise = 10.25", ["template casing outside", "crosses to flip on"]),
]


# Half the board's thickness deep, and bent twice as sharply as that takes.
REFUSED = HEAD + """[[opening]]
id = "R"
shape = "semicircular"
span = 25
depth = 4.5
[opening.liner]
material = "mdf"
thickness = 0.75
kerf_depth = 0.375
"""


def one_for_another(old, new):
    """Also where a space follows, to words that are read with these."""
    spaced = lambda words: words.replace(") Tj", " ) Tj")
    return lambda text: text.replace(old, new, 1) if old in text else text.replace(spaced(old), spaced(new), 1)


def foot_moved(text, with_shaft):
    """The fifth foot of a page 1/16 in along, with its shaft or without."""
    foot = list(re.finditer(r"(?m)^([\d.]+) [\d.]+ 8\.64 3 re$", text))[5]
    left = float(foot.group(1))
    text = text[:foot.start()] + foot.group(0).replace(foot.group(1), f"{left + 4.5:.3f}", 1) + text[foot.end():]
    if not with_shaft:
        return text
    return re.sub(r"(?m)^([\d.]+)( [\d.]+ [ml])$", lambda m: f"{float(m.group(1)) + 4.5:.3f}{m.group(2)}"
                  if abs(float(m.group(1)) - left - 4.32) < 0.01 else m.group(0), text)


def foot_gone(text):
    foot = list(re.finditer(r"(?m)^[\d.]+ [\d.]+ 8\.64 3 re\n", text))[5]
    return text[:foot.start()] + text[foot.end():]


def bent(text):
    """The longest curve of a page bent some 3/16 in more in its middle; a segment turns to make up for half of it."""
    curves = list(re.finditer(r"(?m)^([\d.]+) ([\d.]+) ([\d.]+) ([\d.]+) ([\d.]+) ([\d.]+) c$", text))
    long = lambda m: math.dist((float(m[1]), float(m[2])), (float(m[5]), float(m[6])))
    most = max(curves, key=long)
    at = [float(v) + 18 * (i < 4) for i, v in enumerate(most.groups())]
    return text[:most.start()] + " ".join(f"{v:.3f}" for v in at) + " c" + text[most.end():]


def ordinate_on(text):
    """The exact height of the fourth row of a form's table 1/8 in on."""
    exact = list(re.finditer(r"\((\d+\.\d{3}) ?\) Tj", text))[3]
    return text[:exact.start()] + f"({float(exact[1]) + 0.125:.3f} ) Tj" + text[exact.end():]


ALTERED = [
    (WALL, "strips", "a tick 1/16 in along", lambda t: foot_moved(t, True), "checklist column"),
    (WALL, "strips", "a foot 1/16 in along", lambda t: foot_moved(t, False), "ticks"),
    (WALL, "strips", "a foot gone", foot_gone, "misnumbered"),
    (WALL, "strips", "cut 14 numbered 15", one_for_another("(14) Tj", "(15) Tj"), "misnumbered"),
    (WALL, "strips", "open for close", one_for_another("they OPEN) Tj", "they CLOSE) Tj"), "open or close"),
    (WALL, "setup", "open for close", one_for_another("they OPEN) Tj", "they CLOSE) Tj"), "open or close"),
    (WALL, "strips", "no trim", one_for_another("(TRIM 3 in", "(3 in"), "trim not on the strip"),
    (WALL, "strips", "a tape mark without its figure", one_for_another("(10 in) Tj", "( ) Tj"),
     "tape mark without its figure"),
    (WALL, "strips", "a tape mark of 11 in", one_for_another("(10 in) Tj", "(11 in) Tj"), "tape mark of the caption"),
    (WALL, "strips", "the bend's start 1/8 in on", one_for_another("STARTS 3 in", "STARTS 3-1/8 in"),
     "mark BEND STARTS"),
    (ROLL, "strips", "no trim on an end's own strip", one_for_another("(TRIM 3 in", "(3 in"), "trim not on the strip"),
    (WALL, "checklist", "a figure 1/16 in on", one_for_another("(5-1/4) Tj", "(5-5/16) Tj"),
     "checklist column"),
    (FULL, "strips", "no mitre", one_for_another("(MITER 22", "(22"), "mitre not on the strip"),
    (FULL, "strips", "a mitre longer", one_for_another("plain face shorter", "plain face longer"),
     "mitre the wrong way"),
    (POINTED, "casing", "a segment bent", bent, "casing segments"),
    (MEASURED, "form", "an ordinate 1/8 in on", ordinate_on, "form ordinates"),
    (ALONG, "template", "a cross without its label", one_for_another("(1|2 inside) Tj", "( ) Tj"),
     "cross without a label"),
]


def altered(file, kind, change):
    """The packet again with the first page of a section that the change touches."""
    packet = paper.Packet(file)
    for pages in [p for (_, k), p in packet.parts.items() if k == kind]:
        for index in pages:
            for xref in packet.doc[index].get_contents():
                text = paper.by_operator(packet.doc.xref_stream(xref))
                try:
                    other = change(text)
                except (IndexError, ValueError):  # a page with too few feet, or no curve
                    continue
                if other != text:
                    packet.doc.update_stream(xref, other.encode("latin1"))
                    out = file.with_name("altered.pdf")
                    packet.doc.save(out)
                    return out
    raise ValueError(f"nothing to alter: {kind}")


def kinds(text, packet, kind=None, change=0):
    """What is found; `change` counts the rows of ALTERED (a function does not go from one process to another)."""
    if kind:
        packet = altered(packet, kind, ALTERED[change][3])
    return {k for k, _ in judge.judge(jobs.read(text), packet).found}


def refused_amiss(folder):
    """How many of a refusal's figures go unfound when they are not so, or are found when they are."""
    file = pathlib.Path(folder, "refused.toml")
    file.write_text(REFUSED)
    said = apprentice.build(printer.Printer(apprentice.PROGRAM, REFUSED, folder), file, "--force").stderr
    missed = 0
    for text, words, amiss in ((REFUSED, said, False), (REFUSED.replace("mdf", "plywood"), said, True),
                               (REFUSED, re.sub(r"to [\d.]+ of break", "to 0.97 of break", said), True)):
        found = judge.Findings()
        refusals.judged(jobs.read(text), words, found)
        if bool(found.found) != amiss or not found.counts:
            print(f"a refusal that is {'not ' if amiss else ''}so: {found.found}; said: {words}")
            missed += 1
    return missed


def in_a_process(*arguments):
    with multiprocessing.Pool(1) as pool:
        return pool.apply(kinds, arguments)


def main():
    missed = 0
    with tempfile.TemporaryDirectory() as folder:
        packets = {}
        for text in (FULL, WALL, ALONG, ROLL, CATENARY, WAVE, POINTED, MEASURED):
            file = pathlib.Path(folder, f"{len(packets)}.toml")
            file.write_text(text)
            apprentice.build(printer.Printer(apprentice.PROGRAM, text, folder), file)
            packets[text] = file.with_suffix(".pdf")
            found = in_a_process(text, packets[text])
            if found:
                print(f"the unaltered packet has findings: {sorted(found)}")
                missed += 1
        untrue = pathlib.Path(folder, "untrue.toml")
        untrue.write_text(UNTRUE)
        apprentice.build(printer.Printer(apprentice.PROGRAM, UNTRUE, folder), untrue)
        found = in_a_process(UNTRUE, untrue.with_suffix(".pdf"))
        if "tape marks disagree" not in found:
            print(f"a printer 1 % long that no profile corrects was not found, but {sorted(found)}")
            missed += 1
        missed += refused_amiss(folder)
        for text, old, new, wanted in CASES:
            assert old in text
            found = in_a_process(text.replace(old, new), packets[text])
            if not found.issuperset(wanted):
                print(f'"{old}" read as "{new}": not found {sorted(set(wanted) - found)}, but {sorted(found)}')
                missed += 1
        for number, (text, part, words, _, kind) in enumerate(ALTERED):
            found = in_a_process(text, packets[text], part, number)
            if kind not in found:
                print(f"{part}, {words}: {kind} was not found, but {sorted(found)}")
                missed += 1
    print(f"{len(CASES)} jobs and {len(ALTERED)} packets altered, {missed} amiss")
    return 1 if missed else 0


if __name__ == "__main__":
    sys.exit(main())
