"""The whole first job by pointer alone in a real window, in fewer than sixty actions, then looked back on and begun again.
Usage: job_by_mouse.py SPURWRIGHT-WINDOW SPURWRIGHT"""
import sys

from plan import best_acts, node_of
from window_driver import Window, skip_without_tools

skip_without_tools()
window = Window(sys.argv[1], "--scene", "first")
try:
    window.click_widget("safety.read")
    state = window.until(lambda s: s["screen"] == "row", "the row")
    window.click_widget("offer.own")  # not watched first
    window.click_widget("row.card")  # folds it: the vine is free
    window.wheel(-6)  # steps back: the whole vine
    window.until(lambda s: s["view"] == "", "a step back")
    acts = best_acts(sys.argv[2], state["code"])
    tool, tape, done = "none", "left", 0

    def take(wanted):
        global tool
        if tool == wanted:
            return
        window.click_widget("row.tool." + wanted)
        window.until(lambda s: s["tool"] == wanted, "the tool " + wanted)
        tool = wanted

    def look_from(view):
        if window.state()["view"] == view:
            return
        window.click_widget("row.looks")
        window.click_widget("row.view-" + view)
        window.until(lambda s: s["view"] == view, "the view " + view)
        window.click_widget("row.looks")  # folds it: the vine is free
        window.until(lambda s: s["at_rest"] and not any(w["name"] == "row.view-" + view for w in s["widgets"]), "it folded")

    def joint(node):
        """The very joint to cut, from where one stands or from nearer; a joint farther out would leave on what is to go."""
        for view in (None, "head", "other-side", "row"):
            if view:
                look_from(view)
            part = window.part(node, outward=True)
            if part is not None and part["node"] == node:
                break
        return part

    waits = []  # wood that other wood hides: looked for again when that is gone
    while acts:
        act = acts.pop(0)
        part = joint(node_of(act[1])) if act[0] == "cut" else None
        if act[0] == "cut" and part is None:
            assert act not in waits, f"never in sight: {act}"
            waits.append(act)
            acts.insert(next(i for i, later in enumerate(acts) if later[0] == "tie"), act)
            continue
        if act[0] == "mark":
            take("tape")
            if tape != act[2]:
                tape = act[2]
                window.click_widget("row.tape." + tape)
                window.until(lambda s: s["tape"] == tape, "the tape " + tape)
            part = window.part(act[1] + ".4")
            window.click(part["x"], part["y"])
        elif act[0] == "cut":
            take(act[2])
            window.click(part["x"], part["y"])
        elif act[0] == "lay":
            take("hands")
            look_from("row")
            part = window.part(act[1] + ".3")
            window.drag(part["x"], part["y"], -120 if act[2] == "left" else 120)
        else:
            take("ties")
            part = window.part(node_of(act[1]))
            window.click(part["x"], part["y"])
        done += 1
        window.until(lambda s: s["done"] == done, f"act {done}, {' '.join(act)}")
    window.click_widget("row.undo")
    window.until(lambda s: s["done"] == done - 1, "one act undone")
    window.click_widget("row.redo")
    window.until(lambda s: s["done"] == done, "it done again")
    window.click_widget("row.step.look-back")
    state = window.until(lambda s: s["finished"] and s.get("best") is not None, "the look back with the best plan")
    print(f"{window.actions} actions, {state['points']} points, the best plan has {state['best']}")
    assert window.actions < 60, window.actions
    assert state["points"] >= state["best"] - 5, state["points"]  # a hand cuts a joint beside now and then
    assert state["best"] >= state["points"]
    piece = state["piece"]
    window.click_widget("look.next-piece")
    window.until(lambda s: s["piece"] != piece, "the next piece")
    window.click_widget("look.cut-again")
    window.until(lambda s: not s["finished"] and s["done"] == 0, "the vine before any choice")
finally:
    window.close()
