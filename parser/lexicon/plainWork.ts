/** Ordinary words for work that say what was done only together with the thing it was done to, and the plain verb for each thing. */
import type { Handled } from './handling.ts';

/** The plain verb of what is worked on: infinitive, past, gerund. */
export type Verb = readonly [infinitive: string, past: string, gerund: string];
export const plainVerbs: Readonly<Partial<Record<Handled, Verb>>> = {
  overgrowth: ['reduce', 'reduced', 'reducing'], points: ['rasp', 'rasped', 'rasping'], tartar: ['scale', 'scaled', 'scaling'],
  cap: ['remove', 'removed', 'removing'], tooth: ['extract', 'extracted', 'extracting'],
};
/** What is worked on, in the singular. "Tooth" only behind "wolf". */
export const workedOn: Readonly<Record<string, Handled>> = {
  hook: 'overgrowth', ramp: 'overgrowth', step: 'overgrowth', overgrowth: 'overgrowth', wave: 'overgrowth', point: 'points', tartar: 'tartar', calculu: 'tartar', calculus: 'tartar', cap: 'cap', tooth: 'tooth', teeth: 'tooth',
};
/** Between a verb and the thing, and before it. */
export const describing: ReadonlySet<string> = new Set(['the', 'that', 'this', 'those', 'these', 'his', 'her', 'both', 'all', 'of', 'two', 'big', 'large', 'small', 'little', 'wee', 'bad', 'tall', 'loose', 'retained', 'sharp', 'enamel', 'wolf', 'blind', 'upper', 'lower', 'left', 'right', 'top', 'bottom']);
/** Verbs that say no more than that something was done, by their form. */
export const generic: Verb = ['(do|treat|sort [out]|tackle|address|(deal|dealing) with|see to|attend to)', '(did|done|treated|sorted [out]|tackled|addressed|dealt with|saw to|seen to|attended to)', '(doing|treating|sorting [out]|tackling|addressing|dealing with|seeing to|attending to)'];
/** Of touching only where it is not to be: "did not want it touched". */
export const touching: Verb = ['touch', 'touched', 'touching'];
/** Before an infinitive: without one of these "do the hooks hurt" asks. */
export const leadsVerb: ReadonlySet<string> = new Set(['to', 'will', 'not', 'could', 'can', 'let', 'me', 'us', 'must', 'should', 'would', 'might', 'i', 'we', "i'll", "we'll"]);
export const unwanted: ReadonlySet<string> = new Set(['not', 'never', 'without', 'want', 'nobody', 'rather']);
/** Participles that end in a particle: "knocked off", "dressed back". */
export const partedFrom: ReadonlySet<string> = new Set(['taken', 'popped', 'knocked', 'chipped', 'flicked', 'pulled', 'lifted', 'prised', 'prized', 'shaved', 'filed', 'rasped', 'floated', 'ground', 'dressed', 'eased', 'brought', 'cut', 'trimmed', 'cracked', 'scraped', 'picked', 'levered', 'twisted', 'worked', 'touched', 'whipped', 'teased']);
/** The same with the thing behind them and "back" at the end, where the verb by itself is another procedure. */
export const backwards: ReadonlySet<string> = new Set(['dressed', 'eased', 'filed', 'rasped', 'floated', 'trimmed', 'worked', 'touched', 'balanced']);
export const tools: readonly string[] = ['(with|using|in) [(the|my|a|an|some)] (forceps|finger|fingers|elevator|elevators|hand rasp|hand float|hand file|power float|power rasp|motorised rasp|motorised float|electric rasp|burr|rasp|float|pick|scaler)'];
/** How what is left is left; "in" and "on" only at the end of what is said. */
export const leftHow: readonly string[] = ['[well] alone', 'there [for now]', 'for (now|today|another day|another time|another visit)', 'for the (moment|time being)', '[as] (it|they) (is|are)', 'as is', 'in place', 'in situ', 'where (it|they) (is|are)', 'untouched'];
export const atTheEnd: ReadonlySet<string> = new Set(['in', 'on', 'be']);
/** What may follow them. */
export const goesOn: ReadonlySet<string> = new Set(['today', 'now', 'for', 'this', 'and', 'but', 'because', 'as', 'so', 'since']);
export const leavingSay: ReadonlySet<string> = new Set(['left', 'leave', 'leaving', 'stay', 'stays', 'staying', 'stayed']);
export const failing: readonly string[] = ['(could|can|did) not (get|shift|budge|move|manage|free|loosen)', '(was|were) (not able|unable) to (get|shift|budge|move)', 'unable to (get|shift|budge|move)', 'failed to (get|shift|budge|move)'];
export const trying: readonly string[] = ['(had|took|having) (a|another) [(good|quick|real|proper|little|wee)] (go|crack|shot|stab|try|tug|pull|dig|wiggle|prod|twist) (at|on)', '(tried|trying)', '(gave|given|giving)', '(worked|tugged|pulled|struggled|fought|wrestled|battled) (at|on|with|away at)'];
/** How trying ended in nothing. */
export const inVain: readonly string[] = ['(could|can|would|will|did) not', '[but] [(had|with)] no (joy|luck|success)', 'without (success|luck|joy)', 'gave up', 'had to (stop|give up|leave)', '[(is|was|are|were)] not (out|off|for moving|for shifting|for coming|for budging|moving|shifting|budging|coming)', '[(is|was|are|were)] [just] (not|nowhere near) [(quite|really|just|near)] ready', '[(is|was|are|were)] still [(far|much|way)] (solid|[too] tight|[too] firm|fast|firm|stuck|rock solid)'];
/** Verbs of taking hold, with the thing between them and their particle. */
export const takeApart: readonly string[] = ['take', 'have', 'get', 'whip', 'pull', 'lift', 'pop', 'knock', 'bring'];
export const takingApart: readonly string[] = ['taking', 'having', 'getting', 'whipping', 'pulling', 'lifting', 'popping', 'knocking', 'bringing'];
export const portions: readonly string[] = ['(got|took|had|knocked|cleaned|chipped|scraped|cracked|taken|managed to get) [only] (most|some|half|part|a bit|a third|two thirds|the top|the top half|the worst) [of]'];
/** Work that may be half done. A cavity is half filled and feed half chewed by nobody. */
export const halfDone: readonly string[] = ['rasped', 'extracted', 'elevated', 'removed', 'scaled', 'taken', 'flushed', 'packed', 'widened', 'buffed', 'rounded', 'debrided'];
/** Behind a place: the work that was done elsewhere was not done there. */
export const notWorked: readonly string[] = ['[(was|were)] not (touched|done|reduced|rasped|floated|scaled|flushed)', '[(was|were)] untouched'];
/** The infinitive of work that is done at one place and left at another. */
export const verbOfWork: Readonly<Record<string, string>> = { reduce: 'reduce', rasp: 'rasp', 'scale-calculus': 'scale', extract: 'extract', flush: 'flush', buff: 'buff', round: 'round' };
/** Around a place: that something is to be done there, and no more. */
export const toBeDone: readonly string[] = ['i', 'we', 'will', "'ll", 'shall', 'am', 'are', 'going', 'to', 'can', 'do', 'take', 'tackle', 'then', 'wait', 'waits', 'keep', 'have', 'be', 'done', 'come', 'down', 'off', 'is', 'for', 'till', 'until', 'just'];
/** Another day, beside those of the next visit. */
export const laterOn: readonly string[] = ['in [(about|another)] (a|two|three|four|five|six|eight|ten|twelve|the) (week|weeks|month|months|spring|summer|autumn|winter|new year|fall)', '[till|until] (spring|autumn|winter|summer)'];
/** Not done yet, and no word of when. */
export const stillToDo: readonly string[] = ['[(is|are)] still to (do|go|come|be done)', '[(is|are)] still (needs|need|wants|want) doing', '[(is|are)] yet to (do|come|be done)', 'to do (still|yet)', 'left to do'];
/** What is still to come off where some was taken. */
export const moreOfIt: readonly string[] = ['[(a|some)] [(bit|little|wee bit|touch)] more [(off|of it|of that)]', 'the (rest|remainder|other half) [of (it|that)]', 'another (one|two|three|four|bit) [(mil|mils)] [off]'];
