"""open_chain.json: one arm and a bat under torques that are polynomials in time.

Reference: Pinocchio ABA integrated by DOP853 (rtol 1e-11). Beside it MuJoCo RK4 at 1 ms and 0.25 ms.
"""
import os
import numpy as np
from chain import Reference, mujoco_swing, rounded, torque_law, write
from player_chain import ADULT, CHILD, damping, player_chain
from stroke import stroke

DURATION = 0.25
TIMES = np.linspace(0, DURATION, 11)


def main():
    chains = []
    for name, size, reach in (("adult", ADULT, 0.95), ("twelve", CHILD, 0.90)):
        chain = rounded(player_chain(size, 1)); ref = Reference(chain); d = damping(size, 1)
        q0, c = stroke(ref, size["length"], d, DURATION, degree=8, reach=reach)
        v0 = np.zeros(ref.n); cases = []
        for scale in (0.7, 1.0, 1.2):
            law = torque_law(c, DURATION, d, scale)
            q, v = ref.swing(q0, v0, law, TIMES); toe, vel, energy = [], [], []
            for a, b in zip(q, v):
                ref.place(a, b); toe.append(ref.at("toe")); vel.append(ref.velocity("toe")[0]); energy.append(ref.energy(a, b))
            others = {}
            for dt in (1e-3, 2.5e-4):
                _, p, w = mujoco_swing(chain, q0, v0, law, TIMES, dt)
                others[f"dt_{dt:g}_s"] = dict(toe_m=p[-1], toe_velocity_m_s=w[-1],
                                              toe_off_by_m=np.abs(p - toe).max(), toe_velocity_off_by_m_s=np.abs(w - vel).max())
            assert others["dt_0.00025_s"]["toe_velocity_off_by_m_s"] < 1e-3
            print(name, scale, "toe", np.linalg.norm(vel[-1]), "m/s; MuJoCo off by", [o["toe_velocity_off_by_m_s"] for o in others.values()], "fastest joint", np.abs(v).max())
            cases.append(dict(scale=scale, times_s=TIMES, q_rad=rounded(q, 12), v_rad_s=rounded(v, 12), toe_m=rounded(toe, 12),
                              toe_velocity_m_s=rounded(vel, 12), energy_j=rounded(energy, 12), mujoco_rk4=rounded(others, 10)))
        a, _ = ref.acceleration(q[5], v[5], c.sum(1))
        chains.append(dict(name=name, chain=chain, duration_s=DURATION, damping_n_m_s_per_rad=d, q0_rad=q0, v0_rad_s=v0, torque_n_m=c, cases=cases,
                           evaluation=dict(q_rad=q[5], v_rad_s=v[5], tau_n_m=c.sum(1), acceleration_rad_s2=a)))
    write(os.path.join(os.path.dirname(os.path.abspath(__file__)), "open_chain.json"),
          dict(made_by="open_chain.py", law="tau_j = scale * sum_k torque_n_m[j][k] (t/duration)^k - damping_j v_j", chains=chains))


if __name__ == "__main__":
    main()
