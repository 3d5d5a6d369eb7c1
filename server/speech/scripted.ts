/** An ear for tests: it says what the script says, one line a clip, and then takes the same path as any other. */
import type { Engine, Heard } from './engine.ts';
import { RATE } from './engine.ts';
import { hypothesis } from './words.ts';

/**
 * @param lines what to hear, one entry a clip, in order; an array is an n-best list, best first. An empty string is speech without words.
 * @throws when a clip comes after the last line: a test that hears more than it wrote is wrong.
 */
export function scriptedEngine(lines: readonly (string | readonly string[])[]): Engine {
  let next = 0;
  return {
    name: 'scripted',
    async hear(clip): Promise<Heard> {
      const line = lines[next++];
      if (line === undefined) throw new Error(`The script ended after ${lines.length} lines, and more was heard.`);
      const texts = (typeof line === 'string' ? [line] : line).filter((text) => text !== '');
      const span = { from: clip.from / RATE, to: (clip.from + clip.samples.length) / RATE };
      const hypotheses = texts.map((text, rank) =>
        hypothesis(
          text.split(/\s+/).map((w) => ({ w, logProb: -0.1 * (rank + 1) })),
          span,
        ),
      );
      return hypotheses.length === 0 ? { hypotheses, empty: 'no-words', tookMs: 0 } : { hypotheses, tookMs: 0 };
    },
    async close() {
      next = lines.length;
    },
  };
}
