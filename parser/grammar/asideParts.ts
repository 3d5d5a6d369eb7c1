/**
 * Parts between pauses that say nothing of the mouth by themselves: "grand, I'll see her again", "see that brown stuff there, that's tartar",
 * "possible crack in one ten, can't be sure without a picture". Read with the rest, their words would be another finding, or work.
 */
import { vocatives } from '../lexicon/talkBeside.ts';
import { partsOf } from './pauses.ts';
import type { Rewording } from './said.ts';
import { scan } from './scan.ts';
import type { Token } from './tokens.ts';

interface Aside {
  readonly part: RegExp;
  /** What the part behind it begins with, and what the one before it holds, where that matters. */
  readonly next?: RegExp;
  readonly before?: RegExp;
  /** It stands first, or behind something. */
  readonly first: boolean;
}
const table: readonly Aside[] = [
  {
    part: /^(?:(?:and|so|oh|right|okay|well|that is) )*(?:grand|perfect|great|good|fine|lovely|sound|brilliant|super)$/,
    next: /^(?:i|we|you|see|thank|thanks|let us|book|that is (?:him|her|us|you|me|them|it|all))\b/,
    first: true,
  },
  {
    part: /^(?:(?:can|do|did) you )?see (?:that|the|this|those|these) (?:\w+ ){1,3}(?:there|here)$/,
    next: /^(?:that|this|it|those|they) (?:is|are)\b/,
    first: true,
  },
  { part: /^nothing (?:(?:much|really|at all) )*to see (?:(?:from|on) the )?outside(?: really| at all)?$/, next: /./, first: true },
  {
    part: /^(?:but |though )?(?:(?:i|we|you) )?(?:can|could) not (?:really )?(?:be |say |tell )?(?:for )?(?:certain|sure|say|tell|know)?(?: for (?:certain|sure))? without (?:a |an |the |some )?(?:picture|pictures|photo|x ray|x rays|radiograph|radiographs|scan|film)$/,
    first: false,
  },
  // "..., and that's as much as i'd want to do in one go": of the work before it, and nothing to come.
  {
    part: /^(?:(?:and|but|so) )*(?:that is|which is|it is) (?:(?:really|about|just|probably) )*(?:as (?:much|far|low) as|all|plenty|enough|the most|the limit)\b.*\b(?:in (?:the )?one (?:go|visit|sitting|session|day|hit)|at once|at (?:a|the one) time|for (?:the )?one (?:go|day|visit))$/,
    first: false,
  },
  // Why work was left undone: read as work itself, it would undo what was said of the first.
  {
    part: /^(?:(?:he|she|it) does not need (?:it|them|any|one)|(?:it is |they are )?not needed|(?:there is )?no need)$/,
    before: /\b(?:have not|has not|did not|not) (?:done|do)\b/,
    first: false,
  },
];

/** Whoever is spoken to, between pauses or at the end: "none on the left, missus". */
const spokenTo = new RegExp(`^(?:(?:there|now|so|right|well|ah|oh|look|see|yeah|okay|you see|my|old) )*(?:${vocatives.join('|')})$`);

const said = (tokens: readonly Token[]): string =>
  tokens
    .map(({ t }) => t)
    .join(' ')
    .replace(/-/g, ' ')
    .replace(/ ?'s\b/g, ' is');

const pleased = /^(?:(?:and|that is|very|really) )*(?:grand|lovely|great|perfect|brilliant|super|smashing|good|champion)$/;
/** "hook on one oh six, grand", "see him in six months, lovely": behind a finding or what comes next nothing is called normal. */
const isPleased = (parts: readonly (readonly Token[])[], i: number): boolean =>
  i > 0 &&
  i === parts.length - 1 &&
  pleased.test(said(parts[i] as readonly Token[])) &&
  scan(parts[i - 1] as readonly Token[]).marks.some(
    ({ terms }) =>
      terms?.some(
        (t) => (t.k === 'condition' && t.id !== 'abnormality' && t.strength === 'say') || (t.k === 'work' && settles.has(t.term.as)),
      ) === true,
  );
const settles: ReadonlySet<string> = new Set(['agent', 'recheck', 'procedure', 'scale']);

function withoutAsides(tokens: readonly Token[]): readonly Token[] {
  const parts = partsOf(tokens);
  if (parts.length < 2) return tokens;
  const texts = parts.map(said);
  const aside = (i: number): boolean =>
    spokenTo.test(texts[i] as string) ||
    isPleased(parts, i) ||
    table.some(
      ({ part, next, before, first }) =>
        (i === 0) === first &&
        part.test(texts[i] as string) &&
        (next === undefined || next.test(texts[i + 1] ?? '')) &&
        (before === undefined || before.test(texts[i - 1] ?? '')),
    );
  const kept = parts.filter((_, i) => !aside(i));
  return kept.length === 0 || kept.length === parts.length ? tokens : kept.flat();
}

const noneThere = /^(?:and )?(?:there is )?nothing (?:wrong )?(?:in|on|at|with) (?:the |his |her )?/;
const normalSo =
  /^(?:the |his |her )?\w+(?: \w+)? (?:is|are|feel|feels|look|looks) (?:even|normal|fine|good|okay|ok|equal|symmetrical|clear|grand|smooth)$/;
/** "masseters are even, nothing in the joints either": the joints are normal too, and what stands before is not among what is not in them. */
function normalToo(tokens: readonly Token[]): readonly Token[] {
  const parts = partsOf(tokens);
  const at = parts.findIndex((part, i) => i > 0 && noneThere.test(said(part)) && normalSo.test(said(parts[i - 1] as readonly Token[])));
  const part = parts[at] ?? [];
  const where = part.slice((noneThere.exec(said(part))?.[0] ?? '').trim().split(' ').length).filter(({ t }) => t !== 'either');
  const marks = scan(where).marks;
  const last = part.at(-1);
  if (at < 0 || !last || marks.length !== 1 || marks[0]?.place?.region === undefined) return tokens;
  const normal: Token = { t: 'normal', word: (part[0] as Token).word, ...(last.ends ? { ends: true as const } : {}) };
  return parts.flatMap((one, i) => (i === at ? [...where.map(({ ends: _ends, ...token }) => token), normal] : one));
}

const whatIsIt = /^(?:(?:and|so|oh) )*what is (?:this|that|it)(?: then| here| there)?$/;
/** "what's that, an ulcer": one question. */
function oneQuestion(tokens: readonly Token[]): readonly Token[] {
  const [first, second, ...more] = partsOf(tokens);
  if (!first || !second || more.length > 0 || !whatIsIt.test(said(first)) || !/^(?:a|an) \S+(?: \S+)?$/.test(said(second))) return tokens;
  return [...first.map(({ ends: _ends, ...token }) => token), ...second];
}

export const asideParts: readonly Rewording[] = [
  { rule: oneQuestion, needs: ['what', "what's"] },
  { rule: normalToo, needs: ['nothing'] },
  {
    rule: withoutAsides,
    needs: [
      'grand',
      'perfect',
      'great',
      'good',
      'fine',
      'lovely',
      'sound',
      'brilliant',
      'super',
      'see',
      'without',
      'need',
      'needed',
      ...vocatives,
      'plenty',
      'much',
      'far',
      'enough',
      'limit',
    ],
  },
];
