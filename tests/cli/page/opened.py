"""`mullion open` on a folder of its own, from its start until the test ends."""

import os
import re
import shutil
import subprocess
import sys

PROGRAM, SCRATCH = sys.argv[1:3] if len(sys.argv) > 2 else ("mullion", "/tmp/mullion-page")
SOURCE = os.path.realpath(os.path.join(os.path.dirname(__file__), "../../.."))
GALLERY = os.path.join(SOURCE, "gallery")


def folder_for(name):
    folder = os.path.join(SCRATCH, name)
    shutil.rmtree(folder, ignore_errors=True)
    os.makedirs(folder)
    return folder


# The gallery's jobs of those names, with their pictures.
def gallery_jobs(folder, *names):
    for name in names:
        shutil.copy(os.path.join(GALLERY, name + ".xml"), folder)
    shutil.copytree(os.path.join(GALLERY, "pictures"), os.path.join(folder, "pictures"), dirs_exist_ok=True)


class Opened:
    def __init__(self, folder, *options, language="C.UTF-8", job=None):
        self.folder = folder
        environment = dict(os.environ, LC_ALL=language, LANG=language)
        environment.pop("LANGUAGE", None)
        self.process = subprocess.Popen(
            [PROGRAM, "open", job or folder, "--no-browser", *options], env=environment,
            stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True, bufsize=1)
        self.address, said = None, ""
        for line in self.process.stdout:
            said += line
            found = re.search(r"http://\S+", line)
            if found:
                self.address = found[0]
                break
        if not self.address:
            raise RuntimeError("no address: " + said)

    def read(self, name):
        with open(os.path.join(self.folder, name), encoding="utf-8") as file:
            return file.read()

    def end(self):
        self.process.kill()
        self.process.wait()
        self.process.stdout.close()
