/**
 * "hook on one oh six, ditto two oh six", "one oh nine overlong, as is two oh nine", "neither one oh six nor two oh six has a hook": what is said of
 * one place is said of the other. Each is one list of places, and is read as one.
 */
import { firstWords, formAt, longestOf } from './forms.ts';
import { isGlue, isHead, scan, type Mark } from './scan.ts';
import type { Rewording } from './said.ts';
import type { Token } from './tokens.ts';
import { alikeSay } from '../lexicon/alike.ts';

const alike = longestOf([[alikeSay, true]]);
function neither(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(({ t }) => t === 'neither');
  const nor = at < 0 ? -1 : tokens.findIndex(({ t }, i) => i > at && (t === 'nor' || t === 'or'));
  if (nor < 0) return tokens;
  const places = (from: number, to: number): boolean => {
    const { marks } = scan(tokens.slice(from, to));
    return marks.some(({ place }) => place !== undefined) && marks.every((mark) => mark.place !== undefined || isGlue(mark));
  };
  const next = scan(tokens.slice(nor + 1)).marks.find((mark) => !isGlue(mark));
  return places(at + 1, nor) && next?.place !== undefined ? tokens.map((token, i) => (i === nor ? { ...token, t: 'and' } : token)) : tokens;
}

const being: ReadonlySet<string> = new Set(['is', 'was', 'are', 'were', 'looks', 'feels']);
/** "ulcers on the cheek and a cut on the tongue, neither of which will help him": said of what was found, and rules nothing out but what stands behind it. */
function neitherOfWhich(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(
    ({ t }, i) => t === 'neither' && tokens[i + 1]?.t === 'of' && ['which', 'whom'].includes(tokens[i + 2]?.t ?? ''),
  );
  if (at < 0) return tokens;
  const said = scan(tokens.slice(at + 3)).marks.filter((mark) => !isGlue(mark));
  if (said.some(isHead)) return tokens;
  const verb = at + 3;
  const how =
    said[0]?.from === 1 &&
    (said[0].measure ?? said[0].grade ?? said[0].terms?.find(({ k }) => /^(?:severity|change|surface|qualifier)/.test(k)));
  const not = being.has(tokens[verb]?.t ?? '') && (how !== undefined || tokens[verb + 1]?.t === 'there');
  return [
    ...tokens.slice(0, at),
    ...tokens.slice(at + 2, verb + 1),
    ...(not ? [{ t: 'not', word: (tokens[at] as Token).word }] : []),
    ...tokens.slice(verb + 1),
  ];
}

/** "on one of two oh six and one oh six": which, was not said. */
function oneOf(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(({ t }, i) => t === 'one' && tokens[i + 1]?.t === 'of');
  const first = at < 0 ? undefined : scan(tokens.slice(at + 2)).marks.find((mark) => !isGlue(mark));
  const and = first?.place === undefined ? -1 : tokens.findIndex(({ t }, i) => i > at + 2 && t === 'and');
  return first && and > 0 && and <= at + 2 + first.to ? tokens.map((token, i) => (i === and ? { ...token, t: 'or' } : token)) : tokens;
}

function ditto(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex((_, i) => i > 0 && formAt(alike, tokens, i) !== undefined);
  const form = at < 0 ? undefined : formAt(alike, tokens, at);
  if (form === undefined) return tokens;
  const from = at + form.words.length;
  const before = scan(tokens.slice(0, at)).marks.filter((mark) => !isGlue(mark));
  const place = scan(tokens.slice(from)).marks.find((mark) => !isGlue(mark));
  const to = from + (place?.to ?? 0);
  // Behind a finding with its place, and nothing of its own said behind the other place.
  const told = before.some(isHead) && before.some((mark) => mark.place !== undefined) && before.at(-1)?.unknown !== true;
  const closed = to === tokens.length || tokens[to - 1]?.ends === true;
  const full = ({ codes, region, positions, side }: NonNullable<Mark['place']>): boolean =>
    (codes ?? region ?? positions ?? side) !== undefined;
  if (!told || !closed || place?.place === undefined || isHead(place) || !full(place.place)) return tokens;
  const { word } = tokens[at] as Token;
  const last = tokens[to - 1] as Token;
  return [
    ...tokens.slice(0, at),
    { t: 'and', word },
    ...tokens.slice(from, to - 1),
    { t: last.t, word: last.word },
    { t: 'too', word, ...(last.ends ? { ends: true as const } : {}) },
    ...tokens.slice(to),
  ];
}

const also = /^(?:(?:and|but|oh|yes|yeah) )*so (?:is|are|has|have|does|do) (?:the )?/;
/** "so has four eleven": that one too, of what was found last. */
function soHas(tokens: readonly Token[]): readonly Token[] {
  const words = tokens.map(({ t }) => t).join(' ');
  const lead = also.exec(words)?.[0];
  const from = lead === undefined ? 0 : lead.trim().split(' ').length;
  const rest = lead === undefined ? [] : scan(tokens.slice(from)).marks.filter((mark) => !isGlue(mark));
  const last = tokens.at(-1);
  return last && rest.length > 0 && rest.every(({ place }) => (place?.codes ?? place?.positions) !== undefined)
    ? [...tokens.slice(from), { t: 'too', word: last.word }]
    : tokens;
}

/** "And" for what joins alike places. */
export const alikeThere: readonly Rewording[] = [
  { rule: soHas, needs: ['so'] },
  { rule: neither, needs: ['neither'] },
  { rule: neitherOfWhich, needs: ['neither'] },
  { rule: oneOf, needs: ['of'] },
  { rule: ditto, needs: firstWords(alike) },
];
