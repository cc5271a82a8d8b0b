import type { DryingStageKind } from '../cure/cement.ts';
import type { RangeWhy } from '../cure/range.ts';
import type { CoatState } from '../messages/cure.ts';
import type { CoatEnding, CoatFound, FireAnswer } from '../shop/entry.ts';

/** What the page says of coats that dry. A clock never says that a coat is dry: it says when to test it. */

export const dryingStageWords: Readonly<Record<DryingStageKind, string>> = {
  'set-to-touch': 'set to touch',
  'ready-for-iron': 'ready for the iron',
  'ready-for-overlay': 'ready for an overlay',
  cured: 'cured',
};

/** `stands` takes the place of "drying" while the air lets nothing dry. */
export const coatStateWords: Readonly<Record<CoatState | 'stands', string>> = {
  drying: 'Drying',
  'may-be-ready': 'May be ready: test it',
  due: 'Overdue, not known dry: test it',
  dry: 'Dry at every stage, you said',
  stands: 'Does not dry in this air',
};

export const coatFoundWords: Readonly<Record<CoatFound, string>> = {
  dry: 'dry now',
  tacky: 'still tacky',
};

export const rangeWhyWords: Readonly<Record<RangeWhy, string>> = {
  'no-air': 'the shop’s air is not known all along: where it isn’t, the instructions’ own is assumed',
  'old-air': 'the air was told long ago',
  'air-ahead': 'nobody knows yet how the air goes on',
  'no-humidity': 'the humidity is not known',
  forecast: 'it goes by the forecast',
  typed: 'the air was typed, not measured all along',
  clock: 'nobody knows how long it dried while the machine’s clock was wrong',
  instructions: 'the instructions give a range themselves',
  'not-learned': 'little is known yet of how it dries here',
  'days-differ': 'coats differ from day to day',
};

/** When it may be ready: lengths and times of day come as they are to be shown. */
export const waitWords = {
  between: (low: string, high: string, likely: string) => `in ${low} to ${high}, likely ${likely}`,
  about: (time: string) => `in about ${time}`,
  from: (low: string) => `in ${low} at the earliest; at the latest can’t be said`,
  fromLikely: (low: string, likely: string) =>
    `in ${low} at the earliest, likely ${likely}; at the latest can’t be said`,
  soon: 'within a minute',
  /** Its likely time is past: from here on it is to be tested. */
  nowTo: (high: string) => `any time now, in ${high} at the latest`,
  nowOpen: 'any time now; at the latest can’t be said',
  likely: (likely: string, high: string) => `likely in ${likely}, in ${high} at the latest`,
  likelyOpen: (likely: string) => `likely in ${likely}; at the latest can’t be said`,
  unsaid: 'when can’t be said in this air',
  /** How long ago it was as `ago` and `justNow` have it. */
  past: (ago: string) => `its latest time was ${ago}`,
  ago: (time: string) => `${time} ago`,
  justNow: 'just now',
  notInThisAir: 'not in this air, as far as can be seen',
  clock: (low: string, high: string, likely: string) => `${low} to ${high}, likely ${likely}`,
  clockFrom: (low: string) => `${low} at the earliest`,
  minutes: (count: number) => `${count} min`,
  hours: (count: number) => `${count} h`,
  hoursMinutes: (hours: number, minutes: number) => `${hours} h ${String(minutes).padStart(2, '0')} min`,
  days: (count: number) => `${count} days`,
} as const;

export const coatWords = {
  towards: (stage: string) => `${stage}:`,
  why: (whys: string) => `So wide because ${whys}.`,
  and: '; ',
  putOn: (cement: string, time: string, ago: string) =>
    ago === '' ? `${cement}, put on ${time}` : `${cement}, put on ${time} (${ago})`,
  unconfirmed: 'unconfirmed',
  unconfirmedMeans: 'Nobody has entered where this cement’s times come from.',
  expired: 'past its expiry',
  expiredMeans: 'The cement’s day was past when it was put on: see its instructions.',
  saidDry: (time: string) => `dry, said ${time}`,
  saidTacky: (time: string) => `still tacky, said ${time}`,
  stages: 'Stage after stage',
  answers: (place: string) => `What you find: ${place}`,
  done: 'done with it',
  doneMeans: 'stops its clock and its warnings',
  doneOf: (what: string) => `done with it stops its clock and its warnings: ${what}`,
  mistake: 'was a mistake',
  takeBack: 'take back',
  takeBackOf: (what: string) => `Take back: ${what}`,
  takeBackLastOf: (place: string) => `Take back what was said last: ${place}`,
  saidLast: (what: string) => `You said: ${what}.`,
  of: (what: string, place: string) => `${what}: ${place}`,
  dryOf: (dry: string, stage: string, place: string) => `${dry} ${stage}: ${place}`,
  fire: {
    'iron-off': (time: string) => `You said that the iron was off. That stands until ${time} at the latest.`,
    elsewhere: (time: string) =>
      `You said that it is in another, ventilated space. That stands until ${time} at the latest.`,
    stopped: (time: string) => `You said that you stop work. That stands until ${time} at the latest.`,
  } satisfies Readonly<Record<FireAnswer, (time: string) => string>>,
} as const;

export const benchWords = {
  title: 'Bench',
  reading: 'Reading the coats …',
  notRead: (why: string) => `The coats could not be read. ${why}`,
  asItWas: 'As it was read last: the daemon can’t be reached. Times go on by the air as it was known then.',
  test: (places: string) => `May be ready, test it: ${places}.`,
  /** A place in that list, with the stage that it may be ready for. */
  toTest: (place: string, stage: string) => `${place} (${stage})`,
  testNone: 'Nothing to test now.',
  next: (place: string, stage: string, wait: string) => `Next: ${place}, ${stage} ${wait}.`,
  stands: (places: string) => `Not drying in this air: ${places}.`,
  allDry: 'Every coat is dry at every stage, you said.',
  more: (count: number) => `${count} more`,
  none: 'No coat is drying.',
  noneMeans:
    'Put cement on, then say below which one and where: its clock tells when to test it, and warns while an iron would meet it wet.',
  coats: 'Coats',
  ended: 'Ended lately',
  endedAs: {
    done: (cement: string, place: string, time: string) => `${cement} on ${place}: done with it, ${time}`,
    mistake: (cement: string, place: string, time: string) => `${cement} on ${place}: a mistake, ${time}`,
  } satisfies Readonly<Record<CoatEnding, (cement: string, place: string, time: string) => string>>,
  amiss: 'Coats of cements that are gone:',
  clock: {
    running: (by: string, when: string) =>
      `The machine’s clock was set by ${by} while coats dried, ${when}. Their times were moved along; test them rather early and often.`,
    off: (by: string, when: string) =>
      `The machine’s clock stood ${by} behind when the program started, ${when}. Nobody knows how long it was off: coats may be further on than their times say.`,
  },
  air: 'Shop air',
  airNotRead: (why: string) => `The shop’s air could not be read. ${why}`,
  toAir: 'Tell the air, or see how it was',
  instructions: 'A cement’s own instructions decide about its air and its times.',
} as const;

export const startCoatWords = {
  title: 'Cement was put on',
  cement: 'Which cement',
  noCement: 'No cement has been entered yet: a clock needs the times of its instructions.',
  toCements: 'Enter a cement',
  piece: 'On which piece',
  morePieces: (count: number) => (count === 1 ? '1 more piece' : `${count} more pieces`),
  noPiece: 'No piece has been made yet: a coat belongs to a place on one.',
  toPieces: 'Make a piece',
  where: 'Where: tap as many as have it',
  wholeSide: 'the whole side',
  wholeSideOf: (side: string) => `The whole side: ${side}`,
  on: (side: string, places: string) => `${side}: ${places}`,
  and: ' and ',
  when: 'When',
  justNow: 'just now',
  ago: 'so long ago',
  agoField: 'Minutes ago',
  agoSign: 'min',
  noMinutes: '…',
  agoWrong: (most: number) => `Write minutes from 0 to ${most}, for example 20.`,
  start: 'Start the clock',
  startMany: (count: number) => `Start ${count} clocks`,
  twice: (cement: string, where: string) =>
    `Not started again: the clock of ${cement} on ${where} was started within the last minute.`,
  choose: 'Choose where the cement was put on.',
  summary: (cement: string, where: string, when: string) => `${cement} on ${where}, put on ${when}.`,
  minutesAgo: (minutes: string) => `${minutes} min ago`,
} as const;

export const pieceCoatWords = {
  title: 'Coats on this piece',
  none: 'No coat of cement is drying on this piece.',
  here: 'cement on here',
  hereOf: (place: string, cement: string) => `${place} · ${cement}, just now`,
  hereNot: 'take this piece in hand first',
  hereNoCement: 'choose a cement on the Bench first',
  other: 'Another cement, place or time',
  elsewhere: (places: string) => `Wet elsewhere on this piece: ${places}.`,
  /** Behind a place: when it may be ready. */
  about: (place: string, time: string) => `${place} (about ${time})`,
  wet: 'wet',
  wetShort: '≈',
  wetUntil: (time: string) => `wet, ${time}`,
  wetFull: (stage: string, time: string) => `wet cement, ${stage} about ${time}`,
  wetUntold: 'wet cement until you say that it is dry: its instructions give no time for an iron',
  wetOpen: (stage: string) => `wet cement, not ${stage} in this air`,
  legend: 'wet cement: no iron here; the time is when it may be ready for one, to be tested',
} as const;

export const fireWords = {
  title: 'A question that can’t wait',
  count: (of: number) => `1 of ${of} questions`,
  ask: (cement: string, place: string) =>
    `The vapour of ${cement} on ${place} burns, and an iron is hot. What is done about it?`,
  answers: {
    'iron-off': 'The iron is off already',
    elsewhere: 'The coat is in another, ventilated space',
    stopped: 'I stop work now',
  } satisfies Readonly<Record<FireAnswer, string>>,
  means: {
    'iron-off': 'it was switched off or unplugged before; its plate stays hot for long',
    elsewhere: 'no iron, flame or spark near it',
    stopped: 'switch the iron off, ventilate, wait',
  } satisfies Readonly<Record<FireAnswer, string>>,
  decides:
    'The cement’s instructions and your local rules decide. This can’t smell vapour or switch an iron off. Your answer is written down, stands for this coat and for a limited time; then it is asked again.',
  lost: 'As last heard, before the daemon was lost.',
} as const;

export const readyWords = {
  toBench: 'To the Bench',
  /** Spoken. */
  spoken: (place: string, stage: string) => `${place} may be ${stage}. Test it.`,
  spokenMany: (places: string) => `These may be ready, test them: ${places}.`,
  understood: 'Understood: it may be ready',
} as const;

export const spokenWords = {
  title: 'Spoken notices',
  means:
    'What may be ready is also said aloud, by a voice of this device, while sound is on. Alarms are never spoken: they sound.',
  on: 'Speak',
  off: 'Don’t speak',
  attempt: 'Try the voice',
  attemptText: 'Left aileron, leading edge, may be ready. Test it.',
  noVoice: 'This browser has no voice of this device for pages: notices are shown and sound only.',
  soundOff: 'Sound is off: nothing is spoken until it is turned on.',
  notKept: 'This browser keeps nothing: this choice is forgotten when the page closes.',
} as const;

/** What was asked, for what waits or was refused. */
export const coatCommandWords = {
  start: (cement: string, where: string, time: string) => `${cement} on ${where}, put on ${time}`,
  check: (found: string, stage: string, place: string) => `${found} (${stage}): ${place}`,
  done: (place: string) => `done with ${place}`,
  doneAmiss: (text: string) => `done with it: ${text}`,
  mistake: (place: string) => `a mistake: ${place}`,
  takeBack: (what: string) => `take back “${what}”`,
  takeBackLast: (place: string) => `take back what was said last: ${place}`,
  fire: (answer: string, place: string) => `“${answer}” (${place})`,
  lateCheck:
    'It would count as of now, not as of when you touched the coat. Touch it again and say how it is.',
  lateAnswer: 'It may not hold any more. Answer the question again as things stand.',
} as const;
