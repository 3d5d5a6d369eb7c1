/** Reading all that the ear thought it might have heard: how sure an item is, and what its rival would have been. */
import type { Context } from '../contract/draft.ts';
import type { Doubt } from '../contract/doubt.ts';
import type { Item } from '../contract/item.ts';
import type { HeardPhrase, Hypothesis } from '../contract/word.ts';
import { meaningOf } from './meaning.ts';
import { parseOne, type Parsed } from './parse.ts';

/** Below this share of belief an item is doubted; teeth, sides, negations, grades, measures and doses are held to the stricter one. */
export const SURE = 0.5;
export const SURE_OF_FIGURES = 0.7;

/** Softmax of the acoustic scores. */
export function posteriors(hypotheses: readonly Hypothesis[]): readonly number[] {
  const top = Math.max(...hypotheses.map(({ logProb }) => logProb));
  const mass = hypotheses.map(({ logProb }) => Math.exp(logProb - top));
  const sum = mass.reduce((a, b) => a + b, 0);
  return mass.map((m) => m / sum);
}

export function weigh(first: Parsed, heard: HeardPhrase, context: Context): Parsed {
  const belief = posteriors(heard.hypotheses);
  const readings = heard.hypotheses.map((hypothesis, i) => (i === 0 ? first : parseOne(heard, hypothesis, context)));
  const meanings = readings.map(({ items }) => new Set(items.map(meaningOf)));
  const doubts: Doubt[] = [];
  const items = first.items.map((item) => {
    const meaning = meaningOf(item);
    const sure = Math.min(1, belief.reduce((sum, share, i) => sum + (meanings[i]?.has(meaning) ? share : 0), 0));
    const rival = readings.flatMap((reading, i) => (i > 0 && !meanings[i]?.has(meaning) ? [{ share: belief[i] as number, items: reading.items }] : [])).sort((a, b) => b.share - a.share)[0];
    if (sure < (rival && differsInFigures(item, rival.items) ? SURE_OF_FIGURES : SURE)) {
      doubts.push({
        id: `${first.id}/d${first.doubts.length + doubts.length + 1}`, doubt: 'unsure', words: item.evidence.words.map((w) => first.utterance.words[w]?.w ?? '').join(' '), utterance: first.id, state: 'open', item: item.id,
        ...('place' in item && item.place ? { place: item.place } : {}), ...(item.kind === 'finding' ? { condition: item.condition } : {}), ...(item.evidence.at ? { at: item.evidence.at } : {}),
        readings: [{ label: first.text, items: [item] }, ...(rival ? [{ label: textOf(readings, rival.items), items: [...rival.items] }] : [])],
      });
    }
    return { ...item, evidence: { ...item.evidence, sure: Math.round(sure * 1000) / 1000 } };
  });
  const utterance = { ...first.utterance, heard: heard.hypotheses.map(({ text, logProb }, i) => ({ text, logProb, posterior: belief[i] as number })) };
  return { ...first, items, utterance, doubts: [...first.doubts, ...doubts] };
}

const textOf = (readings: readonly Parsed[], items: readonly Item[]): string => readings.find((reading) => reading.items === items)?.text ?? '';

/** Whether the rival reading says another tooth, side, presence, grade, size or dose. */
function differsInFigures(item: Item, rivals: readonly Item[]): boolean {
  const figures = (one: Item): string => JSON.stringify([('place' in one && one.place) || null, one.kind === 'finding' ? [one.presence, one.grade, one.measures] : one.kind === 'treatment' ? [one.state, one.amountMm] : one.kind === 'sedation' || one.kind === 'medication' ? [one.agent, one.dose, one.route] : null]);
  return rivals.length === 0 || !rivals.some((rival) => figures(rival) === figures(item));
}
