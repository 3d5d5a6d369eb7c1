/** "used to quid, does not now": what was, and that it is no more. */
import { endedSince, goneNow } from '../lexicon/history.ts';
import type { Made } from './made.ts';

/** What is said to have been and to be no more is two findings: one from before, one ruled out now. */
export function endedNow(made: readonly Made[], words: readonly string[]): readonly Made[] {
  const text = words.join(' ');
  const past = made.filter(({ body }) => body?.kind === 'finding' && (body.when === 'before' || body.presence === 'absent'));
  const only = past.length === 1 ? past[0] : undefined;
  if (
    only?.body?.kind !== 'finding' ||
    made.length > 1 ||
    !(
      goneNow.test(text) ||
      (/\b(?:used to|once had|had been|was|were|had|(?<!\b(?:no|not|never)\b.*)(?:previously|before)|last (?:time|year|visit|month|week|spring|summer|autumn|winter))\b/.test(
        text,
      ) &&
        endedSince.test(text))
    )
  )
    return made;
  const { condition, place } = only.body;
  return [
    { ...only, body: { ...only.body, presence: 'present', when: 'before' }, rules: [...only.rules, 'from before'] },
    {
      ...only,
      body: { kind: 'finding', condition, presence: 'absent', when: 'now', place },
      rules: [...only.rules, 'no more'],
      doubts: [],
    },
  ];
}
