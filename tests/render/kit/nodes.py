"""Shader nodes with the look of plain sums: every helper adds one node and hands back its output socket."""

import bpy


class Tree:
    """A material's node tree being built. Lengths in it are millimetres, as everywhere in these scenes."""

    def __init__(self, name):
        self.material = bpy.data.materials.new(name)
        self.material.use_nodes = True
        self.nodes = self.material.node_tree.nodes
        self.links = self.material.node_tree.links
        self.nodes.clear()

    def _put(self, socket, value):
        if isinstance(value, bpy.types.NodeSocket):
            self.links.new(value, socket)
        elif isinstance(value, tuple) and socket.type == "RGBA" and len(value) == 3:
            socket.default_value = (*value, 1.0)
        else:
            socket.default_value = value

    def node(self, kind, inputs=None, **settings):
        made = self.nodes.new(kind)
        for key, value in settings.items():
            setattr(made, key, value)
        for key, value in (inputs or {}).items():
            self._put(made.inputs[key], value)
        return made

    def math(self, operation, a, b=0.0, c=None, clamp=False):
        made = self.node("ShaderNodeMath", {0: a, 1: b}, operation=operation, use_clamp=clamp)
        if c is not None:
            self._put(made.inputs[2], c)
        return made.outputs[0]

    def vector(self, operation, a, b=(0, 0, 0)):
        made = self.node("ShaderNodeVectorMath", {0: a, 1: b}, operation=operation)
        return made.outputs["Value" if operation in ("LENGTH", "DOT_PRODUCT") else "Vector"]

    def split(self, vector):
        return tuple(self.node("ShaderNodeSeparateXYZ", {0: vector}).outputs)

    def join(self, x, y, z):
        return self.node("ShaderNodeCombineXYZ", {0: x, 1: y, 2: z}).outputs[0]

    def noise(self, vector, scale, detail=2.0, roughness=0.5):
        """Between about 0.25 and 0.75, even in the middle. `scale` in waves per mm."""
        made = self.node("ShaderNodeTexNoise", {"Vector": vector, "Scale": scale, "Detail": detail, "Roughness": roughness})
        return made.outputs["Fac"]

    def chance(self, vector):
        """A colour that is the same for the same place and otherwise by chance."""
        return self.node("ShaderNodeTexWhiteNoise", {"Vector": vector}, noise_dimensions="3D").outputs["Color"]

    def ramp(self, value, stops):
        made = self.node("ShaderNodeValToRGB", {0: value})
        elements = made.color_ramp.elements
        while len(elements) < len(stops):
            elements.new(0.5)
        for element, (at, colour) in zip(elements, stops):
            element.position = at
            element.color = (*colour, 1.0)
        return made.outputs[0]

    def mix(self, share, a, b, blend="MIX"):
        return self.node("ShaderNodeMixRGB", {0: share, 1: a, 2: b}, blend_type=blend).outputs[0]

    def range(self, value, low, high, to_low=0.0, to_high=1.0):
        inputs = {0: value, 1: low, 2: high, 3: to_low, 4: to_high}
        return self.node("ShaderNodeMapRange", inputs, interpolation_type="SMOOTHSTEP").outputs[0]

    def place(self, empty=None, which="Object"):
        """Coordinates of the object itself, or of an empty laid somewhere."""
        made = self.node("ShaderNodeTexCoord")
        if empty:
            made.object = empty
        return made.outputs[which]

    def bump(self, height, strength=1.0, after=None):
        inputs = {"Height": height, "Strength": strength, "Distance": 1.0}
        if after:
            inputs["Normal"] = after
        return self.node("ShaderNodeBump", inputs).outputs[0]

    def finish(self, colour, roughness, normal=None, metallic=0.0, specular=0.35, sheen=0.0):
        inputs = {"Base Color": colour, "Roughness": roughness, "Metallic": metallic, "Specular": specular, "Sheen": sheen}
        if normal:
            inputs["Normal"] = normal
        shader = self.node("ShaderNodeBsdfPrincipled", inputs)
        out = self.node("ShaderNodeOutputMaterial")
        self.links.new(shader.outputs[0], out.inputs[0])
        return self.material


def plain(name, colour, roughness=0.6, metallic=0.0, specular=0.35):
    """One even colour."""
    return Tree(name).finish(colour, roughness, metallic=metallic, specular=specular)


def spotted(name, roughness=0.8):
    """Takes its colour from the mesh's own vertex colours, called `tint`."""
    tree = Tree(name)
    colour = tree.node("ShaderNodeVertexColor", layer_name="tint").outputs[0]
    return tree.finish(colour, roughness, specular=0.1)
