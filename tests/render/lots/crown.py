"""Lot L01: a plain dome crown of limewood, and what a block's dome needs wherever else one stands."""

import math

import numpy as np

from kit import marks
from kit.camera import hold
from kit.decals import Decal, Sheet, cloud, painted, struck
from kit.shapes import around, circle, dome, grown, loft, mixed, oval, ring
from kit.stage import card, coin, put, room, tag
from kit.wood import LIME, wood


def rings_of_crown(length, width, height, hole=25.4, hole_deep=38, groove=(4.0, 3.0), n=144, egg=0.045, belly=1.5):
    """Rings from the bottom of the stem hole out over the base, up the side with its rope groove, to the tip."""
    phi = around(n)
    base = oval(length, width, phi, egg)
    stem = circle(hole, phi)
    rings = [ring(stem * 0.05, hole_deep), ring(stem, hole_deep), ring(stem, 1.2), ring(grown(stem, 1.2), 0)]
    rings += [ring(mixed(grown(stem, 1.2), grown(base, -1.8), s), 0) for s in (0.15, 0.4, 0.7, 1.0)]
    rings += [ring(grown(base, -0.5), 0.5), ring(base, 1.8)]
    wide, deep = groove
    low = 9.0
    for z in np.linspace(3, low - 0.4, 4):
        rings.append(ring(base, z))
    for a in np.linspace(0, math.pi, 9):
        rings.append(ring(grown(base, -deep * math.sin(a) ** 0.8), low + wide * (1 - math.cos(a)) / 2))
    side = len(rings)
    start = low + wide + 0.4
    for s, z in dome(height, 46, start):
        swell = belly * math.sin(math.pi * min(1, (z - start) / (height * 0.6))) if z < height * 0.6 + start else 0
        rings.append(ring(grown(base * max(s, 0.012), swell * s), z))
    return rings, side


def lime_crown():
    rings, side = rings_of_crown(198.5, 164.5, 118)
    base = Sheet(120, 60)
    base.text("22½", 0, 0, 11, "serif")
    stamp = struck("size", base, 3)
    number = Sheet(90, 40).text("LP 14", 0, 0, 13, "hand")
    paint = painted("number", number, 8, (0.36, 0.022, 0.015))
    worn = np.clip(cloud(170, 200, 21, 3) * 2.6 - 1.25, 0, 1)
    finish = Decal("worn finish", 170, 200, worn * 0.35, (0.62, 0.50, 0.34), rough=0.75, depth=4)
    look = wood("lime crown", LIME, 4, "y", ("z", 42.0, 1.0), [finish, stamp, paint], worn=0.55)
    block, surface = loft("crown", rings, look)
    stamp.at((0, -52, 0), (0, 0, -1), (0, -1, 0), block)
    paint.at((0, 56, 0), (0, 0, -1), (0, -1, 0), block)
    finish.at((0, 0, 0), (0, 0, -1), (0, 1, 0), block)
    return block, surface, side


def pinned(block, surface, low, high, count, seed, arc=(0, 2 * math.pi)):
    """Pin holes scattered along a band of rings. @returns places on the block as it stands"""
    rng = np.random.default_rng(seed)
    spots = []
    for _ in range(count):
        k = rng.uniform(low, high)
        spots.append(surface.at(k, surface.column(rng.uniform(*arc))))
    made = marks.pins("pins", spots, seed)
    made.parent = block
    return made


def standing():
    room()
    block, surface, side = lime_crown()
    pinned(block, surface, side - 14, side - 9, 130, 5)
    pinned(block, surface, side + 1, side + 5, 120, 6)
    return put(block, turn=-4), surface, side


def three_quarter():
    standing()
    tag(("L01", "£52"), (-6, -146, 0), -22, [(40, -160, 1), (80, -130, 0.6), (75, -85, 0.6), (45, -60, 0.6)])
    hold((-215, -300, 225), (-2, -12, 50), 1.15)


def under():
    room()
    block, *_ = lime_crown()
    put(block, (0, 0, 118), tip=(180, 0))
    hold((-40, -130, 400), (0, -4, 112), 1.15)


def marks_close():
    room()
    block, *_ = lime_crown()
    put(block, (0, 0, 118), tip=(180, 0))
    card((4, -6, 118), 3)
    hold((2, 4, 400), (2, 12, 118), 1.9)


def dent_close():
    """The dent on the tip, 9 mm across and 0.6 deep, a coin beside it."""
    room()
    sheet = Sheet(30, 30).blob(0, 0, 6.2, 5.2)
    ink = sheet.soft(1.4)
    dent = Decal("dent", 30, 30, np.clip(ink - 0.3, 0, 1) * 0.35, (0.14, 0.09, 0.05), ink * 1.3)
    rings, side = rings_of_crown(198.5, 164.5, 118)
    block, surface = loft("crown", rings, wood("lime crown", LIME, 4, "y", ("z", 42.0, 1.0), [dent], worn=0.7))
    dent.at((16, -2, 118), (0, 0, 1), (0, 1, 0), block)
    put(block)
    coin((-9, 2, 117.6), 0, (0, 0))
    hold((18, -78, 330), (4, 0, 116), 3.0)


SHOTS = {"L01-threeQuarter": three_quarter, "L01-under": under, "L01-marks": marks_close, "L01-damageClose": dent_close}
