"""Sheets of a full-size drawing: what is drawn on each, put together by their crosses."""
import math
import re

import numpy as np


class Tile:
    def __init__(self, sheet):
        self.crosses = crosses_of(sheet)
        big = [w for w in sheet.glyphs if w.size > 22 and w.box[1] > 62 and re.match(r"^([A-Z]{1,2}\d+|\d+)$", w.text)]
        self.name = big[0].text if big else None
        self.curved, self.centre, self.centre_lines = [], [], []
        flips = any(re.match("FLIP HERE|VOLTEAR AQUÍ", p[0]) for p in sheet.phrases)
        for points, (width, dashes) in sheet.curves:
            if width < 0.6 or any(math.hypot(p[0] - c[0], p[1] - c[1]) < 7.2 for c in self.crosses for p in points[:1]
                                  if math.hypot(points[3][0] - c[0], points[3][1] - c[1]) < 7.2):
                continue  # the ring of a cross
            chain = bezier(points)
            self.curved.append((chain, width, dashes))
        height = sheet.page.rect.width if sheet.turned else sheet.page.rect.height
        for a0, b0, a1, b1, width, dashes in sheet.lines:
            level = abs(b0 - b1) < 0.01
            if width >= 0.6 and dashes != "1 3" and not (level and (b0 < 63 or b0 > height - 60)) \
                    and math.hypot(a1 - a0, b1 - b0) > 0.01:
                self.curved.append((np.array([[a0, b0], [a1, b1]]), width, dashes))
            if width < 0.6 and dashes == "9 3 1 3":
                self.centre_lines.append((a0, b0, a1, b1))
                if abs(a0 - a1) < 0.01:
                    self.centre.append(a0)
        self.names = names_of(sheet, self.crosses)
        self.flipped = [c for c in self.crosses if flips and any(beside(c, line) < 0.5 for line in self.centre_lines)]
        self.words = sheet


def bezier(points, most=24):
    """Points of a curve, a twelfth of an inch apart or as many as `most`."""
    p = np.array(points, float)
    n = min(most, max(3, int(np.hypot(*np.diff(p, axis=0).T).sum() / 6) + 2))
    t = np.linspace(0, 1, n)[:, None]
    return p[0] * (1 - t)**3 + 3 * p[1] * t * (1 - t)**2 + 3 * p[2] * t**2 * (1 - t) + p[3] * t**3


def crosses_of(sheet):
    level = [((l[0] + l[2]) / 2, l[1]) for l in sheet.lines if l[4] < 0.6 and abs(l[1] - l[3]) < 0.01
             and abs(abs(l[0] - l[2]) - 32) < 0.1]
    upright = [(l[0], (l[1] + l[3]) / 2) for l in sheet.lines if l[4] < 0.6 and abs(l[0] - l[2]) < 0.01
               and abs(abs(l[1] - l[3]) - 32) < 0.1]
    return sorted({(round(a, 2), round(b, 2)) for a, b in level for c, d in upright
                   if abs(a - c) < 0.06 and abs(b - d) < 0.06})


CROSS = re.compile(r"^(\d+\|\d+) (?:(inside|dentro)|outside|fuera)$")


def names_of(sheet, crosses):
    """(joint, whether inside) -> the cross that is called so: the nearest, or the one that a line leads to."""
    named = [(CROSS.match(p[0].strip()), p[2]) for p in sheet.phrases if CROSS.match(p[0].strip())]
    pairs = sorted((off_cross(sheet, c, box), m.group(1), bool(m.group(2)), c) for m, box in named for c in crosses)
    names, taken = {}, set()
    for away, joint, inside, cross in pairs:
        if (joint, inside) not in names and cross not in taken and away < 60:
            names[(joint, inside)] = cross
            taken.add(cross)
    return names


def off_cross(sheet, cross, box):
    """How far words are off a cross, or off the end of a line from its ring."""
    def off(p):
        return math.hypot(max(box[0] - p[0], 0, p[0] - box[2]), max(box[1] - p[1], 0, p[1] - box[3]))
    ends = [((l[0], l[1]), (l[2], l[3])) for l in sheet.lines if l[4] < 0.6 and not l[5]]
    led = [b for ab in ends for a, b in (ab, ab[::-1]) if 6 < math.dist(a, cross) < 7 and math.dist(a, b) > 4]
    return min([off(cross)] + [off(b) for b in led if off(b) < 4])


def beside(point, line):
    """Distance of a point from a line that runs on both ways."""
    a0, b0, a1, b1 = line
    return abs((a1 - a0) * (point[1] - b0) - (b1 - b0) * (point[0] - a0)) / max(math.hypot(a1 - a0, b1 - b0), 1e-9)


def tiles_of(packet, pages):
    out = []
    for index in pages:
        tile = Tile(packet.sheet(index))
        if tile.name and len(tile.crosses) >= 2:
            out.append(tile)
    if not out and len(pages) == 2:  # one sheet that holds all of it
        out = [Tile(packet.sheet(pages[1]))]
        out[0].name = "A1"
    return out


def column(letters):
    n = 0
    for c in letters:
        n = n * 26 + ord(c) - 64
    return n


def assemble_grid(tiles):
    """Every tile's offset: its cell's upper left cross, times the cell that the crosses of any tile span."""
    if len(tiles) == 1:
        return [(np.eye(2), np.zeros(2))]
    wide = max(max(c[0] for c in t.crosses) - min(c[0] for c in t.crosses) for t in tiles)
    high = max(max(c[1] for c in t.crosses) - min(c[1] for c in t.crosses) for t in tiles)
    out = []
    for t in tiles:
        m = re.match(r"([A-Z]+)(\d+)", t.name)
        corner = np.array([min(c[0] for c in t.crosses), min(c[1] for c in t.crosses)])
        shift = np.array([column(m.group(1)) * wide, int(m.group(2)) * high]) - corner
        out.append((np.eye(2), shift))
    return out


def assemble_along(f, tiles, name):
    """Each sheet turned onto the one before it, by the pair of crosses that their names say they share."""
    tiles.sort(key=lambda t: int(t.name))
    rot, shift, out = np.eye(2), np.zeros(2), []
    for before, t in zip([None, *tiles], tiles):
        if before:
            keys = [(f"{before.name}|{t.name}", inside) for inside in (True, False)]
            if not all(key in sheet.names for key in keys for sheet in (before, t)):
                f.add("crosses", f"{name} sheet {t.name}: {list(t.names)} on {list(before.names)}")
                return None
            a, b = (np.array([sheet.names[key] for key in keys]) for sheet in (before, t))
            if abs(math.dist(*a) - math.dist(*b)) > 0.5:
                f.add("crosses", f"{name} sheet {t.name}: {math.dist(*b):.1f} pt apart, {math.dist(*a):.1f} before")
            turn = math.atan2(*(a[1] - a[0])[::-1]) - math.atan2(*(b[1] - b[0])[::-1])
            r = turned(turn)
            shift = out[-1][0] @ (a[0] - r @ b[0]) + out[-1][1]
            rot = out[-1][0] @ r
        out.append((rot, shift))
        if len(t.names) < len(t.crosses) - len(t.flipped):
            f.add("cross without a label", f"{name} sheet {t.name}: {len(t.names)} labels, {len(t.crosses)} crosses")
    return out


def drawn(tiles, places):
    """Pieces of line of the whole drawing, in inches, y up: arrays of ends, their styles, whether they bend."""
    a, b, style, bent = [], [], [], []
    for t, (rot, shift) in zip(tiles, places):
        for chain, width, dashes in t.curved:
            p = (chain @ rot.T + shift) / 72 * np.array([1, -1])
            a.append(p[:-1])
            b.append(p[1:])
            style += [(width, dashes)] * (len(p) - 1)
            bent += [len(p) > 2] * (len(p) - 1)
    return np.concatenate(a), np.concatenate(b), np.array([f"{w:.1f} {d}" for w, d in style]), np.array(bent)


def turned(angle):
    return np.array([[math.cos(angle), -math.sin(angle)], [math.sin(angle), math.cos(angle)]])
