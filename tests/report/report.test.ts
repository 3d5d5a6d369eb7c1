import { describe, expect, test } from 'vitest';
import type { Finding, Item } from '../../parser/contract/item.ts';
import { Exam } from '../../parser/contract/record.ts';
import { permanentTeeth, deciduousTeeth } from '../../parser/lexicon/teeth.ts';
import { cautionsFor, exportExam, itemsCsv, ownerPage, vetLetter } from '../../server/report/index.ts';
import { standOf } from '../../server/report/mouth.ts';
import { findingSentences, followUpSentence, sedationSentence, treatmentSentence } from '../../server/report/words.ts';
import { foldDraft } from '../../server/session/reduce.ts';
import { by, finding, hook, itemOf, opened, result, said, when } from '../session/made.ts';

const sheet = { draft: false, style: '/paper.css' };
const items = (...loose: Record<string, unknown>[]): Item[] => loose.map((l, k) => itemOf(l, 'e1:0', k));
const sentences = (reader: 'owner' | 'vet', ...loose: Record<string, unknown>[]): readonly string[] =>
  findingSentences(items(...loose) as Finding[], reader);
const exam = (...loose: Record<string, unknown>[]): Exam =>
  exportExam(foldDraft('e1', [opened(), said('e1:0', 'words', { items: loose }, [1, 2]), { event: 'confirmed', lexicon: '1', by, when }]));
const words = (page: string): string =>
  page
    .replace(/<svg.*?<\/svg>/gs, '')
    .replace(/<[^>]*>/g, ' ')
    .replace(/\s+/g, ' ');

describe('sentences', () => {
  const front = { ...hook('106', 4), qualifiers: ['rostral'] };
  const also = { ...hook('206', 3), qualifiers: ['rostral'] };
  test('one kind together, each tooth with its own measure', () => {
    expect(sentences('owner', front, also)).toEqual(['Hook at the front of 106 (4\u00a0mm high) and 206 (3\u00a0mm high).']);
    expect(sentences('vet', front, also)).toEqual(['Rostral hook at 106 (4\u00a0mm high) and 206 (3\u00a0mm high).']);
  });
  test.each<[string, Record<string, unknown>[], string[]]>([
    ['suspected', [finding('fracture', { teeth: ['209'] }, { presence: 'suspected' })], ['Suspected fracture at 209.']],
    [
      'ruled out, one place',
      [
        finding('hook', null, { presence: 'absent' }),
        finding('wave', null, { presence: 'absent' }),
        finding('step', null, { presence: 'absent' }),
      ],
      ['No hook, wave or step.'],
    ],
    [
      'normal',
      [
        finding('abnormality', { teeth: ['407'] }, { presence: 'absent' }),
        finding('abnormality', { region: 'tongue' }, { presence: 'absent' }),
      ],
      ['Normal: 407 and tongue.'],
    ],
    ['nothing abnormal', [finding('abnormality', null, { presence: 'absent' })], ['Nothing abnormal.']],
    [
      'the movement of the jaw, to a side',
      [
        finding('lateral-excursion', { region: 'jaw-movement', side: 'right' }),
        finding('reduced-excursion', { region: 'jaw-movement', side: 'both' }),
      ],
      ['Lateral excursion to the right.', 'Reduced excursion to both sides.'],
    ],
    ['a part of one jaw', [finding('ulcer', { region: 'lips', jaw: 'lower' })], ['Ulcer at the lower lip.']],
    ['from before', [finding('ulcer', { region: 'cheek', side: 'left' }, { when: 'before' })], ['From before: ulcer at the left cheek.']],
    [
      'a state of a tooth',
      [finding('overlong', { teeth: ['311'] }), finding('overlong', { teeth: ['411'] })],
      ['311 and 411 are overlong.'],
    ],
    [
      'neighbours',
      [finding('sharp-enamel-points', { teeth: ['106', '107', '108', '109', '111', '206', '207'] })],
      ['Sharp enamel points at 106 to 109, 111, 206 and 207.'],
    ],
    ['a gap', [finding('diastema', { spaces: [['309', '310']] }, { qualifiers: ['valve'] })], ['Valve diastema between 309 and 310.']],
    [
      'a grade as spoken',
      [finding('hook', { teeth: ['106'] }, { grade: { scale: 'spoken', value: '2' } })],
      ['Hook grade 2 as said at 106.'],
    ],
    [
      'a size that is no number',
      [finding('lump', { region: 'mandible', side: 'right' }, { measures: [{ what: 'width', said: 'pea-sized' }] })],
      ['Lump at the right lower jaw bone (pea-sized).'],
    ],
    [
      'a range',
      [finding('periodontal-pocket', { teeth: ['310'] }, { measures: [{ what: 'depth', value: [4, 5], unit: 'mm' }] })],
      ['Periodontal pocket at 310 (4 to 5\u00a0mm deep).'],
    ],
  ])('%s', (_, loose, expected) => expect(sentences('owner', ...loose)).toEqual(expected));
  test('work and medicines say only what was said', () => {
    const [reduce, sedation, none, again] = items(
      { kind: 'treatment', procedure: 'reduce', state: 'done', place: { teeth: ['106'] }, amountMm: 3 },
      { kind: 'sedation', given: true, dose: { value: 0.3 } },
      { kind: 'sedation', given: false },
      { kind: 'follow-up', action: 'recheck', after: { value: 1, unit: 'year' } },
    );
    expect(treatmentSentence(reduce as never, 'owner')).toBe('Reduced at 106, by 3\u00a0mm.');
    expect(sedationSentence(sedation as never)).toBe('Sedation, 0.3, no unit said.');
    expect(sedationSentence(none as never)).toBe('No sedation.');
    expect(followUpSentence(again as never)).toBe('See again in 1 year.');
  });
});

describe('the pages', () => {
  const nasty = '<script>alert(1)</script>"\'&';
  test.each([
    ['owner', ownerPage],
    ['vet', vetLetter],
  ] as const)('%s: words never become markup, and there is no script or style inside', (_, page) => {
    const e = exam(
      { kind: 'fact', about: 'behaviour', said: nasty },
      { kind: 'note', text: nasty },
      { kind: 'follow-up', action: 'advise-owner', text: nasty },
      finding('hook', { teeth: ['106'] }, { said: nasty, severitySaid: nasty }),
    );
    const made = page({ ...e, horse: { name: nasty }, owner: nasty, yard: nasty, examiner: nasty }, { ...sheet, left: [nasty] });
    expect(made).not.toMatch(/<script|<style|style=|onload|alert\(1\)<|javascript:/i);
    expect(made.match(/&lt;script&gt;alert\(1\)&lt;\/script&gt;&quot;&#39;&amp;/g)!.length).toBeGreaterThan(6);
  });
  test.each([
    ['owner', ownerPage],
    ['vet', vetLetter],
  ] as const)('%s: money is on no page', (_, page) => {
    expect(
      words(
        page(exam({ kind: 'fact', about: 'account', said: 'eighty pounds paid', value: { value: 80, unit: 'pound' } }, hook('106')), sheet),
      ),
    ).not.toMatch(/eighty|80|paid/);
  });
  test('what a person jotted as a note goes to the veterinarian, not to the owner', () => {
    const e = exam({ kind: 'note', text: 'sharp on the left rein' });
    expect(ownerPage(e, sheet)).not.toMatch(/left rein/);
    expect(vetLetter(e, sheet)).toMatch(/Sharp on the left rein\./);
  });
  test('a draft says so; a changed record says when and why', () => {
    expect(words(ownerPage(exam(hook('106')), { ...sheet, draft: true }))).toMatch(/Draft, not confirmed.*Not confirmed yet/);
    const changed = exportExam(
      foldDraft('e1', [
        opened(),
        said('e1:0', 'words', { items: [hook('106')] }),
        { event: 'confirmed', lexicon: '1', by, when },
        { event: 'reopened', reason: 'wrong side', by, when },
        { event: 'confirmed', lexicon: '1', by, when: '2026-03-06T10:00:00+00:00' },
      ]),
    );
    expect(words(ownerPage(changed, sheet))).toMatch(
      /Checked and confirmed by S\. Wren on 6 March 2026\. Changed since, on 6 March 2026, because: wrong side\./,
    );
  });
  test('not examined and not spoken of are two things, and neither is normal', () => {
    const page = words(
      ownerPage(exam({ kind: 'not-examined', place: { region: 'tongue' }, reason: 'would not stand' }), { ...sheet, left: ['upper left'] }),
    );
    expect(page).toMatch(/Not examined: tongue \(would not stand\)\./);
    expect(page).toMatch(/Not spoken of at this visit: upper left\./);
    expect(page).not.toMatch(/[Nn]ormal/);
  });
  test('the letter begins with why it is sent, and names the scales it uses', () => {
    const page = words(
      vetLetter(
        exam(
          { kind: 'follow-up', action: 'refer-to-veterinarian', place: { teeth: ['209'] }, reason: 'suspected fracture' },
          finding('mobility', { teeth: ['210'] }, { grade: { scale: 'mobility', value: '2' } }),
        ),
        sheet,
      ),
    );
    expect(page).toMatch(/Why this letter Refer to the veterinarian: 209, suspected fracture\./);
    expect(page).toMatch(/Mobility \(AVDC tooth mobility index\)/);
  });
  test('every tooth of the trade has a place in the drawing, its right on the viewer’s left', () => {
    for (const tooth of [...permanentTeeth, ...deciduousTeeth]) expect(standOf(tooth), tooth).not.toBeNull();
    // Modified Triadan (Floyd 1991): 1 upper right, 2 upper left, 3 lower left, 4 lower right; the examiner faces the horse.
    const [ur, ul, ll, lr] = ['106', '206', '306', '406'].map((tooth) => standOf(tooth)!) as [never, never, never, never] as {
      x: number;
      y: number;
    }[];
    expect(ur!.x).toBeLessThan(ul!.x);
    expect(lr!.x).toBeLessThan(ll!.x);
    expect(ur!.y).toBeLessThan(lr!.y);
    expect(standOf('506')).toEqual(standOf('106'));
  });
});

describe('cautions', () => {
  const ids = (...loose: Record<string, unknown>[]): string[] => cautionsFor(items(...loose)).map((c) => c.id);
  const work = (procedure: string, state: string, more = {}): Record<string, unknown> => ({
    kind: 'treatment',
    procedure,
    state,
    place: { teeth: ['106'] },
    ...more,
  });
  test.each<[string, string[], Record<string, unknown>]>([
    ['sedation given', ['sedation'], { kind: 'sedation', given: true }],
    ['no sedation', [], { kind: 'sedation', given: false }],
    ['motorised', ['motorised'], work('reduce', 'done', { instrument: 'motorised' })],
    ['by hand', [], work('reduce', 'done', { instrument: 'hand' })],
    ['tool not said', [], work('reduce', 'done')],
    ['extracted', ['extraction'], work('extract', 'done')],
    ['extraction planned', ['extraction'], work('extract', 'planned')],
    ['extraction declined', [], work('extract', 'declined')],
    ['open pulp', ['exposed-pulp'], finding('pulp-exposure', { teeth: ['106'] })],
    ['no open pulp', [], finding('pulp-exposure', { teeth: ['106'] }, { presence: 'absent' })],
    // AVDC: a complicated crown fracture exposes the pulp, an uncomplicated one does not.
    [
      'complicated crown fracture',
      ['exposed-pulp'],
      finding('fracture', { teeth: ['106'] }, { grade: { scale: 'fracture', value: 'CCF' } }),
    ],
    ['uncomplicated', [], finding('fracture', { teeth: ['106'] }, { grade: { scale: 'fracture', value: 'UCF' } })],
  ])('%s', (_, expected, loose) => expect(ids(loose)).toEqual(expected));
  test('each has its source and who decides, names its items, and advises nothing', () => {
    const all = cautionsFor(
      items(
        { kind: 'sedation', given: true },
        work('extract', 'done'),
        work('rasp', 'done', { instrument: 'motorised' }),
        finding('pulp-exposure', { teeth: ['106'] }),
      ),
    );
    expect(all).toHaveLength(4);
    for (const c of all) {
      expect(c.source.length).toBeGreaterThan(10);
      expect(c.who).toMatch(/law/);
      expect(c.items).toHaveLength(1);
      expect(`${c.say} ${c.who}`).not.toMatch(/\b(should|must|recommend|advise|you)\b/i);
    }
  });
});

describe('exports', () => {
  const draft = foldDraft('e1', [
    opened(),
    {
      event: 'said',
      when,
      result: {
        ...result('e1:0', 'um my wife says one oh six hook', { items: [hook('106')] }),
        utterance: {
          id: 'e1:0',
          text: 'um my wife says one oh six hook',
          heard: [{ text: 'my wife', logProb: -1 }],
          words: ['um', 'my', 'wife', 'says', 'one', 'oh', 'six', 'hook'].map((w, i) => ({
            w,
            as: i === 0 ? 'filler' : i < 4 ? 'leftover' : 'item:e1:0.0',
          })),
        },
        items: [itemOf({ ...hook('106'), evidence: { utterance: 'e1:0', words: [4, 5, 6, 7], rules: [] } }, 'e1:0', 0)],
      },
    },
    said('e1:5', 'mind the gate'),
  ]);
  test('talk is kept in the draft and never exported; evidence still points at its words', () => {
    const out = exportExam(draft);
    expect(JSON.stringify(out)).not.toMatch(/wife|gate/);
    expect(out.utterances).toMatchObject([{ text: 'um … one oh six hook' }]);
    expect(out.items[0]!.evidence.words.map((i) => out.utterances[0]!.words[i]!.w)).toEqual(['one', 'oh', 'six', 'hook']);
    expect(() => Exam.parse(JSON.parse(JSON.stringify(out)))).not.toThrow();
  });
  test('the table follows RFC 4180, and no cell becomes a formula', () => {
    const out = itemsCsv([
      exam({ kind: 'note', text: '=HYPERLINK("x")' }, { kind: 'fact', about: 'feed', said: 'hay, "haylage"\nand oats' }, hook('106', 4)),
    ]);
    const lines = out.split('\r\n');
    expect(lines[0]).toMatch(/^exam,date,horse,kind,what/);
    expect(out).toContain(`"'=HYPERLINK(""x"")"`);
    expect(out).toContain('"hay, ""haylage""\nand oats"');
    expect(lines.at(-2)).toMatch(/^e1,2026-03-04,Juniper,finding,hook,present,now,106,,,height 4 mm/);
  });
});
