"""A printer that prints a little long or short. It is measured on the program's own check page, as a shop would; what
it then puts on the paper is the packet's sheets with that error on them."""
import json
import os
import pathlib
import re
import subprocess

import fitz

import jobs


def said_in(text):
    """What a made-up job says of its printer: {"media", "level", "upright"}, lengths printed over true lengths."""
    note = re.search(r"^# printer (.*)$", text, re.M)
    return json.loads(note.group(1)) if note else None


class Printer:
    """Of cut sheets of one size. Rolls go through another printer, which is true."""

    def __init__(self, program, text, folder):
        self.said = said_in(text)
        self.settings = {**os.environ, "XDG_CONFIG_HOME": str(pathlib.Path(folder, "settings"))}
        if not self.said:
            return
        check = ["printer-check", "--media", self.said["media"]]
        page = pathlib.Path(folder, "check.pdf")
        told = self._run(program, *check, "--out", str(page)).stdout
        level, upright = (jobs.length(w, "in") for w in re.search(r"level bar ([^,]+), upright bar (.+)", told).groups())
        with fitz.open(page) as doc:
            self.short, self.long = sorted(doc[0].rect[2:])
        kept = self._run(program, *check, "--profile", "made-up", "--first", self.said["first"],
                         "--level", f"{level * self.said['level']:.6f} in",
                         "--upright", f"{upright * self.said['upright']:.6f} in")
        if kept.returncode:
            raise RuntimeError(kept.stderr)

    def _run(self, program, *arguments):
        return subprocess.run([program, *arguments], capture_output=True, text=True, env=self.settings)

    def through(self, path):
        """Prints the file: its sheets of the measured size come out with the printer's error on them."""
        if not self.said or not pathlib.Path(path).exists():
            return
        printed = fitz.open()
        with fitz.open(path) as doc:
            for page in doc:
                width, height = page.rect.width, page.rect.height
                own = abs(min(width, height) - self.short) < 1 and abs(max(width, height) - self.long) < 1
                level, upright = (self.said["level"], self.said["upright"]) if own else (1, 1)
                x, y = (level, upright) if width < height else (upright, level)
                where = fitz.Rect(0, 0, width * x, height * y)
                new = printed.new_page(width=width, height=height)
                new.show_pdf_page(where + (width * (1 - x) / 2, height * (1 - y) / 2) * 2, doc, page.number,
                                  keep_proportion=False)
            printed.set_toc(doc.get_toc())
        printed.save(f"{path}.printed")
        os.replace(f"{path}.printed", path)
