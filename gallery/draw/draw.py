#!/usr/bin/env python3
"""Draws the gallery's pictures: `gallery/draw/draw.py [NAME ...]` writes gallery/pictures/NAME,
all of them where none is named. Needs librsvg2-bin, libjpeg-turbo-progs, netpbm and pngquant."""

import pathlib
import subprocess
import sys

import album
import living, paper, places, small, things, year  # noqa: F401  each puts its pictures on the album's list

FOLDER = pathlib.Path(__file__).parent.parent / "pictures"
QUALITY = "80"


def through(data, *words):
    """What a program makes of the data."""
    return subprocess.run(words, input=data, stdout=subprocess.PIPE, check=True).stdout


def write(entry):
    png = through(album.drawn(entry).encode(), "rsvg-convert", "--background-color", "white")
    path = FOLDER / entry[0]
    if path.suffix == ".png":
        path.write_bytes(through(png, "pngquant", "--strip", "--nofs", "48", "-"))
    else:
        path.write_bytes(through(through(png, "pngtopnm"), "cjpeg", "-quality", QUALITY, "-optimize"))


if __name__ == "__main__":
    wanted = sys.argv[1:]
    for entry in album.pictures:
        if not wanted or entry[0].rsplit(".", 1)[0] in wanted:
            write(entry)
