"""The whole first job by keys alone in a real window; then the window is killed and the work is offered back.
Usage: job_by_keys.py SPURWRIGHT-WINDOW SPURWRIGHT"""
import sys

from hand import Hand
from plan import best_acts
from window_driver import Window, skip_without_tools

skip_without_tools()
calm = {"kind": "spurwright-settings", "version": 1, "reduced_motion": True}
window = Window(sys.argv[1], "--scene", "first", settings=calm)
hand = Hand(window)


try:
    window.xdotool("mousemove", 640, 650)
    window.key("Return")
    state = window.until(lambda s: s["screen"] == "row", "the row")
    window.key("Escape")  # not watched first
    window.key("F2")
    acts = best_acts(sys.argv[2], state["code"])
    for done, act in enumerate(acts, start=1):
        hand.do(act, done)
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

    state, _ = hand.look_back()
    print(f"{window.actions} key presses, {state['points']} points, the best plan has {state['best']}")
    assert state["points"] >= 50, state["points"]
    state_points = state["points"]
    assert state["points"] == state["best"]  # the best plan carried out by hand is worth what it says
    window.key("s")  # a winter on: both vines beside each other
    window.until(lambda s: s["two"] == "shown" and s["at_rest"], "the two vines of next winter")
    window.key("F5", "2")
    state = window.until(lambda s: s["two"] == "better" and s["at_rest"] and not s["finished"], "the better one in hand")
    hand.walk_to(state["walk"][0])
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
