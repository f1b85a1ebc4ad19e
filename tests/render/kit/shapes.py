"""Meshes of blocks: rings lofted over one another, in millimetres. The wearer's front is −y, the wearer's left +x."""

import math

import bpy
import numpy as np


def oval(length, width, phi, egg=0.045, power=2.12):
    """A head oval, a little wider behind. @returns (n, 2)"""
    c, s = np.cos(phi), np.sin(phi)
    x = width / 2 * np.sign(c) * np.abs(c) ** (2 / power) * (1 + egg * s)
    y = length / 2 * np.sign(s) * np.abs(s) ** (2 / power)
    return np.stack([x, y], -1)


def circle(diameter, phi):
    return diameter / 2 * np.stack([np.cos(phi), np.sin(phi)], -1)


def around(n):
    return np.linspace(0, 2 * math.pi, n, endpoint=False)


def ring(flat, z):
    """@param flat (n, 2) @param z number or (n,)"""
    return np.concatenate([flat, np.broadcast_to(np.asarray(z, float), flat.shape[:1])[:, None]], -1)


def grown(flat, by):
    """An outline made larger all round by so many mm (smaller when negative)."""
    after, before = np.roll(flat, -1, 0), np.roll(flat, 1, 0)
    along = after - before
    normal = np.stack([along[:, 1], -along[:, 0]], -1)
    normal /= np.linalg.norm(normal, axis=-1, keepdims=True)
    return flat + normal * np.asarray(by).reshape(-1, 1)


def mixed(a, b, share):
    return a * (1 - share) + b * share


class Surface:
    """A grid of places, rings × columns, from which one can also ask where a pin would go."""

    def __init__(self, rings, closed=True):
        self.grid = np.asarray(rings, float)
        self.closed = closed
        self.normals = self._normals()

    def _normals(self):
        g = self.grid
        if self.closed:
            across = np.roll(g, -1, 1) - np.roll(g, 1, 1)
        else:
            across = np.gradient(g, axis=1)
        down = np.gradient(g, axis=0)
        n = np.cross(across, down)
        return n / (np.linalg.norm(n, axis=-1, keepdims=True) + 1e-9)

    def at(self, k, column):
        """Place and outward normal at a ring and a column, fractions allowed."""
        rows, columns = self.grid.shape[:2]
        k = min(max(k, 0), rows - 1.001)
        i, u = int(k), k - int(k)
        j, v = int(math.floor(column)), column - math.floor(column)
        ends = [(i, j, (1 - u) * (1 - v)), (i + 1, j, u * (1 - v)), (i, j + 1, (1 - u) * v), (i + 1, j + 1, u * v)]
        wrap = (lambda c: c % columns) if self.closed else (lambda c: min(max(c, 0), columns - 1))
        place = sum(w * self.grid[a, wrap(b)] for a, b, w in ends)
        normal = sum(w * self.normals[a, wrap(b)] for a, b, w in ends)
        return place, normal / np.linalg.norm(normal)

    def column(self, phi):
        return (phi / (2 * math.pi) % 1) * self.grid.shape[1]

    def nearest(self, place):
        """(ring, column) of the grid corner next to a place."""
        d = np.linalg.norm(self.grid - np.asarray(place, float), axis=-1)
        return np.unravel_index(np.argmin(d), d.shape)


def mesh(name, vertices, faces, material, smooth=40, uvs=None):
    data = bpy.data.meshes.new(name)
    data.from_pydata([tuple(v) for v in vertices], [], faces)
    if uvs is not None:
        layer = data.uv_layers.new(name="uv")
        flat = np.asarray([uvs[i] for loop in data.polygons for i in loop.vertices], np.float32)
        layer.data.foreach_set("uv", flat.ravel())
    data.materials.append(material)
    data.polygons.foreach_set("use_smooth", [True] * len(data.polygons))
    data.use_auto_smooth = True
    data.auto_smooth_angle = math.radians(smooth)
    data.validate()
    made = bpy.data.objects.new(name, data)
    bpy.context.scene.collection.objects.link(made)
    return made


def loft(name, rings, material, start_cap=True, end_cap=True, smooth=40):
    """Closed rings one over another; the first and last are capped. @returns (object, Surface)"""
    g = np.asarray(rings, float)
    rows, n = g.shape[:2]
    vertices = list(g.reshape(-1, 3))
    faces = []
    for k in range(rows - 1):
        for j in range(n):
            faces.append((k * n + j, k * n + (j + 1) % n, (k + 1) * n + (j + 1) % n, (k + 1) * n + j))
    for cap, k in ((start_cap, 0), (end_cap, rows - 1)):
        if not cap:
            continue
        middle = len(vertices)
        vertices.append(g[k].mean(0))
        for j in range(n):
            a, b = k * n + j, k * n + (j + 1) % n
            faces.append((middle, b, a) if k == 0 else (middle, a, b))
    around_mm = np.cumsum(np.linalg.norm(np.diff(g, axis=1, append=g[:, :1]), axis=-1), 1)
    widest = around_mm[np.argmax(around_mm[:, -1])]
    up_mm = np.cumsum(np.linalg.norm(np.diff(g, axis=0, prepend=g[:1]), axis=-1), 0)
    uvs = np.concatenate([np.stack([np.broadcast_to(widest, up_mm.shape), up_mm], -1).reshape(-1, 2), np.zeros((2, 2))])
    return mesh(name, vertices, faces, material, smooth, uvs[: len(vertices)]), Surface(g)


def sector(name, loops, material, smooth=35):
    """
    A piece between two cuts: the closed outline of its cross-section at each step of the way round.
    @param loops (steps, points, 3); the first and last become its two joint faces
    """
    g = np.asarray(loops, float)
    steps, n = g.shape[:2]
    faces = []
    for k in range(steps - 1):
        for j in range(n):
            faces.append((k * n + j, (k + 1) * n + j, (k + 1) * n + (j + 1) % n, k * n + (j + 1) % n))
    faces.append(tuple(range(n)))
    faces.append(tuple(reversed(range((steps - 1) * n, steps * n))))
    return mesh(name, g.reshape(-1, 3), faces, material, smooth)


def dome(height, rows, low=0.0, p=2.7, q=2.3):
    """(scale of the oval, height) from `low` mm up to the tip, for a crown with upright sides."""
    alpha = np.linspace(0, math.pi / 2, rows)
    s = np.cos(alpha) ** (2 / p)
    z = low + (height - low) * np.sin(alpha) ** (2 / q)
    return [(float(a), float(b)) for a, b in zip(s, z)]
