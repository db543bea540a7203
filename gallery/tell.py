#!/usr/bin/env python3
"""Writes gallery/README.md: the week's jobs by day, each in the words of its own file's comment."""

import datetime
import pathlib
import re
import xml.etree.ElementTree as xml

HERE = pathlib.Path(__file__).parent
INTRODUCTION = """# A week at Alder and Quoin, framers

Alder and Quoin is an invented shop, and so are its customers, boards and mouldings; we drew every
picture (`draw/draw.py`). Each job is one file to start your own from; together the jobs use every
word of the job file. What you see of each is the proof for the customer, the template for the back
of the board with all layers laid over one another, and the first page of the cut sheet.

`suggestions` holds twelve sets of pictures and what `mullion suggest` proposes for each, on a board of
any size and in frames of 16 x 20, 24 x 36 and 32 x 40 in (`suggestions/make PROGRAM`).

    cmake --build --preset release --target gallery    makes the pictures and this page anew
"""
PAGES = (("proof", "proof"), ("template", "template"), ("cuts", "cut sheet"))


def told(path):
    text = path.read_text(encoding="utf-8")
    job = xml.fromstring(text.encode())
    words = " ".join(re.search(r"<!--(.*?)-->", text, re.S).group(1).split())
    name = path.stem
    pictures = "\n".join(f'<a href="made/{name}-{page}.png"><img src="made/{name}-{page}.png" height="260" '
                         f'alt="{what} of {name}"></a>' for page, what in PAGES)
    heading = f"### {job.findtext('title')}"
    return (job.get("date"), job.get("reference"),
            f"{heading}\n\n{job.get('reference')}, {job.find('customer').get('name')}: {words} "
            f"[`{path.name}`]({path.name})\n\n{pictures}\n")


def page(jobs):
    out, day = INTRODUCTION, None
    for date, _, words in sorted(jobs):
        if date != day:
            out += f"\n## {datetime.date.fromisoformat(date):%A}\n"
            day = date
        out += "\n" + words
    return out


if __name__ == "__main__":
    jobs = [told(path) for path in HERE.glob("*.xml")]
    (HERE / "README.md").write_text(page(jobs), encoding="utf-8")
