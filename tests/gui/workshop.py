"""A whole workshop on the wall in a real window, by keys: twelve invented people by their numbers from the roster, eight
questions, one talked about and answered again, two that the house disagrees with (one dropped, one keyed anew), the window
killed in the middle of a question. What the results page says, what the records hold of the quiz and of each person, and
the page of the crew are held to a count of our own of what was typed.
Usage: workshop.py SPURWRIGHT-WINDOW SPURWRIGHT"""
import json
import os
import sqlite3
import subprocess
import sys

from window_driver import Window, skip_without_tools

skip_without_tools()
PEOPLE = 12
NAMES = ["Abril Monte", "Bruno Cerro", "Carla Vado", "Dario Puente", "Elsa Lomas", "Fermín Ruda", "Gala Sotos", "Hugo Peñas", "Inés Alamo", "Joel Barranco", "Kira Solano", "Lucio Ñandubay"]
QUESTIONS, CRASH_AT, TALKED, DROPPED, KEYED_ANEW = 8, 3, 1, 5, 6
calm = {"kind": "spurwright-settings", "version": 1, "reduced_motion": True, "safety_seen": True}
window = Window(sys.argv[1], settings=calm)
spurwright = sys.argv[2]


def run(*words, status=0):
    ran = subprocess.run([spurwright, *words], env=window.environment, capture_output=True, text=True)
    assert ran.returncode == status, (words, ran.returncode, ran.stderr)
    return ran.stdout


def wall(holds, what):
    return window.until(lambda s: s.get("wall") and holds(s["wall"]), what)["wall"]


def to_the_wall():
    window.key("ctrl+f")
    window.xdotool("type", "--delay", "30", "crew")
    window.key("Return")
    window.until(lambda s: s["screen"] == "wall", "the wall")


def in_turn():
    """Answers come by one keyboard in turn."""
    window.key("m", "m")


def choices():
    """How many answers the question offers, by the buttons that take them once a number was said."""
    names = {w["name"] for w in window.until(lambda s: not any(w["name"] == "wall.digit-0" for w in s["widgets"]), "the question's own digits")["widgets"]}
    return max(int(name.rsplit("-", 1)[1]) for name in names if name.startswith("wall.digit-"))


def said_by(person, question, again, kind, offered):
    """What a person says: neither all alike nor all right."""
    turn = person + question + 2 * again
    if kind == "count":
        return [4 + turn % 9]
    first = 1 + turn % offered
    if kind != "pick-two":
        return [first]
    return sorted([first, 1 + (turn + 1 + person % (offered - 1)) % offered]) if offered > 2 else [1, 2]


typed = {}  # (question, round): person -> answer


def answer(question, again, person, kind, answered):
    window.key(*str(person), "Return")
    digits = said_by(person, question, again, kind, 0 if kind == "count" else choices())
    if len(set(digits)) < len(digits):
        digits = [1, 2]
    if kind == "count":
        window.key(*str(digits[0]), *(["Return"] if digits[0] < 10 else []))
    else:
        window.key(*[str(d) for d in digits])
    typed.setdefault((question, again), {})[person] = digits
    return wall(lambda w: w["answers"] == answered, f"the answer of number {person}")


def killed_in_the_middle(question):
    before = wall(lambda w: True, "its state")
    window.crash()
    window.open()
    to_the_wall()
    wall(lambda w: w["offered"], "the quiz from before")
    window.click_widget("wall.go-on")
    after = wall(lambda w: w["stage"] == "on" and w["phase"] == "open" and w["at"] == question, "the same question")
    assert after["answers"] == before["answers"], (before, after)
    in_turn()


def play():
    in_turn()
    for question in range(QUESTIONS):
        kind = wall(lambda w: w["phase"] == "open" and w["at"] == question, f"question {question + 1}")["kind"]
        for person in range(1, PEOPLE + 1):
            if question == CRASH_AT and person == 8:
                killed_in_the_middle(question)
            answer(question, 0, person, kind, person)
        window.key("space")
        wall(lambda w: w["phase"] == "locked", "closed")
        if question == TALKED:
            window.key("a")
            wall(lambda w: w["phase"] == "talking", "talking")
            for person in range(1, PEOPLE + 1):
                answer(question, 1, person, kind, person)
            window.key("space")
            wall(lambda w: w["phase"] == "locked-again", "closed again")
        window.key("space")
        wall(lambda w: w["phase"] == "revealed", "what is right")
        if question == DROPPED:
            window.key("d")
            window.click_widget("wall.drop")
            window.until(lambda s: not any(w["name"] == "wall.drop" for w in s["widgets"]), "it dropped")
        if question == KEYED_ANEW:
            window.key("d")
            window.key(*(["1", "2"] if kind == "pick-two" else ["5", "Return"] if kind == "count" else ["1"]))
            window.until(lambda s: not any(w["name"] == "wall.drop" for w in s["widgets"]), "it keyed anew")
        window.key("space")
    return wall(lambda w: w["phase"] == "ended", "the results")


def stored(kind):
    store = sqlite3.connect(f"file:{os.path.join(window.folder, 'data/spurwright/store.sqlite')}?mode=ro", uri=True)
    rows = store.execute("SELECT person, body FROM event WHERE kind = ? ORDER BY id", (kind,)).fetchall()
    store.close()
    return [(person, json.loads(body)) for person, body in rows]


def share(right, of):
    return f"{right} of {of}"


def our_own_count(quiz):
    """From what was typed and the keys that the quiz began with, the dispute taken into account by hand."""
    by_question, by_person = [], {p: [0, 0] for p in range(1, PEOPLE + 1)}
    for i, question in enumerate(quiz["questions"]):
        keys = question["accepted"]
        if i == KEYED_ANEW:
            keys = [[1, 2] if question["kind"] == "pick-two" else [5] if question["kind"] == "count" else [1]]
        said = typed[(i, 1 if i == TALKED else 0)]
        right = {person for person, digits in said.items() if digits in keys}
        first = {person for person, digits in typed[(i, 0)].items() if digits in keys}
        by_question.append((len(right), len(said), len(first)))
        if i == DROPPED or not question["scored"]:
            continue
        for person in said:
            by_person[person][0] += person in right
            by_person[person][1] += 1
    return by_question, by_person


def check_page(labels, quiz, by_question, by_person):
    every = [sum(p[0] for p in by_person.values()), sum(p[1] for p in by_person.values())]
    assert f"Right answers: {share(*every)}" in labels, (every, labels)
    lines = [line for line in labels if line[:2] in {f"{n}." for n in range(1, QUESTIONS + 1)}]
    assert len(lines) == QUESTIONS, lines
    for i, (line, (right, of, first)) in enumerate(zip(lines, by_question)):
        assert f": {share(right, of)}" in line, (line, right, of)
        assert ("dropped" in line) == (i == DROPPED), line
        assert ("the house's own answer" in line) == (i == KEYED_ANEW), line
        assert ("before talking" in line) == (i == TALKED and right != first), line
        assert ("only talked about" in line) == (not quiz["questions"][i]["scored"] and i not in (DROPPED, KEYED_ANEW)), line
    for person, (right, of) in by_person.items():
        assert f"Number {person}: {share(right, of)}" in labels, (person, right, of)
    assert not any(name in label for label in labels for name in NAMES), "a name on the wall"
    return every


try:
    roster = os.path.join(window.folder, "cuadrilla.csv")
    with open(roster, "w", encoding="utf-8") as file:
        file.write("number,name,language\n" + "".join(f"{n},{name},{'es' if n % 3 else 'en'}\n" for n, name in enumerate(NAMES, 1)))
    run("crew", "import", roster)
    to_the_wall()
    window.click_widget("wall.begin")
    wall(lambda w: w["stage"] == "on", "the vines grown")
    window.key("space")
    assert wall(lambda w: w["phase"] == "open", "the first question")["questions"] == QUESTIONS
    end = play()
    labels = [w["label"] for w in window.until(lambda s: s["at_rest"], "the page at rest")["widgets"]]

    (nobody, quiz), = stored("quiz")
    assert nobody is None and len(quiz["questions"]) == QUESTIONS
    by_question, by_person = our_own_count(quiz)
    right, of = check_page(labels, quiz, by_question, by_person)
    assert (end["right"], end["of"]) == (right, of), end
    assert quiz["results"]["all"] == {"right": right, "of": of}, quiz["results"]["all"]
    assert sorted(v["right"] for v in quiz["results"]["voters"]) == sorted(p[0] for p in by_person.values())
    own = stored("quiz-answers")
    assert {person: [body["right"], body["of"]] for person, body in own} == by_person, own
    assert sorted(body["as"] for _, body in own) == list(range(1, PEOPLE + 1)), "each has a number of the quiz's own"
    assert not any(name in json.dumps(body) for _, body in [*own, (None, quiz)] for name in NAMES), "a name in an event"

    again = json.loads(run("records", "replay", "--json"))
    assert (again["replayed"], again["same"]) == (1, 1), again
    assert again["records"][0]["keys_proved"], again["records"]
    view = json.loads(run("crew", "view", "--json"))
    assert view["quizzes"] == 1 and [m["number"] for m in view["members"]] == list(range(1, PEOPLE + 1))
    for member in view["members"]:
        assert sum(rule["of"] for rule in member["rules"]) == by_person[member["number"]][1], member
    print(f"workshop: {PEOPLE} people, {QUESTIONS} questions, {window.actions} acts, {right} of {of} right")
finally:
    window.close()
