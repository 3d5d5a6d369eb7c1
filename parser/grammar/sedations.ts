/** Sedation and other medicines, as spoken: one item an agent; nothing is calculated, completed or suggested. */
import { gather, where } from './lists.ts';
import type { ItemBody, Made, MadeDoubt } from './made.ts';
import { massUnits, perKilo, timeUnits, volumeUnits } from '../lexicon/units.ts';
import {
  agentOtherwise,
  agentRefused,
  agentTaken,
  agentUnused,
  countedBefore,
  plannedDose,
  noSedation,
  notSedated,
  noTopUp,
  onlySedated,
  sedatedBefore,
  sedationAgain,
  sedationGiven,
  sedationMissed,
  sedationToCome,
  underToCome,
} from '../lexicon/history.ts';
import { consentIn } from './facts.ts';
import { standing } from './carry.ts';
import { readAmount } from './numbers.ts';
import { readCodes } from './codes.ts';
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';
import type { WorkRule } from './work.ts';
import type { Term } from './vocabulary.ts';

type Work = Extract<Term, { k: 'work' }>['term'];
const workAt = ({ terms }: Mark): readonly Work[] => gather(terms ?? [], (t) => (t.k === 'work' ? t.term : undefined));
/** "I'm on antibiotics": somebody's own. */
const ofTalk = (mark: Mark | undefined): boolean => mark?.terms?.some((t) => t.k === 'talk') ?? false;
const indexes = (marks: readonly Mark[], is: (w: Work) => boolean): readonly number[] =>
  where(marks, ({ terms }) => terms?.some((t) => t.k === 'work' && is(t.term)));

/** "... topped up with nought point one mil", "needed another nought point two mil": more of what was given before it, an item of its own. */
function toppedUp(agent: string, tokens: readonly Token[], from: number, marks: readonly number[], carried: boolean): Made | undefined {
  const dose = doseIn(tokens, from, tokens.length);
  if (dose?.unit === undefined || dose.value === undefined) return undefined;
  return {
    body: { kind: 'sedation', given: true, agent, dose: { value: dose.value as number | [number, number], unit: dose.unit }, topUp: true },
    marks,
    rules: ['dose as spoken'],
    ...(carried ? { how: { agent: 'carried' as const } } : {}),
    doubts: [],
  };
}

export const sedations: WorkRule = (marks, tokens, { carry, context }) => {
  const agents = indexes(marks, (w) => w.as === 'agent')
    .filter((i) => !ofTalk(marks[i - 1]))
    .flatMap((i) => gather(workAt(marks[i] as Mark), (w) => (w.as === 'agent' ? { i, agent: w.agent, class: w.class } : undefined)));
  const sedate = indexes(marks, (w) => w.as === 'sedate');
  const toppings = indexes(marks, (w) => w.as === 'topUp');
  const text = tokens.map(({ t }) => t).join(' ');
  // "sedated, no top up needed": nothing more was given.
  const topUps = noTopUp.test(text) ? [] : toppings;
  const last = standing(context, carry.last);
  if (agents.length === 0 && sedate.length === 0 && topUps.length === 0) {
    const more =
      toppings.length === 0 && last?.kind === 'sedation' && last.given && last.agent && sedationAgain.test(text)
        ? toppedUp(
            last.agent,
            tokens,
            0,
            marks.map((_, i) => i),
            true,
          )
        : undefined;
    return more ? [more] : [];
  }
  if (agents.length === 0 && topUps.length === 0 && /\bconsent/.test(text) && consentIn(tokens)) return [];
  const negated = notSedated.test(text);
  // "owner agreed to sedation", "will need sedating next time": nothing was given; consent is a fact, the rest is asked.
  const dosed = agents.length > 0 && doseIn(tokens, 0, tokens.length) !== undefined;
  const at = agents.map(({ i }) => i);
  const unused =
    agents.length > 0 &&
    agents.every(({ class: kind }, n) => ['not-given', 'refused'].includes(stanceOf(marks, tokens, at, n, kind) ?? ''));
  const under = agents.length === 0 && underToCome.test(text);
  const toCome =
    !negated &&
    !unused &&
    topUps.length === 0 &&
    (sedatedBefore.test(text) ||
      under ||
      ((dosed ? plannedDose : sedationToCome).test(
        text.replace(/\bbefore (?:i|we) (?:started|got (?:here|there)|came|arrived|began)\b/, ''),
      ) &&
        !sedationGiven.test(text)));
  if (agents.length === 0 && (sedationMissed.test(text) || countedBefore.test(text))) return [];
  // "can't be examined without sedation": why it was not, and nothing about what was given.
  if (agents.length === 0 && onlySedated.test(text)) return [];
  if (agents.length === 0 && consentIn(tokens) && !/\bsedated (?:with|by|at|today|and)\b/.test(text)) return [];
  if (agents.length === 0 && ownUnknown(marks, tokens, [...sedate, ...topUps]) > 1 && !toCome && !noSedation.test(text)) return [];
  // "the dog was sedated", "a top up on my phone"; "a sedate little pony": of somebody or something else.
  const spoken = Math.min(...sedate, ...topUps);
  const other = marks.some((mark, i) => (i < spoken || sedate.length === 0) && mark.terms?.some((t) => t.k === 'talk' && t.other));
  const quiet =
    sedate.length > 0 && topUps.length === 0 && sedate.every((i) => tokens[(marks[i] as Mark).from]?.t === 'sedate') && !toCome && !negated;
  if (agents.length === 0 && (other || quiet)) return [];
  const all = marks.map((_, i) => i).filter((i) => agents.length > 0 || !(marks[i] as Mark).unknown);
  const byVet = indexes(marks, (w) => w.as === 'vet').length > 0;
  const byOwner = /\b(?:by the owner|owner (?:gave|has given|gives|had given|administered)|given by (?:the )?owner)\b/.test(text);
  if (negated && agents.length === 0)
    return [{ body: { kind: 'sedation', given: false, topUp: false }, marks: all, rules: ['sedation'], doubts: [] }];
  if (toCome) {
    const bodies = (given: boolean): ItemBody[] =>
      agents.length === 0
        ? [{ kind: 'sedation', given, topUp: false }]
        : agents.filter((a) => a.class === 'sedative').map(({ agent }): ItemBody => ({ kind: 'sedation', given, agent, topUp: false }));
    if (agents.every((a) => a.class === 'sedative'))
      return [
        {
          // What is to be done under it is told by the work.
          marks: under ? all.filter((i) => sedate.includes(i) || tokens[(marks[i] as Mark).from]?.t === 'under') : all,
          rules: ['sedation to come'],
          doubts: [
            {
              doubt: 'state-unclear',
              readings: [
                { label: 'not given', bodies: bodies(false) },
                { label: 'given', bodies: bodies(true) },
              ],
            },
          ],
        },
      ];
  }
  const by = byOwner ? { by: 'owner' as const } : byVet ? { by: 'veterinarian' as const } : {};
  const more = agents.length === 0 ? doseIn(tokens, 0, tokens.length) : undefined;
  const ofLast =
    agents.length === 0 && topUps.length > 0 && last?.kind === 'sedation' && last.given && last.agent
      ? toppedUp(last.agent, tokens, 0, all, true)
      : undefined;
  if (ofLast) return [{ ...ofLast, body: { ...ofLast.body, ...by } as ItemBody }];
  if (agents.length === 0)
    return [
      {
        body: {
          kind: 'sedation',
          given: true,
          topUp: topUps.length > 0,
          ...(more?.unit && more.value !== undefined ? { dose: { value: more.value, unit: more.unit } } : {}),
          ...by,
        },
        marks: all,
        rules: ['sedation'],
        // "sedated with nought point three": a fraction is an amount, also where what was given is not known.
        doubts:
          typeof more?.value === 'number' && !more.unit && !Number.isInteger(more.value) && !/\bhalf ?way\b/.test(text)
            ? [{ doubt: 'dose-unclear', words: text }]
            : [],
      },
    ];
  const doses = dosesOf(
    agents.map(({ i }) => marks[i] as Mark),
    tokens,
  );
  const without: readonly Made[] =
    negated &&
    agents.every(
      (_, n) =>
        stanceOf(
          marks,
          tokens,
          agents.map((a) => a.i),
          n,
        ) === 'otherwise',
    )
      ? [{ body: { kind: 'sedation', given: false, topUp: false }, marks: all, rules: ['sedation'], doubts: [] }]
      : [];
  // "topped up", or an amount behind one that was said: "then another half a mil".
  const again =
    topUps.findLast((i) => i > (agents.at(-1)?.i ?? marks.length)) ??
    where(
      marks,
      ({ from, to }, i) =>
        i > 0 &&
        (tokens.slice(from, to).some(({ t }) => moreOf.has(t)) ||
          (tokens[to - 1]?.t === 'then' && doseAt(tokens, to)?.dose.unit !== undefined)),
    ).find((i) => i > (agents.at(-1)?.i ?? marks.length) && doseIn(tokens, (marks[i] as Mark).from, tokens.length)?.unit !== undefined);
  const [single] = agents.length === 1 ? agents : [];
  // "detomidine nought point three mil topped up with nought point one": two amounts, two times.
  const added =
    single?.class === 'sedative' && again !== undefined && doseIn(tokens, 0, (marks[again] as Mark).from) !== undefined && !negated
      ? toppedUp(
          single.agent,
          tokens,
          (marks[again] as Mark).to,
          [again, ...marks.flatMap((mark, i) => (mark.from >= (marks[again] as Mark).to ? [i] : []))],
          false,
        )
      : undefined;
  // "half a mil, topped up with point two": an amount that is nobody's is asked about, and never another's.
  // Two who gave, of one agent: which of them gave what was not said apart.
  const two = byOwner && byVet && agents.length === 1;
  const spare =
    two ||
    doses.all.some(
      (one) =>
        !doses.used.includes(one) &&
        !(added !== undefined && one.from >= (marks[again as number] as Mark).from) &&
        (one.dose.unit !== undefined || (typeof one.dose.value === 'number' && !Number.isInteger(one.dose.value))),
    );
  const said = routesIn(marks, tokens);
  const routes = again !== undefined && added ? said.filter((one) => one.at < (marks[again] as Mark).from) : said;
  const each = agents.map(({ agent, class: kind }, n): Made => {
    // "no detomidine, vet used romifidine", "usually has detomidine": what was not given today is never recorded as given.
    const stance = stanceOf(marks, tokens, at, n, kind);
    if (stance !== undefined) return notGiven(stance, agent, kind, all, text);
    // Each agent takes the words up to the next one.
    const next = n === agents.length - 1 ? undefined : (marks[agents[n + 1]?.i as number] as Mark);
    const to = next === undefined ? tokens.length : (doses.starts[n + 1] ?? next.from);
    const own = doses.own[n];
    const route = routeOf(
      routes,
      agents.map(({ i }) => (marks[i] as Mark).from),
      n,
    );
    const doubts: MadeDoubt[] =
      own && own.unit === undefined && own.said === undefined
        ? [
            {
              doubt: 'dose-unclear',
              words:
                agents.length === 1
                  ? text
                  : tokens
                      .slice(doses.starts[n] ?? (marks[agents[n]?.i as number] as Mark).from, to)
                      .map(({ t }) => t)
                      .join(' '),
            },
          ]
        : [];
    if (spare && doubts.length === 0 && n === agents.length - 1) doubts.push({ doubt: 'dose-unclear', words: text });
    const dose =
      own && (own.unit !== undefined || own.said !== undefined)
        ? {
            dose: {
              ...(own.value !== undefined ? { value: own.value } : {}),
              ...(own.unit ? { unit: own.unit } : {}),
              ...(own.said ? { said: own.said } : {}),
            },
          }
        : {};
    const body: ItemBody =
      kind === 'sedative'
        ? {
            kind: 'sedation',
            given: !negated,
            agent,
            ...dose,
            ...(route ? { route } : {}),
            ...by,
            topUp: added === undefined && (topUps.length > 0 || sedationAgain.test(text)),
          }
        : {
            kind: 'medication',
            agent,
            ...dose,
            ...(route ? { route } : {}),
            ...by,
            state: indexes(marks, (w) => w.as === 'prescribed').length > 0 ? 'prescribed' : 'given',
          };
    return { body, marks: all, rules: ['dose as spoken'], doubts };
  });
  const then = added && said.find((one) => one.at > (marks[again as number] as Mark).from)?.route;
  const topped = added && then ? [{ ...added, body: { ...added.body, route: then } as ItemBody }] : added ? [added] : [];
  return [...without, ...each, ...topped];
};

interface Routed {
  readonly at: number;
  readonly route: Extract<Work, { as: 'route' }>['route'];
}
/** The routes that are named, where they stand. */
function routesIn(marks: readonly Mark[], tokens: readonly Token[]): readonly Routed[] {
  const named = marks.flatMap((mark) => workAt(mark).flatMap((w) => (w.as === 'route' ? [{ at: mark.from, route: w.route }] : [])));
  const under = where(
    tokens,
    ({ t }, i) =>
      ['under', 'beneath', 'below'].includes(t) &&
      ['the', 'his', 'her', 'its'].includes(tokens[i + 1]?.t ?? '') &&
      tokens[i + 2]?.t === 'tongue',
  ).map((at) => ({ at, route: 'sublingual' as const }));
  return [...named, ...under].sort((a, b) => a.at - b.at);
}
/** One route before or behind all agents is everybody's; one between them is that of the agent before it, or of the one behind it where routes lead. */
function routeOf(routes: readonly Routed[], agents: readonly number[], n: number): Routed['route'] | undefined {
  const here = agents[n] as number;
  const leads = (routes[0]?.at ?? Infinity) < (agents[0] as number);
  return (leads ? routes.findLast(({ at }) => at < here) : routes.find(({ at }) => at > here))?.route;
}

/** Before an amount: on top of what was given. */
const moreOf: ReadonlySet<string> = new Set(['another', 'second', 'third', 'further']);

interface SpokenDose {
  readonly value?: number | [number, number];
  readonly unit?: 'ml' | 'mg' | 'mcg' | 'mg/kg' | 'mcg/kg';
  readonly said?: string;
}

const spans = new Set([...Object.values(timeUnits).flat(), 'times', 'hours', 'minutes']);

/** Unknown words of the clauses in which the words of sedation stand; what follows a comma explains it. */
function ownUnknown(marks: readonly Mark[], tokens: readonly Token[], at: readonly number[]): number {
  const ends = (mark: Mark | undefined): boolean => mark !== undefined && tokens[mark.to - 1]?.ends === true;
  const from = marks.slice(0, Math.min(...at)).findLastIndex(ends) + 1;
  const end = marks.findIndex((mark, i) => i >= Math.max(...at) && ends(mark));
  return marks.slice(from, end < 0 ? marks.length : end + 1).filter((m) => m.unknown).length;
}

type Stance = 'not-given' | 'refused' | 'otherwise';
/** How an agent stands when its own words say that it was not given today. Its words are those of its clause, up to the agents beside it. */
function stanceOf(
  marks: readonly Mark[],
  tokens: readonly Token[],
  agents: readonly number[],
  n: number,
  kind?: 'sedative' | 'medicine',
): Stance | undefined {
  const ends = (mark: Mark): boolean => tokens[mark.to - 1]?.ends === true;
  const at = agents[n] as number;
  const [previous, next] = [agents[n - 1] ?? -1, agents[n + 1] ?? marks.length];
  const from = Math.max(previous + 1, marks.slice(0, at).findLastIndex(ends) + 1);
  const comma = marks.findIndex((mark, i) => i >= at && ends(mark));
  const to = Math.min(next, comma < 0 ? marks.length : comma + 1);
  const words = (a: number, b: number): string =>
    a >= b
      ? ''
      : tokens
          .slice((marks[a] as Mark).from, (marks[b - 1] as Mark).to)
          .map(({ t }) => t)
          .join(' ');
  const [before, after] = [words(from, at), words(at + 1, to)];
  if (agentRefused.before.test(before) || agentRefused.after.test(after)) return 'refused';
  if (agentUnused.before.test(before) || agentUnused.after.test(after)) return 'not-given';
  if (kind === 'medicine' && agentTaken.test(before)) return 'otherwise';
  return agentOtherwise.before.test(before) || agentOtherwise.after.test(after) ? 'otherwise' : undefined;
}

/** A sedative that was not given is kept so; a medicine, or what is usual or of another day, in its own words. */
function notGiven(stance: Stance, agent: string, kind: 'sedative' | 'medicine', marks: readonly number[], said: string): Made {
  const body: ItemBody =
    kind === 'sedative' && stance !== 'otherwise'
      ? { kind: 'sedation', given: false, agent, topUp: false }
      : kind === 'medicine' && stance === 'refused'
        ? { kind: 'medication', agent, state: 'declined' }
        : { kind: 'fact', about: 'medication', said, value: null };
  return { body, marks, rules: ['not given'], doubts: [] };
}

interface Dosed {
  readonly dose: SpokenDose;
  readonly from: number;
  readonly to: number;
  readonly of: boolean;
}
/** Which amount is whose: one tied by "of" or standing right before its agent is that agent's; in a phrase that begins with an amount each stands before its agent, else behind it. */
function dosesOf(
  agents: readonly Mark[],
  tokens: readonly Token[],
): {
  readonly all: readonly Dosed[];
  readonly used: readonly (Dosed | undefined)[];
  readonly own: readonly (SpokenDose | undefined)[];
  readonly starts: readonly (number | undefined)[];
} {
  const all = dosesIn(tokens);
  const leads = all.some(({ to }) => to <= (agents[0]?.from ?? 0));
  const own = agents.map((agent, n): Dosed | undefined => {
    const previous = agents[n - 1]?.to ?? 0;
    const next = agents[n + 1]?.from ?? tokens.length;
    const before = all.filter(({ from, to }) => from >= previous && to <= agent.from);
    const after = all.filter(({ from, to }) => from >= agent.to && to <= next);
    // "point five mil of that and point two of butorphanol": the one right before its name.
    const tied =
      before.findLast(({ of, to }) => of && agent.from - to <= 3) ??
      before.find(({ of }) => of) ??
      (agents.length > 1 && leads ? best(before) : undefined);
    const behind = best(after.filter((dose) => agents[n + 1] === undefined || !(leads || dose.of)));
    return tied ?? (n === 0 && behind === undefined ? best(before) : behind);
  });
  return {
    all,
    used: own,
    own: own.map((one) => one?.dose),
    starts: own.map((one, n) => (one && one.to <= (agents[n]?.from ?? 0) ? one.from : undefined)),
  };
}
/** An amount with a unit is worth more than a number alone. */
const best = (doses: readonly Dosed[]): Dosed | undefined =>
  doses.find(({ dose }) => dose.unit !== undefined || dose.said !== undefined) ?? doses[0];

function dosesIn(tokens: readonly Token[]): readonly Dosed[] {
  const found: Dosed[] = [];
  for (let at = 0; at < tokens.length;) {
    const one = doseAt(tokens, at);
    if (one) found.push({ ...one, from: at, of: tokens[one.to]?.t === 'of' });
    at = one?.to ?? at + 1;
  }
  return found;
}

/** "point three of a mil", "three quarters of a mil", "a mil of": the small words between a dose and its unit. */
function doseAmount(
  tokens: readonly Token[],
  at: number,
): { readonly value: number | readonly [number, number]; readonly to: number } | undefined {
  const word = (i: number): string => tokens[i]?.t ?? '';
  const ofA = (to: number): number =>
    word(to) === 'of' && ['a', 'an', 'one'].includes(word(to + 1)) && measured(word(to + 2)) ? to + 2 : to;
  if (word(at) === 'three' && word(at + 1) === 'quarters') return { value: 0.75, to: ofA(at + 2) };
  if (word(at) === 'quarter') return { value: 0.25, to: ofA(at + 1) };
  if (word(at) === 'half' && word(at + 1) === 'of') return { value: 0.5, to: ofA(at + 1) };
  if (['a', 'an'].includes(word(at)) && measured(word(at + 1)) && word(at + 2) === 'of' && word(at - 1) !== 'of' && word(at - 1) !== 'half')
    return { value: 1, to: at + 1 };
  const amount = readAmount(tokens, at);
  return amount && { value: amount.value, to: ofA(amount.to) };
}
const measured = (word: string): boolean => volumeUnits.includes(word) || massUnits.mg.includes(word) || massUnits.mcg.includes(word);

/** The first amount in the stretch, one with a unit before others; a number without a unit comes back without one, to be doubted. */
export const doseIn = (tokens: readonly Token[], from: number, to: number): SpokenDose | undefined =>
  best(dosesIn(tokens.slice(0, to)).filter((one) => one.from >= from))?.dose;

/** Words that are an amount and nothing else. */
export function doseAlone(tokens: readonly Token[]): SpokenDose | undefined {
  const one = doseAt(tokens, 0);
  return one?.to === tokens.length ? one.dose : undefined;
}

const pointers = new Set(['this', 'that', 'the', 'last', 'next', 'other', 'no']);
/** An amount that begins at this word. */
function doseAt(tokens: readonly Token[], at: number): { readonly dose: SpokenDose; readonly to: number } | undefined {
  const said = (i: number): string => tokens[i]?.t ?? '';
  if (said(at) === 'half' && said(at + 1) === 'a' && said(at + 2) === 'syringe') return { dose: { said: 'half a syringe' }, to: at + 3 };
  const amount = doseAmount(tokens, at);
  // "for five days" is no dose.
  if (amount === undefined || spans.has(said(amount.to))) return undefined;
  const value = typeof amount.value === 'number' ? amount.value : ([amount.value[0], amount.value[1]] as [number, number]);
  const word = said(amount.to);
  const unit = volumeUnits.includes(word)
    ? ('ml' as const)
    : massUnits.mg.includes(word)
      ? ('mg' as const)
      : massUnits.mcg.includes(word)
        ? ('mcg' as const)
        : undefined;
  if (unit === undefined && ['dose', 'doses', 'gram', 'grams', 'sachet', 'sachets', 'syringe', 'tube'].includes(word))
    return {
      dose: {
        said: tokens
          .slice(at, amount.to + 1)
          .map(({ t }) => t)
          .join(' '),
      },
      to: amount.to + 1,
    };
  if (unit === undefined) {
    // "at ten past nine", "this one", "round two oh five": a time, a horse, a tooth.
    const other =
      ['at', 'past', 'half', 'to', 'by', 'rising'].includes(said(at - 1)) ||
      ['past', 'to', 'o', 'oclock', "o'clock", 'minutes', 'am', 'pm'].includes(word) ||
      (said(at) === 'one' && (word === 'of' || pointers.has(said(at - 1)))) ||
      readCodes(tokens, at) !== undefined;
    return other ? undefined : { dose: { value }, to: amount.to };
  }
  const rest = tokens
    .slice(amount.to + 1, amount.to + 3)
    .map(({ t }) => t)
    .join(' ');
  return unit !== 'ml' && perKilo.includes(rest)
    ? { dose: { value, unit: `${unit}/kg` }, to: amount.to + 3 }
    : { dose: { value, unit }, to: amount.to + 1 };
}
