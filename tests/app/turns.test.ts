import { expect, test } from 'vitest';
import type { Ear, Stretch } from '../../server/app/ear.ts';
import { goesBefore } from '../../server/app/turns.ts';

/** An ear whose answers come when they are let come. */
function slowEar() {
  const owed: { give: () => void; fail: () => void }[] = [];
  const hear = () =>
    new Promise<never>((resolve, reject) => {
      owed.push({ give: () => resolve({ id: 'a', hypotheses: [], reader: 'first' } as never), fail: () => reject(new Error('fell')) });
    });
  return { ear: { name: 'x', hear } as unknown as Ear, owed };
}
const stretch: Stretch = { exam: 'e', from: 0, samples: new Float32Array(0) };

test('the other holds still from the first phrase asked for to the last answered, also when one fails', async () => {
  const { ear, owed } = slowEar();
  const orders: boolean[] = [];
  const first = goesBefore(ear, {
    hold: (on) => {
      orders.push(on);
    },
  });
  const [a, b] = [first.hear(stretch), first.hear(stretch)];
  expect(orders.at(-1)).toBe(true);
  owed[0]?.fail();
  await expect(a).rejects.toThrow('fell');
  expect(orders.at(-1)).toBe(true);
  owed[1]?.give();
  await b;
  expect(orders.at(-1)).toBe(false);
});

test('an other that cannot hold still is let be', async () => {
  const { ear, owed } = slowEar();
  const heard = goesBefore(ear, {}).hear(stretch);
  owed[0]?.give();
  expect(await heard).toMatchObject({ id: 'a' });
});
