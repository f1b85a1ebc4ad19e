"""Lot L09: a dipped platter brim of limewood, split from the head opening towards the back."""

import math

import numpy as np

from kit import marks
from kit.camera import hold
from kit.decals import Decal, Sheet, cloud, faded, struck
from kit.shapes import grown, mixed, oval, ring, sector
from kit.stage import card, lay, put, room, tag
from kit.wood import LIME, wood

#: Beyond the opening in the flat; with the collar's 22 mm the split is 110 mm long.
LONG = 88.0


def lie(x, y):
    """Height of the upper face: dips at front and back, rises at the sides, falls off towards the edge."""
    u, v = x / 186, y / 204
    return 40 + 20 * u**2 - 15 * v**2 - 7 * np.maximum(np.hypot(u, v) - 0.55, 0) ** 1.5


def outline(phi):
    edge = oval(408, 372, phi, -0.03, 2.0)
    # Front 96, back 78 beyond the opening: the platter sits forward of its hole.
    return edge + np.array([0.0, -9.0])


def split_path(y):
    """Where the split runs at a distance behind the opening: along the fibres, wandering a little."""
    return 0.9 * np.sin(y / 21) + 0.35 * np.sin(y / 6.3 + 1) + 0.012 * y


def brim(closed=False):
    """
    The round is cut open along the split and closed again beyond its end.
    @param closed the split filled with a spline of the same wood, for after the work
    """
    n = 260
    phi = math.pi / 2 + np.linspace(0, 2 * math.pi, n)
    head, edge = oval(199, 163, phi), outline(phi)
    steps = np.concatenate([np.linspace(0, 1, 70), [1.0]])
    start = head[0, 1]
    rows = []

    def lay(flat, z):
        rows.append(ring(flat, z))

    collar = grown(head[:-1], 7)
    collar = np.concatenate([collar, collar[:1]])
    for z in (6.0, 14.0):
        lay(head, z)
    top_head = lie(head[:, 0], head[:, 1]) + 22
    lay(head, top_head - 1.5)
    lay(mixed(head, collar, 0.2), top_head)
    lay(mixed(head, collar, 0.8), top_head)
    lay(collar, top_head - 1.5)
    foot = lie(collar[:, 0], collar[:, 1])
    lay(collar, foot + 6)
    lay(mixed(collar, edge, 0.01), foot + 2)
    for s in steps[3:-1]:
        flat = mixed(collar, edge, s)
        lay(flat, lie(flat[:, 0], flat[:, 1]))
    z = lie(edge[:, 0], edge[:, 1])
    lay(edge, z - 2)
    lay(edge, z - 7)
    closing = np.concatenate([grown(edge[:-1], -3.0), grown(edge[:-1], -3.0)[:1]])
    lay(closing, z - 9)
    lay(edge, z - 11)
    lay(edge, z - 20)
    for s in (0.9, 0.6, 0.3, 0.0):
        flat = mixed(head, edge, s)
        lay(flat, np.maximum(lie(flat[:, 0], flat[:, 1]) - 26, 0) * (1 - s) ** 0 * 0.6)
    loops = np.stack(rows, 1)
    # Open the cut: the first and the last step of the round stand apart by its width, less and less towards its end.
    for k, sign in ((0, -1), (1, -1), (2, -1), (-1, 1), (-2, 1), (-3, 1)):
        for p in loops[k]:
            d = p[1] - start
            share = max(0.0, 1 - d / LONG) if d >= -1 else 1.0
            fade = {0: 1.0, 1: 0.6, 2: 0.25, -1: 1.0, -2: 0.6, -3: 0.25}[k]
            width = 2.0 * min(1.0, 1.35 * share**0.8)
            p[0] += fade * (split_path(max(d, 0)) * min(1, 2 * (share if d < LONG else 0)) + (0 if closed else sign * width / 2))
            if sign > 0 and not closed:
                p[2] += 0.3 * share * fade
    return loops, start


def platter(at=(0, 0, 0), turn=0.0, tip=(0, 0), closed=False):
    style = struck("style", Sheet(60, 22).text("W 12", 0, 0, 9), 4)
    front = struck("front", Sheet(20, 20).text("F", 0, 0, 9), 5)
    damp = faded(np.clip(cloud(150, 120, 91, 2) * 3.0 - 1.4, 0, 1), 0.25)
    stain = Decal("stain", 150, 120, damp * 0.4, (0.17, 0.10, 0.055), depth=40)
    fresh = []
    loops, start = brim(closed)
    if closed:
        y = np.linspace(0, LONG, 200)
        sheet = Sheet(20, 130, 12)
        width = 2.0 * np.minimum(1, 1.35 * np.clip(1 - y / LONG, 0, 1) ** 0.8)
        for a, b, w in zip(y[:-1], y[1:], width):
            sheet.line([(float(split_path(a)), a - 60), (float(split_path(b)), b - 60)], max(w, 0.25))
        ink = sheet.soft(0.06)
        rim = np.clip(sheet.soft(0.25) - ink, 0, 1)
        fresh = [Decal("glue line", 20, 130, rim * 0.7, (0.16, 0.10, 0.05), depth=60), Decal("spline", 20, 130, ink * 0.85, (0.62, 0.44, 0.25), depth=60)]
    look = wood("lime platter", LIME, 27, "y", ("x", 118.0, 59.0), [stain, style, front, *fresh], worn=0.6)
    made = sector("platter", loops[:, ::-1], look, 28)
    style.at((0, 150, 10), (0, 0, -1), (0, -1, 0), made)
    front.at((0, -85.5, 62.5), (0, 0, 1), (0, 1, 0), made)
    stain.at((-120, -40, 40), (0, 0, 1), (0, 1, 0), made)
    for decal in fresh:
        decal.at((0, start + 60, 40), (0, 0, 1), (0, 1, 0), made)
    edge = outline(np.linspace(0, 2 * math.pi, 900))
    rng = np.random.default_rng(12)
    spots = []
    for _ in range(420):
        x, y = mixed(edge[rng.integers(900)], np.array([0, -9.0]), rng.uniform(0.015, 0.05))
        spots.append((np.array([x, y, lie(x, y)]), np.array([0, 0, 1.0])))
    marks.pins("pins", spots, 3).parent = made
    put(made, at, turn, tip)
    return made, start


def on_top(start, d):
    y = start + d
    x = float(split_path(d)) * min(1, 2 * (1 - d / LONG))
    return np.array([x, y, float(lie(np.array(x), np.array(y)))])


def lay_card(x, y, turned=False):
    """A card on the brim, long side along the grain. @param turned the block stands turned by half a round"""
    step = 20.0
    z = float(lie(np.array(x), np.array(y)))
    across = (float(lie(np.array(x + step), np.array(y))) - float(lie(np.array(x - step), np.array(y)))) / (2 * step)
    along = (float(lie(np.array(x), np.array(y + step))) - float(lie(np.array(x), np.array(y - step)))) / (2 * step)
    way = -1 if turned else 1
    lay(card((0, 0, 0)), (way * x, way * y, z), (-across * way, -along * way, 1), 84, 1.3)


def three_quarter():
    room()
    platter()
    tag(("L09", "£68"), (-200, -190, 0), 12, [(-170, -176, 0.6), (-130, -130, 1)])
    hold((-270, -430, 330), (0, -16, 22), 1.2)


def top():
    room()
    platter()
    hold((0, -14, 600), (0, -6, 30), 1.15)


def context():
    room()
    _, start = platter(turn=180)
    lay_card(60, 147, turned=True)
    hold((-20, -330, 330), (-6, -120, 30), 1.45)


def close(closed=False):
    room()
    platter(closed=closed)
    lay_card(-54, 147)
    hold((-14, 126, 400), (-14, 146, 34), 1.9)
    return {"known": {"crack": [on_top(99.5, 9), on_top(99.5, LONG)]}}


def after():
    return close(True)


SHOTS = {"L09-threeQuarter": three_quarter, "L09-top": top, "L09-damageContext": context, "L09-damageClose": close, "L09-after": after}
