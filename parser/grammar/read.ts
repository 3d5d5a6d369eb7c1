/** One text to what it yields, before ids: the ordered rules at work on one reading. Pure. */
import type { Context } from '../contract/draft.ts';
import { assemble } from './assemble.ts';
import { roles, type Roles } from './roles.ts';
import { bareNo, noNo, noOrBack } from './bareNo.ts';
import { asked } from './asked.ts';
import { answeredOrAsked, framed, hearsaid } from './framed.ts';
import { leftOut } from './leftOut.ts';
import { inTurn } from './inTurn.ts';
import { quarterFirst } from './quarterFirst.ts';
import { governed } from './governed.ts';
import { plainWork } from './plainWork.ts';
import { namedAgain } from './namedAgain.ts';
import { eitherOf, oneOrOther } from './oneOrOther.ts';
import { ofBoth, ofFirst, sharedWork, workOfEither } from './sharedWork.ts';
import { bareNot, butThere, noticedOrNot } from './notThere.ts';
import { missingTeeth, standing, type Carry } from './carry.ts';
import { believed, onlyLight } from './core.ts';
import { elided } from './ellipsis.ts';
import { exceptionsIn } from './except.ts';
import { withoutFalseStarts } from './falseStart.ts';
import { endedNow } from './history.ts';
import { leaning } from './figures.ts';
import { leftAlone } from './leftAlone.ts';
import { findingsOf } from './findings.ts';
import { alikeThere } from './alike.ts';
import { alone } from './alone.ts';
import { alongRow } from './alongRow.ts';
import { corrects, revision } from './amend.ts';
import { where } from './lists.ts';
import { pointed } from './pointing.ts';
import { refine } from './refine.ts';
import type { Read } from './refine/rule.ts';
import type { ItemBody, Made } from './made.ts';
import { bodyOf } from './meaning.ts';
import { handled } from './handled.ts';
import { saidIn } from './said.ts';
import { headSpan, scan, type Mark } from './scan.ts';
import { supposed } from './supposed.ts';
import { selfCorrected } from './selfCorrection.ts';
import { tokenise, type Token } from './tokens.ts';
import { restated } from './restated.ts';
import { retracted } from './retracted.ts';
import { approved, toTheHorse } from './toTheHorse.ts';
import { unsureOf } from './unsureOf.ts';
import { toDoYet } from './toDoYet.ts';
import { turned } from './turns.ts';
import { treatmentsOf } from './treatments.ts';
import { workRules, type Claimed } from './work.ts';

export interface Reading {
  readonly tokens: readonly Token[];
  readonly marks: readonly Mark[];
  /** What the words may be, before any rule claimed them. */
  readonly scanned: readonly Mark[];
  readonly role: Roles['role'];
  readonly made: readonly Made[];
  /** Places as said, for the phrase that follows. */
  readonly places: readonly number[];
  readonly unknown: number;
  /** Words taken back by the speaker in the same breath. */
  readonly takenBack: readonly number[];
  /** One sentence that asks, or tells what another said: its parts say something else. */
  readonly oneSentence?: true;
  readonly steps: number;
}

export function read(said: readonly Token[], context: Context, carry: Carry): Reading {
  const spoken = governed(plainWork(sharedWork(namedAgain(butThere(alikeThere(inTurn(leftOut(quarterFirst(said)))))))));
  const readAs = (word: number, as: string): Reading =>
    readOnce(
      spoken.flatMap((token) =>
        token.word === word && (token.t === 'no' || token.t === 'not') ? tokenise([as]).map((one) => ({ ...one, word })) : token,
      ),
      context,
      carry,
    );
  // "no, no hook on one oh six": the first is an answer. Behind something recorded, with no pause, both may take it back.
  const second = noNo(spoken);
  if (second && (context.items.length === 0 || spoken[0]?.ends)) return read(second, context, carry);
  if (second) return noOrBack(readOnce(second, context, carry), readOnce(spoken, context, carry), spoken[0]?.word ?? 0);
  const frame = framed(spoken);
  if (frame) {
    const as = (tokens: readonly Token[]): Reading => ({ ...readOnce(tokens, context, carry), oneSentence: true });
    return frame.yes === undefined
      ? answeredOrAsked(as(frame.found), as(frame.ruledOut), frame.words)
      : as(frame.yes ? frame.found : frame.ruledOut);
  }
  const no = bareNo(spoken);
  if (no !== undefined) return noOrBack(readAs(no.word, no.ruledOut), readAs(no.word, 'no,'), no.word);
  const not = bareNot(spoken);
  if (not !== undefined) return noticedOrNot(readAs(not, 'noted'), readAs(not, 'not noted'), not);
  const both = ofBoth(spoken);
  if (both) return workOfEither(readOnce(spoken, context, carry), readOnce(both, context, carry));
  const ofTheFirst = ofFirst(spoken);
  if (ofTheFirst) return workOfEither(readOnce(ofTheFirst, context, carry), readOnce(spoken, context, carry));
  const others = oneOrOther(spoken);
  if (others) return eitherOf(readOnce(spoken, context, carry), readOnce(others[0], context, carry), readOnce(others[1], context, carry));
  const again = (tokens: readonly Token[]): Reading => readOnce(tokens, context, carry);
  return asked(spoken, again) ?? unsureOf(spoken, again) ?? hearsaid(spoken, again(spoken));
}

function readOnce(spoken: readonly Token[], context: Context, carry: Carry): Reading {
  const begun = withoutFalseStarts(spoken);
  const corrected = selfCorrected(begun);
  const tokens = pointed(alongRow(corrected.tokens), context, carry);
  const { marks: heard, steps } = scan(tokens);
  const scanned = retracted(toTheHorse(approved(heard, tokens), tokens), tokens);
  const marks = turned(
    restated(
      leaning(
        handled(toDoYet(leftAlone(scanned, tokens), tokens), tokens, standing(context, carry.last)),
        tokens,
        carry,
        standing(context, carry.last),
      ),
      tokens,
    ),
    tokens,
  );
  const holds = saidIn(tokens, marks);
  const claims = workRules(marks, tokens, { carry, context }, holds);
  const before = (carry.place ?? []).length > 0;
  const said = tokens.map(({ t }) => t);
  const may = supposed(tokens);
  const plain = marks.map((mark, i): Mark =>
    claims.marks.has(i)
      ? { from: mark.from, to: mark.to, terms: [{ k: 'stop' }] }
      : // "if it is no better": how it may have changed by then is no change.
        may[mark.from] && mark.terms?.some(({ k }) => k === 'change')
        ? { from: mark.from, to: mark.to, terms: [{ k: 'glue' }] }
        : mark,
  );
  const first = roles(plain, tokens, before);
  const { marks: free, was } = elided(plain, tokens, first);
  const shared = free === plain ? first : roles(free, tokens, before);
  const claimed = free === plain ? claims : moved(claims, was);
  const unknown = shared.role.filter((r, i) => r === 'unknown' && !claimed.marks.has(i)).length;
  const missing = missingTeeth(context);
  const reads = assemble(free, tokens, shared)
    .filter(({ head }) => head.condition === undefined || may[headSpan(free, head.mark)[0]] !== true)
    .map((clause): Read => ({
      clause,
      said: said.slice(...headSpan(free, clause.head.mark)).join(' '),
      made: clause.head.work
        ? treatmentsOf(clause, free, tokens, { missing, carry, context, unknown })
        : believed(clause, findingsOf(clause, free, tokens, missing), said.slice(...headSpan(free, clause.head.mark)).join(' '), {
            marks: free,
            tokens,
            role: shared.role,
            carry,
          }),
    }));
  const spread = reads.map((one, i): Read => {
    const { again } = free[one.clause.head.mark] as Mark;
    return again?.same
      ? sameAsBefore(
          one,
          reads.slice(0, i).findLast(({ clause }) => clause.head.condition?.id === one.clause.head.condition?.id),
        )
      : one;
  });
  const excepts = exceptionsIn(free, shared.role);
  const own = once([
    ...claimed.made,
    ...feltThere(
      claimed.made,
      free === plain ? marks : free,
      endedNow(
        refine(spread, { context, carry, marks: free, tokens, words: said, text: said.join(' '), said: holds, excepts }).flatMap(
          ({ made }) => made,
        ),
        said,
      ),
    ),
  ]);
  const made = corrects(tokens)
    ? own.map((one) => correction(one, own, context, carry))
    : own.map((one) => (own.length === 1 ? movedByName(one, said, context) : one));
  const left = new Set(excepts.flatMap(({ places: out }) => out));
  const places = where(shared.role, (r, i) => r === 'place' && !claimed.marks.has(i) && !left.has(i));
  const rest =
    made.length > 0 || (shared.heads.length > 0 && unknown > 0)
      ? []
      : alone({
          marks: free,
          tokens,
          role: shared.role,
          places,
          unknown,
          light: onlyLight({ marks: free, tokens, role: shared.role, carry }),
          carry,
          context,
          missing,
        });
  return {
    tokens,
    scanned: marks,
    marks: free,
    role: shared.role,
    made: [...made, ...rest],
    places,
    unknown,
    takenBack: [...corrected.takenBack, ...spoken.filter((token) => !begun.includes(token)).map(({ word }) => word)],
    steps: steps + corrected.steps,
  };
}

/** "ten the same", "two oh six the same but only grade one": all that was said of the tooth before, at this one, and what is said of its own. */
const sameAsBefore = (one: Read, before: Read | undefined): Read => {
  const body = before?.made[0]?.body;
  return body?.kind !== 'finding'
    ? one
    : {
        ...one,
        made: one.made.map((made) => {
          if (made.body?.kind !== 'finding') return made;
          const { presence, when, ...own } = made.body;
          // A grade of its own was seen: the guess was at the other one.
          const seen = presence !== 'present' || (body.presence === 'suspected' && (own.grade ?? own.measures) !== undefined);
          return { ...made, body: { ...body, ...own, ...(seen ? { presence, when } : {}) } };
        }),
      };
};

/** "two eleven felt fine but couldn't see it": normal is of the place that could not be seen, and never of the whole mouth. */
function feltThere(claimed: readonly Made[], marks: readonly Mark[], made: readonly Made[]): readonly Made[] {
  const hidden = claimed.find(({ body }) => body?.kind === 'not-examined');
  const at = hidden?.marks.find((m) => marks[m]?.place !== undefined);
  const place = hidden?.body?.kind === 'not-examined' ? hidden.body.place : null;
  return at === undefined || place === null || marks.some((mark, m) => mark.place !== undefined && hidden?.marks.includes(m) !== true)
    ? made
    : made.map((one) =>
        one.body?.kind === 'finding' &&
        one.body.condition === 'abnormality' &&
        one.body.place === null &&
        one.body.said === undefined &&
        one.marks.every((m) => m > at)
          ? { ...one, body: { ...one.body, place } }
          : one,
      );
}

/** Claims on marks by their new places. */
const moved = ({ made, marks }: Claimed, was: readonly number[]): Claimed => ({
  made: made.map((one) => ({ ...one, marks: one.marks.map((m) => was.indexOf(m)) })),
  marks: new Set([...marks].map((m) => was.indexOf(m))),
});

/** Whether one body says nothing that the other does not say; a place left unsaid is the other's. */
const within = (small: ItemBody, large: ItemBody): boolean =>
  small.kind === large.kind &&
  Object.entries(small).every(
    ([name, value]) =>
      equal(value, (large as unknown as Record<string, unknown>)[name]) || (name === 'place' && value === null && 'condition' in small),
  );
const equal = (a: unknown, b: unknown): boolean =>
  a === b || (typeof a === 'object' && typeof b === 'object' && JSON.stringify(a) === JSON.stringify(b));
/** "pocket on the inside of four oh nine, probes to eight mil": one finding in two names, neither of which contradicts the other. */
const completes = (a: ItemBody, b: ItemBody): boolean =>
  (a.kind === 'treatment' &&
    b.kind === 'treatment' &&
    a.procedure === 'extract' &&
    b.procedure === 'extract' &&
    a.state === b.state &&
    JSON.stringify(a.place) === JSON.stringify(b.place) &&
    Object.entries(b).every(([name, value]) => !(name in a) || equal((a as unknown as Record<string, unknown>)[name], value))) ||
  (a.kind === 'finding' &&
    b.kind === 'finding' &&
    a.condition === b.condition &&
    a.presence === 'present' &&
    b.presence === 'present' &&
    a.place !== null &&
    JSON.stringify(a.place) === JSON.stringify(b.place) &&
    Object.entries(b).every(
      ([name, value]) => !(name in a) || JSON.stringify((a as unknown as Record<string, unknown>)[name]) === JSON.stringify(value),
    ));
/** "rasped and balanced", "it moves, mobility grade one" are one thing said twice: what says more stays. */
const once = (made: readonly Made[]): readonly Made[] =>
  made.reduce<readonly Made[]>((done, one) => {
    const quiet = ({ doubts }: Made): boolean => doubts.every(({ doubt }) => doubt === 'no-place' || doubt === 'irreversible');
    const twin =
      one.body && !one.revises && quiet(one)
        ? done.findIndex(
            (m) =>
              m.body !== undefined &&
              !m.revises &&
              quiet(m) &&
              (within(m.body, one.body as ItemBody) || within(one.body as ItemBody, m.body)),
          )
        : -1;
    const half =
      twin < 0 && one.body && !one.revises && quiet(one)
        ? done.findIndex((m) => m.body !== undefined && !m.revises && quiet(m) && completes(m.body, one.body as ItemBody))
        : -1;
    // "should have taken the cap off" is asked about once.
    const asked =
      one.body === undefined && one.doubts.length > 0
        ? done.findIndex((m) => m.body === undefined && JSON.stringify(m.doubts) === JSON.stringify(one.doubts))
        : -1;
    if (asked >= 0) return done.map((m, i) => (i === asked ? { ...m, marks: [...new Set([...m.marks, ...one.marks])] } : m));
    if (half >= 0)
      return done.map((m, i) =>
        i === half
          ? {
              ...m,
              body: { ...one.body, ...m.body } as ItemBody,
              marks: [...new Set([...m.marks, ...one.marks])],
              how: { ...one.how, ...m.how },
            }
          : m,
      );
    if (twin < 0) return [...done, one];
    return done.map((m, i) => {
      if (i !== twin) return m;
      const fuller = within(m.body as ItemBody, one.body as ItemBody) ? one : m;
      return { ...fuller, marks: [...new Set([...m.marks, ...one.marks])] };
    });
  }, []);

/** "that hook was on two oh six": reaches back by name to the last such finding. */
function movedByName(made: Made, said: readonly string[], context: Context): Made {
  const body = made.body;
  if (
    body?.kind !== 'finding' ||
    body.place === null ||
    made.revises ||
    !/^(?:no )?(?:that|the) (?:\w+ ){1,3}(?:was|is|should be|should have been|goes) (?:on|at|in|for)\b/.test(said.join(' '))
  )
    return made;
  const old = context.items.findLast(
    (item) => item.kind === 'finding' && item.condition === body.condition && item.presence === body.presence,
  );
  return old?.kind !== 'finding' ||
    JSON.stringify(old.place) === JSON.stringify(body.place) ||
    (!said.includes('that') && !said.includes('was'))
    ? made
    : revision(old, { place: body.place }, made.marks, {});
}

/** "correction, two oh seven ramp: a whole finding that begins with taking back takes the place of the last one. */
function correction(made: Made, all: readonly Made[], context: Context, carry: Carry): Made {
  const last = standing(context, carry.last);
  const body = made.body;
  if (all.length !== 1 || body === undefined || last === undefined || last.kind !== body.kind || made.revises) return made;
  // "no, it's fine" over what was found: said of the place, and asked about.
  if (body.kind === 'finding' && body.condition === 'abnormality')
    return body.place === null && 'place' in last && last.place
      ? { ...made, body: { ...body, place: last.place }, how: { ...made.how, place: 'carried' }, doubts: [] }
      : made;
  // "make that infundibular caries": the place stays.
  if ('place' in body && body.place === null && 'place' in last && last.place !== null)
    return correction(
      {
        ...made,
        body: { ...body, place: last.place } as NonNullable<Made['body']>,
        how: { ...made.how, place: 'carried' },
        doubts: made.doubts.filter(({ doubt }) => doubt !== 'no-place'),
      },
      all,
      context,
      carry,
    );
  const was = bodyOf(last);
  const keys = [...new Set([...Object.keys(was), ...Object.keys(body)])].filter(
    (key) => JSON.stringify(was[key]) !== JSON.stringify((body as Record<string, unknown>)[key]),
  );
  const side = (from: object): Record<string, unknown> =>
    Object.fromEntries(keys.map((key) => [key, (from as Record<string, unknown>)[key] ?? null]));
  return { ...made, rules: [...made.rules, 'amend'], revises: { id: last.id, was: side(was), now: side(body) } };
}
