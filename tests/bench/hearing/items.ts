/**
 * What became of the items: against the grammar's own reading of the true words, so that this measures the hearing and
 * not the grammar (which the gold files measure).
 */
import type { Hypothesis } from '../../../parser/contract/word.ts';
import type { Parsed } from '../../../parser/index.ts';
import { emptyContext, parse, parseText } from '../../../parser/index.ts';
import { pair, sameItem } from '../../match.ts';

export type ItemCount = {
  readonly right: number;
  readonly missing: number;
  readonly extra: number;
  /** Wrong or missing items in utterances that raised no doubt beyond those of the true words. */
  readonly silent: number;
  readonly rightDoubted: number;
  /** Utterances of talk (no item in the true words, nor a doubt), and of those, asked about or made into items. */
  readonly talk: number;
  readonly talkAsked: number;
  readonly talkItems: number;
  /** How sure an item was, and whether it was right. */
  readonly sure: readonly { readonly sure: number; readonly right: boolean }[];
};

export const NO_ITEMS: ItemCount = {
  right: 0,
  missing: 0,
  extra: 0,
  silent: 0,
  rightDoubted: 0,
  talk: 0,
  talkAsked: 0,
  talkItems: 0,
  sure: [],
};

export function countItems(id: string, words: string, hypotheses: readonly Hypothesis[], at: readonly [number, number]): ItemCount {
  const truth = parseText(id, words, emptyContext());
  const heard = parse({ id, reader: 'first', hypotheses, at: [...at] }, emptyContext());
  const { pairs, missing, extra } = pair(truth.items, heard.items, sameItem);
  const doubts = newDoubts(truth, heard);
  const doubted = new Set(doubts.map(({ item }) => item));
  const wrong = missing.length + extra.length;
  const talk = truth.items.length + truth.doubts.length + truth.commands.length === 0 && truth.header === undefined;
  const rightItems = new Set(pairs.map(([, item]) => item));
  return {
    right: pairs.length,
    missing: missing.length,
    extra: extra.length,
    // A finding heard wrong is one error, not a missing and an extra one.
    silent: doubts.length === 0 && wrong > 0 ? Math.max(missing.length, extra.length) : 0,
    rightDoubted: pairs.filter(([, item]) => doubted.has(item.id)).length,
    talk: talk ? 1 : 0,
    talkAsked: talk && heard.doubts.length > 0 ? 1 : 0,
    talkItems: talk && heard.items.length > 0 ? 1 : 0,
    sure: heard.items.map((item) => ({ sure: item.evidence.sure ?? 1, right: rightItems.has(item) })),
  };
}

function newDoubts(truth: Parsed, heard: Parsed) {
  const expected = new Set(truth.doubts.map(({ doubt }) => doubt));
  return heard.doubts.filter(({ doubt }) => !expected.has(doubt));
}

export const addItems = (a: ItemCount, b: ItemCount): ItemCount => ({
  right: a.right + b.right,
  missing: a.missing + b.missing,
  extra: a.extra + b.extra,
  silent: a.silent + b.silent,
  rightDoubted: a.rightDoubted + b.rightDoubted,
  talk: a.talk + b.talk,
  talkAsked: a.talkAsked + b.talkAsked,
  talkItems: a.talkItems + b.talkItems,
  sure: [...a.sure, ...b.sure],
});

/** Expected calibration error over ten bins of equal width (Naeini et al. 2015), and the bins. */
export function reliability(sure: ItemCount['sure']): {
  readonly error: number;
  readonly bins: readonly (readonly [number, number, number])[];
} {
  const bins = Array.from({ length: 10 }, (_, i) => sure.filter((one) => Math.min(9, Math.floor(one.sure * 10)) === i))
    .filter((bin) => bin.length > 0)
    .map(
      (bin) =>
        [bin.length, bin.reduce((sum, one) => sum + one.sure, 0) / bin.length, bin.filter((one) => one.right).length / bin.length] as const,
    );
  return { error: bins.reduce((sum, [count, said, was]) => sum + (count / sure.length) * Math.abs(said - was), 0), bins };
}
