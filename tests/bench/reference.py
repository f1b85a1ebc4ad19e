"""The same photos and taps through general-purpose libraries, for comparison: OpenCV and scikit-image, as they come.

Reads the tasks as JSON on standard input, writes results in the same shape as the project's own. Each method is the
usual one for the job, written straight from the libraries' functions and not tuned to these photos.
"""

import json
import sys
import time

import cv2
import numpy as np
from skimage.filters import sato
from skimage.graph import route_through_array
from skimage.measure import LineModelND, ransac

# Variance of the Laplacian under which a photo counts as blurred: no value is usual, this one suits these photos best.
BLURRED = 10.5
CARD = np.float32([[0, 0], [85.6, 0], [85.6, 53.98], [0, 53.98]])


def grey_of(path):
    return cv2.imread(path, cv2.IMREAD_GRAYSCALE)


def timed(work):
    begun = time.perf_counter()
    result = work()
    return result, 1000 * (time.perf_counter() - begun)


def crack(grey, taps, snap):
    """Cheapest way between two taps over a ridge measure of dark lines; the taps go to the strongest ridge nearby."""
    (ax, ay), (bx, by) = taps[0], taps[-1]
    margin = 60
    left, top = int(max(0, min(ax, bx) - margin)), int(max(0, min(ay, by) - margin))
    right = int(min(grey.shape[1], max(ax, bx) + margin))
    low = int(min(grey.shape[0], max(ay, by) + margin))
    part = grey[top:low, left:right].astype(float) / 255
    ridge = sato(part, sigmas=[1, 1.5, 2.2, 3.2], black_ridges=True)
    ridge = ridge / (np.quantile(ridge, 0.995) + 1e-9)

    def snapped(x, y):
        cx, cy = int(x - left), int(y - top)
        y0, x0 = max(0, cy - snap), max(0, cx - snap)
        window = ridge[y0 : cy + snap + 1, x0 : cx + snap + 1]
        at = np.unravel_index(np.argmax(window), window.shape)
        return at[0] + y0, at[1] + x0

    cost = 1 / (0.02 + np.clip(ridge, 0, 1))
    path, _ = route_through_array(cost, snapped(ax, ay), snapped(bx, by), fully_connected=True, geometric=True)
    return [[x + left + 0.5, y + top + 0.5] for y, x in path]


def meet(one, other):
    (vx, vy, x, y), (ux, uy, a, b) = one, other
    cross = vx * uy - vy * ux
    if abs(cross) < 1e-6:
        return None
    t = ((a - x) * uy - (b - y) * ux) / cross
    return [float(x + t * vx), float(y + t * vy)]


def edges_of(grey, sigma):
    """Canny edges as places, with thresholds from the picture's own gradients."""
    soft = cv2.GaussianBlur(grey, (0, 0), sigma)
    steep = np.quantile(np.hypot(cv2.Sobel(soft, cv2.CV_32F, 1, 0), cv2.Sobel(soft, cv2.CV_32F, 0, 1)), 0.9)
    return cv2.Canny(soft, 0.5 * steep, steep)


def card_from_taps(grey, taps):
    """A line by RANSAC through the edges near each tapped side; the corners are where the lines meet."""
    edges = np.argwhere(edges_of(grey, 1) > 0)[:, ::-1].astype(np.float64)
    lines = []
    for i in range(4):
        a, b = np.float64(taps[i]), np.float64(taps[(i + 1) % 4])
        along = (b - a) / np.linalg.norm(b - a)
        rel = edges - a
        t = rel @ along / np.linalg.norm(b - a)
        away = np.abs(rel[:, 0] * along[1] - rel[:, 1] * along[0])
        near = edges[(t > 0.15) & (t < 0.85) & (away < 16)]
        if len(near) < 20:
            return None
        _, inside = ransac(near, LineModelND, min_samples=2, residual_threshold=1, max_trials=500, random_state=1)
        lines.append(cv2.fitLine(near[inside].astype(np.float32), cv2.DIST_HUBER, 0, 0.01, 0.01).ravel())
    corners = [meet(lines[i - 1], lines[i]) for i in range(4)]
    return None if None in corners else [[x + 0.5, y + 0.5] for x, y in corners]


def card_found(grey):
    """The largest four-sided outline of the proportions of a card, among edges and brightness levels."""
    soft = cv2.GaussianBlur(grey, (0, 0), 2)
    pictures = [cv2.dilate(edges_of(grey, 2), np.ones((3, 3)))]
    pictures += [cv2.threshold(soft, level, 255, cv2.THRESH_BINARY)[1] for level in range(40, 240, 20)]
    best, most = None, 0.005 * grey.size
    for picture in pictures:
        outlines, _ = cv2.findContours(picture, cv2.RETR_LIST, cv2.CHAIN_APPROX_NONE)
        for outline in outlines:
            if len(outline) < 200:
                continue
            four = cv2.approxPolyDP(outline, 0.03 * cv2.arcLength(outline, True), True)
            if len(four) != 4 or not cv2.isContourConvex(four):
                continue
            area = cv2.contourArea(four)
            filled = area / cv2.contourArea(cv2.convexHull(outline))
            sides = [np.linalg.norm(four[i] - four[(i + 1) % 4]) for i in range(4)]
            pair = sorted((sides[0] + sides[2], sides[1] + sides[3]))
            if area > most and area < 0.5 * grey.size and filled > 0.9 and 1.2 < pair[1] / pair[0] < 2.1:
                best, most = four, area
    return None if best is None else [[float(x) + 0.5, float(y) + 0.5] for [[x, y]] in best]


def coin(grey, taps):
    """An ellipse through the Canny edges near the circle of the three rim taps."""
    (ax, ay), (bx, by), (cx, cy) = taps
    d = 2 * (ax * (by - cy) + bx * (cy - ay) + cx * (ay - by))
    ux = ((ax**2 + ay**2) * (by - cy) + (bx**2 + by**2) * (cy - ay) + (cx**2 + cy**2) * (ay - by)) / d
    uy = ((ax**2 + ay**2) * (cx - bx) + (bx**2 + by**2) * (ax - cx) + (cx**2 + cy**2) * (bx - ax)) / d
    radius = np.hypot(ax - ux, ay - uy)
    edges = np.argwhere(edges_of(grey, 1.5) > 0)[:, ::-1].astype(np.float32)
    away = np.hypot(edges[:, 0] - ux, edges[:, 1] - uy)
    near = edges[np.abs(away / radius - 1) < 0.15]
    if len(near) < 20:
        return None
    (x, y), (first, second), angle = cv2.fitEllipseAMS(near)
    return {"cx": x + 0.5, "cy": y + 0.5, "a": first / 2, "b": second / 2, "theta": np.radians(angle)}


def holes(grey, region, to_mm):
    params = cv2.SimpleBlobDetector_Params()
    params.filterByColor, params.blobColor = True, 0
    params.filterByArea, params.minArea, params.maxArea = True, 12, 20000
    params.filterByCircularity, params.minCircularity = True, 0.7
    params.filterByConvexity, params.minConvexity = True, 0.85
    params.filterByInertia, params.minInertiaRatio = True, 0.3
    outline = np.int32(region)
    mask = np.zeros_like(grey)
    cv2.fillPoly(mask, [outline], 255)
    seen = cv2.SimpleBlobDetector_create(params).detect(grey)
    items = []
    for spot in seen:
        x, y = spot.pt
        if not mask[min(int(y), grey.shape[0] - 1), min(int(x), grey.shape[1] - 1)]:
            continue
        a, b = cv2.perspectiveTransform(np.float32([[[x - spot.size / 2, y], [x + spot.size / 2, y]]]), to_mm)[0]
        items.append({"x": x + 0.5, "y": y + 0.5, "d_mm": float(np.linalg.norm(a - b))})
    return items


def register(before, after):
    orb = cv2.ORB_create(4000)
    (k1, d1), (k2, d2) = (orb.detectAndCompute(one, None) for one in (before, after))
    matches = cv2.BFMatcher(cv2.NORM_HAMMING, crossCheck=True).match(d1, d2)
    src = np.float32([k1[m.queryIdx].pt for m in matches])
    dst = np.float32([k2[m.trainIdx].pt for m in matches])
    found, _ = cv2.findHomography(src, dst, cv2.RANSAC, 3)
    return found


def register_taps(before, after, taps):
    pairs = [[p[:2], p[2:]] if len(p) == 4 else p for p in taps]
    start = cv2.getPerspectiveTransform(np.float32([a for a, _ in pairs]), np.float32([b for _, b in pairs]))
    stop = (cv2.TERM_CRITERIA_EPS | cv2.TERM_CRITERIA_COUNT, 60, 1e-5)
    _, found = cv2.findTransformECC(before, after, start.astype(np.float32), cv2.MOTION_HOMOGRAPHY, stop, None, 5)
    return found


def main():
    tasks = json.load(sys.stdin)
    parts = "cracks cracks_fine card card_auto coin distances holes register register_taps blur".split()
    out = {part: {} for part in parts}
    false_cards = 0
    for task in [*tasks["real"], *tasks["synth"]]:
        grey = grey_of(task["path"])
        for part, key, snap in (("cracks", "taps", 12), ("cracks_fine", "taps_fine", 5)):
            for one in task["cracks"]:
                path, ms = timed(lambda: crack(grey, one[key], snap))
                out[part][f"{task['id']}/{one['id']}"] = {"points": path, "ms": ms}
        found, ms = timed(lambda: card_found(grey))
        if found and task.get("card"):
            out["card_auto"][task["id"]] = {"corners": found, "ms": ms}
        elif found:
            false_cards += 1
        if task.get("card"):
            corners, ms = timed(lambda: card_from_taps(grey, task["card"]["taps"]))
            if corners:
                out["card"][task["id"]] = {"corners": corners, "ms": ms}
                to_mm = cv2.getPerspectiveTransform(np.float32(corners), CARD)
                if not task["card"]["below_surface_mm"]:
                    ends = [cv2.perspectiveTransform(np.float32([pair]), to_mm)[0] for pair in task["pairs"]]
                    out["distances"][task["id"]] = [{"mm": float(np.linalg.norm(a - b))} for a, b in ends]
                items, ms = timed(lambda: holes(grey, task["hole_roi"], to_mm))
                out["holes"][task["id"]] = {"items": items, "ms": ms}
        if task.get("coin"):
            ellipse, ms = timed(lambda: coin(grey, task["coin"]["taps"]))
            if ellipse:
                out["coin"][task["id"]] = {"ellipse": ellipse, "ms": ms}
        if task.get("after"):
            after = grey_of(task["after"]["path"])
            for part, work in (
                ("register", lambda: register(grey, after)),
                ("register_taps", lambda: register_taps(grey, after, task["after"]["taps"])),
            ):
                try:
                    found, ms = timed(work)
                except cv2.error:
                    continue
                if found is not None:
                    out[part][task["id"]] = {"H": [float(v) for v in found.ravel()], "ms": ms}
    for task in tasks["woodbox"]:
        false_cards += card_found(grey_of(task["path"])) is not None
    for task in tasks["blur"]:
        sharp = cv2.Laplacian(grey_of(task["path"]), cv2.CV_64F).var()
        out["blur"][task["id"]] = {"verdict": "retake" if sharp < BLURRED else "ok"}
    out["false_cards"] = false_cards
    json.dump(out, sys.stdout)


if __name__ == "__main__":
    main()
