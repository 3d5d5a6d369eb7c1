/** The grammar's front door. Pure: no clock, no random, no I/O. */
import type { Context, Header, ParseResult } from './contract/draft.ts';
import type { HeardPhrase } from './contract/word.ts';
import { carryOf } from './grammar/carry.ts';
import { parseOne, stretchesRead, type Parsed, type Stretches } from './grammar/parse.ts';
import { askedWhereLost } from './grammar/soundsOfTrade.ts';
import { lexiconVersion, tradeForms } from './grammar/vocabulary.ts';
import { weigh } from './grammar/weigh.ts';

export type { Context } from './contract/draft.ts';
export { lexiconVersion };
export type { Parsed } from './grammar/parse.ts';
export { mayEnd } from './grammar/ending.ts';
export { memory } from './grammar/memory.ts';
export { stretchesRead } from './grammar/parse.ts';
export { explain } from './grammar/explain.ts';
export { proposer } from './grammar/propose.ts';
export { withNames } from './grammar/names.ts';
export { soundsApart } from './grammar/apart.ts';
export { meaningOf } from './grammar/meaning.ts';
export { legalTeeth } from './grammar/teeth.ts';
export { labelOf, say } from './labels.ts';

const noHeader: Header = { horse: null, owner: null, yard: null, examiner: null, startedAt: null };

/** The context of an exam in which nothing was said yet. */
export const emptyContext = (header: Partial<Header> = {}): Context => ({
  header: { ...noHeader, ...header },
  items: [],
  doubts: [],
  carry: undefined,
});

/**
 * Reads one phrase in its context. Every hypothesis is read; an item's `evidence.sure` is the share of the ear's belief
 * (posterior of its acoustic scores) that the hypotheses yielding the same item hold, 0 to 1.
 * Speech without words is the doubt `unheard`. Never throws on words.
 * @param stretches what was read before in this very context, behind the same silence; `stretchesRead` begins one
 */
export function parse(heard: HeardPhrase, context: Context, stretches: Stretches = stretchesRead()): Parsed {
  const best = heard.hypotheses[0];
  if (best === undefined || best.words.length === 0) return unheard(heard, context);
  const first = parseOne(heard, best, context, stretches);
  const weighed = withSound(heard) ? weigh(first, heard, context, stretches) : first;
  return carryOf(context).paused ? weighed : askedWhereLost(weighed);
}

/** One typed or scripted line: no times, nothing to weigh. */
export const parseText = (id: string, text: string, context: Context, stretches?: Stretches): Parsed =>
  parse(
    {
      id,
      reader: 'typed',
      hypotheses: [
        {
          text,
          logProb: 0,
          words: text
            .split(/\s+/)
            .filter(Boolean)
            .map((w) => ({ w })),
        },
      ],
    },
    context,
    stretches,
  );

/** Typed and scripted lines were not heard: nothing of them is to be weighed, and how sure they are means nothing. */
const withSound = ({ reader }: HeardPhrase): boolean => reader !== 'typed' && reader !== 'scripted';

function unheard(heard: HeardPhrase, context: Context): Parsed {
  const text = heard.hypotheses[0]?.text ?? '';
  const at = heard.at ? { at: heard.at } : {};
  const result: ParseResult = {
    id: heard.id,
    text,
    utterance: {
      id: heard.id,
      text,
      words: [],
      reader: heard.reader,
      ...at,
      ...(heard.silenceBefore !== undefined ? { silenceBefore: heard.silenceBefore } : {}),
    },
    items: [],
    commands: [],
    hints: [],
    settles: [],
    leftovers: [],
    carry: context.carry,
    doubts: withSound(heard) ? [{ id: `${heard.id}/d1`, doubt: 'unheard', words: '', utterance: heard.id, state: 'open', ...at }] : [],
  };
  return { ...result, trace: { steps: 0, made: [] } };
}

/** Phrases the ear may expect: every spoken form of the lexicon. */
export const spokenForms = (): readonly string[] => tradeForms;
