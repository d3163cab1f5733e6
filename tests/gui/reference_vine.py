"""The scene of the reference vine in a real window: pruned before, then weighed, its log read and next winter's buds said,
once by keys alone and once by the mouse alone. Then the book: a vine practised with its own number of buds, its place and
its point on the map keyed and moved, its history, the field sheet and the plot.
Usage: reference_vine.py SPURWRIGHT-WINDOW SPURWRIGHT"""
import json
import os
import subprocess
import sys

from scale import click_seen, scale, typed, weigh_by_keys, weigh_by_mouse
from window_driver import Window, skip_without_tools

skip_without_tools()
calm = {"kind": "spurwright-settings", "version": 1, "reduced_motion": True, "safety_seen": True}
CODES = ["00YR-3HS3-G00Q-0004-0005-3T6N", "00YR-3HS3-G00Q-0004-0005-3YFQ"]
POUND = 0.45359237
FIELDS = ["next.by-weight", "next.by-space", "next.keep"]


def verb(window, *words):
    answer = subprocess.run([sys.argv[2], *words, "--json"], env=window.environment, check=True, capture_output=True, text=True)
    return json.loads(answer.stdout)


def put_work(window, number):
    """The scene's vine pruned by its best plan, kept as the window keeps work, so that it is offered back."""
    plan = verb(window, "best", CODES[number], "--rules", "low-vigour")["plans"][0]["plan"]
    work = os.path.join(window.folder, "data", "spurwright", "work")
    os.makedirs(work, exist_ok=True)
    with open(os.path.join(work, "present.json"), "w", encoding="utf-8") as file:
        json.dump({"kind": "spurwright-work", "version": 2, "scene": "reference-vine", "number": number, "house": "low-vigour", "plan": plan, "done": plan.count(";") + 1}, file)


def buds(kg):
    """20+20 by pounds, 2.0 m: by weight, by space at 15 a metre, the smaller with at most 17 a metre [smith-2023]."""
    by_weight = 20 + 20 * (kg / POUND - 1)
    return [str(int(n + 0.5)) for n in (by_weight, 30, min(by_weight, 34))]


def written_kg(now):
    return float(now["shown"]) * (1 if now["unit"] == "kg" else POUND)


def to_the_look_back(window, onward):
    for _ in range(9):
        state = window.until(lambda s: s["at_rest"], "the vine at rest")
        if state["finished"]:
            return
        onward()
        window.until(lambda s, step=state["step"]: s["finished"] or s["step"] != step, "the next step")


def asks_next(window):
    return window.until(lambda s: s.get("next") and s["at_rest"], "the log")["next"]


def by_keys(window):
    window.until(lambda s: s["offered"], "the work offered")
    for _ in range(30):
        state = window.until(lambda s: s["at_rest"], "home at rest")
        if any(w["focused"] and w["name"] == "say.go-on" for w in state["widgets"]):
            break
        window.key("Down")
    window.key("Return")
    window.until(lambda s: s["screen"] == "row", "the vine")
    to_the_look_back(window, lambda: window.key("ctrl+Return"))
    window.key("e")
    end = weigh_by_keys(window)
    assert end["within"] and end["slips"] == [], end
    assert 700 <= end["bundle_g"] <= 800, end
    log = asks_next(window)["log"]
    assert len(log) == 5 and sum(w["wet"] for w in log) == 1, log
    window.key("b")
    for n, (name, text) in enumerate(zip(FIELDS, buds(written_kg(scale(window, lambda w: True, "the scale"))))):
        if n:
            window.key("Tab")
        window.until(lambda s: s["at_rest"], "the field")
        typed(window, text)
        window.until(lambda s: any(w["name"] == name and w["label"] == text for w in s["widgets"]), "it typed into " + name)
    window.key("Return")
    said = window.until(lambda s: s.get("next") and "slips" in s["next"], "what came of it")["next"]
    assert said["slips"] == ["wet-kept"], said  # the wet winter was left in
    window.key("ctrl+z")
    window.until(lambda s: s.get("next") and "slips" not in s["next"], "it unsaid")
    wet = next(i for i, w in enumerate(log) if w["wet"])
    window.key(str(wet + 1))
    window.until(lambda s: s["next"]["log"][wet]["left_out"], "the wet winter left out")
    window.key("b")
    window.until(lambda s: s["at_rest"], "the field")
    window.key("Return")
    said = window.until(lambda s: s.get("next") and "slips" in s["next"], "what came of it")["next"]
    assert said["slips"] == [], said
    window.key("Escape")
    state = window.until(lambda s: s["screen"] == "row" and s["finished"], "the look back")
    assert state["weighed_within"] is True, state
    again = verb(window, "records", "replay")
    kinds = [r["kind"] for r in again["records"]]
    assert kinds.count("weighing") == 3 and again["different"] == again["unreadable"] == 0, again


def by_mouse(window):
    window.click_widget("say.go-on")
    window.until(lambda s: s["screen"] == "row", "the vine")
    to_the_look_back(window, lambda: window.click_widget("row.next-step"))
    window.click_widget("look.weigh")
    end, now = weigh_by_mouse(window)
    assert end["within"] and end["slips"] == [], end
    log = asks_next(window)["log"]
    wet = next(i for i, w in enumerate(log) if w["wet"])
    window.click_widget(f"next.log.{wet + 1}")
    window.until(lambda s: s["next"]["log"][wet]["left_out"], "the wet winter left out")
    for name, text in zip(FIELDS, buds(written_kg(now))):
        window.click_widget(name)
        window.until(lambda s: s["at_rest"], "the field")
        window.xdotool("type", "--delay", "30", text)
        window.until(lambda s: any(w["name"] == name and w["label"] == text for w in s["widgets"]), "it typed")
    window.click_widget("next.say")
    said = window.until(lambda s: s.get("next") and "slips" in s["next"], "what came of it")["next"]
    assert said["slips"] == [], said
    window.click_widget("weigh.weigh-close")
    window.until(lambda s: s["screen"] == "row" and s["finished"], "the look back")


def book_page(window, holds, what):
    return window.until(lambda s: s.get("book") and holds(s["book"]) and s["at_rest"], what)["book"]


def from_the_book(window):
    verb(window, "book", "block", "north", "--spacing", "2.0m")
    path = os.path.join(window.folder, "north.csv")
    with open(path, "w", encoding="utf-8") as file:
        file.write("block,row,tag,place,winter,weight_kg\n" + "".join(f"north,1,t{v},{v},{w},0.{50 + 7 * v + w % 5}\n" for v in range(1, 4) for w in range(2020, 2027)))
    assert verb(window, "book", "import", path)["new"] == 21
    window.open()
    window.key("ctrl+f")
    window.xdotool("type", "--delay", "30", "reference")
    window.key("Return")
    window.until(lambda s: s["screen"] == "book", "the book")
    window.click_widget("book.block.0")
    book_page(window, lambda b: b["page"] == "entry" and b["at"] == 0, "its first vine")
    window.click_widget("book.vine.1")
    book_page(window, lambda b: b["at"] == 1, "the second vine")
    # Its place and point, by keys in the fields; then by the map.
    click_seen(window, "book.place-fold")
    click_seen(window, "book.latitude")
    window.until(lambda s: s["at_rest"], "the field")
    window.xdotool("type", "--delay", "30", "44.1")
    window.until(lambda s: any(w["name"] == "book.latitude" and w["label"] == "44.1" for w in s["widgets"]), "it typed")
    window.key("Tab")
    window.until(lambda s: s["at_rest"], "the next field")
    window.xdotool("type", "--delay", "30", "--", "-1.25")
    window.until(lambda s: any(w["name"] == "book.longitude" and w["label"] == "-1.25" for w in s["widgets"]), "it typed")
    window.key("Return")
    book_page(window, lambda b: b["points"] == 1, "its point")
    window.key("F5")
    book_page(window, lambda b: b["page"] == "map", "the map")
    window.key("alt+Up", "alt+Right")
    point = book_page(window, lambda b: b["point"] and b["point"][0] > 441000000 and b["point"][1] > -12500000, "it moved")["point"]
    assert 40 <= point[0] - 441000000 <= 50, point  # half a metre of latitude is 4.5e-6 degrees
    window.key("F6")
    book_page(window, lambda b: b["point"] == [point[0], -12500000], "the last step taken back")
    window.key("F3")
    book_page(window, lambda b: b["page"] == "entry" and b["at"] == 1, "the vine again")
    click_seen(window, "book.place-fold")
    click_seen(window, "book.history")
    labels = window.until(lambda s: s["at_rest"] and s["book"]["history"] >= 10, "its history")
    assert labels["book"]["history"] == 1 + 7 + 3 + 1, labels["book"]  # put in, weighed, placed and moved twice, one taken back
    click_seen(window, "book.history")
    click_seen(window, "book.papers")
    click_seen(window, "book.paper-path")
    window.until(lambda s: s["at_rest"], "the field")
    window.xdotool("type", "--delay", "20", os.path.join(window.folder, "out"))
    for button, ending, head in (("book.sheet", ".pdf", b"%PDF"), ("book.plot-out", ".png", b"\x89PNG")):
        click_seen(window, button)
        window.until(lambda s: s["message"] and ending in s["message"], "the paper made")
        with open(os.path.join(window.folder, "out" + ending), "rb") as file:
            assert file.read(4) == head
        window.key("Escape")
        window.until(lambda s: not s["message"] and s["at_rest"], "it closed")
    assert os.path.exists(os.path.join(window.folder, "out.csv"))
    window.key("F7")
    state = window.until(lambda s: s["screen"] == "row" and s["at_rest"], "a vine to practise")
    last = 0.50 + 0.01 * (14 + 2026 % 5)
    assert str(state["asked_buds"]) == buds(last)[2], (state["asked_buds"], last)
    assert any("t2" in w["label"] for w in state["widgets"]) or state["from_book"] == "t2", state


papers = os.path.join(os.path.dirname(os.path.abspath(sys.argv[1])), "spurwright-paper")
window = Window(sys.argv[1], settings=calm)
try:
    window.crash()
    put_work(window, 0)
    window.open()
    by_keys(window)
    keys = window.actions
    window.crash()
    put_work(window, 1)
    window.open()
    by_mouse(window)
    mouse = window.actions - keys
    window.crash()
    if os.path.exists(papers):
        from_the_book(window)
    print(f"the reference vine: {keys} keystrokes by keys alone, {mouse} acts by the mouse")
finally:
    window.close()
