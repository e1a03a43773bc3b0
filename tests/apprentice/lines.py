"""Full-size drawings: what is drawn on their sheets, put together (tiles.py), against parallels of our own."""
import itertools
import math
import re

import numpy as np

import paper
import walls
from laying import best_of, off, register, settle
from tiles import Tile, assemble_along, assemble_grid, drawn, tiles_of, turned


def judge_lines(f, job, packet, piece):
    import judge
    for (name, kind), pages in packet.parts.items():
        base = name.split("/")[0]
        if base != piece["id"]:
            continue
        half = int(name.split("/")[1]) if "/" in name and piece.get("shape") in ("pointed", "tudor") else 0
        if kind == "form":
            form(f, job, packet, piece, name, pages, judge.Bend(piece, half or (1 if pointed(piece) else 0)))
        elif kind in ("template", "casing") and piece.get("uneven") and (pointed(piece)
                                                                        or piece["shape"] == "ordinates"):
            f.count(f"not checked: {kind} of halves over uneven legs")
        elif kind == "template":
            template(f, job, packet, piece, pages, judge.Bend(piece, 1 if pointed(piece) else 0))
        elif kind == "casing":
            casing(f, packet, piece, name, pages, judge.Bend(piece, 1 if pointed(piece) else 0))


def pointed(piece):
    return piece.get("shape") in ("pointed", "tudor")


# --- an arch ---------------------------------------------------------------------------------------------------------

def expected(bend, d, mirror):
    """Points of the parallel d where it is drawn: between the joints with the legs, and at a point."""
    c = bend.course
    p = c.at(d)
    p, ahead = run_on(bend, d, p, (1 - d * c.k) > 0)
    keep = np.ones(len(p), bool)
    joints = {}  # between two of the points: a line goes on up to there
    for left in (True, False):
        i = 0 if left else -1
        other = bend._beyond(left, True)
        if other is None:
            continue
        t = c.th[i]
        m = np.array([-math.sin(t) - math.sin(other), math.cos(t) + math.cos(other)])
        q = p - np.array([c.x[i], c.y[i]])
        side = m[0] * q[:, 1] - m[1] * q[:, 0]
        # Where the corner is halved, or about there, the parallel meets that of the leg or of the other half.
        at_leg = abs(abs(other) - math.pi / 2) < 1e-9
        off_leg = q @ np.array([-math.sin(other), math.cos(other)]) - d if at_leg else side
        halved = np.flatnonzero((side[1:] < 0) != (side[:-1] < 0))
        met = np.flatnonzero((off_leg[1:] < 0) != (off_leg[:-1] < 0))
        into = bend.piece.get("shape") == "horseshoe" and len(halved) > 1  # the legs cut into it
        if into or not len(halved) or not len(met):
            keep &= (side < 0) if left else (side > 0)
            continue
        corner = halved[np.argmin(np.hypot(*q[halved].T))]  # the bisector may cross the other side of the head, too
        j = int(met[np.argmin(np.abs(met - corner))])
        keep &= (np.arange(len(p)) > j) == left
        if ahead[j] and ahead[j + 1]:
            joints[left] = p[j] + (p[j + 1] - p[j]) * off_leg[j] / (off_leg[j] - off_leg[j + 1])
    p = p[keep & ahead]
    first, last = ([joints[left]] if left in joints else [] for left in (True, False))
    p = np.concatenate([*(q[None] for q in first), p[::25], p[-1:], *(q[None] for q in last)])
    if mirror:
        p = np.concatenate([p, np.array([2 * c.x[-1], 0]) + p[::-1] * np.array([-1, 1])])
    return p


STRAIGHT_ON = ("eyebrow", "ordinates")  # past their springs


def run_on(bend, d, p, ahead):
    """An outer parallel past the springs, up to the joint with the legs' casing: by the curve's own law, but straight
    where the head runs out level, and where its points were measured. Of half a head that comes to a point: up to that
    point."""
    c, piece = bend.course, bend.piece
    shape = piece.get("shape")
    if d > 0 and shape in ("parabolic", "catenary"):
        longer = walls.courses_of(piece | {"more": 3 * d})[0]
        return longer.at(d), (1 - d * longer.k) > 0
    straight = shape in STRAIGHT_ON
    if d <= 0 or not straight and shape not in ("segmental", "pointed", "tudor"):
        return p, ahead
    out = np.arange(0.01, 3 * d, 0.01)
    ends = []
    for i, back in ((0, -1), (-1, 1)):
        t = np.array([math.cos(c.th[i]), math.sin(c.th[i])]) * back
        n = np.array([-math.sin(c.th[i]), math.cos(c.th[i])])
        if straight:
            ends.append(p[i] + out[:, None] * t)
        else:
            radius = 1 / abs(c.k[i])
            centre = np.array([c.x[i], c.y[i]]) - radius * n
            a = out / (radius + d)
            ends.append(centre + (radius + d) * (np.cos(a)[:, None] * n + np.sin(a)[:, None] * t))
    for i, left in enumerate((True, False)):
        if left and pointed(piece) or bend._beyond(left, True) is None:  # plumb: it ends in the leg itself
            ends[i] = ends[i][:0]
    fresh = [np.ones(len(e), bool) for e in ends]
    return np.concatenate([ends[0][::-1], p, ends[1]]), np.concatenate([fresh[0], ahead, fresh[1]])


def up_to(points, middle):
    """The points left of the middle, and the one on it: it holds a half that is one arc from sliding along itself."""
    after = int(np.argmax(points[:, 0] > middle))
    a, b = points[after - 1], points[after]
    return np.concatenate([points[points[:, 0] <= middle], (a + (b - a) * (middle - a[0]) / (b[0] - a[0]))[None]])


def template(f, job, packet, piece, pages, bend):
    tiles = tiles_of(packet, pages)
    name = piece["id"]
    if not tiles:
        if len(pages) > 1:
            f.add("template", f"{name}: no tile read")
        return
    along = tiles[0].name.isdigit() or len(tiles) == 1  # one sheet may be turned to lie on its paper
    places = assemble_along(f, tiles, name) if tiles[0].name.isdigit() else assemble_grid(tiles)
    if places is None:
        return
    a, b, style, bent = drawn(tiles, places)
    wall = (style == "0.7 9 3 1 3")
    thickness, to_wall = bend.thickness, piece["measured_to"] == "wall"
    d_wall = 0 if to_wall else thickness
    lines = {"wall line": d_wall, "finished line": d_wall - thickness}
    if piece.get("casing"):
        inner = d_wall - thickness + piece["casing"]["reveal"]
        lines["casing inside"], lines["casing outside"] = inner, inner + piece["casing"]["width"]
    half = any(re.search("HALF: FLIP|MITAD: VOLTEAR", packet.doc[index].get_text()) for index in pages)
    if not half and piece.get("template", {}).get("half"):
        f.add("template", f"{name}: a half was asked for")
    if half and piece.get("template", {}).get("half") is False:
        f.add("template", f"{name}: the whole was asked for")
    want = {k: expected(bend, d, pointed(piece)) for k, d in lines.items()}
    if half:
        f.count("half templates read")
        middle = piece["span"] / 2 if "span" in piece else bend.course.x[-1] / 2
        want = {k: up_to(p, middle) for k, p in want.items()}
    if not wall.any():
        f.add("template", f"{name}: no wall line")
        return
    turn, shift = register(want["wall line"], a[wall], b[wall], along,
                           lambda turn, shift: max(off(p @ turn.T + shift, a, b)[0].max() for p in want.values()))
    if along:  # its ends, not the legs that it runs into, hold an arc from sliding along itself: one face has them
        bent |= piece["shape"] in STRAIGHT_ON
        springs = np.concatenate([want[k][[0, -1]] for k in ("wall line", "finished line") if len(want[k]) > 2])
        turn, shift, _ = settle(want["wall line"], a[bent], b[bent], turn, shift, True, springs)
    for kind, points in want.items():
        if len(points) < 3:
            continue
        drawn_at = (off(points @ turn.T + shift, a, b)[1] - shift) @ turn
        f.gap(f"template {kind}", float(bend.beyond(points, drawn_at, f).max()))
        f.count("line points read", len(points))
    if half:  # the half is flipped on these, so they stand on the centre line
        pricked = [(np.array(c) @ r.T + s) / 72 * np.array([1, -1]) for t, (r, s) in zip(tiles, places)
                   for c in t.flipped]
        if len(pricked) < 2:
            f.add("crosses to flip on", f"{name}: {len(pricked)}")
        for cross in pricked:
            f.gap("crosses to flip on", abs(float(((cross - shift) @ turn)[0]) - middle))
    if not along and not pointed(piece):
        centres = [c for t, (r, s) in zip(tiles, places) for c in [(x + s[0]) / 72 for x in t.centre]]
        middle = (np.array([piece["span"] / 2 if "span" in piece else bend.course.x[-1] / 2, 0]) @ turn.T + shift)[0]
        if centres:
            f.gap("centre line", min(abs(c - middle) for c in centres))


# --- segments of the casing ------------------------------------------------------------------------------------------

def casing(f, packet, piece, name, pages, bend):
    """Every curved line of a segment lies on the inside or the outside edge of the casing, wherever along it."""
    import judge
    # Of a horseshoe, whose legs cut into it, and of measured points the fit may take one edge for the other.
    if piece["shape"] == "horseshoe" or "ordinates" in piece:
        f.count("not checked: segments of other shapes")
        return
    d_wall = 0 if piece["measured_to"] == "wall" else bend.thickness
    inner = d_wall - bend.thickness + piece["casing"]["reveal"]
    edges = [expected(bend, d, pointed(piece)) for d in (inner, inner + piece["casing"]["width"])]
    edges = [e for e in edges if len(e) > 2]
    a, b = np.concatenate([e[:-1] for e in edges]), np.concatenate([e[1:] for e in edges])
    near = np.hypot(*(b - a).T) < 1  # not across the point of a pointed head
    a, b = a[near], b[near]
    halves = [bend.course, judge.mirrored(bend.course)] if pointed(piece) else [bend.course]
    segments = {}
    for index in pages:
        m = re.search(r"(?:Casing segment|Segmento de contramarco) (\d+(?:, \d+)*) (?:of|de) (\d+)",
                      packet.doc[index].get_text())
        segments.setdefault(m.group(1) if m else "?", []).append(index)
        most = int(m.group(2)) if m else 0
    served = sorted(int(n) for numbers in segments for n in numbers.split(", ") if n != "?")
    if served != list(range(1, most + 1)):
        f.add("segments without a template, or with two", f"{name}: {served} of {most}")
    for number, group in segments.items():
        tiles = tiles_of(packet, group) if len(group) > 1 else [Tile(packet.sheet(group[0]))]
        if not tiles:
            f.count("not checked: segments of which no tile was read")
            continue
        tiles[0].name = tiles[0].name or "A1"
        if len(tiles) > 1 and any(not re.match(r"[A-Z]+\d+$", t.name) for t in tiles):
            f.count("not checked: segments on sheets along the curve")
            continue
        curves = []
        for t, (rot, shift) in zip(tiles, assemble_grid(tiles)):
            curves += [(c @ rot.T + shift) / 72 * np.array([1, -1]) for c, width, _ in t.curved
                       if len(c) > 2 and width > 1.2]
        if not curves:
            f.count("not checked: segments without a curve")
            continue
        ends = np.concatenate([c[[0, -1]] for c in curves])  # they hold an arc from sliding along itself
        f.gap("casing segments", fitted(np.concatenate([np.concatenate(curves)[::3], ends]), a, b, halves, ends))
        f.count("casing segments")


def fitted(points, a, b, courses, ends):
    """How far the points are off where they lie best: tried roughly from all sides and places."""
    middle = (a.min(axis=0) + a.max(axis=0)) / 2
    starts = []
    for angle in range(0, 360, 45):  # a segment that is most of the casing
        p = points @ turned(math.radians(angle)).T
        starts.append((turned(math.radians(angle)), middle - (p.min(axis=0) + p.max(axis=0)) / 2))
    for course, i in itertools.product(courses, np.linspace(0.08, 0.92, 9)):
        j = int(i * (len(course.x) - 1))
        for angle in (course.th[j], course.th[j] - 0.17, course.th[j] + 0.17, course.th[j] + math.pi, 0.0):
            turn = turned(angle)
            starts.append((turn, np.array([course.x[j], course.y[j]]) - turn @ points.mean(axis=0)))
    few = ends[:: max(1, len(ends) // 8)]
    rough = [settle(points, a, b, *start, True, few, most=16) for start in starts]
    best = best_of(rough, points, a, b, ends)
    return float(off(points @ best[0].T + best[1], a, b)[0].max())


# --- a form's rib ----------------------------------------------------------------------------------------------------

def form(f, job, packet, piece, name, pages, bend):
    text = packet.doc[pages[0]].get_text().replace("\n", " ")
    on_seen = re.search(r"board's seen face|la cara (que se ve|vista)", text)
    on_kerfs = re.search(r"follows the board's kerf face|sigue la cara ranurada", text)
    if not on_seen and not on_kerfs or on_seen and on_kerfs and on_seen.start() == on_kerfs.start():
        f.add("form", f"{name}: no face named")
        return
    kerf_face = bool(on_kerfs) and (not on_seen or on_kerfs.start() < on_seen.start())
    d = bend.kerf_face() if kerf_face else bend.plain
    face = rib_edge(bend, bend.course.at(d))
    # The body of the rib lies where the board is not: below it when the face that lies on it is the lower one.
    body_below = (bend.kerf_sign > 0) != kerf_face
    over = np.array([1, 1 if body_below else -1])
    chord = (face[-1] - face[0]) * over
    length = float(np.hypot(*chord))
    along = chord / length
    axes = np.array([along, [-along[1], along[0]]])  # of stations and heights
    says_side(f, name, text, bend, kerf_face)
    zero = re.search(r"ZERO END lies at the (LEFT|RIGHT)", text)
    if zero and zero.group(1).lower() != piece["board"].get("zero", "left"):
        f.add("form's zero", f"{name}: {zero.group(0)}")
    rows = ordinates(packet, pages, job["units"] == "mm")
    if len(rows) < 2:
        f.add("form", f"{name}: no ordinates read")
        return
    if piece.get("tails") and max(s for s, _ in rows) > length + 0.2:
        f.count("not checked: rib with tails")
        return
    said = np.array(rows) @ axes * over + face[0] + sum(way[0] * by[0] for way, by in bend.told(face[:1]))
    true = off(said, face[:-1], face[1:])[1]  # where the rib is steep a station of a sixteenth is near it, not under it
    f.gap("form ordinates", float(bend.beyond(true, said, f).max()))
    f.count("ordinates read", len(rows))


def rib_edge(bend, points):
    """A face from mitre to mitre: cut where it runs past a joint, run on straight where it ends short of one."""
    keep, corners = np.ones(len(points), bool), {}
    for left in (True, False):
        i, other = (0 if left else -1), bend._beyond(left)
        if other is None:
            continue
        t = bend.course.th[i]
        m = np.array([-math.sin(t) - math.sin(other), math.cos(t) + math.cos(other)])
        q = points - np.array([bend.course.x[i], bend.course.y[i]])
        side = m[0] * q[:, 1] - m[1] * q[:, 0]
        past = side > 0 if left else side < 0
        near = np.arange(len(points)) < len(points) // 2  # a joint cuts its own end, whatever lies across the span
        past &= near if left else ~near
        keep &= ~past
        way = np.array([math.cos(t), math.sin(t)]) * (-1 if left else 1)
        across = m[0] * way[1] - m[1] * way[0]
        short = -side[i] / across if abs(across) > 1e-9 else 0.0
        if past.any():
            j = int(np.flatnonzero(past)[-1 if left else 0])
            k = j + (1 if left else -1)
            corners[left] = points[j] + (points[k] - points[j]) * side[j] / (side[j] - side[k])
        elif 1e-6 < short < 3:
            corners[left] = points[i] + short * way
    start, stop = (corners[left][None] if left in corners else points[:0] for left in (True, False))
    return np.concatenate([start, points[keep], stop])


def says_side(f, name, text, bend, kerf_face):
    """Kerfs that lie away from the form open over its bulges; on the form they close."""
    order = bend.signs()
    if len(order) != 1:
        return
    said = "C" if kerf_face else "O"
    if order[0] != said:
        f.add("form's face", f"{name}: the sheet's face fits kerfs that {said}, the wall has {order[0]}")


def ordinates(packet, pages, metric):
    rows = []
    for index in pages[:2]:
        started = False
        for row in paper.rows_of(packet.doc[index], 3.0):
            texts = [w[2] for w in row]
            if {"exact", "exacto", "exacta"} & set(texts):
                started = True
                continue
            figures = [t for t in texts if re.match(r"^-?\d", t)]
            if not started or len(figures) != len(texts) or len(figures) % 4:
                continue
            for i in range(0, len(figures), 4):
                s, _, exact, other = (paper.number(t) for t in figures[i:i + 4])
                if metric:
                    rows.append((s / 25.4, exact / 25.4))
                else:
                    rows.append((s, exact))
    return rows
