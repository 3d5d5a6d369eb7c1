/** What each mark is: the name of a finding or of work, a place, a turn, a word that says more, a stop, or nothing of the record. Its neighbours decide, where its words allow more than one thing. */
import type { ConditionId } from '../lexicon/conditions.ts';
import type { RegionId } from '../lexicon/regions.ts';
import { describingSay } from '../lexicon/modifiers.ts';
import type { WorkTerm } from '../lexicon/work.ts';
import { prepositions } from './groups.ts';
import { first } from './lists.ts';
import { isFilling, type Mark } from './scan.ts';
import type { Token } from './tokens.ts';
import type { Term } from './vocabulary.ts';

export interface Head {
  readonly mark: number;
  readonly condition?: {
    readonly id: ConditionId;
    readonly strength: 'say' | 'withPlace' | 'absentSay';
    readonly plural: boolean;
    readonly grade?: string;
  };
  readonly work?: Extract<WorkTerm, { as: 'procedure' }>;
}

const isHead = (term: Term): boolean => term.k === 'condition' || (term.k === 'work' && term.term.as === 'procedure');
/** A cup of a cheek tooth is its infundibulum. */
const cups: ReadonlySet<string> = new Set(['cup', 'cups', 'infundibulum', 'infundibula']);
/** Everyday words that name a finding in these parts alone. */
const onlyAt: Readonly<Partial<Record<ConditionId, readonly RegionId[]>>> = {
  gingivitis: ['gums'],
  discharge: ['nostril', 'eye', 'sinus'],
  tension: ['masseter', 'temporalis', 'poll'],
};
/** Findings that are a tooth of their own. */
const ownTeeth: ReadonlySet<string> = new Set(['wolf-tooth', 'blind-wolf-tooth', 'canine-present']);
const kindsOfCaries = ['infundibular-caries', 'peripheral-caries'] as const;

export interface Roles {
  readonly heads: readonly Head[];
  readonly role: readonly ('head' | 'place' | 'cue' | 'mod' | 'stop' | 'glue' | 'unknown')[];
}

/** Decides what each mark is, where its words allow more than one thing. */
export function roles(marks: readonly Mark[], tokens: readonly Token[], hasPlaceBefore: boolean): Roles {
  const anyPlace = hasPlaceBefore || marks.some(({ place }) => place !== undefined);
  const fractureSaid = marks.some(({ terms }) => terms?.some((t) => t.k === 'condition' && t.strength === 'say' && t.id === 'fracture'));
  const ruledOut = marks.some(({ terms }) => terms?.some((t) => t.k === 'cue' && t.cue.means === 'absent' && t.cue.kind !== 'pseudo'));
  // "the gap is packed": with feed; "packed the gap": work on it.
  const worked = (at: number): boolean =>
    marks.some(({ terms }, i) =>
      terms?.some((t) => t.k === 'work' && t.term.as === 'procedure' && !(t.term.id === 'pack' && (!t.term.done || i > at))),
    );
  const notOnly = marks.some(({ terms }) => terms?.some((t) => t.k === 'cue' && t.cue.kind === 'pseudo' && t.cue.say.includes('not only')));
  const seated =
    tokens.some(({ t }) => t === 'done') ||
    marks.some(({ terms }) => terms?.some((t) => t.k === 'work' && t.term.as === 'state' && t.term.state !== 'done'));
  const outcome = marks.some(({ terms }) => terms?.some((t) => t.k === 'work' && t.term.as === 'outcome'));
  const drawn = marks.some(({ terms }) =>
    terms?.some((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.id === 'extract' && t.term.done),
  );
  const filled = marks.some(isFilling);
  const heads: Head[] = [];
  const role = marks.map((mark, i): Roles['role'][number] => {
    const terms = mark.terms ?? [];
    const qualifier = terms.find((t) => t.k === 'qualifier');
    // "two oh six hook, two oh seven nothing": nothing was found there.
    if (
      terms.some((t) => t.k === 'cue' && t.cue.means === 'absent') &&
      tokens[mark.from]?.t === 'nothing' &&
      mark.to - mark.from === 1 &&
      marks[i - 1]?.place &&
      (marks[i + 1] === undefined || marks[i + 1]?.place)
    ) {
      heads.push({ mark: i, condition: { id: 'abnormality', strength: 'absentSay', plural: false } });
      return 'head';
    }
    if (nothingThere(marks, tokens, i)) {
      heads.push({ mark: i, condition: { id: 'abnormality', strength: 'absentSay', plural: false } });
      return 'head';
    }
    const condition = terms.find(
      (t): t is Extract<Term, { k: 'condition' }> => t.k === 'condition' && (t.strength !== 'withPlace' || anyPlace || ruledOut),
    );
    const work = first(terms, (t) => (t.k === 'work' && t.term.as === 'procedure' ? t.term : undefined));
    // "decay in it, infundibular": of which kind, said apart from the name.
    const kinds =
      condition?.id === 'caries'
        ? kindsOfCaries.filter(
            (id) =>
              tokens.some(({ t }) => `${t}-caries` === id || (id === 'infundibular-caries' && cups.has(t))) &&
              !marks.some((m) => m.terms?.some((t) => t.k === 'condition' && t.id === id)),
          )
        : [];
    if (condition && kinds.length === 1) {
      heads.push({ mark: i, condition: { ...condition, id: kinds[0] as ConditionId } });
      return 'head';
    }
    // "a blind wolf tooth top right and a normal one on the left": one of what was named, and there.
    const named =
      condition?.id === 'abnormality' && condition.strength === 'absentSay' && tokens[mark.to]?.t === 'one'
        ? heads.findLast((head) => ownTeeth.has(head.condition?.id ?? ''))
        : undefined;
    if (named?.condition && ['a', 'an', 'another'].includes(tokens[mark.from - 1]?.t ?? '')) {
      const id = named.condition.id === 'blind-wolf-tooth' ? ('wolf-tooth' as const) : named.condition.id;
      heads.push({ mark: i, condition: { id, strength: 'say', plural: false } });
      return 'head';
    }
    // "a good hook", "clean break", "fine crack": how the finding is, not that nothing was found.
    if (condition?.id === 'abnormality' && condition.strength === 'absentSay' && describesNext(marks, tokens, i)) return 'glue';
    // "buffed them smooth", "flushed it clean": how the work left it.
    if (condition?.id === 'abnormality' && condition.strength === 'absentSay' && leftSo(marks, tokens, i)) return 'glue';
    // "three oh seven has gone brown": what it has become, and it is still there; so it is where the lexicon has no word for it.
    if (condition?.id === 'missing' && becomes(marks, tokens, i)) return 'glue';
    // "ready to come off": of a cap.
    if (
      condition?.id === 'loose-cap' &&
      condition.strength === 'withPlace' &&
      !marks.some(
        ({ terms: all, place }) =>
          all?.some((t) => t.k === 'condition' && t.id === 'retained-cap') || place?.codes?.some((code) => Number(code[0]) >= 5),
      )
    )
      return 'unknown';
    // "wolf teeth absent": said of a finding it rules that out; "slab gone" is not the tooth.
    if (
      condition?.id === 'missing' &&
      condition.strength === 'withPlace' &&
      saidOfFinding(marks, i) &&
      mark.terms?.some((t) => t.k === 'cue')
    )
      return 'cue';
    if (condition?.id === 'missing' && condition.strength === 'withPlace' && !ownTooth(marks, i) && notOfTooth(marks, i))
      return mark.terms?.some((t) => t.k === 'cue') && saidOf(marks, i) ? 'cue' : 'glue';
    // "a long hook", "a tall step": right before another name it is how large that is.
    if (
      condition &&
      terms.some((t) => t.k === 'severityKept') &&
      !tokens[mark.to - 1]?.ends &&
      marks[i + 1]?.terms?.some((t) => t.k === 'condition' && (t.strength === 'say' || condition.strength === 'say'))
    )
      return 'mod';
    // "bit seats on the upper sixes done", "packed the gap with putty": work, no finding. "Root tip left behind" of a tooth taken out says how it came out.
    if (condition?.id === 'bit-seat-present' && seated) {
      heads.push({ mark: i, work: work ?? { as: 'procedure', id: 'bit-seat' } });
      return 'head';
    }
    if (work && condition?.id === 'food-packing' && filled) {
      heads.push({ mark: i, work });
      return 'head';
    }
    if (
      outcome &&
      !drawn &&
      ['out', 'away'].includes(tokens[mark.from]?.t ?? '') &&
      mark.to === mark.from + 1 &&
      marks.slice(0, i).findLast((m) => !m.terms?.every((t) => t.k === 'glue'))?.place?.codes
    ) {
      heads.push({ mark: i, work: { as: 'procedure', id: 'extract', done: true } });
      return 'head';
    }
    if (
      terms.some((t) => t.k === 'work' && t.term.as === 'outcome') &&
      (drawn ||
        (marks[i - 1]?.place?.codes === undefined && marks.some((m, k) => k < i && ['out', 'away'].includes(tokens[m.from]?.t ?? '')))) &&
      !terms.some((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.done)
    )
      return 'mod';
    // "advised packing of the gap": work, not feed.
    if (
      work &&
      condition?.id === 'food-packing' &&
      condition.strength === 'withPlace' &&
      marks.some(({ terms: all }) => all?.some((t) => t.k === 'work' && (t.term.as === 'state' || t.term.as === 'advise')))
    ) {
      heads.push({ mark: i, work });
      return 'head';
    }
    // "flushed the gap between ...": the gap is where, not what.
    if (
      condition?.id === 'diastema' &&
      condition.strength === 'withPlace' &&
      ((worked(i) && !gapNamedFirst(marks, tokens, i)) || filled || gapIsWhere(marks, tokens, i))
    )
      return 'glue';
    // "three oh two coming", but "a bit of a wave coming": of no tooth that comes through.
    if (
      condition?.id === 'erupting' &&
      condition.strength === 'withPlace' &&
      marks[i - 1]?.place?.codes === undefined &&
      !(marks[i - 1]?.terms?.every((t) => t.k === 'glue') && marks[i - 2]?.place?.codes !== undefined)
    )
      return 'glue';
    // "four oh eight solid": said of a tooth, and of no lump or cap.
    if (
      condition?.id === 'mobility' &&
      condition.strength === 'absentSay' &&
      /^(solid|firm)$/.test(tokens[mark.from]?.t ?? '') &&
      !firmTooth(marks, i)
    )
      return mark.to - mark.from > 1 ? 'unknown' : 'glue';
    // "smoothed the sharp bit off one oh three": taken off by the speaker, not broken off.
    if (
      condition?.id === 'fracture' &&
      /^(?:bit|corner|piece|chunk) off$/.test(
        tokens
          .slice(mark.from, mark.to)
          .map(({ t }) => t)
          .join(' '),
      ) &&
      marks.slice(0, i).some(({ terms: all }) => all?.some((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.done))
    )
      return 'glue';
    // "the right edge of the tongue": no edge of a tooth.
    if (
      condition?.id === 'sharp-enamel-points' &&
      (tokens[mark.from]?.t ?? '').startsWith('edge') &&
      marks.some(({ place }) => place?.region !== undefined && ['tongue', 'lips', 'cheek', 'palate'].includes(place.region))
    )
      return 'glue';
    // "the gum around two oh two is red", "left nostril running, other one dry": of a gum, of a nostril only.
    const only = condition && condition.strength !== 'say' ? onlyAt[condition.id] : undefined;
    if (only && !marks.some(({ place }) => place?.region !== undefined && only.includes(place.region))) return 'unknown';
    // "two ten is infected": of a tooth only.
    if (
      condition?.id === 'apical-infection' &&
      condition.strength === 'withPlace' &&
      (marks.some(({ place }) => place?.region !== undefined) ||
        !marks.some(({ place }) => place?.codes !== undefined || place?.positions !== undefined))
    )
      return 'unknown';
    // "displaced" beside a fracture is how it stands; alone it is a finding of its own.
    const displacedFracture = qualifier?.k === 'qualifier' && /displaced$/.test(qualifier.id) && fractureSaid;
    if (
      condition &&
      !displacedFracture &&
      !(mark.place && condition.strength === 'withPlace' && neighbourHead(marks, i) && !ruledOutBeside(marks, tokens, i))
    ) {
      if (work?.done && condition.strength !== 'say') {
        heads.push({ mark: i, work });
        return 'head';
      }
      heads.push({ mark: i, condition });
      return 'head';
    }
    if (mark.place && !mark.unknown) return 'place';
    if (qualifier?.k === 'qualifier' && qualifier.id === 'undisplaced' && !fractureSaid) {
      heads.push({ mark: i, condition: { id: 'displaced', strength: 'absentSay', plural: false } });
      return 'head';
    }
    if (work) {
      heads.push({ mark: i, work });
      return 'head';
    }
    if (mark.measure || mark.grade || mark.pulpHorn !== undefined) return 'mod';
    // "two fractures": how many there are.
    if (mark.number !== undefined && marks[i + 1]?.terms?.some((t) => t.k === 'condition' && (t.plural || t.strength === 'say')))
      return 'glue';
    if (mark.unknown || mark.number !== undefined || terms.some((t) => t.k === 'talk')) return 'unknown';
    // "whole", "in one piece": of nothing that was taken out.
    if (terms.length > 0 && terms.every((t) => t.k === 'work' && t.term.as === 'outcome')) return 'unknown';
    if (notOnly && terms.some((t) => t.k === 'stop')) return 'glue';
    if (terms.some((t) => t.k === 'stop' || (t.k === 'cue' && t.cue.means === 'except'))) return 'stop';
    if (terms.some((t) => t.k === 'cue')) return 'cue';
    return terms.some((t) => ['surface', 'qualifier', 'severity', 'severityKept', 'change', 'work'].includes(t.k)) ? 'mod' : 'glue';
  });
  return { heads, role };
}

/** Right behind a tooth, or in a phrase that spoke of loose ones. */
function firmTooth(marks: readonly Mark[], at: number): boolean {
  const before = marks
    .slice(0, at)
    .findLast(({ terms, place }) => place !== undefined || !(terms ?? []).every((t) => t.k === 'glue' || t.k === 'filler'));
  const named = marks.some(({ terms }, i) => i !== at && terms?.some((t) => t.k === 'condition' && t.id === 'mobility'));
  const other = marks
    .slice(0, at)
    .some(({ terms }) =>
      terms?.some((t) => t.k === 'condition' && ['retained-cap', 'loose-cap', 'lump', 'swelling', 'mass'].includes(t.id)),
    );
  return !other && (named || before?.place?.codes !== undefined);
}

/** "has gone" with what it has gone to right behind it. */
function becomes(marks: readonly Mark[], tokens: readonly Token[], at: number): boolean {
  const { from, to } = marks[at] as Mark;
  if (
    tokens[to - 1]?.t !== 'gone' ||
    tokens[to - 1]?.ends === true ||
    !tokens.slice(Math.max(0, from - 1), to).some(({ t }) => ['has', 'have', 'is', 'are'].includes(t))
  )
    return false;
  const next = marks[at + 1];
  const last = next !== undefined && (at + 2 === marks.length || tokens[next.to - 1]?.ends === true);
  return (
    next?.terms?.some((t) => t.k === 'condition' && t.id !== 'missing') === true ||
    (last && next.unknown === true && !/(?:tely|tally|rely)$|^altogether$/.test(tokens[to]?.t ?? ''))
  );
}

const describing = new Set(describingSay);
const leads = new Set([
  'a',
  'an',
  'the',
  'that',
  'this',
  'pretty',
  'quite',
  'really',
  'very',
  'fairly',
  'rather',
  'some',
  'one',
  'nice',
  'has',
  'got',
]);
/** Such a word stands right before the name of a finding, led by an article, a verb of having or nothing at all; a crack is clean or fine wherever it stands. */
function describesNext(marks: readonly Mark[], tokens: readonly Token[], at: number): boolean {
  const { from, to } = marks[at] as Mark;
  const word = tokens[from]?.t ?? '';
  if (to - from !== 1 || !describing.has(word)) return false;
  // "good big hook", "good sedation": of what comes right behind it.
  if (
    !tokens[from]?.ends &&
    marks[at + 1]?.terms?.some(
      (t) => t.k === 'severity' || t.k === 'severityKept' || (t.k === 'work' && ['sedate', 'agent', 'topUp'].includes(t.term.as)),
    )
  )
    return true;
  const next = marks
    .slice(at + 1)
    .find(
      (mark) =>
        mark.place !== undefined || mark.unknown || (mark.terms ?? []).some((t) => ['condition', 'cue', 'stop', 'work'].includes(t.k)),
    );
  // "a good rinse": how it was done.
  if (next?.terms?.some((t) => t.k === 'work' && t.term.as === 'procedure') && leads.has(tokens[from - 1]?.t ?? '')) return true;
  const named = next?.place === undefined ? next?.terms?.find((t) => t.k === 'condition' && t.id !== 'abnormality') : undefined;
  if (named?.k !== 'condition' || named.strength === 'absentSay') return false;
  const before = marks
    .slice(0, at)
    .some((mark) => mark.place !== undefined || mark.unknown || (mark.terms ?? []).some((t) => t.k === 'condition'));
  return leads.has(tokens[from - 1]?.t ?? '') || !before || (named.id === 'fracture' && (word === 'clean' || word === 'fine'));
}

const objects = new Set(['it', 'them', 'that', 'those', 'these', 'him', 'her']);
/** One word right behind a verb of work and its pronoun. */
function leftSo(marks: readonly Mark[], tokens: readonly Token[], at: number): boolean {
  const { from, to } = marks[at] as Mark;
  const pronoun = objects.has(tokens[from - 1]?.t ?? '') && tokens[from - 1]?.ends !== true;
  const verb = marks.find(
    (mark) =>
      mark.from < from &&
      mark.to >= from - (pronoun ? 1 : 0) &&
      mark.terms?.some((t) => t.k === 'work' && t.term.as === 'procedure' && t.term.done),
  );
  return to - from === 1 && verb !== undefined && tokens[verb.to - 1]?.ends !== true;
}

/** "nothing on the right cheek, two ulcers on the left": a place of its own, and a finding with another behind it. */
function nothingThere(marks: readonly Mark[], tokens: readonly Token[], at: number): boolean {
  const { from, to } = marks[at] as Mark;
  if (tokens[from]?.t !== 'nothing' || to - from !== 1 || !prepositions.has(tokens[to]?.t ?? '') || marks.slice(0, at).some(isHeadMark))
    return false;
  const place = marks.findIndex(
    (mark, i) => i > at && !(mark.place === undefined && (mark.terms ?? []).every((t) => t.k === 'glue' || t.k === 'filler')),
  );
  const head = marks.findIndex((mark, i) => i > place && isHeadMark(mark));
  return (
    place > 0 &&
    marks[place]?.place !== undefined &&
    !isHeadMark(marks[place] as Mark) &&
    head > place &&
    marks.slice(head).some((mark) => mark.place !== undefined)
  );
}

/** "neither canines nor wolf teeth": right behind a word of ruling out a group word is what is ruled out. */
const ruledOutBeside = (marks: readonly Mark[], tokens: readonly Token[], at: number): boolean =>
  (marks[at - 1]?.terms ?? []).some((t) => t.k === 'cue' && t.cue.means === 'absent' && t.cue.looks !== 'back') &&
  ((marks[at + 1]?.terms ?? []).some((t) => t.k === 'cue' && t.cue.means === 'absent') ||
    ['or', 'nor', 'and'].includes(tokens[(marks[at + 1] as Mark | undefined)?.from ?? -1]?.t ?? ''));

/** "packed in the three oh nine three ten gap", "opposite the gap": where something is, when it is said of something else. */
function gapIsWhere(marks: readonly Mark[], tokens: readonly Token[], at: number): boolean {
  const from = marks[at - 1]?.place ? (marks[at - 1] as Mark).from : (marks[at] as Mark).from;
  const word = (i: number): string => tokens[i]?.t ?? '';
  const lead = ['the', 'that', 'this'].includes(word(from - 1)) ? word(from - 2) : word(from - 1);
  if (lead === 'into') return true;
  // "smell coming out of the three ten three eleven space"
  if (
    lead === 'of' &&
    word(['the', 'that', 'this'].includes(word(from - 1)) ? from - 3 : from - 2) === 'out' &&
    marks.slice(0, at).some(({ terms }) => terms?.some((t) => isHead(t)))
  )
    return true;
  const other = marks.some(({ terms }, i) => i !== at && terms?.some((t) => isHead(t)));
  return other && ['in', 'into', 'at', 'from', 'opposite', 'around', 'down'].includes(lead);
}

/** "gap three oh eight three oh nine full of hay, dug it out": named at its place before any work was. */
const gapNamedFirst = (marks: readonly Mark[], tokens: readonly Token[], at: number): boolean =>
  marks[at + 1]?.place?.codes !== undefined &&
  !['the', 'that', 'this', 'each', 'every'].includes(tokens[(marks[at] as Mark).from - 1]?.t ?? '') &&
  !marks.slice(0, at).some(({ terms }) => terms?.some((t) => t.k === 'work' && t.term.as === 'procedure')) &&
  marks
    .slice(at + 2)
    .find((mark) => !(mark.terms ?? []).every((t) => t.k === 'glue' || t.k === 'filler'))
    ?.terms?.some((t) => t.k === 'condition') === true;

/** What a word like "absent" or "gone" is said of: the nearest word before it that means something. */
const beforeIt = (marks: readonly Mark[], at: number): Mark | undefined =>
  marks.slice(0, at).findLast(({ terms, unknown }) => unknown || !(terms ?? []).every((t) => t.k === 'glue' || t.k === 'filler'));
const saidOf = (marks: readonly Mark[], at: number): boolean => beforeIt(marks, at)?.terms?.some((t) => t.k === 'condition') ?? false;
/** "the pocket at three ten gone", "swelling over the maxilla, gone now": said of what stands at that place, not of a tooth. */
const saidOfFinding = (marks: readonly Mark[], at: number): boolean => {
  const place = marks
    .slice(0, at)
    .findLastIndex((mark) => !(mark.terms ?? [{ k: 'place' }]).every((t) => t.k === 'glue' || t.k === 'filler'));
  const name = marks
    .slice(0, Math.max(place, 0))
    .findLast(
      (mark) =>
        !(mark.terms ?? [{ k: 'place' }]).every((t) => t.k === 'glue' || t.k === 'filler' || t.k === 'surface' || t.k === 'severity'),
    );
  const alone = !marks.slice(0, Math.max(place, 0)).some((mark) => mark.place !== undefined);
  return (
    alone &&
    marks[place]?.place !== undefined &&
    (name?.terms ?? []).some((t) => t.k === 'condition' && t.strength !== 'absentSay') &&
    marks[at + 1]?.place === undefined
  );
};
/** "one ten has a step, four ten's gone": of a tooth of its own, once the finding before had its place before it. */
const isHeadMark = (mark: Mark): boolean => mark.terms?.some(isHead) ?? false;
const ownTooth = (marks: readonly Mark[], at: number): boolean => {
  const own = marks
    .slice(0, at)
    .findLastIndex(({ terms }) => terms === undefined || !terms.every((t) => t.k === 'glue' || t.k === 'filler'));
  const place = marks.slice(0, Math.max(own, 0)).findIndex((mark) => mark.place !== undefined);
  return marks[own]?.place?.codes?.length === 1 && place >= 0 && place < marks.findIndex(isHeadMark);
};
const notOfTooth = (marks: readonly Mark[], at: number): boolean => {
  const before = beforeIt(marks, at);
  const named = ({ terms }: Mark): boolean => (terms ?? []).some((t) => ['condition', 'qualifier', 'surface'].includes(t.k));
  return (
    before !== undefined &&
    (named(before) ||
      (before.unknown === true && marks.slice(marks.slice(0, at).findLastIndex(({ place }) => place !== undefined) + 1, at).some(named))) &&
    (marks[at + 1]?.place === undefined || Object.keys(marks[at + 1]?.place as object).every((key) => key === 'side'))
  );
};

/** A group word ("canines", "caps") beside a true finding is its place. */
const neighbourHead = (marks: readonly Mark[], at: number): boolean =>
  marks.some(({ terms, place }, i) => i !== at && place === undefined && (terms ?? []).some((t) => isHead(t)));
