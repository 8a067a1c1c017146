#!/usr/bin/env python3
"""Makes the picture of a quote that README.md shows:  picture.py build/groat samples/bakery-quote.png

The page as headless Chromium draws it, kept with a palette of its few colours, which takes a quarter of the room.
"""

import pathlib
import shutil
import struct
import subprocess
import sys
import tempfile
import zlib

ORDER = ["quote", "2026-041", "--books", "samples/bakery", "--as", "html"]
SIZE = 720, 1420
COLOURS = 32


def photographed(page, folder):
    picture = folder / "page.png"
    subprocess.run([shutil.which("chromium"), "--headless", "--no-sandbox", "--hide-scrollbars", f"--user-data-dir={folder}/profile",
                    "--disable-lcd-text", f"--window-size={SIZE[0]},{SIZE[1]}", f"--screenshot={picture}", page.as_uri()],
                   check=True, capture_output=True, timeout=120)
    return picture.read_bytes()


def pixels(png):
    """The rows of a PNG of 8 bits a colour without interlacing, each a list of (red, green, blue)."""
    at, data, width, channels = 8, b"", 0, 0
    while at < len(png):
        length, kind = struct.unpack(">I4s", png[at:at + 8])
        body = png[at + 8:at + 8 + length]
        if kind == b"IHDR":
            width, _, depth, colour, _, _, interlaced = struct.unpack(">IIBBBBB", body)
            assert depth == 8 and colour in (2, 6) and not interlaced
            channels = 3 if colour == 2 else 4
        if kind == b"IDAT":
            data += body
        at += length + 12
    raw, stride = zlib.decompress(data), width * channels
    above, rows = bytes(stride), []
    for start in range(0, len(raw), stride + 1):
        how, row = raw[start], bytearray(raw[start + 1:start + 1 + stride])
        for i, byte in enumerate(row):
            left, up, corner = (row[i - channels], above[i], above[i - channels]) if i >= channels else (0, above[i], 0)
            guess = left + up - corner
            paeth = min((left, up, corner), key=lambda each: abs(guess - each))
            row[i] = (byte + (0, left, up, (left + up) // 2, paeth)[how]) & 255
        rows.append([tuple(row[i:i + 3]) for i in range(0, stride, channels)])
        above = bytes(row)
    return rows


def with_palette(rows):
    """The same as a PNG of the colours that are seen most; any other becomes the nearest of them."""
    seen = {}
    for row in rows:
        for colour in row:
            seen[colour] = seen.get(colour, 0) + 1
    palette = sorted(seen, key=lambda each: (-seen[each], each))[:COLOURS]
    nearest = {each: min(range(len(palette)), key=lambda i: sum((a - b) ** 2 for a, b in zip(palette[i], each))) for each in seen}
    data = b"".join(b"\0" + bytes(nearest[colour] for colour in row) for row in rows)

    def chunk(kind, body):
        return struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))

    return (b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", struct.pack(">IIBBBBB", len(rows[0]), len(rows), 8, 3, 0, 0, 0))
            + chunk(b"PLTE", bytes(part for colour in palette for part in colour))
            + chunk(b"IDAT", zlib.compress(data, 9)) + chunk(b"IEND", b""))


def main():
    groat, target = sys.argv[1:]
    with tempfile.TemporaryDirectory() as directory:
        folder = pathlib.Path(directory)
        subprocess.run([groat, *ORDER, "--out", str(folder / "quote.html")], check=True)
        picture = with_palette(pixels(photographed(folder / "quote.html", folder)))
    pathlib.Path(target).write_bytes(picture)
    print(f"{target}: {len(picture)} bytes")


if __name__ == "__main__":
    main()
