/** Verbs of work under way, each with its past: "rasping the lowers now" is told as it is done. */
export const underWay: Readonly<Record<string, string>> = {
  rasping: 'rasped', floating: 'floated', filing: 'filed', burring: 'burred', dressing: 'dressed', buffing: 'buffed', polishing: 'polished', rounding: 'rounded', smoothing: 'smoothed', blunting: 'blunted',
  reducing: 'reduced', lowering: 'lowered', levelling: 'levelled', shortening: 'shortened', trimming: 'trimmed', skimming: 'skimmed',
  flushing: 'flushed', irrigating: 'irrigated', rinsing: 'rinsed', cleaning: 'cleaned', clearing: 'cleared', picking: 'picked', hooking: 'hooked', scooping: 'scooped',
  scaling: 'scaled', chipping: 'chipped', scraping: 'scraped', cracking: 'cracked', knocking: 'knocked', popping: 'popped', flicking: 'flicked', easing: 'eased', levering: 'levered', prising: 'prised', lifting: 'lifted', pulling: 'pulled',
  elevating: 'elevated', extracting: 'extracted', removing: 'removed', packing: 'packed', sealing: 'sealed', plugging: 'plugged', widening: 'widened', debriding: 'debrided', tidying: 'tidied',
  taking: 'took', getting: 'got', bringing: 'brought', cutting: 'cut', grinding: 'ground',
};
/** These are of work only with where it goes: "taking that down", and not "getting a smell". */
export const withParticle: readonly string[] = ['taking', 'getting', 'bringing', 'cutting', 'knocking', 'popping', 'easing', 'lifting', 'pulling', 'picking', 'hooking', 'clearing', 'cleaning', 'tidying', 'levering', 'scooping'];
/** Not under way where one of these is said: it is for then, or for somebody. */
export const notNow: readonly string[] = [
  'next (time|visit|year|month|week|appointment|spring|summer|autumn|winter)', '(in|until|till|for|over) (a|one|two|three|four|five|six|eight|nine|ten|twelve|another|the) [(couple|few)] [of] (week|weeks|month|months|year|years|day|days|visits|goes|spring|summer|autumn|winter)',
  '(tomorrow|monday|tuesday|wednesday|thursday|friday|saturday|sunday)', 'last (time|year|month|week|visit)', '(was|were|is|are|needs|wants|will|would|should|could|might|did|does|makes|hurts|needed|advised|declined|or)', 'not', 'no (good|use|point)', 'in stages',
];
