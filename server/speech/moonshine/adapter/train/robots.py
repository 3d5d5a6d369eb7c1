"""Renders lines in robotic voices: `flite` slt, rms, kal16 and variants of `espeak-ng`, all from Debian.

Usage: robots.py LINES.tsv OUT_FOLDER PASSES [WORKERS]. Each pass says each line in another voice; plain English and talk only in the first.
The voice `awb` of flite, and of espeak-ng `en-029` and the variant `f5`, are kept for reporting.
"""
import io
import subprocess
import sys
import wave
from multiprocessing import Pool
from pathlib import Path

import numpy as np

import clips

FLITE = ["slt", "rms", "kal16"]
ESPEAK = ["en-gb", "en-us", "en-gb-scotland", "en-gb-x-rp", "en-gb-x-gbclan", "en-gb-x-gbcwmd", "en-gb+f2", "en-us+f4", "en-us+m3",
          "en-gb+m1", "en-gb+m5", "en-gb+f1", "en-us+f3", "en-us+m7", "en-gb-scotland+f2", "en-gb-x-rp+m4", "en-gb-x-gbcwmd+f4"]
VOICES = FLITE * 3 + ESPEAK  # flite's voices are the more like people


def _wave(data: bytes) -> tuple[np.ndarray, int]:
    with wave.open(io.BytesIO(data)) as file:  # espeak-ng writes a stream whose length is not known: read to the end
        return np.frombuffer(file.readframes(file.getnframes()), "<i2").astype(np.float32) / 32768, file.getframerate()


def say(text: str, voice: str, random: np.random.Generator) -> np.ndarray:
    """Mono float32 at 16 kHz, silence trimmed; speed and pitch drawn."""
    if voice in FLITE:
        command = ["flite", "-voice", voice, "--setf", f"duration_stretch={random.uniform(0.8, 1.2):.2f}", "-t", text, "-o", "/dev/stdout"]
    else:
        command = ["espeak-ng", "--stdout", "-v", voice, "-s", str(random.integers(130, 200)), "-p", str(random.integers(20, 80)), "--", text]
    sound, rate = _wave(subprocess.run(command, capture_output=True, check=True).stdout)
    return clips.trimmed(clips.resampled(sound, rate))


def render(task: tuple[int, str, str, str, str]):
    seed, kind, said, written, voice = task
    random = np.random.default_rng(seed)
    try:
        sound = clips.joined([say(word, voice, random) for word in said.split()], random) if kind == "joined" else say(said, voice, random)
    except (subprocess.CalledProcessError, wave.Error, EOFError, ValueError) as error:
        print(f"left out a line in {voice}: {type(error).__name__}", file=sys.stderr)
        sound = np.zeros(0, np.float32)
    return kind, voice, sound, written


def tasks(lines: list[list[str]], passes: int):
    for turn in range(passes):
        order = np.random.default_rng(turn).integers(0, len(VOICES), len(lines))
        for i, (kind, said, written) in enumerate(lines):
            if turn > 0 and kind in ("plain", "talk"):
                continue
            yield turn * 1_000_000 + i, kind, said, written, VOICES[(order[i] + 5 * turn) % len(VOICES)]


def main(lines: str, out: str, passes: str = "1", workers: str = "2") -> None:
    rows = [line.split("\t") for line in Path(lines).read_text(encoding="utf-8").splitlines()]
    with Pool(int(workers)) as pool:
        print(clips.write(Path(out), pool.imap(render, tasks(rows, int(passes)), chunksize=16)), "clips")


if __name__ == "__main__":
    main(*sys.argv[1:])
