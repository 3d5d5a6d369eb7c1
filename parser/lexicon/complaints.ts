/** What the owner or the rider complains of, in everyday words; each with the plain words of the trade that say the same. */
const feed = '(?:(?:his|her|its|the|their|all|that|any|some|a|an|hard|half|most|of|bits|bit|much|whole|chewed|half chewed|wet|morning|evening) )*(?:hay|haylage|hard feed|feed|food|forage|chaff|nuts|cubes|pellets|grain|oats|mash|net|haynet|dinner|breakfast|tea|bucket|grass|bucket feed|supper|alfalfa|chop|beet|carrots|apples|cud|it all|everything|mouthfuls)';
const him = '(?:him|her|it)';
const his = '(?:his|her|its|the|their)';
const ages = "(?:half the (?:night|day|morning)|all (?:night|day|morning)|the whole (?:night|day|morning)|ages|forever|an age|for ever|a (?:long|lot of) (?:time|while)|a long old time|a good while|an? (?:good )?(?:hour|hour or more|hour and a half)|hours|two hours|three hours|twice as long|three times as long|longer|a lot longer|much longer|far longer|twice the time|the guts of (?:an|two|three) hours?|a month of sundays|an eternity|so long|(?:him|her) (?:ages|forever|an age|hours|an hour|all (?:night|day)|half the (?:night|day)|twice as long|longer|so long|a long time|two hours|the whole night))";
const ridden = `(?:when (?:he|she|it) is (?:ridden|worked|working|schooled|on the bit|out hacking|in the school|being ridden)|when (?:they|she|he|i|the girl|the owner|the rider|anyone|anybody) (?:rides?|school|schools|hacks?|works?|asks?|takes? up|picks? up|gets? on|is riding|are riding|rode|has the bit in|takes a contact)(?: ${him}| up the contact| the contact| a contact)*|(?:when )?ridden|under saddle|to ride|when riding|out (?:hacking|riding)|on the (?:left|right|near|off|one|other|both) (?:rein|hand)|on (?:either|both|one|the) reins?|in the (?:school|arena|bridle|contact|contact|walk|trot|canter)|to the (?:left|right)|going (?:left|right)|in (?:trot|canter|work)|being ridden|with the bit|with a bit|at (?:trot|canter)|on the lunge|in draft|in harness|out driving|at speed|over fences)`;
/** How long it has gone on: it is of today. */
const span = '(?:(?:the )?(?:last|past|about|a|an|few|couple|of|good|some|wee|two|three|four|five|six|eight|ten|day|days|week|weeks|fortnight|month|months|year|while|bit|now|or so|or|this|winter|summer|spring|autumn|fall|back end|new year|christmas|easter|then|january|february|march|april|may|june|july|august|september|october|november|december|season|time|late|early|mid|end|start|in|ages|long)(?: |$))+';
export const ongoing = `(?: since (?:the|his|her|our|my|i|we|you) last (?:rasp|float|visit|dental|time|check|treatment|did him|did her|saw him|saw her|was here|were here)| (?:since|over the|for|this|these|the (?:last|past)|all (?!last)|about)(?: (?:about|maybe|around|roughly|only|just|nearly|at least|over|the))* (?!(?:\\w+ )*?(?:ago|back)\\b)${span})?`;

export interface Complaint {
  readonly plain: string;
  readonly say: readonly string[];
}

export const complaints: readonly Complaint[] = [
  {
    plain: 'slow eating',
    say: [
      `(?:(?:very|quite|awful|terribly|so|really|a bit|fierce|wild) )*slow(?:er)? (?:at |about |in )?(?:eating|finishing|clearing|chewing|munching|working (?:his|her) way through|getting through|over|with|on|at|to eat|to finish|to clear|to get through|to chew)(?: up)?(?: (?:through|at|with|on))? ${feed}(?: up)?`,
      `(?:eats?|eating|chews?|chewing|munches|munching|finishes|finishing|clears|clearing)(?: up)? ${feed} (?:(?:very|quite|awful|really|so|more|a lot|much|too|terribly|pretty|fierce) )*(?:slow|slowly|slower)`,
      `(?:takes?|taking|took|spends?|spending) ${ages}(?: (?:to (?:eat|finish|clear|get through|work through|do|chew|get)|over|with|eating|finishing|chewing|at|on|clearing|getting through))(?: up)?(?: ${feed}(?: up)?| (?:what|a) .*)?`,
      `(?:(?:a lot|much|way|far|a bit|noticeably|a good bit) )?slower than (?:he|she|it|usual|normal|the others|before)(?: (?:used to be|was|usually is|normally is|is))? (?:with|at|on|over|to (?:eat|finish)) ${feed}`,
      `(?:an hour|half an hour|ages|well|always|hours|a long way|miles) (?:after|behind) (?:the others|everyone else|everybody else|the rest)(?: (?:of them|with|finishing|to finish|at|eating))+(?: ${feed})?`,
      `(?:is |was )?(?:the |always |usually )*last (?:one |horse )?(?:on the yard |in the barn |in the field )?to (?:finish|clear|eat)(?: up)?(?: ${feed})?`,
      `(?:(?:very|quite|awful|really|so|a bit|fierce|shocking) )*slow (?:eater|feeder|chewer)`,
      `(?:(?:very|really|so) )*slow (?:at|with|about|over|on) (?:his|her) (?:feed|hay|food|grub|dinner)`,
      `(?:is |has been |been )?(?:eating|chewing) (?:(?:very|really|so|awful|a lot|much) )*(?:slow|slower|slowly)(?: than (?:he|she|it|usual|normal|the)(?: \\w+){0,3})?`,
    ],
  },
  {
    plain: 'quidding',
    say: [
      `quidding(?= (?:since|this|these|the|for|over|all) )`,
      `(?:drop|drops|dropping|dropped|spill|spills|spilling|spilt|spilled|spit|spits|spitting|spat|lose|losing|loses|let|lets|letting|slop|slopping) (?:out |away |about )?(?:(?:balls|lumps|wads|bits|clumps|mouthfuls|wodges|gobs|half|most|a lot|lots|some|loads|plugs|sausages|cigars|rolls|sausage shapes) (?:of )?)?${feed}(?: (?:all over(?: the (?:place|shop|floor|yard|stable|box))?|back out|out|everywhere|on the (?:floor|ground)|out of ${his} mouth|from ${his} mouth|fall out|half chewed|chewed up|as (?:he|she) eats|when (?:he|she|it) (?:eats|is eating|chews|is chewing)|while (?:he|she|it) (?:eats|is eating)|around the place|down ${him}self|in the bucket))*`,
      `(?:there is |there are |she is finding |they are finding |finding |finds |found |she finds |she gets |getting |owner finds )?(?:(?:a lot of|lots of|some|wee|little|big|these) )*(?:wads|balls|lumps|plugs|quids|wodges|clumps|rolls|sausages|cigars|half chewed bits|chewed lumps|chewed balls|chewed wads|chewed bits)(?: of)?(?: (?:(?:half |part |partly )?chewed(?: up)?|wet|slobbery))*(?: (?:hay|haylage|grass|feed|forage|fibre))? (?:(?:all over|on|in|under|around|about|everywhere|dropped|lying|left|round|beside|below|by|across) ?)+(?:the )?(?:stable |box |stall |barn )?(?:floor|manger|bucket|stable|ground|bed|bedding|box|stall|net|haynet|mat|mats|place|banks|door|feeder|rack|yard|field)(?: (?:every|each|in the) (?:morning|day|night))?`,
      `${feed} (?:is |was |are |just |keeps? )*(?:falling|falls|fall|dropping|drops|coming|comes|hanging) (?:back )?(?:out|from)(?: of)? ${his} (?:mouth|lips|gob)(?: when (?:he|she|it) (?:eats|chews|is eating|is chewing))?`,
      `(?:half|most|a lot|lots|some|more) (?:of )?${feed} (?:ends up|goes|landing|lands|is|finishes up|winds up|ending up) (?:back )?(?:on|all over|in|under)(?: the)? (?:floor|ground|bed|bedding|manger|stable|box|water|mat|front of him|front of her)`,
      `(?:rolling|rolls|rolled|turning|turns|making|makes|balling|balls|chewing|chews) ${feed} (?:up )?(?:into|in to) (?:cigars|balls|wads|sausages|rolls|plugs|lumps|quids)`,
      `(?:dribbling|dribbles) ${feed}(?: out| out of (?:his|her) mouth)*`,
      `(?:making|makes|made|rolling|rolls|rolled) (?:balls|quids|wads|cigars|sausages)(?: (?:of|out of|with) ${feed})?`,
    ],
  },
  {
    plain: 'one sided chewing',
    say: [
      `(?:eats?|eating|chews?|chewing|ate|munches|munching|using|uses)(?: (?:all|only|mostly|mainly|just|everything|his food|her food|his hay|her hay|his feed|it|mostly))* (?:out of|on|with|from|down|to) (?:just |only )?(?:the |his |her )?(?:one|left|right|near|off|same|left hand|right hand)(?: hand)?(?: side)?(?: (?:of (?:his|her|the) (?:mouth|face|jaw)|only|all the time|mostly|mainly|always|more|more than the other))+`,
      `(?:eats?|eating|chews?|chewing|munching) (?:lopsided|lop sided|crooked|one sided|sideways|unevenly|uneven|all to one side|to the one side|to one side|on the one side|on one side|only one side|round and round on (?:the )?one side|mainly on the one side|to the (?:left|right|near|off)(?: side)?)`,
      `(?:will|does|did|would) not (?:chew|eat|use) (?:on |with )?(?:the |his |her )(?:left|right|near|off)(?: hand)?(?: side)?(?: (?:at all|of his mouth|of her mouth|to chew|to eat))*`,
    ],
  },
  {
    plain: 'halitosis',
    say: [
      `breath (?:(?:is|has|was|been|has been|is been|really|absolutely|very|quite|a bit|so|just|pretty|got|getting|gone|smelling|smelt|smells|smelled) )+(?:bad|foul|rotten|terrible|awful|rank|smelly|stinking|horrible|minging|honking|manky|off|strong|vile|putrid|disgusting|shocking|desperate|something terrible|worse|not nice|not great|whiffy|rancid|grim|gross|ripe|high|a bit off|funny|sour)`,
      `(?:(?:bad|foul|rotten|terrible|awful|rank|horrible|nasty|strong|funny|sour|vile|an awful|a bad|a terrible|a foul|a rotten|a horrible|a nasty|a strong|a funny|a sour|a|some|shocking|fierce) )+(?:smell|stink|pong|whiff|reek|odour|odor|hum) (?:off|from|out of|coming from|coming out of|coming off|on|of|about|around|in) (?:his|her|its|the)(?: \\w+)? (?:mouth|breath)(?! of)`,
      `${his} breath (?:would|could|has|is) (?:\\w+ )?(?:knock|floor|strip|kill|take|turn|clear|curl|peel|humming|honking|reeking|stinking|ponging)(?: \\w+){0,4}`,
      `(?:the )?breath (?:off|on|of|from) (?:him|her|it) (?:(?:is|was|has|been|just|really|something) )+(?:shocking|bad|foul|rotten|terrible|awful|rank|stinking|horrible|desperate|unreal|something else|something shocking|vile|brutal|unbearable|dreadful)`,
      `(?:mouth|breath) (?:(?:is|was|has|been|really|fairly) )*(?:smells?|smelling|stinks?|stinking|reeks?|reeking|pongs?|honks?|humming|hums|whiffs|whiffing|smelt|stank)(?: (?:of|like) (?!pus)(?:\\w+ ){0,2}?\\w+| (?:rotten|bad|awful|terrible|foul|rank|something (?:awful|terrible|shocking|rotten)|to high heaven|desperate|horrible|funny|sour))?`,
      `(?:bad|stinking|rank|smelly|rotten|foul|reeking|terrible|awful|horrible|nasty|manky|whiffy) (?:auld |old )?breath(?: on (?:him|her))?`,
    ],
  },
  {
    plain: 'weight loss',
    say: [
      `(?:can|could|will|does|did) (?:not|hardly|barely|never) (?:keep|get|put|hold|maintain|carry)(?: on)? (?:any |the |his |her )?(?:weight|condition|flesh)(?: (?:on|onto) ${him})?`,
      `(?:can|could) not get (?:him|her|it) to (?:put|keep|hold|gain)(?: on)? (?:any |the )?(?:weight|condition)(?: on)?`,
      `(?:(?:a )?(?:bit|lot|good bit|touch) )?(?:lighter|thinner|leaner|poorer|leaner looking) than (?:she|he|they|i|we|usual|last|normal|it)(?: (?:would|'d|had|was|like|likes|want|wants|should|he|she|is|time|be|usually))*`,
      `(?:gone|going|went|fallen|slipped) back (?:a )?(?:good |fair |little |wee )*(?:bit|lot|deal)(?: in (?:condition|weight|himself|herself))?`,
      `(?:struggling|struggles|struggled|finding it hard|finds it hard|hard|difficult|a job|a devil|a battle|bother|trouble|having trouble|having bother) (?:to )?(?:keep|keeping|get|getting|put|putting|hold|holding|maintain|maintaining) (?:any |the |his |her )?(?:weight|condition|flesh)(?: (?:on|onto)(?: ${him})?)?`,
      `(?:weight|condition|flesh) (?:(?:is|was|has|been|just|really|all|keeps) )*(?:falling|fell|dropping|dropped|melting|melted|coming|fallen|going|gone|peeling|poured|pouring) (?:off|away)(?: (?:of )?${him})?`,
      `(?:gone|going|went|fallen|dropped|dropping|falling|slipped|slipping) (?:right |really |badly |very |back |all |away |off )*(?:poor|thin|ribby|lean|light|skinny|to nothing|back in (?:condition|weight|himself|herself)|off in (?:condition|weight)|away in (?:condition|weight)|a lot of (?:weight|condition)|weight|condition)`,
      `dropped (?:right |a bit |a lot |badly |away )*off (?:badly|a lot|something|in (?:weight|condition))`,
      `(?<!muscles? )(?:is |looks |looking |was |fairly |a bit |very |quite |gone |really |too )+(?:ribby|skinny|skin and bone|thin|tucked up|poor looking|scrawny|bony)(?=$| (?:over|since|this|for|and|coming|these|now|the|at|behind|despite|for all|even))|^ribby|you (?:can|could) (?:see|count|feel) (?:all |every one of )?(?:his|her) ribs|ribs (?:showing|sticking out|on show)`,
      `(?:lost|losing|loses|shed|shedding) (?:loads of|lots of|a load of|too much|such a lot of|an awful lot of|serious|a shocking amount of|a good deal of|a ton of|his|her|all his|all her) (?:weight|condition|flesh)`,
    ],
  },
  {
    plain: 'head shaking',
    say: [
      `(?:shak|toss|fling|chuck|throw|flick|flip|snatch|nod|bob|swing|twist|jerk|lash)(?:es|s|ing|ed)? ${his} head(?: (?:about|around|up|up and down|back|down|sideways|from side to side|all over|a lot|constantly|something terrible|in the air|like mad|away))* ${ridden}`,
      `(?:threw|flung|shook|swung) ${his} head(?: (?:about|around|up|up and down|back|down|from side to side|all over|in the air))* ${ridden}`,
      `head (?:is )?(?:going |flying |up |shaking |flicking |tossing |all over the place |up and down |in the air )+${ridden}`,
    ],
  },
  {
    plain: 'bit resistance',
    say: [
      `(?:will|does|did|would) not (?:take|accept|go into|go forward into|seek|work into|stay in|have|hold) (?:up )?(?:a |the |any )?(?:contact|bit)(?: on (?:the|his|her|either|one) (?:left|right|near|off)? ?reins?)?`,
      `(?:hangs?|hanging|hung) (?:on|off) (?:the |his |her )?(?:bit|hand|hands|contact|bridle)`,
      `(?:leans?|leaning|leaned|leant|pulls?|pulling|pulled|drags?|dragging|grabs?|grabbing|sets?|setting|snatch|snatches|snatching) (?:hard |badly |heavy |heavily |terribly |more )*(?:on|at|against|to) (?:the |his |her |one |that |my |their )*(?:left rein|right rein|near rein|off rein|one rein|rein|reins|bit|hand|hands|contact|bridle|left hand|right hand)`,
      `(?:opens?|opening|gaping|gapes?|crosses|crossing|grinds?|grinding|locks?|locking|crabbing) (?:with )?${his} (?:mouth|jaw|jaws|teeth)(?: (?:wide|open|a lot|all the time))* ${ridden}`,
      `(?:fussy|busy|mouthy|fidgety|unsettled|unsteady|noisy|chompy|quiet)? ?(?:fussy|busy|mouthy|fidgety|unsettled|unsteady|noisy) in ${his} mouth ${ridden}`,
      `(?:fussing|messing|playing|fiddling|chomping|champing|chewing|tussling|arguing) (?:with|on|about with|at|against) (?:the |his |her )*(?:bit|bridle|contact)(?: ${ridden})?`,
      `(?:resists?|resisting|resisted|resentful|resents?|resenting|evades?|evading|fights?|fighting|fought|spits?|spitting|ducks? behind|ducking behind|drops? behind|dropping behind|comes? above|coming above|comes? behind|coming behind|backs? off|backing off|tilts? against|not happy in|not settled in|not steady in|uneven in|one sided in|heavy in|dead in|hollow against) (?:out )?(?:the |his |her )?(?:bit|contact|bridle)(?: on the (?:left|right|near|off))?(?: ${ridden})?`,
      `(?:puts?|putting|gets?|getting|sticks?|sticking|has|draws|drawing|pulls?|pulling|lolls) (?:his |her )?tongue (?:over|out|back over|up over|back|over the top of)(?: (?:the |his |her )?bit)?(?: ${ridden})?`,
      `(?:(?:she|he|they|the rider|the girl) )?(?:can|could|will) not (?:be )?(?:get|got|put|ride|work)(?: (?:him|her))? (?:into|on|in) (?:a |the )?(?:contact|outline|bit)|(?:reluctant|unwilling|slow|not keen) to (?:(?:go|come|work) (?:forward )?(?:into|on to|onto|to)|take|accept) (?:the |a |his |her )?(?:bridle|contact|bit|hand)|(?:opens?|opening|gapes?|gaping) (?:his|her) mouth (?:against|to) the (?:hand|bit|contact|rein)|hates? (?:the |his |her )?bit|(?:will|does) not (?:settle|relax|soften) (?:in|to|on|into) (?:the |his |her )?(?:bit|contact|bridle|hand)`,
    ],
  },
  {
    plain: 'drooling',
    say: [`(?:drooling|dribbling|slobbering|frothing|foaming)(?: (?:everywhere|all over|down (?:his|her) (?:chest|front|legs)|a lot|all day|like mad|constantly|badly|at the mouth|from the mouth))+`, `(?:drool|slobber|saliva|spit|froth|foam) (?:(?:is|was|keeps|just) )*(?:running|coming|pouring|hanging|dripping|streaming) (?:out of|down|from|off|out) (?:him|her|(?:his|her|the) (?:mouth|lips|chin|chest|front))`],
  },
  { plain: 'had choke', say: [`choked (?:up )?(?:on|with) (?:(?:a|an|his|her|the|some|bit|of|dry|unsoaked) )*(?:sugar beet|beet|nuts|cubes|pellets|hay|haylage|apple|apples|carrot|carrots|feed|hard feed|grass|bread|chaff)`] },
  { plain: 'choke', say: [`(?:chokes|chokes up|gets? choke|prone to choke|prone to choking|choking|chokes easily)(?: (?:a lot|regularly|easily|often))?(?: (?:on|with|when eating) ${feed})?`] },
  {
    plain: 'long fibre in droppings',
    say: [
      `(?:bits of )?(?:oats|barley|grain|grains|corn) (?:coming out |passing )?whole in (?:his|her|its|the) (?:droppings|dung|manure|poo|muck|poop)`,
      `(?:bits of )?(?:whole |undigested |unchewed |long |full length )(?:\\w+ )?(?:oats|barley|grain|grains|corn|hay|fibre|fiber|stems|stalks|stalk|bits|pieces|grass|straw|chaff|seeds|lengths)(?: of (?:hay|grass|straw|haylage|fibre|chaff))?(?: (?:is|are|coming|come|passing|going|showing|straight|right|through|out|turning up|visible|still))* in (?:his|her|its|the) (?:droppings|dung|manure|poo|muck|poop)`,
      `(?:oats|barley|grain|corn|hay|stems|stalks|fibre) (?:is |are )?(?:coming|going|passing) (?:straight |right )?through(?: (?:him|her))?(?: (?:whole|undigested|unchewed|in (?:his|her|the) (?:droppings|dung|manure|poo|muck)))*`,
      `(?:droppings|dung|manure|poo|muck) (?:(?:is|are|was|were|look|looks|very|fairly|quite|a bit|pretty|full of|has|have|got|all) )+(?:long|coarse|stemmy|stalky|fibrous|whole oats|hay|stalks|stems|long bits|long stalks|unchewed hay|whole grain|whole grains|undigested)(?: (?:hay|fibre|stems|stalks|bits|grain|in (?:it|them)))*`,
    ],
  },
  {
    plain: 'food pouching in',
    say: [
      `(?:packs?|packing|packed|holds?|holding|held|stores?|storing|stored|keeps?|keeping|kept|stuffs?|stuffing|pouches|pouching|pouched|hoards?|collects?|collecting|gathers?|gathering|stashes|stashing|hamsters|hamstering|saving|saves|traps|trapping) (?:his |her |the |all |balls of |wads of |up |some |a lot of )*(?:food|feed|hay|haylage|grass|chaff|it|grub)(?: up)? (?:in|inside|into)(?= (?:his |her |the |that |one |both )*(?:left |right |near |off )?cheeks?)`,
    ],
  },
];
/** Of the speaker or of somebody else: no complaint of the horse. */
export const notTheHorse = /(?:^| )(?:i|i am|i have|i 'd|we|we are|my|our|you|your|the (?:dog|cat|farrier|lorry|cow|cows|goat|kids|husband|wife|neighbour)|my \w+)(?: (?:am|are|is|was|have|has|been|being|just|'d|got|all|always|only|really|will|would))*$/;
/** A question is no complaint. */
export const asksOfIt = /^(?:(?:and|so|but|well|now|okay|right) )*(?:is|are|has|have|does|do|did|was|any|how|what|when) (?:he|she|it|they|you|the|his|her|there|much|any|\w+ing)\b/;
export const askedBehindIt = /^ ?(?:at all|is he|is she|does he|does she|has he|has she|did he|did she|isn't he|is it|is there|or is he)$/;
/** Behind "has had": it goes on; or it came more than once, each time over. */
export const stillGoesOn = /\b(?:since|(?:for|over|these|this) (?:the |about |a |some )*(?:last |past |good |few |couple of )*(?:\w+ )?(?:day|days|week|weeks|month|months|year|years|while|fortnight|winter|summer)\b)/;
export const endedTimes = /\b(?:once|twice|times|bouts|episodes|out|pulled|removed|extracted|done|rasped|floated|gone|cleared|healed|colic|choke|laminitis)\b/;

/** Words of the trade by which a sentence may complain all the same. */
export const complaintKept: readonly string[] = ['breath', 'eats', 'eating', 'slow', 'weight', 'head', 'feed', 'hay', 'quidding', 'quids', 'mouth', 'chewing', 'chews', 'thin', 'nose', 'dropping', 'drops', 'chew', 'eat', 'ribby', 'condition', 'contact', 'sticking', 'dung', 'oats', 'grain', 'tongue', 'leaning', 'droppings', 'balls', 'fibre', 'jaw', 'rein'];
