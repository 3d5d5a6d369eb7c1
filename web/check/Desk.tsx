/**
 * Looking over one draft: its questions first, then the mouth beside its words.
 *
 * Three layouts were sketched:
 *  - the roll: every phrase in the order it was spoken, its items beneath it. True to the exam and easy to follow by ear,
 *    but a tooth's story lies scattered over it and the few questions drown among what is sure.
 *  - the ring: the mouth in the middle of the sheet, each finding on a line drawn out from its tooth. Nearest to the
 *    anatomy and lovely with ten items; with fifty it is a thicket, and a phone has no room round the mouth.
 *  - questions, then mouth and words: what needs a person stands first and alone, the rest lies by region in the order of
 *    an exam beside the mouth, and a touch on a tooth leaves only its words. Built, because it can be finished in two
 *    minutes, serves a thumb as well as a keyboard, and folds into one column. "All that was said" keeps the roll at hand.
 */
import { useEffect } from 'preact/hooks';
import { capital } from '../labels.ts';
import { Mouth } from '../mouth/Mouth.tsx';
import { MouthKey } from '../mouth/MouthKey.tsx';
import { placeWords } from '../mouth/names.ts';
import { nameOf, placeOf } from '../mouth/places.ts';
import { partLabels } from '../words.ts';
import { byPart, confirmed, draft, editing, load, picked, questions, refresh, trouble } from './desk.ts';
import { Confirm } from './Confirm.tsx';
import { Edit } from './Edit.tsx';
import { Head } from './Head.tsx';
import { Left, notExamined } from './Left.tsx';
import { Line } from './Line.tsx';
import { AllSaid } from './AllSaid.tsx';
import { Foot } from './Foot.tsx';
import { Cautions, Revisions } from './More.tsx';
import { Questions } from './Questions.tsx';
import { onKey } from './keys.ts';
import './check.css';

export function Desk({ id }: { id: string }) {
  useEffect(() => {
    void load(id);
  }, [id]);
  const reading = (draft.value?.unread.length ?? 0) > 0;
  useEffect(() => {
    const again = (): void => void refresh();
    document.addEventListener('visibilitychange', again);
    const turn = reading ? setInterval(again, 2000) : undefined;
    return () => {
      document.removeEventListener('visibilitychange', again);
      clearInterval(turn);
    };
  }, [reading]);
  useEffect(() => {
    addEventListener('keydown', onKey);
    return () => removeEventListener('keydown', onKey);
  }, []);
  if (!draft.value)
    return (
      <main class="paper check" id="main" tabIndex={-1}>
        {trouble.value ? (
          <p class="trouble" role="alert">
            {trouble.value}
          </p>
        ) : (
          <p class="soft">Fetching the draft</p>
        )}
      </main>
    );
  const items = [...byPart.value].filter(([, list]) => list.length > 0);
  return (
    <main class="paper check" id="main" tabIndex={-1}>
      <Head />
      {trouble.value && (
        <p class="trouble" role="alert">
          {trouble.value}
        </p>
      )}
      <div class={`desk${questions.value.length > 0 ? ' asks' : ''}`}>
        <div class="look-side">
          <Mouth
            draft={draft.value}
            focus={picked.value}
            onPick={(key) => {
              picked.value = key;
            }}
          />
          <MouthKey />
        </div>
        <div class="word-side">
          {picked.value && (
            <div class="picked-head row between">
              <h2>
                {/^\d{3}$/.test(picked.value) ? picked.value : capital(placeWords(placeOf(picked.value)))}
                <span class="soft small"> {nameOf(picked.value)}</span>
              </h2>
              <div class="row">
                {!confirmed.value && (
                  <button
                    type="button"
                    onClick={() => {
                      editing.value = 'new';
                    }}
                  >
                    Add here
                  </button>
                )}
                {!confirmed.value && items.length === 0 && (
                  <button type="button" onClick={() => void notExamined(placeOf(picked.value!))}>
                    Not examined
                  </button>
                )}
                <button
                  type="button"
                  onClick={() => {
                    picked.value = null;
                  }}
                >
                  Show everything
                </button>
              </div>
            </div>
          )}
          {editing.value === 'new' && (
            <section class="sheet">
              <Edit />
            </section>
          )}
          <Questions />
          {items.length === 0 && (
            <p class="soft empty">
              {picked.value
                ? 'Nothing was said of this place.'
                : 'Nothing was said yet. What is spoken while listening appears here; you can also add by hand.'}
            </p>
          )}
          {items.map(([part, list]) => (
            <section key={part} class="part" aria-label={partLabels[part]}>
              <h2>{partLabels[part]}</h2>
              <ul class="plain">
                {list.map((entry) => (
                  <Line key={entry.item.id} entry={entry} />
                ))}
              </ul>
            </section>
          ))}
          {!confirmed.value && editing.value !== 'new' && !picked.value && (
            <button
              type="button"
              class="add"
              onClick={() => {
                editing.value = 'new';
              }}
            >
              Add by hand
            </button>
          )}
          {!picked.value && (
            <>
              <Left />
              <Cautions />
              <AllSaid />
              <Revisions />
            </>
          )}
          <Foot />
        </div>
      </div>
      <Confirm />
    </main>
  );
}
