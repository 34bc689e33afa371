"""free_flight.json: a bat that spins without torque, and a bat that swings from the bench pivot.

Spin: Euler's equations and the attitude by SciPy DOP853; the chain (three hinges through the centre of mass, no gravity)
gives the same motion, checked by Pinocchio. Pendulum: period by the complete elliptic integral, checked by the same ODE.
"""
import os
import numpy as np
from scipy.integrate import solve_ivp
from scipy.spatial.transform import Rotation
from scipy.special import ellipk
from chain import Reference, write
from player_chain import STANDARD_GRAVITY

INERTIA = np.array([0.0009, 0.077, 0.0775])
MASS, BALANCE, PIVOT = 1.2, 0.53, 0.1524
DURATION = 0.25


def spin(omega):
    """bat axes; y = (omega_B, quaternion xyzw)"""
    def rate(_, y):
        w, q = y[:3], y[3:]
        dq = 0.5 * np.r_[q[3] * w + np.cross(q[:3], w), -q[:3] @ w]
        return np.r_[-np.cross(w, INERTIA * w) / INERTIA, dq]
    times = np.linspace(0, DURATION, 6)
    y = solve_ivp(rate, (0, DURATION), np.r_[omega, 0, 0, 0, 1], "DOP853", rtol=1e-12, atol=1e-13, t_eval=times).y
    R = Rotation.from_quat(y[3:].T).as_matrix()
    chain = gimbal(); ref = Reference(chain); v0 = np.array([omega[1], omega[2], omega[0]])
    q, _ = ref.swing(np.zeros(3), v0, lambda t, v: np.zeros(3), times)
    for i in range(len(times)):
        ref.place(q[i]); assert np.abs(ref.turn() - R[i]).max() < 1e-8
        assert np.abs(R[i] @ (INERTIA * y[:3, i]) - INERTIA * omega).max() < 1e-9
    return dict(omega0_rad_s=omega, chain_q0_rad=[0.0] * 3, chain_v0_rad_s=v0, times_s=times, rotation_rows=R.reshape(len(times), 9),
                omega_rad_s=np.einsum("tij,jt->ti", R, y[:3]), angular_momentum_kg_m2_s=INERTIA * omega, kinetic_energy_j=0.5 * omega @ (INERTIA * omega))


def gimbal():
    link = lambda name, parent, axis, mass, i: dict(name=name, parent=parent, offset=[0.0] * 3, axis=axis, mass=mass, com=[0.0] * 3, inertia_com=i)
    return dict(gravity_m_s2=0.0, loop=None,
                links=[link("about y", -1, [0.0, 1.0, 0.0], 0.0, [0.0] * 6), link("about z", 0, [0.0, 0.0, 1.0], 0.0, [0.0] * 6),
                       link("bat", 1, [1.0, 0.0, 0.0], MASS, [*INERTIA, 0.0, 0.0, 0.0])],
                bat=dict(link=2, top_of_handle=[-BALANCE, 0.0, 0.0], toe_dir=[1.0, 0.0, 0.0], face_dir=[0.0, 0.0, 1.0],
                         top_hand=[0.06 - BALANCE, 0.0, 0.0], toe=[0.86 - BALANCE, 0.0, 0.0]))


def pendulum(degrees):
    d = BALANCE - PIVOT; pivot_inertia = INERTIA[1] + MASS * d * d
    w2 = MASS * STANDARD_GRAVITY * d / pivot_inertia; a = np.radians(degrees)
    exact = 4 / np.sqrt(w2) * ellipk(np.sin(a / 2) ** 2)
    hit = lambda t, y: y[0]
    hit.direction = -1
    s = solve_ivp(lambda t, y: [y[1], -w2 * np.sin(y[0])], (0, exact), [a, 0], "DOP853", rtol=1e-12, atol=1e-13, events=hit)
    assert abs(4 * s.t_events[0][0] - exact) < 1e-9
    return dict(amplitude_deg=degrees, period_s=exact, small_swing_period_s=2 * np.pi / np.sqrt(w2))


def main():
    d = BALANCE - PIVOT
    hung = dict(gravity_m_s2=STANDARD_GRAVITY, loop=None,
                links=[dict(name="bat", parent=-1, offset=[0.0, 0.0, 1.0], axis=[0.0, 1.0, 0.0], mass=MASS, com=[0.0, 0.0, -d],
                            inertia_com=[INERTIA[2], INERTIA[1], INERTIA[0], 0.0, 0.0, 0.0])],
                bat=dict(link=0, top_of_handle=[0.0, 0.0, PIVOT], toe_dir=[0.0, 0.0, -1.0], face_dir=[1.0, 0.0, 0.0],
                         top_hand=[0.0, 0.0, PIVOT - 0.06], toe=[0.0, 0.0, PIVOT - 0.86]))
    write(os.path.join(os.path.dirname(os.path.abspath(__file__)), "free_flight.json"), dict(
        made_by="free_flight.py",
        spin=dict(mass_kg=MASS, inertia_com_kg_m2=INERTIA, chain=gimbal(),
                  cases=[spin(np.array(w)) for w in ([6.0, 35.0, 3.0], [25.0, 20.0, -4.0], [0.5, 36.0, 0.1])]),
        pendulum=dict(mass_kg=MASS, balance_from_top_m=BALANCE, pivot_from_top_m=PIVOT, pivot_to_com_m=d, com_inertia_kg_m2=INERTIA[1],
                      pivot_inertia_kg_m2=INERTIA[1] + MASS * d * d, chain=hung, cases=[pendulum(5.0), pendulum(10.0)])))


if __name__ == "__main__":
    main()
