/** Advice to whoever feeds the horse, said as it is asked of them and not as told: "would you soak his hay from now on". */
const feed = '(?:hay|haylage|hard feed|feed|food|forage|chaff|chop|nuts|cubes|pellets|beet|mash|straw|bucket|net|haynet|fibre|bran|carrots|apples|alfalfa|lucerne|grass)';
const wetting = '(?:soak|steam|damp|dampen|wet|soften|moisten)',
  wetted = '(?:soaked|steamed|damped|dampened|wetted|softened|wet)',
  wet = '(?:soaking|steaming|damping|dampening|wetting|softening)';
const whose = '(?:\\w+ ){0,3}?',
  him = '(?:him|her|it|them|the horse|the mare|the pony|the lad)';
const time = '(?:tomorrow|(?:the )?(?:rest of the |next )?(?:day|week|weekend)|(?:a|an|one|two|three|four|five|six|seven|ten|few|couple)(?: \\w+){0,2}? (?:day|days|week|weeks|fortnight|month))';
const often = '(?:once|twice|three times|daily|every|morning and night|after (?:each|every) feed)';
const till = '(?:for (?:a|an|one|two|three|four|five|six|seven|ten|the|another)|until|till|tonight|today|tomorrow|overnight)';
const ground = '(?:off|from|on|at) (?:the )?(?:floor|ground)';

/** What is asked: the words that are kept begin here. */
const asks = [
  `(?:be )?(?:${wetting}|${wet}) (?:down )?${whose}${feed}`,
  `feed(?:ing)? (?:${him}|${whose}${feed}) ${ground}`,
  `feed(?:ing)? ${him} ${whose}${feed}`,
  `feed(?:ing)? ${whose}${feed} ${wetted}`,
  `(?:keep|keeping|put|putting|switch|swap|move|change) ${him} (?:off|onto|on to|over to|on|to) ${whose}${feed}`,
  `give ${him} (?:his |her |some |a )?(?:${wetted}|soft|short|chopped) ${whose}${feed}`,
  // What the owner is to watch for.
  `(?:ring|call|phone|text|message|shout)(?: (?:me|us|in|the (?:office|clinic|surgery|practice|yard)))?(?: (?:straight away|at once|right away|any ?time))? if (?!you\\b)`,
  `(?:give|drop) (?:me|us) a (?:ring|call|shout|bell|text|line|buzz) if (?!you\\b)`,
  `let (?:me|us) know if (?!you\\b)`,
  '(?:watch|keep an eye|look)(?: out)? (?:for|that) (?:any |the |some )?(?:swelling|bleeding|blood|quidding|discharge|smell|heat|choke|dropping)',
  // Care of where the work was done, and what waits until the sedation is gone.
  `(?:keep|get) (?:the|that|this|it|his|her)(?: \\w+){0,3}? (?:rinsed|flushed|clean|washed|bathed)`,
  `(?:rinse|bathe|wash|flush|clean) (?:it|that|the|his|her)(?: \\w+){0,6}? ${often}`,
  `(?:do not|never) (?:ride|work|lunge|hack|drive|feed|exercise) ${him}`,
  `(?:hold|lay|keep|stay|leave) off (?:the )?(?:riding|ridden work|work|working|lunging|hacking|exercise|feeding|feed|hay)`,
  `(?:leave|keep) ${him} (?:in|inside|tied up|off|stood)(?: \\w+){0,4}? (?:until|till|overnight)`,
  `(?:leave|leaving|give|giving) (?:off |the )*(?:riding|jumping|schooling|hacking|ridden work|lunging|galloping|competing)(?: ${him})? (?:a (?:miss|rest|break)|alone|off|till|until|for|a few|a couple|out)`,
  `(?:do not|never|not) (?:ride|work|lunge|hack|drive|jump|school|gallop|compete|box) ${him}`,
  // Rest, of no bit.
  `(?:give|let) ${him} (?:have )?(?:the rest of |rest of )?${time} off`,
  `(?:cut(?:ting)? (?:out|down on|back on)|stop|stopping|avoid|avoiding|lay off|ease off) ${whose}${feed}`,
];
/** Asked of what is fed or of the horse. */
const wants = '(?:wants?|needs?|should be|ought to be|has to be|have to be|must be|would be better|would be best|is to be|are to be|better be)';
const wanted = [
  `(?:his |her |its |the |all )?(?:\\w+ )?${feed} (?:really )?${wants} (?:${wet}|${wetted})`,
  `(?:he|she|it|they) (?:really )?${wants} (?:fed|feeding) (?:${ground}|${whose}${feed})`,
  `(?:he|she|it) (?:will )?(?:want|wants|need|needs|could do with) ${time} off`,
  `${time} (?:off|rest) for ${him}`,
  `(?:if|any) (?:\\w+ ){1,8}?(?:you |just |then |and you )*(?:ring|call|phone|text|give) (?:me|us)(?: a (?:ring|call|shout|bell|text|buzz))?$`,
  `(?:no|nothing)(?: more)? (?:riding|ridden work|work|lunging|hacking|exercise|feed|food|eating|to eat|hard feed|hay|grass) ${till}`,
  `(?:soft|wet|sloppy|soaked|short) (?:feed|feeds|food|mash|mashes|diet)(?: only)? ${till}`,
  '(?:salt|salty|saline) (?:water )?(?:rinses|rinse|washes|wash|flushes|bathing)',
  'back (?:to|into) (?:normal |full |light |ridden )*(?:work|feed|riding|exercise) (?:tomorrow|on|from|next|after|in)',
  `no (?:more )?${whose}${feed} (?:for|until|till|from now|please)`,
];

/** How one asks; nothing, or a bare word of politeness, is the plain imperative. */
const leads =
  "(?:(?:and|so|then|now|well|right|okay|just|please|maybe|perhaps|definitely|probably|really|always|meantime|meanwhile|(?:and )?(?:until|till) then|from (?:now|here) on|in the mean ?time|for now|i (?:would|should|'d)(?: (?:really|just))?(?: (?:like|want|love|ask|get) (?:you|her|him|them) to)?|i want (?:you|her|him|them) to|you (?:will |would |'d |really )?(?:want to|need to|should|ought to|could(?: do with)?|might want to|may want to|have to|had better|'d better|must|are to)|(?:would|could|can|will) you(?: just)?|if you (?:could|can|would)|(?:he|she|it) (?:would|'d) be (?:better|best) (?:off )?(?:if you )?|(?:it would be )?(?:best|better)(?: off)?(?: if you| to)?|try(?: to| and)?|make sure (?:you|to|they)|get (?:her|him|them) to|(?:it is |might be |it might be |would be )?worth|owner to|be) )*";

const sentence = '^(?:' + leads + ')';
export const advised = new RegExp(`${sentence}(?<text>(?:${asks.join('|')})\\b.*)$`);
export const wantedSo = new RegExp(`^(?:(?:and|so|then|now|please|really|i think|i would say) )*(?<text>(?:${wanted.join('|')})\\b.*)$`);
/** "He's better fed off the floor", where it is asked for. */
export const betterFed = new RegExp(`^(?:(?:and|so) )*(?:he|she|it) (?:would|'d) be (?:better|best)(?: off)? (?<text>fed (?:${ground}|${whose}${feed})\\b.*)$`);
const who = '(?:mum|dad|(?:the )?(?:owner|groom|rider|yard|girl|lad|yard manager)|them|her|him|you)';
/** "What I've told mum is short chop only", "I've told dad it's soaked hay for a week": what they were told, where it is of feed. */
export const toldThem = new RegExp(`^(?:(?:and|so|then|now) )*(?:what )?(?:i|we) have (?:told|said to|asked) ${who} (?:(?:it|that) )?(?:is|it has to be|just|only|to (?:feed|give|stick to)) (?<text>.*\\b${feed}\\b.*|(?:short )?chop\\b.*)$`);
/** "She's to check the left cheek for packed feed every day": what they are to do, day by day. */
export const daily = /^(?:(?:and|so|then|now) )*(?:he|she|they|mum|dad|(?:the )?(?:owner|groom|rider|girl|lad|yard manager)) (?:is|are|has|have|needs?) (?:going )?to (?<text>(?:check|look|feel|watch|flush|rinse|clean|inspect|pick|wash|bathe|syringe)\b.*\b(?:every|each|twice a|once a|three times a) (?:day|morning|night|evening|week|feed|other day))$/;
/** "Advised a thinner bit", "I'd try him in a mullen mouth". */
export const bitAdvised = /^(?:(?:and|so|then|also|i have|i|we|would|'d|really|just|maybe|owner) )*(?:advised|advise|advising|recommended|recommend|suggested|suggest|suggesting|try|trying)(?: (?:her|him|them|the owner|mum|dad|the rider))?(?: to)? (?<text>(?:\w+ ){0,8}?(?:(?<!\b(?:a|little|quite|every|wee) )bits?|mouthpiece|lozenge|snaffle|mullen|bridle|noseband|saddle|hackamore|happy mouth|loose ring|eggbutt|french link|curb|cavesson|flash)\b(?! (?:seats?|more|of|off|room)\b).*)$/;
const trouble = '(?:blood|bleeding|swelling|smell|bother|problems?|trouble|issues?|eating|discharge|heat|soreness|concerns?|worries|worse|quidding|dropping|pain|signs?|colic|choke|reaction|pus|change|changes)';
/** "Any bleeding after tomorrow, phone me straight away": over a pause. */
export const ringIf = new RegExp(`^(?:(?:and|so|but|then) )*(?<text>(?:if|any|with any|should)\\b(?=.*\\b${trouble}\\b).* (?:ring|call|phone|text|message|shout|(?:give|drop) (?:me|us) a (?:ring|call|shout|bell|buzz|text|line)|let (?:me|us) know)(?: (?:me|us|the office|the yard))?(?: (?:straight ?away|at once|right away|asap|any ?time|day or night|immediately|first))*)$`);
/** Polite words behind it are no part of what is kept. */
export const politeEnd = /(?: (?:please|will you|would you|if you (?:can|could|would)|okay|right|all right|then))+$/;
/** Without one of these words nobody asks it. */
export const advisedWords: readonly string[] = ['drop', 'advised', 'advise', 'advising', 'recommended', 'recommend', 'suggested', 'suggest', 'suggesting', 'try', 'trying', 'do', 'never', 'not', 'any', 'soak', 'steam', 'damp', 'dampen', 'wet', 'soften', 'moisten', 'soaking', 'steaming', 'damping', 'dampening', 'wetting', 'softening', 'soaked', 'steamed', 'feed', 'feeding', 'fed', 'keep', 'keeping', 'put', 'putting', 'switch', 'swap', 'move', 'change', 'give', 'cut', 'cutting', 'stop', 'stopping', 'avoid', 'avoiding', 'lay', 'ease', 'ring', 'call', 'phone', 'text', 'message', 'shout', 'let', 'off', 'rest', 'riding', 'ride', 'hold', 'leave', 'watch', 'look', 'rinse', 'bathe', 'wash', 'flush', 'clean', 'soft', 'salt', 'saline', 'nothing', 'work', 'normal', 'sloppy', 'hay', 'haylage', 'chaff', 'chop', 'told', 'every', 'each', 'twice', 'once'];

/** Told, shown or explained to whoever keeps the horse, where it is of the horse. */
const told = '(?:told|said to|explained to|explained|explained it to|advised|asked|reminded|warned|showed|shown|mentioned to|suggested to|recommended to|let|went through|gone through|talked|said)';
const keeper = '(?:(?:the |his |her |their )?(?:owner|owners|groom|grooms|rider|yard|girl|girls|lad|lads|lass|yard manager|trainer|loaner|handler|client|husband|wife|daughter|son|boss|missus)|mum|mam|mom|dad|them|her|him|you|both of them)';
export const ofTheHorse = `(?=.*\\b(?:${feed.slice(3, -1)}|feeds|feeding|fed|soak|soaked|soaking|bit|bridle|bitless|ride|riding|ridden|work|ring|call|phone|flush|flushing|rinse|rinsing|syringe|syringing|mouth|tooth|teeth|gap|gaps|smell|hook|hooks|eating|eats|chew|chewing|chews|swelling|swells|socket|wear|break|fracture|chart|recheck|weigh|quid|quids|quidding|wolf|caps|floor|ground|clean|bleeding|bleeds|sharp|points|ulcer|ulcers|painkillers|bute|teething|turnout|turn out|field|box|dust|stable)\\b)`;
export const toldOfIt = new RegExp(`^(?:(?:and|so|then|now|also|well|i have|we have|i|we|have|had|just|already|did) )*${told} (?:to )?${keeper} (?:(?:that|how|to|about|it is|it has to be) )*${ofTheHorse}(?<text>.+)$`);
export const toldPassive = new RegExp(`^(?:(?:and|so|then) )*(?:${keeper}|she|he|they) (?:(?:is|are|has|have|was|were|been|all|already|is been) )*(?:told|advised|asked|shown|warned|reminded|knows?|going) (?:(?:to|that|how to|how) )${ofTheHorse}(?<text>.+)$`);
/** Nobody is named: "said to feed him off the ground", "advised against straw", "explained it's an old break". */
export const toldBare = new RegExp(`^(?:(?:and|so|then|now|also|i have|we have|i|we) )*(?:said (?:to )?|explained |warned |advised (?=against ))(?:(?:to|that|about|it is|it) )*${ofTheHorse}(?<text>.+)$`);
const wetFeed = '(?:soaked|steamed|soft|wet|sloppy|short|small|damp|chopped|mushy)';
/** What is to be fed, and for how long. */
export const feedOnly = new RegExp(
  `^(?:(?:and|so|then|just|only) )*(?<text>(?:${wetFeed} )+(?:wet )?(?:${feed.slice(3, -1)}|feeds)(?: only)? (?:for|until|till|from|the next)\\b.*|hand feed (?:him|her|it)\\b.*|feed(?:ing)? (?:off|from|on) (?:the )?(?:floor|ground)\\b.*|wet everything down\\b.*|${feed} instead of ${feed}\\b.*|(?:only|just|nothing but) (?:${wetFeed} )?${feed} from (?:now|here) on\\b.*|(?:no|nothing) (?:nuts|hard feed|long hay|hay|haylage|carrots|apples|straw|chaff|alfalfa) (?:with (?:that|those|this)|from now|till|until|for)\\b.*|nothing in (?:his|her) mouth (?:for|until|till)\\b.*|no long (?:hay|haylage|fibre|stuff|stems))$`,
);
/** Of several things asked in one breath one may be the feed alone. */
export const feedAlone = new RegExp(`^(?:(?:and|so|then|just|only) )*(?<text>(?:${wetFeed} |no |no long |no more |no hard )+(?:${feed.slice(3, -1)}|feeds)(?: only)?)$`);

const without = [
  'no (?:bit|bridle|metal)(?: in(?: (?:his|her) mouth| him| her| there)?)?',
  '(?:keep|keeping|leave|leaving|left|kept) (?:the|his|her|that|any) (?:bit|bridle|snaffle) (?:out|off)(?: (?:of )?(?:him|her|it|(?:his|her) (?:mouth|head)))?',
  '(?:stay|staying|stays|keep|keeping|keep him|keep her|leave him|leave her|kept|be|to be) (?:out of|off) (?:a|the) (?:bit|bridle)',
  'out of (?:a|the) (?:bit|bridle)',
  '(?:the )?bit (?:stays |is staying |to stay |kept )?out',
  '(?:not|never) (?:to )?(?:be )?(?:bit (?:him|her)|bitted|(?:put|have|use) (?:a|the) bit(?: (?:in|on|near))?(?: (?:him|her|(?:his|her) mouth))?|(?:ride|ridden|work|worked)(?: (?:him|her))? (?:in|with) (?:a|the) bit)',
  '(?:rest|rested|resting) (?:him |her )?from the bit',
  '(?:ride|ridden|riding|hack|hacked|work|worked|try|go|goes|lunge) (?:him |her )?(?:without a bit|bitless|in (?:a|the|just a) (?:headcollar|bitless bridle|hackamore|halter))',
];
/** "Keep the bit out till that corner's healed": until when there is to be no bit. */
export const noBitUntil = new RegExp(`^(?:[\\w']+ ){0,7}?(?:${without.join('|')})(?: [\\w']+){0,3}? (?<after>(?:till|until|til|before|unless) .+)$`);
export const bitBackOnce = /^(?:[\w']+ ){0,6}?(?:(?:the |a |his |her )?bit back in|back in (?:the|a|his|her) (?:bit|bridle)|(?:have|wear|put) (?:the|a|his|her) bit (?:in )?again) (?<after>(?:once|when|after|as soon as|whenever) .+)$/;
/** Behind "told mum no bit till I've been back": when that is. */
export const thatIsIn = /^(?:and )?(?:that's|that is|that will be|which is|which will be|it will be) in (?:about )?/;
/** Without one of these, or of the words above, nothing of the kind is said. */
export const tellsNext: readonly string[] = ['told', 'said', 'explained', 'advised', 'asked', 'reminded', 'warned', 'showed', 'shown', 'suggested', 'recommended', 'talked', 'went', 'gone', 'knows', 'know', 'bit', 'bridle', 'bitless', 'hand', 'feed', 'nuts', 'hay', 'haylage', 'small', 'short'];
