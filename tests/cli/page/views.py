"""A folder of the gallery's jobs on the page, and the way to each view of it."""

import json
import os
import unittest

from browser import Browser
from opened import GALLERY, Opened, folder_for, gallery_jobs


class Views(unittest.TestCase):
    language = "C.UTF-8"

    @classmethod
    def setUpClass(cls):
        cls.folder = folder_for("people")
        gallery_jobs(cls.folder, "seven-picture-collage", "double-mat", "twelve-stamps")
        shop = os.path.join(GALLERY, "shop")
        cls.opened = Opened(cls.folder, "--stock", os.path.join(shop, "stock.xml"), "--prices", os.path.join(shop, "prices.xml"),
                            language=cls.language)
        cls.page = Browser()
        cls.page.open(cls.opened.address)
        cls.page.wait_for(".card")

    @classmethod
    def tearDownClass(cls):
        cls.page.end()
        cls.opened.end()

    def setUp(self):
        self.page.resize(1440, 900)

    def job(self, name="seven-picture-collage"):
        self.page.read("location.hash = ''")
        self.page.wait_for(".blank")
        self.page.read(f"location.hash = '#job={name}'")
        self.page.wait_for(".size")

    def press(self, selector):
        self.page.wait_for(selector)
        self.page.read(f"document.querySelector({json.dumps(selector)}).click()")

    def unfold(self, step):
        self.press(f'[name="line-{step}"]')
        self.page.wait(f"document.querySelector('[name=\"line-{step}\"]').getAttribute('aria-expanded') === 'true'")
        self.page.read("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
