/** Every value of every published scale is read; what a scale does not have is doubted and the finding kept without a grade. */
import { describe, expect, test } from 'vitest';
import { doubtsOf, findings, read } from './reading.ts';

const number = ['zero', 'one', 'two', 'three', 'four', 'five', 'six', 'seven', 'eight', 'nine', 'ten'];
const worded = (value: string): string =>
  value
    .split('.')
    .map((n) => number[Number(n)])
    .join(' point ');

interface Scale {
  readonly scale: string;
  readonly condition: string;
  readonly say: (grade: string) => string;
  readonly values: readonly string[];
  readonly outside: readonly string[];
  readonly source: string;
}
const scales: readonly Scale[] = [
  {
    scale: 'periodontal-disease',
    condition: 'periodontal-disease',
    say: (g) => `periodontal disease stage ${g} three oh nine`,
    values: ['0', '1', '2', '3', '4'],
    outside: ['5', '6'],
    source:
      'AVDC stages, https://www.veterinaryonlinecourses.com/topic/periodontal-disease-stages/ and http://www.dvm360.com/view/clinical-terms-and-classifications-periodontal-disease-veterinary-medicine',
  },
  {
    scale: 'mobility',
    condition: 'mobility',
    say: (g) => `three oh nine mobility grade ${g}`,
    values: ['0', '1', '2', '3'],
    outside: ['4', '5'],
    source: 'AVDC tooth mobility index, https://brainscape.com/flashcards/furcation-index-11126635/packs/19459341',
  },
  {
    scale: 'furcation',
    condition: 'furcation-exposure',
    say: (g) => `three oh nine furcation grade ${g}`,
    values: ['1', '2', '3'],
    outside: ['4'],
    source: 'AVDC furcation index, http://oralatp.com.au/assessment/oral-diseases-and-conditions/periodontal-disease.aspx',
  },
  {
    scale: 'infundibular-caries',
    condition: 'infundibular-caries',
    say: (g) => `one oh nine infundibular caries grade ${g}`,
    values: ['0', '1', '2', '3', '4'],
    outside: ['5', '1.1', '1.2'],
    source:
      'Honma et al. 1962, modified by Dacre 2005 (EVE August 2019 p. 423, https://pubs.aaep.org/0A4370h/EVEAugust2019/html/49.html; grades 0 to 3 from memory, not confirmed)',
  },
  {
    scale: 'peripheral-caries',
    condition: 'peripheral-caries',
    say: (g) => `one oh nine peripheral caries grade ${g}`,
    values: ['0', '1', '1.1', '1.2', '2', '3', '4'],
    outside: ['5', '2.1'],
    source:
      'Borkent D, Dixon PM (2017), https://zendy.io/title/10.1111/eve.12497; Lee, Reardon, Dixon 2019 (1.1); the others from memory, not confirmed',
  },
  {
    scale: 'eotrh',
    condition: 'eotrh',
    say: (g) => `one oh three e o t r h stage ${g}`,
    values: ['0', '1', '2', '3', '4'],
    outside: ['5'],
    source: 'stage names: Tretow et al. 2025 J Vet Dent, https://discovery.researcher.life/topic/findings-of-radiographs/17030461',
  },
  {
    scale: 'body-condition',
    condition: 'body-condition',
    say: (g) => `body condition ${g} out of nine`,
    values: ['1', '2', '3', '4', '5', '6', '7', '8', '9'],
    outside: ['0', '10'],
    source: 'Henneke et al. 1983 (1 to 9), from memory, not confirmed',
  },
];

describe.each(scales)('$scale ($source)', ({ scale, condition, say, values, outside }) => {
  test.each(values)('%s is a value', (value) => {
    const result = read(say(worded(value)));
    expect(findings(result).map((f) => [f.condition, f.grade])).toEqual([[condition, { scale, value }]]);
    expect(doubtsOf(result)).toEqual([]);
  });
  test.each(outside)('%s is off the scale', (value) => {
    const result = read(say(worded(value)));
    expect(findings(result).map((f) => [f.condition, f.grade])).toEqual([[condition, undefined]]);
    expect(doubtsOf(result)).toEqual(['off-scale']);
  });
});

/** Tooth fracture classes: https://veteriankey.com/34-tooth-fracture (book chapter quoting AVDC). */
test.each([
  ['enamel infraction', 'EI'],
  ['enamel fracture', 'EF'],
  ['uncomplicated crown fracture', 'UCF'],
  ['complicated crown fracture', 'CCF'],
  ['uncomplicated crown root fracture', 'UCRF'],
  ['complicated crown root fracture', 'CCRF'],
  ['root fracture', 'RF'],
])('%s is %s', (name, value) => {
  expect(findings(read(`two oh nine ${name}`)).map((f) => [f.condition, f.grade])).toEqual([['fracture', { scale: 'fracture', value }]]);
});

/** A millimetre is never turned into a grade: no agreed equine pocket-depth scale was found (standards, gap). */
test.each([1, 4, 5, 10, 15])('a pocket of %d mm carries no grade and no severity', (mm) => {
  const words = ['', 'one', '', '', 'four', 'five', '', '', '', '', 'ten', '', '', '', '', 'fifteen'][mm];
  const [finding] = findings(read(`pocket on three oh nine ${words} millimetres`));
  expect([finding?.condition, finding?.grade, finding?.severity, finding?.measures?.map(({ what, value }) => [what, value])]).toEqual([
    'periodontal-pocket',
    undefined,
    undefined,
    [['depth', mm]],
  ]);
});

/** The trap of the scales: "one point one" is a grade, not tooth 101; "M two" after a tooth is its mobility, alone it is asked. */
describe('numbers that look like teeth', () => {
  test('peripheral caries one point one on two oh eight names one tooth', () => {
    expect(findings(read('peripheral caries one point one on two oh eight')).map(({ place, grade }) => [place, grade?.value])).toEqual([
      [{ teeth: ['208'] }, '1.1'],
    ]);
  });
  test('m two after a tooth is mobility', () => {
    expect(findings(read('three oh eight m two')).map(({ condition, grade }) => [condition, grade?.value])).toEqual([['mobility', '2']]);
  });
  test('m two alone is asked', () => {
    expect(doubtsOf(read('m two'))).toEqual(['two-readings']);
  });
});
