"""A chain of hinged bodies as plain data, and the outside programs that move it.

A chain is a dictionary that goes into the JSON files unchanged:
  gravity_m_s2   along -z
  links          parent before child: {name, parent (-1 = world), offset, axis or null, mass, com, inertia_com}
                 offset: link origin in the parent's frame, metres.  axis: hinge through the link origin, null = welded.
                 All frames are parallel to the world at q = 0, so no rotations are needed.
                 inertia_com: [ixx, iyy, izz, ixy, ixz, iyz] about the centre of mass, tensor elements, kg m2.
  loop           null or {link_a, point_a, link_b, point_b, rows: 3}: point_a - point_b = 0; the multiplier is the
                 force of link_b on link_a at that point, in world axes
  bat            {link, top_of_handle, toe_dir, face_dir, top_hand, toe, contact?}: points and directions in the link's frame
Degrees of freedom are the hinges in the order of the links.
"""
import json
import mujoco
import numpy as np
import pinocchio as pin
from scipy.integrate import solve_ivp

WORLD = pin.ReferenceFrame.LOCAL_WORLD_ALIGNED


def tensor(six):
    xx, yy, zz, xy, xz, yz = six
    return np.array([[xx, xy, xz], [xy, yy, yz], [xz, yz, zz]])


def six(t):
    return [float(t[0, 0]), float(t[1, 1]), float(t[2, 2]), float(t[0, 1]), float(t[0, 2]), float(t[1, 2])]


def rounded(x, digits=10):
    """the same structure with floats cut to so many significant digits"""
    if isinstance(x, dict):
        return {k: rounded(v, digits) for k, v in x.items()}
    if isinstance(x, (list, tuple, np.ndarray)):
        return [rounded(v, digits) for v in x]
    if isinstance(x, (float, np.floating)):
        return float(f"{x:.{digits}g}")
    return int(x) if isinstance(x, np.integer) else x


def write(path, value):
    """JSON with one line for each list of numbers"""
    def text(v, pad):
        flat = json.dumps(v)
        if not isinstance(v, (dict, list)) or len(flat) < 110 or (isinstance(v, list) and not any(isinstance(i, (list, dict)) for i in v)):
            return flat
        inner = pad + " "
        if isinstance(v, dict):
            return "{\n" + ",\n".join(f"{inner}{json.dumps(k)}: {text(i, inner)}" for k, i in v.items()) + "\n" + pad + "}"
        return "[\n" + ",\n".join(inner + text(i, inner) for i in v) + "\n" + pad + "]"
    with open(path, "w") as f:
        f.write(text(json.loads(json.dumps(value, default=lambda a: a.tolist())), "") + "\n")


def hinges(chain):
    return [l for l in chain["links"] if l["axis"] is not None]


class Reference:
    """Pinocchio model of a chain: accelerations with rigid multipliers, kinematics of the bat"""

    def __init__(self, chain):
        self.chain, m = chain, pin.Model()
        m.gravity = pin.Motion(np.array([0, 0, -chain["gravity_m_s2"]]), np.zeros(3))
        joint, place, self.frame = [], [], []
        for i, l in enumerate(chain["links"]):
            up, at = (0, pin.SE3.Identity()) if l["parent"] < 0 else (joint[l["parent"]], place[l["parent"]])
            at = at * pin.SE3(np.eye(3), np.array(l["offset"], float))
            if l["axis"] is not None:
                up = m.addJoint(up, pin.JointModelRevoluteUnaligned(np.array(l["axis"], float)), at, f"{i} {l['name']}")
                at = pin.SE3.Identity()
            if l["mass"] > 0:
                m.appendBodyToJoint(up, pin.Inertia(l["mass"], np.array(l["com"], float), tensor(l["inertia_com"])), at)
            joint.append(up), place.append(at)
            self.frame.append(m.addFrame(pin.Frame(f"frame {i}", up, 0, at, pin.FrameType.OP_FRAME)))
        self.spots = {}
        def spot(name, link, point):
            self.spots[name] = m.addFrame(pin.Frame(name, joint[link], 0, place[link] * pin.SE3(np.eye(3), np.array(point, float)), pin.FrameType.OP_FRAME))
        b = chain["bat"]
        for name in ("top_hand", "toe", "contact"):
            if name in b:
                spot(name, b["link"], b[name])
        spot("bat_com", b["link"], chain["links"][b["link"]]["com"])
        if chain["loop"]:
            spot("a", chain["loop"]["link_a"], chain["loop"]["point_a"])
            spot("b", chain["loop"]["link_b"], chain["loop"]["point_b"])
        self.m, self.d = m, m.createData()
        self.n = m.nv

    def acceleration(self, q, v, tau):
        """joint accelerations and loop multiplier: M a + h = tau + J' lam, J a + Jdot v = 0"""
        m, d = self.m, self.d
        if not self.chain["loop"]:
            return pin.aba(m, d, q, v, tau).copy(), np.zeros(3)
        pin.computeAllTerms(m, d, q, v)
        M = np.triu(d.M) + np.triu(d.M, 1).T
        h = d.nle.copy()
        pin.forwardKinematics(m, d, q, v, np.zeros(self.n))
        pin.updateFramePlacements(m, d)
        J = self.loop_jacobian()
        drift = self.classical("a") - self.classical("b")
        k = np.linalg.solve(M, np.column_stack([tau - h, J.T]))
        lam = np.linalg.solve(J @ k[:, 1:], -drift - J @ k[:, 0])
        return k[:, 0] + k[:, 1:] @ lam, lam

    def loop_jacobian(self):
        return sum(s * pin.getFrameJacobian(self.m, self.d, self.spots[k], WORLD)[:3] for s, k in ((1, "a"), (-1, "b")))

    def classical(self, spot):
        return pin.getFrameClassicalAcceleration(self.m, self.d, self.spots[spot], WORLD).linear.copy()

    def place(self, q, v=None, a=None):
        z = np.zeros(self.n)
        pin.forwardKinematics(self.m, self.d, q, z if v is None else v, z if a is None else a)
        pin.updateFramePlacements(self.m, self.d)

    def gap(self, q):
        self.place(q)
        return self.at("a") - self.at("b")

    def jacobian(self, q, spot):
        pin.computeJointJacobians(self.m, self.d, q)
        pin.updateFramePlacements(self.m, self.d)
        return pin.getFrameJacobian(self.m, self.d, self.spots[spot], WORLD).copy()

    def at(self, spot):
        return self.d.oMf[self.spots[spot]].translation.copy()

    def velocity(self, spot):
        w = pin.getFrameVelocity(self.m, self.d, self.spots[spot], WORLD)
        return w.linear.copy(), w.angular.copy()

    def turn(self):
        """rotation of the bat's link"""
        return self.d.oMf[self.spots["toe"]].rotation.copy()

    def close(self, q, keep=()):
        """nearest pose with a closed loop, the kept joints not moved"""
        free = [i for i in range(self.n) if i not in keep]
        for _ in range(50):
            J = self.jacobian(q, "a")[:3] - self.jacobian(q, "b")[:3]
            gap = self.gap(q)
            if np.abs(gap).max() < 1e-15:
                break
            q = q.copy()
            q[free] -= np.linalg.pinv(J[:, free]) @ gap
        return q

    def swing(self, q0, v0, law, times):
        """DOP853 at a relative tolerance of 1e-11; law(t, v) gives the joint torques"""
        n = self.n
        def rate(t, y):
            return np.r_[y[n:], self.acceleration(y[:n], y[n:], law(t, y[n:]))[0]]
        s = solve_ivp(rate, (0, times[-1]), np.r_[q0, v0], "DOP853", t_eval=times, rtol=1e-11, atol=1e-12)
        assert s.success, s.message
        return s.y[:n].T, s.y[n:].T

    def energy(self, q, v):
        return pin.computeKineticEnergy(self.m, self.d, q, v) + pin.computePotentialEnergy(self.m, self.d, q)

    def hands(self, q, v, tau):
        """bottom-hand force on the bat, top-hand force and couple (about its own point), world axes"""
        a, lam = self.acceleration(q, v, tau)
        self.place(q, v, a)
        link = self.chain["links"][self.chain["bat"]["link"]]
        R = self.turn(); I = R @ tensor(link["inertia_com"]) @ R.T
        acc = pin.getFrameAcceleration(self.m, self.d, self.spots["bat_com"], WORLD)
        w, al = self.velocity("bat_com")[1], acc.angular
        needed = link["mass"] * (self.classical("bat_com") + [0, 0, self.chain["gravity_m_s2"]])
        top, com = self.at("top_hand"), self.at("bat_com")
        bottom = lam if self.chain["loop"] else np.zeros(3)
        arm = self.at("a") - top if self.chain["loop"] else np.zeros(3)
        couple = I @ al + np.cross(w, I @ w) + np.cross(com - top, needed) - np.cross(arm, bottom)
        return bottom, needed - bottom, couple


def torque_law(coefficients, duration, damping, scale=1.0):
    """tau_j = scale * sum_k c_jk (t/duration)^k - damping_j v_j"""
    c = np.array(coefficients) * scale; d = np.array(damping)
    k = np.arange(c.shape[1])
    return lambda t, v: c @ (t / duration) ** k - d * v


def mujoco_model(chain, dt):
    """the same chain in MuJoCo: hinges of massless links are gathered in the next body that has mass"""
    text = lambda a: " ".join(f"{x:.17g}" for x in a)
    links = chain["links"]
    children = lambda i: [k for k, l in enumerate(links) if l["parent"] == i]
    def body(i):
        l = links[i]; offset, joints = l["offset"], []
        while True:
            if l["axis"] is not None:
                joints.append(f'<joint type="hinge" axis="{text(l["axis"])}"/>')
            if l["mass"] > 0:
                break
            (i,) = children(i); l = links[i]
            assert not any(l["offset"]), "a massless link must share its origin with the next"
        inertial = f'<inertial mass="{l["mass"]:.17g}" pos="{text(l["com"])}" fullinertia="{text(l["inertia_com"])}"/>'
        return f'<body name="{i}" pos="{text(offset)}">{"".join(joints)}{inertial}{"".join(body(k) for k in children(i))}</body>'
    loop = chain["loop"]
    equality = "" if not loop else (f'<equality><connect body1="{loop["link_a"]}" body2="{loop["link_b"]}" anchor="0 0 0" '
                                    f'solref="{2 * dt} 1" solimp="0.9999 0.9999 0.001 0.5 2"/></equality>')
    m = mujoco.MjModel.from_xml_string(
        f'<mujoco><option timestep="{dt}" integrator="RK4" gravity="0 0 {-chain["gravity_m_s2"]}" tolerance="1e-14" iterations="200"/>'
        f'<compiler angle="radian"/><worldbody>{"".join(body(k) for k in children(-1))}</worldbody>{equality}</mujoco>')
    if loop:
        m.eq_data[0, 0:3], m.eq_data[0, 3:6] = loop["point_a"], loop["point_b"]
    return m


def mujoco_swing(chain, q0, v0, law, times, dt):
    """RK4 with the law inside every stage; poses at the times, toe position and velocity"""
    m = mujoco_model(chain, dt); d = mujoco.MjData(m)
    d.qpos[:], d.qvel[:] = q0, v0
    def passive(_, data):
        data.qfrc_passive[:] += law(data.time, data.qvel)
    body = m.body(str(chain["bat"]["link"])).id
    jac, out, step = np.zeros((3, m.nv)), [], 0
    mujoco.set_mjcb_passive(passive)
    try:
        for t in times:
            while step < round(t / dt):
                mujoco.mj_step(m, d); step += 1
            look = mujoco.MjData(m); look.qpos[:] = d.qpos
            mujoco.mj_kinematics(m, look); mujoco.mj_comPos(m, look)
            toe = look.xpos[body] + look.xmat[body].reshape(3, 3) @ np.array(chain["bat"]["toe"])
            mujoco.mj_jac(m, look, jac, None, toe, body)
            out.append((d.qpos.copy(), toe.copy(), jac @ d.qvel))
    finally:
        mujoco.set_mjcb_passive(None)
    return [np.array(x) for x in zip(*out)]
