/** What comes next: a recheck, a referral, what to watch, advice, a report, rest from the bit. */
import { eachOfItsOwn } from './groups.ts';
import { resolvePlace } from './resolve.ts';
import { light } from '../lexicon/fillers.ts';
import { ofTheHorse } from '../lexicon/advising.ts';
import { timeUnits } from '../lexicon/units.ts';
import type { ItemBody, Made } from './made.ts';
import { readAmount } from './numbers.ts';
import type { Carry } from './carry.ts';
import { strangeBeside } from './pauses.ts';
import { supposed } from './supposed.ts';
import type { RawPlace } from './places.ts';
import type { Mark } from './scan.ts';
import type { Token } from './tokens.ts';
import { findingsIn } from './has.ts';
import type { WorkRule } from './work.ts';

const lightWords = new Set(light);
type FollowUp = Extract<ItemBody, { kind: 'follow-up' }>;
const next = ['advise', 'report', 'noBit', 'refer', 'monitor', 'recheck'];
/** Without any of these, a kind of work or a word, nothing comes next. */
export const followUpWords: readonly string[] = [
  ...next,
  ...[
    'vet',
    'hospital',
    'specialist',
    'refer',
    'refers',
    'referred',
    'referral',
    'referrals',
    'referring',
    'back',
    'book',
    'booking',
    'commit',
    'yearly',
    'annually',
    'once',
    'twice',
    'every',
  ],
  ...["that's", 'week', 'weeks', 'month', 'months', 'year', 'years'],
];
/** "That's one for the vet", "needs the vet", "refer": of what was spoken of before. */
const pointing =
  /(?<!\b(?:so|said|sure|know|hope|think|reckon|told (?:her|him|them|mum|dad)) )\b(?:that|this|it|them|those|these)\b(?! (?:he|she|i|we|they|you|point|stage|day|week|month|year|time|morning|evening|visit|way|much|is all|afternoon)\b)|^(?:(?:he|she|i think|so|and) )*(?:needs?|wants?|will need|will want) (?:a |the |your |his |her )?vet(?: to (?:have |take )?(?:a )?(?:look|see|check|come))?(?: (?:out|in|today|tomorrow|soon|this week))*$|\b(?:want|need|have|get) (?:a |the |your )?vet (?:for|to|at) (?:the|that|this) (?:blind |bad |broken |loose |sore |cracked |split |rotten |big )*one$|^(?:(?:that's|that is|this is|that one is|this one is|it is|that one's) )?(?:one |a job |a case )?for (?:the|a|your) vet(?: (?:that|this)(?: one)?)?$/;
/** "check that again in six months": and no horse. */
const rechecked =
  /\b(?:re ?check|check|rechecking|review|look at|looking at|look again at|see|see how|seeing|flush|flushed|flushing|probe|probing|feel|rescope|revisit|back (?:to|for)|come back to|more off|bit off|some more of|more of|have|get) (?:at )?(?:that|it|this|those|them|these)(?! (?:he|she|horse|mare|pony|gelding|lad|week|month|year|time|all|mouth)\b)|^(?:(?:and|so|but) )*(?:that|this)(?: one)?(?: (?:will|is|really|probably|does|does not|to|be))* (?:wants?|needs?|due|checking|looking|doing|flushing|probing|checked|rechecked)\b/;
const aboutHorse = new RegExp(ofTheHorse);
/** "last time I told them to soak it": told then. */
const toldThenToo = /^(?:and |but |so )?(?:last (?:time|visit|year|month|spring|summer|autumn|winter)|the last time|years ago|before)\b/;
/** Where each kind of work is first spoken of. */
const firstOf = (marks: readonly Mark[]): ReadonlyMap<string, number> => {
  const first = new Map<string, number>();
  marks.forEach(({ terms }, i) =>
    terms?.forEach((t) => {
      if (t.k === 'work' && !first.has(t.term.as)) first.set(t.term.as, i);
    }),
  );
  return first;
};
/** "off work with her back": somebody's own. */
const ownBack = ({ from, to }: Mark, tokens: readonly Token[]): boolean =>
  to - from === 1 &&
  tokens[from]?.t === 'back' &&
  ['her', 'his', 'my', 'your', 'their', 'the'].includes(tokens[from - 1]?.t ?? '') &&
  ['with', 'on', 'of', 'in', 'from', 'at', 'hurt', 'did'].includes(tokens[from - 2]?.t ?? '');

/** "swelling on the face a few weeks back": in one go, and nothing of coming or looking. */
function toldThen(from: number, tokens: readonly Token[]): boolean {
  const begins = tokens.slice(0, from).findLastIndex(({ ends }) => ends === true) + 1;
  const before = tokens.slice(begins, from);
  return (
    (from + 1 === tokens.length || tokens[from]?.ends === true) &&
    !before.some(({ t }) =>
      /^(?:see|seeing|check|checking|recheck|look|back|again|him|her|in|be|will|want|wants|book|due|then|next|come|due|need|needs)$/.test(
        t,
      ),
    )
  );
}
const pastWords =
  /^(?:last|was|were|did|done|came|got|had|went|lost|saw|began|swelled|started|noticed|choked|stopped|dropped|broke|happened)$/;
/** "last done eighteen months back", "last recheck was six months ago": so long ago. */
const longBack = ({ from, to }: Mark, tokens: readonly Token[]): boolean =>
  (tokens[from - 1]?.t === 'last' && tokens.slice(to).some(({ t }) => t === 'ago' || t === 'was')) ||
  tokens.slice(to).some(({ t }, i, rest) => t === 'ago' && /^(?:days?|weeks?|months?|years?)$/.test(rest[i - 1]?.t ?? '')) ||
  (to - from === 1 &&
    tokens[from]?.t === 'back' &&
    /^(?:weeks?|months?|years?)$/.test(tokens[from - 1]?.t ?? '') &&
    (tokens.slice(0, from).some(({ t }) => pastWords.test(t)) || toldThen(from, tokens)));

/** "flu due in May": of a vaccination, and no next visit. */
const ofVaccine = ({ from }: Mark, tokens: readonly Token[]): boolean =>
  tokens
    .slice(Math.max(0, from - 3), from)
    .some(({ t }) => ['flu', 'tetanus', 'vaccination', 'vaccinations', 'jab', 'jabs', 'booster'].includes(t));

export const followUps: WorkRule = (marks, tokens, { carry, named }) => {
  const first = firstOf(marks);
  const find = (as: string): number => {
    const at = first.get(as) ?? -1;
    return as === 'recheck' &&
      at >= 0 &&
      (ownBack(marks[at] as Mark, tokens) || longBack(marks[at] as Mark, tokens) || ofVaccine(marks[at] as Mark, tokens))
      ? -1
      : at;
  };
  const words = tokens.map(({ t }) => t);
  const text = words.join(' ');
  if (
    !next.some((as) => first.has(as)) &&
    !words.some((w) => w === 'vet' || w === 'hospital' || w === 'specialist' || w.startsWith('refer')) &&
    !rounds.test(text) &&
    !returning.test(text) &&
    !wantsNone.test(text)
  )
    return [];
  const after = afterIn(tokens);
  const all = marks.map((_, i) => i);
  // "right, that's him, see him in six months": no side.
  const place = placeOf(tokens[0]?.t === 'right' && tokens[0].ends ? marks.filter(({ to }) => to > 1) : marks);
  const make = (body: FollowUp): readonly Made[] => [{ body, marks: all, rules: ['what comes next'], doubts: [] }];
  // "three oh nine is loose, needs the vet", "monitor": of what was named just before.
  const leaning = (raws: readonly RawPlace[] | undefined, body: FollowUp): readonly Made[] => leantOn(raws, marks, { ...body, ...place });

  if (refusedVet.test(text) && !findingsIn(marks))
    return make({ kind: 'follow-up', action: 'refer-to-veterinarian', state: 'declined', ...place });
  if (
    /\b(no (?:need|call|cause|reason) (?:for|to call|to see|to ring|to get) (?:the |a )?vet|vet (is )?not (needed|necessary)|(does not|do not) need (the |a )?vet|no vet needed|(?:will|shall|would|is|are) not (?:be |going to )?(?:need|needing|require|requiring|want|wanting|sending (?:him|her|it|them) to) (?:the |a )?vet|will not need (?:the |a )?vet|(?:do not|does not|not|no) (?:think |reckon |feel )?(?:\w+ )?(?:need(?:s|ing)? to|have to|to|need) (?:bother(?:ing)?|call(?:ing)?|ring(?:ing)?|get(?:ting)?|involv(?:e|ing)|troubl(?:e|ing)|see(?:ing)?|have|having)(?: (?:the|a|your|her|his|their))? vet|not worth (?:bothering|troubling|getting|calling|ringing|having) (?:the |a |your )?vet|(?:need not|would not|will not) (?:be )?(?:bother(?:ing)?|call(?:ing)?|ring(?:ing)?|get(?:ting)?|involv(?:e|ing)|troubl(?:e|ing)|see(?:ing)?|have|having)(?: (?:the|a|your|her|his|their))? vet|no need (?:of|for) (?:a |the )?vet|nothing (?:there |here |in there )?for (?:a|the) vet(?: (?:here|there|to see|to do))?|not (?:one|a job|a case) for the vet|vet will not be (?:needed|necessary|required)|(?:do not|not) (?:think|reckon|feel) (?:\w+ ){1,6}(?:needs?|wants?) (?:the |a )?vet)\b/.test(
      text,
    )
  )
    return make({ kind: 'follow-up', action: 'refer-to-veterinarian', state: 'not-needed', ...place });
  if (
    /\bno (?:need|call|cause|reason) to refer\b|\b(?:not|no) (?:referring|refer|need referring|need to refer|need a referral|referral (?:needed|necessary|required))\b|\breferral (?:is )?not (?:needed|necessary|required)\b/.test(
      text,
    ) &&
    !findingsIn(marks)
  )
    return make({ kind: 'follow-up', action: 'refer-to-veterinarian', state: 'not-needed', ...place });
  if (wantsNone.test(text) && !findingsIn(marks)) return make({ kind: 'follow-up', action: 'recheck', state: 'declined', ...place });
  if (noRecheck.test(text) && !findingsIn(marks)) return make({ kind: 'follow-up', action: 'recheck', state: 'not-needed', ...place });
  const advise = find('advise');
  if (advise >= 0) {
    const { from, to } = marks[advise] as Mark;
    // "told her to soak the hay": what she was told to do begins behind "to".
    const toDo = words.slice(from, to).lastIndexOf('to');
    const advice = words
      .slice(toDo < 0 ? to : from + toDo + 1)
      .join(' ')
      .replace(/^to /, '');
    if (
      advice !== '' &&
      !(/^(?:where|what|when|why|who|about|that|how|if)\b/.test(advice) && !aboutHorse.test(advice)) &&
      !toldThenToo.test(text)
    )
      return make({ kind: 'follow-up', action: 'advise-owner', text: advice });
  }
  const report = find('report');
  if (report >= 0)
    return make({
      kind: 'follow-up',
      action: 'send-report',
      ...(words.some((w) => w === 'vet' || w === 'veterinarian') ? { to: 'veterinarian' } : words.includes('owner') ? { to: 'owner' } : {}),
    });
  if (
    find('noBit') >= 0 &&
    text !== 'bitless' &&
    (after !== undefined ||
      /^(rest from|off) the bit|(?<!(ridden|goes|hacks|works|rides|riding|hacking|is|was) )bitless(?! (?:at|for now|for the (?:minute|moment|time)|these|since|now|always|anyway|bridle)|.*\bnever\b.*\bbit\b)/.test(
        text,
      ))
  )
    return make({ kind: 'follow-up', action: 'rest-from-bit', ...(after ? { after } : {}) });
  // "a photo of it for the vet": what it is for.
  const pictured = marks.some((mark) =>
    (mark.terms ?? []).some(
      (t) => t.k === 'work' && t.term.as === 'procedure' && t.term.done && ['photograph', 'radiograph'].includes(t.term.id),
    ),
  );
  // "rang the vet about the bill"
  const talk = toldOf.test(text) && place.place === undefined;
  const refer = pictured || talk || referredThen.test(text) ? -1 : find('refer');
  if (refer >= 0) {
    const reasonAt = words.findIndex(
      (w, i) =>
        i >= (marks[refer] as Mark).to &&
        ['for', 'because', 'with', 'as'].includes(w) &&
        !/^(an|a|second|opinion|the|vet)?$/.test(words[i + 1] ?? ''),
    );
    const lastPlace = marks.findLast((mark, i) => mark.place !== undefined && i > refer);
    const reason = withoutPlace(
      reasonAt >= 0 ? words.slice(reasonAt + 1) : lastPlace && findingsIn(marks) ? words.slice(lastPlace.to) : [],
      marks,
      reasonAt + 1,
    );
    return leaning(named ?? (pointing.test(text) ? carry.place : undefined), {
      kind: 'follow-up',
      action: 'refer-to-veterinarian',
      ...(reason !== '' ? { reason } : {}),
      ...(told.test(text) ? { state: 'done' as const } : {}),
      ...(after ? { after } : {}),
    });
  }
  // "sooner if he drops weight": said of what may come, and no part of when.
  const may = supposed(tokens);
  const said = all.filter((m) => may[(marks[m] as Mark).from] !== true);
  const unknown = marks.filter(
    (m) => m.unknown === true && may[m.from] !== true && !tokens.slice(m.from, m.to).every(({ t }) => lightWords.has(t)),
  ).length;
  const monitor = find('monitor');
  if (monitor >= 0 && (place.place || after || (carry.place && unknown === 0)) && unknown <= 1)
    return leaning(carry.place, { kind: 'follow-up', action: 'monitor', ...place, ...(after ? { after } : {}) });
  const recheck = find('recheck');
  if (
    recheck >= 0 &&
    unknown === 0 &&
    /\b(does not|did not|do not) want\b.*\b(re ?check|follow up|review|visit)\b|\b(recheck|follow up|review) (declined|refused)\b|\b(declined|refused)\b.*\b(recheck|follow up|review)\b/.test(
      text,
    )
  )
    return make({ kind: 'follow-up', action: 'recheck', state: 'declined', ...place });
  if (recheck < 0 && after !== undefined && (rounds.test(text) || returning.test(text)))
    return make({ kind: 'follow-up', action: 'recheck', after });
  if (
    recheck >= 0 &&
    after !== undefined &&
    // "see you next time": a goodbye. "check that next time" is of something.
    (after !== nextTime || (!/\bsee you\b/.test(text) && (place.place !== undefined || rechecked.test(text)))) &&
    (unknown <= 2 || strangeBeside(marks, tokens, recheck) === 0) &&
    !wasThen(marks, recheck, after)
  )
    return leaning(rechecked.test(text) ? carry.place : undefined, { kind: 'follow-up', action: 'recheck', after, ...place }).map(
      (one) => ({ ...one, marks: said }),
    );
  if (recheck >= 0 && /^(re ?check|routine recheck)\b/.test(text) && unknown === 0)
    return make({ kind: 'follow-up', action: 'recheck', ...place });
  return [];
};

/** "caries on one oh nine, refer": without a place and a reason of its own, it is for the one thing that was found in the same breath. */
export function forWhatWasFound(made: readonly Made[]): readonly Made[] {
  const open = ({ body }: Made): boolean =>
    body?.kind === 'follow-up' && body.action === 'refer-to-veterinarian' && !body.place && !body.reason && body.state === undefined;
  if (!made.some(open)) return made;
  const places = made.flatMap(({ body }) =>
    (body?.kind === 'finding' && body.presence !== 'absent' && body.when === 'now') || body?.kind === 'not-examined' ? [body.place] : [],
  );
  const [place] = places;
  return place && places.every((other) => JSON.stringify(other) === JSON.stringify(place))
    ? made.map((one) =>
        open(one) ? { ...one, body: { ...(one.body as FollowUp), place }, how: { ...one.how, place: 'carried' as const } } : one,
      )
    : made;
}

/** What comes next of what was named just before, where it names no place and no finding of its own. */
export function leantOn(raws: readonly RawPlace[] | undefined, marks: readonly Mark[], body: FollowUp): readonly Made[] {
  const place =
    body.place || raws === undefined || findingsIn(marks)
      ? undefined
      : placeOf(raws.map((raw): Mark => ({ from: 0, to: 0, place: raw }))).place;
  return [
    {
      body: place ? { ...body, place } : body,
      marks: marks.map((_, i) => i),
      rules: ['what comes next'],
      ...(place ? { how: { place: 'carried' as const } } : {}),
      doubts: [],
    },
  ];
}
export const pointsBack = (text: string): boolean => pointing.test(text);
/** What stands ready from the line before, where that is what it points to. */
export const pointedTo = (action: FollowUp['action'], text: string, carry: Carry): readonly RawPlace[] | undefined =>
  (action === 'refer-to-veterinarian' || action === 'monitor' ? pointing : rechecked).test(text) ? carry.place : undefined;

/** "quidded back in the spring": what was, not what comes. */
const wasThen = (marks: readonly Mark[], at: number, after: NonNullable<FollowUp['after']>): boolean =>
  'said' in after && (marks[at - 1]?.terms ?? []).some((t) => t.k === 'condition');

/** The reason in its own words, less the place when that is all it begins with. */
function withoutPlace(words: readonly string[], marks: readonly Mark[], from: number): string {
  const place = marks.find((mark) => mark.from === from && mark.place?.codes !== undefined);
  return words
    .slice(place ? place.to - place.from : 0)
    .filter((word, i, all) => !(i === 0 && ['with', 'for', 'because', 'as'].includes(word) && all.length > 1))
    .join(' ');
}

export function placeOf(marks: readonly Mark[]): { place?: FollowUp['place'] } {
  const named = marks.flatMap((mark, i) => (mark.place ? [{ raw: mark.place, marks: [i] }] : []));
  // "recheck one oh six and both lower elevens"
  const placings = eachOfItsOwn(named);
  const { place } = resolvePlace(placings, { kinds: ['T', 'S', 'R', 'G'], missing: new Set() });
  return place === null ? {} : { place };
}

/** "The owner doesn't want a recheck booked", "she declined the six month recheck". */
const wantsNone =
  /\b(?:owners?|she|he|they|mum|dad|client|groom|rider|yard|boss|trainer) (?:(?:is|are|has|have|was|really|just|\w+ly) )*(?:(?:does|did|do|will|would|is|are) not|would rather not|rather not|'d rather not|not (?:keen|interested)) .*\b(?:re ?check|follow up|return visit|revisit|recall|book (?:him|her|it|anything|one|in|again|another)|booking|commit to|another (?:visit|check|look|appointment)|(?:want|have|having) me back)\b|\b(?:declined|declining|declines|refused|turned down|said no to|passed on|not taking up)(?: (?:a|the|any|his|her|my|that|our))? (?:[\w-]+ ){0,3}?(?:re ?check|follow up|review|return visit|revisit|recall)\b/;
const refusedVet =
  /\brather not (?:be )?refer(?:red|ring)?\b|\b(?:declined|refused|does not want|did not want|will not have|not keen on|not keen to|(?:would |'d )?rather not (?:have|get|involve|refer|go|bother)|turned down|said no to|against)\b.*\b(?:vets?|referral|refer|referring|referred|hospital|specialist|second opinion|clinic)\b|\breferral (?:was |is )?(?:offered |advised |suggested )?(?:and |but )?(?:(?:owner|she|he|they) )?(?:declined|refused|not taken(?: up)?|turned down|not wanted)\b|\boffered (?:a |the )?referral .*\b(?:declined|refused|not taken|turned down|not wanted|said no)\b/;
/** "He was referred last year for sinus": then. */
const referredThen =
  /\b(?:was|were|had been|been) referred\b.*\b(?:last (?:year|month|spring|summer|autumn|winter|time)|(?:years?|months?|weeks?) (?:ago|back)|as a|when (?:he|she|it) was|before)\b/;
const noRecheck =
  /\bno (?:need (?:for|of) (?:a |any )?)?(?:re ?check|follow up|return visit|review)(?: (?:is |was )?(?:needed|necessary|required|due|booked))?$|\b(?:re ?check|follow up|return visit|review) (?:is )?not (?:needed|necessary|required)\b/;
/** The vet knows already. */
const told =
  /\b(?:has |have |had |was |is )?(?:already |been )+referred\b|\b(?:rang|rung|phoned|called|messaged|texted|emailed|contacted|told|spoke to|spoken to|been on to) (?:\w+ ){0,2}?vet about\b/;
const toldOf = / vet about (?!(?:it|this|that|them|him|her)\b)/;
const months = 'january|february|march|april|may|june|july|august|september|october|november|december';
const days = 'monday|tuesday|wednesday|thursday|friday|saturday|sunday';
const season = new RegExp(
  `\\b(this time next year|same time next year|next time|next (?:year|month|week|spring|summer|autumn|winter|fall|${months})|(?:in )?a couple of (?:days|weeks|months|years)|(?:in )?a few (?:days|weeks|months)|(?:in|before|after|until|till|at|around|by|for|come) (?:the |next )?(?:(?:early|late|mid) )?(?:spring|summer|autumn|winter|fall|christmas|easter|back end|season(?: starts| ends)?|new year|${months})|(?:before|until|till) (?:the |next )?(?:weekend|${days})|(?:until|till) (?:it|that(?:'s)?|this|they|he|she|(?:the|his|her) \\w+)(?: (?:is|has|are|have))?(?: all)? (?:heals?|healed|settled|better|mended|closed|quiet|gone)(?: (?:up|down|over))?)\\b`,
);
/** "yearly", "every six months": a round that begins now. */
const rounds =
  /^(?:(?:so|and|then|well|right|okay) )*(?:(?:\w+ to )?\w+ (?:weeks?|months?|years?) (?:at the (?:outside|most|latest))|that's (?:him|her|this one|them) (?:\w+ )?(?:for another|until|till) .+|(?:\w+ to )?\w+ (?:weeks?|months?|years?) (?:for|with) (?:this|that|him|her)(?: \w+)?|(?:(?:and|then|so) )?(?:yearly|annually|once a year|twice a year|every (?:\w+ )?(?:months?|years?|weeks?))(?: from (?:now|here) on| please| (?:for|with) (?:this|that|him|her|them)(?: \w+)?)?)(?: (?:for|with) (?:this|that|him|her|them)(?: one)?)?(?: (?:i (?:think|reckon|would say)|all being well|all going well|then|now|please))*$/;
/** "back in the spring for the wolf teeth": nothing was said of before. */
const returning = /^(?:(?:i|we) (?:am|are|will be) )?back (?:in|by|before|after|at|around) (?:\w+ ){1,3}(?:for|to)\b/;

const beside: ReadonlySet<string> = new Set([
  'so',
  'and',
  'then',
  'say',
  'about',
  'in',
  'another',
  'please',
  'i',
  'think',
  'reckon',
  'call',
  'it',
  'make',
  'that',
  'a',
  'an',
]);
/** "twelve months", "six months then": a length of time and nothing else. */
export function timeAlone(tokens: readonly Token[]): FollowUp['after'] {
  const at = tokens.findIndex((_, i) => readAmount(tokens, i) !== undefined);
  const amount = at < 0 ? undefined : readAmount(tokens, at);
  const unit = tokens[amount?.to ?? -1]?.t ?? '';
  return amount !== undefined &&
    Object.values(timeUnits).some((forms) => (forms as readonly string[]).includes(unit)) &&
    tokens.every(({ t }, i) => (i >= at && i <= amount.to) || beside.has(t))
    ? afterIn(tokens)
    : undefined;
}

const nextTime = { said: 'next time' } as const;
export function afterIn(tokens: readonly Token[]): FollowUp['after'] {
  const words = tokens.map(({ t }) => t);
  for (let at = 0; at < tokens.length; at += 1) {
    if (words[at] === 'fortnight' || words[at + 1] === 'fortnight') return { value: 2, unit: 'week' };
    if (/^(?:yearly|annual|annually)$/.test(words[at] ?? '') && readAmount(tokens, at - 1) === undefined) return { value: 1, unit: 'year' };
    const article = ['a', 'an', 'one'].includes(words[at] ?? '');
    const amount = readAmount(tokens, at) ?? (article ? { value: 1, to: at + 1 } : undefined);
    if (amount === undefined) continue;
    const unit = (Object.keys(timeUnits) as (keyof typeof timeUnits)[]).find((u) => timeUnits[u].includes(words[amount.to] ?? ''));
    // "twenty two year old"
    if (unit === undefined || words[amount.to + 1] === 'old') continue;
    const about = ['about', 'around', 'roughly'].includes(words[at - 1] ?? '');
    return {
      value: typeof amount.value === 'number' ? amount.value : ([amount.value[0], amount.value[1]] as [number, number]),
      unit,
      ...(about ? { about } : {}),
    };
  }
  const said = season.exec(words.join(' '))?.[0];
  return said === nextTime.said ? nextTime : said ? { said } : undefined;
}
