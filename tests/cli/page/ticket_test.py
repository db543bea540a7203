"""What one does on the ticket: pictures from image files, layers, finishes, frames, choices, text; and what
the job's file says then."""

import json
import os
import re
import shutil
import sys
import time
import unittest

from browser import Browser
from opened import GALLERY, Opened, folder_for, gallery_jobs


class Ticket(unittest.TestCase):
    name = "double-mat"

    @classmethod
    def setUpClass(cls):
        cls.page = Browser()

    @classmethod
    def tearDownClass(cls):
        cls.page.end()

    def setUp(self):
        self.folder = folder_for("ticket-" + self.id().rsplit(".", 1)[1])
        gallery_jobs(self.folder, self.name)
        shutil.copytree(os.path.join(GALLERY, "shop"), os.path.join(self.folder, "shop"))
        self.opened = Opened(self.folder)
        self.page.open(self.opened.address)
        self.page.click(".card a")
        self.page.wait_for(".size")

    def tearDown(self):
        complaints, self.page.complaints = self.page.complaints, []
        self.page.open("about:blank")
        self.opened.end()
        self.assertEqual(complaints, [])

    def text(self):
        with open(os.path.join(self.folder, self.name + ".xml"), encoding="utf-8") as file:
            return file.read()

    def is_written(self, pattern):
        end = time.monotonic() + 10
        while not re.search(pattern, self.text()):
            if time.monotonic() > end:
                self.fail(f"{pattern} is not in {self.text()}")
            time.sleep(0.02)

    def give_files(self, selector, *files):
        self.page.wait_for(selector)
        chosen = self.page.ask("Runtime.evaluate", expression=f"document.querySelector({json.dumps(selector)})")["result"]["objectId"]
        self.page.ask("DOM.setFileInputFiles", objectId=chosen, files=[os.path.join(GALLERY, "pictures", file) for file in files])

    def write(self, name, text):
        self.page.click(f'.ticket [name="{name}"]')
        self.page.type(text)
        self.page.key("Enter")

    def test_an_image_file_is_copied_and_its_other_side_follows_in_proportion(self):
        self.page.click('[name="line-pictures"]')
        self.give_files('[name="images"]', "gull.png")  # 1000 x 800 pixels or so: wider than high
        self.write("dropped-width", "5")
        self.is_written(r'<picture [^>]*width="5"[^>]*image="pictures/gull[^"]*\.png"')
        with open(os.path.join(GALLERY, "pictures/gull.png"), "rb") as file:
            head = file.read(24)
        wide, high = int.from_bytes(head[16:20], "big"), int.from_bytes(head[20:24], "big")
        said = re.search(r'width="5" height="([^"]+)"', self.text())[1]
        found = sum(eval(part) for part in said.split())  # "4 1/16"
        self.assertAlmostEqual(found, 5 * high / wide, delta=1 / 32)
        self.page.wait("document.querySelectorAll('.opening').length === 2")

    def test_more_pictures_are_typed_as_they_are_said(self):
        self.page.click('[name="line-pictures"]')
        self.page.click("#more")
        self.page.type("5 x 7 *2")
        self.page.click('.slip form button[type="submit"]')
        self.is_written(r'(?s)width="5" height="7".*width="5" height="7"')
        self.page.wait("document.querySelectorAll('.picture').length === 3")

    def test_a_board_comes_from_the_stock_with_its_colour(self):
        self.page.click('[name="line-layers"]')
        self.page.wait("document.querySelectorAll('[name=\"board-2\"] option').length > 3")
        self.page.choose('[name="board-2"]', "Claret")
        self.is_written(r'board="Claret" colour="#[0-9a-f]{6}"')

    def test_reveals_differ_by_side(self):
        self.page.click('[name="line-layers"]')
        self.page.wait_for('[name="reveal2-bottom"]')
        self.page.read("document.querySelectorAll('.layer details').forEach((one) => { one.open = true; })")
        self.write("reveal2-bottom", "1/2")
        self.is_written(r'reveal-bottom="1/2"')

    def test_a_frame_that_fits_is_taken(self):
        self.page.click('[name="line-frame"]')
        self.page.wait_for(".frames button")
        width = self.page.text(".frames button").split(" × ")[0]
        self.page.click(".frames button")
        self.page.wait(f"document.querySelector('.sizes button[name=\"outer.width\"]')?.textContent === {json.dumps(width)}")

    def test_a_rabbet_measured_by_hand_is_written_down_and_given_up(self):
        self.page.click('[name="line-frame"]')
        self.write("rabbet", "18 x 16")
        self.is_written(r'<frame rabbet-width="18" rabbet-height="16"')
        self.page.click('[name="no-frame"]')
        self.page.wait("document.querySelector('[name=\"no-frame\"]') === null")
        self.assertNotIn("<frame", self.text())

    def test_two_versions_hang_side_by_side_and_one_is_taken(self):
        self.page.click('[name="line-choices"]')
        self.page.click('[name="another-version"]')
        self.page.wait("location.hash.length > 0 && !location.hash.endsWith('double-mat')")
        self.page.wait("document.querySelector('[name=\"line-sizes\"]')?.getAttribute('aria-expanded') === 'true'")
        self.page.wait_for(".size")
        self.page.click('[name="line-choices"]')
        self.page.wait("document.querySelectorAll('.versions input:checked').length === 2")
        self.page.click('[name="side-by-side"]')
        self.page.wait("document.querySelectorAll('.hung-versions svg').length === 2")
        self.assertEqual(self.page.read("[...document.querySelectorAll('.letter')].map((one) => one.textContent).join('')"), "AB")
        self.page.click('[name="take-double-mat"]')
        self.page.wait_for(".size")
        self.assertEqual(self.page.read("decodeURIComponent(location.hash)"), "#job=double-mat")

    def test_the_ticket_is_written_on(self):
        self.page.read("document.querySelector('.ticket [name=\"title\"]').select()")
        self.page.read("document.querySelector('.ticket [name=\"title\"]').focus()")
        self.page.type("Boat & two <sails>")
        self.page.key("Enter")
        self.is_written(r"<title>Boat &amp; two &lt;sails&gt;</title>")

    def test_the_piece_hangs_alone_without_the_tools(self):
        self.page.click('[name="alone"]')
        self.page.wait("document.querySelector('.ticket, .plaque, .size') === null")
        self.page.wait_for(".drawing svg")
        self.page.click('[name="not-alone"]')
        self.page.wait_for(".ticket")


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1] + sys.argv[3:])
