"""Moving rows and columns as a whole, by hand and by keys; what a move would make is foreseen; rules, reveals,
grooves, outlines and finishes are said on the page; and what the file says then."""

import os
import re
import sys
import unittest

from open_job import OpenJob, inches
from opened import SCRATCH

OUTLINE = ('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 100 80">'
           '<path id="leaf" d="M0 40 C20 0 80 0 100 40 C80 80 20 80 0 40 Z"/><path id="kite" d="M50 0 L100 40 L50 80 L0 40 Z"/></svg>')


class Arranging(OpenJob):
    def columns(self):
        return re.findall(r'<column id="(\w+)"', self.text())

    def choose_column(self, opening):
        self.focus(f'[name="opening-{opening}"]')
        self.page.key("ArrowUp")
        self.page.wait_for(".around-part")

    def test_a_column_is_moved_by_keys_and_foreseen(self):
        self.choose_column(1)
        self.page.key("m")
        self.page.wait_for(".place.at")
        for _ in range(8):
            if self.page.text(".plaque .called") == "After column 6, 7":
                break
            self.page.key("ArrowRight")
        self.assertEqual(self.page.text(".plaque .called"), "After column 6, 7")
        self.page.wait_for(".foreseen .drawing svg")
        # Foreseen with its own size and as the first of the three columns at the end.
        self.assertEqual(self.page.text(".foreseen figcaption"), "32 × 24 in")
        self.assertEqual(self.text(), self.before)
        self.page.key("Enter")
        self.is_written(r'(?s)<column id="middle".*<column id="right".*<column id="left"')
        self.page.key("z", 2)
        self.is_undone()

    def test_a_column_is_moved_by_the_buttons_of_its_label(self):
        self.page.click('[name="opening-6"]', 0.5, 0.5)
        self.page.click('[name="whole"]')
        self.page.click('[name="move"]')
        self.page.wait_for(".place.at")
        self.page.key("ArrowLeft")
        self.page.click('[name="put-here"]')
        self.page.wait("document.getElementById('told').textContent === 'Moved.'")
        self.assertNotEqual(self.text(), self.before)
        self.assertEqual(len(re.findall("<opening ", self.text())), 7)

    def test_a_chosen_column_is_dragged_as_a_whole(self):
        self.choose_column(6)
        self.page.take('[name="opening-6"]', 0.5, 0.5)
        x, y = self.page.place('[name="opening-1"]', 0, 0.9)
        self.page.drag_to(x - 3, y)
        self.page.wait_for(".place.at")
        self.page.wait_for(".foreseen .drawing svg")
        self.page.let_go()
        self.is_written(r'(?s)<column id="right".*<column id="left".*<column id="middle"')

    def test_escape_leaves_a_dragged_column_where_it_was(self):
        self.choose_column(6)
        self.page.take('[name="opening-6"]', 0.5, 0.5)
        x, y = self.page.place('[name="opening-1"]', 0, 0.9)
        self.page.drag_to(x - 3, y)
        self.page.wait_for(".place.at")
        self.page.key("Escape")
        self.page.wait("document.querySelector('.place') === null")
        self.page.let_go()
        self.stays()

    def test_the_reveal_of_one_opening_is_its_own(self):
        self.page.click('[name="opening-2"]', 0.5, 0.5)
        self.page.click('[name="more"]')
        self.page.wait_for('.picture details[open] .more-of-opening')
        self.page.click('.picture > details[open] .more-of-opening > summary')
        self.write("reveal-2-of-2", "1/2")
        self.is_written(r'(?s)<opening picture="dune">\s*<reveal layer="2" all="1/2"/>\s*</opening>')
        # The under-mat shows 1/2 in place of 3/16 there: the top mat's opening is larger by 5/16 on each side.
        top = self.page.read("fetch('/api/jobs/seven-picture-collage').then((one) => one.json()).then((job) => job.openings[1].rect.width.text)")
        self.assertEqual(inches(top), 7.75 + 2 * (0.5 + 1 / 16))
        self.page.wait("document.querySelector('[name=\"reveal-2-of-2\"]').dataset.changed === undefined")
        self.page.read("document.querySelector('[name=\"reveal-2-of-2\"]').select()")
        self.page.key("Delete")
        self.page.key("Enter")
        self.is_written(r'(?s)^(?!.*<reveal )')

    def test_a_groove_goes_around_one_opening(self):
        self.page.click('[name="opening-2"]', 0.5, 0.5)
        self.page.click('[name="more"]')
        self.page.wait_for('.picture details[open] .more-of-opening')
        self.page.click('.picture > details[open] .more-of-opening > summary')
        self.page.click('.picture details[open] [name="groove-of-2"]')
        self.is_written(r'(?s)<opening picture="dune">\s*<groove distance="1/2" width="1/16"/>\s*</opening>')

    def test_an_opening_takes_the_outline_of_a_file(self):
        drawn = os.path.join(os.path.realpath(SCRATCH), "leaves.svg")
        with open(drawn, "w", encoding="utf-8") as file:
            file.write(OUTLINE)
        self.page.click('[name="opening-2"]', 0.5, 0.5)
        self.page.click('[name="more"]')
        self.page.wait_for('.picture details[open] [name="shape"]')
        self.page.choose('.picture details[open] [name="shape"]', "outline")
        self.give_files('.picture details[open] [name="outline-file"]', drawn)
        self.page.choose('.picture details[open] [name="outline"]', "leaves.svg, kite")
        self.is_written(r'<opening picture="dune" shape="outline" file="[^"]*leaves.svg" path="kite"/>')
        self.page.choose('.picture details[open] [name="outline"]', "leaves.svg, leaf")
        self.is_written(r'<opening picture="dune" shape="outline" file="[^"]*leaves.svg" path="leaf"/>')
        self.page.choose('.picture details[open] [name="shape"]', "arch")
        self.is_written(r'<opening picture="dune" shape="arch"/>')
        self.write("rise", "1 1/2")
        self.is_written(r'<opening picture="dune" shape="arch" rise="1 1/2"/>')
        self.page.choose('.picture details[open] [name="shape"]', "rectangle")
        self.is_undone()

    def test_rules_are_said_in_sentences(self):
        self.page.click("#new-rule")
        self.page.click('[name="of-arrange.1.1.2"]')
        self.page.click('[name="of-arrange.1.3.2"]')
        self.page.choose('[name="agreement"]', "top")
        self.page.choose('[name="parts-strength"]', "strong")
        self.page.click('[name="add-agreement"]')
        self.is_written(r'<align of="dune pier" edge="top" strength="strong"/>')
        self.page.choose('[name="rule-size"]', "column.left.gap.1")
        self.page.choose('[name="relation"]', "equal")
        self.page.choose('[name="rule-other"]', "border.top")
        self.page.click('[name="add-size-rule"]')
        self.is_written(r'<equal of="gap-1 border.top"/>')  # the gap had no name, and is given one
        self.assertIn('<gap id="gap-1"/>', self.text())
        self.page.wait("document.querySelectorAll('.rules li').length === 2")
        self.assertEqual(self.size("column.left.gap.1"), self.size("border.top"))
        self.page.choose('[name="rule-size"]', "opening.dune.width")
        self.page.choose('[name="relation"]', "at-least")
        self.write("rule-length", "9")
        self.page.click('[name="add-size-rule"]')
        self.is_written(r'<at-least measure="dune.width" length="9"/>')

    def test_what_is_no_rule_is_refused_beside_it(self):
        self.page.click("#new-rule")
        self.page.choose('[name="relation"]', "fixed")
        self.write("rule-length", "wide")
        self.page.click('[name="add-size-rule"]')
        self.page.wait_for("fieldset .refused")
        self.stays()


    def test_a_click_takes_a_suggestion_and_another_goes_back(self):
        self.unfold("arrangement")
        self.page.click('[name="suggest"]')
        self.page.wait("document.querySelector('.idea') && !document.querySelector('[name=\"stop\"]')", 60)
        self.page.click('[name="idea-1"]')
        self.page.wait_for(".size")
        self.assertNotEqual(self.text(), self.before)
        self.unfold("arrangement")
        self.page.click(".stack button:nth-child(2)")
        self.page.wait_for('.idea[aria-pressed="true"]')
        self.page.click('[name="idea-1"]')
        self.is_undone()
        self.page.wait("document.querySelector('.idea[aria-pressed=\"true\"]') === null")


class Finishes(OpenJob):
    name = "double-mat"
    has_shop = True

    def test_a_finish_is_kept_by_name_and_used_again(self):
        self.unfold("layers")
        self.page.choose('[name="board-2"]', "Claret")
        self.is_written('board="Claret"')
        self.write("finish", "Sunday best")
        self.page.wait_for('[name="finish-Sunday best"]')
        self.page.choose('[name="board-2"]', "Slate")
        self.is_written('board="Slate"')
        self.page.click('[name="finish-Sunday best"]')
        self.is_written('board="Claret"')
        self.page.wait("document.querySelector('[name=\"board-2\"]').selectedOptions[0].text === 'Claret'")
        # And for the next order, from its first minute.
        self.page.click(".back")
        self.page.click("#said")
        self.page.type("5 x 7")
        self.page.choose('.blank [name="finish"]', "Sunday best")
        self.page.click("#title")
        self.page.type("Next")
        self.page.key("Enter")
        self.page.wait_for(".size")
        with open(os.path.join(self.folder, "Next.xml"), encoding="utf-8") as file:
            self.assertRegex(file.read(), '(?s)board="Chalk".*board="Claret"')


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1] + sys.argv[3:])
