"""A whole workshop on the wall by keys alone in a real window: eight questions, three posts, hands, a dispute; the window is
killed in the middle and goes on where it stood. Usage: workshop.py SPURWRIGHT-WINDOW"""
import sys

from window_driver import Window, skip_without_tools

skip_without_tools()
calm = {"kind": "spurwright-settings", "version": 1, "reduced_motion": True, "safety_seen": True}
window = Window(sys.argv[1], settings=calm)


def wall(holds, what):
    return window.until(lambda s: s.get("wall") and holds(s["wall"]), what)["wall"]


def to_the_wall():
    window.key("ctrl+f")
    window.xdotool("type", "--delay", "30", "crew")
    window.key("Return")
    window.until(lambda s: s["screen"] == "wall", "the wall")


def answer(now):
    """Three posts say three things; every other question has four hands more."""
    kind = now["kind"]
    for said in (["1", "2"], ["1", "3"], ["2", "3"]) if kind == "pick-two" else [["1"], ["2"], ["3"]]:
        window.key(*said)
        if kind == "count":
            window.key("Return")
    return wall(lambda w: w["answers"] == 3, "three posts' answers")


try:
    to_the_wall()
    window.click_widget("wall.begin")
    wall(lambda w: w["stage"] == "on", "the vines grown")
    window.key("space")
    now = wall(lambda w: w["phase"] == "open", "the first question")
    counted = now["questions"]
    assert counted == 8
    for question in range(counted):
        now = wall(lambda w: w["phase"] == "open" and w["at"] == question, f"question {question + 1}")
        answer(now)
        if question % 2 and now["kind"] != "pick-two":
            window.key("m", "1")
            if now["kind"] == "count":
                window.key("Return")
            window.key("4", "Return")
            wall(lambda w: w["answers"] == 7, "four hands more")
            window.key("m", "m")  # back to the posts
        if question == 3:  # the window dies; every answer was acknowledged
            before = wall(lambda w: True, "its state")
            window.crash()
            window.open()
            to_the_wall()
            wall(lambda w: w["offered"], "the quiz from before")
            window.click_widget("wall.go-on")
            after = wall(lambda w: w["stage"] == "on" and w["phase"] == "open" and w["at"] == question, "the same question")
            assert after["answers"] == before["answers"], (before, after)
        window.key("space")
        wall(lambda w: w["phase"] == "locked", "closed")
        window.key("space")
        wall(lambda w: w["phase"] == "revealed", "what is right")
        if question == 5:  # the house disagrees
            before = wall(lambda w: True, "its state")
            window.key("d")
            window.click_widget("wall.drop")
            wall(lambda w: w["of"] < before["of"] or before["of"] == w["of"], "it dropped")
        window.key("space")
    end = wall(lambda w: w["phase"] == "ended", "the results")
    assert end["revealed"] == counted and 0 < end["right"] < end["of"], end
    print(f"workshop: {counted} questions, {window.actions} acts, {end['right']} of {end['of']} right")
finally:
    window.close()
