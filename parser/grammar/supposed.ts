/** "ring if he starts quidding again", "sooner if the hook comes back": what may come to be is not what was found. */
import type { Token } from './tokens.ts';

const opening = new Set(['if', 'unless', 'should']);
/** Behind "if", no thing that may change: "if you look here there is a hook", "if anything it is level". */
const nobody = new Set(['i', 'you', 'we', 'ever', 'anything', 'so', 'not', 'only', 'need', 'possible']);
/** Verbs of what has not happened yet. A bare "is" says too little: "if it is any help there is a hook". */
const coming = new Set([
  'start',
  'starts',
  'begin',
  'begins',
  'get',
  'gets',
  'come',
  'comes',
  'go',
  'goes',
  'keep',
  'keeps',
  'carry',
  'carries',
  'continue',
  'continues',
  'develop',
  'develops',
  'show',
  'shows',
  'stop',
  'stops',
  'quids',
  'quid',
  'drools',
  'lose',
  'loses',
  'drop',
  'drops',
  'turn',
  'turns',
  'become',
  'becomes',
  'worsens',
  'persists',
  'grow',
  'grows',
  'still',
  'not',
  'returns',
  'return',
  'any',
  'better',
  'worse',
  'improved',
  'healed',
  'settled',
  'bigger',
  'bleeds',
  'bleed',
  'swells',
  'swell',
  'chokes',
  'been',
]);
/** Before "if" these make it a question of what is there now. */
const asking = new Set([
  'sure',
  'certain',
  'tell',
  'see',
  'know',
  'say',
  'wonder',
  'wondering',
  'surprised',
  'as',
  'even',
  'check',
  'checked',
  'doubt',
  'clear',
]);
/** How many words may stand between "if" and its verb. */
const NEAR = 6;

const none: readonly boolean[] = [];
/** Whether each word is part of such a supposition, up to the next pause; empty where nothing is supposed. */
export function supposed(tokens: readonly Token[]): readonly boolean[] {
  if (!tokens.some(({ t }) => opening.has(t))) return none;
  const inside = tokens.map(() => false);
  tokens.forEach(({ t }, at) => {
    if (!opening.has(t) || nobody.has(tokens[at + 1]?.t ?? 'so') || asking.has(tokens[at - 1]?.t ?? '')) return;
    const pause = tokens.findIndex(({ ends }, i) => i > at && ends === true);
    const end = pause < 0 ? tokens.length : pause + 1;
    // "unless there is a hook" never says that there is; behind "should" the verb stands at once.
    const near = tokens.slice(t === 'should' ? at + 1 : at + 2, Math.min(end, at + 2 + NEAR));
    if (t === 'unless' || near.some(({ t: word }) => coming.has(word))) inside.fill(true, at, end);
  });
  return inside;
}
