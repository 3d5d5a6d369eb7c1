/** How far a word of ruling out, of doubt or of the past reaches: which findings it is said of. */
import { light } from '../lexicon/fillers.ts';
import type { ScopeCue } from '../lexicon/scopes.ts';
import type { Link } from './groups.ts';
import { where } from './lists.ts';
import { howItIsNot, isNormal } from './mods.ts';
import type { Head, Roles } from './roles.ts';
import { saidNotThere } from './notThere.ts';
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';

const lightWords = new Set(light);
export type Scope = 'absent' | 'suspected' | 'before';

/** Scopes by head: a forward cue covers the next head, and on through "or" and "nor"; a backward cue the heads just before it. */
export function scopesOf(
  marks: readonly Mark[],
  tokens: readonly Token[],
  role: Roles['role'],
  heads: readonly Head[],
  link: (a: number, b: number) => Link,
): readonly (readonly Scope[])[] {
  const scopes: Scope[][] = heads.map(() => []);
  marks.forEach((mark, i) => {
    if (role[i] !== 'cue') return;
    const cues = (mark.terms ?? []).flatMap((t) => (t.k === 'cue' ? [t.cue] : []));
    if (cues.some(({ kind }) => kind === 'pseudo')) return;
    if (howItIsNot(marks, tokens, role, i) !== undefined) return;
    const next = heads.findIndex((head) => head.mark > i);
    const reachable =
      next >= 0 &&
      !role.slice(i + 1, (heads[next] as Head).mark).some((r) => r === 'stop') &&
      !((heads[next] as Head).condition && ownObject(marks, tokens, role, i, (heads[next] as Head).mark));
    const placeBetween = next >= 0 && role.slice(i + 1, (heads[next] as Head).mark).includes('place');
    // "no, it's fine", "no, normal": an answer; what is normal is not made abnormal by it.
    if (tokens[mark.from]?.t === 'no' && mark.to - mark.from === 1 && reachable && !placeBetween && isNormal(heads[next])) return;
    const previous = heads.findLastIndex((head) => head.mark < i);
    // "hook on one oh six, none on two oh six": before a finding put back every turning word looks to it.
    // "four mil i think" is a guess at the size.
    if (cues.every(({ means, looks }) => means === 'suspected' && looks !== 'forward') && (marks[i - 1]?.measure || marks[i - 1]?.grade))
      return;
    // "cheeks not, ulcers on both": what is turned stands before the pause.
    const closed =
      tokens[mark.to - 1]?.ends === true &&
      ((tokens[mark.from]?.t === 'not' && mark.to - mark.from === 1) ||
        (previous >= 0 && cues.some(({ means, looks }) => means === 'suspected' && looks !== 'forward')));
    // "worse than it was last visit": a comparison with what was, no history.
    if (comparedWithThen(tokens, mark.from) && cues.every(({ means, looks }) => means === 'before' && looks !== 'forward')) return;
    if (saidNotThere(marks, tokens, i, heads[previous])) {
      (scopes[previous] as Scope[]).push('absent');
      return;
    }
    // "took the hook off two oh six last year and it has not come back": no word against the work; what was worked on is no more.
    if (heads[previous]?.work && cues.some(({ kind }) => kind === 'return')) {
      if (heads[previous - 1]?.condition) (scopes[previous - 1] as Scope[]).push('before');
      return;
    }
    if (cues.every(({ means }) => means === 'before') && unnoticed(tokens, mark.from)) return;
    const forward = closed
      ? undefined
      : (cues.find(({ looks }) => looks !== 'back') ??
        (marks[(heads[next] ?? { mark: -1 }).mark]?.again && !turnedAgain(marks, i, heads[next] as Head) ? cues[0] : undefined));
    const back = cues.find(({ looks }) => looks !== 'forward');
    // "no looser than last time", "is no looser": as loose as it was.
    const named = marks[heads[next]?.mark ?? -1];
    const told = named && (tokens[named.to]?.t === 'than' || (mark.from > 0 && tokens[mark.from - 1]?.ends !== true));
    if (told && tokens[named.to - 1]?.t === 'looser' && heads[next]?.mark === i + 1) return;
    // "I'd be surprised if one oh nine wasn't fractured": two turns make none.
    if (
      cues.some(({ means }) => means === 'absent') &&
      tokens.slice(0, mark.from).some(({ t }, k) => t === 'surprised' && tokens[k + 1]?.t === 'if')
    )
      return;
    // "no four ten, it's missing": the tooth is what is not there.
    if (tokens[mark.to - 1]?.t === 'no' && marks[i + 1]?.place?.codes !== undefined && tokens[(marks[i + 1] as Mark).to - 1]?.ends) return;
    if (next >= 0 && notToBeSeen(marks, tokens, role, i, heads[next] as Head)) return;
    // "neither canine is sharp": of the place behind it.
    const ofPlace =
      (tokens[mark.from]?.t === 'neither' && mark.to - mark.from === 1 && marks[i + 1]?.place !== undefined) ||
      joinsNext(marks, tokens, i, cues);
    if (
      forward &&
      reachable &&
      (!placeBetween || previous < 0 || back === undefined || ofPlace) &&
      ['absent', 'suspected', 'before'].includes(forward.means)
    ) {
      let h = next;
      (scopes[h] as Scope[]).push(forward.means as Scope);
      while (heads[h + 1] && listGoesOn(heads, h, link, role)) {
        h += 1;
        (scopes[h] as Scope[]).push(forward.means as Scope);
      }
    } else if (back && previous >= 0 && ['absent', 'suspected', 'before'].includes(back.means)) {
      // "hook on one oh six, and there was a ramp on three eleven last time": the ramp alone has its time twice.
      const told = back.means === 'before' && scopes[previous]?.includes('before') === true;
      (scopes[previous] as Scope[]).push(back.means as Scope);
      if (told) return;
      // "hooks, ramps, waves, none of those": all that was listed.
      const listed = tokens.slice(mark.from, mark.to).some(({ t }) => ['those', 'these', 'them', 'above', 'either'].includes(t));
      for (
        let h = previous;
        h > 0 &&
        ((listed && !role.slice((heads[h - 1] as Head).mark, (heads[h] as Head).mark).some((r) => r === 'place' || r === 'stop')) ||
          ['and', 'or'].includes(link((heads[h - 1] as Head).mark, (heads[h] as Head).mark)));
        h -= 1
      )
        (scopes[h - 1] as Scope[]).push(back.means as Scope);
    }
  });
  return scopes;
}

/** "hook on two oh six last year, one oh six today": the finding put back has a turn of its own. */
const turnedAgain = (marks: readonly Mark[], at: number, { mark }: Head): boolean =>
  marks.slice(at + 1, mark).some(({ from, to, terms }) => from === to && terms?.some((t) => t.k === 'cue'));

/** "cap on five oh seven and I reckon the one on six oh seven is loose": behind "and" a guess is at what comes. */
const joinsNext = (marks: readonly Mark[], tokens: readonly Token[], at: number, cues: readonly ScopeCue[]): boolean =>
  tokens[(marks[at] as Mark).from]?.t === 'i' &&
  tokens[(marks[at] as Mark).from - 1]?.t === 'and' &&
  tokens[(marks[at] as Mark).to - 1]?.ends !== true &&
  cues.every(({ means }) => means === 'suspected');

/** "no sign of two ten, it's missing": the tooth is what is not there, said twice. */
function notToBeSeen(
  marks: readonly Mark[],
  tokens: readonly Token[],
  role: Roles['role'],
  cue: number,
  { condition, mark }: Head,
): boolean {
  const place = role.indexOf('place', cue);
  return (
    condition?.id === 'missing' &&
    marks[place]?.place?.codes !== undefined &&
    place < mark &&
    role.slice(cue + 1, place).every((r) => r === 'glue') &&
    tokens.slice((marks[place] as Mark).to - 1, (marks[mark] as Mark).from).some(({ ends }) => ends === true)
  );
}

const perceiving: ReadonlySet<string> = new Set([
  'notice',
  'noticed',
  'see',
  'seen',
  'saw',
  'felt',
  'feel',
  'spot',
  'spotted',
  'know',
  'known',
  'find',
  'found',
]);
/** "never noticed that hook before", "I missed the ulcer last time": when it was overlooked, and it is there now. */
const unnoticed = (tokens: readonly Token[], to: number): boolean =>
  tokens
    .slice(0, to)
    .some(
      ({ t }, i) =>
        (t === 'missed' && ['i', 'we'].includes(tokens[i - 1]?.t ?? '')) ||
        (perceiving.has(t) &&
          ['not', 'never'].includes(tokens[i - 1]?.t ?? '') &&
          ['the', 'that', 'this', 'those', 'these', 'such'].includes(tokens[i + 1]?.t ?? '')),
    );

export const comparisons: ReadonlySet<string> = new Set(['than', 'since', 'as', 'from', 'like']);
const comparedWithThen = (tokens: readonly Token[], at: number): boolean => {
  let i = at - 1;
  while (['it', 'was', 'were', 'they', 'the', 'at'].includes(tokens[i]?.t ?? '')) i -= 1;
  return comparisons.has(tokens[i]?.t ?? '');
};

/** "you would not credit it, the cap is on": the turn is of a verb that has its own object. */
function ownObject(marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], cue: number, head: number): boolean {
  const verb = role.findIndex(
    (r, i) => i > cue && i < head && r === 'unknown' && !lightWords.has(tokens[(marks[i] as Mark).from]?.t ?? ''),
  );
  if (negatesWork(marks, tokens, role, cue, head) || spent(marks, tokens, role, cue, head)) return true;
  return verb === cue + 1 && ['it', 'that', 'him', 'her', 'them', 'this'].includes(tokens[(marks[verb] as Mark).to]?.t ?? '');
}

const turning: ReadonlySet<string> = new Set(['no', 'nothing', 'not', 'without', 'never']);
/** "no use, ramp three eleven", "no light in here, hook on one oh six": what there is none of is said before the pause. */
function spent(marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], cue: number, head: number): boolean {
  const { from, to } = marks[cue] as Mark;
  if (!tokens.slice(from, to).some(({ t }) => turning.has(t))) return false;
  const pause = marks.findIndex((mark, i) => i > cue && i < head && tokens[mark.to - 1]?.ends === true);
  const thing = (mark: Mark, i: number): boolean =>
    role[i] === 'unknown' || (role[i] !== 'cue' && mark.terms?.some(({ k }) => k === 'work' || k === 'talk') === true);
  return marks.some((mark, i) => i > cue && i <= pause && thing(mark, i));
}

const definite = new Set(['the', 'that', 'this', 'those', 'these', 'his', 'her', 'its']);
const handling = new Set(['get', 'got', 'getting', 'take', 'bring', 'move', 'touch', 'treat', 'do', 'have', 'let', 'want']);
/** "could not get the ramp down", "did not manage to shift the cap": what was not done to it says that it is there. */
function negatesWork(marks: readonly Mark[], tokens: readonly Token[], role: Roles['role'], cue: number, head: number): boolean {
  const { from, to } = marks[cue] as Mark;
  if (!tokens.slice(from, to).some(({ t }) => ['not', 'never', 'unable', 'failed'].includes(t))) return false;
  const verb = role.findIndex(
    (r, i) =>
      i > cue &&
      i < head &&
      (r === 'unknown'
        ? !lightWords.has(tokens[(marks[i] as Mark).from]?.t ?? '')
        : handling.has(tokens[(marks[i] as Mark).from]?.t ?? '')),
  );
  return verb >= 0 && tokens.slice((marks[verb] as Mark).to, (marks[head] as Mark).from).some(({ t }) => definite.has(t));
}

/** "hooks waves or steps": a list goes on while "or" closes it before any place or stop. */
function listGoesOn(heads: readonly Head[], h: number, link: (a: number, b: number) => Link, role: Roles['role']): boolean {
  for (let i = h; i + 1 < heads.length; i += 1) {
    const [a, b] = [(heads[i] as Head).mark, (heads[i + 1] as Head).mark];
    const bond = link(a, b);
    const between = role.slice(a + 1, b);
    // "no hook on one oh six or ramp on three eleven": each with its place.
    const placed = between.includes('place') && bond !== 'or' && bond !== 'nor';
    if (placed || between.some((r) => r === 'stop' || r === 'unknown') || (between.includes('cue') && bond !== 'nor')) return false;
    if (bond === 'or' || bond === 'nor' || (bond === 'and' && namedOnly(heads, i + 1, role))) return true;
    if (bond !== '') return false;
  }
  return false;
}

/** "no hooks and ramps": of the second nothing is said, not even where it would be. */
function namedOnly(heads: readonly Head[], h: number, role: Roles['role']): boolean {
  const { mark, condition } = heads[h] as Head;
  const behind = role.slice(mark + 1);
  const stop = behind.findIndex((r) => r === 'stop' || r === 'head');
  return condition?.plural === true && !behind.slice(0, stop < 0 ? undefined : stop).some((r) => r !== 'glue');
}

/** The cues that stand between the heads beside it. */
export const cuesOf = (marks: readonly Mark[], role: Roles['role'], heads: readonly Head[], h: number): readonly number[] => {
  const from = heads[h - 1]?.mark ?? -1;
  const to = heads[h + 1]?.mark ?? marks.length;
  return where(marks, (_, i) => role[i] === 'cue' && i > from && i < to);
};
