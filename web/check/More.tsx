/** At the foot, quiet: cautions with their source, all that was said, earlier revisions, the printable pages, the keys. */
import { useRef, useState } from 'preact/hooks';
import { api } from '../api.ts';
import { cautions, confirmed, draft, soundOf } from './desk.ts';
import { momentWords } from '../when.ts';
import { keyTable } from './keys.ts';
import { Phrase, Play } from './Said.tsx';
import { Revision } from './Revision.tsx';

export function Cautions() {
  if (cautions.value.length === 0) return null;
  return (
    <section class="cautions small" aria-labelledby="cautions">
      <h2 id="cautions">Cautions</h2>
      <ul class="plain">{cautions.value.map((c) => <li key={c.say}>{c.say}{c.who ? ` ${c.who}` : ''}{c.source && <span class="soft"> {c.source}</span>}</li>)}</ul>
    </section>
  );
}
/** Every phrase, also the talk that became nothing, and every gap. */
export function AllSaid() {
  const [open, setOpen] = useState(false);
  const d = draft.value!;
  const rows = [...d.utterances.map((u) => ({ at: u.at?.[0] ?? 0, u })), ...d.gaps.map((g) => ({ at: g.at[0], g }))].sort((a, b) => a.at - b.at);
  const gapWords: Readonly<Record<string, string>> = { pause: 'Paused', lost: 'Sound lost', microphone: 'The microphone was away', erased: 'Sound erased' };
  return (
    <details class="all-said" onToggle={(e) => setOpen(e.currentTarget.open)}>
      <summary>All that was said ({d.utterances.length})</summary>
      {open && <ol class="plain">{rows.map((row) => ('u' in row
        ? <li key={row.u.id}><Play sound={soundOf(row.u.id)} /><span>{row.u.words.length ? <Phrase said={row.u} /> : <em class="soft">Speech without words</em>}{row.u.words.every((w) => w.as === 'leftover' || w.as === 'filler') && <span class="soft small"> talk, kept with the exam, not part of the record</span>}</span></li>
        : <li key={`gap-${row.at}`} class="soft"><em>{gapWords[row.g.why] ?? row.g.why}, {Math.round(row.g.at[1] - row.g.at[0])} s</em></li>))}</ol>}
    </details>
  );
}
export function Revisions() {
  const [shown, setShown] = useState<number | null>(null);
  const d = draft.value!;
  if (d.revisions.length === 0) return null;
  return (
    <section class="revisions" aria-labelledby="revisions">
      <h2 id="revisions">Revisions</h2>
      <ol class="plain">{d.revisions.map((r) => (
        <li key={r.revision}>
          <div class="row between"><span>{r.revision}. {r.by}, {momentWords(r.when)}{r.reason && <span class="soft">, because {r.reason}</span>}{r.lexicon && <span class="soft small"> lexicon {r.lexicon}</span>}</span>
            <button type="button" aria-expanded={shown === r.revision} onClick={() => setShown(shown === r.revision ? null : r.revision)}>Read it</button></div>
          {shown === r.revision && <Revision exam={d.id} n={r.revision} />}
        </li>))}</ol>
    </section>
  );
}
export function Foot() {
  const keys = useRef<HTMLDialogElement>(null);
  const d = draft.value!;
  return (
    <footer class="foot row">
      <a class="button quiet" href={api.ownerPage(d.id)} target="_blank" rel="noreferrer">Page for the owner</a>
      <a class="button quiet" href={api.vetPage(d.id)} target="_blank" rel="noreferrer">Letter to the veterinarian</a>
      {!confirmed.value && <span class="small soft">Both say “draft” until you confirm.</span>}
      <button type="button" class="quiet" id="keys" onClick={() => keys.current?.showModal()}>Keys</button>
      <dialog ref={keys} aria-labelledby="keys-title">
        <h2 id="keys-title">Keys</h2>
        <dl class="keys">{keyTable.map((k) => <div key={k.does}><dt>{k.shown}</dt><dd>{k.does}</dd></div>)}</dl>
        <form method="dialog"><button class="main">Close</button></form>
      </dialog>
    </footer>
  );
}
