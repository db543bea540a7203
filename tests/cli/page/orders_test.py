"""Five orders from nothing to all papers, by pointer and by keyboard, without a file edited by hand. Each says
which sizes the drawing shows, and comes to the same bytes of the job both ways: those of `orders`."""

import glob
import json
import os
import re
import subprocess
import sys
import unittest
import xml.etree.ElementTree as ElementTree

from browser import ALT, Browser, CONTROL
from opened import Opened, PROGRAM, SOURCE, folder_for

JOBS = os.path.join(SOURCE, "tests/cli/page/orders")


def papers_of(folder, name):
    return sorted(os.path.basename(path)[len(name) + 1:] for path in glob.glob(os.path.join(folder, name + "-*.*")) if not path.endswith(".xml"))


class Order(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.hands = Browser()

    @classmethod
    def tearDownClass(cls):
        cls.hands.end()

    def setUp(self):
        self.folder = folder_for("order-" + "-".join(self.id().rsplit(".", 2)[1:]))
        self.opened = Opened(self.folder)
        self.addCleanup(self.opened.end)
        self.hands.open(self.opened.address)
        self.hands.wait("document.activeElement.id === 'said'")
        self.hands.actions = 0

    def tearDown(self):
        self.hands.complaints = []
        self.hands.open("about:blank")

    def count(self, most):
        way = "keyboard" if "keyboard" in self.id() else "pointer"
        print(f"{type(self).__name__} by {way}: {self.hands.actions} actions")
        self.assertLessEqual(self.hands.actions, most)
        self.assertEqual(self.hands.complaints, [])

    def job(self):
        (self.path,) = glob.glob(os.path.join(self.folder, "*.xml"))
        return ElementTree.parse(self.path).getroot()

    # The sizes on the drawing. What is stated stands in a box, which is "!" here.
    def sizes(self):
        return json.loads(self.hands.read(
            "JSON.stringify(Object.fromEntries([...document.querySelectorAll('.sizes button')].map((one) =>"
            "[one.name, one.textContent + (one.matches('.stated') ? '!' : '')])))"))

    def drawing_says(self, expected):
        text = json.dumps(expected)
        self.hands.wait("(() => { const sizes = Object.fromEntries([...document.querySelectorAll('.sizes button')].map((one) =>"
                        "[one.name, one.textContent + (one.matches('.stated') ? '!' : '')]));"
                        f"return Object.entries({text}).every(([name, size]) => sizes[name] === size); }})()")

    # Borders and openings fill the mat, to the tick.
    def closes(self):
        state = json.loads(self.hands.read(
            "fetch('/api/jobs/' + encodeURIComponent(location.hash.replace(/^#job=/, ''))).then((one) => one.text())"))
        measures = {measure["name"]: measure["ticks"] for measure in state["measures"]}
        rects = [opening["rect"] for opening in state["openings"]]
        for begin, length, near, far in (("left", "width", "border.left", "border.right"), ("top", "height", "border.top", "border.bottom")):
            self.assertEqual(min(rect[begin]["ticks"] for rect in rects), measures[near])
            self.assertEqual(max(rect[begin]["ticks"] + rect[length]["ticks"] for rect in rects) + measures[far], measures["outer." + length])

    # And the job's file is, to the byte, as it was read over once; what a suggestion says is the suggestion's.
    def is_the_job(self, name, suggested=False):
        (path,) = glob.glob(os.path.join(self.folder, "*.xml"))
        with open(os.path.join(JOBS, name), encoding="utf-8") as file:
            expected = file.read()
        with open(path, encoding="utf-8") as file:
            found = file.read()
        if suggested:
            expected, found = (re.sub(r"(?s)<arrange>.*</arrange>", "<arrange/>", text) for text in (expected, found))
        self.assertEqual(found, expected)

    # The papers are saved, and the program that made them finds nothing wrong with the job.
    def papers_are_there(self):
        self.hands.wait_for(".saved", 60)
        self.job()
        name = os.path.basename(self.path)[:-4]
        self.assertEqual([paper for paper in papers_of(self.folder, name) if paper in ("cuts.pdf", "proof.pdf", "template.pdf")],
                         ["cuts.pdf", "proof.pdf", "template.pdf"])
        for paper in glob.glob(os.path.join(self.folder, "*.pdf")):
            subprocess.run(["qpdf", "--check", paper], check=True, stdout=subprocess.DEVNULL)
        checked = subprocess.run([PROGRAM, "check", self.path], capture_output=True, text=True)
        self.assertEqual(checked.returncode, 0, checked.stderr)


class OnePhotographReadyMade(Order):
    """One photograph 11x14, double mat, wider bottom, ready-made frame of 16x20."""

    def asserts(self):
        # The mat is cut 1/8 smaller than the rabbet; 11 x 14 shows less 1/8 on each side. The top mat's opening
        # is larger than that by reveal and bevel, 1/4 + 1/16 on each side: 11 3/8 x 14 3/8. 15 7/8 less 11 3/8 are
        # two sides of 2 1/4; 19 7/8 less 14 3/8 are 2 1/2 and 3, which is 1/2 more.
        self.drawing_says({"outer.width": "15 7/8", "outer.height": "19 7/8", "border.left": "2 1/4", "border.right": "2 1/4",
                           "border.top": "2 1/2", "border.bottom": "3", "opening.picture-1.width": "10 3/4",
                           "opening.picture-1.height": "13 3/4", "layer.2.reveal": "1/4"})
        self.papers_are_there()
        self.closes()
        self.is_the_job("one-photograph.xml")
        self.count(25)

    def test_by_keyboard(self):
        hands = self.hands
        hands.type("11x14")
        hands.key("Tab")
        hands.type("16x20")
        hands.key("Tab")
        hands.key("t")  # the next one that begins so: the frame
        hands.key("Enter", CONTROL)
        hands.wait_for(".size")
        hands.wait("document.activeElement.name === 'line-sizes'")
        hands.tab_to('[name="bottom"]')
        hands.key("w")
        hands.wait("document.querySelector('[name=\"bottom-extra\"]') !== null")
        hands.key("6", ALT)
        hands.key("Tab")
        hands.key("Enter")
        self.asserts()

    def test_by_pointer(self):
        hands = self.hands
        hands.type("11x14")
        hands.click("#size")
        hands.type("16x20")
        hands.choose('[name="of"]', "frame")
        hands.click(".blank .main")
        hands.choose('[name="bottom"]', "extra")
        hands.wait("document.querySelector('[name=\"bottom-extra\"]') !== null")
        hands.click('[name="line-papers"]')
        hands.click('[name="save-all"]')
        self.asserts()


class NinePicturesOfFiveSizes(Order):
    """Nine pictures of five sizes with an oval and a circle in 24x36, a title window below, double mat."""

    said = "6x8\n5x5\n8x10*2\n5x7*3\n4x6*2"

    def asserts(self):
        self.drawing_says({"outer.width": "36!", "outer.height": "24!"})
        # Each picture shows less 1/8 on each side; the title window is 8 x 1, as it was added.
        sizes = self.sizes()
        shown = sorted((sizes[f"opening.picture-{n}.width"], sizes[f"opening.picture-{n}.height"]) for n in range(1, 10))
        self.assertEqual(shown, sorted([("5 3/4", "7 3/4"), ("4 3/4", "4 3/4")] + [("7 3/4", "9 3/4")] * 2 + [("4 3/4", "6 3/4")] * 3 + [("3 3/4", "5 3/4")] * 2))
        self.assertEqual((sizes["opening.title.width"], sizes["opening.title.height"]), ("8!", "1!"))
        job = self.job()
        self.assertEqual(sorted((one.get("picture"), one.get("shape")) for one in job.iter("opening") if one.get("shape")),
                         [("picture-1", "ellipse"), ("picture-2", "circle")])
        self.assertEqual(sorted(one.get("picture") for one in list(job.iter("opening"))[:-1]), [f"picture-{n}" for n in range(1, 10)])
        outermost = job.find("arrange")[0]
        self.assertEqual((outermost.tag, outermost[-1].attrib), ("column", {"id": "title", "width": "8", "height": "1"}))
        self.papers_are_there()
        self.closes()
        self.is_the_job("nine-pictures.xml", suggested=True)
        self.count(60)

    def test_by_keyboard(self):
        hands = self.hands
        hands.type(self.said)
        hands.key("Tab")
        hands.type("36x24")
        hands.key("Enter")
        hands.wait("document.activeElement.className === 'idea'", 60)
        hands.key("Enter")
        hands.wait_for(".size")
        hands.key("1", ALT)
        hands.key("Tab")
        for letter in "oc":
            hands.key("Enter")
            hands.tab_to('[name="shape"]')
            hands.key(letter)
            hands.tab_to("summary", back=True)
            hands.key("ArrowDown")
        hands.wait("document.querySelector('.slip [name=\"shape\"]') !== null")
        hands.key("2", ALT)
        hands.tab_to('[name="title-window"]')
        hands.key("Enter")
        hands.wait_for('[name="opening-10"]')
        hands.key("6", ALT)
        hands.key("Tab")
        hands.key("Enter")
        self.asserts()

    def test_by_pointer(self):
        hands = self.hands
        hands.type(self.said)
        hands.click("#size")
        hands.type("36x24")
        hands.click(".blank .main")
        hands.wait("document.querySelector('.idea') && !document.querySelector('[name=\"stop\"]')", 60)
        hands.click(".idea")
        hands.wait_for(".size")
        hands.click('[name="line-pictures"]')
        hands.click(".picture:nth-child(1) summary")
        hands.choose('.picture:nth-child(1) [name="shape"]', "ellipse")
        hands.click(".picture:nth-child(2) summary")
        hands.choose('.picture:nth-child(2) [name="shape"]', "circle")
        hands.click('[name="line-arrangement"]')
        hands.click('[name="title-window"]')
        hands.wait_for('[name="opening-10"]')
        hands.click('[name="line-papers"]')
        hands.click('[name="save-all"]')
        self.asserts()


class ThreeCertificates(Order):
    """Three certificates of 210x297 mm side by side with one window in the under-mat, mat 100x50 cm."""

    def asserts(self):
        # 210 x 297 shows less 3 mm on each side.
        shown = {f"opening.picture-{n}.{side}": size for n in (1, 2, 3) for side, size in (("width", "204"), ("height", "291"))}
        self.drawing_says({"outer.width": "1000!", "outer.height": "500!", **shown})
        sizes = self.sizes()
        self.assertEqual(sizes["arrange.1.gap.1"], sizes["arrange.1.gap.2"])
        row = self.job().find("arrange")[0]
        self.assertEqual((row.tag, row.get("window"), len(row)), ("row", "2", 3))
        self.papers_are_there()
        self.closes()
        self.is_the_job("three-certificates.xml")
        self.count(50)  # by keys, one passes the suggestions that have come by then

    def test_by_keyboard(self):
        hands = self.hands
        hands.type("210x297*3")
        hands.key("Tab")
        hands.type("1000x500")
        hands.tab_to('[name="unit"]')
        hands.key("m")
        hands.key("Enter", CONTROL)
        hands.wait("document.activeElement.className === 'idea' || document.activeElement.name === 'line-arrangement'", 60)
        hands.key("2", ALT)
        hands.tab_to('[name="row"]')
        hands.key("Enter")
        hands.wait_for('[name="window"]')
        hands.tab_to('[name="window"]')
        hands.key("o")
        hands.wait_for(".size")
        hands.key("6", ALT)
        hands.key("Tab")
        hands.key("Enter")
        self.asserts()

    def test_by_pointer(self):
        hands = self.hands
        hands.type("210x297*3")
        hands.click("#size")
        hands.type("1000x500")
        hands.choose('[name="unit"]', "mm")
        hands.click(".blank .main")
        hands.click('[name="row"]')
        hands.choose('[name="window"]', "2")
        hands.wait_for(".size")
        hands.click('[name="line-papers"]')
        hands.click('[name="save-all"]')
        self.asserts()


class FloatedPrint(Order):
    """A floated print with deckled edges, a V-groove."""

    def asserts(self):
        # 9 1/2 x 12 with 1/4 of board all around it shows in 10 x 12 1/2; three inches around it, to the lines on
        # the back, which lie 1/16 inside the face's edges.
        self.drawing_says({"opening.picture-1.width": "10", "opening.picture-1.height": "12 1/2", "border.left": "3!", "border.top": "3!",
                           "border.right": "3!", "border.bottom": "3!", "outer.width": "16", "outer.height": "18 1/2"})
        self.papers_are_there()
        self.closes()
        self.is_the_job("floated-print.xml")
        self.count(45)

    def test_by_keyboard(self):
        hands = self.hands
        hands.type("9 1/2 x 12")
        hands.tab_to('[name="layers"]')
        hands.key("s")
        hands.key("Enter", CONTROL)
        hands.wait_for(".size")
        hands.key("1", ALT)
        hands.key("Tab")
        hands.key("Enter")
        hands.tab_to('[name="sight"]')
        hands.key("l")
        hands.wait_for('[name="float"]')
        hands.key("4", ALT)
        hands.tab_to('[name="add-groove"]')
        hands.key("Enter")
        hands.wait_for('[name="groove-width"]')
        hands.key("6", ALT)
        hands.key("Tab")
        hands.key("Enter")
        self.asserts()

    def test_by_pointer(self):
        hands = self.hands
        hands.type("9 1/2 x 12")
        hands.choose('[name="layers"]', "1")
        hands.click(".blank .main")
        hands.wait_for(".size")
        hands.click('[name="line-pictures"]')
        hands.click(".picture summary")
        hands.choose('[name="sight"]', "float")
        hands.wait_for('[name="float"]')
        hands.click('[name="line-layers"]')
        hands.wait_for(".keeps")  # the shop's boards and finishes are there, and nothing moves any more
        hands.click('[name="add-groove"]')
        hands.wait_for('[name="groove-width"]')
        hands.click('[name="line-papers"]')
        hands.click('[name="save-all"]')
        self.asserts()


class TeamWithPortraits(Order):
    """A team's picture with 24 small portraits around it."""

    def asserts(self):
        # Nine of 2 3/8 (2 less 1/4, and reveal and bevel of 5/16 on each side) and eight gaps of 1 between borders
        # of 3: 35 3/8. Down: two of 3 3/8 and three of 3 3/8 with two gaps of 1 in the middle, two gaps, two borders.
        shown = {f"opening.picture-{n}.{side}": size for n in range(2, 26) for side, size in (("width", "1 3/4"), ("height", "2 3/4"))}
        self.drawing_says({**shown, "opening.picture-1.width": "13 3/4", "opening.picture-1.height": "9 3/4",
                           "outer.width": "35 3/8", "outer.height": "26 7/8", "border.left": "3!", "border.bottom": "3!"})
        above, middle, below = self.job().find("arrange")[0]
        self.assertEqual(middle[1].get("picture"), "picture-1")
        self.assertEqual(len(above) + len(middle[0]) + len(middle[2]) + len(below), 24)
        self.papers_are_there()
        self.closes()
        self.is_the_job("team.xml")
        self.count(40)

    def test_by_keyboard(self):
        hands = self.hands
        hands.type("14x10\n2x3*24")
        hands.key("Tab")
        hands.key("Enter")
        hands.wait("document.activeElement.name === 'line-arrangement'", 60)
        hands.tab_to('[name="around"]')
        hands.key("Enter")
        hands.wait_for(".size")
        hands.key("6", ALT)
        hands.key("Tab")
        hands.key("Enter")
        self.asserts()

    def test_by_pointer(self):
        hands = self.hands
        hands.type("14x10\n2x3*24")
        hands.click(".blank .main")
        hands.click('[name="around"]')
        hands.wait_for(".size")
        hands.click('[name="line-papers"]')
        hands.click('[name="save-all"]')
        self.asserts()


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1] + sys.argv[3:])
