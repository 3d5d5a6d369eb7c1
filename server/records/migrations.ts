/** The shape of the database, one step a version; a step is never edited once released. */
import type { Db } from './folder.ts';
import { asStoreError, StoreError } from './storeError.ts';

const steps: readonly string[] = [
  `CREATE TABLE exams (
     id TEXT PRIMARY KEY, created TEXT NOT NULL, state TEXT NOT NULL CHECK (state IN ('draft', 'confirmed')),
     horse TEXT COLLATE NOCASE, owner TEXT, yard TEXT, started_at TEXT, confirmed_at TEXT,
     items INTEGER NOT NULL DEFAULT 0, doubts INTEGER NOT NULL DEFAULT 0, revision INTEGER NOT NULL DEFAULT 0,
     sound_erased INTEGER NOT NULL DEFAULT 0, erased_at TEXT
   ) STRICT;
   CREATE INDEX exams_horse ON exams (horse, started_at);
   CREATE TABLE draft_events (
     exam TEXT NOT NULL REFERENCES exams (id), seq INTEGER NOT NULL, event TEXT NOT NULL, PRIMARY KEY (exam, seq)
   ) STRICT, WITHOUT ROWID;
   CREATE TABLE revisions (
     exam TEXT NOT NULL REFERENCES exams (id), revision INTEGER NOT NULL, confirmed_by TEXT NOT NULL, confirmed_at TEXT NOT NULL,
     reason TEXT, lexicon TEXT NOT NULL, record TEXT NOT NULL, PRIMARY KEY (exam, revision)
   ) STRICT, WITHOUT ROWID;
   -- What is being erased now: only then may an event or a revision go.
   CREATE TABLE erasing (exam TEXT PRIMARY KEY) STRICT, WITHOUT ROWID;
   CREATE TRIGGER event_stays BEFORE DELETE ON draft_events WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE exam = OLD.exam)
     BEGIN SELECT RAISE(ABORT, 'an event is never removed'); END;
   CREATE TRIGGER event_as_written BEFORE UPDATE ON draft_events WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE exam = OLD.exam)
     BEGIN SELECT RAISE(ABORT, 'an event is never changed'); END;
   CREATE TRIGGER revision_stays BEFORE DELETE ON revisions WHEN NOT EXISTS (SELECT 1 FROM erasing WHERE exam = OLD.exam)
     BEGIN SELECT RAISE(ABORT, 'a record is amended, never removed'); END;
   CREATE TRIGGER revision_as_written BEFORE UPDATE ON revisions
     BEGIN SELECT RAISE(ABORT, 'a record is amended, never overwritten'); END;
   -- The latest confirmed revision of each exam, taken apart for searching.
   CREATE TABLE items (
     exam TEXT NOT NULL REFERENCES exams (id), id TEXT NOT NULL, position INTEGER NOT NULL, kind TEXT NOT NULL,
     condition TEXT, presence TEXT, utterance TEXT, from_s REAL, to_s REAL, sound TEXT, words TEXT NOT NULL, item TEXT NOT NULL, PRIMARY KEY (exam, id)
   ) STRICT, WITHOUT ROWID;
   CREATE INDEX items_condition ON items (condition, presence);
   CREATE INDEX items_kind ON items (kind);
   CREATE INDEX items_utterance ON items (exam, utterance);
   CREATE TABLE item_teeth (
     exam TEXT NOT NULL, item TEXT NOT NULL, tooth TEXT NOT NULL, PRIMARY KEY (tooth, exam, item),
     FOREIGN KEY (exam, item) REFERENCES items (exam, id) ON DELETE CASCADE
   ) STRICT, WITHOUT ROWID;
   CREATE INDEX item_teeth_item ON item_teeth (exam, item);
   CREATE TABLE utterances (
     exam TEXT NOT NULL REFERENCES exams (id), id TEXT NOT NULL, position INTEGER NOT NULL, text TEXT NOT NULL, from_s REAL, to_s REAL, sound TEXT, PRIMARY KEY (exam, id)
   ) STRICT, WITHOUT ROWID;
   CREATE VIRTUAL TABLE spoken USING fts5 (text, means, exam UNINDEXED, ref UNINDEXED, tokenize = 'unicode61 remove_diacritics 2');
   INSERT INTO spoken (spoken, rank) VALUES ('secure-delete', 1);`,
];
export const newestVersion = steps.length;

/** Brings the database up to date, each step whole or not at all. @throws StoreError `newer` when a later program wrote it */
export function migrate(db: Db): void {
  const version = db.pragma('user_version', { simple: true }) as number;
  if (version > newestVersion)
    throw new StoreError(
      'newer',
      'These records were written by a newer version of this program and were left untouched. Use that version, or name another folder.',
    );
  steps.slice(version).forEach((sql, i) =>
    asStoreError(() =>
      db
        .transaction(() => {
          db.exec(sql);
          db.pragma(`user_version = ${version + i + 1}`);
        })
        .immediate(),
    ),
  );
}
