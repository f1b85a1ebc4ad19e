"""Small things that lie on a surface: flight holes, pin holes, cracks, grit. Laid a hair above it, so that they show."""

import math

import numpy as np

from .nodes import spotted
from .shapes import mesh

HAIR = 0.06


def _tinted(name, vertices, faces, tints, roughness=0.85):
    made = mesh(name, vertices, faces, spotted(name, roughness), smooth=180)
    layer = made.data.color_attributes.new("tint", "FLOAT_COLOR", "POINT")
    flat = np.ones((len(vertices), 4), np.float32)
    flat[:, :3] = tints
    layer.data.foreach_set("color", flat.ravel())
    return made


def _basis(normal):
    n = np.asarray(normal, float)
    u = np.cross(n, (0.31, 0.83, 0.47))
    u /= np.linalg.norm(u)
    return u, np.cross(n, u)


def holes(name, spots, seed, rim=(0.62, 0.46, 0.28), deep=(0.012, 0.007, 0.004), light=(-0.5, 0.3, 0.8), pale=0.22):
    """
    Round holes seen from outside: a pale rim, then dark, a shade lighter on the wall the light falls on.
    @param spots (place, normal, diameter in mm)
    """
    rng = np.random.default_rng(seed)
    n = 14
    vertices, faces, tints = [], [], []
    for place, normal, across in spots:
        u, v = _basis(normal)
        base = len(vertices)
        oval = 1 + 0.08 * rng.standard_normal()
        turn = rng.uniform(0, math.pi)
        # Where the light comes in, the near wall lies in shade and the far wall shows.
        lit = np.asarray(light, float)
        lit = lit - np.dot(lit, normal) * np.asarray(normal)
        for k, (r, tint) in enumerate([(across / 2 + pale, None), (across / 2, rim), (across / 2 * 0.84, deep), (0.0, deep)]):
            for j in range(n):
                a = 2 * math.pi * j / n
                d = math.cos(a + turn) * oval * u + math.sin(a + turn) / oval * v
                jag = 1 + 0.05 * rng.standard_normal() if k < 2 else 1
                vertices.append(np.asarray(place) + normal * (HAIR if k else 0.0) + d * r * jag)
                far = max(0.0, -float(np.dot(d, lit)))
                shade = rim if tint is None or k == 1 else tuple(c + 0.09 * far * w for c, w in zip(deep, (1, 0.7, 0.45)))
                tints.append(shade if k < 3 else deep)
        for k in range(3):
            for j in range(n):
                a, b = base + k * n + j, base + k * n + (j + 1) % n
                faces.append((a, b, b + n, a + n))
    return _tinted(name, vertices, faces, tints)


def pins(name, spots, seed):
    """Holes of blocking pins: 0.7 mm, dark, no pale rim."""
    brown = (0.10, 0.06, 0.035)
    return holes(name, [(p, n, 0.62) for p, n in spots], seed, rim=brown, deep=(0.03, 0.018, 0.01), pale=0.1)


def crack(name, path, widths, seed, deep=(0.014, 0.008, 0.005), lip=(0.30, 0.20, 0.11), lip_mm=0.18):
    """
    A dark ribbon along places on a surface, lighter at its lips.
    @param path [(place, normal)] close together @param widths mm at each place
    """
    rng = np.random.default_rng(seed)
    places = np.asarray([p for p, _ in path], float)
    along = np.gradient(places, axis=0)
    vertices, faces, tints = [], [], []
    left = right = 0.0
    for i, (place, normal) in enumerate(path):
        side = np.cross(normal, along[i])
        side /= np.linalg.norm(side) + 1e-9
        left, right = 0.75 * left + 0.09 * rng.standard_normal(), 0.75 * right + 0.09 * rng.standard_normal()
        w = widths[i] / 2
        a, b = w * (1 + left), w * (1 + right)
        for off, tint in ((-a - lip_mm, lip), (-a, deep), (b, deep), (b + lip_mm, lip)):
            vertices.append(place + side * off + normal * (HAIR if tint is deep else 0.0))
            tints.append(tint)
        if i:
            base = 4 * i
            for j in range(3):
                faces.append((base - 4 + j, base - 3 + j, base + j + 1, base + j))
    return _tinted(name, vertices, faces, tints)


def grit(name, middle, spread, count, seed, tint=(0.78, 0.66, 0.47), size=0.35, heap=0.0):
    """Pale frass on the table: little lemon-shaped pellets and dust. @param heap height of the pile in the middle, mm"""
    rng = np.random.default_rng(seed)
    vertices, faces, tints = [], [], []
    shape = [(1, 0, 0), (-1, 0, 0), (0, 1, 0), (0, -1, 0), (0, 0, 1), (0, 0, -1)]
    sides = [(0, 2, 4), (2, 1, 4), (1, 3, 4), (3, 0, 4), (2, 0, 5), (1, 2, 5), (3, 1, 5), (0, 3, 5)]
    for _ in range(count):
        xy = rng.standard_normal(2) * spread
        far = np.linalg.norm(xy / spread)
        z = heap * math.exp(-(far**2)) * rng.random() + size * 0.4
        r = size * rng.lognormal(0, 0.35)
        a = rng.uniform(0, math.pi)
        base = len(vertices)
        for x, y, up in shape:
            px, py = 1.5 * x * math.cos(a) - y * math.sin(a), 1.5 * x * math.sin(a) + y * math.cos(a)
            vertices.append((middle[0] + xy[0] + px * r, middle[1] + xy[1] + py * r, middle[2] + z + up * r))
            tints.append(np.asarray(tint) * rng.uniform(0.75, 1.1))
        faces.extend(tuple(base + i for i in side) for side in sides)
    return _tinted(name, vertices, faces, tints, 1.0)
