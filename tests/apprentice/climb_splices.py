"""Boards that climb and are made of several blanks, read off the paper: each blank's kerf lines and the lines of its
cuts are read out of its own strips and checklist, the blanks laid on each other where these lines meet, and the whole
folded in space and laid on the wall: climb_splices.py COUNT SEED [moved | square].

It fails where an end of any kerf is more than 1/32 in off, or where lines of cuts do not meet, or lean otherwise than
the kerfs. With a word at the end a line of each packet is altered, which must be found: the cuts of one blank drawn half
an inch on, or square across the board. Strips over the edge draw no line across the board: they are not read here."""
import random
import re
import sys

import numpy as np

import climb
from in_space import over_seeds, printed
from judge import inches
from paper import Packet, Sheet, by_operator
from splices import CUT_AS, JOINT

TAPE = 1 / 32  # what a figure told to the nearest sixteenth may be off
DRAWN = 0.01


class Job(climb.Job):
    """The joint lies in a straight end, or where both are short in the bend."""

    def __init__(self, seed):
        super().__init__(seed)
        r = random.Random(f"splices {seed}")
        self.edge = False
        self.in_bend = seed % 3 == 0
        if self.in_bend:
            self.thickness, self.depth = 0.5, 0.25
            self.radius, self.angle = round(r.uniform(84, 110) * 4) / 4, r.randint(75, 110)
            self.tails = r.choice([(0, 0), (6, 9.5)])
            self.most = round(self.length() * r.uniform(0.6, 0.75) * 4) / 4
        else:
            long, short = round(r.uniform(60, 100) * 2) / 2, round(r.uniform(0, 16) * 2) / 2
            self.tails = (long, short) if r.random() < 0.5 else (short, long)
            self.most = round((self.length() - long * r.uniform(0.5, 0.8)) * 4) / 4

    def text(self):
        return super().text() + f'max_blank = "{self.most} in"\n'

    def scarf(self):
        """Along the front edge: square to the kerfs it is as long as the board is thick."""
        return self.thickness / np.cos(self.kerf_angle())

    def most_gap(self):
        """A kerf beside the end may have stood in a scarf."""
        return self.spacing + (1.5 * self.thickness if self.in_bend else 0)


class Strip:
    """What is drawn between two captions, its places along the front edge counted on the page from the zero side, inches:
    (place, lean) of dashed and of heavy lines across it, one for all the pieces that words leave of a line."""

    def __init__(self, lines, feet, words, caption, job):
        self.flip = 1 if job.zero_left else -1
        self.feet = sorted(self.flip * x / 72 for x, _, _, _ in feet)
        self.caption = caption
        self.words = words
        uprights = [l for l in lines if l[1] - l[3] > 4]
        self.base = feet[0][1] if feet else max((l[1] for l in uprights), default=0)
        self.dashed = self.across(l for l in uprights if l[5] == "4 3" and 0.6 < l[4] < 0.8)
        self.heavy = self.across(l for l in uprights if l[4] > 1.3 and not l[5] and l[1] - l[3] > 8)
        self.ends = self.across(l for l in uprights if l[4] > 2.5 and not l[5])
        self.dotted = [l for l in uprights if l[5] == "1 3"]

    def across(self, lines):
        found = {}
        for x0, y0, x1, y1, _, _ in lines:
            lean = (x1 - x0) / (y0 - y1)
            place = self.flip * (x0 - lean * (self.base - y0)) / 72
            found.setdefault(round(place, 2), (place, lean))
        return list(found.values())

    def zero(self, places, amiss):
        """Where the blank's zero lies: by its kerfs, by the tape's mark that the caption names, by the zero line."""
        kerfs = re.search(r"kerfs (\d+) to \d+", self.caption)
        by_kerfs = self.feet[0] - places[int(kerfs[1])] if kerfs and self.feet else None
        mark = re.search(r"set the mark at ([\d/ -]+ in)", self.caption)
        if mark and self.dotted:
            named = [x for text, x in self.words if text == mark[1]]
            top = lambda l: min((abs(l[2] - x) for x in named), default=1e9)
            line = min((l for l in self.dotted if top(l) < 60), key=top, default=None)
            if line:
                by_mark = self.across([line])[0][0] - inches(mark[1], False)
                if by_kerfs is not None and abs(by_mark - by_kerfs) > DRAWN:
                    amiss.append(f"the tape's mark {mark[1]} stands {by_mark - by_kerfs:.3f} off the kerfs beside it")
                return by_mark if by_kerfs is None else by_kerfs
        if by_kerfs is None and self.ends and "zero line flush" in self.caption:
            return min(self.ends)[0]
        return by_kerfs

    def cuts(self, places, job, amiss):
        """Where cuts for joints meet kerf face and plain face, from zero: a dashed line and a heavy one further on."""
        for plain, lean in self.dashed:
            zero = self.zero(places, amiss)
            if zero is None:
                amiss.append("a cut on a strip that no tape finds")
                continue
            kerf_face, slope = min(self.heavy, key=lambda h: abs(h[0] - plain - job.scarf()), default=(0, 0))
            if abs(kerf_face - plain - job.scarf()) > DRAWN:
                amiss.append(f"a cut at {plain - zero:.3f} has no heavy line {job.scarf():.3f} on")
            for one in (lean, slope):
                if abs(one - job.lean_drawn()) > 0.003:
                    amiss.append(f"a cut leans {one:.3f}, the kerfs {job.lean_drawn():.3f}")
            yield kerf_face - zero, plain - zero


def strips_of(page, job):
    """The strips of a page, from above."""
    sheet = Sheet(page, False)
    lines = [(*(l[:4] if l[1] >= l[3] else (l[2], l[3], l[0], l[1])), *l[4:]) for l in sheet.lines]  # lower end first
    level = [(text.strip(), box) for text, _, box, straight, _ in sheet.phrases if straight]
    heads = sorted(box[3] for text, box in level if re.match(r"Strip \d+ of \d+", text))
    feet = list(climb.feet_of(page))
    for high, low in zip(heads, [h - 8 for h in heads[1:]] + [page.rect.height - 55]):
        own = lambda y: high - 2 < y < low
        caption = " ".join(text for text, box in level if abs(box[3] - high) < 3)
        yield Strip([l for l in lines if own(l[1]) and own(l[3])], [foot for foot in feet if own(foot[1])],
                    [(text, box[0]) for text, box in level if own(box[3])], caption, job)


def altered(file, change):
    """One blank's drawn cuts half an inch on, or square across the board, in the packet itself."""
    packet = Packet(file)
    for (name, kind), pages in sorted(packet.parts.items()):
        for page in [packet.doc[k] for k in pages if kind == "strips"]:
            lines = [l for l in Sheet(page, False).lines if l[5] == "4 3" and 0.6 < l[4] < 0.8 and abs(l[1] - l[3]) > 30]
            if lines:
                return redrawn(packet.doc, page, lines[0], change, file)
    raise ValueError("no cut is drawn")


def redrawn(doc, page, dashed, change, file):
    """With the dashed line of a cut and the heavy ones beside it moved, but no tape's mark."""
    high, low = sorted((page.rect.height - dashed[1], page.rect.height - dashed[3]))
    slope = (dashed[2] - dashed[0]) / (dashed[1] - dashed[3])
    style = {"d": "", "w": 0.0}

    def other(m):
        if m["set"]:
            style[m["set"]] = m["to"] if m["set"] == "d" else float(m["to"])
            return m[0]
        x0, y0, x1, y1 = (float(v) for v in m["line"].split() if v not in "ml")
        cut = style["d"] == "[4 3] 0" or style["d"] == "[] 0" and style["w"] > 1.3
        beside = high - 0.1 < min(y0, y1) and max(y0, y1) < low + 0.1 and abs(y1 - y0) > 8.5
        if not cut or not beside or abs((x1 - x0) / (y1 - y0) - slope) > 0.01:
            return m[0]
        by = [36, 36] if change == "moved" else [(high - y) * slope for y in (y0, y1)]
        return f"{x0 + by[0]:.3f} {y0} m\n{x1 + by[1]:.3f} {y1} l\n"

    for xref in page.get_contents():
        text = by_operator(doc.xref_stream(xref))
        text = re.sub(r"(?m)^(?P<to>.+) (?P<set>[dw])$|(?P<line>^[-\d.]+ [-\d.]+ m\n[-\d.]+ [-\d.]+ l\n)", other, text)
        doc.update_stream(xref, text.encode("latin1"))
    doc.saveIncr()


class Whole:
    """Its blanks laid on each other from zero on, by the lines of their cuts."""

    def __init__(self, paper, job, amiss):
        self.paper, self.job, self.amiss = paper, job, amiss
        cover = re.sub(r"\s+", " ", paper.cover)
        self.lengths = {m[1]: inches(m[2], False) for m in CUT_AS.finditer(cover)}
        self.joints = {m[1]: (inches(m[4], False), inches(m[5], False)) for m in JOINT.finditer(cover)}
        self.kerfs, self.leans, self.cuts, self.zero = [], [], [], 0.0
        if len(self.lengths) < 2 or len(self.joints) != len(self.lengths) - 1:
            amiss.append(f"{len(self.lengths)} blanks, {len(self.joints)} joints on the cover")

    def lay(self):
        for i in range(1, len(self.lengths) + 1):
            self.lay_on(f"S/{i}", i > 1, i < len(self.lengths))
        long = self.zero + self.lengths[f"S/{len(self.lengths)}"]
        if abs(long - self.job.length()) > 2 * TAPE + len(self.cuts) * DRAWN:
            self.amiss.append(f"the blanks are {long:.3f} long together, not {self.job.length():.3f}")
        if any(plain < at < kerf_face for kerf_face, plain in self.cuts for at in self.kerfs):
            self.amiss.append("a kerf in a scarf")

    def lay_on(self, name, joined, goes_on):
        near, far = self.told(name)
        places = {}
        if (name, "strips") in self.paper.parts:
            places, leans = climb.read_kerfs(self.paper, name, self.job, self.amiss)
            self.leans += leans
            near, far = self.drawn(name, places, near if joined else None, far if goes_on else None)
        if joined:
            self.zero = self.cuts[-1][0] - near[0]
            if abs(self.zero + near[1] - self.cuts[-1][1]) > DRAWN:
                self.amiss.append(f"{name}: the plain faces do not meet")
        self.kerfs += [self.zero + places[n] for n in sorted(places)]
        if not goes_on:
            return
        self.cuts.append((self.zero + far[0], self.zero + far[1]))
        (scarf, middle), drawn = self.joints[name], sum(self.cuts[-1]) / 2
        if abs(drawn - middle) > TAPE + DRAWN or abs(scarf - self.job.scarf()) > TAPE:
            self.amiss.append(f"{name}: a joint at {middle:.3f}, {scarf:.3f} long; drawn at {drawn:.3f}")

    def told(self, name):
        """By its length alone: where the cuts meet kerf face and plain face, were both its ends joints. Along the kerfs,
        of which the other edge's end may stand out beyond that of the front edge."""
        near, far = max(0.0, -self.job.lean()), self.lengths[name] - max(0.0, self.job.lean())
        return (near + self.job.scarf(), near), (far, far - self.job.scarf())

    def drawn(self, name, places, near, far):
        """The same by the lines of its strips; they stand where its length says."""
        cuts = [cut for page in climb.strip_pages(self.paper, name) for strip in strips_of(page, self.job)
                for cut in strip.cuts(places, self.job, self.amiss)]
        told = [(cut, off) for cut, off in ((near, DRAWN), (far, TAPE + DRAWN)) if cut]
        if len(cuts) != len(told):
            self.amiss.append(f"{name}: {len(cuts)} cuts are drawn")
            return near, far
        for (kerf_face, _), (cut, off) in zip(cuts, told):
            if abs(kerf_face - cut[0]) > off:
                self.amiss.append(f"{name}: its cut stands at {kerf_face:.3f}, not {cut[0]:.3f}")
        return (cuts[0] if near else None), (cuts[-1] if far else None)


def judge(seed, folder, change):
    job, amiss = Job(seed), []
    packet, why = printed(job.text(), seed, folder, "--force")
    if why:
        return [why], 0, 0
    if change:
        altered(packet, change)
    paper = Packet(packet)
    climb.said_of_saw("\n".join(page.get_text() for page in paper.doc), job, amiss)
    whole = Whole(paper, job, amiss)
    if not amiss:
        whole.lay()
    kerfs = np.array(whole.kerfs)
    if len(kerfs) < 2 or (np.diff(kerfs) <= 0).any():
        return amiss + ["kerfs out of order, or none"], 0, 0
    return amiss, climb.stood_on_wall(job, kerfs, whole.leans, amiss), len(kerfs)


if __name__ == "__main__":
    sys.exit(over_seeds(judge, "boards of several blanks that climb", "wall", int(sys.argv[1]), int(sys.argv[2]),
                        *sys.argv[3:]))
