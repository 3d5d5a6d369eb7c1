/** An invented exam, written by hand, for looking at the page while no server runs. Not a test of hearing or grammar. */
import type { Draft } from '../../parser/contract/draft.ts';
import type { Doubt } from '../../parser/contract/doubt.ts';
import { Item, type Place } from '../../parser/contract/item.ts';

const when = '2026-03-04T09:12:00+00:00';
const id = 'exam-juniper';
type Loose = Record<string, unknown>;
interface Line {
  readonly say: string;
  readonly items?: readonly Loose[];
  readonly doubts?: readonly Loose[];
  readonly filler?: readonly string[];
}

const t = (...teeth: string[]): Place => ({ teeth });
const finding = (condition: string, place: Place | null, more: Loose = {}): Loose => ({
  kind: 'finding',
  condition,
  presence: 'present',
  when: 'now',
  place,
  ...more,
});
const g = (region: string, side?: string): Loose => ({ region, ...(side ? { side } : {}) });

const lines: readonly Line[] = [
  { say: 'nine year old gelding', items: [] },
  {
    say: 'jaw joints even muscles even',
    items: [
      finding('abnormality', g('temporomandibular-joint', 'both') as Place, { presence: 'absent' }),
      finding('asymmetry', g('masseter', 'both') as Place, { presence: 'absent' }),
    ],
  },
  {
    say: 'incisors level no overjet',
    items: [finding('level-bite', { rows: ['upper-incisors', 'lower-incisors'] }), finding('overjet', null, { presence: 'absent' })],
  },
  {
    say: 'one oh six hook front four millimetres',
    items: [finding('hook', t('106'), { qualifiers: ['rostral'], measures: [{ what: 'height', value: 4, unit: 'mm', about: false }] })],
  },
  {
    say: 'two oh six same about three',
    items: [
      finding('hook', t('206'), {
        qualifiers: ['rostral'],
        measures: [{ what: 'height', value: 3, unit: 'mm', about: true }],
        how: { condition: 'carried', qualifiers: 'carried' },
      }),
    ],
  },
  {
    say: 'sharp points on the outside of the uppers',
    items: [finding('sharp-enamel-points', { rows: ['upper-right', 'upper-left'] }, { surfaces: ['buccal'] })],
  },
  {
    say: 'one oh nine infundibular caries grade two',
    items: [finding('infundibular-caries', t('109'), { grade: { scale: 'infundibular-caries', value: '2' } })],
  },
  { say: 'two ten wobbly grade two', items: [finding('mobility', t('210'), { grade: { scale: 'mobility', value: '2' } })] },
  { say: 'query fracture two oh nine', items: [finding('fracture', t('209'), { presence: 'suspected' })] },
  { say: 'no wolf teeth up top', items: [finding('wolf-tooth', t('105', '205'), { presence: 'absent' })] },
  {
    say: 'three oh nine three ten valve diastema packed five mil pocket',
    items: [
      finding('diastema', { spaces: [['309', '310']] }, { qualifiers: ['valve'] }),
      finding('food-packing', { spaces: [['309', '310']] }),
      finding('periodontal-pocket', { spaces: [['309', '310']] }, { measures: [{ what: 'depth', value: 5, unit: 'mm', about: false }] }),
    ],
  },
  {
    say: 'four oh seven normal four oh eight normal',
    items: [finding('abnormality', t('407'), { presence: 'absent' }), finding('abnormality', t('408'), { presence: 'absent' })],
  },
  {
    say: 'three eleven tall',
    items: [finding('overlong', t('311'), { sure: 0.71 })],
    doubts: [
      {
        doubt: 'unsure',
        item: 0,
        why: 'It was heard less clearly than usual.',
        readings: [
          ['311 overlong', [finding('overlong', t('311'))]],
          ['211 overlong', [finding('overlong', t('211'))]],
        ],
      },
    ],
  },
  {
    say: 'three oh six step five mil',
    items: [finding('step', t('306'), { measures: [{ what: 'height', value: 5, unit: 'mm', about: false }] })],
    doubts: [
      {
        doubt: 'readers-differ',
        item: 0,
        why: 'Two readings of the same sound.',
        readings: [
          ['306', [finding('step', t('306'))]],
          ['406', [finding('step', t('406'))]],
        ],
      },
    ],
  },
  {
    say: 'mobility grade five four ten',
    items: [finding('mobility', t('410'))],
    doubts: [{ doubt: 'off-scale', item: 0, legal: ['0', '1', '2', '3'], why: 'Mobility has grades 0 to 3.' }],
  },
  {
    say: 'ulcers both cheeks level with the eights',
    items: [finding('ulcer', { ...g('cheek', 'both'), opposite: ['108', '208'] } as Place)],
  },
  { say: 'tongue fine', items: [finding('abnormality', g('tongue') as Place, { presence: 'absent' })] },
  { say: 'canine tartar bit on four oh four', items: [finding('calculus', t('404'), { severity: 'slight', severitySaid: 'a bit' })] },
  {
    say: 'cap off six oh seven',
    items: [{ kind: 'treatment', procedure: 'remove-cap', state: 'done', place: t('607') }],
    doubts: [
      {
        doubt: 'unlikely',
        item: 0,
        why: 'A cap at 607 is unusual in a nine year old.',
        rule: 'cap-by-age',
        source: 'Eruption tables: the third cheek tooth caps are shed by about four years',
      },
    ],
  },
  {
    say: 'points taken off all round',
    items: [{ kind: 'treatment', procedure: 'rasp', state: 'done', place: null, instrument: 'motorised', waterCooled: true }],
  },
  {
    say: 'hooks reduced three mil on the sixes up top',
    items: [
      {
        kind: 'treatment',
        procedure: 'reduce',
        state: 'done',
        place: { teeth: ['106', '206'], from: 'group' },
        amountMm: 3,
        instrument: 'motorised',
        how: { instrument: 'carried' },
      },
    ],
  },
  {
    say: 'detomidine point three mil in the vein by the vet',
    items: [
      {
        kind: 'sedation',
        given: true,
        agent: 'detomidine',
        dose: { value: 0.3, unit: 'ml' },
        route: 'iv',
        by: 'veterinarian',
        topUp: false,
      },
    ],
  },
  { say: 'stood quietly', items: [{ kind: 'fact', about: 'behaviour', said: 'stood quietly', value: null }] },
  { say: 'see him again in six months', items: [{ kind: 'follow-up', action: 'recheck', after: { value: 6, unit: 'month' } }] },
  { say: 'mind the gate will you' },
];

/** The exam after its first `count` phrases. */
export function sampleDraft(count = lines.length, state: 'draft' | 'confirmed' = 'draft'): Draft {
  const draft: Draft = {
    id,
    state,
    revision: state === 'confirmed' ? 1 : 0,
    header: {
      horse: { name: 'Juniper', age: { value: 9, unit: 'year' }, sex: 'gelding' },
      owner: 'R. Alder',
      yard: 'Low Meadow',
      examiner: 'S. Wren',
      startedAt: when,
    },
    utterances: [],
    items: [],
    commands: [],
    doubts: [],
    hints: [],
    gaps: [],
    unread: [],
    paused: false,
    carry: null,
    seq: count,
    revisions: state === 'confirmed' ? [{ revision: 1, by: 'S. Wren', when, lexicon: '1' }] : [],
  };
  let clock = 12;
  for (const [n, line] of lines.slice(0, count).entries()) {
    const uid = `${id}-${n}`;
    const words = line.say.split(' ');
    const from = clock;
    const at = (i: number): [number, number] => [from + i * 0.35, from + i * 0.35 + 0.3];
    clock += words.length * 0.35 + 2.5;
    const made = (line.items ?? []).map((loose, k) => {
      const { sure, ...item } = loose as Loose & { sure?: number };
      const share = Math.ceil(words.length / (line.items?.length ?? 1));
      const mine = words.map((_, i) => i).filter((i) => line.items!.length === 1 || Math.floor(i / share) === k);
      return Item.parse({
        ...item,
        id: `${uid}-${k}`,
        evidence: {
          utterance: uid,
          words: mine,
          at: [at(mine[0]!)[0], at(mine.at(-1)!)[1]],
          sure: sure ?? 0.94 + (n % 5) / 100,
          rules: ['place', 'condition'],
        },
      });
    });
    const item = made[0]?.id;
    draft.utterances.push({
      id: uid,
      text: line.say,
      at: [from, from + words.length * 0.35],
      words: words.map((w, i) => ({
        w,
        at: at(i),
        as: made.length ? `item:${made.find((m) => m.evidence.words.includes(i))?.id ?? item}` : n === 0 ? 'command' : 'leftover',
      })),
    });
    draft.items.push(...made.map((m) => ({ item: m, state: 'open' as const })));
    for (const [k, d] of (line.doubts ?? []).entries()) {
      const { readings, ...rest } = d as Loose & { readings?: [string, Loose[]][] };
      draft.doubts.push({
        doubt: {
          ...rest,
          id: `${uid}-d${k}`,
          words: line.say,
          utterance: uid,
          at: [from, clock - 2.5],
          state: 'open',
          item,
          readings: readings?.map(([label, items], r) => ({
            label,
            items: items.map((i) => Item.parse({ ...i, id: `${uid}-r${r}`, evidence: { utterance: uid, words: [], rules: [] } })),
          })),
        } as Doubt,
      });
    }
  }
  if (state === 'confirmed') {
    draft.items = draft.items.map((i) => ({ ...i, state: 'kept', by: 'S. Wren', when }));
    draft.doubts = draft.doubts.map((d) => ({ ...d, settled: { how: 'kept-as-said', by: 'S. Wren', when } }));
  }
  return draft;
}
export const sampleLength = lines.length;
