"""The drawings and tables for machines, read back by libraries that share nothing with the program (ezdxf, librsvg):
every head and wall lies on a curve of our own by nothing but the text of its job, SVG and DXF say the same, and the
blank has its kerfs where the table of stops says. What the packet draws at full size lies on the outlines: templates,
the flat blank of a splayed liner (one in a job), the strips of a board that climbs.

    outlines.py JOB...     exit status 1 where something is amiss"""
import csv
import io
import math
import multiprocessing
import os
import re
import subprocess
import sys
import tempfile
import xml.etree.ElementTree as xml

import ezdxf
import numpy as np

import climb
import jobs
import paper
import splay
import tiles
import walls
from in_space import PROGRAM

MM = 25.4
missed = []


def amiss(job, words):
    missed.append(words)
    print(f"{job}: {words}")


def told(*arguments):
    said = subprocess.run([PROGRAM, *arguments], capture_output=True, text=True)
    if said.returncode not in (0, 3):
        raise RuntimeError(said.stderr)
    return said.stdout


def points(polyline):
    """Corners with their bulge, as written, in mm."""
    return [(v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0.0)) for v in polyline.vertices]


def dense(polyline):
    """The polyline with its arcs as chords that leave them by less than 0.0005 mm. Not by ezdxf's paths: those make
    Bezier curves of arcs, which are 0.1 mm off."""
    line = [points(polyline)[0][:2]]
    for part in polyline.virtual_entities():
        if part.dxftype() == "ARC":
            places = [(p.x, p.y) for p in part.flattening(0.0005)]
        else:
            places = [(p.x, p.y) for p in (part.dxf.start, part.dxf.end)]
        if math.dist(places[0], line[-1]) > math.dist(places[-1], line[-1]):
            places.reverse()  # an ARC runs anticlockwise
        line += places[1:]
    return np.array(line)


def off(at, line):
    """From each point to the nearest of a line's chords: how far to the left of it, and the direction that is left."""
    start, along = line[:-1], np.diff(line, axis=0)
    length = np.maximum(np.hypot(*along.T), 1e-9)
    along = along / length[:, None]
    left, normals = np.empty(len(at)), np.empty_like(at)
    for i, p in enumerate(at):
        t = np.clip(((p - start) * along).sum(axis=1), 0, length)
        apart = p - (start + t[:, None] * along)
        k = (apart**2).sum(axis=1).argmin()
        normals[i] = (-along[k, 1], along[k, 0])
        left[i] = math.copysign(math.hypot(*apart[k]), apart[k] @ normals[i])
    return left, normals


def worst_off(at, line):
    """A course laid on the line by sliding alone; its ends are left out, where a mitre may cut the line."""
    at = at[np.linspace(len(at) * 0.03, len(at) * 0.97, 150).astype(int)]
    at += line[line[:, 1].argmax()] - at[at[:, 1].argmax()]
    for _ in range(6):
        left, normals = off(at, line)
        at += np.linalg.lstsq(normals, -left, rcond=None)[0]
    return np.abs(off(at, line)[0]).max()


def svg_corners(path):
    """Ends of the lines and arcs of an SVG path, y up."""
    numbers = [[float(v) for v in part.split()] for part in re.findall(r"[MLA]([^MLAZ]*)", path)]
    return [(n[-2], -n[-1]) for n in numbers]


def compare(name, job, layers, picture):
    for layer, entities in layers.items():
        group = picture.find(f".//{{http://www.w3.org/2000/svg}}g[@id='{layer}']")
        drawn = [svg_corners(p.get("d")) for p in group]
        written = [[c[:2] for c in points(e)] + ([points(e)[0][:2]] if e.is_closed else []) for e in entities]
        if len(drawn) != len(written) or any(not np.allclose(a, b, atol=1e-5) for a, b in zip(drawn, written)):
            amiss(name, f"{layer}: SVG and DXF differ")


def toward_room(piece, units):
    """How far out of the curve that was measured the room's edge of a splayed jamb stands, which the outlines show."""
    splayed = piece.get("splay")
    if not splayed or (splayed["measured"] == "wide") == (splayed["toward"] == "room"):
        return 0.0
    return jobs.length(splayed["side"], units) * (1 if splayed["toward"] == "room" else -1)


def lies_on_its_curve(name, piece, layers, units):
    line = dense(layers[f"{piece['id']}_{'WALL' if piece['measured_to'] == 'wall' else 'FINISH'}"][0])
    for course in walls.courses_of(piece)[:1]:
        worst = worst_off(course.at(toward_room(piece, units)) * MM, line)
        if worst > 0.01:
            amiss(name, f"{piece['id']}: {worst:.4f} mm off its curve")
    return len(line)


def has_its_kerfs(name, job, layers):
    rows = list(csv.DictReader(io.StringIO(told("stops", name, "--blade", "middle"))))
    unit = "mm" if job["units"] == "mm" else "in"
    factor = 1 if unit == "mm" else MM
    pieces = {row["piece"] for row in rows}
    for piece in pieces:
        mine = [row for row in rows if row["piece"] == piece]
        layer = piece.replace("/", "-")
        corners = np.array([c[:2] for c in points(layers[f"{layer}_BLANK"][0])])
        length = float(mine[0][f"length_{unit}"]) * factor
        if abs(np.ptp(corners[:, 0]) - length) > 0.02:
            amiss(name, f"{piece}: the blank is {np.ptp(corners[:, 0]):.3f} mm long, not {length:.3f}")
        at = sorted(points(e)[0][0] - corners[:, 0].min() for e in layers[f"{layer}_KERFS"])
        stops = sorted(float(row[f"from_zero_{unit}"]) * factor for row in mine)
        mirrored = sorted(length - s for s in stops)
        if len(at) != len(stops) or min(np.abs(np.subtract(at, s)).max() for s in (stops, mirrored)) > 0.02:
            amiss(name, f"{piece}: kerfs on the blank are not where the stops are")
    return len(rows)


def segments_close(name, layers):
    for layer, (entity, *more) in layers.items():
        if re.search(r"_CASING_\d+$", layer) and (more or not entity.is_closed):
            amiss(name, f"{layer} is not one closed outline")
    return sum(bool(re.search(r"_CASING_\d+$", layer)) for layer in layers)


def curves_of(sheet):
    """Points on the curved lines of a tile, in mm, y up: what is drawn and cut to, not the rings of crosses."""
    found = [np.empty((0, 2))]
    for corners, (width, _) in sheet.curves:
        box = np.ptp(np.array(corners), axis=0)
        if width >= 0.6 and box.max() > 16:
            found.append(tiles.bezier(corners, 24) * np.array([1, -1]) * MM / 72)
    return np.concatenate(found)


def printed(name, folder):
    """The packet of the job, its templates in a grid."""
    packet_file, grid = os.path.join(folder, "packet.pdf"), os.path.join(folder, "grid.toml")
    with open(name) as text, open(grid, "w") as out:
        out.write(in_a_grid(text.read()))
    if os.path.exists(packet_file):
        os.remove(packet_file)  # of the job before
    told("build", grid, "--out", packet_file)
    return paper.Packet(packet_file)


def overlaid(name, job, layers, packet):
    """The template's content stream laid over the outlines: every point of a curve on every tile lies on a curve of the
    drawing for machines. Each tile is laid by its place in the grid, then slid until it lies best. In mm."""
    seen = 0
    # Not an eyebrow: on paper its seen face runs on to the liner's square end, past the corner where the other ends.
    heads = [piece for piece in job["pieces"] if "shape" in piece and piece["shape"] != "eyebrow"]
    for piece in heads:
        pages = next((pages for (of, kind), pages in packet.parts.items()
                      if kind == "template" and of.split("/")[0] == piece["id"]), [])
        sheets = tiles.tiles_of(packet, pages)
        outlines = [dense(e) for layer, group in layers.items() for e in group
                    if re.fullmatch(piece["id"] + "(-1)?_(WALL|FINISH|CASING_INSIDE|CASING_OUTSIDE)", layer)]
        if not sheets or not outlines or not sheets[0].name[0].isalpha():
            amiss(name, f"{piece['id']}: no template to lay over its outlines")
            continue
        at = [curves_of(tile.words) + place[1] * np.array([1, -1]) * MM / 72
              for tile, place in zip(sheets, tiles.assemble_grid(sheets))]
        top = np.concatenate(at)
        high = max(outlines, key=lambda line: line[:, 1].max())
        shift = high[high[:, 1].argmax()] - top[top[:, 1].argmax()]
        # A crown is flat: as one drawing the tiles find their place from side to side.
        shift = shift + (slid(top + shift, outlines, 20) - top - shift)[0]
        for tile, points_of in zip(sheets, at):
            if len(points_of) < 2:
                continue
            worst = laid_over(points_of + shift, outlines)
            if worst > 0.01:
                amiss(name, f"{piece['id']}: tile {tile.name} is {worst:.4f} mm off its outlines")
            seen += len(points_of)
    return seen


def laying(at, onto):
    """How points lie best on others: turned and moved, neither stretched nor mirrored."""
    z, w = ((p - p.mean(axis=0)) @ [1, 1j] for p in (at, onto))
    turn = np.exp(1j * np.angle(np.vdot(z, w)))
    rotation = np.array([[turn.real, turn.imag], [-turn.imag, turn.real]])
    return lambda p: (p - at.mean(axis=0)) @ rotation + onto.mean(axis=0)


def apart(at, lines):
    """From each point to the nearest chord of all lines."""
    start, end = (np.concatenate([line[ends] for line in lines]) for ends in (slice(None, -1), slice(1, None)))
    along = end - start
    from_start = at[:, None] - start
    t = np.clip((from_start * along).sum(axis=2) / (along**2).sum(axis=1), 0, 1)
    return np.linalg.norm(from_start - t[:, :, None] * along, axis=2).min(axis=1)


def feet_on(lines, numbers):
    """Of a sheet of the flat blank: the kerf's number, whether at the wide edge, where its foot meets the edge."""
    for a, b, width in lines:
        if width < 2 or abs(np.hypot(*(b - a)) - 6 / 72) > 0.01:
            continue
        along = (b - a) / np.hypot(*(b - a))
        own = [n for n in numbers if abs(np.cross(along, n[1] - b)) < 0.06 and 0 < along @ (n[1] - b) < 0.6]
        if own:
            yield min(own, key=lambda n: np.hypot(*(n[1] - b)))[0], a[1] > b[1], a * MM


def flat_laid_over(name, piece, layers, packet):
    """Each sheet of a splayed liner's flat blank is laid on the outlines by the feet of its kerfs. Its edges lie on the
    outline; and every kerf and cut of the outlines is drawn on the paper, but for what words leave open."""
    seen = 0
    for i, pages in enumerate(splay.parts_of(packet.doc, splay.FLAT)):
        which = "" if i == 0 else f"_{i + 1}"
        kinds = {kind: [dense(e) for e in layers.get(f"{piece['id']}_{kind}{which}", [])]
                 for kind in ("BLANK", "KERFS", "ENDS", "ENDS_SEEN")}
        kerfs, found, edges, fine = kinds["KERFS"], set(), [], []
        for page in pages:
            lines, numbers, _ = splay.flat(page)
            feet = list(feet_on(lines, numbers))
            if not feet:
                continue
            at, onto = np.array([p for _, _, p in feet]), np.array([kerfs[n - 1][int(wide)] for n, wide, _ in feet])
            place = laying(at, onto)
            found |= {(n, wide) for n, wide, _ in feet}
            own = [place(chain) for chain in edges_of(page, lines)]
            edges += own
            fine += [place(np.array([a, b]) * MM) for a, b, width in lines if abs(width - 0.7) < 0.02]
            worst = max(*np.linalg.norm(place(at) - onto, axis=1), *apart(np.concatenate(own), kinds["BLANK"]))
            if worst > 0.01:
                amiss(name, f"{piece['id']}: page {page.number + 1} is {worst:.4f} mm off the flat blank")
            seen += len(at) + sum(map(len, own))
        if found != {(n + 1, wide) for n in range(len(kerfs)) for wide in (False, True)}:
            amiss(name, f"{piece['id']}: not every kerf of the outlines stands on the flat blank at both edges")
        for kind, most_open in (("BLANK", 0.02), ("KERFS", 0.5), ("ENDS", 0.5), ("ENDS_SEEN", 0.5)):
            for n, line in enumerate(kinds[kind], 1):
                drawn = drawn_of(line, edges if kind == "BLANK" else fine)
                if drawn < long(line) * (1 - most_open):
                    amiss(name, f"{piece['id']}: {drawn:.0f} mm of {kind}{which} {n} are drawn, of {long(line):.0f}")
    return seen


def edges_of(page, lines):
    """What a sheet draws of the blank's edges, in mm, y up."""
    bows = [tiles.bezier(corners) * np.array([1, -1]) * MM / 72
            for corners, (width, _) in paper.Sheet(page, False).curves if width == 1.4]
    return [np.array([a, b]) * MM for a, b, width in lines if width == 1.4] + bows


def drawn_of(line, chains):
    """The length of the chains that lie on the line."""
    off_line = apart(np.concatenate(chains), [line])
    first = np.cumsum([0] + [len(chain) for chain in chains[:-1]])
    return sum(long(chain) for chain, off_most in zip(chains, np.maximum.reduceat(off_line, first)) if off_most <= 0.01)


def long(chain):
    return np.linalg.norm(np.diff(chain, axis=0), axis=1).sum()


def legs_as_told(name, piece, layers, packet):
    """Leg boards are drawn only small: their outlines against the cover's figures, rounded, the width upward."""
    told = re.findall(piece["id"] + r", (left|right) leg: a flat board ([^,]*?) in long and ([^,]*?) in\s+wide",
                      packet.cover)
    drawn = [layer for layer in layers if layer.startswith(f"{piece['id']}_LEG_")]
    if sorted(f"{piece['id']}_LEG_{side.upper()}" for side, *_ in told) != sorted(drawn):
        amiss(name, f"{piece['id']}: legs {[side for side, *_ in told]} on the cover, {drawn} among the outlines")
    for side, length, width in told:
        box = np.ptp([c[:2] for c in points(layers[f"{piece['id']}_LEG_{side.upper()}"][0])], axis=0) / MM
        if abs(paper.number(length) - box[0]) > 1 / 32 or not 0 <= paper.number(width) - box[1] + 1e-6 < 1 / 16:
            amiss(name, f"{piece['id']}: its {side} leg is drawn {box}, told {length} by {width}")
    return len(told)


def strips_laid_over(name, piece, layers, packet):
    """The strips of a board that climbs, laid along its front edge: every tick and its shaft lie on a kerf."""
    seen = set()
    kerfs = [dense(e) for e in layers[f"{piece['id']}_KERFS"]]
    for index in packet.parts[(piece["id"], "strips")]:
        page = packet.doc[index]
        captions = sorted(climb.captions_of(page))
        for k, (top, first, last) in enumerate(captions):
            below = captions[k + 1][0] if k + 1 < len(captions) else page.rect.height - 60
            feet = sorted(f for f in climb.feet_of(page) if top - 2 < f[1] < below)
            front = sorted(kerf[0, 0] for kerf in kerfs[first - 1:last])
            if len(feet) != len(front):
                amiss(name, f"{piece['id']}: {len(feet)} ticks stand for kerfs {first} to {last}")
                continue
            base = feet[0][1]
            to_mm = lambda u, v: np.array([u, base - v]) * MM / 72
            at = np.array([to_mm(*foot[:2]) for foot in feet])
            shift = np.array([(front - at[:, 0]).mean(), kerfs[0][0, 1]])
            # Above the feet, where nothing else leans.
            shafts = [np.array([to_mm(*line[:2]), to_mm(*line[2:4])]) + shift for line in packet.sheet(index).lines
                      if line[4] > 0.65 and 5 < base - line[1] < 30 and 5 < base - line[3] < 30]
            worst = np.abs(at[:, 0] + shift[0] - front).max()
            for shaft in shafts:
                worst = max(worst, min(apart(shaft, [line]).max() for line in kerfs))
            if worst > 0.01 or len(shafts) != len(feet):
                amiss(name, f"{piece['id']}: kerfs {first} to {last}: {worst:.4f} mm off, {len(shafts)} shafts")
            seen |= set(range(first, last + 1))
    if seen != set(range(1, len(kerfs) + 1)):
        amiss(name, f"{piece['id']}: not every kerf of the outlines has its tick on the strips")
    return len(seen)


def slid(at, outlines, times):
    """Points moved, not turned, so that they lie on the nearest of the lines as well as they can."""
    for _ in range(times):
        left, normals = nearest(at, outlines)
        at = at - np.linalg.lstsq(normals, left, rcond=1e-3)[0]
    return at


def laid_over(at, outlines):
    """How far the farthest point is from the nearest of the lines, as it lies or once it is slid."""
    return min(float(np.abs(nearest(places, outlines)[0]).max()) for places in (at, slid(at, outlines, 6)))


def nearest(at, outlines):
    every = [off(at, line) for line in outlines]
    best = np.abs(np.array([left for left, _ in every])).argmin(axis=0)
    return (np.array([every[b][0][i] for i, b in enumerate(best)]),
            np.array([every[b][1][i] for i, b in enumerate(best)]))


def in_a_grid(text):
    """The job with all its templates spread in a grid, whole."""
    text = re.sub(r"(?ms)^\[opening\.template\]\n.*?(?=^\[|\Z)", "", text)
    parts = re.split(r"(?m)^(?=\[\[opening\]\])", text)
    wish = '[opening.template]\nsheets = "grid"\nhalf = false\n'
    out = [parts[0]]
    for part in parts[1:]:
        own, *rest = re.split(r"(?m)^(?=\[\[(?!opening)|\[(?!\[|opening))", part, maxsplit=1)
        out.append(own.rstrip("\n") + "\n" + wish + "".join(rest))
    return "".join(out)


def read(name, folder):
    file = os.path.join(folder, "outlines")
    for kind, option in ((".dxf", []), (".svg", ["--svg"])):
        with open(file + kind, "w") as out:
            out.write(told("outlines", name, *option))
    drawing = ezdxf.readfile(file + ".dxf")
    if drawing.dxfversion != "AC1009" or drawing.audit().errors:
        amiss(name, f"the DXF is not R12 without a fault: {drawing.audit().errors}")
    layers = {}
    for entity in drawing.modelspace():
        layers.setdefault(entity.dxf.layer, []).append(entity)
    if any(e.dxftype() != "POLYLINE" for group in layers.values() for e in group):
        amiss(name, "something that is no polyline")
    subprocess.run(["rsvg-convert", "-w", "400", file + ".svg", "-o", file + ".png"], check=True)
    with open(name) as text:
        job = jobs.read(text.read())
    compare(name, job, layers, xml.parse(file + ".svg").getroot())
    seen = sum(lies_on_its_curve(name, piece, layers, job["units"]) for piece in job["pieces"]
               if f"{piece['id']}_WALL" in layers and "ordinates" not in piece)  # which are faired
    packet = printed(name, folder)
    splays, climbs = ([piece for piece in job["pieces"] if key in piece] for key in ("splay", "rake"))
    return (seen, 0 if splays else has_its_kerfs(name, job, layers), segments_close(name, layers),
            overlaid(name, job, layers, packet), sum(flat_laid_over(name, piece, layers, packet) for piece in splays),
            sum(legs_as_told(name, piece, layers, packet) for piece in splays),
            sum(strips_laid_over(name, piece, layers, packet) for piece in climbs), len(missed))


def main(names):
    with tempfile.TemporaryDirectory() as folder:
        # A process a packet: the library that reads it keeps what it has read.
        with multiprocessing.get_context("fork").Pool(1, maxtasksperchild=1) as pool:
            *read_of, amiss_of = np.sum(pool.starmap(read, [(name, folder) for name in names], chunksize=1), axis=0)
    print(f"{len(names)} jobs, {read_of[0]} points of curves, {read_of[1]} kerfs, {read_of[2]} casing segments, "
          f"{read_of[3]} points of templates, {read_of[4]} of flat blanks, {read_of[5]} legs, {read_of[6]} ticks of "
          f"boards that climb, {amiss_of} amiss")
    return 1 if amiss_of or not all(read_of) else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
