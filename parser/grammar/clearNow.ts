/**
 * "Had an ulcer there in March, nothing there today", "last visit he had a gap at ..., today there isn't": however it is said that it is no more, read as "none now".
 * "Took the hook off one oh six last year and it's come back, three mil": the hook is there, and the work is of another day.
 */
import { goneToday, thereAgain, wasThen } from '../lexicon/history.ts';
import { formAt, longestOf } from './forms.ts';
import { first } from './lists.ts';
import { nameOf } from './namedAgain.ts';
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

const again = longestOf([[thereAgain, true]]);
/** What was worked on then, named again where it is said to be back. */
function backAgain(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex((_, i) => i > 3 && formAt(again, tokens, i) !== undefined);
  if (at < 0) return tokens;
  let from = at;
  while (!tokens[from - 1]?.ends && ['but', 'and', 'though'].includes(tokens[from - 1]?.t ?? '')) from -= 1;
  const then = tokens.slice(0, from);
  const marks = scan(then).marks;
  const name = first([...marks].reverse(), (mark) => nameOf(mark, then));
  const place = marks.findLast((mark) => mark.place?.codes !== undefined);
  const worked =
    marks.some(({ terms }) => terms?.some((t) => t.k === 'work' && t.term.as === 'procedure')) ||
    then.some(({ t }) => t === 'took' || t === 'had');
  if (name === undefined || place === undefined || !worked || !wasThen.test(then.map(({ t }) => t).join(' '))) return tokens;
  const to = at + (formAt(again, tokens, at)?.words.length ?? 0);
  const { word } = tokens[at] as Token;
  const { word: lastWord, ends } = tokens[to - 1] as Token;
  const named = [then[name.at] as Token, ...then.slice(place.from, place.to)].map(({ t }, i): Token => ({
    t,
    word: i === 0 ? word : lastWord,
    carried: true,
  }));
  return [
    ...then.slice(0, -1),
    { ...(then.at(-1) as Token), ends: true },
    ...named.slice(0, -1),
    { ...(named.at(-1) as Token), ...(ends ? { ends } : {}) },
    ...tokens.slice(to),
  ];
}

export const clearNow: readonly Rewording[] = [
  { rule: noneNow, needs: ['now', 'today', 'time', 'none', 'not'] },
  { rule: backAgain, needs: ['back', 'grown', 'returned', 'built', 'another', 'again', 'come'] },
];
