/**
 * Two ears that learned differently seldom make the same mistake. Where their readings of one phrase contradict each other on what
 * matters (tooth, gap, number, unit, side, presence, grade, agent, dose, route, state), a person must look. The second reader knows
 * the trade badly: what it merely lost is no contradiction, and what it heard more counts only when it understood the whole phrase. Pure.
 */
import type { Doubt } from '../../parser/contract/doubt.ts';
import type { Item, Place } from '../../parser/contract/item.ts';
import type { Utterance } from '../../parser/contract/draft.ts';
import type { Hypothesis } from '../../parser/contract/word.ts';
import { soundsApart } from '../../parser/index.ts';

export interface Read {
  readonly text: string;
  readonly items: readonly Item[];
  /** Words that no item, command or filler took. */
  readonly loose: number;
  /** Mean log-probability of its words, in nats; 0 is certain. */
  readonly nats: number;
}
/** @param best the hypothesis that was read */
export const readOf = (
  { text, items, utterance }: { readonly text: string; readonly items: readonly Item[]; readonly utterance: Pick<Utterance, 'words'> },
  best: Hypothesis | undefined,
): Read => ({
  text,
  items,
  loose: utterance.words.filter(({ as }) => as === 'leftover').length,
  nats: best && best.words.length > 0 ? best.logProb / best.words.length : 0,
});

export interface Compared {
  /** Items of the first reader that the second says too, the same in all that matters. */
  readonly agreed: readonly string[];
  /** Items of the first reader that the second does not yield so. */
  readonly alone: readonly string[];
  readonly doubts: readonly Doubt[];
  /** By words alone: log-odds that the first misheard what only it heard so; above `OTHER_WORDS` it is asked. */
  readonly misheard: number;
}

/** What an item is about, whatever it says of it. */
const topic = (item: Item): string =>
  item.kind === 'finding'
    ? `finding ${item.condition}`
    : item.kind === 'treatment'
      ? `treatment ${item.procedure}`
      : item.kind === 'follow-up'
        ? `follow-up ${item.action}`
        : item.kind === 'fact'
          ? `fact ${item.about}`
          : item.kind;
const placeOf = (item: Item): Place | null => ('place' in item && item.place ? item.place : null);

/** The fields two readers must agree on, by name, as sets of values; words kept as said may differ. */
function fields(item: Item): Readonly<Record<string, readonly string[]>> {
  const place = placeOf(item);
  const where: Record<string, readonly unknown[]> =
    place === null
      ? {}
      : 'region' in place
        ? { place: [place.region], side: [place.side], jaw: [place.jaw] }
        : { place: 'teeth' in place ? place.teeth : 'spaces' in place ? place.spaces : place.rows };
  const sized =
    item.kind === 'finding' ? Object.fromEntries((item.measures ?? []).map(({ what, value, unit }) => [what, [[value, unit]]])) : {};
  const own = (): Record<string, readonly unknown[]> => {
    switch (item.kind) {
      case 'finding':
        return {
          presence: [item.presence],
          when: [item.when],
          grade: [item.grade?.value],
          surfaces: item.surfaces ?? [],
          qualifiers: item.qualifiers ?? [],
          severity: [item.severity],
          ...sized,
        };
      case 'treatment':
        return { state: [item.state], amount: [item.amountMm], instrument: [item.instrument], by: [item.by] };
      case 'sedation':
        return {
          given: [item.given],
          agent: [item.agent],
          dose: [item.dose?.value],
          unit: [item.dose?.unit],
          route: [item.route],
          by: [item.by],
          topUp: [item.topUp],
        };
      case 'medication':
        return {
          agent: [item.agent],
          dose: [item.dose?.value],
          unit: [item.dose?.unit],
          route: [item.route],
          by: [item.by],
          state: [item.state],
        };
      case 'follow-up':
        return { after: [item.after], state: [item.state] };
      default:
        return {};
    }
  };
  return Object.fromEntries(
    Object.entries({ ...where, ...own() })
      .map(([name, values]) => [name, values.filter((v) => v !== undefined).map((v) => JSON.stringify(v))])
      .filter(([, values]) => values!.length > 0),
  ) as Record<string, string[]>;
}

type Difference = 'none' | 'lost' | 'more' | 'against';
/** How the second's item stands to the first's: the same, with something lost, with something more, or saying another thing. */
function difference(first: Item, second: Item): Difference {
  const [a, b] = [fields(first), fields(second)];
  let [lost, more] = [false, false];
  for (const name of new Set([...Object.keys(a), ...Object.keys(b)])) {
    const [mine, other] = [new Set(a[name]), new Set(b[name])];
    const [onlyMine, onlyOther] = [[...mine].some((v) => !other.has(v)), [...other].some((v) => !mine.has(v))];
    if (onlyMine && onlyOther) return 'against';
    if (onlyMine) lost = true;
    if (onlyOther) more = true;
  }
  return more ? 'more' : lost ? 'lost' : 'none';
}
const samePlace = (a: Item, b: Item): boolean =>
  placeOf(a) !== null && placeOf(b) !== null && JSON.stringify(fields(a)['place']) === JSON.stringify(fields(b)['place']);

/** Nats a word below which the second makes up words: what the grammar reads in them contradicts nobody. Noise alone gave -1.8 to -2.8. */
const BABBLE = -1.7;

/**
 * How likely it is that the first misheard, by words alone, also when the grammar makes nothing of what the second heard: the less
 * sure the first was of its words, the further the second's words are in sound, and the surer the second was of those. Natural
 * log-odds of a silent error, fitted (logistic regression) on even phrases of a voice that the ear never learned, at 10 and 5 dB:
 * 292 clips, 24 silent errors. What stands above 0.5 is asked: 14 of the 24, and 8 % of right items there.
 */
const misheard = (first: Read, second: Read): number =>
  0.67 * Math.log(Math.max(0.001, -first.nats)) +
  6.3 * soundsApart(first.text, second.text) -
  0.42 * Math.log(Math.max(0.05, -second.nats));
export const OTHER_WORDS = 0.5;

/** @param id of the doubt that may come of it: one a phrase */
export function compareReaders(utterance: Pick<Utterance, 'id' | 'at'>, first: Read, second: Read, id: string): Compared {
  const clear = second.nats > BABBLE;
  const whole = clear && second.items.length > 0 && second.loose === 0;
  const pool = [...second.items];
  const take = (fits: (other: Item) => boolean): Item | undefined => {
    const at = pool.findIndex(fits);
    return at < 0 ? undefined : pool.splice(at, 1)[0];
  };
  const agreed: string[] = [];
  const alone: Item[] = [];
  const asked: Item[] = [];
  const left = first.items.filter((item) => {
    const same = take((other) => topic(other) === topic(item) && difference(item, other) === 'none');
    if (same) agreed.push(item.id);
    return !same;
  });
  for (const item of left) {
    alone.push(item);
    const near = take((other) => topic(other) === topic(item));
    const told = near && difference(item, near);
    if ((clear && told === 'against') || (told === 'more' && whole)) asked.push(item);
    else if (!near && whole && (take((other) => samePlace(other, item)) || pool.length > 0)) asked.push(item);
  }
  // What only the second heard is asked about when it understood the whole phrase.
  const unheard = whole ? pool.filter((item) => item.kind !== 'fact' && item.kind !== 'note') : [];
  const compared = { agreed, alone: alone.map((item) => item.id), misheard: misheard(first, second) };
  const contradicted = asked.length > 0 || unheard.length > 0;
  if (!contradicted && !(alone.length > 0 && compared.misheard > OTHER_WORDS)) return { ...compared, doubts: [] };
  const about = asked[0] ?? alone[0];
  const doubt: Doubt = {
    id,
    doubt: 'readers-differ',
    words: first.text,
    utterance: utterance.id,
    state: 'open',
    ...(contradicted ? {} : { why: 'Neither hearing was sure of its words, and they are not the same.' }),
    ...(utterance.at ? { at: utterance.at } : {}),
    ...(about ? { item: about.id } : {}),
    ...(about && placeOf(about) ? { place: placeOf(about) } : {}),
    readings: [
      { label: first.text, items: alone },
      {
        label: second.text,
        items: second.items
          .filter((item) => !first.items.some((other) => topic(other) === topic(item) && difference(other, item) === 'none'))
          .map((item, i) => ({ ...item, id: `${id}/r2.${i + 1}` })),
      },
    ],
  };
  return { ...compared, doubts: [doubt] };
}

/**
 * How much likelier a right item is to be heard the same by both readers than a wrong one: on even phrases and lines of the choosing
 * set, `alpha`, at 10 and 5 dB, 77 of 255 right ones and 8 of 35 wrong ones; with 30 of 79 and 0 of 3 of an earlier adapter, smoothed
 * by one either way, (108/336) / (9/40). What both mishear they often mishear alike. Odd phrases, of that earlier one, gave 89 of 139 and 1 of 10.
 * The ear that ships (`npm run bench:second -- --fit --every 3`) gave 30 of 91 and 0 of 9: more, of too few wrong ones to move it.
 */
export const AGREEMENT = 1.4;
/** Belief in an item that both readers heard, from the first reader's own (0 to 1). */
export const sureOfBoth = (sure: number): number => (sure * AGREEMENT) / (sure * AGREEMENT + 1 - sure);
