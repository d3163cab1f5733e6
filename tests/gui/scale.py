"""The brush of a vine sorted, bundled, hung and written down in a window, by keys alone and by the mouse alone."""
KEYS = {".": "period", " ": "space", "-": "minus", "/": "slash"}


def typed(window, text):
    window.key(*[KEYS.get(letter, letter) for letter in text])


def scale(window, holds, what):
    return window.until(lambda s: s.get("weighing") and holds(s["weighing"]) and s["at_rest"], what)["weighing"]


def weigh_by_keys(window):
    """All rightly, from the heap to what came of it."""
    pieces = scale(window, lambda w: True, "the scale")["pieces"]
    at = 0  # the piece walked to; those still on old wood are passed over

    def walk_to(piece):
        nonlocal at
        now = scale(window, lambda w: True, "the heap")
        while at != piece:
            at = (at + 1) % len(pieces)
            if now["pieces"][at]["still_on"]:
                continue
            window.key("Right")

    for piece, one in enumerate(pieces):
        if one["canes_on"]:
            walk_to(piece)
            window.key("s")
            scale(window, lambda w: w["pieces"][piece]["canes_on"] == 0, "it stripped")
    for piece, one in enumerate(pieces):
        if not one["belongs"]:
            continue
        walk_to(piece)
        window.key("Return")
        now = scale(window, lambda w: w["pieces"][piece]["lies"] == "bundle", f"piece {piece} in the bundle")
        while True:  # the hand goes on to the next that is not in it
            at = (at + 1) % len(pieces)
            if now["pieces"][at]["lies"] != "bundle" and not now["pieces"][at]["still_on"]:
                break
            if at == piece:
                break
    if now["wet"]:
        window.key("d")
        scale(window, lambda w: not w["wet"], "it dry")
    window.key("0")
    scale(window, lambda w: w["shown"] == "0.00", "nothing shown")
    window.key("c", "t")
    scale(window, lambda w: w["tied"], "it tied")
    window.key("h")
    now = scale(window, lambda w: w["hangs"], "it hanging")
    window.key("w")
    window.until(lambda s: s["at_rest"], "the field")
    typed(window, now["shown"] + " " + now["unit"])
    window.key("Return")
    return scale(window, lambda w: "within" in w, "what came of it")


def click_seen(window, name):
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


def weigh_by_mouse(window, zeroed=True, ends=True):
    """All rightly but for what is said: the scale set to nothing, the ends fetched from the wires."""
    now = scale(window, lambda w: True, "the scale")
    for piece, one in enumerate(now["pieces"]):
        if one["canes_on"]:
            click_seen(window, f"weigh.strip.{piece}")
            scale(window, lambda w: w["pieces"][piece]["canes_on"] == 0, "it stripped")
    for piece, one in enumerate(now["pieces"]):
        if one["belongs"] and (ends or one["lies"] != "wires"):
            click_seen(window, f"weigh.piece.{piece}")
            scale(window, lambda w: w["pieces"][piece]["lies"] == "bundle", f"piece {piece} in the bundle")
    if now["wet"]:
        window.click_widget("weigh.weigh-dry")
    if zeroed:
        window.click_widget("weigh.weigh-zero")
        scale(window, lambda w: w["shown"] == "0.00", "nothing shown")
    if any(w["name"] == "weigh.weigh-shorten" and w["enabled"] for w in window.state()["widgets"]):
        window.click_widget("weigh.weigh-shorten")
    window.click_widget("weigh.weigh-tie")
    scale(window, lambda w: w["tied"], "it tied")
    window.click_widget("weigh.weigh-hang")
    now = scale(window, lambda w: w["hangs"], "it hanging")
    window.click_widget("weigh.weight")
    window.until(lambda s: s["at_rest"], "the field")
    window.xdotool("type", "--delay", "30", now["shown"] + " " + now["unit"])
    window.click_widget("weigh.written")
    return scale(window, lambda w: "within" in w, "what came of it"), now
