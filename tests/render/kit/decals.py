"""
What is stamped, pencilled, painted or stained on a block: drawn flat in millimetres, laid on it from one side.
A decal lies in the x–y plane of an empty and reaches `depth` mm to either side of it.
"""

import os

import bpy
import numpy as np
from mathutils import Matrix, Vector
from PIL import Image, ImageDraw, ImageFilter, ImageFont

FONTS = {
    "serif": "DejaVuSerif-Bold.ttf",
    "sans": "DejaVuSans-Bold.ttf",
    "plain": "DejaVuSans.ttf",
    "hand": "Z003-MediumItalic.otf",
    "typed": "DejaVuSansMono.ttf",
}
PLACES = ("/usr/share/fonts/truetype/dejavu", "/usr/share/fonts/opentype/urw-base35")


def font(which, size):
    for place in PLACES:
        path = os.path.join(place, FONTS[which])
        if os.path.exists(path):
            return ImageFont.truetype(path, size)
    raise FileNotFoundError(f"No font file {FONTS[which]}; install fonts-dejavu-core and fonts-urw-base35.")


class Sheet:
    """A drawing of w × h mm, origin at its middle, y upwards: how much of the ink lies where, 0 to 1."""

    def __init__(self, w, h, per_mm=14):
        self.w, self.h, self.per_mm = w, h, per_mm
        self.image = Image.new("L", (round(w * per_mm), round(h * per_mm)), 0)
        self.pen = ImageDraw.Draw(self.image)

    def _px(self, x, y):
        return ((x + self.w / 2) * self.per_mm, (self.h / 2 - y) * self.per_mm)

    def text(self, words, x, y, tall, which="serif", turn=0.0, ink=255):
        """Letters whose capitals are about `tall` mm high, middle at x, y."""
        face = font(which, round(tall * self.per_mm / 0.72))
        box = face.getbbox(words)
        layer = Image.new("L", (box[2] - box[0] + 40, box[3] - box[1] + 40), 0)
        ImageDraw.Draw(layer).text((20 - box[0], 20 - box[1]), words, font=face, fill=ink)
        layer = layer.rotate(turn, expand=True, resample=Image.BICUBIC)
        px, py = self._px(x, y)
        self.image.paste(255, (round(px - layer.width / 2), round(py - layer.height / 2)), layer)
        return self

    def line(self, points, width, ink=255):
        self.pen.line([self._px(*p) for p in points], fill=ink, width=max(1, round(width * self.per_mm)), joint="curve")
        return self

    def oval(self, x, y, w, h, width, ink=255):
        (x0, y0), (x1, y1) = self._px(x - w / 2, y + h / 2), self._px(x + w / 2, y - h / 2)
        self.pen.ellipse((x0, y0, x1, y1), outline=ink, width=max(1, round(width * self.per_mm)))
        return self

    def blob(self, x, y, w, h, ink=255):
        (x0, y0), (x1, y1) = self._px(x - w / 2, y + h / 2), self._px(x + w / 2, y - h / 2)
        self.pen.ellipse((x0, y0, x1, y1), fill=ink)
        return self

    def soft(self, mm):
        return np.asarray(self.image.filter(ImageFilter.GaussianBlur(mm * self.per_mm)), np.float32) / 255

    def sharp(self):
        return np.asarray(self.image, np.float32) / 255


def speckle(shape, seed, size, low=0.0):
    """Uneven ink: smooth chance between `low` and 1, in patches of about `size` px."""
    rng = np.random.default_rng(seed)
    small = rng.random((max(2, shape[0] // size), max(2, shape[1] // size)))
    image = Image.fromarray((small * 255).astype(np.uint8)).resize((shape[1], shape[0]), Image.BICUBIC)
    return low + (1 - low) * np.asarray(image, np.float32) / 255


def cloud(w, h, seed, per_mm=3.0, octaves=4):
    """A field of even noise, about 0 to 1, for stains."""
    shape = (round(h * per_mm), round(w * per_mm))
    total, share = np.zeros(shape, np.float32), 0.0
    for octave in range(octaves):
        weight = 0.55**octave
        total += weight * speckle(shape, seed + octave, max(2, int(min(shape) / (2.2 * 2**octave))))
        share += weight
    return total / share


def faded(field, margin=0.3):
    """The same going to nothing towards an oval inside its borders."""
    rows, columns = field.shape
    y, x = np.mgrid[-1 : 1 : rows * 1j, -1 : 1 : columns * 1j]
    return field * np.clip((1 - np.hypot(x, y)) / margin, 0, 1).astype(np.float32)


class Decal:
    """
    @param ink how much of `colour` covers the wood, (rows, columns) 0–1
    @param deep how deep it is pressed in, mm, same shape or None
    @param colour linear light; or an image of it (rows, columns, 3)
    """

    def __init__(self, name, w, h, ink, colour, deep=None, depth=12.0, rough=None):
        rows, columns = ink.shape
        pixels = np.ones((rows, columns, 4), np.float32)
        pixels[..., :3] = colour
        self.image = self._image(f"{name} ink", pixels)
        # The ink's share travels in an image of its own: Blender would multiply it into the colour.
        share = np.zeros((rows, columns, 4), np.float32)
        share[..., 0] = ink
        share[..., 1] = deep if deep is not None else 0
        share[..., 3] = 1
        self.share = self._image(f"{name} share", share)
        self.has_depth, self.rough = deep is not None, rough
        self.empty = bpy.data.objects.new(name, None)
        bpy.context.scene.collection.objects.link(self.empty)
        self.size = (w, h, depth)
        self.at((0, 0, 0))

    @staticmethod
    def _image(name, pixels):
        rows, columns, _ = pixels.shape
        image = bpy.data.images.new(name, columns, rows, float_buffer=True, is_data=True)
        image.pixels.foreach_set(np.ascontiguousarray(pixels[::-1]).ravel())
        return image

    def at(self, middle, facing=(0, 0, 1), up=(0, 1, 0), parent=None):
        """Lays it with its middle at a place, readable from where it faces, `up` upwards."""
        z = Vector(facing).normalized()
        x = Vector(up).cross(z).normalized()
        turn = Matrix((x, z.cross(x), z)).transposed().to_4x4()
        w, h, depth = self.size
        local = Matrix.Translation(Vector(middle)) @ turn @ Matrix.Diagonal((w, h, depth, 1))
        if parent:
            self.empty.parent = parent
            self.empty.matrix_parent_inverse = Matrix()
            self.empty.matrix_basis = local
        else:
            self.empty.matrix_world = local
        return self

    def lay(self, tree, colour, height, rough):
        x, y, z = tree.split(tree.place(self.empty))
        uv = tree.join(tree.math("ADD", x, 0.5), tree.math("ADD", y, 0.5), 0.0)
        share = tree.node("ShaderNodeTexImage", {0: uv}, image=self.share, extension="CLIP").outputs[0]
        ink = tree.node("ShaderNodeTexImage", {0: uv}, image=self.image, extension="EXTEND").outputs[0]
        near = tree.math("LESS_THAN", tree.math("ABSOLUTE", z), 1.0)
        r, g, _ = tree.node("ShaderNodeSeparateColor", {0: share}).outputs
        here = tree.math("MULTIPLY", r, near)
        colour = tree.mix(here, colour, ink)
        if self.has_depth:
            height = tree.math("SUBTRACT", height, tree.math("MULTIPLY", g, near))
        if self.rough is not None:
            rough = tree.math("MULTIPLY_ADD", here, tree.math("SUBTRACT", self.rough, rough), rough)
        return colour, height, rough


def struck(name, sheet, seed, deep=0.45, legible=1.0):
    """A steel stamp driven into the wood: dark in the bottom, worn where `legible` is below 1."""
    ink = sheet.soft(0.09)
    worn = np.clip(speckle(ink.shape, seed, 60) * 1.6 - (1 - legible) * 1.3, 0, 1) if legible < 1 else 1.0
    return Decal(name, sheet.w, sheet.h, ink * 0.62 * worn, (0.07, 0.04, 0.02), ink * deep * worn)


def pencilled(name, sheet, seed, colour=(0.07, 0.07, 0.075), strength=0.75):
    """Pencil or chalk: skips the hollows of the fibre."""
    ink = sheet.soft(0.06)
    return Decal(name, sheet.w, sheet.h, ink * strength * speckle(ink.shape, seed, 4, 0.45), colour)


def painted(name, sheet, seed, colour, strength=0.92):
    ink = sheet.soft(0.12)
    return Decal(name, sheet.w, sheet.h, np.clip(ink * 1.3, 0, 1) * strength * speckle(ink.shape, seed, 9, 0.6), colour)
