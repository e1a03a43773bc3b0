"""Points laid on a drawing: moved and turned, never stretched, until they lie on its lines as well as they go."""
import math

import numpy as np

from tiles import turned


def off(points, a, b):
    """Distance of every point from the nearest of the pieces of line, the nearest place itself, and which piece."""
    far, which, place = np.zeros(len(points)), np.zeros(len(points), int), np.zeros((len(points), 2))
    (ax, ay), (dx, dy) = np.ascontiguousarray(a.T), np.ascontiguousarray((b - a).T)
    over = 1 / np.maximum(dx * dx + dy * dy, 1e-18)
    for i, (x, y) in enumerate(points):
        t = ((x - ax) * dx + (y - ay) * dy) * over
        np.maximum(t, 0, out=t)
        np.minimum(t, 1, out=t)
        u, v = ax + t * dx, ay + t * dy
        r = (u - x) ** 2 + (v - y) ** 2
        j = int(r.argmin())
        far[i], which[i], place[i] = math.sqrt(r[j]), j, (u[j], v[j])
    return far, place, which


def register(points, a, b, free, amiss):
    """Where the drawing lies: the move (and turn, where sheets were turned) that lays the points on its lines. Half a
    line that bends both ways lies on itself turned about, too: of ways that fit as well the one in which `amiss`, of
    all that is drawn, is the least."""
    both = np.concatenate([a, b])
    middle = (both.min(axis=0) + both.max(axis=0)) / 2
    ways = []
    for angle in range(0, 360, 20) if free else (0,):
        turn = turned(math.radians(angle))
        p = points @ turn.T
        shift = middle - (p.min(axis=0) + p.max(axis=0)) / 2
        ways.append(settle(points, a, b, turn, shift, free, most=16 if free else 60))
    if free:  # roughly from all sides; then those that come near
        near = 3 * min(miss for _, _, miss in ways) + 0.5
        ways = [settle(points, a, b, turn, shift, True) for turn, shift, miss in ways if miss < near]
    least = min(miss for _, _, miss in ways)
    unlike = [way for way in apart(ways, 1, 0) if way[2] < least + 0.05]
    return min(unlike, key=lambda way: (amiss(*way[:2]) if len(unlike) > 1 else 0, way[2]))[:2]


def apart(ways, of_turn, of_shift):
    """One of those that lie alike to so many decimals, the best first."""
    found = {}
    for way in sorted(ways, key=lambda way: way[2]):
        found.setdefault((tuple(way[0].ravel().round(of_turn)), tuple(way[1].round(of_shift))), way)
    return found.values()


def best_of(rough, points, a, b, ends):
    """Of ways that a few points told, settled by all points, the best. Few points may lie well where all do not: the
    ways are settled one after the other until even few points lie worse than all do in the best."""
    best = None
    for way in apart(rough, 2, 1):
        if best is not None and way[2] > best[2] + 0.001:
            break
        settled = settle(points, a, b, *way[:2], True, ends)
        best = settled if best is None or settled[2] < best[2] else best
    return best


def settle(points, a, b, turn, shift, free, ends=np.empty((0, 2)), most=60):
    """Gauss and Newton on the distance square to the nearest piece of line: whole steps first, wherever they lead; then
    from the best place on, half a step where a whole one overshoots. Of `most` of the points, and all ends."""
    sample = np.concatenate([points[:: max(1, len(points) // most)], points[-1:], ends])
    d = b - a
    normals = np.column_stack([-d[:, 1], d[:, 0]]) / np.maximum(np.hypot(*d.T), 1e-12)[:, None]

    def lie(turn, shift):
        now = sample @ turn.T + shift
        found = off(now, a, b)
        return float(np.sqrt((found[0] ** 2).mean())), turn, shift, now, found

    def stepped(way, part):
        _, turn, shift, now, (far, near, which) = way
        apart = far > 1e-6  # past the end of a piece of line the nearest place is not square off it
        n = np.where(apart[:, None], (near - now) / np.where(apart, far, 1)[:, None], normals[which])
        centre = now.mean(axis=0)
        arm = now - centre
        rows = np.column_stack([n, n[:, 1] * arm[:, 0] - n[:, 0] * arm[:, 1]])
        step = np.linalg.lstsq(rows[:, :3 if free else 2], ((near - now) * n).sum(axis=1), rcond=None)[0] * part
        r = turned(float(np.clip(step[2], -0.3, 0.3))) if free else np.eye(2)
        return float(np.abs(step).max()), lie(r @ turn, r @ (shift - centre) + centre + step[:2])

    way = best = lie(turn, shift)
    for _ in range(10):
        moved, way = stepped(way, 1.0)
        best = min(best, way, key=lambda one: one[0])
        if moved < 1e-7:
            return best[1], best[2], best[0]
    part = 1.0
    for _ in range(16):
        moved, way = stepped(best, part)
        if way[0] > best[0]:
            part /= 2
            continue
        best, part = way, min(1.0, part * 2)
        if moved < 1e-7:
            break
    return best[1], best[2], best[0]
