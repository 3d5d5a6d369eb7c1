"""Changes to the training sound, drawn anew each time: speed, room, telephone band, noise, gain, silence at both ends. All on the device."""
import numpy as np
import torch

import clips

RATE = clips.RATE
QUARTER = RATE // 4
NOISY, DECIBELS = 0.7, (0, 20)  # share of the clips that have noise behind them, and how far below the voice it lies


def plan(samples: np.ndarray, codes: np.ndarray, random: np.random.Generator) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    """Of each clip: speed, samples of silence before it (a code may lose up to 0.08 s of its front), whole length in quarter seconds."""
    count = len(samples)
    speed = random.uniform(0.9, 1.12, count)
    before = random.uniform(0.0, 0.5, count) * RATE
    clipped = codes & (random.random(count) < 0.25)
    before = np.where(clipped, -random.uniform(0.0, 0.08, count) * RATE, before)
    after = random.uniform(0.05, 0.5, count) * RATE
    return speed, before, np.ceil((samples / speed + before + after) / QUARTER).astype(int)


class Sound:
    """Clips and noises on the device, and batches of changed clips made from them."""

    def __init__(self, sound: np.ndarray, noises: list[np.ndarray], rooms: list[np.ndarray], device: str):
        self.device = device
        self.sound = torch.from_numpy(sound).to(device)
        self.noise = torch.from_numpy(np.concatenate([n / (np.sqrt(np.mean(n ** 2)) + 1e-9) for n in noises]).astype(np.float32)).to(device)
        self.rooms = [torch.from_numpy(room).to(device) for room in rooms]

    def batch(self, starts, samples, speed, before, quarters: int, random: np.random.Generator) -> torch.Tensor:
        """Float32 [batch, quarters * 0.25 s]."""
        count, length = len(starts), quarters * QUARTER
        def column(values):
            return torch.as_tensor(np.asarray(values, np.float64), device=self.device)[:, None]
        place = (torch.arange(length, device=self.device, dtype=torch.float64)[None] - column(before)) * column(speed)
        at = place.floor()
        share = (place - at).float()
        index = at.long()
        limit = column(samples).long()
        def tap(offset: int) -> torch.Tensor:
            own = index + offset
            inside = (own >= 0) & (own < limit)
            return self.sound[(own.clamp(min=0).minimum(limit - 1) + column(starts).long())].float() / 32768 * inside
        p0, p1, p2, p3 = tap(-1), tap(0), tap(1), tap(2)
        speech = p1 + 0.5 * share * (p2 - p0 + share * (2 * p0 - 5 * p1 + 4 * p2 - p3 + share * (3 * (p1 - p2) + p3 - p0)))
        speech = self._coloured(speech, random)
        power = speech.pow(2).mean(1, keepdim=True)
        noise = self._noise(speech, random)
        decibels = torch.as_tensor(random.uniform(*DECIBELS, count), device=self.device, dtype=torch.float32)[:, None]
        noisy = torch.as_tensor(random.random(count) < NOISY, device=self.device)[:, None]
        mixed = speech + noisy * noise * (power / 10 ** (decibels / 10)).sqrt()
        gain = 10 ** (torch.as_tensor(random.uniform(-14, 8, count), device=self.device, dtype=torch.float32)[:, None] / 20)
        faint = 10 ** torch.as_tensor(random.uniform(-4.5, -3, count), device=self.device, dtype=torch.float32)[:, None]
        return (mixed * gain + faint * torch.randn_like(mixed)).clamp(-1, 1)

    def _noise(self, speech: torch.Tensor, random: np.random.Generator) -> torch.Tensor:
        """Equally loud, of three kinds: half recorded; four tenths made, hissing or rumbling and swelling one to seven times a second, as a rasp does;
        one tenth somebody else's words."""
        count, length = speech.shape
        begin = torch.as_tensor(random.integers(0, len(self.noise), count), device=self.device)[:, None]
        recorded = self.noise[(begin + torch.arange(length, device=self.device)[None]) % len(self.noise)]
        def drawn(low: float, high: float) -> torch.Tensor:
            return torch.as_tensor(random.uniform(low, high, count), device=self.device, dtype=torch.float32)[:, None]
        hertz = torch.linspace(0, RATE / 2, length // 2 + 1, device=self.device).clamp(min=60)[None]
        hiss = torch.fft.rfft(torch.randn_like(speech)) * (hertz / 1000) ** drawn(-1.2, 0.8) / (1 + (hertz / 10 ** drawn(3.0, 4.0)) ** 4)
        seconds = torch.arange(length, device=self.device)[None] / RATE
        swelling = (1 + drawn(0, 1) * torch.sin(2 * np.pi * (drawn(1, 7) * seconds + drawn(0, 1)))).clamp(min=0) ** 2
        made = torch.fft.irfft(hiss, length) * swelling
        kind = drawn(0, 1)
        noise = torch.where(kind < 0.5, recorded, torch.where(kind < 0.9, made, speech.roll(1, 0)))
        return noise / (noise.pow(2).mean(1, keepdim=True).sqrt() + 1e-6)

    def _coloured(self, speech: torch.Tensor, random: np.random.Generator) -> torch.Tensor:
        """Room echo for 30 %, a telephone's band for 20 %, and a tilt of the spectrum for all."""
        count, length = speech.shape
        size = 1 << (length + 8000 - 1).bit_length()
        spectrum = torch.fft.rfft(speech, size)
        hertz = torch.linspace(0, RATE / 2, spectrum.shape[1], device=self.device)
        tilt = torch.as_tensor(random.uniform(-0.25, 0.25, count), device=self.device, dtype=torch.float32)[:, None]
        spectrum = spectrum * ((hertz.clamp(min=100) / 1000)[None] ** tilt)
        telephone = torch.as_tensor(random.random(count) < 0.2, device=self.device)[:, None]
        band = torch.sigmoid((hertz - 280) / 30) * torch.sigmoid((3500 - hertz) / 80)
        spectrum = torch.where(telephone, spectrum * band[None], spectrum)
        rooms = torch.stack([self._room(random) for _ in range(count)])
        spectrum = spectrum * torch.fft.rfft(rooms, size)
        out = torch.fft.irfft(spectrum, size)[:, :length]
        level = speech.pow(2).mean(1, keepdim=True).sqrt() / (out.pow(2).mean(1, keepdim=True).sqrt() + 1e-6)
        return out * level

    def _room(self, random: np.random.Generator, taps: int = 8000) -> torch.Tensor:
        response = torch.zeros(taps, device=self.device)
        response[0] = 1
        draw = random.random()
        if draw < 0.1 and self.rooms:
            real = self.rooms[random.integers(len(self.rooms))][:taps]
            response[:len(real)] = real
        elif draw < 0.3:  # a made room: decaying noise, 60 dB in 0.15 to 0.7 s
            time = torch.arange(taps, device=self.device) / RATE
            response += torch.randn(taps, device=self.device) * torch.exp(-6.9 * time / random.uniform(0.15, 0.7)) * random.uniform(0.02, 0.12)
        return response
