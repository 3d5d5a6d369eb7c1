/** "he's sore on that, look at his face": what shows it, behind what was said, is no place of it. */
import { tookHold } from '../lexicon/becoming.ts';
import { readCodes } from './codes.ts';
import { formAt, longestOf } from './forms.ts';
import { isHead, ofSoftTissue, scan } from './scan.ts';
import type { Rewording } from './said.ts';
import type { Token } from './tokens.ts';

const look = /^(?:just )?(?:look at|see|watch) (?:his|her|the) (?:face|eye|eyes|ears|expression)$/;

function withoutLook(tokens: readonly Token[]): readonly Token[] {
  const from = tokens.slice(0, -1).findLastIndex(({ ends }) => ends === true) + 1;
  const said = tokens
    .slice(from)
    .map(({ t }) => t)
    .join(' ');
  return from > 0 && look.test(said) && scan(tokens.slice(0, from)).marks.some(isHead) ? tokens.slice(0, from) : tokens;
}

const sore =
  /^(?:(?:it|that|is|looks?|looking|all|quite|very|really|pretty|fairly|rather|a|bit|little|still) )*(?:raw|angry|red|pink|weepy)(?: looking)?$/;
/** "ulcer on the left cheek, quite raw, nothing like that on the right": how it looks, between two pauses, is no other ulcer. */
function withoutLooks(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(({ t }) => looksSore.includes(t));
  if (at < 0) return tokens;
  const from = tokens.slice(0, at).findLastIndex(({ ends }) => ends === true) + 1;
  const to = tokens.findIndex(({ ends }, i) => i >= at && ends === true) + 1;
  const said = tokens.slice(from, to).map(({ t }) => t);
  if (from === 0 || to === 0 || to === tokens.length || !sore.test(said.join(' '))) return tokens;
  const found = scan(tokens.slice(0, from)).marks.findLast(isHead);
  return ofSoftTissue(found?.terms) ? [...tokens.slice(0, from), ...tokens.slice(to)] : tokens;
}
const looksSore = ['raw', 'angry', 'red', 'pink', 'weepy'];

const before: ReadonlySet<string> = new Set([
  'the',
  'his',
  'her',
  'on',
  'and',
  'or',
  'upper',
  'lower',
  'top',
  'bottom',
  'both',
  'far',
  'left',
]);
const nearness = /^(?:beside|next to|at the (?:front|back|very|end)|by (?:it|that|the))\b/;
const wholly = /^(?:off|down|out|back|away)\b/;
const takes: ReadonlySet<string> = new Set([
  'took',
  'taken',
  'take',
  'taking',
  'brought',
  'bring',
  'ground',
  'knocked',
  'came',
  'come',
  'got',
  'get',
  'pulled',
  'filed',
  'cut',
]);
/** "took the hook right off": how far, and no side. */
const allTheWay = (tokens: readonly Token[], at: number): boolean =>
  wholly.test(tokens[at + 1]?.t ?? '') && tokens.slice(Math.max(0, at - 8), at).some(({ t }) => takes.has(t));
/** "a sharp point right beside it", "hook on two oh six, right at the front": close by, and no side. */
export function withoutRight(tokens: readonly Token[]): readonly Token[] {
  const near = (at: number): boolean =>
    tokens[at]?.t === 'right' &&
    tokens[at]?.ends !== true &&
    at > 0 &&
    (tokens[at - 1]?.ends === true || !before.has(tokens[at - 1]?.t ?? '')) &&
    (allTheWay(tokens, at) ||
      nearness.test(
        tokens
          .slice(at + 1, at + 4)
          .map(({ t }) => t)
          .join(' '),
      ));
  // "right, two mil off one oh six": a tooth that is named needs no side.
  const opens = tokens[0]?.t === 'right' && tokens[0].ends === true && scan(tokens.slice(1)).marks.some(({ place }) => place?.codes);
  const kept = opens ? tokens.slice(1) : tokens;
  return tokens.some((_, at) => near(at)) ? kept.filter((token) => !near(tokens.indexOf(token))) : kept;
}

const here = longestOf([[['[(just|in|down|up|under|over|round|right)] (here|there)'], true]]);
const itsSide = longestOf([
  [['on (the|his|her) (left|right)', '[on] both sides', '[(on|to)] [(the|his|her)] (left|right) [hand] side'], true],
]);
/** "on the tongue there on the left side", "lump on the lower jaw here, both sides": where it is goes on. */
function withoutHere(tokens: readonly Token[]): readonly Token[] {
  for (let at = 1; at < tokens.length; at += 1) {
    const form = tokens[at - 1]?.ends === true ? undefined : formAt(here, tokens, at);
    const to = at + (form?.words.length ?? 0);
    const side = form && formAt(itsSide, tokens, to);
    if (side && (tokens[to - 1]?.ends !== true || closes(tokens, to + side.words.length)))
      return withoutHere([...tokens.slice(0, at), ...tokens.slice(to)]);
  }
  return tokens;
}
const namedTeeth: ReadonlySet<string> = new Set(['canine', 'canines', 'tush', 'tushes']);
/** "scaled both lower canines there": where the hand is, and not that they are there. */
const worksThere = (tokens: readonly Token[]): readonly Token[] => {
  const at = tokens.findIndex(
    ({ t }, i) => (t === 'there' || t === 'here') && namedTeeth.has(tokens[i - 1]?.t ?? '') && !tokens[i - 1]?.ends,
  );
  const from = tokens.slice(0, Math.max(at, 0)).findLastIndex(({ ends }) => ends === true) + 1;
  if (at < 0 || !tokens.slice(from, at).some(({ t }) => worked.has(t))) return tokens;
  const noun = tokens[at - 1] as Token;
  return [...tokens.slice(0, at - 1), tokens[at]?.ends ? { ...noun, ends: true as const } : noun, ...tokens.slice(at + 1)];
};
const worked: ReadonlySet<string> = new Set([
  ...tookHold,
  'scaled',
  'buffed',
  'rounded',
  'rasped',
  'floated',
  'reduced',
  'smoothed',
  'polished',
  'trimmed',
  'did',
  'done',
  'burred',
]);
const levels: ReadonlySet<string> = new Set([
  'trimmed',
  'brought',
  'took',
  'got',
  'ground',
  'filed',
  'rasped',
  'reduced',
  'cut',
  'burred',
  'bring',
  'trim',
  'take',
]);
/** "trimmed the lower incisors level": brought back level, and not found so. */
const broughtLevel = (tokens: readonly Token[]): readonly Token[] => {
  const at = tokens.findIndex(
    ({ t }, i) => t === 'level' && /^(?:incisors|teeth|fronts)$/.test(tokens[i - 1]?.t ?? '') && !tokens[i - 1]?.ends,
  );
  const from = tokens.slice(0, Math.max(at, 0)).findLastIndex(({ ends }) => ends === true) + 1;
  return at > 0 && tokens.slice(from, at).some(({ t }) => levels.has(t))
    ? [...tokens.slice(0, at), { t: 'back', word: (tokens[at] as Token).word }, ...tokens.slice(at)]
    : tokens;
};

const closes = (tokens: readonly Token[], to: number): boolean => tokens[to - 1]?.ends === true || to === tokens.length;

const jaws: Readonly<Record<string, string>> = {
  top: 'upper',
  upper: 'upper',
  uppers: 'upper',
  bottom: 'lower',
  lower: 'lower',
  lowers: 'lower',
};
const small: ReadonlySet<string> = new Set(['on', 'up', 'at', 'along', 'the']);
/** "gums fine on the top, ...": said behind what they are, the jaw is theirs; read apart it would be its rows. */
function jawBehind(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(({ t }) => /^(?:gum|lip)s?$/.test(t));
  if (at < 0) return tokens;
  // "gum recession on the uppers": the finding has its name from the gum, and the teeth are where it is.
  const [named] = scan(tokens.slice(at, at + 2)).marks;
  if (named && isHead(named) && named.to === 2) return tokens;
  const end = tokens.findIndex(({ ends }, i) => i > at && ends === true);
  const to = end < 0 ? tokens.length : end + 1;
  const last = to - (['row', 'jaw'].includes(tokens[to - 1]?.t ?? '') ? 2 : 1);
  const jaw = jaws[tokens[last]?.t ?? ''];
  let from = last;
  while (small.has(tokens[from - 1]?.t ?? '')) from -= 1;
  if (jaw === undefined || from === last || from <= at + 1 || jaws[tokens[at - 1]?.t ?? ''] !== undefined) return tokens;
  const said = scan(tokens.slice(at + 1, from)).marks;
  if (!said.some(isHead) || said.some(({ place }) => place !== undefined)) return tokens;
  const told = tokens.slice(at, from);
  const close = tokens[to - 1]?.ends ? { ends: true as const } : {};
  return [
    ...tokens.slice(0, at),
    { t: jaw, word: tokens[last]?.word as number },
    ...told.slice(0, -1),
    { ...(told.at(-1) as Token), ...close },
    ...tokens.slice(to),
  ];
}

const soft: ReadonlySet<string> = new Set(['gum', 'gums', 'lip', 'bone', 'cheek']);
const by: ReadonlySet<string> = new Set(['just', 'right']);
const besideTooth: ReadonlySet<string> = new Set(['below', 'above', 'beneath', 'underneath']);
/** "the gum below three oh two", "the bone above one oh eight": by that tooth. */
function byTooth(tokens: readonly Token[]): readonly Token[] {
  const near = (at: number): boolean =>
    besideTooth.has(tokens[at]?.t ?? '') &&
    tokens[at]?.ends !== true &&
    tokens[at - 1]?.ends !== true &&
    soft.has(tokens[at - (by.has(tokens[at - 1]?.t ?? '') ? 2 : 1)]?.t ?? '') &&
    readCodes(tokens, tokens[at + 1]?.t === 'the' ? at + 2 : at + 1) !== undefined;
  // "the gum's bleeding round three oh three": there, and no rounding.
  const round = (at: number): boolean =>
    tokens[at]?.t === 'round' && tokens.slice(0, at).some(({ t }) => /^gums?$/.test(t)) && readCodes(tokens, at + 1) !== undefined;
  const over = (at: number): boolean => near(at) || round(at);
  return tokens.some((_, at) => over(at)) ? tokens.map((token, at) => (over(at) ? { ...token, t: 'over' } : token)) : tokens;
}

const broken: ReadonlySet<string> = new Set([
  'chip',
  'chips',
  'chipped',
  'fracture',
  'fractured',
  'crack',
  'cracked',
  'break',
  'broken',
  'piece',
  'flake',
]);
const onIts = longestOf([[['(on|off|at|from|out of) (its|the|one|a) corner', '(on|off|at) the corner of it'], true]]);
/** "two oh three has an old chip on its corner": of that tooth, and no corner incisor. */
function ofItsCorner(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex((_, i) => broken.has(tokens[i - 1]?.t ?? '') && formAt(onIts, tokens, i) !== undefined);
  const to = at + (formAt(onIts, tokens, at)?.words.length ?? 0);
  const before = tokens[at - 1];
  if (at < 0 || !before || !scan(tokens.slice(0, at)).marks.some(({ place }) => place?.codes)) return tokens;
  return [...tokens.slice(0, at - 1), tokens[to - 1]?.ends ? { ...before, ends: true as const } : before, ...tokens.slice(to)];
}

/** "no swelling on the jaw": under it is its bone, as "on the right jaw" is. */
function onTheJaw(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(
    ({ t }, i) => t === 'jaw' && whose.has(tokens[i - 1]?.t ?? '') && ['on', 'along', 'of'].includes(tokens[i - 2]?.t ?? ''),
  );
  const closed =
    at > 2 && (tokens[at]?.ends === true || at + 1 === tokens.length || ['and', 'or', 'but'].includes(tokens[at + 1]?.t ?? ''));
  return closed && ofSoftTissue(scan(tokens.slice(0, at - 2)).marks.at(-1)?.terms)
    ? tokens.map((token, i) => (i === at ? { ...token, t: 'mandible' } : token))
    : tokens;
}
const whose: ReadonlySet<string> = new Set(['the', 'his', 'her']);

/** "the gum's receded and it's inflamed": what is inflamed is the gum. */
function gumInflamed(tokens: readonly Token[]): readonly Token[] {
  const at = tokens.findIndex(
    ({ t }, i) =>
      t === 'inflamed' && ['is', "'s", 'looks'].includes(tokens[i - 1]?.t ?? '') && /^(?:it|that)$/.test(tokens[i - 2]?.t ?? ''),
  );
  const gum = at > 0 && tokens.slice(0, at).some(({ t }) => /^(?:gums?|recession|receded|receding)$/.test(t));
  return gum ? tokens.map((token, i) => (i === at - 2 ? { ...token, t: 'gum' } : token)) : tokens;
}

/** Less the look at the horse behind a finding and how sore it looks, less a "right" that is no side and a "here" before a side that is one; a gum "below" a tooth is by it, and one fine "on the top" of that jaw. */
export const lookThere: readonly Rewording[] = [
  { rule: gumInflamed, needs: ['inflamed'] },
  { rule: onTheJaw, needs: ['jaw'] },
  { rule: withoutLook, needs: ['face', 'eye', 'eyes', 'ears', 'expression'] },
  { rule: withoutLooks, needs: looksSore },
  { rule: withoutRight, needs: ['right'] },
  { rule: jawBehind, needs: ['gum', 'gums', 'lip', 'lips'] },
  { rule: byTooth, needs: [...besideTooth, 'round'] },
  { rule: ofItsCorner, needs: ['corner'] },
  { rule: withoutHere, needs: ['here', 'there'] },
  { rule: worksThere, needs: namedTeeth },
  { rule: broughtLevel, needs: ['level'] },
];
