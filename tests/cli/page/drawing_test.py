"""What one does to the drawing, by hand and by keys, and what the file says then."""

import os
import re
import signal
import sys
import time
import unittest

from browser import CONTROL
from open_job import OpenJob, inches

INCREMENT = 1 / 16


class Drawing(OpenJob):
    def test_a_number_is_typed_and_freed_and_undone_to_the_same_bytes(self):
        self.page.click(self.number("border.left"))
        self.page.type("3")
        self.page.key("Enter")
        self.shows("border.left", "3")
        self.is_written(r'<borders left="3"/>')
        self.page.wait(f"document.activeElement.name === 'border.left'")
        self.page.key("Delete")
        self.shows("border.left", "4 1/8")
        self.page.key("z", CONTROL)
        self.shows("border.left", "3")
        self.page.key("z", CONTROL)
        self.shows("border.left", "4 1/8")
        self.stays()
        self.page.key("y", CONTROL)
        self.shows("border.left", "3")

    def test_a_number_in_another_unit_is_taken_as_it_is_typed(self):
        self.focus(self.number("border.top"))
        self.page.key("Enter")
        self.page.type("65 mm")
        self.page.key("Enter")
        self.is_written(r'top="65 mm"')

    def test_what_is_no_length_is_refused_beside_it(self):
        self.page.click(self.number("border.left"))
        self.page.type("wide")
        self.page.key("Enter")
        self.page.wait_for(".size .refused")
        self.assertIn("wide", self.page.text(".size .refused"))
        self.page.key("Escape")
        self.page.wait("document.querySelector('.size .refused') === null")
        self.stays()

    def test_a_border_is_dragged_in_steps_while_the_drawing_follows(self):
        self.page.take('[data-grip="border.left"]')
        self.page.drag_to(self.page.at[0] - 40, self.page.at[1])
        self.page.wait("document.querySelector('.sizes button[name=\"border.left\"]').textContent !== '4 1/8'")
        self.assertEqual(self.text(), self.before)  # not before it is let go
        self.page.let_go()
        self.is_written(r'<borders left="')
        width = inches(self.size("border.left"))
        self.assertLess(width, 4.125)
        self.assertEqual(width % INCREMENT, 0)

    def test_escape_gives_a_drag_up(self):
        self.page.take('[data-grip="border.left"]')
        self.page.drag_to(self.page.at[0] - 40, self.page.at[1])
        self.page.wait("document.querySelector('.sizes button[name=\"border.left\"]').textContent !== '4 1/8'")
        self.page.key("Escape")
        self.shows("border.left", "4 1/8")
        self.page.let_go()
        self.stays()

    def test_a_gap_is_dragged(self):
        before = self.size("column.left.gap.1")
        self.page.drag(self.number("column.left.gap.1"), 0, 24)
        self.page.wait(f"document.querySelector({self.number('column.left.gap.1')!r}).textContent !== {before!r}")
        self.is_written(r'<gap size="')

    def test_the_edge_of_an_opening_is_dragged(self):
        before = self.size("opening.dune.width")
        self.page.drag('[data-grip="opening.dune.width+"]', -30, 0)
        self.is_written(r'<opening picture="dune" width="')
        self.assertLess(inches(self.size("opening.dune.width")), inches(before))

    def test_the_edge_of_the_mat_is_dragged(self):
        self.page.drag('[data-grip="outer.width+"]', 30, 0)
        self.is_written(r'<outer width="3[3-9]')

    def test_arrow_keys_step_by_the_increment(self):
        self.focus(self.number("border.left"))
        for _ in range(3):
            self.page.key("ArrowRight")
        self.shows("border.left", "4 5/16")
        self.page.key("Enter")
        self.is_written(r'<borders left="4 5/16"/>')
        self.page.key("ArrowLeft")
        self.shows("border.left", "4 1/4")
        self.page.key("Escape")
        self.shows("border.left", "4 5/16")

    def test_an_opening_is_dragged_to_another_place(self):
        self.page.take('[name="opening-5"]', 0.1, 0.15)
        x, y = self.page.place('[name="opening-1"]', 0.5, 0)
        self.page.drag_to(x, y - 4)
        self.page.wait_for(".place.at")
        self.page.let_go()
        self.is_written(r'<column id="left">\s*<opening picture="gull"/>\s*<opening picture="lighthouse"/>')

    def test_escape_leaves_a_dragged_opening_where_it_was(self):
        self.page.take('[name="opening-5"]', 0.1, 0.15)
        x, y = self.page.place('[name="opening-1"]', 0.5, 0)
        self.page.drag_to(x, y - 4)
        self.page.wait_for(".place.at")
        self.page.key("Escape")
        self.page.wait("document.querySelector('.place') === null")
        self.page.let_go()
        self.stays()

    def test_an_opening_is_moved_by_keys(self):
        self.page.read("document.querySelector('[name=\"opening-5\"]').focus()")
        self.page.key("m")
        self.page.wait_for(".place.at")
        self.page.key("ArrowLeft")
        self.page.key("Enter")
        end = time.monotonic() + 10
        while self.text() == self.before and time.monotonic() < end:
            time.sleep(0.02)
        self.assertNotRegex(self.text(), r'<opening picture="shell"/>\s*<opening picture="gull"/>')
        self.assertEqual(len(re.findall(r"<opening ", self.text())), 7)

    def test_a_conflict_stands_at_its_place_as_a_sum_with_remedies_that_mend_it(self):
        left = self.page.read("document.querySelector('.sizes button[name=\"border.left\"]').getBoundingClientRect().x")
        self.page.click(self.number("border.left"))
        self.page.type("20")
        self.page.key("Enter")
        self.page.wait_for(".pinned.error .remedy")
        # 20, two openings of 8 1/4, one of 5 1/4, two bars of 1/2 and a border of 1/8 are 42 7/8, in 32.
        sentence = self.page.text(".pinned.error p").replace("\u00a0", " ")
        self.assertRegex(sentence, r"20.*8 1/4.*5 1/4.*42 7/8.*32 in: 10 7/8 in short")
        self.page.wait_for(".hung.old .drawing svg")  # the last drawing that closed stays on the wall
        mark = self.page.read("document.querySelector('.mark-at.wrong').getBoundingClientRect().x")
        self.assertLess(abs(mark - left), 20)  # where the border is
        # What the sum is made of is drawn out: border, three openings, the mat; nothing of the other direction.
        self.assertEqual(self.page.read("[...document.querySelectorAll('.lines-drawn.wrong .dimension path:last-child')]"
                                        ".filter((one) => one.getBBox().width < one.getBBox().height).length"), 0)
        self.assertGreaterEqual(self.page.read("document.querySelectorAll('.lines-drawn.wrong .dimension').length"), 5)
        self.assertEqual(self.page.text(".ticket .to-mend h2"), "Does not close")
        self.focus(".pinned.error .remedy")
        remedy = self.page.text(".pinned.error .remedy").replace("\u00a0", " ")
        self.page.key("Enter")
        self.page.wait("document.querySelector('.pinned.error') === null")
        self.page.wait_for(".size")
        self.assertNotEqual(self.text(), self.before)
        number = re.search(r"\d[\d/ ]*\d|\d", remedy)[0]
        self.assertIn(number, [self.size("border.left"), self.size("outer.width")], remedy)

    def test_a_job_that_never_closed_says_so_on_the_empty_wall(self):
        with open(os.path.join(self.folder, "short.xml"), "w", encoding="utf-8") as file:
            file.write(self.before.replace('<outer width="32"', '<outer width="12"'))
        self.page.read("location.hash = '#job=short'")
        self.page.wait_for(".pinned.error .remedy")
        self.page.click(".pinned.error .remedy")
        self.page.wait_for(".size")

    def test_a_check_is_marked_at_its_place_and_explained(self):
        self.page.click(".mark-at")
        self.page.wait_for(".pinned")
        self.page.click(".pinned summary")
        self.page.wait("document.querySelector('.pinned .reason p') !== null")

    def test_what_an_editor_saves_appears(self):
        changed = self.before.replace('<outer width="32" height="24"/>', '<outer width="33" height="24"/>')
        with open(os.path.join(self.folder, self.name + ".xml"), "w", encoding="utf-8") as file:
            file.write(changed)
        self.shows("outer.width", "33")
        self.page.wait("document.getElementById('told').textContent !== ''")

    def test_the_page_says_that_the_file_is_gone_and_goes_on_when_it_is_back(self):
        path = os.path.join(self.folder, self.name + ".xml")
        time.sleep(0.5)  # the server looks at the file a few times a second
        os.rename(path, path + ".away")
        self.page.wait_for(".absence")
        os.rename(path + ".away", path)
        self.page.wait("document.querySelector('.absence') === null")
        self.page.wait_for(".size")

    def test_the_page_says_that_the_program_is_gone_and_nothing_is_lost(self):
        self.page.click(self.number("border.left"))
        self.page.type("3")
        self.page.key("Enter")
        self.shows("border.left", "3")
        self.opened.process.send_signal(signal.SIGKILL)
        self.page.wait_for(".absence")
        self.assertIn("does not answer", self.page.text(".absence"))
        self.assertRegex(self.text(), r'<borders left="3"/>')

    def test_the_back_is_shown_as_the_template_shows_it_mirrored(self):
        front = self.page.read("(() => { const wall = document.querySelector('.piece').getBoundingClientRect();"
                               "return document.querySelector('[name=\"opening-1\"]').getBoundingClientRect().x - wall.x < wall.width / 2; })()")
        self.assertTrue(front)
        self.page.click('[name="back"]')
        self.page.wait("document.querySelector('.drawing svg').getAttribute('aria-label').includes('behind')")
        back = self.page.read("(() => { const wall = document.querySelector('.piece').getBoundingClientRect();"
                              "return [...document.querySelectorAll('.drawing [data-text=\"1\"]')]"
                              ".some((one) => one.getBoundingClientRect().x - wall.x > wall.width / 2); })()")
        self.assertTrue(back)
        self.page.click('[name="front"]')
        self.page.wait_for(".size")


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1] + sys.argv[3:])
