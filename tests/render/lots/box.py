"""Lot L10: a box of nine small pieces, together and each by itself."""

import math

import bpy
import numpy as np

from kit import marks
from kit.camera import hold
from kit.decals import Decal, Sheet, cloud, faded
from kit.nodes import Tree, plain
from kit.shapes import around, circle, grown, loft, mixed, oval, ring, sector
from kit.stage import box, put, room, tag
from kit.wood import BALSA, BEECH, LIME, PINE, wood


def mound(name, outline, high, material, edge=10.0, p=2.4, hollow=0.0):
    """A low dome over any outline, on an upright edge."""
    rings = [ring(outline * 0.02, hollow), ring(outline * 0.55, hollow), ring(outline * 0.75, hollow * 0.3), ring(grown(outline, -1), 0), ring(outline, 1.2), ring(outline, edge * 0.6)]
    for a in np.linspace(0, math.pi / 2, 26):
        rings.append(ring(outline * max(math.cos(a) ** (2 / p), 0.012), edge + (high - edge) * math.sin(a) ** (2 / 2.2)))
    return loft(name, rings, material, smooth=45)


def pinned(block, surface, count, seed, low, high):
    rng = np.random.default_rng(seed)
    spots = [surface.at(rng.uniform(low, high), rng.uniform(0, surface.grid.shape[1])) for _ in range(count)]
    marks.pins(f"pins {seed}", spots, seed).parent = block


def button():
    block, surface = mound("button", circle(110, around(90)), 42, wood("lime button", LIME, 41, "y", worn=0.7))
    pinned(block, surface, 90, 41, 4, 7)
    return block


def teardrop():
    phi = around(110)
    c, s = np.cos(phi), np.sin(phi)
    flat = np.stack([52 * c * (1 - 0.42 * np.clip(s, 0, 1) ** 1.6), 78 * s + 14 * np.clip(s, 0, 1) ** 3], -1)
    pits = Sheet(110, 110, 8).blob(-14, 12, 11, 9).blob(16, -8, 12, 11).blob(-6, -30, 9, 10)
    soft = pits.soft(1.6)
    dents = Decal("dents", 110, 110, soft * 0.25, (0.33, 0.25, 0.16), soft * 3.0, depth=50)
    block, surface = mound("teardrop", flat, 46, wood("balsa drop", BALSA, 43, "y", None, [dents], worn=0.5))
    dents.at((0, 0, 30), (0, 0, 1), (0, 1, 0), block)
    pinned(block, surface, 420, 43, 3, 12)
    return block


def saucer():
    tree = Tree("cork")
    place = tree.place()
    made = tree.node("ShaderNodeTexVoronoi", {"Vector": place, "Scale": 0.28, "Randomness": 1.0})
    fine = tree.noise(place, 0.6, 3.0, 0.7)
    colour = tree.mix(tree.split(made.outputs["Color"])[0], (0.40, 0.235, 0.115), (0.22, 0.115, 0.05))
    colour = tree.mix(tree.range(fine, 0.58, 0.66), colour, (0.06, 0.03, 0.015))
    height = tree.math("MULTIPLY_ADD", made.outputs["Distance"], -0.25, tree.math("MULTIPLY", fine, 0.5))
    material = tree.finish(colour, 0.95, tree.bump(height), specular=0.05)
    phi = around(150)
    rng = np.random.default_rng(3)
    rough = np.convolve(np.tile(rng.standard_normal(150), 3), np.ones(4) / 4, "same")[150:300]
    eaten = np.clip(np.sin(phi * 1.0 + 2.2) - 0.55, 0, 1) * (4 + 2.2 * rough)
    flat = circle(136, phi)
    rings = [ring(flat * 0.02, 0), ring(grown(flat, -10), 0), ring(grown(flat, -4 - eaten), 4), ring(grown(flat, -eaten), 12), ring(grown(flat, -1.5 - eaten), 15)]
    rings += [ring(flat * s, 14 - 9 * math.cos(s * math.pi / 2) ** 0.8) for s in (0.93, 0.8, 0.6, 0.35, 0.02)]
    block, _ = loft("saucer", rings, material, smooth=30)
    crumbs = marks.grit("crumbs", (56, -36, 0), np.array([16, 10]), 70, 5, (0.30, 0.17, 0.08), 0.9)
    crumbs.parent = block
    return block


def pillbox():
    """White paint coming off in flakes, on lime gone brown under it."""

    def paint(tree, colour, place):
        off = tree.noise(place, 0.055, 6.0, 0.66)
        bare = tree.range(off, 0.51, 0.525)
        edge = tree.math("MULTIPLY", tree.range(off, 0.485, 0.51), tree.range(off, 0.53, 0.512))
        white = tree.mix(tree.range(tree.noise(place, 0.02, 3.0), 0.35, 0.7), (0.62, 0.60, 0.53), (0.50, 0.46, 0.36))
        painted = tree.mix(edge, white, (0.26, 0.23, 0.18))
        return tree.mix(bare, painted, colour)

    flat = oval(168, 146, around(110), 0.02)
    rings = [ring(flat * 0.02, 0), ring(grown(flat, -1), 0), ring(flat, 1.5), ring(flat, 54)]
    rings += [ring(grown(flat, -6 + 6 * math.cos(a)), 54 + 6 * math.sin(a)) for a in np.linspace(0.2, math.pi / 2, 6)]
    rings += [ring(flat * s, 60.5) for s in (0.8, 0.4, 0.02)]
    block, _ = loft("pillbox", rings, wood("painted lime", {**LIME, "rough": 0.6}, 47, "y", worn=0.8, whole=paint), smooth=35)
    return block


def ornament():
    """A round "antique" dome: stain still wet in the corners, no pin has ever been in it."""
    block, _ = mound("ornament", circle(172, around(120)), 128, wood("stained pine", {**PINE, "rough": 0.22}, 53, "z", worn=0.2), edge=22, p=2.5)
    return block


def stand():
    phi = around(80)
    foot = [(2, 0), (150, 0), (156, 3), (156, 14), (148, 20), (120, 24), (60, 27), (44, 34), (34, 48), (29, 80), (27, 130), (30, 168), (38, 180), (40, 186), (34, 190), (25.0, 191), (25.0, 232), (22, 236), (2, 236)]
    block, _ = loft("stand", [ring(circle(d, phi), z) for d, z in foot], wood("beech", BEECH, 59, "z", worn=0.5), smooth=38)
    return block


def halo():
    """A bandeau to block halos on: half a ring, rounded above."""
    phi = np.linspace(-0.12 * math.pi, 1.12 * math.pi, 80)
    inner, outer = oval(188, 156, phi, 0.0), oval(250, 214, phi, 0.0)
    rows = [ring(inner, 0), ring(mixed(inner, outer, 0.5), 0), ring(outer, 0), ring(outer, 26)]
    rows += [ring(mixed(inner, outer, 0.5 + 0.5 * math.cos(a)), 26 + 22 * math.sin(a)) for a in np.linspace(0.15, math.pi - 0.15, 12)]
    rows += [ring(inner, 24)]
    loops = np.stack(rows, 1)
    slip = Sheet(40, 20, 12).line([(-10, -1.5), (0, 0.4), (10, 1.2)], 0.7)
    ink = slip.soft(0.1)
    gouge = Decal("gouge", 40, 20, ink * 0.55, (0.30, 0.2, 0.1), ink * 0.9, depth=12)
    block = sector("halo", loops[:, ::-1], wood("lime halo", LIME, 61, "x", None, [gouge], worn=0.8), 40)
    gouge.at((88, 62, 47), (0, 0, 1), (-0.6, 1, 0), block)
    return block


def pressing():
    """The hollow's counterpart: a tapered oval with a handle hole, whose own block is elsewhere."""
    flat = oval(142, 58, around(110), 0.0, 2.2)
    rings = [ring(flat * 0.02, 0), ring(grown(flat, -8), 0), ring(grown(flat, -5), 2)]
    rings += [ring(grown(flat, -5 + 5 * s), 2 + 22 * s) for s in np.linspace(0, 1, 5)]
    rings += [ring(grown(flat, -1), 25.5), ring(flat * 0.5, 26), ring(circle(16, around(110)), 26), ring(circle(15, around(110)), 12), ring(circle(1, around(110)), 12)]
    block, _ = loft("pressing piece", rings, wood("lime piece", LIME, 67, "y", worn=1.0), smooth=30)
    return block


def percher():
    worn = faded(np.clip(cloud(70, 70, 12, 4) * 3 - 1.3, 0, 1), 0.3)
    finish = Decal("bare", 70, 70, worn * 0.6, (0.62, 0.47, 0.29), depth=40, rough=0.8)
    block, surface = mound("percher", circle(140, around(110)), 34, wood("lime percher", {**LIME, "early": (0.48, 0.30, 0.14), "late": (0.38, 0.21, 0.09), "rough": 0.22}, 71, "y", None, [finish], worn=0.5), edge=9, p=2.8)
    finish.at((-8, 6, 28), (0, 0, 1), (0, 1, 0), block)
    return block


PIECES = {"a": button, "b": teardrop, "c": saucer, "d": pillbox, "e": ornament, "f": stand, "g": halo, "h": pressing, "i": percher}




def all_in_box():
    room()
    carton = plain("carton", (0.36, 0.25, 0.145), 0.95, specular=0.05)
    w, d, h, t = 560, 420, 120, 4
    for name, low, high in (("floor of box", (-w / 2, -d / 2, 0.2), (w / 2, d / 2, t)), ("left", (-w / 2 - t, -d / 2, 0.2), (-w / 2, d / 2, h)), ("right", (w / 2, -d / 2, 0.2), (w / 2 + t, d / 2, h)), ("front", (-w / 2, -d / 2 - t, 0.2), (w / 2, -d / 2, h - 30)), ("back", (-w / 2, d / 2, 0.2), (w / 2, d / 2 + t, h))):
        box(name, low, high, carton)
    put(ornament(), (-176, 104, t), 20)
    put(stand(), (196, 116, 84), 0, (88, 26))
    put(pillbox(), (8, 112, t), 35)
    put(halo(), (132, -60, t), 200)
    put(button(), (132, -86, t), 12)
    put(teardrop(), (-36, -96, t), 28)
    put(saucer(), (-196, -70, t + 8), 0, (8, -9))
    put(pressing(), (36, 2, t), 78)
    put(percher(), (-118, -140, t), 0)
    tag(("L10", "£60"), (-150, -262, 0), 5, [(-118, -250, 1), (-112, -226, 60), (-108, -222, 90)])
    hold((-60, -500, 560), (-4, -28, 20), 1.08)


def alone(letter, eye, target, zoom, turn=0.0):
    def scene():
        room()
        put(PIECES[letter](), (0, 0, 0), turn)
        hold(eye, target, zoom)

    return scene


SHOTS = {
    "L10-box": all_in_box,
    "L10a-threeQuarter": alone("a", (-170, -250, 190), (0, 0, 16), 1.6, 20),
    "L10b-threeQuarter": alone("b", (-170, -250, 220), (0, 4, 16), 1.4, 30),
    "L10c-threeQuarter": alone("c", (-150, -240, 200), (6, 0, 6), 1.4, -20),
    "L10d-threeQuarter": alone("d", (-190, -280, 200), (0, 0, 26), 1.4, 0),
    "L10e-threeQuarter": alone("e", (-220, -320, 220), (0, 0, 56), 1.35, 0),
    "L10f-threeQuarter": alone("f", (-250, -380, 260), (0, 0, 104), 1.15, 0),
    "L10g-threeQuarter": alone("g", (-230, -330, 290), (0, 30, 14), 1.25, 180),
    "L10h-threeQuarter": alone("h", (-150, -230, 200), (0, 0, 8), 1.6, 60),
    "L10i-threeQuarter": alone("i", (-170, -250, 200), (0, 0, 10), 1.5, 0),
}
