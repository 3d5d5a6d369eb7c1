/**
 * Four short sounds of our own: soft sines, low (a horse hears better and higher than we do), fading in and out, quieter than talk.
 * What they say the screen says too.
 */
export interface Note {
  readonly hz: number;
  readonly at: number;
  readonly lasts: number;
}
export type Tone = 'understood' | 'unsure' | 'done' | 'trouble';

/** Notes in hertz and seconds; the pitches are of the equal-tempered scale on A = 440 Hz (ISO 16). */
export const tones: Readonly<Record<Tone, readonly Note[]>> = {
  understood: [
    { hz: 440, at: 0, lasts: 0.12 },
    { hz: 587.33, at: 0.11, lasts: 0.18 },
  ],
  unsure: [{ hz: 261.63, at: 0, lasts: 0.34 }],
  done: [
    { hz: 392, at: 0, lasts: 0.12 },
    { hz: 392, at: 0.17, lasts: 0.16 },
  ],
  trouble: [
    { hz: 523.25, at: 0, lasts: 0.16 },
    { hz: 415.3, at: 0.17, lasts: 0.16 },
    { hz: 329.63, at: 0.34, lasts: 0.26 },
  ],
};
/** Share of full scale: about 22 dB below it. */
const loudness = 0.08;
const fadeIn = 0.02;
const fadeOut = 0.08;

/** Seconds a tone sounds. */
export const toneLasts = (tone: Tone): number => Math.max(...tones[tone].map((note) => note.at + note.lasts));

/** Plays a tone now. */
export const playTone = (context: BaseAudioContext, tone: Tone): void => {
  for (const { hz, at, lasts } of tones[tone]) {
    const [from, to] = [context.currentTime + at, context.currentTime + at + lasts];
    const voice = new OscillatorNode(context, { type: 'sine', frequency: hz });
    const gain = new GainNode(context, { gain: 0 });
    gain.gain.setValueAtTime(0, from);
    gain.gain.linearRampToValueAtTime(loudness, from + fadeIn);
    gain.gain.setValueAtTime(loudness, to - fadeOut);
    gain.gain.linearRampToValueAtTime(0, to);
    voice.connect(gain).connect(context.destination);
    voice.start(from);
    voice.stop(to);
  }
};
