import { useState } from 'preact/hooks';
import type { Doubt } from '../../parser/contract/doubt.ts';
import { api, Refused } from '../api.ts';
import { draft, receive } from '../state.ts';
import { ordinals, questionOf, type Answer } from './question.ts';

interface AskProps {
  readonly exam: string;
  readonly doubt: Doubt;
  readonly justSaid: boolean;
  readonly more: number;
}
/** One doubt as a question with its answers, by touch or by voice; how many more wait is said beside it. Words that stand above it already are not repeated. */
export function Ask({ exam, doubt, justSaid, more }: AskProps) {
  const [refused, setRefused] = useState('');
  const { about, ask, why, answers, offered } = questionOf(doubt);
  const give = async ({ act }: Answer): Promise<void> => {
    try {
      const settled = await api.act(exam, act);
      if (draft.value?.id === exam && settled.draft.seq >= draft.value.seq) receive({ type: 'draft', draft: settled.draft });
    } catch (error) {
      setRefused(error instanceof Refused ? error.message : 'That was not done. What is recorded is safe. Try again.');
    }
  };
  return (
    <section class="live-ask" aria-label="Not sure">
      {about && !(justSaid && about.startsWith('“')) && <p class="about">{about}</p>}
      <p class="ask">{ask}</p>
      {why && <p class="why">{why}</p>}
      <div class="answers">
        {answers.map((one, i) => (
          <button key={one.label} type="button" class={one.label.length > 14 ? 'long' : ''} onClick={() => void give(one)}>
            {one.label}
            {offered && <span class={answers.length > 2 ? 'ordinal' : 'out-of-sight'}> the {ordinals[i]}</span>}
          </button>
        ))}
      </div>
      {more > 0 && <p class="why">{more === 1 ? 'One more question waits' : `${more} more questions wait`} for looking over.</p>}
      {refused && (
        <p class="why" role="alert">
          {refused}
        </p>
      )}
    </section>
  );
}
