/** One page's line to the exam it listens to. */
import { z } from 'zod';
import type { FromPage, FromServer } from '../../parser/contract/wire.ts';
import { commandIds } from '../../parser/lexicon/commands.ts';
import type { Chunk, Line } from '../http/doors.ts';
import { refuse } from '../http/refusal.ts';
import { RATE } from '../speech/engine.ts';
import type { Journals } from './journals.ts';
import { now } from './now.ts';
import type { Seat, Sittings } from './sittings.ts';

const CommandId = z.enum(commandIds);

/** @param open makes a new exam and tells its id */
export function openLine(
  sittings: Sittings,
  journals: Journals,
  open: (message: Extract<FromPage, { type: 'listen' }>) => string,
  send: (message: FromServer) => void,
): Line {
  let seat: Seat | null = null;
  /** The exam that the page's chunks are for: the one on when it named their epoch. */
  let exam = '';
  let first = true;

  const leave = (): void => {
    seat?.watchers.delete(send);
  };
  const sat = (): Seat => {
    if (!seat) throw refuse(409, 'not-listening', 'No exam is being listened to on this line. Begin one first.');
    return seat;
  };
  const listen = async (message: Extract<FromPage, { type: 'listen' }>): Promise<void> => {
    const next = await sittings.of(message.exam ?? open(message));
    leave();
    seat = next;
    exam = next.sitting.live.draft().id;
    next.watchers.add(send);
    send({ type: 'draft', draft: next.sitting.live.draft() });
    send({ type: 'hearing', state: next.sitting.state() });
  };

  return {
    text: async (message) => {
      switch (message.type) {
        case 'listen':
          return listen(message);
        case 'epoch':
          exam = sat().sitting.live.draft().id;
          first = true;
          return;
        case 'microphone': {
          if (message.state !== 'lost') return;
          const { live } = sat().sitting;
          const at = (await journals.open(live.draft().id)).length() / RATE;
          await live.change(() => [{ event: 'gap', at: [at, at], why: 'microphone', when: now() }]);
          return;
        }
        case 'stop':
          await sat().sitting.settle();
          send({ type: 'hearing', state: 'stopped' });
          return;
        case 'command': {
          const command = CommandId.safeParse(message.command);
          if (!command.success) throw refuse(400, 'not-understood', 'There is no such command. Nothing was done.');
          const { live } = sat().sitting;
          return live.command(command.data, live.draft().header.examiner ?? 'by touch', message.name);
        }
        case 'said':
          sat().sitting.said(message.sentence);
      }
    },
    sound: async (chunk: Chunk) => {
      const { sitting } = sat();
      // Sent before its page knew of the change of horse: the page sends it again, to the new one.
      if (sitting.live.draft().id !== exam) return;
      const isFirst = first;
      first = false;
      if (await sitting.sound(chunk, isFirst)) send({ type: 'ack', epoch: chunk.epoch, sequence: chunk.sequence });
    },
    gone: leave,
  };
}
