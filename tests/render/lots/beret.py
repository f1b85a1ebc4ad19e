"""Lot L02: a deep beret block in five pieces, alder, glazed with old size, the key stuck."""

import math

import numpy as np

from kit import marks
from kit.camera import hold
from kit.decals import Decal, Sheet, cloud, struck
from kit.shapes import grown, loft, mixed, oval, ring, sector
from kit.stage import card, put, room, tag
from kit.wood import ALDER, wood

HIGH = 88.0
JOINTS = [math.radians(a) for a in (40, 140, 220, 320)]


def key_outline(phi, z):
    """The key narrows upwards, so that it drops out below: 96 × 84 mm at the bottom."""
    return oval(96 - 14 * z / HIGH, 84 - 14 * z / HIGH, phi, 0.0, 2.6)


def outside(phi, rows=40):
    """From the key's edge on top, out over the beret, round its rim, back to the head opening and the key below."""
    wide = oval(292, 281, phi, 0.02, 2.05)
    head = oval(196, 160, phi)
    out = []
    top = key_outline(phi, HIGH)
    for s in np.linspace(0, 1, 12):
        out.append(ring(mixed(top, wide * 0.80, s), HIGH - 9 * s**2.2))
    for a in np.linspace(0.12, math.pi - 0.25, 18):
        out.append(ring(wide * (0.80 + 0.20 * math.sin(a) ** 0.9), 47 + 32 * math.cos(a)))
    out.append(ring(grown(head, 4), 17))
    for z in np.linspace(15.5, 11, 3):
        out.append(ring(head, z))
    for a in np.linspace(0, math.pi, 6):
        out.append(ring(grown(head, -2.4 * math.sin(a)), 10.5 - 4 * (1 - math.cos(a)) / 2))
    out += [ring(head, 5), ring(head, 1), ring(grown(head, -1), 0)]
    low = key_outline(phi, 0)
    for s in (0.3, 0.7, 1.0):
        out.append(ring(mixed(grown(head, -1), low, s), 0))
    return np.stack(out)


def glazed(seed):
    """Old size run brown over the sides."""

    def lay(tree, colour, place):
        _, _, z = tree.split(place)
        runs = tree.noise(tree.vector("MULTIPLY", place, (1, 1, 0.25)), 0.022, 3.0)
        share = tree.math("MULTIPLY", tree.range(runs, 0.45, 0.66), tree.range(z, 88.0, 60.0, 0.15, 1.0))
        return tree.mix(tree.math("MULTIPLY", share, 0.72), colour, (0.13, 0.052, 0.017))

    return lay


def pieces(apart=0.9):
    """Key and four shell parts, each where it belongs; the joints stand `apart` mm open."""
    names = [Sheet(30, 30).text(str(i + 1), 0, 0, 9) for i in range(4)]
    stamps = [struck(f"part {i + 1}", sheet, i) for i, sheet in enumerate(names)]
    style = struck("style", Sheet(80, 20).text("B 207", 0, 0, 8.5), 9)
    row = struck("row", Sheet(80, 16).text("1 2 3 4", 0, 0, 7), 10)
    shell_look = wood("alder shell", ALDER, 3, "y", ("z", 45.0, 2.0), stamps, worn=0.8, whole=glazed(2))
    key_look = wood("alder key", ALDER, 8, "y", None, [style, row], worn=0.7, whole=glazed(5))
    shells = []
    for i, a in enumerate(JOINTS):
        b = JOINTS[(i + 1) % 4] + (2 * math.pi if i == 3 else 0)
        phi = np.linspace(a, b, 40)
        loops = outside(phi).transpose(1, 0, 2).copy()
        # A joint stands open by what wood has shrunk and size has built up: each face goes back by half of it.
        for k, sign in ((0, 1), (-1, -1)):
            t = phi[k] + sign * math.pi / 2
            loops[k, :, :2] += apart / 2 * np.array([math.cos(t), math.sin(t)])
        shell = sector(f"shell {i + 1}", loops[:, ::-1], shell_look, 30)
        middle = (a + b) / 2
        way = np.array([math.cos(middle), math.sin(middle)])
        stamps[i].at((*(way * 64), 0), (0, 0, -1), (way[0], way[1], 0), shell)
        shells.append((shell, middle))
    phi = np.linspace(0, 2 * math.pi, 96, endpoint=False)
    rings = [ring(key_outline(phi, 0) * 0.02, 14), ring(key_outline(phi, 0) * 0.15, 14), ring(key_outline(phi, 0) * 0.16, 0)]
    rings += [ring(grown(key_outline(phi, 0), -1.4), 0), ring(grown(key_outline(phi, 0.8), -0.6), 0.8)]
    rings += [ring(grown(key_outline(phi, z), -0.45), z) for z in np.linspace(2, HIGH - 1.5, 10)]
    rings += [ring(grown(key_outline(phi, HIGH), -1.2), HIGH - 0.3), ring(key_outline(phi, HIGH) * 0.6, HIGH + 0.3)]
    key, _ = loft("key", rings, key_look, smooth=30)
    style.at((0, -26, 0), (0, 0, -1), (0, -1, 0), key)
    row.at((0, 26, 0), (0, 0, -1), (0, -1, 0), key)
    return key, shells


def three_quarter():
    room()
    pieces()
    tag(("L02", "£120"), (-96, -128, 0), 40, [(-70, -100, 1), (-66, -70, 3)])
    hold((-230, -330, 270), (0, -6, 36), 1.3)


def under():
    room()
    key, shells = pieces()
    for piece in (key, *(s for s, _ in shells)):
        put(piece, (0, 0, HIGH), tip=(180, 0))
    hold((0, -60, 430), (0, 0, HIGH), 1.15)


def parts_laid():
    room()
    key, shells = pieces()
    for shell, middle in shells:
        way = np.array([math.cos(middle), math.sin(middle)])
        put(shell, (way[0] * 70, way[1] * 52, 0))
    put(key, (0, 0, 0), turn=0)
    hold((-60, -380, 520), (0, -2, 20), 1.15)


def joint_close():
    """A joint on the underside with size in it, card beside."""
    room()
    key, shells = pieces()
    for piece in (key, *(s for s, _ in shells)):
        put(piece, (0, 0, HIGH), tip=(180, 0))
    card((4, -64, HIGH), 2)
    hold((24, -70, 350), (24, -26, HIGH), 1.75)


SHOTS = {"L02-threeQuarter": three_quarter, "L02-under": under, "L02-partsLaid": parts_laid, "L02-damageClose": joint_close}
