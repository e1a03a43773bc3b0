#!/usr/bin/env python3
"""Manual pages from the README files of the rooms, so that a key and a command are described once.

    make_man.py PROGRAM SOURCE-FOLDER OUT-FOLDER

writes kerfpacket.1, kerfpacket-job.5 and kerfpacket-shop.5 there, in the macros of man(7). The options of each command
are those that the program itself tells.
"""
import email.utils
import pathlib
import re
import subprocess
import sys

SHOP_SECTIONS = ("A shop file", "A printer that is measured")
SEE = {"kerfpacket": "(1)", "kerfpacket-job": "(5)", "kerfpacket-shop": "(5)"}


def inline(text):
    """A line of Markdown as roff: code and stress in bold and italics, a link as its words."""
    text = re.sub(r"!?\[([^\]]*)\]\([^)]*\)", r"\1", text)
    parts = re.split(r"(`[^`]+`|\*[^* ][^*]*\*)", text)
    out = ""
    for part in parts:
        if part.startswith("`") and len(part) > 1:
            out += r"\fB" + escaped(part[1:-1]) + r"\fR"
        elif part.startswith("*") and len(part) > 1:
            out += r"\fI" + escaped(part[1:-1]) + r"\fR"
        else:
            out += escaped(part)
    return out


def escaped(text):
    """No character of the text is one of roff's own; hyphens stay hyphens, so that an option can be copied."""
    return text.replace("\\", r"\e").replace("-", r"\-").replace("'", r"\(aq").replace("`", r"\`").replace('"', r"\(dq")


def started(line):
    """A text line of roff must not begin with a control character."""
    return r"\&" + line if line.startswith((".", "'")) else line


def cells(row):
    return [cell.strip() for cell in row.strip().strip("|").split("|")]


def table(rows):
    """A list of its first column; what stands in a third and later column is named by its head."""
    heads = cells(rows[0])
    out = []
    for row in rows[2:]:
        first, *others = cells(row)
        named = 2 if heads[2:] in ([], ["left out"]) else 1
        out += [".TP", started(inline(first))]
        lines = [inline(cell if column < named else f"{heads[column]}: {cell}")
                 for column, cell in enumerate(others, 1) if cell]
        out += "\n.br\n".join(started(line) for line in lines).split("\n") if lines else [r"\&"]
    return out + [".PP"]


def verbatim(lines):
    return [".PP", ".RS 4", ".nf", *(started(escaped(line)) for line in lines), ".fi", ".RE", ".PP"]


def blocks(text):
    """The file cut into headings, tables, examples, list items and paragraphs."""
    block, kind, fenced = [], None, False
    for line in [*text.split("\n"), ""]:
        if line.startswith("```"):
            if fenced:
                yield "example", block
                block, kind = [], None
            elif block:
                yield kind, block
                block, kind = [], None
            fenced = not fenced
            continue
        now = ("example" if fenced or (line.startswith("    ") and kind in (None, "example")) else
               "heading" if line.startswith("#") else
               "table" if line.startswith("|") else
               "item" if re.match(r"(- |\d+\. )", line) else
               None if not line.strip() else
               kind if kind in ("item", "words") else "words")
        if not fenced and (now != kind or now in ("item", "heading") and not line.startswith("  ")):
            if block:
                yield kind, block
            block = []
        if now is not None:
            block.append(line)
        kind = now
    if block:
        yield kind, block


def body(text, wanted):
    """The sections whose heading is wanted, as roff."""
    out, taken = [], False
    for kind, lines in blocks(text):
        if kind == "heading":
            marks, heading = lines[0].split(" ", 1)
            if len(marks) <= 2:
                taken = wanted(heading)
            if taken and len(marks) > 1:
                out.append((".SH " if len(marks) == 2 else ".SS ") + (escaped(heading.upper()) if len(marks) == 2
                                                                      else escaped(heading)))
        elif not taken or (kind == "words" and lines == ["Contents:"]) or (kind == "item" and "](#" in lines[0]
                                                                           and lines[0].endswith(")")):
            continue
        elif kind == "table":
            out += table(lines)
        elif kind == "example":
            out += verbatim([re.sub("^    ", "", line) for line in lines])
        elif kind == "item":
            mark, first = lines[0].split(" ", 1)
            out += [".IP " + (r"\(bu 2" if mark == "-" else escaped(mark) + " 4"), started(inline(first)),
                    *(started(inline(line.strip())) for line in lines[1:])]
        elif lines:
            out += [".PP", *(started(inline(line)) for line in lines)]
    return tidy(out)


def tidy(out):
    """No paragraph is begun where none follows: neither before another macro of the kind, nor behind a heading."""
    kept = []
    for line in out:
        if kept and kept[-1] == ".PP" and line.startswith((".PP", ".SH", ".SS", ".TP", ".IP", ".RS")):
            if line.startswith((".SH", ".SS", ".PP", ".TP", ".IP")):
                kept.pop()
        if line == ".PP" and kept and kept[-1].startswith((".SH", ".SS")):
            continue
        kept.append(line)
    while kept and kept[-1] == ".PP":
        kept.pop()
    return kept


def page(name, day, version, what, synopsis, parts):
    section = SEE[name][1]
    others = ",\n".join(rf".BR {escaped(other)} {number}" for other, number in SEE.items() if other != name)
    others = others.replace(" (1),", " (1),").replace(",\n", " ,\n")
    lines = [f'.TH {escaped(name.upper())} {section} "{day}" "kerfpacket {version}" "kerfpacket"',
             ".SH NAME", rf"{escaped(name)} \- {escaped(what)}", ".SH SYNOPSIS", synopsis, *parts, ".SH SEE ALSO", others]
    return "\n".join(tidy(lines)) + "\n"


def released(changelog):
    """The day of the version, from its entry in the list of changes."""
    line = next(line for line in changelog.split("\n") if line.startswith(" -- "))
    return email.utils.parsedate_to_datetime(line.split("  ")[1]).date().isoformat()


def told(program, *words):
    return subprocess.run([program, *words], check=True, capture_output=True, text=True).stdout


def options(program, help_text):
    """What the program tells of each of its commands."""
    out = [".SH OPTIONS OF EACH COMMAND"]
    below = help_text[help_text.index("Subcommands:"):].split("\n\n")[0].split("\n")[1:]
    for line in below:
        if match := re.match(r"  ([a-z-]+)", line):
            out += [".SS kerfpacket " + escaped(match[1])]
            out += verbatim(told(program, match[1], "--help").rstrip().split("\n"))
    return tidy(out)


def main(program, source, out):
    source, out = pathlib.Path(source), pathlib.Path(out)
    out.mkdir(parents=True, exist_ok=True)
    version = told(program, "--version").split()[-1]
    day = released((source / "src/install/changelog").read_text(encoding="utf-8"))
    commands = (source / "src/cli/README.md").read_text(encoding="utf-8")
    job = (source / "src/job/README.md").read_text(encoding="utf-8")
    shop = lambda heading: heading in SHOP_SECTIONS
    (out / "kerfpacket.1").write_text(page(
        "kerfpacket", day, version, "job packets for boards that are bent by kerfing",
        r"\fBkerfpacket\fR \fIcommand\fR [\fIoption\fR]... [\fIfile\fR]...",
        [".SH DESCRIPTION", "From a job file, which holds field measurements, board, saw and paper,",
         "kerfpacket computes the bend and writes the job packet as PDF.",
         *body(commands, lambda heading: True), *options(program, told(program, "--help"))]), encoding="utf-8")
    (out / "kerfpacket-job.5").write_text(page(
        "kerfpacket-job", day, version, "the job file of kerfpacket", r"\fIname\fB.toml\fR",
        [".SH DESCRIPTION", *body(job, lambda heading: not shop(heading))]), encoding="utf-8")
    (out / "kerfpacket-shop.5").write_text(page(
        "kerfpacket-shop", day, version, "the shop file of kerfpacket, and its printers", r"\fBshop.toml\fR",
        [".SH DESCRIPTION", "What a shop keeps for all its jobs, with the keys of",
         r".BR kerfpacket\-job (5).", *body(job, shop)]), encoding="utf-8")


if __name__ == "__main__":
    main(*sys.argv[1:])
