/** What to mind where the work can hurt, who decides, and where that comes from. Shown beside the record; never advice. */
import type { Item } from '../../parser/contract/item.ts';
import type { Caution } from '../../parser/contract/wire.ts';

const worked = (item: Item, ...states: readonly string[]): boolean => item.kind === 'treatment' && states.includes(item.state);
const grinding: ReadonlySet<string> = new Set(['rasp', 'reduce', 'bit-seat', 'round', 'buff', 'reduce-incisors', 'widen-space']);
const openPulp: ReadonlySet<string> = new Set(['CCF', 'CCRF']);

interface Rule {
  readonly caution: Omit<Caution, 'items'>;
  readonly applies: (item: Item) => boolean;
}
const rules: readonly Rule[] = [
  {
    applies: (item) => item.kind === 'sedation' && item.given,
    caution: {
      id: 'sedation',
      say: 'Sedation is written here as it was said; nothing was worked out or checked by this program.',
      who: 'In the United Kingdom only a veterinary surgeon prescribes and uses sedation; in the United States the AAEP counts sedatives among the acts of a licensed veterinarian. Elsewhere local law decides.',
      source: 'AAEP, position on equine dentistry, revised 2025; UK dental legislation as set out by an equine practice',
    },
  },
  {
    applies: (item) =>
      item.kind === 'treatment' &&
      grinding.has(item.procedure) &&
      item.instrument === 'motorised' &&
      worked(item, 'done', 'part-done', 'attempted'),
    caution: {
      id: 'motorised',
      say: 'Grinding warms a tooth, and the dentine over a pulp can be as thin as 2 mm. In one study of lower teeth, two minutes dry gave +24.3 °C at 15 mm, two minutes with water −0.1 °C.',
      who: 'Who may use motorised instruments, and on what, differs from country to country and state to state: local law and licensed practice decide.',
      source:
        'White & Dixon 2010, Equine Veterinary Journal; in-vitro study of power reduction, 30 mandibular teeth; BMC Veterinary Research 2014, 10:47',
    },
  },
  {
    applies: (item) => item.kind === 'treatment' && item.procedure === 'extract' && !worked(item, 'declined', 'not-done'),
    caution: {
      id: 'extraction',
      say: 'Taking a tooth out cannot be undone.',
      who: 'In the United Kingdom a qualified technician takes out only finger-loose teeth and fragments, and erupted, not displaced wolf teeth under a veterinary surgeon’s direct and continuous supervision; all else is a veterinary surgeon’s. In the United States the AAEP counts extraction among the acts of a licensed veterinarian. Elsewhere local law decides.',
      source: 'UK occupational standard LANEDC6; AAEP, position on equine dentistry, revised 2025',
    },
  },
  {
    applies: (item) =>
      item.kind === 'finding' &&
      item.presence !== 'absent' &&
      item.when !== 'before' &&
      (item.condition === 'pulp-exposure' ||
        (item.condition === 'fracture' && item.grade?.scale === 'fracture' && openPulp.has(item.grade.value))),
    caution: {
      id: 'exposed-pulp',
      say: 'An exposed pulp was named here, or a fracture whose class means one (CCF, CCRF).',
      who: 'Diagnosis and treatment of it are acts of veterinary surgery in the United Kingdom (Veterinary Surgeons Act 1966); elsewhere local law decides.',
      source: 'British Equine Veterinary Association, 2014; AVDC tooth fracture classification',
    },
  },
];

/** The cautions that apply to these items, each with the items it is about, in a fixed order. */
export const cautionsFor = (items: readonly Item[]): readonly Caution[] =>
  rules.flatMap(({ caution, applies }) => {
    const about = items.filter(applies).map((item) => item.id);
    return about.length ? [{ ...caution, items: about }] : [];
  });
