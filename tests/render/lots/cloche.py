"""Lot L04: a one-piece cloche of limewood with live worm at the back."""

import math

import numpy as np

from kit import marks
from kit.camera import hold
from kit.decals import Decal, Sheet, cloud, faded, struck
from kit.shapes import around, circle, grown, loft, mixed, oval, ring
from kit.stage import card, paper, put, room, tag
from kit.wood import LIME, wood

HIGH = 138.0


def rings_of_cloche(n=150):
    """Base, the brim's edge, up over the brim into the crown, to the tip."""
    phi = around(n)
    crown = oval(194.5, 164.5, phi)
    front, back = (1 - np.sin(phi)) / 2, (1 + np.sin(phi)) / 2
    reach = 38 * front**1.5 + 20 * back**1.5 + 32 * (1 - front**1.5 - back**1.5)
    edge = grown(crown, reach)
    base = grown(crown, reach - 7)
    rings = [ring(circle(1, phi), 40), ring(circle(25.4, phi), 40), ring(circle(25.4, phi), 1), ring(circle(27, phi), 0)]
    rings += [ring(mixed(circle(27, phi), base, s), 0) for s in (0.2, 0.5, 0.8, 1.0)]
    rings += [ring(grown(base, 1.5), 1), ring(mixed(base, edge, 0.8), 6), ring(edge, 10), ring(grown(edge, 0.3), 13), ring(grown(edge, -0.8), 15.5)]
    # Over the brim: a hollow curve that turns up into the crown.
    for s in np.linspace(0.08, 1, 16):
        rings.append(ring(mixed(grown(edge, -0.8), grown(crown, 1.0), s), 15.5 + 30 * s**2.6))
    side = len(rings)
    for a in np.linspace(0, math.pi / 2, 44)[1:]:
        s, z = math.cos(a) ** 0.72, 45.5 + (HIGH - 45.5) * math.sin(a) ** 0.86
        rings.append(ring(grown(crown, 1.0) * max(s, 0.012), z))
    return np.stack(rings), side


def hole_spots(surface, side):
    """Thirty-four holes about 1.6 mm wide in the back of the crown, thicker where the sapwood lay."""
    rng = np.random.default_rng(1127)
    spots = []
    while len(spots) < 34:
        k = side + rng.normal(7.5, 5.0)
        phi = math.pi / 2 + rng.normal(-0.05, 0.24)
        if not side - 6 < k < side + 18:
            continue
        place, normal = surface.at(k, surface.column(phi))
        if all(np.linalg.norm(place - p) > 4.5 for p, _, _ in spots):
            spots.append((place, normal, float(np.clip(rng.normal(1.62, 0.14), 1.3, 2.0))))
    return spots


def cloche(at=(0, 0, 0), turn=0.0, tip=(0, 0)):
    oval_stamp = Sheet(70, 44).oval(0, 0, 62, 34, 0.9).oval(0, 0, 54, 27, 0.5).text("& SON", 8, -1, 5.5).text("········", -14, -1, 5)
    maker = struck("oval", oval_stamp, 6, 0.55, 0.8)
    style = struck("style", Sheet(50, 18).text("1127", 0, 0, 8), 4)
    damp = faded(np.clip(cloud(200, 220, 77, 2) * 3.2 - 1.4, 0, 1))
    edge = np.clip(1 - np.abs(damp - 0.35) * 5, 0, 1) * 0.35
    stain = Decal("water stain", 200, 220, np.clip(damp * 0.42 + edge, 0, 0.8), (0.16, 0.095, 0.05), depth=6)
    look = wood("lime cloche", LIME, 19, "y", None, [stain, maker, style], worn=0.8)
    rings, side = rings_of_cloche()
    block, surface = loft("cloche", rings, look)
    stain.at((44, 30, 0), (0, 0, -1), (0, -1, 0), block)
    maker.at((0, -52, 0), (0, 0, -1), (0, -1, 0), block)
    style.at((0, 48, 0), (0, 0, -1), (0, -1, 0), block)
    spots = hole_spots(surface, side)
    made = marks.holes("flight holes", spots, 5, rim=(0.70, 0.55, 0.36), pale=0.3)
    made.parent = block
    put(block, at, turn, tip)
    world = block.matrix_world
    turned = world.to_3x3()
    from mathutils import Vector

    holes = [(world @ Vector(p), (turned @ Vector(n)).normalized()) for p, n, _ in spots]
    return block, holes


def three_quarter():
    room()
    cloche(turn=-3)
    tag(("L04", "£35"), (10, -178, 0), -14, [(50, -188, 1), (95, -150, 0.6), (60, -80, 0.6)])
    hold((-250, -330, 235), (0, -14, 56), 1.2)


def back():
    """The block turned round on a sheet of paper; what fell at three taps lies on it."""
    room()
    paper((-6, -60, 0), (300, 240), 4)
    _, holes = cloche((0, 20, 0), turn=180)
    marks.grit("frass", (4, -104, 0.5), np.array([26, 8]), 420, 3, size=0.42, heap=1.2)
    marks.grit("dust", (0, -110, 0.5), np.array([50, 18]), 200, 4, size=0.25)
    hold((20, -440, 190), (0, -40, 66), 1.55)
    return {"known": {"holes": [p for p, _ in holes]}}


def close():
    """Square to the back, a card leaning against the brim: it stands 22 mm nearer to the lens than the holes."""
    room()
    _, holes = cloche(turn=180)
    card((0, -113.6, 25.8), tip=(73, 0), colour=(0.018, 0.06, 0.11))
    hold((4, -440, 130), (0, -97, 62), 1.95, focus=(0, -97, 70))
    return {"known": {"holes": [p for p, _ in holes]}}


def under():
    room()
    cloche((0, 0, HIGH), tip=(180, 0))
    hold((-30, -90, 470), (0, -4, HIGH), 1.1)


SHOTS = {"L04-threeQuarter": three_quarter, "L04-back": back, "L04-damageClose": close, "L04-under": under}
