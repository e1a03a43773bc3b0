#!/usr/bin/env python3
"""The schemas that the program writes, judged by a validator that is not ours (python3-jsonschema): every sample and
every good job of the tests is valid, and of the bad ones those are refused whose fault a schema can see.

    schema.py PROGRAM SOURCE-FOLDER
"""
import datetime
import json
import pathlib
import re
import subprocess
import sys
import tomllib

import jsonschema

# Faults of which the message says that a schema can see them: keys, tables, kinds of values, words.
VISIBLE = re.compile(r"unknown (key|\w+ \")|(table|\w+) (\[\S+\] )?is missing from|the table \S+ is missing|must be a "
                     r"|must be an |must be true|must be words|write \[\[|must be one|must be two|in square brackets")

# Of these only the readers know better, for the reason beside them.
FIGURES = "how its figures go together"
KEYS = "which keys go together, where no word of the file says so"
SHOP = "the shop file may have it"
SIGNS = "what a character, a day or a unit is"
READERS_ALONE = {
    SHOP: ["missing_kerf", "missing_saw_table"],
    KEYS: ["coupon_depth_and_spacing_left_out", "coupon_depth_of_solve", "coupon_spacing_of_kerfs",
           "material_modulus_alone", "material_peel_energy_alone", "missing_wall_angle", "missing_wall_rise",
           "ordinates_missing", "pointed_neither", "saw_trial_at_fence_alone", "saw_trial_depth_alone",
           "saw_trial_alone"],
    SIGNS: ["head_date_not_in_calendar", "head_title_turns_writing", "head_title_two_lines",
            "head_title_with_c1_control", "head_title_with_separator", "length_as_date", "material_softness_nan",
            "shape_angle_exponent", "shape_angle_nan", "shape_angle_unit"],
    FIGURES: ["media_custom_too_small", "media_is_a_roll", "strip_media_roll_too_wide"],
}


def plain(value):
    """As JSON has it: a day of TOML is written as text."""
    if isinstance(value, dict):
        return {key: plain(inner) for key, inner in value.items()}
    if isinstance(value, list):
        return [plain(inner) for inner in value]
    if isinstance(value, (datetime.date, datetime.time)):
        return value.isoformat()
    return value


def read(file):
    """The file as JSON; None where it is no TOML, which no schema judges."""
    try:
        return plain(tomllib.loads(file.read_text(encoding="utf-8")))
    except (tomllib.TOMLDecodeError, UnicodeDecodeError, RecursionError):
        return None


def validator(program, kind):
    schema = json.loads(subprocess.run([program, "schema", kind], check=True, capture_output=True).stdout)
    jsonschema.Draft202012Validator.check_schema(schema)
    return jsonschema.Draft202012Validator(schema)


def errors(file):
    return [line for line in file.read_text(encoding="utf-8").splitlines() if re.match(r"#! \d+:\d+: error: ", line)]


def checked(program, file):
    """The readers find nothing wrong."""
    return subprocess.run([program, "check", file], capture_output=True, check=False).returncode in (0, 3)


def judge_good(judge, files):
    wrong = 0
    for file in files:
        for error in judge.iter_errors(read(file)):
            print(f"{file}: a good file is refused: {error.json_path}: {error.message}")
            wrong += 1
    print(f"{len(files)} good files")
    return wrong


def judge_bad(judge, files, name):
    wrong, counts = 0, {"refused": 0, "no TOML": 0, "seen by the readers alone": 0}
    for file in files:
        told, job = errors(file), read(file)
        if job is None:
            counts["no TOML"] += 1
        elif not judge.is_valid(job):
            counts["refused"] += 1
            if any(file.stem in files for files in READERS_ALONE.values()):
                print(f"{file}: is refused: take it out of the list of those that are not")
                wrong += 1
        else:
            counts["seen by the readers alone"] += 1
            if not any(file.stem in files for files in READERS_ALONE.values()) and any(VISIBLE.search(line) for line in told):
                print(f"{file}: a schema should see this: {told}")
                wrong += 1
    print(f"{name}: " + ", ".join(f"{number} {what}" for what, number in counts.items()))
    return wrong, counts["refused"]


def main(program, source):
    source = pathlib.Path(source)
    samples, cases = source / "out-samples", source / "tests/diagnostics"
    job, shop = validator(program, "job"), validator(program, "shop")
    all_cases = sorted((cases / "cases").glob("*.toml"))
    all_shops = sorted((cases / "shop_cases").glob("*.toml"))
    good = [*samples.glob("*/job.toml"), samples / "all-shapes.toml", samples / "every-key.toml",
            source / "tests/unit/job/good.toml", *(source / "tests/golden").rglob("*.toml"), *(file for file in all_cases if not errors(file))]
    good_shops = [samples / "every-key-shop.toml", *samples.glob("*/shop.toml"),
                  *(file for file in all_shops if not errors(file))]
    good += [file for file in sorted((source / "tests/fuzz/corpus").glob("*.toml")) if checked(program, file)]
    wrong = judge_good(job, good) + judge_good(shop, good_shops)
    job_wrong, refused = judge_bad(job, [file for file in all_cases if errors(file)], "bad job files")
    shop_wrong, shops_refused = judge_bad(shop, [file for file in all_shops if errors(file)], "bad shop files")
    wrong += job_wrong + shop_wrong
    # As many as when this was written: a schema that says less is told.
    if refused < LEAST_REFUSED or shops_refused < LEAST_SHOPS_REFUSED or len(good) < 15:
        print("fewer files are refused, or looked at, than once were")
        wrong += 1
    return 1 if wrong else 0


LEAST_REFUSED, LEAST_SHOPS_REFUSED = 176, 17

if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:]))
