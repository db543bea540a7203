"""What one does on the ticket: pictures from image files, layers, finishes, frames, choices, text; and what
the job's file says then."""

import json
import os
import re
import sys
import unittest

from open_job import OpenJob, inches
from opened import GALLERY


class Ticket(OpenJob):
    name = "double-mat"
    has_shop = True

    def test_an_image_file_is_copied_and_its_other_side_follows_in_proportion(self):
        self.unfold("pictures")
        self.give_files('[name="images"]', os.path.join(GALLERY, "pictures/gull.png"))  # 1000 x 800 pixels or so: wider than high
        self.write("dropped-width", "4")
        self.is_written(r'<picture [^>]*width="4"[^>]*image="pictures/gull[^"]*\.png"')
        with open(os.path.join(GALLERY, "pictures/gull.png"), "rb") as file:
            head = file.read(24)
        wide, high = int.from_bytes(head[16:20], "big"), int.from_bytes(head[20:24], "big")
        said = re.search(r'width="4" height="([^"]+)"', self.text())[1]
        self.assertAlmostEqual(inches(said), 4 * high / wide, delta=1 / 32)
        self.page.wait("document.querySelectorAll('.opening').length === 2")

    def test_image_files_are_dropped_and_wait_for_their_sizes(self):
        self.unfold("pictures")
        self.drop(".takes", *[os.path.join(GALLERY, "pictures", name) for name in ("gull.png", "kelp.png")])
        self.page.wait("document.querySelectorAll('.waiting li').length === 2")
        self.assertTrue(os.path.exists(os.path.join(self.folder, "pictures/kelp.png")))
        self.page.click(".waiting li:nth-child(2) .quiet")
        self.page.wait("document.querySelectorAll('.waiting li').length === 1")
        self.write("dropped-height", "3")
        self.is_written(r'<picture [^>]*height="3" image="pictures/gull[^"]*\.png"')
        self.page.wait("document.querySelectorAll('.waiting').length === 0 && document.querySelectorAll('.opening').length === 2")

    def test_a_new_job_is_made_of_image_files(self):
        self.page.click(".back")
        self.page.wait_for(".blank")
        self.drop(".blank", os.path.join(GALLERY, "pictures/kelp.png"))
        self.page.wait_for('.blank [name="dropped-width"]')
        self.page.click(".blank .main")
        self.page.wait_for(".blank .refused")  # before its size is said
        self.write("dropped-width", "6")
        self.page.wait("document.querySelector('.blank [name=\"dropped-width\"]') === null")
        self.page.click("#title")
        self.page.type("Kelp")
        self.page.click(".blank .main")
        self.page.wait_for(".size")
        self.page.wait_for(".drawing image")
        with open(os.path.join(self.folder, "Kelp.xml"), encoding="utf-8") as file:
            self.assertRegex(file.read(), r'<picture id="picture-1" width="6" height="[^"]+" image="pictures/kelp.png"')

    def test_more_pictures_are_typed_as_they_are_said(self):
        self.unfold("pictures")
        self.page.click("#more")
        self.page.type("5 x 7 *2")
        self.page.click('.slip form button[type="submit"]')
        self.is_written(r'(?s)width="5" height="7".*width="5" height="7"')
        self.page.wait("document.querySelectorAll('.picture').length === 3")

    def test_a_board_comes_from_the_stock_with_its_colour(self):
        self.unfold("layers")
        self.page.wait("document.querySelectorAll('[name=\"board-2\"] option').length > 3")
        self.page.choose('[name="board-2"]', "Claret")
        self.is_written(r'board="Claret" colour="#[0-9a-f]{6}"')

    def test_reveals_differ_by_side(self):
        self.unfold("layers")
        self.page.wait_for('[name="reveal2-bottom"]')
        self.page.read("document.querySelectorAll('.layer details').forEach((one) => { one.open = true; })")
        self.write("reveal2-bottom", "1/2")
        self.is_written(r'reveal-bottom="1/2"')

    def test_a_frame_that_fits_is_taken(self):
        self.unfold("frame")
        self.page.wait_for(".frames button")
        width = self.page.text(".frames button").split(" × ")[0]
        self.page.click(".frames button")
        self.page.wait(f"document.querySelector('.sizes button[name=\"outer.width\"]')?.textContent === {json.dumps(width)}")

    def test_a_rabbet_measured_by_hand_is_written_down_and_given_up(self):
        self.unfold("frame")
        self.write("rabbet", "18 x 16")
        self.is_written(r'<frame rabbet-width="18" rabbet-height="16"')
        self.page.click('[name="no-frame"]')
        self.page.wait("document.querySelector('[name=\"no-frame\"]') === null")
        self.assertNotIn("<frame", self.text())

    def test_two_versions_hang_side_by_side_and_one_is_taken(self):
        self.unfold("choices")
        self.page.click('[name="another-version"]')
        self.page.wait("location.hash.length > 0 && !location.hash.endsWith('double-mat')")
        self.page.wait("document.querySelector('[name=\"line-sizes\"]')?.getAttribute('aria-expanded') === 'true'")
        self.page.wait_for(".size")
        self.unfold("choices")
        self.page.wait("document.querySelectorAll('.versions input:checked').length === 2")
        self.page.click('[name="side-by-side"]')
        self.page.wait("document.querySelectorAll('.hung-versions svg').length === 2")
        self.assertEqual(self.page.read("[...document.querySelectorAll('.letter')].map((one) => one.textContent).join('')"), "AB")
        self.page.click('[name="take-double-mat"]')
        self.page.wait_for(".size")
        self.assertEqual(self.page.read("decodeURIComponent(location.hash)"), "#job=double-mat")

    def test_the_ticket_is_written_on(self):
        self.page.click("#of-job")
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
