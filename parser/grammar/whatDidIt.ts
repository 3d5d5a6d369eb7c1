/**
 * "Ulcer on the right cheek, that'll be those points", "where that hook's been rubbing", "it's the points that have done that": what did it is
 * pointed at and not found there: no second finding, and no work.
 */
import { conditions } from '../lexicon/conditions.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import { formAt, longestOf } from './forms.ts';
import type { Rewording } from './said.ts';
import type { Token } from './tokens.ts';
import { longest } from './trie.ts';
import { vocabulary, type Term } from './vocabulary.ts';

/** What a finding is said to come from, up to a pause. */
const comesFrom = longestOf([
  [
    [
      '(that|it) (will|would|must|could|might) (be|have been) [from|off|(because of)|(due to)|(down to)]',
      "(that's|that is|that was|it is|it was) [just|only|all] (from|off|because of|due to|down to|with)",
      '(from|off|because of|due to|down to|owing to) [all]',
      '[(that is|that was|which is)] (caused|done|made) by',
    ],
    true,
  ],
]);
const where = longestOf([[['[just] where', 'with where'], true]]);
const wearing: ReadonlySet<string> = new Set(
  (
    'has have had is are was were been keeps keep just caught catch catches catching rubbed rub rubs rubbing hit hits hitting cut cuts cutting ' +
    'dug digs dig digging scraped scrape scrapes scraping sit sits sitting press presses pressing pressed touch touches touching done doing at it him her them in into on ' +
    'against that there'
  ).split(' '),
);
const didIt = longestOf([
  [
    [
      '[(that|which|what)] [(has|have|had|is|are)] [been] (done|did|caused|causing|doing|made) (that|it|this|these|those|them)',
      "that's (done|caused|causing|doing|made) (that|it|this|these|those|them)",
    ],
    true,
  ],
]);
const asked = longestOf([[['(has|have|had|is|are|was|were) [been] (done|caused|causing|doing)', '(did|does|do)'], true]]);
const pointedAt: ReadonlySet<string> = new Set(['the', 'that', 'those', 'these', 'his', 'her', 'them']);

const termsAt = (tokens: readonly Token[], at: number): { readonly terms: readonly Term[]; readonly to: number } | undefined => {
  const found = longest(
    vocabulary,
    tokens.slice(at, at + 4).map(({ t }) => t),
    0,
    (i) => tokens[at + i]?.ends === true,
  );
  return found && { terms: found.values, to: at + found.to };
};
/** "the points", "those hooks": where the name ends. Pointed at: a hook that was not named before is a finding of its own. */
function cause(tokens: readonly Token[], at: number): number | undefined {
  const found = pointedAt.has(tokens[at]?.t ?? '') ? termsAt(tokens, at + 1) : undefined;
  return found?.terms.some((t) => t.k === 'condition' && ['wear', 'number'].includes((conditions[t.id] as ConditionEntry).group))
    ? found.to
    : undefined;
}
const isHurt = ({ k, ...term }: Term): boolean =>
  k === 'condition' && 'id' in term && (conditions[term.id as keyof typeof conditions] as ConditionEntry).group === 'soft';
const hurtBefore = (tokens: readonly Token[], at: number): boolean =>
  tokens.slice(0, at).some((_, i) => termsAt(tokens, i)?.terms.some(isHurt) === true);

const closes = (tokens: readonly Token[], to: number): boolean => tokens[to - 1]?.ends === true || to === tokens.length;
const opens = (tokens: readonly Token[], at: number): boolean =>
  at === 0 || tokens[at - 1]?.ends === true || ['and', 'but', 'so'].includes(tokens[at - 1]?.t ?? '');

/** Where the words that begin here, and say no more than what did it, end. */
function saidOf(tokens: readonly Token[], at: number): number | undefined {
  const from = formAt(comesFrom, tokens, at);
  const fromTo = from && cause(tokens, at + from.words.length);
  if (fromTo && closes(tokens, fromTo) && hurtBefore(tokens, at)) return fromTo;
  const there = formAt(where, tokens, at);
  const thing = there && cause(tokens, at + there.words.length);
  if (thing && hurtBefore(tokens, at)) {
    let to = thing;
    while (!closes(tokens, to) && wearing.has(tokens[to]?.t ?? '')) to += 1;
    if (to > thing && closes(tokens, to)) return to;
  }
  if (!opens(tokens, at)) return undefined;
  // "it's the points that have done that", "the hook did that"
  const lead =
    ['it', 'is'].every((t, i) => tokens[at + i]?.t === t) || ['it', 'was'].every((t, i) => tokens[at + i]?.t === t) ? at + 2 : at;
  const named = cause(tokens, lead);
  const did = named && formAt(didIt, tokens, named);
  if (named && did && closes(tokens, named + did.words.length)) return named + did.words.length;
  // "that's what the hook has done"
  const what = tokens[at]?.t === "that's" && tokens[at + 1]?.t === 'what' ? cause(tokens, at + 2) : undefined;
  const done = what && formAt(asked, tokens, what);
  return what && done && closes(tokens, what + done.words.length) ? what + done.words.length : undefined;
}

function withoutCause(tokens: readonly Token[]): readonly Token[] {
  for (let at = 0; at < tokens.length; at += 1) {
    const to = saidOf(tokens, at);
    if (to === undefined) continue;
    const last = tokens[at - 1];
    const before = last && tokens[to - 1]?.ends ? [...tokens.slice(0, at - 1), { ...last, ends: true as const }] : tokens.slice(0, at);
    return withoutCause([...before, ...tokens.slice(to)]);
  }
  return tokens;
}

/** Less what did it. */
export const whatDidIt: readonly Rewording[] = [
  { rule: withoutCause, needs: ['where', 'from', 'off', 'of', 'to', 'by', 'done', 'did', 'caused', 'causing', 'doing', 'be', 'been'] },
];
