"""Prototype of the stroke law: cricket-bat swing with limited joint torques, closed two-hand chain in MuJoCo.

The stroke law in Rust is compared with its figures (pilot_figures.py). The stored joint paths of the three strokes are in
swing_pilot_paths.json. The planner that made them is not needed here and left out.
World W: x down the pitch, z up, origin between the feet.  Bat B: origin top of
handle, +x to toe, +z out of the face.  Right-hander, chest faces -y at yaw 0.
"""
import json, os
import numpy as np, mujoco as mj
from scipy.interpolate import BSpline
from dataclasses import dataclass
D2R = np.pi / 180
GRIP_ROLL, OBL = 60.0, 62.0                  # top hand about the handle; handle across the palm; degrees
KAPPA, ECC, TAU_A = 0.5, 1.4, 0.030          # Hill curvature, eccentric plateau, activation time constant

# ---------------------------------------------------------------- player, bat
@dataclass
class Player:
    stature: float = 1.80
    mass: float = 78.0
    strength: float = 1.0       # scales every torque capacity
    fatigue: float = 1.0        # scales arm, forearm, wrist and trunk alike unless group given
@dataclass
class Bat:
    mass: float = 1.20
    length: float = 0.85
    balance: float = 0.53       # CM from top of handle
    icm: float = None           # about transverse axis through the CM
    def inertia(self):
        i = self.icm if self.icm is not None else 0.0665 * self.mass * (self.length / 0.85) ** 2
        return i
    @property
    def swing_moment(self): return self.inertia() + self.mass * (self.balance - 0.1524) ** 2

# name, neg capacity, pos capacity, vmax, lo, hi, nominal (deg)
TRUNK = [("hips", 170, 170, 12, -45, 90, 15), ("yaw", 150, 150, 14, -45, 45, 5), ("flex", 220, 220, 20, -10, 60, 20), ("lean", 200, 200, 20, -30, 30, 0)]
ARM = [("sh_flex", 110, 95, 25, -60, 170, 50), ("sh_ab", 100, 90, 25, -55, 120, 5), ("sh_rot", 55, 70, 28, -80, 90, 20),
       ("elbow", 55, 70, 28, 3, 145, 50), ("pron", 15, 14, 30, -85, 85, 0), ("w_flex", 7, 12, 30, -70, 75, 0), ("w_rad", 10, 11, 30, -40, 27, 0)]
NAMES = [t[0] for t in TRUNK] + ["L_" + a[0] for a in ARM] + ["R_" + a[0] for a in ARM]
NV = 18

def hill(w):
    """torque factor at w = velocity/vmax (concentric positive) and its slope"""
    w = np.asarray(w, float); c = (ECC - 1) / (1 + 1 / KAPPA)
    con = (1 - w) / (1 + w / KAPPA); dcon = -(1 + 1 / KAPPA) / (1 + w / KAPPA) ** 2
    x = np.minimum(w, 0.0); ecc = 1 + (ECC - 1) * (-x) / (-x + c); decc = -(ECC - 1) * c / (-x + c) ** 2
    f = np.where(w > 0, np.maximum(con, 0), ecc); df = np.where(w > 0, np.where(con > 0, dcon, 0), decc)
    return f, df

class Rig:
    def __init__(s, player, bat, dt=5e-4, roll=GRIP_ROLL):
        s.player, s.bat = player, bat
        H, M = player.stature, player.mass; k = H / 1.80
        s.ua, s.fa, s.hg = 0.281 / 1.741 * H, 0.269 / 1.741 * H, 0.080 * k
        s.arm = s.ua + s.fa + s.hg; s.half = 0.180 * k
        s.hip, s.sh = 0.53 * H, 0.815 * H
        s.gt, s.gb = 0.060 * max(k, 0.9), 0.060 * max(k, 0.9) + 0.105 * max(k, 0.85)   # hand centres on the handle
        s.cp = bat.length - 0.15                                                     # contact point from top of handle
        th = s.sh - s.hip
        mt = 0.50 * M; It = mt * np.array([0.19 * 1.0, 0.18 * 1.0, 0.108]) ** 2 * k ** 2
        # the pelvis is a part of the trunk; standing upright both together are the whole; the thighs' upper ends turn with it
        mp, zp = 0.11 * M, 0.11 * th; Ip = mp * np.array([0.090, 0.080, 0.085]) ** 2 * k ** 2
        legs = 0.10 * (M / 78.0) * k ** 2; up = np.array([1.0, 1.0, 0.0])
        ma = mt - mp; za = (mt * 0.45 * th - mp * zp) / ma
        Ia = It + up * mt * (0.45 * th - za) ** 2 - Ip - up * mp * (zp - za) ** 2
        Ip = Ip + legs * np.array([1.0, 0.0, 1.0])
        def seg(m, L, com, r): return m, com * L, m * (L * np.array(r)) ** 2
        mu, cu, iu = seg(0.0271 * M, s.ua, 0.577, [0.285, 0.269, 0.158])
        mf, cf, jf = seg(0.0162 * M, s.fa, 0.457, [0.276, 0.265, 0.121])
        mh, ch, ih = seg(0.0061 * M, 0.0495 * H, 0.79, [0.628, 0.513, 0.401])
        ib = bat.inertia()
        c30, s30 = np.cos(OBL * D2R), np.sin(OBL * D2R)
        # bat axes in the hand frame: toe = (c30,0,-s30), face = +y ; y_B = z_B x x_B
        xb = np.array([c30, 0, -s30]); y0 = np.cross([0, 1.0, 0], xb); cr, sr = np.cos(roll * D2R), np.sin(roll * D2R)
        zb = cr * np.array([0, 1.0, 0]) + sr * y0; yb = np.cross(zb, xb)
        R = np.column_stack([xb, yb, zb]); qb = np.zeros(4); mj.mju_mat2Quat(qb, R.flatten())
        grip = np.array([0, 0, -s.hg]); org = grip - s.gt * xb
        def v(a): return " ".join(f"{x:.9g}" for x in a)
        def inert(m, z, I): return f'<inertial mass="{m:.6g}" pos="0 0 {z:.6g}" diaginertia="{v(np.maximum(I,1e-7))}"/>'
        def arm(side):
            g = 1 if side == "L" else -1
            j = lambda n, a: f'<joint name="{side}_{n}" type="hinge" axis="{v(a)}"/>'
            batx = f'''<body name="bat" pos="{v(org)}" quat="{v(qb)}"><inertial mass="{bat.mass}" pos="{bat.balance} 0 0" diaginertia="{0.0012*bat.mass/1.2:.6g} {ib+0.0006:.6g} {ib:.6g}"/></body>''' if side == "L" else ""
            return f'''<body name="{side}_ua" pos="0 {g*s.half} {th}">{j("sh_flex",[0,-1,0])}{j("sh_ab",[g,0,0])}{j("sh_rot",[0,0,-g])}{inert(mu,-cu,iu)}
 <body name="{side}_fa" pos="0 0 {-s.ua}">{j("elbow",[0,-1,0])}{j("pron",[0,0,-g])}{inert(mf,-cf,jf)}
 <body name="{side}_hand" pos="0 0 {-s.fa}">{j("w_flex",[-g,0,0])}{j("w_rad",[0,-1,0])}{inert(mh,-ch,ih)}{batx}</body></body></body>'''
        # z inertia of bat: about z_B (normal to face); y: about the in-face transverse axis
        xml = f'''<mujoco><option timestep="{dt}" integrator="implicitfast" gravity="0 0 -9.81"/><compiler angle="radian" autolimits="true"/>
<worldbody><body name="pelvis" pos="0 0 {s.hip}" euler="0 0 {-np.pi/2}"><joint name="hips" type="hinge" axis="0 0 1"/>
<inertial mass="{mp}" pos="0 0 {zp}" diaginertia="{v(Ip)}"/><body name="trunk" pos="0 0 0"><joint name="yaw" type="hinge" axis="0 0 1"/><joint name="flex" type="hinge" axis="0 1 0"/><joint name="lean" type="hinge" axis="1 0 0"/>
<inertial mass="{ma}" pos="0 0 {za}" diaginertia="{v(Ia)}"/>{arm("L")}{arm("R")}</body></body></worldbody>
<equality><connect body1="bat" body2="R_hand" anchor="{s.gb} 0 0" solref="{2*dt} 1" solimp="0.9999 0.9999 0.001 0.5 2"/></equality></mujoco>'''
        s.m = mj.MjModel.from_xml_string(xml); s.d = mj.MjData(s.m)
        s.m.eq_data[0, 0:3] = [s.gb, 0, 0]; s.m.eq_data[0, 3:6] = [0, 0, -s.hg]
        assert [s.m.joint(i).name for i in range(NV)] == NAMES
        s.bid, s.rid, s.lid = s.m.body("bat").id, s.m.body("R_hand").id, s.m.body("L_hand").id
        rows = TRUNK + ARM + ARM
        sc = player.strength * player.fatigue
        s.cn = np.array([r[1] for r in rows], float) * sc; s.cp_ = np.array([r[2] for r in rows], float) * sc
        s.vm = np.array([r[3] for r in rows], float)
        s.lo = np.array([r[4] for r in rows]) * D2R; s.hi = np.array([r[5] for r in rows]) * D2R; s.nom = np.array([r[6] for r in rows]) * D2R
        s._j1, s._j2, s._jr = np.zeros((3, NV)), np.zeros((3, NV)), np.zeros((3, NV)); s._t = np.zeros(NV)
        s.RbH = R
    def kin(s, q):
        d = s.d; d.qpos[:] = q; mj.mj_kinematics(s.m, d); mj.mj_comPos(s.m, d)
    def bat_pose(s):
        R = s.d.xmat[s.bid].reshape(3, 3); return s.d.xpos[s.bid].copy(), R.copy()
    def loop(s, jac=False):
        d = s.d; pb = d.xpos[s.bid] + d.xmat[s.bid].reshape(3, 3)[:, 0] * s.gb
        ph = d.xpos[s.rid] + d.xmat[s.rid].reshape(3, 3) @ np.array([0, 0, -s.hg])
        if not jac: return pb - ph
        mj.mj_jac(s.m, d, s._j1, None, pb, s.bid); mj.mj_jac(s.m, d, s._j2, None, ph, s.rid)
        return pb - ph, s._j1 - s._j2
    def tau(s, q, v, a, lam):
        """joint torques that give a, with lam = force of the bottom hand on the bat"""
        d = s.d; d.qpos[:] = q; d.qvel[:] = v; d.qacc[:] = a
        mj.mj_kinematics(s.m, d); mj.mj_comPos(s.m, d); mj.mj_comVel(s.m, d); mj.mj_rne(s.m, d, 1, s._t)
        g, J = s.loop(True)
        return s._t - J.T @ lam

# ---------------------------------------------------------------- spline of the joints
NK, DEG = 11, 4
S_END = 1.10
def basis(ns):
    n = NK; inner = n - DEG - 1
    t = np.r_[np.zeros(DEG + 1), np.linspace(0, S_END, inner + 2)[1:-1], np.full(DEG + 1, S_END)]
    s = np.linspace(0, S_END, ns) if np.isscalar(ns) else np.asarray(ns)
    B = []
    for dv in range(3):
        cols = []
        for i in range(n):
            c = np.zeros(n); c[i] = 1; b = BSpline(t, c, DEG); cols.append((b.derivative(dv) if dv else b)(s))
        B.append(np.array(cols).T)
    E = np.zeros((n, n - 1)); E[0, 0] = E[1, 0] = 1; E[2:, 1:] = np.eye(n - 2)   # zero velocity at the start; acceleration free (the backlift is being reversed)
    return s, [b @ E for b in B]
NC = NK - 1
def rotvec(R):
    w = 0.5 * np.array([R[2, 1] - R[1, 2], R[0, 2] - R[2, 0], R[1, 0] - R[0, 1]]); n = np.linalg.norm(w); c = (np.trace(R) - 1) / 2
    a = np.arctan2(n, c)
    return w * (a / n if n > 1e-9 else 1.0)

def lm(fun, x, iters=60, mu=1e-2, tol=1e-6, verbose=False):
    r, J = fun(x, True); f = r @ r
    for it in range(iters):
        H = J.T @ J; g = J.T @ r; ok = False
        for _ in range(16):
            dx = -np.linalg.solve(H + mu * np.diag(np.diag(H) + 1e-6), g)
            r2, _n = fun(x + dx, False); f2 = r2 @ r2
            if f2 < f: ok = True; break
            mu *= 4
        if not ok: break
        x = x + dx; dec = (f - f2) / f; mu = max(mu / 5, 1e-9)
        r, J = fun(x, True); f = r @ r
        if verbose: print(it, f, mu)
        if dec < tol: break
    return x, f, it

# ---------------------------------------------------------------- dynamics along a spline
def caps(rig, v):
    """torque available in each direction at joint speed v, and derivative with v"""
    fp, dp = hill(v / rig.vm); fn, dn = hill(-v / rig.vm)
    return rig.cp_ * fp, rig.cn * fn, rig.cp_ * dp / rig.vm, -rig.cn * dn / rig.vm

def contact_velocity(rig, q, v):
    rig.kin(q); o, R = rig.bat_pose(); p = o + R[:, 0] * rig.cp
    mj.mj_jac(rig.m, rig.d, rig._jr, None, p, rig.bid); return rig._jr @ v, p, R

FULLM_NEW = False
try:
    _m = mj.MjModel.from_xml_string("<mujoco><worldbody><body><joint/><geom size='1'/></body></worldbody></mujoco>"); _d = mj.MjData(_m); mj.mj_forward(_m, _d)
    mj.mj_fullM(_m, np.zeros((1, 1)), _d.qM)
except Exception: FULLM_NEW = True

def alloc(rig, q, v, a, p=6, iters=12):
    """bottom-hand force that spreads the load: weighted p-norm of torque over capacity"""
    t0 = rig.tau(q, v, a, np.zeros(3)); _, J = rig.loop(True); JT = J.T.copy()
    cp, cn, _, _ = caps(rig, v); lam = np.zeros(3); wt = np.ones(NV)
    for _ in range(iters):
        t = t0 - JT @ lam; c = np.where(t > 0, np.maximum(cp, 0.05 * rig.cp_), np.maximum(cn, 0.05 * rig.cn)); sh = np.abs(t) / c
        wn = (np.maximum(sh, 1e-3) / sh.max()) ** (p - 2); wt = 0.5 * wt + 0.5 * wn; ww = np.sqrt(wt + 1e-4) / c
        lam = np.linalg.lstsq(JT * ww[:, None], t0 * ww, rcond=None)[0]
    return lam, t0 - JT @ lam

def base_grid(ns=45):
    s = np.linspace(0, S_END, ns); return s  # contains 1.0 when ns = 45 (step 0.025)

# ---------------------------------------------------------------- forward simulation, torque-limited task control
def barrier(H, g, lo, hi, x0, mu, iters=15):
    """min 1/2 x'Hx - g'x - mu sum log((hi-x)(x-lo)/(hi-lo)^2): a smooth law inside the box"""
    w = hi - lo; x = np.clip(x0, lo + 0.02 * w, hi - 0.02 * w)
    for _ in range(iters):
        a, b = hi - x, x - lo
        gr = H @ x - g + mu * (1 / a - 1 / b); K = H + np.diag(mu * (1 / a ** 2 + 1 / b ** 2))
        dx = -np.linalg.solve(K, gr)
        neg = dx < 0; al = min(1.0, 0.95 * np.min(np.where(neg, -b, a) / np.where(dx == 0, 1e-300, dx)))
        x = x + al * dx
        if al == 1.0 and np.abs(dx / w).max() < 1e-8: break
    return x

# h preview s, mu barrier, omega bandwidth 1/s, weights: bat position, bat rotation, posture, effort
CTL = dict(h=0.003, mu=0.1, omega=25.0, wpos=1.0, wrot=0.35, wpost=0.06, weff=1.0)
def task_sim(rig, C, T, dt=1e-3, s_end=1.10, full=False, ctl=CTL):
    m, d = rig.m, rig.d; mj.mj_resetData(m, d); m.opt.timestep = dt
    m.eq_solref[0, 0] = 2 * dt
    N = int(np.ceil(s_end * T / dt)) + 1; tt = np.arange(N) * dt; ss = np.minimum(tt / T, S_END)
    _, B = basis(ss); Qd, Vd, Ad = B[0] @ C, B[1] @ C / T, B[2] @ C / T ** 2
    om = ctl["omega"]
    # bat reference along the plan
    d2 = mj.MjData(m); keep = rig.d; rig.d = d2
    Pd, PVd, WVd, PAd, WAd = [np.zeros((N, 3)) for _ in range(5)]; Rd = np.zeros((N, 3, 3))
    jp, jr = np.zeros((3, NV)), np.zeros((3, NV)); jp2, jr2 = np.zeros((3, NV)), np.zeros((3, NV))
    def jac(q, a, b):
        rig.kin(q); o, R = rig.bat_pose(); p = o + R[:, 0] * rig.cp; mj.mj_jac(m, rig.d, a, b, p, rig.bid); return p, R
    e = 1e-5
    for i in range(N):
        p, R = jac(Qd[i], jp, jr); Pd[i], Rd[i] = p, R; jac(Qd[i] + e * Vd[i], jp2, jr2)
        PVd[i], WVd[i] = jp @ Vd[i], jr @ Vd[i]; PAd[i] = jp @ Ad[i] + (jp2 - jp) @ Vd[i] / e; WAd[i] = jr @ Ad[i] + (jr2 - jr) @ Vd[i] / e
    qc = (basis(np.array([1.0]))[1][0] @ C)[0]; vcq = (basis(np.array([1.0]))[1][1] @ C)[0]
    vc, pstar, Rstar = contact_velocity(rig, qc, vcq); nrm = vc / np.linalg.norm(vc)
    rig.d = keep
    d.qpos[:] = Qd[0]; d.qvel[:] = 0
    lam0, t0 = alloc(rig, Qd[0], 0 * Qd[0], Ad[0]); cp, cn, _, _ = caps(rig, 0 * Qd[0])
    act = np.clip(np.where(t0 > 0, t0 / cp, t0 / cn), -1, 1); tau = t0
    M = np.zeros((NV, NV)); out = None; prev = None; hist = []; satn = np.zeros(NV); peak = np.zeros(NV); work = np.zeros(NV); h = np.zeros(NV)
    for i in range(N):
        q, v = d.qpos.copy(), d.qvel.copy(); rig.d = d2
        d2.qvel[:] = v; p, R = jac(q, jp, jr); mj.mj_comVel(m, d2); mj.mj_rne(m, d2, 0, h); mj.mj_crb(m, d2)
        mj.mj_fullM(m, d2, M) if FULLM_NEW else mj.mj_fullM(m, M, d2.qM)
        gap, Jg = rig.loop(True); Jg = Jg.copy(); Jb = np.vstack([jp, jr])
        jac(q + e * v, jp2, jr2); _, Jg2 = rig.loop(True); rig.d = d
        bb = np.r_[(jp2 - jp) @ v, (jr2 - jr) @ v] / e; gb = (Jg2 - Jg) @ v / e
        Mi = np.linalg.inv(M); MJ = Mi @ Jg.T; Sg = np.linalg.inv(Jg @ MJ); P = Mi - MJ @ Sg @ MJ.T
        a0 = -P @ h - MJ @ Sg @ gb
        k = min(i + int(round(ctl["h"] / dt)), N - 1)      # the torque follows with lag h: read the reference ahead
        ap = PAd[k] + 2 * om * (PVd[i] - jp @ v) + om ** 2 * (Pd[i] - p)
        aw = WAd[k] + 2 * om * (WVd[i] - jr @ v) + om ** 2 * rotvec(Rd[i] @ R.T)
        aq = Ad[k] + 2 * om * (Vd[i] - v) + om ** 2 * (Qd[i] - q)
        cp, cn, _, _ = caps(rig, v); cp = np.maximum(cp, 1e-2 * rig.cp_); cn = np.maximum(cn, 1e-2 * rig.cn)
        Wt = np.r_[np.full(3, ctl["wpos"]), np.full(3, ctl["wrot"])]
        A1 = (Jb @ P) * Wt[:, None]; b1 = (np.r_[ap, aw] - bb - Jb @ a0) * Wt
        A2 = P * ctl["wpost"]; b2 = (aq - a0) * ctl["wpost"]; ce = ctl["weff"] / (0.5 * (rig.cp_ + rig.cn))
        H = A1.T @ A1 + A2.T @ A2 + np.diag(ce ** 2); g = A1.T @ b1 + A2.T @ b2
        exh = 1 - np.exp(-ctl["h"] / TAU_A); ahi = act + exh * (1 - act); alo = act + exh * (-1 - act)   # reachable within the preview h
        hi = np.where(ahi > 0, ahi * cp, ahi * cn); lo = np.where(alo > 0, alo * cp, alo * cn)
        tgt = barrier(H, g, lo, hi, tau, ctl["mu"])
        tau = np.clip(tau, lo, hi); tau = tau + (1 - np.exp(-dt / ctl["h"])) * (tgt - tau); act = np.where(tau > 0, tau / cp, tau / cn)
        d.qfrc_applied[:] = tau; d.time = tt[i]; mj.mj_step1(m, d)
        o = d.xpos[rig.bid]; R = d.xmat[rig.bid].reshape(3, 3); p = o + R[:, 0] * rig.cp; mj.mj_jac(m, d, jp, jr, p, rig.bid); vcp = jp @ v
        mj.mj_jac(m, d, jp2, None, o + R[:, 0] * rig.bat.length, rig.bid); vt = jp2 @ v
        x = (p - pstar) @ nrm; cur = (tt[i], x, p.copy(), R.copy(), vcp, vt)
        if prev is not None and prev[1] < 0 <= x and tt[i] > 0.6 * T and out is None:
            w = -prev[1] / (x - prev[1]); mix = lambda k: prev[k] + w * (cur[k] - prev[k]); pc, Rc, vv, vt = mix(2), mix(3), mix(4), mix(5)
            an = lambda k: float(np.arctan2(np.linalg.norm(np.cross(Rc[:, k], Rstar[:, k])), Rc[:, k] @ Rstar[:, k])) / D2R
            out = dict(ok=True, t=prev[0] + w * dt, dt_ms=1e3 * (prev[0] + w * dt - T), pos=1e3 * float(np.linalg.norm(pc - pstar)), face=an(2), line=an(0), v=float(np.linalg.norm(vv)), vn=float(vv @ nrm), vtoe=float(np.linalg.norm(vt)))
            if not full: break
        prev = cur; sat = np.minimum(np.abs(tau - cp), np.abs(tau + cn)) < 0.02 * rig.cp_; satn += sat; peak = np.maximum(peak, np.abs(tau)); work += tau * v * dt
        mj.mj_step2(m, d)
        if full:
            hist.append(dict(t=tt[i], q=q, v=v, tau=tau.copy(), act=act.copy(), acc=d.qacc.copy(), target=tgt, lo=lo, hi=hi, H=H, g=g))
    if out is None: out = dict(ok=False, t=np.nan, dt_ms=np.nan, pos=999.0, face=99.0, line=99.0, v=0.0, vn=0.0, vtoe=0.0)
    out.update(sat=satn / max(i, 1), peak=peak, work=work); out["E"] = float(np.sqrt((out["pos"] / 25) ** 2 + (out["face"] / 4) ** 2 + (out["line"] / 5) ** 2))
    out["start"] = dict(tau=t0, act=np.clip(np.where(t0 > 0, t0 / rig.cp_, t0 / rig.cn), -1, 1), lam=lam0, contact=pstar, contact_R=Rstar, normal=nrm)
    if full: out["hist"] = hist
    return out

# ---------------------------------------------------------------- fastest controlled swing
def close_path(rig, Cref, iters=15):
    """joint path nearest to Cref that closes the loop for this rig"""
    S,B=basis(base_grid()); Q0=B[0]@Cref; C=Cref.copy()
    def f(x,jac):
        C=x.reshape(NC,NV);Q=B[0]@C;r=[];J=[]
        for j in range(len(S)):
            rig.kin(Q[j]); g,Jg=rig.loop(True); r+= [g/.0005,(Q[j]-Q0[j])/(5*D2R)]
            if jac: J+=[(Jg[:,None,:]*B[0][j][None,:,None]).reshape(3,-1)/.0005,(np.eye(NV)[:,None,:]*B[0][j][None,:,None]).reshape(NV,-1)/(5*D2R)]
        return np.concatenate(r),(np.vstack(J) if jac else None)
    x,c,it=lm(f,C.ravel(),iters); return x.reshape(NC,NV)
def fastest(rig,C,T0=0.40,ctl=CTL,Etol=1.0,dt=1e-3,tol=2e-4,trace=None):
    """largest T at which E crosses Etol, coming from slow strokes"""
    ev={}
    def E(T):
        if T not in ev: ev[T]=task_sim(rig,C,T,dt=dt,ctl=ctl)
        return np.log(ev[T]['E']/Etol)
    T=T0*1.10; e=E(T)
    while e>0 and T<1.5: T*=1.12; e=E(T)
    hi,ehi=T,e; lo=T
    while True:
        lo=hi/1.05; elo=E(lo)
        if elo>0 or lo<.08: break
        hi,ehi=lo,elo
    a,fa,b,fb=lo,elo,hi,ehi; side=0
    for _ in range(12):
        c=(a*fb-b*fa)/(fb-fa); c=min(max(c,a+.05*(b-a)),b-.05*(b-a)); fc=E(c)
        if fc>0:
            a,fa=c,fc
            if side==1: fb/=2
            side=1
        else:
            b,fb=c,fc
            if side==-1: fa/=2
            side=-1
        if b-a<tol: break
    # linear interpolation of outputs at E=1
    w=E(a)/(E(a)-E(b)); T=a+w*(b-a); oa,ob=ev[a],ev[b]
    r={k:oa[k]+w*(ob[k]-oa[k]) for k in ('t','v','vn','vtoe','pos','face','line','dt_ms')}; r.update(T=T,n=len(ev),peak=oa['peak']+w*(ob['peak']-oa['peak']),sat=ob['sat'],work=ob['work'])
    return r

PATHS = os.path.join(os.path.dirname(os.path.abspath(__file__)), "swing_pilot_paths.json")
def reference_path(name):
    """joint path of the stroke for the adult and the 1.20 kg bat"""
    return np.array(json.load(open(PATHS))[name]["control_points_rad"])
