/**
 * Takes sound out of the outbox, in order, and sees it to the server: joins the exam a chunk belongs to, names its epoch,
 * sends, and lets go of what is acknowledged. After a drop or a reload it starts again from the first chunk kept.
 */
import type { Header } from '../../parser/contract/draft.ts';
import type { FromPage, FromServer } from '../../parser/contract/wire.ts';
import { frame } from './frame.ts';
import type { Kept, Outbox, Spot } from './outbox.ts';
import type { Socket, SocketEvents } from './socket.ts';

export interface SenderEvents {
  /** A frame about the exam in progress; acknowledgements and what concerns older exams stay here. */
  readonly frame: (frame: FromServer) => void;
  /** How many chunks are still kept here, and whether the exam in progress is joined. */
  readonly kept: (chunks: number, joined: boolean) => void;
  /** The browser would not keep or give back sound. */
  readonly failed: (error: unknown) => void;
}
export interface SenderOptions {
  readonly outbox: Outbox;
  /** The exam to join; null opens a new one. */
  readonly exam: string | null;
  readonly header?: Partial<Header>;
  readonly device: () => string;
  readonly open: (on: SocketEvents) => Socket;
  /** Milliseconds of a clock that only goes forward, and seconds of the wall's. */
  readonly now: () => number;
  readonly wall: () => number;
}
export interface Sender {
  /** A new stretch of capture begins: what follows does not join on to what was. */
  readonly begin: () => void;
  /** Keeps a piece of sound, numbered, and sends it when its turn comes. */
  readonly put: (sound: Uint8Array, ownVoiceMs: number) => void;
  /** False, and nothing sent, while the exam in progress is not joined: a command must not act on what its giver has not seen. */
  readonly say: (message: FromPage) => boolean;
  /** Resolves once all that was put is on the server's disk. */
  readonly delivered: () => Promise<void>;
  /** To be called every second or so: drops a line that has gone quiet. */
  readonly check: () => void;
  readonly close: () => void;
}

const batch = 16;
/** Bytes in the browser's own queue beyond which more would only delay noticing a drop. */
const enoughQueued = 1 << 18;
/** The server acknowledges sound within a second, later on a machine that is short of breath; no word for this long is a dead line. */
const deadAfterMs = 10_000;

/** Starts sending, and goes on until closed. */
export const startSender = ({ outbox, exam, header, device, open, now, wall }: SenderOptions, on: SenderEvents): Sender => {
  /** The exam in progress; null until the server has named it. */
  let live = exam;
  /** What this connection has asked to join and not been answered ('' a new exam), and what it has joined. */
  let asking: string | null = null;
  let joined: string | null = null;
  let announced: number | null = null;
  /** Numbers of the next chunk. */
  let epoch = 0;
  let sequence = 0;
  let sent: Spot | null = null;
  let unanswered: Spot | null = null;
  let heardAt = now();
  let left = 0;
  const refused = new Set<string>();
  const waiters: (() => void)[] = [];

  const tell = (message: FromPage): void => socket.send(JSON.stringify(message));
  const join = (id: string | null): void => {
    joined = announced = null;
    asking = id ?? '';
    heardAt = now();
    tell(id ? { type: 'listen', exam: id } : { type: 'listen', header });
  };
  const stretch = async (): Promise<void> => {
    epoch = await outbox.nextEpoch(wall());
    sequence = 0;
  };
  const send = (chunk: Kept): void => {
    if (announced !== chunk.epoch) tell({ type: 'epoch', epoch: (announced = chunk.epoch), device: device() });
    if (!unanswered) heardAt = now();
    socket.send(frame(chunk));
    unanswered = sent = [chunk.epoch, chunk.sequence];
  };
  const report = async (): Promise<void> => {
    const waiting = await outbox.waiting();
    on.kept(waiting, joined !== null && joined === live);
    if (waiting === left) waiters.splice(0).forEach((done) => done());
  };

  /** Sends what may be sent now. */
  const sendAll = async (): Promise<void> => {
    const here = joined;
    if (here === null || socket.queued() > enoughQueued) return;
    const chunks = await outbox.after(sent, batch);
    for (const chunk of chunks) {
      if (joined !== here || !socket.isOpen()) return;
      if (refused.has(chunk.exam)) {
        left++;
        sent = [chunk.epoch, chunk.sequence];
      } else if (chunk.exam === here) send(chunk);
      else return unanswered ? undefined : join(chunk.exam || live);
    }
    if (chunks.length === batch) return sendAll();
  };
  /** Back to the exam in progress, when an older one's sound is all there. */
  const home = async (): Promise<void> => {
    if (joined !== null && joined !== live && !unanswered && (await outbox.after(sent, 1)).length === 0) join(live);
  };

  /** One thing after another: frames, chunks and looks into the outbox never overtake each other. */
  let line: Promise<void> = Promise.resolve();
  const inTurn = (task: () => Promise<void>): void => {
    line = line.then(task).catch(on.failed);
  };
  const pump = async (): Promise<void> => {
    await sendAll();
    await home();
    await report();
  };

  /** What the server does not have yet was said to the new horse: it opens a stretch there, numbered from nought. */
  const nextHorse = async (before: string, id: string): Promise<void> => {
    await stretch();
    sequence = await outbox.move(before, id, epoch);
    sent = unanswered = announced = null;
  };
  /** A draft came: the answer to a join, or another horse. False when it is not the exam in progress. */
  const drafted = async (id: string): Promise<boolean> => {
    const [answerTo, before] = [asking, joined];
    asking = null;
    joined = id;
    if (answerTo === null ? before !== live : answerTo !== (live ?? '')) return false;
    if (answerTo !== null) await outbox.rename('', id);
    else if (before !== null && before !== id) await nextHorse(before, id);
    live = id;
    return true;
  };
  const take = async (message: FromServer): Promise<void> => {
    if (message.type === 'ack') {
      heardAt = now();
      if (unanswered && message.epoch === unanswered[0] && message.sequence >= unanswered[1]) unanswered = null;
      await outbox.acknowledged([message.epoch, message.sequence]);
      return pump();
    }
    if (message.type === 'draft') {
      if (await drafted(message.draft.id)) on.frame(message);
      return pump();
    }
    if (message.type === 'trouble' && asking !== null && asking !== '' && asking !== live) {
      refused.add(asking);
      on.frame(message);
      return join(live);
    }
    if (message.type === 'trouble' || (joined === live && (message.type !== 'changed' || message.exam === live))) on.frame(message);
  };

  const socket = open({
    open: () => inTurn(async () => join((await outbox.after(null, 1))[0]?.exam || live)),
    text: (text) => inTurn(() => take(JSON.parse(text) as FromServer)),
    down: () => {
      joined = asking = announced = sent = unanswered = null;
      left = 0;
      inTurn(report);
    },
  });
  return {
    begin: () => inTurn(stretch),
    put: (sound, ownVoiceMs) =>
      inTurn(async () => {
        await outbox.put({ exam: live ?? '', epoch, sequence: sequence++, sound, ownVoiceMs });
        await pump();
      }),
    say: (message) => {
      const may = joined !== null && joined === live && socket.isOpen();
      if (may) tell(message);
      return may;
    },
    delivered: () =>
      new Promise((resolve) => {
        waiters.push(resolve);
        inTurn(report);
      }),
    check: () => {
      if (socket.isOpen() && (unanswered || asking !== null) && now() - heardAt > deadAfterMs) socket.renew();
    },
    close: () => socket.close(),
  };
};
