"""Lot L08: a pair of cast aluminium pans for boaters."""

import math

import numpy as np

from kit import marks
from kit.camera import hold
from kit.decals import Decal, Sheet, cloud, faded, struck
from kit.nodes import Tree
from kit.shapes import around, grown, loft, mixed, oval, ring
from kit.stage import card, coin, lay, put, room, tag


def aluminium(name, decals=(), bloom=0.0):
    """Sand-cast, turned bright and dulled again by use; white bloom where damp sat."""
    tree = Tree(name)
    place = tree.place()
    x, y, z = tree.split(place)
    radius = tree.vector("LENGTH", tree.join(x, y, 0.0))
    turning = tree.noise(tree.join(radius, tree.math("MULTIPLY", z, 1.0), 0.0), 0.9, 3.0, 0.7)
    sand = tree.noise(place, 0.35, 3.0, 0.6)
    dull = tree.range(tree.noise(place, 0.018, 4.0), 0.35, 0.7)
    colour = tree.mix(dull, (0.62, 0.62, 0.61), (0.42, 0.42, 0.41))
    rough = tree.math("MULTIPLY_ADD", dull, 0.2, 0.34)
    height = tree.math("MULTIPLY_ADD", turning, 0.03, tree.math("MULTIPLY", sand, 0.10))
    for decal in decals:
        colour, height, rough = decal.lay(tree, colour, height, rough)
    metal = tree.math("MULTIPLY_ADD", dull, -0.15, 0.92)
    return tree.finish(colour, rough, tree.bump(height, 0.55), metallic=metal, specular=0.5)


def rings_of_boater(size=0.0, high=78.0, thick=9.0):
    """Flat crown, straight side, flat brim; hollow below. From the inside of the tip out and over to the tip."""
    phi = around(170)
    head, edge = grown(oval(199, 164, phi, 0.02), size), grown(oval(322, 288, phi, 0.0), size)
    inner = grown(head, -thick)
    rings = [ring(inner * s, high - thick) for s in (0.02, 0.5, 0.9)]
    rings += [ring(inner, high - thick - 5), ring(inner, 6), ring(grown(inner, 2), 0)]
    rings += [ring(mixed(grown(inner, 2), grown(edge, -8), s), 0) for s in (0.3, 0.7, 1.0)]
    rings += [ring(grown(edge, -7), -9), ring(grown(edge, -1), -9), ring(edge, -8), ring(edge, thick - 3), ring(grown(edge, -1.5), thick - 1)]
    rings += [ring(mixed(grown(edge, -3), grown(head, 7), s), thick) for s in np.linspace(0, 1, 14)]
    for a in np.linspace(0.2, math.pi / 2, 5):
        rings.append(ring(grown(head, 6 - 6 * math.sin(a)), thick + 6 - 6 * math.cos(a)))
    rings += [ring(grown(head, 0.0), z) for z in np.linspace(thick + 10, high - 6, 8)]
    for a in np.linspace(0.3, math.pi / 2, 5):
        rings.append(ring(grown(head, -5 + 5 * math.cos(a)), high - 5 + 5 * math.sin(a)))
    rings += [ring((head * 0.97 - 0) * s, high) for s in (0.93, 0.6, 0.25, 0.02)]
    return np.stack(rings)


def pan(name, decals=(), size=0.0):
    return loft(name, rings_of_boater(size), aluminium(name, decals), smooth=32)


def dented():
    """The dent in the brim: 1.2 mm deep, 16 across, with a bright scuff."""
    sheet = Sheet(50, 50).blob(0, 0, 13, 10)
    soft = sheet.soft(2.6)
    scuff = Sheet(50, 50).line([(-5, -3), (6, 4)], 1.0).line([(-3, -5), (5, 1)], 0.6)
    return Decal("dent", 50, 50, scuff.soft(0.2) * 0.6, (0.80, 0.80, 0.80), soft * 2.6, rough=0.2)


def stamps():
    seven = struck("seven", Sheet(20, 20).text("7", 0, 0, 8, "sans"), 3, 0.9)
    style = struck("style", Sheet(60, 16).text("BTR 4", 0, 0, 7, "sans"), 4, 0.9)
    return seven, style


def bloomed(name, seed):
    bloom = faded(np.clip(cloud(180, 180, seed, 2) * 3.2 - 1.7, 0, 1), 0.2)
    return Decal(name, 180, 180, bloom * 0.75, (0.80, 0.80, 0.78), -bloom * 0.3, rough=0.95, depth=14)


def three_quarter():
    room()
    dent = dented()
    upper, _ = pan("upper pan", [dent])
    dent.at((-110, -66, 9), (0, 0, 1), (0, 1, 0), upper)
    put(upper, (-40, -20, 9), 8)
    bloom = bloomed("bloom", 5)
    lower, _ = pan("lower pan", [bloom], 3)
    bloom.at((60, -50, 0), (0, 0, -1), (0, 1, 0), lower)
    put(lower, (190, 190, 78), 24, (180, 0))
    tag(("L08", "£88"), (-190, -190, 0), 10, [(-155, -176, 1), (-120, -140, 3)])
    hold((-250, -430, 400), (50, 30, 36), 1.1)


def under():
    room()
    bloom, more = bloomed("bloom", 5), bloomed("more bloom", 8)
    lower, _ = pan("lower pan", [bloom, more])
    bloom.at((-70, 70, 0), (0, 0, -1), (0, -1, 0), lower)
    more.at((76, -60, 0), (0, 0, -1), (0, -1, 0), lower)
    put(lower, (0, 0, 78), tip=(180, 0))
    hold((-60, -250, 480), (0, -4, 70), 1.2)


def dent_close():
    """A lamp held low shows the dent; a coin beside it."""
    room(low_lamp=(-0.95, 0.4, 0.22))
    dent = dented()
    upper, _ = pan("upper pan", [dent])
    dent.at((-96, -78, 9), (0, 0, 1), (0, 1, 0), upper)
    put(upper, (0, 0, 9))
    coin((-56, -108, 18), 0)
    hold((-84, -190, 300), (-80, -92, 18), 2.4)


def stamps_close():
    room()
    seven, style = stamps()
    upper, _ = pan("upper pan", [seven, style])
    seven.at((-30, -117, 9), (0, 0, 1), (0.1, 1, 0), upper)
    style.at((26, -119, 9), (0, 0, 1), (-0.08, 1, 0), upper)
    put(upper, (0, 0, 9))
    lay(card((0, 0, 0)), (-113, -80, 18), (0, 0, 1), 125)
    hold((-46, -236, 345), (-46, -100, 18), 1.75)


SHOTS = {"L08-threeQuarter": three_quarter, "L08-under": under, "L08-rake1": dent_close, "L08-marks": stamps_close}
