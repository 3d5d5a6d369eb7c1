/**
 * Sentences as a practitioner would say them, drawn over the lexicon and the grammar, each with the items it means.
 * Used by the property tests, the benches and the training of the ear. Pure: the random source is handed in.
 */
import type { CommandId } from '../lexicon/commands.ts';
import type { ItemBody } from '../grammar/made.ts';
import { chance, join, pick, weighted, whole, type Random } from './draw.ts';
import { drawFinding, drawNormal, drawRuledOut } from './findings.ts';
import type { Said } from './places.ts';
import { drawCommand, drawHalf, drawLeaning } from './steering.ts';
import { drawSedation, drawTreatment, drawVisit } from './work.ts';

export { chatter } from './chatter.ts';
export type { Random } from './draw.ts';

export interface Sample {
  readonly text: string;
  /** What the sentence means, without ids and evidence. */
  readonly items: readonly ItemBody[];
  /** Phrases said before it in the same exam, when it leans on them. */
  readonly before: readonly string[];
  readonly command?: CommandId;
}
export interface SampleOptions {
  /** Share of sentences with a hesitation in them, 0 to 1 (0.15). */
  readonly fillers?: number;
  /** Share with a false start, 0 to 1 (0.03). */
  readonly falseStarts?: number;
}

/** Draws one sentence. */
export function sample(random: Random, { fillers = 0.15, falseStarts = 0.03 }: SampleOptions = {}): Sample {
  const drawn = weighted<() => Sample>(random, [
    [50, () => one(drawFinding(random))],
    [
      4,
      () => {
        const { say, means } = drawRuledOut(random);
        return { text: say, items: means, before: [] };
      },
    ],
    [6, () => one(drawNormal(random))],
    [12, () => one(drawTreatment(random))],
    [5, () => one(drawSedation(random))],
    [8, () => one(drawVisit(random))],
    [8, () => leaning(drawLeaning(random))],
    [3, () => leaning(drawCommand(random))],
    [1, () => leaning(drawHalf(random))],
  ])();
  const steering = drawn.command !== undefined || drawn.items.some(({ kind }) => kind === 'note' || kind === 'fact');
  const hesitating = !steering && chance(random, fillers) ? hesitate(random, drawn.text) : drawn.text;
  return {
    ...drawn,
    text:
      !steering && chance(random, falseStarts)
        ? `${pick(random, ['the', 'so the', 'and the', 'on'])} ${pick(random, ['um', 'er'])} ${hesitating}`
        : hesitating,
  };
}

const one = ({ say, means }: Said<ItemBody>): Sample => ({ text: say, items: [means], before: [] });
const leaning = ({ say, means, before, command }: ReturnType<typeof drawLeaning>): Sample => ({
  text: say,
  items: means,
  before,
  ...(command ? { command } : {}),
});

/** A hesitation between two words, never inside a number. */
function hesitate(random: Random, text: string): string {
  const words = text.split(' ');
  const digits = new Set([
    'oh',
    'zero',
    'one',
    'two',
    'three',
    'four',
    'five',
    'six',
    'seven',
    'eight',
    'nine',
    'ten',
    'eleven',
    'point',
    'hundred',
    'and',
  ]);
  const gaps = words.map((_, i) => i).filter((i) => i === 0 || !(digits.has(words[i] as string) || digits.has(words[i - 1] as string)));
  const at = gaps[whole(random, 0, gaps.length - 1)] ?? 0;
  return join(...words.slice(0, at), pick(random, ['um', 'uh', 'er', 'erm']), ...words.slice(at));
}
