/** What each mark is: the name of a finding or of work, a place, a turn, a word that says more, a stop, or nothing of the record. Its neighbours decide, where its words allow more than one thing. */
import { gapAsPlace, packedGap } from './roles/gaps.ts';
import { goneOfFinding, hasBecome, partGone } from './roles/gone.ts';
import { classOfFracture, finding, gradedCup, howLarge, kindOfCaries, levelToo, undisplaced } from './roles/names.ts';
import { anotherOfThem, howItIs, nothingAtAll, nothingListed, nothingOnThem, nothingThere } from './roles/nothing.ts';
import {
  comingThrough,
  edges,
  milkTooth,
  ofACap,
  ofATooth,
  ofGums,
  ofTheseParts,
  shearedRow,
  solid,
  tightGap,
  tightTeeth,
  whyStopped,
} from './roles/only.ts';
import { type Head, hereOf, phraseOf, type Role, type Rule } from './roles/phrase.ts';
import { detail, figure, howMany, notKnown, place, procedure, turn } from './roles/rest.ts';
import { bitSeats, growsOff, howItCameOut, packedWith, packingAdvised, rinsedOut, takenOff, tookOut } from './roles/work.ts';
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';

export type { Head } from './roles/phrase.ts';
export interface Roles {
  readonly heads: readonly Head[];
  readonly role: readonly Role[];
}

/** The first that has an opinion decides. */
const rules: readonly Rule[] = [
  ...[
    nothingListed,
    nothingThere,
    nothingOnThem,
    nothingAtAll,
    kindOfCaries,
    levelToo,
    classOfFracture,
    anotherOfThem,
    howItIs,
    partGone,
    hasBecome,
    ofACap,
    goneOfFinding,
    howLarge,
  ],
  ...[bitSeats, packedWith, tookOut, howItCameOut, growsOff, packingAdvised, rinsedOut],
  ...[
    packedGap,
    gapAsPlace,
    comingThrough,
    solid,
    tightGap,
    tightTeeth,
    shearedRow,
    takenOff,
    whyStopped,
    edges,
    ofTheseParts,
    ofATooth,
    ofGums,
    milkTooth,
  ],
  ...[finding, place, gradedCup, undisplaced, procedure, figure, howMany, notKnown, turn, detail],
];

/** Decides what each mark is, where its words allow more than one thing. */
export function roles(marks: readonly Mark[], tokens: readonly Token[], hasPlaceBefore: boolean): Roles {
  const phrase = phraseOf(marks, tokens, hasPlaceBefore);
  const heads: Head[] = [];
  const role = marks.map((_, i): Role => {
    const here = hereOf(phrase, i, heads);
    let decided: ReturnType<Rule>;
    for (const rule of rules) if ((decided = rule(here)) !== undefined) break;
    if (typeof decided !== 'object') return decided ?? 'glue';
    heads.push({ mark: i, ...decided });
    return 'head';
  });
  return { heads, role };
}
