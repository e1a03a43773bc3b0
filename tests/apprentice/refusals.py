"""Boards that are refused as likely to break: by formulas of our own, is what is said of them so, and would nobody have
expected them to bend? Inches.

Stiffness: the closed form of board.py. Break strains: as they stand in ../../src/bend/NOTES.md, from memory; wood and
plywood with kerfs outside 0.7 of theirs (judgement)."""
import math
import re

import jobs
from board import Cell

BREAK = {"mdf": 0.008, "yellow-poplar": 0.0064 * 0.7, "plywood": 0.0055 * 0.7}
PEEL = {"mdf": math.sqrt(6 * 45 / 2.7e9)}  # of a web 1 m thick, before its shape: Gc 45 J/m2, E 2700 MPa
LIKELY = re.compile(r"kerfs (.+?) deep every (.+?) are strained to ([\d.]+) of break strain at the bend.s tightest "
                    r"radius, (.+?) on the seen face")
ALLOWED = 0.90  # of break strain: what is more is likely to break
OFF = 0.02  # the radius is told to the tape's sixteenth


def strained(thickness, depth, kerf, spacing, material, radius):
    """Of break strain, kerfs outside a bend of that radius on the seen face."""
    cell = Cell(thickness, depth, kerf, spacing, material)
    t, b, x = cell.web, cell.reach, cell.land
    strain = cell.stiffness * thickness**3 / (2 * t**2 * (radius + cell.line))
    least = BREAK[material]
    if material in PEEL:
        d = 1 - b**2.85 / (b**1.85 + x**1.85) ** 1.5405
        least = min(least, PEEL[material] / math.sqrt(t * 0.0254 * (1 - (t / thickness) ** 3) * d))
    return strain / least


def judged(job, refusal, f):
    """A finding where a refusal is of a board that bends by these formulas, or tells another strain than they do."""
    said = LIKELY.search(refusal)
    piece = job["pieces"][0]
    board = piece["board"]
    outside = piece.get("side", "concave") == "concave" and piece.get("shape") != "eyebrow"
    if not said or not outside or board["material"] not in BREAK or "coupon" in board or len(job["pieces"]) > 1:
        return
    depth, spacing, radius = (jobs.length(said[i], "in") for i in (1, 2, 4))
    told = float(said[3])
    ours = strained(board["thickness"], depth, job["kerf"], spacing, board["material"], radius)
    f.count("refused as likely to break, worked out again")
    if ours <= ALLOWED or abs(ours - told) > max(0.01, OFF * told):
        f.add("refused", f"{said[0]}: {ours:.2f} by our own formulas")
    given = any(key in board for key in ("kerf_depth", "spacing", "kerfs"))
    if given:
        f.count("refused for the depth or spacing that the job gives")
        return
    # Left to the program: no depth that leaves 3/32 in of web, less being a caution, holds it at any spacing.
    best = min(strained(board["thickness"], board["thickness"] - web / 64, job["kerf"], s / 16, board["material"], radius)
               for web in range(6, int(board["thickness"] * 40)) for s in range(4, 17) if s / 16 > job["kerf"] * 1.2)
    if best <= ALLOWED:
        f.add("refused", f"{said[0]}: another cut comes to {best:.2f}")
