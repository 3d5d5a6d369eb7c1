/** What the pictures show: invented phrases and what they become, as the server would send them. */
import type { Doubt } from '../../parser/contract/doubt.ts';
import { Draft, type DraftItem, type Utterance } from '../../parser/contract/draft.ts';
import type { Item, Place } from '../../parser/contract/item.ts';
import type { FromServer, HearingState } from '../../parser/contract/wire.ts';

let at = 0;
const exam = 'x1';
const phrase = (text: string, account: (w: string, i: number) => string): Utterance => {
  at += 4;
  return {
    id: `${exam}-${at * 16000}`,
    text,
    at: [at, at + 2],
    silenceBefore: 1,
    words: text.split(' ').map((w, i) => ({ w, as: account(w, i) })),
  };
};
type Loose = { readonly kind: string } & Readonly<Record<string, unknown>>;
interface Spoken {
  readonly utterance: Utterance;
  readonly items: readonly DraftItem[];
}
const say = (text: string, ...made: readonly Loose[]): Spoken => {
  const utterance = phrase(text, (w) => (['uh', 'whoa', 'steady', 'right', 'then'].includes(w) ? 'filler' : `item:${exam}`));
  const items = made.map((item, i): DraftItem => ({
    state: 'open',
    item: {
      id: `${utterance.id}-${i}`,
      how: {},
      evidence: { utterance: utterance.id, words: [0], rules: ['shown'], sure: 0.95 },
      ...item,
    } as unknown as Item,
  }));
  return { utterance, items };
};
const finding = (condition: string, place: Place | null, more: object = {}): Loose => ({
  kind: 'finding',
  condition,
  presence: 'present',
  when: 'now',
  place,
  ...more,
});
const tooth = (...teeth: string[]): Place => ({ teeth });
const absent = { presence: 'absent' };

const start: readonly Spoken[] = [
  say(
    'jaw joints even muscles even',
    finding('abnormality', { region: 'temporomandibular-joint', side: 'both' }, absent),
    finding('abnormality', { region: 'masseter', side: 'both' }, absent),
  ),
  say(
    'nodes normal no discharge',
    finding('abnormality', { region: 'lymph-nodes' }, absent),
    finding('discharge', { region: 'nostril', side: 'both' }, absent),
  ),
  say('incisors level', finding('level-bite', { rows: ['upper-incisors'] }), finding('abnormality', { rows: ['lower-incisors'] }, absent)),
  say(
    'lips and bars clear',
    finding('abnormality', { region: 'lips' }, absent),
    finding('abnormality', { region: 'bars', side: 'both' }, absent),
  ),
];
const middle: readonly Spoken[] = [
  ...start,
  say(
    'points on the outside of the uppers',
    finding(
      'sharp-enamel-points',
      { teeth: [106, 107, 108, 109, 110, 111, 206, 207, 208, 209, 210, 211].map(String), from: 'group' },
      { surfaces: ['buccal'] },
    ),
  ),
  say('ulcer left cheek level with the eights', finding('ulcer', { region: 'cheek', side: 'left', opposite: ['208'] })),
  say(
    'three oh nine three ten valve diastema packed five mil pocket',
    finding('diastema', { spaces: [['309', '310']] }, { qualifiers: ['valve'] }),
    finding('food-packing', { spaces: [['309', '310']] }),
    finding('periodontal-pocket', { spaces: [['309', '310']] }, { measures: [{ what: 'depth', value: 5, unit: 'mm', about: false }] }),
  ),
  say(
    'whoa steady one oh six hook front four millimetres',
    finding('hook', tooth('106'), { qualifiers: ['rostral'], measures: [{ what: 'height', value: 4, unit: 'mm', about: false }] }),
  ),
];
const twoReadings = (utterance: string): Doubt => ({
  id: `${utterance}-d`,
  doubt: 'two-readings',
  words: 'oh nine caries grade two',
  utterance,
  state: 'open',
  place: { teeth: ['309'] },
  readings: ['309', '209'].map((label) => ({ label, items: [] })),
});

const draftOf = (spoken: readonly Spoken[], more: Partial<Draft> = {}): Draft =>
  Draft.parse({
    id: exam,
    header: {
      horse: { name: 'Juniper' },
      owner: null,
      yard: null,
      examiner: null,
      startedAt: new Date(Date.now() - 754_000).toISOString(),
    },
    state: 'draft',
    revision: 0,
    utterances: spoken.map((s) => s.utterance),
    items: spoken.flatMap((s) => s.items),
    commands: [],
    doubts: [],
    hints: [],
    gaps: [],
    revisions: [],
    unread: [],
    paused: false,
    carry: null,
    seq: 9,
    ...more,
  });
const frames = (draft: Draft, state: HearingState): readonly FromServer[] => [
  { type: 'draft', draft },
  { type: 'hearing', state },
];

const manyReadings = (utterance: string): Doubt => ({
  ...twoReadings(utterance),
  words: 'oh six hook',
  readings: ['106', '206', '306', '406'].map((label) => ({ label, items: [] })),
});
const unsure = say('last rasped about a year ago');
const unsureOf = (utterance: string): Doubt => ({
  id: `${utterance}-d`,
  doubt: 'unsure',
  words: 'last rasped about a year ago',
  utterance,
  state: 'open',
  readings: ['Last rasped about a year ago', 'Last rask about a year ago'].map((label) => ({ label, items: [] })),
});
const doubted = say('oh nine caries grade two');
const doubtedUtterance: Utterance = { ...doubted.utterance, words: doubted.utterance.words.map((w) => ({ ...w, as: 'doubt:d' })) };
const open = say('oh six hook');
const openUtterance: Utterance = { ...open.utterance, words: open.utterance.words.map((w) => ({ ...w, as: 'doubt:d' })) };
const struck = say('scratch that');
const lost: DraftItem = { ...middle.at(-1)!.items[0]!, state: 'struck' };

/** Name to what the server sends; `microphone: false` takes the sound away. */
export const scenes: Readonly<
  Record<string, { readonly frames: readonly FromServer[]; readonly microphone?: boolean; readonly sunlight?: boolean }>
> = {
  listening: { frames: frames(draftOf([]), 'listening') },
  hearing: { frames: frames(draftOf(start), 'hearing') },
  'mid-exam': { frames: frames(draftOf(middle), 'listening') },
  sunlight: { frames: frames(draftOf(middle), 'reading'), sunlight: true },
  doubt: {
    frames: frames(
      draftOf([...middle, { utterance: doubtedUtterance, items: [] }], { doubts: [{ doubt: twoReadings(doubtedUtterance.id) }] }),
      'listening',
    ),
  },
  'doubt-of-four': {
    frames: frames(
      draftOf([...middle, { utterance: openUtterance, items: [] }], { doubts: [{ doubt: manyReadings(openUtterance.id) }] }),
      'listening',
    ),
  },
  'older-doubt': { frames: frames(draftOf([unsure, ...middle], { doubts: [{ doubt: unsureOf(unsure.utterance.id) }] }), 'reading') },
  struck: {
    frames: frames(
      draftOf([...middle.slice(0, -1), { utterance: middle.at(-1)!.utterance, items: [lost] }, struck], {
        commands: [{ id: 'c1', command: 'strike-last', utterance: struck.utterance.id, words: 'scratch that', targets: [lost.item.id] }],
      }),
      'listening',
    ),
  },
  paused: { frames: frames(draftOf(middle, { paused: true }), 'paused') },
  'microphone-lost': { frames: frames(draftOf(middle), 'listening'), microphone: false },
};
