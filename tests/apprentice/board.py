"""The blank as it is marked, cut and folded: rigid wood between kerfs, a hinge in the web under every kerf.

Inches and radians. Formulas of stiffness: a closed form fitted to the project's finite-element model of one cell."""
import numpy as np

SOFTNESS = {"mdf": 2.3, "plywood": 1.0}


class Cell:
    """From the middle of a kerf to the middle of the next."""

    def __init__(self, thickness, depth, kerf, spacing, material):
        self.web = t = thickness - depth
        self.reach = b = 1.28 * t * (1 - (t / thickness) ** 2.67) * SOFTNESS.get(material, 2.25)
        self.land = x = max(spacing - kerf, 1e-6)
        hinge = kerf + b * x / (b**1.85 + x**1.85) ** (1 / 1.85)
        self.stiffness = 1 / (1 + (hinge / spacing) * ((thickness / t) ** 3 - 1))  # of that of the solid board
        self.line = t / 2 + (1 - hinge / spacing) * self.stiffness * depth / 2


def line_that_keeps_its_length(thickness, depth, kerf, spacing, material):
    """Its distance from the plain face: half the web, and a little more where the wood between kerfs bends too."""
    return Cell(thickness, depth, kerf, spacing, material).line


def fold(course, d, kerfs, ends_bent=False):
    """The hinge line, folded: `kerfs` are places along the parallel d of the course, 0 at its start. Returns the worst
    distance between the folded board and that parallel when it is laid on it as well as it goes, in inches;
    `ends_bent`: from the first kerf to the last, where the ends are held to the curve by hand."""
    u = course.length_along(d)
    target = course.at(d)
    total = u[-1]
    kerfs = np.asarray(kerfs)
    if len(kerfs) < 2:
        return float("inf")
    bounds = np.concatenate([[-1e9], (kerfs[1:] + kerfs[:-1]) / 2, [1e9]])
    heading = np.interp(bounds, u, course.th)
    turns = np.diff(heading)
    places = np.arange(max(0, kerfs[0]), min(total, kerfs[-1]), 0.1) if ends_bent else np.arange(0, total, 0.1)
    along = course.th[0] + np.concatenate([[0], np.cumsum(turns)])
    stops = np.concatenate([[0], kerfs[(kerfs > 0) & (kerfs < total)]])
    first = int(np.sum(kerfs <= 0))
    angle = along[first:first + len(stops)]
    knots = np.zeros((len(stops), 2))
    for i in range(1, len(stops)):
        run = stops[i] - stops[i - 1]
        knots[i] = knots[i - 1] + run * np.array([np.cos(angle[i - 1]), np.sin(angle[i - 1])])
    j = np.searchsorted(stops, places, side="right") - 1
    a = angle[j]
    board = knots[j] + (places - stops[j])[:, None] * np.column_stack([np.cos(a), np.sin(a)])
    wall = np.column_stack([np.interp(places, u, target[:, 0]), np.interp(places, u, target[:, 1])])
    board = lay(board, wall)
    tangent = np.interp(places, u, course.th)
    miss = board - wall
    across = -miss[:, 0] * np.sin(tangent) + miss[:, 1] * np.cos(tangent)
    return float(np.abs(across).max())


def lay(points, onto):
    """Points moved and turned, never stretched, so that each comes as near as it can to its fellow (Kabsch)."""
    p, q = points.mean(axis=0), onto.mean(axis=0)
    h = (points - p).T @ (onto - q)
    s, c = h[0, 1] - h[1, 0], h[0, 0] + h[1, 1]
    n = np.hypot(s, c)
    rot = np.array([[c, s], [-s, c]]) / n
    return (points - p) @ rot + q
