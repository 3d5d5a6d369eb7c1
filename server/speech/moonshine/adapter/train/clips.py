"""A folder of clips: `sound.i16` (16 kHz mono, one after another) and `clips.tsv` (kind, voice, samples, written)."""
from pathlib import Path

import numpy as np

RATE = 16000


def resampled(sound: np.ndarray, rate: int) -> np.ndarray:
    """To 16 kHz through the spectrum: exact band limit, for short clips."""
    if rate == RATE:
        return sound.astype(np.float32)
    length = round(len(sound) * RATE / rate)
    spectrum = np.fft.rfft(sound)
    bins = length // 2 + 1
    kept = np.zeros(bins, complex)
    kept[:min(bins, len(spectrum))] = spectrum[:bins]
    return (np.fft.irfft(kept, length) * (length / len(sound))).astype(np.float32)


def trimmed(sound: np.ndarray, least: float = 0.01, pad: int = 400) -> np.ndarray:
    loud = np.flatnonzero(np.abs(sound) > least * max(1e-6, float(np.abs(sound).max())))
    return sound if len(loud) == 0 else sound[max(0, loud[0] - pad):loud[-1] + pad]


def joined(words: list[np.ndarray], random: np.random.Generator) -> np.ndarray:
    """Words said one by one, with short gaps of 0.03 to 0.25 s."""
    parts = []
    for word in words:
        parts += [word, np.zeros(int(random.uniform(0.03, 0.25) * RATE), np.float32)]
    return np.concatenate(parts[:-1])


def write(folder: Path, clips) -> int:
    """`clips` yields (kind, voice, sound, written); sound is float32, made equally loud here. How many were written. The table is there once all is."""
    folder.mkdir(parents=True, exist_ok=True)
    count = 0
    with (folder / "sound.i16").open("wb") as sounds, (folder / "clips.part").open("w", encoding="utf-8") as table:
        for kind, voice, sound, written in clips:
            if len(sound) < RATE // 5 or len(sound) > 12 * RATE:
                continue
            sound = sound * (0.08 / (np.sqrt(np.mean(sound ** 2)) + 1e-9))
            sounds.write((np.clip(sound, -1, 1) * 32767).astype("<i2").tobytes())
            table.write(f"{kind}\t{voice}\t{len(sound)}\t{written}\n")
            count += 1
    (folder / "clips.part").rename(folder / "clips.tsv")
    return count


def read(folder: Path) -> tuple[np.ndarray, list[tuple[str, str, int, int, str]]]:
    """The sound as one int16 array, and (kind, voice, start, samples, written) of each clip."""
    rows, at = [], 0
    for line in (folder / "clips.tsv").read_text(encoding="utf-8").splitlines():
        kind, voice, samples, written = line.split("\t")
        rows.append((kind, voice, at, int(samples), written))
        at += int(samples)
    return np.fromfile(folder / "sound.i16", "<i2"), rows
