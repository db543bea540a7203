"""A job of the gallery, opened on the page in a folder of its own: what a test does to it, and what its
file says then."""

import json
import os
import re
import shutil
import time
import unittest

from browser import Browser
from opened import GALLERY, Opened, folder_for, gallery_jobs


def inches(text):
    return sum(float(part.split("/")[0]) / float(part.split("/")[1]) if "/" in part else float(part) for part in text.split())


class OpenJob(unittest.TestCase):
    name = "seven-picture-collage"
    has_shop = False

    @classmethod
    def setUpClass(cls):
        cls.page = Browser()

    @classmethod
    def tearDownClass(cls):
        cls.page.end()

    def setUp(self):
        self.folder = folder_for(f"{type(self).__name__.lower()}-" + self.id().rsplit(".", 1)[1])
        gallery_jobs(self.folder, self.name)
        if self.has_shop:
            shutil.copytree(os.path.join(GALLERY, "shop"), os.path.join(self.folder, "shop"))
        self.before = self.text()
        self.opened = Opened(self.folder)
        self.addCleanup(self.opened.end)
        self.page.open(self.opened.address)
        self.page.click(".card a")
        self.page.wait_for(".size")

    def tearDown(self):
        complaints, self.page.complaints = self.page.complaints, []
        self.page.open("about:blank")
        self.assertEqual(complaints, [])

    # ---- The file

    def text(self):
        with open(os.path.join(self.folder, self.name + ".xml"), encoding="utf-8") as file:
            return file.read()

    def is_written(self, pattern):
        end = time.monotonic() + 10
        while not re.search(pattern, self.text()):
            if time.monotonic() > end:
                self.fail(f"{pattern} is not in {self.text()}")
            time.sleep(0.02)

    def is_undone(self):
        end = time.monotonic() + 10
        while self.text() != self.before and time.monotonic() < end:
            time.sleep(0.02)
        self.assertEqual(self.text(), self.before)

    def stays(self):
        time.sleep(0.4)
        self.assertEqual(self.text(), self.before)

    # ---- The drawing

    def number(self, name):
        return f'.sizes button[name="{name}"]'

    def size(self, name):
        self.page.wait_for(self.number(name))
        return self.page.text(self.number(name))

    def shows(self, name, text):
        self.page.wait(f"document.querySelector({json.dumps(self.number(name))})?.textContent === {json.dumps(text)}")

    def focus(self, selector):
        self.page.wait_for(selector)
        self.page.read(f"document.querySelector({json.dumps(selector)}).focus()")

    # ---- The ticket

    def unfold(self, step):
        self.page.click(f'[name="line-{step}"]')
        self.page.wait(f"document.querySelector('[name=\"line-{step}\"]').getAttribute('aria-expanded') === 'true'")

    def write(self, name, text):
        self.page.click(f'.ticket [name="{name}"]')
        self.page.type(text)
        self.page.key("Enter")

    def give_files(self, selector, *paths):
        self.page.wait_for(selector)
        chosen = self.page.ask("Runtime.evaluate", expression=f"document.querySelector({json.dumps(selector)})")["result"]["objectId"]
        self.page.ask("DOM.setFileInputFiles", objectId=chosen, files=list(paths))

    # Files let fall on something, as from a window of the desktop.
    def drop(self, selector, *paths):
        x, y = self.page.place(selector)
        data = {"items": [], "files": list(paths), "dragOperationsMask": 1}
        for kind in ("dragEnter", "dragOver", "drop"):
            self.page.ask("Input.dispatchDragEvent", type=kind, x=x, y=y, data=data)
