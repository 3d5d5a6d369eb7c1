/** Tokens: the words of an utterance as the grammar reads them; each remembers which word it came from. */
import type { ConditionId } from '../lexicon/conditions.ts';
import { sounds } from '../lexicon/fillers.ts';
import { dialect } from '../lexicon/dialect.ts';
import { ohWords } from '../lexicon/numbers.ts';

export interface Token {
  /** Lower case, no marks. */
  readonly t: string;
  /** Index of the word in the utterance. */
  readonly word: number;
  /** All the words it stands for, when several were heard for one. */
  readonly heard?: readonly number[];
  /** A comma or a stop was written behind it: no name runs on across it. */
  readonly ends?: true;
  /** Stands for what was said before ("it", "that row"): carried, not spoken. */
  readonly carried?: true;
  /** Where something was found that was named again: what it is. */
  readonly of?: readonly ConditionId[];
  /** What was said, where the grammar reads it under another name ("near" as left). */
  readonly said?: string;
}
/** The words as they were said, for what is kept in its own words. */
export const ownWords = (tokens: readonly Token[]): readonly string[] => tokens.map(({ t, said }) => said ?? t);

const unitGlued = /^(\d+(?:[.,]\d+)?)(mm|cm|ml|mg|mcg|kg|%|°)$/;
const contractions: Readonly<Record<string, readonly string[]>> = {
  "isn't": ['is', 'not'],
  "aren't": ['are', 'not'],
  "wasn't": ['was', 'not'],
  "there's": ['there', 'is'],
  "it's": ['it', 'is'],
  "he's": ['he', 'is'],
  "gag's": ['gag', 'is'],
  "speculum's": ['speculum', 'is'],
  "vet's": ['vet', 'is'],
  "she's": ['she', 'is'],
  "that's": ["that's"],
  cannot: ['can', 'not'],
  "can't": ['can', 'not'],
  "couldn't": ['could', 'not'],
  "didn't": ['did', 'not'],
  "doesn't": ['does', 'not'],
  "don't": ['do', 'not'],
  "wouldn't": ['would', 'not'],
  "hasn't": ['has', 'not'],
  "haven't": ['have', 'not'],
  "won't": ['will', 'not'],
  "shouldn't": ['should', 'not'],
  "weren't": ['were', 'not'],
  "hadn't": ['had', 'not'],
  "needn't": ['need', 'not'],
  "shan't": ['shall', 'not'],
};

/** Words are what white space parts; a word may give several tokens ("4mm", "309-310") or none (a lone mark, a mere sound of hesitation). */
export function tokenise(words: readonly string[]): readonly Token[] {
  const tokens: Token[] = [];
  words.forEach((w, word) => {
    const before = tokens.length;
    const got = gotNext(words[word + 1]);
    const article = articles.has(words[word + 1] ?? '');
    // "yeah nah, one oh six is hooked": a yes.
    const yeah = nah.test(w) && yeahs.test(words[word - 1] ?? '');
    for (const t of yeah ? ['yeah'] : parts(w))
      if (!mereSounds.has(t)) tokens.push({ t: got && t === 'is' && w !== 'is' ? 'has' : article && t === "'d" ? 'had' : t, word });
    const last = tokens.at(-1);
    if (last && tokens.length > before && closing.has(w.at(-1) as string)) tokens[tokens.length - 1] = { ...last, ends: true };
  });
  return tokens;
}

/** "two ten's got a hook": has. */
const gotNext = (next: string | undefined): boolean => next === 'got' || next === 'had';
const nah = /^nah\b/i;
const yeahs = /^(?:yeah|yea|yep)\b/i;
/** "he'd an ulcer": had. */
const articles: ReadonlySet<string> = new Set(['a', 'an', 'no']);
const mereSounds = new Set(sounds);
/** "M1", "P4": the name and the number of a tooth. */
const figures = ['', 'one', 'two', 'three', 'four'];
const toothGlued = /^([pm])([1-4])$/;
const closing = new Set([',', ';', ':', '.', '!', '?']);

/** Words with "'s" that the lexicon knows as they are. */
const verbatim = new Set(["that's", "let's"]);
/** "we've", "i'd": the verb is parted from the word it leans on, and written out where it can be one only. */
const writtenOut: Readonly<Record<string, string>> = { "'ve": 'have', "'ll": 'will', "'re": 'are', "'m": 'am' };
const leaning = /^(.+)('ve|'re|'ll|'m|'d)$/;
const plainWord = /^[a-z]+$/;

function parts(word: string): readonly string[] {
  if (plainWord.test(word) && word !== 'cannot') return dialect[word] ?? [word];
  const plain = word
    .toLowerCase()
    .normalize('NFKC')
    .replace(/[’‘]/g, "'")
    .replace(/[^\p{L}\p{N}.'/%°-]+/gu, ' ')
    .trim();
  return plain.split(/[\s-]+|(?<=\p{L})\/(?=\p{L})/u).flatMap((part) => {
    const bare = part.replace(/^[.'/]+|[.'/]+$/g, '');
    if (bare === '') return [];
    const glued = unitGlued.exec(bare);
    if (glued) return [glued[1] as string, glued[2] as string];
    const tooth = toothGlued.exec(bare);
    if (tooth) return [tooth[1] as string, figures[Number(tooth[2])] as string];
    const known = contractions[bare] ?? dialect[bare];
    if (known) return known;
    // "two ten's loose": is, or the owner's: "is" holds nothing that the record would keep.
    if (bare.endsWith("'s") && !verbatim.has(bare)) return [bare.slice(0, -2), 'is'];
    const leant = leaning.exec(bare);
    return leant ? [leant[1] as string, writtenOut[leant[2] as string] ?? (leant[2] as string)] : [bare];
  });
}

const ohs: ReadonlySet<string | undefined> = new Set(ohWords);
export const isOh = (t: string | undefined): boolean => ohs.has(t);
/** Most words are no figure: told by their first letter, before any pattern is tried. */
export const startsWithDigit = (t: string): boolean => {
  const c = t.charCodeAt(0);
  return c >= 48 && c <= 57;
};
