"""The stroke law of swing_pilot.py with its step gone to nothing, on Pinocchio: the state is (q, v, tau), RK4 evaluates the
law inside every stage, the loop is closed by rigid multipliers. What a law in Rust should give at any fine step.

  d tau/dt = (target(t, q, v, tau) - tau)/h, tau kept inside -capacity_negative f(-v) .. capacity_positive f(v)

continuous_law.json: at the fixed stroke times of pilot_figures.json, at the fastest controlled time of its fifteen rigs
(a rig of that file with its bat link replaced), and at shorter and longer times.
"""
import os
import numpy as np
import pinocchio as pin
from scipy.interpolate import BSpline
from chain import WORLD, Reference, rounded, write
from swing_pilot import CTL, D2R, DEG, NK, S_END, TAU_A, Rig, alloc, barrier, basis, close_path, hill, reference_path, rotvec


class Law:
    def __init__(self, chain, positive, negative, fastest, control_points, T, start_tau):
        self.ref, self.T, self.start = Reference(chain), T, np.array(start_tau, float)
        self.cp, self.cn, self.vm = (np.array(x, float) for x in (positive, negative, fastest))
        knots = np.r_[np.zeros(DEG + 1), np.linspace(0, S_END, NK - DEG + 1)[1:-1], np.full(DEG + 1, S_END)]
        c = np.array(control_points); s = BSpline(knots, np.vstack([c[:1], c]), DEG)   # first point twice: at rest at the start
        self.path = [s, s.derivative(1), s.derivative(2)]
        self.point, self.turn, velocity, *_ = self.bat(*self.wanted(T))
        self.normal = velocity[:3] / np.linalg.norm(velocity[:3])

    def wanted(self, t):
        s = min(t / self.T, S_END)
        return [f(s) / self.T ** k for k, f in enumerate(self.path)]

    def bat(self, q, v, a=None):
        """contact point, attitude, velocity and acceleration (linear over angular) in world axes"""
        r = self.ref; r.place(q, v, np.zeros(r.n) if a is None else a); f = r.spots["contact"]
        vel, acc = pin.getFrameVelocity(r.m, r.d, f, WORLD), pin.getFrameClassicalAcceleration(r.m, r.d, f, WORLD)
        return r.at("contact"), r.turn(), np.r_[vel.linear, vel.angular], np.r_[acc.linear, acc.angular]

    def capacity(self, v):
        p, n = hill(v / self.vm)[0], hill(-v / self.vm)[0]
        return np.maximum(p, 1e-2) * self.cp, np.maximum(n, 1e-2) * self.cn

    def inside(self, v, tau):
        p, n = self.capacity(v)
        return np.clip(tau, -n, p)

    def rate(self, t, q, v, tau):
        r, w, h = self.ref, CTL["omega"], CTL["h"]
        tau = self.inside(v, tau)
        qd, vd, _ = self.wanted(t); ahead = self.wanted(t + h)
        p_d, R_d, vel_d, _ = self.bat(qd, vd); acc_ahead = self.bat(*ahead)[3]
        pin.computeAllTerms(r.m, r.d, q, v)
        M = np.triu(r.d.M) + np.triu(r.d.M, 1).T; bias = r.d.nle.copy()
        p, R, vel, drift = self.bat(q, v)
        J, closing = r.loop_jacobian(), r.classical("a") - r.classical("b")
        Jb = pin.getFrameJacobian(r.m, r.d, r.spots["contact"], WORLD)
        Mi = np.linalg.inv(M); MJ = Mi @ J.T; S = np.linalg.inv(J @ MJ); P = Mi - MJ @ S @ MJ.T
        a0 = -P @ bias - MJ @ S @ closing
        ask = acc_ahead + 2 * w * (vel_d - vel) + w * w * np.r_[p_d - p, rotvec(R_d @ R.T)]
        ask_joints = ahead[2] + 2 * w * (vd - v) + w * w * (qd - q)
        weight = np.r_[np.full(3, CTL["wpos"]), np.full(3, CTL["wrot"])]
        A1, b1 = (Jb @ P) * weight[:, None], (ask - drift - Jb @ a0) * weight
        A2, b2 = P * CTL["wpost"], (ask_joints - a0) * CTL["wpost"]
        H = A1.T @ A1 + A2.T @ A2 + np.diag((CTL["weff"] / (0.5 * (self.cp + self.cn))) ** 2); g = A1.T @ b1 + A2.T @ b2
        cp, cn = self.capacity(v); act = np.where(tau > 0, tau / cp, tau / cn); k = 1 - np.exp(-h / TAU_A)
        hi, lo = act + k * (1 - act), act + k * (-1 - act)
        hi, lo = np.where(hi > 0, hi * cp, hi * cn), np.where(lo > 0, lo * cp, lo * cn)
        target = barrier(H, g, lo, hi, tau, CTL["mu"])
        return v, a0 + P @ tau, (target - tau) / h

    def swing(self, dt, series_every_s=None):
        """figures where the contact point crosses the plane through the planned contact; a series if asked"""
        q, v, tau = self.path[0](0.0), np.zeros(self.ref.n), self.start.copy()
        before, series = None, []
        for i in range(int(np.ceil(S_END * self.T / dt)) + 1):
            t = i * dt
            p, R, vel, _ = self.bat(q, v); toe = self.ref.velocity("toe")[0]; x = (p - self.point) @ self.normal
            now = (x, p, R, vel, toe, q, v, tau)
            if series_every_s and i % round(series_every_s / dt) == 0:
                series.append(dict(t_s=t, q_rad=q, v_rad_s=v, tau_n_m=tau))
            if before and before[0] < 0 <= x and t > 0.6 * self.T:
                u = -before[0] / (x - before[0]); _, p, R, vel, toe, q, v, tau = (a + u * (b - a) for a, b in zip(before, now))
                mm, face, line = 1e3 * np.linalg.norm(p - self.point), angle_of(R, self.turn, self.ref, "face_dir"), angle_of(R, self.turn, self.ref, "toe_dir")
                out = dict(error=np.sqrt((mm / 25) ** 2 + (face / 4) ** 2 + (line / 5) ** 2), position_error_mm=mm, face_error_deg=face, line_error_deg=line,
                           crossing_s=t - dt + u * dt, speed_m_s=np.linalg.norm(vel[:3]), toe_speed_m_s=np.linalg.norm(toe), q_rad=q, v_rad_s=v, tau_n_m=tau)
                return out, series
            before = now
            k1 = self.rate(t, q, v, tau)
            k2 = self.rate(t + dt / 2, *(y + dt / 2 * k for y, k in zip((q, v, tau), k1)))
            k3 = self.rate(t + dt / 2, *(y + dt / 2 * k for y, k in zip((q, v, tau), k2)))
            k4 = self.rate(t + dt, *(y + dt * k for y, k in zip((q, v, tau), k3)))
            q, v, tau = (y + dt / 6 * (a + 2 * b + 2 * c + d) for y, a, b, c, d in zip((q, v, tau), k1, k2, k3, k4))
            tau = self.inside(v, tau)
        raise RuntimeError("the bat never reached the planned contact")


def angle_of(R, wanted, ref, direction):
    """degrees between a direction of the bat and the planned one"""
    d = np.array(ref.chain["bat"][direction]); a, b = R @ d, wanted @ d
    return float(np.arctan2(np.linalg.norm(np.cross(a, b)), a @ b) / D2R)


def fastest(law_at, guess_s, dt):
    """stroke time at which the error is 1, by secants on its logarithm from a close guess"""
    f = lambda T: np.log(law_at(T).swing(dt)[0]["error"])
    a, b = guess_s, guess_s * 1.003; fa, fb = f(a), f(b)
    for _ in range(8):
        c = b - fb * (b - a) / (fb - fa)
        if abs(c - b) < 1e-7:
            break
        a, fa, b, fb = b, fb, c, f(c)
    return c


def main():
    import json
    from pilot_figures import BATS, FIXED_T, link_table
    here = os.path.dirname(os.path.abspath(__file__))
    prototype = json.load(open(os.path.join(here, "pilot_figures.json")))
    fixed, searches = {}, []
    for stroke, T in FIXED_T.items():
        stored = reference_path(stroke)
        for who, player, bats in BATS:
            for name, bat in bats:
                rig = Rig(player, bat, dt=1e-3); path = stored if who == "adult" else close_path(rig, stored)
                chain = rounded(link_table(rig))
                def law_at(T):
                    B = [b[0] for b in basis(np.array([0.0]))[1]]
                    tau = alloc(rig, B[0] @ path, np.zeros(rig.m.nv), B[2] @ path / T ** 2)[1]
                    return Law(chain, rig.cp_, rig.cn, rig.vm, path, T, tau)
                row = next(r for r in prototype["searches"] if (r["stroke"], r["player"], r["bat"]) == (stroke, who, name))
                guess = 2 * row["dt_0.00025_s"]["fastest_s"] - row["dt_0.0005_s"]["fastest_s"]
                T_fast = fastest(law_at, guess, 5e-4); o, _ = law_at(T_fast).swing(5e-4)
                row = dict(stroke=stroke, player=who, bat=name, rig=f"{stroke} {who}", bat_link=chain["links"][chain["bat"]["link"]],
                           fastest_s=T_fast, start_tau_n_m=law_at(T_fast).start, at_fastest=o)
                if name == "middle":
                    row["at_other_times"] = [dict(times_fastest=k, **{a: b for a, b in law_at(k * T_fast).swing(5e-4)[0].items() if not a.endswith(("_rad", "_s2", "n_m", "rad_s"))})
                                             for k in (1.10, 1.05, 0.97, 0.94)]
                    law = law_at(T)
                    fixed[stroke] = dict(stroke_time_s=T, start_tau_n_m=law.start, **{f"dt_{dt:g}_s": law.swing(dt)[0] for dt in (1e-3, 5e-4, 2.5e-4)})
                    first = law.rate(0.0, law.path[0](0.0), np.zeros(law.ref.n), law.start)
                    fixed[stroke]["first_rate"] = dict(acceleration_rad_s2=first[1], torque_rate_n_m_s=first[2])
                    if stroke == "pull":
                        fixed[stroke]["series_dt_0.25ms"] = law.swing(2.5e-4, 0.010)[1]
                searches.append(row)
                print(stroke, who, name, round(T_fast, 5), {k: round(float(v), 4) for k, v in o.items() if k.endswith(("error", "m_s", "mm", "deg"))}, flush=True)
    write(os.path.join(here, "continuous_law.json"), rounded(dict(made_by="continuous_law.py", fixed_time=fixed, searches_dt_0_5ms=searches), 10))


if __name__ == "__main__":
    main()
