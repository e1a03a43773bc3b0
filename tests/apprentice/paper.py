"""Reads a packet as a carpenter would: what is drawn and printed on its pages, and nothing else of the file."""
import re

import fitz
import numpy as np

POINT = 72.0


def number(text):
    """'4 ft 2-1/2', '-1/2', '0,126' -> inches or whatever the text counts in; None where there is no number."""
    text = text.replace("\u2212", "-").strip()
    m = re.search(r"(-?\d+[.,]\d+)|(-?)(\d+)[- ](\d+)/(\d+)|(-?)(\d+)/(\d+)|(-?\d+)", text)
    if not m:
        return None
    g = m.groups()
    if g[0]:
        return float(g[0].replace(",", "."))
    if g[2]:
        return (-1 if g[1] else 1) * (int(g[2]) + int(g[3]) / int(g[4]))
    if g[6]:
        return (-1 if g[5] else 1) * int(g[6]) / int(g[7])
    return float(g[8])


def by_operator(stream):
    """What a content stream says, an operator a line: '72 446.5 m'."""
    tokens = re.findall(r"\((?:[^()\\]|\\.)*\)|<<.*?>>|\[[^\]]*\]|/[^\s()<>\[\]/]+|[^\s()<>\[\]/]+",
                        stream.decode("latin1"), re.S)
    return "".join(token + ("\n" if token[0].isalpha() else " ") for token in tokens)


class Word:
    def __init__(self, text, size, box, bold):
        self.text, self.size, self.box, self.bold = text, size, box, bold

    u = property(lambda self: (self.box[0] + self.box[2]) / 2)
    v = property(lambda self: (self.box[1] + self.box[3]) / 2)


class Sheet:
    """A page turned so that its strips read level: lines (u0, v0, u1, v1, width, dashes), areas, words, in points."""

    def __init__(self, page, turned):
        self.page, self.turned = page, turned
        self.text = page.get_text()
        self.lines, self.areas, self.frames, self.curves = [], [], [], []
        for drawing in page.get_drawings():
            self._take(drawing)
        self.phrases, self.glyphs = [], []
        for block in page.get_text("rawdict")["blocks"]:
            for line in block.get("lines", []):
                for span in line["spans"]:
                    self._say(span, line["dir"])

    def turn(self, p):
        return (-p[1], p[0]) if self.turned else (p[0], p[1])

    def box(self, r):
        a, b = self.turn((r[0], r[1])), self.turn((r[2], r[3]))
        return min(a[0], b[0]), min(a[1], b[1]), max(a[0], b[0]), max(a[1], b[1])

    def _take(self, d):
        fill, pen = d.get("fill"), d.get("color")
        style = (round(d.get("width") or 0, 2), (d.get("dashes") or "").split("]")[0].strip("[ ").strip())
        if d["type"] in ("f", "fs") and fill is not None and sum(fill) < 1.5:
            self.areas.append((self.box(d["rect"]), len(d["items"]), [i[0] for i in d["items"]]))
        if d["type"] not in ("s", "fs") or pen is None:
            return
        for item in d["items"]:
            if item[0] == "l":
                a, b = self.turn(item[1]), self.turn(item[2])
                self.lines.append((*a, *b, *style))
            elif item[0] == "re":
                self.frames.append((self.box(item[1]), style))
            elif item[0] == "c":
                self.curves.append(([self.turn(p) for p in item[1:5]], style))

    def _say(self, span, direction):
        level = (0, -1) if self.turned else (1, 0)
        straight = abs(direction[0] - level[0]) < 0.02 and abs(direction[1] - level[1]) < 0.02
        text = "".join(c["c"] for c in span["chars"])
        bold = "Bold" in span["font"]
        self.phrases.append((text, span["size"], self.box(span["bbox"]), straight, bold))
        if not straight:
            return
        run = []
        for c in span["chars"] + [None]:
            far = run and c is not None and self.apart(run[-1], c) > 0.1 * span["size"]
            if c is not None and c["c"].strip() and not far:
                run.append(c)
                continue
            if run:
                boxes = [self.box(k["bbox"]) for k in run]
                box = (min(b[0] for b in boxes), min(b[1] for b in boxes), max(b[2] for b in boxes),
                       max(b[3] for b in boxes))
                self.glyphs.append(Word("".join(k["c"] for k in run), span["size"], box, bold))
            run = [c] if far and c["c"].strip() else []

    def apart(self, before, after):
        """How far one letter ends before the next begins: two numbers side by side come as one word."""
        return self.box(after["bbox"])[0] - self.box(before["bbox"])[2]


def rows_of(page, tolerance):
    """The words of a page in rows, each from left to right: (x0, x1, text)."""
    words = sorted(((w[1] + w[3]) / 2, w[0], w[2], w[4]) for w in page.get_text("words"))
    out, last = [], -1e9
    for v, x0, x1, text in words:
        if v - last > tolerance:
            out.append([])
        last = v
        out[-1].append((x0, x1, text))
    return [sorted(r) for r in out]


SECTIONS = {"strips": ("Mark strips", "Tiras de marcas"), "checklist": ("Cut checklist", "Lista de cortes"),
            "setup": ("Set-up card", "Hoja de ajuste", "Ficha de ajuste", "Tarjeta de ajuste"),
            "template": ("Arch template", "Plantilla"), "form": ("Bending form", "Molde", "Horma"),
            "casing": ("Casing segments", "Segmentos"), "install": ("Install card",)}


def named(pieces):
    """'N/1+2' -> 'N/1', 'N/2', the boards of an opening that share a sheet; 'A, B' -> 'A', 'B'."""
    found = []
    for piece in pieces.split(", "):
        opening, slash, boards = piece.rpartition("/")
        found += [opening + slash + board for board in boards.split("+")] if slash else [piece]
    return found


def of_one_board(doc, pages):
    """Of sheets that are there for each of several boards, those of the first: "board 1 of 3"."""
    boards = [re.search(r"(?:board|tabla) (\d+) (?:of|de) \d+", doc[page].get_text()) for page in pages]
    return [page for page, board in zip(pages, boards) if not board or board[1] == "1"]


class Packet:
    def __init__(self, path):
        self.doc = fitz.open(path)
        toc = [(title, page - 1) for _, title, page in self.doc.get_toc()]
        self.parts = {}  # (piece, kind) -> pages
        for i, (title, first) in enumerate(toc):
            last = toc[i + 1][1] if i + 1 < len(toc) else len(self.doc)
            piece, _, rest = title.partition("  ")
            for kind, names in SECTIONS.items():
                if any(rest.strip().lower().startswith(n.lower()) for n in names):
                    for name in named(piece):
                        self.parts[(name, kind)] = of_one_board(self.doc, range(first, last))
        self.cover = "\n".join(self.doc[i].get_text() for i in range(toc[1][1] if len(toc) > 1 else 1))
        self._sheets = {}

    def pieces(self):
        return [p for p, kind in self.parts if kind == "strips"]

    def all_text(self):
        return "\n".join(page.get_text() for page in self.doc)

    def not_to_cut(self, piece):
        """Whether the packet says in large words of this piece alone that it is not to be cut."""
        return any(re.search(rf"^(DO NOT CUT|NO CORTE) {re.escape(piece)}$", page.get_text(), re.M)
                   for page in self.doc)

    def text(self, piece, kind):
        return "\n".join(self.doc[i].get_text() for i in self.parts.get((piece, kind), []))

    def sheet(self, index):
        if index not in self._sheets:
            page = self.doc[index]
            chars = {}
            for b in page.get_text("dict")["blocks"]:
                for l in b.get("lines", []):
                    key = "up" if abs(l["dir"][0]) < 0.02 and l["dir"][1] < 0 else "level"
                    chars[key] = chars.get(key, 0) + sum(len(s["text"]) for s in l["spans"])
            self._sheets[index] = Sheet(page, chars.get("up", 0) > chars.get("level", 0))
        return self._sheets[index]


class Strip:
    """One strip: ticks as (cut number or None, inches from zero of the foot's middle, of the shaft), its words."""

    def __init__(self, sheet, frame, style):
        self.sheet, self.frame, self.style = sheet, frame, style
        self.ticks, self.marks, self.words, self.heavy, self.number, self.board = [], [], [], [], None, 1

    def arrow_ends(self, u, words):
        """Where the level lines end that lead from a mark toward words off it."""
        for a0, b0, a1, b1, width, dashes in self.sheet.lines:
            if abs(b0 - b1) < 0.01 and words[1] < b0 < words[3] and width < 1 and not dashes and abs(a0 - a1) < 300:
                if min(abs(a0 - u), abs(a1 - u)) < 0.3:
                    yield a1 if abs(a0 - u) < 0.3 else a0


def strips_on(sheet, kerf):
    """The strips of a page: frames that hold feet. `kerf` in points."""
    feet = [a[0] for a in sheet.areas if a[1] == 1 and a[2] == ["re"] and abs(a[0][3] - a[0][1] - 3) < 0.05
            and abs(a[0][2] - a[0][0] - kerf) < 0.06]
    boxes = [f for f in sheet.frames if f[1][1] == "" and f[0][2] - f[0][0] > 30 and f[0][3] - f[0][1] > 15]
    narrow = min(sheet.page.rect.width, sheet.page.rect.height) < 150
    out = []
    for box, style in boxes:
        inner = [f for f in feet if box[0] - 6 < f[0] + kerf / 2 < box[2] + 6 and box[1] - 1 < f[3] < box[3] + 1]
        # A short strip's caption starts before it; a roll with no room above has all that is said of it ahead of it.
        above = [p for p in sheet.phrases if p[3] and (box[0] - 700 <= p[2][0] <= box[2] + 60
                                                       and -16 < p[2][3] - box[1] < 4 or narrow and p[2][2] < box[0])]
        named = [p for p in above if re.match(r"(Strip|Tira) \d+ ", p[0]) and p[2][0] < box[2]]
        if not inner and not named:
            continue
        if any(re.match(r"(Strip|Tira) \d+ (of|de) \d+, (coupon|probeta)", p[0]) for p in named):
            continue  # it stands before those of the board
        strip = Strip(sheet, box, style)
        strip.feet = sorted((f[0] + f[2]) / 2 for f in inner)
        strip.foot_row = inner[0][1:4:2] if inner else None
        strip.kerf = kerf
        strip.captions = [p[0] for p in above]
        if named:
            strip.number = int(re.search(r"\d+", named[0][0]).group())
            board = re.match(r"\w+ \d+ \w+ \d+, (?:board|tabla) (\d+)", named[0][0])
            strip.board = int(board[1]) if board else 1
        out.append(strip)
    for strip in out:
        _fill(strip)
    return out


def _fill(strip):
    sheet, (u0, v0, u1, v1) = strip.sheet, strip.frame
    def within(b, pad=1.0):
        return u0 - pad <= (b[0] + b[2]) / 2 <= u1 + pad and v0 - pad <= (b[1] + b[3]) / 2 <= v1 + pad
    strip.words = [(t, (b[0] - u0, b[1] - v0, b[2] - u0, b[3] - v0), b) for t, _, b, ok, _ in sheet.phrases
                   if ok and (within(b) or u0 - 1 < b[0] < u1 and v0 - 1 < (b[1] + b[3]) / 2 < v1)]
    strip.triangles = [(a[0][0] + a[0][2]) / 2 for a in sheet.areas if a[1] == 3 and abs(a[0][1] - v0) < 0.6
                       and 7 < a[0][2] - a[0][0] < 9 and u0 - 1 < (a[0][0] + a[0][2]) / 2 < u1 + 1]
    strip.tick_boxes = [b for b, _ in sheet.frames if within(b) and b[2] - b[0] < 12 and b[1] < v0 + 14
                        and abs(b[2] - b[0] - b[3] + b[1]) < 0.1]
    strip.upright = [(l[0], abs(l[3] - l[1]), l[4], l[5], max(l[1], l[3])) for l in sheet.lines
                     if abs(l[0] - l[2]) < 0.02 and u0 - 9 <= l[0] <= u1 + 9 and min(l[1], l[3]) > v0 - 1
                     and max(l[1], l[3]) < v1 + 1]
    strip.numerals = [w for w in sheet.glyphs if w.text.isdigit() and w.size >= 12.5 and within(w.box, 12)
                      and v0 <= w.v <= v1]


def raster_ticks(strip, dpi=600):
    """Middles of the black feet in a raster of the strip, in points along the sheet: what the printer puts down."""
    u0, v0, u1, v1 = strip.frame
    if strip.foot_row is None:
        return []
    band = (u0 - 8, strip.foot_row[0] + 0.8, u1 + 8, strip.foot_row[1] - 0.8)
    page = strip.sheet.page
    if strip.sheet.turned:
        clip = fitz.Rect(band[1], -band[2], band[3], -band[0])
    else:
        clip = fitz.Rect(*band)
    pix = page.get_pixmap(matrix=fitz.Matrix(dpi / 72, dpi / 72), clip=clip, colorspace=fitz.csGRAY)
    a = 255.0 - np.frombuffer(pix.samples, np.uint8).reshape(pix.height, pix.stride)[:, :pix.width]
    row = a.mean(axis=1) if strip.sheet.turned else a.mean(axis=0)
    origin = pix.y if strip.sheet.turned else pix.x
    on = row > 200
    edges = np.flatnonzero(np.diff(np.r_[0, on.astype(int), 0]))
    out = []
    for s, e in zip(edges[::2], edges[1::2]):
        lo, hi = max(0, s - 1), min(len(row), e + 1)
        x = np.arange(lo, hi)
        c = ((x + 0.5) * row[lo:hi]).sum() / row[lo:hi].sum() + origin
        if abs((e - s) * 72 / dpi - strip.kerf) < 0.5:  # not the sides of the frame
            out.append((-c if strip.sheet.turned else c) * 72 / dpi)
    return sorted(out)
