"""Boards that climb, read off the paper: the kerf lines of ten made-up jobs are read out of the PDF's strips, folded in
space, and laid on the wall: climb.py COUNT SEED [SLIP]. It fails where an end of any kerf is more than 1/32 in off, or a
sheet tells another angle.

Inches and radians. What is expected is made of the job's figures alone."""
import random
import re
import sys

import numpy as np

from board import line_that_keeps_its_length
from in_space import ALLOWED, laid, over_seeds, printed, turned
from judge import read_rows
from paper import Packet, rows_of


class Job:
    def __init__(self, seed):
        r = random.Random(seed)
        any_of = lambda lo, hi, step: round(r.uniform(lo, hi) / step) * step
        self.concave = seed % 2 == 0
        self.radius, self.angle = any_of(36, 110, 0.25), any_of(45, 110, 1)
        self.rise, self.run = any_of(5.5, 8, 0.125), any_of(8.5, 13, 0.125)
        self.right = r.random() < 0.5
        self.zero_left = r.random() < 0.5
        self.tails = r.choice([(0, 0), (any_of(4, 18, 0.5), any_of(4, 18, 0.5))])
        self.thickness, self.width = r.choice([0.5, 0.625, 0.75]), any_of(3.5, 10.5, 0.25)
        self.depth, self.spacing = self.thickness / 2, r.choice([0.5, 0.4375, 0.375])
        self.kerf, self.trim = r.choice([0.1, 0.118, 0.126]), any_of(0, 4, 0.25)
        self.edge = seed % 5 == 4 and self.thickness == 0.75
        self.paper = r.choice(["na_letter_8.5x11in", "iso_a4_210x297mm", "na_legal_8.5x14in"])

    def text(self):
        quoted = lambda x: f'"{x} in"'
        return f'''[job]
number = "U-{self.radius:g}"
title = "A stair of nobody's"
revision = "A"
date = 2026-11-02
units = "in"
[saw]
blade_diameter = "12 in"
kerf = {self.kerf}
[printer]
strip_media = "{self.paper}"
[[wall]]
id = "S"
radius = {quoted(self.radius)}
angle = {self.angle}
side = "{"concave" if self.concave else "convex"}"
rake = [{quoted(self.rise)}, {quoted(self.run)}]
climbs = "{"right" if self.right else "left"}"
tails = [{quoted(self.tails[0])}, {quoted(self.tails[1])}]
[wall.board]
material = "mdf"
thickness = {quoted(self.thickness)}
width = {quoted(self.width)}
kerf_depth = {quoted(self.depth)}
spacing = {quoted(self.spacing)}
trim = {quoted(self.trim)}
zero = "{"left" if self.zero_left else "right"}"
strip = "{"edge" if self.edge else "face"}"
'''

    def line_radius(self):
        below = line_that_keeps_its_length(self.thickness, self.depth, self.kerf, self.spacing, "mdf")
        # The wall is measured. The board stands before it: inside a concave curve, outside a convex one, and its plain
        # face is the far side.
        off = self.thickness - below
        return self.radius - off if self.concave else self.radius + off

    def plan_length(self):
        return self.line_radius() * np.radians(self.angle) + sum(self.tails)

    def climb(self):
        return self.rise / self.run * (self.radius * np.radians(self.angle) + sum(self.tails))

    def tangent(self):
        return self.climb() / self.plan_length()

    def kerf_angle(self):
        return np.arctan(self.tangent())

    def lean(self):
        """Of a kerf over the board, from zero on."""
        return self.width * self.tangent() * (-1 if self.right == self.zero_left else 1)

    def lean_drawn(self):
        return 0 if self.edge else (-1 if self.right else 1) * self.tangent()

    def length(self):
        return self.plan_length() / np.cos(self.kerf_angle()) + self.width * self.tangent() + 2 * self.trim

    def most_gap(self):
        """Between the end of the bend and the kerf beside it."""
        return self.spacing

    def heading(self, s):
        """Of the line in plan, at a station from the left."""
        bent = np.clip(s - self.tails[0], 0, self.plan_length() - sum(self.tails)) / self.line_radius()
        return (-1 if self.concave else 1) * bent

    def at(self, s):
        """The line in plan."""
        fine = np.linspace(0, self.plan_length(), 20001)
        h = self.heading(fine)
        step = fine[1] - fine[0]
        x = np.concatenate([[0], np.cumsum((np.cos(h[1:]) + np.cos(h[:-1])) / 2 * step)])
        y = np.concatenate([[0], np.cumsum((np.sin(h[1:]) + np.sin(h[:-1])) / 2 * step)])
        # Straight on before the first station and past the last.
        over = np.maximum(0, s - fine[-1])
        under = np.minimum(0, s)
        return np.column_stack([np.interp(s, fine, x) + over * np.cos(h[-1]) + under * np.cos(h[0]),
                                np.interp(s, fine, y) + over * np.sin(h[-1]) + under * np.sin(h[0])])


def feet_of(page):
    """Black feet: the middle of the lower edge, its height on the page, the lean (x per y up), the width."""
    for d in page.get_drawings():
        if d["type"] != "f" or d.get("fill") is None or sum(d["fill"]) > 0.5:
            continue
        points = [p for item in d["items"] if item[0] == "l" for p in item[1:3]]
        points += [q for item in d["items"] if item[0] == "qu" for q in (item[1].ul, item[1].ur, item[1].ll, item[1].lr)]
        points += [q for item in d["items"] if item[0] == "re" for q in (item[1].bl, item[1].br, item[1].tl, item[1].tr)]
        low, high = max((p.y for p in points), default=0), min((p.y for p in points), default=0)
        if abs(low - high - 3) > 0.05:
            continue
        base = sorted(p.x for p in points if abs(p.y - low) < 0.05)
        top = sorted(p.x for p in points if abs(p.y - high) < 0.05)
        if 3 < base[-1] - base[0] < 30:
            yield (base[0] + base[-1]) / 2, low, (top[0] + top[-1] - base[0] - base[-1]) / 6, base[-1] - base[0]


def captions_of(page):
    """"Strip 2 of 5" and "kerfs 13 to 24", with the height at which they stand."""
    for block in page.get_text("dict")["blocks"]:
        for line in block.get("lines", []):
            text = "".join(span["text"] for span in line["spans"])
            m = re.search(r"kerfs (\d+) to (\d+)", text)
            if m:
                yield line["bbox"][3], int(m.group(1)), int(m.group(2))


def read_strips(pages, job, amiss):
    """Lists of (number, place along the strip, lean, foot) of each strip, in inches."""
    out = []
    for page in pages:
        captions = sorted(captions_of(page))
        feet = list(feet_of(page))
        for k, (y, first, last) in enumerate(captions):
            below = captions[k + 1][0] if k + 1 < len(captions) else 1e9
            row = sorted((f for f in feet if y - 2 < f[1] < below), key=lambda f: f[0] if job.zero_left else -f[0])
            if len(row) != last - first + 1:
                amiss.append(f"kerfs {first} to {last} are said, {len(row)} feet stand there")
                continue
            out.append([(first + i, (x if job.zero_left else -x) / 72, lean, foot / 72)
                        for i, (x, _, lean, foot) in enumerate(row)])
    return out


def read_list(packet, name):
    """Number -> distance from zero on the front edge, off the checklist."""
    rows = {}
    for index in packet.parts[(name, "checklist")]:
        for row in rows_of(packet.doc[index], 4.0):
            read_rows(row, rows)
    return {n: first + rest for n, (first, rest, _) in rows.items()}


def folded(job, front, back, stations):
    """The flat board, seen from the room, folded at each line by the turn of its share of the bend."""
    flat = np.stack([np.column_stack([front, np.full_like(front, job.width), np.zeros_like(front)]),
                     np.column_stack([back, np.zeros_like(back), np.zeros_like(back)])], axis=1)
    bounds = np.concatenate([[-1e9], (stations[1:] + stations[:-1]) / 2, [1e9]])
    turns = np.diff(job.heading(bounds))
    for i, turn in enumerate(turns):
        axis = flat[i, 0] - flat[i, 1]
        rest = flat[i + 1:].reshape(-1, 3)
        # Seen from above, a heading that grows turns what follows to the left: away from the room.
        flat[i + 1:] = turned(rest, flat[i, 1], axis, turn).reshape(-1, 2, 3)
    return flat.reshape(-1, 3)


def on_wall(job, stations):
    plan = job.at(stations)
    up = job.tangent() * (stations if job.right else job.plan_length() - stations)
    tall = job.width * np.hypot(1, job.tangent())
    lines = np.stack([np.column_stack([plan[:, 0], up + tall, -plan[:, 1]]),
                      np.column_stack([plan[:, 0], up, -plan[:, 1]])], axis=1)
    return lines.reshape(-1, 3)


def judge(seed, folder, slip):
    """What is amiss, and the farthest that an end of a kerf is off its wall. `slip`: how much more the packet's board
    climbs in a step than the reader believes; what it must find."""
    job, amiss = Job(seed), []
    job.rise += slip
    text = job.text()
    job.rise -= slip
    packet, why = printed(text, seed, folder)
    if why:
        return [why], 0, 0
    paper = Packet(packet)
    # The reader's board: the front edge is the upper one as it hangs.
    places, leans = read_kerfs(paper, "S", job, amiss)
    said_of_saw("\n".join(page.get_text() for page in paper.doc), job, amiss)
    off = stood_on_wall(job, np.array([places[n] for n in sorted(places)]), leans, amiss)
    return amiss, off, len(places)


def strip_pages(paper, name):
    return [paper.doc[index] for index in paper.parts[(name, "strips")]]


def read_kerfs(paper, name, job, amiss):
    """Number -> distance from zero on the front edge; the leans of the ticks. What strips and checklist say agrees."""
    places, leans = read_list(paper, name), []
    for strip in read_strips(strip_pages(paper, name), job, amiss):
        leans += [lean for _, _, lean, _ in strip]
        for (n, a, slope, foot), (m, b, _, _) in zip(strip, strip[1:]):
            if abs((b - a) - (places[m] - places[n])) > 0.004:
                amiss.append(f"kerfs {n} and {m} stand {b - a:.4f} apart on the strip, {places[m] - places[n]:.4f} in the list")
            if abs(foot - job.kerf / np.cos(job.kerf_angle())) > 0.002:
                amiss.append(f"foot {n} is {foot:.4f} wide")
            if abs(slope - job.lean_drawn()) > 0.002:
                amiss.append(f"tick {n} leans {slope:.4f}, not {job.lean_drawn():.4f}")
    if sorted(places) != list(range(1, len(places) + 1)):
        amiss.append("the checklist skips a kerf")
    return places, leans


def said_of_saw(text, job, amiss):
    for said in (f"{np.degrees(job.kerf_angle()):.1f}°", "RIGHT" if job.right else "LEFT"):
        if said not in text:
            amiss.append(f"nowhere does it say {said}")
    if re.search(r"handle " + ("LEFT" if job.right else "RIGHT"), text, re.I):
        amiss.append("the handle swings to the wrong side")


def stood_on_wall(job, from_zero, leans, amiss):
    """The farthest that an end of a kerf stands off its wall, folded along the lines that the paper draws; over the edge
    it draws none across the board."""
    angle, lean = job.kerf_angle(), job.lean()
    front = from_zero if job.zero_left else job.length() - from_zero[::-1]
    slant = lean if job.zero_left else -lean
    start = job.trim + max(0.0, -slant)  # where the plumb line of the wall's left end meets the front edge
    if not job.edge:
        slant = float(np.mean(leans)) * job.width
    stations = (front - start) * np.cos(angle)
    made = folded(job, front, front + slant, stations)
    off = np.linalg.norm(laid(made, on_wall(job, stations)) - on_wall(job, stations), axis=1).max()
    ends = stations[0] - job.tails[0], job.plan_length() - job.tails[1] - stations[-1]
    if max(ends) > job.most_gap():
        amiss.append(f"no kerf stands for {max(ends):.3f} in of the bend's end")
    if off > ALLOWED:
        amiss.append(f"an end of a kerf stands {off:.4f} in off its wall")
    return off


if __name__ == "__main__":
    sys.exit(over_seeds(judge, "boards that climb", "wall", int(sys.argv[1]), int(sys.argv[2]), *map(float, sys.argv[3:])))
