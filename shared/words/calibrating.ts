/** What is said while a calibration is being made, and of those that were. */

export const procedureRefusals = {
  none: 'No calibration of this probe is being made. Begin one first.',
  already:
    'A calibration of this probe is being made already, here or on another page. Go on with it, or give it up first.',
  lagUnderWay:
    'The lag of this probe is being measured. Finish that first, or give it up: one procedure at a time.',
  notWaiting: 'There is no point to keep. Choose a point and wait until the reading holds.',
  otherKind: (waiting: string, given: string) =>
    `It waits at “${waiting}”, but what was sent belongs to “${given}”. Choose the point anew.`,
  noPoint: (place: number) => `There is no point ${place + 1}.`,
  changed:
    'How this probe is read, or the iron that it sits on, has changed since the first point: the points no longer go together. Give this procedure up and begin anew.',
  duePast: 'This due date has passed already. Enter a later day, or leave it empty.',
} as const;

export const calibratingWords = {
  title: 'Calibration',
  inForce: (version: number, madeAt: string) => `Calibration ${version}, made ${madeAt}`,
  by: (name: string) => `by ${name}`,
  method: 'It gives',
  guard: (now: string) => `±${now} on what it reads now`,
  noGuard: 'no valid reading now',
  trust: 'Trusted to',
  dueOn: 'Due again',
  noDue: 'no date set',
  begin: 'Calibrate',
  beginAgain: 'Calibrate again',
  making: 'Calibrating',
  first: 'First of all',
  loose: 'Loose',
  looseMeans: 'off every iron: it can be dipped',
  fitted: 'Fitted',
  fittedMeans: 'to an iron or a check pad: it is compared on the plate',
  which: 'How is the probe mounted now?',
  neverMind: 'Never mind',
  take: 'Which point?',
  takeAnother: 'Add another point',
  oneIsEnough:
    'One point gives an offset. Two, a good way apart, give a line that holds over the whole range between them.',
  reading: 'Reading, uncorrected',
  noReading: 'none yet',
  progress: 'How long it has held',
  spread: 'Spread',
  drift: 'Drift a minute',
  unknown: 'not known yet',
  keep: 'Keep this point',
  leave: 'Leave this point',
  plate: 'The thermometer shows',
  plateOf: 'At the moment when you keep the point.',
  accuracy: 'Its accuracy ±',
  accuracyMeans: 'From its data sheet or its certificate.',
  accuracyIs: 'That accuracy is',
  instrument: 'Which thermometer',
  instrumentMeans: 'Make and number, for the record. May be left empty.',
  barometer: 'Read from',
  barometerMeans: 'What the pressure was read from, for the record. May be left empty.',
  pressure: 'Air pressure here',
  pressureMeans: 'Where the water stands, not reduced to sea level. Either this or the altitude is enough.',
  altitude: 'Altitude here',
  altitudeMeans: 'Over sea level. Without a pressure the weather counts as uncertainty.',
  inUnit: (what: string) => `${what}, in`,
  number: 'Write a number, for example 350 or 350,5.',
  positive: 'Write a number over zero, for example 2 or 1,5.',
  points: 'Points so far',
  pointsOf: 'Points',
  point: 'Point',
  reference: 'Reference',
  read: 'Read',
  leftOver: 'Left over',
  leftOverMeans: 'Left over: how far the corrected reading would still be under the reference.',
  dropPoint: (place: number) => `Leave out point ${place}`,
  gives: 'What they give',
  correctionAt: (from: string, to: string) => (from === to ? `at ${from}` : `from ${from} to ${to}`),
  would: 'How far it could be trusted',
  at: 'At',
  asNow: 'as it is now',
  withThis: 'with this',
  finish: 'Finish',
  who: 'Who made it',
  whoMeans: 'For the record. May be left empty.',
  due: 'Due again',
  dues: { none: 'No date', '3': 'In 3 months', '6': 'In 6 months', '12': 'In a year' },
  save: (version: number) => `Save as calibration ${version}`,
  saved: (version: number) => `Calibration ${version} is in force now.`,
  giveUp: 'Give up',
  reallyGiveUp: 'Drop what was measured',
  goOn: 'Go on calibrating',
  givesUp: 'Nothing is in force of this yet. What was saved before stays.',
  versions: 'Earlier calibrations',
} as const;

/** The drawing of what a correction leaves over. */
export const residualWords = {
  across: 'what the probe read',
  exact: (points: number) =>
    points === 1
      ? 'One point is met exactly, so nothing is left over: how good it is shows only with more points.'
      : 'Two points are met exactly by the line through them, so nothing is left over: a third shows how good it is.',
  furthest: (place: number, off: string) =>
    `Point ${place} lies furthest off: by ${off}. On the full line nothing is left over.`,
  band: (least: string, most: string) =>
    `The dashed lines are how far the correction can be trusted: ±${least} where it is best, ±${most} at the edges (twice its standard uncertainty, some 95 %; GUM, JCGM 100:2008, 6.3.3).`,
} as const;

/** Confidence as it stands in a choice. */
export const confidenceText = (confidence: number): string => `${Number((confidence * 100).toFixed(1))} %`;

export const trustSettingWords = {
  toleranceClass: 'Tolerance class of its wire',
  toleranceMeans: 'Counts until a calibration gives better. It stands on the wire’s reel or data sheet.',
  classes: {
    'astm-special': 'ASTM special',
    'astm-standard': 'ASTM standard',
    'iec-1': 'IEC class 1',
    'iec-2': 'IEC class 2',
    'iec-3': 'IEC class 3',
  },
  classIs: (name: string) => `${name} now.`,
  confidence: 'How surely the plate must be under a limit',
  confidenceMeans: 'The surer, the earlier the alarm.',
  confidenceIs: (iron: string, confidence: string) => `${iron}: under its limits by ${confidence} now.`,
} as const;

export const trustWords = {
  why: (band: string) => `Why ±${band}`,
  due: ' · calibration past its date',
  asking: 'Asking the daemon …',
  noBudget: 'There is no valid reading to say it of.',
  together: (u: string) =>
    `Each is a standard uncertainty. Together ${u}: u = √(u₁² + u₂² + …), the root of the sum of their squares (GUM, JCGM 100:2008, 5.1.2).`,
  band: (band: string, confidence: string) =>
    `A plate that reads ${band} under a limit is under it with ${confidence}, looked at from one side (JCGM 106:2012, guarded acceptance). Alarms come that much earlier.`,
  over: (offBy: string, over: string, together: string) =>
    `The hottest spot typed of this plate is ${over} over the probe’s place. That is known, so it is added as it is: ${offBy} + ${over} = ${together}.`,
  allowance: 'Not measured: tolerances and allowances stand in until this probe is calibrated, under Setup.',
} as const;
