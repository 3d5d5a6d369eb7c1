/**
 * "The hook's reduced, left the ramp", "flushed all four of those gaps", "that fracture needs the vet", "see how that cap is doing": what was found
 * before is named again, in a phrase that names no other place. It stands where it was found, and is not found a second time.
 */
import type { Context } from '../contract/draft.ts';
import type { Place } from '../contract/item.ts';
import type { ConditionId } from '../lexicon/conditions.ts';
import { foundAs, handledAs, handledSay, procedureOf, standsSay, workTells } from '../lexicon/handling.ts';
import { alreadySay, behindOffSay, besideFound, isNowSay, plainName, wentOffSay } from '../lexicon/namedBefore.ts';
import { joined } from './breaths.ts';
import type { Carry } from './carry.ts';
import { bareAt, definiteAt, definiteWords, type Named } from './definite.ts';
import { withoutRight } from './lookThere.ts';
import type { Made } from './made.ts';
import { gather } from './lists.ts';
import { readAmount } from './numbers.ts';
import { itself } from './pointing.ts';
import type { Reading } from './read.ts';
import { plainly } from './saidPlainly.ts';
import { scan, type Mark } from './scan.ts';
import { askedAbout } from './shortForms.ts';
import { supposed } from './supposed.ts';
import { partsOf } from './pauses.ts';
import type { Token } from './tokens.ts';
import { workWords } from './vocabulary.ts';

const tells: ReadonlySet<string> = new Set([...workWords, ...workTells, ...standsSay.map(([[first]]) => first ?? '')]);

/** "the small one i took right off": no side. */
const noSide = (tokens: readonly Token[]): readonly Token[] => (tokens.some(({ t }) => t === 'right') ? withoutRight(tokens) : tokens);

/** @returns undefined where nothing that was found before is named; what became of one in words that are not known is asked */
export function ofFound(
  said: readonly Token[],
  context: Context,
  carry: Carry,
  read: (words: readonly Token[]) => Reading,
): Reading | undefined {
  const plain = noSide(said);
  const tokens = takenOff(plain, context, carry);
  const named = namedIn(tokens, context, carry);
  if (named.length === 0) return tokens === plain ? undefined : read(tokens);
  // "all four of those gaps", of three: how many, is asked.
  if (named.some(({ places }) => places.length === 0)) return askedAbout(tokens);
  return asOne(tokens, named, carry, read) ?? inParts(tokens, context, carry, read) ?? unclear(tokens, named, carry, read);
}

/** "The hook's off", "those ramps are down two mil each", "cap's been taken off": that it is off now is work done, where it was found before. */
function takenOff(tokens: readonly Token[], context: Context, carry: Carry): readonly Token[] {
  if (context.items.length === 0 || !tokens.some(({ t }) => wentOff.has(t)) || !tokens.some(({ t }) => isNow.has(t))) return tokens;
  for (let from = 0; from < tokens.length; from += 1) {
    const one = definiteAt(tokens, from, context, carry) ?? bareAt(tokens, from, context);
    if (one === undefined || tokens[one.to - 1]?.ends || !isNow.has(tokens[one.to]?.t ?? '')) continue;
    if (!one.found.every(({ condition }) => isTakenOff(condition))) continue;
    let to = one.to + 1;
    while (isNow.has(tokens[to]?.t ?? '') || alreadyWords.has(tokens[to]?.t ?? '')) to += 1;
    const verb = handledSay.has(tokens[to]?.t ?? '') ? 1 : 0;
    const off = tokens[to + verb];
    if (off === undefined || !wentOff.has(off.t) || !(off.ends || behindOff(tokens, to + verb + 1))) continue;
    return [...tokens.slice(0, one.to), ...plainly(tokens, one.to, to + verb, ['taken']), ...tokens.slice(to + verb)];
  }
  return tokens;
}
const wentOff: ReadonlySet<string> = new Set(wentOffSay),
  isNow: ReadonlySet<string> = new Set(isNowSay),
  alreadyWords: ReadonlySet<string> = new Set(alreadySay),
  behindOffWords: ReadonlySet<string> = new Set(behindOffSay);
const isTakenOff = (id: ConditionId): boolean => {
  const kind = handledAs[id];
  return kind !== undefined && kind !== 'tooth' && kind !== 'feed';
};
/** Nothing of where it hangs down: an end, how much, how, or another thing. */
const behindOff = (tokens: readonly Token[], at: number): boolean =>
  tokens[at] === undefined || behindOffWords.has(tokens[at].t) || readAmount(tokens, at) !== undefined;

/** "i've rasped everything by hand, and rounded off that chip": each part between pauses for itself. */
function inParts(
  tokens: readonly Token[],
  context: Context,
  carry: Carry,
  read: (words: readonly Token[]) => Reading,
): Reading | undefined {
  const parts = partsOf(tokens);
  if (parts.length < 2) return undefined;
  const readings = parts.map((part): Reading | undefined => {
    const named = namedIn(part, context, carry);
    if (named.length > 0) return asOne(part, named, carry, read);
    const reading = read(part);
    return reading.made.every(({ body, doubts, how }) => body !== undefined && doubts.length === 0 && how?.['place'] !== 'carried')
      ? reading
      : undefined;
  });
  return readings.every((reading) => reading !== undefined)
    ? joined(
        { parts: readings.map((reading) => ({ reading: reading as Reading, word: 0 })) },
        readings.reduce((sum, reading) => sum + (reading as Reading).steps, 0),
      )
    : undefined;
}

/** What the phrase says of them, and nothing of theirs said of anything else. */
function asOne(
  tokens: readonly Token[],
  named: readonly Named[],
  carry: Carry,
  read: (words: readonly Token[]) => Reading,
): Reading | undefined {
  const plain = read(tokens);
  // What was found last needs no place: work leans on it by itself.
  if (
    named.every(({ found, byNumber }) => !byNumber && found.every(({ id }) => id === carry.last)) &&
    ofThem(plain, named) &&
    plain.made.every(isWork)
  )
    return plain;
  const byPlace = (): Reading | undefined => {
    const reading = read(put(tokens, named, placeOnly));
    return ofThem(reading, named) && reading.made.every((made) => suits(made, named)) ? reading : undefined;
  };
  const byName = (): Reading | undefined => withoutAgain(read(put(tokens, named, nameAndPlace)), named);
  // "that pocket is packed", "the middle one has a pocket": what is said of it is said of where it is.
  return tellsOf(tokens, named) ? (byPlace() ?? byName()) : (byName() ?? byPlace());
}

/** Named in words that no rule reads. */
function unclear(
  tokens: readonly Token[],
  named: readonly Named[],
  carry: Carry,
  read: (words: readonly Token[]) => Reading,
): Reading | undefined {
  const plain = read(tokens);
  // "hook's done, ramp next time": no hook stands where the last thing was found.
  const elsewhere = plain.made.some(
    ({ body, how, doubts }) =>
      body?.kind === 'finding' &&
      body.presence === 'present' &&
      body.when === 'now' &&
      how?.place === 'carried' &&
      doubts.length === 0 &&
      named.some(({ found }) =>
        found.some(({ condition, place }) => condition === body.condition && JSON.stringify(place) !== JSON.stringify(body.place)),
      ),
  );
  // "left the small one": no word of what was found last.
  const another = plain.made.some(
    ({ revises, how }) =>
      (revises !== undefined || how?.['condition'] === 'carried') &&
      named.every(({ found, bare }) => !bare && found.every(({ id }) => id !== revises?.id && id !== carry.last)),
  );
  const nothing = plain.made.length === 0 && plain.unknown === 0 && named.some(({ bare }) => bare) && !supposed(tokens).some(Boolean);
  return elsewhere || another || nothing ? askedAbout(tokens) : undefined;
}

/** What was found before, where this phrase names it and no other place. */
function namedIn(tokens: readonly Token[], context: Context, carry: Carry): readonly Named[] {
  if (context.items.length === 0 || !tokens.some(({ t }) => definiteWords.has(t) || foundAs.has(t))) return [];
  const work = tokens.some(({ t }) => tells.has(t));
  const named: Named[] = [];
  for (let at = 0; at < tokens.length; at += 1) {
    const one = definiteAt(tokens, at, context, carry) ?? (work ? bareAt(tokens, at, context) : undefined);
    if (one === undefined) continue;
    named.push(one);
    at = one.to - 1;
  }
  if (named.length === 0) return [];
  const needed = named.some(({ bare, found }) => !bare || found.every(({ id }) => id !== carry.last));
  const within = (from: number): boolean => named.some((one) => one.from <= from && from < one.to);
  // "the gum's bleeding where that cap came off"
  const ofPart = (region: string | undefined): boolean => region !== undefined && named.some(({ lead }) => lead);
  const elsewhere = scan(tokens).marks.some(
    ({ place, from, to }) => place !== undefined && !within(from) && !within(to - 1) && !ofPart(place.region),
  );
  return needed && !elsewhere ? named : [];
}

type Put = (named: Named, words: readonly string[]) => readonly string[];
/** The words of work know what they are done to by its name. */
const nameAndPlace: Put = ({ found, many, places, lead }, words) => {
  if (lead) return [lead, ...words];
  const name = plainName(found[0]?.condition ?? 'abnormality') ?? '';
  const plural = many && places.length > 1 ? `${name}s` : name;
  return name === '' ? words : ['the', plural, 'on', ...words];
};
const placeOnly: Put = ({ lead }, words) => (lead ? [lead, ...words] : words);

function put(tokens: readonly Token[], named: readonly Named[], as: Put): readonly Token[] {
  return tokens.flatMap((token, i): readonly Token[] => {
    const one = named.find(({ from, to }) => from <= i && i < to);
    if (one === undefined) return [token];
    if (one.from !== i) return [];
    const heard = tokens.slice(one.from, one.to).map(({ word }) => word);
    const ends = tokens[one.to - 1]?.ends;
    const of = [...new Set(one.found.map(({ condition }) => condition))];
    return as(one, wordsOf(one.places)).map((t, n, all): Token => ({
      t,
      word: heard[n] ?? (heard.at(-1) as number),
      heard,
      carried: true,
      of,
      ...(ends && n === all.length - 1 ? { ends } : {}),
    }));
  });
}
const wordsOf = (places: readonly Place[]): readonly string[] =>
  places.flatMap((place, i) => [...(i > 0 ? ['and'] : []), ...(itself(place) ?? [])]);

/** The first of them is what the phrase goes on to tell of. */
const tellsOf = (tokens: readonly Token[], [first]: readonly Named[]): boolean =>
  first !== undefined &&
  tokens.slice(0, first.from).every(({ t }) => leads.has(t)) &&
  telling.test(tokens[first.to]?.t ?? '') &&
  tokens[first.to - 1]?.ends !== true;
const leads: ReadonlySet<string> = new Set(['so', 'well', 'oh', 'okay', 'ok', 'and', 'but', 'now', 'then']);
const telling = /^(?:is|are|was|were|has|have|had|looks?|feels?|got)$/;

const isWork = ({ body }: Made): boolean => body !== undefined && body.kind !== 'finding';
/** Asked in any way, it is left as it is said. */
const sure = ({ body, doubts }: Made): boolean =>
  body !== undefined && doubts.every(({ doubt }) => doubt === 'irreversible' || doubt === 'two-readings');
/** All that was made is new, and is of all that was named. */
function ofThem({ made, marks, tokens }: Reading, named: readonly Named[]): boolean {
  const places = made.flatMap(({ body, doubts }) => [
    ...(body && 'place' in body && body.place ? [body.place] : []),
    ...gather(doubts, ({ place }) => place ?? undefined),
  ]);
  return (
    made.length > 0 &&
    made.every((one) => sure(one) && isOther(one, named) && !reachesOver(one, marks, tokens)) &&
    named.every((one) => one.places.every((place) => places.some((there) => holds(there, place))))
  );
}
/** "i've rasped everything by hand, and rounded off that chip": work of one part with the place of another. */
function reachesOver({ body, marks: own }: Made, marks: readonly Mark[], tokens: readonly Token[]): boolean {
  const head = own.map((m) => marks[m]).find((mark) => mark?.terms?.some((t) => t.k === 'work' && t.term.as === 'procedure'));
  if (body?.kind !== 'treatment' || head === undefined || body.place === null) return false;
  const from = tokens.slice(0, head.from).findLastIndex(({ ends }) => ends) + 1;
  const end = tokens.findIndex(({ ends }, i) => i >= head.from && ends);
  return (
    tokens.some(({ of }) => of) &&
    !tokens.slice(from, end < 0 ? tokens.length : end + 1).some(({ of, t }) => of !== undefined || leaning.has(t))
  );
}
const leaning: ReadonlySet<string> = new Set(['it', 'that', 'them', 'those', 'both', 'one', 'these', 'this']);
const holds = (place: Place, part: Place): boolean =>
  'teeth' in place && 'teeth' in part
    ? part.teeth.every((tooth) => place.teeth.includes(tooth))
    : 'spaces' in place && 'spaces' in part
      ? part.spaces.every((gap) => place.spaces.some((other) => String(other) === String(gap)))
      : JSON.stringify(place) === JSON.stringify(part);

const told = ['kind', 'condition', 'presence', 'when', 'place'];
const isOf = (id: ConditionId, named: readonly Named[]): boolean =>
  named.some(({ found }) => found.some(({ condition }) => condition === id || plainName(condition) === plainName(id)));
/** The finding itself, said again, and nothing new of it. */
const isAgain = ({ body, doubts }: Made, named: readonly Named[]): boolean =>
  body?.kind === 'finding' &&
  body.presence === 'present' &&
  doubts.length === 0 &&
  Object.entries(body).every(([key, value]) => told.includes(key) || value === undefined) &&
  isOf(body.condition, named);
const isOther = ({ body, revises }: Made, named: readonly Named[]): boolean =>
  revises === undefined && !(body?.kind === 'finding' && isOf(body.condition, named));
/** "pulled the loose one", of a cap: no tooth is drawn. "the hook is gone": no tooth is. */
const suits = ({ body }: Made, named: readonly Named[]): boolean =>
  body?.kind === 'finding'
    ? besideFound.has(body.condition)
    : body?.kind !== 'treatment' ||
      !taken.has(body.procedure) ||
      named.every(({ found }) => found.every(({ condition }) => (procedureOf(condition) ?? 'extract') === body.procedure));
const taken: ReadonlySet<string> = new Set(['extract', 'remove-cap', 'scale-calculus']);

/** The reading less what it found a second time; undefined where nothing else came of the words, or something is asked. */
function withoutAgain(reading: Reading, named: readonly Named[]): Reading | undefined {
  const again = reading.made.filter((made) => isAgain(made, named));
  const [first, ...more] = reading.made.filter((made) => !again.includes(made));
  if (first === undefined || !ofThem({ ...reading, made: [first, ...more] }, named)) return undefined;
  return { ...reading, made: [{ ...first, marks: [...first.marks, ...again.flatMap(({ marks }) => marks)] }, ...more] };
}
