/** One text to what it yields, before ids: the ordered rules at work on one reading. Pure. */
import type { Context } from '../contract/draft.ts';
import { aboveBelow } from './aboveBelow.ts';
import { alikeThere } from './alike.ts';
import { alone } from './alone.ts';
import { alongRow } from './alongRow.ts';
import { apposed, apposedWords } from './apposed.ts';
import { asideParts } from './asideParts.ts';
import { asked, askedWords } from './asked.ts';
import { assemble } from './assemble.ts';
import { backAgain } from './backAgain.ts';
import { answered, ruledOutOrBack } from './bareNo.ts';
import { missingTeeth, standing, type Carry } from './carry.ts';
import { believed, onlyLight } from './core.ts';
import { cause } from './cause.ts';
import { downBare } from './downBare.ts';
import { clearNow } from './clearNow.ts';
import { comparedTo } from './comparedTo.ts';
import { plainlyComplained } from './complaints.ts';
import { counted, countedWords } from './counted.ts';
import { elided } from './ellipsis.ts';
import { everyday } from './everyday.ts';
import { exceptionsIn } from './except.ts';
import { withoutFalseStarts } from './falseStart.ts';
import { leaning } from './figures.ts';
import { feltSmooth } from './feltSmooth.ts';
import { findingsOf } from './findings.ts';
import { hearsaid, questioned, questionWords } from './framed.ts';
import { gotOne } from './gotOne.ts';
import { governed } from './governed.ts';
import { handled } from './handled.ts';
import { endedNow } from './history.ts';
import { howHeBoreIt } from './howHeBoreIt.ts';
import { inTurn } from './inTurn.ts';
import { instead } from './instead.ts';
import { leftAlone } from './leftAlone.ts';
import { leftOut } from './leftOut.ts';
import { first, where } from './lists.ts';
import { leftTo } from './leftThere.ts';
import { amountsThere } from './amountThere.ts';
import { workThere, workThereWords } from './workThere.ts';
import { lookThere } from './lookThere.ts';
import type { Made } from './made.ts';
import { moreOrLess } from './moreOrLess.ts';
import { namedAgain } from './namedAgain.ts';
import { noFood } from './noFood.ts';
import { noneElsewhere } from './noneElsewhere.ts';
import { notSo } from './notSo.ts';
import { butThere, notedOrNot } from './notThere.ts';
import { ofThatGroup } from './ofThatGroup.ts';
import { ofAllOfThem, oneByOne, oneByOneWords } from './oneByOne.ts';
import { oneOrOther } from './oneOrOther.ts';
import { opened } from './openedItself.ts';
import { plainWork } from './plainWork.ts';
import { pointed } from './pointing.ts';
import { quarterFirst } from './quarterFirst.ts';
import { refine } from './refine.ts';
import type { Read } from './refine/rule.ts';
import { restated } from './restated.ts';
import { retracted } from './retracted.ts';
import { roles, type Roles } from './roles.ts';
import { inOrder, saidIn, woken, type As, type Way } from './said.ts';
import { once } from './saidTwice.ts';
import { headSpan, scan, type Mark } from './scan.ts';
import { selfCorrected } from './selfCorrection.ts';
import { sharedWork } from './sharedWork.ts';
import { socketOf } from './socketOf.ts';
import { supposed } from './supposed.ts';
import { thatSide } from './thatSide.ts';
import { timeAgain } from './timeAgain.ts';
import { toDoYet } from './toDoYet.ts';
import { approved, ofTheHorse, toTheHorse } from './toTheHorse.ts';
import type { Token } from './tokens.ts';
import { topics } from './topics.ts';
import { treatmentsOf } from './treatments.ts';
import { turned } from './turns.ts';
import { unsureOf, unsureWords } from './unsureOf.ts';
import { vetToSee } from './vetToSee.ts';
import { workWords } from './vocabulary.ts';
import { wayRound } from './wayRound.ts';
import { whatDidIt } from './whatDidIt.ts';
import { workRules, type Claimed } from './work.ts';
import { workOfEither } from './workOfEither.ts';

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

/** Said in words that the rules behind know. In this order. */
const reworded = inOrder([
  ...backAgain,
  ...downBare,
  ...howHeBoreIt,
  ...feltSmooth,
  ...wayRound,
  ...moreOrLess,
  ...asideParts,
  ...timeAgain,
  ...comparedTo,
  ...clearNow,
  ...cause,
  ...lookThere,
  ...aboveBelow,
  ...opened,
  ...whatDidIt,
  ...ofThatGroup,
  ...notSo,
  ...quarterFirst,
  ...leftOut,
  ...plainlyComplained,
  ...noFood,
  ...vetToSee,
  ...everyday,
  ...topics,
  ...inTurn,
  ...alikeThere,
  ...butThere,
  ...namedAgain,
  ...leftTo,
  ...amountsThere,
  ...sharedWork,
  ...plainWork,
  ...governed,
]);
/** The first way that a phrase is meant in has it; most are meant in none of them. */
const ways = woken<Way>([
  { rule: answered, needs: ['no'] },
  { rule: questioned, needs: questionWords },
  { rule: ruledOutOrBack, needs: ['no'] },
  { rule: notedOrNot, needs: ['not'] },
  { rule: workOfEither, needs: workWords },
  { rule: oneOrOther, needs: ['or'] },
  { rule: asked, needs: askedWords },
  { rule: unsureOf, needs: unsureWords },
]);

export function read(said: readonly Token[], context: Context, carry: Carry): Reading {
  const spoken = reworded(said);
  const as: As = {
    once: (tokens) => readOnce(tokens, context, carry),
    again: (tokens) => read(tokens, context, carry),
    fresh: context.items.length === 0,
  };
  return first(ways(spoken.map(({ t }) => t)), (way) => way(spoken, as)) ?? hearsaid(spoken, as.once(spoken));
}

/** Words that point back, read as what they point to. */
const pointingRules = woken<(tokens: readonly Token[], context: Context, carry: Carry) => readonly Token[]>([
  { rule: workThere, needs: workThereWords },
  { rule: apposed, needs: apposedWords },
  { rule: counted, needs: countedWords },
  { rule: oneByOne, needs: oneByOneWords },
  { rule: thatSide, needs: ['side', 'that', 'same'] },
  { rule: gotOne, needs: ['one', 'another'] },
  { rule: socketOf, needs: ['socket', 'sockets'] },
  { rule: noneElsewhere, needs: ['others', 'other', 'rest', 'elsewhere', 'else'] },
]);
const shown = (tokens: readonly Token[], context: Context, carry: Carry): readonly Token[] =>
  pointed(
    pointingRules(tokens.map(({ t }) => t)).reduce((said, rule) => rule(said, context, carry), tokens),
    context,
    carry,
  );

function readOnce(spoken: readonly Token[], context: Context, carry: Carry): Reading {
  const begun = withoutFalseStarts(spoken);
  const corrected = selfCorrected(begun);
  const tokens = shown(alongRow(corrected.tokens), context, carry);
  const { marks: heard, steps } = scan(tokens);
  const scanned = retracted(toTheHorse(ofTheHorse(approved(heard, tokens), tokens), tokens), tokens);
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
  const own = once(
    [
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
    ],
    free,
  );
  const made = instead(own, tokens, context, carry);
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
    made: ofAllOfThem([...made, ...rest], tokens, context),
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
