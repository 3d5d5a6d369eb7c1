"""Renders lines in natural-sounding voices: speakers between and around those of Kokoro, in British, Scottish and American sounds, their pitch
and vocal tract stretched or shrunk. Some voices are kept out, for reporting.

Usage: natural.py LINES.tsv OUT_FOLDER COUNT [WORKERS]. What people wrote comes first; a third is plain English and talk; past the last line they begin again, in other voices.
Each 2,000 clips are a folder of their own (OUT_FOLDER/0, /1, ...), so that they can train while the rest is rendered. With a GPU each worker has its share of one.
fixtures/make/README.md says what to install; the folder of its English voices is given by VOICES in the environment.
"""
import os
import sys
from itertools import cycle, islice
from multiprocessing import get_context
from pathlib import Path

import numpy as np

import clips

sys.path.insert(0, str(Path(__file__).resolve().parents[5] / "fixtures/make"))
import voice as voices  # noqa: E402

FOLDER_OF_VOICES = Path(os.environ["VOICES"])
# Never heard in training, nor any mixture of them: an American and a British woman and man, and the voice of the bench.
REPORTING = {"af_nova", "am_eric", "bf_lily", "bm_daniel", "jf_alpha"}
NATIVE = {"a": 3, "b": 4}  # native speakers of English are drawn more often than those of other tongues
ACCENTS = ["en-gb"] * 9 + ["en-us"] * 6 + ["en-gb-scotland", "en-gb-x-rp", "en-gb-x-gbclan"]
BY_HAND = ("even", "gold")
FOLDER = 2000
SEED = int(os.environ.get("SEED", "7000000"))  # of the first clip; another draws other speakers
_speaker, _names = None, []


def _open(count) -> None:
    global _speaker, _names
    with count.get_lock():
        count.value += 1
        own = count.value
    gpus = int(os.environ.get("GPUS", "0"))
    if gpus:
        import torch
        torch.set_num_threads(1)
    _names = voices_heard()
    _speaker = voices.Voice(threads=1, device=f"cuda:{own % gpus}" if gpus else None, more=FOLDER_OF_VOICES)


def voices_heard() -> list[str]:
    """The voices that train, each as often as it is to be drawn."""
    names = sorted({path.stem for path in FOLDER_OF_VOICES.glob("*.bin")} - REPORTING - set(voices.KEPT_FOR_CHECKING))
    return [name for name in names for _ in range(NATIVE.get(name[0], 1))]


def speaker(random: np.random.Generator) -> tuple[str, tuple[str, np.ndarray]]:
    """One voice and how far each number of its style lies towards another (256 shares); half are near the one."""
    name, other = (str(one) for one in random.choice(_names, 2))
    middle, spread = (random.uniform(-0.1, 0.2), 0.2) if random.random() < 0.5 else (random.uniform(0, 1), random.uniform(0.2, 1.0))
    return name, (other, random.normal(middle, spread, 256).astype(np.float32))


def render(task):
    seed, kind, said, written = task
    random = np.random.default_rng(seed)
    name, mix = speaker(random)
    accent = str(random.choice(ACCENTS))
    stretch = float(random.uniform(0.88, 1.15)) if random.random() < 0.6 else 1.0  # above 1: another, smaller speaker
    speed = float(random.uniform(0.85, 1.25)) / stretch
    parts = said.split() if kind == "joined" else [said]
    sounds = [clips.trimmed(clips.resampled(_speaker.say(part, name, speed, mix, accent), round(voices.RATE * stretch))) for part in parts]
    return kind, "mixture", clips.joined(sounds, random) if kind == "joined" else sounds[0], written


def in_order(rows: list[list[str]]):
    """Without end: two lines of the trade and one of plain English or talk, those that people wrote first."""
    plain = cycle([row for row in rows if row[0] in ("plain", "talk")])
    trade = cycle(sorted((row for row in rows if row[0] not in ("plain", "talk")), key=lambda row: row[0] not in BY_HAND))  # the rest are in a drawn order
    while True:
        yield from (next(trade), next(trade), next(plain))


def main(lines: str, out: str, count: str, workers: str = "2") -> None:
    rows = [line.split("\t") for line in Path(lines).read_text(encoding="utf-8").splitlines()]
    tasks = ((SEED + i, *row) for i, row in enumerate(islice(in_order(rows), int(count))))
    voices.core.model_path()  # puts the model together, once, before many workers would at a time
    context = get_context("spawn")  # a forked worker has no GPU
    with context.Pool(int(workers), _open, (context.Value("i", 0),)) as pool:
        made = pool.imap(render, tasks, chunksize=4)
        for part in range((int(count) + FOLDER - 1) // FOLDER):
            print(clips.write(Path(out) / str(part), islice(made, FOLDER)), "clips in", part, flush=True)


if __name__ == "__main__":
    main(*sys.argv[1:])
