"""Twenty vines of the book of reference vines keyed in walking order by keys alone in a real window: one weight that stands
apart is asked about and corrected, one is taken back and keyed anew; then all are there when the window is opened again.
Usage: book_by_keys.py SPURWRIGHT-WINDOW SPURWRIGHT"""
import json
import os
import subprocess
import sys

from window_driver import Window, skip_without_tools

skip_without_tools()
calm = {"kind": "spurwright-settings", "version": 1, "reduced_motion": True, "safety_seen": True}
window = Window(sys.argv[1], settings=calm)
KEYS = {".": "period", ",": "comma"}


def verb(*words):
    answer = subprocess.run([sys.argv[2], *words, "--json"], env=window.environment, check=True, capture_output=True, text=True)
    return json.loads(answer.stdout)


def book(holds, what):
    return window.until(lambda s: s.get("book") and holds(s["book"]), what)["book"]


def type_text(text):
    window.key(*[KEYS.get(letter, letter) for letter in text])


def go_to_the_book():
    window.key("ctrl+f")
    window.xdotool("type", "--delay", "30", "reference")
    window.key("Return")
    window.until(lambda s: s["screen"] == "book", "the book")


try:
    verb("book", "block", "north", "--spacing", "1.8m")
    newest = verb("demo-block")["winters"] and max(w["winter"] for w in verb("book", "compare", "demo-invented")["winters"])
    rows = ["block,row,tag,place,winter,weight_kg"]
    for vine in range(1, 21):
        for back in range(7, 0, -1):
            rows.append(f"north,{1 + (vine - 1) // 10},t{vine},{1 + (vine - 1) % 10},{newest - back},0.{70 + (vine * 7 + back * 5) % 23}")
    path = os.path.join(window.folder, "north.csv")
    with open(path, "w", encoding="utf-8") as file:
        file.write("\n".join(rows) + "\n")
    assert verb("book", "import", path)["new"] == 140
    go_to_the_book()
    state = book(lambda b: b["blocks"] == 2, "both blocks")
    for _ in range(30):  # walks to the block by keys
        rest = window.until(lambda s: s["at_rest"], "the walk at rest")
        if any(w["focused"] and w["label"] == "north" for w in rest["widgets"]):
            break
        window.key("Down")
    window.key("Return")
    book(lambda b: b["page"] == "entry" and b["block"] == "north" and b["at"] == 0, "the first vine of the block")
    before = window.actions
    for vine in range(20):
        book(lambda b: b["at"] == vine and b["keyed"] == vine, f"vine {vine + 1}")
        window.until(lambda s: any(w["name"] == "book.weight" for w in s["widgets"]) and s["at_rest"], "its field")
        if vine == 4:  # a slip of the finger: ten times too heavy
            type_text("7.8")
            window.key("Return")
            book(lambda b: b["odd"] and b["keyed"] == 4, "the question")
            window.key("Escape")
            book(lambda b: not b["odd"] and b["keyed"] == 4 and b["at"] == 4, "nothing kept")
            window.until(lambda s: s["at_rest"] and any(w["name"] == "book.weight" for w in s["widgets"]), "its field again")
        if vine == 6:  # no weight at all: said, closed, and typed over
            type_text("0,8")
            window.key("Return")
            window.until(lambda s: s["message"], "what is wrong with it")
            window.key("Escape")
            window.until(lambda s: not s["message"] and s["at_rest"], "it closed")
        if vine == 9:  # taken back, and keyed again
            type_text("0.9")
            window.key("Return")
            book(lambda b: b["keyed"] == 10, "it kept")
            window.key("F6")
            book(lambda b: b["keyed"] == 9 and b["at"] == 9, "it taken back")
            window.until(lambda s: s["at_rest"], "the field filled anew")
        type_text(f"0.{75 + vine % 9}")
        window.key("Return")
    done = book(lambda b: b["keyed"] == 20 and b["at"] == 20, "all twenty")
    strokes = window.actions - before
    assert strokes <= 20 * 5 + 5 + 5 + 5, strokes  # four keys and Enter each; the slip; the comma; the one taken back
    exported = os.path.join(window.folder, "out.csv")
    window.crash()  # every weight was kept as it was entered
    verb("book", "export", "-o", exported, "--block", "north")
    with open(exported, encoding="utf-8") as file:
        kept = [line.split(",") for line in file.read().splitlines()]
    weight = kept[0].index("weight_kg")
    this_winter = [row for row in kept[1:] if row[kept[0].index("winter")] == str(newest)]
    assert [float(row[weight]) for row in this_winter] == [(75 + vine % 9) / 100 for vine in range(20)], this_winter
    window.open()
    go_to_the_book()
    book(lambda b: b["blocks"] == 2, "the book again")
    for key, page in (("F4", "compare"), ("F5", "map"), ("F3", "entry"), ("F2", "blocks")):
        window.key(key)
        book(lambda b: b["page"] == page, "the page " + page)
    print(f"book by keys: 20 vines, {strokes} keystrokes, a slip corrected, a comma refused and a weight taken back among them")
finally:
    window.close()
