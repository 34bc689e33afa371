"""A ball of finite size on a free, rigid bat off the middle of its face, in space, from Newton's and Euler's laws.

The bat is one body with its whole tensor, turned by a quaternion; the ball a sphere with a moment of 2/5 m R^2. The contact
is that of hit_scipy.py (F = k x^1.5 (1 + d x'/v) along the face's normal where the sphere is nearest), here with friction
where asked: Coulomb's, smoothed below 0.02 m/s. SciPy's DOP853 at 1e-9. Nothing is taken as instant and no angle as small:
the face turns under the ball while they touch.

off_middle.json: the bat of hit_scipy.py with moments about its long axis added, turning about the pickup axis, met at two
heights and three places across. "cases" are smooth and flat, as the program's own hit is; "left out" holds the same place
with what it leaves out: friction of 0.3 (assumption), a face that bulges by 2 mm, both; and a contact a thousandth as long.
"""
import json
import numpy as np
import scipy
from scipy.integrate import solve_ivp
from hit_scipy import BALL, BAT, PICKUP_AXIS_M, loss

# Moments of both parts about x, y, z through their own centres: those of hit_scipy.py with round ones about the long axis.
TENSOR = dict(handle=[4.0e-5, 2.2e-3, 2.2e-3], blade=[9.5e-4, 2.35e-2, 2.43e-2])
BAT_M_S, BALL_M_S = 20.0, 25.0
FROM_TOE_M, ACROSS_M = [0.15, 0.25], [0.0, 0.02, 0.04]
FRICTION, SMOOTH_M_S, BULGE_M = 0.3, 0.02, 0.002


def whole():
    """mass, centre and tensor about it"""
    parts = [(BAT[it]["mass_kg"], np.array([BAT[it]["com_m"][0], 0.0, BAT[it]["com_m"][1]]), np.diag(TENSOR[it])) for it in ("handle", "blade")]
    mass = sum(m for m, _, _ in parts)
    com = sum(m * c for m, c, _ in parts) / mass
    shifted = lambda m, r, I: I + m * (r @ r * np.eye(3) - np.outer(r, r))
    return mass, com, sum(shifted(m, c - com, I) for m, c, I in parts)


def rotation(q):
    w, x, y, z = q / np.linalg.norm(q)
    return np.array([
        [1 - 2 * (y * y + z * z), 2 * (x * y - w * z), 2 * (x * z + w * y)],
        [2 * (x * y + w * z), 1 - 2 * (x * x + z * z), 2 * (y * z - w * x)],
        [2 * (x * z - w * y), 2 * (y * z + w * x), 1 - 2 * (x * x + y * y)],
    ])


def hit(from_toe, across, friction=0.0, bulge_m=0.0, stiffer=1.0):
    mass, com, I = whole()
    m, R, k, e = BALL["mass_kg"], BALL["radius_m"], stiffer * BALL["stiffness_n_m15"], BALL["restitution"]
    d, closing, Ib = loss(e), BAT_M_S + BALL_M_S, 0.4 * m * R * R
    # the face: a plane, or a cylinder along x that falls by the bulge from the middle to the edge
    rho = (BAT["half_width_m"] ** 2 + bulge_m**2) / (2 * bulge_m) if bulge_m else np.inf
    face = BAT["face_m"] - com[2]

    def nearest(r):
        """normal and gap of the face below a sphere whose middle lies there, in the bat's frame"""
        if not bulge_m:
            return np.array([0.0, 0.0, 1.0]), r[2] - face - R
        axis = np.array([0.0, r[1], r[2] - face + rho])
        far = np.linalg.norm(axis)
        return axis / far, far - rho - R

    x = BAT["toe_m"] - from_toe
    middle = np.array([x - com[0], across, face + R])
    if bulge_m:
        middle[2] = face - rho + np.sqrt((rho + R) ** 2 - across**2)
    omega = np.array([0.0, -BAT_M_S / (x - PICKUP_AXIS_M), 0.0])
    v_com = np.cross(omega, np.array([com[0] - PICKUP_AXIS_M, 0.0, com[2]]))
    start = np.concatenate([middle, [0, 0, -BALL_M_S], [0, 0, 0], [0, 0, 0], v_com, [1, 0, 0, 0], omega])

    def touch(s):
        A = rotation(s[15:19])
        normal, gap = nearest(A.T @ (s[0:3] - s[9:12]))
        return A, A @ normal, gap

    def right(t, s):
        A, n, gap = touch(s)
        c, v, w, p, u, q, o = s[0:3], s[3:6], s[6:9], s[9:12], s[12:15], s[15:19], s[19:22]
        pressed, F = max(-gap, 0.0), np.zeros(3)
        at = c - n * (R - pressed)
        if pressed > 0:
            parting = v + np.cross(w, at - c) - u - np.cross(o, at - p)
            N = k * pressed**1.5 * max(1 - d * (parting @ n) / closing, 0.0)
            slide = parting - (parting @ n) * n
            F = N * n - friction * N * slide / np.sqrt(slide @ slide + SMOOTH_M_S**2)
        Iw = A @ I @ A.T
        turned = np.linalg.solve(Iw, np.cross(at - p, -F) - np.cross(o, Iw @ o))
        dq = 0.5 * np.array([-o @ q[1:], *(q[0] * o + np.cross(o, q[1:]))])
        return np.concatenate([v, F / m, np.cross(at - c, F) / Ib, u, -F / mass, dq, turned])

    left = lambda t, s: touch(s)[2] if t > 1e-2 * 1e-3 / stiffer**0.4 else -1.0
    left.terminal, left.direction = True, 1
    span = 0.02 / stiffer**0.4
    run = solve_ivp(right, (0, span), start, events=left, method="DOP853", rtol=1e-9, atol=1e-12, max_step=span / 1000)
    assert run.status == 1, "the ball does not leave"
    end = run.y[:, -1]
    return dict(
        exit_m_s=float(end[5]),
        exit_whole_m_s=float(np.linalg.norm(end[3:6])),
        aside_rad=float(np.arctan2(end[4], end[5])),
        contact_s=float(run.t[-1]),
        twist_rad_s=float(end[19]),
        ball_spin_rad_s=float(end[6]),
    )


if __name__ == "__main__":
    cases = [dict(from_toe_m=x, across_m=y, **hit(x, y)) for x in FROM_TOE_M for y in ACROSS_M]
    others = dict(friction=dict(friction=FRICTION), bulge=dict(bulge_m=BULGE_M), both=dict(friction=FRICTION, bulge_m=BULGE_M), sudden=dict(stiffer=1e9))
    left_out = [dict(what=what, from_toe_m=0.15, across_m=y, **hit(0.15, y, **how)) for what, how in others.items() for y in (0.0, 0.02)]
    for it in cases + left_out:
        print(it)
    bat = dict(BAT, moments_kg_m2=TENSOR)
    out = dict(made_by=f"SciPy {scipy.__version__}, DOP853 at 1e-9", bat=bat, ball=BALL, bat_m_s=BAT_M_S, ball_m_s=BALL_M_S,
               pickup_axis_m=PICKUP_AXIS_M, cases=cases, left_out=left_out)
    with open("off_middle.json", "w") as file:
        json.dump(out, file, indent=1)
        file.write("\n")
