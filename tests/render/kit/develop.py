"""From rendered light to a phone's JPEG: noise taken out of the light but not of the wood, then a phone's own look."""

import io

import numpy as np
from PIL import Image
from scipy import ndimage

def smooth_light(light, normal, depth, steps=4, edge=0.12):
    """
    Light without its sampling noise: wavelets with holes, stopped where normal or depth change.
    Source: Dammertz et al. 2010, edge-avoiding à-trous wavelet transform (from memory).
    """
    out = light.astype(np.float32)
    near = (1 / np.maximum(depth[..., 0], 1.0)).astype(np.float32)
    for step in range(steps):
        gap = 2**step
        bright = out.mean(-1)
        total, weight = out.copy(), np.ones(bright.shape, np.float32)
        spread = 0.9 * 0.6**step
        for dy in (-gap, 0, gap):
            for dx in (-gap, 0, gap):
                if dy == dx == 0:
                    continue
                turn = 1 - np.einsum("ijk,ijk->ij", normal, _shift(normal, dy, dx))
                far = np.abs(_shift(near, dy, dx) / near - 1)
                differs = np.abs(_shift(bright, dy, dx) - bright) / (bright + 0.02)
                share = 0.5 if dx == 0 or dy == 0 else 0.25
                w = share * np.exp(-np.maximum(turn, 0) / edge**2 - far / 0.02 - differs / spread)
                total += w[..., None] * _shift(out, dy, dx)
                weight += w
        out = total / weight[..., None]
    return out


def _shift(a, dy, dx):
    """The neighbour's value; at the border the other side's, which depth or normal then shut out."""
    return np.roll(a, (-dy, -dx), (0, 1))


def picture(passes):
    """The smoothed picture in linear light."""
    normal, depth = passes["normal"], passes["depth"]
    diffuse = smooth_light(passes["diffuse"], normal, depth)
    gloss = smooth_light(passes["gloss"], normal, depth, steps=2)
    made = diffuse * passes["albedo"] + gloss * passes["sheen"]
    left = passes["image"] - passes["diffuse"] * passes["albedo"] - passes["gloss"] * passes["sheen"]
    return np.maximum(made + np.where(np.abs(left) > 0.05, left, 0), 0)


def curve(x):
    """A phone's tone curve: a soft shoulder, then a little more contrast. Linear light in, display values out."""
    x = np.clip(1 - np.exp(-1.25 * x), 0, 1) * 1.06
    shown = np.where(x <= 0.0031308, 12.92 * x, 1.055 * np.maximum(x, 1e-6) ** (1 / 2.4) - 0.055)
    return np.clip(shown - 0.045 * np.sin(2 * np.pi * np.clip(shown, 0, 1)), 0, 1)


def phone(linear, seed, expose=1.0, white=(1.0, 1.0, 1.0)):
    """Exposes to the scene, balances, vignettes, sharpens a little too much, adds a small sensor's grain. @returns uint8"""
    rng = np.random.default_rng(seed)
    h, w = linear.shape[:2]
    luma = linear @ np.array([0.2126, 0.7152, 0.0722], np.float32)
    middle = np.exp(np.mean(np.log(np.clip(luma, 1e-3, None))))
    gain = expose * 0.26 / max(0.5 * middle + 0.5 * np.percentile(luma, 92) * 0.55, 1e-4)
    y, x = np.mgrid[0:h, 0:w].astype(np.float32)
    r2 = ((x / w - 0.5) ** 2 + (0.75 * (y / h - 0.5)) ** 2) / 0.39
    light = linear * gain * np.asarray(white, np.float32) * (1 - 0.30 * r2)[..., None]
    # Shot noise grows with the root of the light; colour noise is blotchier than luminance noise.
    scale = w / 1280
    fine = ndimage.gaussian_filter(rng.standard_normal((h, w)).astype(np.float32), 0.6 * scale)
    blotch = ndimage.gaussian_filter(rng.standard_normal((h, w, 3)).astype(np.float32), (2.2 * scale, 2.2 * scale, 0))
    light = np.maximum(light + np.sqrt(light + 0.002) * (0.016 * fine[..., None] + 0.022 * blotch), 0)
    shown = curve(light)
    soft = ndimage.gaussian_filter(shown, (1.1 * scale, 1.1 * scale, 0))
    return (np.clip(shown + 0.35 * (shown - soft), 0, 1) * 255 + 0.5).astype(np.uint8)


def jpeg(pixels, most=60_000):
    """
    The best quality that fits, at most a phone's usual; without metadata. A weave that would come out in blocks is made
    smaller rather than worse. @returns bytes, quality
    """
    image = Image.fromarray(pixels)
    for share in (1.0, 0.85, 0.72, 0.6):
        size = (round(image.width * share), round(image.height * share))
        smaller = image if share == 1 else image.resize(size, Image.LANCZOS)
        for quality in range(86, 42, -2):
            out = io.BytesIO()
            smaller.save(out, "JPEG", quality=quality, optimize=True, progressive=True, subsampling=2)
            if out.tell() <= most:
                return out.getvalue(), quality
    raise ValueError(f"Still over {most} bytes at 60 % of its size.")
