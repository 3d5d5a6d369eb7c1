/**
 * Ten published cases, as a practitioner would dictate them: the wording is ours, the facts are theirs. What the source does not
 * give (a side, a tooth) must stay unknown.
 */
import { describe, expect, test } from 'vitest';
import { difference, type Expected } from '../match.ts';
import { readLines } from '../parser/corpus.ts';
import { explain } from '../../parser/index.ts';

type Line = readonly [say: string, expect: Expected];
const finding = (condition: string, place: unknown, more: object = {}): Readonly<Record<string, unknown>> => ({
  kind: 'finding',
  condition,
  place,
  ...more,
});
const teeth = (...codes: readonly string[]): object => ({ teeth: codes });

const cases: readonly { readonly source: string; readonly lines: readonly Line[] }[] = [
  {
    source: 'Merck Veterinary Manual, image by Easley, https://merckvetmanual.com/multimedia/image/infundibular-caries-horse',
    lines: [
      [
        'one oh nine infundibular caries grade four',
        { items: [finding('infundibular-caries', teeth('109'), { grade: { scale: 'infundibular-caries', value: '4' } })] },
      ],
      [
        'one ten undisplaced sagittal fracture',
        { items: [finding('fracture', teeth('110'), { qualifiers: ['undisplaced', 'sagittal'] })] },
      ],
      ['food packing on one ten', { items: [finding('food-packing', teeth('110'))] }],
    ],
  },
  {
    source: 'Garden State Equine, 209 partial coronectomy, https://www.gardenstateequine.com/209-partial-coronectomy.html',
    lines: [
      [
        'malodorous discharge from the left nostril',
        { items: [finding('discharge', { region: 'nostril', side: 'left' }, { qualifiers: ['malodorous'] })] },
      ],
      ['left lymph node enlarged', { items: [finding('lymph-node-enlargement', { region: 'lymph-nodes', side: 'left' })] }],
      [
        'two oh nine complicated crown root fracture',
        { items: [finding('fracture', teeth('209'), { grade: { scale: 'fracture', value: 'CCRF' } })] },
      ],
      [
        'grade two infundibular caries on two oh nine',
        { items: [finding('infundibular-caries', teeth('209'), { grade: { scale: 'infundibular-caries', value: '2' } })] },
      ],
    ],
  },
  {
    source: 'Garden State Equine, 209 sectioning, https://www.gardenstateequine.com/209-sectioning.html',
    lines: [
      [
        'two ten complicated crown root fracture',
        { items: [finding('fracture', teeth('210'), { grade: { scale: 'fracture', value: 'CCRF' } })] },
      ],
      ['two eleven previously extracted', { items: [finding('previously-extracted', teeth('211'))] }],
      ['retained fragment at two eleven', { items: [finding('retained-fragment', teeth('211'))] }],
      [
        'advise radiographs of two oh nine',
        { items: [{ kind: 'treatment', procedure: 'radiograph', state: 'advised', place: teeth('209') }] },
      ],
    ],
  },
  {
    source: 'Research, Society and Development 2024, DOI 10.33448/rsd-v13i9.46762, https://rsdjournal.org/index.php/rsd/article/view/46762',
    lines: [
      [
        'one oh eight and two oh eight displaced fractures',
        { items: [finding('fracture', teeth('108', '208'), { qualifiers: ['displaced'] })] },
      ],
      ['ulcers on the tongue', { items: [finding('ulcer', { region: 'tongue' })] }],
      [
        'one oh eight extracted',
        { items: [{ kind: 'treatment', procedure: 'extract', state: 'done', place: teeth('108') }], doubts: [{ doubt: 'irreversible' }] },
      ],
    ],
  },
  {
    source:
      'Pollaris et al. 2019, VDT 88:19-28, https://openjournals.ugent.be/vdt/article/id/75858/ (the side is not given: it stays unknown)',
    lines: [
      [
        'swelling of the cheek',
        {
          items: [finding('swelling', { region: 'cheek' })],
          never: [finding('swelling', { region: 'cheek', side: 'left' }), finding('swelling', { region: 'cheek', side: 'right' })],
        },
      ],
      [
        'upper six displaced towards the cheek',
        {
          items: 'any',
          never: [finding('displaced', teeth('106')), finding('displaced', teeth('206'))],
          doubts: [{ doubt: 'two-readings' }],
        },
      ],
    ],
  },
  {
    source:
      'Equine Vet Educ August 2019 p. 423, https://pubs.aaep.org/0A4370h/EVEAugust2019/html/49.html (a lower tooth has no infundibulum)',
    lines: [
      ['two ten sagittal fracture', { items: [finding('fracture', teeth('210'), { qualifiers: ['sagittal'] })] }],
      [
        'infundibular caries grade four',
        { items: [finding('infundibular-caries', teeth('210'), { grade: { scale: 'infundibular-caries', value: '4' } })] },
      ],
      ['four oh seven fractured', { items: [finding('fracture', teeth('407'))] }],
      ['infundibular caries on four oh seven', { items: [finding('infundibular-caries', teeth('407'))], doubts: [{ doubt: 'unlikely' }] }],
      [
        'purulent discharge',
        {
          items: 'any',
          never: [finding('discharge', { region: 'nostril', side: 'left' }), finding('discharge', { region: 'nostril', side: 'right' })],
          doubts: [{ doubt: 'no-place' }],
        },
      ],
    ],
  },
  {
    source: 'Equine Medical Services case note, http://equinemedicalservices.net/supernumerary-causing-displacement/',
    lines: [
      ['three year old gelding', { header: { horse: { age: { value: 3, unit: 'year' }, sex: 'gelding' } } }],
      ['bad breath', { items: [finding('halitosis', null)] }],
      ['two oh six displaced rostrally', { items: [finding('displaced', teeth('206'), { qualifiers: '*', surfaces: '*' })] }],
      ['possible supernumerary two oh six', { items: [finding('supernumerary', teeth('206'), { presence: 'suspected' })] }],
      [
        'extraction advised',
        {
          items: [{ kind: 'treatment', procedure: 'extract', state: 'advised', place: '*' }],
          never: [{ kind: 'treatment', state: 'done' }],
        },
      ],
    ],
  },
  {
    source: 'Klugh 2009, dvm360, https://dvm360.com/view/periodontal-disease-horse (the tooth is not given: it stays unknown)',
    lines: [
      ['nineteen year old mare', { header: { horse: { age: { value: 19, unit: 'year' }, sex: 'mare' } } }],
      [
        'seven millimetre periodontal pocket',
        {
          items: [finding('periodontal-pocket', null, { measures: [{ what: 'depth', value: 7, unit: 'mm' }] })],
          doubts: [{ doubt: 'no-place' }],
        },
      ],
      ['recheck in a year', { items: [{ kind: 'follow-up', action: 'recheck', after: { value: 1, unit: 'year' } }] }],
    ],
  },
  {
    source: 'Evans, dvm360, https://dvm360.com/view/periodontal-disease-in-horses-what-causes-it-and-how-to-fix-it',
    lines: [
      ['two eleven fractured', { items: [finding('fracture', teeth('211'))] }],
      ['periodontal disease', { items: [finding('periodontal-disease', teeth('211'))] }],
      ['food packing', { items: [finding('food-packing', teeth('211'))] }],
    ],
  },
  {
    source: 'Olde Towne Equine practice note, https://www.oldetowneequine.com/post/manage-your-blog-from-your-live-site',
    lines: [
      ['gingivitis at one oh two', { items: [finding('gingivitis', teeth('102'))] }],
      ['gum recession as well', { items: [finding('gingival-recession', teeth('102'))] }],
      [
        'small ulcer on the lower lip',
        { items: [finding('ulcer', { region: 'lips', jaw: 'lower' }, { severity: '*', severitySaid: 'small' })] },
      ],
      [
        'no wave no step no exaggerated transverse ridges',
        { items: ['wave', 'step', 'exaggerated-transverse-ridges'].map((c) => finding(c, null, { presence: 'absent' })) },
      ],
      [
        'no packed pockets',
        {
          items: 'any',
          never: [
            { kind: 'finding', condition: 'periodontal-pocket', presence: 'present' },
            { kind: 'finding', condition: 'food-packing', presence: 'present' },
          ],
        },
      ],
    ],
  },
];

describe.each(cases)('$source', ({ lines }) => {
  const results = readLines(lines.map(([say]) => say));
  test.each(lines.map(([say, expected], i) => ({ say, expected, i })))('$say', ({ expected, i }) => {
    const result = results[i];
    if (result === undefined) throw new Error('no reading');
    const { missing, extra } = difference(expected, result);
    expect(
      missing.length + extra.length,
      [explain(result), ...missing.map((m) => `missing ${m}`), ...extra.map((e) => `extra ${e}`)].join('\n'),
    ).toBe(0);
  });
});
