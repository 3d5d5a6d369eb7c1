"""An adapter's file, as train.py writes it: `QLR1`, the header's length (uint32), a JSON header, then float16: of each map A [rank, in] and B [out, rank], row by row."""
import json
import struct
from pathlib import Path

import numpy as np

Part = tuple[np.ndarray, np.ndarray]


def read(path: Path) -> tuple[bytes, list[Part]]:
    """The header as it stands, and (A, B) of each of its maps, float32."""
    data = path.read_bytes()
    length = struct.unpack("<I", data[4:8])[0]
    head, numbers, at, parts = data[8:8 + length], np.frombuffer(data[8 + length:], "<f2").astype(np.float32), 0, []
    rank = json.loads(head)["rank"]
    for one in json.loads(head)["maps"]:
        end_a, end = at + rank * one["in"], at + rank * (one["in"] + one["out"])
        parts.append((numbers[at:end_a].reshape(rank, one["in"]), numbers[end_a:end].reshape(one["out"], rank)))
        at = end
    return head, parts


def write(path: Path, head: bytes, parts: list[Part]) -> None:
    head += b" " * (-len(head) % 4)
    path.write_bytes(b"QLR1" + struct.pack("<I", len(head)) + head + b"".join(part.astype("<f2").tobytes() for both in parts for part in both))
