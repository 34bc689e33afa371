"""The stroke law of continuous_law.py with a bottom hand that holds the handle: three more unknowns, the couple of that
hand on the bat in the bat's axes, within what its grip holds, called up with the torques; its share of that lags as they do.

holding_law.json: the adult's middle bat at the fixed stroke times of pilot_figures.json, RK4 at 1, 0.5 and 0.25 ms, from the
starting torques of continuous_law.json and no couple. The paths are the prototype's, which turn the handle in the hand:
the hand is made to give way and to hold, so that both are compared.
"""
import json, os
import numpy as np
import pinocchio as pin
from chain import WORLD, rounded, write
from continuous_law import Law
from swing_pilot import CTL, NV, TAU_A, barrier, rotvec

LIMIT_N_M, TRACTION_N, CORNER, HOLD = np.array([4.0, 15.0, 15.0]), 280.0, 0.05, 0.35


class HoldingLaw(Law):
    def __init__(self, chain, positive, negative, fastest, control_points, T, start_tau):
        super().__init__(chain, positive, negative, fastest, control_points, T, np.r_[start_tau, np.zeros(3)])
        r = self.ref
        self.hand = r.frame[chain["loop"]["link_b"]]
        x, z = (np.array(chain["bat"][k]) for k in ("toe_dir", "face_dir"))
        self.axes = np.column_stack([x, np.cross(z, x), z])          # the bat's axes in its link
        r.place(self.path[0](0.0))
        self.held = r.d.oMf[self.hand].rotation.T @ r.turn()

    def inside(self, v, tau):
        return np.r_[super().inside(v, tau[:NV]), tau[NV:]]

    def limit(self, axes):
        """after a pass at the present q, v with no joint acceleration"""
        r = self.ref
        a = r.classical("bat_com") + np.array([0, 0, r.chain["gravity_m_s2"]])
        pull = r.chain["links"][r.chain["bat"]["link"]]["mass"] * (a @ axes[:, 0]) / TRACTION_N
        smooth = lambda y: 0.5 * (y + np.hypot(y, CORNER))
        return LIMIT_N_M * np.r_[np.sqrt(smooth(1 - pull ** 2) / smooth(1.0)), 1, 1]

    def rate(self, t, q, v, tau_share):
        r, w, h = self.ref, CTL["omega"], CTL["h"]
        tau = super().inside(v, tau_share[:NV])
        qd, vd, _ = self.wanted(t); ahead = self.wanted(t + h)
        p_d, R_d, vel_d, _ = self.bat(qd, vd); acc_ahead = self.bat(*ahead)[3]
        pin.computeAllTerms(r.m, r.d, q, v)
        M = np.triu(r.d.M) + np.triu(r.d.M, 1).T; bias = r.d.nle.copy()
        p, R, vel, drift = self.bat(q, v)
        J, closing = r.loop_jacobian(), r.classical("a") - r.classical("b")
        Jb = pin.getFrameJacobian(r.m, r.d, r.spots["contact"], WORLD)
        Jh = pin.getFrameJacobian(r.m, r.d, self.hand, WORLD)
        drift_h = pin.getFrameClassicalAcceleration(r.m, r.d, self.hand, WORLD).angular
        spin_h = pin.getFrameVelocity(r.m, r.d, self.hand, WORLD).angular
        R_h = r.d.oMf[self.hand].rotation
        axes = R @ self.axes
        Mi = np.linalg.inv(M); MJ = Mi @ J.T; S = np.linalg.inv(J @ MJ); P = Mi - MJ @ S @ MJ.T
        a0 = -P @ bias - MJ @ S @ closing
        turning = Jb[3:] - Jh[3:]
        response = np.hstack([P, P @ turning.T @ axes])
        limit = self.limit(axes); couple = tau_share[NV:] * limit
        ask = acc_ahead + 2 * w * (vel_d - vel) + w * w * np.r_[p_d - p, rotvec(R_d @ R.T)]
        ask_joints = ahead[2] + 2 * w * (vd - v) + w * w * (qd - q)
        ask_hold = 2 * w * (spin_h - vel[3:]) + w * w * rotvec(R_h @ self.held @ R.T)
        weight = np.r_[np.full(3, CTL["wpos"]), np.full(3, CTL["wrot"])]
        A1, b1 = (Jb @ response) * weight[:, None], (ask - drift - Jb @ a0) * weight
        A2, b2 = response * CTL["wpost"], (ask_joints - a0) * CTL["wpost"]
        A3, b3 = turning @ response * HOLD, (ask_hold - (drift[3:] - drift_h) - turning @ a0) * HOLD
        size = np.r_[0.5 * (self.cp + self.cn), limit]
        H = A1.T @ A1 + A2.T @ A2 + A3.T @ A3 + np.diag((CTL["weff"] / size) ** 2); g = A1.T @ b1 + A2.T @ b2 + A3.T @ b3
        cp, cn = self.capacity(v); act = np.where(tau > 0, tau / cp, tau / cn); k = 1 - np.exp(-h / TAU_A)
        hi, lo = act + k * (1 - act), act + k * (-1 - act)
        hi, lo = np.where(hi > 0, hi * cp, hi * cn), np.where(lo > 0, lo * cp, lo * cn)
        target = barrier(H, g, np.r_[lo, -limit], np.r_[hi, limit], np.r_[tau, couple], CTL["mu"], 60)
        return v, a0 + response @ np.r_[tau, couple], (target / np.r_[np.ones(NV), limit] - tau_share) / h


def main():
    here = os.path.dirname(os.path.abspath(__file__))
    read = lambda name: json.load(open(os.path.join(here, name)))
    rigs, before = read("pilot_figures.json")["rigs"], read("continuous_law.json")["fixed_time"]
    out = {}
    for stroke, it in before.items():
        rig = rigs[f"{stroke} adult"]
        law = HoldingLaw(rig["chain"], rig["capacity_positive_n_m"], rig["capacity_negative_n_m"], rig["fastest_joint_rad_s"],
                         rig["control_points_rad"], it["stroke_time_s"], it["start_tau_n_m"])
        row = dict(stroke_time_s=it["stroke_time_s"], start_tau_n_m=it["start_tau_n_m"])
        for dt in (1e-3, 5e-4, 2.5e-4):
            o = law.swing(dt)[0]
            o["couple_share"] = o["tau_n_m"][NV:]; o["tau_n_m"] = o["tau_n_m"][:NV]
            row[f"dt_{dt:g}_s"] = o
            print(stroke, dt, {k: round(float(v), 6) for k, v in o.items() if np.ndim(v) == 0}, o["couple_share"], flush=True)
        out[stroke] = row
    write(os.path.join(here, "holding_law.json"), rounded(dict(made_by="holding_law.py", limit_n_m=LIMIT_N_M, traction_n=TRACTION_N, fixed_time=out), 10))


if __name__ == "__main__":
    main()
