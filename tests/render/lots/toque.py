"""Lot L05: a toque form of sparterie, made in the studio: woven chip over muslin, wired at its edge."""

import math

import bpy
import numpy as np

from kit import marks
from kit.camera import hold
from kit.decals import Decal, Sheet, cloud, faded, painted, pencilled, speckle
from kit.nodes import Tree, plain
from kit.shapes import around, grown, loft, mesh, oval, ring
from kit.stage import card, lay, put, room, tag, thread

HIGH = 118.0
TILE = 48


def weave():
    """Chips 2.3 mm wide, one over and one under; each a little different. @returns ((rows, columns, 4), same) ink, height"""
    per = 11
    n = TILE * per
    rng = np.random.default_rng(33)
    x, y = np.meshgrid(np.arange(n) / per, np.arange(n) / per)
    across, up = x % 1 - 0.5, y % 1 - 0.5
    over = ((np.floor(x) + np.floor(y)) % 2) == 0
    warp_tone, weft_tone = rng.normal(1, 0.07, TILE), rng.normal(1, 0.07, TILE)
    tone = np.where(over, warp_tone[np.floor(x).astype(int)], weft_tone[np.floor(y).astype(int)])
    fibre = np.where(over, speckle((n, n), 4, 3, 0.86).T, speckle((n, n), 5, 3, 0.86))
    side, along = np.where(over, across, up), np.where(over, up, across)
    high = np.cos(along * math.pi) ** 0.7 * (1 - (2 * side) ** 6)
    gap = np.clip(1 - (0.5 - np.abs(side)) / 0.045, 0, 1)
    shade = tone * fibre * (1 - 0.5 * gap) * (0.86 + 0.14 * high)
    ink = np.ones((n, n, 4), np.float32)
    ink[..., :3] = shade[..., None] * np.array([0.58, 0.44, 0.255])
    height = np.zeros((n, n, 4), np.float32)
    height[..., 0] = 0.32 * high
    return ink, height


def sparterie(name, decals, dusty=0.3):
    tree = Tree(name)
    ink, height = (Decal._image(f"{name} {k}", a) for k, a in zip(("weave", "relief"), weave()))
    uv = tree.vector("MULTIPLY", tree.place(which="UV"), (1 / (TILE * 2.3),) * 3)
    colour = tree.node("ShaderNodeTexImage", {0: uv}, image=ink).outputs[0]
    relief = tree.split(tree.node("ShaderNodeTexImage", {0: uv}, image=height).outputs[0])[0]
    patches = tree.range(tree.noise(tree.place(), 0.02, 3.0), 0.4, 0.75, 0.0, dusty)
    colour = tree.mix(patches, colour, (0.33, 0.28, 0.20))
    rough = 0.75
    for decal in decals:
        colour, relief, rough = decal.lay(tree, colour, relief, rough)
    return tree.finish(colour, rough, tree.bump(relief, 0.9), specular=0.15)


def rings_of_toque(n=160):
    """A draped oval: leaning folds on the sides, a shallow hollow in the tip."""
    phi = around(n)
    head = oval(190, 162.5, phi)
    rings = []
    for t in np.linspace(0, 1, 60):
        a = t * math.pi / 2
        s, z = math.cos(a) ** 0.62, HIGH * math.sin(a) ** 0.9
        bulge = 13 * math.sin(math.pi * min(1.0, t / 0.72)) ** 1.2
        folds = 5.5 * np.abs(np.sin(2 * phi + 4.6 * t + 0.6)) ** 0.7 * math.sin(math.pi * t) ** 0.8 - 3
        # The blister on top: the plies have parted and stand up.
        rings.append((grown(head, bulge + folds) * max(s, 0.015), z, t))
    made = []
    for flat, z, t in rings:
        lift = 5.0 * np.exp(-(((flat[:, 0] - 14) / 17) ** 2) - ((flat[:, 1] + 10) / 22) ** 2) if t > 0.6 else 0.0
        made.append(ring(flat, z - 7 * max(0, t - 0.75) ** 2 * 16 * 0.5 + lift))
    return np.stack(made)


def tear_on(surface):
    """45 mm down the left side, gaping 2 mm, with chips sprung out along it."""
    path = []
    for t in np.linspace(0, 1, 60):
        k = 14 + 27 * t
        path.append(surface.at(k, surface.column(0.10 + 0.16 * t + 0.008 * math.sin(19 * t))))
    lengths = np.linalg.norm(np.diff([p for p, _ in path], axis=0), axis=1).cumsum()
    keep = int(np.searchsorted(lengths, 45)) + 2
    path = path[:keep]
    share = np.linspace(0, 1, len(path))
    return path, 2.6 * np.sin(math.pi * np.clip(share, 0.03, 0.97)) ** 0.7


def form(at=(0, 0, 0), turn=0.0, tip=(0, 0), inside=()):
    rings = rings_of_toque()
    outer, surface = loft("toque", rings, sparterie("outside", []), start_cap=False, smooth=60)
    lining = np.stack([np.concatenate([grown(r[:, :2], -1.6 * min(1, np.abs(r[:, 0]).max() / 20)), r[:, 2:] - 1.2], -1) for r in rings])
    inner, _ = loft("lining", lining[:, ::-1], sparterie("inside", inside, 0.15), start_cap=False, smooth=60)
    path, widths = tear_on(surface)
    tear = marks.crack("tear", path, widths, 9, deep=(0.02, 0.013, 0.008), lip=(0.62, 0.50, 0.33), lip_mm=0.7)
    rng = np.random.default_rng(6)
    parts = [outer, inner, tear]
    for i in range(16):
        place, normal = path[rng.integers(4, len(path) - 4)]
        side = np.cross(normal, (0, 0, 1.0)) * rng.choice([-1, 1])
        a = place + side * 1.2
        b = a - side * rng.uniform(1.5, 3) + normal * rng.uniform(0.6, 2.6) + np.array([0, 0, rng.normal(0, 1)])
        parts.append(thread(f"chip {i}", [a + normal * 0.2, (a + b) / 2 + normal * 0.5, b], 0.32, (0.50, 0.38, 0.22)))
    parts += edge(rings[0])
    for part in parts[1:]:
        part.parent = outer
    put(outer, at, turn, tip)
    return outer, surface, path


def edge(foot):
    """Wire in a cotton binding, rust coming through on a third of it."""
    tree = Tree("binding")
    place = tree.place()
    x, y, _ = tree.split(place)
    rust = tree.range(tree.noise(place, 0.06, 4.0, 0.65), 0.42, 0.6)
    where = tree.range(tree.math("ADD", tree.math("MULTIPLY", x, 0.9), tree.math("MULTIPLY", y, -0.5)), 5.0, 45.0)
    colour = tree.mix(tree.math("MULTIPLY", rust, where), (0.50, 0.44, 0.32), (0.22, 0.075, 0.022))
    threads = tree.noise(place, 1.3, 2.0)
    material = tree.finish(colour, 0.95, tree.bump(tree.math("MULTIPLY", threads, 0.25)), specular=0.05)
    phi = around(len(foot))
    rings = []
    for a in np.linspace(0, 2 * math.pi, 10):
        flat = grown(foot[:, :2], 1.9 * math.cos(a))
        wave = 0.25 * np.sin(phi * 37)
        rings.append(ring(flat, 1.6 + 1.9 * math.sin(a) + wave))
    made, _ = loft("binding", np.stack(rings), material, start_cap=False, end_cap=False, smooth=90)
    return [made]


def three_quarter():
    room()
    form(turn=6)
    tag(("L05", "£28"), (-40, -160, 0), -12, [(12, -158, 1), (40, -120, 0.6)])
    hold((-215, -290, 225), (0, -10, 48), 1.25)


def left():
    room()
    form()
    hold((430, -30, 170), (0, 0, 52), 1.5)


def close():
    room()
    _, surface, path = form()
    ends = [p for p, _ in path]
    # The card leans against the form beside the tear.
    place, normal = surface.at(17, surface.column(-0.42))
    lay(card((0, 0, 0)), (0, 0, 0), (1, 0, 0.0))
    piece = bpy.data.objects["card"]
    piece.rotation_mode = "XYZ"
    piece.rotation_euler = (math.radians(78), 0, math.radians(90 - 8))
    piece.location = (105, -52, 27)
    hold((380, 8, 92), (85, -6, 46), 1.9)
    return {"known": {"crack": [ends[1], ends[-2]]}}


def interior():
    """Looking into the form, turned over: pencil, and a hat-room ticket that is coming off."""
    words = Sheet(100, 30, 12).text("Act II – Duchess", 0, 0, 9.5, "hand", 4)
    pencil = pencilled("act", words, 3, (0.035, 0.035, 0.04), 1.0)
    pencil.size = (100, 30, 30)
    room()
    form((0, 0, HIGH + 8), tip=(180, 0), inside=[pencil])
    outer = bpy.data.objects["toque"]
    pencil.at((0, 20, HIGH - 12), (0, 0, -1), (0, -1, 0), outer)
    ticket(outer)
    hold((6, -60, 440), (0, -4, 30), 1.75, focus=(0, 0, 14))


def ticket(parent):
    """Printed number 33 on buff card, one corner lifting."""
    sheet = Sheet(46, 30, 14).text("HAT ROOM", 0, 8.5, 3.6, "sans").text("No. 33", 0, -3, 8, "typed").line([(-20, 3.6), (20, 3.6)], 0.4)
    ink = painted("ticket", sheet, 4, (0.05, 0.03, 0.03), 0.9)
    tree = Tree("ticket card")
    foxed = tree.range(tree.noise(tree.place(), 0.12, 3.0), 0.5, 0.7, 0.0, 0.6)
    colour, _, rough = ink.lay(tree, tree.mix(foxed, (0.62, 0.53, 0.36), (0.42, 0.30, 0.16)), 0.0, 0.9)
    n = 14
    v, f = [], []
    for j in range(n + 1):
        for i in range(n + 1):
            x, y = (i / n - 0.5) * 46, (j / n - 0.5) * 30
            lift = max(0.0, (x / 23 + y / 15) / 2 - 0.25) ** 2 * 16
            v.append((x, y, lift))
    f = [(j * (n + 1) + i, j * (n + 1) + i + 1, (j + 1) * (n + 1) + i + 1, (j + 1) * (n + 1) + i) for j in range(n) for i in range(n)]
    made = mesh("ticket", v, f, tree.finish(colour, rough, specular=0.05), smooth=90)
    ink.at((0, 0, 0), parent=made)
    put(made, (2, 36, 22), 7, (0, 0))
    return made


SHOTS = {"L05-threeQuarter": three_quarter, "L05-left": left, "L05-damageClose": close, "L05-marks": interior}
