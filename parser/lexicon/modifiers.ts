import type { QualifierId, SeverityId, SurfaceId } from './surfaces.ts';

/** Spoken forms of surfaces. `rostral` and `caudal` are ends for hooks, ramps and overgrowths and stand among the qualifiers. */
export const surfaceSay: Readonly<Record<SurfaceId, readonly string[]>> = {
  buccal: ['buccal(ly)', 'buccal (side|aspect|edge|surface)', '[(on|to|at)] [the] (cheek side|outside|outer side|outer edge)', '(towards|toward) the cheek', 'outer'],
  lingual: ['lingual(ly)', 'lingual (side|aspect|edge|surface)', '[(on|to|at)] [the] (tongue side|inside|inner side|inner edge)', '(towards|toward|to) the tongue', 'inner'],
  palatal: ['palatal(ly)', 'palatal (side|aspect|edge|surface)', '[(on|to|at)] [the] palate side', '(towards|toward|to) the palate'],
  labial: ['labial(ly)', '[on] [the] lip side', 'labial (side|aspect|surface)'],
  vestibular: ['vestibular'],
  occlusal: ['occlusal', '[on] [the] (chewing|grinding) surface', 'on the table'],
  mesial: ['mesial(ly)', 'mesial (side|aspect|edge|surface)'],
  distal: ['distal(ly)', 'distal (side|aspect|edge|surface)'],
  rostral: ['rostral (side|aspect|surface)'],
  caudal: ['caudal (side|aspect|surface)'],
  interproximal: ['interproximal(ly)'],
};

export const qualifierSay: Readonly<Record<QualifierId, readonly string[]>> = {
  rostral: ['rostral(ly)', '[(on|at)] [the] (rostral|front|leading) (edge|end|part)', 'at the front', 'front', 'forwards', 'forward', 'anterior'],
  caudal: ['caudal(ly)', '[(on|at)] [the] (caudal|back|rear|trailing) (edge|end|part)', 'at the back', 'at the rear', 'back', 'backwards', 'posterior'],
  open: ['open [type]'],
  valve: ['(valve|valved|valvular) [type]', 'v shaped', 'closed [type]'],
  sagittal: ['[midline] sagittal', 'midsagittal', 'mid sagittal'],
  slab: ['slab'],
  displaced: ['displaced'],
  undisplaced: ['undisplaced', 'not displaced', 'non displaced', 'nondisplaced'],
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
  clinical: ['clinical'],
  radiographic: ['radiographic', 'on [the] (radiograph|radiographs|x ray|x rays|films)'],
  old: ['old', 'existing'],
  chronic: ['chronic', 'long standing', 'longstanding'],
  acute: ['acute', 'fresh'],
};

/** Another word for a degree is kept as said; only these map to a degree of the record. */
export const severitySay: Readonly<Record<SeverityId, readonly string[]>> = {
  slight: ['slight(ly)', 'a bit [of]', 'a little [bit] [of]', 'a touch [of]', 'a trace [of]', 'trace'],
  mild: ['mild(ly)'],
  moderate: ['moderate(ly)'],
  marked: ['marked(ly)'],
  severe: ['severe(ly)', 'heavy'],
};
/** Degrees the record keeps in the speaker's word alone. */
export const severityKept: readonly string[] = ['small', 'large', 'big', 'tiny', 'huge', 'bad', 'fair', 'pretty big', 'massive', 'significant', 'minor', 'major', 'long', 'deep', 'wide', 'nice', 'good sized', 'decent', 'mildish', 'serious', 'enormous', 'sizeable', 'minimal'];

export const changeSay: Readonly<Record<'new' | 'better' | 'worse' | 'unchanged', readonly string[]>> = {
  new: ['new [since (last time|last year)]'],
  better: ['better [than (last time|last year|before)]', 'improved', 'improving', 'smaller than (last time|last year|before)'],
  worse: ['worse [than (last time|last year|before)]', 'bigger than (last time|last year|before)'],
  unchanged: ['unchanged', 'no change [in]', 'no further change [in]', 'same as (last time|last year|before)', 'no different [from (last time|last year|before)]'],
};
/** Before a number: an estimate. */
export const aboutSay: readonly string[] = ['about', 'around', 'roughly', 'approximately', 'approx', 'nearly', 'almost', 'maybe', 'just over', 'just under'];
