"""Opens a page in Chromium and waits until a text stands in one of its elements; then does a
command, and waits for another text. By the DevTools protocol through a pipe.

drive_page.py URL FOLDER ID FIRST_TEXT COMMAND SECOND_TEXT
Prints what the page's <iframe> shows in the end."""

import json
import os
import subprocess
import sys
import time

url, folder, element, first, command, second = sys.argv[1:]


def start():
    to_browser, ours = os.pipe()
    theirs, from_browser = os.pipe()

    def keep_the_pipe():
        os.dup2(to_browser, 3)
        os.dup2(from_browser, 4)
        os.set_inheritable(3, True)  # where it was 3 already
        os.set_inheritable(4, True)

    browser = subprocess.Popen(
        ["chromium", "--headless", "--no-sandbox", "--disable-gpu", "--no-first-run",
         "--disable-background-networking", "--disable-dev-shm-usage", "--disable-sync",
         "--user-data-dir=" + folder, "--remote-debugging-pipe"],
        preexec_fn=keep_the_pipe, close_fds=False, stderr=subprocess.DEVNULL)
    return browser, os.fdopen(ours, "wb", 0), os.fdopen(theirs, "rb", 0)


browser, out, answers = start()
pending = b""
number = 0


def ask(method, session=None, **parameters):
    global pending, number
    number += 1
    message = {"id": number, "method": method, "params": parameters}
    if session:
        message["sessionId"] = session
    out.write(json.dumps(message).encode() + b"\0")
    while True:
        while b"\0" not in pending:
            part = os.read(answers.fileno(), 65536)
            if not part:
                sys.exit("the browser has ended")
            pending += part
        line, pending = pending.split(b"\0", 1)
        answer = json.loads(line)
        if answer.get("id") == number:
            return answer.get("result", {})


target = ask("Target.createTarget", url=url)["targetId"]
session = ask("Target.attachToTarget", targetId=target, flatten=True)["sessionId"]


def read(expression):
    answer = ask("Runtime.evaluate", session, expression=expression, returnByValue=True)
    return str(answer.get("result", {}).get("value"))


def wait_for(text):
    end = time.monotonic() + 30
    while time.monotonic() < end:
        seen = read("document.getElementById('%s')?.textContent" % element)
        if text in seen:
            return
        time.sleep(0.1)
    browser.kill()
    sys.exit("found \"%s\", expected \"%s\"" % (seen, text))


wait_for(first)
subprocess.run(["sh", "-c", command], check=True)
wait_for(second)
print(read("document.getElementById('view').src"))
browser.kill()
browser.wait()
