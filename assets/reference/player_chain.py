"""Pelvis, trunk, one or two arms and a bat: the chain of the reference runs (invented, roughly an adult and a twelve-year-old)."""
import numpy as np
from chain import six, tensor

STANDARD_GRAVITY = 9.80665
ADULT = dict(length=1.0, mass=1.0, bat=dict(mass=1.2, length=0.86, balance=0.53, inertia=(0.0009, 0.077, 0.0775)))
CHILD = dict(length=0.82, mass=0.5, bat=dict(mass=0.95, length=0.78, balance=0.485, inertia=(0.0006, 0.0487, 0.0491)))
HANDLE_ACROSS_PALM_DEG = 30.0
TOP_HAND_M, BOTTOM_HAND_M, HAND_TO_GRIP_M = 0.06, 0.16, 0.08


def player_chain(size, arms):
    """arms 1: the top arm alone, the bat welded to it; 2: the bottom hand holds the bat by a ball joint"""
    k, w, bat = size["length"], size["mass"], size["bat"]
    links = []
    def add(name, parent, offset, axis, mass=0.0, com=0.0, inertia=(0, 0, 0)):
        links.append(dict(name=name, parent=parent, offset=[k * x for x in offset], axis=axis, mass=w * mass,
                          com=[0.0, 0.0, k * com], inertia_com=[w * k * k * i for i in inertia] + [0.0, 0.0, 0.0]))
        return len(links) - 1
    x, y, z = [1.0, 0.0, 0.0], [0.0, 1.0, 0.0], [0.0, 0.0, 1.0]
    i = add("pelvis", -1, (0, 0, 1.0), z, 8.0, 0.06, (0.15, 0.05, 0.17))
    i = add("trunk turn", i, (0, 0, 0), z)
    i = add("trunk flexion", i, (0, 0, 0), y)
    trunk = add("trunk", i, (0, 0, 0), x, 27.0, 0.345, (0.63, 0.55, 0.29))
    hands = []
    for side, sign in (("top", 1), ("bottom", -1))[:arms]:
        i = add(f"{side} shoulder flexion", trunk, (0, 0.18 * sign, 0.45), y)
        i = add(f"{side} shoulder abduction", i, (0, 0, 0), x)
        i = add(f"{side} upper arm", i, (0, 0, 0), z, 2.0, -0.165, (0.0126, 0.0114, 0.0039))
        i = add(f"{side} ulna", i, (0, 0, -0.29), y, 0.6, -0.05, (0.0011, 0.0011, 0.0006))
        i = add(f"{side} radius", i, (0, 0, -0.10), z, 0.57, -0.08, (0.0015, 0.0015, 0.0005))
        i = add(f"{side} wrist", i, (0, 0, -0.17), y)
        hands.append(add(f"{side} hand", i, (0, 0, 0), x, 0.46, -0.07, (0.0009, 0.0008, 0.0004)))
        if side == "top":
            angle = np.radians(HANDLE_ACROSS_PALM_DEG)
            toe_dir, face_dir = np.array([np.cos(angle), 0, -np.sin(angle)]), np.array([0, 1.0, 0])
            R = np.column_stack([toe_dir, np.cross(face_dir, toe_dir), face_dir])
            grip = k * HAND_TO_GRIP_M
            top_of_handle = np.array([0, 0, -grip]) - TOP_HAND_M * toe_dir
            # the bat's link has its origin at the top of the handle
            links.append(dict(name="bat", parent=hands[0], offset=top_of_handle.tolist(), axis=None, mass=bat["mass"],
                              com=(bat["balance"] * toe_dir).tolist(), inertia_com=six(R @ np.diag(bat["inertia"]) @ R.T)))
            bat_link = len(links) - 1
    loop = None if arms == 1 else dict(link_a=bat_link, point_a=(BOTTOM_HAND_M * toe_dir).tolist(), link_b=hands[1],
                                       point_b=[0.0, 0.0, -k * HAND_TO_GRIP_M], rows=3)
    return dict(gravity_m_s2=STANDARD_GRAVITY, links=links, loop=loop,
                bat=dict(link=bat_link, top_of_handle=[0.0, 0.0, 0.0], toe_dir=toe_dir.tolist(), face_dir=face_dir.tolist(),
                         top_hand=(TOP_HAND_M * toe_dir).tolist(), toe=(bat["length"] * toe_dir).tolist()))


def damping(size, arms):
    """passive joint damping, N m s/rad: without any, the light links spin at hundreds of rad/s under open-loop torques"""
    arm = [2.0, 2.0, 1.0, 1.0, 0.4, 0.4, 0.4] if arms == 1 else [1.0, 1.0, 0.5, 0.5, 0.1, 0.1, 0.1]
    return (size["mass"] * size["length"] * np.array([2.0, 2.0, 2.0, 2.0] + arm * arms)).round(4)
