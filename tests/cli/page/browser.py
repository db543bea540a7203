"""Chromium by the DevTools protocol, through a pipe, and hands that press and point and are counted."""

import base64
import json
import os
import subprocess
import tempfile
import time

FLAGS = ["--headless=new", "--no-sandbox", "--disable-gpu", "--disable-quic", "--no-first-run",
         "--disable-background-networking", "--disable-component-update", "--disable-sync",
         "--disable-dev-shm-usage", "--hide-scrollbars", "--force-device-scale-factor=1",
         "--lang=en-US", "--host-resolver-rules=MAP * ~NOTFOUND, EXCLUDE 127.0.0.1"]

KEYS = {"Enter": 13, "Tab": 9, "Escape": 27, "ArrowLeft": 37, "ArrowUp": 38, "ArrowRight": 39,
        "ArrowDown": 40, "Delete": 46, "Backspace": 8, " ": 32}
ALT, CONTROL, SHIFT = 1, 2, 8


class Browser:
    def __init__(self, width=1440, height=900):
        self.folder = tempfile.TemporaryDirectory(ignore_cleanup_errors=True)
        to_browser, ours = os.pipe()
        self.answers, from_browser = os.pipe()

        def keep_the_pipe():
            os.dup2(to_browser, 3)
            os.dup2(from_browser, 4)
            os.set_inheritable(3, True)  # where it was 3 already
            os.set_inheritable(4, True)

        self.process = subprocess.Popen(
            ["chromium", *FLAGS, f"--window-size={width},{height}", "--user-data-dir=" + self.folder.name,
             "--remote-debugging-pipe"],
            preexec_fn=keep_the_pipe, close_fds=False, stdin=subprocess.DEVNULL, stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL)
        os.close(to_browser)
        os.close(from_browser)
        self.out = os.fdopen(ours, "wb", 0)
        self.pending, self.number, self.session, self.complaints = b"", 0, None, []
        target = self.ask("Target.createTarget", url="about:blank")["targetId"]
        self.session = self.ask("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]
        for domain in ("Runtime", "Page", "Log"):
            self.ask(domain + ".enable")
        self.resize(width, height)
        self.actions = 0

    def end(self):
        self.process.kill()
        self.process.wait()
        self.out.close()
        os.close(self.answers)
        self.folder.cleanup()

    def ask(self, method, **parameters):
        self.number += 1
        message = {"id": self.number, "method": method, "params": parameters}
        if self.session:
            message["sessionId"] = self.session
        self.out.write(json.dumps(message).encode() + b"\0")
        while True:
            while b"\0" not in self.pending:
                part = os.read(self.answers, 1 << 20)
                if not part:
                    raise RuntimeError("the browser has ended")
                self.pending += part
            line, self.pending = self.pending.split(b"\0", 1)
            answer = json.loads(line)
            if answer.get("id") == message["id"]:
                if "error" in answer:
                    raise RuntimeError(f"{method}: {answer['error']}")
                return answer["result"]
            self.listen(answer)

    def listen(self, event):
        method, said = event.get("method"), event.get("params", {})
        if method == "Runtime.exceptionThrown":
            details = said["exceptionDetails"]
            self.complaints.append(details.get("exception", {}).get("description") or details["text"])
        elif method == "Log.entryAdded" and said["entry"]["source"] == "security":
            self.complaints.append(said["entry"]["text"])

    def resize(self, width, height, mobile=False):
        self.ask("Emulation.setDeviceMetricsOverride", width=width, height=height, deviceScaleFactor=1, mobile=mobile)

    def open(self, address):
        self.ask("Page.navigate", url=address)

    def read(self, expression):
        answer = self.ask("Runtime.evaluate", expression=expression, returnByValue=True, awaitPromise=True)
        if "exceptionDetails" in answer:
            raise RuntimeError(f"{expression}: {answer['exceptionDetails']}")
        return answer["result"].get("value")

    def wait(self, expression, seconds=20):
        end, wrong = time.monotonic() + seconds, ""
        while time.monotonic() < end:
            try:
                if self.read(expression):
                    return
            except RuntimeError as error:  # while one page is left and the next not there
                wrong = str(error)
            time.sleep(0.02)
        said = " ".join(str(self.read("document.body.innerText")).split())[:1500]
        raise AssertionError(f"waited in vain for {expression} {wrong}; the page says: {said}; {self.complaints}")

    def has(self, selector):
        return self.read(f"document.querySelector({json.dumps(selector)}) !== null")

    def wait_for(self, selector, seconds=20):
        self.wait(f"document.querySelector({json.dumps(selector)}) !== null", seconds)

    def text(self, selector):
        return self.read(f"document.querySelector({json.dumps(selector)})?.textContent")

    def picture(self, path):
        with open(path, "wb") as file:
            file.write(base64.b64decode(self.ask("Page.captureScreenshot", format="png")["data"]))

    # ---- Hands

    def place(self, selector, across=0.5, down=0.5):
        self.wait_for(selector)
        return self.read(
            "(() => { const one = document.querySelector(%s); one.scrollIntoView({ block: 'nearest' });"
            "const box = one.getBoundingClientRect();"
            "return [box.x + box.width * %f, box.y + box.height * %f]; })()" % (json.dumps(selector), across, down))

    def mouse(self, kind, x, y):
        pressed = kind in ("mousePressed", "mouseReleased")
        self.ask("Input.dispatchMouseEvent", type=kind, x=x, y=y, button="left" if pressed or self.is_down else "none",
                 buttons=1 if self.is_down or kind == "mousePressed" else 0, clickCount=1 if pressed else 0)

    is_down = False

    def click(self, selector, across=0.5, down=0.5):
        self.actions += 1
        x, y = self.place(selector, across, down)
        self.mouse("mouseMoved", x, y)
        self.mouse("mousePressed", x, y)
        self.mouse("mouseReleased", x, y)

    def press_at(self, x, y):
        self.actions += 1
        self.mouse("mouseMoved", x, y)
        self.mouse("mousePressed", x, y)
        self.is_down = True

    def drag_to(self, x, y, steps=10):
        fx, fy = self.at
        for step in range(1, steps + 1):
            self.mouse("mouseMoved", fx + (x - fx) * step / steps, fy + (y - fy) * step / steps)
        self.at = (x, y)

    def let_go(self):
        self.is_down = False
        self.mouse("mouseReleased", *self.at)

    # Takes hold of the middle of something and drags it by so much.
    def take(self, selector, across=0.5, down=0.5):
        self.at = tuple(self.place(selector, across, down))
        self.press_at(*self.at)

    def drag(self, selector, dx, dy, across=0.5, down=0.5):
        self.take(selector, across, down)
        self.drag_to(self.at[0] + dx, self.at[1] + dy)
        self.let_go()

    def key(self, key, modifiers=0):
        self.actions += 1
        code = KEYS.get(key, ord(key.upper()) if key.isascii() and key.isalnum() and len(key) == 1 else 0)
        typed = "\r" if key == "Enter" else key if len(key) == 1 and not modifiers & (ALT | CONTROL) else None
        text = {"text": typed} if typed else {}
        name = "Digit" + key if key.isdigit() else key
        self.ask("Input.dispatchKeyEvent", type="keyDown" if text or modifiers & ALT else "rawKeyDown", key=key, code=name,
                 windowsVirtualKeyCode=code, modifiers=modifiers,
                 unmodifiedText=key if len(key) == 1 else "", **text)
        self.ask("Input.dispatchKeyEvent", type="keyUp", key=key, code=name, windowsVirtualKeyCode=code, modifiers=modifiers)

    def type(self, text):
        for letter in text:
            self.key("Enter" if letter == "\n" else letter)

    def is_at(self, selector):
        return self.read(f"document.activeElement.matches({json.dumps(selector)})")

    # By Tab alone, and says where it went in vain.
    def tab_to(self, selector, most=60, back=False):
        passed = []
        for _ in range(most):
            if self.is_at(selector):
                return
            self.key("Tab", SHIFT if back else 0)
            passed.append(self.read("document.activeElement.name || document.activeElement.id || document.activeElement.tagName"))
        raise AssertionError(f"{most} tabs do not lead to {selector}: {passed}")

    # A choice, by the pointer: a press on the list and one on the option of that value or text.
    def choose(self, selector, value):
        option = "[...document.querySelector(%s)?.options || []].find((one) => [one.value, one.text].includes(%s))" % (json.dumps(selector), json.dumps(value))
        self.wait(option + " !== undefined")
        self.actions += 2
        self.read("(() => { const list = document.querySelector(%s); list.value = (%s).value;"
                  "list.dispatchEvent(new Event('change', { bubbles: true })); })()" % (json.dumps(selector), option))
