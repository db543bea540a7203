"""The page beside the cutter, in Chromium: every step of every gallery job is visited by keys, and its boxes,
its type and what it says are held against the plan's JSON.

shown_test.py PROGRAM SCRATCH. With MULLION_LONG: in light and in dark, and in every language."""

import glob
import json
import os
import re
import subprocess
import sys
import unittest

SOURCE = os.path.realpath(os.path.join(os.path.dirname(__file__), "../../.."))
sys.path.insert(0, os.path.join(SOURCE, "tests/cli/page"))

from browser import Browser  # noqa: E402

PROGRAM, SCRATCH = sys.argv[1:3] if len(sys.argv) > 2 else ("mullion", "/tmp/mullion-bench")
LONG = "MULLION_LONG" in os.environ
GALLERY = os.path.join(SOURCE, "gallery")
JOBS = sorted(os.path.basename(path)[:-4] for path in glob.glob(GALLERY + "/*.xml"))
AXE = os.path.join(SOURCE, "build/axe/node_modules/axe-core/axe.min.js")  # .ci/install long

# The width and height of a screen; the least size of a setting's type and of an instruction's. At 1024 x 768 a
# setting is read from a metre; a telephone is nearer.
SCREENS = {(1024, 768): (64, 28), (800, 1280): (64, 28), (390, 844): (32, 15)}
BUTTON = 64  # pixels, for a wet thumb

LOOK = r"""
window.look = () => {
  const step = document.querySelector('section.here'), wrong = [];
  const page = document.documentElement;
  if (step.scrollHeight > step.clientHeight || step.scrollWidth > step.clientWidth) wrong.push('the step is cut off');
  if (page.scrollWidth > innerWidth || page.scrollHeight > innerHeight) wrong.push('the page is cut off');
  const shown = [...step.querySelectorAll('h2 > *, dt, dd, p, svg'), ...document.querySelectorAll('footer button, #ticks, #lost, progress')]
    .map((one) => ({ one, box: one.getBoundingClientRect() })).filter(({ box }) => box.width > 0);
  shown.forEach(({ one, box }) => {
    if (box.left < 0 || box.top < 0 || box.right > innerWidth + 0.5 || box.bottom > innerHeight + 0.5) wrong.push(`${one.textContent} is off the screen`);
    if (one.scrollWidth > one.clientWidth + 1 && getComputedStyle(one).display !== 'inline') wrong.push(`${one.textContent} is cut off`);
  });
  const meet = (a, b, by) => a.left < b.right - by && b.left < a.right - by && a.top < b.bottom - by && b.top < a.bottom - by;
  const apart = (all, by) => all.forEach((a, i) => all.slice(i + 1).forEach((b) => {
    if (meet(a.box, b.box, by)) wrong.push(`${a.one.textContent || a.one.tagName} lies on ${b.one.textContent || b.one.tagName}`);
  }));
  // In the middle of a batch all is as it was with the second piece.
  const [, piece, pieces] = (step.querySelector('.piece')?.textContent || '').match(/(\d+)\D+(\d+)/) || [];
  if (!(Number(piece) > 2 && Number(piece) < Number(pieces))) apart(shown, 1);
  const svg = step.querySelector('svg');
  if (svg) {
    // Boxes of what is used are those of a copy in its place.
    svg.querySelectorAll('use').forEach((one) => one.replaceWith(document.querySelector(one.getAttribute('href')).cloneNode(true)));
    // The box of a text is as high as its line; its figures are two thirds of that.
    const texts = [...svg.querySelectorAll('text:not(.this)')].map((one) => {
      const box = one.getBoundingClientRect(), air = box.height / 6;
      return { one, box: { left: box.left, right: box.right, top: box.top + air, bottom: box.bottom - air } };
    });
    apart(texts, 0);
    const frame = svg.getBoundingClientRect();
    texts.forEach(({ one, box }) => {
      if (box.left < frame.left || box.right > frame.right || box.top < frame.top || box.bottom > frame.bottom) wrong.push(`${one.textContent} is outside the picture`);
    });
    const board = svg.querySelector('.board').getBoundingClientRect();
    if (board.width < 75 || board.height < 45) wrong.push('the board is tiny: ' + board.width + ' x ' + board.height);
  }
  const size = (one) => parseFloat(getComputedStyle(one).fontSize);
  const least = (selector) => Math.min(...[...step.querySelectorAll(selector)].map(size), 999);
  const buttons = [...document.querySelectorAll('nav button')].map((one) => one.getBoundingClientRect());
  const text = (selector) => step.querySelector(selector)?.textContent ?? null;
  const dials = Object.fromEntries([...step.querySelectorAll('dl > div')].map((one) =>
    [one.querySelector('dt').textContent.replace(/ stays$/, ''), one.querySelector('dd').textContent]));
  const letters = {};
  if (svg) {
    const board = svg.querySelector('.board').getBoundingClientRect();
    svg.querySelectorAll('.edge').forEach((one) => {
      const box = one.getBoundingClientRect(), x = (box.left + box.right) / 2, y = (box.top + box.bottom) / 2;
      letters[y < board.top ? 'far' : y > board.bottom ? 'near' : x < board.left ? 'left' : 'right'] = one.textContent;
    });
  }
  return { wrong, set: least('dl > div:not(.unset) dd'), say: least('p'), button: Math.min(...buttons.flatMap((box) => [box.width, box.height])),
    heading: text('h2 b'), where: [...step.querySelectorAll('h2 span')].map((one) => one.textContent), piece: text('.piece'), dials, letters,
    lie: text('.say .lie'), turn: text('.say .turn'), cut: text('.say .cut'), measure: text('.say .measure'),
    pieces: Number(step.dataset.pieces || 1), ticked: document.querySelector('#tick').getAttribute('aria-pressed') };
};
window.press = (key) => document.dispatchEvent(new KeyboardEvent('keydown', { key, bubbles: true, cancelable: true }));
// From one end to the other: every step, as it is seen.
window.walk = (forward) => {
  const all = [], keys = forward ? [' ', 'ArrowRight', 'PageDown', 'Enter', 'ArrowDown'] : ['ArrowLeft', 'PageUp', 'ArrowUp'];
  const last = document.querySelector(forward ? '#next' : '#back');
  for (let i = 0; i < 20000; i++) {
    all.push(window.look());
    if (last.disabled) return forward ? all : all.reverse();
    window.press(keys[i % keys.length]);
  }
  return null;
};0
"""


class Listening(Browser):
    def __init__(self, *size):
        self.asked = []
        super().__init__(*size)
        self.ask("Network.enable")

    def listen(self, event):
        super().listen(event)
        if event.get("method") == "Network.requestWillBeSent":
            self.asked.append(event["params"]["request"]["url"])


def made(name, jobs, *options):
    os.makedirs(SCRATCH, exist_ok=True)
    page = os.path.join(SCRATCH, name + ".html")
    run = subprocess.run([PROGRAM, "cuts", *jobs, "-o", page, "--json", *options], capture_output=True, text=True,
                         env=dict(os.environ, LC_ALL="C.UTF-8"), check=False)
    if run.returncode != 0:
        raise RuntimeError(run.stdout + run.stderr)
    return page, json.loads(run.stdout)


def job_page(name, *options):
    return made(name + "".join(options), [os.path.join(GALLERY, name + ".xml")], *options)


TURNS = ["as it lies", "quarter turn to the right", "half turn", "quarter turn to the left"]


# What is to be seen, in its order: lines drawn along the guide, cuts and checks.
def wanted(plan):
    left, out, quantity = plan["cutter"]["guide_side"] == "left", [], plan["quantity"]
    cuts = sum(len(lies["cuts"]) for stage in plan["stages"] for set_up in stage["set_ups"] for lies in set_up["placements"])
    cuts += sum(len(stage["freehand"]) for stage in plan["stages"])

    def lying(lies, first):
        turn = "as it lies" if not first else f"lay edge {lies['edge_away']} away from you" if lies["laid_anew"] else TURNS[lies["quarter_turns_clockwise"]]
        return [lies["edge_away"], lies["edge_at_arm"], lies["edge_at_guide"], turn]

    def shown(setting, unset):
        return setting["shows"] if setting else unset

    def check(one):
        if one["kind"] in ("line", "reveal"):
            return ["check", one["kind"], one["edge"]]
        return ["check", one["kind"], one["openings"] if one["kind"] == "opening" else None]  # a fallout's is not named

    for stage in plan["stages"]:
        out += [check(one) for one in stage["checks"] if one["kind"] == "reveal"]
        for set_up in stage["marking"]:
            out += [["stroke", line["number"], piece + 1, *lying(line, True), shown(set_up["guide"], "freehand")]
                    for piece in range(quantity) for line in set_up["lines"]]
        for set_up in stage["set_ups"]:
            for piece in range(quantity):
                for lies in set_up["placements"]:
                    for i, cut in enumerate(lies["cuts"]):
                        near, far = shown(set_up["near_stop"], "by eye"), shown(set_up["far_stop"], "by eye")
                        out.append(["cut", cut["number"], cuts, piece + 1, *lying(lies, i == 0), shown(set_up["guide"], "freehand"), near, far])
                        if piece == 0:
                            out += [check(one) for one in stage["checks"] if one.get("after_cut") == cut["number"]]
        out += [["skew", cut["number"], cuts, piece + 1] for piece in range(quantity) for cut in stage["freehand"]]
        out += [check(one) for one in stage["checks"] if one["kind"] == "opening"]
    return out, left


EDGES = {"top": "A", "left": "B", "bottom": "C", "right": "D"}


def seen(steps, left):
    out = []

    def numbers(text):
        words = re.split(" is | are each ", text)[0].replace(",", " ").split()
        return [int(word) for word in words if word.isdigit()]

    for step in steps:
        heading, dials = step["heading"], step["dials"]
        piece = int(step["piece"].split()[1]) if step["piece"] else 1
        lies = step["letters"]
        lying = [lies.get("far"), lies.get("near"), lies.get("left" if left else "right"), step["turn"]]
        if heading == "Check measure":
            text = step["measure"]
            kind = "reveal" if text.startswith("on scrap") else "fallout" if "fallout" in text else "opening" if "opening" in text else "line"
            what = (EDGES[text.split()[-1]] if kind == "reveal" else text.split(" from ")[1][0] if kind == "line" else numbers(text) if kind == "opening" else None)
            out.append(["check", kind, what])
        elif heading.startswith("Pencil line "):
            out.append(["stroke", int(heading.split()[-1]), piece, *lying, dials["guide"]])
        elif heading.startswith("Cut ") and step["cut"] is None:
            out.append(["skew", int(heading.split()[1]), int(heading.split()[3]), piece])
        elif heading.startswith("Cut "):
            if step["lie"].split()[1].rstrip(",") != lying[2]:
                out.append(["the words have another edge at the guide", step["lie"]])
            out.append(["cut", int(heading.split()[1]), int(heading.split()[3]), piece, *lying, dials["guide"],
                        dials.get("near stop", "by eye"), dials.get("far stop", "by eye")])
    return out


class Shown(unittest.TestCase):
    @classmethod
    def setUpClass(cls):
        cls.page = Listening(1024, 768)

    @classmethod
    def tearDownClass(cls):
        cls.page.end()

    def setUp(self):
        self.page.asked.clear()
        self.addCleanup(self.is_quiet)

    def is_quiet(self):
        self.assertEqual(self.page.complaints, [])
        self.assertEqual([url for url in self.page.asked if not url.startswith("file://")], [])

    def screen(self, size, scheme="light"):
        self.page.resize(*size, mobile=size[0] < 500)
        self.page.ask("Emulation.setEmulatedMedia", features=[{"name": "prefers-color-scheme", "value": scheme}])

    # Afresh: no ticks are kept from before.
    def open(self, path):
        page = self.page
        page.read("location.protocol === 'file:' && localStorage.clear()")
        page.open("file://" + path)
        page.wait(f"location.pathname === {json.dumps(path)} && document.querySelector('section.here')?.id === 's1'")
        page.read(LOOK)

    def walk(self, name, size, forward=True, least=True):
        steps = self.page.read(f"window.walk({json.dumps(forward)})")
        wrong = [(step["heading"], *step["wrong"]) for step in steps if step["wrong"]]
        self.assertEqual(wrong, [], f"{name} at {size}")
        if least:
            setting, words = SCREENS[size]
            small = [(step["heading"], step["set"], step["say"]) for step in steps
                     if step["set"] < setting or (step["say"] < words and step["heading"] not in ("Get ready",))]
            self.assertEqual(small, [], f"{name} at {size}: type below {setting} and {words}")
        self.assertEqual([step["heading"] for step in steps if step["button"] < BUTTON], [], name)
        return steps

    def test_every_step_of_every_gallery_job_is_seen_whole_and_as_the_JSON_has_it(self):
        visited = 0
        for number, name in enumerate(JOBS):
            path, told = job_page(name)
            if told["plan"]["quantity"] > 3 and not LONG:  # the steps are the same for three mats
                path, told = job_page(name, "--quantity", "3")
            plan = told["plan"]
            expected, left = wanted(plan)
            self.open(path)
            looks = [(size, scheme) for i, size in enumerate(SCREENS)
                     for scheme in (("light", "dark") if LONG else (("light", "dark")[(number + i) % 2],))]
            for i, (size, scheme) in enumerate(looks):  # there and back again
                with self.subTest(job=name, size=size, scheme=scheme):
                    self.screen(size, scheme)
                    steps = self.walk(name, size, i % 2 == 0)
                    visited += len(steps)
                    self.assertEqual(seen(steps, left), expected)
        print("steps visited:", visited)
        self.assertGreater(visited, 3000)


    def test_every_way_of_working_is_seen_whole_and_as_the_JSON_has_it(self):
        for way in ("pencil", "guide-lines", "template", "one-stop", "gauges", "stop-blocks") if LONG else ("guide-lines", "one-stop"):
            path, told = job_page("double-mat", "--way", way)
            expected, left = wanted(told["plan"])
            self.open(path)
            for i, size in enumerate(SCREENS):
                with self.subTest(way=way, size=size):
                    self.screen(size)
                    self.assertEqual(seen(self.walk(way, size, i % 2 == 0), left), expected)

    # ---- Ticks, keys and buttons

    def heading(self):
        return self.page.text("section.here h2 b")

    def piece(self):
        return self.page.text("section.here .piece")

    def ticked(self):
        return self.page.read("document.querySelector('#tick').getAttribute('aria-pressed')") == "true"

    def press(self, *keys):
        for key in keys:
            self.page.key(key)

    # A touch comes no sooner after another than a hand moves.
    def touch(self, selector):
        self.page.read("new Promise((done) => setTimeout(done, 260))")
        self.page.click(selector)

    def to(self, heading):
        for _ in range(200):
            if self.heading() == heading:
                return
            self.press(" ")
        self.fail(f"no {heading}")

    def reload(self):
        self.page.read("window.is_old = true")
        self.page.ask("Page.reload")
        self.page.wait("window.is_old === undefined && document.querySelector('section.here') !== null")

    def test_ticks_and_the_place_survive_a_reload_and_another_plan_starts_afresh(self):
        self.screen((1024, 768))
        path, _ = job_page("double-mat")
        self.open(path)
        self.assertFalse(self.ticked())
        self.to("Cut 3 of 8")
        self.assertFalse(self.ticked())
        self.press("ArrowLeft")
        while self.heading() != "Cut 2 of 8":
            self.press("ArrowLeft")
        self.assertTrue(self.ticked())
        self.touch("#tick")
        self.assertFalse(self.ticked())
        told = self.page.text("#ticks")
        self.reload()
        self.assertEqual(self.heading(), "Cut 2 of 8")
        self.assertFalse(self.ticked())
        self.assertEqual(self.page.text("#ticks"), told)
        self.press("PageUp", "PageUp")
        self.assertTrue(self.ticked())
        kept = self.page.read("JSON.stringify(localStorage)")
        other, _ = job_page("weighted-bottom")
        self.page.open("file://" + other)
        self.page.wait(f"location.pathname === {json.dumps(other)} && document.querySelector('section.here') !== null")
        self.assertEqual(self.page.read("document.querySelector('section.here').id"), "s1")
        self.assertRegex(self.page.text("#ticks"), "^0 of ")
        self.page.open("file://" + path)
        self.page.wait(f"location.pathname === {json.dumps(path)} && document.querySelector('section.here') !== null")
        self.assertEqual(json.loads(self.page.read("JSON.stringify(localStorage)")).items() & json.loads(kept).items(), json.loads(kept).items())
        # Afresh, by two presses on the first page.
        while not self.page.read("document.querySelector('#back').disabled"):
            self.press("ArrowUp")
        self.touch("#afresh")
        self.assertRegex(self.page.text("#afresh"), "again")
        self.assertEqual(self.page.text("#ticks"), told)
        self.touch("#afresh")
        self.assertRegex(self.page.text("#ticks"), "^0 of ")

    def test_buttons_work_and_a_bouncing_thumb_goes_on_by_one(self):
        self.screen((390, 844))
        path, _ = job_page("double-mat")
        self.open(path)
        first = self.heading()
        self.touch("#next")
        second = self.page.read("document.querySelector('section.here').id")
        self.assertEqual(second, "s2")
        self.page.click("#next")  # at once
        self.assertEqual(self.page.read("document.querySelector('section.here').id"), "s2")
        self.touch("#next")
        self.touch("#back")
        self.assertEqual(self.page.read("document.querySelector('section.here').id"), "s2")
        self.press(" ")  # a pedal goes on, whatever was touched last
        self.assertEqual(self.page.read("document.querySelector('section.here').id"), "s3")
        self.page.ask("Input.dispatchKeyEvent", type="keyDown", key=" ", code="Space", windowsVirtualKeyCode=32, autoRepeat=True)
        self.assertEqual(self.page.read("document.querySelector('section.here').id"), "s3")
        self.page.tab_to("#back", 20)
        self.press("Enter")
        self.assertEqual(self.page.read("document.querySelector('section.here').id"), "s2")
        self.assertEqual(self.page.read("document.activeElement.id"), "s2")
        self.touch("#all")
        shown = self.page.read("[...document.querySelectorAll('section')].every((one) => one.getBoundingClientRect().height > 0)")
        self.assertTrue(shown)
        self.press(" ")
        self.touch("#s4")
        self.assertEqual(self.page.read("document.querySelector('section.here').id"), "s4")
        self.assertNotEqual(self.heading(), first)

    def test_a_batch_goes_through_a_set_up_for_every_piece(self):
        self.screen((1024, 768))
        path, told = job_page("diplomas")
        self.assertEqual(told["plan"]["quantity"], 12)
        self.open(path)
        self.to("Cut 1 of 8")
        self.assertEqual(self.piece(), "piece 1 of 12")
        pieces = []
        while self.heading() != "Cut 3 of 8":
            if self.heading() == "Cut 1 of 8":
                pieces.append(self.piece())
            self.press(" ")
        self.assertEqual(pieces, [f"piece {n} of 12" for n in range(1, 13)])
        self.assertEqual(self.piece(), "piece 1 of 12")
        self.press("ArrowLeft")
        self.assertEqual((self.heading(), self.piece()), ("Cut 2 of 8", "piece 12 of 12"))
        self.reload()
        self.assertEqual((self.heading(), self.piece()), ("Cut 2 of 8", "piece 12 of 12"))
        self.assertTrue(self.ticked())

    # ---- What a browser has, or has not

    def with_script(self, script):
        name = self.page.ask("Page.addScriptToEvaluateOnNewDocument", source=script)["identifier"]
        self.addCleanup(lambda: self.page.ask("Page.removeScriptToEvaluateOnNewDocument", identifier=name))

    def test_the_screen_is_kept_awake_and_again_when_the_page_is_seen_again(self):
        self.with_script("window.locks = []; Object.defineProperty(navigator, 'wakeLock', { value: { request: (kind) => {"
                         "const lock = new EventTarget(); window.locks.push([kind, lock]); return Promise.resolve(lock); } } })")
        self.open(job_page("double-mat")[0])
        self.assertEqual(self.page.read("window.locks.map(([kind]) => kind)"), ["screen"])
        self.press(" ")
        self.assertEqual(self.page.read("window.locks.length"), 1)
        self.page.read("window.locks[0][1].dispatchEvent(new Event('release'))")
        self.page.read("document.dispatchEvent(new Event('visibilitychange'))")
        self.assertEqual(self.page.read("window.locks.length"), 2)

    def test_a_browser_without_wake_lock_or_storage_is_told_that_ticks_are_not_kept(self):
        self.with_script("Object.defineProperty(navigator, 'wakeLock', { value: undefined });"
                         "if (location.protocol === 'file:') Object.defineProperty(window, 'localStorage', { get() { throw new Error('none'); } })")
        path = job_page("double-mat")[0]
        self.page.open("file://" + path)
        self.page.wait(f"location.pathname === {json.dumps(path)} && document.querySelector('section.here')?.id === 's1'")
        self.page.read(LOOK)
        self.assertEqual(self.page.read("window.look().wrong"), [])
        self.assertTrue(self.page.read("document.querySelector('#lost').getBoundingClientRect().height > 0"))
        self.to("Cut 2 of 8")
        self.press("PageUp", "PageUp")
        self.assertTrue(self.ticked())
        self.page.open("about:blank")

    def test_without_its_script_the_page_is_read_from_top_to_bottom(self):
        path, told = job_page("seven-picture-collage")
        self.page.ask("Emulation.setScriptExecutionDisabled", value=True)
        self.addCleanup(lambda: self.page.ask("Emulation.setScriptExecutionDisabled", value=False))
        for size in SCREENS:
            self.screen(size)
            self.page.open("file://" + path)
            self.page.wait(f"location.pathname === {json.dumps(path)} && document.readyState === 'complete'")
            shown = self.page.read(
                "(() => { const all = [...document.querySelectorAll('section')].map((one) => one.getBoundingClientRect());"
                "return [all.length, all.every((box, i) => box.height > 0 && (i === 0 || box.top >= all[i - 1].bottom - 1)),"
                "document.documentElement.scrollWidth <= innerWidth, document.querySelector('footer').getBoundingClientRect().height] })()")
            self.assertEqual(shown[1:], [True, True, 0], size)
        self.assertGreater(shown[0], 80)

    def test_light_and_dark_have_contrast(self):
        self.open(job_page("twelve-stamps")[0])
        for scheme in ("light", "dark"):
            self.screen((1024, 768), scheme)
            faint = self.page.read(r"""(() => {
              const channels = (text) => text.match(/[\d.]+/g).map(Number);
              const light = ([r, g, b]) => [r, g, b].map((c) => c / 255).map((c) => (c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4))
                .reduce((sum, c, i) => sum + c * [0.2126, 0.7152, 0.0722][i], 0);
              const ratio = (a, b) => (Math.max(light(a), light(b)) + 0.05) / (Math.min(light(a), light(b)) + 0.05);
              const ground = (one) => {
                for (let at = one; at; at = at.parentElement) {
                  const colour = channels(getComputedStyle(at).backgroundColor);
                  if (colour.length === 3 || colour[3] > 0) return colour;
                }
                return [255, 255, 255];
              };
              const faint = [];
              document.querySelectorAll('dt, dd, p, h2 > *, nav button:enabled, .status button, #ticks').forEach((one) => {
                const found = ratio(channels(getComputedStyle(one).color), ground(one));
                if (found < 4.5) faint.push([one.className, one.tagName, found]);
              });
              document.querySelectorAll('section svg').forEach((svg) => {
                svg.querySelectorAll('use').forEach((one) => one.replaceWith(document.querySelector(one.getAttribute('href')).cloneNode(true)));
                const of = (selector, key) => { const one = svg.querySelector(selector); return one && channels(getComputedStyle(one)[key]); };
                const board = of('.board', 'fill'), page = ground(svg);
                for (const [name, key, on, least] of [['.edge', 'fill', page, 4.5], ['.opening', 'fill', board, 4.5], ['.now', 'stroke', board, 4.5],
                  ['.uncut', 'stroke', board, 3], ['.cut', 'stroke', board, 3], ['.stop', 'fill', board, 3], ['.metal', 'fill', page, 3]]) {
                  const colour = of(name, key);
                  if (colour && ratio(colour, on) < least) faint.push([name, ratio(colour, on)]);
                }
              });
              return faint.slice(0, 5);
            })()""")
            self.assertEqual(faint, [], scheme)

    # ---- A run, other languages

    def test_a_run_of_several_jobs_is_seen_whole(self):
        names = ["double-mat", "weighted-bottom", "two-tiles"]
        path, told = made("run", [os.path.join(GALLERY, name + ".xml") + f"*{i + 1}" for i, name in enumerate(names)])
        self.open(path)
        steps = [self.walk("run", size, i % 2 == 0, least=False) for i, size in enumerate(SCREENS)][0]
        cuts = [(step["where"][2].split()[1], step["where"][0].split()[1].rstrip(":")) for step in steps if step["cut"]]
        found = [one for i, one in enumerate(cuts) if i == 0 or cuts[i - 1] != one]
        self.assertEqual(found, [(str(step["step"]), str(cut["kind"])) for step in told["plan"]["steps"] for cut in step["cut"] if cut["set_up"]])

    def test_german_words_are_seen_whole(self):
        languages = ("de", "fr", "es") if LONG else ("de",)
        for language in languages:
            for name in JOBS if LONG else ("wedding-triptych",):
                path, _ = job_page(name, "--language", language)
                self.open(path)
                self.assertEqual(self.page.read("document.documentElement.lang"), language)
                for i, size in enumerate(SCREENS):
                    with self.subTest(job=name, size=size, language=language):
                        self.screen(size)
                        self.walk(name, size, i % 2 == 0, least=False)

    @unittest.skipUnless(LONG and os.path.exists(AXE), "axe-core is not there (.ci/install long), or the tests are not the long ones")
    def test_axe_finds_nothing(self):
        self.page.ask("Page.setBypassCSP", enabled=True)
        self.addCleanup(lambda: self.page.ask("Page.setBypassCSP", enabled=False))
        for name in ("double-mat", "two-tiles", "family-tree"):
            self.open(job_page(name)[0])
            with open(AXE, encoding="utf-8") as file:
                self.page.read(file.read() + ";0")
            for _ in range(20):
                found = self.page.read(
                    "axe.run(document, { runOnly: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa'] }).then((all) => JSON.stringify("
                    "all.violations.map((one) => [one.id, one.help, one.nodes.slice(0, 3).map((node) => node.html.slice(0, 160))])))")
                self.assertEqual(json.loads(found), [], f"{name}: {self.heading()}")
                self.press(" ")


if __name__ == "__main__":
    unittest.main(argv=sys.argv[:1] + sys.argv[3:])
