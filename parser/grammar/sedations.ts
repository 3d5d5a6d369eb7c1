/** Sedation and other medicines, as spoken: one item an agent; nothing is calculated, completed or suggested. */
import type { ItemBody, Made, MadeDoubt } from './made.ts';
import { massUnits, perKilo, timeUnits, volumeUnits } from '../lexicon/units.ts';
import { plannedDose, sedatedBefore, sedationGiven, sedationToCome } from '../lexicon/history.ts';
import { consentIn } from './facts.ts';
import { readAmount } from './numbers.ts';
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';
import type { WorkRule } from './work.ts';
import type { Term } from './vocabulary.ts';

type Work = Extract<Term, { k: 'work' }>['term'];
const workAt = (mark: Mark): readonly Work[] => (mark.terms ?? []).flatMap((t) => (t.k === 'work' ? [t.term] : []));
const indexes = (marks: readonly Mark[], is: (w: Work) => boolean): readonly number[] => marks.flatMap((mark, i) => (workAt(mark).some(is) ? [i] : []));

export const sedations: WorkRule = (marks, tokens) => {
  const text = tokens.map(({ t }) => t).join(' ');
  const agents = marks.flatMap((mark, i) => workAt(mark).flatMap((w) => (w.as === 'agent' ? [{ i, agent: w.agent, class: w.class }] : [])));
  const sedate = indexes(marks, (w) => w.as === 'sedate');
  const topUps = indexes(marks, (w) => w.as === 'topUp');
  const unknown = marks.filter((m) => m.unknown).length;
  if (agents.length === 0 && sedate.length === 0 && topUps.length === 0) return [];
  if (agents.length === 0 && topUps.length === 0 && /\bconsent/.test(text) && consentIn(tokens)) return [];
  const negated = /\b(no|not|without|un)\b.{0,12}\bsedat|\bunsedated\b|\bsedation (not|declined|refused)|\b(declined|refused|did not want|does not want)\b.{0,20}\bsedat/.test(text) || (/^no sedation\b/.test(text));
  // "owner agreed to sedation", "will need sedating next time": nothing was given; consent is a fact, the rest is asked.
  const dosed = agents.length > 0 && doseIn(tokens, 0, tokens.length) !== undefined;
  const toCome = !negated && topUps.length === 0 && (sedatedBefore.test(text) || ((dosed ? plannedDose : sedationToCome).test(text) && !sedationGiven.test(text)));
  if (agents.length === 0 && consentIn(tokens) && !/\bsedated (?:with|by|at|today|and)\b/.test(text)) return [];
  if (agents.length === 0 && unknown > 1 && !toCome) return [];
  const all = marks.map((_, i) => i).filter((i) => agents.length > 0 || !(marks[i] as Mark).unknown);
  const byVet = indexes(marks, (w) => w.as === 'vet').length > 0;
  const byOwner = /\b(?:by the owner|owner (?:gave|has given|gives|had given|administered)|given by (?:the )?owner)\b/.test(text);
  // "no top up needed": nothing more was given.
  if (topUps.length > 0 && agents.length === 0 && /\b(?:no|not|without|never)\b.{0,14}\btop(?:ped)? ?ups?\b/.test(text)) return [];
  if (negated && agents.length === 0) return [{ body: { kind: 'sedation', given: false, topUp: false }, marks: all, rules: ['sedation'], doubts: [] }];
  if (toCome) {
    const bodies = (given: boolean): ItemBody[] => (agents.length === 0 ? [{ kind: 'sedation', given, topUp: false }] : agents.filter((a) => a.class === 'sedative').map(({ agent }): ItemBody => ({ kind: 'sedation', given, agent, topUp: false })));
    if (agents.every((a) => a.class === 'sedative')) return [{ marks: all, rules: ['sedation to come'], doubts: [{ doubt: 'state-unclear', readings: [{ label: 'not given', bodies: bodies(false) }, { label: 'given', bodies: bodies(true) }] }] }];
  }
  const by = byOwner ? { by: 'owner' as const } : byVet ? { by: 'veterinarian' as const } : {};
  const more = agents.length === 0 && topUps.length > 0 ? doseIn(tokens, 0, tokens.length) : undefined;
  if (agents.length === 0) return [{ body: { kind: 'sedation', given: true, topUp: topUps.length > 0, ...(more?.unit && more.value !== undefined ? { dose: { value: more.value, unit: more.unit } } : {}), ...by }, marks: all, rules: ['sedation'], doubts: [] }];
  return agents.map(({ i, agent, class: kind }, n): Made => {
    // Each agent takes the words up to the next one; words before the first are everybody's.
    const from = n === 0 ? 0 : (marks[agents[n - 1]?.i as number] as Mark).to;
    const next = n === agents.length - 1 ? undefined : (marks[agents[n + 1]?.i as number] as Mark);
    const at = marks[i] as Mark;
    // "half a mil of this and a mil of that": a dose tied to its medicine by "of" is no one else's.
    const to = next === undefined ? tokens.length : doseOf(tokens, at.to, next.from) ?? next.from;
    const tied = doseOf(tokens, from, at.from);
    const own = tied !== undefined ? doseIn(tokens, tied, at.from) : doseIn(tokens, at.to, to) ?? doseIn(tokens, from, at.from);
    const routes = marks.flatMap((mark) => workAt(mark).flatMap((w) => (w.as === 'route' ? [{ at: mark.from, route: w.route }] : [])));
    const route = (routes.find(({ at }) => at >= from && at < to) ?? routes[0])?.route ?? (/\b(under|beneath|below) (the|his|her|its) tongue\b/.test(text) ? 'sublingual' as const : undefined);
    const doubts: MadeDoubt[] = own && own.unit === undefined && own.said === undefined ? [{ doubt: 'dose-unclear', words: text }] : [];
    const dose = own && (own.unit !== undefined || own.said !== undefined) ? { dose: { ...(own.value !== undefined ? { value: own.value } : {}), ...(own.unit ? { unit: own.unit } : {}), ...(own.said ? { said: own.said } : {}) } } : {};
    const body: ItemBody = kind === 'sedative'
      ? { kind: 'sedation', given: !negated, agent, ...dose, ...(route ? { route } : {}), ...by, topUp: topUps.length > 0 }
      : { kind: 'medication', agent, ...dose, ...(route ? { route } : {}), ...by, state: indexes(marks, (w) => w.as === 'prescribed').length > 0 ? 'prescribed' : 'given' };
    return { body, marks: all, rules: ['dose as spoken'], doubts };
  });
};

interface SpokenDose { readonly value?: number | [number, number]; readonly unit?: 'ml' | 'mg' | 'mcg' | 'mg/kg' | 'mcg/kg'; readonly said?: string }

const spans = new Set([...Object.values(timeUnits).flat(), 'times', 'hours', 'minutes']);

/** Where the amount begins that runs up to "of" and the medicine behind it. */
function doseOf(tokens: readonly Token[], from: number, agent: number): number | undefined {
  if (tokens[agent - 1]?.t !== 'of') return undefined;
  for (let at = from; at < agent - 1; at += 1) { const amount = doseAmount(tokens, at); if (amount && amount.to >= agent - 3 && amount.to < agent) return at; }
  return undefined;
}

/** "point three of a mil", "three quarters of a mil", "a mil of": the small words between a dose and its unit. */
function doseAmount(tokens: readonly Token[], at: number): { readonly value: number | readonly [number, number]; readonly to: number } | undefined {
  const word = (i: number): string => tokens[i]?.t ?? '';
  const ofA = (to: number): number => (word(to) === 'of' && ['a', 'an', 'one'].includes(word(to + 1)) && measured(word(to + 2)) ? to + 2 : to);
  if (word(at) === 'three' && word(at + 1) === 'quarters') return { value: 0.75, to: ofA(at + 2) };
  if (word(at) === 'quarter') return { value: 0.25, to: ofA(at + 1) };
  if (word(at) === 'half' && word(at + 1) === 'of') return { value: 0.5, to: ofA(at + 1) };
  if (['a', 'an'].includes(word(at)) && measured(word(at + 1)) && word(at + 2) === 'of' && word(at - 1) !== 'of' && word(at - 1) !== 'half') return { value: 1, to: at + 1 };
  const amount = readAmount(tokens, at);
  return amount && { value: amount.value, to: ofA(amount.to) };
}
const measured = (word: string): boolean => volumeUnits.includes(word) || massUnits.mg.includes(word) || massUnits.mcg.includes(word);

/** The first amount in the stretch; a number without a unit comes back without one, to be doubted. */
export function doseIn(tokens: readonly Token[], from: number, to: number): SpokenDose | undefined {
  for (let at = from; at < to; at += 1) {
    if (tokens[at]?.t === 'half' && tokens[at + 1]?.t === 'a' && tokens[at + 2]?.t === 'syringe') return { said: 'half a syringe' };
    const amount = doseAmount(tokens, at);
    // "for five days" is no dose.
    if (amount === undefined || spans.has(tokens[amount.to]?.t ?? '')) continue;
    const value = typeof amount.value === 'number' ? amount.value : [amount.value[0], amount.value[1]] as [number, number];
    const word = tokens[amount.to]?.t ?? '';
    const unit = volumeUnits.includes(word) ? 'ml' as const : massUnits.mg.includes(word) ? 'mg' as const : massUnits.mcg.includes(word) ? 'mcg' as const : undefined;
    if (unit === undefined) return ['gram', 'grams', 'sachet', 'sachets', 'syringe', 'tube'].includes(word) ? { said: tokens.slice(at, amount.to + 1).map(({ t }) => t).join(' ') } : { value };
    const rest = tokens.slice(amount.to + 1, amount.to + 3).map(({ t }) => t).join(' ');
    return { value, unit: unit !== 'ml' && perKilo.includes(rest) ? `${unit}/kg` : unit };
  }
  return undefined;
}
