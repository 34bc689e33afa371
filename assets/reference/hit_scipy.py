"""Ball on bat in a plane, from Newton's and Euler's laws: the ball a disc pressed against a flat face, the bat two bodies
pinned at the shoulder with a spring and a damper across the pin, each hand a mass on a spring and a damper.

Every body has its own x, z and angle (x along the bat at first touch, z out of the face, angles from x towards z); the pin
is two constraint forces, found with the accelerations (index one), so nothing here knows of generalised coordinates. SciPy's
DOP853 at 1e-10. The contact: F = k x^1.5 (1 + d x'/v), x how far the disc overlaps the face, v the closing speed, d from the
restitution e by integrating that law over a contact (Hunt & Crossley 1975): d (1 + e) = ln((1 + d)/(1 - e d)).

The splice's stiffness once more: a handle of three canes and two strips of rubber as a cantilever that swings on about the
shoulder under its own mass; sections and bending summed by quadrature, the load through shear and moment to deflection.

hit_scipy.json: a bat of round invented figures, met at four heights, free and held, with its own splice and a stiff one,
at rest and turning about the pickup axis.
"""
import json
import numpy as np
import scipy
from scipy.integrate import quad, solve_ivp
from scipy.optimize import brentq, minimize_scalar

BAT = dict(
    handle=dict(mass_kg=0.27, com_m=[0.152, 0.0], moment_kg_m2=0.0022),
    blade=dict(mass_kg=0.93, com_m=[0.585, -0.004], moment_kg_m2=0.0235),
    shoulder_m=0.292, toe_m=0.851, half_width_m=0.054, face_m=0.018,
)
BALL = dict(mass_kg=0.16, radius_m=0.036, stiffness_n_m15=1.2e7, restitution=0.5)
# Damping: a share of critical, of the hand on its spring and of the free bat's bending.
HAND = dict(mass_kg=0.43, stiffness_n_m=5e4, damping_share=0.4)
HANDS_FROM_TOP_M = [0.06, 0.165]
SPLICE = dict(own_n_m=614.0, stiff_n_m=1e7, damping_share=0.05)
PICKUP_AXIS_M = 0.1524
FROM_TOE_M = [0.05, 0.15, 0.25, 0.35]
LISTENED_S = 0.010
HANDLE = dict(length_m=0.292, across_m=[0.031, 0.033], through_share=0.93, rubber_shear_pa=0.7e6, strip_m=1.5e-3)
CANE_PA = [1.0e9, 2.5e9, 4.0e9]
TOLERANCE = 1e-10


def cross(a, b):
    return a[0] * b[1] - a[1] * b[0]


def along(angle):
    return np.array([np.cos(angle), np.sin(angle)])


def turned(p, angle):
    c, s = np.cos(angle), np.sin(angle)
    return np.array([c * p[0] - s * p[1], s * p[0] + c * p[1]])


def spin(omega, p):
    """velocity of p on a body that turns"""
    return omega * np.array([-p[1], p[0]])


class Body:
    def __init__(self, mass, moment, at):
        self.mass, self.moment, self.at = mass, moment, np.array(at, float)


def loss(e):
    return brentq(lambda d: d * (1 + e) - np.log((1 + d) / (1 - e * d)), 1e-3, 1 / e - 1e-12, xtol=1e-15)


def bending_damping(stiffness):
    """of critical for the free bat: the pin's relative angle against the reduced moment"""
    h, b, p = BAT["handle"], BAT["blade"], BAT["shoulder_m"]
    bodies = [Body(it["mass_kg"], it["moment_kg_m2"], it["com_m"]) for it in (h, b)]
    # a couple +1 on the blade, -1 on the handle at rest: relative angular acceleration is 1 over the moment that resists
    a = pinned(bodies, [np.zeros(2), np.zeros(2)], [-1.0, 1.0], np.array([p, 0.0]), [0.0, 0.0])
    return 2 * SPLICE["damping_share"] * np.sqrt(stiffness / (a[1][1] - a[0][1]))


def pinned(bodies, forces, couples, pin, omega):
    """accelerations (linear, angular) of two bodies pinned there: a_pin of one = a_pin of the other"""
    A, r = np.zeros((8, 8)), np.zeros(8)
    for n, (body, sign) in enumerate(zip(bodies, (1, -1))):
        i, arm = 3 * n, pin - body.at
        A[i, i] = A[i + 1, i + 1] = body.mass
        A[i + 2, i + 2] = body.moment
        # the pin's force acts on the first as it stands, on the second turned round
        A[i, 6] = A[i + 1, 7] = -sign
        A[i + 2, 6], A[i + 2, 7] = sign * arm[1], -sign * arm[0]
        r[i : i + 2], r[i + 2] = forces[n], couples[n]
        # acceleration of the pin on this body: a + alpha x arm - omega^2 arm
        A[6, i], A[6, i + 2] = sign, -sign * arm[1]
        A[7, i + 1], A[7, i + 2] = sign, sign * arm[0]
        r[6:8] += sign * omega[n] ** 2 * arm
    x = np.linalg.solve(A, r)
    return [(x[0:2], x[2]), (x[3:5], x[5])]


def hit(from_toe, held, splice, bat_m_s, ball_m_s, turning, ball=BALL):
    h, b = BAT["handle"], BAT["blade"]
    contact = BAT["toe_m"] - from_toe
    omega = bat_m_s / (contact - PICKUP_AXIS_M) if turning else 0.0
    axis = np.array([PICKUP_AXIS_M, 0.0])
    # where it does not turn, the whole bat goes with the point struck
    velocity = lambda p: spin(omega, np.array(p) - axis) if turning else np.array([0.0, bat_m_s])
    places = [np.array([contact, BAT["face_m"] + ball["radius_m"]]), np.array(h["com_m"]), np.array(b["com_m"])]
    velocities = [np.array([0.0, -ball_m_s]), velocity(h["com_m"]), velocity(b["com_m"])]
    angles, rates = [0.0, 0.0], [omega, omega]
    hands = HANDS_FROM_TOP_M if held else []
    for at in hands:
        places.append(np.array([at, 0.0]))
        velocities.append(velocity([at, 0.0]))
    n = len(places)
    damping = bending_damping(splice)
    hand_damping = 2 * HAND["damping_share"] * np.sqrt(HAND["stiffness_n_m"] * HAND["mass_kg"])
    closing, d = ball_m_s + bat_m_s, loss(ball["restitution"])

    def parts(y):
        x, v = y[: 2 * n].reshape(n, 2), y[2 * n : 4 * n].reshape(n, 2)
        return x, v, y[4 * n : 4 * n + 2], y[4 * n + 2 : 4 * n + 4]

    def overlap(y):
        x, v, angle, rate = parts(y)
        normal = turned(np.array([0.0, 1.0]), angle[1])
        # distance of the disc's middle from the face, which lies a fixed height over the pin
        pin = x[1] + turned(np.array([BAT["shoulder_m"], 0.0]) - h["com_m"], angle[0])
        return normal, ball["radius_m"] + BAT["face_m"] - (x[0] - pin) @ normal, pin

    def hand_forces(y):
        x, v, angle, rate = parts(y)
        out = []
        for k, at in enumerate(hands):
            grasped = x[1] + turned(np.array([at, 0.0]) - h["com_m"], angle[0])
            # the damper works at the hand's own point
            slip = v[1] + spin(rate[0], x[3 + k] - x[1]) - v[3 + k]
            out.append(HAND["stiffness_n_m"] * (grasped - x[3 + k]) + hand_damping * slip)
        return out

    def right(touching):
        def f(t, y):
            x, v, angle, rate = parts(y)
            forces, couples = [np.zeros(2) for _ in range(n)], [0.0, 0.0]
            normal, pressed, pin = overlap(y)
            if touching and pressed > 0:
                at = x[0] - normal * (ball["radius_m"] - pressed)
                pressing = (v[2] + spin(rate[1], at - x[2]) - v[0]) @ normal
                F = ball["stiffness_n_m15"] * pressed**1.5 * max(1 + d * pressing / closing, 0.0) * normal
                forces[0] += F
                forces[2] -= F
                couples[1] -= cross(at - x[2], F)
            couple = splice * (angle[0] - angle[1]) + damping * (rate[0] - rate[1])
            couples[0] -= couple
            couples[1] += couple
            for k, F in enumerate(hand_forces(y)):
                forces[3 + k] += F
                forces[1] -= F
                couples[0] -= cross(x[3 + k] - x[1], F)
            bodies = [Body(h["mass_kg"], h["moment_kg_m2"], x[1]), Body(b["mass_kg"], b["moment_kg_m2"], x[2])]
            a = pinned(bodies, forces[1:3], couples, pin, rate)
            acc = [forces[0] / ball["mass_kg"], a[0][0], a[1][0]] + [F / HAND["mass_kg"] for F in forces[3:]]
            felt = np.concatenate(hand_forces(y)) if hands else np.zeros(0)
            return np.concatenate([v.ravel(), np.ravel(acc), rate, [a[0][1], a[1][1]], felt])
        return f

    left = lambda t, y: overlap(y)[1] if t > 1e-7 else 1.0
    left.terminal, left.direction = True, -1
    start = np.concatenate([np.ravel(places), np.ravel(velocities), angles, rates, np.zeros(2 * len(hands))])
    how = dict(method="DOP853", rtol=TOLERANCE, atol=1e-13, dense_output=True)
    first = solve_ivp(right(True), (0, 0.02), start, events=left, **how)
    assert first.status == 1, "the ball does not leave"
    contact_s = first.t[-1]
    runs = [(0.0, contact_s, first.sol)]
    if LISTENED_S > contact_s:
        second = solve_ivp(right(False), (contact_s, LISTENED_S), first.y[:, -1], **how)
        runs.append((contact_s, LISTENED_S, second.sol))

    def greatest(figure):
        best = 0.0
        for t0, t1, sol in runs:
            t = np.linspace(t0, t1, 4001)
            k = int(np.argmax([abs(figure(sol(s))) for s in t]))
            lo, hi = t[max(k - 1, 0)], t[min(k + 1, len(t) - 1)]
            found = minimize_scalar(lambda s: -abs(figure(sol(s))), bounds=(lo, hi), method="bounded", options=dict(xatol=1e-12))
            best = max(best, -found.fun, abs(figure(sol(t[k]))))
        return float(best)

    end = runs[-1][2](runs[-1][1])
    impulse = end[4 * n + 4 :].reshape(-1, 2)
    return dict(
        exit_m_s=float(first.y[2 * n + 1, -1]),
        contact_s=float(contact_s),
        bend_rad=greatest(lambda y: y[4 * n] - y[4 * n + 1]),
        hands_peak_n=[greatest(lambda y, k=k: np.linalg.norm(hand_forces(y)[k])) for k in range(len(hands))],
        hands_impulse_n_s=[float(np.linalg.norm(it)) for it in impulse],
    )


def bending_stiffness(x, modulus):
    """EI of the handle x from the shoulder: canes cut apart at a third of the half-height, joined by shearing rubber
    (EN 1995-1-1 annex B, from memory: gamma = 1/(1 + pi^2 E A/(K l^2)), l twice the cantilever)"""
    at = 1 - x / HANDLE["length_m"]
    top, shoulder = HANDLE["across_m"]
    a = 0.5 * (top + (shoulder - top) * at)
    b = HANDLE["through_share"] * a
    width = lambda z: 2 * a * np.sqrt(max(1 - (z / b) ** 2, 0.0))
    summed = lambda power, lo, hi: quad(lambda z: width(z) * z**power, lo, hi, epsabs=0, epsrel=1e-12)[0]
    cut = b / 3
    area, first, second = (summed(k, cut, b) for k in range(3))
    middle = 2 * summed(2, 0, cut)
    arm = first / area
    K = HANDLE["rubber_shear_pa"] * width(cut) / HANDLE["strip_m"]
    gamma = 1 / (1 + np.pi**2 * modulus * area / (K * (2 * HANDLE["length_m"]) ** 2))
    return modulus * (middle + 2 * (second - area * arm**2 + gamma * area * arm**2))


def splice_stiffness(modulus):
    """of the hinge that turns as far, tip over length, under the same moment at the shoulder"""
    L = HANDLE["length_m"]
    # from the tip: shear, moment; from the shoulder: slope, deflection
    load = solve_ivp(lambda s, y: [L - s, y[0]], (0, L), [0, 0], rtol=1e-12, atol=1e-16, dense_output=True).sol
    bent = solve_ivp(lambda x, y: [load(L - x)[1] / bending_stiffness(x, modulus), y[0]], (0, L), [0, 0], method="DOP853", rtol=1e-11, atol=1e-20)
    return float(load(L)[1] / (bent.y[1, -1] / L))


if __name__ == "__main__":
    cases = []
    for held in (False, True):
        for splice in ("stiff", "own"):
            for motion, bat_m_s, ball_m_s in (("at rest", 0.0, 30.0), ("turning", 20.0, 25.0)):
                for from_toe in FROM_TOE_M:
                    found = hit(from_toe, held, SPLICE[f"{splice}_n_m"], bat_m_s, ball_m_s, motion == "turning")
                    cases.append(dict(held=held, splice=splice, motion=motion, from_toe_m=from_toe, bat_m_s=bat_m_s, ball_m_s=ball_m_s, **found))
                    print(held, splice, motion, from_toe, found, flush=True)
    out = dict(made_by=f"SciPy {scipy.__version__}, DOP853 at 1e-10", bat=BAT, ball=BALL, hand=dict(HAND, from_top_m=HANDS_FROM_TOP_M),
               splice=SPLICE, pickup_axis_m=PICKUP_AXIS_M, cases=cases,
               handle=dict(HANDLE, cane_pa=CANE_PA, hinge_n_m=[splice_stiffness(it) for it in CANE_PA]))
    with open("hit_scipy.json", "w") as file:
        json.dump(out, file, indent=1)
        file.write("\n")
