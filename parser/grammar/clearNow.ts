/** "Had an ulcer there in March, nothing there today", "last visit he had a gap at ..., today there isn't": however it is said that it is no more, read as "none now". */
import { goneToday, wasThen } from '../lexicon/history.ts';
import { formAt, longestOf } from './forms.ts';
import type { Rewording } from './said.ts';
import { isHead, scan } from './scan.ts';
import type { Token } from './tokens.ts';

const gone = longestOf([[goneToday, true]]);
const leads: ReadonlySet<string> = new Set(['but', 'and', 'though', 'there', 'is', 'it']);

/** The words at the end, behind a pause or "but", with a finding of another day before them. */
function noneNow(tokens: readonly Token[]): readonly Token[] {
  for (let at = 3; at < tokens.length - 1; at += 1) {
    const form = formAt(gone, tokens, at);
    if (form === undefined || at + form.words.length !== tokens.length) continue;
    let from = at;
    while (!tokens[from - 1]?.ends && leads.has(tokens[from - 1]?.t ?? '')) from -= 1;
    const opened = tokens[from - 1]?.ends === true || tokens.slice(from, at).some(({ t }) => t === 'but' || t === 'and');
    const said = tokens.slice(0, from);
    if (!opened || !wasThen.test(said.map(({ t }) => t).join(' '))) return tokens;
    const marks = scan(said).marks.filter((mark) => isHead(mark) && mark.terms?.some(({ k }) => k === 'condition'));
    if (marks.length !== 1) return tokens;
    const first = tokens[at] as Token;
    return [...said, { t: 'none', word: first.word }, { ...(tokens.at(-1) as Token), t: 'now' }];
  }
  return tokens;
}

export const clearNow: readonly Rewording[] = [{ rule: noneNow, needs: ['now', 'today', 'time', 'none', 'not'] }];
