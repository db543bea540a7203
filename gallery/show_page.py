#!/usr/bin/env python3
"""Makes the pictures of the page that the README shows, in Chromium: a first job, suggestions, and a column
on its way; and one of the page beside the cutter.

gallery/show_page.py PROGRAM FOLDER PICTURES"""

import os
import shutil
import subprocess
import sys

HERE = os.path.dirname(os.path.realpath(__file__))
sys.path.insert(0, os.path.join(HERE, "../tests/cli/page"))

from browser import Browser  # noqa: E402
from opened import Opened  # noqa: E402

COLOURS = "64"
WIDTH, HEIGHT, FINENESS = 1120, 700, 1.5  # the window, and pixels of the picture for one of it


def main(folder, pictures):
    orders = os.path.join(folder, "orders")
    shutil.rmtree(orders, ignore_errors=True)
    os.makedirs(orders)
    for name in ("double-mat", "four-moths", "herbarium", "seven-picture-collage"):
        shutil.copy(os.path.join(HERE, name + ".xml"), orders)
    for below in ("pictures", "shop"):
        shutil.copytree(os.path.join(HERE, below), os.path.join(orders, below))
    opened, page = Opened(orders), Browser(WIDTH, HEIGHT)
    page.ask("Emulation.setDeviceMetricsOverride", width=WIDTH, height=HEIGHT, deviceScaleFactor=FINENESS, mobile=False)

    def keep(name):
        page.wait("[...document.images].every((one) => one.complete)")
        page.read("new Promise((done) => setTimeout(done, 600))")
        whole = os.path.join(folder, name + ".png")
        page.picture(whole)
        subprocess.run(["pngquant", "--force", "--strip", "--speed", "1", "--nofs", "--output",
                        os.path.join(pictures, name + ".png"), COLOURS, whole], check=True)

    page.open(opened.address)
    page.wait_for(".card")
    page.type("10 x 8")
    page.click("#customer")
    page.type("Orla Venn")
    page.click("#title")
    page.type("Dune")
    keep("page-new-job")

    page.key("Enter")
    page.wait_for(".size")
    page.click('[name="line-pictures"]')
    page.click(".picture summary")
    chosen = page.ask("Runtime.evaluate", expression="document.querySelector('[name=\"image-of\"]')")["result"]["objectId"]
    page.ask("DOM.setFileInputFiles", objectId=chosen, files=[os.path.join(HERE, "pictures/dune.png")])
    page.wait_for(".drawing image")
    page.click('[name="line-layers"]')
    page.choose('[name="board-1"]', "Oat")
    page.wait("document.querySelector('[name=\"board-1\"]').selectedOptions[0].text === 'Oat'")
    page.choose('[name="board-2"]', "Boathouse")
    page.wait("document.querySelector('[name=\"board-2\"]').selectedOptions[0].text === 'Boathouse'")
    page.click('[name="line-sizes"]')
    page.click('.sizes button[name="border.bottom"]')
    page.type("3 1/2")
    page.key("Enter")
    page.wait("document.querySelector('.sizes button[name=\"border.bottom\"]')?.textContent === '3 1/2'")
    keep("page-piece")

    page.read("location.hash = ''")
    page.wait_for(".blank")
    page.click("#said")
    page.type("8 x 10\n8 x 6 *2\n5 x 4 *3\n6 x 8")
    page.click("#size")
    page.type("32 x 24")
    page.key("Enter")
    page.wait("document.querySelector('.idea') && !document.querySelector('[name=\"stop\"]')", 60)
    keep("page-suggestions")

    page.read("location.hash = '#job=seven-picture-collage'")
    page.wait_for(".size")
    page.click('[name="line-arrangement"]')
    page.click('[name="opening-1"]', 0.5, 0.5)
    page.click('[name="whole"]')
    page.click('[name="move"]')
    page.wait_for(".place.at")
    page.key("ArrowRight")
    page.wait_for(".foreseen .drawing svg")
    keep("page-move")

    cuts = os.path.join(folder, "cuts.html")
    subprocess.run([sys.argv[1], "cuts", os.path.join(HERE, "double-mat.xml"), "-o", cuts], check=True,
                   stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
    page.ask("Emulation.setDeviceMetricsOverride", width=1024, height=768, deviceScaleFactor=1, mobile=False)
    page.open("file://" + os.path.realpath(cuts))
    page.wait_for("section.here")
    while page.text("section.here h2 b") != "Cut 3 of 8":
        page.key(" ")
    keep("cutting-page")
    page.end()
    opened.end()


main(*sys.argv[2:4])
