/** What the findings of one phrase mean to each other, once each is read: words that lean on their neighbours. One small rule each, in this order. */
import { gumThere, grownGum, nodes, ofTheJaw, otherThere, overhang, sideOfIt, sideOfPart } from './refine/byPlace.ts';
import { looseCap } from './refine/caps.ts';
import { lessOfTheWork, lessRuledOut, lessThoseNamed, otherwiseOfThem } from './refine/less.ts';
import {
  blind,
  displacedFracture,
  displacedThere,
  howItRuns,
  normalInName,
  saysLess,
  sharpCheekTeeth,
  slantLong,
  somethingWrong,
  twoNames,
  whoseCondition,
} from './refine/oneThing.ts';
import { kindOfGap, packed } from './refine/packed.ts';
import { longAgo, wolfTeethBefore } from './refine/past.ts';
import { quarterOfFront } from './refine/quarter.ts';
import type { Around, Read, Rule } from './refine/rule.ts';
import { notThisBut, thatSide } from './refine/ruledOut.ts';
import { afterWork, objectOfWork, ofTheHorse, onlyNamed, outAlone, partDone, unclearWork, wouldHave } from './refine/work.ts';
import { woken, type Said } from './said.ts';
import { parted, timeWords } from './timeline.ts';

const timeline: Rule = (reads, { marks, tokens }) => parted(reads, marks, tokens);

/** In this order, each with what it needs: a word, a condition, work (`work`), what was ruled out (`absent`), an exception (`except`). */
const ordered = woken<Rule>([
  { rule: unclearWork, needs: ['left', 'vet', 'veterinarian'] },
  { rule: outAlone, needs: ['out'] },
  { rule: longAgo, needs: ['work'] },
  { rule: wolfTeethBefore, needs: ['wolf-tooth'] },
  { rule: partDone, needs: ['state'] },
  { rule: wouldHave, needs: ['work'] },
  { rule: objectOfWork, needs: ['work'] },
  { rule: slantLong, needs: ['slant'] },
  { rule: looseCap, needs: ['retained-cap'] },
  { rule: twoNames, needs: saysLess },
  { rule: sideOfIt, needs: ['left', 'right'] },
  { rule: howItRuns, needs: ['malodour', 'discharge'] },
  { rule: somethingWrong, needs: ['abnormality'] },
  { rule: normalInName, needs: ['abnormality'] },
  { rule: whoseCondition, needs: ['condition', 'nick', 'shape'] },
  { rule: otherThere, needs: ['split', 'splits', 'muscle-wasting', 'erupting'] },
  { rule: grownGum, needs: ['overgrown'] },
  { rule: timeline, needs: timeWords },
  { rule: quarterOfFront, needs: ['upper', 'lower', 'top', 'bottom'] },
  { rule: sharpCheekTeeth, needs: ['sharp'] },
  { rule: packed, needs: ['packed', 'packing'] },
  { rule: kindOfGap, needs: ['valve', 'open'] },
  { rule: overhang, needs: ['overhang', 'overhangs', 'overhanging'] },
  { rule: blind, needs: ['wolf-tooth', 'blind-wolf-tooth'] },
  { rule: ofTheJaw, needs: ['reduced-excursion'] },
  { rule: gumThere, needs: ['gum'] },
  { rule: nodes, needs: ['lymph-node-enlargement', 'swelling'] },
  { rule: displacedFracture, needs: ['displaced'] },
  { rule: displacedThere, needs: ['wolf-tooth', 'blind-wolf-tooth'] },
  { rule: sideOfPart, needs: ['abnormality', 'absent'] },
  { rule: otherwiseOfThem, needs: ['otherwise'] },
  { rule: lessThoseNamed, needs: ['except', 'rest', 'else', 'others', 'other', 'otherwise'] },
  { rule: lessOfTheWork, needs: ['except'] },
  { rule: lessRuledOut, needs: ['absent', 'packed', 'packing'] },
  { rule: notThisBut, needs: ['absent'] },
  { rule: thatSide, needs: ['absent'] },
  { rule: onlyNamed, needs: ['work'] },
  { rule: ofTheHorse, needs: ['him', 'her'] },
  { rule: afterWork, needs: ['now', 'after', 'afterwards', 'again'] },
]);

/** What was read so far: the conditions, and what the rules ask for beside them. */
function heldBy(reads: readonly Read[], excepts: number): Said {
  const held = new Set<string>(excepts > 0 ? ['except'] : []);
  for (const { clause, made } of reads) {
    if (clause.head.condition) held.add(clause.head.condition.id);
    if (clause.head.work) held.add('work');
    for (const { body } of made)
      if (body?.kind === 'finding') {
        held.add(body.condition);
        held.add(body.presence);
      } else if (body?.kind === 'treatment') held.add('work');
  }
  return held;
}

export const refine = (reads: readonly Read[], around: Around): readonly Read[] =>
  ordered(around.said, heldBy(reads, around.excepts.length)).reduce((now, rule) => rule(now, around), reads);
