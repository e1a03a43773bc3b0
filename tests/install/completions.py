#!/usr/bin/env python3
"""The completions, driven in bash, zsh and fish as a keyboard drives them; a shell that is not there is said so.

    completions.py BUILD-FOLDER SOURCE-FOLDER
"""
import os
import pathlib
import pty
import re
import select
import shutil
import subprocess
import sys
import tempfile
import time

# What is typed, and words that must be offered, or stand completed; then words that must not be.
CASES = [
    ("kerfpacket bu", ["build"], ["verify"]),
    ("kerfpacket pr", ["preview", "printer-check"], ["build"]),
    ("kerfpacket build --me", ["--media"], ["--only"]),
    ("kerfpacket build --media iso_a", ["iso_a4_210x297mm", "iso_a3_297x420mm"], ["na_letter_8.5x11in"]),
    ("kerfpacket build --only strips,chec", ["strips,checklist"], ["strips,cover"]),
    ("kerfpacket build --language ", ["en", "es"], []),
    ("kerfpacket build ar", ["arch.toml"], ["arch.pdf", "notes.txt"]),
    ("kerfpacket verify ar", ["arch.pdf"], ["arch.toml"]),
    ("kerfpacket stops arch.toml --piece ", ["A", "W2"], []),
    ("kerfpacket stops arch.toml --blade n", ["near"], ["far"]),
    ("kerfpacket start --from ar", ["arch.pdf"], ["notes.txt", "arch.toml"]),
    ("kerfpacket start --from arch.pdf ar", ["arch.pdf"], ["notes.txt", "arch.toml"]),
    ("kerfpacket start --from arch.pdf arch.pdf --lang", ["--language"], ["arch.toml"]),
    ("kerfpacket start --from arch.pdf --language e", ["en", "es"], []),
    ("kerfpacket labels arch.toml ar", ["arch.toml"], ["arch.pdf"]),
    ("kerfpacket printer-check --labels ar", ["arch.toml"], ["arch.pdf"]),
    ("kerfpacket field-sheet or", ["ordinates"], ["arch"]),
    ("kerfpacket printer-check --first b", ["bottom"], ["top"]),
    ("kerfpacket schema s", ["shop"], ["job"]),
    ("kerfpacket preview arch.toml --out pic", ["pictures"], ["arch.toml "]),
]

JOB = """[job]
number = "K-7"
title = "Mill Lane arch"
revision = "B"
date = 2026-05-04
units = "in"
[saw]
blade_diameter = "12 in"
kerf = 0.118
[[opening]]
id = "A"
shape = "segmental"
span = "72 in"
rise = "6 in"
depth = "5-1/4 in"
[opening.liner]
material = "mdf"
thickness = "3/4 in"
[[wall]]
id = "W2"
chord = "9 ft"
rise = "8 in"
side = "concave"
[wall.board]
material = "mdf"
thickness = "3/4 in"
width = "5 in"
"""


def bash(source, folder, env):
    """The function of the completion, called as readline calls it."""
    def offered(line):
        script = f"""
source {source}/src/install/completions/kerfpacket.bash
line={quoted(line)}
read -r -a COMP_WORDS <<<"$line"
[[ $line == *' ' ]] && COMP_WORDS+=('')
COMP_CWORD=$(( ${{#COMP_WORDS[@]}} - 1 ))
_kerfpacket
printf '%s\\n' "${{COMPREPLY[@]}}"
"""
        return subprocess.run(["bash", "--norc", "-c", script], cwd=folder, env=env, capture_output=True, text=True,
                              check=True).stdout.split("\n")
    yield offered


def fish(source, folder, env):
    def offered(line):
        script = f"source {source}/src/install/completions/kerfpacket.fish; complete -C {quoted(line)}"
        done = subprocess.run(["fish", "--no-config", "-c", script], cwd=folder, env=env, capture_output=True,
                              text=True, check=True)
        return [row.split("\t")[0] for row in done.stdout.split("\n")]
    yield offered


def zsh(source, folder, env):
    """In a terminal, by the tab key: its completion system works nowhere else."""
    start = (f"fpath=({source}/src/install/completions $fpath); autoload -Uz compinit; compinit -u -D; "
             "PS1='REA''DY%# '; LISTMAX=1000; setopt no_beep no_list_ambiguous")
    child, terminal = pty.fork()
    if child == 0:
        os.chdir(folder)
        os.execvpe("zsh", ["zsh", "-f", "-i"], {**env, "TERM": "dumb", "COLUMNS": "200", "LINES": "100"})

    def offered(line):
        os.write(terminal, (line + "\t").encode())
        shown = told(terminal, None)
        os.write(terminal, b"\x03")
        told(terminal, READY)
        return re.split(r"\s+", shown)

    try:
        told(terminal, "% |# ")
        os.write(terminal, (start + "\n").encode())
        told(terminal, READY)
        yield offered
    finally:
        os.kill(child, 9)
        os.waitpid(child, 0)
        os.close(terminal)


READY = r"READY[%#]"


def told(terminal, until):
    """What comes until a prompt stands, or until nothing has come for a while."""
    text, last = "", time.monotonic()
    while time.monotonic() - last < (10 if until else 1.5):
        if select.select([terminal], [], [], 0.1)[0]:
            text += os.read(terminal, 65536).decode(errors="replace")
            last = time.monotonic()
        if until and re.search(until, text):
            return text
    return re.sub(r"\x1b\[[0-9;?]*[A-Za-z]|\r", " ", text)


def quoted(word):
    return "'" + word.replace("'", "'\\''") + "'"


def main(build, source):
    failed = 0
    with tempfile.TemporaryDirectory() as name:
        folder = pathlib.Path(name)
        (folder / "arch.toml").write_text(JOB, encoding="utf-8")
        for other in ("arch.pdf", "notes.txt"):
            (folder / other).write_text("", encoding="utf-8")
        (folder / "pictures").mkdir()
        env = {**os.environ, "PATH": f"{build}:{os.environ['PATH']}", "HOME": name, "LC_ALL": "C.UTF-8"}
        for shell in (bash, zsh, fish):
            if shutil.which(shell.__name__) is None:
                print(f"{shell.__name__} is not there: not driven")
                continue
            session = shell(source, folder, env)
            ask = next(session)
            for line, wanted, unwanted in CASES:
                offered = [word.rstrip("/") for word in ask(line)]
                missing = [word for word in wanted if word not in offered]
                wrong = [word for word in unwanted if word in offered]
                if missing or wrong:
                    failed += 1
                    print(f"{shell.__name__}: {line}: missing {missing}, wrong {wrong}, of {offered[:40]}")
            session.close()
            print(f"{shell.__name__}: {len(CASES)} lines")
    return 1 if failed else 0


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
