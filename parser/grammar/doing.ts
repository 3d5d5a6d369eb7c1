/** Work told by a verb and a particle with the tooth between them, or by the particle alone: "took one oh six down by two mil", "three mil off four eleven". */
import { piecesSay } from '../lexicon/handling.ts';
import { lengthUnits } from '../lexicon/units.ts';
import { readAmount } from './numbers.ts';
import { readMeasure } from './sizes.ts';
import { readCodes } from './codes.ts';
import { readPlural } from './teeth.ts';
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';

const units = new Set([...lengthUnits.mm, ...lengthUnits.cm]);
const verbs = new Set(['took', 'taken', 'brought', 'got', 'filed', 'rasped', 'ground', 'knocked', 'burred', 'cut', 'dropped', 'floated']);
/** Words of work that take the size behind them for themselves. */
const working = new Set([
  ...verbs,
  'reduced',
  'shortened',
  'lowered',
  'trimmed',
  'levelled',
  'reduce',
  'take',
  'reducing',
  'reduction',
  'hook',
  'wants',
  'needs',
  'gone',
  'worn',
  'step',
  'wave',
  'ramp',
]);
/** Findings that grow smaller by themselves. */
const healing = new Set([
  'pocket',
  'pockets',
  'gap',
  'gaps',
  'diastema',
  'ulcer',
  'ulcers',
  'lump',
  'swelling',
  'recession',
  'wound',
  'cut',
  'mass',
]);
const gums = new Set(['gum', 'gums', 'gingiva', 'recession', 'receded']);
/** Behind "off" these make it a place: "two mil off centre". */
const notWork = new Set(['centre', 'center', 'midline', 'square', 'line', 'track', 'level']);
/** Of these "level" is the end: "brought one oh nine level". */
const leveled = new Set(['took', 'taken', 'brought', 'ground', 'filed', 'burred']);
const joins = new Set(['and', 'but', 'then']);
/** Words that tell of work by the size beside them alone. */
const particles = new Set(['down', 'back', 'taken', 'off', 'came', 'come']);
const lowers = new Set(['down', 'back']);
/** An overgrowth by its name, and a place beside it: by its name alone the lexicon has it. */
const namesThing = (between: readonly Token[]): boolean =>
  between.length > 2 && !between.some(({ ends }) => ends) && between.some(({ t }) => /^(?:hooks?|ramps?|steps?)$/.test(t));
const SPAN = 9;

const word = (tokens: readonly Token[], at: number): string => tokens[at]?.t ?? '';
const reduce = (from: number, to: number, motorised = false): Mark => ({
  from,
  to,
  terms: [{ k: 'work', term: { as: 'procedure', id: 'reduce', done: true, ...(motorised ? { instrument: 'motorised' as const } : {}) } }],
});

const takesOff = new Set(['took', 'taken', 'take', 'knocked', 'shaved', 'ground', 'got']);
/** "took four mil off two oh six": a reduction in the words of doing. */
function takenOff(tokens: readonly Token[], at: number): Mark | undefined {
  const verb = word(tokens, at);
  if (!takesOff.has(verb)) return undefined;
  const measure = readMeasure(tokens, word(tokens, at + 1) === 'off' ? at + 2 : at + 1);
  if (measure === undefined || !(word(tokens, at + 1) === 'off' || ['off', 'from'].includes(word(tokens, measure.to)))) return undefined;
  return {
    from: at,
    to: at + 1,
    terms: [{ k: 'work', term: { as: 'procedure', id: 'reduce', ...(verb === 'take' ? {} : { done: true }) } }],
  };
}

const takesOut = new Set(['took', 'taken', 'pulled', 'whipped', 'popped', 'lifted', 'had', 'got']);
/** "took both upper wolf teeth out", "pulled the cap on five oh six off": the verb of doing, its tooth or cap between. */
function takenOut(tokens: readonly Token[], at: number): Mark | undefined {
  if (!takesOut.has(word(tokens, at))) return undefined;
  const end = tokens.slice(at + 1, at + 9).findIndex(({ t }) => t === 'out' || t === 'off');
  const between = tokens.slice(at + 1, at + 1 + end);
  // "took the piece of three oh eight out": a piece is not the tooth.
  if (end < 1 || between.some(({ t }, i) => ['and', 'but'].includes(t) || piecesSay.has(t) || readMeasure(tokens, at + 1 + i)))
    return undefined;
  const cap = between.some(({ t }) => t === 'cap' || t === 'caps');
  const tooth =
    word(tokens, at + 1 + end) === 'out' &&
    between.some(({ t }, i) => t === 'tooth' || t === 'teeth' || readCodes(tokens, at + 1 + i) !== undefined);
  // "popped the two loose caps off": nothing between but what it was done to.
  const whole = cap && between.every(({ t }) => /^(?:the|that|this|those|these|both|of|two|all|loose|retained|caps?)$/.test(t));
  return cap || tooth
    ? {
        from: at,
        to: whole ? at + 2 + end : at + 1,
        terms: [{ k: 'work', term: { as: 'procedure', id: cap ? 'remove-cap' : 'extract', done: true } }],
      }
    : undefined;
}

export function readDoing(tokens: readonly Token[], at: number): Mark | undefined {
  const own = takenOff(tokens, at) ?? takenOut(tokens, at);
  if (own) return own;
  const said = word(tokens, at);
  return verbs.has(said) ? takenDown(tokens, at) : particles.has(said) ? sizeAlone(tokens, at) : undefined;
}

/** "took one oh six down", "brought the lower sixes down by two mil": a tooth stands between. */
function takenDown(tokens: readonly Token[], at: number): Mark | undefined {
  if (word(tokens, at) === 'taken' && units.has(word(tokens, at - 1))) return sizeAlone(tokens, at);
  const front = tokens.slice(at + 1, at + 4).some(({ t }) => t === 'incisors' || t === 'corners');
  const end = tokens
    .slice(at + 1, at + SPAN)
    .findIndex(
      ({ t }, i) =>
        t === 'down' ||
        (t === 'back' && namesThing(tokens.slice(at + 1, at + 1 + i)) && sizeAt(tokens, at + 2 + i)) ||
        (t === 'level' && leveled.has(word(tokens, at))) ||
        (front && t === 'back'),
    );
  const between = tokens.slice(at + 1, at + 1 + end);
  // "took the hook on three eleven down three mil": the size is told of "down".
  if (end >= 1 && namesThing(between) && sizeAt(tokens, at + 2 + end)) return { from: at, to: at + 1, terms: [{ k: 'glue' }] };
  const tooth = between.some(
    (_, i) =>
      readCodes(tokens, at + 1 + i) !== undefined ||
      readPlural(tokens, at + 1 + i) !== undefined ||
      ['incisors', 'teeth', 'tooth', 'corners', 'row', 'rows', 'arcade', 'arcades', 'uppers', 'lowers'].includes(word(tokens, at + 1 + i)),
  );
  if (
    end >= 1 &&
    tooth &&
    !between.some(({ t }, i) => joins.has(t) && !readCodes(tokens, at + 2 + i)) &&
    !between.some(({ t }) => units.has(t))
  )
    return reduce(at, at + 1, word(tokens, at) === 'burred');
  // "brought down by three mil", "brought back by three mil"
  return ['down', 'back'].includes(word(tokens, at + 1)) &&
    ['brought', 'got', 'cut', 'knocked', 'dropped'].includes(word(tokens, at)) &&
    sizeAt(tokens, at + 2)
    ? reduce(at, at + 2)
    : undefined;
}

/** "one oh six down by two mil", "three mil off four eleven": no verb but the size itself. */
function sizeAlone(tokens: readonly Token[], at: number): Mark | undefined {
  const said = word(tokens, at);
  const verb = tokens.slice(0, at).findLastIndex(({ t }) => verbs.has(t));
  if (verb >= 0 && at - verb < SPAN && lowers.has(said) && sizeAt(tokens, at + 1) && namesThing(tokens.slice(verb, at)))
    return reduce(at, at + 1, word(tokens, verb) === 'burred');
  if (tokens.slice(0, at).some(({ t }) => working.has(t))) return undefined;
  // "that pocket is down to four mil": what heals is not reduced.
  if (said === 'down' && tokens.slice(0, at).some(({ t }) => healing.has(t))) return undefined;
  if (said === 'down') return ['by', 'to'].includes(word(tokens, at + 1)) && sizeAt(tokens, at + 1) ? reduce(at, at + 1) : undefined;
  // "gum has crept back four mil off three oh one": what draws back by itself.
  if (tokens.slice(0, at).some(({ t }) => gums.has(t))) return undefined;
  const off = said === 'off' ? at : word(tokens, at + 1) === 'off' ? at + 1 : -1;
  if (off < 0 || !units.has(word(tokens, at - 1)) || notWork.has(word(tokens, off + 1)) || notWork.has(word(tokens, off + 2)))
    return undefined;
  return reduce(at, off + 1);
}

/** A size at this word, behind "by" or "to". */
function sizeAt(tokens: readonly Token[], at: number): boolean {
  const from = ['by', 'to'].includes(word(tokens, at)) ? at + 1 : at;
  const amount = readAmount(tokens, ['about', 'around', 'roughly'].includes(word(tokens, from)) ? from + 1 : from);
  return (
    (amount !== undefined && units.has(word(tokens, amount.to))) ||
    (['a', 'an'].includes(word(tokens, from)) && units.has(word(tokens, from + 1)))
  );
}
