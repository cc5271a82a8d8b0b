import type { AlarmChange } from '../alarm/record.ts';
import type { StartReason, StopReason } from '../watch/input.ts';

/** What the page and the API say of sessions, their traces and open items. */

export const recordWords = {
  title: 'Records',
  sessions: 'Sessions',
  none: 'Nothing has been recorded yet.',
  noneAction:
    'Recording starts by itself once a plate gets hot. To start it by hand, press “Start recording” beside the plate temperature.',
  loading: 'Reading the book …',
  failed: (why: string) => `The records can’t be read. ${why}`,
  failedUnsaid: 'The daemon could not be reached.',
  again: 'Try again',
  noSuchSession: 'The book has no such session. Its address may come from another book.',
  back: 'All sessions',
  running: 'running',
  interrupted: 'broken off',
  peak: (temperature: string) => `peak ${temperature}`,
  noPeak: 'no valid reading',
  continues: (when: string) => `goes on from the session of ${when}`,
  continuesUnknown: (id: string) => `goes on from session ${id}`,
  more: (count: number) => `Show ${count} more`,

  spanBackwards: '"to" lies before "from"; give a span that begins before it ends, in ms of the session.',
  noSuchItem: (id: string) => `There is no item "${id}". /api/items lists those there are.`,
  stillOver: 'The plate is still over the limit, so this item can’t be closed yet. Lift the iron off first.',
  closedAlready: (by: string, at: string, found: string) =>
    `This item can’t be closed a second time: ${by} closed it at ${at}. What was found: “${found}”`,
} as const;

export const startWords: Readonly<Record<StartReason, string>> = {
  hot: 'the plate got hot',
  'by-hand': 'started by hand',
  alarm: 'an alarm was raised',
  resumed: 'the program was started again',
};

export const endWords: Readonly<Record<StopReason | 'interrupted', string>> = {
  cold: 'the plate was measured cold',
  'by-hand': 'stopped by hand',
  shutdown: 'the program was ended',
  interrupted: 'broken off: the program was killed, or nothing could be kept',
};

export const itemWords = {
  title: 'Areas suspect',
  means:
    'The plate was over the fabric limit and not on its rest, or over the cement limit on a bonded edge or tape. Examine the area as the manual says; then a named person writes down what was found.',
  one: 'Area suspect: examine as the manual says.',
  count: (open: number) =>
    open === 1 ? '1 area suspect: see Records' : `${open} areas suspect: see Records`,
  limit: { fabric: 'fabric limit', cement: 'cement limit' },
  over: (length: string, peak: string, limit: string) => `${length} over the ${limit}, peak ${peak}.`,
  notSeenBack: (length: string, peak: string, limit: string) =>
    `At least ${length} over the ${limit}, peak at least ${peak}. Its end is not in this session.`,
  standing: (peak: string, limit: string) => `Still over the ${limit}; peak so far ${peak}.`,
  noPeak: 'not known',
  value: (value: string, guard: string) => `${value} ±${guard}`,
  limitAt: (limit: string, at: string) => `${limit} of ${at}`,
  unassigned: 'Unassigned: no piece was in hand.',
  stage: (stage: string) => `Stage: ${stage}.`,
  noStage: 'No stage was chosen.',
  place: { 'on-work': 'On the work.', unknown: 'Where the iron was is not known.' },
  by: 'Your name',
  found: 'What you found',
  close: 'Close this item',
  closeName: (when: string) => `Close this item: ${when}`,
  missing: 'Both the name and what was found are needed.',
  tooLong: (most: number) => `At most ${most} characters.`,
  closing: 'Writing it down …',
  notClosed: (why: string) => `Not closed. ${why}`,
  closedBy: (by: string, when: string) => `Closed by ${by}, ${when}:`,
  closed: (count: number) => (count === 1 ? '1 closed item' : `${count} closed items`),
  look: 'Look at its trace',
  lookName: (when: string) => `Look at its trace: ${when}`,
  viewOnly: 'Closing it takes a page on the daemon’s own machine.',
} as const;

export const traceWords = {
  title: 'Trace',
  working: (share: string) => `Working the readings out: ${share} so far.`,
  follows: 'This session is running; its trace grows.',
  broken: (when: string, what: string) =>
    `From ${when} on nothing can be shown: the session’s chain of seals does not hold (${what}).`,
  noReadings: 'No valid reading in this span.',
  summary: (low: string, high: string) => `Plate from ${low} to ${high} in this span.`,
  span: (from: string, to: string, length: string) => `${from} to ${to} (${length})`,
  gaps: (count: number) => (count === 0 ? '' : count === 1 ? '1 gap.' : `${count} gaps.`),
  gap: (fault: string) => fault.toLowerCase(),
  fabricLimit: (temperature: string) => `fabric limit ${temperature}`,
  cementLimit: (temperature: string) => `cement limit ${temperature}`,
  nearer: 'Nearer',
  wider: 'Wider',
  earlier: 'Earlier',
  later: 'Later',
  whole: 'Whole session',
  peak: 'Peak',
  previous: 'Finding before',
  next: 'Next finding',
  controls: 'Part of the session shown',
  keys: 'Drag over a span to see it larger; pinch with two fingers. With the trace focused: arrow keys go earlier and later, + and − nearer and wider, 0 the whole session, N and P from finding to finding.',
  name: (iron: string) =>
    `Trace of ${iron}. Arrow keys, plus and minus change the part shown; N and P go from finding to finding.`,
  probe: (label: string, count: number) => (count === 1 ? label : `${label}, line ${count}`),
  findings: 'Findings',
  noFindings: 'None in this span.',
  leftOut: (count: number) => `${count} more are not listed: look at a shorter span.`,
  cycles: (count: number) =>
    count === 0 ? '' : count === 1 ? '1 thermostat cycle.' : `${count} thermostat cycles.`,
  recent: (minutes: number) => `The last ${minutes} minutes`,
  recentName: 'The last minutes of the plate temperature',
  now: 'now',
  minutesAgo: (minutes: number) => `${minutes} min ago`,
  lost: 'daemon lost',
  notLoaded: 'The trace can’t be drawn: a part of this page did not come. Reload the page.',
} as const;

export const findingWords = {
  alarm: (change: AlarmChange): string => changes[change],
  quality: (label: string, fault: string) => `${label}: ${fault}`,
  readsAgain: (label: string) => `${label} reads again`,
  hot: 'The plate got hot',
  cold: 'The plate was measured cold',
  refused: (reason: string) => `Refused: ${reason}`,
  stretch: (mark: string, mean: string, peak: string, cycles: number) =>
    `Dial at ${mark}: ${mean} on average, peaks of ${peak}, over ${cycles} cycles on the rest`,
  load: (mark: string, drop: string) =>
    `Work at mark ${mark} drew the plate ${drop} under its trough on the rest`,
  note: (text: string) => `Note: ${text}`,
  peak: (temperature: string) => `peak ${temperature}`,
} as const;

const changes: Readonly<Record<AlarmChange, string>> = {
  raised: 'raised',
  cleared: 'gone',
  acknowledged: 'seen by somebody',
  silenced: 'silenced',
  'silence-ended': 'sounds again',
  're-alarmed': 'sounds again, still standing',
};

export const factWords = {
  title: 'Facts',
  iron: 'Iron',
  began: 'Began',
  ended: 'Ended',
  length: 'Length',
  peak: 'Peak',
  samples: 'Samples',
  schedule: 'Heat schedule',
  version: (name: string, version: number) => `${name}, version ${version}`,
  confirmed: (manual: string, page: string) => `confirmed by ${manual}, ${page}`,
  unconfirmed: 'UNCONFIRMED: no manual and page stand behind it',
  limits: 'Limits',
  cementUnset: 'cement limit not set',
  probes: 'Probes',
  probe: (label: string, id: string, guard: string) => `${label} (${id}), warned ${guard} under a limit`,
  calibration: (version: number, madeAt: string) => `calibration ${version}, made ${madeAt}`,
  notCalibrated: 'not calibrated',
  program: 'Program',
  programVersion: (program: string, fold: number) => `${program}, fold ${fold}`,
  seal: 'Seal',
  sealMeans: 'It shows changes made since this digest was written down, and proves no more than that.',
  zone: (zone: string) => `Times are those of ${zone}.`,
  csv: 'Readings as CSV',
} as const;

export const verifyPageWords = {
  verify: 'Verify',
  verifying: 'Verifying: the chain is checked and the session folded again …',
  failed: (why: string) => `It could not be verified. ${why}`,
  exact: (findings: number, samples: number) =>
    `The chain of seals holds, and folding the session again gave exactly its ${findings} findings from ${samples} samples.`,
  broken: (from: string, to: string, index: number, what: string) =>
    `The chain does not hold at commit ${index}, ${from} to ${to}: ${what}. Nothing after it can be vouched for.`,
  differs: (count: number) =>
    count === 1
      ? 'The chain holds, but one finding is not what folding the session again gives.'
      : `The chain holds, but ${count} findings are not what folding the session again gives.`,
  otherFold: (was: number) =>
    `It was recorded with fold ${was}, another than this program’s: differences are to be expected.`,
} as const;
