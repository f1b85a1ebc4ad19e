"""
Renders the photographs of the example sale.
    blender -b -t 1 -P tests/render/render.py -- [--only L01,L04/back] [--preview] [--out DIR]
Each picture has its seed in its name's checksum, so it comes out the same again with the same Blender.
"""

import argparse
import json
import os
import sys
import tempfile
import time
import zlib

HERE = os.path.dirname(os.path.abspath(__file__))
sys.path.insert(0, HERE)

from kit import camera, develop, stage  # noqa: E402
from lots import SHOTS  # noqa: E402

TRUTH = os.path.join(HERE, "truth.json")


def places(known):
    """Where what is known of a scene lies in the picture, as shares of its width and height."""
    found = {}
    for key, spots in known.items():
        seen = [camera.in_picture(p) for p in spots]
        if key in ("holes", "pins"):
            seen = [(u, v) for u, v, clear in seen if clear]
        found[key] = [[round(s[0], 5), round(s[1], 5)] for s in seen]
    return found


def remember(name, known):
    truth = json.load(open(TRUTH)) if os.path.exists(TRUTH) else {}
    truth[name] = {"focal35": round(float(camera.focal()), 2), **known}
    with open(TRUTH, "w") as file:
        rows = (f"  {json.dumps(k)}: {json.dumps(v)}" for k, v in sorted(truth.items()))
        file.write("{\n" + ",\n".join(rows) + "\n}\n")


def main():
    asked = argparse.ArgumentParser()
    asked.add_argument("--only", default="")
    asked.add_argument("--preview", action="store_true")
    asked.add_argument("--truth", action="store_true", help="only say where known places lie; render nothing")
    asked.add_argument("--samples", type=int, default=0)
    asked.add_argument("--out", default=os.path.join(HERE, "..", "..", "public", "example"))
    options = asked.parse_args(sys.argv[sys.argv.index("--") + 1 :] if "--" in sys.argv else [])
    only = [o for o in options.only.split(",") if o]
    width, height = (400, 300) if options.preview else (1280, 960)
    samples = options.samples or (6 if options.preview else 5)
    os.makedirs(options.out, exist_ok=True)
    for name, scene in SHOTS.items():
        if only and not any(name == o or name.startswith(f"{o}-") for o in only):
            continue
        begun = time.time()
        seed = zlib.crc32(name.encode())
        stage.clear()
        made = scene() or {}
        camera.settings(width, height, samples, seed % 65536)
        known = places({**stage.references(), **made.pop("known", {})})
        if not options.preview:
            remember(name, known)
        if options.truth:
            continue
        with tempfile.TemporaryDirectory() as folder:
            passes = camera.shoot(width, height, samples, seed % 65536, folder)
        rendered = time.time()
        pixels = develop.phone(develop.picture(passes), seed, **made)
        data, quality = develop.jpeg(pixels)
        with open(os.path.join(options.out, f"{name}.jpg"), "wb") as file:
            file.write(data)
        print(f"{name}: {len(data)} bytes, quality {quality}, {rendered - begun:.0f} s rendered, {time.time() - rendered:.0f} s developed", flush=True)


main()
