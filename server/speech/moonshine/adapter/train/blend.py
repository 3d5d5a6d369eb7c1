"""One adapter out of several: the mean of what they add to each map, made smaller by a share, cut back to their rank.

Usage: blend.py OUT.bin SHARE ADAPTER.bin...
What two trainings agree on stays and what each learned by chance halves; a share below 1 gives plain English some of its own back
(Wortsman et al. 2022, arXiv 2203.05482 and 2109.01903).
"""
import sys
from pathlib import Path

import numpy as np

import adapters


def main(out: str, share: str, *paths: str) -> None:
    heads, several = zip(*(adapters.read(Path(path)) for path in paths))
    if len(set(heads)) > 1:
        raise SystemExit("These adapters are of different ranks or decoders, so they cannot be blended.")
    blended = []
    for parts in zip(*several):
        added = float(share) * sum(b @ a for a, b in parts) / len(parts)  # [out, in]
        left, sizes, right = np.linalg.svd(added, full_matrices=False)
        rank = len(parts[0][0])
        root = np.sqrt(sizes[:rank])
        blended.append((root[:, None] * right[:rank], left[:, :rank] * root))
    adapters.write(Path(out), heads[0], blended)


if __name__ == "__main__":
    main(*sys.argv[1:])
