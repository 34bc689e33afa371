"""pilot_figures.json: figures of the prototype stroke law (swing_pilot.py), for the law in Rust to be compared with.

The prototype holds its torques over a step and uses a semi-implicit step of first order, so its figures move with dt;
`limit` is the extrapolation 2 x(dt/2) - x(dt) of the two finest steps. continuous_law.json has the law without a step:
compare a law that is evaluated inside integrator stages with that one. Gravity is 9.81 here.
"""
import os
import numpy as np
import mujoco as mj
from chain import rounded, six, write
from swing_pilot import CTL, DEG, ECC, KAPPA, NAMES, NK, TAU_A, Bat, Player, Rig, S_END, close_path, fastest, reference_path, task_sim

ADULT, TWELVE = Player(), Player(stature=1.50, mass=40.0, strength=0.5)
BATS = (("adult", ADULT, (("light", Bat(mass=1.15, balance=0.51)), ("middle", Bat()), ("heavy", Bat(mass=1.30, balance=0.55)))),
        ("twelve", TWELVE, (("light", Bat(mass=0.92, length=0.80, balance=0.48)), ("heavy", Bat(mass=1.08, length=0.80, balance=0.515)))))
FIXED_T = dict(drive=0.30, pull=0.42, hook=0.42)


def link_table(rig):
    """the rig's chain with all frames parallel to the world at q = 0"""
    m, d = rig.m, mj.MjData(rig.m); mj.mj_kinematics(m, d)
    links, last = [], {0: (-1, np.zeros(3))}
    for b in range(1, m.nbody):
        parent, origin = last[m.body_parentid[b]]; R = d.xmat[b].reshape(3, 3)
        joints = range(m.body_jntadr[b], m.body_jntadr[b] + m.body_jntnum[b]) if m.body_jntnum[b] else [None]
        offset = d.xpos[b] - origin
        for j in joints:
            links.append(dict(name=m.body(b).name if j is None else m.joint(j).name, parent=parent, offset=offset, mass=0.0, com=np.zeros(3),
                              axis=None if j is None else R @ m.jnt_axis[j], inertia_com=[0.0] * 6))
            parent, offset = len(links) - 1, np.zeros(3)
        Ri = d.ximat[b].reshape(3, 3)
        links[-1].update(mass=m.body_mass[b], com=d.xipos[b] - d.xpos[b], inertia_com=six(Ri @ np.diag(m.body_inertia[b]) @ Ri.T))
        last[b] = (parent, d.xpos[b].copy())
    R, bat = d.xmat[rig.bid].reshape(3, 3), last[rig.bid][0]
    for l in links:                     # rounding of the trunk's quarter turn
        l.update({k: np.where(np.abs(l[k]) < 1e-12, 0.0, l[k]).astype(float) for k in ("axis", "offset", "com", "inertia_com") if l[k] is not None})
    return dict(gravity_m_s2=9.81, links=links,
                loop=dict(link_a=bat, point_a=R[:, 0] * rig.gb, link_b=last[rig.rid][0], point_b=[0.0, 0.0, -rig.hg], rows=3),
                bat=dict(link=bat, top_of_handle=[0.0, 0.0, 0.0], toe_dir=R[:, 0], face_dir=R[:, 2], top_hand=R[:, 0] * rig.gt,
                         toe=R[:, 0] * rig.bat.length, contact=R[:, 0] * rig.cp))


def figures(o):
    return dict(error=o["E"], position_error_mm=o["pos"], face_error_deg=o["face"], line_error_deg=o["line"], crossing_s=o["t"],
                speed_m_s=o["v"], toe_speed_m_s=o["vtoe"])


def fixed_time(rig, path, T):
    """the same stroke time at four steps; torque at the crossing, linear between the steps beside it"""
    out, keep = {}, None
    for dt in (1e-3, 5e-4, 2.5e-4, 1.25e-4):
        o = task_sim(rig, path, T, dt=dt, full=True); h = o["hist"]; k = int(o["t"] / dt); w = o["t"] / dt - k
        f = figures(o)
        for name in ("q", "v", "tau"):
            f[{"q": "q_rad", "v": "v_rad_s", "tau": "tau_n_m"}[name]] = (1 - w) * h[k][name] + w * h[k + 1][name]
        out[f"dt_{dt:g}_s"] = f; keep = keep or o
        fine = (dt, h)
    a, b = out["dt_0.00025_s"], out["dt_0.000125_s"]
    out["limit"] = {k: 2 * np.asarray(b[k]) - np.asarray(a[k]) for k in b}
    return out, keep, fine


def main():
    searches, rigs = [], {}
    for stroke in ("drive", "pull", "hook"):
        stored = reference_path(stroke)
        for who, player, bats in BATS:
            for name, bat in bats:
                rig = Rig(player, bat, dt=1e-3); path = stored if player is ADULT else close_path(rig, stored)
                row = dict(stroke=stroke, player=who, bat=name, bat_mass_kg=bat.mass, bat_length_m=bat.length, balance_from_top_m=bat.balance, swing_moment_kg_m2=bat.swing_moment)
                T = 0.40
                for dt in (1e-3, 5e-4, 2.5e-4):
                    o = fastest(rig, path, T0=T, dt=dt); T = 1.05 * o["T"]
                    row[f"dt_{dt:g}_s"] = dict(fastest_s=o["T"], crossing_s=o["t"], speed_m_s=o["v"], toe_speed_m_s=o["vtoe"], position_error_mm=o["pos"], face_error_deg=o["face"], line_error_deg=o["line"])
                searches.append(row)
                print(stroke, who, name, [(round(float(row[k]["fastest_s"]), 4), round(row[k]["speed_m_s"], 3)) for k in row if k.startswith("dt")], flush=True)
                if player is not ADULT and name == "light":
                    rigs[f"{stroke} {who}"] = dict(chain=link_table(rig), joints=NAMES, capacity_positive_n_m=rig.cp_, capacity_negative_n_m=rig.cn,
                                                   fastest_joint_rad_s=rig.vm, control_points_rad=path)
                if (who, name) != ("adult", "middle"):
                    continue
                steps, o, (dt, h) = fixed_time(rig, path, FIXED_T[stroke]); s, first = o["start"], o["hist"][0]
                rigs[f"{stroke} adult"] = dict(
                    chain=link_table(rig), joints=NAMES, capacity_positive_n_m=rig.cp_, capacity_negative_n_m=rig.cn, fastest_joint_rad_s=rig.vm,
                    control_points_rad=path, stroke_time_s=FIXED_T[stroke],
                    start=dict(tau_n_m=s["tau"], activation=s["act"], bottom_hand_force_n=s["lam"]),
                    planned_contact=dict(point_m=s["contact"], bat_rotation_rows=s["contact_R"], velocity_dir=s["normal"]),
                    first_step_dt_1ms=dict(lower_n_m=first["lo"], upper_n_m=first["hi"], target_n_m=first["target"], tau_n_m=first["tau"], acceleration_rad_s2=first["acc"]),
                    at_fixed_time=steps)
                if stroke == "pull":
                    for key, step, rows in (("series_dt_1ms", 1e-3, o["hist"]), ("series_dt_0.125ms", dt, h)):
                        n = round(0.010 / step)
                        rigs["pull adult"][key] = [dict(t_s=r["t"], q_rad=r["q"], v_rad_s=r["v"], tau_n_m=r["tau"], activation=r["act"]) for r in rows[::n]]
    write(os.path.join(os.path.dirname(os.path.abspath(__file__)), "pilot_figures.json"), rounded(dict(
        made_by="pilot_figures.py",
        law=dict(CTL, hill_curvature=KAPPA, eccentric_plateau=ECC, activation_time_s=TAU_A, contact_s=1.0, end_s=S_END, spline_degree=DEG, spline_points=NK,
                 first_two_points_equal=True, error_scales=dict(position_mm=25.0, face_deg=4.0, line_deg=5.0)),
        searches=searches, rigs=rigs), 10))


if __name__ == "__main__":
    main()
