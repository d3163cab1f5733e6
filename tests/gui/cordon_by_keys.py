"""A whole cordon by keys alone in a real window: first view, the tape, the cuts, the look back, a cut tried elsewhere.
Usage: cordon_by_keys.py SPURWRIGHT-WINDOW SPURWRIGHT"""
import sys

from plan import best_acts, node_of
from window_driver import Window, skip_without_tools

CODE = "08J5-J9SG-G00Q-0004-0005-06NH"
TOOL_KEYS = {"shears": "1", "loppers": "2", "saw": "3"}

skip_without_tools()
calm = {"kind": "spurwright-settings", "version": 1, "reduced_motion": True, "safety_seen": True}
window = Window(sys.argv[1], "--code", CODE, settings=calm)


def walk_to(axis):
    """With Tab, the short way round."""
    state = window.until(lambda s: s["at_rest"], "a picture at rest")
    walk, chosen = state["walk"], state["chosen"]
    if chosen == axis:
        return
    if chosen is None:
        forward, back = walk.index(axis) + 1, len(walk) - walk.index(axis)
    else:
        forward = (walk.index(axis) - walk.index(chosen)) % len(walk)
        back = len(walk) - forward
    window.key(*(["Tab"] * forward if forward <= back else ["shift+Tab"] * back))
    window.until(lambda s: s["chosen"] == axis, axis)


def walk_to_node(node):
    at = window.until(lambda s: s["at_rest"], "a picture at rest")["chosen_node"]
    steps = int(node.split(".")[1]) - (int(at.split(".")[1]) if at else 0)
    if steps:
        window.key(*["period" if steps > 0 else "comma"] * abs(steps))
        window.until(lambda s: s["chosen_node"] == node, node)


try:
    window.xdotool("mousemove", 640, 650)
    state = window.until(lambda s: s["screen"] == "row" and s["at_rest"], "the row")
    steps = [w["name"] for w in state["widgets"] if w["name"].startswith("row.step.")]
    assert steps == ["row.step." + step for step in ("look", "choose", "clear", "spurs", "look-back")], steps
    acts = best_acts(sys.argv[2], CODE)
    assert not any(act[0] in ("lay", "tie") for act in acts)
    done = 0
    for act in acts:
        node = node_of(act[1])
        window.key("Escape")  # the tool in hand, or the choice
        walk_to(node.split(".")[0])
        if act[0] == "mark":
            assert act[2] == "spur", act
            window.key("m", "Return")
        else:
            walk_to_node(node)
            window.key(TOOL_KEYS[act[2]], "c")
        done += 1
        window.until(lambda s: s["done"] == done, f"act {done}, {' '.join(act)}")
    seen = [window.state()["step"]]
    for _ in range(7):
        if window.state()["finished"]:
            break
        step = window.state()["step"]
        window.key("ctrl+Return")
        state = window.until(lambda s: s["finished"] or s["step"] != step, "the next step")
        seen.append(state["step"])
    assert not {"lengths", "lay-and-tie"} & set(seen), seen
    state = window.until(lambda s: s["finished"] and s.get("best") is not None, "the look back with the best plan")
    print(f"{window.actions} key presses for {done} acts, {state['points']} points, the best plan has {state['best']}")
    assert state["points"] == state["best"]
    window.key("n")
    window.key("b", "b")
    window.key("i")
    cut = window.until(lambda s: s.get("moved"), "a cut tried elsewhere")["moved"]
    window.key("l" if cut["at"] + 1 < cut["ends"] else "k")
    moved = window.until(lambda s: s.get("moved") and s["moved"]["at"] != cut["at"], "it moved")["moved"]
    assert moved["points"] <= state["best"], moved
    window.key("o")
    window.until(lambda s: s.get("moved") and s["moved"]["axis"] != cut["axis"], "another piece's cut")
    window.key("Escape")
    window.until(lambda s: not s.get("moved") and s["finished"], "what was cut")
    assert window.state()["points"] == state["points"]
    window.key("r")
    window.until(lambda s: not s["finished"] and s["done"] == 0, "the cordon before any choice")
finally:
    window.close()
