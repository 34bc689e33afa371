"""random_chains.json: two hundred drawn players, bats and torque histories on the two-armed chain; final toe only.

Same reference as closed_chain.py. A case stores the factors it was drawn with; the chain follows from the base chain by
  length factor k (all offsets, centres of mass and loop points of the player), mass factor w (w masses, w k^2 inertias),
  damping k w times the base; the bat's link (offset, mass, com, inertia_com) and the points on it as stored.
Torques: coefficients times torque_scale of each joint. Initial pose and speed are stored, closed to 1e-10.
"""
import os
import numpy as np
from chain import Reference, mujoco_swing, rounded, torque_law, write
from player_chain import ADULT, damping, player_chain
from stroke import stroke

DURATION, SEED, CASES = 0.25, 20261104, 200


def main():
    draw, cases, worst, dropped = np.random.default_rng(SEED), [], 0.0, 0
    base = {}
    while len(cases) < CASES:
        k = round(draw.uniform(0.78, 1.08), 4); w = round(float(k ** 3 * draw.uniform(0.85, 1.2)), 4)
        mass, length = round(draw.uniform(0.85, 1.35), 4), round(draw.uniform(0.72, 0.87), 4)
        i = mass * length ** 2
        bat = dict(mass=mass, length=length, balance=round(length * draw.uniform(0.58, 0.66), 4),
                   inertia=tuple(float(x) for x in np.round([0.0010 * i, 0.0865 * i, 0.0871 * i], 6)))
        size = dict(length=k, mass=w, bat=bat); chain = rounded(player_chain(size, 2), 9); ref = Reference(chain)
        d = damping(ADULT, 2) * k * w
        if not base:
            base["chain"] = Reference(player_chain(ADULT, 2)); base["q"], base["torque"] = stroke(base["chain"], 1.0, damping(ADULT, 2), DURATION)
        scale = np.round(w * k * draw.uniform(0.8, 1.1, ref.n), 4)
        q0 = ref.close(np.round(base["q"] + draw.normal(0, 0.05, ref.n), 4)).round(11)
        J = ref.jacobian(q0, "a")[:3] - ref.jacobian(q0, "b")[:3]
        v0 = draw.normal(0, 0.3, ref.n); v0 = (v0 - np.linalg.pinv(J) @ (J @ v0)).round(9)
        law = torque_law(base["torque"] * scale[:, None], DURATION, d)
        q, v = ref.swing(q0, v0, law, np.array([0, DURATION])); ref.place(q[-1], v[-1])
        toe, vel = ref.at("toe"), ref.velocity("toe")[0]
        _, p, other = mujoco_swing(chain, q0, v0, law, [DURATION], 2.5e-4)
        off = np.abs(other[-1] - vel).max()
        if off > 0.01:     # light links thrown about at hundreds of rad/s: no case to compare steps of 1 ms with
            dropped += 1; continue
        worst = max(worst, off)
        b = chain["links"][chain["bat"]["link"]]
        cases.append(dict(length_factor=k, mass_factor=w, bat_offset=b["offset"], bat_mass=b["mass"], bat_com=b["com"], bat_inertia_com=b["inertia_com"],
                          bottom_hand=chain["loop"]["point_a"], toe=chain["bat"]["toe"], torque_scale=scale, q0_rad=q0, v0_rad_s=v0,
                          toe_m=rounded(toe, 10), toe_velocity_m_s=rounded(vel, 10), mujoco_off_by_m_s=rounded(off, 2)))
    speeds = [np.linalg.norm(c["toe_velocity_m_s"]) for c in cases]
    print("toe", min(speeds), np.median(speeds), max(speeds), "worst against MuJoCo", worst, "dropped", dropped)
    write(os.path.join(os.path.dirname(os.path.abspath(__file__)), "random_chains.json"), dict(
        made_by="random_chains.py", seed=SEED, dropped=dropped, duration_s=DURATION, base_damping_n_m_s_per_rad=damping(ADULT, 2), base_chain=rounded(player_chain(ADULT, 2), 9),
        law="tau_j = torque_scale_j * sum_k torque_n_m[j][k] (t/duration)^k - damping_j v_j", torque_n_m=base["torque"], cases=cases))


if __name__ == "__main__":
    main()
