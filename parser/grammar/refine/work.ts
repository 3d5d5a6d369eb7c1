/** How work stands that the words beside it tell of: what it was done to, what was not finished, what only would have been done. */
import { overgrowths, procedureOf } from '../../lexicon/handling.ts';
import { neverDone } from '../../lexicon/work.ts';
import { doneTo, placeOf } from '../doneTo.ts';
import type { ItemBody, Made } from '../made.ts';
import type { Mark } from '../scan.ts';
import { anywhere } from '../trie.ts';
import { treatmentDetails } from '../treatmentDetails.ts';
import { become, each, finding, teethOf, type Read, type Rule } from './rule.ts';

/** "left the hook", "wolf teeth with the vet": something about work, but not what was done. It is asked, and nothing counts as done. */
export const unclearWork: Rule = (reads, { text }) => {
  const left = /^(?:(?:so|and|we|i|have|has) )*left (?:the|that|this|those|these)\b(?!.* alone\b)/.test(text);
  const vet = /\bwith (?:the|a|his|her|their) (?:vet|veterinarian)\b/.test(text);
  if (!left && !vet) return reads;
  return each(reads, (made) => {
    const body = finding(made);
    const procedure =
      left && overgrowths.has(body?.condition ?? '')
        ? ('reduce' as const)
        : vet && body?.condition === 'wolf-tooth'
          ? ('extract' as const)
          : undefined;
    if (body === undefined || procedure === undefined || (left && reads.length > 1)) return made;
    const states = left ? (['not-done', 'planned'] as const) : (['planned', 'done'] as const);
    const { place } = body;
    return {
      marks: made.marks,
      rules: ['work without a verb of doing'],
      doubts: [
        {
          doubt: 'state-unclear',
          ...(place ? { place } : {}),
          readings: states.map((state) => ({ label: '', bodies: [{ kind: 'treatment', procedure, state, place }] })),
        },
      ],
    };
  });
};

const drawn: ReadonlySet<string> = new Set(['wolf-tooth', 'blind-wolf-tooth', 'deciduous-present']);
/** "wolf teeth out today, both uppers": a tooth that is out was taken out, or is to be; which is asked, and it is never read as there and no more. */
export const outAlone: Rule = (reads, { marks, tokens }) =>
  reads.some(({ clause }) => clause.head.work?.id === 'extract')
    ? reads
    : reads.map((read) => {
        const [own] = read.made;
        const body = own && finding(own);
        const out = marks.findIndex(
          (mark, i) =>
            i > read.clause.head.mark &&
            mark.to === mark.from + 1 &&
            tokens[mark.from]?.t === 'out' &&
            (tokens[mark.from]?.ends === true || ['', 'today', 'now', 'both', 'and', 'but', 'with'].includes(tokens[mark.to]?.t ?? '')) &&
            marks
              .slice(read.clause.head.mark + 1, i)
              .every((m) => m.place !== undefined || (m.terms ?? [{ k: 'talk' }]).every(({ k }) => k === 'glue' || k === 'side')),
        );
        if (!own || !body || !drawn.has(body.condition) || body.presence !== 'present' || body.when !== 'now' || out < 0) return read;
        const { place } = body;
        const readings = (['done', 'planned'] as const).map((state) => ({
          label: state,
          bodies: [{ kind: 'treatment' as const, procedure: 'extract' as const, state, place }],
        }));
        return {
          ...read,
          made: [
            ...read.made,
            {
              marks: [out],
              rules: ['work without a verb of doing'],
              doubts: [{ doubt: 'state-unclear', ...(place ? { place } : {}), readings }],
            },
          ],
        };
      });

const objects: Readonly<Partial<Record<string, readonly string[]>>> = {
  extract: [
    'wolf-tooth',
    'blind-wolf-tooth',
    'retained-cap',
    'loose-cap',
    'retained-fragment',
    'root-remnant',
    'deciduous-present',
    'canine-present',
  ],
};
/** "pulled both wolf teeth": the teeth named are what the work was done to; the work is never spread over the row. */
export const objectOfWork: Rule = (reads) => {
  const named = reads.find(
    ({ clause, made }) => clause.head.condition !== undefined && made.some((m) => teethOf(m.body).length > 0 || m.body !== undefined),
  );
  return reads.map((read) => {
    const id = read.clause.head.work?.id;
    const object = named && id !== undefined && objects[id]?.includes(named.clause.head.condition?.id ?? '') ? named.made[0] : undefined;
    const teeth = teethOf(object?.body);
    if (object === undefined || teeth.length === 0) return read;
    const there = { teeth: [...teeth] };
    const asked = read.made.length > 0 && read.made.every(({ body }) => body === undefined);
    if (asked)
      return {
        ...read,
        made: read.made.map((made) => ({
          ...made,
          doubts: made.doubts
            .filter(({ doubt }) => doubt !== 'no-place')
            .map((doubt) => ({
              ...doubt,
              place: there,
              ...(doubt.readings
                ? {
                    readings: doubt.readings.map((one) => ({
                      ...one,
                      bodies: one.bodies.map((body) => ({ ...body, place: there }) as ItemBody),
                    })),
                  }
                : {}),
            })),
        })),
      };
    return {
      ...read,
      made: read.made.map((made): Made =>
        made.body?.kind !== 'treatment' || made.revises
          ? made
          : {
              ...made,
              body: { ...made.body, place: { teeth: [...teeth] } },
              rules: [...made.rules, 'done to what was named'],
              doubts: made.doubts.filter(({ doubt }) => doubt !== 'no-place'),
            },
      ),
    };
  });
};

/** What tells more of a finding than that it is there. */
const told = ['severity', 'severitySaid', 'grade', 'measures', 'qualifiers', 'change', 'surfaces', 'crest', 'said'] as const;
const anew: ReadonlySet<string> = new Set(['a', 'an', 'another', 'some', 'no', 'any', 'more']);
const over: ReadonlySet<string> = new Set(['done', 'part-done']);
/** "took the hook on one oh six down": what work was done to is named by it, and not found. What was not done leaves it there: "couldn't get the cap off". */
export const onlyNamed: Rule = (reads, { marks, tokens }) => {
  const done = reads.flatMap(({ clause, made }) =>
    clause.head.work
      ? made.flatMap((one) =>
          one.body?.kind === 'treatment' && over.has(one.body.state) ? [{ at: clause.head.mark, body: one.body }] : [],
        )
      : [],
  );
  const isObject = ({ clause, made }: Read): boolean => {
    const [one, ...more] = made;
    const body = one && finding(one);
    const procedure = clause.head.condition && procedureOf(clause.head.condition.id);
    if (!body || more.length > 0 || one.doubts.length > 0 || one.revises || body.presence !== 'present' || body.when !== 'now')
      return false;
    const from = (marks[clause.head.mark] as Mark).from;
    return (
      procedure !== 'extract' &&
      procedure !== 'flush' &&
      told.every((key) => body[key] === undefined) &&
      !tokens.slice(Math.max(0, from - 3), from).some(({ t }) => anew.has(t)) &&
      done.some(
        ({ at, body: work }) =>
          at < clause.head.mark &&
          work.procedure === procedure &&
          JSON.stringify(work.place) === JSON.stringify(body.place) &&
          !tokens.slice((marks[at] as Mark).from, from).some(({ ends }) => ends),
      )
    );
  };
  const named = reads.filter(isObject);
  if (named.length === 0) return reads;
  const own = named.flatMap(({ made }) => made.flatMap((one) => one.marks));
  return reads
    .filter((read) => !named.includes(read))
    .map((read) =>
      read.clause.head.work && read.made.some(({ body }) => body?.kind === 'treatment')
        ? { ...read, made: read.made.map((one) => ({ ...one, marks: [...new Set([...one.marks, ...own])] })) }
        : read,
    );
};

const wasNeverDone = anywhere(neverDone);
/** "would have extracted", "was going to": said of work that was not done; how it stands is asked. */
export const wouldHave: Rule = (reads, { words }) =>
  !wasNeverDone(words)
    ? reads
    : each(reads, (made) => {
        const body = made.body;
        if (body?.kind !== 'treatment' || body.state !== 'done') return made;
        return {
          marks: made.marks,
          rules: [...made.rules, 'would have'],
          doubts: [
            {
              doubt: 'state-unclear',
              ...(body.place ? { place: body.place } : {}),
              readings: (['not-done', 'planned', 'done'] as const).map((state) => ({ label: state, bodies: [{ ...body, state }] })),
            },
          ],
        };
      });

const unfinished: ReadonlySet<string> = new Set(['part-done', 'attempted', 'not-done']);
/** "started on the hook but didn't finish it", "haven't touched the wave", "tried the ramp with the hand rasp": the overgrowth is named, the work is not. */
export const partDone: Rule = (reads, { marks, tokens, context }) =>
  reads.some(({ clause }) => clause.head.work !== undefined)
    ? reads
    : reads.map((read) => {
        const own = read.made[0];
        const body = own && finding(own);
        const stands = read.clause.mods.flatMap((m) =>
          (marks[m]?.terms ?? []).flatMap((t) =>
            t.k === 'work' && t.term.as === 'state' && unfinished.has(t.term.state) ? [{ m, state: t.term.state }] : [],
          ),
        );
        const left =
          body?.condition === 'canine-present' &&
          read.clause.mods.some((m) =>
            marks[m]?.terms?.some((t) => t.k === 'work' && t.term.as === 'state' && t.term.state === 'not-done'),
          );
        // "canines left alone": something was not done to them, and what is not said.
        if (own && body && left)
          return { ...read, made: [{ marks: own.marks, rules: ['left alone'], doubts: [{ doubt: 'no-condition', place: body.place }] }] };
        if (!own || body?.presence !== 'present' || body.when !== 'now' || !overgrowths.has(body.condition) || stands[0] === undefined)
          return read;
        const { instrument } = treatmentDetails(marks, read.clause.mods, tokens);
        // "both ramps left for next time": those that the exam has.
        const named = body.place === null ? doneTo(tokens.map(({ t }) => t)) : undefined;
        const place = named && placeOf(named, 'reduce', context);
        if (place)
          return {
            ...read,
            made: [
              {
                body: { kind: 'treatment', procedure: 'reduce', state: stands[0].state, place, ...(instrument ? { instrument } : {}) },
                marks: [...own.marks, ...stands.map(({ m }) => m)],
                how: { place: 'carried' },
                doubts: [],
                rules: ['work', 'unfinished'],
              },
            ],
          };
        return {
          ...read,
          made: [
            ...read.made,
            {
              body: {
                kind: 'treatment',
                procedure: body.condition === 'sharp-enamel-points' ? 'rasp' : 'reduce',
                state: stands[0].state,
                place: body.place,
                ...(instrument ? { instrument } : {}),
              },
              marks: stands.map(({ m }) => m),
              doubts: [],
              rules: ['work', 'unfinished'],
            },
          ],
        };
      });

const horse: ReadonlySet<string> = new Set(['him', 'her']);
/** "i've floated him and put bit seats on both upper sixes": he is rasped all over, and the sixes are where the seats are. */
export const ofTheHorse: Rule = (reads, { marks, tokens }) => {
  const worked = reads.flatMap(({ clause: { head } }) => (head.work ? [{ id: head.work.id, at: head.mark }] : []));
  return each(reads, (made, { clause }) => {
    const { mark, work } = clause.head;
    const next = worked.find(({ id, at }) => at > mark && id !== 'rasp')?.at;
    const own = clause.placings.flatMap(({ marks: at }) => at);
    return work?.id === 'rasp' &&
      made.body?.kind === 'treatment' &&
      made.body.place !== null &&
      next !== undefined &&
      horse.has(tokens[(marks[mark] as Mark).to]?.t ?? '') &&
      own.every((at) => at > next)
      ? { ...made, body: { ...made.body, place: null } }
      : made;
  });
};

/** "felt round again, all smooth" */
const felt: ReadonlySet<string> = new Set(['felt', 'feel', 'finger', 'fingers', 'hand', 'hands']);
/** "all smooth now", once work was done there, erases nothing that was found before it. */
export const afterWork: Rule = (reads, { context, tokens, marks }) => {
  // "lower right now, all lovely", "now, lower right, all lovely": what comes next.
  const next = (i: number): boolean =>
    tokens[i]?.ends === true && (i === 0 || marks.some(({ to, place }) => to === i && place !== undefined));
  const now = tokens.some(
    ({ t }, i) => t === 'after' || t === 'afterwards' || (t === 'now' && !next(i)) || (t === 'again' && felt.has(tokens[i - 2]?.t ?? '')),
  );
  const worked =
    context.items.some((item) => item.kind === 'treatment' && ['done', 'part-done'].includes(item.state)) ||
    reads.some(({ clause, made }) => clause.head.work?.done && !made.some(({ body }) => body?.kind === 'fact'));
  return !now || !worked
    ? reads
    : each(reads, (made) =>
        finding(made)?.condition === 'abnormality' ? become(made, { when: 'after-treatment' }, 'after the work') : made,
      );
};
