import type { Fault } from '../thermometer/reading.ts';
import type { Suspicion } from '../thermometer/suspect-probe.ts';

/** What a fault says: its name, what it means, and what to do. */
export interface FaultWords {
  readonly name: string;
  readonly means: string;
  readonly action: string;
}

export const faultWords: Readonly<Record<Fault, FaultWords>> = {
  open: {
    name: 'Probe open',
    means: 'The thermocouple circuit is broken: a wire is off, or the junction has come apart.',
    action: 'Set the iron on its rest. Look at the clamp, the plug and the wire near the handle.',
  },
  'short-to-ground': {
    name: 'Probe shorted to ground',
    means: 'A bare thermocouple wire touches grounded metal, often the sole plate or the iron’s shell.',
    action: 'Set the iron on its rest and switch it off. Once it is cold, look for worn insulation.',
  },
  'short-to-supply': {
    name: 'Probe shorted to the supply',
    means: 'A thermocouple wire touches a supply voltage of the probe’s board.',
    action: 'Set the iron on its rest and switch it off. Unplug the board before you look at its wiring.',
  },
  'cold-junction': {
    name: 'Cold junction out of range',
    means: 'The board measures a temperature of its own terminals that it cannot work with.',
    action: 'Move the board away from the iron and its heat, and see that it is dry.',
  },
  'not-a-number': {
    name: 'No number',
    means: 'The board sent a line without a temperature that can be read as a number.',
    action: 'Look at the last line below. The board’s program may have to be corrected.',
  },
  impossible: {
    name: 'Impossible reading',
    means: 'The board sent a temperature that cannot exist.',
    action: 'Look at the wiring and at the unit that the board sends.',
  },
  'out-of-range': {
    name: 'Reading out of range',
    means: 'The reading is outside the range that this kind of thermocouple can measure.',
    action: 'Check the kind of thermocouple, its polarity and its wiring.',
  },
  jump: {
    name: 'Reading jumped',
    means: 'The reading jumped further than a sole plate can in that time.',
    action: 'Look for a loose contact or a probe that has come off the plate.',
  },
  frozen: {
    name: 'Reading frozen',
    means: 'The reading stands still to the last digit while the plate’s heat must be changing.',
    action: 'Set the iron on its rest. Restart the board, and look at the probe’s connection.',
  },
  silent: {
    name: 'Probe silent',
    means: 'The device is connected, but no line has come from this probe.',
    action: 'See whether the board is running and still sends this probe. Restart it if need be.',
  },
  garbled: {
    name: 'Lines garbled',
    means: 'Lines arrive, but they are damaged and were not used.',
    action: 'Check the cable, the speed that the port is set to, and what runs close by.',
  },
  'device-lost': {
    name: 'Device lost',
    means: 'The port is gone: the cable is out, the board has no power, or it reset itself.',
    action: 'Plug the cable back in. The device is taken up again by itself, under a new path too.',
  },
  starting: {
    name: 'Starting',
    means: 'The port has just been opened. Many boards restart then and send boot text first.',
    action: 'Wait for two or three seconds.',
  },
};

/** What is suspected of a probe, and what would explain it. */
export function suspicionText({ kind, likely }: Suspicion): string {
  if (kind === 'reversed')
    return 'Its reading fell where an iron warms up, as it does with the two wires swapped. Swap them at one end: at the probe’s plug or at the board.';
  if (likely === null)
    return 'It reads a plate where no household iron holds one. See which type stands on its wire or its data sheet, and settle that in Setup; where the board makes the temperature, set it there.';
  return `It reads as a type ${likely} would that is taken for another type. If its wire is type ${likely}, settle that in Setup; where the board makes the temperature, set it there.`;
}
