"""Five orders from nothing to all papers, by pointer and by keyboard, without a file edited by hand."""

import glob
import os
import subprocess
import sys
import unittest
import xml.etree.ElementTree as ElementTree

from browser import ALT, Browser, CONTROL
from opened import Opened, PROGRAM, folder_for


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
        self.hands.open(self.opened.address)
        self.hands.wait("document.activeElement.id === 'said'")
        self.hands.actions = 0

    def tearDown(self):
        self.hands.complaints = []
        self.hands.open("about:blank")
        self.opened.end()

    def count(self, most):
        way = "keyboard" if "keyboard" in self.id() else "pointer"
        print(f"{type(self).__name__} by {way}: {self.hands.actions} actions")
        self.assertLessEqual(self.hands.actions, most)
        self.assertEqual(self.hands.complaints, [])

    def job(self):
        (self.path,) = glob.glob(os.path.join(self.folder, "*.xml"))
        return ElementTree.parse(self.path).getroot()

    # What the drawing says, as text and whether it is stated.
    def size(self, name):
        selector = f'.sizes button[name="{name}"]'
        self.hands.wait_for(selector)
        return self.hands.text(selector), "stated" in self.hands.read(f"document.querySelector('{selector}').className")

    def shows(self, name, text):
        self.hands.wait(f"document.querySelector('.sizes button[name=\"{name}\"]')?.textContent === '{text}'")

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
        job = self.job()
        self.assertEqual(job.find("frame").attrib, {"rabbet-width": "16", "rabbet-height": "20"})
        self.assertEqual(job.find("borders").get("bottom-extra"), "1/2")
        self.assertEqual(len(job.findall("layers/layer")), 2)
        # The mat is cut 1/8 smaller than the rabbet; 11 x 14 shows less 1/8 on each side.
        self.shows("outer.width", "15 7/8")
        self.shows("outer.height", "19 7/8")
        self.papers_are_there()
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

    sizes = "6x8\n5x5\n8x10*2\n5x7*3\n4x6*2"

    def asserts(self):
        job = self.job()
        self.assertEqual(job.find("outer").attrib, {"width": "36", "height": "24"})
        self.assertEqual([(one.get("width"), one.get("height")) for one in job.iter("picture")],
                         [("6", "8"), ("5", "5")] + [("8", "10")] * 2 + [("5", "7")] * 3 + [("4", "6")] * 2)
        shapes = sorted(one.get("shape") for one in job.iter("opening") if one.get("shape"))
        self.assertEqual(shapes, ["circle", "ellipse"])
        self.assertEqual(len(list(job.iter("opening"))), 10)
        self.assertEqual(len(job.findall("layers/layer")), 2)
        outermost = job.find("arrange")[0]
        self.assertEqual(outermost.tag, "column")
        self.assertIsNone(list(outermost.iter("opening"))[-1].get("picture"))
        self.shows("outer.width", "36")
        self.shows("outer.height", "24")
        self.assertEqual(self.size("outer.width"), ("36", True))
        self.papers_are_there()
        self.count(60)

    def test_by_keyboard(self):
        hands = self.hands
        hands.type(self.sizes)
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
        hands.type(self.sizes)
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
        job = self.job()
        self.assertEqual(job.get("unit"), "mm")
        self.assertEqual(job.find("outer").attrib, {"width": "1000", "height": "500"})
        row = job.find("arrange")[0]
        self.assertEqual((row.tag, row.get("window"), len(row)), ("row", "2", 3))
        self.shows("outer.width", "1000")
        self.shows("outer.height", "500")
        self.papers_are_there()
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
        job = self.job()
        picture = job.find("pictures/picture")
        self.assertEqual((picture.get("float"), picture.get("overlap")), ("1/4", None))
        groove = next(job.iter("groove"))
        self.assertEqual(groove.attrib, {"distance": "1/2", "width": "1/16"})
        self.assertEqual(len(job.findall("layers/layer")), 1)
        # 9 1/2 x 12 with 1/4 of board all around it.
        self.shows("opening.picture-1.width", "10")
        self.shows("opening.picture-1.height", "12 1/2")
        self.papers_are_there()
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
        job = self.job()
        self.assertEqual(len(list(job.iter("opening"))), 25)
        outermost = job.find("arrange")[0]
        self.assertEqual(outermost.tag, "column")
        middle = outermost[1]
        self.assertEqual(middle.tag, "row")
        self.assertEqual(middle[1].get("picture"), "picture-1")
        around = len(outermost[0]) + len(middle[0]) + len(middle[2]) + len(outermost[2])
        self.assertEqual(around, 24)
        self.assertEqual(self.hands.read("document.querySelectorAll('.opening').length"), 25)
        self.papers_are_there()
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
