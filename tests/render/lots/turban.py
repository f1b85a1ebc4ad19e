"""Lot L07: a draped full shape carved in lime, riddled and light as cork."""

import math

import numpy as np
from mathutils import Vector

from kit import marks
from kit.camera import hold
from kit.decals import Decal, Sheet, cloud, faded
from kit.shapes import around, circle, grown, loft, mixed, oval, ring
from kit.stage import coin, put, room, tag
from kit.wood import GREY_LIME, wood

HIGH = 176.0
GREY = {"expose": 0.85}
#: Where a piece of the ridge has broken away: angle, share of the height, half widths.
LOST = (math.radians(236), 0.60, 0.26, 0.075)


def rings_of_turban(n=190):
    phi = around(n)
    head = oval(191, 159.5, phi)
    rng = np.random.default_rng(7)
    rough = rng.standard_normal((90, n))
    rings = [ring(circle(1, phi), 30), ring(circle(25.4, phi), 30), ring(circle(25.4, phi), 1), ring(circle(27, phi), 0)]
    rings += [ring(mixed(circle(27, phi), grown(head, -2), s), 0) for s in (0.2, 0.5, 0.8, 1.0)]
    rings += [ring(grown(head, -0.5), 0.6), ring(head, 2.2)]
    side = len(rings)
    for k, t in enumerate(np.linspace(0.015, 1, 84)):
        a = t * math.pi / 2
        s, z = math.cos(a) ** 0.6, HIGH * math.sin(a) ** 0.92
        bulge = 15 * math.sin(math.pi * min(1.0, t / 0.78)) ** 1.1
        # Folds of the drape wind up to a knot over the left brow: sharp ridges, round hollows.
        turn = 1.5 * phi + 9.5 * t
        fold = 13.0 * np.abs(np.sin(turn)) ** 0.75 * math.sin(math.pi * min(1, t * 0.9 + 0.06)) ** 0.6 - 6
        knot = 16 * np.exp(-((((phi - 5.25 + math.pi) % (2 * math.pi)) - math.pi) / 0.33) ** 2 - ((t - 0.55) / 0.15) ** 2)
        away = np.abs(((phi - LOST[0] + math.pi) % (2 * math.pi)) - math.pi) / LOST[2]
        lost = np.clip(1.25 - (away**2 + ((t - LOST[1]) / LOST[3]) ** 2), 0, 1) ** 0.35
        off = bulge + fold + knot - lost * (7.0 + 0.7 * rough[k])
        rings.append(ring(grown(head, off) * max(s, 0.012), z * 1.0))
    return np.stack(rings), side


def bird():
    """The carver's mark: a bird in five cuts of the knife."""
    sheet = Sheet(60, 40)
    sheet.line([(-20, 2), (-10, -5), (2, -6), (12, 0), (17, 6)], 0.9).line([(17, 6), (22, 5)], 0.7)
    sheet.line([(-6, -4), (2, 6), (12, 0)], 0.8).line([(-20, 2), (-26, 7)], 0.8).line([(-20, 2), (-27, 2)], 0.7).line([(0, -6), (-2, -13)], 0.6)
    ink = sheet.soft(0.08)
    return Decal("bird", 60, 40, ink * 0.7, (0.07, 0.045, 0.025), ink * 0.8)


def decay():
    """Brown and cracked in cubes: 30 cm² of the base."""
    field = faded(cloud(90, 80, 17, 8), 0.6)
    ink = np.clip(field * 3.6 - 0.9, 0, 1)
    rows, columns = ink.shape
    y, x = np.mgrid[0:rows, 0:columns] / 8.0
    wave = cloud(90, 80, 3, 8) * 9
    cracks = np.maximum(np.clip(1 - np.abs(((x + wave) % 8.5) - 4) * 4, 0, 1), np.clip(1 - np.abs(((y * 0.8 + wave) % 7) - 3.5) * 4, 0, 1))
    colour = np.where(cracks[..., None] > 0.4, (0.02, 0.012, 0.008), (0.105, 0.05, 0.025))
    return Decal("decay", 90, 80, ink * 0.92, colour.astype(np.float32), ink * (1.2 + cracks * 1.2), depth=8)


def carving(at=(0, 0, 0), turn=0.0, tip=(0, 0)):
    mark, rot = bird(), decay()

    def crumbling(tree, colour, place):
        x, y, z = tree.split(place)
        cx, cy, cz = 96 * math.cos(LOST[0]), 104 * math.sin(LOST[0]), HIGH * math.sin(LOST[1] * math.pi / 2) ** 0.92
        off = tree.vector("MULTIPLY", tree.vector("SUBTRACT", place, (cx, cy, cz)), (1 / 24, 1 / 24, 1 / 15))
        near = tree.range(tree.vector("LENGTH", off), 0.85, 1.1, 1.0, 0.0)
        crumb = tree.noise(place, 0.5, 4.0, 0.7)
        return tree.mix(near, colour, tree.mix(crumb, (0.42, 0.29, 0.16), (0.16, 0.10, 0.055)))

    look = wood("grey lime", GREY_LIME, 31, "z", None, [rot, mark], worn=0.9, whole=crumbling)
    rings, side = rings_of_turban()
    block, surface = loft("carving", rings, look, smooth=50)
    mark.at((-4, -46, 0), (0, 0, -1), (0, -1, 0), block)
    rot.at((26, 44, 0), (0, 0, -1), (0, -1, 0), block)
    rng = np.random.default_rng(210)
    spots = []
    while len(spots) < 210:
        k = rng.uniform(side + 2, side + 76)
        phi = rng.uniform(0, 2 * math.pi)
        # Thicker where it is soft: high up and towards the back.
        if rng.random() > 0.25 + 0.5 * (k - side) / 76 + 0.25 * math.sin(phi):
            continue
        place, normal = surface.at(k, surface.column(phi))
        if all(np.linalg.norm(place - p) > 3.2 for p, _, _ in spots):
            spots.append((place, normal, float(np.clip(rng.normal(1.7, 0.2), 1.2, 2.3))))
    marks.holes("old holes", spots, 9, rim=(0.22, 0.15, 0.09), pale=0.12).parent = block
    put(block, at, turn, tip)
    world = block.matrix_world
    return block, [world @ Vector(p) for p, _, _ in spots]


def three_quarter():
    room()
    _, holes = carving()
    tag(("L07", "£50"), (20, -170, 0), -20, [(60, -182, 1), (88, -140, 0.6), (50, -60, 0.6)])
    hold((-250, -350, 250), (0, -8, 76), 1.25)
    return {"known": {"holes": holes}, **GREY}


def back():
    room()
    _, holes = carving(turn=180)
    hold((0, -430, 190), (0, -10, 82), 1.45)
    return {"known": {"holes": holes}, **GREY}


def close():
    """From above: the tip, and a coin on it."""
    room()
    _, holes = carving(turn=180)
    coin((14, 6, HIGH - 0.6), 0, (-3, 4))
    hold((-12, -70, 480), (-8, -14, HIGH - 8), 2.5)
    return {"known": {"holes": holes}, **GREY}


def under():
    room()
    carving((0, 0, HIGH + 4), tip=(180, 0))
    hold((-20, -110, 540), (0, -4, HIGH), 1.35)
    return GREY


SHOTS = {"L07-threeQuarter": three_quarter, "L07-back": back, "L07-damageClose": close, "L07-under": under}
