import { IDBFactory } from 'fake-indexeddb';
import 'fake-indexeddb/auto';
import { describe, expect, test } from 'vitest';
import type { FromPage, FromServer } from '../../parser/contract/wire.ts';
import { crc32 } from '../../web/capture/crc32.ts';
import { frame, headerBytes } from '../../web/capture/frame.ts';
import { isSilent, listenFor, microphoneState, noSilence } from '../../web/capture/health.ts';
import { openOutbox, type Kept, type Outbox } from '../../web/capture/outbox.ts';
import { levelOf, pcm16 } from '../../web/capture/pcm.ts';
import { resampler } from '../../web/capture/resample.ts';
import { startSender, type Sender } from '../../web/capture/sender.ts';
import { waitMs, type Socket, type SocketEvents } from '../../web/capture/socket.ts';
import { emptyDraft } from './emptyDraft.ts';

const ascii = (text: string): Uint8Array => new TextEncoder().encode(text);

describe('the checksum', () => {
  // Check value of CRC-32/ISO-HDLC in the catalogue of parametrised CRC algorithms (G. Cook, reveng).
  test('has the published check value', () => expect(crc32(ascii('123456789'))).toBe(0xcbf43926));
  // RFC 3720 is CRC-32C; for this one the empty string is 0 by its definition (start XOR final), and one changed bit never goes unseen.
  test('is zero for nothing and sees every single changed bit', () => {
    expect(crc32(new Uint8Array(0))).toBe(0);
    const sound = Uint8Array.from({ length: 64 }, (_, i) => (i * 37) & 255);
    const seen = new Set(
      Array.from({ length: 64 * 8 }, (_, bit) => crc32(sound.map((b, i) => (i === bit >> 3 ? b ^ (1 << (bit & 7)) : b)))),
    );
    expect(seen.size).toBe(64 * 8);
    expect(seen.has(crc32(sound))).toBe(false);
  });
});

describe('a frame', () => {
  test('is laid out as the contract says, little end first', () => {
    const sound = ascii('123456789');
    const bytes = frame({ epoch: 0x01020304, sequence: 7, sound, ownVoiceMs: 120 });
    expect([...bytes.subarray(0, headerBytes)]).toEqual([
      0x31, 0x4e, 0x44, 0x51, 4, 3, 2, 1, 7, 0, 0, 0, 9, 0, 0, 0, 0x26, 0x39, 0xf4, 0xcb, 120, 0, 0, 0,
    ]);
    expect(bytes.subarray(headerBytes)).toEqual(sound);
  });
});

describe('samples', () => {
  test('become 16-bit PCM, held at the rails', () => {
    const view = new DataView(pcm16(Float32Array.of(0, 1, -1, 3, -3, 0.5)).buffer);
    expect([0, 1, 2, 3, 4, 5].map((i) => view.getInt16(i * 2, true))).toEqual([0, 32767, -32768, 32767, -32768, 16384]);
  });
  // A sine's RMS stands 3.01 dB below its peak (1 over the square root of two): arithmetic.
  test('have a peak and a mean in decibels', () => {
    const { peak, mean } = levelOf(Float32Array.from({ length: 16000 }, (_, i) => 0.5 * Math.sin((2 * Math.PI * 1000 * i) / 16000)));
    expect(peak).toBeCloseTo(-6.02, 1);
    expect(mean).toBeCloseTo(-9.03, 1);
    expect(levelOf(new Float32Array(10)).peak).toBe(-Infinity);
  });
});

describe('resampling to 16 kHz', () => {
  const tone = (hz: number, rate: number, seconds = 1): Float32Array =>
    Float32Array.from({ length: rate * seconds }, (_, i) => Math.sin((2 * Math.PI * hz * i) / rate));
  const inPieces = (input: Float32Array, rate: number, piece = 128): number[] => {
    const push = resampler(rate);
    const output: number[] = [];
    for (let i = 0; i < input.length; i += piece) output.push(...push(input.subarray(i, i + piece)));
    return output;
  };
  const middle = (samples: readonly number[]): Float32Array => Float32Array.from(samples.slice(2000, -500));
  const rms = (samples: Float32Array): number => levelOf(samples).mean;

  test.each([44100, 48000, 96000, 22050, 8000, 16000])('from %i Hz keeps speech as loud as it was', (rate) => {
    const hz = Math.min(3000, rate * 0.4);
    expect(rms(middle(inPieces(tone(hz, rate), rate)))).toBeCloseTo(-3.01, 1);
  });
  // Nyquist and Shannon: what lies above 8 kHz cannot be in 16 kHz sound, and must not be folded into it.
  test.each([
    [44100, 8500],
    [48000, 9000],
    [48000, 12000],
    [48000, 23000],
    [96000, 30000],
  ])('from %i Hz lets nothing of %i Hz through', (rate, hz) => {
    expect(rms(middle(inPieces(tone(hz, rate), rate)))).toBeLessThan(-70);
  });
  test('gives the same whatever the pieces, and as many samples as the time is long', () => {
    const input = tone(700, 44100, 2);
    const whole = inPieces(input, 44100, input.length);
    const pieces = inPieces(input, 44100, 37);
    expect(pieces).toEqual(whole);
    expect(Math.abs(whole.length - 32000)).toBeLessThan(120);
  });
  test('keeps time: a click stays where it was to a sample', () => {
    const input = new Float32Array(48000);
    input[24000] = 1;
    const output = inPieces(input, 48000);
    expect(output.indexOf(Math.max(...output))).toBe(8000);
  });
  test('says which rate it cannot hear', () => expect(() => resampler(0)).toThrow('0 Hz'));
});

describe('a microphone that gives nothing', () => {
  const after = (seconds: number, peak: number) =>
    Array.from({ length: seconds * 20 }).reduce<typeof noSilence>((was) => listenFor(was, { peak, mean: peak - 3 }, 0.05), noSilence);
  test('is silent after a second of zeros, or four of next to none, and well again at the first sound', () => {
    expect(isSilent(after(0.9, -Infinity))).toBe(false);
    expect(isSilent(after(1.1, -Infinity))).toBe(true);
    expect(isSilent(after(3.5, -90))).toBe(false);
    expect(isSilent(after(4.2, -90))).toBe(true);
    expect(isSilent(after(60, -70))).toBe(false);
    expect(isSilent(listenFor(after(9, -Infinity), { peak: -30, mean: -40 }, 0.05))).toBe(false);
  });
  test('lost outweighs muted, muted outweighs silent', () => {
    const silence = after(9, -Infinity);
    expect(microphoneState({ there: false, muted: true, silence })).toBe('lost');
    expect(microphoneState({ there: true, muted: true, silence })).toBe('muted');
    expect(microphoneState({ there: true, muted: false, silence })).toBe('silent');
    expect(microphoneState({ there: true, muted: false, silence: noSilence })).toBe('ok');
  });
});

const chunk = (epoch: number, sequence: number, exam = 'a'): Kept => ({
  epoch,
  sequence,
  exam,
  sound: Uint8Array.of(epoch & 255, sequence & 255),
  ownVoiceMs: 0,
});
const spots = (chunks: readonly Kept[]): string[] => chunks.map((c) => `${c.exam}${c.epoch}.${c.sequence}`);

describe('the outbox', () => {
  test('keeps order across epochs, also when opened again', async () => {
    const disk = new IDBFactory();
    const first = await openOutbox(disk);
    for (const c of [chunk(11, 0), chunk(10, 9), chunk(10, 10), chunk(10, 2)]) await first.put(c);
    first.close();
    const again = await openOutbox(disk);
    expect(spots(await again.after(null, 9))).toEqual(['a10.2', 'a10.9', 'a10.10', 'a11.0']);
    expect(spots(await again.after([10, 9], 2))).toEqual(['a10.10', 'a11.0']);
    expect((await again.after([10, 10], 1))[0]!.sound).toEqual(Uint8Array.of(11, 0));
  });
  test('lets go of what is acknowledged, in that epoch only', async () => {
    const box = await openOutbox(new IDBFactory());
    for (const c of [chunk(10, 0), chunk(10, 1), chunk(10, 2), chunk(11, 0)]) await box.put(c);
    await box.acknowledged([10, 1]);
    expect(spots(await box.after(null, 9))).toEqual(['a10.2', 'a11.0']);
    expect(await box.waiting()).toBe(2);
  });
  test('epochs grow even when the clock goes back', async () => {
    const disk = new IDBFactory();
    const box = await openOutbox(disk);
    expect([await box.nextEpoch(1000.9), await box.nextEpoch(1000.9), await box.nextEpoch(5)]).toEqual([1000, 1001, 1002]);
    box.close();
    expect(await (await openOutbox(disk)).nextEpoch(7)).toBe(1003);
  });
});

/** A server that keeps what it acknowledges, and a line to it that can be cut: the wire's rules, nothing of the program. */
const yard = () => {
  const disk = new Map<string, string[]>();
  const asked: string[] = [];
  let on: SocketEvents | null = null;
  let open = false;
  let exam = '';
  let epoch = -1;
  let named = 0;
  let held: (() => void)[] | null = null;
  const refuses = new Set<string>();
  const reply = (message: FromServer): void => void queueMicrotask(() => open && on!.text(JSON.stringify(message)));
  const join = (id: string): void => {
    exam = id;
    reply({ type: 'draft', draft: emptyDraft(id) });
  };
  const hear = (message: FromPage): void => {
    if (message.type === 'epoch') epoch = message.epoch;
    if (message.type !== 'listen') return;
    asked.push(message.exam ?? 'new');
    if (message.exam && refuses.has(message.exam)) return reply({ type: 'trouble', error: { code: 'no-such-exam', message: 'gone' } });
    join(message.exam ?? `new${++named}`);
  };
  const sound = (bytes: Uint8Array): void => {
    const header = new DataView(bytes.buffer);
    const [at, sequence] = [header.getUint32(4, true), header.getUint32(8, true)];
    expect(at).toBe(epoch);
    expect(header.getUint32(16, true)).toBe(crc32(bytes.subarray(headerBytes)));
    const keep = (): void => {
      const kept = disk.get(exam) ?? [];
      if (!kept.includes(`${at}.${sequence}`)) disk.set(exam, [...kept, `${at}.${sequence}`]);
      reply({ type: 'ack', epoch: at, sequence });
    };
    if (held) held.push(keep);
    else keep();
  };
  const socket: Socket = {
    send: (data) => {
      if (!open) return;
      if (typeof data === 'string') hear(JSON.parse(data) as FromPage);
      else sound(data);
    },
    isOpen: () => open,
    queued: () => 0,
    renew: () => void cut(),
    close: () => void (open = false),
  };
  const cut = (): void => {
    open = false;
    held = held && [];
    on!.down();
  };
  return {
    disk,
    asked,
    refuses,
    cut,
    join,
    connect: (events: SocketEvents) => ((on = events), socket),
    restore: () => {
      open = true;
      on!.open();
    },
    /** Until released, sound is taken but neither kept nor acknowledged. */
    hold: () => void (held = []),
    release: () => {
      const kept = held ?? [];
      held = null;
      kept.forEach((keep) => keep());
    },
  };
};

describe('the sender', () => {
  const start = (
    outbox: Outbox,
    server: ReturnType<typeof yard>,
    exam: string | null,
    seen: FromServer[] = [],
    clock = { ms: 0 },
  ): Sender => {
    const sender = startSender(
      { outbox, exam, device: () => 'test', open: server.connect, now: () => clock.ms, wall: () => 5 },
      {
        frame: (f) => seen.push(f),
        kept: () => undefined,
        failed: (error) => {
          throw error;
        },
      },
    );
    sender.begin();
    return sender;
  };
  const speak = (sender: Sender, chunks: number): void => {
    for (let i = 0; i < chunks; i++) sender.put(Uint8Array.of(i), 0);
  };

  test('keeps sound while there is no line, and delivers it to the exam it opens', async () => {
    const [outbox, server] = [await openOutbox(new IDBFactory()), yard()];
    const sender = start(outbox, server, null);
    speak(sender, 40);
    expect(sender.say({ type: 'command', command: 'strike-last' })).toBe(false);
    server.restore();
    await sender.delivered();
    expect(server.disk.get('new1')).toEqual(Array.from({ length: 40 }, (_, i) => `5.${i}`));
    expect(server.asked).toEqual(['new']);
    expect(await outbox.waiting()).toBe(0);
  });

  test('a cut line loses nothing and doubles nothing', async () => {
    const [outbox, server] = [await openOutbox(new IDBFactory()), yard()];
    const sender = start(outbox, server, 'a');
    server.restore();
    speak(sender, 10);
    await sender.delivered();
    server.hold();
    speak(sender, 10);
    await new Promise((resolve) => setTimeout(resolve, 30));
    server.cut();
    speak(sender, 10);
    server.release();
    server.restore();
    await sender.delivered();
    expect(server.disk.get('a')).toEqual(Array.from({ length: 30 }, (_, i) => `5.${i}`));
  });

  test('after a reload the old epoch goes before the new one', async () => {
    const disk = new IDBFactory();
    const before = await openOutbox(disk);
    const deaf = start(before, yard(), 'a');
    speak(deaf, 3);
    await new Promise((resolve) => setTimeout(resolve, 30));
    deaf.close();
    before.close();
    const server = yard();
    const sender = start(await openOutbox(disk), server, 'a');
    speak(sender, 1);
    server.restore();
    await sender.delivered();
    expect(server.disk.get('a')).toEqual(['5.0', '5.1', '5.2', '6.0']);
  });

  test('sound of an exam before goes to that exam, then the one in progress is joined', async () => {
    const [outbox, server] = [await openOutbox(new IDBFactory()), yard()];
    await outbox.put(chunk(4, 0, 'old'));
    const seen: FromServer[] = [];
    const sender = start(outbox, server, 'a', seen);
    speak(sender, 1);
    server.restore();
    await sender.delivered();
    await new Promise((resolve) => setTimeout(resolve, 30));
    expect([...server.disk]).toEqual([
      ['old', ['4.0']],
      ['a', ['5.0']],
    ]);
    expect(server.asked).toEqual(['old', 'a']);
    expect(seen.map((f) => f.type === 'draft' && f.draft.id)).toEqual(['a']);
    expect(sender.say({ type: 'stop' })).toBe(true);
  });

  test('an exam the server no longer has is said, kept here, and holds nothing up', async () => {
    const [outbox, server] = [await openOutbox(new IDBFactory()), yard()];
    server.refuses.add('erased');
    await outbox.put(chunk(4, 0, 'erased'));
    const seen: FromServer[] = [];
    const sender = start(outbox, server, 'a', seen);
    speak(sender, 1);
    server.restore();
    await sender.delivered();
    expect(server.disk.get('a')).toEqual(['5.0']);
    expect(seen.map((f) => f.type)).toEqual(['trouble', 'draft']);
    expect(await outbox.waiting()).toBe(1);
  });

  test('after a change of horse, what is not yet acknowledged opens a stretch of the new one', async () => {
    const [outbox, server] = [await openOutbox(new IDBFactory()), yard()];
    const sender = start(outbox, server, 'a');
    server.restore();
    speak(sender, 1);
    await sender.delivered();
    server.hold();
    speak(sender, 1);
    await new Promise((resolve) => setTimeout(resolve, 30));
    server.join('b');
    await new Promise((resolve) => setTimeout(resolve, 30));
    speak(sender, 1);
    await new Promise((resolve) => setTimeout(resolve, 30));
    server.cut();
    server.release();
    server.restore();
    await sender.delivered();
    expect([...server.disk]).toEqual([
      ['a', ['5.0']],
      ['b', ['6.0', '6.1']],
    ]);
    expect(server.asked).toEqual(['a', 'b']);
  });

  test('a line that has gone quiet is dropped', async () => {
    const [outbox, server, clock] = [await openOutbox(new IDBFactory()), yard(), { ms: 0 }];
    const sender = start(outbox, server, 'a', [], clock);
    server.restore();
    server.hold();
    speak(sender, 1);
    await new Promise((resolve) => setTimeout(resolve, 30));
    clock.ms = 9000;
    sender.check();
    expect(sender.say({ type: 'stop' })).toBe(true);
    clock.ms = 11_000;
    sender.check();
    expect(sender.say({ type: 'stop' })).toBe(false);
  });
});

test('tries to reach the server again later and later, at most every five seconds', () => {
  expect([0, 1, 2, 3, 4, 5, 9].map((n) => waitMs(n, 0))).toEqual([250, 500, 1000, 2000, 4000, 5000, 5000]);
  expect(waitMs(9, 0.999)).toBeGreaterThan(3700);
});
