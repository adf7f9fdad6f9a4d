"""A portrait as glTF 2.0 in one binary file (.glb; Khronos, ISO/IEC 12113), for other tools.

In metres, as the standard requires; y up, so that a piece lying flat faces a viewer looking along −z. One
mesh a strand, named after its band; one material a tint.
"""

from __future__ import annotations

import json
import struct
from typing import Any

import numpy as np

from pegwright import __version__
from pegwright.lesson import Portrait
from pegwright.press.portrait.tubes import linear_rgb, smooth, tube_mesh

_SIDES = 10
_ARM_SIDES = 64
_FLOAT, _SHORT, _INT = 5126, 5123, 5125  # component types
_CORNERS, _TRIANGLES = 34962, 34963  # buffer view targets
_MM = 1e-3


def portrait_glb(portrait: Portrait, *, sides: int = _SIDES) -> bytes:
    """Return the piece as a .glb. The same portrait gives the same bytes.

    Raises:
        ValueError: `sides` is less than three.
    """
    if sides < 3:
        raise ValueError("a tube has three sides or more")
    blob = bytearray()
    views: list[dict[str, Any]] = []
    accessors: list[dict[str, Any]] = []

    def store(data: bytes, target: int, **about: Any) -> int:
        blob.extend(b"\0" * (-len(blob) % 4))
        views.append({"buffer": 0, "byteOffset": len(blob), "byteLength": len(data), "target": target})
        blob.extend(data)
        accessors.append({"bufferView": len(views) - 1, **about})
        return len(accessors) - 1

    tints = sorted({(tube.kind, tube.tint) for tube in portrait.tubes})
    meshes: list[dict[str, Any]] = []
    nodes: list[dict[str, Any]] = []
    for tube in portrait.tubes:
        wrist = tube.kind == "wrist"
        skin = tube_mesh(smooth(tube, 1), _ARM_SIDES if wrist else sides)
        corners = (skin.corners * _MM).astype("<f4")
        large = len(corners) > 65535
        name = "wrist" if wrist else f"{tube.kind} {tube.number} {tube.letter}".strip()
        position = store(
            corners.tobytes(),
            _CORNERS,
            componentType=_FLOAT,
            count=len(corners),
            type="VEC3",
            min=[float(v) for v in corners.min(axis=0)],
            max=[float(v) for v in corners.max(axis=0)],
        )
        normal = store(
            skin.normals.astype("<f4").tobytes(),
            _CORNERS,
            componentType=_FLOAT,
            count=len(corners),
            type="VEC3",
        )
        indices = store(
            skin.triangles.astype("<u4" if large else "<u2").tobytes(),
            _TRIANGLES,
            componentType=_INT if large else _SHORT,
            count=int(skin.triangles.size),
            type="SCALAR",
        )
        primitive = {
            "attributes": {"POSITION": position, "NORMAL": normal},
            "indices": indices,
            "material": tints.index((tube.kind, tube.tint)),
        }
        nodes.append({"mesh": len(meshes), "name": name, "extras": {"colour": tube.name}})
        meshes.append({"name": name, "primitives": [primitive]})
    blob.extend(b"\0" * (-len(blob) % 4))
    document = {
        "asset": {"version": "2.0", "generator": f"pegwright {__version__}"},
        "scene": 0,
        "scenes": [{"name": portrait.title, "nodes": list(range(len(nodes)))}],
        "nodes": nodes,
        "meshes": meshes,
        "materials": [_material(kind, tint) for kind, tint in tints],
        "accessors": accessors,
        "bufferViews": views,
        "buffers": [{"byteLength": len(blob)}],
    }
    text = json.dumps(document, ensure_ascii=False, separators=(",", ":")).encode()
    text += b" " * (-len(text) % 4)
    size = 12 + 8 + len(text) + 8 + len(blob)
    return b"".join(
        (
            struct.pack("<4sII", b"glTF", 2, size),
            struct.pack("<I4s", len(text), b"JSON"),
            text,
            struct.pack("<I4s", len(blob), b"BIN\0"),
            bytes(blob),
        )
    )


def _material(kind: str, tint: str) -> dict[str, Any]:
    metal = kind == "fastener"
    return {
        "name": f"{kind} {tint}",
        "pbrMetallicRoughness": {
            "baseColorFactor": [*(round(float(v), 6) for v in np.asarray(linear_rgb(tint))), 1.0],
            "metallicFactor": 0.6 if metal else 0.0,
            "roughnessFactor": 0.35 if metal else 0.45 if kind == "band" else 0.9,
        },
    }
