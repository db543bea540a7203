"""Rings and places on the mat: the page shows such jobs, and their measures are typed there."""

import sys
import unittest

from open_job import OpenJob


class Ring(OpenJob):
    name = "linden-year"

    def test_the_width_of_the_ring_is_typed_on_the_drawing_and_on_the_ticket(self):
        self.shows("ring.year.across", "15")
        self.page.click(self.number("ring.year.across"))
        self.page.type("16")
        self.page.key("Enter")
        self.is_written(r'across="16"')
        self.shows("ring.year.across", "16")
        self.unfold("arrangement")
        self.assertIn("Ring of 13", self.page.text(".group-head h3"))
        self.assertEqual(self.page.read("document.querySelector('[name=turn]')"), None)

    def test_a_ring_that_is_too_small_is_told_in_words(self):
        self.page.click(self.number("ring.year.across"))
        self.page.type("9")
        self.page.key("Enter")
        self.page.wait("document.body.textContent.includes('a ring')")
        self.page.wait("document.body.textContent.includes('overlap by')")


class Places(OpenJob):
    name = "pinboard"

    def test_a_place_is_typed_from_the_edge_it_is_measured_from(self):
        self.shows("opening.lighthouse.left", "2 1/2")
        self.page.click(self.number("opening.lighthouse.left"))
        self.page.type("3")
        self.page.key("Enter")
        self.is_written(r'picture="lighthouse" left="3"')
        self.shows("opening.lighthouse.left", "3")
        self.shows("opening.dune.right", "2 1/2")
        self.page.click(self.number("opening.dune.right"))
        self.page.type("2 3/4")
        self.page.key("Enter")
        self.is_written(r'picture="dune" right="2 3/4"')


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1] + sys.argv[3:])
