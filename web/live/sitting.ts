/** One sitting: microphone, outbox, line to the server, our own sounds. The page's signals are its only outcome. */
import { computed, signal } from '@preact/signals';
import type { ApiError, FromServer, HearingState } from '../../parser/contract/wire.ts';
import { startEar, type Ear } from '../capture/ear.ts';
import type { MicrophoneState } from '../capture/health.ts';
import { openOutbox } from '../capture/outbox.ts';
import type { Level } from '../capture/pcm.ts';
import { named, refusal } from '../capture/refusal.ts';
import { startSender, type Sender } from '../capture/sender.ts';
import { openSocket } from '../capture/socket.ts';
import { go } from '../router.ts';
import { draft, receive } from '../state.ts';
import { takeTurn } from './alone.ts';
import type { Phase } from './headline.ts';
import { openMouthpiece, type Mouthpiece } from './mouthpiece.ts';
import { keepAwake } from './wake.ts';

export const phase = signal<Phase>('ready');
export const hearing = signal<HearingState>('stopped');
export const microphone = signal<MicrophoneState>('ok');
export const level = signal<Level>({ peak: -Infinity, mean: -Infinity });
export const device = signal('');
/** Chunks kept here that the server does not have yet, and whether it can be reached. */
export const kept = signal(0);
export const joined = signal(false);
export const answer = signal<Extract<FromServer, { type: 'answer' }> | null>(null);
export const trouble = signal<ApiError | null>(null);
export const running = computed(() => phase.value === 'live' || phase.value === 'finishing');

const remembered = 'quidnote.sitting';
/** The exam that this device was listening to when the page went away. */
export const interrupted = signal(localStorage.getItem(remembered));
const remember = (exam: string | null): void => {
  interrupted.value = exam;
  if (exam) localStorage.setItem(remembered, exam);
  else localStorage.removeItem(remembered);
};

export interface Start {
  readonly exam: string | null;
  readonly horse: string;
  readonly deviceId: string | undefined;
}

let sender: Sender | null = null;
/** The exam the sender was started for; null for a new one. */
let joins: string | null = null;
let ear: Ear | null = null;
let mouthpiece: Mouthpiece | null = null;
const letGo: (() => void)[] = [];

const address = (): string => `${location.protocol === 'https:' ? 'wss' : 'ws'}://${location.host}/live`;
const say = (what: ApiError): void => {
  trouble.value = what;
  mouthpiece?.tone('trouble');
};
const fullDisk: ApiError = {
  code: 'not-kept',
  message: 'The browser could not keep the sound. What the server has is safe. Make room on this device, or go on at another.',
};
const notUnderstood: ApiError = {
  code: 'not-understood',
  message: 'The program said something that this page does not understand. What you say is kept here. Load the page again.',
};

const onFrame = (frame: FromServer): void => {
  const before = draft.value;
  receive(frame);
  if (frame.type === 'draft') remember(frame.draft.state === 'draft' ? frame.draft.id : null);
  if (frame.type === 'hearing') hearing.value = frame.state;
  // A new phrase: what was answered or wrong before it is old news.
  if (frame.type === 'hearing' && frame.state === 'hearing') answer.value = trouble.value = null;
  if (frame.type === 'trouble') say(frame.error);
  if (frame.type === 'answer') {
    answer.value = frame;
    if (frame.command === 'finish') void finish();
  }
  mouthpiece?.heard(frame, before);
  if (frame.type === 'changed' && frame.parts.utterances?.length) markShown(frame.parts.utterances.at(-1)!.id);
};
/** Leaves a mark on the browser's own timeline once the words are on the screen: the bench measures from it. */
const markShown = (utterance: string): void => {
  requestAnimationFrame(() => setTimeout(() => performance.mark('quidnote-shown', { detail: utterance }), 0));
};

/** Joins the exam and sends what is kept here; without a microphone yet. */
const connect = async (exam: string | null, horse: string): Promise<Sender> => {
  joins = exam;
  const outbox = await openOutbox();
  const joinedSender = startSender(
    {
      outbox,
      exam,
      header: horse ? { horse: { name: horse } } : {},
      device: () => ear?.device() ?? '',
      open: (on) => openSocket(address(), on),
      now: () => performance.now(),
      wall: () => Date.now() / 1000,
    },
    {
      frame: onFrame,
      kept: (chunks, isJoined) => {
        const back = isJoined && !joined.value;
        kept.value = chunks;
        joined.value = isJoined;
        if (back && microphone.value !== 'ok') sender?.say({ type: 'microphone', state: microphone.value });
      },
      failed: (error) => say(error instanceof DOMException ? fullDisk : notUnderstood),
    },
  );
  const watch = setInterval(joinedSender.check, 1000);
  letGo.push(
    () => clearInterval(watch),
    () => joinedSender.close(),
    () => outbox.close(),
  );
  return joinedSender;
};

/** Sends what an earlier page left behind, and shows its exam, before any tap. */
export const sendLeftovers = async (): Promise<void> => {
  if (!interrupted.value || sender) return;
  const release = await takeTurn();
  if (!release) return;
  letGo.push(release);
  sender = await connect(interrupted.value, '');
};

/** The one tap: opens the microphone and goes on by itself from there. */
export const start = async ({ exam, horse, deviceId }: Start): Promise<void> => {
  // What an earlier exam left here is still sent, by the new sender.
  if (sender && exam !== joins) await stop();
  if (!exam) draft.value = null;
  phase.value = 'starting';
  trouble.value = answer.value = null;
  try {
    if (!navigator.mediaDevices) throw named('InsecureContext');
    const context = new AudioContext();
    letGo.push(() => void context.close());
    void context.resume();
    if (!sender) {
      const release = await takeTurn();
      if (!release) throw named('Elsewhere');
      letGo.push(release);
      sender = await connect(exam, horse);
    }
    const line = sender;
    const voice = (mouthpiece = openMouthpiece(context, (sentence) => void line.say({ type: 'said', sentence })));
    let first = true;
    ear = await startEar({
      context,
      deviceId,
      failed: () => undefined,
      begins: () => {
        line.begin();
        first = true;
      },
      sound: (sound) => {
        if (first) performance.mark('quidnote-sound');
        first = false;
        line.put(sound, voice.lately());
      },
      level: (now) => {
        level.value = now;
      },
      state: (state) => {
        microphone.value = state;
        device.value = ear?.device() ?? device.value;
        line.say({ type: 'microphone', state });
        if (state !== 'ok') voice.tone('trouble');
      },
    });
    device.value = ear.device();
    letGo.push(keepAwake(() => undefined));
    phase.value = 'live';
  } catch (error) {
    await stop();
    trouble.value = refusal(error);
  }
};

/** A command by touch. Refused while the line is down: it would act on what its giver has not seen. */
export const command = (name: string, horse?: string): void => {
  if (sender?.say({ type: 'command', command: name, ...(horse ? { name: horse } : {}) })) return;
  say({ code: 'away', message: 'The line is down, so that was not done. What you say is kept here and will be sent.' });
};

/** Lets the microphone go, waits until all sound is with the server, and goes on to looking over. */
export const finish = async (): Promise<void> => {
  if (phase.value !== 'live') return;
  phase.value = 'finishing';
  await ear?.close();
  ear = null;
  await sender?.delivered();
  sender?.say({ type: 'stop' });
  const exam = draft.value?.id;
  await readOut();
  remember(null);
  await stop();
  if (exam) go('check', exam);
};
/** Leaves the place without finishing: the microphone is let go, what it gave is seen to the server, and the exam can be carried on. */
export const leave = async (): Promise<void> => {
  if (phase.value !== 'live') return;
  phase.value = 'finishing';
  await ear?.close();
  await sender?.delivered();
  await stop();
};

/** Waits until the server has read all it was sent; it says so, or it takes too long and the next page will say it. */
const readOut = (): Promise<void> =>
  new Promise((resolve) => {
    const limit = setTimeout(() => done(), 20_000);
    const done = (): void => {
      clearTimeout(limit);
      forget();
      resolve();
    };
    const forget = hearing.subscribe((state) => {
      if (state === 'stopped') queueMicrotask(done);
    });
  });

const stop = async (): Promise<void> => {
  await ear?.close();
  letGo
    .splice(0)
    .reverse()
    .forEach((free) => free());
  sender = ear = mouthpiece = null;
  hearing.value = 'stopped';
  microphone.value = 'ok';
  joined.value = false;
  phase.value = 'ready';
};
