"""A hand on the keys: the acts of a plan, and the way to the look back, as somebody without a mouse makes them."""
from plan import node_of

TOOL_KEYS = {"shears": "1", "loppers": "2", "saw": "3"}


class Hand:
    def __init__(self, window, roles=("left", "right", "spur")):
        """`roles`: of the tape, in the order in which its keys walk them."""
        self.window = window
        self.roles = list(roles)

    def walk_to(self, axis):
        """With Tab, the short way round."""
        state = self.window.until(lambda s: s["at_rest"], "a picture at rest")
        walk, chosen = state["walk"], state["chosen"]
        if chosen == axis:
            return
        forward = walk.index(axis) + 1 if chosen is None else (walk.index(axis) - walk.index(chosen)) % len(walk)
        back = len(walk) - walk.index(axis) if chosen is None else len(walk) - forward
        self.window.key(*(["Tab"] * forward if forward <= back else ["shift+Tab"] * back))
        self.window.until(lambda s: s["chosen"] == axis, axis)

    def walk_to_node(self, node):
        """From where the walk stands: wood that bears what stays is chosen just beyond it."""
        at = self.window.until(lambda s: s["at_rest"], "a picture at rest")["chosen_node"]
        steps = int(node.split(".")[1]) - (int(at.split(".")[1]) if at else 0)
        if steps:
            self.window.key(*["period" if steps > 0 else "comma"] * abs(steps))
            self.window.until(lambda s: s["chosen_node"] == node, node)

    def do(self, act, done):
        """One act, after which so many are done."""
        node = node_of(act[1])
        self.window.key("Escape")  # the tool in hand, or the choice
        self.walk_to(node.split(".")[0])
        if act[0] == "mark":
            self.window.key("m", *["Right"] * self.roles.index(act[2]), "Return")
        elif act[0] == "cut":
            self.walk_to_node(node)
            self.window.key(TOOL_KEYS[act[2]], "c")
        elif act[0] == "lay":
            self.window.key("l", "Left" if act[2] == "left" else "Right")
        else:
            self.walk_to_node(node)
            self.window.key("t")
        self.window.until(lambda s: s["done"] == done, f"act {done}, {' '.join(act)}")

    def look_back(self):
        """Step by step to the look back with its best plan: that state, and the steps met on the way."""
        met = [self.window.state()["step"]]
        for _ in range(7):
            if self.window.state()["finished"]:
                break
            step = met[-1]
            self.window.key("ctrl+Return")
            met.append(self.window.until(lambda s: s["finished"] or s["step"] != step, "the next step")["step"])
        return self.window.until(lambda s: s["finished"] and s.get("best") is not None, "the look back with the best plan"), met
