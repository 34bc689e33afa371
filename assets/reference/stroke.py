"""Torques for the reference runs: polynomials in time that carry the bat from a backlift to contact.

Two poses are found by inverse kinematics, joined by q0 + (q1 - q0) u^2 (u = t/duration; at rest at first, fastest at
contact) closed on the loop, and the torques of that motion are fitted by polynomials. The swing that the polynomials
give is near that motion, not on it; only the torques matter to a comparison.
"""
import numpy as np
import pinocchio as pin
from scipy.interpolate import make_interp_spline
from scipy.optimize import least_squares
from chain import rounded

# (hands from the shoulder line's height, in arm lengths; toe direction; face direction; turn of hips and of trunk, flexion, lean)
BACKLIFT = ((0.45, -0.40, -0.45), (0.25, -0.45, 0.85), (0.80, 0.55, 0.05), (-0.10, -0.10, 0.25, 0.0))
CONTACT = ((0.48, 0.30, -0.68), (0.12, 0.05, -0.99), (0.0, 1.0, 0.05), (0.25, 0.10, 0.40, 0.05))
NOMINAL = [0, 0, 0.3, 0, -0.6, 0.1, 0.0, -0.7, 0.0, 0.1, 0.0, -0.6, -0.1, 0.0, -0.7, 0.0, 0.1, 0.0]


def pose(ref, target, size):
    grip, toe, face, trunk = target
    unit = lambda a: np.array(a) / np.linalg.norm(a)
    bat = ref.chain["bat"]; link = np.array([bat["toe_dir"], bat["face_dir"]])
    nominal = np.array(NOMINAL[:ref.n]); nominal[:4] = trunk
    at = np.array([0, 0, 1.45 * size]) + 0.64 * size * np.array(grip)
    def residual(q):
        ref.place(q); R = ref.turn()
        gap = (ref.at("a") - ref.at("b")) / 0.0005 if ref.chain["loop"] else []
        return np.r_[(ref.at("top_hand") - at) / 0.02, (R @ link[0] - unit(toe)) / 0.08, (R @ link[1] - unit(face)) / 0.15,
                     (q[:4] - trunk) / 0.1, (q[4:] - nominal[4:]) / 0.8, gap]
    return least_squares(residual, nominal).x


def stroke(ref, size, damping, duration=0.25, degree=6, reach=1.0):
    """initial pose and torque coefficients (rounded to 8 digits), c[joint][power of t/duration]"""
    q0, q1 = pose(ref, BACKLIFT, size), pose(ref, CONTACT, size)
    loop = ref.chain["loop"]
    u = np.linspace(0, 1.0, 41)
    path = [q0 + reach * (q1 - q0) * s * s for s in u]
    if loop:
        path = [ref.close(q) for q in path]
    spline = make_interp_spline(u * duration, np.array(path), 5)
    q, v, a = spline(u * duration), spline.derivative(1)(u * duration), spline.derivative(2)(u * duration)
    tau = []
    for i in range(len(u)):
        t = pin.rnea(ref.m, ref.d, q[i], v[i], a[i]).copy()
        if loop:   # the bottom hand's force that leaves the least torque in both arms
            J = ref.jacobian(q[i], "a")[:3] - ref.jacobian(q[i], "b")[:3]
            t -= J.T @ np.linalg.lstsq(J.T, t, rcond=None)[0]
        tau.append(t + damping * v[i])
    powers = u[:, None] ** np.arange(degree + 1)
    c = np.linalg.lstsq(powers, np.array(tau), rcond=None)[0].T
    start = ref.close(path[0]) if loop else np.array(rounded(path[0], 8))
    return start, np.array(rounded(c, 8))
