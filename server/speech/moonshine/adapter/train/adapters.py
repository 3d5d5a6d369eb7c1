"""An adapter's file: `QLR2`, the header's length (uint32), a JSON header, then of each map A [rank, in] and B transposed [rank, out], row by row:
a row's step (float16), and its numbers as steps (int8)."""
import json
import struct
from pathlib import Path

import numpy as np

Part = tuple[np.ndarray, np.ndarray]


def read(path: Path) -> tuple[bytes, list[Part]]:
    """The header as it stands, and (A [rank, in], B [out, rank]) of each of its maps, float32."""
    data = path.read_bytes()
    length = struct.unpack("<I", data[4:8])[0]
    head, at, parts = data[8:8 + length], 8 + length, []
    rank = json.loads(head)["rank"]

    def rows(width: int) -> np.ndarray:
        nonlocal at
        found = np.frombuffer(data, np.dtype([("step", "<f2"), ("steps", "i1", (width,))]), rank, at)
        at += found.nbytes
        return found["step"].astype(np.float32)[:, None] * found["steps"]

    for one in json.loads(head)["maps"]:
        a, b = rows(one["in"]), rows(one["out"])
        parts.append((a, b.T))
    return head, parts


def write(path: Path, head: bytes, parts: list[Part]) -> None:
    def rows(values: np.ndarray) -> bytes:
        packed = np.zeros(len(values), np.dtype([("step", "<f2"), ("steps", "i1", (values.shape[1],))]))
        packed["step"] = np.maximum(np.abs(values).max(1) / 127, 2.0 ** -24)
        packed["steps"] = np.clip(np.rint(values / packed["step"].astype(np.float32)[:, None]), -127, 127)
        return packed.tobytes()
    path.write_bytes(b"QLR2" + struct.pack("<I", len(head)) + head + b"".join(rows(a) + rows(b.T) for a, b in parts))


def put(path: Path, adapted) -> None:
    """Into a model's maps (model.adapt)."""
    import torch  # blending needs none
    head, parts = read(path)
    for one, (a, b) in zip(json.loads(head)["maps"], parts):
        home = adapted[one["name"]]
        home.a.data.copy_(torch.from_numpy(a.copy()))
        home.b.data.copy_(torch.from_numpy(b.copy()))
