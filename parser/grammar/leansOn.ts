/**
 * What a phrase leans on where the one before spoke of something else. Who treats at once goes on about what was found: "hook on one oh six", "took it
 * down", "none on the left", "bit bigger on the other side". And where nothing is nothing is done: "hook on one oh six, none on the left", "took it down".
 */
import type { Context } from '../contract/draft.ts';
import type { Item } from '../contract/item.ts';
import { acrossWords } from '../lexicon/sides.ts';
import { standing, type Carry } from './carry.ts';
import { isHead, scan, type Mark } from './scan.ts';
import type { Token } from './tokens.ts';
import { didWords } from './vocabulary.ts';

const across: ReadonlySet<string> = new Set(acrossWords);
type Finding = Extract<Item, { kind: 'finding' }>;
type Treatment = Extract<Item, { kind: 'treatment' }>;

/** @returns what is carried, the last thing said being the finding that the phrase is about */
export function leansOn(tokens: readonly Token[], context: Context, carry: Carry): Carry {
  const last = standing(context, carry.last);
  const found =
    last?.kind === 'treatment'
      ? ofWork(last, tokens, context)
      : last?.kind === 'finding'
        ? ofWhatIsThere(last, tokens, context)
        : undefined;
  if (found === undefined) return carry;
  const { id, place } = found;
  const said = place && 'teeth' in place ? [{ codes: place.teeth }] : undefined;
  return { ...carry, last: id, lastItems: [id], ...(said ? { place: said } : {}) };
}

/** A side alone, and how it is there, behind work on what was found. */
function ofWork(last: Treatment, tokens: readonly Token[], { items }: Context): Finding | undefined {
  const sided = tokens.some(({ t }) => across.has(t)) && tokens[0]?.t !== 'same';
  if (!sided || !['done', 'part-done'].includes(last.state) || last.place === null) return undefined;
  if (!scan(tokens).marks.every((mark) => !isHead(mark) && !namesPlace(mark))) return undefined;
  return items.findLast((item): item is Finding => isThere(item) && JSON.stringify(item.place) === JSON.stringify(last.place));
}

/** Work without a place, or a size, behind what was ruled out of the other side. */
function ofWhatIsThere(last: Finding, tokens: readonly Token[], { items }: Context): Finding | undefined {
  if (last.presence !== 'absent') return undefined;
  const before = items[items.findIndex(({ id }) => id === last.id) - 1];
  const leans = Object.values(last.how).includes('carried') || before?.evidence.utterance === last.evidence.utterance;
  if (!before || !leans || !isThere(before) || ![before.condition, 'abnormality'].includes(last.condition)) return undefined;
  const { marks } = scan(tokens);
  const done = tokens.some(({ t }) => didWords.has(t)) || marks.some(({ terms }) => terms?.some(({ k }) => k === 'work'));
  const sized =
    marks.some(({ measure }) => measure !== undefined) &&
    marks.every((mark) => mark.measure !== undefined || mark.terms?.every(({ k }) => k === 'glue' || k === 'filler') === true);
  return (done || sized) && !marks.some(namesPlace) && !tokens.some(({ t, ends }, i) => across.has(t) && !(i === 0 && ends))
    ? before
    : undefined;
}

const isThere = (item: Item): item is Finding => item.kind === 'finding' && item.presence !== 'absent';
const namesPlace = ({ place }: Mark): boolean =>
  place !== undefined && (place.codes ?? place.positions ?? place.region ?? place.row) !== undefined;
