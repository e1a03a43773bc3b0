"""A board of several blanks: each blank's strips and checklist are read by themselves, the blanks laid on each other
where the cover says that they meet, and the whole folded onto its wall."""
import re

import judge

JOINT = re.compile(
    r"(\S+) (?:to|con) (\S+): (?:scarf of|bisel de) ([\d.,]+) (?:degrees|grados), (?:de )?([\d.,/ -]+ (?:in|mm|pulg))"
    r".*?(?:its middle|su centro a) ([\d.,/ -]+ (?:in|mm|pulg))")
CUT_AS = re.compile(r"(\S+/\d+) (?:de )?([\d.,/ -]+ (?:in|mm|pulg)) (?:with|without|con|sin) ")


def names(packet, piece):
    return [p for p in packet.pieces() if p.split("/")[0] == piece["id"]]


def is_spliced(packet, piece):
    return "side" in piece and any("/" in name for name in names(packet, piece))


def judge_spliced(f, job, packet, piece):
    metric, name = job["units"] == "mm", piece["id"]
    bend = judge.Bend(piece)
    cover = re.sub(r"\s+", " ", packet.cover)
    joints = {m[1]: (m[2], judge.inches(m[4], metric), judge.inches(m[5], metric))
              for m in JOINT.finditer(cover) if m[1].split("/")[0] == name}
    lengths = {m[1]: judge.inches(m[2], metric) for m in CUT_AS.finditer(cover) if m[1].split("/")[0] == name}
    if len(lengths) != len(joints) + 1:
        return f.add("splices", f"{name}: {len(lengths)} blanks and {len(joints)} joints on the cover")
    card = packet.text(name, "setup").split("\n")
    depth, kerf = judge.inches(card[1], metric), judge.inches(card[5], metric)
    right = piece["board"].get("zero", "left") == "right"
    cuts, start = [], 0.0
    for i in range(1, len(lengths) + 1):
        blank = f"{name}/{i}"
        if i > 1:
            _, scarf, at = joints[f"{name}/{i - 1}"]
            start = at - scarf / 2
        ticks = {}
        if (blank, "strips") in packet.parts:
            strips = judge.read_strips(f, packet, blank, kerf, metric)
            ticks = judge.collect(f, strips, blank, right)
            judge.check_list(f, packet, blank, ticks, metric, judge.half_kerf(piece, kerf))
            if max(t[0] for t in ticks.values()) > lengths[blank]:
                f.add("splices", f"{blank}: a kerf beyond its end")
            said(f, packet, blank, i > 1, blank in joints)
        cuts += [start + ticks[n][0] for n in sorted(ticks)]
        if blank in joints:
            other, scarf, at = joints[blank]
            # As the tape reads it: a sixteenth, a millimetre.
            f.gap("blank length", abs(start + lengths[blank] - at - scarf / 2) - (1 / 32 if not metric else 0.02))
            clear = [abs(c - at) for c in cuts[-3:]]
            if any(c < scarf / 2 for c in clear):
                f.add("splices", f"{blank}: a kerf in the scarf")
    whole = start + lengths[f"{name}/{len(lengths)}"]
    f.count("blanks of spliced boards", len(lengths))
    gaps = [b - a for a, b in zip(cuts, cuts[1:])]
    if not gaps or min(gaps) <= 0:
        return f.add("splices", f"{name}: kerfs out of order over its joints")
    spacing = len(gaps) / sum(1 / g for g in gaps)
    y = judge.board.line_that_keeps_its_length(bend.thickness, depth, kerf, spacing, piece["board"]["material"])
    d = bend.plain + bend.kerf_sign * y
    length = bend.course.length_along(d)[-1]
    tails, trim = list(piece.get("tails") or (0, 0)), piece["board"].get("trim", 75 / 25.4 if metric else 3.0)
    f.gap("blank length", abs(whole - length - sum(tails) - 2 * trim) - (1 / 32 if not metric else 0.02))
    u = [whole - c for c in cuts][::-1] if right else cuts
    f.gap("board on the wall", judge.board.fold(bend.course, d, [p - trim - tails[0] for p in u]))


def said(f, packet, blank, before, after):
    """Both of its scarfs stand on its strips, with the face that is the shorter."""
    text = packet.text(blank, "strips")
    longer = len(re.findall(r"(?:SCARF|BISEL) [\d.,]+°, (?:plain face longer|cara lisa más larga)", text))
    shorter = len(re.findall(r"(?:SCARF|BISEL) [\d.,]+°, (?:plain face shorter|cara lisa más corta)", text))
    short = len(re.findall(r"(?:SCARF|BISEL) [\d.,]+°", text)) - longer - shorter
    # A page of a wide roll may hold the sets of all boards alike.
    shared = re.search(r"(?:boards|tablas) 1 (?:to|a) (\d+) (?:of|de) \d+", text)
    sets = int(shared[1]) if shared else 1
    if any(n % sets for n in (longer, shorter, short)):
        f.add("splices", f"{blank}: {sets} sets of strips that differ: {longer}, {shorter}, {short} scarfs")
    longer, shorter, short = (n // sets for n in (longer, shorter, short))
    if longer + shorter + short < before + after or longer > before or shorter > after:
        f.add("splices", f"{blank}: its strips tell {longer} + {shorter} + {short} scarfs, it has {before + after}")
