"""The stall: a trestle table under a cloth, a window to the left, a plain wall; and what lies beside a lot."""

import math

import bpy
import numpy as np
from mathutils import Quaternion, Vector

from .nodes import Tree, plain
from .shapes import around, circle, loft, mesh, ring

CARD_MM = (85.6, 53.98, 3.18, 0.76)
COIN_MM = (25.9, 2.0)


def clear():
    bpy.ops.wm.read_factory_settings(use_empty=True)


def cloth():
    """A washed-out blue cotton cloth with the creases of its folding."""
    tree = Tree("cloth")
    place = tree.place()
    x, y, _ = tree.split(place)
    weave = tree.noise(place, 0.9, 2.0, 0.7)
    soft = tree.noise(place, 0.006, 2.0)
    colour = tree.mix(tree.range(weave, 0.25, 0.75, 0.0, 0.5), (0.150, 0.176, 0.182), (0.100, 0.122, 0.132))
    colour = tree.mix(tree.range(soft, 0.35, 0.7, 0.0, 0.25), colour, (0.13, 0.15, 0.155))
    wander = tree.math("MULTIPLY", tree.math("SUBTRACT", tree.noise(place, 0.01), 0.5), 14.0)
    height = tree.math("MULTIPLY", soft, 5.0)
    for axis, at in ((x, -255.0), (x, 330.0), (y, 210.0)):
        off = tree.math("ABSOLUTE", tree.math("SUBTRACT", tree.math("ADD", axis, wander), at))
        height = tree.math("SUBTRACT", height, tree.range(off, 0.0, 9.0, 1.0, 0.0))
    return tree.finish(colour, 0.95, tree.bump(tree.math("MULTIPLY_ADD", weave, 0.3, height), 1.0), specular=0.05)


def boards():
    tree = Tree("floor")
    x, y, _ = tree.split(tree.place())
    across = tree.math("DIVIDE", y, 140.0)
    tone = tree.chance(tree.join(tree.math("FLOOR", across), 1.0, 1.0))
    gap = tree.range(tree.math("ABSOLUTE", tree.math("SUBTRACT", tree.math("FRACT", across), 0.5)), 0.48, 0.5)
    colour = tree.mix(tree.split(tone)[0], (0.11, 0.065, 0.035), (0.16, 0.10, 0.06))
    return tree.finish(tree.mix(gap, colour, (0.01, 0.007, 0.005)), 0.5)


def plaster():
    """Old distemper, patchy, with a darker dado; out of focus behind everything."""
    tree = Tree("wall")
    place = tree.place()
    _, _, z = tree.split(place)
    patches = tree.range(tree.noise(place, 0.004, 4.0, 0.6), 0.35, 0.7)
    colour = tree.mix(patches, (0.34, 0.31, 0.25), (0.27, 0.245, 0.195))
    colour = tree.mix(tree.range(z, 118.0, 124.0, 1.0, 0.0), colour, (0.15, 0.125, 0.10))
    return tree.finish(colour, 0.95, specular=0.05)


def box(name, low, high, material):
    (a, b, c), (d, e, f) = low, high
    v = [(a, b, c), (d, b, c), (d, e, c), (a, e, c), (a, b, f), (d, b, f), (d, e, f), (a, e, f)]
    faces = [(0, 3, 2, 1), (4, 5, 6, 7), (0, 1, 5, 4), (1, 2, 6, 5), (2, 3, 7, 6), (3, 0, 4, 7)]
    return mesh(name, v, faces, material, smooth=10)


def room(window=1.0, low_lamp=None):
    """
    Table top at z = 0, window to the left and a little behind.
    @param low_lamp direction a raking lamp comes from, or None
    """
    box("table", (-900, -420, -30), (900, 420, 0), cloth())
    box("apron", (-890, -412, -330), (890, -408, -10), bpy.data.materials["cloth"])
    box("floor", (-4000, -3000, -760), (4000, 2600, -750), boards())
    box("wall", (-4000, 1500, -750), (4000, 1510, 2400), plaster())
    box("side wall", (-2210, -3000, -750), (-2200, 1500, 2400), bpy.data.materials["wall"])
    box("other wall", (2600, -3000, -750), (2610, 1500, 2400), bpy.data.materials["wall"])
    box("front wall", (-2200, -2610, -750), (2600, -2600, 2400), bpy.data.materials["wall"])
    world = bpy.data.worlds.new("sky")
    bpy.context.scene.world = world
    world.use_nodes = True
    background = world.node_tree.nodes["Background"]
    background.inputs[0].default_value = (0.86, 0.93, 1.0, 1)
    background.inputs[1].default_value = 0.22 if low_lamp is None else 0.12
    lamp("window", (-1150, 420, 980), (0, 0, 40), (700, 1100), 9.5e6 * window * (1 if low_lamp is None else 0.12))
    if low_lamp is not None:
        lamp("raking", Vector(low_lamp).normalized() * 700, (0, 0, 0), (60, 60), 2.6e6, (1.0, 0.87, 0.7))


def lamp(name, place, towards, size, power, colour=(0.93, 0.97, 1.0)):
    light = bpy.data.lights.new(name, "AREA")
    light.shape, (light.size, light.size_y) = "RECTANGLE", size
    light.energy, light.color = power, colour
    made = bpy.data.objects.new(name, light)
    made.location = place
    made.visible_camera = False
    made.rotation_euler = (Vector(towards) - Vector(place)).to_track_quat("-Z", "Y").to_euler()
    bpy.context.scene.collection.objects.link(made)


def put(thing, at=(0, 0, 0), turn=0.0, tip=(0.0, 0.0)):
    """Moves a thing: degrees of turn about z, after tipping about x and y."""
    thing.rotation_mode = "XYZ"
    thing.rotation_euler = (math.radians(tip[0]), math.radians(tip[1]), math.radians(turn))
    thing.location = at
    bpy.context.view_layer.update()
    return thing


def lay(thing, place, normal, turn=0.0, above=0.0):
    """Lays a thing on a slope: its underside on the place, its z along the normal, turned about that."""
    normal = Vector(normal).normalized()
    thing.rotation_mode = "QUATERNION"
    thing.rotation_quaternion = Vector((0, 0, 1)).rotation_difference(normal) @ Quaternion((0, 0, 1), math.radians(turn))
    thing.location = Vector(place) + normal * above
    bpy.context.view_layer.update()
    return thing


def card(at, turn=0.0, tip=(0.0, 0.0), colour=(0.018, 0.085, 0.16)):
    """A plain bank card without print. `at` is the middle of its underside."""
    w, h, r, t = CARD_MM
    steps = np.linspace(0, math.pi / 2, 10)
    middle = [(w / 2 - r, h / 2 - r), (-w / 2 + r, h / 2 - r), (-w / 2 + r, -h / 2 + r), (w / 2 - r, -h / 2 + r)]
    flat = np.array([(x + r * math.cos(a + q * math.pi / 2), y + r * math.sin(a + q * math.pi / 2)) for q, (x, y) in enumerate(middle) for a in steps])
    made, _ = loft("card", [ring(flat, 0), ring(flat, t)], plain("card", colour, 0.42, specular=0.4), smooth=20)
    put(made, at, turn, tip)
    made["corners"] = [c for x, y in ((-1, 1), (1, 1), (1, -1), (-1, -1)) for c in (x * w / 2, y * h / 2, t)]
    return made


def references():
    """Corners of the card's upper face, where its straight sides would meet, and places on the rim of the coin's."""
    found = {}
    for thing in bpy.context.scene.objects:
        if thing.get("corners"):
            flat = list(thing["corners"])
            found["card"] = [thing.matrix_world @ Vector(flat[i : i + 3]) for i in range(0, 12, 3)]
        if thing.get("rim"):
            r, top = thing["rim"]
            turns = [2 * math.pi * i / 8 for i in range(8)]
            found["coin"] = [thing.matrix_world @ Vector((r * math.cos(a), r * math.sin(a), top - 0.2)) for a in turns]
    return found


def coin(at, turn=0.0, tip=(0.0, 0.0)):
    """A bronze coin rubbed smooth: no legend is left."""
    d, t = COIN_MM
    phi = around(72)
    tree = Tree("coin")
    rubbed = tree.noise(tree.place(), 0.12, 3.0)
    metal = tree.finish(tree.mix(rubbed, (0.30, 0.135, 0.06), (0.42, 0.21, 0.10)), 0.38, metallic=0.75)
    rings = [(d - 0.4, 0), (d, 0.2), (d, t - 0.2), (d - 0.4, t), (d - 2.6, t), (d - 3.2, t - 0.25), (2, t - 0.18)]
    made, _ = loft("coin", [ring(circle(a, phi), z) for a, z in rings], metal, smooth=50)
    put(made, at, turn, tip)
    made["rim"] = [d / 2, t]
    return made


def tag(words, at, turn=0.0, string_to=None):
    """The price on its string tag: manila card with a punched corner."""
    from .decals import Sheet, pencilled

    flat = np.array([(-24, -12), (18, -12), (25, -5), (25, 5), (18, 12), (-24, 12)], float)
    sheet = Sheet(48, 24, 10)
    for i, line in enumerate(words):
        sheet.text(line, -4, 5 - 10 * i, 5.2, "plain")
    sheet.blob(20, 0, 3.4, 3.4, 200)
    ink = pencilled("tag", sheet, 5, strength=0.9)
    tree = Tree("tag paper")
    base = tree.mix(tree.noise(tree.place(), 0.3), (0.58, 0.44, 0.25), (0.52, 0.385, 0.21))
    colour, height, rough = ink.lay(tree, base, 0.0, 0.85)
    made, _ = loft("tag", [ring(flat, 0), ring(flat, 0.4)], tree.finish(colour, rough, specular=0.1), smooth=10)
    ink.at((0, 0, 0.4), parent=made)
    put(made, at, turn)
    if string_to is not None:
        hole = made.matrix_world @ Vector((20, 0, 0.6))
        thread("tag string", [hole, *(Vector(p) for p in string_to)], 0.55, (0.62, 0.55, 0.42))
    return made


def thread(name, points, radius, colour):
    curve = bpy.data.curves.new(name, "CURVE")
    curve.dimensions, curve.bevel_depth, curve.resolution_u = "3D", radius, 8
    line = curve.splines.new("NURBS")
    line.points.add(len(points) - 1)
    for point, place in zip(line.points, points):
        point.co = (*place, 1)
    line.use_endpoint_u, line.order_u = True, min(4, len(points))
    curve.materials.append(plain(name, colour, 0.9))
    made = bpy.data.objects.new(name, curve)
    bpy.context.scene.collection.objects.link(made)
    return made


def paper(at, size, turn=0.0, colour=(0.80, 0.79, 0.75)):
    """A sheet, a little curled."""
    w, h = size
    n = 12
    v = [((i / n - 0.5) * w, (j / n - 0.5) * h, 0.25 + 3.0 * max(0, i / n - 0.8) ** 2 * 10) for j in range(n + 1) for i in range(n + 1)]
    f = [(j * (n + 1) + i, j * (n + 1) + i + 1, (j + 1) * (n + 1) + i + 1, (j + 1) * (n + 1) + i) for j in range(n) for i in range(n)]
    return put(mesh("paper", v, f, plain("paper", colour, 0.9, specular=0.05), smooth=60), at, turn)
