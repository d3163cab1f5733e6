"""A whole cordon by keys alone in a real window: first view, the tape, the cuts, the look back, a cut tried elsewhere.
Usage: cordon_by_keys.py SPURWRIGHT-WINDOW SPURWRIGHT"""
import sys

from hand import Hand
from plan import best_acts
from window_driver import Window, skip_without_tools

CODE = "08J5-J9SG-G00Q-0004-0005-06NH"

skip_without_tools()
calm = {"kind": "spurwright-settings", "version": 1, "reduced_motion": True, "safety_seen": True}
window = Window(sys.argv[1], "--code", CODE, settings=calm)
hand = Hand(window, roles=["spur"])


try:
    window.xdotool("mousemove", 640, 650)
    state = window.until(lambda s: s["screen"] == "row" and s["at_rest"], "the row")
    steps = [w["name"] for w in state["widgets"] if w["name"].startswith("row.step.")]
    assert steps == ["row.step." + step for step in ("look", "choose", "clear", "spurs", "look-back")], steps
    acts = best_acts(sys.argv[2], CODE)
    assert not any(act[0] in ("lay", "tie") for act in acts)
    for done, act in enumerate(acts, start=1):
        hand.do(act, done)
    state, seen = hand.look_back()
    assert not {"lengths", "lay-and-tie"} & set(seen), seen
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
