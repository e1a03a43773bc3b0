"""One packet against what was measured: everything that a sheet says, and where the board and the lines would lie."""
import math
import re

import numpy as np

import board
import paper
import walls

WORST = 1 / 16
TAPE = 1 / 16  # what a hand tape tells on a wall: common practice, no source


class Findings:
    def __init__(self):
        self.found, self.gaps, self.counts = [], {}, {}

    def add(self, kind, words):
        self.found.append((kind, words))

    def gap(self, kind, inches):
        self.gaps[kind] = max(self.gaps.get(kind, 0), inches)

    def count(self, kind, n=1):
        self.counts[kind] = self.counts.get(kind, 0) + n

    def close(self):
        """What lies more than 1/16 in off is a finding of its own."""
        for kind, inches in self.gaps.items():
            if not inches <= WORST:
                self.add(kind, f"{inches:.4f} in off")
        return self


def inches(text, metric):
    value = paper.number(text)
    if value is None:
        return None
    return value / 25.4 if ("mm" in text or metric and "in" not in text and "pulg" not in text) else value


class Bend:
    """What the job's text says of one board: its course, faces, ends. `half` 2 is the right half of a pointed head."""

    def __init__(self, piece, half=0):
        self.piece, self.half = piece, half
        self.opening = "side" not in piece
        courses = walls.courses_of(piece)
        self.course = courses[0]
        if half == 2:
            self.course = courses[1] if len(courses) > 1 else mirrored(self.course)
        self.other_half = courses[2 - half] if half and len(courses) > 1 else None
        self.thickness = piece["board"]["thickness"]
        self.outward = self.opening or piece["side"] == "concave"
        to_wall = piece["measured_to"] == "wall"
        self.kerf_sign = 1 if self.outward else -1
        self.plain = -self.kerf_sign * self.thickness if to_wall else 0.0
        self.tape_off = self.told_by_tape()

    def ends(self, d):
        """Places along the parallel d of the two ends of both faces: [(plain, kerf), (plain, kerf)], mitre angles."""
        u = self.course.length_along(d)
        out, angles = [], []
        for left in (True, False):
            i = 0 if left else -1
            t = self.course.th[i]
            other = self._beyond(left)
            if other is None:
                out.append((u[i], u[i]))
                angles.append(0.0)
                continue
            n = np.array([-math.sin(t), math.cos(t)])
            m = n + np.array([-math.sin(other), math.cos(other)])
            m /= n @ m  # along the joint, a unit of it per unit of offset
            origin = np.array([self.course.x[i], self.course.y[i]])
            angles.append(abs(t - other) / 2)
            out.append(tuple(self._place(origin + f * m, d, u) for f in (self.plain, self.kerf_face())))
        return out, angles

    def kerf_face(self):
        return self.plain + self.kerf_sign * self.thickness

    def _beyond(self, left, lines=False):
        """Heading of what the board meets at an end on a mitre, None where it ends square; `lines`: of what is drawn,
        which ends at the legs whether the job has legs or not."""
        if not self.opening:
            return None
        t = self.course.th[0 if left else -1]
        if self.half == 1 and not left or self.half == 2 and left:
            return -t if self.other_half is None else self.other_half.th[0 if self.half == 1 else -1]
        if not lines and self.piece.get("legs") is None:
            return None
        leg = math.pi / 2 if left else -math.pi / 2
        return None if abs(leg - t) < math.radians(0.05) else leg

    def _place(self, p, d, u):
        c = self.course
        j = int(np.argmin((c.x - p[0]) ** 2 + (c.y - p[1]) ** 2))
        t = c.th[j]
        along = (p[0] - c.x[j]) * math.cos(t) + (p[1] - c.y[j]) * math.sin(t)
        off = -(p[0] - c.x[j]) * math.sin(t) + (p[1] - c.y[j]) * math.cos(t)
        end = j in (0, len(c.x) - 1)
        return u[j] + (along if end else along * (1 - d * c.k[j]) / (1 - off * c.k[j]))

    def beyond(self, points, drawn, f):
        """How far what is drawn lies off these points of a parallel, and of a measured course how far it lies beyond
        what the job's own points tell: these are rounded as a tape rounds, and what each is off the course, straight on
        to the next, is no fault of a line that follows them, nor is it one that the line lies nearer than they do."""
        by = drawn - points
        if self.tape_off is None:
            return np.hypot(*by.T)
        f.count("places measured by a tape", len(points))
        f.count("of these more than 1/32 in off, tape and all", int((np.hypot(*by.T) > 1 / 32).sum()))
        return np.hypot(*(untold((by * way).sum(axis=1), told) for way, told in self.told(points)))

    def told(self, points):
        """Left of the course and along it: how far points of a parallel are moved by what the tape told amiss."""
        c = self.course
        feet = np.array([int(np.argmin((c.x - x) ** 2 + (c.y - y) ** 2)) for x, y in points])
        ahead = np.column_stack([np.cos(c.th[feet]), np.sin(c.th[feet])])
        left = ahead[:, ::-1] * [-1, 1]
        if self.tape_off is None:
            return (left, np.zeros(len(points))), (ahead, np.zeros(len(points)))
        stations, offs = self.tape_off
        piece = np.clip(np.searchsorted(stations, c.s[feet]), 1, len(offs) - 1)
        out = ((points - np.column_stack([c.x, c.y])[feet]) * left).sum(axis=1)
        turned = (np.diff(offs) / np.diff(stations))[piece - 1]
        return (left, np.interp(c.s[feet], stations, offs)), (ahead, -out * turned)

    def told_by_tape(self):
        """Stations along a course that is known better than it was measured, and how far left of it each point of the
        job lies."""
        if "truth" not in self.piece or "ordinates" not in self.piece:
            return None
        c, stations, offs = self.course, [], []
        for x, y in self.piece["ordinates"]:
            j = int(np.argmin((c.x - x) ** 2 + (c.y - y) ** 2))
            stations.append(c.s[j])
            off = (y - c.y[j]) * math.cos(c.th[j]) - (x - c.x[j]) * math.sin(c.th[j])
            offs.append(min(max(off, -TAPE), TAPE))  # no tape excuses more
        return stations, offs

    def signs(self):
        """'O' where kerfs open, 'C' where they close, in order from the left. Of points that a tape measured, a lobe
        that rises from its chord by less than the tape tells is none: its neighbours are one."""
        c = self.course
        sign = np.sign(c.k)
        bent = np.flatnonzero(sign)
        ends = [0] + [int(j) for i, j in zip(bent, bent[1:]) if sign[i] != sign[j]] + [len(c.s) - 1]
        told = self.piece.get("tape", TAPE) if "ordinates" in self.piece else 0
        while len(ends) > 2:
            heights = [self.rise(i, j) for i, j in zip(ends, ends[1:])]
            least = int(np.argmin(heights))
            if heights[least] >= max(told, 0.0005):
                break
            del ends[max(least, 1):min(least + 2, len(ends) - 1)]
        return ["O" if (c.th[j] - c.th[i]) * self.kerf_sign < 0 else "C" for i, j in zip(ends, ends[1:])]

    def rise(self, i, j):
        """How far the course between two of its points leaves their chord."""
        c = self.course
        dx, dy = c.x[j] - c.x[i], c.y[j] - c.y[i]
        off = np.abs((c.x[i:j + 1] - c.x[i]) * dy - (c.y[i:j + 1] - c.y[i]) * dx)
        return float(off.max() / max(math.hypot(dx, dy), 1e-9))


def untold(off, told):
    """How much of what lies off is not between nothing and what is told."""
    return np.maximum(0, np.abs(off) - np.maximum(0, told * np.sign(off)))


def mirrored(c):
    """The right half of a head that comes to a point: from the point down to the right spring."""
    span = 2 * c.x[-1]
    return walls.Course(c.s[-1] - c.s[::-1], span - c.x[::-1], c.y[::-1], -c.th[::-1], c.k[::-1])


OPEN = r"OPEN|ABREN"
CLOSE = r"CLOSE|CIERRAN"
SHORT_MARK = r"(?m)^(?:kerfs |se )(OPEN|ABREN|CLOSE|CIERRAN)$"  # where the side changes, on a crowded strip


def judge(job, path):
    """Findings of a whole packet. `job` is the job as a dictionary in inches (jobs.py)."""
    import splices
    f = Findings()
    packet = paper.Packet(path)
    for piece in job["pieces"]:
        halves = [p for p in packet.pieces() if p.split("/")[0] == piece["id"]]
        if packet.not_to_cut(piece["id"]):
            f.count("pieces that are not to be cut")
            if any(name.split("/")[0] == piece["id"] for name, _ in packet.parts):
                f.add("sheets of a piece that is not to be cut", piece["id"])
            continue
        if not halves:
            f.add("no strips", piece["id"])
        if splices.is_spliced(packet, piece):
            splices.judge_spliced(f, job, packet, piece)
            continue
        if piece["board"].get("coupon") and piece["board"]["coupon"]["by"] not in packet.all_text():
            f.add("coupon", f"{piece['id']}: nobody is told who bent it")
        for name in halves:
            half = int(name.split("/")[1]) if "/" in name and piece.get("shape") in ("pointed", "tudor") else 0
            judge_board(f, job, packet, piece, name, Bend(piece, half))
        import lines
        lines.judge_lines(f, job, packet, piece)
    return f.close()


def judge_board(f, job, packet, piece, name, bend):
    metric = job["units"] == "mm"
    card = packet.text(name, "setup") or packet.text(piece["id"], "setup")
    rows = card.split("\n")
    depth, kerf = inches(rows[1], metric), inches(rows[5], metric)
    if abs(kerf - job["kerf"]) > 0.003:
        f.add("set-up card", f"kerf {rows[5]}")
    strips = read_strips(f, packet, name, kerf, metric)
    if not strips:
        f.add("no strips", name)
        return
    right = piece["board"].get("zero", "left") == "right"
    ticks = collect(f, strips, name, right)
    if len(ticks) < 2:
        f.add("ticks", f"{name}: fewer than two")
        return
    cuts = [ticks[n][0] for n in sorted(ticks)]
    if piece["board"].get("kerfs") and max(abs(a - b) for a, b in zip(cuts, piece["board"]["kerfs"])) > 0.01:
        f.add("kerf list", f"{name}: strip differs from the list")
    check_list(f, packet, name, ticks, metric, half_kerf(piece, kerf))
    gaps = np.diff(cuts)
    spacing = len(gaps) / np.sum(1 / gaps)
    y = board.line_that_keeps_its_length(bend.thickness, depth, kerf, spacing, piece["board"]["material"])
    d = bend.plain + bend.kerf_sign * y
    words(f, packet, name, piece, bend, right)
    if bend.piece.get("uneven") and piece["shape"] == "ordinates":
        f.count("not laid: measured points over uneven legs")
        return
    place_and_fold(f, packet, name, piece, bend, d, cuts, strips, right, metric)


def half_kerf(piece, kerf):
    return {"left": -kerf / 2, "right": kerf / 2}.get(piece["board"].get("tick", "centre"), 0.0)


def read_strips(f, packet, name, kerf, metric):
    out = []
    for index in packet.parts.get((name, "strips"), []):
        for strip in paper.strips_on(packet.sheet(index), kerf * 72):
            origin(f, strip, name, metric)
            out.append(strip)
    ticked = [s for s in out if s.feet]
    for strip in ticked[:1] + ticked[-1:]:
        seen = paper.raster_ticks(strip)
        f.count("ticks in rasters", len(seen))
        if len(seen) != len(strip.feet) or any(abs(a - b) > 0.35 for a, b in zip(seen, strip.feet)):
            f.add("raster", f"{name} strip {strip.number}: {len(seen)} feet seen, {len(strip.feet)} drawn")
    boards = {strip.board: [] for strip in out}
    for strip in out:
        boards[strip.board].append((strip.number, [round(foot - strip.frame[0], 2) for foot in strip.feet]))
    for board, strips in boards.items():
        if strips != boards[min(boards)]:
            f.add("boards alike that differ", f"{name}: strips of board {board}")
    if len(boards) > 1:
        f.count("boards alike on shared sheets", len(boards))
    return out


SET_AT = re.compile(r"(?:set the mark at|ponga la marca en) (-?[\d.,/ -]+ (?:in|mm|pulg))")
MARK = re.compile(r"^(?:TAPE CHECK |CINTA )?(-?[\d.,/ -]+ (?:in|mm|pulg)|\d+)$")


def origin(f, strip, name, metric):
    """Ties the strip to the tape: where each of its whole marks stands."""
    strip.tape = []
    u0 = strip.frame[0]
    for t in strip.triangles:
        near = []
        for text, box, real in strip.words:
            m = MARK.match(text.strip())
            if m and box[1] < 14:
                left = min([b[0] for b in strip.tick_boxes if 0 < real[0] - b[2] < 6], default=real[0])
                away = min(abs(left - t - 7.5), abs(t - real[2] - 7.5), *(
                    min(abs(left - end), abs(real[2] - end)) for end in strip.arrow_ends(t, real)))
                near.append((away, m.group(1)))
        if near and min(near)[0] < 5:
            strip.tape.append((t, inches(min(near)[1], metric)))
    said = [m.group(1) for m in (SET_AT.search(c) for c in strip.captions) if m]
    bare = [t for t in strip.triangles if all(abs(t - known) > 0.01 for known, _ in strip.tape)]
    short = strip.frame[2] - strip.frame[0] < 146  # 2 in, between the names of its joints: its caption tells it
    if bare and (len(strip.triangles) > 1 or not said or not short):
        f.add("tape mark without its figure", f"{name} strip {strip.number}: {said}")
    for text in said:
        at = inches(text, metric)
        if len(bare) == 1 and all(abs(at - known) > 1e-6 for _, known in strip.tape):
            strip.tape.append((bare[0], at))
        elif all(abs(at - known) > 1e-6 for _, known in strip.tape):
            f.add("tape mark of the caption", f"{name} strip {strip.number}: no mark at {text}")


def collect(f, strips, name, right):
    """Cut number -> (inches from zero of the kerf's middle, of its tick), all strips on one board."""
    ticks, sign = {}, -1 if right else 1
    for strip in strips:
        strip.sign = sign
        zero = [t - sign * at * 72 for t, at in strip.tape]
        edge = strip.frame[2] if right else strip.frame[0]
        if any(l[2] > 2 and l[1] > 10 and abs(l[0] - edge) < 2 for l in strip.upright):  # the heavy line at zero
            zero.append(edge)
        if not zero:
            f.add("strip without a tape mark", f"{name} strip {strip.number}")
            continue
        if max(zero) - min(zero) > 0.6:
            f.add("tape marks disagree", f"{name} strip {strip.number}: {(max(zero) - min(zero)) / 72:.3f} in")
        strip.zero = zero[0]
        numbered(f, strip, ticks, name)
    wanted = list(range(1, len(ticks) + 1))
    if sorted(ticks) != wanted:
        f.add("ticks", f"{name}: numbers {sorted(set(wanted) ^ set(ticks))[:6]} skipped or out of row")
    order = [ticks[n][0] for n in sorted(ticks)]
    if any(b <= a for a, b in zip(order, order[1:])):
        f.add("ticks", f"{name}: out of order")
    return ticks


def numbered(f, strip, ticks, name):
    feet = strip.feet if strip.sign > 0 else strip.feet[::-1]
    found = {}
    for w in strip.numerals:
        if w.size > 20:
            continue
        i = min(range(len(feet)), key=lambda k: abs(feet[k] - w.u), default=None)
        if i is not None and abs(feet[i] - w.u) < 12:
            found.setdefault(i, []).append(int(w.text))
    if not feet:
        return
    if not found:
        f.add("ticks", f"{name} strip {strip.number}: no numeral")
        return
    starts = {n[0] - i for i, n in found.items()}
    if len(starts) > 1 or any(len(n) > 1 for n in found.values()):
        f.add("misnumbered", f"{name} strip {strip.number}: {sorted(starts)[:4]}")
    first = min(starts)
    shafts = [l[0] for l in strip.upright if l[1] < 60 and strip.foot_row
              and strip.foot_row[0] - 20 < l[4] < strip.foot_row[1] + 20]
    thin = [l[0] for l in strip.upright if l[1] < 14 and l[2] < 0.6 and l[3] == ""]
    half = strip.kerf / 2
    side = max((0.0, -half, half), key=lambda o: sum(any(abs(u + o - s) < 0.1 for s in thin) for u in feet))
    for i, u in enumerate(feet):
        at = strip.sign * (u - strip.zero) / 72
        n = first + i
        if n in ticks and abs(ticks[n][0] - at) > 0.01:
            f.add("doubled", f"{name}: cut {n} stands twice, {ticks[n][0]:.3f} and {at:.3f} in")
        shaft = min(shafts, key=lambda s: abs(s - u - side), default=u)
        if abs(shaft - u - side) > 0.1:
            f.add("ticks", f"{name}: foot {n} has no shaft where its strip's others have theirs")
        ticks[n] = (at, strip.sign * (shaft - strip.zero) / 72, shaft - u)
        f.count("ticks read")


def check_list(f, packet, name, ticks, metric, shift):
    rows = {}
    for index in packet.parts.get((name, "checklist"), []):
        for row in paper.rows_of(packet.doc[index], 4.0):
            read_rows(row, rows)
    if sorted(rows) != sorted(ticks):
        f.add("checklist", f"{name}: rows {sorted(set(rows) ^ set(ticks))[:6]} are not the strip's cuts")
    worst = [0, 0]
    for n, (first, rest, second) in rows.items():
        if n not in ticks:
            continue
        if metric:
            at, other, scale = (first + rest / 1) / 25.4, second, 0.04
        else:
            at, other, scale = first + rest, second / 25.4, 0.006
        true = tick_place(ticks[n], shift)
        off, off2 = abs(at - true), abs(other - true)
        if off > 0.005 or off2 > scale:
            f.add("checklist column", f"{name} cut {n}: {first} {rest:+.3f} | {second}, the tick stands at "
                  f"{true:.4f} in ({true * 25.4:.2f} mm)")
            break
        f.count("checklist rows")


def tick_place(tick, shift):
    return tick[1] if abs(shift) > 0 else tick[0]


NUMERAL = re.compile(r"^-?\d+([.,]\d+|-\d+/\d+|/\d+)?$")
REST = re.compile(r"^[+-][.,]\d+$")


def read_rows(words_of, rows):
    """n, place, maybe what was rounded, the other unit: groups of three or four figures in a row."""
    i, texts = 0, [w[2] for w in words_of]
    while i + 2 < len(texts):
        n, first = texts[i], texts[i + 1]
        if not (n.isdigit() and NUMERAL.match(first)):
            i += 1
            continue
        rest, j = 0.0, i + 2
        if REST.match(texts[j]):
            rest, j = float(texts[j].replace(",", ".")), j + 1
        if j < len(texts) and NUMERAL.match(texts[j]):
            rows.setdefault(int(n), (paper.number(first), rest, paper.number(texts[j])))
            i = j + 1
        else:
            i += 1


def words(f, packet, name, piece, bend, right):
    """Which way the kerfs go, in order from zero, on every sheet that says it; the marks where it changes."""
    order = bend.signs()
    order = order[::-1] if right else order
    if len(order) < 1:
        return
    base = piece["id"]
    for kind in ("strips", "checklist", "setup", "install"):
        text = packet.text(name, kind) or packet.text(base, kind)
        says(f, name, kind, re.sub(SHORT_MARK, "", text) if kind == "strips" else text, order)
    if len(order) > 1:
        form = packet.text(name, "form").replace("\n", " ")
        says(f, name, "form", "\n".join(re.findall(r"From zero: ([^.]*)", form)), order)
    cover = [l for l in packet.cover.split("\n") if re.match(rf"^{re.escape(name)}: ", l)]
    says(f, name, "cover", "\n".join(cover), order)
    marks = re.findall(r"(?:REVERSE|CAMBIO) [^:\n]*: [^\n]*?(OPEN|ABREN|CLOSE|CIERRAN)", packet.text(name, "strips"))
    marks += re.findall(SHORT_MARK, packet.text(name, "strips"))
    letters = ["O" if re.match(OPEN, m) else "C" for m in marks]
    if set(letters) != set(order[1:]) or len(letters) < len(order) - 1:
        f.add("reverse mark", f"{name}: marks {letters}, the wall goes {order}")


def says(f, name, kind, text, order):
    for line in text.split("\n"):
        if not re.search(rf"(?:[Kk]erfs|[Rr]anuras)\b.*(?:{OPEN}|{CLOSE})", line) or re.search("REVERSE|CAMBIO", line):
            continue
        said = ["O" if re.match(OPEN, w) else "C" for w in re.findall(rf"{OPEN}|{CLOSE}", line)]
        often = len(order) > 2 and len(said) == 1
        if said != order and not (often and said == order[:1]):
            f.add("open or close", f"{name} {kind}: \"{line.strip()[:60]}\", the wall goes {''.join(order)} from zero")
            return


def place_and_fold(f, packet, name, piece, bend, d, cuts, strips, right, metric):
    ends, angles = bend.ends(d)
    extra = list(piece.get("tails") or (0, 0))
    if piece.get("through_legs"):
        extra = [leg if a == 0 else 0 for leg, a in zip(piece.get("leg_pair") or [piece["legs"]] * 2, angles)]
    first = min(ends[0]) - extra[0]
    last = max(ends[1]) + extra[1]
    trim = piece["board"].get("trim", 75 / 25.4 if metric else 3.0)
    blank = last - first + 2 * trim
    printed = blank_length(packet, name, piece, metric)
    if printed is None:
        f.add("blank", f"{name}: no length on the cover")
        return
    f.gap("blank length", abs(printed - blank) - (1 / 32 if not metric else 0.02))
    from_left = [printed - c for c in cuts][::-1] if right else list(cuts)
    u = [p - trim + first for p in from_left]
    miss = board.fold(bend.course, d, u)
    told = flat_end(packet, metric)
    if told and miss <= told + 1 / 64:  # no kerf stands near a mitre: that end is bent over the form
        f.gap("board between its kerfs", board.fold(bend.course, d, u, ends_bent=True))
    else:
        f.gap("board on the wall", miss)
    total = bend.course.length_along(d)[-1]
    marks(f, name, strips, ends, total, trim, first, printed, right, metric, bend)
    mitres(f, packet, name, strips, angles, ends, trim, right, metric, bend)


def flat_end(packet, metric):
    """How far a flat end before a mitre stands off the curve, as the cover warns; inches."""
    warned = re.findall(r"that end is ([\d.,/-]+) \w+ off the curve|ese extremo se aparta ([\d.,/-]+) \w+ de la curva",
                        re.sub(r"\s+", " ", packet.cover))
    return max((paper.number(a or b) for a, b in warned), default=0) / (25.4 if metric else 1)


def blank_length(packet, name, piece, metric):
    """From the row of the cover's table of pieces: the figure before u and the verdict."""
    for page in range(0, 3):
        rows = {}
        for x0, y0, x1, y1, text, *_ in packet.doc[page].get_text("words"):
            rows.setdefault(round(y1), []).append((x0, text))
        for row in rows.values():
            texts = [t for _, t in sorted(row)]
            if texts and texts[0] == name:
                figures = [t for t in texts if re.match(r"^\d", t)]
                for k in range(len(texts) - 1, 0, -1):
                    if re.match(r"^\d[.,]\d\d$", texts[k]) and k > 2:
                        value = paper.number(texts[k - 1])
                        return value / 25.4 if metric else value
    return None


TRIM = re.compile(r"(?:^|, )(?:TRIM|SOBRA) (-?[\d.,/ -]+ ?(?:in|mm|pulg)?)")
LABEL = re.compile(r"^(BEND STARTS|BEND ENDS|CENTER|EMPIEZA CURVA|ACABA CURVA|CENTRO) (-?[\d.,/ -]+ ?(?:in|mm|pulg)?)$")


def marks(f, name, strips, ends, total, trim, first, printed, right, metric, bend):
    def from_zero(u):
        p = u - first + trim
        return printed - p if right else p
    start, stop = (1, 0) if right else (0, 1)
    for strip in strips:
        for text, box, real in strip.words:
            m = LABEL.match(text.strip())
            if not m:
                continue
            at = inches(m.group(2), metric)
            if m.group(1) in ("CENTER", "CENTRO"):
                if bend.half:
                    continue
                want = [from_zero(total / 2)] if "shape" in bend.piece and "ordinates" not in bend.piece else [at]
            else:
                want = [from_zero(p) for p in ends[start if m.group(1) in ("BEND STARTS", "EMPIEZA CURVA") else stop]]
            f.gap(f"mark {m.group(1)}", min(abs(at - w) for w in want) - 1 / 32)
            f.count("marks read")
            if not hasattr(strip, "zero") or m.group(1) in ("CENTER", "CENTRO"):
                continue
            lines_at = [(abs(strip.sign * (l[0] - strip.zero) / 72 - at), l[2]) for l in strip.upright if l[1] > 40]
            close = [w for gap, w in lines_at if gap < 0.045]
            nearby = [w for gap, w in lines_at if gap < 0.4]
            if lines_at and nearby and (not close or max(close) < max(nearby)):
                f.add("word beside another line", f"{name}: \"{text}\" beside a line of another place")
    for strip in strips:
        heavy_lines(f, name, strip, metric, (trim, printed - trim))


def heavy_lines(f, name, strip, metric, trims):
    """A heavy line across the whole strip is where something begins or ends: a word beside it says the same place."""
    if not hasattr(strip, "zero"):
        return
    u0, v0, u1, v1 = strip.frame
    said = [inches(m.group(2), metric) for m in (LABEL.match(w[0].strip()) for w in strip.words) if m]
    for m in (TRIM.search(w[0].strip()) for w in strip.words):
        if m:
            said += trims
            if abs(inches(m.group(1), metric) - trims[0]) > (0.02 if metric else 1 / 32):
                f.add("trim's figure", f"{name} strip {strip.number}: {m.group(0)}, the job has {trims[0]:.3f} in")
    for u, high, width, dashes, _ in strip.upright:
        if width < 1.2 or width > 2 or dashes or high < 0.9 * (v1 - v0) or min(abs(u - u0), abs(u - u1)) < 1:
            continue
        at = strip.sign * (u - strip.zero) / 72
        if not any(abs(at - s) < 0.045 for s in said):
            f.add("heavy line without a word", f"{name} strip {strip.number}: a heavy line at {at:.3f} in, words at "
                  f"{[round(s, 3) for s in said]}")
            return


def mitres(f, packet, name, strips, angles, ends, trim, right, metric, bend):
    text = "\n".join(w[0] for s in strips for w in s.words if s.board == strips[0].board)
    said = re.findall(r"(?:MITER|INGLETE) ([\d.,]+)°(?:, (plain face shorter|plain face longer|cara lisa más corta|"
                      r"cara lisa más larga))?", text)
    want = [math.degrees(a) for a in angles if a > 0]
    if len(said) < len(want):
        f.add("mitre not on the strip", f"{name}: {len(said)} of {len(want)} mitres")
    measured = "ordinates" in bend.piece  # the ends' directions are known no better than a tape's sixteenths tell
    if measured and len(said) > len(want):
        f.count("not checked: mitres of ends measured by ordinates")
    elif len(said) > len(want):
        f.add("mitre of a square end", f"{name}: {len(said)} said, {len(want)} wanted")
    for value in want:
        if said and min(abs(paper.number(s[0]) - value) for s in said) > (1.0 if measured else 0.11):
            f.add("mitre angle", f"{name}: {value:.2f} degrees, the strip says {[s[0] for s in said]}")
    for angle, (plain, kerf), left in zip(angles, ends, (True, False)):
        if angle == 0:
            continue
        shorter = (plain > kerf) if left else (plain < kerf)
        wrong = ("longer", "larga") if shorter else ("shorter", "corta")
        if any(s[1].endswith(wrong) for s in said):
            f.add("mitre the wrong way", f"{name}: {said}")
    if trim > 0 and len(re.findall(r"TRIM |SOBRA ", text)) < 2:
        f.add("trim not on the strip", f"{name}: {len(re.findall(r'TRIM |SOBRA ', text))} of 2")


def headed(sheet, name):
    """Whether a sheet of strips is this piece's: by the large letter in its head, or the words along a strip."""
    return any(p[0].strip() == name and p[1] >= 17 for p in sheet.phrases) \
        or bool(re.search(rf"(piece|pieza) {re.escape(name)}\s", sheet.text))


def judge_reprint(f, job, path, build, folder):
    """A part printed again says what the whole said: every tick where it stood."""
    piece = job["pieces"][0]
    whole = paper.Packet(path)
    name = whole.pieces()[0]
    metric, right = job["units"] == "mm", piece["board"].get("zero", "left") == "right"
    card = whole.text(name, "setup") or whole.text(piece["id"], "setup")
    kerf = inches(card.split("\n")[5], metric)
    before = collect(Findings(), read_strips(Findings(), whole, name, kerf, metric), name, right)
    middle = sorted(before)[len(before) // 2]
    first = 1 + next(i for i in whole.parts[(name, "strips")]
                     if any(strip.feet for strip in paper.strips_on(whole.sheet(i), kerf * 72)))  # not an end's alone
    for options, least in ((("--only", "strips"), len(before)),
                           (("--pages", f"{first},1"), 2),
                           (("--from-cut", str(middle)), len(before) - middle + 1)):
        part = f"{folder}/part.pdf"
        said = build(*options, "--out", part, "--force")
        if said.returncode not in (0, 3):
            f.add("reprint", f"{options}: {said.stderr[:120]}")
            continue
        again = paper.Packet(part)
        ticks, strips = {}, []
        for index in range(len(again.doc)):
            sheet = again.sheet(index)
            for strip in paper.strips_on(sheet, kerf * 72):
                if headed(sheet, name):
                    origin(f, strip, name, metric)
                    strips.append(strip)
        ticks = collect(Findings(), strips, name, right)
        if len(ticks) < least:
            f.add("reprint", f"{options}: {len(ticks)} ticks, {least} wanted")
        for n, tick in ticks.items():
            if n not in before or abs(tick[0] - before[n][0]) > 0.003:
                f.add("reprint", f"{options}: cut {n} at {tick[0]:.3f} in")
                break
        f.count("ticks read again", len(ticks))
