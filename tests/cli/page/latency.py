"""How long a framer waits: from an edit to the new drawing on the screen, frames while dragging, and from
`mullion open` to the first drawing. In Chromium, on this machine. Prints one line for each; fails where
one is over its limit."""

import glob
import os
import sys
import time

from browser import Browser
from opened import GALLERY, Opened, folder_for, gallery_jobs

EDITS = 60
SECONDS_OF_DRAGGING = 2


def job_of(columns, rows):
    images = sorted(os.path.basename(path) for path in glob.glob(os.path.join(GALLERY, "pictures/*.png")))
    names = [f"p{number}" for number in range(columns * rows)]
    pictures = "".join(f'    <picture id="{name}" width="5" height="4" image="pictures/{images[at % len(images)]}"/>\n'
                       for at, name in enumerate(names))
    lines = "".join("      <row>" + "".join(f'<opening picture="{name}"/>' for name in names[at * columns:(at + 1) * columns]) +
                    "</row>\n" for at in range(rows))
    return (f'<job version="1" reference="B-{columns * rows}" unit="in" increment="1/16">\n  <pictures>\n{pictures}  </pictures>\n'
            '  <layers>\n    <layer name="Top mat" board="Oat" colour="#ece5d4"/>\n    <layer name="Under-mat" board="Slate" colour="#3f5563"/>\n'
            f'  </layers>\n  <outer width="{columns * 7}" height="{rows * 6 + 6}"/>\n  <arrange>\n    <column>\n{lines}    </column>\n  </arrange>\n</job>\n')


def at_95_percent(times):
    return sorted(times)[int(len(times) * 0.95)]


def open_job(page, opened, name):
    page.open(opened.address)
    page.wait_for(".card")
    page.read(f"location.hash = '#job={name}'")
    page.wait_for(".drawing svg")
    page.wait_for(".size")
    time.sleep(1)  # photographs are decoded


def edits(page, name):
    page.read("performance.clearMeasures()")
    for number in range(EDITS):
        page.click('.sizes button[name="border.left"]')
        page.wait_for(".size input")
        page.type("2 1/2" if number % 2 else "3")
        page.key("Enter")
        page.wait(f"performance.getEntriesByName('edit').length > {number}")
    times = page.read("performance.getEntriesByName('edit').map((one) => one.duration)")
    median = sorted(times)[len(times) // 2]
    return median, at_95_percent(times)


def dragging(page):
    page.read("performance.clearMeasures()")
    page.take('[data-grip="border.left"]')
    x, y = page.at
    begin = time.monotonic()
    step = 0
    while time.monotonic() - begin < SECONDS_OF_DRAGGING:
        step += 1
        page.mouse("mouseMoved", x + 40 * (1 if step // 12 % 2 else -1) * (step % 12) / 12, y)
    seconds = time.monotonic() - begin
    page.key("Escape")
    page.at = (x, y)
    page.let_go()
    return page.read("performance.getEntriesByName('preview').length") / seconds


def main():
    folder = folder_for("latency")
    gallery_jobs(folder, "double-mat")
    for columns, rows in ((4, 3), (6, 4)):
        with open(os.path.join(folder, f"of-{columns * rows}.xml"), "w", encoding="utf-8") as file:
            file.write(job_of(columns, rows))
    page, too_slow = Browser(), []
    begin = time.monotonic()
    opened = Opened(folder, job=os.path.join(folder, "of-12.xml"))
    page.open(opened.address)
    page.wait_for(".drawing svg")
    first = time.monotonic() - begin
    opened.end()
    opened = Opened(folder)

    def tell(what, value, unit, is_kept):
        print(f"{what}: {value:.0f} {unit}")
        if not is_kept:
            too_slow.append(what)

    tell("from open to the first drawing, 12 openings", first * 1000, "ms", first < 1)
    for count, limit in ((12, 50), (24, 80)):
        open_job(page, opened, f"of-{count}")
        median, most = edits(page, f"of-{count}")
        tell(f"edit to new drawing, {count} openings, median", median, "ms", True)
        tell(f"edit to new drawing, {count} openings, 95 %", most, "ms", most < limit)
        frames = dragging(page)
        tell(f"frames a second while a border is dragged, {count} openings", frames, "", frames >= 30 or count > 12)
    page.end()
    opened.end()
    if too_slow:
        sys.exit("over the limit: " + "; ".join(too_slow))


main()
