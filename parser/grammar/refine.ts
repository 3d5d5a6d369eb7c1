/** What the findings of one phrase mean to each other, once each is read: words that lean on their neighbours. One small rule each. */
import type { Context } from '../contract/draft.ts';
import type { Place } from '../contract/item.ts';
import { revision } from './amend.ts';
import type { Clause } from './assemble.ts';
import { standing, type Carry } from './carry.ts';
import { leftOut, less, type Exception } from './except.ts';
import { gather } from './lists.ts';
import type { FindingBody, ItemBody, Made } from './made.ts';
import type { RawPlace } from './places.ts';
import { resolvePlace, wantedBy } from './resolve.ts';
import type { Mark } from './scan.ts';
import { rowTeeth, type RowId } from '../lexicon/teeth.ts';
import { otherSide, positionOf, quadrantOf } from './teeth.ts';
import { parted } from './timeline.ts';
import type { Token } from './tokens.ts';
import { treatmentDetails } from './treatmentDetails.ts';

export interface Read {
  readonly clause: Clause;
  readonly made: readonly Made[];
  /** The words of its head. */ readonly said: string;
}
export interface Around {
  readonly context: Context;
  readonly carry: Carry;
  readonly marks: readonly Mark[];
  readonly tokens: readonly Token[];
  /** All words of the phrase. */ readonly text: string;
  /** What is left out of what is said. */ readonly excepts: readonly Exception[];
}
type Rule = (reads: readonly Read[], around: Around) => readonly Read[];

const finding = ({ body }: Made): FindingBody | undefined => (body?.kind === 'finding' ? body : undefined);
const teethOf = (body: ItemBody | FindingBody | undefined): readonly string[] =>
  body && 'place' in body && body.place && 'teeth' in body.place ? body.place.teeth : [];
const each = (reads: readonly Read[], change: (made: Made, read: Read) => Made): readonly Read[] =>
  reads.map((read) => {
    const made = read.made.map((one) => change(one, read));
    return made.every((one, i) => one === read.made[i]) ? read : { ...read, made };
  });
const become = (made: Made, more: Partial<FindingBody>, rule: string): Made => ({
  ...made,
  body: { ...(made.body as FindingBody), ...more },
  rules: [...made.rules, rule],
});
/** Two readings stand level: none is taken. */
const asked = (made: Made, bodies: readonly ItemBody[]): Made => ({
  marks: made.marks,
  rules: [...made.rules, 'two readings'],
  doubts: [{ doubt: 'two-readings', readings: bodies.map((body) => ({ label: '', bodies: [body] })) }],
});

const gaps = new Set(['diastema', 'food-packing', 'periodontal-pocket']);

/** "valve diastema, packed": beside a gap it is feed that is packed; alone it may be feed or a filling. */
const packed: Rule = (reads, { context, carry }) => {
  const last = standing(context, carry.last);
  // "packed solid, flushed it out": feed; "flushed and packed": what was put in afterwards.
  const pack = reads.find(({ said }) => said.startsWith('pack'))?.clause.head.mark ?? Infinity;
  const gap = reads
    .flatMap(({ made }) => made)
    .find(({ body }) => body?.kind === 'finding' && gaps.has(body.condition) && body.place !== null)?.body as FindingBody | undefined;
  const otherWork = reads.some(({ clause, said }) => clause.head.work !== undefined && !said.startsWith('pack') && clause.head.mark < pack);
  const gapSaid =
    reads.some(({ clause }) => gaps.has(clause.head.condition?.id ?? '')) ||
    (last?.kind === 'finding' && gaps.has(last.condition) && last.presence === 'present');
  return each(reads, (made, { said }) => {
    const none =
      (said === 'packing' || said === 'packed') &&
      gapSaid &&
      !otherWork &&
      made.body?.kind === 'treatment' &&
      made.body.state === 'not-done';
    if (none)
      return {
        ...made,
        body: {
          kind: 'finding',
          condition: 'food-packing',
          presence: 'absent',
          when: 'now',
          place: (made.body?.kind === 'treatment' ? made.body.place : null) ?? gap?.place ?? null,
        },
        doubts: [],
        rules: ['finding', 'absent', 'packed beside a gap'],
      };
    if (said !== 'packed' || otherWork || made.rules.includes('filled') || made.body?.kind !== 'treatment' || made.body.state !== 'done')
      return made;
    const food: FindingBody = { kind: 'finding', condition: 'food-packing', presence: 'present', when: 'now', place: made.body.place };
    return gapSaid ? { ...made, body: food, rules: ['finding', 'packed beside a gap'] } : asked(made, [food, made.body]);
  });
};

/** "overhang": at a first or last cheek tooth a hook, at the incisors an overjet, alone either. */
const overhang: Rule = (reads) =>
  each(reads, (made, { said }) => {
    const body = finding(made);
    if (!said.startsWith('overhang') || body === undefined || body.presence === 'absent') return made;
    const place = body.place;
    if (place !== null && 'teeth' in place && place.teeth.every((t) => positionOf(t) > 5)) return made;
    const asWidth = (body.measures ?? []).map((m) => ({ ...m, what: 'width' as const }));
    if (place !== null)
      return become(
        made,
        { condition: 'overjet', place: null, ...(asWidth.length > 0 ? { measures: asWidth } : {}) },
        'overhang of the incisors',
      );
    return asked(made, [body, { ...body, condition: 'overjet' }]);
  });

/** "wolf tooth upper right, blind" is one tooth; "wolf teeth both sides, left one blind" tells which. */
const blind: Rule = (reads) => {
  const at = reads.findIndex(({ said }) => /\bblind$/.test(said) && !said.includes('wol'));
  const before = at > 0 ? reads[at - 1] : undefined;
  const wolf = before?.made[0] && finding(before.made[0]);
  const own = reads[at]?.made[0];
  const body = own && finding(own);
  if (!before || !wolf || !own || !body || wolf.condition !== 'wolf-tooth') return reads;
  const side = reads[at]?.clause.placings
    .filter((p) => !before.clause.placings.some((q) => q.marks[0] === p.marks[0]))
    .map(({ raw }) => raw)
    .findLast((raw) => raw.side === 'left' || raw.side === 'right')?.side;
  const teeth = side === undefined ? teethOf(wolf) : teethOf(wolf).filter((t) => (side === 'left') === [2, 3].includes(quadrantOf(t)));
  // "wolf tooth on the upper left and a blind one on the right": in the same jaw; "blind one upper left" has a place of its own.
  const jawSaid = reads[at]?.clause.placings.some(({ raw }) => raw.jaw !== undefined);
  if (teeth.length === 0 && (side === undefined || jawSaid || new Set(teethOf(wolf).map((t) => quadrantOf(t) <= 2)).size !== 1))
    return reads;
  if (teeth.length === 0)
    return reads.map((read, i) =>
      i === at
        ? {
            ...read,
            made: [{ ...become(own, { place: { teeth: teethOf(wolf).map(otherSide).sort() } }, 'one of those named'), doubts: [] }],
          }
        : read,
    );
  const there = become(own, { place: { teeth: [...teeth] } }, 'one of those named');
  const rest = { ...there, doubts: [] };
  return teeth.length === teethOf(wolf).length && side === undefined
    ? reads.flatMap((read, i) =>
        i === at - 1
          ? []
          : i === at
            ? [{ ...read, made: [{ ...rest, marks: [...(before.made[0] as Made).marks, ...own.marks] }] }]
            : [read],
      )
    : reads.map((read, i) => (i === at ? { ...read, made: [rest] } : read));
};

const overgrowths = new Set(['hook', 'ramp', 'step', 'focal-overgrowth', 'overlong', 'wave', 'sharp-enamel-points']);
/** "left the hook", "wolf teeth with the vet": something about work, but not what was done. It is asked, and nothing counts as done. */
const unclearWork: Rule = (reads, { text }) => {
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
    const place = left ? null : body.place;
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
const objectOfWork: Rule = (reads) => {
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

/** "would have extracted", "was going to": said of work that was not done; how it stands is asked. */
const wouldHave: Rule = (reads, { text }) =>
  !/(?:\b(?:would|should|could|might)|'d) have\b|\b(?:wish|if only)\b|\b(?:nearly|almost) (?:pulled|took|had|got|extracted|reduced|rasped|floated|started)\b/.test(
    text,
  )
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

/** "two oh nine extracted last year", "in twenty twenty": work of the past on a tooth is how the tooth stands. */
const past =
  /\b(last (year|time|visit|month|week|summer|winter|autumn|spring|january|february|march|april|may|june|july|august|september|october|november|december)|(?:years?|months?|weeks?) (?:ago|back)|previously|yesterday|the other (?:day|week)|(?:this|last|on) (?:monday|tuesday|wednesday|thursday|friday|saturday|sunday)|(?:at|by) the (?:clinic|hospital|surgery|university)|(?:the )?(?:last|previous|old|other) (?:dentist|vet|edt|owner|person|one|man|chap|fella|fellow|lad|guy|lady|woman|technician)|as a (?:foal|yearling|youngster|two year old|three year old|four year old)|when (?:he|she) was (?:a|two|three|four|five|six|young|younger)|before (?:i|we|she|he|they|you) (?:had|got|bought) (?:him|her|it)|in (?:january|february|march|april|may|june|july|august|september|october|november|december)|in (twenty|two thousand)|in 20\d\d|in 19\d\d)\b/;
const compared = /\b(?:than|since|as|from|like|to) (?:it was )?(?:last \w+|before|previously)\b/g;
const alsoNow = /\b(today|now|this time|again|just)\b/;
const longAgo: Rule = (reads, { text }) =>
  !reads.some(({ made }) => made.some(({ body }) => body?.kind === 'treatment')) || !past.test(text.replaceAll(compared, ''))
    ? reads
    : each(reads, (made) => {
        const body = made.body;
        // "last year we took four mil off it": what was done then is what is known of the visit before.
        if (
          body?.kind === 'treatment' &&
          ['done', 'attempted', 'part-done'].includes(body.state) &&
          (body.procedure !== 'extract' || body.place === null) &&
          !made.revises &&
          !alsoNow.test(text)
        )
          return {
            body: { kind: 'fact', about: 'earlier-treatment', said: text, value: null },
            marks: made.marks,
            doubts: [],
            rules: [...made.rules, 'work of the past'],
          };
        if (body?.kind !== 'treatment' || body.procedure !== 'extract' || body.state !== 'done' || body.place === null) return made;
        return {
          ...made,
          body: { kind: 'finding', condition: 'previously-extracted', presence: 'present', when: 'now', place: body.place },
          doubts: [],
          rules: [...made.rules, 'work of the past'],
        };
      });

/** "wolf teeth out last year", "had his wolf teeth done as a two year old": work of the past, at no tooth that was named. */
const wolfTeethBefore: Rule = (reads, { text }) => {
  if (!reads.some(({ made }) => made.some(({ body }) => body?.kind === 'finding' && body.condition === 'wolf-tooth'))) return reads;
  const bodies = reads.flatMap(({ made }) => gather(made, ({ body }) => body));
  const nowhere = bodies.every((body) => ('place' in body && body.place === null) || body.kind === 'fact');
  if (!nowhere || !past.test(text) || alsoNow.test(text) || !/\b(?:out|done|pulled|drawn|removed|taken|extracted|off)\b/.test(text))
    return reads;
  return reads.map((read, i) => ({
    ...read,
    made:
      i > 0
        ? []
        : [
            {
              body: { kind: 'fact', about: 'earlier-treatment', said: text, value: null },
              marks: reads.flatMap(({ made }) => made.flatMap(({ marks }) => marks)),
              doubts: [],
              rules: ['work of the past'],
            },
          ],
  }));
};

const unfinished: ReadonlySet<string> = new Set(['part-done', 'attempted', 'not-done']);
/** "started on the hook but didn't finish it", "haven't touched the wave", "tried the ramp with the hand rasp": the overgrowth is named, the work is not. */
const partDone: Rule = (reads, { marks, tokens }) =>
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
        return {
          ...read,
          made: [
            ...read.made,
            {
              body: {
                kind: 'treatment',
                procedure: 'reduce',
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

/** "slant, long on the left": which side of the slant is long, no overlong teeth. */
const slantLong: Rule = (reads) => {
  const slant = reads.find(({ clause }) => clause.head.condition?.id === 'slant');
  const long = reads.find(({ clause, said }) => clause.head.condition?.id === 'overlong' && (said === 'long' || said === 'high'));
  if (slant === undefined || long === undefined) return reads;
  const raw = long.clause.placings[0]?.raw;
  const where = [raw?.jaw, raw?.side].filter((word) => word !== undefined && word !== 'both').join('-');
  return reads.flatMap((read) =>
    read === long
      ? []
      : read !== slant
        ? [read]
        : [
            {
              ...read,
              made: read.made.map((made) => {
                const joined = become(made, { place: null, ...(where !== '' ? { long: where } : {}) }, 'the long side');
                return { ...joined, marks: [...joined.marks, ...(long.made[0]?.marks ?? [])] };
              }),
            },
          ],
  );
};

/** Cheek teeth are sharp by their enamel points; "points, razor sharp" says so twice. */
const sharpCheekTeeth: Rule = (reads) => {
  const points = reads.find(({ clause }) => clause.head.condition?.id === 'sharp-enamel-points')?.made[0];
  const said = points && finding(points);
  const named = each(reads, (made) =>
    finding(made)?.condition === 'sharp' && teethOf(made.body).length > 0 && teethOf(made.body).every((t) => positionOf(t) >= 6)
      ? become(made, { condition: 'sharp-enamel-points' }, 'sharp cheek teeth')
      : made,
  );
  return said === undefined
    ? named
    : named.map((read) =>
        read.clause.head.condition?.id !== 'sharp-enamel-points'
          ? read
          : {
              ...read,
              made: read.made.map((made) => {
                const sharp = named
                  .find((other) => other.clause.head.condition?.id === 'sharp')
                  ?.made.find(({ body }) => JSON.stringify(teethOf(body)) === JSON.stringify(teethOf(made.body)));
                return sharp?.body?.kind === 'finding' && finding(made)?.surfaces === undefined && sharp.body.surfaces
                  ? become(made, { surfaces: sharp.body.surfaces }, 'said twice')
                  : made;
              }),
            },
      );
};

/** "the cap on six oh six is loose": of a cap it is the cap that is loose. */
const looseCap: Rule = (reads) =>
  reads.flatMap((read, i) => {
    const cap = (one: Read | undefined): boolean =>
      one?.clause.head.condition?.id === 'retained-cap' && /^caps?(?: (?:still )?on)?$/.test(one.said);
    const loose = (one: Read | undefined): boolean =>
      (one?.clause.head.condition?.id === 'mobility'
        ? one.clause.head.condition.strength !== 'absentSay'
        : one?.clause.head.condition?.id === 'loose-cap' && one.clause.head.condition.strength === 'withPlace') &&
      one !== undefined &&
      !one.clause.scopes.includes('absent');
    const ofIt = (one: Read | undefined, capRead: Read | undefined): boolean =>
      one?.clause.placings.every(
        ({ marks }) => (marks[0] as number) > one.clause.head.mark || capRead?.clause.placings.some((p) => p.marks[0] === marks[0]),
      ) ?? false;
    if (loose(read) && cap(reads[i - 1]) && ofIt(read, reads[i - 1])) return [];
    // "caps on five oh seven and six oh seven are loose": the teeth were read with what is said of them.
    const between = (a: Read | undefined, b: Read | undefined): boolean =>
      cap(a) &&
      loose(b) &&
      a?.clause.placings.length === 0 &&
      (b?.clause.placings.length ?? 0) > 0 &&
      b?.clause.placings.every(({ marks }) => (marks[0] as number) > a.clause.head.mark && (marks[0] as number) < b.clause.head.mark) ===
        true;
    if (between(read, reads[i + 1])) return [];
    if (between(reads[i - 1], read))
      return [
        {
          ...read,
          made: read.made.map((made) => {
            const next = become(made, { condition: 'loose-cap' }, 'a loose cap');
            return { ...next, marks: [...next.marks, ...(reads[i - 1]?.made[0]?.marks ?? [])] };
          }),
        },
      ];
    // "caps still on five oh eight and six oh eight, seven oh eight loose": a milk tooth in a breath about caps is one.
    if (
      loose(read) &&
      reads.some((one) => one.clause.head.condition?.id === 'retained-cap') &&
      read.made.every(({ body }) => teethOf(body).length > 0 && teethOf(body).every((t) => quadrantOf(t) >= 5))
    )
      return [{ ...read, made: read.made.map((made) => become(made, { condition: 'loose-cap' }, 'a loose cap')) }];
    if (!cap(read) || !loose(reads[i + 1]) || !ofIt(reads[i + 1], read)) return [read];
    return [
      {
        ...read,
        made: read.made.map((made) => {
          const next = become(made, { condition: 'loose-cap' }, 'a loose cap');
          return { ...next, marks: [...next.marks, ...(reads[i + 1]?.made[0]?.marks ?? []).slice(0, 1)] };
        }),
      },
    ];
  });

/** "three oh nine gone, taken out when he was five": why it is gone; "cap wobbling, not ready yet": which cap. Of two names for one thing the one that says more. */
const saysMore: Readonly<Partial<Record<string, string>>> = { missing: 'previously-extracted', 'retained-cap': 'loose-cap' };
const twoNames: Rule = (reads) => {
  const found = reads.flatMap(({ made }) => made.flatMap((m) => finding(m) ?? []));
  return reads.map((read) => {
    const made = read.made.filter((m) => {
      const body = finding(m);
      const more = body && saysMore[body.condition];
      return (
        more === undefined ||
        body?.presence !== 'present' ||
        !found.some(
          (other) => other.condition === more && other.presence === 'present' && JSON.stringify(other.place) === JSON.stringify(body.place),
        )
      );
    });
    return made.length === read.made.length ? read : { ...read, made };
  });
};

/** "not happy with one oh eight, suspect an apical infection": what is wrong says that something is. */
const somethingWrong: Rule = (reads) => {
  const isVague = (made: Made): boolean => {
    const body = finding(made);
    return body?.condition === 'abnormality' && body.presence === 'present';
  };
  const vague = reads.flatMap(({ made }) => made.filter(isVague));
  const sharesPlace = (a: Made, b: Made): boolean => {
    const body = finding(b);
    return (
      body !== undefined && !isVague(b) && body.presence !== 'absent' && JSON.stringify(finding(a)?.place) === JSON.stringify(body.place)
    );
  };
  const named = vague.filter((one) => reads.some(({ made }) => made.some((other) => sharesPlace(one, other))));
  return named.length === 0
    ? reads
    : reads.map((read) => ({
        ...read,
        made: read.made
          .filter((made) => !named.includes(made))
          .map((made) => {
            const own = named.filter((one) => sharesPlace(one, made));
            return own.length === 0 ? made : { ...made, marks: [...new Set([...made.marks, ...own.flatMap(({ marks }) => marks)])] };
          }),
      }));
};

const soft = new Set(['lips', 'commissure', 'tongue', 'cheek', 'gums', 'palate', 'mucosa']);
/** "the corner of the mouth is split": of what is soft it is a cut, no broken tooth. */
const splitSoft: Rule = (reads) =>
  reads.map((read) => {
    const placings = read.clause.placings.filter(({ raw }) => raw.region !== undefined && soft.has(raw.region));
    if (!/^(split|splits)$/.test(read.said) || placings.length === 0 || read.clause.placings.some(({ raw }) => raw.codes !== undefined))
      return read;
    const { place } = resolvePlace(placings, wantedBy('laceration', new Set()));
    return place === null
      ? read
      : {
          ...read,
          made: read.made.map((made) => ({
            ...become(
              { ...made, body: { ...(made.body as FindingBody), surfaces: undefined } as FindingBody },
              { condition: 'laceration', place },
              'split of what is soft',
            ),
            doubts: [],
          })),
        };
  });

/** "the gum over three oh one is overgrown": of a gum it is no long tooth. */
const grownGum: Rule = (reads, { text }) =>
  each(reads, (made, { said }) =>
    finding(made)?.condition === 'overlong' &&
    said === 'overgrown' &&
    /\bgums? (?:is |has |are |have )?(?:over|at|round|around|above|below|by|between|of|on) .*\bovergrown\b/.test(text)
      ? become(made, { condition: 'gingival-hyperplasia' }, 'a gum that has grown')
      : made,
  );

/** "the tens are hollow": of teeth it is no wasted muscle. */
const hollowTeeth: Rule = (reads) =>
  reads.map((read) => {
    const placings = read.clause.placings.filter(({ raw }) => raw.codes !== undefined || raw.positions !== undefined);
    if (read.clause.head.condition?.id !== 'muscle-wasting' || !/^(?:hollow|sunken|wast)/.test(read.said) || placings.length === 0)
      return read;
    const { place } = resolvePlace(placings, wantedBy('cupped-out', new Set()));
    return place === null
      ? read
      : {
          ...read,
          made: read.made.map((made) =>
            finding(made) ? { ...become(made, { condition: 'cupped-out', place }, 'hollow teeth'), doubts: [] } : made,
          ),
        };
  });

/** A swollen lymph node has a name of its own. */
const nodes: Rule = (reads) =>
  each(reads, (made) => {
    const body = finding(made);
    // "glands up under the jaw on the right": that is where they are.
    if (body?.condition === 'lymph-node-enlargement' && body.place !== null && 'region' in body.place && body.place.region === 'mandible')
      return become(made, { place: { ...body.place, region: 'lymph-nodes' } }, 'swelling of a node');
    return body?.condition === 'swelling' && body.place !== null && 'region' in body.place && body.place.region === 'lymph-nodes'
      ? become(made, { condition: 'lymph-node-enlargement' }, 'swelling of a node')
      : made;
  });

/** The row of cheek teeth, or the front teeth, that a part of it lies in. */
function rowAround({ positions, jaw, side, quadrants }: RawPlace): RawPlace {
  const at = positions ?? [6];
  return {
    ...(jaw ? { jaw } : {}),
    ...(side ? { side } : {}),
    ...(quadrants ? { quadrants } : {}),
    ...(jaw || side || quadrants ? {} : { all: true }),
    positions: at.every((p) => p <= 3) ? [1, 2, 3] : at.every((p) => p === 4) ? [4] : [6, 7, 8, 9, 10, 11],
    plural: true,
  };
}

/** "upper right normal apart from a hook on one oh six", "all worn bar the sixes", "nothing else on that row": the group less what was named. */
const lessThoseNamed: Rule = (reads, { context, text, excepts, marks, tokens }) => {
  const others = text.includes('nothing else') || /\b(rest|others|other teeth|otherwise)\b/.test(text);
  if (excepts.length === 0 && !others) return reads;
  return each(reads, (made, { clause }) => {
    const body = finding(made);
    const id = clause.head.condition?.id;
    if (body === undefined || id === undefined) return made;
    const ruledOut = body.presence === 'absent';
    // What is left out of a finding that is there has no finding of its own behind it; of one ruled out it may.
    const mine = excepts.filter(
      ({ cue, places }) =>
        places.length > 0 &&
        !(
          clause.placings[0]?.marks[0] !== undefined &&
          clause.placings[0].marks[0] > cue &&
          places.includes(clause.placings[0].marks[0])
        ) &&
        !reads.some((other) => other.clause.head.mark > clause.head.mark && other.clause.head.mark < cue),
    );
    const named = ruledOut
      ? reads
          .filter((other) => other.clause.head.mark > clause.head.mark || others)
          .flatMap(({ made: them }) =>
            them.flatMap((m): Place[] => (m === made || teethOf(m.body).length === 0 ? [] : [{ teeth: [...teethOf(m.body)] }])),
          )
      : [];
    const known =
      others && ruledOut
        ? context.items.flatMap((item): Place[] =>
            item.kind === 'finding' && item.presence !== 'absent' && item.when === 'now' && teethOf(item).length > 0
              ? [{ teeth: [...teethOf(item)] }]
              : [],
          )
        : [];
    // "all but the last two on the bottom left are sharp": of that row the others.
    const all = excepts.find(
      ({ cue, places }) =>
        cue < clause.head.mark &&
        places.length > 0 &&
        ['all', 'every', 'everything', 'everywhere'].includes(tokens[(marks[cue] as Mark).from]?.t ?? '') &&
        clause.placings.length > 0 &&
        clause.placings.every((p) => p.marks.every((m) => places.includes(m))),
    );
    // "all but three oh six are cupped": all of what was named in the phrase before.
    if (all && body.place && clause.placings.some(({ raw }) => raw.codes !== undefined))
      return { ...become(made, { place: null }, 'less those named'), less: [body.place] };
    const whole =
      all && clause.placings.length === 1
        ? resolvePlace([{ raw: rowAround(clause.placings[0]?.raw as RawPlace), marks: [] }], wantedBy(id, new Set(), true)).place
        : null;
    if (whole && body.place) {
      const rest = less(whole, [body.place]);
      if (rest !== whole) return become(made, { place: rest }, 'less those named');
    }
    const out = [...mine.flatMap((one) => leftOut(one, id, marks, body.place) ?? []), ...named, ...known];
    // "hook on four oh six, nothing else in that row": the row of the tooth that was named.
    if (
      others &&
      ruledOut &&
      body.condition === 'abnormality' &&
      body.place !== null &&
      'teeth' in body.place &&
      body.place.teeth.every((t) => named.some((one) => 'teeth' in one && one.teeth.includes(t)))
    ) {
      const rows = (Object.keys(rowTeeth) as RowId[]).filter((row) => teethOf(body).some((t) => rowTeeth[row].includes(t)));
      return become(
        made,
        { place: rows.length === 0 || !/\b(row|arcade|along|quadrant|there)\b/.test(text) ? null : less({ rows }, named) },
        'less those named',
      );
    }
    if (out.length === 0) return made;
    const used = [...made.marks, ...mine.flatMap(({ cue, places }) => [cue, ...places])];
    // The group itself may have been named in the phrase before.
    if (body.place === null)
      return mine.length > 0 || (ruledOut && named.length > 0 && excepts.length > 0) ? { ...made, marks: used, less: out } : made;
    const place = less(body.place, out);
    return place === body.place ? made : { ...become(made, { place }, 'less those named'), marks: used };
  });
};

/** "rasped everything except the lower right": what was left out of the work. */
const lessOfTheWork: Rule = (reads, { excepts, marks, tokens }) =>
  excepts.length === 0
    ? reads
    : each(reads, (made, { clause }) => {
        const body = made.body;
        if (body?.kind !== 'treatment' || body.procedure !== 'rasp' || made.revises || excepts.length !== 1) return made;
        const [one] = excepts as readonly [Exception];
        const whole =
          one.cue > clause.head.mark && tokens.some(({ t }) => ['everything', 'all', 'everywhere', 'whole', 'lot'].includes(t))
            ? { rows: ['lower-left', 'lower-right', 'upper-left', 'upper-right'] as RowId[] }
            : undefined;
        const out =
          whole && (body.place === null || ('rows' in body.place && body.place.rows.length === 4))
            ? leftOut(one, 'abnormality', marks)
            : null;
        return whole && out
          ? {
              ...made,
              body: { ...body, place: less(whole, [out]) },
              marks: [...new Set([...made.marks, one.cue, ...one.places])],
              rules: [...made.rules, 'less those named'],
            }
          : made;
      });

/** "points everywhere but not on the lower right": what is ruled out of a group is no part of it. */
const lessRuledOut: Rule = (reads) =>
  each(reads, (made) => {
    const body = finding(made);
    if (body?.presence !== 'present' || body.place?.from !== 'group' || made.revises) return made;
    const out = reads.flatMap(({ made: them }) =>
      them.flatMap((m): Place[] => {
        const other = finding(m);
        return other?.presence === 'absent' && other.condition === body.condition && other.place !== null && other.when === body.when
          ? [other.place]
          : [];
      }),
    );
    const place = out.length === 0 ? body.place : less(body.place, out);
    return place === body.place ? made : become(made, { place }, 'less those named');
  });

/** "displaced as well", right after a fracture, is how the fracture stands. */
const displacedFracture: Rule = (reads, { context, carry }) => {
  const last = standing(context, carry.last);
  const [read] = reads;
  if (
    reads.length !== 1 ||
    read?.clause.head.condition?.id !== 'displaced' ||
    read.clause.placings.length > 0 ||
    last?.kind !== 'finding' ||
    last.condition !== 'fracture'
  )
    return reads;
  const how =
    read.clause.scopes.includes('absent') || read.clause.head.condition.strength === 'absentSay'
      ? ('undisplaced' as const)
      : ('displaced' as const);
  return [{ ...read, made: [revision(last, { qualifiers: [...(last.qualifiers ?? []), how] }, read.made[0]?.marks ?? [], {})] }];
};

/** "all smooth now", once work was done there, erases nothing that was found before it. */
const afterWork: Rule = (reads, { context, text }) => {
  const now = /\b(now|after|afterwards)\b/.test(text);
  const worked =
    context.items.some((item) => item.kind === 'treatment' && ['done', 'part-done'].includes(item.state)) ||
    reads.some(({ clause }) => clause.head.work?.done);
  return !now || !worked
    ? reads
    : each(reads, (made) =>
        finding(made)?.condition === 'abnormality' ? become(made, { when: 'after-treatment' }, 'after the work') : made,
      );
};

const timeline: Rule = (reads, { marks, tokens }) => parted(reads, marks, tokens);

const ordered: readonly Rule[] = [
  unclearWork,
  longAgo,
  wolfTeethBefore,
  partDone,
  wouldHave,
  objectOfWork,
  slantLong,
  looseCap,
  twoNames,
  somethingWrong,
  splitSoft,
  grownGum,
  hollowTeeth,
  timeline,
  sharpCheekTeeth,
  packed,
  overhang,
  blind,
  nodes,
  displacedFracture,
  lessThoseNamed,
  lessOfTheWork,
  lessRuledOut,
  afterWork,
];
export const refine = (reads: readonly Read[], around: Around): readonly Read[] => ordered.reduce((now, rule) => rule(now, around), reads);
