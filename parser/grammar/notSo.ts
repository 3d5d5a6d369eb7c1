/**
 * What is set right in the same breath in words that are no finding: "three ten isn't touching anything, it's out of occlusion" rules nothing out,
 * "I thought was a gap but it isn't, it's tight" and "I took for a crack but it's only a stain" do.
 */
import { isHead, scan } from './scan.ts';
import type { Rewording } from './said.ts';
import type { Token } from './tokens.ts';

const verbs: ReadonlySet<string> = new Set(['is', 'are', 'was', 'has', 'does', 'do', 'did']);
const itIs = /^(?:it is|they are|it has|that's|that is|he is|she is)\b/;
const soundWords: ReadonlySet<string> = new Set([
  'right',
  'smooth',
  'normal',
  'good',
  'happy',
  'great',
  'clean',
  'even',
  'sound',
  'tight',
  'fine',
  'solid',
  'closed',
]);
const LONGEST = 5;

const said = (tokens: readonly Token[]): string => tokens.map(({ t }) => t).join(' ');
const none: ReadonlySet<string> = new Set();
/** No finding, no work, no place, but for `words`. */
const ofNothing = (tokens: readonly Token[], words = none): boolean =>
  scan(tokens).marks.every(
    (mark) =>
      words.has(tokens[mark.from]?.t ?? '') ||
      (!isHead(mark) && mark.place === undefined && !mark.terms?.some(({ k }) => k === 'work' || k === 'cue')),
  );

/** "isn't touching anything, it's ...", "isn't right, it's ...": the words up to the pause. */
function notThat(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(({ t }, i) => t === 'not' && i > 1 && verbs.has(tokens[i - 1]?.t ?? ''));
  const end = at < 0 ? -1 : tokens.findIndex(({ ends }, i) => i > at && ends === true);
  const words = tokens.slice(at + 1, end + 1);
  if (end <= at || words.length > LONGEST || !itIs.test(said(tokens.slice(end + 1, end + 3)))) return tokens;
  const plain = words.length === 1 && soundWords.has(words[0]?.t ?? '');
  const named = scan(tokens.slice(end + 1)).marks.some((mark) =>
    mark.terms?.some((t) => t.k === 'condition' && t.strength !== 'absentSay'),
  );
  return named && (plain || ofNothing(words)) ? [...tokens.slice(0, at - 1), ...tokens.slice(end + 1)] : tokens;
}

const isNot = /^but (?:it|that|there) (?:is|was|has) not$/;
const only = /^but (?:it is|that's|that is|it was|there is) (?:only|just|really|actually)?(?: |$)/;
const took =
  /\b(?:took|taken|taking) (?:it |that )?for an? |\b(?:looked|looks|felt|feels) like an? |\bthought (?:it |that |there )?was an? /;
/** "..., but it isn't, it's tight": the words behind what rules it out; "took for a crack but it's only a stain": said as such. */
function tightInstead(tokens: readonly Token[]): readonly Token[] {
  const but = tokens.findLastIndex(({ t }) => t === 'but');
  if (but < 1) return tokens;
  if (isNot.test(said(tokens.slice(but, but + 4))) && tokens[but + 3]?.ends && itIs.test(said(tokens.slice(but + 4, but + 6))))
    return ofNothing(tokens.slice(but + 4), soundWords) ? tokens.slice(0, but + 4) : tokens;
  const tail = tokens.slice(but);
  if (!only.test(said(tail)) || !took.test(said(tokens.slice(0, but))) || !ofNothing(tail.slice(1))) return tokens;
  const word = (tokens[but] as Token).word;
  return [...tokens.slice(0, but + 1), ...['it', 'is', 'not'].map((t) => ({ t, word }))];
}

export const notSo: readonly Rewording[] = [
  { rule: notThat, needs: ['not'] },
  { rule: tightInstead, needs: ['but'] },
];
