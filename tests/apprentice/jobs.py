"""Jobs: read back from their text into inches, and made up by a seed over all that a job file can say."""
import re
import tomllib

import paper


def length(value, units):
    if isinstance(value, (int, float)):
        return value / 25.4 if units == "mm" else float(value)
    text = value.strip()
    m = re.match(r"^(?:(\d+)\s*(?:ft|')\s*)?(.*)$", text)
    feet, rest = m.groups()
    rest = rest.replace('"', " in").replace("in", "").strip()
    if rest.endswith("mm"):
        return paper.number(rest) / 25.4
    inches = paper.number(rest) if rest else 0.0
    return (int(feet) * 12 if feet else 0) + inches


LENGTHS = {"span", "rise", "chord", "radius", "side_radius", "crown_radius", "reverse_radius", "depth", "thickness",
           "width", "reveal", "trim", "board", "kerf"}


def in_inches(table, units):
    out = {}
    for key, value in table.items():
        if isinstance(value, dict):
            out[key] = in_inches(value, units)
        elif key in LENGTHS:
            out[key] = length(value, units)
        elif key == "ordinates":
            out[key] = [[length(a, units), length(b, units)] for a, b in value]
        elif key in ("tails", "kerfs"):
            out[key] = [length(v, units) for v in value]
        else:
            out[key] = value
    return out


def read(text):
    """A job file's text as a dictionary in inches. A comment `# truth {json}` gives the shape of a piece that was
    measured by ordinates."""
    raw = tomllib.loads(text)
    units = raw["job"].get("units", "in")
    job = {"units": units, "kerf": length(raw["saw"]["kerf"], units), "language": raw["job"].get("language", "en"),
           "pieces": []}
    for table in raw.get("opening", []):
        piece = in_inches(table, units)
        piece["board"] = piece.pop("liner")
        legs = table.get("legs")
        if isinstance(legs, list):
            legs = [length(v, units) for v in legs]
            piece["uneven"] = abs(legs[0] - legs[1]) > 1e-6
            piece["leg_pair"] = legs
            legs = legs[0]
        elif legs is not None:
            legs = length(legs, units)
        piece["legs"] = legs
        piece.setdefault("measured_to", "wall")
        job["pieces"].append(piece)
    for table in raw.get("wall", []):
        piece = in_inches(table, units)
        piece.setdefault("side", "concave")
        piece.setdefault("measured_to", "wall")
        job["pieces"].append(piece)
    points = [float(v) for line in text.splitlines() if re.match(r"^# truth [\d.]", line) for v in line[8:].split()]
    if points:  # the curve that the ordinates were measured on, as points in inches
        job["pieces"][0]["ordinates"] = [list(p) for p in zip(points[:-16:16], points[1:-15:16])] + [points[-2:]]
    for line in text.splitlines():
        if line.startswith("# truth {"):
            import json
            said = json.loads(line[8:])
            for piece in job["pieces"]:
                if piece["id"] == said["id"]:
                    piece["truth"] = said
    return job


# --- made up ---------------------------------------------------------------------------------------------------------

SHAPES = ["semicircular", "segmental", "elliptical", "three-centred", "pointed", "tudor", "parabolic", "catenary",
          "horseshoe", "eyebrow", "ordinates"]
WALLS = ["chord", "radius", "ordinates", "reversing"]
PAPERS = ["na_letter_8.5x11in", "iso_a4_210x297mm", "na_ledger_11x17in"]
STRIP_ROLLS = ["custom_roll_62mm", "custom_roll_24in", "custom_roll_36in"]
NARROW_ROLLS = ["custom_roll_29mm", "custom_roll_2in"]


class Maker:
    """One job's text. Every figure is written so that it reads back exactly (sixteenths, or whole millimetres)."""

    def __init__(self, seed):
        import random
        self.r = random.Random(seed)
        self.rare = random.Random(f"rare {seed}")  # what few jobs have, apart, so that all else stays as it is
        self.printer = random.Random(f"printer {seed}")
        self.several = random.Random(f"several {seed}")  # the same
        self.splices = random.Random(f"splices {seed}")  # the same
        self.seed = seed
        self.metric = self.r.random() < 0.35
        self.rows, self.notes = [], []

    def round(self, inches):
        """A length as it can be typed."""
        return round(inches * 25.4) / 25.4 if self.metric else round(inches * 16) / 16

    def typed(self, inches):
        if self.metric:
            return str(round(inches * 25.4))
        whole, part = divmod(round(inches * 16), 16)
        if self.r.random() < 0.5 or inches < 0:
            return repr(inches)
        over = 16
        while part and part % 2 == 0:
            part, over = part // 2, over // 2
        feet, rest = divmod(whole, 12)
        text = f"{rest} {part}/{over} in" if part else f"{rest} in"
        long = f'"{12 * feet + rest}{text[len(str(rest)):]}"'
        return f'"{feet} ft {text}"' if feet and self.r.random() < 0.5 else long

    def any(self, lo, hi):
        return self.round(self.r.uniform(lo, hi))

    def named(self, name):
        """Two of a kind now and then: then the packet has a set of strips and checklists for each."""
        return f'id = "{name}"' + ("\nquantity = 2" if self.several.random() < 0.2 else "")

    def say(self, key, inches):
        self.rows.append(f"{key} = {self.typed(inches)}")

    def text(self):
        r = self.r
        self.kerf = round(r.uniform(0.08, 0.14), 3) if not self.metric else round(r.uniform(2.2, 3.4), 1)
        head = ["[job]", f'number = "S-{self.seed}"', 'title = "Made up"', 'revision = "A"', "date = 2026-11-20",
                f'units = "{"mm" if self.metric else "in"}"', f'language = "{r.choice(["en", "en", "es"])}"', "[saw]",
                f"blade_diameter = {254 if self.metric else 10}", f"kerf = {self.kerf}"]
        if r.random() < 0.4:
            head.append(f"rear_limit = {25 if self.metric else 1.25}")
        head += ["[printer]", f'media = "{r.choice(PAPERS)}"']
        if r.random() < 0.25:
            head.append(f'strip_media = "{r.choice(STRIP_ROLLS)}"')
        elif self.rare.random() < 0.1:
            head.append(f'strip_media = "{self.rare.choice(NARROW_ROLLS)}"')
        if r.random() < 0.25:
            head.append(f'template_media = "{r.choice(["custom_roll_24in", "custom_roll_36in"])}"')
        if self.printer.random() < 0.15:
            self.measured_printer(head)
        pieces = [self.opening("A") if r.random() < 0.62 else self.wall("A")]
        if r.random() < 0.12:
            pieces.append(self.wall("B"))
        if self.rare.random() < 0.08:
            pieces.append(self.opening("C"))
        return "\n".join(self.notes + head + sum(pieces, [])) + "\n"

    def measured_printer(self, head):
        """A printer up to 1 % off each way, which the shop has measured."""
        import json
        media = next(line for line in head if line.startswith("media")).split('"')[1]
        said = {"media": media, "first": self.printer.choice(["top", "left"]),
                "level": 1 + self.printer.uniform(-0.01, 0.01), "upright": 1 + self.printer.uniform(-0.01, 0.01)}
        head.append('profile = "made-up"')
        self.notes.append("# printer " + json.dumps(said))

    def measured(self, piece, step):
        """Stations and heights of a shape as a tape reads them."""
        import json
        import numpy as np
        import walls
        c = walls.courses_of(piece)[0]
        at = list(np.arange(0, c.x[-1] - step / 2, step)) + [c.x[-1]]
        pairs = []
        for x in at:
            i = int(np.argmin(np.abs(c.x - x)))
            pairs.append((self.round(float(c.x[i])), self.round(float(np.interp(x, c.x, c.y)))))
        pairs[0], pairs[-1] = (0.0, 0.0), (self.round(float(c.x[-1])), 0.0)
        self.rows.append("ordinates = [" + ", ".join(f"[{self.typed(a)}, {self.typed(b)}]" for a, b in pairs) + "]")
        self.notes.append("# truth " + json.dumps(piece))

    def opening(self, name):
        r = self.r
        self.rows = ["[[opening]]", self.named(name)]
        shape = SHAPES[self.seed % len(SHAPES)]
        span = self.any(34, 76)
        self.rows.append(f'shape = "{shape}"')
        if shape == "ordinates":
            drop = self.any(span * 0.2, span * 0.36)
            self.measured({"id": name, "shape": r.choice(["elliptical", "segmental", "parabolic"]), "span": span,
                           "rise": drop}, 6)
        else:
            self.say("span", span)
            self.figures(shape, span)
        self.rows.append(f'measured_to = "{r.choice(["wall", "finish"])}"')
        if r.random() < 0.6:
            leg = self.any(60, 84)
            if self.rare.random() < 0.2:
                other = leg + self.round(self.rare.choice([-1, 1]) * self.rare.uniform(0.4, 2.5))
                self.rows.append(f"legs = [{self.typed(leg)}, {self.typed(other)}]")
            else:
                self.say("legs", leg)
            if r.random() < 0.25:
                self.rows.append("through_legs = true")
        self.say("depth", self.any(3.5, 7))
        self.rows.append("[opening.liner]")
        self.board("opening.liner")
        if r.random() < 0.5:
            self.rows.append("[opening.casing]")
            self.say("width", self.any(2, 3.5))
            self.say("reveal", self.round(0.25))
        if r.random() < 0.3:
            self.rows.append("[opening.form]")
        self.rows.append("[opening.template]")
        if r.random() < 0.5:
            self.rows.append(f'sheets = "{r.choice(["grid", "along"])}"')
        if r.random() < 0.25 and shape != "ordinates" and not any(row.startswith("legs = [") for row in self.rows):
            self.rows.append("half = true")
        elif len(self.rows) % 3 == 0:
            self.rows.append("half = false")
        return self.rows

    def figures(self, shape, span):
        r = self.r
        low, high = {"segmental": (0.14, 0.4), "elliptical": (0.3, 0.46), "three-centred": (0.34, 0.46),
                     "pointed": (0.6, 1.1), "tudor": (0.36, 0.42), "parabolic": (0.15, 0.4), "catenary": (0.15, 0.4),
                     "horseshoe": (0.56, 0.72), "eyebrow": (0.12, 0.24), "semicircular": (0.5, 0.5)}[shape]
        rise = self.any(span * low, span * high)
        if shape != "semicircular":
            self.say("rise", rise)
        if shape == "tudor":
            self.say("side_radius", self.round(span * 0.24))
            self.say("crown_radius", self.round(span * r.uniform(0.9, 1.1)))
        if shape == "eyebrow" and r.random() < 0.5:
            both = (span * span / 4 + rise * rise) / (2 * rise)
            self.say("reverse_radius", self.round(both * r.uniform(0.35, 0.6)))

    def wall(self, name):
        r = self.r
        kind = WALLS[self.seed % len(WALLS)]
        self.rows = ["[[wall]]", self.named(name)]
        chord = self.any(60, 120)
        if kind == "chord":
            self.say("chord", chord)
            self.say("rise", self.any(chord * 0.06, chord * 0.3))
        elif kind == "radius":
            self.say("radius", self.any(40, 130))
            self.rows.append(f"angle = {r.randint(25, 100)}")
        elif kind == "ordinates":
            self.measured({"id": name, "shape": "segmental", "span": chord, "rise": self.any(chord * 0.1, chord * 0.2)},
                          6)
        else:
            self.reversing(name, chord)
        self.rows += [f'measured_to = "{r.choice(["wall", "finish"])}"', f'side = "{r.choice(["concave", "convex"])}"']
        spliced = kind in ("chord", "radius") and self.splices.random() < 0.2
        if spliced:
            ends = [self.splices.uniform(30, 70), self.splices.uniform(4, 50)]
            ends = [self.typed(self.round(end)) for end in self.splices.sample(ends, 2)]
            self.rows.append(f"tails = [{', '.join(ends)}]")
        elif r.random() < 0.3 and kind in ("chord", "radius"):
            self.rows.append(f"tails = [{self.typed(self.any(4, 20))}, {self.typed(self.any(4, 20))}]")
        self.rows.append("[wall.board]")
        self.say("width", self.any(3.5, 7))
        if spliced:  # room for the bend and two feet of straight wood
            self.say("max_blank", self.round(max(60, self.bend_length() + self.splices.uniform(30, 50))))
        listed = kind in ("chord", "radius") and not spliced and "tails" not in self.rows[-3] and self.rare.random() < 0.15
        self.board("wall.board", listed)
        if r.random() < 0.4:
            self.rows.append("[wall.form]")
        return self.rows

    def reversing(self, name, chord):
        """A wave: an arc, then a flatter one the other way."""
        import json
        import walls
        big, small = chord * self.r.uniform(0.07, 0.11), chord * self.r.uniform(0.02, 0.045)
        if self.r.random() < 0.5:
            big, small = -small, -big
        truth = {"id": name, "chord": chord, "wave": [(big + small) / 2, (big - small) / 2]}
        c = walls.courses_of(truth)[0]
        pairs = [(self.round(chord * i / 20), self.round(float(c.y[i * (len(c.y) - 1) // 20]))) for i in range(21)]
        self.notes.append("# truth " + json.dumps(truth))
        self.rows.append("ordinates = [" + ", ".join(f"[{self.typed(a)}, {self.typed(b)}]" for a, b in pairs) + "]")

    def bend_length(self):
        """About as long as the wall's rows say."""
        import walls
        said = tomllib.loads("\n".join(self.rows))["wall"][0]
        units = "mm" if self.metric else "in"
        return walls.courses_of({k: v if k == "angle" else length(v, units) for k, v in said.items()
                                 if k in ("chord", "rise", "radius", "angle")})[0].s[-1]

    def board(self, table, listed=False):
        r = self.r
        thickness = self.round(r.choice([0.375, 0.5, 0.5, 0.625, 0.75]))
        self.rows.append(f'material = "{r.choice(["mdf", "mdf", "mdf", "yellow-poplar", "plywood"])}"')
        self.say("thickness", thickness)
        spacing = self.round(r.choice([0.25, 0.375, 0.5])) if r.random() < 0.3 else None
        if spacing and not listed:
            self.say("spacing", spacing)
        trim = self.any(1, 6) if r.random() < 0.7 else None
        if trim:
            self.say("trim", trim)
        if listed:
            step, places = self.rare.uniform(0.35, 0.6), [self.round(trim or 3)]
            while places[-1] < (trim or 3) + self.bend_length() * 1.01:
                places.append(self.round(places[-1] + step * self.rare.uniform(0.85, 1.15)))
            self.rows.append("kerfs = [" + ", ".join(self.typed(p) for p in places) + "]")
        self.rows.append(f'zero = "{r.choice(["left", "right"])}"')
        self.rows.append(f'tick = "{r.choice(["centre", "centre", "left", "right"])}"')
        if thickness > 0.7 and r.random() < 0.5:  # over the edge the web must hold the numbers
            self.say("kerf_depth", self.round(0.375))
            self.rows.append('strip = "edge"')
        elif listed:
            self.say("kerf_depth", self.round(thickness * 0.7))
        if self.rare.random() < 0.12:
            self.coupon(table, thickness)

    def coupon(self, table, thickness):
        self.rows.append(f"[{table}.coupon]")
        self.say("chord", self.round(16))
        self.say("rise", self.round(self.rare.uniform(0.8, 2.2)))
        self.rows.append(f'held = "{self.rare.choice(["disc", "ends", "centre"])}"')
        closes = 'side = "convex"' in self.rows  # kerfs that open do not close
        self.rows.append(f'result = "{self.rare.choice(["cracked", "held"] + ["closed"] * closes)}"')
        self.rows.append('by = "R. Vale"')
        self.say("kerf_depth", self.round(thickness * 0.65))
        self.say("spacing", self.round(0.5))
        if self.rare.random() < 0.8:  # else a coupon that says much more or less than the table is asked about
            self.rows.append("believed = true")

