/**
 * What a short phrase says of the last finding itself: "gone now", "still there", "actually three", "ignore the size", "other way
 * round". It is read as what it is short for, or puts the finding right; where it says that something is wrong and not what, it is asked.
 */
import type { Context } from '../contract/draft.ts';
import type { Item, Place } from '../contract/item.ts';
import { conditions } from '../lexicon/conditions.ts';
import { handledAs, overgrowths } from '../lexicon/handling.ts';
import { revision } from './amend.ts';
import { standing, type Carry } from './carry.ts';
import type { FindingBody, Made } from './made.ts';
import { doseAlone } from './sedations.ts';
import { itself } from './pointing.ts';
import type { Reading } from './read.ts';
import {
  amount,
  amountIn,
  anyAmount,
  askedAbout,
  asTalk,
  asWhole,
  compared,
  degree,
  lead,
  standingFor,
  within,
  type Finding,
  type ReadShort,
} from './shortForms.ts';
import { expand } from './template.ts';
import type { Token } from './tokens.ts';

type Placed = Finding & { readonly place: Place };
interface Said {
  readonly tokens: readonly Token[];
  readonly text: string;
  readonly groups: Readonly<Record<string, string | undefined>>;
  readonly last: Item;
  readonly context: Context;
  readonly carry: Carry;
  readonly read: ReadShort;
}
type Answer = Reading | 'asked' | 'talk' | undefined;

const it = "(?:(?:it|that|this|they|that one|this one) )?(?:(?:is|has|are|was|'s|that's) )?";
const pointed = '(?:it|that|this|these|those|them|both|that one|the lot|the pair)(?: of (?:it|them|those))?';
const today = '(?: (?:now|today|this time|any ?more))';
const one = '(?:that|it|this)(?: one)?';
/** How sure of a finding its speaker is after all. */
const sureness =
  '(?:an? )?(?:(?<suspected>suspected|suspect|suspicion|possible|query|questionable|maybe)|definite|confirmed|certain)(?: (?:one|though|really))*';
const back = '(?:(?:no|oh|well|sorry|wait|actually|hang on|hold on|on second thoughts) )*';

const forms: readonly (readonly [RegExp, (said: Said) => Answer])[] = [
  [
    `${it}(?:all |completely |just )*(?:gone|cleared(?: up)?|healed(?: up| over)?|resolved|not there|no longer there|nothing there|no sign of (?:it|one|that)|can not find (?:it|one|that))${today}$`,
    goneNow,
  ],
  [`${it}no longer there$`, goneNow],
  [`${it}still (?:there|present|visible|in place|(?:has|got|have) (?:it|one))${today}?$`, stillThere],
  [`(?:and |but )?(?:it|that|this)(?: one)? (?:is|has come|came) back(?: again)?${today}?$`, stillThere],
  [`(?:and |but )?(?:he|she) (?:has|has got) (?:it|one|that|them) back(?: again)?(?: .+)?$`, backAgain],
  [
    `${back}(?:actually|nearer(?: to)?|closer to|more like|make that|make it|call it|i make (?:it|that)|(?:let's )?(?:say|call it)|on second thoughts) ${anyAmount}$`,
    resized,
  ],
  [`${back}${anyAmount} (?:actually|in fact|rather|sorry|i mean)$`, resized],
  [
    `${back}(?:ignore|scrap|forget|drop|lose|leave out|take out|take off|delete|strike|cancel|scratch) (?:the |that |my )?(?:last )?(?:size|measurement|measure|number|figure|${amount})$`,
    unsized,
  ],
  [`no (?:size|measurement)(?: on (?:it|that|this)(?: one)?)?$`, unsized],
  [`(?:it is |just |only |about )*${anyAmount} (?:now|today|this time)$`, sizedNow],
  [
    `(?:(?:no|oh|well|sorry|wait|actually|correction|rather|i (?:mean|meant|said)|(?:make|call) (?:that|it)|(?:that|it) (?:should be|was)|should be|hang on|hold on) )+(?<dose>.+)$`,
    redosed,
  ],
  [`${back}(?:make|call|mark|put|have) ${one}(?: down)?(?: as)?(?: only| just)* ${sureness}$`, doubted],
  [`${back}(?:(?:it|that|this)(?: one)? is|it's|that's) (?:only |just |really |actually |more )+${sureness}$`, doubted],
  [`${back}(?:the )?(?:other|wrong) way (?:round|around|about)$`, swapped],
  [`${back}(?:got|had|have) (?:them|those|these) the wrong way (?:round|around|about)$`, swapped],
  [`${back}${it}(?:all |perfectly )*(?:fine|normal|clear|sound|healthy|clean)$`, saidNormal],
  [
    `(?:it|that's|that|this|that one|they|those)(?: (?:is|are|all|nice|lovely|nicely|and))* (?:smooth|clean|clear|even|smoothed off) (?:now|again)$`,
    smoothNow,
  ],
  [`no (?<what>[a-z]+(?: [a-z]+)?) (?:there|with it|round it|around it)$`, noneThere],
  [`(?:i )?(?:have )?(?:left|leaving) (?:it|that|this)(?: one)?$`, leftAlone],
  // Work on what was found, in words that no other rule reads.
  [
    `(?:and )?(?:i |we )?(?:have )?(?:just )?(?:took|got|pulled|picked|lifted|eased|knocked|popped|flicked|cracked|brought|worked) ${pointed} (?:(?:all|right|mostly|nearly) )?(?:out|off|away|down|back|clean|level)(?: .+)?$`,
    lostWork,
  ],
  [`(?:and )?${pointed}(?: all| both)? (?:came|popped|lifted) (?:out|off|away)(?: .+)?$`, lostWork],
  [`(?:i )?(?:have )?(?:started|began|begun) (?:on |bringing |taking |getting |reducing )?${pointed}(?: .+)?$`, lostWork],
  [`(?:i )?(?:have )?(?:took|got) (?:off|down|out) .+$`, lostWork],
  [`(?:it is |that is )?not ready(?: yet)?(?: so)?(?: i)?(?: have)? (?:left|leaving) ${pointed}(?: .+)?$`, lostWork],
  // Said of the horse or the work, and not of the whole mouth.
  [`(?:(?:he|she) is )?(?:(?:very|really) )?(?:good|grand|great|lovely|perfect)$`, () => 'talk'],
  [`(?:he|she) is (?:fine|okay|ok|sound)$`, () => 'talk'],
  [`(?:fine|sound)$`, () => 'asked'],
  // Something is wrong, or said of it, and what it is cannot be known.
  [`(?:it is )?${degree}(?:${compared}|better) (?:on |over )?(?:this side|here|over here|this one)$`, () => 'asked'],
  [`(?:and )?this (?:one|side) (?:is |'s )?${degree}(?:${compared}|better)$`, () => 'asked'],
  [
    `${back}(?:i )?(?:have )?(?:got )?(?:my )?(?:sides|left and right) (?:mixed up|muddled(?: up)?|wrong|the wrong way round)$`,
    () => 'asked',
  ],
  [
    `(?:i am )?(?:not (?:so |too |quite )?(?:sure|certain)|unsure) (?:about|of) (?:the |that )?(?:${amount}|size|measurement|side|tooth|number|one)$`,
    () => 'asked',
  ],
  [`(?:${back})(?:actually no|no actually)$`, () => 'asked'],
  [`${back}i was right(?: (?:before|the first time))?$`, () => 'asked'],
  [`(?:that|the|this) (?:size|measurement|number|figure|side|tooth) is (?:wrong|not right)$`, () => 'asked'],
  [`(?:just|only) (?:on )?(?:that|the one|one) side$`, () => 'asked'],
  [`(?:swap|change) sides(?: on (?:it|that))?$`, () => 'asked'],
  [`${back}false alarm$`, () => 'asked'],
  [`(?:it |that )?(?:might|may) not be(?: one)?$`, () => 'asked'],
  [`one (?:tooth|one)? ?further (?:back|forward|along)$`, () => 'asked'],
  [`no nothing there$`, () => 'asked'],
  [`i (?:think|reckon) (?:it is|that is|that's) .+ actually$`, () => 'asked'],
  [`leave (?:that|this)(?: one)?$`, () => 'asked'],
  [`(?:i )?will (?:do|sort|see to) (?:it|that|this)(?: one)? next (?:time|visit)$`, () => 'asked'],
].map(([form, answer]) => [new RegExp(`${lead}${form as string}`), answer as (said: Said) => Answer] as const);

/** Words of which one stands in every such phrase. */
const waking: ReadonlySet<string> = new Set([
  ...['good', 'grand', 'great', 'lovely', 'perfect', 'okay', 'ok'],
  ...['gone', 'cleared', 'healed', 'resolved', 'there', 'longer', 'sign', 'still', 'actually', 'nearer', 'closer', 'more', 'make', 'call'],
  ...['fact', 'rather', 'sorry', 'mean', 'size', 'measurement', 'measure', 'number', 'figure', 'ignore', 'scrap', 'forget', 'drop', 'lose'],
  ...[
    'leave',
    'leaving',
    'left',
    'take',
    'delete',
    'strike',
    'cancel',
    'scratch',
    'way',
    'fine',
    'normal',
    'clear',
    'sound',
    'healthy',
    'clean',
  ],
  ...[
    'took',
    'got',
    'pulled',
    'picked',
    'lifted',
    'eased',
    'knocked',
    'popped',
    'flicked',
    'cracked',
    'brought',
    'worked',
    'came',
    'left',
    'it',
    'started',
    'began',
    'begun',
  ],
  ...[
    'back',
    'alarm',
    'thoughts',
    'say',
    'might',
    'may',
    'now',
    'today',
    'further',
    'nothing',
    'think',
    'reckon',
    'swap',
    'only',
    'just',
    'find',
  ],
  ...['correction', 'meant', 'said', 'should', 'hang', 'hold', 'suspected', 'suspect', 'suspicion'],
  ...['no', 'here', 'side', 'this', 'sides', 'mixed', 'muddled', 'wrong', 'sure', 'certain', 'unsure', 'next'],
]);
const LONGEST = 10;

/** @returns undefined where nothing is said of the last item in this way */
export function ofTheLast(tokens: readonly Token[], context: Context, carry: Carry, read: ReadShort): Reading | undefined {
  if (tokens.length > LONGEST || carry.half !== undefined || !tokens.some(({ t }) => waking.has(t))) return undefined;
  const last = standing(context, carry.last);
  if (last === undefined) return undefined;
  const text = tokens.map(({ t }) => t).join(' ');
  for (const [form, answer] of forms) {
    const match = form.exec(text);
    const found = match ? answer({ tokens, text, groups: match.groups ?? {}, last, context, carry, read }) : undefined;
    if (found) return found === 'asked' ? askedAbout(tokens) : found === 'talk' ? asTalk(tokens) : found;
  }
  return undefined;
}

const isPlaced = (item: Item): item is Placed => item.kind === 'finding' && item.place !== null;
const samePlace = (a: Item, b: Item): boolean => 'place' in a && 'place' in b && JSON.stringify(a.place) === JSON.stringify(b.place);
const nameOf = ({ condition }: Finding): readonly string[] => expand(conditions[condition].say[0] as string)[0] as readonly string[];

/** The finding again at its own place, as these words put it. */
function again({ tokens, carry, read }: Said, of: Placed, before: readonly string[], behind: readonly string[] = []): Reading | undefined {
  const { words, where } = standingFor(tokens);
  const place = itself(of.place);
  const reading =
    place && read([...words(...before, ...nameOf(of), 'on'), ...where(place), ...words(...behind)], { ...carry, last: of.id });
  const carried = ({ how, ...made }: Made): Made => ({ ...made, how: { ...how, condition: 'carried', place: 'carried' } });
  return reading?.made.length === 1 && reading.made[0]?.body?.kind === 'finding' ? asWhole(reading, carried) : undefined;
}

/** What was there before is not there now; what was found today and worked on since is gone by the work. */
function goneNow(said: Said): Answer {
  const { last, context } = said;
  if (isPlaced(last) && last.when === 'before' && last.presence === 'present') return again(said, last, ['no'], ['now']) ?? 'asked';
  const worked = last.kind === 'treatment' && last.state === 'done';
  const there = worked
    ? context.items.findLast((item): item is Placed => isPlaced(item) && item.presence === 'present' && samePlace(item, last))
    : undefined;
  const reading = there && again(said, there, ['no']);
  if (reading)
    return asWhole(reading, (made) =>
      made.body?.kind === 'finding' ? { ...made, body: { ...made.body, when: 'after-treatment' } } : made,
    );
  return (isPlaced(last) && last.presence === 'present') || worked ? 'asked' : undefined;
}

function stillThere(said: Said): Answer {
  const { last } = said;
  return isPlaced(last) && last.when === 'before' && last.presence === 'present' ? (again(said, last, [], ['now']) ?? 'asked') : undefined;
}

/** "he has it back, look, only a small one": it is there again; what else is said of it is read beside it, or asked. */
function backAgain(said: Said): Answer {
  const { last, tokens, text } = said;
  if (!isPlaced(last) || last.when !== 'before' || last.presence !== 'present') return undefined;
  const rest = /\bback(?: again)? (?:look |see |now |but |though )*(?<rest>.+)$/.exec(text)?.groups?.['rest'];
  return again(said, last, [], [...(rest ? within(tokens, text, rest).map(({ t }) => t) : []), 'now']) ?? 'asked';
}

/** "actually three": of the size, the grade or the amount that was said last. */
function resized({ tokens, text, groups, last, carry, read }: Said): Answer {
  const sized =
    last.kind === 'finding'
      ? last.presence === 'present' && (last.measures ?? last.grade) !== undefined
      : last.kind === 'treatment' && last.amountMm !== undefined;
  const amount = groups['amount'];
  if (!sized || amount === undefined || (last.kind === 'finding' && /^(?:make|call) (?:that|it)\b/.test(text))) return undefined;
  const value = amountIn(amount);
  if (last.kind === 'treatment' && value !== undefined) {
    const reading = askedAbout(tokens);
    return asWhole(reading, ({ marks }) => revision(last, { amountMm: value }, marks, {}));
  }
  const reading = read([...standingFor(tokens).words('make', 'it'), ...within(tokens, text, amount)], carry);
  return reading.made.length === 1 && reading.made[0]?.revises ? asWhole(reading) : undefined;
}

/** "make that point four", of a dose: its unit stays. "Make that four", of point three: where the point stands is asked. */
function redosed({ tokens, groups, last }: Said): Answer {
  const dose =
    last.kind === 'sedation' || last.kind === 'medication' ? doseAlone(tokens.slice(-(groups['dose'] ?? '').split(' ').length)) : undefined;
  if (dose === undefined || (last.kind !== 'sedation' && last.kind !== 'medication')) return undefined;
  const unit = dose.unit ?? last.dose?.unit;
  const whole = typeof dose.value === 'number' && Number.isInteger(dose.value);
  const point = dose.unit === undefined && whole && typeof last.dose?.value === 'number' && last.dose.value < 1;
  return asWhole(askedAbout(tokens), ({ marks, rules }) =>
    unit === undefined || dose.value === undefined || point
      ? { marks, rules, doubts: [{ doubt: 'dose-unclear' }] }
      : revision(last, { dose: { value: dose.value, unit } }, marks, {}),
  );
}

/** "make that suspected": how sure, of what was found last. */
function doubted({ tokens, groups, last }: Said): Answer {
  if (last.kind !== 'finding' || last.presence === 'absent') return undefined;
  const presence = groups['suspected'] === undefined ? 'present' : 'suspected';
  return presence === last.presence ? undefined : asWhole(askedAbout(tokens), ({ marks }) => revision(last, { presence }, marks, {}));
}

/** "three now": how big it is today changes nothing of how big it was. */
function sizedNow({ tokens, text, groups, last, carry, read }: Said): Answer {
  const amount = groups['amount'];
  if (last.kind !== 'finding' || last.when !== 'before' || last.measures?.length !== 1 || amount === undefined) return undefined;
  const reading = read([...standingFor(tokens).words('today', 'it', 'is'), ...within(tokens, text, amount)], carry);
  return reading.made.length === 1 ? asWhole(reading) : undefined;
}

/** The size said last is taken back, the finding stays. */
function unsized({ tokens, groups, last }: Said): Answer {
  const measures = last.kind === 'finding' ? (last.measures ?? []) : [];
  const named = groups['amount'] === undefined ? undefined : amountIn(groups['amount']);
  if (measures.length === 0) return undefined;
  if (named !== undefined && measures.at(-1)?.value !== named) return 'asked';
  const kept = measures.slice(0, -1);
  return asWhole(askedAbout(tokens), ({ marks }) => {
    const made = revision(last, { measures: kept.length > 0 ? kept : null }, marks, {});
    if (kept.length > 0 || made.body?.kind !== 'finding') return made;
    return { ...made, body: Object.fromEntries(Object.entries(made.body).filter(([key]) => key !== 'measures')) as unknown as FindingBody };
  });
}

/** Two findings of one phrase, each of which stands where the other was said to be. */
function swapped({ tokens, context, carry }: Said): Answer {
  const [a, b, ...more] = carry.lastItems.map((id) => standing(context, id));
  if (!a || !b || more.length > 0 || !isPlaced(a) || !isPlaced(b) || samePlace(a, b)) return 'asked';
  const asked = askedAbout(tokens);
  const marks = asked.marks.map((_, m) => m);
  return { ...asked, made: [revision(a, { place: b.place }, marks, {}), revision(b, { place: a.place }, marks, {})] };
}

/** "no, it's fine": said of where the finding is, over which it is doubted. */
function saidNormal({ tokens, text, last, carry, read }: Said): Answer {
  const place = isPlaced(last) ? itself(last.place) : undefined;
  if (place === undefined || !/^(?:no|sorry|actually|wait|oh)\b|\bit is\b|\b(?:that|this) one\b/.test(text)) return undefined;
  const { words, where } = standingFor(tokens);
  const reading = read([...where(place), ...words('is', 'fine')], carry);
  return reading.made.length === 1 ? asWhole(reading) : undefined;
}

/** "that's smooth now": where something stood, or was worked on, nothing does behind the work. */
function smoothNow({ tokens, last, carry, read }: Said): Answer {
  const place = 'place' in last && last.place ? itself(last.place) : undefined;
  const worked = last.kind === 'treatment' && last.state === 'done';
  if (place === undefined || !(worked || (isPlaced(last) && last.presence === 'present' && handledAs[last.condition]))) return undefined;
  const { words, where } = standingFor(tokens);
  const reading = read([...where(place), ...words('is', 'smooth', 'now')], carry);
  return reading.made.length === 1
    ? asWhole(reading, (made) =>
        made.body?.kind === 'finding'
          ? { ...made, body: { ...made.body, when: 'after-treatment' }, how: { ...made.how, place: 'carried' } }
          : made,
      )
    : undefined;
}

/** "no pain there": not where the last finding is; of the rest of the mouth nothing was said. */
function noneThere({ tokens, text, groups, last, carry, read }: Said): Answer {
  const place = 'place' in last && last.place ? itself(last.place) : undefined;
  if (place === undefined || groups['what'] === undefined) return undefined;
  const { words, where } = standingFor(tokens);
  const reading = read([...words('no'), ...within(tokens, text, groups['what']), ...words('at'), ...where(place)], carry);
  const [made, ...more] = reading.made;
  const body = made?.body;
  return body?.kind === 'finding' && body.presence === 'absent' && body.place !== null && more.length === 0 ? asWhole(reading) : undefined;
}

/** Of an overgrowth it was not reduced. */
/** What is said of work beside its verb and its thing. */
const ofWork: ReadonlySet<string> = new Set([
  'left',
  'it',
  'started',
  'began',
  'bringing',
  'taking',
  'getting',
  'do',
  'stages',
  'leaves',
  'leaving',
  'ready',
  'fingers',
  'easily',
  'easy',
  'halfway',
  'popped',
  'far',
  'two',
  'three',
  'number',
]);
/** "those came out", "started bringing that down, do it in stages": something was done to it, and nothing may be lost of that. */
function lostWork({ tokens, last, carry, read }: Said): Answer {
  if (last.kind !== 'treatment' && !(last.kind === 'finding' && last.presence === 'present')) return undefined;
  const { made, marks, role } = read(tokens, carry);
  const strange = marks.some(({ from, to }, m) => role[m] === 'unknown' && !tokens.slice(from, to).every(({ t }) => ofWork.has(t)));
  return made.length === 0 && !strange ? 'asked' : undefined;
}
function leftAlone({ tokens, last, carry, read }: Said): Answer {
  if (last.kind !== 'finding') return undefined;
  if (!overgrowths.has(last.condition)) return 'asked';
  const reading = read(standingFor(tokens).words('left', 'alone'), carry);
  return reading.made.length === 1 ? asWhole(reading) : 'asked';
}
