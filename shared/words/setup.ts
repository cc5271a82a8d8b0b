/** What the page says where irons, probes, devices, schedules and the screen are settled. */

export const navWords = {
  name: 'Views',
  iron: 'Iron',
  piece: 'Piece',
  bench: 'Bench',
  records: 'Records',
  setup: 'Setup',
  unsaved: 'not saved',
  now: 'The plate now',
} as const;

export const setupWords = {
  title: 'Setup',
  parts: 'Parts of setup',
  schedules: 'Heat schedules',
  irons: 'Irons and probes',
  devices: 'Devices',
  cements: 'Cements',
  air: 'Shop air',
  alone: 'Left alone',
  screen: 'This screen',
  reading: 'Reading the settings …',
  unreached: 'The daemon can’t be reached.',
  unreadable: 'The daemon’s answer could not be read.',
  notRead: (why: string) => `The settings could not be read. ${why} They are read again once it is back.`,
  notSaved: (why: string) => `Not saved. ${why}`,
  staysHere: 'What you typed stays here: save again once the daemon is back.',
  viewOnly: 'View only: settings are changed on the daemon’s own machine.',
  undo: 'Undo',
  undone: 'Undone.',
  notInBook:
    'It counts from now on, but is not in the book yet: it is written once that can be done. Should the program end before, say it again.',
} as const;

export const fieldWords = {
  notANumber: (unit: string, example = '250 or 250,5') =>
    `Write a number in ${unit}, for example ${example}.`,
  empty: 'Give it a name.',
  tooLong: (most: number, now: number) => `At most ${most} characters; this has ${now}.`,
  fromTo: (low: string, high: string) => `Write a number from ${low} to ${high}.`,
  keep: 'Enter keeps it, Escape puts back what stood here.',
} as const;

/** Of settings of which each save makes a new version. */
export const saveWords = {
  newNote: 'New: it exists once it is saved.',
  save: (version: number) => `Save as version ${version}`,
  unsaved: 'Not saved yet.',
  drop: 'Drop what I typed',
  dropped: 'Dropped.',
  takeBack: 'Take that back',
  wrongFields: (count: number) =>
    count === 1
      ? 'Not saved: one field needs a look. It says what would be right.'
      : `Not saved: ${count} fields need a look. Each says what would be right.`,
} as const;

export const scheduleWords = {
  whole: 'the schedule',
  choose: 'Schedule to look at',
  add: 'New schedule from this one',
  newName: (name: string) => `${name} (another)`,
  unconfirmedTitle: 'Unconfirmed',
  unconfirmed:
    'Nobody has entered yet where these limits come from, and every screen and record says so. Look them up in your process’s approved manual, correct what differs below, and enter manual and page here.',
  willConfirm: 'Manual and page stand here: saving confirms these limits.',
  confirmed: (manual: string, page: string) => `From “${manual}”, page ${page}.`,
  version: (version: number, madeAt: string) => `Version ${version}, made ${madeAt}.`,
  source: 'Where the limits come from',
  manual: 'Manual',
  page: 'Page',
  manualMissing: 'Enter the manual too: a page alone says nothing.',
  pageMissing: 'Enter the page too, so that others find it.',
  name: 'Name',
  fabric: 'Fabric',
  limits: 'Limits',
  fabricLimit: 'Fabric limit',
  fabricLimitMeans: 'The plate temperature never to exceed on the fabric.',
  cementLimit: 'Cement limit',
  cementLimitMeans: 'The highest over a bonded edge or tape, by the cement’s instructions.',
  cementUnset: 'Unset: nothing watches bonded edges. Enter it, or leave it empty.',
  standing: 'What the limits rest on',
  stages: 'Heat stages',
  stage: 'Stage',
  stageUnnamed: (place: number) => `stage ${place}`,
  low: 'Low',
  target: 'Target',
  high: 'High',
  stageStanding: 'What it rests on',
  restLimit: 'Rest limit',
  restLimitMeans: (usual: number) =>
    `The rest limit is how long the iron may rest on one spot. Empty: as usual, ${usual}\u00a0s, which is our own starting value.`,
  seconds: (text: string) => `${text} s`,
  percent: (text: string) => `${text} %`,
  shrink: 'Free shrinkage',
  shrinkMeans:
    'How much loose cloth shrinks at a plate temperature. It explains the stages; cloth on a frame is not loose, so it judges no area and stands on no record.',
  shrinkHandbook: (points: string) => `No table of its own: the handbook’s holds. ${points}.`,
  shrinkOwn: 'Enter your manual’s points',
  shrinkPlate: 'Plate at',
  shrinkPercent: 'Shrinks by',
  shrinkPoint: (place: number) => `point ${place}`,
  shrinkAdd: 'Add a point',
  shrinkNone: 'Use the handbook’s instead',
  shrinkStanding: 'Where the points come from',
  shrinkRises: (before: string) => `The temperatures must rise from point to point: over ${before}.`,
  shrinkFalls: (before: string) => `The shrinkage must not fall from point to point: ${before} or more.`,
  of: (field: string, stage: string) => `${field}, ${stage}`,
  earlier: (stage: string) => `Move ${stage} up`,
  later: (stage: string) => `Move ${stage} down`,
  remove: (stage: string) => `Remove ${stage}`,
  up: 'Up',
  down: 'Down',
  removeShort: 'Remove',
  addStage: 'Add a stage',
  lowOverHigh: (high: string) => `Low must be under high, which is ${high}.`,
  targetOutside: (low: string, high: string) =>
    `The target must lie between low and high: ${low} to ${high}.`,
  overLimit: (limit: string) => `The target must not be over the fabric limit, which is ${limit}.`,
  tooHot: (most: string) => `At most ${most}: no iron for fabric is meant to be hotter.`,
  saved: (version: number) => `Saved as version ${version}. Irons that work by it use it from now on.`,
  undo: (version: number) => `Undo: put back version ${version}`,
  versions: 'Earlier versions',
  versionLine: (version: number, madeAt: string) => `Version ${version}, ${madeAt}`,
  putBack: (version: number) => `Put back version ${version}`,
  asNow: 'the same values as now',
  keptAll: 'Versions are never changed: putting one back makes a new one with its values.',
} as const;

export const conflictWords = {
  title: (version: number) => `Changed on another page: there is a version ${version}`,
  means: 'Nothing of yours is saved and nothing is lost: what you typed still stands in the fields below.',
  theirs: 'The other version has, where you changed nothing:',
  both: 'You both changed these. Yours stand below:',
  had: (theirs: string, before: string) => `${theirs} (was ${before})`,
  against: (theirs: string, mine: string) => `the other ${theirs}, yours ${mine}`,
  nothing: 'nothing',
  same: 'The other version differs in nothing that you left as it was.',
  take: 'Take the other’s',
  takeOf: (place: string) => `Take the other’s: ${place}`,
  saveBoth: (version: number) => `Save both changes as version ${version}`,
  useTheirs: (version: number) => `Drop mine, use version ${version}`,
} as const;

export const ironSetupWords = {
  name: 'Name of the iron',
  none: 'No iron yet: one appears by itself with the first line of a probe.',
  schedule: 'Works by',
  probes: (labels: string) => `Probes on it: ${labels}.`,
  moveBelow: 'Where a probe sits is settled at the probe, below.',
  unconfirmed: 'unconfirmed',
  probesTitle: 'Probes',
  probesNone: 'No probe yet: one appears by itself with its first line.',
  label: 'Name of the probe',
  sitsOn: 'Sits on',
  ownIron: 'an iron of its own',
  newIron: (label: string) => `Iron with ${label}`.slice(0, 60),
  alone: (iron: string) => `It is the only probe on ${iron}: if it moves, that iron goes.`,
  sole: 'Area of its sole plate',
  soleMeans:
    'Tells for how long an area of a piece may take this iron, by its size. Empty: not told, and no area is called long worked.',
  soleIs: (area: string) => `Its sole plate has ${area} now.`,
  soleNotTold: 'The area of its sole plate is not told now.',
  soleArea: (text: string) => `${text} cm²`,
  thermocouple: 'Thermocouple type',
  thermocoupleMeans:
    'Used where the device sends microvolts; one that sends a temperature has settled it itself.',
  unit: 'The device counts in',
  units: { degC: '°C', degF: '°F' },
  mounting: 'Mounting ±',
  mountingMeans:
    'What its mounting may take off a reading, either way: an allowance, until the probe is compared in place. It is one part of how much under a limit an alarm comes.',
  now: 'Now',
  notHeard: 'Not heard of since the program was started.',
  moved: (label: string, iron: string) => `${label} sits on ${iron} now.`,
  renamed: (name: string) => `Called “${name}” now.`,
  unnamed: 'Called by its path again.',
  worksBy: (iron: string, schedule: string) => `${iron} works by “${schedule}” now.`,
  typeIs: (type: string) => `Type ${type} now.`,
  countsIn: (unit: string) => `Read as ${unit} now.`,
  mountingIs: (mounting: string) => `The allowance for its mounting is ±${mounting} now.`,
} as const;

export const aloneWords = {
  means:
    'A hot iron is told of once nobody has moved it, pressed its button, marked the work or touched a page for so long: a reminder first, then an alarm. An alarm that nobody hears is no help.',
  cannot:
    'This program can’t switch the iron off, and reaches nobody who is away: use a timed outlet, and switch the iron off when you leave.',
  reminder: 'Reminder after',
  alarm: 'Alarm after',
  sign: 'min',
  minutes: (text: string) => `${text} min`,
  beforeAlarm: (alarm: string) => `The reminder must come before the alarm, which comes after ${alarm}.`,
  afterReminder: (reminder: string) =>
    `The alarm must come after the reminder, which comes after ${reminder}.`,
  reminderIs: (text: string) => `The reminder comes after ${text} now.`,
  alarmIs: (text: string) => `The alarm comes after ${text} now.`,
} as const;

export const unitQuestionWords = {
  tooWarm: (label: string, number: string) =>
    `${label} stands at ${number} °C. If its plate is cold, that is ${number} °F, and the device counts in Fahrenheit.`,
  tooCold: (label: string, number: string) =>
    `${label} stands at ${number} °F, which is frost. If it is warmer where you are, the device counts in Celsius.`,
  isF: 'It counts in °F',
  isC: 'It counts in °C',
  right: (number: string, unit: string) => `${number} ${unit} is right`,
} as const;

export const deviceSetupWords = {
  none: 'No device is connected',
  noneAction:
    'Plug the probe’s board in, with a cable that carries data. If the program was started for another port, start it again with that one, or without a port to choose here.',
  name: 'Your name for it',
  path: 'Port',
  id: 'Known by',
  says: 'It says of itself',
  saysNothing: 'nothing',
  probes: 'Its probes',
  probesNone: 'none yet',
  another:
    'To watch another port, stop the program and start it again without naming one: then it asks here.',
  share: (bad: number, all: number) => `${bad} of ${all} lines could not be used.`,
  silent:
    'The port is open, but nothing has come from it yet. Press the board’s reset button. If nothing comes then, see whether its program runs and sends on this port.',
  starting: 'The port has just been opened. Many boards restart then: wait two or three seconds.',
  noValid: 'Lines arrive, but none could be used yet.',
  well: 'Its lines are used.',
  byCause: {
    'too-long':
      'Lines have no end where one should be. The speed is probably another one: set it behind the port, as in --serial PORT@9600, and let the board end each line.',
    unfinished: 'Lines break off. Look at the cable and the plug, and at what else uses this port.',
    checksum: 'Lines arrive damaged. Use a shorter or shielded cable, away from the iron’s mains lead.',
    'not-ascii':
      'What arrives is not plain text. Where the last line can be read all the same, set up below how its lines are read. Else the speed is probably another one: set it behind the port, as in --serial PORT@9600.',
    malformed:
      'The lines are text, but in no form that is known yet. Set up below how they are read, or let the board send lines as p=1 t=21.5 (firmware-notes/line-protocol.md).',
    'bad-value': 'A value in the lines can’t be right. Look at the last line, and at the board’s program.',
    incomplete: 'The lines lack what a reading needs: p= and t=, or p= with uv= and cj=.',
  },
} as const;

export const screenSetupWords = {
  units: 'Temperatures in',
  look: 'Light or dark',
  looks: { system: 'As the system', light: 'Light', dark: 'Dark' },
  pedal: 'Foot pedal',
  pedalMeans:
    'A pedal that sends a key, as they do when plugged in like a keyboard. Pressing it acknowledges the first alarm; where none stands and a piece is in hand, it says “next”, on every view but this one. Two presses at once undo the last mark.',
  noPedal: 'No pedal has been taught to this screen.',
  teach: 'Teach the pedal',
  press: 'Press the pedal now.',
  cancel: 'Never mind',
  taught: (key: string) => `The pedal is the key “${key}”. Press it to try.`,
  pressed: (count: number) => (count === 1 ? 'The pedal works.' : `The pedal works: pressed ${count} times.`),
  forget: 'Forget the pedal',
  again: 'Teach another one',
  taken: (key: string) =>
    `“${key}” works this page itself. Set the pedal to another key, such as F9 or Page Down, and press it again.`,
  inFields: 'While a field is being typed into, a pedal that sends a letter writes it there.',
  keyNames: { ' ': 'Space' } as Readonly<Record<string, string>>,
  notKept: 'This browser keeps nothing: this is forgotten when the page closes.',
} as const;
