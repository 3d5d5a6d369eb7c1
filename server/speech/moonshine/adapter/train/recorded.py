"""Clips folders from the shared speech data: what may train, what only reports, and the noises of each half.

Usage: recorded.py SPEECH_FOLDER OUT_FOLDER. Makes `even` (phrases with even ids in two voices, which train), `even-alpha` (never trained; to choose between trainings), `odd-VOICE` (report only), `codes-tune`
and `codes-report` (three people's digits, takes 0 to 4 and 5 to 9, joined to tooth codes; neither trains), `noise-tune`, `noise-report`.
"""
import sys
from pathlib import Path

import numpy as np
import soundfile

import clips
from text import DIGITS, sentence

PEOPLE = 30  # codes of each person


def sound(path: Path) -> np.ndarray:
    samples, rate = soundfile.read(path, dtype="float32", always_2d=True)
    return clips.resampled(samples.mean(1), rate)


def phrases(folder: Path, out: Path) -> None:
    rows = [line.split("\t") for line in (folder / "phrases.tsv").read_text().splitlines()]
    for voice in ("kumo", "gongitsune", "alpha"):
        odd = ((voice, voice, sound(folder / f"{name}_{voice}.opus"), sentence(words)) for name, words in rows if int(name[1:]) % 2 == 1)
        print(f"odd-{voice}", clips.write(out / f"odd-{voice}", odd))
    even = (("even", voice, sound(folder / f"{name}_{voice}.opus"), sentence(words)) for name, words in rows if int(name[1:]) % 2 == 0 for voice in ("kumo", "gongitsune"))
    print("even", clips.write(out / "even", even))
    chosen = (("even", "alpha", sound(folder / f"{name}_alpha.opus"), sentence(words)) for name, words in rows if int(name[1:]) % 2 == 0)
    print("even-alpha", clips.write(out / "even-alpha", chosen))


def codes(folder: Path, takes: range, seed: int):
    random = np.random.default_rng(seed)
    people = sorted({path.name.split("_")[1] for path in folder.glob("*.wav")})
    for person in people:
        for _ in range(PEOPLE):
            digits = [random.integers(1, 5), 0, random.integers(1, 10)]
            parts = [clips.trimmed(sound(folder / f"{digit}_{person}_{random.choice(takes)}.wav")) for digit in digits]
            yield "codes", person, clips.joined(parts, random), sentence(" ".join(DIGITS[digit] for digit in digits))


def noise(speech: Path, out: Path) -> None:
    files = sorted((speech / "noise").glob("*.ogg"))
    rooms = sorted((speech / "rooms").glob("*.wav"))
    for name, chosen in (("noise-tune", [*files[0::2], *rooms[:2]]), ("noise-report", [*files[1::2], *rooms[2:]])):
        (out / name).mkdir(parents=True, exist_ok=True)
        for i, path in enumerate(chosen):
            samples = sound(path)
            if np.abs(samples).max() > 0:
                kind = "room" if path.suffix == ".wav" else "noise"
                (out / name / f"{kind}{i:02}.i16").write_bytes((samples / np.abs(samples).max() * 32767).astype("<i2").tobytes())


def main(speech: str, out: str) -> None:
    source, target = Path(speech), Path(out)
    phrases(source / "phrases", target)
    for name, takes, seed in (("codes-tune", range(5), 1), ("codes-report", range(5, 10), 2)):
        print(name, clips.write(target / name, codes(source / "digits", takes, seed)))
    noise(source, target)


if __name__ == "__main__":
    main(*sys.argv[1:])
