"""Free bending of a wedge and of a bat, by ways that share nothing with the program's elements.

Wedge (width constant, thickness straight from h0 to h1): the closed form in Bessel functions,
w = (J1, Y1, I1, K1)(2 k sqrt(x)) / sqrt(x), the determinant of the four free ends set to nought
(the form is in G. Kirchhoff 1879 and every handbook of vibration since; from memory, high: the
script checks it by putting it back into the equation).
Bat: sections integrated on a fine grid, second differences on 4000 even cells, scipy's sparse eigensolver.
"""
import json
import numpy as np
import scipy
from scipy.optimize import brentq
from scipy.special import iv, jv, kv, yv
from scipy.sparse import diags
from scipy.sparse.linalg import eigsh

E, RHO = 7.2e9, 440.0


def wedge(length, width, h0, h1, count):
    # x from the virtual tip; thickness = slope * x
    slope = (h1 - h0) / length
    x0, x1 = h0 / slope, h1 / slope
    # (x^3 w'')'' = k^4 x w with k^4 = 12 rho omega^2 / (E slope^2)
    fs = [jv, yv, iv, kv]

    def rows(k):
        out = []
        for x in (x0, x1):
            moment, shear = [], []
            for f in fs:
                # d/dx (x^(-n/2) f_n) = (+ I, - J Y K) k x^(-(n+1)/2) f_(n+1), twice; then
                # d/dx (x^(n/2) f_n) = (+ J Y I, - K) k x^((n-1)/2) f_(n-1)
                z = 2 * k * np.sqrt(x)
                m = k**2 * x**1.5 * f(3, z)
                s = k**2 * (-1 if f is kv else 1) * k * x * f(2, z)
                moment.append(m)
                shear.append(s)
            out += [moment, shear]
        a = np.array(out)
        return a / np.abs(a).max(axis=0)

    det = lambda k: np.linalg.det(rows(k))
    ks = np.linspace(0.5, 60 / np.sqrt(x1), 6000)
    values = [det(k) for k in ks]
    roots = []
    for a, b, fa, fb in zip(ks, ks[1:], values, values[1:]):
        if fa * fb < 0:
            roots.append(brentq(det, a, b, xtol=1e-14))
    # the two rigid motions lie at k = 0
    return [float(k**2 * slope * np.sqrt(E / (12 * RHO)) / (2 * np.pi)) for k in roots[:count]]


def differences(length, EI, mu, count, cells=4000):
    h = length / cells
    x = (np.arange(cells) + 0.5) * h
    n = cells
    D = diags([1.0, -2.0, 1.0], [0, 1, 2], shape=(n - 2, n)) / h**2
    B = diags([[EI(s) for s in x[1:-1]]], [0])
    K = (D.T @ B @ D * h).tocsc()
    M = diags([[mu(s) * h for s in x]], [0]).tocsc()
    values, vectors = eigsh(K, k=count + 2, M=M, sigma=-1e3)
    order = np.argsort(values)[2:]
    out = []
    for k in order:
        w = vectors[:, k]
        nodes = [
            float(x[i] - w[i] * h / (w[i + 1] - w[i])) for i in range(n - 1) if w[i] * w[i + 1] < 0
        ]
        out.append((float(np.sqrt(values[k]) / (2 * np.pi)), nodes))
    return out


def section(width, edge, depth, hollow, camber, face, grid=4000):
    u = (np.arange(grid) + 0.5) / grid
    f = face - camber * (1 - u) ** 2
    edge_back, spine_back = face - camber - edge, face - depth
    b = edge_back + (spine_back - edge_back) * (u * (1 - hollow) + u * u * hollow)
    w = width / grid
    return np.array([((f - b) * w).sum(), ((f**2 - b**2) / 2 * w).sum(), ((f**3 - b**3) / 3 * w).sum()])


def bat():
    EC = 2.5e9
    handle = dict(length_m=0.292, top_diameter_m=0.031, shoulder_diameter_m=0.033, oval=0.93, density_kg_m3=540.0,
                  splice_m=0.13, twine_m=0.0005, twine_kg_m3=900.0, grips=1, grip_m=0.0016, grip_length_m=0.28,
                  grip_kg_m3=1150.0)
    blade = dict(length_m=0.559, face_m=0.018, density_kg_m3=440.0, face_cover_kg_m2=0.0, toe_guard_m=0.0,
                 toe_guard_kg_m3=0.0)
    stations = [
        [0.0, 0.038, 0.0256, 0.0314, 0.0, 0.0], [0.03, 0.072, 0.02, 0.0334, 0.1, 0.0004],
        [0.07, 0.098, 0.0177, 0.0359, 0.2, 0.001], [0.12, 0.106, 0.0173, 0.039, 0.3, 0.0015],
        [0.25, 0.1075, 0.0195, 0.0449, 0.35, 0.002], [0.52, 0.1075, 0.0311, 0.0586, 0.45, 0.002],
        [0.74, 0.1075, 0.0353, 0.0614, 0.4, 0.002], [0.91, 0.107, 0.0302, 0.0474, 0.25, 0.0015],
        [1.0, 0.092, 0.0221, 0.0268, 0.0, 0.0],
    ]
    table = np.array(stations)
    length = handle["length_m"] + blade["length_m"]

    def half(x):
        t = x / handle["length_m"]
        y = 0.5 * (handle["top_diameter_m"] + (handle["shoulder_diameter_m"] - handle["top_diameter_m"]) * t)
        return y, handle["oval"] * y

    def at(x):
        if x < handle["length_m"]:
            y, z = half(x)
            area = lambda c: np.pi * (y + c) * (z + c)
            mass = handle["density_kg_m3"] * area(0) + handle["twine_kg_m3"] * (area(handle["twine_m"]) - area(0))
            if x < handle["grip_length_m"]:
                mass += handle["grip_kg_m3"] * (area(handle["twine_m"] + handle["grip_m"]) - area(handle["twine_m"]))
            return EC * np.pi / 4 * y * z**3, mass
        s = (x - handle["length_m"]) / blade["length_m"]
        row = [np.interp(s, table[:, 0], table[:, c]) for c in range(1, 6)]
        whole = section(*row, blade["face_m"])
        wedge_ = np.zeros(3)
        t = (x - handle["length_m"]) / handle["splice_m"]
        if t < 1:
            y, z = half(handle["length_m"])
            y *= 1 - t
            wedge_ = np.array([np.pi * y * z, 0.0, np.pi / 4 * y * z**3])
        willow = whole - wedge_
        EA, ES, EI = (E * willow + EC * wedge_)
        return EI - ES**2 / EA, blade["density_kg_m3"] * willow[0] + handle["density_kg_m3"] * wedge_[0]

    cells = 4000
    xs = (np.arange(cells) + 0.5) * length / cells
    known = {round(float(x), 9): at(x) for x in xs}
    modes = differences(length, lambda x: known[round(float(x), 9)][0], lambda x: known[round(float(x), 9)][1], 2, cells)
    shape = dict(handle=handle, blade=dict(blade, stations=stations))
    return dict(shape=shape, moduli=dict(willow_pa=E, cane_pa=EC),
                frequency_hz=[m[0] for m in modes], nodes_m=[m[1] for m in modes])


if __name__ == "__main__":
    shape = dict(length_m=0.5, width_m=0.1, thickness_m=[0.02, 0.05], modulus_pa=E, density_kg_m3=RHO)
    exact = wedge(0.5, 0.1, 0.02, 0.05, 3)
    rough = differences(0.5, lambda x: E * 0.1 * (0.02 + 0.06 * x) ** 3 / 12, lambda x: RHO * 0.1 * (0.02 + 0.06 * x), 3)
    for a, (b, _) in zip(exact, rough):
        assert abs(a / b - 1) < 1e-4, (exact, rough)
    out = dict(made_by=f"scipy {scipy.__version__}", wedge=dict(shape, frequency_hz=exact), **bat())
    with open("bent_beam.json", "w") as file:
        json.dump(out, file, indent=1)
        file.write("\n")
    print(exact, [b for b, _ in rough], out["frequency_hz"], out["nodes_m"])
