"""Ratios of the window against a minimal program of GLFW and OpenGL 3.3, both under one Xvfb, in turns.
Usage: window_bench.py SPURWRIGHT-WINDOW MINIMAL-WINDOW [PAIRS]   Exit 1 where a bar is missed, 77 without Xvfb."""
import json
import os
import shutil
import statistics
import subprocess
import sys
import tempfile
import time

if not shutil.which("Xvfb"):
    print("skipped: no Xvfb")
    sys.exit(77)
window, minimal = os.path.abspath(sys.argv[1]), os.path.abspath(sys.argv[2])
pairs = int(sys.argv[3]) if len(sys.argv) > 3 else 7

read, write = os.pipe()
server = subprocess.Popen(["Xvfb", "-displayfd", str(write), "-screen", "0", "1280x720x24", "-nolisten", "tcp"], pass_fds=[write], stderr=subprocess.DEVNULL)
os.close(write)
with os.fdopen(read) as told:
    display = ":" + told.readline().strip()
folder = tempfile.mkdtemp(prefix="spurwright-bench-")
os.makedirs(folder + "/config/spurwright")
with open(folder + "/config/spurwright/settings.json", "w", encoding="utf-8") as file:
    json.dump({"kind": "spurwright-settings", "version": 1, "safety_seen": True}, file)  # the vine itself, not the card before it
environment = dict(os.environ, DISPLAY=display, LIBGL_ALWAYS_SOFTWARE="1", XDG_CONFIG_HOME=folder + "/config", XDG_DATA_HOME=folder + "/data")


class Run:
    """A program from its start until its file is there."""

    def __init__(self, *command):
        self.file = os.path.join(folder, "shown")
        if os.path.exists(self.file):
            os.remove(self.file)
        begun = time.perf_counter()
        self.process = subprocess.Popen([*command, self.file], env=environment)
        while not os.path.exists(self.file):
            assert self.process.poll() is None, "it closed by itself"
            time.sleep(0.001)
        self.seconds = time.perf_counter() - begun

    def resident_mb(self):
        with open(f"/proc/{self.process.pid}/status", encoding="ascii") as status:
            return next(int(line.split()[1]) for line in status if line.startswith("VmRSS")) / 1024

    def report(self):
        with open(self.file, encoding="utf-8") as file:
            return json.load(file)

    def end(self):
        self.process.kill()
        self.process.wait()


def start_seconds(*command):
    run = Run(*command)
    run.end()
    return run.seconds


bad = False


def say(name, value, bar, unit=""):
    global bad
    bad = bad or value > bar
    print(f"{name}: {value:.2f}{unit} (bar {bar:g}{unit}){'' if value <= bar else '  MISSED'}")


try:
    start_seconds(window, "--probe"), start_seconds(minimal)  # first touch of files and shaders
    ratios = [start_seconds(window, "--probe") / start_seconds(minimal) for _ in range(pairs)]
    say("L15 window to first frame / minimal program", statistics.median(ratios), 1.5)

    least = Run(minimal)
    time.sleep(1)
    least_mb = least.resident_mb()
    least.end()
    own = Run(window, "--scene", "first", "--size", "1280x720", "--probe")
    time.sleep(5)  # the search, the finer picture
    own_mb = own.resident_mb()
    say(f"L16 resident memory, one vine open, beyond the minimal program's {least_mb:.0f} MB", own_mb - least_mb, 60, " MB")
    before = own.report()["frames"]
    time.sleep(10)
    say("L21 frames drawn in 10 s without input", own.report()["frames"] - before, 1)
    own.end()
finally:
    server.terminate()
    server.wait()
    shutil.rmtree(folder, ignore_errors=True)
sys.exit(1 if bad else 0)
