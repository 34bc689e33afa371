"""Mass properties of a lofted blade and an oval handle by an outside program.

    pip install trimesh==5.2.0 numpy==2.4.6 scipy==1.17.1 networkx==3.6.1
    python assets/reference/lofted_blade.py > assets/reference/lofted_blade.json

Builds closed triangle meshes from the figures below, by formulas of its own, and lets trimesh
integrate them. The figures are invented; the JSON holds them beside the results.
"""

import json

import numpy as np
import trimesh

SHOULDER_M = 0.285
BLADE = {
    "length_m": 0.55,
    "face_m": 0.017,
    "density_kg_m3": 430.0,
    "face_cover_kg_m2": 0.0,
    "toe_guard_m": 0.0,
    "toe_guard_kg_m3": 0.0,
    # share from shoulder, width, edge, depth, hollow, camber
    "stations": [
        [0.0, 0.040, 0.026, 0.034, 0.0, 0.0],
        [0.1, 0.105, 0.019, 0.042, 0.3, 0.0015],
        [0.4, 0.107, 0.027, 0.055, 0.6, 0.003],
        [0.65, 0.108, 0.036, 0.063, 0.5, 0.002],
        [0.9, 0.106, 0.028, 0.044, -0.3, 0.001],
        [1.0, 0.090, 0.018, 0.022, 0.0, 0.0],
    ],
}
HANDLE = {
    "length_m": 0.30,
    "top_diameter_m": 0.031,
    "shoulder_diameter_m": 0.036,
    "oval": 0.9,
    "density_kg_m3": 550.0,
    "splice_m": 0.0,
    "twine_m": 0.0,
    "twine_kg_m3": 0.0,
    "grips": 0,
    "grip_m": 0.0,
    "grip_length_m": 0.0,
    "grip_kg_m3": 0.0,
}


def closed(rings):
    """A watertight mesh through rings of equally many points, capped by fans."""
    rings = np.array(rings)
    count, n = rings.shape[:2]
    faces = []
    for i in range(count - 1):
        for j in range(n):
            a, b = i * n + j, i * n + (j + 1) % n
            faces += [[a, b, b + n], [a, b + n, a + n]]
    vertices = list(rings.reshape(-1, 3))
    for ring, flip in ((0, True), (count - 1, False)):
        centre = len(vertices)
        vertices.append(rings[ring].mean(axis=0))
        for j in range(n):
            a, b = ring * n + j, ring * n + (j + 1) % n
            faces.append([centre, b, a] if flip else [centre, a, b])
    mesh = trimesh.Trimesh(np.array(vertices), np.array(faces), process=False)
    mesh.fix_normals()
    assert mesh.is_watertight
    return mesh


def blade_ring(x, width, edge, depth, hollow, camber, face, points=120):
    """Outline: over the face from -y to +y, back under it."""
    y = np.linspace(-1.0, 1.0, points)
    over = face - camber * y**2
    inward = 1.0 - np.abs(y)
    edge_back = face - camber - edge
    spine_back = face - depth
    under = edge_back + (spine_back - edge_back) * ((1 - hollow) * inward + hollow * inward**2)
    half = width / 2
    front = [(x, half * a, b) for a, b in zip(y, over)]
    back = [(x, half * a, b) for a, b in zip(y[::-1], under[::-1])]
    return front + back


def blade(b, steps=40):
    stations = np.array(b["stations"])
    rings = []
    for start, end in zip(stations, stations[1:]):
        for k in range(steps):
            rings.append(start + (end - start) * k / steps)
    rings.append(stations[-1])
    return closed(
        [blade_ring(SHOULDER_M + s[0] * b["length_m"], *s[1:], b["face_m"]) for s in rings]
    )


def handle(h, steps=40, points=360):
    angle = np.linspace(0, 2 * np.pi, points, endpoint=False)
    rings = []
    for t in np.linspace(0, 1, steps + 1):
        r = (h["top_diameter_m"] + (h["shoulder_diameter_m"] - h["top_diameter_m"]) * t) / 2
        x = t * h["length_m"]
        rings.append([(x, r * np.cos(a), h["oval"] * r * np.sin(a)) for a in angle])
    return closed(rings)


def measured(mesh, density):
    mesh.density = density
    return {
        "mass_kg": float(mesh.mass),
        "com_m": [float(v) for v in mesh.center_mass],
        "inertia_kg_m2": [[float(v) for v in row] for row in mesh.moment_inertia],
    }


print(
    json.dumps(
        {
            "made_by": f"assets/reference/lofted_blade.py, trimesh {trimesh.__version__}",
            "shoulder_m": SHOULDER_M,
            "blade": BLADE,
            "handle": HANDLE,
            "meshed_blade": measured(blade(BLADE), BLADE["density_kg_m3"]),
            "meshed_handle": measured(handle(HANDLE), HANDLE["density_kg_m3"]),
        },
        indent=1,
    )
)
