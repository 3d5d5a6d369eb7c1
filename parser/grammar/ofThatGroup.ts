/**
 * "All four canines are up, bit of tartar on the lowers", "corners in wear, the bottom ones are sharp": of the teeth that the phrase has named by their
 * kind, those of one jaw, and no cheek teeth. "Canines up, all four" is said of all of them before more is said of some.
 */
import type { Rewording } from './said.ts';
import { scan } from './scan.ts';
import type { Token } from './tokens.ts';

const kinds: ReadonlySet<string> = new Set(['canines', 'tushes', 'tusks', 'corners', 'centrals', 'laterals', 'intermediates']);
const plural: Readonly<Record<string, string>> = { lowers: 'lower', uppers: 'upper' };
const jaws: Readonly<Record<string, string>> = { lower: 'lower', bottom: 'lower', upper: 'upper', top: 'upper' };
/** What only cheek teeth have, or where on them: "incisors level, points on the outside of the uppers". */
const ofCheekTeeth =
  /\b(?:points?|enamel|edges?|hooks?|ramps?|waves?|steps?|shear|ridges?|outsides?|insides?|buccal|lingual|palatal|cheek|tongue|rasped|floated)\b/;
/** "sharp on the uppers" is of cheek teeth more often than not; tartar is not. */
const ofAny = /\b(?:tartar|calculus)\b/;
const before: ReadonlySet<string> = new Set(['the', 'on', 'of', 'both', 'two']);

/** The jaw that these words name, and how many words do. */
function jawAt(tokens: readonly Token[], at: number): { readonly jaw: string; readonly to: number } | undefined {
  const t = tokens[at]?.t ?? '';
  if (plural[t]) return { jaw: plural[t], to: at + 1 };
  return jaws[t] && tokens[at + 1]?.t === 'ones' ? { jaw: jaws[t], to: at + 2 } : undefined;
}

function ofThem(tokens: readonly Token[]): readonly Token[] {
  const named = tokens.findIndex(({ t }) => kinds.has(t));
  if (named < 0) return tokens;
  const put = tokens.flatMap((token, at): readonly Token[] => {
    const jaw = at > named && before.has(tokens[at - 1]?.t ?? '') ? jawAt(tokens, at) : undefined;
    if (jaw === undefined) return at > named && jawAt(tokens, at - 1)?.to === at + 1 && before.has(tokens[at - 2]?.t ?? '') ? [] : [token];
    const kind = tokens.slice(0, at).findLast(({ t }) => kinds.has(t))?.t ?? '';
    const from = tokens.slice(0, at).findLastIndex(({ ends }) => ends) + 1;
    const end = tokens.findIndex(({ ends }, i) => i >= at && ends);
    const part = tokens
      .slice(from, end < 0 ? tokens.length : end + 1)
      .map(({ t }) => t)
      .join(' ');
    const cheek = ofCheekTeeth.test(part) || (plural[token.t] !== undefined && !ofAny.test(part));
    const others =
      cheek || scan(tokens.slice(named + 1, at)).marks.some(({ place }) => place?.codes !== undefined || place?.region !== undefined);
    const ends = tokens[jaw.to - 1]?.ends;
    return others
      ? tokens.slice(at, jaw.to)
      : [
          { t: jaw.jaw, word: token.word },
          { t: kind, word: tokens[jaw.to - 1]?.word ?? token.word, ...(ends ? { ends } : {}) },
        ];
  });
  return put;
}

const all =
  /^(?:(?:and|so|right|now) )*(canines|tushes|tusks) (?:(?:are |is )?(?:up|in|through|present|erupted|there) |(?:he|she) (?:is|has)(?: got)? )all four$/;
function allOfThem(tokens: readonly Token[]): readonly Token[] {
  const to = tokens.findIndex(({ t, ends }, i) => t === 'four' && ends && tokens[i - 1]?.t === 'all') + 1;
  const kind =
    to === 0 || to === tokens.length
      ? undefined
      : all.exec(
          tokens
            .slice(0, to)
            .map(({ t }) => t)
            .join(' '),
        )?.[1];
  const heard = tokens.slice(0, to).map(({ word }) => word);
  return kind === undefined
    ? tokens
    : [
        ...['all', 'four', kind].map((t): Token => ({ t, word: heard[0] as number, heard })),
        { t: 'present', word: heard.at(-1) as number, heard, ends: true },
        ...tokens.slice(to),
      ];
}

export const ofThatGroup: readonly Rewording[] = [
  { rule: allOfThem, needs: ['canines', 'tushes', 'tusks'] },
  { rule: ofThem, needs: kinds },
];
