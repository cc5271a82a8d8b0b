import type { AlarmKind } from '../alarm/record.ts';

/** What an alarm says: its name, why it stands, what happens if nothing is done, and what to do. */
export interface AlarmWords {
  readonly title: string;
  readonly cause: string;
  readonly consequence: string;
  readonly action: string;
  /** What is left to do once it no longer stands. */
  readonly afterwards?: string;
}

export const alarmWords: Readonly<Record<AlarmKind, AlarmWords>> = {
  'over-limit': {
    title: 'Plate over the fabric limit',
    cause: 'Counting the allowance for its probe, the plate is hotter than the fabric limit.',
    consequence: 'Fabric loses strength or melts, seams creep, the frame is pulled crooked.',
    action:
      'Lift the iron off and set it on its rest. Turn the dial down. Examine the area as the manual says.',
    afterwards: 'Examine the area as the manual says.',
  },
  'heading-for-limit': {
    title: 'Plate heading for the fabric limit',
    cause: 'The plate rises so fast that it will pass the fabric limit shortly.',
    consequence: 'On the work it would overheat the fabric.',
    action: 'Lift the iron off the work now, and turn the dial down.',
  },
  'over-cement-limit': {
    title: 'Plate over the cement limit on a bonded edge or tape',
    cause:
      'Counting the allowance for its probe, the plate is hotter than the cement may have, and you said that it is on a bonded edge, a tape or a coat of it.',
    consequence: 'The bond softens: a seam or a tape creeps, and may let go.',
    action: 'Lift the iron off. Turn the dial down before you go back. Examine the bond as the manual says.',
    afterwards: 'Examine the bond as the manual says.',
  },
  'no-reading': {
    title: 'No reading from the plate',
    cause: 'The probe gives no valid reading while the iron may be hot.',
    consequence: 'Nothing here can warn of an overheated plate. Treat it as hot.',
    action: 'Lift the iron off and set it on its rest. Then look at the probe, its wires and the cable.',
    afterwards: 'Look at the probe, its wires and the cable.',
  },
  'fire-hazard': {
    title: 'Vapour that burns, and a hot iron',
    cause: 'A coat that is still wet gives off vapour that burns, and an iron is hot.',
    consequence: 'A spark of its thermostat or the hot plate may set the vapour on fire.',
    action:
      'Switch the iron off or take the coat to another, ventilated space, and answer the question on the page. Follow the cement’s instructions and your local rules.',
  },
  'suspect-probe': {
    title: 'A probe may be wired or set wrongly',
    cause: 'What it reads is not what an iron does.',
    consequence: 'The plate may be far hotter than is shown, and nothing here would warn of it.',
    action:
      'Treat the plate as hot and set it on its rest. Switch the iron off, let it go cold, then look at the probe’s two wires and at its type in Setup.',
    afterwards: 'Look at the probe’s two wires and at its type in Setup.',
  },
  dwell: {
    title: 'Iron rests on one spot',
    cause: 'It is hot, on the work, and has not moved for longer than this stage allows.',
    consequence: 'One spot of the fabric takes all the heat: it may lose strength or melt.',
    action: 'Lift the iron off, or go on with the stroke.',
    afterwards: 'Examine the spot as the manual says.',
  },
  'wet-cement': {
    title: 'Ironing where the cement is wet',
    cause: 'The clock of the coat here says that it is not ready for an iron yet.',
    consequence: 'The bond slips or blisters, and what is trapped under the fabric may never dry.',
    action: 'Lift the iron off. Test the coat by touch; if it is dry, say so on the Bench page.',
    afterwards: 'Look whether the bond has slipped or blistered.',
  },
  'wrong-order': {
    title: 'Too hot for this side as yet',
    cause: 'The other side has not had its initial shrink on every area.',
    consequence:
      'One side draws tighter than the other while that is slack, and the frame is pulled crooked.',
    action:
      'Lift the iron off. Turn the piece over and give the other side its initial shrink first; or overrule this on the Piece page.',
  },
  'left-alone': {
    title: 'Hot iron left alone',
    cause:
      'Nobody has moved, pressed, marked or touched anything for a long time, and the iron is on and hot.',
    consequence: 'It may start a fire. This can’t switch the iron off or reach you: use a timed outlet.',
    action: 'Go to the iron and switch it off. If you are there, touch this page or acknowledge this.',
  },
  'long-on-area': {
    title: 'Long on one area',
    cause: 'By your marks the iron has been on this area for longer than its size asks for.',
    consequence: 'It may be getting more heat than the rest, or a mark was forgotten.',
    action: 'Go on to the next area and say so, or say where the iron is.',
  },
  imbalance: {
    title: 'One side or end is ahead',
    cause: 'At the same stage, it has had over a lap more than what it is held against.',
    consequence: 'What is drawn tighter pulls the frame its way.',
    action: 'Give the one that is behind its laps first.',
  },
  unattended: {
    title: 'Still there?',
    cause: 'The iron is on and hot, and nobody has moved, pressed, marked or touched anything for a while.',
    consequence: 'A hot iron alone may start a fire. This can’t switch it off: use a timed outlet.',
    action: 'Switch the iron off if you are done. If you are there, touch this page or acknowledge this.',
  },
  'above-band': {
    title: 'Iron runs above the stage',
    cause: 'Over whole thermostat cycles, the plate was above the stage that you chose.',
    consequence: 'The fabric draws tighter than this stage intends, and unevenly.',
    action: 'Turn the dial down a little and wait for one or two cycles.',
  },
  'below-band': {
    title: 'Iron runs below the stage',
    cause: 'Over whole thermostat cycles, the plate was below the stage that you chose.',
    consequence: 'The fabric does not reach this stage.',
    action: 'Turn the dial up a little and wait for one or two cycles. Slower strokes draw less heat.',
  },
  drift: {
    title: 'Iron has drifted from its dial chart',
    cause: 'In one stretch on the rest after another, the plate was hotter or colder than its chart says.',
    consequence: 'Advice on where to set the dial is off by as much.',
    action:
      'See whether the dial stands where you said and the probe sits as it did. If both do, accept the new figures in Setup, under Irons.',
  },
  'not-recording': {
    title: 'Nothing is being kept',
    cause: 'What happens now cannot be written to the book.',
    consequence: 'Watching and alarms go on, but no record of this work will exist.',
    action: 'Make room on the disk, or make the data folder writable. Writing resumes by itself.',
  },
};
