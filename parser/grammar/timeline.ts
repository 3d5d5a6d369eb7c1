/**
 * What was and what is, said in one breath: "four mil last time, two now", "three mil, was five", "still there". The old size
 * and the new one are two findings, one from before and one of now; they are never one, and never change places.
 */
import type { Grade, Measure } from '../contract/item.ts';
import { newAfter, newBefore, oldAfter, oldBefore, onThatDay, stillThere, sinceThen } from '../lexicon/history.ts';
import type { FindingBody, Made } from './made.ts';
import type { Read } from './refine/rule.ts';
import { comparisons } from './scopes.ts';
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';

interface Figure {
  readonly mark: number;
  readonly from: number;
  readonly to: number;
  readonly measure?: Measure['value'];
  readonly grade?: string;
}

/** Without any of these nothing tells of two times. */
export const timeWords: readonly string[] = [
  ...['was', 'were', 'had', 'been', 'be', 'from', 'last', 'previously', 'before', 'ago', 'back', 'spring', 'summer', 'autumn', 'winter'],
  ...['now', 'today', 'since', 'time', 'to', 'currently', 'visit', 'present', 'still', 'again', 'same'],
];

/** @param reads findings as read, each by itself; @returns the same, those of two times parted */
export function parted(reads: readonly Read[], marks: readonly Mark[], tokens: readonly Token[]): readonly Read[] {
  const text = tokens.map(({ t }) => t).join(' ');
  const worked = workWas(reads, marks, tokens);
  const until = notThen(reads, marks, tokens) ? tokens.length : fronted(text, tokens);
  return outlived(reads, tokens).map((read) => {
    const figures = figuresOf(read, marks);
    const made = read.made.flatMap((one) =>
      one.body?.kind !== 'finding' || one.revises
        ? [one]
        : (byAge(one, one.body, figures, tokens) ?? [ended(one, one.body, text, worked) ?? again(one, one.body, text)]),
    );
    const told = made.some(({ body }) => body?.kind === 'finding' && body.when === 'before');
    const then = !told && (marks[read.clause.head.mark]?.from ?? 0) < until ? made.map(asItWas) : made;
    return then.every((one, i) => one === read.made[i]) ? read : { ...read, made: then };
  });
}

const frontedSay =
  /^(?:(?:so|and|well|now|okay|right) )*(?:(?:last|the last|previous|the previous) (?:time|year|visit|month|week|spring|summer|autumn|winter|exam|check)|(?:a|two|three|six|twelve) (?:year|month|week)s? (?:ago|back)|back in (?:the )?(?:spring|summer|autumn|winter|\w+ber|\w+uary|march|april|may|june|july|august))\b(?! (?:it )?is\b)(.*)$/;
/**
 * "last year the hook on one oh six was six mil": said first, the time is that of all that follows, up to a word of today ("this year a ramp").
 * @returns the token up to which it reaches; 0 where no such time stands first
 */
function fronted(text: string, tokens: readonly Token[]): number {
  const rest = frontedSay.exec(text)?.[1];
  if (rest === undefined || !(/\b(?:was|were|had)\b/.test(rest) || !/\b(?:is|are|has|have)\b/.test(rest.split(todaySay)[0] ?? '')))
    return 0;
  if (/\b(?:still|since|currently|gone|healed|closed)\b/.test(rest)) return 0;
  const today = tokens.findIndex(({ t }, i) => t === 'now' || t === 'today' || (t === 'this' && todays.has(tokens[i + 1]?.t ?? '')));
  // "now" in the middle of a sentence is of all of it.
  return today < 0 ? tokens.length : tokens[today - 1]?.ends === true || ['and', 'but'].includes(tokens[today - 1]?.t ?? '') ? today : 0;
}
/** "no hooks last year": nothing but what was not there, with the day it was not there behind it. */
function notThen(reads: readonly Read[], marks: readonly Mark[], tokens: readonly Token[]): boolean {
  const { clause } = reads.at(-1) ?? {};
  const when = clause?.cues.map((m) => marks[m] as Mark).findLast(({ from }) => from > (marks[clause.head.mark] as Mark).from);
  return (
    when !== undefined &&
    !comparisons.has(tokens[when.from - 1]?.t ?? '') &&
    onThatDay.test(
      tokens
        .slice(when.from, when.to)
        .map(({ t }) => t)
        .join(' '),
    ) &&
    reads.every(({ made }) => made.every(({ body }) => body?.kind === 'finding' && body.presence === 'absent'))
  );
}
const todays: ReadonlySet<string> = new Set(['time', 'year', 'visit', 'month', 'spring', 'autumn']);
const todaySay = /\b(?:now|today|this (?:time|year|visit|month|spring|autumn))\b/;
const asItWas = (one: Made): Made =>
  one.body?.kind === 'finding' && one.body.when === 'now' && !one.revises
    ? { ...one, body: { ...one.body, when: 'before' }, rules: [...one.rules, 'as it was'] }
    : one;

const was = new Set(['was', 'were', 'had', 'previously']),
  isNow = new Set(['now', 'today', 'since']);
/** "four oh nine was wobbly in the spring, solid today": what is ruled out now was there before. */
function outlived(reads: readonly Read[], tokens: readonly Token[]): readonly Read[] {
  const of = ({ made }: Read): FindingBody | undefined =>
    made.length === 1 && made[0]?.body?.kind === 'finding' && !made[0].revises ? made[0].body : undefined;
  if (reads.length < 2 || !tokens.some(({ t }) => was.has(t)) || !tokens.some(({ t }) => isNow.has(t))) return reads;
  return reads.map((read, i) => {
    const [before, after] = [of(read), reads[i + 1] && of(reads[i + 1] as Read)];
    const same =
      before !== undefined &&
      after !== undefined &&
      before.condition === after.condition &&
      JSON.stringify(before.place) === JSON.stringify(after.place) &&
      before.presence === 'present' &&
      before.when === 'now' &&
      after.presence === 'absent';
    return same
      ? {
          ...read,
          made: read.made.map((one) => ({
            ...one,
            body: { ...(one.body as FindingBody), when: 'before' as const },
            rules: [...one.rules, 'as it was'],
          })),
        }
      : read;
  });
}

const figuresOf = ({ clause }: Read, marks: readonly Mark[]): readonly Figure[] =>
  clause.mods
    .flatMap((m): Figure[] => {
      const { from, to, measure, grade } = marks[m] as Mark;
      return measure?.value !== undefined
        ? [{ mark: m, from, to, measure: measure.value as Measure['value'] }]
        : grade
          ? [{ mark: m, from, to, grade: grade.value }]
          : [];
    })
    .sort((a, b) => a.from - b.from);

/** What the words right before and right behind a figure say of its time; both where they do not agree. */
function agesOf(tokens: readonly Token[], { from, to }: Figure): Set<'old' | 'new'> {
  const before = tokens
    .slice(Math.max(0, from - 4), from)
    .map(({ t }) => t)
    .join(' ');
  const after = tokens
    .slice(to, to + 5)
    .map(({ t }) => t)
    .join(' ');
  return new Set([
    ...(oldBefore.test(before) || oldAfter.test(after) ? ['old' as const] : []),
    ...(newBefore.test(before) || newAfter.test(after) ? ['new' as const] : []),
  ]);
}

/** Two figures of one kind, one of them said to be old or new: two findings. */
function byAge(made: Made, body: FindingBody, figures: readonly Figure[], tokens: readonly Token[]): readonly Made[] | undefined {
  const [a, b] = figures;
  if (a === undefined || b === undefined || figures.length !== 2 || (a.measure === undefined) !== (b.measure === undefined))
    return undefined;
  const [first, second] = [agesOf(tokens, a), agesOf(tokens, b)];
  // "five mil pocket at three ten last time, three mil today": the time before the pause is the first one's.
  if (first.size === 0 && second.size === 2 && tokens[b.from - 1]?.ends === true) second.delete('old');
  // A word between the two may belong to either: the reading in which both are dated comes first.
  const old =
    first.has('old') && second.has('new')
      ? a
      : first.has('new') && second.has('old')
        ? b
        : first.size + second.size !== 1
          ? undefined
          : first.has('old') || second.has('new')
            ? a
            : b;
  if (old === undefined) return undefined;
  const now = old === a ? b : a;
  const { kind, condition, place, surfaces, qualifiers, measures = [] } = body;
  const scale = made.doubts
    .flatMap(({ readings = [] }) =>
      readings.flatMap(({ bodies }) => bodies.flatMap((one) => (one.kind === 'finding' && one.grade ? [one.grade] : []))),
    )
    .concat(body.grade ?? [])[0]?.scale;
  const figured = (figure: Figure): Partial<FindingBody> =>
    figure.grade !== undefined
      ? { grade: { scale: scale ?? 'spoken', value: figure.grade } satisfies Grade }
      : { measures: measures.filter(({ value }) => JSON.stringify(value) === JSON.stringify(figure.measure)).slice(0, 1) };
  const doubts = made.doubts.filter(({ doubt }) => doubt !== 'two-readings');
  return [
    {
      ...made,
      body: {
        kind,
        condition,
        place,
        presence: 'present',
        when: 'before',
        ...(surfaces ? { surfaces } : {}),
        ...(qualifiers ? { qualifiers } : {}),
        ...figured(old),
      },
      rules: [...made.rules, 'as it was'],
      doubts,
    },
    { ...made, body: { ...body, when: 'now', ...figured(now) }, rules: [...made.rules, 'as it is now'], doubts },
  ];
}

/** "ramp on three oh six, was reduced in the autumn": what was then is the work, and the ramp is there. */
const workWas = (reads: readonly Read[], marks: readonly Mark[], tokens: readonly Token[]): boolean =>
  reads.some(({ clause: { head } }) => {
    const from = marks[head.mark]?.from ?? 0;
    return head.work !== undefined && tokens.slice(Math.max(0, from - 1), from + 1).some(({ t }) => wasDone.has(t));
  });
const wasDone: ReadonlySet<string> = new Set(['was', 'were', 'been', 'got']);

/** "was quidding over the winter, isn't now": what has ended was before; so was what is told of a season. */
const ended = (made: Made, body: FindingBody, text: string, worked: boolean): Made | undefined =>
  body.when === 'now' &&
  body.presence === 'present' &&
  body.condition !== 'previously-extracted' &&
  ((/\b(?:was|were)\b/.test(text) && isNotNow.test(text)) || (inASeason.test(text) && !sinceThen.test(text) && !worked))
    ? { ...made, body: { ...body, when: 'before' }, rules: [...made.rules, 'as it was'] }
    : undefined;
const inASeason =
  /\b(?:was|were|been)\b(?!.*\b(?:is|are|still|now|today|since|worse|better)\b).*\b(?:in|over|during|through|all) (?:the |last )?(?:spring|summer|autumn|winter|january|february|march|april|june|july|august|september|october|november|december)\b/;
const isNotNow = /\b(?:is|are|does|do) not(?: \w+)?(?: now| any ?more)\b/;

/** "last time there was a hook, it is still there": it is there now. */
const again = (made: Made, body: FindingBody, text: string): Made =>
  body.when === 'before' && body.presence === 'present' && stillThere.test(text) && !sinceThen.test(text)
    ? { ...made, body: { ...body, when: 'now' }, rules: [...made.rules, 'still there'] }
    : made;
