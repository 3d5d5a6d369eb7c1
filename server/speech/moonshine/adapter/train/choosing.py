"""Clips that choose between trainings and never report: the lines of `choose.tsv` (text.py) in voices that no training hears.

Usage: choosing.py CHOOSE.tsv OUT_FOLDER. Makes `lines-alpha`, `lines-native`, `lines-f5`, `small`, `plain-alpha` and `plain-native`; recorded.py makes
`even-alpha`. Native are an American woman and a British man in turn. It needs what natural.py and robots.py need; GPUS=1 speaks on one.
"""
import os
import sys
from pathlib import Path

import numpy as np

import clips
import robots
from natural import FOLDER_OF_VOICES, voices

ALPHA, NATIVE = ("jf_alpha", "en-us"), [("af_nova", "en-us"), ("bm_daniel", "en-gb")]
F5 = "en-gb+f5"


def main(lines: str, out: str) -> None:
    rows = [line.split("\t") for line in Path(lines).read_text(encoding="utf-8").splitlines()]
    kinds = {kind: [row for row in rows if row[0] == kind] for kind in ("line", "small", "plain")}
    speaker = voices.Voice(threads=os.cpu_count() or 1, device="cuda:0" if os.environ.get("GPUS", "0") != "0" else None, more=FOLDER_OF_VOICES)

    def said(chosen, by):
        for i, (kind, text, written) in enumerate(chosen):
            name, accent = by[i % len(by)]
            yield kind, name, clips.trimmed(clips.resampled(speaker.say(text, name, accent=accent), voices.RATE)), written

    def robotic(chosen):
        for i, (kind, text, written) in enumerate(chosen):
            yield kind, F5, robots.say(text, F5, np.random.default_rng(i)), written

    sets = {"lines-alpha": said(kinds["line"], [ALPHA]), "lines-native": said(kinds["line"], NATIVE), "lines-f5": robotic(kinds["line"][::3]),
            "small": said(kinds["small"], [*NATIVE, ALPHA]), "plain-alpha": said(kinds["plain"][:50], [ALPHA]), "plain-native": said(kinds["plain"][50:], NATIVE)}
    for name, made in sets.items():
        print(name, clips.write(Path(out) / name, made), flush=True)


if __name__ == "__main__":
    main(*sys.argv[1:])
