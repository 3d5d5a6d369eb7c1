/**
 * What travels between page and server.
 *
 * Socket `/live`: text frames are JSON (`FromPage`, `FromServer`); binary frames from the page are sound:
 * a 24-byte little-endian header, then 16-bit little-endian mono PCM at 16 kHz.
 *   0  u32 magic 0x51444e31 ("1NDQ")   4  u32 epoch (a new one each time capture starts, and for each horse:
 *                                          the second of the page's clock, or one more than the last)
 *   8  u32 sequence (0, 1, 2 ... in the epoch)   12 u32 bytes of sound   16 u32 CRC-32 of the sound
 *  20  u32 milliseconds of our own voice or tone heard in this chunk (0: none)
 * The server answers `ack` once the chunk is synced to disk.
 */
import { z } from 'zod';
import { Draft, Header } from './draft.ts';
import { Item } from './item.ts';

export const ApiError = z.object({ code: z.string(), message: z.string() });
export type ApiError = z.infer<typeof ApiError>;

export const FromPage = z.discriminatedUnion('type', [
  /** Open or join a live exam; without `exam` a new one is opened. */
  z.object({ type: z.literal('listen'), exam: z.string().optional(), header: Header.partial().optional() }),
  z.object({ type: z.literal('epoch'), epoch: z.number().int(), device: z.string() }),
  /** The microphone's own trouble, so that the exam knows. */
  z.object({ type: z.literal('microphone'), state: z.enum(['ok', 'silent', 'muted', 'lost']) }),
  /** Read what is buffered now and stop hearing. */
  z.object({ type: z.literal('stop') }),
  /** A command given by touch. */
  z.object({ type: z.literal('command'), command: z.string(), name: z.string().optional() }),
  /** Our own voice begins to say this: what is heard of it is ours, not the person's. */
  z.object({ type: z.literal('said'), sentence: z.string().max(1000) }),
]);
export type FromPage = z.infer<typeof FromPage>;

/** `getting-ready`: sound is kept, and read as soon as the recogniser is loaded. */
export const HearingState = z.enum(['listening', 'hearing', 'reading', 'paused', 'stopped', 'getting-ready']);
export type HearingState = z.infer<typeof HearingState>;

export const FromServer = z.discriminatedUnion('type', [
  z.object({ type: z.literal('ack'), epoch: z.number().int(), sequence: z.number().int() }),
  z.object({ type: z.literal('hearing'), state: HearingState, level: z.number().optional(), tookMs: z.number().optional() }),
  /** The whole draft, at joining and after a change of horse. */
  z.object({ type: z.literal('draft'), draft: Draft }),
  /** Parts that changed: upsert by id; `seq` is the draft's new sequence. */
  z.object({
    type: z.literal('changed'),
    exam: z.string(),
    seq: z.number().int(),
    parts: Draft.pick({
      header: true,
      utterances: true,
      items: true,
      doubts: true,
      commands: true,
      hints: true,
      gaps: true,
      unread: true,
      paused: true,
      state: true,
      revision: true,
      revisions: true,
    }).partial(),
  }),
  /** Something to say aloud or show as the answer to a command. */
  z.object({ type: z.literal('answer'), command: z.string(), say: z.string(), tone: z.enum(['understood', 'unsure', 'done', 'trouble']) }),
  z.object({ type: z.literal('trouble'), error: ApiError }),
]);
export type FromServer = z.infer<typeof FromServer>;

/** POST /api/exams/:id/acts: what a person does to a draft at the check screen. */
export const Act = z.discriminatedUnion('act', [
  z.object({ act: z.literal('add'), item: z.unknown() }),
  z.object({ act: z.literal('edit'), id: z.string(), item: z.unknown() }),
  z.object({ act: z.literal('strike'), ids: z.array(z.string()).min(1) }),
  z.object({ act: z.literal('restore'), ids: z.array(z.string()).min(1) }),
  z.object({ act: z.literal('keep'), ids: z.array(z.string()).min(1) }),
  z.object({ act: z.literal('keep-sure') }),
  z.object({
    act: z.literal('settle'),
    doubt: z.string(),
    how: z.enum(['reading', 'kept-as-said', 'struck']),
    reading: z.number().int().optional(),
  }),
  z.object({ act: z.literal('header'), header: Header.partial() }),
]);
export type Act = z.infer<typeof Act>;

/** Rows of GET /api/exams. */
export const ExamRow = z.object({
  id: z.string(),
  state: z.enum(['draft', 'confirmed']),
  horse: z.string().nullable(),
  owner: z.string().nullable(),
  yard: z.string().nullable(),
  startedAt: z.string().nullable(),
  confirmedAt: z.string().nullable(),
  items: z.number().int(),
  doubts: z.number().int(),
  revision: z.number().int(),
  erased: z.boolean(),
});
export type ExamRow = z.infer<typeof ExamRow>;

/** GET /api/search: words (full text), condition, tooth, horse, presence, from, to, kind. */
export const SearchQuery = z.object({
  words: z.string().max(200).optional(),
  condition: z.string().optional(),
  tooth: z.string().optional(),
  horse: z.string().max(100).optional(),
  presence: z.enum(['present', 'absent', 'suspected']).optional(),
  kind: z.string().optional(),
  from: z.string().optional(),
  to: z.string().optional(),
  limit: z.coerce.number().int().min(1).max(500).default(100),
});
export type SearchQuery = z.infer<typeof SearchQuery>;
export const SearchHit = z.object({
  exam: z.string(),
  horse: z.string().nullable(),
  startedAt: z.string().nullable(),
  utterance: z.string().nullable(),
  text: z.string(),
  item: Item.nullable(),
  at: z.tuple([z.number(), z.number()]).nullable(),
  audio: z.boolean(),
  /** The exam whose journal holds the sound, when it is another one (the words were moved by a join or a split). */
  sound: z.string().optional(),
});
export type SearchHit = z.infer<typeof SearchHit>;

/** Beside an exam whose work can hurt: what to mind, who decides, and where that comes from. Never advice, never blocking. */
export const Caution = z.object({
  id: z.string(),
  say: z.string(),
  source: z.string(),
  who: z.string().optional(),
  items: z.array(z.string()).optional(),
});
export type Caution = z.infer<typeof Caution>;

/** Rows of GET /api/horses. */
export const HorseRow = z.object({
  name: z.string(),
  owner: z.string().nullable(),
  yard: z.string().nullable(),
  visits: z.number().int(),
  lastAt: z.string().nullable(),
});
export type HorseRow = z.infer<typeof HorseRow>;
/** GET /api/horses/:name/compare: the confirmed visits, oldest first, each with the items that stand. */
export const Comparison = z.object({
  horse: z.string(),
  visits: z.array(z.object({ exam: z.string(), startedAt: z.string().nullable(), items: z.array(Item) })),
});
export type Comparison = z.infer<typeof Comparison>;
/** Rows of GET /api/due: a follow-up that was spoken; `due` (ISO date) only where a time was spoken as a number. */
export const DueRow = z.object({
  horse: z.string().nullable(),
  owner: z.string().nullable(),
  yard: z.string().nullable(),
  exam: z.string(),
  startedAt: z.string().nullable(),
  item: Item,
  due: z.string().nullable(),
});
export type DueRow = z.infer<typeof DueRow>;
/** One line of POST /api/upload (NDJSON). `done` and `of` in seconds of sound; `exams` once it is ready (more than one where a horse was changed); `notices`: what was found amiss since the line before and did not stop the reading. */
export const UploadLine = z.object({
  stage: z.enum(['receiving', 'opening', 'hearing', 'ready', 'trouble']),
  done: z.number().optional(),
  of: z.number().optional(),
  exams: z.array(z.string()).optional(),
  error: ApiError.optional(),
  notices: z.array(ApiError).optional(),
});
export type UploadLine = z.infer<typeof UploadLine>;

/** GET /api/network: devices that were let in over the local network, and how the next one is. `open` is null while the program does not answer there. */
export const NetworkState = z.object({
  /** Asked at the machine itself: only there is a code shown and a device taken off the list. */
  here: z.boolean(),
  devices: z.array(z.object({ id: z.string(), name: z.string(), pairedAt: z.string() })),
  /** `square`: the address with the code as rows of dark (1) and light (0) squares (ISO/IEC 18004); `print`: the certificate's SHA-256. */
  open: z.object({ address: z.string(), code: z.string(), until: z.string(), print: z.string(), square: z.array(z.string()) }).nullable(),
});
export type NetworkState = z.infer<typeof NetworkState>;
