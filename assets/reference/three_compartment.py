"""three_compartment.json: shares of resting, active and fatigued muscle under piecewise constant loads, by SciPy.

dM_A/dt = C - F M_A;  dM_F/dt = F M_A - R' M_F;  dM_R/dt = R' M_F - C;  R' = r R while the load is zero, else R.
Xia & Frey-Law 2008; r: Looft et al. 2018; when r acts: Rakshit et al. 2021. Two controllers C:
  ideal    M_A is the load at once, or all that is not fatigued if that is less: what a closed form follows
  limited  C = 10/s (load - M_A), or 10/s M_R where that is less: the published controller
"""
import os
import numpy as np
from scipy.integrate import solve_ivp
from chain import rounded, write

# F, R per second, r. Shoulder, elbow: Frey-Law et al. 2012 with r = 15; grip: Rakshit et al. 2021, hand joint, pooled
GROUPS = dict(shoulder=(0.0182, 0.00168, 15.0), elbow=(0.00912, 0.00094, 15.0), grip=(0.01227, 0.00134, 9.1))
TRACK_PER_S = 10.0
BALL = [(0.5, 1.0), (6.0, 0.08), (31.5, 0.0)]
HISTORIES = {   # (seconds, load as a share of the rested capacity)
    "hold at a half, past failure": [(20.0, 0.5)] * 10,
    "hold at a twentieth": [(300.0, 0.05)] * 4,
    "hold at nine tenths, then rest": [(5.0, 0.9)] * 4 + [(10.0, 0.0)] * 4,
    "twelve greatest efforts of three seconds": [(3.0, 1.0), (5.0, 0.0)] * 12,
    "twelve balls": BALL * 12,
    "one load after another": [(30.0, 0.3), (10.0, 0.7), (60.0, 0.0), (15.0, 0.5), (45.0, 0.15), (5.0, 1.0), (120.0, 0.0)],
}


def solve(rate, y, seconds, events=None):
    s = solve_ivp(rate, (0, seconds), y, "DOP853", rtol=1e-11, atol=1e-13, events=events)
    assert s.success
    return s


def ideal(fatigued, seconds, load, F, R):
    """held until no rest is left, then all that is left"""
    held = lambda _, y: F * load - R * y
    spent = lambda _, y: F * (1 - y) - R * y
    left = lambda _, y: 1 - y[0] - load
    left.terminal, left.direction = True, -1
    y, t = np.array([fatigued]), 0.0
    while t < seconds - 1e-12:
        if left(0, y) > 0 or (left(0, y) == 0 and F * load - R * y[0] < 0):
            s = solve(held, y, seconds - t, left)
        else:          # the spent state ends where recovery outruns fatigue; under one load it does not come back
            back = lambda _, z: 1 - z[0] - load - 1e-13
            back.terminal, back.direction = True, 1
            s = solve(spent, y, seconds - t, back)
        y, t = s.y[:, -1], t + s.t[-1]
    active = min(load, 1 - y[0])
    return active, y[0]


def limited(state, seconds, load, F, R):
    def rate(_, y):
        rest, active, fatigued = y
        C = TRACK_PER_S * (load - active)
        if active < load and rest < load - active:
            C = TRACK_PER_S * rest
        return [R * fatigued - C, C - F * active, F * active - R * fatigued]
    s = solve_ivp(rate, (0, seconds), state, "DOP853", rtol=1e-10, atol=1e-13, max_step=0.5)
    return s.y[:, -1]


def main():
    out = []
    for group, (F, R, r) in GROUPS.items():
        for name, history in HISTORIES.items():
            t, spent, state, rows = 0.0, 0.0, np.array([1.0, 0.0, 0.0]), []
            for seconds, load in history:
                recover = R * (r if load == 0 else 1.0)
                active, spent = ideal(spent, seconds, load, F, recover); state = limited(state, seconds, load, F, recover); t += seconds
                rows.append([t, load, 1 - active - spent, active, spent, *state])
            out.append(dict(group=group, history=name, rows=rounded(rows, 10)))
        f = 0.5; end = -np.log(1 - R * (1 - f) / (F * f)) / R
        s = solve(lambda _, y: F * f - R * y, [0.0], 2 * end, lambda _, y: 1 - f - y[0])
        assert abs(s.t_events[0][0] - end) < 1e-6 * end
        print(group, "endurance at a half", end)
    write(os.path.join(os.path.dirname(os.path.abspath(__file__)), "three_compartment.json"), dict(
        made_by="three_compartment.py", groups={k: dict(fatigue_per_s=F, recovery_per_s=R, rest_multiplier=r) for k, (F, R, r) in GROUPS.items()},
        track_per_s=TRACK_PER_S, columns=["time_s", "load_until_then", "resting", "active", "fatigued", "resting_limited", "active_limited", "fatigued_limited"], runs=out))


if __name__ == "__main__":
    main()
