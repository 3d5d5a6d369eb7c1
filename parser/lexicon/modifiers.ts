import type { QualifierId, SeverityId, SurfaceId } from './surfaces.ts';

/** Spoken forms of surfaces. `rostral` and `caudal` are ends for hooks, ramps and overgrowths and stand among the qualifiers. */
export const surfaceSay: Readonly<Record<SurfaceId, readonly string[]>> = {
  buccal: ['buccal(ly)', 'buccal (side|aspect|edge|surface)', '[(on|to|at)] [the] (cheek side|outside|outsides|outer side|outer edge)', '(towards|toward|to) the cheek', 'outer'],
  lingual: ['lingual(ly)', 'lingual (side|aspect|edge|surface)', '[(on|to|at)] [the] (tongue side|inside|insides|inner side|inner edge)', '(towards|toward|to) the tongue', 'inner'],
  palatal: ['palatal(ly)', 'palatal (side|aspect|edge|surface)', '[(on|to|at)] [the] palate side', '(towards|toward|to) the palate'],
  labial: ['labial(ly)', '[on] [the] lip side', 'labial (side|aspect|surface)'],
  vestibular: ['vestibular'],
  occlusal: ['occlusal', '(across|over) the (top|crown) [of [it]]', '[on] [the] (chewing|grinding) surface', 'on the table'],
  mesial: ['mesial(ly)', 'mesial (side|aspect|edge|surface)'],
  distal: ['distal(ly)', 'distal (side|aspect|edge|surface)'],
  rostral: ['rostral (side|aspect|surface)'],
  caudal: ['caudal (side|aspect|surface)'],
  interproximal: ['interproximal(ly)'],
};

export const qualifierSay: Readonly<Record<QualifierId, readonly string[]>> = {
  rostral: ['rostral(ly)', '(rostral|front|mesial) (infundibulum|cup)', '[(on|at)] [the] (rostral|front|leading) (edge|end|part)', 'at the front [of it]', 'front', 'forwards', 'forward', 'anterior'],
  caudal: ['caudal(ly)', '(caudal|back|distal) (infundibulum|cup)', '[(on|at)] [the] (caudal|back|rear|trailing) (edge|end|part)', 'at the back [of it]', 'at the rear [of it]', 'back', 'backwards', 'posterior'],
  open: ['open [type]'],
  valve: ['(valve|valved|valvular) [type]', 'v shaped', 'closed [type]'],
  sagittal: ['[midline] sagittal(ly)', 'midsagittal', 'mid sagittal', 'midline', 'down the (middle|midline) [from] front to back', 'lengthways', 'lengthwise'],
  slab: ['slab'],
  displaced: ['displaced'],
  undisplaced: ['undisplaced', 'not displaced', 'non displaced', 'nondisplaced', 'not (moved|come|pulled|gone|drifted) apart', 'not (separated|parted)', 'still (held|hanging) together'],
  active: ['active'],
  inactive: ['inactive'],
  purulent: ['purulent', 'mucopurulent', 'pussy'],
  malodorous: ['malodorous', 'foul [smelling]', 'smelly', 'stinking', 'bad smelling'],
  clear: [],
  generalised: ['generalised', 'generalized', 'widespread'],
  focal: ['focal', 'localised', 'localized'],
  early: ['early'],
  healed: ['healed'],
  left: [], right: [], upper: [], lower: [],
  clinical: ['clinical(ly)'],
  radiographic: ['radiographic(ally)', 'on [the] (radiograph|radiographs|x ray|x rays|films)'],
  old: ['old', 'existing'],
  chronic: ['chronic', 'long standing', 'longstanding'],
  acute: ['acute', 'fresh'],
};

/** Names of a finding that say how it is as well. */
export const saidInName: Readonly<Record<string, QualifierId>> = { pus: 'purulent', purulent: 'purulent' };

/** Another word for a degree is kept as said; only these map to a degree of the record. */
export const severitySay: Readonly<Record<SeverityId, readonly string[]>> = {
  slight: ['slight(ly)', 'in a bit of [(a|an)]', 'very slight(ly)', 'ever so slight(ly)', 'a [wee|tiny] bit [of] [a]', 'bit of (a|an)', 'a little [bit] [of] [a]', '[a] touch of [a]', 'a touch', 'a trace [of]', 'trace', 'a hint of', 'a smidge [of]', 'a tad [of]', 'the slightest', 'the odd bit of', 'a wee'],
  mild: ['mild(ly)', 'very mild'],
  moderate: ['moderate(ly)', 'mod', 'fair'],
  marked: ['marked(ly)'],
  severe: ['severe(ly)', 'heavy'],
};
/** Everyday words for normal that also say how a finding stands out ("a good hook", "a clean break"). */
export const describingSay: readonly string[] = ['good', 'clean', 'fine', 'clear', 'even', 'perfect', 'grand', 'sound', 'smooth', 'tidy', 'great', 'lovely'];
/** Degrees beside another finding's: kept as said where nothing is named that they are compared with. */
export const comparedSay: readonly string[] = ['bigger', 'smaller', 'wider', 'narrower', 'larger', 'deeper', 'shallower', 'tighter', 'taller'];
/** Degrees the record keeps in the speaker's word alone. */
export const severityKept: readonly string[] = ['a (fair|good|certain|decent|reasonable|small|large|huge) amount of', 'heavily', 'badly', '(fair|big|right|proper|grand|good) old', 'small', 'large', 'big', 'tall', 'high', 'tight', '[(big|great|wee)] (lump|lumps|ball|wad|dollop|clump|rim|ring|layer) of', 'tiny', 'huge', 'bad', 'pretty big', 'massive', 'significant', 'minor', 'major', 'long', 'deep', 'wide', 'nice', 'good sized', 'decent', 'mildish', 'serious', 'enormous', 'sizeable', 'sizable', 'minimal', 'nasty', 'chunky', 'whopping', 'whopper of a', 'great big', 'wee', 'little', 'substantial', 'considerable', 'noticeable', 'obvious', 'prominent', 'pronounced', 'extensive', 'advanced', 'gross', 'horrible', 'horrendous', 'awful', 'terrible', 'ugly', 'shocking', 'monster', 'heaps of', 'loads of', 'lots of', 'a lot of', 'plenty of', 'tons of', 'masses of', 'a fair bit of', 'quite a bit of', 'a good bit of', 'a good deal of', '[a] good (bit|deal|way|lot)', 'thick', 'thin', 'faint', 'subtle', 'gentle', 'shallow', 'modest', 'smallish', 'biggish', 'steep', '(worst|worse|heavier|heaviest|sharper|sharpest|deepest|biggest|longest) (at|towards|toward|in) the (back|front|middle)', 'largish', '(bigger|smaller|larger|deeper|shallower|wider) one', 'bloody (big|huge|great|massive|enormous|large|deep|long|wide|tight) [big]', 'medium', 'medium sized', 'average', 'hefty', 'mighty', 'hell of a', 'heck of a', 'very (mild|slight|small|large|big|bad|sharp|deep)', 'reasonable', 'respectable', 'barely there', 'just starting', 'quite bad', 'pretty bad', 'really bad', 'not (much|a lot) of [(a|an)]', '(hardly|scarcely|barely) (any|a|an)', 'next to (no|none)', 'almost (no|none)', 'practically (no|none)', 'no (great|huge|massive)', 'not [(too|so|very|that|really|all that|overly)] (big|huge|massive|large|terrible|serious|awful|horrendous|enormous|severe|dramatic|major|wide|deep)', 'not (a|the) (big|biggest|huge|great|massive|large|largest|bad|worst|serious|deep|long|major) [(old|big)]', 'not [(quite|nearly)] as (bad|big|long|deep|sharp|severe|wide|high|tall|marked)', 'not an (enormous|awful|obvious|extensive|especially bad)', 'not [a] (very|that|too|so|terribly|particularly|overly|especially) (big|bad|deep|long|large|wide|severe|marked|sharp|high)', 'a (fair|tidy|grand|good) (size|sized)', '(fair|tidy|good) size', 'a good (size|length|depth|width)'];

export const changeSay: Readonly<Record<'new' | 'better' | 'worse' | 'unchanged', readonly string[]>> = {
  new: ['[brand] new [since (last time|last year)]', '[(that|which|it|they|those|and it|and that)] (was|were) not there (last (time|year|visit|month|week|spring|summer|autumn|winter)|before|previously|[(a|one|two|three|four|five|six|a few|a couple of)] (week|weeks|month|months|year|years) ago|in the (spring|summer|autumn|winter)|in (the|his|her) last (exam|visit|chart))', 'newly (appeared|arrived)'],
  better: ['[much|bit|a bit|lot|a lot] better [than (last time|last year|before|it was)]', '[much] improved [since (last time|last year)]', 'improving', '(smaller|shorter|shallower|less) than (last time|last year|before|it was)', 'gone down [since (last time|last year)]', '[(is|are|has come|has gone)] down on (last time|last year|last visit|before)', 'less than (last time|last year|before|it was)', 'settling [down]'],
  worse: ['[much|bit|a bit|lot|a lot] worse [than (last time|last year|before|it was)]', '(bigger|larger|longer|deeper|wider|more) than (last time|last year|before|it was)', 'getting worse', '[(has|have)] (come|came) on [(a bit|a lot)] (since|from) (last time|last year|the spring|the summer|the autumn|before)', '(grown|up) [(a bit|a lot)] (since|from|on) (last time|last year|last visit)', 'worsened', 'deteriorated', 'progressed [since (last time|last year)]', 'has got (worse|bigger|deeper|wider)', '(got|getting|has got|is getting) (worse|bigger|deeper|wider|longer|taller|looser) [since (last time|last year|the spring|the summer|the autumn|the winter)]'],
  unchanged: ['unchanged [since (last time|last year)]', '[about] [the] same as it was', '[(just|exactly|about)] [the] same as (last time|last year|last visit|before)', 'much the same [as (last time|last year|before)]', 'as [(noted|recorded|seen|found|felt|described|charted|marked|mentioned)] (last (time|year|visit)|before)', 'static', 'stable since (last time|last year)', '[(is|are)] no (worse|better) [than (last time|last year|before)]', '(no|not any|neither) better [(and|or|nor|but)] (no|not any|nor) worse', '[(is|are)] (no|not any) (bigger|smaller|deeper|longer|wider|sharper|larger|shallower|higher) [than (it was|last time|last year|before|it was last time)]', 'has not changed [since (last time|last year)]', 'no change (from|since) (last time|last year)', 'no change [in]', 'no further change [in]', 'same as (last time|last year|before)', 'no different [from (last time|last year|before)]'],
};
/** Behind a size: an estimate. */
export const aboutAfter: readonly string[] = ['or so', 'or thereabouts', 'thereabouts', 'ish', 'give or take', 'or near enough', 'near enough', 'roughly', 'or roughly that', 'at a guess', 'approximately'];
/** Behind a size or a grade, up to a pause: a guess at that figure, and not at what it is of ("grade two i think", "four mil maybe"). */
export const guessAfter: readonly string[] = ['i (think|reckon|suppose|guess|suspect|fancy)', 'i would (say|guess|think|reckon|call it)', 'maybe', 'perhaps', 'probably', 'possibly'];
/** Before a number: an estimate. */
export const aboutSay: readonly string[] = ['about', 'around', 'roughly', '[just] shy of', 'something like', 'somewhere (around|about)', 'in the region of', 'getting on for', 'close (to|on)', 'just about', 'maybe about', 'a good', 'best part of', 'the best part of', 'well over', 'a shade (over|under)', 'approximately', 'approx', 'nearly', 'almost', 'maybe', 'just over', 'just under', 'nearer [to]', 'closer to', '[something] more like', 'nigh on'];

/** How it is, of what is more so than elsewhere: "tighter than the right" is tight. A size has no such word: "bigger" is not big. */
export const plainOf: Readonly<Record<string, string>> = { tighter: 'tight', sorer: 'sore', hotter: 'hot', warmer: 'warm', looser: 'loose', wobblier: 'wobbly', sharper: 'sharp', puffier: 'puffy', redder: 'red', flatter: 'flat' };
