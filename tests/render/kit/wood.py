"""Woods of hat blocks: flat-sawn growth rings round a far pith, fibres along the grain, boards glued side by side."""

from .nodes import Tree

# Colours are linear light, early wood and late wood; ring spacing in mm; how strongly rings and fibres show.
LIME = {"early": (0.56, 0.375, 0.195), "late": (0.43, 0.265, 0.125), "ring": 3.4, "rings": 0.55, "fibre": 0.30, "rough": 0.42}
ALDER = {"early": (0.46, 0.235, 0.115), "late": (0.365, 0.17, 0.078), "ring": 4.2, "rings": 0.6, "fibre": 0.36, "rough": 0.40}
POPLAR = {"early": (0.60, 0.51, 0.34), "late": (0.45, 0.37, 0.215), "ring": 5.5, "rings": 0.6, "fibre": 0.4, "rough": 0.6}
SAPELE = {"early": (0.215, 0.066, 0.033), "late": (0.135, 0.036, 0.019), "ring": 6.5, "rings": 0.5, "fibre": 0.75, "rough": 0.33}
BALSA = {"early": (0.72, 0.61, 0.46), "late": (0.66, 0.54, 0.39), "ring": 7.0, "rings": 0.35, "fibre": 0.6, "rough": 0.8}
PINE = {"early": (0.40, 0.20, 0.075), "late": (0.20, 0.075, 0.025), "ring": 5.0, "rings": 0.95, "fibre": 0.3, "rough": 0.3}
BEECH = {"early": (0.56, 0.36, 0.205), "late": (0.49, 0.295, 0.155), "ring": 3.0, "rings": 0.4, "fibre": 0.45, "rough": 0.45}
GREY_LIME = {**LIME, "early": (0.40, 0.29, 0.18), "late": (0.31, 0.21, 0.12), "rough": 0.7}


def wood(name, look, seed, grain="y", boards=None, decals=(), worn=0.5, whole=None):
    """
    @param grain the axis the fibres run along
    @param boards (axis, width in mm, offset): how it was glued up; None is one piece
    @param decals what is drawn on it, later ones over earlier ones
    @param worn 0 fresh from the carver to 1 black with hands
    @param whole a function (tree, colour, place) -> colour for what covers all of it
    """
    tree = Tree(name)
    place = tree.place()
    x, y, z = tree.split(place)
    glue = None
    if boards:
        axis, width, offset = boards
        across = tree.math("DIVIDE", tree.math("ADD", {"x": x, "y": y, "z": z}[axis], offset), width)
        number = tree.math("FLOOR", across)
        part = tree.math("FRACT", across)
        chance = tree.chance(tree.join(number, float(seed), 0.5))
        sx, sy, sz = tree.split(chance)
        edge = tree.math("MINIMUM", part, tree.math("SUBTRACT", 1.0, part))
        glue = tree.range(edge, 0.05 / width, 0.28 / width, 1.0, 0.0)
    else:
        sx = sy = sz = 0.5
    along, one, two = {"x": (x, y, z), "y": (y, x, z), "z": (z, x, y)}[grain]
    one = tree.math("ADD", one, tree.math("MULTIPLY_ADD", sx, 170.0, seed * 3.7 - 85.0))
    two = tree.math("ADD", two, tree.math("MULTIPLY_ADD", sy, 120.0, 70.0 + (seed % 7) * 9.0))
    along = tree.math("ADD", along, tree.math("MULTIPLY", sz, 400.0))
    flow = tree.join(tree.math("MULTIPLY", along, 0.16), one, two)
    wander = tree.noise(flow, 0.012, 2.0)
    radius = tree.vector("LENGTH", tree.join(one, two, 0.0))
    radius = tree.math("ADD", radius, tree.math("MULTIPLY", wander, 26.0))
    ring = tree.math("FRACT", tree.math("DIVIDE", radius, look["ring"]))
    late = tree.ramp(ring, [(0.0, (0.25,) * 3), (0.08, (0.0,) * 3), (0.55, (0.18,) * 3), (0.9, (0.8,) * 3), (0.97, (1.0,) * 3), (1.0, (0.25,) * 3)])
    fibre = tree.noise(tree.join(tree.math("MULTIPLY", along, 0.022), one, two), 0.85, 3.0, 0.62)
    fibre = tree.range(fibre, 0.3, 0.72)
    broad = tree.noise(tree.join(tree.math("MULTIPLY", along, 0.1), one, two), 0.03, 2.0)
    dark = tree.math("MULTIPLY", late, look["rings"])
    dark = tree.math("MULTIPLY_ADD", tree.math("SUBTRACT", fibre, 0.5), look["fibre"], dark)
    dark = tree.math("MULTIPLY_ADD", tree.math("SUBTRACT", broad, 0.5), 1.3, dark)
    if boards:
        dark = tree.math("MULTIPLY_ADD", tree.math("SUBTRACT", sz, 0.5), 0.5, dark)
    colour = tree.mix(tree.math("ADD", dark, 0.12, clamp=True), look["early"], look["late"])
    if glue is not None:
        colour = tree.mix(tree.math("MULTIPLY", glue, 0.55), colour, tuple(0.35 * c for c in look["late"]))
    hands = tree.range(tree.noise(place, 0.016, 5.0, 0.68), 0.42, 0.8, 0.0, 0.42 * worn)
    colour = tree.mix(hands, colour, (0.10, 0.062, 0.034))
    if whole:
        colour = whole(tree, colour, place)
    rough = tree.math("MULTIPLY_ADD", fibre, 0.12, look["rough"])
    height = tree.math("MULTIPLY", fibre, 0.035)
    for decal in decals:
        colour, height, rough = decal.lay(tree, colour, height, rough)
    return tree.finish(colour, rough, tree.bump(height, 0.8))
