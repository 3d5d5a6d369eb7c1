import type { ConditionEntry } from './types.ts';

/** Every condition of the record (contract section 3 and the further ids of sections 11 and 12): label, place kinds, spoken forms. */
const quite = '[(very|really|pretty|quite|lovely|fairly)]';
const inCondition = '(good|great|lovely|grand|fine|poor|fair|decent|excellent|okay|ok|perfect|brilliant|super)';
export const conditions = {
  'sharp-enamel-points': {
    label: 'Sharp enamel points', short: 'points', group: 'wear', places: ['T'],
    say: ['[sharp] enamel point(s)', 'sharp enamel', 'sharp point(s)', 'sharp edge(s)', 'enamel overgrowth(s)', 'enamel (edge|edges|spike|spikes|ridges on the outside)', 'sharp (corner|corners|ridges of enamel)', '(buccal|lingual|cheek|outside|inside|outer|inner) point(s)', 's e p(s)', 'razor (blades|edges)'],
    withPlace: ['point(s)', '(usual|normal|ordinary|typical|regular|average) [sharp] [enamel] point(s)', 'pointy', 'pointed', 'edge(s)'],
  },
  hook: {
    label: 'Hook', group: 'wear', places: ['T'], measure: 'height',
    say: ['hook(s|ed)', 'beak(s)', 'beaked', 'hooking', 'overhang(s)', 'overhanging'],
  },
  ramp: {
    label: 'Ramp', group: 'wear', places: ['T'], measure: 'height',
    say: ['ramp(s)', 'ramped', 'ramping [up]', 'ramp like'],
  },
  step: {
    label: 'Step', group: 'wear', places: ['T'], measure: 'height',
    say: ['step mouth', 'step(s)', 'stepped [up]', 'stepping', 'dominant tooth', 'tall tooth', '(stands|standing|sits|sitting) (proud|high)'],
    withPlace: ['dominant', 'tall', 'proud'],
  },
  wave: {
    label: 'Wave', group: 'wear', places: ['R'],
    say: ['wave mouth(ed)', 'wave(s)', 'wavy', 'wave pattern', 'undulating', 'undulation(s)'],
  },
  shear: {
    label: 'Shear mouth', group: 'wear', places: ['R'],
    say: ['shear mouth(ed)', 'scissor mouth(ed)', 'sheared', 'shear(s|ing)', '(very|really) steep [(table|tables|angle|angles)]', 'steep (table|tables|angle|angles)', 'sheared [off] (at|to) [(an|a)] [(steep|sharp|real)] angle'],
  },
  'exaggerated-transverse-ridges': {
    label: 'Exaggerated transverse ridges', short: 'ridges', group: 'wear', places: ['T', 'R'],
    say: ['(exaggerated|excessive|accentuated|prominent|tall|high) transverse ridge(s)', '(exaggerated|excessive|accentuated|prominent) ridge(s)', 'transverse ridge(s)', 'transverse ridging', 'ridging', 'washboard', '(big|tall|high|heavy|strong) ridge(s)', 'ridges across [the] (table|tables)', 'ridged tables', 'e t r(s)', 'a t r(s)', 'ridges [across [the] (table|tables)] [(is|are|standing)] [(too|very|standing|quite)] (proud|high|tall|big|prominent)'],
    withPlace: ['ridge(s)', 'ridged'],
  },
  'focal-overgrowth': {
    label: 'Focal overgrowth', short: 'overgrowth', group: 'wear', places: ['T'], measure: 'height',
    say: ['focal [dental] overgrowth(s)', 'overgrowth(s)', 'protuberance(s)', 'f d o'],
  },
  overlong: {
    label: 'Overlong', short: 'long', group: 'wear', places: ['T'], measure: 'height',
    say: ['overlong', 'over long', 'overgrown', 'elongated', 'over erupted', '(grown|growing|coming|come|dropped) (down|up) into (it|(the|that|its) (gap|space|hole))', 'over height', 'supererupted', 'super erupted', 'too long', 'overerupted'],
    withPlace: ['long', 'high', '(longer|taller|higher) than [all] [the] (rest|others|rest of them|other ones|one (beside|behind|next to|in front [of]) [it]|neighbours|one next door)'],
  },
  'cupped-out': {
    label: 'Cupped out', group: 'wear', places: ['T'],
    say: ['cupped out', 'cupping [out]', 'cupped', 'dished [out]', 'hollowed [out]', '[(has|have|is|are)] (gone|going) (hollow|cupped|dished)'],
    withPlace: ['cup(s)'],
  },
  'smooth-mouth': {
    label: 'Smooth mouth', group: 'wear', places: ['R', 'T'],
    say: ['[gone] smooth mouth(ed)', '[(has|have|is|are)] gone smooth', 'no enamel (left|ridges)', 'run out of enamel', '(no|not much|very little|little|hardly any) grip [left] [(at all|on (it|them|these|those))]', '(no|little|not much) (grinding surface|roughness) left', 'lost (its|their|all) enamel [(ridges|rings)]'],
  },
  worn: {
    label: 'Worn', group: 'wear', places: ['T'],
    say: ['worn', 'worn (down|flat|smooth|short|low|away|right down|to the gum)', 'wearing (down|away)', 'attrition', 'abrasion', 'crib [biting] wear', 'cribbing wear', '(wear|worn) from (cribbing|crib biting)'],
    withPlace: ['wear'],
  },
  'table-angle': {
    label: 'Table angle', group: 'wear', places: ['R', 'T'], measure: 'angle',
    say: ['table angle(s)', 'occlusal angle(s)', 'molar angle(s)', 'molar table angle(s)', 'angle of the table(s)'],
  },
  'out-of-occlusion': {
    label: 'Out of occlusion', group: 'wear', places: ['T'],
    say: ['out of occlusion', 'not in occlusion', 'not meeting', 'not in contact', 'nothing to bite (on|against)', 'does not meet', 'no contact with its opposite', 'no contact (with|between|against)', 'no (occlusal|proper) contact', 'not touching its opposite', 'nothing (under|over|above|below|opposite|opposing|to meet) it', 'not meeting anything'],
  },
  'bit-seat-present': {
    label: 'Bit seat present', short: 'bit seat', group: 'wear', places: ['T'],
    say: ['bit seat(s) (present|there|already there|already present)', '(old|existing|previous) bit seat(s)', '(has|have) [a] bit seat(s) [(already|on it|on them)]', '(bit seat|bit seats|a bit seat) (on|already on|already in|from last time)', 'bit seat(s) [(is|are)] still (there|visible|evident|good|in|present|showing|on)'],
  },
  sharp: {
    label: 'Sharp', group: 'wear', places: ['T'],
    say: [],
    withPlace: ['sharp', 'sharp (on|at|along|round) [(the|its|their)] edge(s)', 'razor sharp', '(very|really|pretty) sharp', 'needle sharp', 'sharp as [a] (razor|razors|needles|knives|knife|blade|blades|glass)', 'like [a] (needle|needles|razor|razors|knife|knives|pins|razor blades)', 'needle like', 'pin sharp'],
  },
  expired: {
    label: 'Expired', group: 'wear', places: ['T'],
    say: ['expired', 'end stage', 'worn out', 'on its last legs', '(at|reached) the end of its life', 'no crown left', 'finished tooth', 'worn (out|away) to the root(s)'],
  },
  diastema: {
    label: 'Diastema', short: 'gap', group: 'gums', places: ['S'], measure: 'width',
    say: ['diastema(s|ta)', 'interdental (space|gap)'],
    withPlace: ['gap(s)', 'space(s)', 'gappy', 'gapped', 'gapping', 'spacing'],
  },
  'food-packing': {
    label: 'Food packing', short: 'packed', group: 'gums', places: ['S', 'T'],
    say: ['food (packing|packed|trapped|impaction|impacted|stuck)', 'feed (packing|packed|trapped|impaction|impacted|stuck)', 'forage (packing|packed|trapped)', '(packed|impacted|full) (with|of) (food|feed|hay|grass|haylage|forage)', '(trapped|impacted) (food|feed|hay|grass|haylage)', '(food|feed|hay|grass) in (it|there|the gap|between)', '(food|feed|hay|grass) (down|up) [in] there', 'packing food', 'packed (solid|tight|hard)', '(sits|sitting) (food|feed)', '(food|feed) (sits|sitting) [in]', '(food|feed|hay|haylage|grass|forage|chaff|fibre|stuff) (stuffed|jammed|wedged|rammed|caught|lodged|packed|packing|pocketing|collecting|gathering|building up|balled up|stuck|impacted|trapped|pushed|getting stuck|getting caught) [(tight|solid|hard|fast)]', '(food|feed|hay|haylage|grass|forage|chaff|fibre|stuff) (is|has|gets|has got|is getting|was) [all] (stuffed|jammed|wedged|rammed|caught|lodged|packed|collecting|gathering|building up|balled up|stuck|impacted|trapped|pushed) [(tight|solid|hard|fast)]', 'packed [tight|solid|full] with (food|feed|hay|grass|haylage|forage|chaff)', 'full of (food|feed|hay|grass|haylage|chaff)', '(trapping|packing|holding|collecting|catching) (food|feed|hay|grass|haylage|chaff)', 'food (trap|trapping)', 'packing (up|in|solid)', 'packs (food|feed|hay)'],
    withPlace: ['packing'],
    absentSay: ['(clear|free|empty) of (feed|food|hay|grass)'],
  },
  'periodontal-pocket': {
    label: 'Periodontal pocket', short: 'pocket', group: 'gums', places: ['S', 'T'], measure: 'depth',
    say: ['(periodontal|gum|gingival) pocket(s)', '[packed] pocket(s)', 'pocketing', 'probing depth(s)', 'get (the|a|my) probe (in|down) (to|about|nearly|roughly)', 'prob(e|es|ed|ing) (to|at|down to|in to|around)', 'pocket depth(s)', 'pocketed', '(probe|probes) (drops|goes) [(down|in)] [to]', 'goes (down|in) to'],
  },
  'periodontal-disease': {
    label: 'Periodontal disease', short: 'perio', group: 'gums', places: ['T', 'S'], scale: 'periodontal-disease',
    say: ['periodontal disease', 'periodontitis', 'perio [disease]', 'gum disease', 'p d', 'periodontal [changes|infection]', 'perio (problem|problems|changes|infection)'],
  },
  gingivitis: {
    label: 'Gingivitis', group: 'gums', places: ['T', 'S', 'G'],
    say: ['gingivitis', 'inflamed gum(s)', 'red gum(s)', '(gum|gums|gingiva) [(is|are)] (inflamed|red|swollen|angry)', 'gum inflammation', 'gingival inflammation', 'inflammation of the (gum|gums|gingiva)', '(angry|swollen|sore|puffy|reddened|inflamed) (gum|gums|gingiva)', '(gum|gums|gingiva) [(is|are|looks|look)] [(a bit|quite|very|really|all)] (inflamed|red|swollen|angry|reddened|puffy|sore|irritated) [(looking|and (inflamed|red|swollen|angry|puffy|sore))]', 'marginal redness', 'gingivitic'],
    withPlace: ['inflamed', 'red', 'reddened', 'angry', '(red|sore|swollen|puffy) and (angry|red|swollen|inflamed|sore|puffy)'],
  },
  'gingival-recession': {
    label: 'Gingival recession', short: 'recession', group: 'gums', places: ['T', 'S', 'G'], measure: 'depth',
    say: ['(gingival|gum) recession', 'recession', '(gum|gums|gingiva) [(is|are|has|have)] (receding|receded)', 'receding gum(s)', 'receded gum(s)', '(gum|gums|gingiva) [(is|are|has|have)] (pulled|pulling|drawn|shrunk|shrinking|creeping|crept|crawled|moved|slipped|peeled|gone) (back|up)', 'root(s) showing', 'gum line (is|has) (dropped|receded|down)', '(gum|gums) [(is|are)] down', '(gum|gums) [(is|are|has|have)] (dropped|shrunk|retracted)', 'gingiva receding'],
    withPlace: ['(has|have|is|are) (drawn|shrunk|pulled) back', 'receded', 'receding', '(has|have) crept (up|back)'],
  },
  'gingival-hyperplasia': {
    label: 'Gingival hyperplasia', short: 'gum overgrowth', group: 'gums', places: ['T', 'G'],
    say: ['gingival hyperplasia', 'gum (overgrowth|hyperplasia)', 'enlarged gum(s)', 'overgrown gum(s)', 'thickened gum(s)', 'hyperplastic (gum|gums|gingiva)', 'gum growing over', '(gum|gums) [(is|are|has|have)] [((puffy|swollen|thick|red|lumpy) and)] (enlarged|overgrown|thickened|heaped up|proliferating|growing over|grown over)'],
  },
  'attachment-loss': {
    label: 'Attachment loss', group: 'gums', places: ['T'],
    say: ['attachment loss', 'loss of attachment', 'lost [some|its] attachment', 'attachment (lost|gone)'],
  },
  'furcation-exposure': {
    label: 'Furcation exposure', short: 'furcation', group: 'gums', places: ['T'], scale: 'furcation',
    say: ['furcation [(exposure|involvement)]', 'exposed furcation', 'furcation exposed', 'furcation (open|showing|visible|involved)', '(can|could) (see|feel) the furcation'],
  },
  mobility: {
    label: 'Mobility', short: 'loose', group: 'gums', places: ['T'], scale: 'mobility',
    say: ['mobility', 'mob', 'mobile', 'loose tooth', 'loose teeth', 'wobbly', 'digitally loose', 'finger loose', 'wiggly', 'shoogl(y|es|ing)', 'rocking', 'rocks', '(bit|some|plenty of|lots of) (movement|wobble|play) in [it]', 'looser', 'loosening', '[on] the move'],
    withPlace: ['loose', 'moving', 'moves', 'wobbles', 'wobble', 'wobbling', 'movement', 'some play', 'shifts'],
    absentSay: ['(firm|tight|solid|stable) tooth', '(rock|nice and) (firm|solid)', 'not loose', 'firmly in', '(solid|firm) [as (a|the) rock]'],
  },
  calculus: {
    label: 'Calculus', short: 'tartar', group: 'gums', places: ['T'],
    say: ['calculus', 'tartar', 'plaque', 'tartar build up', '[(caked|covered|coated|plastered) in] (tartar|calculus)', 'scale on', 'supragingival calculus'],
  },
  malodour: {
    label: 'Bad smell', short: 'smell', group: 'gums', places: ['S', 'G'],
    say: ['(foul|bad|rotten|nasty) (smell|odour|odor)', 'malodour', 'malodor', 'smelly', 'stinks', 'stinking', 'stink', 'pongs', 'pong', 'whiffy', 'whiff', 'reeks', '(smells|smelling) [(really|a bit|very|pretty)] (bad|foul|rotten|off|rank|awful|nasty|horrible)', '(horrible|rank|putrid|awful|terrible|fetid) (smell|odour|odor)', 'smells (bad|foul|rotten|of rot)'],
    withPlace: ['smell(s)'],
  },
  'infundibular-caries': {
    label: 'Infundibular caries', group: 'tooth', places: ['T'], scale: 'infundibular-caries',
    say: ['(infundibular|inf|infund) (caries|decay)', 'caries (in|of) the [(rostral|caudal|mesial|distal)] infundibulum', 'caries (in|of) both infundibula', '(rostral|caudal|mesial|distal) infundibular (caries|decay)', 'infundibulum (decayed|carious|rotten)', '(decay|rot) in the [(front|back|rostral|caudal)] infundibulum', 'infundibular (cavity|lesion|lesions|rot)', 'i c', '(carious|decayed|rotten) infundibula', 'decayed infundibulum'],
  },
  'peripheral-caries': {
    label: 'Peripheral caries', group: 'tooth', places: ['T'], scale: 'peripheral-caries',
    say: ['peripheral (caries|decay)', 'peripheral cemental caries', 'peripheral (decay|lesions)', 'p c', '(caries|decay|rot) [(all|right)] (around|round) the (outside|edge|edges|periphery|rim|margin|margins)'],
  },
  caries: {
    label: 'Caries', group: 'tooth', places: ['T'],
    say: ['caries', 'carious', 'decay(ing)', 'decayed', 'tooth decay', 'rotten', 'rotting', 'cavity', 'cavities', 'rotted', 'gone rotten'],
    withPlace: ['[(a bit of|some|a spot of)] rot'],
  },
  'cemental-hypoplasia': {
    label: 'Cemental hypoplasia', group: 'tooth', places: ['T'],
    say: ['cemental hypoplasia', 'cementum hypoplasia', 'hypocementosis', 'infundibular hypoplasia', '(hypoplastic|poor|missing|deficient) cement(um)', 'cement(um) [(has|have|is|was)] (never|not) [(fully|properly|quite|completely)] (filled|formed|developed|laid down|gone) [in] [properly]', 'cement(um) (missing|lacking|deficient)', '(unfilled|empty|underfilled|part filled|half filled|poorly filled) infundibul(um|a)', 'infundibul(um|a) [(is|are)] [(half|part|only half)] (empty|unfilled|not filled|never filled)', 'lack of cement(um)', 'no cement(um) in'],
  },
  'pulp-exposure': {
    label: 'Pulp exposure', short: 'open pulp', group: 'tooth', places: ['T'],
    withPlace: ['exposed'],
    say: ['[occlusal] pulp(ar) exposure(s)', 'exposed pulp(s)', 'pulp [horn] [is] (exposed|open)', 'open pulp(s) [(horn|horns)]', 'pulp horn exposure', '(pulp|pulps|pulp horns) [(is|are)] (exposed|open|visible|showing)', '(can|could) (see|probe) into the pulp'],
    absentSay: ['pulp(s) [(horn|horns)] [(is|are)] not (exposed|open)'],
  },
  fracture: {
    label: 'Fracture', group: 'tooth', places: ['T'], scale: 'fracture',
    say: ['fracture(s|d)', '(fissure|crown|tooth) fracture(s)', 'fragment(s) missing [from]', 'piece missing [from]', 'crack(s|ed)', 'broken', 'chipped', 'chip(s)', '[a] chip (off|out of)', 'split', 'fissure(s|d)', '[has] broken', 'snapped off', 'shattered', 'fracture line(s)', 'crack line(s)', '[a] (corner|piece|bit|chunk) [(is|has)] (chipped off|snapped off|broken off|off|out of|come off|broken away|gone|gone from|missing)', '(lost|losing) [(a|an)] [(big|large|small|wee|little|good|fair|decent)] (slab|chunk|corner|chip|flake|cusp) [(off|from|out of)]', '(lost|losing) [(a|an)] [(big|large|small|wee|little|good|fair|decent)] (piece|bit|part) (off|from|out of)', 'slab (off|gone|missing|lost|broken off|broken away|come off)', '[a] (corner|piece|bit|chunk) broken (off|out of|away)', 'broken off', 'sheared off', 'fractured off', '(clean|nasty|bad) break', '(broken|split|snapped|cracked) clean (in half|in two|through|across|off)', 'clean (in half|in two|through)', 'split clean'],
    withPlace: ['broke', 'break(s)', 'splits', '[the] (tip|corner|cusp) [(is|has)] (off|missing|gone|come off|missing from|gone off|gone from)'],
  },
  'retained-fragment': {
    label: 'Retained fragment', short: 'fragment', group: 'tooth', places: ['T'],
    say: ['(retained|dental|tooth|loose|remaining) fragment(s)', 'fragment(s) (retained|remaining|left|left behind|still there)', 'shard(s)', 'cap (sliver|slivers|fragment|fragments)', 'bit of (tooth|cap) (left|still in)', 'fragment(s) of (tooth|cap|crown)', '(piece|pieces|fragment|fragments|bit|sliver|slab) [(is|are)] [still] (sitting|stuck|lodged|hanging) in (there|place|the socket|the gum)', '(piece|pieces|fragment|fragments|slab) [(is|are)] still (in|there|in there|in place|left in|attached)'],
    withPlace: ['fragment(s)', 'piece left', 'sliver(s)'],
  },
  'apical-infection': {
    label: 'Apical infection', short: 'apical infection', group: 'tooth', places: ['T'],
    say: ['(apical|periapical) (infection|abscess|infected)', '(root|tooth) abscess', '(tooth|root|apex) infection', 'infected (root|roots|tooth|apex)', 'apically infected', 'abscess(ed|es)', 'infected apex', 'infection (at|around) the (root|roots|apex)', '(root|tooth|apical) (infection|trouble)', 'infected at the root', 'apical (lesion|disease)'],
    withPlace: ['infected'],
  },
  discoloured: {
    label: 'Discoloured', group: 'tooth', places: ['T'],
    say: ['(discoloured|discolored|discolouration|discoloration)', '(stained|staining)', '[(has|have|is|are)] gone [(a|all|quite|a bit|really)] [(funny|sort of|kind of|dirty|dark|nasty|odd)] (black|brown|grey|gray|dark|yellow|pink) [colour]', '[(has|have|is|are)] gone (a|an) (funny|odd|strange|nasty|bad) [(black|brown|grey|gray|dark|yellow)] colour', 'off colour', 'dark (tooth|brown|coloured|staining)'],
    withPlace: ['(black|brown|grey|gray|dark) tooth', '(brownish|blackish|greyish|dark)', '(brown|black|yellow) [and]', '(is|are|looks|looking|gone) (grey|gray)', '[(looks|looking)] dead [looking]'],
  },
  resorption: {
    label: 'Resorption', group: 'tooth', places: ['T'],
    say: ['resorption', 'resorbing', 'resorptive lesion(s)', 'resorbed', 'resorptive', 'root(s) (eaten away|dissolving)'],
  },
  eotrh: {
    label: 'EOTRH', group: 'tooth', places: ['T'], scale: 'eotrh',
    say: ['e o t r h', 'eotrh', 'odontoclastic [tooth] resorption [and hypercementosis]', 'equine odontoclastic tooth resorption and hypercementosis'],
  },
  hypercementosis: {
    label: 'Hypercementosis', group: 'tooth', places: ['T'],
    say: ['hypercementosis', 'bulbous (root|roots|tooth|incisor)', 'bulging root(s)', '(swollen|thickened|fat|knobbly) (root|roots)'],
    withPlace: ['bulbous', 'bulging'],
  },
  missing: {
    label: 'Missing', group: 'number', places: ['T'],
    say: ['missing', 'absent tooth', 'no tooth [(at|in|where|there at)]', 'no sign of the tooth', 'never (came through|erupted|developed)', 'congenitally absent', 'lost tooth', 'lost'],
    withPlace: ['absent', '[(is|are|was|were)] not there', '[(is|are|has|have)] gone'],
  },
  'previously-extracted': {
    label: 'Previously extracted', short: 'old extraction', group: 'number', places: ['T'],
    say: ['previously (extracted|removed)', '(extracted|removed|taken out|pulled|whipped out|came out|come out|out) (last (year|time|visit|spring|summer|autumn|winter|month)|years ago|[(a|one|two|three|four|five|six)] (year|years|months) (ago|back)|a while (ago|back)|some time ago|previously|before|a few years (ago|back))', 'was (extracted|removed|taken out|pulled)', 'old (socket|extraction|gap where it was)', '[healed] socket', 'old extraction [site]', '[healed] extraction site', 'healed socket(s)', 'already (extracted|removed|out)', '(been|is) (out|gone|away) since', '(been|is) (out|gone) for (a while|years|ages|a long time)', 'been out [(a while|years|ages|a long time)]'],
  },
  erupting: {
    label: 'Erupting', short: 'coming through', group: 'number', places: ['T'],
    say: ['erupting', 'coming (through|in|up|down|along)', 'just through', '[just] (breaking|poking|peeping|peeking|popping|pushing|cutting) [up] (through|in) [the gum]', '(half|part|nearly|almost) (through|erupted|up|in)', 'on [its] way (in|through|up|down)', 'starting to (erupt|come|come through|show)', 'just showing', 'partly erupted', 'partially erupted', 'cutting through', 'coming in'],
    withPlace: ['coming'],
  },
  unerupted: {
    label: 'Unerupted', short: 'not through', group: 'number', places: ['T'],
    say: ['unerupted', 'not (yet|fully) erupted', 'not [yet] through [yet]', 'not erupted [yet]', 'not (in|up|down|come through|cut|broken through) yet', 'yet to (erupt|come|come through|appear|show)', '(has|have) not (come|broken|cut) [(through|up|down|in)] [yet]', '(has|have) not (erupted|appeared|shown) [yet]', 'no sign of it yet', 'still (buried|unerupted|waiting)', 'still to come', 'still under the gum'],
  },
  impacted: {
    label: 'Impacted', group: 'number', places: ['T'],
    say: ['impacted', 'impacted tooth', 'blocked', 'jammed in', 'wedged in', 'no room to erupt', 'stuck behind'],
  },
  supernumerary: {
    label: 'Supernumerary', short: 'extra tooth', group: 'number', places: ['T'],
    say: ['supernumerary [(tooth|teeth|cheek tooth|incisor)]', '[an] extra (tooth|teeth|cheek tooth|incisor|incisors|molar|one)', 'polyodontia', 'supernumeraries', '(seventh|additional|spare) (cheek tooth|tooth|molar|incisor)', 'a seventh cheek tooth'],
  },
  'retained-cap': {
    label: 'Retained cap', short: 'cap', group: 'number', places: ['T'],
    say: ['retained (cap|caps|deciduous)', 'retained (baby|milk) (tooth|teeth)', 'retained deciduous (tooth|teeth|incisor|premolar)', 'cap(s) [(is|are|was)] [still] (retained|on|sitting on|not ready|not shed|in place|present|hanging on|stuck on|firm|tight|sitting|sitting tight|there)', 'still (has|have|got|wearing|carrying) [(its|a|the|his|her)] cap(s)', 'still capped', 'capped', 'persistent deciduous'],
    withPlace: ['cap(s)', 'not ready [yet]', 'cap(s) not ready yet', '[still] (hanging|holding|clinging) on'],
  },
  'loose-cap': {
    label: 'Loose cap', group: 'number', places: ['T'],
    say: ['loose cap(s)', 'cap(s) [(is|are)] (on the move|lifting|moving|nearly off|flapping|flapping about|flopping about|swinging|hanging|hanging off|hanging by a thread|coming off|coming loose|rocking|ripe)', 'cap(s) [(is|are)] (loose|wobbly|ready|ready to come off|about to come off)', 'wobbly cap(s)', '(ready|moving) cap(s)'],
    withPlace: ['flapping [about]', '(ready|nearly ready|about|due) to come off', '(hanging|dangling) [(on|off)] by a thread', 'hanging off'],
  },
  displaced: {
    label: 'Displaced', group: 'number', places: ['T'],
    say: ['displaced', 'displacement', '[a bit] out of (line|position|place|the row|the arcade)', '(leaning|pushed|sits|sitting|shifted|angled|kicked) (out|in|outwards|inwards|over)', 'not in line', 'out of alignment', 'malpositioned', 'crooked', 'sits (out|outside) of line', '(shoved|shunted|forced|driven|bumped) [(over|across|out|in|inwards|outwards|sideways)]', 'pushed (across|sideways|off line)'],
  },
  rotated: {
    label: 'Rotated', group: 'number', places: ['T'],
    say: ['rotated', 'rotation', 'rotating', 'twisted', 'turned', '(is|sits|sitting|gone|lying) sideways'],
    withPlace: ['angled'],
  },
  overcrowded: {
    label: 'Overcrowded', short: 'crowded', group: 'number', places: ['T'],
    say: ['overcrowded', 'overcrowding', 'crowded', 'crowding', 'cramped', 'squashed [up|together]', 'jammed together', 'overlapping', 'bunched [up]', 'jostling [for (room|space)]', '(fighting|competing) for (room|space)', '(short of|not enough|too little) (room|space)'],
  },
  'wolf-tooth': {
    label: 'Wolf tooth', group: 'number', places: ['T'],
    say: ['wolf (tooth|teeth)', 'wolves', 'wolf', 'wolfie(s)', 'wolfy', 'wolfies', 'first premolar(s)', 'wolfs'],
  },
  'blind-wolf-tooth': {
    label: 'Blind wolf tooth', group: 'number', places: ['T'],
    say: ['blind wolf (tooth|teeth)', 'wolf (tooth|teeth) [(is|are)] (blind|unerupted|under the gum)', 'unerupted wolf (tooth|teeth)', 'blind (wolf|wolves)', 'wolf tooth under the gum'],
    withPlace: ['blind', 'one blind', 'one is blind'],
  },
  'canine-present': {
    label: 'Canine present', group: 'number', places: ['T'],
    say: ['(canine|canines|tush|tushes|tusk|tusks) [(is|are)] [all] [four] [of them] (present|there|in|through)', '(canine|canines|tush|tushes|tusk|tusks) (is|are) up', '(has|have) (canines|tushes)', '(has|have|got|is|are) (little|small|tiny|wee|big|two|four) (canines|tushes)', '(has|have|got) [a] [(little|small|tiny|wee|big)] (canine|tush)', '(there is|here is) a [(little|small|tiny|wee|big)] (canine|tush)'],
    withPlace: ['canine(s)', 'tush(es)', 'tusk(s)'],
  },
  'deciduous-present': {
    label: 'Deciduous tooth present', short: 'milk tooth', group: 'number', places: ['T'],
    say: ['(deciduous|baby|milk|temporary) (tooth|teeth|incisor|incisors|premolar|premolars) [(present|there|still in|still there|in place)]', 'still (deciduous|a baby tooth|a milk tooth)', '(baby|milk) one(s) [(is|are)] (still (there|in|on|in place)|there still)'],
    withPlace: ['deciduous'],
  },
  'cap-shed': {
    label: 'Cap shed', group: 'number', places: ['T'],
    say: ['cap(s) [(has|have|already|just|is|are)] [(already|just|now|long|well)] (shed|gone|fallen off|fell off|fallen out|dropped|come off|came off|lost|away)', '(lost|shed|dropped) (its|the|his|her|their) cap(s)', 'caps shed'],
    withPlace: ['(has|have|just|already) shed [(its|the) cap(s)]', 'shedding', 'has (dropped|fallen out|come off)'],
  },
  'root-remnant': {
    label: 'Root remnant', group: 'number', places: ['T'],
    say: ['(retained|remaining) root [(tip|fragment|remnant)]', 'root (remnant|remnants|tip left|left behind|still in|retained)', 'retained root(s)', '[a] (bit|piece|scrap|sliver|end|tip|some) of [(the|an)] [old] root [tip] [is] [still] (left [(in|in there|there|behind)]|in [there]|there|behind)', 'root tip [is] [(still|left)] (in|there|behind) [there]', '(old|some) root [is] [(still|left)] (in|there|behind) [there]'],
  },
  drifted: {
    label: 'Drifted', group: 'number', places: ['T'],
    say: ['drifted [(back|forward|forwards|backwards)]', 'drifting', 'moved (forward|forwards|back|backwards) [(into|towards) the (gap|space)]', 'tipped [(over|back|forward)]', 'tilted', 'leaning', 'moved (into|towards) the gap', 'closing (the|that) (gap|space)', 'tilted forward', 'migrated'],
  },
  'in-wear': {
    label: 'In wear', group: 'number', places: ['T'],
    say: ['in [full] wear', 'coming into wear', 'into wear', 'meeting its opposite', 'in occlusion'],
  },
  erupted: {
    label: 'Erupted', short: 'through', group: 'number', places: ['T'],
    say: ['fully erupted', 'erupted', 'fully (through|in|up)', 'all the way (through|in)', '(is|are) through', 'has erupted', 'well through', 'has come through', 'now through'],
  },
  overjet: {
    label: 'Overjet', group: 'bite', places: ['R', 'N'], measure: 'width',
    say: ['overjet', 'over jet', 'horizontal overlap', 'overshot', 'over shot', '(uppers|upper incisors|top incisors|top teeth|top ones) [(stick|sticking|jut|jutting|hang|hanging|sit|sitting|come|poke|project)] [(out|over|forward)] (in front of|past|over|beyond) the (lowers|lower incisors|bottom ones|bottom teeth|bottom incisors|bottoms)'],
  },
  overbite: {
    label: 'Overbite', group: 'bite', places: ['R', 'N'], measure: 'height',
    say: ['overbite', 'over bite', 'vertical overlap', 'deep bite', '(drop|drops|dropping|hang|hangs|come|comes) down (in front|over the front) [of (them|the lowers|the bottom ones)]'],
  },
  underbite: {
    label: 'Underbite', group: 'bite', places: ['R', 'N'],
    say: ['underbite', 'under bite', 'undershot', 'under shot', 'underjet'],
  },
  smile: {
    label: 'Smile', group: 'bite', places: ['R', 'N'],
    say: ['smile [(bite|mouth)]', 'smile to (the|his|her) (bite|front|mouth)', 'grin', 'grinning', 'smiling', 'smiley', 'smile shaped', 'smile shape', 'smile to', 'incisor smile', 'ventral curvature', '(corners|ends) [(are|is)] (turned|turning|curling|curled|turn|curl) up'],
  },
  frown: {
    label: 'Frown', group: 'bite', places: ['R', 'N'],
    say: ['frown [(bite|mouth)]', 'frown to (the|his|her) (bite|front|mouth)', 'frowning', 'frowny', 'frown shaped', 'sad face', 'incisor frown', 'dorsal curvature', '(corners|ends) [(are|is)] (turned|turning|curling|curled|turn|curl) down'],
  },
  slant: {
    label: 'Slant', group: 'bite', places: ['R', 'N'],
    say: ['slant(ed) [(bite|mouth|incisors)]', 'slant to (the|his|her) (bite|front|mouth)', 'slanting', 'diagonal (bite|mouth|incisors|wear)', 'diagonal [across|at] the (front|incisors)', '(tilted|sloping|slanting) [incisor] (bite|incisors)', '(incisors|bite|front teeth|nippers) [(is|are)] (slant|slants|slope|slopes|tilt|tilts|slanted|slanting|sloping|tilted)', 'incisor slant', '(incisors|bite|front teeth|nippers) (run|runs|running|go|goes|going|fall|falls) (downhill|uphill|off level|away)'],
  },
  'stepped-incisors': {
    label: 'Stepped incisors', group: 'bite', places: ['R', 'N'],
    say: ['stepped incisor(s)', 'irregular incisor(s)', 'incisor(s) [are] (stepped|irregular|uneven)', 'offset incisor(s)', 'uneven incisors'],
  },
  'level-bite': {
    label: 'Level bite', short: 'level', group: 'bite', places: ['R', 'N'],
    say: ['level bite', '(front|front teeth|incisor|incisors) [(is|are|all|nice and|sit|sitting|meet|meeting)] [(nice and|nicely|all)] level', 'level (at the front|across the front|in front)', 'bite [is] [(dead|nice and|perfectly|nicely|all|bang|spot on)] level', 'level incisor(s)', 'incisor(s) (meet|meeting) level'],
  },
  'parrot-mouth': {
    label: 'Parrot mouth', group: 'bite', places: ['N'],
    say: ['parrot mouth(ed)', 'brachygnathism', 'mandibular brachygnathism'],
  },
  'edge-to-edge': {
    label: 'Edge to edge', group: 'bite', places: ['N'],
    say: ['[(bite|teeth|incisors) (is|are)] edge to edge [bite]', '(incisors|front teeth) meet edge to edge', '(meeting|meet|meets) edge to edge', 'end to end bite'],
  },
  'sow-mouth': {
    label: 'Sow mouth', group: 'bite', places: ['N'],
    say: ['sow mouth(ed)', 'monkey mouth(ed)', 'prognathism'],
  },
  'wry-nose': {
    label: 'Wry nose', group: 'bite', places: ['N'],
    say: ['wry nose(d)', 'campylorrhinus'],
  },
  ulcer: {
    label: 'Ulcer', group: 'soft', places: ['G'], measure: 'width',
    say: ['a sore (on|inside|in)', 'sore spot(s)', 'ulcer(s|ated)', 'ulceration(s)', 'mouth ulcer(s)', 'ulcerating', 'ulcery', 'raw (patch|spot|area|place)', '(sore|raw) (patch|spot|place) (on|in|inside)', 'erosion(s)', 'rubbed (raw|sore)', 'chafed', 'chafing'],
    withPlace: ['sores', 'a sore', 'raw', 'sore (patch|spot|area|place)(s)'],
  },
  laceration: {
    label: 'Laceration', short: 'cut', group: 'soft', places: ['G'], measure: 'width',
    say: ['laceration(s)', 'lacerated', 'cut(s)', 'graze(s|d)', 'tear', 'torn', 'gash(ed)', 'nick(s|ed)', 'bitten', 'slit', 'wound', '(bite|tooth|teeth) mark(s)'],
  },
  scar: {
    label: 'Scar', group: 'soft', places: ['G'], measure: 'width',
    say: ['scar(s|red|ring)', '[old] scar tissue', 'scar (line|mark)', 'callus(ed|es)', 'calloused'],
  },
  swelling: {
    label: 'Swelling', group: 'soft', places: ['G'],
    say: ['swelling(s)', 'swollen [up]', '(swelled|swelling|swells|puffed) up', 'puffy', 'puffiness', 'puffed up', 'enlargement', 'thickening', 'thickened', 'oedema', 'edema'],
    withPlace: ['enlarged'],
  },
  lump: {
    label: 'Lump', group: 'soft', places: ['G'], measure: 'width',
    say: ['lump(s)', '[bony] bump(s)', 'bony (lump|lumps|enlargement|swelling|prominence)', 'nodule(s)', 'lumpy', 'bumpy', 'knob(s)', 'knobble(s)', 'bony (knobble|nodule|bit|ridge)(s)'],
  },
  mass: {
    label: 'Mass', group: 'soft', places: ['G'],
    say: ['mass(es)', 'growth(s)', 'polyp(s)', 'wart(s)', 'lesion(s)', 'tumour(s)', 'tumor(s)', '[oral] mass', 'sarcoid(s)', 'proud flesh'],
  },
  'foreign-body': {
    label: 'Foreign body', group: 'soft', places: ['G'],
    say: ['foreign (body|bodies|object)', 'thorn(s) in [(the|his|her)]', '[a] [(bit|piece|lump) of] (stick|wood|thorn|splinter|wire|twig|bramble|bone|nail) [is] (stuck|lodged|wedged|jammed|trapped|across)', 'grass awn(s)', 'grass seed(s) (stuck|lodged)', '(piece|bit|lump|splinter) of [a] (stick|wood|wire|thorn|straw|twig)', '(piece|bit) of (stick|wood|wire|straw|twig) (stuck|lodged|wedged)'],
    withPlace: ['(a|some|another) (stick|thorn|splinter|twig|grass seed|wire)'],
  },
  'bit-injury': {
    label: 'Bit injury', group: 'soft', places: ['G'],
    say: ['a bit (injury|rub|ulcer|mark)', 'bit (injury|injuries|rub|rubs|damage|sore|sores|mark|marks|trauma|ulcer)', 'rubbed by the bit', 'rub mark(s)', '(rub|rubs) at', 'rubbed at', '(pinched|bruised) by the bit', '(raw|sore|rubbed|rubbed raw|rubbed sore|chafed|cut|bruised) from the bit'],
  },
  bleeding: {
    label: 'Bleeding', group: 'soft', places: ['G', 'T', 'S'],
    say: ['bleeding', 'bleed(s)', 'bled', '(bleeding|bleeds|bled|bleed) (on|upon|after) probing', '(bleeding|bleeds|bled|bleed) when [i] (probe|probed)', 'oozing blood', 'trickle of blood', 'haemorrhage', 'hemorrhage', 'bloody', 'blood'],
  },
  bruising: {
    label: 'Bruising', group: 'soft', places: ['G'],
    say: ['bruise(s|d)', 'bruising', 'contusion', 'contused', 'haematoma', 'hematoma'],
  },
  'draining-tract': {
    label: 'Draining tract', group: 'soft', places: ['G'],
    say: ['(draining|discharging|sinus) tract(s)', 'fistula(s|e|tion)', 'discharging (sinus|hole|tract)', '(pus|something) (tracking|draining|leaking|oozing) (out|from)', '(draining|weeping|leaking) (hole|wound|sore)', 'sinus tract'],
  },
  discharge: {
    label: 'Discharge', group: 'soft', places: ['G'],
    say: ['[clear] discharge', 'snotty', 'snot', 'weeping', 'watering', 'gunk', 'gunky', 'goo', 'matter', 'runny', 'pus', 'weepy', 'epiphora', 'tear (staining|stains|marks|stained)', '(has|have|had|got) pus', 'purulent material'],
    withPlace: ['discharging', 'running', 'dripping', '(coming|comes) (out of|from|out)'],
    absentSay: ['dry', 'not running', 'not discharging'],
  },
  'bone-spur': {
    label: 'Bone spur', short: 'spur', group: 'soft', places: ['G'],
    say: ['(bone|bony) spur(s)', 'spur(s)', 'sequestrum'],
  },
  pain: {
    label: 'Pain', short: 'sore', group: 'soft', places: ['G', 'T', 'S'],
    say: ['pain(ful)', 'sore', 'tender', 'tenderness', 'reactive', 'soreness', '(sore|tender|painful) (to|on|when) (press|pressing|pressed|touch|touching|touched|feel|feeling|palpate|palpated|palpation|pressure)', '(sore|tender|painful) to the touch', '(resents|resented|objects to|objected to|reacted to|did not like|does not like|hates|hated) (palpation|pressure|touch|it|being touched|me touching|me pressing|me feeling)', '(reaction|response) (to|on) (palpation|pressure)', 'flinched', 'flinching', 'touchy', 'ouchy', 'pulled away', 'guarding', 'resents (palpation|pressure|touch|it)', 'reacts to (palpation|pressure|touch)', 'flinches', 'sensitive', 'discomfort'],
    absentSay: ['non painful', 'pain free', 'comfortable', 'not bothered [by it]', 'painless', 'no reaction [(to|on) (palpation|pressure|touch)]'],
  },
  heat: {
    label: 'Heat', group: 'soft', places: ['G'],
    say: ['heat', 'hot [to the touch]', 'warm to [the] touch', 'heat in'],
    withPlace: ['warm'],
  },
  tension: {
    label: 'Tension', short: 'tight', group: 'soft', places: ['G'],
    say: ['tension', 'tight', 'tightness', 'tense', 'hypertonic', 'in spasm', 'spasm', 'knotted', 'knots', 'rock hard', 'hard as a rock', 'tight as a drum'],
    absentSay: ['soft [as butter]', 'relaxed'],
  },
  crepitus: {
    label: 'Crepitus', group: 'soft', places: ['G'],
    say: ['crepitus', 'click(s|ing|y)', 'crunch(ing|y)', 'grating', 'grates', 'grinding feeling', 'popping', 'clunk(s|ing|y)', 'creaks', 'creaking'],
  },
  asymmetry: {
    label: 'Asymmetry', group: 'soft', places: ['G'],
    say: ['asymmetry', 'asymmetric(al)', 'uneven', 'not (even|symmetrical|symmetric)', 'lopsided', 'not level', 'bigger on one side', 'out of balance', 'not matching', 'one bigger than the other', 'mismatched'],
    absentSay: ['even and symmetrical', '[well|evenly|nicely] matched', 'a (good|fair) match', 'match(es) (well|up|nicely)'],
  },
  'food-pouching': {
    label: 'Food pouching', short: 'pouching', home: 'cheek', group: 'soft', places: ['G'],
    say: ['food pouching', 'pouching [of] [(food|feed|hay)]', 'pouches (food|feed|hay)', '(food|feed|hay|quid) (pouched|balled|held) in the cheek(s)', '(lots of|a) quid(s) in the cheek(s)'],
  },
  'muscle-wasting': {
    label: 'Muscle wasting', short: 'wasting', group: 'soft', places: ['G'],
    say: ['muscle (wasting|wastage|atrophy|loss)', 'wasted [away]', 'wasting [away]', 'atrophy', 'atrophied', 'wastage', 'lost muscle', '(muscle|muscles) [(is|are|looks|look|feels|feel)] (thin|thinner|flat|flatter|light|poor)', 'sunken', 'shrunken', 'hollow [above|over]', 'dropped away', 'loss of muscle', 'poor muscle'],
  },
  'lymph-node-enlargement': {
    label: 'Enlarged lymph node', short: 'lymph node', home: 'lymph-nodes', group: 'soft', places: ['G'],
    say: ['(enlarged|swollen|raised|big) (lymph node|lymph nodes|node|nodes|gland|glands)', '[(submandibular|mandibular)] (lymph node|lymph nodes|node|nodes|gland|glands) [(is|are|feel|feels)] [(a bit|a wee bit|a little bit|a little|a touch|a good bit|slightly|quite|very)] (enlarged|up|swollen|raised|big|prominent)', '(lumpy|hard|firm) (lymph node|lymph nodes|node|nodes|gland|glands)', 'lymphadenopathy'],
    absentSay: ['[(submandibular|mandibular)] (lymph node|lymph nodes|node|nodes|gland|glands) [(is|are)] (not (up|enlarged|swollen|raised|big|prominent)|down|small)', 'no (glands|nodes|lymph nodes) (up|raised|enlarged|swollen)'],
  },
  'reduced-excursion': {
    label: 'Reduced excursion', home: 'jaw-movement', group: 'soft', places: ['G'], measure: 'excursion',
    say: ['(reduced|restricted|limited|poor|decreased) [lateral] excursion(s)', '[lateral] excursion(s) [(is|are)] (reduced|restricted|limited|poor|decreased|short)', 'rostrocaudal (movement|mobility|motion) [is] (reduced|restricted|limited|poor)', '(reduced|restricted|limited|poor) rostrocaudal (movement|mobility|motion)', '(reduced|restricted|limited) (jaw movement|lateral movement|side to side [movement])'],
    absentSay: ['(good|even|equal|full|normal|free|nice) (lateral|sideways|side to side) (slide|glide|movement) [both (ways|sides)]', '(lateral|sideways|side to side) (slide|glide|movement|motion) [(is|was)] [(nice|nice and)] (good|even|equal|full|free|fine|smooth) [both (ways|sides)]', '(good|even|equal|full|free|nice) (slide|glide) [both (ways|sides)]', '[(jaw|mandible)] (slides|moves|swings) (freely|evenly|well|nicely|easily) [(both (ways|sides)|side to side|to both sides)]', '[lateral] excursion(s) [(is|are|feels)] [(nice|nice and)] (even|equal|full|normal|good|fine|free|symmetrical) [(both (ways|sides)|(on|to) both sides|(each|either) (way|side))]', '(full|even|equal|normal|good|free|symmetrical) [lateral] excursion(s) [(both (ways|sides)|(on|to) both sides|(each|either) (way|side))]'],
  },
  'lateral-excursion': {
    label: 'Lateral excursion', short: 'excursion', home: 'jaw-movement', group: 'soft', places: ['G'], measure: 'excursion',
    say: ['lateral excursion(s)', 'excursion(s)', '(lateral|sideways) (slide|glide)', 'molar slide', 'excursion to molar contact'],
    withPlace: ['side to side', 'slides [(over|across)]', '(jaw|mandible) (slides|moves|swings|goes) [(over|across|out)]'],
  },
  'rostrocaudal-movement': {
    label: 'Rostrocaudal movement', short: 'forward and back', home: 'jaw-movement', group: 'soft', places: ['G'], measure: 'excursion',
    say: ['rostrocaudal (movement|mobility|motion)', 'rostro caudal movement', 'a p movement', 'anterior posterior movement', 'fore and aft movement', 'forward and back movement', 'jaw (comes|moves|slides|drops|goes|slips) (forward|forwards) [and back]', '(jaw|mandible) moves (forward|forwards|fore) and (back|aft)'],
  },
  'dull-percussion': {
    label: 'Dull on percussion', group: 'soft', places: ['G'],
    say: ['dull (on|to|when) (percussion|percussed|tapped|tapping|knocking)', 'dull when i (tap|knock|percuss|tapped|knocked) [(over|on|at)]', '(percusses|percussed|percussing|taps|tapped|sounded|sounding) dull', 'dull (sound|note|tap)', 'dullness', 'dull percussion', 'percussion [is] dull', 'sounds dull'],
    withPlace: ['dull'],
    absentSay: ['resonant', 'resonating', '(sound|sounds|sounded|sounding|percuss|percusses|percussed) (hollow|clear|resonant|normal|equal|even|the same [both sides])'],
  },
  nosebleed: {
    label: 'Nosebleed', home: 'nostril', group: 'soft', places: ['G'],
    say: ['nosebleed(s)', 'nose bleed(s)', 'epistaxis', 'blood from the (nose|nostril)', 'bleeding from the (nose|nostril)'],
  },
  'eruption-bump': {
    label: 'Eruption bump', group: 'soft', places: ['G'],
    say: ['eruption (bump|bumps|cyst|cysts)', 'three year old bump(s)', 'pseudocyst(s)'],
  },
  lampas: {
    label: 'Lampas', home: 'palate', group: 'soft', places: ['G'],
    say: ['lampas', 'lampus', 'swollen palate ridges'],
  },
  halitosis: {
    label: 'Halitosis', short: 'bad breath', group: 'horse', places: ['N'],
    say: ['halitosis', 'bad breath', '(rotten|awful|terrible|horrible|stinking|rank|nasty) breath', 'breath [(is|was|really|absolutely)] (foul|bad|awful|terrible|rotten|rank|smelly|stinking|horrible|rancid|honking|minging)', 'breath (stinks|reeks|pongs|honks|hums) [(today|of rot)]', '[his|her] mouth (smells|stinks)', 'foul breath', 'breath smells [bad]', 'smell (off|on|from|of) (his|her|its|the) breath', 'breath (is|was) (desperate|dreadful|brutal|wicked|atrocious|woeful|lethal)', 'smelly breath', 'breath [that] (would|could) (knock|floor|kill|fell|strip|drop|stop) [(you|a (horse|man|fly|donkey))] [(over|down|flat|out|dead)]', 'breath (is|was) (ripe|humming|high|something else|shocking)'],
  },
  quidding: {
    label: 'Quidding', group: 'horse', places: ['N'],
    say: ['quid(s|ding|ded)', '(dropping|drops|dropped|spitting|spits) [out] [(half|some|any|a lot|lots|most|balls)] [of] [(his|her|their|the|its)] (food|feed|hay|haylage|chaff|dinner|hard feed|forage|nuts|wads)', '(dropping|drops|spitting|spits) (half|some|most|a lot|all) [of (his|her|the)] (it|food|feed|hay|haylage) [straight] back out', '(dropping|drops|spitting|spits) (half|most|all) of it [straight] back out', '(dropping|drops|spitting|spits) half [of] (his|her|the) (food|feed|hay|haylage) [straight] back out', '(half|some|most|a lot|lots) of (his|her|the) (food|feed|hay|haylage|dinner) (comes|coming|falls|falling|drops) ([straight] back out|[back|straight] out of (his|her) mouth)', '(wads|balls) of (hay|haylage|grass) (on the floor|in the stable|dropped)', 'leaving (quids|wads|balls)', '(spits|spitting) out (wads|balls) [of (hay|haylage|grass)]', 'drops (food|feed|hay|his feed|her feed)', 'balling hay', '(dropping|drops|spitting [out]|spits [out]|leaving|leaves|finding) [(little|wee|big|half chewed)] (balls|wads|clumps|plugs|mouthfuls) of [(half|part|partly) chewed [up]] (hay|haylage|grass|feed|food)'],
  },
  'weight-loss': {
    label: 'Weight loss', group: 'horse', places: ['N'],
    say: ['weight loss', '(losing|loses) [(a bit of|some|any|much)] (weight|condition)', 'gone (thin|poor|ribby|light)', 'dropping (off|away)', '(weight|condition) (loss|dropping off|falling off|going)', 'looking (poor|thin|ribby|light)', 'light on (condition|weight)', 'lost [(some|a bit of|a little|a lot of|a fair bit of|a little bit of)] (weight|condition)', 'dropping (condition|weight|off)', 'dropped [(some|a bit of|a little|a lot of|a fair bit of)] (condition|weight|off)'],
  },
  drooling: {
    label: 'Drooling', group: 'horse', places: ['N'],
    say: ['drool', 'drooling', 'drools', 'dribble', 'dribbles', 'dribbling', 'dribbly', 'frothing', 'salivation', 'slobber(s|ing)', 'hypersalivation', 'salivating', 'ptyalism', 'excess saliva'],
  },
  'head-shaking': {
    label: 'Head shaking', group: 'horse', places: ['N'],
    say: ['head (shake|toss|shaking|tossing|shakes|tosses|flicking|shaker|throwing|nodding|flicks)', '(shaking|tossing|throwing|flicking|shakes|tosses|throws|flicks) (the|his|her|its) head [(about|around|up)]', 'headshaking', 'shakes (his|her|its) head', 'tosses (his|her|its) head', 'shaking (his|her|its) head'],
  },
  'bit-resistance': {
    label: 'Bit resistance', group: 'horse', places: ['N'],
    say: ['bit resistance', '(refuses|refusing|hates) [to] (take|taking|accept|accepting) (the|his|her|a) bit', 'bitting problem(s)', 'bitting (issue|issues|trouble)', 'resist(s|ing) the bit', '(fights|fighting) the (bit|contact)', '(fussy|fidgety|unsteady|unsettled|strong|heavy|one sided|leaning|difficult|awkward|playing up|fussing|unhappy|not happy|not right) (in|with|on|to) the (bit|bridle|contact|mouth|hand|rein|left rein|right rein)', '(chomping|chewing|champing|grabbing|pulling) (at|on) the bit', 'against the bit', 'above the bit', 'behind the bit', 'tongue over the bit', 'gets [his|her] tongue over [the bit]', '(hates|dislikes|resents) the bit', 'not taking the contact', 'fuss(y|ing) [(with|in|about)] the (bit|contact|mouth|bridle)', 'evad(es|ing) the (bit|contact)', '(leans|leaning) on the bit', 'fights the bit', 'unhappy (in|with|on) the (bit|contact)', 'hangs on the bit', 'fussy in the (mouth|bridle|contact)'],
  },
  'body-condition': {
    label: 'Body condition', group: 'horse', places: ['N'], scale: 'body-condition',
    // How it is said to be, of the whole horse: no mouth is normal by it.
    say: [`[(his|her|the|general|overall|body)] condition (is|was|looks) ${quite} ${inCondition}`, `body condition ${quite} ${inCondition}`, `(he|she|horse|mare|gelding|pony|stallion|cob) (is|was|looks) in ${quite} ${inCondition} (condition|nick)`, `${inCondition} body condition`, 'carrying [a bit] (plenty of|good|enough|too much) condition', 'body condition [score]', 'body (score|scored|scoring) [(him|her|it)]', 'condition (scored|scoring) [(him|her|it)]', 'henneke [(score|scale)]', 'condition score', 'b c s'],
  },
  'slow-eating': {
    label: 'Slow eating', group: 'horse', places: ['N'],
    say: ['slow (eating|eater|to eat|to finish|at eating|finishing [(his|her)] (hay|feed|dinner))', '(slow|slower|takes ages|takes forever|taking ages|taking forever) (with|to eat|to finish|over|finishing|eating) [(his|her|the)] [(hay|feed|food|dinner|haylage)]', 'eats slowly', '(slow|slower) (eating|chewing|finishing|getting) (up|through) [(his|her|the)] [(hay|feed|food|dinner|haylage)]', 'eating slowly', 'taking longer to eat', 'slow with (his|her) (hay|feed)'],
  },
  choke: {
    label: 'Choke', group: 'horse', places: ['N'],
    say: ['choke', 'choked', 'choking', 'choke episode(s)', 'episode(s) of choke'],
  },
  'one-sided-chewing': {
    label: 'One-sided chewing', group: 'horse', places: ['N'],
    say: ['one sided chewing', '(chews|chewing|eats|eating) (on|with) (one|the left|the right) [side] [(only|mostly|mainly|all the time)]', '[only] (chews|chewing|eats|eating) [only|everything|all|just] on [just|only] [the] one side [only]', '(chews|chewing|eats|eating) on (his|her|the) (left|right) side [(only|mostly)]', 'only (chews|chewing|eats|eating) on (the|his|her) (left|right) side', '(only (chews|chewing)|(chews|chewing) (only|just)) the (one|left|right) side', '[only] (uses|using) one side to (chew|eat)', '(favours|favouring|favors|favoring) (the|his|her|one) [(left|right)] [side]', 'chew(s|ing) on one side', 'chew(s|ing) on the (left|right) [side] only', 'only chews on (one|the left|the right) [side]', 'favours one side'],
  },
  'long-fibre-in-droppings': {
    label: 'Long fibre in droppings', group: 'horse', places: ['N'],
    say: ['(droppings|manure|dung) [(is|are|has|have|had|got|show|shows|showing)] [(full of|with|some|lots of)] long (fibre|fibres|fiber|stems|stalks) [in (it|them)]', 'long (fibre|fibres|fiber|stems|stalks|bits of (hay|grass|haylage|straw)) [showing|visible|coming through|passing] in [(the|his|her)] (droppings|manure|dung)', 'whole (grain|grains|oats) in [(the|his|her)] (droppings|manure|dung)', 'undigested (fibre|fiber|grain|food|hay|grass) in [(the|his|her)] droppings'],
  },
  abnormality: {
    label: 'Abnormality', group: 'normal', places: ['T', 'S', 'R', 'G', 'N'],
    say: ['abnormality', 'abnormalities', 'abnormal', 'anything abnormal', 'not [quite] right (with|about)', 'something [is] not [quite] right [(with|about|at)]'],
    absentSay: ['normal', 'all normal', 'nothing else [(found|seen|there)]', 'no other (findings|abnormalities|problems|issues)', 'healthy', 'clear', 'unremarkable', 'nothing abnormal', 'nil (of note|to report|to add|abnormal|of interest|significant) [(seen|felt|detected|found|here)]', 'nil else', 'nothing abnormal (seen|felt|detected|found)', 'no (abnormalities|abnormality) [(seen|felt|detected|found)]', 'within normal limits', 'n a d', 'all clear', 'nothing [(at all|much|really|else)] (to report|to add|to mention|to find|to see|to note|of note|of interest|remarkable|significant|untoward|unusual|doing|amiss|obvious|exciting|to worry about here|wrong [with]|the matter [with]|out of the ordinary)', 'no (problem|problems|issue|issues|concerns|worries|complaints|bother) [at all] (here|there|with|on|in|found|seen)', 'no (problems|issues|concerns|complaints)', 'not a thing wrong [with]', 'not a (mark|scratch) (on|in|along)', 'not a bother on', 'in (good|great|fine|perfect|lovely) (order|shape|nick|condition)', 'as expected', 'as it should be', 'spot on', 'all (grand|well|ok|okay|lovely|sound|happy|in order)', 'everything (is|looks) (grand|lovely|good|fine|perfect|great|sound|well|healthy|normal|in order)', 'everything else [(is|looks)] (clear|grand|lovely|good|fine|perfect|great|sound|well|healthy|normal|in order)', 'pink and moist', 'moist and pink', 'perfect', 'grand', 'tidy', 'clean', 'unaffected', 'pristine', '(looks|look|looking|feels|feel) (well|great|lovely|grand|okay|ok|tidy|sound|clean|perfect|unremarkable)', 'looking (fine|good|normal|healthy)', 'feeling (fine|good|normal)', '(look|looks|looking|looked) (nice|lovely) and (smooth|even|clean|tidy|healthy|soft|straight|pink)', 'nice and (smooth|even|clean|tidy|healthy|soft|straight)', '(are|look|feel|feels) [(all|really|very|quite|really quite|lovely and|both)] nice', '(dead|perfectly|nicely|all) straight', '(is|are) straight', 'clean as a whistle', 'happy with', 'w n l', 'n a f', 'nothing abnormal detected', 'looks (fine|good|normal|healthy)', 'look (fine|good|normal|healthy)', 'feels (fine|good|normal)', 'feel (fine|good|normal)', 'all (fine|good)', 'fine', 'even', 'symmetrical', '(even|same|the same|equal|symmetrical|alike|level|matching|match) [from] side to side', 'smooth', 'good', 'real good', 'sound', 'as they should be', '(even|normal|good) wear', '(wearing|worn|wears) (evenly|normally|well)', 'evenly worn'],
  },
} as const satisfies Record<string, ConditionEntry>;

export type ConditionId = keyof typeof conditions;
export const conditionIds = Object.keys(conditions) as [ConditionId, ...ConditionId[]];
