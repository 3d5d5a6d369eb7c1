/** Work done and the visit itself, as it is said. */
import type { ItemBody, TreatmentBody } from '../grammar/made.ts';
import { procedureIds, type ProcedureId } from '../lexicon/procedures.ts';
import { workSay, type WorkTerm } from '../lexicon/work.ts';
import { chance, formOf, join, pick, weighted, whole, type Random } from './draw.ts';
import { drawRegion, drawRow, drawSpace, drawTeeth, type Said } from './places.ts';
import { sayNumber } from './spoken.ts';

const spaces: readonly ProcedureId[] = ['flush', 'pack', 'widen-space', 'debride'];
const simple = (forms: readonly string[]): readonly string[] =>
  forms.filter(
    (form) =>
      !/tartar|calculus|cap|gap|diastema|incisor|seat|stick|it\|them|feed|putty|corner|the mouth|brought level|take .* level/.test(form),
  );
/** Forms that also say how the work stands ("half rasped"): never drawn as done. */
const standing: ReadonlySet<string> = new Set(workSay.flatMap((row) => (row.as === 'state' ? row.say : [])));
const formsOf = (id: ProcedureId, done: boolean): readonly string[] =>
  workSay.flatMap((row) =>
    row.as === 'procedure' && row.id === id && (row.done ?? false) === done && row.instrument === undefined
      ? row.say.filter((form) => !standing.has(form))
      : [],
  );
const teethProcedures = procedureIds.filter(
  (id) =>
    ![
      'rinse',
      'photograph',
      'radiograph',
      'oroscopy',
      'recheck-by-feel',
      'remove-foreign-body',
      'nerve-block',
      'reduce-incisors',
      'remove-cap',
      'scale-calculus',
      'bit-seat',
      'restore',
    ].includes(id),
);

export function drawTreatment(random: Random): Said<TreatmentBody> {
  const id = pick(random, chance(random, 0.6) ? (['reduce', 'rasp', 'extract', 'flush', 'pack'] as const) : teethProcedures);
  const place = spaces.includes(id)
    ? drawSpace(random)
    : id === 'rasp'
      ? drawRow(random)
      : drawTeeth(random, id === 'extract' ? 'wolf-tooth' : undefined);
  const done = simple(formsOf(id, true));
  if (done.length > 0 && chance(random, 0.7)) {
    const verb = id === 'pack' ? 'packed with putty' : formOf(random, done);
    const amount = id === 'reduce' && chance(random, 0.6) ? whole(random, 1, 5) : undefined;
    const tool =
      ['reduce', 'rasp'].includes(id) && chance(random, 0.3)
        ? pick(random, [
            ['by hand', 'hand'],
            ['with the motorised rasp', 'motorised'],
            ['with a hand rasp', 'hand'],
          ] as const)
        : undefined;
    const size = amount === undefined ? '' : `by ${sayNumber(amount)} ${pick(random, ['mil', 'millimetres'])}`;
    return {
      say: chance(random, 0.6) ? join(place.say, verb, size, tool?.[0]) : join(verb, place.say, size, tool?.[0]),
      means: {
        kind: 'treatment',
        procedure: id,
        state: 'done',
        place: place.means,
        ...(amount ? { amountMm: amount, amountBasis: 'by' } : {}),
        ...(id === 'extract' && /whole|clean|complete|intact|in one/.test(verb) ? { outcome: 'complete' } : {}),
        ...(tool ? { instrument: tool[1] } : {}),
      },
    };
  }
  const [words, state] = pick(random, [
    ['plan to', 'planned'],
    ['owner declined', 'declined'],
    ['advised', 'advised'],
  ] as const);
  const nouns = simple(formsOf(id, false)).filter((form) => !/come|coming/.test(form));
  const noun = nouns.length > 0 ? formOf(random, nouns) : formOf(random, formsOf(id, false));
  return {
    say: state === 'planned' ? join(place.say, noun, 'planned') : join(words, noun, place.joint === undefined ? '' : 'of', place.say),
    means: { kind: 'treatment', procedure: id, state, place: place.means },
  };
}

type Agent = Extract<WorkTerm, { as: 'agent' }>;
const sedatives = workSay.filter((row): row is Agent & { say: readonly string[] } => row.as === 'agent' && row.class === 'sedative');
const routes = [
  ['i v', 'iv'],
  ['intravenously', 'iv'],
  ['i m', 'im'],
  ['orally', 'oral'],
  ['sublingually', 'sublingual'],
] as const;

export function drawSedation(random: Random): Said<ItemBody> {
  if (chance(random, 0.15))
    return {
      say: pick(random, ['no sedation', 'no sedation given', 'not sedated']),
      means: { kind: 'sedation', given: false, topUp: false },
    };
  const { agent, say } = pick(random, sedatives);
  const value = pick(random, [0.2, 0.3, 0.4, 0.5, 0.6, 1, 1.5, 2]);
  const route = chance(random, 0.6) ? pick(random, routes) : undefined;
  const by = chance(random, 0.4);
  return {
    say: join(
      chance(random, 0.5) ? 'sedated with' : '',
      sayNumber(value),
      pick(random, ['mil', 'mils', 'millilitres']),
      chance(random, 0.6) ? 'of' : '',
      formOf(random, say),
      route?.[0],
      by ? 'by the vet' : '',
    ),
    means: {
      kind: 'sedation',
      given: true,
      topUp: false,
      agent,
      dose: { value, unit: 'ml' },
      ...(route ? { route: route[1] } : {}),
      ...(by ? { by: 'veterinarian' } : {}),
    },
  };
}

export function drawVisit(random: Random): Said<ItemBody> {
  return weighted<() => Said<ItemBody>>(random, [
    [
      3,
      () => {
        const unit = pick(random, ['month', 'week'] as const);
        const value = whole(random, 2, 12);
        return {
          say: `${pick(random, ['recheck in', 'see him again in', 'see her again in', 'back in', 'check again in'])} ${sayNumber(value)} ${unit}s`,
          means: { kind: 'follow-up', action: 'recheck', after: { value, unit } },
        };
      },
    ],
    [
      2,
      () => {
        const place = drawTeeth(random);
        return { say: `refer ${place.say} to the vet`, means: { kind: 'follow-up', action: 'refer-to-veterinarian', place: place.means } };
      },
    ],
    [
      1,
      () => {
        const place = drawTeeth(random);
        return { say: `monitor ${place.say}`, means: { kind: 'follow-up', action: 'monitor', place: place.means } };
      },
    ],
    [
      1,
      () => {
        const place = drawRegion(random, ['tongue', 'palate', 'cheek', 'bars']);
        return { say: `${place.say.replace(/^the /, '')} not examined`, means: { kind: 'not-examined', place: place.means } };
      },
    ],
    [
      1,
      () => {
        const said = pick(random, [
          'stood quietly',
          'owner gave consent',
          'owner present',
          'gag well tolerated',
          'ridden in a snaffle',
          'fed haylage',
          'head torch used',
        ]);
        return {
          say: said,
          means: {
            kind: 'fact',
            about: aboutOf[said] as 'behaviour',
            said,
            value: null,
            ...(said === 'owner gave consent' ? { given: true } : {}),
          },
        };
      },
    ],
    [
      1,
      () => {
        const rate = whole(random, 28, 48);
        const said = `heart rate ${sayNumber(rate)}`;
        return { say: said, means: { kind: 'fact', about: 'heart-rate', said, value: { value: rate, unit: 'per-minute' } } };
      },
    ],
    [
      1,
      () => {
        const text = pick(random, [
          'owner will ring on monday',
          'check the bit fit next time',
          'very good to work on',
          'gate code has changed',
          'wants a quieter corner next time',
        ]);
        return { say: `note ${text}`, means: { kind: 'note', text } };
      },
    ],
  ])();
}
const aboutOf: Readonly<Record<string, string>> = {
  'stood quietly': 'behaviour',
  'owner gave consent': 'consent',
  'owner present': 'present',
  'gag well tolerated': 'gag',
  'ridden in a snaffle': 'bit',
  'fed haylage': 'feed',
  'head torch used': 'light',
};
