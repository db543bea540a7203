"""What the page says is what words.cpp lists, so that every language has it."""

import glob
import json
import os
import re
import sys
import unittest

from browser import Browser
from opened import Opened, SOURCE, folder_for, gallery_jobs

PAGE = os.path.join(SOURCE, "cli/page")
STRING = r'"((?:[^"\\]|\\.)*)"'


def said():
    found = set()
    for path in glob.glob(os.path.join(PAGE, "web/*.js")):
        with open(path, encoding="utf-8") as file:
            found |= set(re.findall(r"\bsay\(\s*" + STRING, file.read()))
    return found


def listed():
    with open(os.path.join(PAGE, "words.cpp"), encoding="utf-8") as file:
        text = re.sub(r'"\s*\n\s*"', "", file.read())
    return re.findall(r"\bmark\(\s*" + STRING, text)


class Words(unittest.TestCase):
    def test_every_text_of_the_page_is_listed_and_no_other(self):
        self.assertEqual(said(), set(listed()))

    def test_none_is_listed_twice(self):
        self.assertEqual(len(listed()), len(set(listed())))

    # All that the browser was given of the page and its library, but for the words in the reader's language.
    def is_small(self, page):
        files = json.loads(page.read(
            "JSON.stringify(Object.fromEntries(performance.getEntriesByType('resource').concat(performance.getEntriesByType('navigation'))"
            ".filter((one) => !/\\/api\\/|words.json/.test(one.name)).map((one) => [one.name.replace(/^.*?\\/page\\//, ''), one.decodedBodySize])))"))
        own = [os.path.relpath(file, PAGE + "/web") for file in glob.glob(PAGE + "/web/*") if not file.endswith(".html")]
        self.assertEqual([file for file in own if file not in files], [])
        self.assertEqual([file for file in own if files[file] != os.path.getsize(os.path.join(PAGE, "web", file))], [])
        self.assertLessEqual(sum(files.values()), 200_000)

    def test_a_german_reader_gets_a_german_page_of_at_most_200_kB(self):
        folder = folder_for("words")
        gallery_jobs(folder, "double-mat")
        opened, page = Opened(folder, language="de_DE.UTF-8"), Browser()
        try:
            page.open(opened.address)
            page.wait("document.documentElement.lang === 'de' && document.querySelector('.blank') !== null")
            self.assertEqual(page.text(".blank h2"), "Ein neuer Auftrag")
            page.read("location.hash = '#job=double-mat'")
            page.wait_for(".size")
            self.assertIn("Ränder und Maße", page.text(".lines"))
            self.is_small(page)
            self.assertEqual(page.complaints, [])
        finally:
            page.end()
            opened.end()


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1] + sys.argv[3:])
