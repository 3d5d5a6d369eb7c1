/** What comes next, and work by its tool, told in everyday words; each with the plain words of the trade that say the same. */
const tool = '(with|using) [(a|the|my)] [(hand|power|electric|motorised|motorized)] (rasp|float|file|rasps|floats|files|tools)';
const him = '(him|her|it|them|this one|that one)';
const he = '(he|she|it|they|this one|that one)';

interface Everyday {
  readonly say: readonly string[];
  readonly plain: string;
  /** Only where a length of time or a season stands right behind. */
  readonly time?: true;
  /** Words behind, up to the pause, that belong to it. */
  readonly closing?: readonly string[];
  /** What stands for them; "as said" keeps them. */
  readonly close?: string;
  /** Only as all that stands before a pause, with one of these right behind it. */
  readonly behind?: readonly string[];
}

export const everydaySay: readonly Everyday[] = [
  { plain: 'rest of the incisors', say: ['[(and|but)] [the] (rest|others|remainder) of [(the|his|her|them|those)] (front ones|front teeth|fronts)', '[the] other front (ones|teeth)'] },
  { plain: 'nothing else on the incisors', say: ['nothing (else|more) [(up|down|going on)] (at the|the|in|in the|out) front'] },
  ...['is', 'are', 'looks', 'look', 'feels', 'feel'].map((verb): Everyday => ({ plain: `${verb} fine`, say: [`${verb} (alright|all right)`] })),
  { plain: 'crest at', say: ['[the] (top|peak|worst|height|highest point|high point|highest part|highest bit) of it [(is|being)] [just] (at|on|round|about|by)', '[the] (high point|highest point|highest part|highest bit) [is] (at|on|by)'] },
  ...['on', 'in', 'at', 'there', 'anywhere'].map((where): Everyday => ({ plain: `nothing else ${where}`, say: [`otherwise nothing [(else|much)] ${where}`, `nothing otherwise ${where}`, `(apart from|other than|bar|besides) that nothing [else] ${where}`] })),
  ...['loose', 'wobbly', 'mobile', 'cracked', 'fractured', 'sharp', 'worn', 'rotated', 'displaced'].map((how): Everyday => ({ plain: `no other teeth ${how}`, say: [`nothing else [(is|looks|feels|seems)] ${how}`, `none [of the (others|rest)] [(is|are)] ${how} elsewhere`, `nothing ${how} (elsewhere|anywhere else)`, `none of the (others|rest) (is|are|look|feel) ${how}`] })),
  { plain: 'there', say: ['there yet'] },
  {
    plain: 'bit seats already on',
    say: ['(somebody|someone|somebody else|someone else|whoever|the last (one|dentist|man|person|fella|fellow|lad)) [(is|has|had)] [already] (put|made|cut|done|did) [(the|some|a|in)] bit seats [in] (on|in|at)', '(somebody|someone|somebody else|someone else|the last (one|dentist|man|person)) [(is|has|had)] [already] bit seated'],
  },
  {
    plain: 'rasped',
    say: [
      '[(just|only|simply)] [(a|the|his|her|another)] (routine|regular|light|quick|simple|standard|normal|usual|general|maintenance|bog standard|straightforward|basic) [(maintenance|light|quick|routine|little)] (rasp|float|rasping|floating) [today]',
    ],
    behind: ['nothing [(else|at all)] (abnormal|unusual|untoward|of note|amiss|nasty)', '(no|nil) (abnormality|abnormalities|abnormal)', '[(all|everything|mouth|the mouth|the rest)] [is] normal'],
  },
  { plain: 'rasped', say: ['(went|gone|been|going|ran|run|whizzed|zipped|nipped) (over|round|along|around)', '(had|did) [just] a [(quick|good|light|wee|little)] (run|whizz|go) (over|round|along|around)', '(finished|finishing) [(him|her|it|them)] off'], closing: [tool], close: 'as said' },
  {
    plain: 'recheck in',
    time: true,
    say: [
      `(do not|would not|must not|never) (leave|let) ${him} [go] [any] (longer than|more than|over|past|beyond)`,
      `that will do ${him} [for] [another]`,
      `that's ${him} [(sorted|done|good|right|set)] (for|until|till) [another]`,
      `[${he}] (good|grand|fine|right|sorted|set|done) for another`,
      `${he} will (go|do|last|be (good|fine|grand) for) [(another|for)]`,
      `(book|pencil|put|write|stick) (me|us|${him.slice(1, -1)}) [back] (in|down) [again] [(for|in)]`,
      `(put|stick|get) ${him} in the (book|diary) for`,
      `[i will] catch ${him} again in`,
      `(see|do) ${him} inside`,
      `${he} wants to be on a`,
      '(needs|wants|want|need) to be',
    ],
  },
  { plain: 'recheck by', time: true, say: [`(get|have|want|wants|need|needs) ${him} (done|seen|checked|looked at) again`, '(need|needs|want|wants) looking at again'] },
  { plain: 'recheck', say: ['(remind me to|i must|must|i will|will) (check|look at|have a look at) [again]', '[i will] have another look at', '(will|must|to) (look at|check|have a look at) again'], closing: ['[(at|on) [the]] next (time|visit) [(i am here|round|out)]', '(when|next time) i am (back|here) [next]'], close: 'next time' },
  { plain: 'monitor', say: ['worth (watching|keeping an eye on)', 'keep (half an|one|a bit of an|your) eye on', 'wait and see (with|on|about)', '[just] going to watch'] },
  { plain: 'monitor', say: ['(we will|i will|let us|just|wait and) see how'], closing: ['(goes|does|gets on|comes on|settles|settles down|looks|heals|is doing) [(with (it|that)|from here|next time|then|first)]'] },
  { plain: 'monitor', say: ['[let us] leave', "let's leave"], closing: ['and see [(how (it|that) goes|what happens|what it does)]'] },
  { plain: 'no bit for', time: true, say: ['no bit', '(ride|hack|work|lunge|drive|bridle) [(him|her|it)] [out] (in (a|the) (headcollar|halter|hackamore|bitless bridle)|bitless|without a bit|with no bit) [for]'] },
  { plain: 'no bit for', time: true, say: ['(start|put|get|have) (him|her|it) back in (the|a) bit in', 'back in (the|a) bit in', '(he|she|it) can (go|be) back in (the|a) bit in', '(he|she|it) can (have|wear) (the|a) bit [in] again in'] },
  { plain: 'no bit until', time: true, say: ['(he|she|it) can (go|be) back in (the|a) bit (on|from|after)'] },
  {
    plain: 'no bit for',
    time: true,
    say: [
      '(do not|would not|should not|[is] not to|never) (put|have|use) a bit [(in|on)] [(him|her|it)]',
      '(do not|would not|should not|never) (ride|work|drive) (him|her|it) (in|with) a bit',
      '(do not|would not|should not|never) bit (him|her|it)',
      '([is] not to be|rather (he|she|it) was not) (bitted|ridden in a bit)',
      '(keep|leave) the bit out [of (his|her|him|its) [mouth]]',
      'no bit [in (him|her|(his|her|the) mouth)]',
      '(stay|keep) out of the bit',
    ],
  },
];

/** Who was told something, before it. */
export const telling: readonly string[] = ['told', 'tell', 'advised', 'asked', 'reminded', 'suggested', 'recommended', 'owner'];
