"""A real window under Xvfb, driven as a person would: pointer and keys by xdotool. Widgets and parts of the vine are found
in the report that the window writes with --probe; every act is followed by waiting for its effect, never by a pause."""
import json
import os
import shutil
import signal
import subprocess
import sys
import tempfile
import time

SKIPPED = 77
WIDTH, HEIGHT = 1280, 720


def skip_without_tools():
    missing = [tool for tool in ("Xvfb", "xdotool") if not shutil.which(tool)]
    if missing:
        print("skipped: no " + " and no ".join(missing))
        sys.exit(SKIPPED)


class Window:
    def __init__(self, program, *arguments, settings=None):
        self.folder = tempfile.mkdtemp(prefix="spurwright-gui-")
        self.actions = 0
        config = os.path.join(self.folder, "config", "spurwright")
        os.makedirs(config)
        if settings:
            with open(os.path.join(config, "settings.json"), "w", encoding="utf-8") as file:
                json.dump(settings, file)
        read, write = os.pipe()
        self.server = subprocess.Popen(["Xvfb", "-displayfd", str(write), "-screen", "0", f"{WIDTH}x{HEIGHT}x24", "-nolisten", "tcp", "-r"],
                                       pass_fds=[write], stderr=subprocess.DEVNULL)
        os.close(write)
        with os.fdopen(read) as told:
            number = told.readline().strip()
        self.environment = dict(os.environ, DISPLAY=":" + number, LIBGL_ALWAYS_SOFTWARE="1", LP_NATIVE_VECTOR_WIDTH="256",
                                XDG_CONFIG_HOME=os.path.join(self.folder, "config"), XDG_DATA_HOME=os.path.join(self.folder, "data"))
        self.probe = os.path.join(self.folder, "probe.json")
        self.program = program
        self.arguments = arguments
        self.open()

    def open(self):
        if os.path.exists(self.probe):
            os.remove(self.probe)
        self.process = subprocess.Popen([self.program, "--size", f"{WIDTH}x{HEIGHT}", "--seed", "1", "--probe", self.probe, *self.arguments],
                                        env=self.environment)
        self.until(lambda s: s["at_rest"], "a first frame")

    def close(self):
        for process in (self.process, self.server):
            if process.poll() is None:
                process.terminate()
                process.wait()
        shutil.rmtree(self.folder, ignore_errors=True)

    def crash(self):
        self.process.send_signal(signal.SIGKILL)
        self.process.wait()

    def state(self):
        try:
            with open(self.probe, encoding="utf-8") as file:
                return json.load(file)
        except (OSError, ValueError):
            return None

    def until(self, holds, what, seconds=40):
        """The first report that holds; fails with what was waited for. The window must not have closed by itself."""
        end = time.monotonic() + seconds
        while time.monotonic() < end:
            state = self.state()
            if state is not None and holds(state):
                return state
            assert self.process.poll() is None, f"the window closed by itself while waiting for {what}"
            time.sleep(0.02)
        state = self.state() or {}
        brief = {k: v for k, v in state.items() if k not in ("widgets", "parts")}
        raise AssertionError(f"waited in vain for {what}; {brief}")

    def xdotool(self, *words):
        subprocess.run(["xdotool", *[str(word) for word in words]], env=self.environment, check=True)

    # ---- the pointer
    def click(self, x, y):
        self.actions += 1
        self.xdotool("mousemove", x, y, "click", 1)

    def shift_click(self, x, y):
        """With Shift held from before the press until the window has taken it: a whole piece is meant."""
        self.actions += 1
        self.xdotool("mousemove", x, y, "keydown", "shift", "sleep", 0.2, "click", 1, "sleep", 0.2, "keyup", "shift")

    def drag(self, x, y, by):
        self.actions += 1
        self.xdotool("mousemove", x, y, "mousedown", 1, "mousemove", x + by / 2, y, "mousemove", x + by, y, "mouseup", 1)

    def wheel(self, steps):
        self.actions += 1
        self.xdotool("mousemove", 640, 480, "click", "--repeat", abs(steps), 4 if steps > 0 else 5)

    def widget(self, name):
        state = self.until(lambda s: s["at_rest"] and any(w["name"] == name and w["enabled"] for w in s["widgets"]), "widget " + name)
        return next(w for w in state["widgets"] if w["name"] == name)

    def click_widget(self, name):
        box = self.widget(name)["seen"]
        self.click((box[0] + box[2]) / 2, (box[1] + box[3]) / 2)

    @staticmethod
    def is_free(part):
        """Whether no panel lies over this place, the card of the vine folded."""
        x, y = part["x"], part["y"]
        return 110 < y < 605 and not (x < 330 and y < 160) and not (x > 1110 and y < 170) and 10 < x < WIDTH - 10

    def part(self, node, outward=False):
        """Where this joint, or the nearest joint of the same wood that can be seen, stands on the window; None where all of
        it is hidden. `outward`: that joint or one further out, so that nothing beyond what was meant comes off."""
        axis, index = node.split(".")

        def nearest(state):
            own = [p for p in state.get("parts", []) if p["node"].split(".")[0] == axis and self.is_free(p)]
            if outward:
                own = [p for p in own if int(p["node"].split(".")[1]) >= int(index)]
            return min(own, key=lambda p: abs(int(p["node"].split(".")[1]) - int(index)), default=None)

        return nearest(self.until(lambda s: s["at_rest"], "a picture at rest"))

    def lies_open(self, part):
        """Whether the pointer there points at this joint, not at wood before it."""
        self.xdotool("mousemove", part["x"], part["y"])
        end = time.monotonic() + 2
        while time.monotonic() < end:
            state = self.state()
            if state and state["hover"] == part["node"]:
                return True
            time.sleep(0.02)
        return False

    # ---- the keys
    def key(self, *names):
        """Presses them and waits until the window has taken each: what it reports next holds with them."""
        self.actions += len(names)
        before = (self.state() or {}).get("key_presses", 0)
        self.xdotool("key", "--delay", "12", *names)
        self.until(lambda s: s["key_presses"] >= before + len(names), "keys taken")
