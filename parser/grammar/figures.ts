/**
 * Figures that lean on what was said just before: "six mil on one oh six and four on two oh six" (the unit stays),
 * "upper right, hook on the six" (the quadrant stays). A number that nothing before it explains stays a number.
 */
import type { Item } from '../contract/item.ts';
import { conditions } from '../lexicon/conditions.ts';
import { aboutSay } from '../lexicon/modifiers.ts';
import { newAfter, newBefore, oldAfter, oldBefore } from '../lexicon/history.ts';
import { scales, type ScaleId } from '../lexicon/scales.ts';
import type { ConditionEntry } from '../lexicon/types.ts';
import { crested } from './assemble.ts';
import type { Carry } from './carry.ts';
import { first } from './lists.ts';
import { quadrantsOf, type RawPlace } from './places.ts';
import type { Mark } from './scan.ts';
import { codeOf, quadrantOf } from './teeth.ts';
import type { Token } from './tokens.ts';

type Quadrant = Pick<RawPlace, 'jaw' | 'side'>;
const names: Readonly<Record<number, Quadrant>> = {
  1: { jaw: 'upper', side: 'right' },
  2: { jaw: 'upper', side: 'left' },
  3: { jaw: 'lower', side: 'left' },
  4: { jaw: 'lower', side: 'right' },
};

/** The one quadrant that a place lies in. */
function quadrantIn(raw: RawPlace): Quadrant | undefined {
  const all = new Set((raw.codes ?? []).map(quadrantOf));
  if (all.size > 0) return all.size === 1 ? names[[...all][0] as number] : undefined;
  // "the one hundreds"
  if (raw.quadrants !== undefined)
    return raw.quadrants.length === 1 && raw.region === undefined ? names[raw.quadrants[0] as number] : undefined;
  return raw.jaw !== undefined && raw.jaw !== 'both' && (raw.side === 'left' || raw.side === 'right') && raw.region === undefined
    ? { jaw: raw.jaw, side: raw.side }
    : undefined;
}

/** A side, and neither jaw nor part. */
const bareSideOf = ({ side, jaw, region, positions, quadrants }: RawPlace): Quadrant | undefined =>
  (side === 'left' || side === 'right') && [jaw, region, positions, quadrants].every((one) => one === undefined) ? { side } : undefined;

const small = (mark: Mark | undefined): boolean => mark?.terms?.some((t) => t.k === 'glue' || t.k === 'filler') ?? false;
const condition = (mark: Mark | undefined) => mark?.terms?.find((t) => t.k === 'condition');
/** "ten the same", "eleven too". */
export const againWords: ReadonlySet<string> = new Set(['same', 'ditto', 'likewise', 'too', 'also']);
/** The name of what is measured. */
const hasSize = (mark: Mark | undefined): boolean => {
  const head = condition(mark);
  return head?.k === 'condition' && (conditions[head.id] as ConditionEntry).measure !== undefined;
};
/** A side or an end of a tooth. */
const endOfTooth = (mark: Mark | undefined): boolean =>
  mark?.terms?.some((t) => t.k === 'surface' || (t.k === 'qualifier' && (t.id === 'rostral' || t.id === 'caudal'))) ?? false;
/** A side and nothing else. */
const sideAlone = (mark: Mark | undefined): boolean =>
  mark?.place !== undefined &&
  (mark.place.side === 'left' || mark.place.side === 'right') &&
  Object.keys(mark.place).every((key) => key === 'side');
const partWords: ReadonlySet<string> = new Set(['upper', 'uppers', 'lower', 'lowers', 'top', 'bottom', 'tops', 'bottoms', 'left', 'right']);
/** Single words before a number that make it an estimate. */
const estimates: ReadonlySet<string> = new Set(['nearer', 'like', ...aboutSay]);
const unsaid: ReadonlySet<string> = new Set(['one', 'only', ...estimates]);
/** Before "one", where it is a size or a grade; "there was one last time" counts what was there. */
const wasOne = /(?<!\bthere )\b(?:was|were|from)(?: (?:only|just|about|maybe))*(?: an?)?$/;
const whenWords: ReadonlySet<string> = new Set(['last', 'before', 'in', 'now', 'previously', 'when']);
const verbs = new Set(['is', 'has', 'was', 'are', 'have', 'looks', 'feels']);

/** "wave on the upper right, peaks at the nine": the tooth of the row that was named. */
function withCrest(marks: readonly Mark[], tokens: readonly Token[]): readonly Mark[] {
  const named = crested(tokens) && marks.some((mark) => mark.terms?.some((t) => t.k === 'condition' && t.id === 'wave'));
  const row = named ? first(marks, ({ place }) => (place ? quadrantIn(place) : undefined)) : undefined;
  const [quadrant] = row ? quadrantsOf(row) : [];
  if (quadrant === undefined) return marks;
  const from = marks.findIndex((mark) => crested(tokens.slice(mark.from, mark.to)));
  const end = marks.findIndex((mark, i) => i > from && !small(mark));
  const { number, place } = marks[end] ?? {};
  const bare = place === undefined || (place.codes ?? place.jaw ?? place.side ?? place.region) === undefined;
  const own = place === undefined ? number : place.positions?.length === 1 ? place.positions[0] : undefined;
  return !bare || typeof own !== 'number' || own < 6 || own > 11
    ? marks
    : marks.map((mark, i) =>
        i === end ? { from: mark.from, to: mark.to, place: { codes: [codeOf(quadrant, own)], joined: 'one' as const } } : mark,
      );
}

export function leaning(heard: readonly Mark[], tokens: readonly Token[], carry: Carry, last?: Item): readonly Mark[] {
  const marks = withCrest(heard, tokens);
  if (
    !marks.some(
      (mark) =>
        mark.number !== undefined || ['one', 'last', 'first', 'front', 'back', 'molar', 'premolar'].includes(tokens[mark.to - 1]?.t ?? ''),
    )
  )
    return marks;
  const word = (at: number): string => tokens[at]?.t ?? '';
  const around = (from: number, to: number): string =>
    tokens
      .slice(Math.max(0, from), to)
      .map(({ t }) => t)
      .join(' ');
  const out: Mark[] = [];
  let joined = -1;
  marks.forEach((mark, i) => {
    if (i <= joined) return;
    const whole = placedBehind(mark, i);
    if (whole) {
      out.push(whole.mark);
      joined = whole.last;
      return;
    }
    const molar = ofTheQuadrant(mark);
    if (molar) {
      out.push(molar);
      return;
    }
    const end = endOfRow(mark);
    if (end) {
      out.push(end);
      return;
    }
    const listed = listOf(mark, i);
    if (listed) {
      out.push(listed.mark);
      joined = listed.last;
      return;
    }
    const value = mark.number ?? (word(mark.from) === 'one' && mark.to - mark.from === 1 && small(mark) ? 1 : undefined);
    out.push(
      value === undefined
        ? mark
        : (graded(mark, value, i) ?? sized(mark, value, i) ?? (typeof value === 'number' ? positioned(mark, value, i) : undefined) ?? mark),
    );
  });
  return out;

  /** "peripheral caries two oh seven one point one", "infundibular caries two oh nine, that's a one". */
  function graded(mark: Mark, value: NonNullable<Mark['number']>, i: number): Mark | undefined {
    const decimal = !Number.isInteger(value) && mark.number !== undefined;
    const next = decimal ? marks.slice(i + 1).find((m) => !small(m)) : undefined;
    const head = condition(out.findLast((m) => condition(m) !== undefined) ?? next) ?? gradedLast(decimal);
    const entry = head?.k === 'condition' ? (conditions[head.id] as ConditionEntry) : undefined;
    const scale = entry?.scale;
    const legal: readonly string[] = scale ? scales[scale as ScaleId].values : [];
    // "one point one on the left and two on the right": shared out by side.
    const behind = marks.slice(i + 1).filter((m) => !small(m) || word(m.from) === 'one');
    const both = sideAlone(behind[0]) && (behind[1]?.number !== undefined || word(behind[1]?.from ?? -1) === 'one') && sideAlone(behind[2]);
    const shared = mark.number !== undefined && (!Number.isInteger(value) || both) && ['on', 'at', 'in'].includes(word(mark.to));
    // "left a two, right a three": each side has its own.
    const ofSide = word(mark.from - 1) === 'a' && sideAlone(marks[i - 2]) && (tokens[mark.to - 1]?.ends === true || i === marks.length - 1);
    const said =
      decimal ||
      shared ||
      ofSide ||
      (word(mark.from - 1) === 'a'
        ? i === marks.length - 1 ||
          (tokens[mark.to - 1]?.ends === true && (['it', 'is', 'as', 'at'].includes(word(mark.from - 2)) || called(mark))) ||
          (called(mark) && ['on', 'at', 'in', 'for', 'now', 'today'].includes(word(mark.to)))
        : mark.number !== undefined &&
          (marks[i - 1]?.place?.codes !== undefined || (marks[i - 1]?.place?.positions !== undefined && !Number.isInteger(value))) &&
          (i === marks.length - 1 || !Number.isInteger(value)));
    return said &&
      (legal.includes(String(value)) || (ofSide && scale === undefined && entry?.measure === undefined)) &&
      (ofSide || decimal || !out.some((m) => m.grade !== undefined))
      ? { from: mark.from, to: mark.to, grade: { value: String(value), announced: false } }
      : undefined;
  }

  /** "call that furcation a two on three oh seven", "mobility's a two on three oh nine": right behind its name. */
  function called(mark: Mark): boolean {
    const before = out.findLast((m) => !small(m));
    return condition(before) !== undefined && (before?.to ?? 0) >= mark.from - 4;
  }

  /** "three oh eight, peripheral caries, one point one" / "three oh nine, one point two": of the scale that was spoken of. */
  function gradedLast(decimal: boolean): ReturnType<typeof condition> {
    return decimal && last?.kind === 'finding' && last.grade !== undefined && !marks.some((m) => condition(m) !== undefined)
      ? { k: 'condition', id: last.condition, strength: 'say', plural: false }
      : undefined;
  }

  /** "... six mil on one oh six and four on two oh six", "mobility two on four oh one, one on four oh two". */
  function sized(mark: Mark, value: NonNullable<Mark['number']>, i: number): Mark | undefined {
    // "same other side, three": of the size that was said there.
    const size = last?.kind === 'finding' && last.presence === 'present' && last.measures?.length === 1 ? last.measures[0] : undefined;
    if (
      mark.number !== undefined &&
      typeof size?.value === 'number' &&
      size.unit !== undefined &&
      (i === marks.length - 1 || tokens[mark.to - 1]?.ends === true) &&
      !marks.some((m, k) => k !== i && (m.unknown ?? m.measure ?? m.grade ?? m.number ?? condition(m)) !== undefined) &&
      (marks.some((m) => m.place !== undefined && m.to <= mark.from)
        ? tokens.some(({ t }) => againWords.has(t)) || (word(0) === 'and' && tokens.some(({ carried }) => carried))
        : last?.kind === 'finding' &&
          last.when === 'before' &&
          /^(?:(?:so|but|and) )?(?:today|now|this time) (?:it is|it's|is|only|just)\b/.test(around(0, mark.from)))
    )
      return {
        from: mark.from,
        to: mark.to,
        measure: { value, unit: size.unit, about: estimates.has(word(mark.from - 1)), what: size.what },
      };
    // "five and six mil": the unit is said once.
    const unitBehind =
      word(mark.to) === 'and' && marks[i + 2]?.measure?.unit !== undefined && marks[i + 2]?.from === mark.to + 1
        ? marks[i + 2]?.measure
        : undefined;
    const unitLater = unitBehind ?? otherSideSized(i);
    if (mark.number !== undefined && unitLater?.unit !== undefined)
      return {
        from: mark.from,
        to: mark.to,
        measure: { value, unit: unitLater.unit, about: false, ...(unitLater.what ? { what: unitLater.what } : {}) },
      };
    const before = out.findLast((m) => m.measure?.value !== undefined || m.grade !== undefined);
    const next = marks.slice(i + 1).find((m) => !small(m));
    // "... four on the cheek side": a side of the tooth, behind the size of another one.
    const leads =
      (['on', 'at', 'to', 'off'].includes(word(mark.to)) && next?.place !== undefined) ||
      // "eight millimetres of overjet and five of overbite"
      (mark.number !== undefined && word(mark.to) === 'of' && hasSize(next)) ||
      (mark.number !== undefined && next === marks[i + 1] && endOfTooth(next) && out.some(endOfTooth));
    // "... four mil and two oh six about three": the unit stays.
    const near = small(marks[i - 1]) && (['is', 'by'].includes(word(mark.from - 1)) || estimates.has(word(mark.from - 1)));
    // "right one six mil, left one four", "left's about five mil, right's about three", "seven mil left and four right": a side of what was named.
    const led = marks.slice(0, i).findLast((m) => !small(m) && !unsaid.has(word(m.from)));
    const sided =
      mark.number !== undefined &&
      led !== undefined &&
      (sideAlone(led) ||
        (led?.place !== undefined &&
          led.place.codes === undefined &&
          (word(led.to) === 'one' || (partWords.has(word(led.to - 1)) && led.to - led.from === 1)))) &&
      before !== undefined &&
      out.indexOf(before) < out.indexOf(led as Mark) &&
      (i === marks.length - 1 || tokens[mark.to - 1]?.ends === true || word(mark.to) === 'and');
    const sideBehind =
      mark.number !== undefined &&
      sideAlone(marks[i + 1]) &&
      sideAlone(led) &&
      marks[marks.indexOf(led as Mark) - 1]?.measure !== undefined;
    const trails =
      sided ||
      sideBehind ||
      (mark.number !== undefined &&
        (marks[i - 1]?.place?.codes !== undefined || (near && marks[i - 2]?.place?.codes !== undefined)) &&
        (i === marks.length - 1 || word(mark.to) === 'and'));
    // "gap two mil and the pocket there's five", "one oh six is four mil and two oh six about three": of the same kind as the size before.
    const own = marks
      .slice(0, i)
      .findLastIndex((m) => !small(m) && !(m.terms ?? []).some((t) => t.k === 'filler') && !estimates.has(word(m.from)));
    const ends = i === marks.length - 1 || tokens[mark.to - 1]?.ends === true;
    const behind =
      mark.number !== undefined &&
      word(mark.from - 1) !== 'the' &&
      ends &&
      before?.measure !== undefined &&
      out.indexOf(before) < own &&
      (marks[own]?.place?.codes !== undefined ||
        (endOfTooth(marks[own]) && out.filter(endOfTooth).length > 1) ||
        (condition(marks[own])?.k === 'condition' &&
          (conditions[(condition(marks[own]) as { id: keyof typeof conditions }).id] as ConditionEntry).measure !== undefined));
    // "mobility two now, it was a one last time": of another day, and no pronoun.
    const oneThen =
      mark.number === undefined &&
      wasOne.test(around(0, mark.from)) &&
      (ends || whenWords.has(word(mark.to)) || oldAfter.test(around(mark.to, mark.to + 5)));
    // "was six mil last year, now three", "pocket five" behind a gap of two mil.
    const dated =
      oneThen ||
      (mark.number !== undefined &&
        (oldBefore.test(around(mark.from - 4, mark.from)) ||
          newBefore.test(around(mark.from - 4, mark.from)) ||
          newAfter.test(around(mark.to, mark.to + 5)) ||
          oldAfter.test(around(mark.to, mark.to + 5))));
    if (before === undefined || !(leads || trails || dated || behind)) return undefined;
    // "a five mil one on four eleven": a pronoun, unless grades are counted.
    // "two mil on the left, one on the right": counted beside the size of the other side.
    const kept = out.filter((m) => !small(m));
    const beside =
      kept.at(-1)?.place?.side !== undefined &&
      kept.at(-1)?.place?.codes === undefined &&
      kept.at(-2)?.measure !== undefined &&
      leads &&
      marks.slice(i + 1).find((m) => !small(m))?.place?.side !== undefined;
    if (
      mark.number === undefined &&
      !beside &&
      !oneThen &&
      (before.grade === undefined || (!small(marks[i - 1]) && marks[i - 1]?.place === undefined))
    )
      return undefined;
    if (before.grade) return { from: mark.from, to: mark.to, grade: { value: String(value), announced: false } };
    const { unit, what } = before.measure as NonNullable<Mark['measure']>;
    return {
      from: mark.from,
      to: mark.to,
      measure: {
        value,
        about: (near || sided) && estimates.has(word(mark.from - 1)),
        ...(unit ? { unit } : {}),
        ...(what ? { what } : {}),
      },
    };
  }

  /** "right three and left five millimetre": the unit is said once, with the other side's size. */
  function otherSideSized(i: number): Mark['measure'] {
    const [next, size] = marks.slice(i + 1).filter((m) => !small(m));
    return sideAlone(marks[i - 1]) && sideAlone(next) && next?.place?.side !== marks[i - 1]?.place?.side ? size?.measure : undefined;
  }

  /** "missing the nine lower right": the quadrant right behind the number, and nothing said of it. */
  function bareBehind(mark: Mark, i: number): boolean {
    const next = marks[i + 1];
    return (
      ['the', 'this', 'that'].includes(word(mark.from - 1)) &&
      tokens[mark.to - 1]?.ends !== true &&
      next?.place?.jaw !== undefined &&
      (i + 2 === marks.length || tokens[next.to - 1]?.ends === true)
    );
  }

  /** "eleven on the lower left has a ramp": the number and the quadrant behind it are one place. */
  function placedBehind(mark: Mark, i: number): { mark: Mark; last: number } | undefined {
    if (
      typeof mark.number !== 'number' ||
      !Number.isInteger(mark.number) ||
      mark.number < 6 ||
      mark.number > 11 ||
      !(['on', 'in', 'at', 'of'].includes(word(mark.to)) || bareBehind(mark, i))
    )
      return undefined;
    const last = marks.findIndex((m, k) => k > i && !small(m));
    const raw = marks[last]?.place;
    const quadrant = raw && raw.codes === undefined && raw.positions === undefined ? quadrantIn(raw) : undefined;
    return quadrant && { mark: { from: mark.from, to: (marks[last] as Mark).to, place: { positions: [mark.number], ...quadrant } }, last };
  }

  /** "upper right first molar has a crack", "second molar's fine": of the quadrant spoken of before. */
  function ofTheQuadrant(mark: Mark): Mark | undefined {
    const raw = mark.place;
    const [position, ...more] = raw?.positions ?? [];
    const open =
      raw !== undefined &&
      position !== undefined &&
      position >= 6 &&
      more.length === 0 &&
      !raw.plural &&
      !raw.all &&
      [raw.codes, raw.jaw, raw.side, raw.quadrants, raw.region, raw.relative].every((one) => one === undefined) &&
      /^(?:premolar|molar|tooth)$/.test(word(mark.to - 1));
    const quadrant =
      open && !marks.some((m) => m !== mark && m.place !== undefined && !m.place.region) ? carry.place?.map(quadrantIn).at(-1) : undefined;
    return quadrant && { ...mark, place: { ...raw, ...quadrant }, carried: true as const };
  }

  /** "lower left, ramp on the last one": the last tooth of the row that was named. */
  function endOfRow(mark: Mark): Mark | undefined {
    const end = ['last', 'back', 'rearmost'].includes(word(mark.from))
      ? 11
      : ['first', 'front', 'foremost'].includes(word(mark.from))
        ? 6
        : undefined;
    const one = word(mark.from + 1) === 'one';
    const closed = one
      ? mark.from === 0 || word(mark.from - 1) === 'the'
      : ['first', 'last'].includes(word(mark.from)) &&
        word(mark.from - 1) === 'the' &&
        ['on', 'at'].includes(word(mark.from - 2)) &&
        mark.to - mark.from === 1 &&
        (mark.to === tokens.length || tokens[mark.to - 1]?.ends === true || word(mark.to) === 'and');
    if (end === undefined || mark.to - mark.from > 2 || !closed) return undefined;
    const here = out.findLast((m) => m.place !== undefined)?.place;
    const quadrant = here ? quadrantIn(here) : carry.place?.map(quadrantIn).at(-1);
    return (
      quadrant && {
        from: mark.from,
        to: mark.from + (mark.to - mark.from === 2 ? 2 : 1),
        place: { positions: [end], ...quadrant },
        ...(here ? {} : { carried: true as const }),
      }
    );
  }

  /** "seven and eight fine": two positions of the quadrant that the second one stands in. */
  function listOf(mark: Mark, i: number): { mark: Mark; last: number } | undefined {
    const to = word(marks[i + 2]?.from ?? -1) === 'the' && marks[i + 2]?.number === undefined ? i + 3 : i + 2;
    const second = marks[to];
    if (
      typeof mark.number !== 'number' ||
      typeof second?.number !== 'number' ||
      word(marks[i + 1]?.from ?? -1) !== 'and' ||
      mark.number < 6 ||
      second.number <= mark.number
    )
      return undefined;
    const gap = /\bbetween(?: the)?$/.test(around(mark.from - 2, mark.from));
    const place = gap || word(mark.from - 1) === 'the' ? ofQuadrant(second, second.number) : positioned(second, second.number, to, i);
    const raw = place?.place;
    if (place === undefined || raw?.positions === undefined) return undefined;
    const all = [mark.number, ...raw.positions];
    // "between the nine and the ten"
    const [quadrant, ...others] = quadrantsOf(raw);
    const codes = gap && quadrant !== undefined && others.length === 0 ? all.map((position) => codeOf(quadrant, position)) : undefined;
    const where: RawPlace = codes
      ? { codes, joined: 'between' }
      : { ...raw, positions: all, ...(gap ? { joined: 'between' } : { plural: true }) };
    return {
      mark: { ...place, from: mark.from, place: where },
      last: to,
    };
  }

  /** A position of the quadrant that was named. */
  function ofQuadrant(mark: Mark, value: number): Mark | undefined {
    const here = out.findLast((m) => m.place !== undefined)?.place;
    // "on the right, a gap between the ten and the eleven": of which jaw is asked.
    const quadrant = here ? (quadrantIn(here) ?? bareSideOf(here)) : carry.place?.map(quadrantIn).at(-1);
    return (
      quadrant && {
        from: mark.from,
        to: mark.to,
        place: { positions: [value], ...quadrant },
        ...(here ? {} : { carried: true as const }),
      }
    );
  }

  /** "one hundreds, hook six, caries nine", "step on eight": of the quadrant named, the tooth behind the name of what it has. */
  function behindName(mark: Mark, i: number): 'on' | 'alone' | undefined {
    const before = marks[marks.slice(0, i).findLastIndex((m) => !small(m))];
    const head = condition(before);
    if (head?.k !== 'condition' || !(conditions[head.id] as ConditionEntry).places.includes('T')) return undefined;
    const closes =
      mark.to === tokens.length ||
      tokens[mark.to - 1]?.ends === true ||
      marks[i + 1]?.measure !== undefined ||
      marks[i + 1]?.grade !== undefined ||
      (marks[i + 1]?.terms ?? []).some((t) => t.k === 'severity' || t.k === 'severityKept');
    if (!closes) return undefined;
    if (['on', 'at'].includes(word(mark.from - 1))) return 'on';
    // Of a gap or a pocket the number may be its size; and where a tooth is named, it is.
    const here = out.findLast((m) => m.place !== undefined);
    return before === marks[i - 1] &&
      before?.to === mark.from &&
      tokens[before.to - 1]?.ends !== true &&
      !(conditions[head.id] as ConditionEntry).places.includes('S') &&
      here?.place !== undefined &&
      (here.place.codes === undefined || here.own === true) &&
      tokens[(marks.find((m) => !small(m)) as Mark).to - 1]?.ends === true
      ? 'alone'
      : undefined;
  }

  /** "lower right nine cupped out, ten worn, "hook on the six", "nine's cupped out". */
  function positioned(mark: Mark, value: number, i: number, start = i): Mark | undefined {
    if (mark.number === undefined || !Number.isInteger(value) || value < 6 || value > 11) return undefined;
    const the = ['the', 'this', 'that'].includes(word(mark.from - 1));
    const listed = behindName(mark, i);
    const verb = verbs.has(word(mark.to));
    // "nine has a big cavity": how big stands between.
    const next = marks
      .slice(i + 1)
      .find((m) => !small(m) && !(verb && m.terms?.every((t) => ['severity', 'severityKept', 'qualifier', 'glue'].includes(t.k))));
    const head = condition(next);
    const counted =
      head !== undefined && head.plural && !verb && tokens[mark.to - 1]?.ends !== true && word((next as Mark).to - 1) !== 'caries';
    const same = againWords.has(word(mark.to)) || (word(mark.to) === 'the' && word(mark.to + 1) === 'same');
    const follows = same || (head !== undefined && !counted && (verb || next === marks[i + 1]));
    if (!(the || follows || listed) || (counted && !listed)) return undefined;
    const here = out.findLast((m) => m.place !== undefined)?.place;
    const spoken = here && quadrantIn(here);
    const first = marks.slice(0, start).every(small) && !marks.some((m) => m.unknown) && tokens[mark.to - 1]?.ends !== true;
    const carried =
      here === undefined && (the || verb || same || first || listed === 'on') ? carry.place?.map(quadrantIn).at(-1) : undefined;
    // "nine's cupped on the upper left": the quadrant comes behind.
    const behind =
      here === undefined &&
      marks.slice(i + 1).some((m) => m.place && quadrantIn(m.place) && m.place.codes === undefined && m.place.positions === undefined);
    if (behind) return { from: mark.from, to: mark.to, place: { positions: [value] } };
    const quadrant = spoken ?? carried;
    return (
      quadrant && {
        from: mark.from,
        to: mark.to,
        place: { positions: [value], ...quadrant },
        ...(spoken ? {} : { carried: true as const }),
        ...(listed ? { own: true as const } : {}),
      }
    );
  }
}
