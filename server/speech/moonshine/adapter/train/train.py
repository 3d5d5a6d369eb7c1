"""Trains the trade adapter and writes it.

Usage: train.py WEIGHTS_FOLDER TOKENS.json NOISE_FOLDER OUT.bin STEPS SECONDS CLIPS_FOLDER[:TIMES]...
It ends after STEPS, or after SECONDS if that is sooner: the rate falls with whichever is nearer. OUT is written every minute and a half, so that
a machine that is lost takes little with it. A clips folder given with `:3` is heard three times an epoch; a folder of numbered folders counts as
all of them. Folders that are still being made when training begins join at a third or two thirds of the way, so that voices can be rendered
meanwhile. One data-centre GPU; a CPU takes hours. BATCH, PEAK and SEED by environment, and FROM: an adapter to go on from.
"""
import hashlib
import json
import math
import os
import sys
import time
from pathlib import Path

import numpy as np
import torch
import torch.nn.functional as F

import adapters
import augment
import clips
import model as moonshine

SEED = int(os.environ.get("SEED", "20260304"))
BATCH, PEAK, WARM_UP = int(os.environ.get("BATCH", "64")), float(os.environ.get("PEAK", "6e-4")), 50
SAVED_EVERY = 90  # seconds
START, END, IGNORE = 1, 2, -100


def noises(folder: Path) -> tuple[list[np.ndarray], list[np.ndarray]]:
    """Noises and room responses as float32: `noise*.i16` and `room*.i16`, 16 kHz."""
    def read(kind: str) -> list[np.ndarray]:
        return [np.fromfile(path, "<i2").astype(np.float32) / 32768 for path in sorted(folder.glob(f"{kind}*.i16"))]
    return read("noise"), [room[int(np.abs(room).argmax()):] / np.abs(room).max() for room in read("room")]


def _made(places: list[str]) -> list[tuple[Path, int]]:
    """The clips folders at these places, as far as they are made, and how often each is heard."""
    found = []
    for folder, _, times in (place.partition(":") for place in places):
        own = [one.parent for one in sorted([*Path(folder).glob("clips.tsv"), *Path(folder).glob("*/clips.tsv")])]
        if not own:
            print(f"{folder} is not made yet", flush=True)
        found += [(one, int(times or 1)) for one in own]
    return found


class Data:
    """All clips end to end, and batches of equal length drawn from them, epoch after epoch."""

    def __init__(self, folders: list[tuple[Path, int]], ids: dict[str, list[int]], noise: Path, device: str):
        sounds, rows, shift = [], [], 0
        for path, times in folders:
            sound, own = clips.read(path)
            rows += [(start + shift, samples, ids[written], kind in ("code", "joined")) for kind, _, start, samples, written in own] * times
            sounds.append(sound)
            shift += len(sound)
        self.starts, self.samples = np.array([r[0] for r in rows]), np.array([r[1] for r in rows])
        self.targets, self.codes = [r[2] for r in rows], np.array([r[3] for r in rows])
        self.sound = augment.Sound(np.concatenate(sounds), *noises(noise), device)
        self.random = np.random.default_rng(SEED + len(rows))
        print(f"{len(rows)} clips an epoch, {self.samples.sum() / clips.RATE / 3600:.1f} hours", flush=True)

    def batches(self):
        while True:
            speed, before, quarters = augment.plan(self.samples, self.codes, self.random)
            order = self.random.permutation(len(self.samples))
            order = order[np.argsort(quarters[order], kind="stable")]
            cut = np.flatnonzero(np.diff(quarters[order])) + 1
            groups = [part[i:i + BATCH] for part in np.split(order, cut) for i in range(0, len(part), BATCH)]
            for at in self.random.permutation(len(groups)):
                own = groups[at]
                yield self.sound.batch(self.starts[own], self.samples[own], speed[own], before[own], int(quarters[own[0]]), self.random), [self.targets[i] for i in own]


def training_pair(targets: list[list[int]], device: str) -> tuple[torch.Tensor, torch.Tensor]:
    longest = max(map(len, targets)) + 1
    inputs, labels = np.full((len(targets), longest), END), np.full((len(targets), longest), IGNORE)
    for row, ids in enumerate(targets):
        inputs[row, :len(ids) + 1] = [START, *ids]
        labels[row, :len(ids) + 1] = [*ids, END]
    return torch.as_tensor(inputs, device=device), torch.as_tensor(labels, device=device)


def export(adapted: dict[str, moonshine.LowRank], decoder: Path, out: Path) -> None:
    header = {"rank": moonshine.RANK, "decoder": hashlib.sha256(decoder.read_bytes()).hexdigest(),
              "maps": [{"name": name, "in": one.base.in_features, "out": one.base.out_features} for name, one in adapted.items()]}
    parts = [(one.a.detach().cpu().numpy(), one.b.detach().cpu().numpy()) for one in adapted.values()]
    half = out.with_suffix(".part")
    adapters.write(half, json.dumps(header, separators=(",", ":")).encode(), parts)
    half.rename(out)


def main(weights: str, tokens: str, noise: str, out: str, steps: str, seconds: str, *folders: str) -> None:
    torch.manual_seed(SEED)
    device, total, limit = "cuda" if torch.cuda.is_available() else "cpu", int(steps), float(seconds)
    ids = json.loads(Path(tokens).read_text())["ids"]
    net = moonshine.load(Path(weights)).to(device)
    adapted = {name: one.to(device) for name, one in moonshine.adapt(net).items()}
    if os.environ.get("FROM"):
        adapters.put(Path(os.environ["FROM"]), adapted)
    parameters = [p for one in adapted.values() for p in (one.a, one.b)]
    steer = torch.optim.AdamW(parameters, lr=PEAK, weight_decay=0.01)
    there = _made(list(folders))
    decoder = Path(weights) / "decoder_model_merged.onnx"
    began = saved = time.time()
    losses, made = [], Data(there, ids, Path(noise), device).batches()
    step, joined = 0, 0
    while (way := max(step / total, (time.time() - began) / limit)) < 1:
        if int(3 * way) > joined:
            joined = int(3 * way)
            if (more := _made(list(folders))) != there:
                there = more
                made = Data(there, ids, Path(noise), device).batches()
        rate = PEAK * min(1, (step + 1) / WARM_UP) * 0.5 * (1 + math.cos(math.pi * way))
        steer.param_groups[0]["lr"] = rate
        sound, targets = next(made)
        inputs, labels = training_pair(targets, device)
        with torch.autocast(device, torch.bfloat16):
            with torch.no_grad():
                heard = net.model.encoder(sound).last_hidden_state
            states = net.model.decoder(input_ids=inputs, encoder_hidden_states=heard, use_cache=False).last_hidden_state
            known = labels != IGNORE
            loss = F.cross_entropy(net.proj_out(states[known]).float(), labels[known])
        steer.zero_grad(set_to_none=True)
        loss.backward()
        torch.nn.utils.clip_grad_norm_(parameters, 1.0)
        steer.step()
        losses.append(loss.detach())
        step += 1
        if step % 200 == 0:
            print(f"step {step} loss {torch.stack(losses[-200:]).mean().item():.3f} {time.time() - began:.0f} s", flush=True)
        if time.time() - saved > SAVED_EVERY:
            export(adapted, decoder, Path(out))
            saved = time.time()
    export(adapted, decoder, Path(out))
    print(f"wrote {out}", flush=True)


if __name__ == "__main__":
    main(*sys.argv[1:])
