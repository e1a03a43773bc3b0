#!/usr/bin/env python3
"""The manual pages: every command, option and key stands in them, and man and mandoc have nothing to say of them.

    man.py BUILD-FOLDER SOURCE-FOLDER
"""
import json
import os
import pathlib
import re
import subprocess
import sys


def run(*words):
    env = {**os.environ, "MANWIDTH": "200", "LC_ALL": "C.UTF-8", "MAN_KEEP_FORMATTING": ""}
    return subprocess.run([str(word) for word in words], capture_output=True, text=True, check=False, env=env)


def shown(page):
    done = run("man", "--warnings", "-E", "UTF-8", "-l", "-P", "cat", page)
    assert done.returncode == 0 and not done.stderr, (page, done.stderr)
    lint = run("mandoc", "-Tlint", "-W", "warning", page)
    assert not lint.stdout, (page, lint.stdout)
    return done.stdout


def keys(schema):
    """Every key of a schema and every word that one takes, and those of the tables in it; not each size of paper."""
    yield from (word for word in schema.get("enum", []) if not re.match("(iso|na)_", word))
    for name, value in schema.get("properties", {}).items():
        yield name
        yield from keys(value)
    for inner in (schema.get("items"), *schema.get("anyOf", [])):
        if isinstance(inner, dict):
            yield from keys(inner)


def main(build, _):
    build = pathlib.Path(build)
    program, pages = build / "kerfpacket", build / "install/man"
    job, command = shown(pages / "kerfpacket-job.5"), shown(pages / "kerfpacket.1")
    shop = shown(pages / "kerfpacket-shop.5")
    for kind, page in (("job", job), ("shop", shop + job)):
        known = set(keys(json.loads(run(program, "schema", kind).stdout)))
        assert len(known) > 40, known
        missing = [key for key in known if not re.search(rf"(?<![\w]){re.escape(key)}(?![\w])", page)]
        assert not missing, (kind, missing)
    help_text = run(program, "--help").stdout
    commands = re.findall(r"^  ([a-z-]+) ", help_text.split("Subcommands:")[1].split("\n\n")[0], re.M)
    assert len(commands) > 10, commands
    for name in commands:
        options = re.findall(r"--[a-z-]+", run(program, name, "--help").stdout)
        missing = [word for word in ["kerfpacket " + name, *options] if word not in command]
        assert not missing, (name, missing)
    for head in ("NAME", "SYNOPSIS", "DESCRIPTION", "EXIT STATUS", "FILES", "SEE ALSO"):
        assert re.search(rf"^{head}$", command, re.M), head
    assert "kerfpacket-job(5)" in command and "|" not in job.replace("||", ""), "a table was not read"


if __name__ == "__main__":
    main(*sys.argv[1:])
