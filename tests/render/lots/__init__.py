"""Every photograph: name → a function that sets the scene, holds the camera and says what is known of it."""

from . import beret, board, box, cloche, crown, dipped, fedora, pans, toque, turban

LOTS = (crown, beret, board, cloche, toque, fedora, turban, pans, dipped, box)
SHOTS = {name: scene for lot in LOTS for name, scene in lot.SHOTS.items()}
