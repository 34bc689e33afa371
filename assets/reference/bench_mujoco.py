"""bench_mujoco.json: cost of a swing in MuJoCo, a yardstick for our dynamics.

The adult closed chain of closed_chain.json, 0.25 s, RK4 at 1 ms with a stiff equality, torques and damping held as they
stand at the start (no callback), timed inside mj_step(nstep). The reading depends on the machine; it is noted, not tested.
Here (x86-64 server processor, one thread, otherwise idle): RK4 at 1 ms 6.6 ms a swing (26 us a step), implicitfast at
0.5 ms 3.6 ms (7 us a step); beside other work twice that.
"""
import json
import os
import platform
import time
import mujoco
import numpy as np
from chain import mujoco_model, write

HERE = os.path.dirname(os.path.abspath(__file__))


def main():
    case = json.load(open(os.path.join(HERE, "closed_chain.json")))["chains"][0]; out = {}
    for name, dt, integrator in (("rk4_1ms", 1e-3, "RK4"), ("implicitfast_0.5ms", 5e-4, "implicitfast")):
        m = mujoco_model(case["chain"], dt); m.dof_damping[:] = case["damping_n_m_s_per_rad"]
        m.opt.integrator = getattr(mujoco.mjtIntegrator, f"mjINT_{integrator.upper()}")
        m.opt.iterations, m.opt.tolerance = 100, 1e-8
        d = mujoco.MjData(m); steps, readings = round(0.25 / dt), []
        for _ in range(40):
            mujoco.mj_resetData(m, d); d.qpos[:] = case["q0_rad"]; d.qfrc_applied[:] = np.array(case["torque_n_m"])[:, 0]
            start = time.perf_counter(); mujoco.mj_step(m, d, nstep=steps); readings.append(1e3 * (time.perf_counter() - start))
        out[name] = dict(steps=steps, best_ms=round(min(readings), 3), median_ms=round(float(np.median(readings)), 3))
        print(name, out[name])
    write(os.path.join(HERE, "bench_mujoco.json"), dict(made_by="bench_mujoco.py", mujoco=mujoco.__version__, processor=platform.machine(), swing_s=0.25, **out))


if __name__ == "__main__":
    main()
