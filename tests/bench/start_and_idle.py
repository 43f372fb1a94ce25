#!/usr/bin/env python3
"""Times the start of the real program, and what it uses while nobody touches it.

Usage: start_and_idle.py BARWRIGHT [PROJECT]   (default: samples/work_counter.json)
Prints the time from its start to its first picture on a virtual display, over ten starts, and the
processor time that it uses in ten seconds with the project open, beside what we aim for. Run it
from a release build on a machine at rest. Needs xvfb and xauth.
"""

import ctypes
import ctypes.util
import json
import os
import select
import shutil
import statistics
import subprocess
import sys
import tempfile
import time
from pathlib import Path

STARTS = 10
IDLE_SECONDS = 10.0
PATIENCE = 60.0  # seconds for one start, and for coming to rest
AIMED_START = 0.3  # seconds to the first picture
AIMED_IDLE = 0.0  # seconds of processor time
# Where a window of the usual size, without a window manager, shows its top bar, its panels and its
# view. Pixels, on the virtual display.
LOOKED_AT = ((40, 12), (200, 400), (800, 500), (1500, 700))


class Screen:
    """Pixels of the virtual display: the first picture is what changes them."""

    def __init__(self):
        self.x = ctypes.CDLL(ctypes.util.find_library("X11") or "libX11.so.6")
        self.x.XOpenDisplay.restype = ctypes.c_void_p
        self.x.XDefaultRootWindow.restype = ctypes.c_ulong
        self.x.XDefaultRootWindow.argtypes = [ctypes.c_void_p]
        self.x.XGetImage.restype = ctypes.c_void_p
        self.x.XGetImage.argtypes = [ctypes.c_void_p, ctypes.c_ulong, ctypes.c_int, ctypes.c_int,
                                     ctypes.c_uint, ctypes.c_uint, ctypes.c_ulong, ctypes.c_int]
        self.x.XGetPixel.restype = ctypes.c_ulong
        self.x.XGetPixel.argtypes = [ctypes.c_void_p, ctypes.c_int, ctypes.c_int]
        self.x.XDestroyImage.argtypes = [ctypes.c_void_p]
        self.display = self.x.XOpenDisplay(None)
        if not self.display:
            fail("no display")
        self.root = self.x.XDefaultRootWindow(self.display)

    def pixel(self, place):
        all_planes, whole_pixels = 0xFFFFFFFF, 2
        image = self.x.XGetImage(self.display, self.root, place[0], place[1], 1, 1, all_planes,
                                 whole_pixels)
        if not image:
            fail(f"the display has no pixel {place}")
        value = self.x.XGetPixel(image, 0, 0)
        self.x.XDestroyImage(image)
        return value

    def looked_at(self):
        return [self.pixel(place) for place in LOOKED_AT]


class Program:
    """The program at work, started when this is made; ends with the block."""

    def __init__(self, barwright, project, state_folder):
        # What it keeps for itself is kept apart from the user's own.
        environment = dict(os.environ, XDG_STATE_HOME=str(state_folder))
        self.started = time.monotonic()
        self.process = subprocess.Popen([barwright, "edit", "--report-state", str(project)],
                                        stdout=subprocess.PIPE, bufsize=0, env=environment)

    def __enter__(self):
        return self

    def __exit__(self, *_):
        self.process.terminate()
        self.process.wait(timeout=PATIENCE)
        self.process.stdout.close()

    def first_picture(self, screen, before):
        """Seconds until all that is looked at has changed: not the window's frame or ground."""
        while any(now == then for now, then in zip(screen.looked_at(), before)):
            if self.process.poll() is not None or time.monotonic() - self.started > PATIENCE:
                fail("no picture came")
            time.sleep(0.001)
        return time.monotonic() - self.started

    def first_state(self):
        """Seconds until it says that it is at rest, and what it says."""
        said = b""
        while b"\n" not in said:
            left = self.started + PATIENCE - time.monotonic()
            if left <= 0 or not select.select([self.process.stdout], [], [], left)[0]:
                fail("it never came to rest")
            part = os.read(self.process.stdout.fileno(), 1 << 16)
            if not part:
                fail("it ended")
            said += part
        return time.monotonic() - self.started, json.loads(said.split(b"\n", 1)[0][len("STATE "):])

    def processor_seconds(self):
        """Of all its threads, in user and system."""
        fields = Path(f"/proc/{self.process.pid}/stat").read_text().rsplit(")", 1)[1].split()
        return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")

    def wake_ups(self):
        """How often its threads began to run after they had waited."""
        total = 0
        for status in Path(f"/proc/{self.process.pid}/task").glob("*/status"):
            for line in status.read_text().splitlines():
                if line.startswith("voluntary_ctxt_switches:"):
                    total += int(line.split()[1])
        return total

    def come_to_rest(self):
        """Waits until two seconds have gone by without work; says how long that took."""
        begun = time.monotonic()
        while time.monotonic() - begun < PATIENCE:
            # What it has to say must not stop it.
            while select.select([self.process.stdout], [], [], 0)[0]:
                if not os.read(self.process.stdout.fileno(), 1 << 16):
                    fail("it ended")
            used = self.processor_seconds()
            time.sleep(2.0)
            if self.processor_seconds() == used:
                return time.monotonic() - begun
        return None


def fail(text):
    print(f"FAILED: {text}", file=sys.stderr)
    sys.exit(1)


def verdict(value, aimed):
    return "as aimed for" if value <= aimed else "NOT as aimed for"


def time_starts(barwright, project, folder):
    screen = Screen()
    pictures, processor, rests = [], [], []
    for number in range(STARTS):
        before = screen.looked_at()
        with Program(barwright, project, folder / f"state {number}") as program:
            pictures.append(program.first_picture(screen, before))
            processor.append(program.processor_seconds())
            rest, state = program.first_state()
            rests.append(rest)
            if state["pieces"] == 0 or state["dialog"]:
                fail(f"{project} is not what is shown: {state['title']}, {state['dialog']}")
        wait_for_empty(screen, before)
    median, worst = statistics.median(pictures), max(pictures)
    print(f"{state['title']}: {state['pieces']} pieces, {state['fasteners']} fasteners;"
          f" {STARTS} starts, in seconds: {' '.join(f'{t:.3f}' for t in pictures)}")
    print(f"start to first picture   median {median:.3f} s, worst {worst:.3f} s;"
          f" aimed for: under {AIMED_START} s: median {verdict(median, AIMED_START)},"
          f" worst {verdict(worst, AIMED_START)}")
    print(f"processor time till then median {statistics.median(processor):.2f} s, which other work"
          " on the machine disturbs less")
    print(f"start to being at rest   median {statistics.median(rests):.3f} s,"
          f" worst {max(rests):.3f} s")


def wait_for_empty(screen, before):
    begun = time.monotonic()
    while screen.looked_at() != before:
        if time.monotonic() - begun > PATIENCE:
            fail("the window does not go")
        time.sleep(0.01)


def time_idle(barwright, project, folder):
    with Program(barwright, project, folder / "state idle") as program:
        program.first_state()
        settled = program.come_to_rest()
        used, woken = program.processor_seconds(), program.wake_ups()
        begun = time.monotonic()
        time.sleep(IDLE_SECONDS)
        seconds = time.monotonic() - begun
        used, woken = program.processor_seconds() - used, program.wake_ups() - woken
    when = "never at rest before" if settled is None else f"after {settled:.0f} s of coming to rest"
    print(f"idle                     {used:.2f} s of processor time in {seconds:.1f} s"
          f" ({100 * used / seconds:.1f} %), woken {woken} times; {when};"
          f" aimed for: {AIMED_IDLE:.0f} s: {verdict(used, AIMED_IDLE)}")


def with_display(arguments):
    """Runs this script again inside a virtual display."""
    for tool in ("Xvfb", "xvfb-run", "xauth"):
        if shutil.which(tool) is None:
            fail(f"{tool} is not installed")
    screen = "-screen 0 1600x1000x24 -nolisten tcp -noreset"
    environment = dict(os.environ, BARWRIGHT_BENCH_INSIDE="1", LC_ALL="C.UTF-8")
    return subprocess.run(["xvfb-run", "-a", "-s", screen, sys.executable, __file__, *arguments],
                          env=environment, check=False).returncode


def main():
    if len(sys.argv) not in (2, 3):
        print(__doc__, file=sys.stderr)
        return 2
    if os.environ.get("BARWRIGHT_BENCH_INSIDE") != "1":
        return with_display(sys.argv[1:])
    samples = Path(__file__).resolve().parents[2] / "samples"
    project = Path(sys.argv[2] if len(sys.argv) == 3 else samples / "work_counter.json").resolve()
    with tempfile.TemporaryDirectory(prefix="barwright_bench_") as folder:
        time_starts(sys.argv[1], project, Path(folder))
        time_idle(sys.argv[1], project, Path(folder))
    return 0


if __name__ == "__main__":
    sys.exit(main())
