"""The phone: where it is held, what Cycles hands over, and where known places come to lie in the picture."""

import math
import os

import bpy
import numpy as np
from bpy_extras.object_utils import world_to_camera_view
from mathutils import Vector

PASSES = {
    "image": None,
    "diffuse": ("DiffDir", "DiffInd"),
    "albedo": ("DiffCol",),
    "gloss": ("GlossDir", "GlossInd"),
    "sheen": ("GlossCol",),
    "normal": ("Normal",),
    "depth": ("Depth",),
}


def hold(eye, target, zoom=1.0, roll=0.0, f_number=7.0, focus=None):
    """
    @param zoom 1 is a phone's usual lens, 26 mm as 35 mm equivalent @param focus what is sharp; None takes the target
    The sensor's width is that of 4:3 on a full frame's diagonal, so that `lens` is the equivalent itself.
    """
    camera = bpy.data.cameras.new("phone")
    camera.sensor_fit, camera.sensor_width = "HORIZONTAL", 43.267 * 0.8
    camera.lens = 26 * zoom
    camera.clip_start, camera.clip_end = 10, 20000
    made = bpy.data.objects.new("phone", camera)
    made.location = eye
    turn = (Vector(target) - Vector(eye)).to_track_quat("-Z", "Y")
    made.rotation_mode = "QUATERNION"
    made.rotation_quaternion = turn @ Vector((0, 0, 1)).rotation_difference(Vector((0, 0, 1)))
    if roll:
        made.rotation_quaternion = turn @ __import__("mathutils").Quaternion((0, 0, 1), math.radians(roll))
    camera.dof.use_dof = True
    camera.dof.focus_distance = (Vector(focus or target) - Vector(eye)).length
    # A phone's real lens is 5.4 mm long: its depth of field is that of f/14 or so on a full frame. Scene units are mm.
    camera.dof.aperture_fstop = f_number * 26 / 5.4 / zoom * 0.001
    bpy.context.scene.collection.objects.link(made)
    bpy.context.scene.camera = made
    bpy.context.view_layer.update()
    return made


def settings(width, height, samples, seed):
    scene = bpy.context.scene
    scene.render.engine = "CYCLES"
    cycles = scene.cycles
    cycles.device, cycles.samples, cycles.seed = "CPU", samples, seed
    cycles.use_adaptive_sampling, cycles.use_denoising = True, False
    # Flat cloth is done after four; edges and weaves get the rest.
    cycles.adaptive_min_samples, cycles.adaptive_threshold = 4, 0.12
    cycles.max_bounces, cycles.diffuse_bounces, cycles.glossy_bounces, cycles.transmission_bounces = 3, 2, 2, 0
    cycles.caustics_reflective = cycles.caustics_refractive = False
    cycles.sample_clamp_indirect, cycles.blur_glossy = 4.0, 1.0
    cycles.use_fast_gi = False
    scene.render.resolution_x, scene.render.resolution_y, scene.render.resolution_percentage = width, height, 100
    scene.render.threads_mode, scene.render.threads = "FIXED", 1
    scene.view_settings.view_transform = "Raw"
    scene.render.use_persistent_data = False


def shoot(width, height, samples, seed, folder):
    """Renders. @returns {pass: (rows, columns, 3)} in linear light, top row first"""
    settings(width, height, samples, seed)
    scene = bpy.context.scene
    layer = scene.view_layers[0]
    layer.use_pass_z = layer.use_pass_normal = True
    layer.use_pass_diffuse_direct = layer.use_pass_diffuse_indirect = layer.use_pass_diffuse_color = True
    layer.use_pass_glossy_direct = layer.use_pass_glossy_indirect = layer.use_pass_glossy_color = True
    scene.use_nodes = True
    nodes, links = scene.node_tree.nodes, scene.node_tree.links
    nodes.clear()
    source = nodes.new("CompositorNodeRLayers")
    files = nodes.new("CompositorNodeOutputFile")
    files.base_path = folder
    files.format.file_format, files.format.color_depth = "OPEN_EXR", "32"
    files.file_slots.clear()
    names = [part for parts in PASSES.values() for part in (parts or ("Image",))]
    for name in names:
        files.file_slots.new(name)
        links.new(source.outputs[name], files.inputs[name])
    bpy.ops.render.render()
    read = {name: _read(os.path.join(folder, f"{name}{scene.frame_current:04d}.exr")) for name in names}
    return {key: sum(read[part] for part in (parts or ("Image",))) for key, parts in PASSES.items()}


def _read(path):
    image = bpy.data.images.load(path)
    image.colorspace_settings.name = "Raw"
    w, h = image.size
    pixels = np.empty(w * h * 4, np.float32)
    image.pixels.foreach_get(pixels)
    bpy.data.images.remove(image)
    os.remove(path)
    return pixels.reshape(h, w, 4)[::-1, :, :3].copy()


def focal():
    """Focal length as 35 mm equivalent."""
    return bpy.context.scene.camera.data.lens


def in_picture(place):
    """Share across and down, and whether nothing lies between the lens and the place."""
    scene = bpy.context.scene
    camera = scene.camera
    place = Vector(place)
    u, v, d = world_to_camera_view(scene, camera, place)
    inside = 0 <= u <= 1 and 0 <= v <= 1 and d > 0
    if not inside:
        return float(u), float(1 - v), False
    way = place - camera.location
    hit, where, *_ = scene.ray_cast(bpy.context.evaluated_depsgraph_get(), camera.location, way.normalized(), distance=way.length + 5)
    return float(u), float(1 - v), (not hit) or (Vector(where) - place).length < 1.0
