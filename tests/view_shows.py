#!/usr/bin/env python3
"""Checks that pictures of the window (PNG files, 8 bits RGB or RGBA) show a skeleton in their view.

Usage: view_shows.py PICTURE...
Only the middle of the window is looked at: panels, titles and the rows of the schedules differ from
sample to sample whether or not anything was drawn.
"""

import struct
import sys
import zlib

PAPER = (0xF4, 0xF1, 0xEA)
LEAST_SHARE = 0.04  # of pixels that are not bare paper
LEAST_TONES = 1600  # tags and letters alone have up to 915, the samples with a skeleton 2482 and more


def rows_of(data, share):
    """The upper share of the picture's rows, and how many bytes a pixel takes."""
    if data[:8] != b"\x89PNG\r\n\x1a\n":
        raise ValueError("not a PNG file")
    at, packed, header = 8, b"", None
    while at < len(data):
        size, kind = struct.unpack(">I4s", data[at:at + 8])
        body = data[at + 8:at + 8 + size]
        if kind == b"IHDR":
            header = struct.unpack(">IIBBBBB", body)
        elif kind == b"IDAT":
            packed += body
        at += size + 12
    width, height, depth, colour, _, _, interlaced = header
    if depth != 8 or colour not in (2, 6) or interlaced:
        raise ValueError("not 8 bits of RGB or RGBA")
    bytes_each = 4 if colour == 6 else 3
    rows = unfiltered(zlib.decompress(packed), width * bytes_each, int(height * share), bytes_each)
    return rows, bytes_each


def unfiltered(raw, stride, height, back):
    rows, above = [], bytes(stride)
    for y in range(height):
        start = y * (stride + 1)
        kind, row = raw[start], bytearray(raw[start + 1:start + 1 + stride])
        for x in range(stride if kind else 0):
            left = row[x - back] if x >= back else 0
            corner = above[x - back] if x >= back else 0
            row[x] = (row[x] + guess(kind, left, above[x], corner)) & 255
        above = bytes(row)
        rows.append(above)
    return rows


def guess(kind, left, up, corner):
    """What the filter of that kind takes off a byte."""
    if kind == 1:
        return left
    if kind == 2:
        return up
    if kind == 3:
        return (left + up) // 2
    middle = left + up - corner
    return min((left, up, corner), key=lambda near: abs(middle - near))


def fault_of(picture):
    """Why the picture shows no skeleton; empty when it shows one."""
    with open(picture, "rb") as file:
        rows, bytes_each = rows_of(file.read(), share=0.7)
    wide = len(rows[0]) // bytes_each
    seen = [tuple(row[x * bytes_each:x * bytes_each + 3])
            for row in rows[len(rows) // 4:] for x in range(wide * 3 // 8, wide * 11 // 16)]
    share = sum(pixel != PAPER for pixel in seen) / len(seen)
    tones = len(set(seen))
    if share >= LEAST_SHARE and tones >= LEAST_TONES:
        return ""
    return f"{picture}: {share:.1%} of the view is drawn, in {tones} tones"


def main():
    if len(sys.argv) < 2:
        print(__doc__, file=sys.stderr)
        return 2
    faults = [fault for fault in map(fault_of, sys.argv[1:]) if fault]
    for fault in faults:
        print(f"nothing to be seen in {fault}", file=sys.stderr)
    return 1 if faults else 0


if __name__ == "__main__":
    sys.exit(main())
