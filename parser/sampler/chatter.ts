/** Talk in the yard that is no finding: to the horse, the owner, of the weather and of money. It must yield nothing. */
import { chance, join, pick, whole, type Random } from './draw.ts';
import { sayNumber } from './spoken.ts';

const toHorse = [
  'good lad',
  'good girl',
  'steady now',
  'stand up',
  'stand still',
  'back up a bit',
  'easy now',
  'come on then',
  'whoa there',
  'there is a good boy',
  'give us your head',
  'what are you doing',
  'leave it',
  'get over',
  'pick your head up',
  'step back a little',
  'stop chewing my sleeve',
  'that is not for eating',
];
const toPeople = [
  'can you hold the rope for me',
  'just move the light over a bit',
  'could you pass me the bucket',
  'is there a tap round here',
  'mind your feet',
  'put the kettle on',
  'shall we do the grey one after this',
  'who is next after this one',
  'did you see the match last night',
  'she has gone to fetch the headcollar',
  'the farrier was here yesterday',
  'how is your mother keeping',
  'watch out for the dog',
  'are you happy for me to carry on',
  'the yard looks smart today',
  'he came over from ireland',
  'we had him on trial for a month',
];
const weather = [
  'cold out here this morning',
  'it is going to rain later',
  'the wind is getting up',
  'lovely day for it',
  'that roof is leaking again',
  'it was minus two last night',
];
/** Talk that holds words of the trade. */
const trap = [
  'hang it on the hook',
  'there is a hook on the door',
  'mind the step',
  'give them a wave from me',
  'the ramp of the lorry is down',
  'walk him up the ramp',
  'smile for the camera',
  'the gate has a sharp edge',
  'a cap on his head would help',
  'she wore a blue cap',
  'that was a good point',
  'the bars on that stable want painting',
  'the table is in the tack room',
  'there is a gap in the hedge',
  'he parks in the space by the barn',
  'put the rasp back in the box',
  'left the keys in the car',
  'right that will do',
  'the wolf hound is barking',
  'his tongue is always out when he works',
  'i have a sore back today',
  'the bit is in the tack room',
  'turn left at the corner',
  'wave when you want me',
  'no points for guessing',
  'lovely smile that child',
  'you missed a bit over there',
  'he has lost a shoe',
  'the fence is broken',
  'the old one was worn out',
];

/** One stretch of talk; now and then with a number that is no tooth. */
export function chatter(random: Random): string {
  if (chance(random, 0.15))
    return pick(random, [
      () => `hay is ${sayNumber(whole(random, 40, 99))} pounds a bale now`,
      () => `we got ${pick(random, ['two', 'three', 'four'])} hundred bales in`,
      () => `he is ${pick(random, ['fifteen', 'sixteen'])} ${pick(random, ['one', 'two', 'three'])} hands`,
      () => `it was an hour and ten to get here`,
      () => `about ${sayNumber(whole(random, 2, 40))} miles from here`,
      () => `be done by half past ${sayNumber(whole(random, 1, 11))}`,
    ])();
  const line = pick(random, pick(random, [toHorse, toPeople, weather, trap]));
  return chance(random, 0.15) ? join(pick(random, ['oh', 'well', 'right', 'okay', 'so']), line) : line;
}
