#!/usr/bin/env python3
"""Drives the real program under a virtual display, as a user would with mouse and keyboard.

Usage: smoke.py BARWRIGHT
Exit status 77 (skipped) when Xvfb, xauth or xdotool is missing. Nothing here sleeps: every step
waits for a state that the program prints (`--report-state`).
"""

import csv
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
        state = start_box(program, hands)
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
        status = leave(program, hands)
    finally:
        put_away(program, hands)
    if status != 0:
        fail(f"the program ended with {status}")
    check_files(folder)


def start_box(program, hands):
    program.wait_for("an empty desk", lambda s: "Start/Box frame" in s["items"])
    hands.click(item(program, "Start/Box frame"))
    program.wait_for("the form", lambda s: "Starter/Make the frame" in s["items"])
    hands.click(item(program, "Starter/Make the frame"))
    return program.wait_for("a frame", lambda s: s["pieces"] > 0 and not s["dialog"])


def leave(program, hands):
    """Gives how the program ended."""
    hands.do("key ctrl+q")
    program.wait_for("the question", lambda s: s["dialog"] == "unsaved")
    hands.click(item(program, "Unsaved/Discard"))
    return program.process.wait(timeout=PATIENCE)


def fit_to_a_well(barwright, folder):
    """The three strokes, and what a maker looks at between them."""
    folder.mkdir()
    program = Program(barwright, folder)
    hands = Hands()
    try:
        start_box(program, hands)
        put_post(program, hands)
        tape_well(program, hands)
        hands.do("key ctrl+2")
        program.wait_for("how deep it may be",
                         lambda s: s["open"] > 0 and "Lay out/Largest depth" in s["items"])
        if not item(program, "Lay out/band depth")[2].endswith("then wheel well"):
            fail(f"the depth is held by {item(program, 'Lay out/band depth')[2]}")
        hands.click(item(program, "Lay out/Largest depth"))
        program.wait_for("a depth that fits", lambda s: s["open"] == 0)

        hands.do("key ctrl+4")
        program.wait_for("what was checked", lambda s: s["place"] == "prove" and s["items"].get(
            "Prove/Fits in the room", ["", "", ""])[2] == "nothing to mend")
        hands.do("key shift+c")
        program.wait_for("a cut through all", lambda s: s["items"]["Seeing/cut"][2] == "Cut, on")

        hands.do("key ctrl+e")
        program.wait_for("the browser", lambda s: "Files/Take" in s["items"])
        go_to_folder(program, hands, folder)
        hands.click(item(program, "Files/Take"))
        program.wait_for("written schedules", lambda s: "schedules" in s["notice"])
        status = leave(program, hands)
    finally:
        put_away(program, hands)
    if status != 0:
        fail(f"the program ended with {status}")
    marks = [{row["mark"] for row in csv.DictReader((folder / name).open(newline=""))}
             for name in ("cut.csv", "drill.csv")]
    if marks[0] != marks[1]:
        fail(f"cut: {sorted(marks[0])}, drilled: {sorted(marks[1])}")
    print(f"fitted to a wheel well, and exported the holes of {len(marks[1])} marks")


def put_post(program, hands):
    """Sets a plane and puts a post on it with the mouse; a mend holds the end that is loose."""
    hands.do("key --delay 4 1 p")  # from the front, where tags tell where the planes are
    items = program.wait_for("planes", lambda s: "View/planes/top" in s["items"])["items"]
    (left, _, _), (right, _, _) = items["View/planes/left"], items["View/planes/right"]
    top, shelf = items["View/planes/top"][1], items["View/planes/shelf 1"][1]
    hands.click(((2 * left + right) // 3, top))
    program.wait_for("a plane", lambda s: "View/planes/divider 1" in s["items"])
    pieces, x = program.state["pieces"], item(program, "View/planes/divider 1")[0]
    hands.click(item(program, "View/Put members"))
    hands.click((x, (top + shelf) // 2))
    program.wait_for("a post", lambda s: s["pieces"] == pieces + 1 and s["chosen"] == [
        "post front divider 1"])
    hands.click(item(program, "Lay out/finding 1"))
    program.wait_for("a mend", lambda s: "Lay out/finding 1 mend 1" in s["items"])
    hands.click(item(program, "Lay out/finding 1 mend 1"))
    program.wait_for("an end that is held", lambda s: s["open"] == 0)


def tape_well(program, hands):
    hands.do("key ctrl+w")
    program.wait_for("the survey", lambda s: "Well/start" in s["items"])
    for tabs, length in ((4, "12"), (1, "34"), (3, "9 1/4"), (1, "8 1/2")):
        hands.do("key --delay 4" + " Tab" * tabs, f"type --delay 4 '{length}'")
    program.wait_for("what was taped", lambda s: s["items"]["Well/reach"][2] == "8 1/2")
    hands.do("key Return")
    program.wait_for("the well", lambda s: "wheel well reach" in s["dimensions"])


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


def go_to_folder(program, hands, folder):
    hands.click(item(program, "Files/Folder"))
    program.wait_for("a field to type in", lambda s: s["text_input"])
    hands.do("key ctrl+a", f"type --delay 0 {folder}", "key Return")
    program.wait_for("the folder", lambda s: s["items"]["Files/Folder"][2] == str(folder))


def save_in_browser(program, hands, file):
    go_to_folder(program, hands, file.parent)
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
        fit_to_a_well(sys.argv[1], Path(folder).resolve() / "well")
    return 0


if __name__ == "__main__":
    sys.exit(main())
