/** A "no" with no pause behind it, between a finding and another place: both readings are offered in whole, and none is taken (a wrong side in silence is worse than a question). */
import { expect, test } from 'vitest';
import { emptyContext, parseText } from '../../parser/index.ts';

const offered = (said: string): unknown =>
  parseText('n/1', said, emptyContext({})).doubts.map(({ readings = [] }) =>
    readings.map(({ items }) => items.map((item) => (item.kind === 'finding' ? [item.condition, item.presence, item.place] : item.kind))),
  );

test.each([
  [
    'hook on one oh six no two oh six',
    [
      [
        ['hook', 'present', { teeth: ['106'] }],
        ['hook', 'absent', { teeth: ['206'] }],
      ],
      [['hook', 'present', { teeth: ['206'] }]],
    ],
  ],
  [
    'ulcer right cheek, no left',
    [
      [
        ['ulcer', 'present', { region: 'cheek', side: 'right' }],
        ['ulcer', 'absent', { region: 'cheek', side: 'left' }],
      ],
      [['ulcer', 'present', { region: 'cheek', side: 'left' }]],
    ],
  ],
])('%s: ruled out there, or put right', (said, readings) => {
  expect(offered(said)).toEqual([readings]);
});
test.each([
  'hook on one oh six, no, two oh six',
  'hook on one oh six no sorry two oh six',
  'ulcer on the left, no the right cheek',
  'hook on one oh six, no caps',
])('%s: nothing is offered', (said) => {
  expect(offered(said)).toEqual([]);
});
