"""closed_chain.json: two arms and a bat, the bottom hand on a ball joint, under torques that are polynomials in time.

Reference: Pinocchio M, h, J and drift with rigid multipliers, integrated by DOP853 (rtol 1e-11). Beside it MuJoCo RK4
with a stiff equality at 1 ms and 0.25 ms. The top hand's wrench is the bat's Newton-Euler less the bottom hand's force.
"""
import copy
import os
import numpy as np
import pinocchio as pin
from chain import Reference, mujoco_swing, rounded, torque_law, write
from player_chain import ADULT, CHILD, damping, player_chain
from stroke import stroke

DURATION = 0.25
TIMES = np.linspace(0, DURATION, 11)


def arms_off(ref, bare, q, v, tau, bottom, top, couple):
    """the hands' loads put on the arms without their bat must ask for the same joint torques, N m"""
    a, _ = ref.acceleration(q, v, tau)
    needed = pin.rnea(bare.m, bare.d, q, v, a).copy()
    needed += bare.jacobian(q, "top_hand").T @ np.r_[top, couple] + bare.jacobian(q, "b")[:3].T @ bottom
    return np.abs(needed - tau).max()


def main():
    chains = []
    for name, size in (("adult", ADULT), ("twelve", CHILD)):
        chain = rounded(player_chain(size, 2)); ref = Reference(chain); d = damping(size, 2)
        without = copy.deepcopy(chain); without["links"][chain["bat"]["link"]]["mass"] = 0.0; bare = Reference(without)
        q0, c = stroke(ref, size["length"], d, DURATION)
        v0 = np.zeros(ref.n); cases = []
        for scale in (0.7, 1.0, 1.2):
            law = torque_law(c, DURATION, d, scale)
            q, v = ref.swing(q0, v0, law, TIMES)
            keep = {k: [] for k in ("toe_m", "toe_velocity_m_s", "bat_origin_m", "bat_link_rotation_rows", "bat_angular_velocity_rad_s",
                                    "bottom_force_n", "top_force_n", "top_couple_n_m", "energy_j")}
            gap = arms = 0.0
            for t, a, b in zip(TIMES, q, v):
                bottom, top, couple = ref.hands(a, b, law(t, b))
                arms = max(arms, arms_off(ref, bare, a, b, law(t, b), bottom, top, couple))
                ref.place(a, b); R = ref.turn(); vel, omega = ref.velocity("toe")
                gap = max(gap, np.abs(ref.at("a") - ref.at("b")).max())
                for k, x in zip(keep, (ref.at("toe"), vel, ref.at("toe") - R @ np.array(chain["bat"]["toe"]), R.ravel(), omega, bottom, top, couple, ref.energy(a, b))):
                    keep[k].append(x)
            others = {}
            for dt in (1e-3, 2.5e-4):
                _, p, w = mujoco_swing(chain, q0, v0, law, TIMES, dt)
                others[f"dt_{dt:g}_s"] = dict(toe_m=p[-1], toe_velocity_m_s=w[-1], toe_off_by_m=np.abs(p - keep["toe_m"]).max(),
                                              toe_velocity_off_by_m_s=np.abs(w - keep["toe_velocity_m_s"]).max())
            assert others["dt_0.00025_s"]["toe_velocity_off_by_m_s"] < 1e-3 and gap < 1e-11 and arms < 1e-6
            print(name, scale, "toe", np.linalg.norm(vel), "m/s; MuJoCo off by", [float(o["toe_velocity_off_by_m_s"]) for o in others.values()],
                  "gap", gap, "arms", arms, "bottom", np.linalg.norm(keep["bottom_force_n"], axis=1).max(), "N")
            cases.append(dict(scale=scale, times_s=TIMES, q_rad=rounded(q, 12), v_rad_s=rounded(v, 12), **rounded(keep, 11), mujoco_rk4=rounded(others, 10)))
        a, lam = ref.acceleration(q[5], v[5], c.sum(1))
        chains.append(dict(name=name, chain=chain, duration_s=DURATION, damping_n_m_s_per_rad=d, q0_rad=q0, v0_rad_s=v0, torque_n_m=c, cases=cases,
                           evaluation=dict(q_rad=q[5], v_rad_s=v[5], tau_n_m=c.sum(1), acceleration_rad_s2=a, bottom_force_n=lam)))
    write(os.path.join(os.path.dirname(os.path.abspath(__file__)), "closed_chain.json"),
          dict(made_by="closed_chain.py", law="tau_j = scale * sum_k torque_n_m[j][k] (t/duration)^k - damping_j v_j", chains=chains))


if __name__ == "__main__":
    main()
