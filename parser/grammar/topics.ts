/**
 * Said before the thing itself, or in place of its name: "caries wise there's ...", "as far as hooks go, ..." names what is spoken of next;
 * "today there's one on the left" is the finding named last, at a place of its own; "stage three up top and stage two below" are the jaws.
 */
import { regions } from '../lexicon/regions.ts';
import { digit } from './numbers.ts';
import type { Rewording } from './said.ts';
import { isGlue, isHead, scan, type Mark } from './scan.ts';
import { expand } from './template.ts';
import type { Token } from './tokens.ts';

/** How many words it may take to name what is spoken of. */
const LONGEST = 4;
const names = (tokens: readonly Token[]): boolean => {
  const marks = scan(tokens).marks.filter((mark) => !isGlue(mark));
  return marks.length > 0 && marks.every((mark) => isHead(mark) || mark.place?.region !== undefined);
};

/** With a finding of its own behind it, it says nothing more. */
function topic(tokens: readonly Token[]): readonly Token[] {
  const wise = tokens.findIndex(({ t }, i) => i > 0 && i <= LONGEST && t === 'wise');
  const far = tokens.findIndex(({ t }, i) => t === 'as' && tokens[i + 1]?.t === 'far' && tokens[i + 2]?.t === 'as');
  const goes = far < 0 ? -1 : tokens.findIndex(({ t }, i) => i > far + 3 && i <= far + 3 + LONGEST && (t === 'goes' || t === 'go'));
  const [from, at, to] = goes > 0 ? [far, far + 3, goes] : [0, 0, wise];
  const rest = tokens.slice(to + 1);
  return to > at && names(tokens.slice(at, to)) && scan(rest).marks.some(isHead) ? [...tokens.slice(0, from), ...rest] : tokens;
}

const times: ReadonlySet<string> = new Set(['now', 'today', 'time', 'visit']);
const having: ReadonlySet<string> = new Set(['is', 'has', 'have', 'got']);
const only = (mark: Mark | undefined, key: 'side'): boolean =>
  mark?.place?.[key] !== undefined && Object.keys(mark.place).every((name) => name === key);

/** "last visit an ulcer on the right cheek, today there's one on the left" */
function oneNow(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(
    ({ t }, i) =>
      t === 'one' &&
      having.has(tokens[i - 1]?.t ?? '') &&
      ['on', 'in', 'at'].includes(tokens[i + 1]?.t ?? '') &&
      tokens.slice(Math.max(0, i - 4), i - 1).some(({ t: word }) => times.has(word)),
  );
  if (at < 0) return tokens;
  const before = scan(tokens.slice(0, at)).marks;
  const head = before.findLast((mark) => isHead(mark) && mark.place === undefined && mark.terms?.some(({ k }) => k === 'condition'));
  const near = before.findLast(({ place }) => place !== undefined)?.place;
  const next = scan(tokens.slice(at + 1)).marks.find((mark) => !isGlue(mark));
  if (head === undefined || near === undefined || next?.place === undefined) return tokens;
  const { word } = tokens[at] as Token;
  const name = tokens.slice(head.from, head.to).map(({ t }): Token => ({ t, word }));
  const end = at + 1 + next.to;
  const part = only(next, 'side') && near.region ? (expand(regions[near.region].say[0] as string)[0] as readonly string[]) : [];
  const last = tokens[end - 1] as Token;
  const put = part.map((t, i): Token => ({
    t,
    word: last.word,
    carried: true,
    ...(i === part.length - 1 && last.ends ? { ends: true } : {}),
  }));
  return [
    ...tokens.slice(0, at),
    ...name,
    ...tokens.slice(at + 1, end - 1),
    put.length > 0 ? { t: last.t, word: last.word } : last,
    ...put,
    ...tokens.slice(end),
  ];
}

const down: ReadonlySet<string> = new Set(['top', 'above', 'uppers']);
const up: ReadonlySet<string> = new Set(['below', 'bottom', 'lowers', 'underneath']);
/** Behind a degree or a grade, where the other jaw has its own. */
function jaws(tokens: readonly Token[]): readonly Token[] {
  const other = (of: ReadonlySet<string>): boolean => tokens.some(({ t }) => of.has(t));
  return tokens.flatMap((token, i): readonly Token[] => {
    const closed = i === tokens.length - 1 || token.ends === true || tokens[i + 1]?.t === 'and';
    const degree = closed && (token.t === 'below' || token.t === 'above') ? scan(tokens.slice(i - 1, i)).marks[0] : undefined;
    const told = digit(tokens[i - 1]?.t ?? '') !== undefined || degree?.terms?.some(({ k }) => k === 'severity' || k === 'severityKept');
    return degree && told && other(token.t === 'below' ? down : up)
      ? [{ t: token.t === 'below' ? 'down' : 'up', word: token.word }, token]
      : [token];
  });
}

export const topics: readonly Rewording[] = [
  { rule: topic, needs: ['wise', 'far'] },
  { rule: oneNow, needs: times },
  { rule: jaws, needs: ['below', 'above'] },
];
