/** What was said about the visit itself, kept in its own words. */
import { conditions } from '../lexicon/conditions.ts';
import { factSay, somebody, theHorse, type FactAbout } from '../lexicon/facts.ts';
import { hesitations } from '../lexicon/fillers.ts';
import { codesIn, findingsIn } from './has.ts';
import { where } from './lists.ts';
import { readNumber } from './numbers.ts';
import { expand } from './template.ts';
import { buildTrie, longest } from './trie.ts';
import type { Mark } from './scan.ts';
import { toldBeside, type Told } from './told.ts';
import { ownWords, type Token } from './tokens.ts';
import type { WorkRule } from './work.ts';

const forms = buildTrie(
  factSay.flatMap(({ about, say }) =>
    say.flatMap((form) => expand(form.replace(/\[([^[\]()]*\|[^[\]()]*)\]/g, '[($1)]')).map((words) => [words, about] as const)),
  ),
);

/** What a fact begins with. */
export const factWords: readonly string[] = [...forms.next.keys()];
const telling: ReadonlySet<string> = new Set([
  'says',
  'said',
  'reckons',
  'tells',
  'told',
  'reports',
  'reported',
  'reporting',
  'mentions',
  'mentioned',
]);
/** The words that name what a sentence is about, where they stand. */
export const factAt = (
  words: readonly string[],
  at: number,
  told: ReadonlyMap<number, Told>,
): { readonly about: FactAbout; readonly to: number } | undefined => {
  const hit = longest(forms, words, at);
  const sentence = told.get(at);
  if (sentence) return { about: sentence.about, to: Math.max(sentence.to, hit?.to ?? 0) };
  return hit?.values[0] && { about: hit.values[0] as FactAbout, to: hit.to };
};

/** "not happy with the bit" is a finding's own name: what lies within it names no fact. */
export const ofAFinding = (marks: readonly Mark[], from: number, to: number): boolean =>
  marks.some((mark) => mark.from <= from && mark.to >= to && mark.terms?.some((t) => t.k === 'condition' && t.strength === 'say'));

/** "wolf stands still", a "whoa" misheard, "holding her own": an everyday phrase holds the fact's first word, or all of it and more. */
const ofTalk = (marks: readonly Mark[], at: number, end: number): boolean =>
  marks.some(({ from, to, terms }) => ((from < at && to > at) || (from === at && to > end)) && terms?.some(({ k }) => k === 'talk'));

/** "the postman got a fright", "i got a fright": of somebody else, who stands right before as the sentence's subject. */
function ofAnother(words: readonly string[], tokens: readonly Token[], at: number): boolean {
  const from = tokens.slice(0, at).findLastIndex(({ ends }) => ends === true) + 1;
  // "I had to twitch him": done to the horse.
  if (words.slice(at, at + 4).some((word) => word.startsWith('twitch'))) return false;
  if (/\bthe other (?:one|horse|pony|mare|gelding|lad|fella)\b/.test(words.slice(from, at).join(' '))) return true;
  const who = somebody.exec(words.slice(from, at).join(' '))?.groups;
  return who !== undefined && !(who['who'] ?? '').split(' ').some((word) => theHorse.has(word));
}

const ownTeeth: ReadonlySet<string> = new Set(['my', 'mine', 'myself']);
/** "I was hunting on Saturday", "my wife couldn't get off work". */
function ofSpeaker(words: readonly string[], tokens: readonly Token[], at: number): boolean {
  const from = tokens.slice(0, at).findLastIndex(({ ends }) => ends === true) + 1;
  return (
    ['i', 'we', 'my', 'our'].includes(words[from] ?? '') &&
    from < at &&
    !words.slice(at).some((word) => ['him', 'her', 'it'].includes(word))
  );
}

/** "no other findings", "no ulcers"; "no quidding" is told of the horse. */
const ruledOut = (marks: readonly Mark[]): boolean =>
  marks.some(({ terms }) => terms?.some((t) => t.k === 'cue' && t.cue.means === 'absent')) && marks.some(namesOne);
const namesOne = ({ terms }: Mark): boolean => terms?.some((t) => t.k === 'condition' && conditions[t.id].group !== 'horse') === true;

/** "first seen last year" behind a finding is of that. */
const ofItself: ReadonlySet<FactAbout> = new Set<FactAbout>(['history', 'earlier-treatment']);
const subject = /^(?:(?:and|but|so|well) )*(?:he|she|they|the|his|her|owner|horse|mare|gelding|pony|no|not|i|we)\b/;

/** "he was last done in may, hook on one oh six": what is found in a mouth, between pauses of its own, is no part of what is told of the visit. */
function sentenceOf(
  marks: readonly Mark[],
  tokens: readonly Token[],
  at: number,
  told: boolean,
): { readonly from: number; readonly to: number } {
  const pauses = [...where(tokens, ({ ends }, i) => ends === true && i + 1 < tokens.length).map((i) => i + 1), tokens.length];
  const ofMouth = (from: number, to: number): boolean => {
    const within = marks.filter((mark) => mark.from >= from && mark.to <= to);
    const placed = within.some(({ place, terms }) => place !== undefined && terms === undefined);
    // "eating grand, no quidding": told in words of its own, the sentence holds no other finding.
    const another =
      told &&
      within.some(({ terms }) => terms?.some((t) => t.k === 'condition' && t.strength === 'say' && conditions[t.id].group === 'horse'));
    return codesIn(within) || (placed && within.some(namesOne)) || ruledOut(within) || another;
  };
  const parts = pauses.map((to, i) => ({ from: pauses[i - 1] ?? 0, to }));
  const here = parts.findIndex(({ to }) => to > at);
  const before = parts.findLastIndex(({ from, to }, i) => i < here && ofMouth(from, to));
  const behind = parts.findIndex(({ from, to }, i) => i > here && ofMouth(from, to));
  return { from: parts[before + 1]?.from ?? 0, to: (behind < 0 ? parts.at(-1) : parts[behind - 1])?.to ?? tokens.length };
}

export const facts: WorkRule = (marks, tokens) => {
  const words = tokens.map(({ t }) => t);
  const sentences = toldBeside(marks, tokens);
  const hits = words.map((_, i) => factAt(words, i, sentences));
  const begins = hits
    .map((hit, i) =>
      hit !== undefined && !ofAFinding(marks, i, hit.to) && (sentences.has(i) || !ofTalk(marks, i, hit.to)) ? hit.about : undefined,
    )
    .map((about, i) =>
      (about === 'behaviour' && ofAnother(words, tokens, i)) ||
      ((about === 'use' || (about === 'earlier-treatment' && words.some((word) => ownTeeth.has(word)))) && ofSpeaker(words, tokens, i))
        ? undefined
        : about,
    );
  // "the owner says he was done two years ago": what is told, and not who tells it.
  const at = begins.includes('earlier-treatment') ? begins.indexOf('earlier-treatment') : begins.findIndex((about) => about !== undefined);
  const found = hits[at];
  const about = begins[at];
  const own = sentenceOf(marks, tokens, at, sentences.has(at));
  const marksIn = (all: readonly Mark[]): readonly Mark[] => all.filter((mark) => mark.to > own.from && mark.from < own.to);
  // "owner not there": a name of a finding within the words of the fact is none.
  const beside = marksIn(marks).filter((mark) => mark.to <= at || mark.from >= (found?.to ?? 0));
  // "owner says he's quidding", "history of choke": a finding, whoever tells it; what is told of the whole horse is one.
  const told =
    about === 'history' &&
    (words.some((w) => telling.has(w))
      ? beside.some(({ terms }) => terms?.some((t) => t.k === 'condition' && conditions[t.id].group === 'horse'))
      : /\bhistory of\b/.test(words.join(' ')) && findingsIn(marksIn(marks)));
  // A finding at a tooth is worth more than the sentence it stands in.
  if (
    about === undefined ||
    told ||
    (own.from > 0 && ofItself.has(about as FactAbout) && !subject.test(words.slice(own.from).join(' '))) ||
    // "a hundred and five with the vat": what is paid is no tooth.
    (about !== 'account' && codesIn(marksIn(marks)) && !(about === 'consent' && ofThese(words, marksIn(marks)))) ||
    (findingsIn(beside) &&
      !consentedTo(words, beside) &&
      !['history', 'earlier-treatment', 'behaviour', 'bit', 'use', 'feed'].includes(about))
  )
    return [];
  // The horse's age and sex go to the header, not into what was said about the visit.
  const horse =
    /^(?:(?:\w+ ){1,3}(?:year|month)s? old(?: (?:gelding|mare|stallion|colt|filly))? )/
      .exec(`${words.join(' ')} `)?.[0]
      .trim()
      .split(' ').length ?? 0;
  const first = Math.max(horse, own.from);
  const start = first + words.slice(first).findIndex((w) => !hesitations.includes(w));
  const said = ownWords(tokens.slice(start, own.to)).join(' ');
  const rate = about === 'heart-rate' ? rateIn(tokens) : undefined;
  return [
    {
      body: {
        kind: 'fact',
        about: about as FactAbout,
        said,
        ...(rate !== undefined ? { value: { value: rate, unit: 'per-minute' } } : { value: null }),
        ...(about === 'consent' ? consent(said) : {}),
      },
      marks: where(marks, (mark) => mark.to > own.from && mark.from < own.to),
      rules: ['fact'],
      doubts: [],
    },
  ];
};

/** "consent from the owner for taking the wolf teeth out": what it was given for was not found. */
const consentedTo = (words: readonly string[], beside: readonly Mark[]): boolean => {
  const at = words.indexOf('consent');
  return at >= 0 && beside.filter(namesOne).every(({ from }) => words.slice(at, from).some((word) => word === 'for' || word === 'to'));
};

const agreed: ReadonlySet<string> = new Set(['consent', 'consented', 'consents', 'permission']);
/** "owner's consented to two oh nine coming out": the teeth that it was given for, and nothing else behind them. */
function ofThese(words: readonly string[], marks: readonly Mark[]): boolean {
  const at = words.findIndex((word) => agreed.has(word));
  const teeth = marks.filter(({ place }) => place?.codes !== undefined);
  return (
    at >= 0 &&
    teeth.every(({ from }) => from > at && words.slice(at, from).some((word) => word === 'for' || word === 'to')) &&
    !words.slice(teeth.at(-1)?.to ?? 0).some((word) => word === 'and' || word === 'but')
  );
}

/** Whether the phrase says that someone agreed to something, or did not. */
export const consentIn = (tokens: readonly Token[]): boolean => {
  const words = tokens.map(({ t }) => t);
  return words.some((_, at) => longest(forms, words, at)?.values[0] === 'consent');
};

const rateIn = (tokens: readonly Token[]): number | undefined =>
  tokens.map((_, at) => readNumber(tokens, at)?.value).find((value) => value !== undefined);
const consentFor = {
  extraction:
    /extract|\b(?:tak(?:e|ing)|hav(?:e|ing)|pull(?:ing)?|whip(?:ping)?|get(?:ting)?) .*\bout\b|\bpull|\bcom(?:e|ing) out\b|\b(?:taken|whipped|drawn) out\b/,
  sedation: /sedat/,
  treatment: /treat|\b(?:rasp|float)(?:ing)?\b/,
  exam: /exam/,
} as const;
const consent = (said: string): { given: boolean; for?: 'exam' | 'treatment' | 'sedation' | 'extraction' } => {
  const target = (['extraction', 'sedation', 'treatment', 'exam'] as const).find((what) => consentFor[what].test(said));
  return { given: !/\b(no|not|refused|withheld|declined)\b/.test(said), ...(target ? { for: target } : {}) };
};
