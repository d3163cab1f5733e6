"""The prunings of a vine weighed in a real window, once by keys alone and once by the mouse alone with two faults planted.
Usage: weigh_by_both.py SPURWRIGHT-WINDOW"""
import sys

from window_driver import Window, skip_without_tools

skip_without_tools()
calm = {"kind": "spurwright-settings", "version": 1, "reduced_motion": True, "safety_seen": True}
window = Window(sys.argv[1], settings=calm)
KEYS = {".": "period", " ": "space", "-": "minus"}


def scale(holds, what):
    return window.until(lambda s: s.get("weighing") and holds(s["weighing"]) and s["at_rest"], what)["weighing"]


def by_keys():
    window.key("e")
    now = scale(lambda w: True, "the scale")
    pieces = now["pieces"]
    at = 0  # the piece walked to; those still on old wood are passed over

    def walk_to(piece):
        nonlocal at
        now = scale(lambda w: True, "the heap")
        while at != piece:
            at = (at + 1) % len(pieces)
            if now["pieces"][at]["still_on"]:
                continue
            window.key("Right")

    for piece, one in enumerate(pieces):
        if one["canes_on"]:
            walk_to(piece)
            window.key("s")
            scale(lambda w: w["pieces"][piece]["canes_on"] == 0, "it stripped")
    for piece, one in enumerate(pieces):
        if not one["belongs"]:
            continue
        walk_to(piece)
        window.key("Return")
        now = scale(lambda w: w["pieces"][piece]["lies"] == "bundle", f"piece {piece} in the bundle")
        while True:  # the hand goes on to the next that is not in it
            at = (at + 1) % len(pieces)
            if now["pieces"][at]["lies"] != "bundle" and not now["pieces"][at]["still_on"]:
                break
            if at == piece:
                break
    if now["wet"]:
        window.key("d")
        scale(lambda w: not w["wet"], "it dry")
    window.key("0")
    scale(lambda w: w["shown"] == "0.00", "nothing shown")
    window.key("c", "t")
    scale(lambda w: w["tied"], "it tied")
    window.key("h")
    now = scale(lambda w: w["hangs"], "it hanging")
    window.key("w")
    window.until(lambda s: s["at_rest"], "the field")
    window.key(*[KEYS.get(letter, letter) for letter in now["shown"] + " " + now["unit"]], "Return")
    end = scale(lambda w: "within" in w, "what came of it")
    assert end["within"] and end["slips"] == [], end
    window.key("ctrl+z")
    scale(lambda w: "within" not in w, "it not written")
    window.key("ctrl+y")
    scale(lambda w: "within" in w, "written again")
    window.key("Escape")
    window.until(lambda s: s["screen"] == "home", "home")


def by_mouse():
    window.click_widget("home.weigh")
    now = scale(lambda w: True, "the scale")
    for piece, one in enumerate(now["pieces"]):
        if one["canes_on"]:
            click_seen(f"weigh.strip.{piece}")
            scale(lambda w: w["pieces"][piece]["canes_on"] == 0, "it stripped")
    for piece, one in enumerate(now["pieces"]):
        if one["belongs"] and one["lies"] != "wires":  # the ends in the wires are forgotten
            click_seen(f"weigh.piece.{piece}")
            scale(lambda w: w["pieces"][piece]["lies"] == "bundle", f"piece {piece} in the bundle")
    if now["wet"]:
        window.click_widget("weigh.weigh-dry")
    state = window.state()
    if any(w["name"] == "weigh.weigh-shorten" and w["enabled"] for w in state["widgets"]):
        window.click_widget("weigh.weigh-shorten")
    window.click_widget("weigh.weigh-tie")
    scale(lambda w: w["tied"], "it tied")
    window.click_widget("weigh.weigh-hang")
    now = scale(lambda w: w["hangs"], "it hanging")  # never set to zero
    window.click_widget("weigh.weight")
    window.until(lambda s: s["at_rest"], "the field")
    window.xdotool("type", "--delay", "30", now["shown"] + " " + now["unit"])
    window.click_widget("weigh.written")
    end = scale(lambda w: "within" in w, "what came of it")
    wanted = {"not-zeroed"} | ({"ends"} if any(p["lies"] == "wires" for p in now["pieces"]) else set())
    assert set(end["slips"]) == wanted, end
    window.click_widget("weigh.weigh-again")
    scale(lambda w: "within" not in w and not w["tied"], "the heap again")
    window.click_widget("weigh.weigh-close")
    window.until(lambda s: s["screen"] == "home", "home")


def click_seen(name):
    """In the heap's panel, scrolled to where it is not hidden."""
    for _ in range(12):
        widget = window.widget(name)
        seen, box = widget["seen"], widget["box"]
        if seen[3] - seen[1] > (box[3] - box[1]) * 0.6:
            window.click((seen[0] + seen[2]) / 2, (seen[1] + seen[3]) / 2)
            return
        window.xdotool("mousemove", 300, 400, "click", 5 if box[1] > 360 else 4)
        window.until(lambda s: s["at_rest"] and next(w for w in s["widgets"] if w["name"] == name)["box"] != box, "the heap scrolled")
    raise AssertionError("never in sight: " + name)


try:
    window.until(lambda s: s["screen"] == "home", "home")
    by_keys()
    keys = window.actions
    by_mouse()
    print(f"weighing: {keys} keystrokes by keys alone, {window.actions - keys} acts by the mouse with two faults")
finally:
    window.close()
