#!/usr/bin/env python3
"""From nothing to a packet in a real terminal: keys are sent to tmux, what stands on its screen is read.

    terminal.py BUILD-FOLDER SOURCE-FOLDER
"""
import os
import pathlib
import shutil
import subprocess
import sys
import tempfile
import time

from run import run

# By how the prompt begins; Enter takes what is offered. All invented.
ANSWERS = {
    "Number of the job": "T-9", "Title of the job": "Fern Row", "Date of the job": "2026-09-14",
    "What is bent": "1", "Which head": "1", "Span": "45 in", "Rise": "9 1/2 in", "Depth of the jamb": "4 5/8 in",
    "Board:": "mdf", "Thickness": "3/8 in", "Diameter of the blade": "10 in", "Width of one cut": "0.118",
    "Another piece": "done",
}
MOST_SECONDS = 180


class Terminal:
    def __init__(self, folder, build):
        self.tmux = ["tmux", "-L", f"kerfpacket-{os.getpid()}", "-f", "/dev/null"]
        env = {**os.environ, "PATH": f"{build}:{os.environ['PATH']}", "HOME": str(folder), "LC_ALL": "C.UTF-8",
               "XDG_CONFIG_HOME": str(folder / "none")}
        shell = ["env", "PS1=READY> ", "bash", "--noprofile", "--norc"]
        subprocess.run([*self.tmux, "new-session", "-d", "-x", "110", "-y", "50", *shell], cwd=folder, env=env,
                       check=True)
        self.keys = 0

    def type(self, text):
        self.keys += len(text) + 1
        if text:
            subprocess.run([*self.tmux, "send-keys", "-l", text], check=True)
        subprocess.run([*self.tmux, "send-keys", "Enter"], check=True)

    def screen(self):
        return run(*self.tmux, "capture-pane", "-p", "-J").stdout.rstrip("\n").split("\n")

    def last(self):
        """The line that waits for an answer, once the screen stands still."""
        before, since = None, time.monotonic()
        while time.monotonic() - since < 30:
            now = self.screen()
            if now == before and now[-1].rstrip().endswith((":", ">")):
                return now[-1]
            before = now
            time.sleep(0.15)
        raise AssertionError("nothing is asked:\n" + "\n".join(self.screen()))

    def close(self):
        run(*self.tmux, "kill-server")


def answer_to(prompt):
    return next((text for begin, text in ANSWERS.items() if prompt.startswith(begin)), "")


def main(build, _source):
    if shutil.which("tmux") is None:
        print("tmux is not there: not run")
        return
    with tempfile.TemporaryDirectory(ignore_cleanup_errors=True) as name:
        folder = pathlib.Path(name)
        terminal = Terminal(folder, pathlib.Path(build).resolve())
        try:
            began = time.monotonic()
            assert terminal.last().startswith("READY>")
            terminal.type("kerfpacket start arch.toml")
            asked, helped, went_back = [], False, False
            while not (prompt := terminal.last()).startswith("READY>"):
                assert len(asked) < 60, asked
                asked.append(prompt)
                if prompt.startswith("Rise") and not helped:
                    helped = True
                    terminal.type("?")
                elif prompt.startswith("Rise") and not went_back:
                    went_back = True
                    terminal.type("back")
                else:
                    terminal.type(answer_to(prompt))
            assert sum(prompt.startswith("Span") for prompt in asked) == 2, asked
            assert (folder / "arch.toml").is_file(), terminal.screen()
            terminal.type("kerfpacket build arch.toml")
            assert terminal.last().startswith("READY>")
            took = time.monotonic() - began
            assert run(pathlib.Path(build) / "kerfpacket", "verify", folder / "arch.pdf").returncode == 0, terminal.screen()
            assert took < MOST_SECONDS, took
            print(f"{len(asked)} questions, {terminal.keys} keys, {took:.0f} s to a packet as fast as a script types")
        finally:
            terminal.close()


if __name__ == "__main__":
    main(*sys.argv[1:])
