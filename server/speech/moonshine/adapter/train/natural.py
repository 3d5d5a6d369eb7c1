"""Renders lines in natural-sounding voices: Kokoro's jm_kumo and jf_gongitsune, mixtures of the two and a little beyond either, in British,
Scottish and American sounds, their pitch and vocal tract stretched or shrunk. jf_alpha is kept out, for reporting.

Usage: natural.py LINES.tsv OUT_FOLDER COUNT [WORKERS]. Lines of plain English and talk make a third; of the rest those written by hand come first.
fixtures/make/README.md says what to install.
"""
import sys
from multiprocessing import Pool
from pathlib import Path

import numpy as np

import clips

sys.path.insert(0, str(Path(__file__).resolve().parents[5] / "fixtures/make"))
import voice as voices  # noqa: E402

VOICES = ["jm_kumo", "jf_gongitsune"]
ACCENTS = ["en-gb"] * 9 + ["en-us"] * 6 + ["en-gb-scotland", "en-gb-x-rp", "en-gb-x-gbclan"]
BY_HAND = ("even", "gold")
_speaker = None


def _open() -> None:
    global _speaker
    _speaker = voices.Voice(threads=1)


def render(task):
    seed, kind, said, written = task
    random = np.random.default_rng(seed)
    name, other = random.permutation(VOICES)
    mix = (other, float(random.uniform(-0.25, 0.8))) if random.random() < 0.7 else None
    accent = str(random.choice(ACCENTS))
    stretch = float(random.uniform(0.88, 1.15)) if random.random() < 0.6 else 1.0  # above 1: another, smaller speaker
    speed = float(random.uniform(0.85, 1.25)) / stretch
    parts = said.split() if kind == "joined" else [said]
    sounds = [clips.trimmed(clips.resampled(_speaker.say(part, name, speed, mix, accent), round(voices.RATE * stretch))) for part in parts]
    return kind, name if mix is None else "mixture", clips.joined(sounds, random) if kind == "joined" else sounds[0], written


def main(lines: str, out: str, count: str, workers: str = "2") -> None:
    rows = [line.split("\t") for line in Path(lines).read_text(encoding="utf-8").splitlines()]
    rows.sort(key=lambda row: row[0] not in BY_HAND)  # the rest are in a drawn order
    plain = [row for row in rows if row[0] in ("plain", "talk")]
    trade = [row for row in rows if row[0] not in ("plain", "talk")]
    third = int(count) // 3
    chosen = trade[:int(count) - third] + plain[:third]
    with Pool(int(workers), _open) as pool:
        tasks = [(7_000_000 + i, *row) for i, row in enumerate(chosen)]
        print(clips.write(Path(out), pool.imap(render, tasks, chunksize=4)), "clips")


if __name__ == "__main__":
    main(*sys.argv[1:])
