/** Reading all that the ear thought it might have heard: how sure an item is, what its rival would have been, and whether a phrase of which nothing was made was heard at all. */
import { ownItems, type Context } from '../contract/draft.ts';
import type { Doubt } from '../contract/doubt.ts';
import type { Item } from '../contract/item.ts';
import type { HeardPhrase, Hypothesis } from '../contract/word.ts';
import { faint, madeNothing } from './faint.ts';
import { meaningOf } from './meaning.ts';
import { opposed } from './opposed.ts';
import { parseOne, type Parsed, type Stretches } from './parse.ts';

/**
 * Below this share of belief an item is doubted; teeth, sides, negations, grades, measures and doses are held to the stricter one, and a fact that
 * is kept in the speaker's own words ("ridden in a loose ring snaffle") to the milder: what it is about is sure before its last word is.
 */
export const SURE = 0.72;
export const SURE_OF_FIGURES = 0.76;
export const SURE_OF_OWN_WORDS = 0.6;

/**
 * A reading with words that have no place in the grammar counts for so much of its acoustic share: what does not read is
 * seldom what was said. The same two nats by which the ear's judge prefers the trade's language.
 */
export const LOOSE = Math.exp(-2);

/**
 * Nats a word below which an item was guessed at, whatever else the ear held possible; a share of belief in the opposite
 * (there, and not there; done, and not done) above which it is asked about; and a share of readings that make something out of
 * a phrase of which the best makes nothing. Chosen on the tuning sets of tests/bench/HEARING.md.
 */
export const GUESSED_ITEM = -0.4,
  OPPOSITE = 0.15,
  LOST = 0.03;

/** Softmax of the acoustic scores. */
export function posteriors(hypotheses: readonly Hypothesis[]): readonly number[] {
  const top = Math.max(...hypotheses.map(({ logProb }) => logProb));
  return shares(hypotheses.map(({ logProb }) => Math.exp(logProb - top)));
}

export function weigh(first: Parsed, heard: HeardPhrase, context: Context, stretches: Stretches): Parsed {
  // What a phrase brings back was weighed when it was said.
  const back = first.items.filter((item) => !ownItems(first).includes(item));
  if (back.length === 0) return weighed(first, heard, context, stretches);
  const result = weighed(alone(first), heard, context, stretches);
  return { ...result, items: [...result.items, ...back] };
}
const alone = (reading: Parsed): Parsed => ({ ...reading, items: [...ownItems(reading)] });

function weighed(first: Parsed, heard: HeardPhrase, context: Context, stretches: Stretches): Parsed {
  const best = heard.hypotheses[0] as Hypothesis;
  const guessed = best.logProb / best.words.length < GUESSED_ITEM;
  const acoustic = posteriors(heard.hypotheses);
  const readings = heard.hypotheses.map((hypothesis, i) => (i === 0 ? first : alone(parseOne(heard, hypothesis, context, stretches))));
  const steered = opposed(first, readings, acoustic, context);
  if (steered) return { ...steered, utterance: { ...steered.utterance, heard: heardAs(heard, acoustic) } };
  const belief = shares(acoustic.map((share, i) => share * (reads(readings[i] as Parsed) ? 1 : LOOSE)));
  const meanings = readings.map(({ items }) => new Set(items.map(meaningOf)));
  const doubts: Doubt[] = [];
  const items = first.items.map((item) => {
    const meaning = meaningOf(item);
    const sure = Math.min(
      1,
      belief.reduce((sum, share, i) => sum + (meanings[i]?.has(meaning) ? share : 0), 0),
    );
    const rivals = readings
      .flatMap((reading, i) => (i > 0 && !meanings[i]?.has(meaning) ? [{ share: belief[i] as number, items: reading.items }] : []))
      .sort((a, b) => b.share - a.share);
    const against = rivals.filter(({ items: others }) => others.some((other) => isOpposite(item, other)));
    const opposed = against.reduce((sum, { share }) => sum + share, 0) > OPPOSITE;
    const rival = opposed ? against[0] : rivals[0];
    const inFigures = rival !== undefined && differsInFigures(item, rival.items);
    const enough = inFigures ? SURE_OF_FIGURES : item.kind === 'fact' ? SURE_OF_OWN_WORDS : SURE;
    if (guessed || opposed || sure < enough) {
      doubts.push({
        id: `${first.id}/d${first.doubts.length + doubts.length + 1}`,
        doubt: 'unsure',
        words: item.evidence.words.map((w) => first.utterance.words[w]?.w ?? '').join(' '),
        utterance: first.id,
        state: 'open',
        item: item.id,
        ...('place' in item && item.place ? { place: item.place } : {}),
        ...(item.kind === 'finding' ? { condition: item.condition } : {}),
        ...(item.evidence.at ? { at: item.evidence.at } : {}),
        readings: [
          { label: first.text, items: [item] },
          ...(rival ? [{ label: textOf(readings, rival.items), items: [...rival.items] }] : []),
        ],
      });
    }
    return { ...item, evidence: { ...item.evidence, sure: Math.round(sure * 1000) / 1000 } };
  });
  const question = lost(first, readings, acoustic) ?? faint(first, best);
  const utterance = { ...first.utterance, heard: heardAs(heard, acoustic) };
  return { ...first, items, utterance, doubts: [...first.doubts, ...doubts, ...(question ? [question] : [])] };
}

const heardAs = ({ hypotheses }: HeardPhrase, acoustic: readonly number[]): NonNullable<Parsed['utterance']['heard']> =>
  hypotheses.map(({ text, logProb }, i) => ({ text, logProb, posterior: acoustic[i] as number }));
const shares = (weights: readonly number[]): readonly number[] => {
  const sum = weights.reduce((a, b) => a + b, 0);
  return weights.map((w) => w / sum);
};
const unplaced = new Set(['unread', 'no-such-tooth', 'off-scale']);
/** Whether every word has its place, as it was heard. */
const reads = ({ leftovers, doubts, utterance }: Parsed): boolean =>
  leftovers.length === 0 &&
  !utterance.words.some(({ repairedTo }) => repairedTo !== undefined) &&
  !doubts.some(({ doubt }) => unplaced.has(doubt));

const textOf = (readings: readonly Parsed[], items: readonly Item[]): string =>
  readings.find((reading) => reading.items === items)?.text ?? '';

const halves = new Set(['no-place', 'no-condition']);
/** A finding said to its end; "wasting still" is none, and not what "whoa, stand still" is asked about for. */
const finished = (reading: Parsed): boolean => reads(reading) && !reading.doubts.some(({ doubt }) => halves.has(doubt));

/** Nothing was made of what was most likely heard, yet what it may also have been is of the record. */
function lost(first: Parsed, readings: readonly Parsed[], acoustic: readonly number[]): Doubt | undefined {
  if (!madeNothing(first)) return undefined;
  const made = readings
    .flatMap((reading, i) =>
      reading.items.length > 0
        ? [{ share: (acoustic[i] as number) * (finished(reading) ? 1 : LOOSE), label: reading.text, items: [...reading.items] }]
        : [],
    )
    .sort((a, b) => b.share - a.share);
  const [likeliest] = made;
  if (likeliest === undefined || made.reduce((sum, { share }) => sum + share, 0) < LOST) return undefined;
  const { at } = first.utterance;
  return {
    id: `${first.id}/d1`,
    doubt: 'unsure',
    words: first.text,
    utterance: first.id,
    state: 'open',
    ...(at ? { at } : {}),
    readings: [
      { label: first.text, items: [] },
      { label: likeliest.label, items: likeliest.items },
    ],
  };
}

/** Whether the other says of the same thing that it is not so. */
function isOpposite(item: Item, other: Item): boolean {
  if (item.kind === 'finding')
    return other.kind === 'finding' && other.condition === item.condition && (other.presence === 'absent') !== (item.presence === 'absent');
  return (
    item.kind === 'treatment' &&
    other.kind === 'treatment' &&
    other.procedure === item.procedure &&
    (other.state === 'done') !== (item.state === 'done')
  );
}

/** Whether the rival reading says another tooth, side, presence, grade, size or dose. */
function differsInFigures(item: Item, rivals: readonly Item[]): boolean {
  const figures = (one: Item): string =>
    JSON.stringify([
      ('place' in one && one.place) || null,
      one.kind === 'finding'
        ? [one.presence, one.grade, one.measures]
        : one.kind === 'treatment'
          ? [one.state, one.amountMm]
          : one.kind === 'sedation' || one.kind === 'medication'
            ? [one.agent, one.dose, one.route]
            : null,
    ]);
  return rivals.length === 0 || !rivals.some((rival) => figures(rival) === figures(item));
}
