"""What was measured, as a curve of our own: points, directions and lengths by nothing but the job's text.

Inches. A course runs left to right, x right, y up (an opening) or toward the side where the wall bulges."""
import math

import numpy as np

STEP = 0.01  # inches between the points of a course


class Course:
    """A smooth curve: arc length s, points (x, y), heading th in radians, curvature k (an arch: negative)."""

    def __init__(self, s, x, y, th, k):
        self.s, self.x, self.y, self.th, self.k = s, x, y, th, k

    def at(self, d):
        """Points of the parallel d to the left of the direction of travel (outside an arch)."""
        return np.column_stack([self.x - d * np.sin(self.th), self.y + d * np.cos(self.th)])

    def length_along(self, d):
        """Arc length of that parallel at every point."""
        step = np.diff(self.s)
        mean = (1 - d * self.k[1:] + 1 - d * self.k[:-1]) / 2
        return np.concatenate([[0], np.cumsum(step * mean)])


def of_arcs(arcs, heading):
    """Arcs as (radius, turn in radians, a clockwise turn negative), from the origin."""
    s, x, y, th, k = [0.0], [0.0], [0.0], [heading], []
    for radius, turn in arcs:
        n = max(8, int(radius * abs(turn) / STEP) + 1)
        sign = math.copysign(1, turn)
        a = np.linspace(0, turn, n + 1)
        cx, cy = x[-1] - sign * radius * math.sin(th[-1]), y[-1] + sign * radius * math.cos(th[-1])
        t0, s0 = th[-1], s[-1]
        drop = 1 if k else 0
        for i in range(drop, n + 1):
            t = t0 + a[i]
            if i or not k:
                if i:
                    s.append(s0 + radius * abs(a[i]))
                    x.append(cx + sign * radius * math.sin(t))
                    y.append(cy - sign * radius * math.cos(t))
                    th.append(t)
            k.append(sign / radius)
    return Course(*(np.array(v) for v in (s, x, y, th, k)))


def of_function(x, y, dx, dy, ddx, ddy):
    """From values and two derivatives at the same dense parameters."""
    speed = np.hypot(dx, dy)
    chord = np.hypot(np.diff(x), np.diff(y))
    turn = np.unwrap(np.arctan2(dy, dx))
    half = np.diff(turn) / 2
    arc = chord * np.where(np.abs(half) > 1e-9, half / np.sin(np.where(half == 0, 1, half)), 1)
    s = np.concatenate([[0], np.cumsum(arc)])
    return Course(s, x, y, turn, (dx * ddy - dy * ddx) / speed**3)


def circle(span, rise):
    radius = (span * span / 4 + rise * rise) / (2 * rise)
    half = math.atan2(span / 2, radius - rise)
    return of_arcs([(radius, -2 * half)], half)


def ellipse(span, rise):
    n = int(3 * (span + rise) / STEP)
    u = np.linspace(math.pi, 0, n)
    a, b = span / 2, rise
    return of_function(a + a * np.cos(u), b * np.sin(u), a * np.sin(u), -b * np.cos(u), -a * np.cos(u),
                       -b * np.sin(u))


def parabola(span, rise, more=0.0):
    """`more`: how far on past both springs, level."""
    x = np.linspace(-more, span + more, int(2 * (span + rise + 2 * more) / STEP))
    c = 4 * rise / span**2
    return of_function(x, c * x * (span - x), np.ones_like(x), c * (span - 2 * x), np.zeros_like(x),
                       np.full_like(x, -2 * c))


def catenary(span, rise, more=0.0):
    lo, hi = span / 200, 1e5
    for _ in range(300):
        a = math.sqrt(lo * hi)
        height = a * (math.cosh(min(span / 2 / a, 700)) - 1)
        lo, hi = (a, hi) if height > rise else (lo, a)
    x = np.linspace(-more, span + more, int(2 * (span + rise + 2 * more) / STEP))
    v = (x - span / 2) / a
    return of_function(x, rise - a * (np.cosh(v) - 1), np.ones_like(x), -np.sinh(v), np.zeros_like(x),
                       -np.cosh(v) / a)


def three_centred(span, rise, side=None):
    a, b = span / 2, rise
    if side is None:  # the classical construction: the bisector of what is left of the line from spring to crown
        c = math.hypot(a, b)
        side = (c - (a - b)) / 2 * c / a
    big = (a * a + b * b - 2 * a * side) / (2 * (b - side))
    phi = math.atan2(big - b, a - side)  # turn of a side arc
    return of_arcs([(side, -phi), (big, -2 * (math.pi / 2 - phi)), (side, -phi)], math.pi / 2)


def pointed(span, rise=None, radius=None):
    radius = radius or (span * span / 4 + rise * rise) / span
    turn = math.acos((radius - span / 2) / radius)
    return [of_arcs([(radius, -turn)], math.pi / 2)]


def tudor(span, rise, side, crown):
    lo, hi = 0.0, math.pi / 2  # the crown arc's centre lies on the line of a joint that turns by phi
    def height(phi):
        cx, cy = side + (crown - side) * math.cos(phi), -(crown - side) * math.sin(phi)
        inside = crown**2 - (cx - span / 2) ** 2
        return (cy + math.sqrt(inside), cx, cy) if inside > 0 else (-1e9, cx, cy)
    for _ in range(200):
        phi = (lo + hi) / 2
        lo, hi = (phi, hi) if height(phi)[0] > rise else (lo, phi)
    top, cx, cy = height(phi)
    if abs(top - rise) > 1e-3:
        raise ValueError("no such Tudor arch")
    end = math.atan2(rise - cy, cx - span / 2)
    return [of_arcs([(side, -phi), (crown, -(end - phi))], math.pi / 2)]


def eyebrow(span, rise, reverse=None):
    both = (span * span / 4 + rise * rise) / (2 * rise)
    reverse = reverse or both / 2
    turn = math.asin(span / 2 / both)
    return of_arcs([(reverse, turn), (both - reverse, -2 * turn), (reverse, turn)], 0.0)


def spline(points):
    """A natural-ended (not-a-knot in its second and last but one) cubic through points, chord length its parameter."""
    p = np.array(points, float)
    t = np.concatenate([[0], np.cumsum(np.hypot(*np.diff(p, axis=0).T))])
    n = len(p)
    h = np.diff(t)
    m = np.zeros((n, n))
    r = np.zeros((n, 2))
    for i in range(1, n - 1):
        m[i, i - 1], m[i, i], m[i, i + 1] = h[i - 1], 2 * (h[i - 1] + h[i]), h[i]
        r[i] = 6 * ((p[i + 1] - p[i]) / h[i] - (p[i] - p[i - 1]) / h[i - 1])
    if n > 3:
        m[0, :3] = [h[1], -(h[0] + h[1]), h[0]]
        m[-1, -3:] = [h[-1], -(h[-2] + h[-1]), h[-2]]
    else:
        m[0, 0] = m[-1, -1] = 1
    second = np.linalg.solve(m, r)
    u = np.linspace(0, t[-1], int(t[-1] / STEP))
    j = np.clip(np.searchsorted(t, u, side="right") - 1, 0, n - 2)
    a, b, hj = (t[j + 1] - u)[:, None], (u - t[j])[:, None], h[j][:, None]
    s0, s1, p0, p1 = second[j], second[j + 1], p[j], p[j + 1]
    q = (s0 * a**3 + s1 * b**3) / (6 * hj) + (p0 / hj - s0 * hj / 6) * a + (p1 / hj - s1 * hj / 6) * b
    d = (-s0 * a**2 + s1 * b**2) / (2 * hj) - (p0 - p1) / hj - (s1 - s0) * hj / 6
    dd = (s0 * a + s1 * b) / hj
    return of_function(q[:, 0], q[:, 1], d[:, 0], d[:, 1], dd[:, 0], dd[:, 1])


def wave(chord, whole, half):
    """A whole wave and half a wave, added: a bulge, and a flatter one the other way."""
    x = np.linspace(0, chord, 20 * int(1.2 * chord / STEP / 20) + 1)
    w = math.pi / chord
    return of_function(x, whole * np.sin(2 * w * x) + half * np.sin(w * x), np.ones_like(x),
                       w * (2 * whole * np.cos(2 * w * x) + half * np.cos(w * x)), np.zeros_like(x),
                       -w * w * (4 * whole * np.sin(2 * w * x) + half * np.sin(w * x)))


TILTED = ("segmental", "horseshoe", "eyebrow")


def tilted(c, angle):
    s, k = math.sin(angle), math.cos(angle)
    return Course(c.s, c.x * k - c.y * s, c.x * s + c.y * k, c.th + angle, c.k)


def over_uneven_legs(piece):
    """Over springs at two heights: what is one arc, or arcs both ways, tilts with the string between them; of any other
    shape each half goes from its own spring up to the crown, which rises over the middle of their heights."""
    lower = piece["leg_pair"][0] - piece["leg_pair"][1]  # of the right spring under the left
    even = {key: value for key, value in piece.items() if key not in ("uneven", "leg_pair")}
    if piece["shape"] in TILTED:
        even["span"] = math.hypot(piece["span"], lower)
        return [tilted(courses_of(even)[0], math.atan2(-lower, piece["span"]))]
    rise = piece.get("rise", piece["span"] / 2)
    if piece["shape"] == "semicircular":
        even["shape"] = "elliptical"
    halves = [courses_of(even | {"rise": rise + by})[0] for by in (-lower / 2, lower / 2)]
    if piece["shape"] in ("pointed", "tudor"):
        right = halves[1]
        span = 2 * right.x[-1]
        return [halves[0], Course(right.s[-1] - right.s[::-1], span - right.x[::-1], right.y[::-1] - lower,
                                  -right.th[::-1], right.k[::-1])]
    left, right = halves[0].x < piece["span"] / 2, halves[1].x >= piece["span"] / 2
    parts = [(h, on) for h, on in zip(halves, (left, right))]
    x, th, k = (np.concatenate([getattr(h, name)[on] for h, on in parts]) for name in ("x", "th", "k"))
    y = np.concatenate([halves[0].y[left], halves[1].y[right] - lower])
    step = np.hypot(np.diff(x), np.diff(y))
    return [Course(np.concatenate([[0], np.cumsum(step)]), x, y, th, k)]


def courses_of(piece):
    """The courses of an opening or wall of the job: one, or the two halves of a head that comes to a point (the left
    half alone: the right is its mirror image). `piece` has lengths in inches and may have `truth`, the shape that
    its ordinates were sampled from."""
    if "truth" in piece:
        return courses_of(piece["truth"])
    if piece.get("uneven") and piece["shape"] != "ordinates":
        return over_uneven_legs(piece)
    if "ordinates" in piece:
        return [spline(piece["ordinates"])]
    shape = piece.get("shape")
    if shape is None:
        if "wave" in piece:
            return [wave(piece["chord"], *piece["wave"])]
        if "chord" in piece:
            return [circle(piece["chord"], piece["rise"])]
        half = math.radians(piece["angle"]) / 2
        return [of_arcs([(piece["radius"], -2 * half)], half)]
    span, rise = piece["span"], piece.get("rise")
    return {
        "semicircular": lambda: [circle(span, span / 2)],
        "segmental": lambda: [circle(span, rise)],
        "horseshoe": lambda: [circle(span, rise)],
        "elliptical": lambda: [ellipse(span, rise)],
        "parabolic": lambda: [parabola(span, rise, piece.get("more", 0.0))],
        "catenary": lambda: [catenary(span, rise, piece.get("more", 0.0))],
        "three-centred": lambda: [three_centred(span, rise, piece.get("side_radius"))],
        "pointed": lambda: pointed(span, rise, piece.get("radius")),
        "tudor": lambda: tudor(span, rise, piece["side_radius"], piece["crown_radius"]),
        "eyebrow": lambda: [eyebrow(span, rise, piece.get("reverse_radius"))],
    }[shape]()
