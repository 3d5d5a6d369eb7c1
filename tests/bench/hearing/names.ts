/** Phrases with names of horses, owners, yards and people, all invented, each with the list of names of its day. */
import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { seedOf, seeded } from './random.ts';
import type { Spoken, SpokenSet } from './sets.ts';
import { joined, samplesOf } from './sound.ts';

const HORSES = [
  'Tamarisk',
  'Old Wivelsfield',
  'Figgy Lane',
  'Bartleby',
  'Quince',
  'Sergeant Plum',
  'Dapple Dawn',
  'Mistral',
  'Tilly May',
  'Corporal',
  'Hobson',
  'Peregrine',
  'Lady Oakham',
  'Pumpkin',
  'Zebedee',
  'Farthing',
  'Bluebell Girl',
  'Nimrod',
  'Cinnamon Toast',
  'Gulliver',
  'Tarragon',
  'Whistler',
  'Pickwick',
  'Honeysuckle',
];
const OWNERS = [
  'Mrs Abernethy',
  'Mister Colquhoun',
  'Penelope Wraith',
  'Mrs Dunstable',
  'Fergus Tolley',
  'Miss Haverstock',
  'Mister Pargeter',
  'Imogen Quarry',
  'Mrs Thistlewood',
  'Gareth Lamb',
  'Mrs Okonedo',
  'Rosalind Birch',
];
const YARDS = [
  'Larkfield Stables',
  'Hollin Edge',
  'Coppice Farm',
  'Withy Bottom',
  'Ravensmoor',
  'Five Elms',
  'Cuckoo Barn',
  'Thornycroft',
  'Marlpit Lane',
  'Sandhole Yard',
  'Brackenrigg',
  'Nether Court',
];
const PEOPLE = [
  'Doctor Vane',
  'Doctor Szymanski',
  'Miss Orchard',
  'Doctor Pellow',
  'Mister Fairweather',
  'Doctor Iqbal',
  'Nadia Croft',
  'Doctor Hesketh',
  'Julian Mears',
  'Doctor Tremayne',
  'Beth Sallow',
  'Doctor Achebe',
];
const SAID: readonly (readonly [readonly string[], readonly string[]])[] = [
  [HORSES, ['next horse {n}', '{n} was a bit sore last time', 'note {n} drops feed on the left']],
  [OWNERS, ['owner is {n}', 'note ask {n} about the hay']],
  [YARDS, ['we are at {n} today', 'note back to {n} in six months']],
  [PEOPLE, ['sedated by {n} with detomidine', 'note ring {n} about the x rays']],
];

/** A day's list around one name, or any: eight horses, three owners, two yards, two people. */
export function dayList(seed: string, name?: string): readonly string[] {
  const random = seeded(seedOf(seed));
  const some = (from: readonly string[], count: number): string[] => {
    const start = Math.floor(random() * from.length);
    return Array.from({ length: count }, (_, i) => from[(start + 5 * i) % from.length] as string);
  };
  return [
    ...new Set([...(name === undefined ? [] : [name]), ...some(HORSES, 8), ...some(OWNERS, 3), ...some(YARDS, 2), ...some(PEOPLE, 2)]),
  ];
}

/** Names of odd places in the lists report, of even places tune. @returns undefined where Debian's voice is absent */
export async function namePhrases(folder: string, voice: string, half: 'reports' | 'tunes', every = 1): Promise<SpokenSet | undefined> {
  const spoken: Spoken[] = [];
  const all = SAID.flatMap(([names, forms]) =>
    names
      .filter((_, i) => i % 2 === (half === 'reports' ? 1 : 0))
      .flatMap((name) => forms.map((form) => [name, form.replace('{n}', name)] as const)),
  );
  for (const [name, words] of all.filter((_, i) => i % every === 0)) {
    const path = join(folder, 'name.wav');
    const made =
      voice === 'awb'
        ? spawnSync('flite', ['-voice', voice, '-t', words, '-o', path])
        : spawnSync('espeak-ng', ['-v', voice, '-s', '160', '-w', path, '--', words]);
    if (made.error !== undefined || made.status !== 0) return undefined;
    spoken.push({
      id: `${words} ${voice}`,
      words: words.toLowerCase(),
      samples: joined([new Float32Array(4_800), await samplesOf(path), new Float32Array(4_800)]),
      name,
      names: dayList(words, name),
    });
  }
  return { name: `names ${voice}`, speaker: 'synthetic', what: 'names', spoken };
}
