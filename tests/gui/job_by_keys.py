"""The whole first job by keys alone in a real window; then the window is killed and the work is offered back.
Usage: job_by_keys.py SPURWRIGHT-WINDOW SPURWRIGHT"""
import sys

from plan import best_acts, node_of
from window_driver import Window, skip_without_tools

ROLES = ["left", "right", "spur"]
TOOL_KEYS = {"shears": "1", "loppers": "2", "saw": "3"}

skip_without_tools()
calm = {"kind": "spurwright-settings", "version": 1, "reduced_motion": True}
window = Window(sys.argv[1], "--scene", "first", settings=calm)


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
    """From where the walk stands: wood that bears what stays is chosen just beyond it."""
    at = window.until(lambda s: s["at_rest"], "a picture at rest")["chosen_node"]
    steps = int(node.split(".")[1]) - (int(at.split(".")[1]) if at else 0)
    if steps:
        window.key(*["period" if steps > 0 else "comma"] * abs(steps))
        window.until(lambda s: s["chosen_node"] == node, node)


try:
    window.xdotool("mousemove", 640, 650)
    window.key("Return")
    state = window.until(lambda s: s["screen"] == "row", "the row")
    window.key("Escape")  # not watched first
    window.key("F2")
    acts = best_acts(sys.argv[2], state["code"])
    done = 0
    for act in acts:
        node = node_of(act[1])
        axis = node.split(".")[0]
        window.key("Escape")  # the tool in hand, or the choice
        walk_to(axis)
        if act[0] == "mark":
            window.key("m", *["Right"] * ROLES.index(act[2]), "Return")
        elif act[0] == "cut":
            walk_to_node(node)
            window.key(TOOL_KEYS[act[2]], "c")
        elif act[0] == "lay":
            window.key("l", "Left" if act[2] == "left" else "Right")
        else:
            walk_to_node(node)
            window.key("t")
        done += 1
        window.until(lambda s: s["done"] == done, f"act {done}, {' '.join(act)}")
    window.key("ctrl+z")
    window.until(lambda s: s["done"] == done - 1, "one act undone")
    window.key("ctrl+y")
    plan = window.until(lambda s: s["done"] == done, "it done again")["plan"]

    window.crash()
    window.arguments = ()
    window.open()
    window.until(lambda s: s["offered"], "the work offered back")
    window.click_widget("say.go-on")
    state = window.until(lambda s: s.get("done") == done, "the work as it was")
    assert state["plan"] == plan

    for _ in range(7):
        if window.state()["finished"]:
            break
        step = window.state()["step"]
        window.key("ctrl+Return")
        window.until(lambda s: s["finished"] or s["step"] != step, "the next step")
    state = window.until(lambda s: s["finished"] and s.get("best") is not None, "the look back with the best plan")
    print(f"{window.actions} key presses, {state['points']} points, the best plan has {state['best']}")
    assert state["points"] >= 50, state["points"]
    state_points = state["points"]
    assert state["points"] == state["best"]  # the best plan carried out by hand is worth what it says
    window.key("s")  # a winter on: both vines beside each other
    window.until(lambda s: s["two"] == "shown" and s["at_rest"], "the two vines of next winter")
    window.key("F5", "2")
    state = window.until(lambda s: s["two"] == "better" and s["at_rest"] and not s["finished"], "the better one in hand")
    walk_to(state["walk"][0])
    window.key("m", "Return")
    plan = window.until(lambda s: s["done"] == 1, "a tape on it")["plan"]
    window.key("Escape", "x")
    window.until(lambda s: s["two"] == "shown", "both again")
    window.key("2")
    window.until(lambda s: s["two"] == "better" and s.get("plan") == plan, "it taken up as it was left")
    window.key("x")
    window.until(lambda s: s["two"] == "shown", "both again")
    window.key("Escape")
    window.until(lambda s: s["two"] is None and s["finished"] and s["points"] == state_points, "the look back that they grew from")
    window.key("r")
    window.until(lambda s: not s["finished"] and s["done"] == 0, "the vine before any choice")
finally:
    window.close()
