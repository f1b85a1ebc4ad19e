"""Lot L03: a cartwheel brim board of poplar planks, bowed, one glue line open."""

import math

import numpy as np

from kit import marks
from kit.camera import hold
from kit.decals import Sheet, pencilled
from kit.shapes import around, grown, loft, mixed, oval, ring
from kit.stage import card, put, room, tag
from kit.wood import POPLAR, wood

THICK = 30.0
#: Middle of the open joint, and its ends along the grain.
LINE_X, LINE_FROM, LINE_TO = 118.0, -186.0, -16.0


def bowed(p):
    """5 mm of bow across the planks."""
    p = p.copy()
    p[..., 2] += 5.0 * (p[..., 0] / 227.5) ** 2
    return p


def board():
    phi = around(220)
    hole = oval(202.5, 164.5, phi)
    rim = oval(486, 455, phi, 0.0, 2.0)
    rings = [ring(grown(hole, 1.5), 0)]
    rings += [ring(mixed(grown(hole, 1.5), rim, s), 0) for s in (0.3, 0.7)]
    rings += [ring(grown(rim, -2), 0), ring(rim, 2), ring(rim, 10)]
    worn = np.clip(1.6 * np.cos(phi - math.radians(235)) - 0.6, 0, 1)
    for a in np.linspace(0, math.pi, 9):
        rings.append(ring(grown(rim, -(3.2 - 2.2 * worn) * math.sin(a)), 10.5 + 4.2 * (1 - math.cos(a)) / 2))
    rings += [ring(rim, 15.5), ring(rim, THICK - 3), ring(grown(rim, -0.8), THICK - 0.9), ring(grown(rim, -3), THICK)]
    first = len(rings)
    for s in np.linspace(0.0, 1.0, 50)[1:]:
        rings.append(ring(mixed(grown(rim, -3), grown(hole, 2), s), THICK))
    rings += [ring(grown(hole, 0.6), THICK - 0.6), ring(hole, THICK - 2), ring(hole, 2), ring(grown(hole, 1.5), 0)]
    rings = bowed(np.stack(rings))
    sheet = Sheet(480, 480, 4.2)
    for off in (76.2, 101.6, 133.4):
        outline = grown(hole, off)
        reach = int(220 * 0.86) if off > 130 else 220
        sheet.line([tuple(p) for p in outline[:reach]] + ([tuple(outline[0])] if reach == 220 else []), 0.8, 235)
    for off, name in ((76.2, "3"), (101.6, "4"), (133.4, "5¼")):
        sheet.text(name, 26, -101 - off + 5, 6.0, "hand")
    rings_ink = pencilled("cutting lines", sheet, 12, (0.10, 0.075, 0.05), 0.8)
    look = wood("poplar", POPLAR, 11, "y", ("x", 112.0, LINE_X % 112 * -1 + 112), [rings_ink], worn=0.6)
    made, surface = loft("board", rings, look, start_cap=False, end_cap=False, smooth=25)
    rings_ink.at((0, 0, THICK), (0, 0, 1), (0, 1, 0), made)
    open_line(made)
    knives(made)
    return made, surface, first


def top_of(x, y):
    place = bowed(np.array([x, y, THICK]))
    slope = 2 * 5.0 * x / 227.5**2
    normal = np.array([-slope, 0, 1.0])
    return place, normal / np.linalg.norm(normal)


def open_line(parent):
    y = np.linspace(LINE_FROM, LINE_TO, 150)
    share = (y - LINE_FROM) / (LINE_TO - LINE_FROM)
    widths = 0.85 * np.minimum(1, 3 * (1 - share)) ** 0.7 * np.minimum(1, 0.55 + 4 * share)
    path = [top_of(LINE_X + 0.12 * math.sin(v / 19), v) for v in y]
    marks.crack("open glue line", path, np.maximum(widths, 0.12), 31, lip=(0.36, 0.29, 0.18), lip_mm=0.12).parent = parent


def knives(parent):
    """Nine cuts of a knife that slipped off the cutting line."""
    rng = np.random.default_rng(8)
    for i in range(9):
        a = rng.uniform(0, 2 * math.pi)
        r = rng.uniform(165, 205)
        x, y = r * math.sin(a) * 0.93, r * math.cos(a)
        turn = a + math.pi / 2 + rng.normal(0, 0.3)
        t = np.linspace(-rng.uniform(20, 38), rng.uniform(20, 38), 30)
        path = [top_of(x + v * math.sin(turn) - 0.002 * v * v, y + v * math.cos(turn)) for v in t]
        path = [p for p in path if (p[0][0] / 222) ** 2 + (p[0][1] / 238) ** 2 < 1]
        if len(path) > 5:
            marks.crack(f"knife {i}", path, np.full(len(path), 0.32), i, deep=(0.17, 0.12, 0.07), lip=(0.50, 0.42, 0.28), lip_mm=0.1).parent = parent


def three_quarter():
    room()
    board()
    tag(("L03", "£60"), (-190, -260, 0), 8, [(-160, -246, 0.6), (-118, -215, 12)])
    hold((-270, -470, 380), (0, -20, 5), 1.2)


def top():
    room()
    board()
    hold((0, -10, 640), (0, 0, 20), 1.1)


def close():
    room()
    made, *_ = board()
    card((40, -162, 31.0), 96)
    put(made)
    ends = [top_of(LINE_X, LINE_FROM)[0], top_of(LINE_X, LINE_TO)[0]]
    hold((84, -150, 420), (84, -112, 30), 1.5)
    return {"known": {"crack": ends}}


def groove_close():
    room()
    board()
    hold((-215, -390, 105), (-152, -190, 12), 1.8)


SHOTS = {"L03-threeQuarter": three_quarter, "L03-top": top, "L03-damageClose": close, "L03-damageContext": groove_close}
