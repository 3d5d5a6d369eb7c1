/**
 * What became of what was found, in this breath or the one before: "lifted away with the forceps", "got most of it off", "rest of that next
 * visit", "owner didn't want it touched". Said again with the plain verb of the thing's own work; what is said beside it stays as it is.
 */
import type { Context } from '../contract/draft.ts';
import {
  byItself,
  countedBack,
  lightly,
  likeNow,
  namedAgainAs,
  noHarm,
  notAll,
  partOfTheWay,
  plainStates,
  pointsBack,
  standsNow,
  tookHold,
  toothItself,
  usedOnIt,
  wentByHand,
  went,
  wentOn,
  whoSaysNo,
  workVerbs,
  type Became,
} from '../lexicon/becoming.ts';
import { handledAs, type Handled } from '../lexicon/handling.ts';
import { standing, type Carry } from './carry.ts';
import { first } from './lists.ts';
import { inPlaceOf, textFrom, wordsIn } from './saidPlainly.ts';
import { scan } from './scan.ts';
import type { Token } from './tokens.ts';

const oneOf = (words: readonly string[]): string => [...words].sort((a, b) => b.length - a.length).join('|');
const sided = '(?:the |that )?(?:left|right|top|bottom|upper|lower)';
/** "the left wolf tooth", "both caps": by the name of what was found last. */
const byName = (kind: Handled): string => {
  const names = namedAgainAs[kind];
  return names
    ? `|(?:(?:the|that|those|his|her|both|either|loose|retained|left|right|upper|top|bottom|lower|one|other) )*(?:${oneOf(names)})`
    : '';
};
const is = '(?: (?:is|are|was|were|has|have|had|been|all|both|now|just|well|nicely|right))*';
const lead =
  '(?:(?:and|but|so|right(?! (?:one|wolf|cap|caps|loose))|okay|yeah|then|there|now|well|anyway) )*(?:(?:i|we) )?(?:(?:have|had|just|then|also|only|now) )*';
const ends = '(?= ,|$)';
const goesOn = '(?= (?:next|at|in|when|another|till|until|later|on)\\b| ,|$)';
const took = `(?:${oneOf(tookHold)})`;
const tool = `(?:the |a |my )?(?<tool>${oneOf(usedOnIt)})`;
const roughly = '(?: (?:only|about|just|nearly|maybe|roughly|probably))*';
const rest =
  '(?:the )?(?:rest|remainder|other half|other bit|last bit|last of it)(?: of (?:it|that|this|them|those))?(?: (?:off|down|out))?';
const treated =
  '(?:touched|done|out|off|down|(?:taken|taking) (?:out|off|down|back)|removed|reduced|touching|doing|pulled|extracted|rasped)';
const vetDoes = '(?:taking|take|pulling|pull|removing|remove|extracting|extract|doing|do|having|have|sorting|sort|whipping|whip)';
const who = `(?:${oneOf(whoSaysNo)})`;
const number = 'a|about|half|one|two|three|four|five|six|seven|eight';
const asItIs = '(?:in|on|there|put|as (?:it|they) (?:is|are)|where (?:it|they) (?:is|are))';

/** The first that fits tells how the work stands. Where a thing can go, or be, is of its kind. */
const headsOf = (kind: Handled): readonly (readonly [Became, RegExp])[] => {
  const it = `(?<it>${oneOf(Object.values(pointsBack).flat())}|${sided} one${byName(kind)})`;
  const itToo = it.replace('?<it>', '?:');
  return (
    [
      ['rest', `${took} ${it} (?:${oneOf(went[kind])})(?: a (?:bit|little|touch))?(?: ,)? (?:more|${rest})${goesOn}`],
      ['part', `(?:${took}|did|done|managed)${roughly} (?:${oneOf(notAll)})(?: of)?(?: ${it})?(?: (?:off|down|out|done|away|back))?`],
      ['part', `(?:most|half|part|the worst) of ${it}${is} (?:off|down|out|away)`],
      ['part', `(?:(?:that|this) is )?as far as (?:i am|am) going(?: with ${it})?`],
      ['part', `${took} ${it}(?: down| off| back| out)?${roughly} (?:${oneOf(partOfTheWay)})(?: (?:down|there|off|out))?`],
      [
        'part',
        `(?:(?:only |just )?managed|did|only took)${roughly} (?:half|a third|a quarter|two thirds)(?: of)?(?: ${it})?(?: (?:off|down|out|done))?`,
      ],
      [
        'planned',
        `(?:(?:will|can|could|am going to|are going to) )?(?:(?:do|take|get|finish|have|make|tackle|sort|come back for|leave) )?${rest}(?: (?:comes|come|will come|can come|is coming|to come|waits|can wait|will wait|will have to wait|will keep)(?: (?:off|down|out))?)?${goesOn}`,
      ],
      ['done', `${took}${roughly} (?<much>half|a third|a quarter|two thirds)(?: (?:off|down))?${ends}`],
      ['forVet', `(?:the )?vet (?:to|will|can|is to|is going to|is coming (?:back )?to) (?:do|take|finish|get|have) ${rest}`],
      // Without a word that points back: "that's gone" may be so by itself.
      ...(kind === 'tooth' || kind === 'feed' ? [] : ([['done', `(?:all )?gone(?: now| today)?${ends}`]] as const)),
      // Told by what it is like now: "flat to the row", "level with the next tooth".
      ...(likeNow[kind].length === 0
        ? []
        : ([
            ['done', `(?:(?:all|both|${it})${is} )?(?:${oneOf(likeNow[kind])})(?: now| again| today)?${ends}`],
            [
              'done',
              `(?:got|have got|made|brought|have) ${it} (?:all |nice and |dead )?(?:${oneOf(likeNow[kind])})(?: now| again| today)?${ends}`,
            ],
          ] as const)),
      ['done', `(?:${oneOf(went[kind])}) (?:it|they|that|those|both) (?:came|come|comes|went|goes|go)\\b`],
      [
        'done',
        `(?:(?:a|one|two|three|four|another) )?(?:(?:couple of|few|quick|light|good|single) )*(?:pass|passes|stroke|strokes|rub|rubs|lick|licks|swipe|swipes) (?:with|of) ${tool}(?:(?: and|,| and then)* ${it}${is} (?:${oneOf([...standsNow[kind], ...likeNow[kind]])}))?${ends}`,
      ],
      [
        'part',
        `(?:not (?:going|taking ${it})|would not (?:go|take ${itToo})|did not (?:go|take ${itToo})) any (?:lower|further|deeper|more|shorter)(?: (?:on|with|down on) ${itToo})?`,
      ],
      ['halves', `half (?:of it )?(?:now|today|this time)(?: and| ,|,)* (?:the other )?half (?:of it )?(?=(?:next|in|at|another)\\b)`],
      [
        'rest',
        `left (?:a (?:bit|little|touch|sliver)|some|the rest)(?: of ${it})?(?: on(?: it)?| there| in place)?(?= (?:for|till|until) (?:next|another|the next|spring|autumn)\\b)`,
      ],
      ['part', `left (?:a (?:bit|little|touch|sliver)|some)(?: of ${it})? (?:on|there)${ends}`],
      [
        'planned',
        `(?:will (?:be )?|am going to |going to |am |to be |being )?(?:stage|staging|staged)(?: ${it})?(?: (?:over|in|across) (?:a couple of|two|three|a few|several) (?:visits|goes|sessions|times))?${ends}`,
      ],
      [
        'planned',
        `(?:will|am going to|going to|has to|have to)(?: have to)? (?:do|take|bring|work|tackle)(?: ${it})?(?: (?:down|off|out))? (?:in|over) (?:stages|steps|a couple of visits|two visits|a few visits|two or three visits)`,
      ],
      [
        'planned',
        `(?:(?:will|am going to|are going to|can) )?(?:(?:take|have|get|do|knock|bring) )?(?:the )?(?:other|last|remaining) (?<much>(?:${number})(?: and a half)? (?:mil|mils|mills|millimetres?))(?: (?:off|down|away|back))?(?= (?:next|another|in (?:a|one|two|three|four|five|six|eight|nine|ten|twelve|the|another))\\b)`,
      ],
      [
        'planned',
        `(?:will|am going to|are going to|can) (?:take|have|get|do|knock|bring) (?:the )?(?:other|last|remaining) (?:${number}|bit)(?: (?:off|down|away|back))?(?= (?:next|another|in (?:a|one|two|three|four|five|six|eight|nine|ten|twelve|the|another))\\b)`,
      ],
      [
        'forVet',
        `(?:${it}${is} )?(?:booked in|booked|booking|down|listed)(?: ${itToo})?(?: (?:for|on|in) (?!with)\\w+(?: (?!with)\\w+)?)? (?:with|at) (?:the )?(?:vet|vets|practice|clinic|hospital)`,
      ],
      ['planned', `more(?: (?:of (?:it|that)|off|to come off|to come))?(?= (?:next|another|in|at) )`],
      ['planned', `${it} (?:will|can|could|has to|have to|is going to|are going to)(?: just)?(?: have to| need to)? (?:wait|keep)`],
      ['planned', `${it} (?:can|could|will) come (?:off|out|down)(?! (?:by|on|itself|themselves))`],
      ['left', `${it} (?:can|may|should|will|could) (?:just )?stay(?: ${asItIs})?`],
      ['declined', `${who} (?:wants|wanted|would rather|would like) ${it} (?:left|kept|leaving)(?: (?:in|on|alone|be))?`],
      ['planned', `(?:will|am going to|are going to) come back (?:for|to|and do) ${it}`],
      ['byVet', `(?:had|got|let) (?:the )?vet (?:to )?(?:take|pull|get|remove|extract|whip|draw|lift|do) ${it}(?: (?:out|off|down))?`],
      [
        'forVet',
        `(?:the )?vet (?:is|will|is going to|is coming to|is coming back to|is to|can)(?: just)? ${vetDoes} ${it}(?: (?:out|off|down))?`,
      ],
      ['declined', `${who} (?:did|does|do|would) not(?: really)? (?:want|fancy|like)(?: me)?(?: to)? ${it} ${treated}`],
      ['declined', `${who} (?:said|says|say) (?:no to|to leave|leave|not to touch|not to do) ${it}(?: (?:be|alone|in|on))?`],
      [
        'left',
        `(?:will leave|am going to leave|am leaving|left|leaving) ${it} (?:${asItIs}|well alone|stay(?: ${asItIs})?)(?! (?:the|my|his|her|a)\\b)`,
      ],
      [
        'left',
        `(?:left|leaving|will leave|am leaving) ${it}(?: alone| be| well alone| for now| there)?(?: ,)?(?: (?:because|as|since|cos|but|though))? (?:${oneOf(noHarm)})${ends}`,
      ],
      [
        'left',
        `(?:left|leaving|will leave|am leaving) ${it}(?: alone| be| well alone| for now)?(?= , (?:he|she|it) is (?:twenty|thirty|very old|an old|too old|old|so old|no age)\\b)`,
      ],
      ['left', `${it}${is} (?:staying|stopping|to stay|stays|stay)(?: ${asItIs})?`],
      ...(kind === 'cap' || kind === 'tooth'
        ? ([['left', `(?<it>${sided} one)${is} not (?:quite )?ready(?: (?:yet|to come|to go|for it))*`]] as const)
        : []),
      [
        'left',
        `(?:am |are |will |would )?not (?:touching|going to touch|going near|going at|risking|doing) ${it}(?: without (?:any |a |the )?(?:sedation|sedative|sedating|vet)(?: (?:him|her|here))?)?`,
      ],
      ['left', `(?:he|she) (?:would|will|did) not let me (?:(?:get )?(?:at|near|to|on|in)|touch|do|take) ${it}(?: (?:off|out|down))?`],
      [
        'tried',
        `could not (?:get|reach)(?: (?:the|my|a|an)(?: (?:${oneOf(usedOnIt)}|head|blade|hand|fingers|finger|arm))+)(?: (?:back|in|up|far|enough))* (?:on|to|at|near|behind|round|onto|into|under) ${it}`,
      ],
      [
        'tried',
        `could not (?:get|reach)(?: (?:back|in|up))*(?: (?:at|to|near))? ${it} to (?:take|get|bring|pull|do|rasp|reduce|file|burr)(?: it| them)?(?: (?:down|off|out|back))?`,
      ],
      ...(byOwnWork.has(kind)
        ? ([
            ['done', `(?:used|put|ran) ${tool} (?:on|to|over|across|along) ${it}`],
            ['done', `(?:did|done|sorted|dealt with|saw to|seen to|tidied|tidied up) ${it}(?= (?:with|using|by) )`],
            ['done', `${it}${is} (?:done|sorted|dealt with|seen to)(?= (?:with|using|by) )`],
            ['done', `(?:sorted|dealt with|saw to|seen to) ${it}${ends}`],
            ['done', `(?:got|cleaned) ${it}(?: up)?(?= (?:with|using) )`],
          ] as const)
        : []),
      [
        'done',
        `${took} (?<it>${oneOf(countedBack)}|${sided} one${byName(kind)}) (?:all |right |straight |clean |well )*(?:${oneOf(went[kind])})`,
      ],
      ...(kind === 'feed'
        ? ([
            [
              'done',
              `(?:(?:got (?:the |a )?(?:pick|probe) in(?: there)? and )?(?:cleared|cleaned)(?: it| that| them)?|all (?:out|clear(?:ed)?))${ends}`,
            ],
          ] as const)
        : []),
      ...(kind === 'cap'
        ? ([
            [
              'left',
              `(?:${it}${is} (?:will|can|should)(?: just)? (?:go|shed|come|drop|fall)(?: off| out)?|(?:leaving|letting|let|will let|will leave) ${itToo}(?: to)? (?:go|shed|come|drop|fall)(?: off| out)?) (?:${oneOf(byItself.slice(0, 5))}|when (?:it|they) (?:is|are) ready)(?:(?: ,)? (?:so )?(?:left|leave|leaving)(?: (?:it|them|that))?(?: (?:alone|be|it))?)?`,
            ],
          ] as const)
        : []),
      ...(kind === 'overgrowth' || kind === 'points'
        ? ([
            ['done', `(?:just |only |lightly )*(?:${oneOf(lightly)}) ${it}(?: (?:over|off|up))?${ends}`],
            [
              'tried',
              `could not (?:get|reach)(?: (?:the|my|a|an)(?: (?:${oneOf(usedOnIt)}|head|blade|hand|handpiece|hand piece|fingers|finger|arm))+)?(?: (?:back|in|up|that|far|right))+(?: enough)?${ends}`,
            ],
          ] as const)
        : []),
      ...(kind === 'foreign-body' || kind === 'cap' ? ([['tried', `could not get (?:a )?(?:hold|grip) (?:of|on) ${it}`]] as const) : []),
      ['done', `(?:flaked|peeled|snapped|clipped|filed|washed|wiped) ${it} (?:all |right )*(?:${oneOf(went[kind])})`],
      [
        'done',
        `(?:${it}${is} (?:come|${oneOf(wentByHand)})|(?:all |both )?(?:${oneOf(wentByHand)})) (?:all |right |straight |clean )*(?:${oneOf(went[kind])})\\b(?! (?:${oneOf(byItself)}|${number}))`,
      ],
      [
        'done',
        `${it}${is} (?:${oneOf(standsNow[kind])})(?=$| (?:,|with|by|using|now|today|whole|and|in one|clean|root|roots|nicely|easily|again|intact)\\b| ,)`,
      ],
    ] as const
  ).map(([became, form]) => [became, new RegExp(`^${lead}${form}\\b`)] as const);
};
/** Things whose own work is known where no more is said than that it was seen to. */
const byOwnWork: ReadonlySet<Handled> = new Set(['overgrowth', 'points', 'tartar', 'cap']);
const known = new Map<Handled, ReturnType<typeof headsOf>>();
const heads = (kind: Handled): ReturnType<typeof headsOf> => known.get(kind) ?? known.set(kind, headsOf(kind)).get(kind) ?? [];

const waking: ReadonlySet<string> = new Set([
  ...[...tookHold, ...wentByHand].flatMap((said) => said.split(' ')),
  ...[
    'rest',
    'remainder',
    'other',
    'last',
    'remaining',
    'half',
    'vet',
    'not',
    'wait',
    'keep',
    'said',
    'says',
    'staying',
    'stopping',
    'stays',
    'stay',
    'left',
    'leave',
    'leaving',
  ],
  ...[
    'did',
    'done',
    'sorted',
    'dealt',
    'seen',
    'saw',
    'tidied',
    'used',
    'put',
    'ran',
    'gone',
    'flat',
    'even',
    ...['pass', 'passes', 'stroke', 'strokes', 'rub', 'rubs', 'lick', 'licks', 'swipe', 'swipes'],
    ...['stage', 'stages', 'staged', 'staging', 'visits', 'booked', 'booking', 'listed', 'let', 'letting', 'its'],
    ...lightly.map((said) => said.split(' ')[0] as string),
    'managed',
    'off',
    'out',
    'down',
    'level',
    'flush',
    'bit',
    'come',
  ],
]);

/** @returns the phrase with such words said plainly, in each part that has them at its start; the same list where there are none */
export function becameOf(tokens: readonly Token[], context: Context, carry: Carry): readonly Token[] {
  if (!tokens.some(({ t }) => waking.has(t))) return tokens;
  // From the last part on: what was put changes no place before it.
  return tokens.reduceRight(
    (said, _, at) => (at === 0 || tokens[at - 1]?.ends ? (saidPlainly(said, at, context, carry) ?? said) : said),
    tokens,
  );
}

function saidPlainly(tokens: readonly Token[], at: number, context: Context, carry: Carry): readonly Token[] | undefined {
  const kind = kindBefore(tokens.slice(0, at), context, carry);
  if (kind === undefined) return undefined;
  // "that's" is one word here: "that come off" says no less.
  const places = at === 0 ? placesBefore(context, carry) : undefined;
  const text = textFrom(tokens, at).replaceAll("that's", 'that');
  const last = standing(context, carry.last);
  const was = at === 0 ? last?.kind === 'finding' && last.when === 'before' : tokens.slice(0, at).some(({ t }) => earlier.has(t));
  return first(heads(kind), ([became, form]) => {
    const match = form.exec(text);
    // "hook on one oh six last time, gone now": by itself, or by anybody.
    if (match && was && /\bgone\b/.test(match[0])) return undefined;
    // "step on two oh nine", "right one's level": another, that was none.
    const side = /\b(?:left|right)\b/.exec(match?.groups?.['it'] ?? '')?.[0];
    if (side && places && !places.some((tooth) => /^[2367]/.test(tooth) === (side === 'left'))) return undefined;
    // "caps on both lower sevens, both off": two of one breath are counted there.
    return match && (at === 0 || whichOf(match.groups?.['it']) !== bothOf)
      ? [...tokens.slice(0, at), ...plain(tokens.slice(at), match, plainStates[became], kind)]
      : undefined;
  });
}

const earlier: ReadonlySet<string> = new Set(['last', 'was', 'were', 'used', 'ago', 'before', 'previously', 'had', 'earlier']);

function plain(tokens: readonly Token[], { 0: said, groups = {} }: RegExpExecArray, how: string, kind: Handled): readonly Token[] {
  const to = wordsIn(said);
  const [verb, done] = workVerbs[kind];
  const level = / ?\b(?:level|flush|flat|even)\b/.test(said) ? ' level' : '';
  const more = `${level}${groups['much'] ? ` by ${groups['much']}` : ''}${groups['tool'] ? ` with the ${groups['tool']}` : ''}`;
  const words = how.replace('Ved', done).replace('V', verb).replace('it', whichOf(groups['it'])) + more;
  return inPlaceOf(tokens, to, words.split(' '));
}

/** What points back, in the words that the rules of work know. */
const whichOf = (said = 'it'): string => {
  const side = /\b(?:left|right|top|bottom|upper|lower)\b/.exec(said)?.[0];
  if (side) return `the ${side} one`;
  if (/\b(?:both|either)\b/.test(said)) return bothOf;
  const plain = first(Object.entries(pointsBack), ([word, forms]) => ((forms as readonly string[]).includes(said) ? word : undefined));
  return plain?.replace('both', bothOf) ?? (/(?:teeth|s)$/.test(said) ? 'them' : 'it');
};
const bothOf = 'both of them';

/** What was named last in this breath, else what the last item is. */
export function kindBefore(before: readonly Token[], context: Context, carry: Carry): Handled | undefined {
  const named = scan(before).marks.findLast(({ terms }) => terms?.some(({ k }) => k === 'condition'));
  const ids = (named?.terms ?? []).flatMap((t) => (t.k === 'condition' ? [t.id] : []));
  if (ids.length > 0) return first(ids, itself);
  const last = standing(context, carry.last);
  return last?.kind === 'finding' && last.presence !== 'absent'
    ? itself(last.condition)
    : last?.kind === 'treatment'
      ? wentOn[last.procedure]
      : undefined;
}
/** The teeth of what was found last. */
const placesBefore = (context: Context, carry: Carry): readonly string[] | undefined => {
  const last = standing(context, carry.last);
  const place = last && 'place' in last ? last.place : undefined;
  return place && 'teeth' in place ? place.teeth : place && 'spaces' in place ? place.spaces.flat() : undefined;
};
const itself = (condition: keyof typeof handledAs): Handled | undefined => {
  const kind = handledAs[condition];
  return kind === 'tooth' && !toothItself.includes(condition) ? undefined : kind;
};
