/** The name of a finding: of which kind, how large another is, or the thing itself. */
import type { Mark } from '../scan.ts';
import type { Token } from '../tokens.ts';
import { isHead, type Rule } from './phrase.ts';

/** A cup of a cheek tooth is its infundibulum. */
const cups: ReadonlySet<string> = new Set(['cup', 'cups', 'infundibulum', 'infundibula']);
const kindsOfCaries = ['infundibular-caries', 'peripheral-caries'] as const;

/** "decay in it, infundibular": of which kind, said apart from the name. */
export const kindOfCaries: Rule = ({ marks, tokens, condition }) => {
  if (condition?.id !== 'caries') return undefined;
  const [kind, other] = kindsOfCaries.filter(
    (id) =>
      tokens.some(({ t }) => `${t}-caries` === id || (id === 'infundibular-caries' && cups.has(t))) &&
      !marks.some((m) => m.terms?.some((t) => t.k === 'condition' && t.id === id)),
  );
  return kind !== undefined && other === undefined ? { condition: { ...condition, id: kind } } : undefined;
};

const complicated: ReadonlySet<string> = new Set(['complicated', 'uncomplicated']);
const ofClass: ReadonlySet<string> = new Set(['', 'fracture', 'crown', 'one', 'i', 'we', 'by', 'as', 'to', 'and', 'on', 'though']);
/** "crown fracture, uncomplicated", "fracture of the crown and root, complicated": its class, said in two parts (AVDC tooth fracture classification). */
export const classOfFracture: Rule = ({ tokens, condition, heads }) => {
  if (condition?.id !== 'fracture' || condition.strength === 'absentSay' || heads.length > 0) return undefined;
  const said = (word: string): boolean => tokens.some(({ t }) => t === word);
  // "it's a complicated mouth" is no class.
  const [how, other] = tokens.filter(
    ({ t, ends }, i) => complicated.has(t) && tokens[i - 1]?.t !== 'not' && (ends === true || ofClass.has(tokens[i + 1]?.t ?? '')),
  );
  if (how === undefined || other !== undefined || !said('crown') || (condition.grade ?? 'RF') !== 'RF') return undefined;
  const grade = `${how.t === 'complicated' ? 'C' : 'U'}C${said('root') ? 'R' : ''}F`;
  return { condition: { ...condition, grade } };
};

/** "a long hook", "a tall step": right before another name it is how large that is. */
export const howLarge: Rule = ({ marks, tokens, i, mark, terms, condition }) =>
  condition &&
  terms.some((t) => t.k === 'severityKept') &&
  !tokens[mark.to - 1]?.ends &&
  marks[i + 1]?.terms?.some((t) => t.k === 'condition' && (t.strength === 'say' || condition.strength === 'say'))
    ? 'mod'
    : undefined;

/** The thing itself; work where the word is rather that; "displaced" beside a fracture is how it stands, alone it is a finding of its own. */
export const finding: Rule = ({ marks, tokens, i, mark, condition, work, qualifier, fractureSaid }) => {
  if (!condition || (qualifier?.id.endsWith('displaced') && fractureSaid)) return undefined;
  if (mark.place && condition.strength === 'withPlace' && neighbourHead(marks, i) && !ruledOutBeside(marks, tokens, i)) return undefined;
  return work?.done && condition.strength !== 'say' ? { work } : { condition };
};

/** "they're level and they meet edge to edge": beside the one bite the other is named in a word. */
export const levelToo: Rule = ({ marks, tokens, mark }) =>
  tokens[mark.to - 1]?.t === 'level' && marks.some(({ terms }) => terms?.some((t) => t.k === 'condition' && t.id === 'edge-to-edge'))
    ? { condition: { id: 'level-bite', strength: 'say', plural: false } }
    : undefined;

export const undisplaced: Rule = ({ qualifier, fractureSaid }) =>
  qualifier?.id === 'undisplaced' && !fractureSaid ? { condition: { id: 'displaced', strength: 'absentSay', plural: false } } : undefined;

/** "the front infundibulum is a grade one": what is graded in an infundibulum is its decay. */
export const gradedCup: Rule = ({ marks, tokens, i, mark, condition }) => {
  if (condition !== undefined || !tokens.slice(mark.from, mark.to).some(({ t }) => t.startsWith('infundibul'))) return undefined;
  const names = ({ terms }: Mark): boolean => terms?.some((t) => t.k === 'condition' && t.strength === 'say') === true;
  const grade = marks.findIndex((one, at) => at > i && one.grade?.announced === true);
  return grade > i &&
    !marks.slice(i, grade).some(names) &&
    !marks.some(({ terms }) => terms?.some((t) => t.k === 'condition' && ofCement.has(t.id)))
    ? { condition: { id: 'infundibular-caries', strength: 'say', plural: false } }
    : undefined;
};
const ofCement: ReadonlySet<string> = new Set(['caries', 'infundibular-caries', 'peripheral-caries', 'cemental-hypoplasia']);

/** "neither canines nor wolf teeth": right behind a word of ruling out a group word is what is ruled out. */
const ruledOutBeside = (marks: readonly Mark[], tokens: readonly Token[], at: number): boolean =>
  (marks[at - 1]?.terms ?? []).some((t) => t.k === 'cue' && t.cue.means === 'absent' && t.cue.looks !== 'back') &&
  ((marks[at + 1]?.terms ?? []).some((t) => t.k === 'cue' && t.cue.means === 'absent') ||
    ['or', 'nor', 'and'].includes(tokens[(marks[at + 1] as Mark | undefined)?.from ?? -1]?.t ?? '') ||
    // "no wolf teeth, no canines": between pauses nothing else is ruled out by this "no".
    (tokens[(marks[at - 1] as Mark).from - 1]?.ends === true &&
      (marks[at + 1] === undefined || tokens[(marks[at] as Mark).to - 1]?.ends === true)));

/** A group word ("canines", "caps") beside a true finding is its place. */
const neighbourHead = (marks: readonly Mark[], at: number): boolean =>
  marks.some(({ terms, place }, i) => i !== at && place === undefined && (terms ?? []).some((t) => isHead(t)));
