"""The prunings of a vine weighed in a real window, once by keys alone and once by the mouse alone with two faults planted.
Usage: weigh_by_both.py SPURWRIGHT-WINDOW"""
import sys

from scale import scale, weigh_by_keys, weigh_by_mouse
from window_driver import Window, skip_without_tools

skip_without_tools()
calm = {"kind": "spurwright-settings", "version": 1, "reduced_motion": True, "safety_seen": True}
window = Window(sys.argv[1], settings=calm)


def by_keys():
    window.key("e")
    end = weigh_by_keys(window)
    assert end["within"] and end["slips"] == [], end
    window.key("ctrl+z")
    scale(window, lambda w: "within" not in w, "it not written")
    window.key("ctrl+y")
    scale(window, lambda w: "within" in w, "written again")
    window.key("Escape")
    window.until(lambda s: s["screen"] == "home", "home")


def by_mouse():
    window.click_widget("home.weigh")
    end, now = weigh_by_mouse(window, zeroed=False, ends=False)
    wanted = {"not-zeroed"} | ({"ends"} if any(p["lies"] == "wires" for p in now["pieces"]) else set())
    assert set(end["slips"]) == wanted, end
    window.click_widget("weigh.weigh-again")
    scale(window, lambda w: "within" not in w and not w["tied"], "the heap again")
    window.click_widget("weigh.weigh-close")
    window.until(lambda s: s["screen"] == "home", "home")


try:
    window.until(lambda s: s["screen"] == "home", "home")
    by_keys()
    keys = window.actions
    by_mouse()
    print(f"weighing: {keys} keystrokes by keys alone, {window.actions - keys} acts by the mouse with two faults")
finally:
    window.close()
