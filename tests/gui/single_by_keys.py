"""A whole vine of a single cane by keys alone in a real window: what it asks, the tape, the cuts, one cane laid and tied, the
look back, its cane cut a bud shorter; then the same with a slip first, which the look back charges to that act.
Usage: single_by_keys.py SPURWRIGHT-WINDOW SPURWRIGHT"""
import sys

from hand import Hand
from plan import best_acts
from window_driver import Window, skip_without_tools

CODE = "04C9-HHS7-G00Q-0004-0005-0CQR"

skip_without_tools()
calm = {"kind": "spurwright-settings", "version": 1, "reduced_motion": True, "safety_seen": True}
window = Window(sys.argv[1], "--code", CODE, settings=calm)
hand = Hand(window)


def texts():
    return " ".join(w["label"] for w in window.until(lambda s: s["at_rest"], "a picture at rest")["widgets"])


try:
    window.xdotool("mousemove", 640, 650)
    window.until(lambda s: s["screen"] == "row" and s["at_rest"], "the row")
    assert "Keep one cane, and one spur for the next." in texts()
    acts = best_acts(sys.argv[2], CODE)
    assert [act[0] for act in acts].count("lay") == 1
    for done, act in enumerate(acts, start=1):
        hand.do(act, done)
    state, _ = hand.look_back()
    print(f"{window.actions} key presses for {len(acts)} acts, {state['points']} points, the best plan has {state['best']}")
    assert state["points"] == state["best"]
    assert "Yours is one of them." in texts()
    window.key("i")
    cut = window.until(lambda s: s.get("moved"), "a cut tried elsewhere")["moved"]
    window.key("k")
    moved = window.until(lambda s: s.get("moved") and s["moved"]["at"] == cut["at"] - 1, "it a bud shorter")["moved"]
    assert moved["points"] <= state["best"], moved
    window.key("Escape")
    window.until(lambda s: not s.get("moved"), "what was cut")

    window.key("r")
    window.until(lambda s: not s["finished"] and s["done"] == 0, "the vine before any choice")
    cane = next(act[1] for act in acts if act[0] == "lay")
    slip = ["cut", cane + ".0", "shears"]  # the cane to lay, off at its base
    hand.do(slip, 1)
    for done, act in enumerate(best_acts(sys.argv[2], CODE, "--after", f"cut {cane}.0+8.0 shears")[1:], start=2):
        hand.do(act, done)
    worse, _ = hand.look_back()
    assert worse["points"] < state["points"]
    for _ in range(worse["pieces"]):  # walked until the slip is named
        window.key("n")
        if f"Act 1 (take off {cane} at its base)" in texts():
            break
    assert f"Act 1 (take off {cane} at its base)" in texts(), texts()
    window.key("j")
    window.until(lambda s: not s["finished"] and s["done"] == 0, "the vine before that act")
finally:
    window.close()
