/** Doubts first, each with its own answer: the readings as buttons, keep as said, strike. */
import type { DraftDoubt } from '../../parser/contract/draft.ts';
import type { Grade, Item } from '../../parser/contract/item.ts';
import { condition, doubtQuestions } from '../labels.ts';
import { placeWords } from '../mouth/names.ts';
import { placeOfItem, standsAt } from '../mouth/marks.ts';
import { keysOf, teethSpokenOf } from '../mouth/places.ts';
import { told } from '../told.ts';
import { differing, type Differs } from './differs.ts';
import { act, at, busy, draft, editing, opened, questionsHere, settle, soundOf, standing, utterance } from './desk.ts';
import { Phrase, Play } from './Said.tsx';

/** One reading, with the words that are only its own marked. */
const Offered = ({ before, own, after }: Differs) => (
  <span>
    {before} {own && (before || after) ? <mark>{own}</mark> : own} {after}
  </span>
);

/** A grade from the scale in place of the one that was said and is not on it. */
async function grade(item: Item, doubt: string, value: string): Promise<void> {
  if (item.kind !== 'finding') return;
  const scale = condition(item.condition).scale as Grade['scale'];
  const done = await act({ act: 'edit', id: item.id, item: { ...item, grade: { scale, value } } }, `Grade ${value}.`);
  if (done && draft.value?.doubts.some((d) => d.doubt.id === doubt && !d.settled)) await settle(doubt, 'kept-as-said');
}

/** What a conflict is about: the findings that stand where it was said, and what was not examined there. */
function against({ doubt }: DraftDoubt): readonly Item[] {
  const about = draft.value?.items.find((i) => i.item.id === doubt.item)?.item;
  if (doubt.doubt !== 'conflict' || !about) return [];
  const keys = [...keysOf(placeOfItem(about)), ...teethSpokenOf(placeOfItem(about))];
  return standing.value
    .map((i) => i.item)
    .filter(
      (i) =>
        i.id !== about.id &&
        (i.kind === 'not-examined' || (i.kind === 'finding' && i.presence !== 'absent')) &&
        keys.some((key) => standsAt(i, key)),
    );
}

function Question({ entry }: { entry: DraftDoubt }) {
  const { doubt } = entry;
  const said = utterance(doubt.utterance);
  const item = draft.value?.items.find((i) => i.item.id === doubt.item)?.item;
  const open = (): void => {
    if (item) {
      opened.value = item.id;
      editing.value = item.id;
      document.getElementById(`line-${item.id}`)?.scrollIntoView({ block: 'center' });
    } else editing.value = 'new';
  };
  const differs = differing((doubt.readings ?? []).map(({ label }) => label));
  const half = [doubt.place && placeWords(doubt.place), doubt.condition && condition(doubt.condition).label].filter(Boolean).join(', ');
  return (
    <li class={`question${at.value === doubt.id ? ' at' : ''}`}>
      <div
        tabIndex={-1}
        class="head"
        id={`line-${doubt.id}`}
        onFocus={() => {
          at.value = doubt.id;
        }}
      >
        <h3>{doubtQuestions[doubt.doubt]}</h3>
        {item && <p>{told(item)}</p>}
        {!item && half && <p>{half}</p>}
        {doubt.why && (
          <p class="soft small">
            {doubt.why}
            {doubt.source && doubt.source !== 'logic' ? ` (${doubt.source})` : ''}
          </p>
        )}
        {against(entry).map((other) => (
          <p key={other.id} class="small">
            Said before: {told(other)}
          </p>
        ))}
        <p>
          {said ? (
            <Phrase
              said={said}
              marked={(i) => (item ? item.evidence.words.includes(i) : doubt.words.split(' ').includes(said.words[i]!.w))}
            />
          ) : (
            <q class="phrase">{doubt.words}</q>
          )}
        </p>
      </div>
      <div class="row">
        <Play sound={soundOf(doubt.utterance, doubt.at ?? item?.evidence.at)} />
        {differs.map((_, n) => (
          <button type="button" key={n} class="reading" disabled={busy.value} onClick={() => void settle(doubt.id, 'reading', n)}>
            <kbd>{n + 1}</kbd> <Offered {...(differs[n] as Differs)} />
          </button>
        ))}
        {doubt.legal && item && (
          <span class="row tight" role="group" aria-label="Grades of this scale">
            {doubt.legal.map((value) => (
              <button type="button" key={value} class="reading" disabled={busy.value} onClick={() => void grade(item, doubt.id, value)}>
                {value}
              </button>
            ))}
          </span>
        )}
        {!doubt.readings?.length && !doubt.legal && (
          <button type="button" disabled={busy.value} onClick={open}>
            {item ? 'Change it' : 'Add by hand'}
          </button>
        )}
        <button type="button" class="quiet" disabled={busy.value} onClick={() => void settle(doubt.id, 'kept-as-said')}>
          {item && Object.values(item.how).includes('typed')
            ? 'Right as it is now'
            : item || doubt.readings
              ? 'Keep as said'
              : 'It was only talk'}
        </button>
        <button type="button" class="quiet" disabled={busy.value} onClick={() => void settle(doubt.id, 'struck')}>
          Strike
        </button>
      </div>
    </li>
  );
}
export function Questions() {
  const list = questionsHere.value;
  if (list.length === 0) return null;
  return (
    <section class="questions" aria-labelledby="questions">
      <h2 id="questions">{list.length === 1 ? 'One question' : `${list.length} questions`}</h2>
      <ol class="plain">
        {list.map((entry) => (
          <Question key={entry.doubt.id} entry={entry} />
        ))}
      </ol>
    </section>
  );
}
