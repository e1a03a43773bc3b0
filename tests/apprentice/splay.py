"""Splayed jambs, read off the paper: the kerf lines of ten made-up jobs are read out of the PDF's sheets of the flat
blank, the sheets joined by their crosses, the blank folded in space and laid on its soffit: splay.py COUNT SEED [SLIP].
It fails where an end of any kerf is more than 1/32 in off. Both sides of the wall are cased: every segment's edges must
lie on the parallels of its own side's edge, and those of one side be as long together as that casing.

Inches and radians. What is expected is made of the job's figures alone: the soffit is the surface whose straight lines
stand square to the head's parallels and lean out by one angle everywhere."""
import random
import re
import sys

import fitz
import numpy as np

from board import line_that_keeps_its_length
from in_space import ALLOWED, laid, over_seeds, printed, turned
from laying import off, settle
from tiles import Tile, crosses_of, turned as turned_flat
from paper import Sheet

FLAT = "Flat blank|Pieza plana"
SEGMENTS = 20  # of a side: each comes out of one sheet of paper


class Job:
    def __init__(self, seed):
        r = random.Random(seed)
        any_of = lambda lo, hi, step: round(r.uniform(lo, hi) / step) * step
        self.shape = ["semicircular", "elliptical", "segmental", "parabolic"][seed % 4]
        self.span = any_of(44, 90, 0.25)
        self.rise = self.span / 2 if self.shape == "semicircular" else any_of(0.28, 0.42, 0.001) * self.span
        self.rise = round(self.rise * 16) / 16
        self.narrow = r.random() < 0.5
        self.room = r.random() < 0.5
        self.zero_left = r.random() < 0.5
        self.angle = any_of(5, 24, 0.5)
        self.depth = any_of(3.5, 8.5, 0.25)
        self.thickness, self.kerf_depth = 0.5, r.choice([0.25, 0.3125])
        self.kerf, self.trim = r.choice([0.1, 0.118, 0.126]), any_of(0, 3, 0.25)
        self.spacing = r.choice([0.375, 0.4375])
        self.paper = r.choice(["na_letter_8.5x11in", "iso_a4_210x297mm", "na_legal_8.5x14in"])
        self.language = r.choice(["en", "es"])
        self.casing, self.reveal = any_of(2, 4, 0.25), any_of(0, 0.5, 0.0625)

    def text(self):
        quoted = lambda x: f'"{x} in"'
        rise = "" if self.shape == "semicircular" else f"rise = {quoted(self.rise)}\n"
        return f'''[job]
number = "Y-{self.span:g}"
title = "A porch of nobody's"
revision = "A"
date = 2026-11-04
units = "in"
language = "{self.language}"
[saw]
blade_diameter = "12 in"
kerf = {self.kerf}
[printer]
template_media = "{self.paper}"
[packet]
leave_out = ["template", "strain", "checklist"]
[[opening]]
id = "Y"
shape = "{self.shape}"
span = {quoted(self.span)}
{rise}depth = {quoted(self.depth)}
measured_to = "finish"
[opening.splay]
angle = {self.angle}
measured = "{"narrow" if self.narrow else "wide"}"
toward = "{"room" if self.room else "away"}"
[opening.liner]
material = "mdf"
thickness = {quoted(self.thickness)}
kerf_depth = {quoted(self.kerf_depth)}
spacing = {quoted(self.spacing)}
trim = {quoted(self.trim)}
zero = "{"left" if self.zero_left else "right"}"
[opening.casing]
width = {quoted(self.casing)}
reveal = {quoted(self.reveal)}
wall_side = "both"
segments = {SEGMENTS}
'''

    def head(self):
        """Of the measured curve, from the left: points, outward normals, headings, finely and a little beyond both
        ends, and the places of the springs among them."""
        half = self.span / 2
        n = 40000
        if self.shape in ("semicircular", "elliptical"):
            t = np.linspace(np.pi * 1.12, -np.pi * 0.12, n)
            x, y = half * np.cos(t), self.rise * np.sin(t)
            dx, dy = half * np.sin(t), -self.rise * np.cos(t)
            ends = np.pi, 0.0
        elif self.shape == "segmental":
            radius = (half**2 + self.rise**2) / (2 * self.rise)
            reach = np.arcsin(half / radius)
            t = np.linspace(-reach * 1.2, reach * 1.2, n)
            x, y = radius * np.sin(t), radius * np.cos(t) - (radius - self.rise)
            dx, dy = np.cos(t), -np.sin(t)
            ends = -reach, reach
        else:
            t = np.linspace(-half * 1.2, half * 1.2, n)
            x, y = t, self.rise * (1 - (t / half) ** 2)
            dx, dy = np.ones(n), -2 * self.rise * t / half**2
            ends = -half, half
        long = np.hypot(dx, dy)
        normal = np.column_stack([-dy / long, dx / long])
        heading = np.unwrap(np.arctan2(dy, dx))
        order = t if t[0] < t[-1] else -t
        springs = np.interp([e if t[0] < t[-1] else -e for e in ends], order, np.arange(n))
        return np.column_stack([x, y]), normal, heading, springs

    def edge(self, at_room):
        """How far the liner's seen face stands out from the measured curve, at that side of the wall."""
        side = self.depth * np.tan(np.radians(self.angle))
        return (side if at_room == self.room else 0) - (0 if self.narrow else side)

    def soffit(self):
        """A function of stations along the line that keeps its length, from the left spring, and of how far out along
        the straight lines: places in space (x right and y up seen from the room, z toward it), and the heading."""
        alpha = np.radians(self.angle)
        b = line_that_keeps_its_length(self.thickness, self.kerf_depth, self.kerf, self.spacing, "mdf")
        points, normal, heading, springs = self.head()
        side = self.depth * np.tan(alpha)
        up = b / np.cos(alpha) - (0 if self.narrow else side)
        line = points + normal * up
        along = np.concatenate([[0], np.cumsum(np.linalg.norm(np.diff(line, axis=0), axis=1))])
        from_, to = np.interp(springs, np.arange(len(along)), along)
        along -= from_
        z = 1 if self.room else -1

        def at(s, out):
            on = np.column_stack([np.interp(s, along, line[:, i]) for i in (0, 1)])
            n = np.column_stack([np.interp(s, along, normal[:, i]) for i in (0, 1)])
            n /= np.linalg.norm(n, axis=1)[:, None]
            return np.column_stack([on + n * out * np.sin(alpha), np.full(len(s), z * out * np.cos(alpha))])

        return at, lambda s: np.interp(s, along, heading), to - from_, b


def flat(page):
    """Feet as pairs (outer end, inner end), their numbers, straight lines by weight, crosses: x right, y up, inches."""
    sheet = Sheet(page, False)
    up = lambda p: np.array([p[0], -p[1]]) / 72
    lines = [(up(l[:2]), up(l[2:4]), l[4]) for l in sheet.lines]
    crosses = [up(c) for c in crosses_of(sheet)]
    numbers = []
    for block in page.get_text("dict")["blocks"]:
        for line in block.get("lines", []):
            for span in line["spans"]:
                if re.fullmatch(r"\d+", span["text"].strip()):
                    x0, y0, x1, y1 = span["bbox"]
                    numbers.append((int(span["text"]), up(((x0 + x1) / 2, (y0 + y1) / 2))))
    return lines, numbers, crosses


def parts_of(doc, title):
    """The pages of each part of the packet that is called so: of the blanks that the liner is divided into, from zero
    on."""
    toc = [(words, page - 1) for _, words, page in doc.get_toc()] + [("", len(doc))]
    return [[doc[page] for page in range(first, last)] for (words, first), (_, last) in zip(toc, toc[1:])
            if re.search(title, words)]


def joined(pages, job, amiss):
    """Number -> its line's foot at either edge, the line at the zero end, all in the place of the first sheet."""
    wide, narrow, ends, shafts = {}, {}, [], []
    turn, shift, last = np.eye(2), np.zeros(2), None
    for page in pages:
        if not re.search(r"(Flat blank, sheet|Pieza plana, hoja) \d+", page.get_text()):
            continue
        lines, numbers, crosses = flat(page)
        crosses.sort(key=lambda c: c[0])
        middle = page.rect.width / 144
        left = sorted((c for c in crosses if c[0] < middle), key=lambda c: c[1])
        right = sorted((c for c in crosses if c[0] >= middle), key=lambda c: c[1])
        if last is not None:
            if len(left) != 2:
                amiss.append(f"page {page.number + 1}: {len(left)} crosses at the left")
                return None
            a, b = left[1] - left[0], last[1] - last[0]
            if abs(np.hypot(*a) - np.hypot(*b)) > 0.004:
                amiss.append(f"page {page.number + 1}: its crosses stand {np.hypot(*a):.4f} apart, {np.hypot(*b):.4f} on the sheet before")
            by = np.arctan2(b[1], b[0]) - np.arctan2(a[1], a[0])
            turn = turned_flat(by)
            shift = (last[0] + last[1]) / 2 - turn @ ((left[0] + left[1]) / 2)
        place = lambda p: turn @ p + shift
        last = [place(c) for c in right] if len(right) == 2 else None
        feet = [(a, b) for a, b, w in lines if abs(w - job.kerf * 72) < 0.1 and abs(np.hypot(*(a - b)) - 6 / 72) < 0.01]
        for a, b in feet:
            along = (b - a) / np.hypot(*(b - a))
            # On its own line, inside the foot; beyond a joint the number may be the next sheet's to show.
            own = [n for n in numbers if abs(np.cross(along, n[1] - b)) < 0.06 and 0 < along @ (n[1] - b) < 0.6]
            if not own:
                continue
            near = min(own, key=lambda n: np.hypot(*(n[1] - b)))
            edge = wide if a[1] > b[1] else narrow
            edge.setdefault(near[0], []).append(place(a))
        ends += [(place(a), place(b)) for a, b, w in lines if abs(w - 1.4) < 0.02 and np.hypot(*(a - b)) > job.depth * 0.9]
        shafts += [(place(a), place(b)) for a, b, w in lines if abs(w - 0.7) < 0.02 and np.hypot(*(a - b)) > 0.1]
    for edge in (wide, narrow):
        for n, places in edge.items():
            if np.linalg.norm(np.array(places) - places[0], axis=1).max() > 0.01:
                amiss.append(f"foot {n} stands at two places on two sheets")
    return {n: p[0] for n, p in wide.items()}, {n: p[0] for n, p in narrow.items()}, ends, shafts


def numbers_in(text):
    """"1, 4-6" is 1, 4, 5, 6."""
    out = []
    for part in text.split(", "):
        first, _, last = part.partition("-")
        out += range(int(first), int(last or first) + 1)
    return out


def casing_off(doc, job, amiss):
    """The farthest that an edge of a casing segment is drawn off the casing of its side of the wall."""
    points, normal, heading, springs = job.head()
    worst, served, lengths = 0.0, [], {True: 0.0, False: 0.0}
    for page in sum(parts_of(doc, "Casing segments|Segmentos del contramarco"), []):
        text = " ".join(page.get_text().split())
        named = re.search(r"(?:Casing segment|Segmento de contramarco) (\d+(?:, \d+|-\d+)*) (?:of|de) (\d+)", text)
        sides = [at_room for at_room, words in ((True, "ROOM SIDE|LADO DEL CUARTO"), (False, "FAR SIDE|LADO OPUESTO"))
                 if re.search(words, text)]
        if not named or len(sides) != 1 or int(named[2]) != 2 * SEGMENTS:
            amiss.append(f"page {page.number + 1}: a casing's sheet that says {named and named[0]}, {sides}")
            continue
        at_room, numbers = sides[0], numbers_in(named[1])
        served += [(n, at_room) for n in numbers]
        curves = [c / 72 * np.array([1, -1]) for c, width, _ in Tile(Sheet(page, False)).curved
                  if len(c) > 2 and width > 1.2]
        if not curves:
            amiss.append(f"page {page.number + 1}: no curved edge")
            continue
        worst = max(worst, off_its_edges(curves, (numbers[0] - 1) % SEGMENTS, job, at_room))
        lengths[at_room] += len(numbers) * inside_of(curves)
    if sorted(served) != [(n + 1, n < SEGMENTS) for n in range(2 * SEGMENTS)]:
        amiss.append(f"casing segments with a template, and their sides: {sorted(served)}")
    if job.shape in ("semicircular", "elliptical"):  # else a corner's mitre takes some of it, or leaves more
        for at_room, length in lengths.items():
            inner = points + normal * (job.edge(at_room) + job.reveal)
            between = inner[int(min(springs)):int(max(springs)) + 2]
            wanted = np.linalg.norm(np.diff(between, axis=0), axis=1).sum()
            if abs(length - wanted) > ALLOWED:
                amiss.append(f"the casing {'at the room' if at_room else 'of the far side'} is {length:.3f} long inside, "
                             f"not {wanted:.3f}")
    return worst


def off_its_edges(curves, before, job, at_room):
    """How far a segment's curves are off both edges of its casing where they lie best, about where it stands: so many
    are before it. Heads are alike from both sides of their wall."""
    points, normal, heading, springs = job.head()
    inner = job.edge(at_room) + job.reveal
    edges = [(points + normal * d)[::40] for d in (inner, inner + job.casing)]
    a, b = np.concatenate([e[:-1] for e in edges]), np.concatenate([e[1:] for e in edges])
    drawn = np.concatenate(curves)
    ends = np.concatenate([c[[0, -1]] for c in curves])
    along = np.concatenate([[0], np.cumsum(np.linalg.norm(np.diff(points + normal * inner, axis=0), axis=1))])
    from_, to = np.interp(sorted(springs), np.arange(len(along)), along)
    best = np.inf
    for part in (0.2, 0.5, 0.8):
        j = int(np.interp(from_ + (to - from_) * (before + part) / SEGMENTS, along, np.arange(len(along))))
        turn = turned_flat(heading[j])
        shift = points[j] + normal[j] * (inner + job.casing / 2) - turn @ ((drawn.min(axis=0) + drawn.max(axis=0)) / 2)
        turn, shift, _ = settle(drawn, a, b, turn, shift, True, ends)
        best = min(best, off(drawn @ turn.T + shift, a, b)[0].max())
    return float(best)


def inside_of(curves):
    """How long the inside edge of a segment is, its lines being pieces of both edges: of two that run side by side, the
    one on the hollow side, which is shorter."""
    runs = []
    for c in curves:
        place = next((r for r in runs if min(np.linalg.norm(c[0] - r[-1][-1]), np.linalg.norm(c[-1] - r[0][0])) < 0.005), None)
        if place is None:
            runs.append([c])
        elif np.linalg.norm(c[0] - place[-1][-1]) < 0.005:
            place.append(c)
        else:
            place.insert(0, c)
    lengths = [sum(np.linalg.norm(np.diff(c, axis=0), axis=1).sum() for c in run) for run in runs]
    return min(lengths) if len(lengths) == 2 else float("nan")


def judge(seed, folder, slip):
    """What is amiss, and the farthest that an end of a kerf is off the soffit. `slip`: degrees that the packet's jamb
    splays more than the reader believes; what it must find."""
    job, amiss = Job(seed), []
    job.angle += slip
    text = job.text()
    job.angle -= slip
    packet, why = printed(text, seed, folder, "--force")
    if why:
        return [why], 0, 0
    alpha = np.radians(job.angle)
    at, heading, length, b = job.soffit()
    whole = length + 2 * job.trim
    # As it lies: from the left. Zero is an end seen from the room; with the wide side there the blank lies round.
    from_left = job.zero_left != job.room
    worst, count, before, left_over = 0.0, 0, 0.0, None
    doc = fitz.open(packet)
    for pages in parts_of(doc, FLAT):
        read = joined(pages, job, amiss)
        if read is None:
            return amiss, 0, 0
        part = Part(*read, job, b, from_left, amiss)
        if part.numbers is None:
            return amiss, 0, 0
        start = before if from_left else whole - before - part.length
        off = part.off(start - job.trim, at, heading, length, job, b)
        worst, count, before = max(worst, off), count + len(part.numbers), before + part.length
        # A joint stands half way between two kerfs.
        first, last = part.to_ends if from_left else part.to_ends[::-1]
        if left_over is not None and (abs(first - left_over) > 0.01 or first > job.spacing):
            amiss.append(f"a joint stands {left_over:.3f} and {first:.3f} from the kerfs beside it")
        left_over = last
    off = casing_off(doc, job, amiss)
    if off > ALLOWED:
        amiss.append(f"an edge of a casing segment is {off:.4f} in off the casing of its side")
    if abs(before - whole) > 0.02:
        amiss.append(f"the blanks are {before:.3f} long together, not {whole:.3f}")
    if worst > ALLOWED:
        amiss.append(f"an end of a kerf stands {worst:.4f} in off the soffit")
    return amiss, worst, count


class Part:
    """A blank as its sheets show it, from left to right as it lies."""

    def __init__(self, wide, narrow, ends, shafts, job, b, from_left, amiss):
        self.numbers = None
        alpha = np.radians(job.angle)
        numbers = sorted(wide)
        if not numbers or numbers != sorted(narrow) or numbers != list(range(1, len(numbers) + 1)):
            amiss.append(f"wide edge has {len(wide)} numbers, narrow edge {len(narrow)}")
            return
        order = numbers if from_left else numbers[::-1]
        self.high, self.low = np.array([wide[n] for n in order]), np.array([narrow[n] for n in order])
        if not (np.diff(self.high[:, 0]) > 0).all():
            amiss.append("the numbers run the wrong way")
        along = np.linalg.norm(self.high - self.low, axis=1)
        self.sawn = job.depth / np.cos(alpha) + job.thickness * np.tan(alpha)
        if abs(along - self.sawn).max() > 0.01:
            amiss.append(f"kerf lines {along.max():.3f} long, the blank is {self.sawn:.3f} wide")
        up = (self.high - self.low) / along[:, None]
        for k, low in enumerate(self.low):
            if not any(max(abs(np.cross(up[k], p - low)) for p in s) < 0.01 for s in shafts):
                amiss.append(f"kerf {order[k]} has no line")
        # Where the line that keeps its length crosses the ends and each kerf: chords of the flat curve are its length
        # within a ten thousandth.
        def crossing(end):
            foot, head = sorted(end, key=lambda p: p[1])
            return foot + (head - foot) / np.linalg.norm(head - foot) * b * np.tan(alpha)
        by_place = sorted(ends, key=lambda e: e[0][0] + e[1][0])
        chain = np.vstack([crossing(by_place[0]), self.low + up * b * np.tan(alpha), crossing(by_place[-1])])
        steps = np.linalg.norm(np.diff(chain, axis=0), axis=1)
        self.length, self.to_ends = steps.sum(), (steps[0], steps[-1])
        self.places = np.cumsum(steps)[:-1]
        self.numbers = order

    def off(self, start, at, heading, length, job, b):
        """The farthest that an end of a kerf stands off the soffit, the blank's left end at that station."""
        alpha = np.radians(job.angle)
        stations = start + self.places
        rooms = stations if not job.room else length - stations
        bounds = np.concatenate([[rooms[0]], (rooms[1:] + rooms[:-1]) / 2, [rooms[-1]]])
        turns = abs(np.diff(heading(bounds))) * np.cos(alpha)
        flat_lines = [np.column_stack([p, np.zeros(len(p))]) for p in (self.high, self.low)]
        lines = np.stack(flat_lines, axis=1)
        for i, by in enumerate(turns):
            rest = lines[i + 1:].reshape(-1, 3)
            lines[i + 1:] = turned(rest, lines[i, 1], lines[i, 0] - lines[i, 1], by).reshape(-1, 2, 3)
        out = -b * np.tan(alpha)
        wanted = np.stack([at(rooms, out + self.sawn), at(rooms, out)], axis=1).reshape(-1, 3)
        return np.linalg.norm(laid(lines.reshape(-1, 3), wanted) - wanted, axis=1).max()


if __name__ == "__main__":
    sys.exit(over_seeds(judge, "splayed jambs", "soffit", int(sys.argv[1]), int(sys.argv[2]), *map(float, sys.argv[3:])))
