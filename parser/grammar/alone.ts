/**
 * Phrases without a finding of their own lean on what was said before: a size, degree or tool alone amends the last item
 * (amend.ts), "same on the other side" repeats its condition (sameAgain.ts); a place alone waits.
 */
import type { Context } from '../contract/draft.ts';
import type { Item } from '../contract/item.ts';
import { amended, amendedPlace, correcting, lead, numberAlone, revision, worthADoubt } from './amend.ts';
import { overgrowths } from '../lexicon/handling.ts';
import { rowTeeth } from '../lexicon/teeth.ts';
import { crested } from './assemble.ts';
import type { Placing } from './groups.ts';
import type { Roles } from './roles.ts';
import { standing, type Carry } from './carry.ts';
import { detailsOf } from './findings.ts';
import { afterIn, timeAlone } from './followUps.ts';
import { where } from './lists.ts';
import type { FindingBody, Made, MadeDoubt } from './made.ts';
import type { RawPlace } from './places.ts';
import { resolvePlace, wantedBy } from './resolve.ts';
import { nextOfThem } from './nextOfThem.ts';
import { glueMarks, sideOfLast, said, sameAgain } from './sameAgain.ts';
import { declinedThere, sameNext, sameWork } from './sameWork.ts';
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';

export interface Alone {
  readonly marks: readonly Mark[];
  readonly tokens: readonly Token[];
  readonly role: Roles['role'];
  readonly places: readonly number[];
  readonly unknown: number;
  /** What is unknown names nothing. */
  readonly light: boolean;
  readonly carry: Carry;
  readonly context: Context;
  readonly missing: ReadonlySet<string>;
}

export function alone(input: Alone): readonly Made[] {
  const { marks, tokens, role, carry, context, missing } = input;
  const placings = input.places.map((i): Placing => ({ raw: (marks[i] as Mark).place as RawPlace, marks: [i] }));
  const last = standing(context, carry.last);
  // "no, make it a year"
  const after =
    last?.kind !== 'follow-up'
      ? undefined
      : correcting(tokens)
        ? afterIn(tokens)
        : last.action === 'recheck' && last.after === undefined
          ? timeAlone(tokens)
          : undefined;
  if (last && after)
    return [
      revision(
        last,
        { after },
        marks.map((_, i) => i),
        {},
      ),
    ];
  if (input.unknown > 0) return namesItsTooth(input, placings) ? placeAlone(input, placings, []) : numberAlone(input);
  const words = lead(tokens);
  const mods = where(role, (r) => r === 'mod');
  const again =
    declinedThere(placings, input, mods) ??
    (last?.kind === 'finding'
      ? sameAgain(last, words, placings, input, mods)
      : last?.kind === 'treatment'
        ? sameWork(last, words, placings, input, mods)
        : last?.kind === 'follow-up'
          ? sameNext(last, words, placings, input, mods)
          : undefined);
  if (again) return again;
  const found = (
    condition: FindingBody['condition'],
    presence: FindingBody['presence'],
    place: FindingBody['place'],
    ...rules: readonly string[]
  ): readonly Made[] => [
    {
      body: { kind: 'finding', condition, presence, when: 'now', place },
      marks: [...input.places, ...glueMarks(input)],
      rules: ['finding', ...rules],
      doubts: [],
    },
  ];

  const [only] = placings.length === 1 ? placings : [];
  if (only?.raw.codes?.length === 1 && /\b(there is no|is no|there was no)\b/.test(words))
    return found('missing', 'present', resolvePlace(placings, wantedBy('missing', new Set())).place, 'no such tooth there');
  if (only?.raw.positions?.length === 1 && only.raw.positions[0] === 4) {
    const there = saidToBeThere(input);
    const ruledOut = marks.some(({ terms }) => terms?.some((t) => t.k === 'cue' && t.cue.means === 'absent' && t.cue.kind === undefined));
    const { place } = resolvePlace(placings, wantedBy('canine-present', missing, true));
    if (there) return found('canine-present', 'present', place);
    if (ruledOut) return found('canine-present', 'absent', place, 'absent');
  }
  // "nothing on the upper left": nothing was found there.
  if (placings.length > 0 && nothingOn.test(words)) {
    // "ulcer left cheek", "nothing on the right": of the part that was looked at.
    const side =
      last && 'place' in last && last.place && placings.every(({ raw }) => sideOnly(raw)) ? sideOfLast(last, placings, missing) : undefined;
    const { place, doubts } = side?.place ? side : resolvePlace(placings, wantedBy('abnormality', missing, true));
    if (place !== null && doubts.length === 0) return found('abnormality', 'absent', place, 'absent');
  }
  // "wave lower left", "crest on three oh eight": where it is highest.
  if (last?.kind === 'finding' && last.condition === 'wave' && last.presence === 'present' && crested(tokens)) {
    const { place } = resolvePlace(placings, { kinds: ['T'], missing });
    const teeth = last.place && 'rows' in last.place ? last.place.rows.flatMap((row) => rowTeeth[row]) : [];
    if (place && 'teeth' in place && place.teeth.every((tooth) => teeth.includes(tooth)))
      return [revision(last, { crest: place.teeth }, [...input.places, ...glueMarks(input)], {})];
  }
  const next = last?.kind === 'finding' && carry.half === undefined ? nextOfThem(last, placings, input, mods) : undefined;
  if (next) return next;
  if (placings.length > 0) return placeAlone(input, placings, mods);
  const untouched = mods.filter((m) =>
    marks[m]?.terms?.some((t) => t.k === 'work' && t.term.as === 'state' && t.term.state === 'not-done'),
  );
  if (untouched.length > 0) return leftAlone(last, untouched);
  if (mods.length > 0 && last) return amended(last, input, mods);
  const molar = marks.findIndex(({ terms }) => terms?.some((t) => t.k === 'condition' && t.id === 'mobility' && t.grade !== undefined));
  if (molar >= 0)
    return [
      {
        marks: [molar],
        rules: ['mobility or molar'],
        doubts: [{ doubt: 'two-readings', readings: ['mobility', 'molar'].map((label) => ({ label, bodies: [] })) }],
      },
    ];
  return worthADoubt(input, mods) ? [{ marks: mods, doubts: [{ doubt: 'no-condition' }], rules: ['half'] }] : [];
}

const nothingOn =
  /^(?:(?:and|there is|is) )?(?:nothing|not a thing)(?: (?:at all|there|else|much|really|to (?:see|find|report)|seen|found|noted|showing))* (?:on|in|at|along|around|up|down)\b/;
const sideOnly = ({ codes, side, jaw, region, positions, row }: RawPlace): boolean =>
  codes === undefined &&
  (side === 'left' || side === 'right') &&
  jaw === undefined &&
  region === undefined &&
  positions === undefined &&
  !row;

/** "canines present", "upper canines through": the group and small words only. */
const saidToBeThere = ({ tokens, marks }: Alone): boolean =>
  tokens.some(({ t }) => ['present', 'there', 'in', 'through', 'up'].includes(t)) &&
  marks.every(({ terms, place }) => place !== undefined || (terms ?? []).every((t) => t.k === 'glue' || t.k === 'filler'));

/** Among words that name nothing, a tooth or a part of one jaw that was named beyond doubt, and nothing else. */
function namesItsTooth({ light, role }: Alone, placings: readonly Placing[]): boolean {
  const sure = placings.every(
    ({ raw: { codes, jaw, side, positions, row, plural } }) =>
      codes !== undefined || (jaw !== undefined && (side !== undefined || positions !== undefined || row || plural)),
  );
  return light && sure && placings.length > 0 && role.every((r) => r !== 'head' && r !== 'mod' && r !== 'cue');
}

/** "not touched", "left alone": of an overgrowth just named it was not reduced; of anything else it is not clear what. */
const leftAlone = (last: Item | undefined, marks: readonly number[]): readonly Made[] =>
  last?.kind === 'finding' && overgrowths.has(last.condition)
    ? [
        {
          body: { kind: 'treatment', procedure: 'reduce', state: 'not-done', place: last.place },
          marks,
          how: { place: 'carried' },
          rules: ['left alone'],
          doubts: [],
        },
      ]
    : [{ marks, rules: ['left alone'], doubts: [{ doubt: 'no-condition' }] }];

/** A place said alone stands ready for the next phrase; a finding that waited for its place takes it. */
function placeAlone(input: Alone, placings: readonly Placing[], mods: readonly number[]): readonly Made[] {
  const { carry, context, places, tokens } = input;
  const waiting = standing(context, carry.half?.item);
  if (waiting?.kind === 'finding' && waiting.place === null) {
    const { place, doubts } = resolvePlace(placings, wantedBy(waiting.condition, input.missing));
    const details = detailsOf(waiting.condition, mods, input.marks, tokens, -1);
    if (place !== null)
      return [revision(waiting, { place, ...said(details) }, [...places, ...mods], { settles: [carry.half?.doubt as string], doubts })];
  }
  const last = standing(context, carry.last);
  // "not on the right", of what is there: where it is instead was not said.
  if (last && /^not /.test(lead(tokens)) && placings.length === 1 && (placings[0]?.raw.codes?.length ?? 1) === 1)
    return [{ marks: places, rules: ['half'], doubts: [{ doubt: 'no-condition', ...('place' in last ? { place: last.place } : {}) }] }];
  if (last && correcting(tokens)) return amendedPlace(last, input, placings);
  if (tokens.length === 0 || placings.every(({ raw }) => bare(raw))) return [];
  const { place, doubts } = resolvePlace(placings, { kinds: ['T', 'R', 'G'], missing: input.missing });
  const wrong = doubts
    .filter(({ doubt }) => doubt !== 'no-place')
    .map(({ doubt, said: words, readings }): MadeDoubt => ({
      doubt,
      words: (words ?? []).join(' ') || undefined,
      ...(readings ? { readings: readings.map(() => ({ label: '', bodies: [] })) } : {}),
    }));
  return [{ marks: [...places, ...mods], rules: ['half'], doubts: wrong.length > 0 ? wrong : [{ doubt: 'no-condition', place }] }];
}

/** A side or a jaw, and neither both nor its teeth: no place that a finding could be at. */
const bare = ({ codes, region, positions, jaw, side, quadrants, row, plural }: RawPlace): boolean =>
  codes === undefined &&
  region === undefined &&
  positions === undefined &&
  (jaw === undefined || (side === undefined && !row && !plural)) &&
  quadrants === undefined;
