"""What boards that are folded in space share: turning, laying on, having a packet printed, and a run over seeds."""
import multiprocessing
import os
import subprocess
import tempfile

import numpy as np

ALLOWED = 1 / 32
PROGRAM = os.environ["KERFPACKET_PROGRAM"]


def turned(points, about, axis, angle):
    k = axis / np.linalg.norm(axis)
    d = points - about
    return about + d * np.cos(angle) + np.cross(k, d) * np.sin(angle) + np.outer(d @ k, k) * (1 - np.cos(angle))


def laid(points, onto):
    """Moved and turned, never stretched nor mirrored (Kabsch)."""
    p, q = points.mean(axis=0), onto.mean(axis=0)
    u, _, v = np.linalg.svd((points - p).T @ (onto - q))
    keep = np.diag([1, 1, np.sign(np.linalg.det(u @ v))])
    return (points - p) @ (u @ keep @ v) + q


def printed(text, seed, folder, *options):
    """The packet of a job, or why there is none."""
    file, packet = os.path.join(folder, f"{seed}.toml"), os.path.join(folder, f"{seed}.pdf")
    with open(file, "w") as out:
        out.write(text)
    run = subprocess.run([PROGRAM, "build", file, "--out", packet, *options], capture_output=True, text=True)
    return (packet, None) if run.returncode in (0, 3) else (None, f"not built: {run.stderr.strip()}")


def over_seeds(judge, what, surface, count, first, slip=0.0):
    """`judge` tells of a seed what is amiss, how far the worst end of a kerf is off, and how many kerfs it saw."""
    worst, kerfs, failed = 0.0, 0, 0
    with tempfile.TemporaryDirectory() as folder:
        seeds = list(range(first, first + count))
        # A process a packet: the library that reads it keeps what it has read.
        with multiprocessing.get_context("fork").Pool(2, maxtasksperchild=1) as pool:
            told = pool.starmap(judge, [(seed, folder, slip) for seed in seeds], chunksize=1)
        for seed, (amiss, off, n) in zip(seeds, told):
            worst, kerfs = max(worst, off), kerfs + n
            for words in amiss[:8]:
                print(f"seed {seed}: {words}")
            failed += bool(amiss)
    print(f"{count} {what}, {kerfs} kerfs: {failed} with something amiss; "
          f"the farthest end of a kerf is {worst:.4f} in off its {surface}")
    return 1 if failed or not kerfs else 0
