#!/usr/bin/env python3
"""Drives the real program under a virtual display, as a user would with mouse and keyboard.

Usage: smoke.py BARWRIGHT
Exit status 77 (skipped) when Xvfb, xauth or xdotool is missing. Nothing here sleeps: every step
waits for a state that the program prints (`--report-state`).
"""

import json
import os
import select
import shutil
import signal
import subprocess
import sys
import tempfile
import time
from pathlib import Path

SKIPPED = 77
PATIENCE = 60.0  # seconds for one step; a loaded machine draws slowly


class Program:
    """The program under test and the last state that it printed."""

    def __init__(self, barwright, folder, *arguments):
        command = [barwright, "edit", "--size", "1280x800", "--samples", "0", "--report-state",
                   *arguments]
        # What it keeps for itself is kept apart from the user's own.
        environment = dict(os.environ, XDG_STATE_HOME=str(folder / "state"))
        self.process = subprocess.Popen(command, stdout=subprocess.PIPE, bufsize=0,
                                        env=environment)
        self.pending = b""
        self.state = {}

    def read_line(self, deadline):
        while b"\n" not in self.pending:
            left = deadline - time.monotonic()
            if left <= 0 or not select.select([self.process.stdout], [], [], left)[0]:
                return None
            part = os.read(self.process.stdout.fileno(), 1 << 16)
            if not part:
                return None
            self.pending += part
        line, self.pending = self.pending.split(b"\n", 1)
        return line.decode("utf-8", "replace")

    def wait_for(self, what, is_so):
        """Waits until the predicate holds of the state; ends the test when it never does."""
        deadline = time.monotonic() + PATIENCE
        while True:
            if self.state and is_so(self.state):
                return self.state
            line = self.read_line(deadline)
            if line is None:
                shown = {k: v for k, v in self.state.items() if k != "items"}
                fail(f"never came: {what}\nlast state: {json.dumps(shown)}"
                     f"\nitems: {sorted(self.state.get('items', {}))}")
            if line.startswith("STATE "):
                self.state = json.loads(line[6:])


class Hands:
    """Mouse and keyboard: one xdotool that is fed line by line."""

    def __init__(self):
        self.tool = subprocess.Popen(["xdotool", "-"], stdin=subprocess.PIPE)

    def do(self, *lines):
        self.tool.stdin.write(("\n".join(lines) + "\n").encode())
        self.tool.stdin.flush()

    def click(self, place):
        self.do(f"mousemove {place[0]} {place[1]}", "click 1")

    def drag(self, place, dx):
        x, y = place[0], place[1]
        self.do(f"mousemove {x} {y}", "mousedown 1", f"mousemove {x + dx // 2} {y}",
                f"mousemove {x + dx} {y}", "mouseup 1")

    def close(self):
        self.tool.stdin.close()
        self.tool.wait()


def put_away(program, hands):
    """Whatever came of it, nothing goes on running."""
    hands.close()
    if program.process.poll() is None:
        program.process.send_signal(signal.SIGTERM)


def fail(text):
    print(f"FAILED: {text}", file=sys.stderr)
    sys.exit(1)


def item(program, name):
    items = program.state["items"]
    if name not in items:
        fail(f"no item {name} in {sorted(items)}")
    return items[name]


def test(barwright, folder):
    program = Program(barwright, folder)
    hands = Hands()
    try:
        program.wait_for("an empty desk", lambda s: "Start/Box frame" in s["items"])
        hands.click(item(program, "Start/Box frame"))
        program.wait_for("the form", lambda s: "Starter/Make the frame" in s["items"])
        hands.click(item(program, "Starter/Make the frame"))
        state = program.wait_for("a frame", lambda s: s["pieces"] > 0 and not s["dialog"])
        print(f"made a frame of {state['pieces']} pieces, {state['fasteners']} fasteners")

        # Worked out beside the window, and shown without a touch of mouse or keyboard.
        def has_bands(s):
            shown = [name for name in s["dimensions"] if f"Lay out/edit {name}" in s["items"]]
            return shown and all(f"Lay out/band {name}" in s["items"] for name in shown)

        program.wait_for("how far each dimension may go", has_bands)

        width = state["dimensions"]["width"]
        hands.drag(item(program, "Lay out/width"), 64)
        program.wait_for("a wider frame", lambda s: s["dimensions"]["width"] != width)
        if program.state["dimensions"]["width"] != "26":
            fail(f"64 pixels made {width} into {program.state['dimensions']['width']}, not 26")

        hands.click(item(program, "Lay out/depth"))
        program.wait_for("a field to type in", lambda s: s["text_input"])
        hands.do("key ctrl+a", "type --delay 0 width/2", "key Return")
        program.wait_for("the typed depth", lambda s: s["dimensions"]["depth"] == "13")

        hands.do("key ctrl+s")
        program.wait_for("the browser", lambda s: "Files/Name" in s["items"])
        save_in_browser(program, hands, folder / "box.json")
        program.wait_for("a saved project", lambda s: s["saved"] and not s["dialog"])

        turn = program.state["view"]["turn"]
        hands.drag(item(program, "View/picture"), 80)
        program.wait_for("another view", lambda s: s["view"]["turn"] != turn)

        hands.do("key ctrl+e")
        program.wait_for("the browser", lambda s: "Files/Take" in s["items"])
        hands.click(item(program, "Files/Take"))
        program.wait_for("written schedules", lambda s: "schedules" in s["notice"])

        # Made, pulled, typed: as many keys as steps, faster than frames are drawn, and none is lost.
        # Some milliseconds apart, since the window library takes keys of one millisecond for one.
        hands.do("key --delay 4 ctrl+z ctrl+z ctrl+z")
        program.wait_for("everything undone", lambda s: s["pieces"] == 0)
        hands.do("key ctrl+q")
        program.wait_for("the question", lambda s: s["dialog"] == "unsaved")
        hands.click(item(program, "Unsaved/Discard"))
        status = program.process.wait(timeout=PATIENCE)
    finally:
        put_away(program, hands)
    if status != 0:
        fail(f"the program ended with {status}")
    check_files(folder)


def kill_and_bring_back(barwright, folder):
    """A program that is killed loses nothing that was seen."""
    program = Program(barwright, folder, str(folder / "box.json"))
    hands = Hands()
    try:
        program.wait_for("the saved box", lambda s: s["pieces"] > 0)
        hands.click(item(program, "Lay out/depth"))
        program.wait_for("a field to type in", lambda s: s["text_input"])
        hands.do("key ctrl+a", "type --delay 0 17", "key Return")
        program.wait_for("the typed depth", lambda s: s["dimensions"]["depth"] == "17")
        program.process.kill()
        program.process.wait(timeout=PATIENCE)
        program = Program(barwright, folder)
        program.wait_for("the question", lambda s: s["dialog"] == "recovery")
        hands.do("key Return")
        program.wait_for("the edits", lambda s: s["dimensions"].get("depth") == "17")
        hands.do("key ctrl+s")
        program.wait_for("a saved project", lambda s: s["saved"] and not s["dialog"])
        hands.do("key ctrl+q")
        status = program.process.wait(timeout=PATIENCE)
    finally:
        put_away(program, hands)
    if status != 0:
        fail(f"the program ended with {status}")
    left = list((folder / "state" / "barwright" / "journals").iterdir())
    if left:
        fail(f"journals are left: {left}")
    print("killed, and brought back what was not saved")


def save_in_browser(program, hands, file):
    hands.click(item(program, "Files/Folder"))
    program.wait_for("a field to type in", lambda s: s["text_input"])
    hands.do("key ctrl+a", f"type --delay 0 {file.parent}", "key Return")
    program.wait_for("the folder",
                     lambda s: s["items"]["Files/Folder"][2] == str(file.parent))
    hands.click(item(program, "Files/Name"))
    program.wait_for("a field to type in", lambda s: s["text_input"])
    hands.do("key ctrl+a", f"type --delay 0 {file.name}", "key Return")


def check_files(folder):
    project = json.loads((folder / "box.json").read_text())
    if project.get("barwright") != 1:
        fail("the saved project has no format number")
    for name in ("cut.csv", "drill.csv", "fasteners.csv", "bars.csv", "pieces.json"):
        if not (folder / name).stat().st_size:
            fail(f"{name} is empty")
    print("saved and exported", *sorted(p.name for p in folder.iterdir()))


def with_display(arguments):
    """Runs this script again inside a virtual display."""
    for tool in ("Xvfb", "xvfb-run", "xauth", "xdotool"):
        if shutil.which(tool) is None:
            print(f"SKIPPED: {tool} is not installed")
            return SKIPPED
    screen = "-screen 0 1280x800x24 -nolisten tcp -noreset"
    environment = dict(os.environ, BARWRIGHT_SMOKE_INSIDE="1", LC_ALL="C.UTF-8")
    return subprocess.run(["xvfb-run", "-a", "-s", screen, sys.executable, __file__, *arguments],
                          env=environment, check=False).returncode


def main():
    if len(sys.argv) != 2:
        print(__doc__, file=sys.stderr)
        return 2
    if os.environ.get("BARWRIGHT_SMOKE_INSIDE") != "1":
        return with_display(sys.argv[1:])
    with tempfile.TemporaryDirectory(prefix="barwright_smoke_") as folder:
        test(sys.argv[1], Path(folder).resolve())
        kill_and_bring_back(sys.argv[1], Path(folder).resolve())
    return 0


if __name__ == "__main__":
    sys.exit(main())
