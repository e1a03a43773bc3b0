"""Makes up jobs by a seed, has the program print each, reads the packets, builds what they say and measures the gaps.

    apprentice.py N [SEED] [--keep FOLDER] [--awaiting KIND...]
                                             a summary of N made-up jobs; exit status 1 where there is a finding of a
                                             kind that is not awaited, and where an awaited kind is no longer found
    apprentice.py --job FILE...              the findings of packets of these jobs

The program is $KERFPACKET_PROGRAM; $APPRENTICE_PROCESSES packets are read at a time (2)."""
import collections
import multiprocessing
import os
import pathlib
import subprocess
import sys
import tempfile
import traceback

import jobs
import judge
import printer
import refusals

PROGRAM = os.environ.get("KERFPACKET_PROGRAM", "kerfpacket")
PROCESSES = int(os.environ.get("APPRENTICE_PROCESSES", "2"))


def build(of, file, *options):
    """Has the packet made and printed."""
    said = subprocess.run([PROGRAM, "build", str(file), *options], capture_output=True, text=True, env=of.settings)
    of.through(options[options.index("--out") + 1] if "--out" in options else file.with_suffix(".pdf"))
    return said


def one(text, name, reprint):
    """(findings, gaps, counts, refusal) of one job. A packet that holds nothing to cut is a refusal too."""
    with tempfile.TemporaryDirectory() as folder:
        file = pathlib.Path(folder, "job.toml")
        file.write_text(text)
        of = printer.Printer(PROGRAM, text, folder)
        said = build(of, file, "--force")
        if said.returncode == 2 and f"{file}:" in said.stderr:  # the words name a place in the job
            found = judge.Findings()
            refusals.judged(jobs.read(text), said.stderr, found)
            return found.found, {}, found.counts, said.stderr.strip()
        if said.returncode not in (0, 3):
            return [("crash", f"status {said.returncode}: {said.stderr[-200:]}")], {}, {}, None
        try:
            job = jobs.read(text)
            found = judge.judge(job, file.with_suffix(".pdf"))
            if reprint:
                judge.judge_reprint(found, job, file.with_suffix(".pdf"), lambda *o: build(of, file, *o), folder)
        except Exception:  # a sheet that the reader cannot read is a finding: of the sheet or of the reader
            return [("unreadable", traceback.format_exc(limit=-3))], {}, {}, None
        cut = found.counts.get("ticks read") or found.found
        return found.found, found.gaps, found.counts, None if cut else said.stderr.strip() or "no message"


def made_up(seed):
    return one(jobs.Maker(seed).text(), f"seed {seed}", seed % 5 == 0)


def run(seeds, keep):
    kinds, gaps, counts = collections.defaultdict(list), {}, collections.Counter()
    refused, worst = collections.defaultdict(list), []
    with multiprocessing.Pool(PROCESSES, maxtasksperchild=1) as pool:  # PyMuPDF wants a fresh process a packet
        for seed, (found, widths, numbers, refusal) in zip(seeds, pool.imap(made_up, seeds)):
            counts.update(numbers)
            for kind, words in found:
                kinds[kind].append((seed, words))
            if refusal is not None:
                first = refusal.splitlines()[0].split("error: ")[-1]
                refused[" ".join(w for w in first.split() if not any(c.isdigit() for c in w))].append((seed, first))
                continue
            worst.append(max(widths.values(), default=0))
            for kind, inches in widths.items():
                if inches > gaps.get(kind, (-1, 0))[0]:
                    gaps[kind] = (inches, seed)
            if found and keep:
                pathlib.Path(keep, f"seed-{seed}.toml").write_text(jobs.Maker(seed).text())
    return kinds, gaps, counts, refused, worst


def report(seeds, kinds, gaps, counts, refused, worst):
    print(f"{len(seeds)} jobs, seeds {seeds[0]} to {seeds[-1]}: {len(worst)} printed, "
          f"{len(seeds) - len(worst)} refused")
    print(f"worst gap of a job within 1/32 in: {sum(w <= 1 / 32 for w in worst)}, within 1/16 in: "
          f"{sum(w <= 1 / 16 for w in worst)} of {len(worst)}")
    for kind, n in sorted(counts.items()):
        print(f"  {n:8d} {kind}")
    for kind, (inches, seed) in sorted(gaps.items(), key=lambda g: -g[1][0]):
        print(f"  {inches:8.4f} in at worst: {kind} (seed {seed})")
    for kind, list_of in sorted(refused.items(), key=lambda g: -len(g[1])):
        print(f"  refused {len(list_of):4d}: {list_of[0][1]} (seed {list_of[0][0]})")
    for kind, list_of in sorted(kinds.items(), key=lambda g: -len(g[1])):
        print(f"FINDING {kind}: {len({s for s, _ in list_of})} jobs")
        for seed, words in list_of[:3]:
            print(f"    seed {seed}: {words}")


def main(arguments):
    if arguments and arguments[0] == "--job":
        status = 0
        for file in arguments[1:]:
            with multiprocessing.Pool(1) as pool:
                found, widths, _, refusal = pool.apply(one, (pathlib.Path(file).read_text(), file, False))
            print(file, refusal or {k: round(v, 4) for k, v in widths.items()})
            for kind, words in found:
                print(f"    {kind}: {words}")
            status |= bool(found)
        return status
    if arguments and arguments[0] == "--print":
        print(jobs.Maker(int(arguments[1])).text(), end="")
        return 0
    keep, awaited = None, set()
    if "--awaiting" in arguments:
        at = arguments.index("--awaiting")
        awaited = set(arguments[at + 1:])
        del arguments[at:]
    if "--keep" in arguments:
        at = arguments.index("--keep")
        keep = arguments[at + 1]
        os.makedirs(keep, exist_ok=True)
        del arguments[at:at + 2]
    number = int(arguments[0]) if arguments else 30
    first = int(arguments[1]) if len(arguments) > 1 else 1
    seeds = list(range(first, first + number))
    kinds, gaps, counts, refused, worst = run(seeds, keep)
    report(seeds, kinds, gaps, counts, refused, worst)
    if not worst or counts["ticks read"] < 20 * len(worst):
        print("too little was read to say anything")
        return 1
    for kind in sorted(awaited - set(kinds)):
        print(f"no longer found, take it out of what is awaited: {kind}")
    return 1 if set(kinds) != awaited else 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
