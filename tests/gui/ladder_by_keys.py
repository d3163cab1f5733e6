"""The ladder by keys alone: one vine watched, then one on which only choosing is one's own, killed in the middle of what is
shown and taken up again; its look back, and one taken on the rung that is suggested then.
Usage: ladder_by_keys.py SPURWRIGHT-WINDOW SPURWRIGHT"""
import sys

from hand import Hand
from plan import best_acts
from window_driver import Window, skip_without_tools

skip_without_tools()
calm = {"kind": "spurwright-settings", "version": 1, "reduced_motion": True, "safety_seen": True}
window = Window(sys.argv[1], settings=calm)
hand = Hand(window)


def find(words, command):
    """A command by its name: what a keyboard reaches everything with."""
    window.key("ctrl+f")
    window.xdotool("type", "--delay", "12", words)
    names = lambda s: {w["name"] for w in s["widgets"]}
    window.until(lambda s: "find." + command in names(s) and "find.settings" not in names(s), "the found command alone")
    window.key("Return")


try:
    window.xdotool("mousemove", 640, 700)
    find("the ladder lessons", "ladder")
    window.until(lambda s: s["screen"] == "ladder" and s["ladder"] == 0, "the ladder, on its first rung")
    window.key("g")
    state = window.until(lambda s: s["screen"] == "row" and s["watching"] is not None, "the first vine watched")
    assert state["rung"] == 0 and state["scene"] == "first" and state["scene_number"] == 0
    window.key("space", "space")
    window.until(lambda s: s["watching"] == 2, "two acts on")
    window.key("End")
    window.until(lambda s: s["watching"] == s["watch_acts"], "watched to the end")
    window.until(lambda s: s["ladder"] == 1, "one rung up")
    window.key("n")
    state = window.until(lambda s: s["rung"] == 1 and s["scene_number"] == 1 and s["watching"] is None, "a vine where choosing is one's own")

    marks = [act for act in best_acts(sys.argv[2], state["code"]) if act[0] == "mark"]
    window.key("F2")
    for done, act in enumerate(marks, start=1):
        hand.do(act, done)
    state = window.until(lambda s: s["step"] == "clear", "the step that is shown")
    assert state["shown"] == 0
    window.key("Escape", "ctrl+Return")
    window.until(lambda s: s["showing"] == "clear", "clearing shown")
    window.key("space", "space", "BackSpace")
    plan = window.until(lambda s: s["done"] == 5 and s["shown"] >= 1, "one act shown, one taken back")["plan"]

    window.crash()
    window.open()
    window.until(lambda s: s["offered"], "the work offered back")
    window.click_widget("say.go-on")
    state = window.until(lambda s: s.get("done") == 5 and s["screen"] == "row", "the work as it was")
    assert state["rung"] == 1 and state["plan"] == plan
    window.key("ctrl+Return")
    for step in ("clear", "spurs", "lengths", "lay-and-tie"):
        window.until(lambda s: s["showing"] == step, step + " shown")
        window.key("End")
    window.until(lambda s: s["showing"] is None and s["step"] == "look-back", "all of it done")
    window.key("ctrl+Return")
    state = window.until(lambda s: s["finished"] and s.get("best") is not None, "the look back")
    assert state["points"] == state["best"], (state["points"], state["best"])
    window.key("ctrl+Return")
    state = window.until(lambda s: not s["finished"] and s["scene_number"] == 2, "the next vine of the ladder")
    assert state["rung"] == 1  # one that went well: the same rung once more
    print(f"{window.actions} key presses")
finally:
    window.close()
