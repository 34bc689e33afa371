"""The solid that is exported for printing, as a mesh program reads it.

    python assets/reference/exported_solid.py path/to/backlift > assets/reference/exported_solid.json

Runs `backlift shape --out` on the built-in described bat, with what `sets` puts over it, and lets trimesh
read the STL (millimetres), part it into bodies and integrate each. An STL knows no weight: every figure is
that of one stuff of density 1, body by body, so that what is compared is the outline.
"""

import json
import pathlib
import subprocess
import sys
import tempfile

import numpy as np
import trimesh

CASES = {
    "as described": [],
    "bare handle": ["handle.grips=0", "handle.twine=none", "handle.diameter=30 mm"],
    "two grips, no toe guard": ["handle.grips=2", "extras.toe_guard=none"],
}


def exported(backlift, sets):
    """The STL as trimesh reads it."""
    with tempfile.TemporaryDirectory() as folder:
        given = [argument for it in sets for argument in ("--set", it)]
        command = [backlift, "shape", "--out", folder, *given]
        subprocess.run(command, check=True, stdout=subprocess.DEVNULL)
        return trimesh.load(pathlib.Path(folder) / "bat.stl", file_type="stl")


def body(mesh):
    """Volume, centre and moments of the body as it stands, in metres."""
    mesh.density = 1.0
    flat = mesh.area_faces <= 0.0
    return {
        "watertight": bool(mesh.is_watertight and mesh.is_winding_consistent and not flat.any()),
        "triangles": len(mesh.faces),
        "volume_m3": float(mesh.volume) * 1e-9,
        "com_m": [float(v) * 1e-3 for v in mesh.center_mass],
        "inertia_m5": [[float(v) * 1e-15 for v in row] for row in mesh.moment_inertia],
    }


def case(backlift, name, sets):
    """Both bodies, from the toe to the top: blade, handle."""
    whole = exported(backlift, sets)
    bodies = sorted(whole.split(only_watertight=False), key=lambda it: -it.center_mass[0])
    assert sum(len(it.faces) for it in bodies) == len(whole.faces), "triangles are lost"
    return {"name": name, "sets": sets, "bodies": [body(it) for it in bodies]}


print(
    json.dumps(
        {
            "made_by": "assets/reference/exported_solid.py, "
            f"trimesh {trimesh.__version__}, numpy {np.__version__}",
            "cases": [case(sys.argv[1], name, sets) for name, sets in CASES.items()],
        },
        indent=1,
    )
)
