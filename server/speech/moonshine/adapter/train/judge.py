"""Measures the recogniser in PyTorch (float weights, greedy) with and without an adapter: a quick look on the training machine.

Usage: judge.py WEIGHTS_FOLDER TOKENS.json NOISE_FOLDER ADAPTER.bin|none CLIPS_FOLDER...
For each folder: word error rate and clips word for word, clean and, with noise*.i16 in NOISE_FOLDER, at 10 dB. The product's own figures come from `npm run bench:hearing`.
"""
import json
import re
import sys
from pathlib import Path

import numpy as np
import torch

import adapters
import clips
import model as moonshine
from train import END, START, noises


@torch.no_grad()
def greedy(net, sound: torch.Tensor) -> list[list[int]]:
    heard = net.model.encoder(sound).last_hidden_state
    said = torch.full((len(sound), 1), START, device=sound.device)
    for _ in range(int(sound.shape[1] / clips.RATE * 6.5) + 12):
        states = net.model.decoder(input_ids=said, encoder_hidden_states=heard, use_cache=False).last_hidden_state
        best = net.proj_out(states[:, -1]).argmax(-1)
        best = torch.where((said == END).any(1), END, best)
        said = torch.cat([said, best[:, None]], 1)
        if (best == END).all():
            break
    return [[t for t in row[1:] if t != END] for row in said.tolist()]


def words(text: str) -> list[str]:
    return re.sub(r"[^a-z0-9' ]", " ", text.lower().replace("-", " ")).split()


def distance(a: list[str], b: list[str]) -> int:
    row = list(range(len(b) + 1))
    for i, x in enumerate(a, 1):
        above, row[0] = row[0], i
        for j, y in enumerate(b, 1):
            above, row[j] = row[j], min(row[j] + 1, row[j - 1] + 1, above + (x != y))
    return row[-1]


def measure(net, pieces: list[str], folder: Path, noise: list[np.ndarray], device: str, show: int) -> str:
    sound, rows = clips.read(folder)
    order = sorted(range(len(rows)), key=lambda i: rows[i][3])
    errors = total = whole = 0
    wrong = []
    random = np.random.default_rng(7)
    for at in range(0, len(order), 48):
        own = [rows[i] for i in order[at:at + 48]]
        longest = int(np.ceil((max(r[3] for r in own) / clips.RATE + 0.6) * 4)) * clips.RATE // 4
        batch = 1e-4 * random.standard_normal((len(own), longest)).astype(np.float32)
        for line, (_, _, start, samples, _) in zip(batch, own):
            speech = sound[start:start + samples].astype(np.float32) / 32768
            line[int(0.35 * clips.RATE):int(0.35 * clips.RATE) + samples] += speech
            if noise:
                behind = np.resize(noise[random.integers(len(noise))], longest)
                line += behind * np.sqrt(np.mean(speech ** 2) / 10 / (np.mean(behind ** 2) + 1e-12))
        for row, ids in zip(own, greedy(net, torch.from_numpy(batch).to(device))):
            text = "".join(pieces[i] if i < len(pieces) else "" for i in ids).replace("\u2581", " ")
            truth, got = words(row[4]), words(text)
            missed = distance(truth, got)
            errors, total, whole = errors + missed, total + len(truth), whole + (missed == 0)
            if missed:
                wrong.append(f"    {row[4]} | {text}")
    return "\n".join([f"{folder.name} {'10 dB' if noise else 'clean'}: WER {errors / total:.3f}, word for word {whole} of {len(rows)}", *wrong[:show]])


def main(weights: str, tokens: str, noise: str, adapter: str, *folders: str) -> None:
    device = "cuda" if torch.cuda.is_available() else "cpu"
    pieces = json.loads(Path(tokens).read_text())["pieces"]
    net = moonshine.load(Path(weights))
    if adapter != "none":
        adapters.put(Path(adapter), moonshine.adapt(net))
    net = net.to(device)
    for folder in folders:
        for behind in ([], noises(Path(noise))[0]):
            print(measure(net, pieces, Path(folder), behind, device, 6 if adapter != "none" else 0), flush=True)


if __name__ == "__main__":
    main(*sys.argv[1:])
