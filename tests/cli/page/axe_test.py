"""axe-core, which we did not write, finds nothing against WCAG 2.2 AA on any view of the page."""

import json
import os
import sys
import unittest

from opened import SOURCE
from views import Views

AXE = os.path.join(SOURCE, "build/axe/node_modules/axe-core/axe.min.js")  # .ci/install long
RULES = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa", "best-practice"]
SKIPPED = 77


class Axe(Views):
    def axe_finds_nothing(self, view):
        with open(AXE, encoding="utf-8") as file:
            self.page.read(file.read() + ";0")
        found = self.page.read(
            "axe.run(document, { runOnly: %s, iframes: false }).then((all) => JSON.stringify(all.violations.map("
            "(one) => [one.id, one.help, one.nodes.slice(0, 3).map((node) => node.html.slice(0, 160))])))" % json.dumps(RULES))
        self.assertEqual(json.loads(found), [], view)

    def test_axe_finds_nothing_on_any_view(self):
        page = self.page
        page.read("location.hash = ''")
        page.wait_for(".blank")
        self.axe_finds_nothing("the folder")
        self.job()
        for step in ("pictures", "arrangement", "sizes", "layers", "frame", "papers", "choices"):
            self.unfold(step)
            self.axe_finds_nothing(step)
        self.press('[name="opening-1"]')
        self.press(".mark-at")
        self.axe_finds_nothing("an opening chosen and a check looked at")
        self.press('[name="whole"]')
        page.wait_for(".around-part")
        self.axe_finds_nothing("a column chosen")
        self.press('[name="move"]')
        page.wait_for(".foreseen")
        self.axe_finds_nothing("a column on its way")
        self.press('[name="leave-it"]')
        self.press('.sizes button[name="border.left"]')
        page.wait_for(".size input")
        self.axe_finds_nothing("a size being written")
        page.type("20")
        page.key("Enter")
        page.wait_for(".pinned.error")
        self.axe_finds_nothing("a conflict")
        self.press('[name="undo"]')
        page.wait_for(".size")
        self.press('[name="back"]')
        page.wait("document.querySelector('[name=\"back\"]').getAttribute('aria-pressed') === 'true'")
        self.axe_finds_nothing("from behind")
        self.press('[name="front"]')
        self.unfold("arrangement")
        self.press('[name="suggest"]')
        page.wait_for(".idea", 60)
        self.axe_finds_nothing("suggestions")
        self.unfold("papers")
        self.press('[name="show-proof.pdf"]')
        page.wait_for("iframe")
        self.axe_finds_nothing("a paper")
        self.press('[name="close-paper"]')
        self.press('[name="alone"]')
        page.wait_for('[name="not-alone"]')
        self.axe_finds_nothing("the piece alone")
        self.press('[name="not-alone"]')
        page.resize(390, 844, True)
        self.axe_finds_nothing("small")
        page.resize(1024, 768)
        page.read("location.hash = '#versions=double-mat|seven-picture-collage'")
        page.wait_for(".hung-versions svg")
        self.axe_finds_nothing("versions")
        self.assertEqual(page.complaints, [])


class InGerman(Axe):
    language = "de_DE.UTF-8"


class InFrench(Axe):
    language = "fr_FR.UTF-8"


class InSpanish(Axe):
    language = "es_ES.UTF-8"


if __name__ == "__main__":
    if not os.path.exists(AXE):
        print("skipped: axe-core is not there (.ci/install long)")
        sys.exit(SKIPPED)
    unittest.main(argv=sys.argv[:1] + sys.argv[3:])
