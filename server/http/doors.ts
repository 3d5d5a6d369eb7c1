/** What the doors open on: functions handed in by app.ts. This room knows nothing of hearing, reading or keeping. */
import type { Readable } from 'node:stream';
import type { Draft, Header } from '../../parser/contract/draft.ts';
import type { Exam } from '../../parser/contract/record.ts';
import type {
  Act,
  Caution,
  Comparison,
  DueRow,
  ExamRow,
  FromServer,
  HorseRow,
  SearchHit,
  SearchQuery,
  UploadLine,
} from '../../parser/contract/wire.ts';
import type { FromPage } from '../../parser/contract/wire.ts';

/** A chunk of sound from the page, whole and with the right checksum. */
export interface Chunk {
  readonly epoch: number;
  readonly sequence: number;
  readonly ownVoiceMs: number;
  readonly samples: Int16Array;
}

/** One page's line to a sitting. */
export interface Line {
  /** All but sound. */
  readonly text: (message: FromPage) => Promise<void>;
  readonly sound: (chunk: Chunk) => Promise<void>;
  /** The page is gone; the exam stays as it is. */
  readonly gone: () => void;
}

export interface Doors {
  readonly exams: () => readonly ExamRow[];
  readonly open: (header: Partial<Header>) => { readonly id: string; readonly draft: Draft };
  readonly exam: (id: string) => { readonly draft: Draft; readonly cautions: readonly Caution[] };
  readonly act: (id: string, act: Act, by: string) => Promise<Draft>;
  readonly confirm: (id: string, by: string) => Promise<Draft>;
  readonly amend: (id: string, reason: string, by: string) => Promise<Draft>;
  readonly revision: (id: string, n: number) => Exam;
  /** A WAV of [from, to) seconds of the exam's sound. */
  readonly sound: (id: string, from: number, to: number) => Promise<Buffer>;
  readonly erase: (id: string, what: 'sound' | 'exam') => Promise<void>;
  readonly eraseHorse: (name: string) => Promise<void>;
  /** `other`'s phrases go to `id`. */
  readonly join: (id: string, other: string, by: string) => Promise<Draft>;
  /** `utterance` and all after it become a draft of their own. */
  readonly split: (id: string, utterance: string, by: string) => Promise<{ readonly draft: Draft; readonly other: Draft }>;
  /** Hears the exam's sound again. */
  readonly reread: (id: string) => Promise<Draft>;
  readonly horses: () => readonly HorseRow[];
  readonly compare: (horse: string) => Comparison;
  readonly due: () => readonly DueRow[];
  readonly search: (query: SearchQuery) => readonly SearchHit[];
  readonly upload: (sound: Readable) => AsyncIterable<UploadLine>;
  /** A whole HTML page. */
  readonly report: (id: string, to: 'owner' | 'vet') => string;
  readonly export: (id: string) => Exam;
  readonly line: (send: (message: FromServer) => void) => Line;
}
