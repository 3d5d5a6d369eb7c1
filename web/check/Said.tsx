/** Where an item came from: its words in the phrase, its sound, how sure, and why. */
import type { DraftItem, Utterance } from '../../parser/contract/draft.ts';
import type { Item } from '../../parser/contract/item.ts';
import { momentWords } from '../when.ts';
import { playing, soundTrouble } from '../sound.ts';
import { addressOf, playSound, utterance, type Sound } from './desk.ts';
import { howWords, ruleWords, secondWords, sureWords } from './why.ts';

/** A phrase with some of its words marked; talk that became nothing is paler, never left out. */
export function Phrase({ said, marked = () => false }: { said: Utterance; marked?: (index: number) => boolean }) {
  const look = (i: number): 'mark' | 'soft' | 'plain' =>
    marked(i) ? 'mark' : said.words[i]!.as === 'leftover' || said.words[i]!.as === 'filler' ? 'soft' : 'plain';
  const runs: { as: string; words: string[] }[] = [];
  said.words.forEach(({ w }, i) => {
    const last = runs.at(-1);
    if (last?.as === look(i)) last.words.push(w);
    else runs.push({ as: look(i), words: [w] });
  });
  return (
    <q class="phrase">
      {runs.map(({ as, words }, i) => {
        const text = words.join(' ');
        return (
          <>
            {i > 0 && ' '}
            {as === 'mark' ? <mark>{text}</mark> : as === 'soft' ? <span class="soft">{text}</span> : text}
          </>
        );
      })}
    </q>
  );
}
/** The play button of a stretch of sound; while it plays it stops it. */
export function Play({ sound }: { sound: Sound | null }) {
  if (!sound) return null;
  const on = playing.value === addressOf(sound);
  return (
    <button
      type="button"
      class="play"
      aria-pressed={on}
      aria-label={on ? 'Stop the sound' : 'Play the sound of these words'}
      onClick={() => playSound(sound)}
    >
      <span aria-hidden="true">{on ? '■' : '▶'}</span> {on ? 'Stop' : 'Play'}
    </button>
  );
}
export function Said({ item, second }: { item: Item; second?: DraftItem['second'] }) {
  const { evidence } = item;
  const said = utterance(evidence.utterance);
  return (
    <div class="said stack">
      {said ? (
        <Phrase said={said} marked={(i) => evidence.words.includes(i)} />
      ) : (
        <p class="soft">
          {evidence.by
            ? `Typed by ${evidence.by}${evidence.when ? `, ${momentWords(evidence.when)}` : ''}. There is no sound.`
            : 'No words are kept for this.'}
        </p>
      )}
      {soundTrouble.value && (
        <p class="trouble" role="status">
          {soundTrouble.value}
        </p>
      )}
      <dl class="why small">
        <dt>How sure</dt>
        <dd>{sureWords(evidence)}</dd>
        {second && (
          <>
            <dt>Second reader</dt>
            <dd>
              {secondWords(second)}
              {second.heard === 'not-this' && second.text && (
                <>
                  : <q>{second.text}</q>
                </>
              )}
            </dd>
          </>
        )}
        {Object.entries(item.how).filter(([, how]) => how !== 'spoken').length > 0 && (
          <>
            <dt>How it came</dt>
            <dd>{howWords(item.how)}</dd>
          </>
        )}
        {evidence.rules.length > 0 && (
          <>
            <dt>Why</dt>
            <dd>{evidence.rules.map(ruleWords).join(', then ')}</dd>
          </>
        )}
      </dl>
    </div>
  );
}
