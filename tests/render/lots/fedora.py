"""Lot L06: a sectional fedora crown in sapele: five shell parts round a key, the right rear one gone."""

import math

import numpy as np

from kit import marks
from kit.camera import hold
from kit.decals import Sheet, struck
from kit.shapes import grown, loft, mixed, oval, ring, sector
from kit.stage import coin, card, paper, put, room, tag
from kit.wood import SAPELE, wood

HIGH = 112.0
#: Where each shell part begins, degrees: front, left, left rear, right rear, right. The wearer's left is 0, the back 90.
BEGIN = (240, 302, 372, 90 + 360, 168 + 360)
GONE = 4
#: Dark wood fills these pictures; a phone set to it would show it paler than it is.
DARK = {"expose": 0.72}


def key_outline(phi, z):
    return oval(128 - 12 * z / HIGH, 46 - 8 * z / HIGH, phi, 0.0, 2.7)


def ridge(phi):
    """Height of the two ridges beside the crease, lower in front where the crown is pinched."""
    return HIGH + 5 - 13 * np.clip(-np.sin(phi), 0, 1) ** 3


def outside(phi):
    """One cross-section from the key's top edge over the ridge, down the side, under the base to the key again."""
    head = oval(199, 163, phi)
    # The pinch: two hollows beside the front, deepest high up.
    pinch = sum(np.exp(-((((phi - a + math.pi) % (2 * math.pi)) - math.pi) / 0.27) ** 2) for a in (math.radians(232), math.radians(308)))
    top = key_outline(phi, HIGH)
    low = HIGH - 15
    rows = []
    for s in np.linspace(0, 1, 9):
        flat = mixed(top, head * 0.62, s)
        rows.append(ring(flat, low + (ridge(phi) - low) * (1 - math.cos(math.pi * s)) / 2))
    for a in np.linspace(0.12, math.pi / 2, 14):
        flat = head * (0.62 + 0.245 * math.sin(a) ** 0.85)
        z = ridge(phi) - 34 * (1 - math.cos(a))
        flat = flat * (1 - 0.17 * pinch * math.sin(0.35 + a * 0.78))[:, None]
        rows.append(ring(flat, z))
    for t in np.linspace(0.1, 1, 14):
        flat = head * (0.865 + 0.135 * math.sin(t * math.pi / 2) ** 0.8)
        flat = flat * (1 - 0.17 * pinch * (1 - t) ** 1.6)[:, None]
        rows.append(ring(flat, (ridge(phi) - 34) * (1 - t) + 16 * t))
    for a in np.linspace(0, math.pi, 7):
        rows.append(ring(grown(head, -2.6 * math.sin(a)), 12 - 4 * (1 - math.cos(a)) / 2))
    rows += [ring(head, 6), ring(head, 1.2), ring(grown(head, -1), 0)]
    bottom = key_outline(phi, 0)
    for s in (0.4, 1.0):
        rows.append(ring(mixed(grown(head, -1), bottom, s), 0))
    return np.stack(rows)


def pieces(apart=0.3):
    stamps = [struck(f"part {i + 1}", Sheet(24, 24).text(str(i + 1), 0, 0, 8), i, 0.6) for i in range(5)]
    maker = Sheet(60, 26).oval(0, 0, 40, 22, 0.6).text("LANTHORN", 0, 3.2, 3.4, "sans").text("AVERLEY", 0, -3.4, 3.0, "sans")
    name = struck("maker", maker, 7, 0.5)
    style = struck("style", Sheet(40, 14).text("F 61", 0, 0, 7), 8, 0.6)
    row = struck("row", Sheet(50, 12).text("1 2 3 4 5", 0, 0, 5), 9, 0.5)
    shell_look = wood("sapele shell", SAPELE, 5, "y", ("z", 50.0, 4.0), stamps, worn=0.35)
    key_look = wood("sapele key", SAPELE, 9, "y", None, [name, style, row], worn=0.3)
    shells = {}
    for i, degrees in enumerate(BEGIN):
        ends = BEGIN[i + 1] if i < 4 else BEGIN[0] + 360
        if i + 1 == GONE:
            continue
        phi = np.radians(np.linspace(degrees, ends, 44))
        loops = outside(phi).transpose(1, 0, 2).copy()
        for k, sign in ((0, 1), (-1, -1)):
            t = phi[k] + sign * math.pi / 2
            loops[k, :, :2] += apart / 2 * np.array([math.cos(t), math.sin(t)])
        shell = sector(f"shell {i + 1}", loops[:, ::-1], shell_look, 32)
        middle = (phi[0] + phi[-1]) / 2
        way = np.array([math.cos(middle), math.sin(middle)])
        reach = 56 if abs(way[0]) > 0.6 else 78
        stamps[i].at((*(way * reach), 0), (0, 0, -1), (way[0], way[1], 0), shell)
        shells[i + 1] = (shell, middle)
    phi = np.linspace(0, 2 * math.pi, 110, endpoint=False)
    rings = [ring(key_outline(phi, 0) * 0.02, 16), ring(key_outline(phi, 0) * np.array([0.25, 0.09]), 16), ring(key_outline(phi, 0) * np.array([0.26, 0.095]), 0)]
    rings += [ring(grown(key_outline(phi, 0), -1.2), 0), ring(grown(key_outline(phi, 1), -0.4), 1)]
    rings += [ring(grown(key_outline(phi, z), -0.2), z) for z in np.linspace(3, HIGH - 17, 8)]
    rings += [ring(grown(key_outline(phi, HIGH), -0.9), HIGH - 15.4), ring(key_outline(phi, HIGH) * 0.5, HIGH - 15.2), ring(key_outline(phi, HIGH) * 0.03, HIGH - 15.2)]
    key, _ = loft("key", rings, key_look, smooth=30)
    name.at((0, -36, 0), (0, 0, -1), (1, 0, 0), key)
    style.at((0, 24, 0), (0, 0, -1), (1, 0, 0), key)
    row.at((12, 0, 0), (0, 0, -1), (1, 0, 0), key)
    return key, shells


def pins_on(shells):
    rng = np.random.default_rng(61)
    spots = []
    for _ in range(240):
        phi = rng.uniform(0, 2 * math.pi)
        if 90 <= math.degrees(phi) <= 168:
            continue
        head = grown(oval(199, 163, np.array([phi - 0.01, phi, phi + 0.01])), 0.05)[1]
        normal = np.array([math.cos(phi) * 1.2, math.sin(phi), 0])
        z = rng.choice([rng.uniform(12.8, 16.5), rng.uniform(2, 6.5)])
        spots.append((np.array([*head, z]), normal / np.linalg.norm(normal)))
    marks.pins("pins", spots, 4)


def laid():
    room()
    paper((0, -6, 0), (594, 420), 1.5, (0.60, 0.53, 0.42))
    key, shells = pieces()
    for shell, middle in shells.values():
        way = np.array([math.cos(middle), math.sin(middle)])
        put(shell, (way[0] * 82, way[1] * 46, 0.6))
    put(key, (0, 0, 0.6))
    tag(("L06", "£90"), (-190, -150, 0.6), 6)
    hold((-30, -390, 520), (0, -4, 30), 1.35)


def assembled():
    """From the right rear, where part 4 is gone and the key shows."""
    room()
    key, shells = pieces()
    pins_on(shells)
    hold((-250, 330, 250), (-6, 6, 48), 1.35)
    return DARK


def three_quarter():
    room()
    key, shells = pieces()
    pins_on(shells)
    tag(("L06", "£90"), (10, -160, 0), -15, [(48, -166, 1), (80, -130, 0.6), (45, -60, 0.6)])
    hold((-230, -310, 230), (0, -8, 50), 1.25)
    return DARK


def key_close():
    room()
    key, _ = pieces()
    import bpy

    for thing in list(bpy.data.objects):
        if thing.name.startswith("shell"):
            bpy.data.objects.remove(thing)
    put(key, (0, 0, HIGH - 15), 90, (180, 0))
    card((8, -92, 0), 3, colour=(0.62, 0.56, 0.44))
    hold((0, -70, 420), (0, -34, 70), 1.8, focus=(0, 0, 97))
    return DARK


def check_close():
    """The check on the left ridge, a coin in the crease beside it."""
    room()
    key, shells = pieces()
    pins_on(shells)
    along = np.linspace(0, 1, 60)
    phi = math.radians(322) + along * 0.72
    path = []
    for p in phi:
        near = np.array([p - 0.005, p, p + 0.005])
        row = outside(near)[8]
        path.append((row[1], np.array([0.05, 0, 1.0])))
    lengths = np.concatenate([[0], np.linalg.norm(np.diff([a for a, _ in path], axis=0), axis=1).cumsum()])
    begin = int(np.searchsorted(lengths, 10))
    end = int(np.searchsorted(lengths, 38))
    path = path[begin:end]
    share = np.linspace(0, 1, len(path))
    marks.crack("check", path, 0.28 * np.sin(math.pi * np.clip(share, 0.04, 0.96)) ** 0.5, 8, deep=(0.01, 0.004, 0.003), lip=(0.12, 0.04, 0.02), lip_mm=0.08)
    coin((0, -26, HIGH - 15.1))
    hold((36, -110, 390), (30, -40, 108), 2.6)
    return {**DARK, "known": {"crack": [path[0][0], path[-1][0]]}}


SHOTS = {
    "L06-partsLaid": laid,
    "L06-assembled": assembled,
    "L06-threeQuarter": three_quarter,
    "L06-marks": key_close,
    "L06-damageClose": check_close,
}
