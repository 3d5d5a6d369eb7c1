/** Phrases that lean on the phrase before, or steer: carry-over, corrections, commands. */
import type { CommandId } from '../lexicon/commands.ts';
import { commandClosers, commandIds, commandOpeners, commands } from '../lexicon/commands.ts';
import type { FindingBody, ItemBody } from '../grammar/made.ts';
import { otherSide } from '../grammar/teeth.ts';
import { chance, formOf, join, pick, type Random } from './draw.ts';
import { drawMeasure, drawFinding } from './findings.ts';
import { drawTeeth } from './places.ts';
import { sayTooth } from './spoken.ts';

export interface Leaning {
  readonly before: readonly string[];
  readonly say: string;
  readonly means: readonly ItemBody[];
  readonly command?: CommandId;
}

const horses = ['juniper', 'bramble', 'clover', 'harley', 'duke', 'misty', 'pepper', 'rosie'];

export function drawCommand(random: Random): Leaning {
  const id = pick(
    random,
    commandIds.filter((one) => !['amend', 'answer', 'note', 'bring-back'].includes(one)),
  );
  const around = (forms: readonly string[]): string | undefined => (chance(random, 0.25) ? formOf(random, forms) : undefined);
  const core = formOf(random, commands[id].say);
  const say = join(around(commandOpeners), id === 'next-horse' ? `${core} ${pick(random, horses)}` : core, around(commandClosers));
  return { before: id === 'strike-last' ? [drawFinding(random, 'hook').say] : [], say, means: [], command: id };
}

const hook = (teeth: readonly string[], more: Partial<FindingBody> = {}): FindingBody => ({
  kind: 'finding',
  condition: 'hook',
  presence: 'present',
  when: 'now',
  place: { teeth: [...teeth] },
  ...more,
});

/** A hook, and what is said right after it. */
export function drawLeaning(random: Random): Leaning {
  const tooth = pick(random, ['106', '206', '311', '411']);
  const first = `${sayTooth(random, tooth)} hook`;
  const other = pick(
    random,
    ['106', '206', '306', '406'].filter((code) => code !== tooth),
  );
  const measure = drawMeasure(random, 'height');
  return pick<() => Leaning>(random, [
    () => ({ before: [first], say: measure.say, means: [hook([tooth], { measures: [measure.means] })], command: 'amend' }),
    () => ({
      before: [first],
      say: pick(random, ['same on the other side', 'same again on the other side', 'the same on the other side']),
      means: [hook([otherSide(tooth)])],
    }),
    () => ({ before: [first], say: `${pick(random, ['and', 'also'])} ${sayTooth(random, other)}`, means: [hook([other])] }),
    () => ({
      before: [first],
      say: `${pick(random, ['correction', 'sorry i mean', 'no make that', 'i mean'])} ${sayTooth(random, other)}`,
      means: [hook([other])],
      command: 'amend',
    }),
    () => ({ before: [sayTooth(random, tooth)], say: 'hook', means: [hook([tooth])] }),
    () => ({ before: ['hook'], say: sayTooth(random, tooth), means: [hook([tooth])] }),
    () => ({
      before: [],
      say: `${sayTooth(random, other)} hook ${pick(random, ['no wait', 'sorry', 'no sorry', 'i mean'])} ${sayTooth(random, tooth)} hook`,
      means: [hook([tooth])],
    }),
  ])();
}

/** A place alone: half of a finding, which asks for the other half. */
export const drawHalf = (random: Random): Leaning => ({ before: [], say: drawTeeth(random).say, means: [] });
