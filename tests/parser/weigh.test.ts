/** How sure an item is among rival readings, and when a phrase that made nothing is asked about. Phrases and scores from trials with our recogniser on synthetic speech. */
import { expect, test } from 'vitest';
import type { HeardPhrase } from '../../parser/contract/word.ts';
import { emptyContext, parse } from '../../parser/index.ts';
import { afterStrike } from './corpus.ts';

const heard = (...texts: readonly (readonly [string, number])[]): HeardPhrase => ({
  id: 'w/1',
  reader: 'first',
  at: [0, 2],
  hypotheses: texts.map(([text, share]) => ({ text, logProb: Math.log(share), words: text.split(' ').map((w) => ({ w })) })),
});
const read = (...texts: readonly (readonly [string, number])[]) => parse(heard(...texts), emptyContext());
const unsure = (...texts: readonly (readonly [string, number])[]) => read(...texts).doubts.filter(({ doubt }) => doubt === 'unsure');

test('a rival that is no sentence of the trade counts little; one that is counts in full', () => {
  const nonsense = read(['No caries seen', 0.5], ['Two zero six nervous', 0.3], ['Two zero eight semester', 0.2]);
  expect(nonsense.doubts).toEqual([]);
  expect(nonsense.items[0]?.evidence.sure).toBeGreaterThan(0.8);
  expect(unsure(['Wolf tooth on two oh five', 0.5], ['Wolf tooth on one oh five', 0.5])).toHaveLength(1);
  expect(unsure(['Hook on one oh six', 0.55], ['No hook on one oh six', 0.45])).toHaveLength(1);
});

test('a fact in the own words of the speaker is asked about later than a finding', () => {
  const words = ['Ridden in a loose ring snaffle', 'Ridden in a loose ring snuffled'] as const;
  expect(unsure([words[0], 0.65], [words[1], 0.35])).toEqual([]);
  expect(unsure([words[0], 0.55], [words[1], 0.45])).toHaveLength(1);
  expect(unsure(['Mild hook on one oh six', 0.65], ['Hook on one oh six', 0.35])).toHaveLength(1);
});

test('one reading alone is as sure as can be, unless the ear guessed at it; a typed line is not heard at all', () => {
  const alone = (logProb: number, reader: HeardPhrase['reader']) =>
    parse(
      { ...heard(['One eleven is normal', 1]), reader, hypotheses: [{ ...heard(['One eleven is normal', 1]).hypotheses[0]!, logProb }] },
      emptyContext(),
    );
  expect(alone(-0.1, 'first').items[0]?.evidence.sure).toBe(1);
  expect(alone(-0.1, 'first').doubts).toEqual([]);
  expect(alone(-4 * 0.5, 'first').doubts).toMatchObject([{ doubt: 'unsure' }]);
  expect(alone(0, 'typed').items[0]?.evidence.sure).toBeUndefined();
});

test('readings that say the same in other words add up', () => {
  const { items, doubts } = read(
    ['Four eleven stepped nine millimetres', 0.5],
    ['Four eleven step nine millimetres', 0.4],
    ['Four eleven step five millimetres', 0.1],
  );
  expect(items[0]?.evidence.sure).toBeCloseTo(0.9, 2);
  expect(doubts).toEqual([]);
});

test("what the ear gave is told as it gave it: the share of belief shown beside a text is the ear's own", () => {
  expect(read(['No caries seen', 0.5], ['Two zero six nervous', 0.5]).utterance.heard?.map(({ posterior }) => posterior)).toEqual([
    0.5, 0.5,
  ]);
});

const asked = (text: string, share: number): readonly string[] =>
  read([text, share], ['mumble', share / 2]).doubts.map(({ doubt, words }) => `${doubt}: ${words}`);

test('a phrase that made nothing, was heard badly and holds a word of the trade is asked about', () => {
  expect(asked('No T M D or malodour left', 0.02)).toEqual(['unread: No T M D or malodour left']);
  // A tooth's number is asked about by name, however it was heard.
  expect(asked('Enoch retained two on three zero three', 0.08)).toEqual(['unread: three zero three']);
});

test('talk is not asked about: neither what was heard well nor what holds no word of the trade', () => {
  expect(asked('What is left to examine', 0.9)).toEqual([]);
  expect(asked('The traffic was terrible this morning', 0.01)).toEqual([]);
  expect(asked('Fans feel pleased', 0.04)).toEqual([]);
  expect(asked('Do you ring it off', 0.05)).toEqual([]);
});

test('what is typed or scripted is not heard badly', () => {
  expect(
    parse(
      {
        id: 'w/1',
        reader: 'typed',
        hypotheses: [
          {
            text: 'No T M D or malodour left',
            logProb: 0,
            words: 'No T M D or malodour left'.split(' ').map((w) => ({ w })),
          },
        ],
      },
      emptyContext(),
    ).doubts.filter(({ why }) => why?.includes('heard badly')),
  ).toEqual([]);
});

test('a phrase of which nothing was made is asked about where what it may also have been is of the record, with that reading', () => {
  const [question] = unsure(['Flung to widen a gap', 0.9], ['Widened the gap on one ten', 0.06], ['Trim to widen a gap', 0.04]);
  expect(question).toMatchObject({
    words: 'Flung to widen a gap',
    readings: [{ items: [] }, { label: 'Widened the gap on one ten', items: [{ kind: 'treatment', procedure: 'widen-space' }] }],
  });
  expect(question?.item).toBeUndefined();
  // A share of a hundredth is how talk looks.
  expect(unsure(['How was the show', 0.98], ['Hook on one oh six', 0.02])).toEqual([]);
  // Half a finding is how talk looks too: a finished one with the same share is asked about.
  expect(unsure(['Whoa stand still', 0.9], ['Wasting still', 0.1])).toEqual([]);
  expect(unsure(['Whoa stand still', 0.9], ['Right masseter wasting', 0.1])).toHaveLength(1);
});

test('an item is asked about where the ear may have heard the opposite, though by far not as likely', () => {
  expect(unsure(['No mobility of four oh eight', 0.8], ['Mobility of four oh eight', 0.2])[0]).toMatchObject({
    readings: [{ items: [{ presence: 'absent' }] }, { items: [{ presence: 'present' }] }],
  });
  expect(unsure(['No mobility of four oh eight', 0.9], ['Mobility of four oh eight', 0.1])).toEqual([]);
  // As far behind, another word for how much there is raises no question.
  expect(unsure(['Four eleven mild hook', 0.8], ['Four eleven marked hook', 0.2])).toEqual([]);
});

test('an item out of a phrase that was guessed at throughout is asked about, whatever its rivals', () => {
  // e^-2.5 and e^-1.5 over four words: -0.63 and -0.38 nats a word.
  const guess = (logProb: number) => unsure(['Lost four oh six', Math.exp(logProb)], ['mumble', Math.exp(logProb - 2)]);
  expect(guess(-2.5)).toHaveLength(1);
  expect(guess(-1.5)).toEqual([]);
});

test('what nobody says of anything else is asked about though it was heard a little badly only', () => {
  // -0.16 nats a word over twelve and six.
  expect(asked('Palatally prong around between one hundred and nine and one ten', Math.exp(-1.92))).toHaveLength(1);
  expect(asked('He stood so still today', Math.exp(-0.8))).toEqual([]);
});

const paused = () => readLinesOf('stop listening');
const readLinesOf = (text: string) => {
  const before = emptyContext();
  return {
    ...before,
    carry: parse({ id: 'w/0', reader: 'typed', hypotheses: [{ text, logProb: 0, words: text.split(' ').map((w) => ({ w })) }] }, before)
      .carry,
  };
};
const commandsOf = (context: ReturnType<typeof emptyContext>, ...texts: readonly (readonly [string, number])[]): readonly string[] =>
  parse(heard(...texts), context).commands.map(({ command }) => command);

test('while paused nothing has a meaning but the word to go on: it is taken where the ear holds it possible, and only there', () => {
  expect(commandsOf(paused(), ['Stop listening', 0.57], ['Start listening', 0.43])).toEqual(['resume']);
  expect(commandsOf(paused(), ['Stop listening', 0.86], ['Start listening', 0.14])).toEqual([]);
  expect(commandsOf(paused(), ['Start listening again', 0.9], ['Stop listening again', 0.1])).toEqual(['resume']);
  expect(commandsOf(paused(), ['Hook on one oh six', 0.9], ['Hooks on one oh six', 0.1])).toEqual([]);
});

test('a command whose opposite may have been said is asked about and not obeyed', () => {
  for (const [said, other] of [
    ['Stop listening', 'Start listening'],
    ['Start listening', 'Stop listening'],
    ['Take that back', 'Put that back'],
  ] as const) {
    const near = parse(heard([said, 0.7], [other, 0.3]), afterStrike);
    expect(near.commands).toEqual([]);
    expect(near.doubts).toMatchObject([{ doubt: 'unsure', words: said }]);
    expect(near.utterance.words.map(({ as }) => as)).toEqual(said.split(' ').map(() => `doubt:${near.doubts[0]?.id}`));
    expect(commandsOf(afterStrike, [said, 0.88], [other, 0.12])).toHaveLength(1);
  }
  // Not obeyed, it leaves the exam as it was: not paused.
  const { carry } = parse(heard(['Stop listening', 0.7], ['Start listening', 0.3]), emptyContext());
  expect(parse(heard(['Hook on one oh six', 1]), { ...emptyContext(), carry }).items).toHaveLength(1);
});
