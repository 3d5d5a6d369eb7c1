/** What the findings of one phrase mean to each other, once each is read: words that lean on their neighbours. One small rule each, in this order. */
import { hollowTeeth, grownGum, nodes, overhang, splitSoft } from './refine/byPlace.ts';
import { looseCap } from './refine/caps.ts';
import { lessOfTheWork, lessRuledOut, lessThoseNamed } from './refine/less.ts';
import { blind, displacedFracture, sharpCheekTeeth, slantLong, smellyDischarge, somethingWrong, twoNames } from './refine/oneThing.ts';
import { packed } from './refine/packed.ts';
import { longAgo, wolfTeethBefore } from './refine/past.ts';
import type { Around, Read, Rule } from './refine/rule.ts';
import { afterWork, objectOfWork, partDone, unclearWork, wouldHave } from './refine/work.ts';
import { parted } from './timeline.ts';

const timeline: Rule = (reads, { marks, tokens }) => parted(reads, marks, tokens);

const ordered: readonly Rule[] = [
  unclearWork,
  longAgo,
  wolfTeethBefore,
  partDone,
  wouldHave,
  objectOfWork,
  slantLong,
  looseCap,
  twoNames,
  smellyDischarge,
  somethingWrong,
  splitSoft,
  grownGum,
  hollowTeeth,
  timeline,
  sharpCheekTeeth,
  packed,
  overhang,
  blind,
  nodes,
  displacedFracture,
  lessThoseNamed,
  lessOfTheWork,
  lessRuledOut,
  afterWork,
];
export const refine = (reads: readonly Read[], around: Around): readonly Read[] => ordered.reduce((now, rule) => rule(now, around), reads);
