/** Erasing: the words go from every table, the index, the log and the free pages; a row without words stays. */
import { DraftEvent } from '../../parser/contract/draft.ts';
import type { Db } from './folder.ts';
import { unindex } from './confirm.ts';
import { events, mustStand } from './events.ts';
import { fromJson } from './json.ts';

/** That its sound is gone; taking the sound itself off the disk is the caller's. */
export function eraseSound(db: Db, exam: string): void {
  mustStand(db, exam);
  db.prepare('UPDATE exams SET sound_erased = 1 WHERE id = ?').run(exam);
}

/** Stretches of sound that belong to this exam's words but lie in other exams' journals; `at` in seconds of that journal. */
export interface Stretch {
  readonly journal: string;
  readonly at: readonly [number, number];
}
export function soundElsewhere(db: Db, exam: string): readonly Stretch[] {
  const said = events(db, exam).flatMap((event) =>
    event.event === 'said'
      ? [event.result.utterance]
      : event.event === 'moved-in'
        ? event.part.utterances.map((u) => ({ ...u, sound: u.sound ?? event.from }))
        : [],
  );
  const gone = new Set(events(db, exam).flatMap((event) => (event.event === 'moved-out' ? event.utterances : [])));
  const there = db.prepare('SELECT 1 FROM exams WHERE id = ? AND sound_erased = 0');
  return said.flatMap(({ id, sound, at }) =>
    sound && sound !== exam && at && !gone.has(id) && there.get(sound) ? [{ journal: sound, at }] : [],
  );
}

export function eraseExam(db: Db, exam: string, when: string): void {
  mustStand(db, exam);
  allowed(db, exam, () => {
    unindex(db, exam);
    db.prepare('DELETE FROM draft_events WHERE exam = ?').run(exam);
    db.prepare('DELETE FROM revisions WHERE exam = ?').run(exam);
  });
  forgetMoved(db, exam);
  db.prepare(
    'UPDATE exams SET horse = NULL, owner = NULL, yard = NULL, items = 0, doubts = 0, sound_erased = 1, erased_at = ? WHERE id = ?',
  ).run(when, exam);
}

/** Empties the write-ahead log, where erased words would otherwise lie until it is next reused. Outside of any transaction. */
export const emptyLog = (db: Db): void => {
  db.pragma('wal_checkpoint(TRUNCATE)');
};

function allowed(db: Db, exam: string, work: () => void): void {
  db.prepare('INSERT INTO erasing (exam) VALUES (?)').run(exam);
  work();
  db.prepare('DELETE FROM erasing WHERE exam = ?').run(exam);
}

/** What was moved into the erased exam still stands in the log it came from: there it becomes an erased gap. */
function forgetMoved(db: Db, exam: string): void {
  const logs = db
    .prepare(
      `SELECT DISTINCT exam FROM draft_events WHERE json_extract(event, '$.event') = 'moved-out' AND json_extract(event, '$.to') = ?`,
    )
    .all(exam) as { exam: string }[];
  for (const { exam: log } of logs) {
    const rows = (
      db.prepare('SELECT seq, event FROM draft_events WHERE exam = ? ORDER BY seq').all(log) as { seq: number; event: string }[]
    ).map(({ seq, event }) => ({ seq, event: fromJson(DraftEvent, event, `Line ${seq}`) }));
    const moved = new Set(rows.flatMap(({ event }) => (event.event === 'moved-out' && event.to === exam ? event.utterances : [])));
    const write = db.prepare('UPDATE draft_events SET event = ? WHERE exam = ? AND seq = ?');
    allowed(db, log, () =>
      rows.forEach(({ seq, event }) => {
        const less = withoutWords(event, moved);
        if (less) write.run(JSON.stringify(less), log, seq);
      }),
    );
  }
}
function withoutWords(event: DraftEvent, moved: ReadonlySet<string>): DraftEvent | null {
  const gap = (at: readonly [number, number] | undefined): DraftEvent => ({
    event: 'gap',
    at: [at?.[0] ?? 0, at?.[1] ?? 0],
    why: 'erased',
    when: event.when,
  });
  switch (event.event) {
    case 'heard':
      return moved.has(event.phrase.id) ? gap(event.phrase.at) : null;
    case 'said':
      return moved.has(event.result.utterance.id) ? gap(event.result.utterance.at) : null;
    case 'typed':
      return moved.has(event.item.evidence.utterance) ? gap(event.item.evidence.at) : null;
    case 'asked':
      return moved.has(event.doubt.utterance) ? gap(event.doubt.at) : null;
    case 'commanded':
      return moved.has(event.command.utterance) ? gap(undefined) : null;
    case 'moved-in':
      return event.part.utterances.some((u) => moved.has(u.id)) ? { ...event, part: lessMoved(event.part, moved) } : null;
    default:
      return null;
  }
}
const lessMoved = (part: Extract<DraftEvent, { event: 'moved-in' }>['part'], moved: ReadonlySet<string>): typeof part => ({
  utterances: part.utterances.filter((u) => !moved.has(u.id)),
  items: part.items.filter((i) => !moved.has(i.item.evidence.utterance)),
  doubts: part.doubts.filter((d) => !moved.has(d.doubt.utterance)),
  commands: part.commands.filter((c) => !moved.has(c.utterance)),
  hints: part.hints.filter((h) => ![...moved].some((u) => h.id.startsWith(u))),
});
