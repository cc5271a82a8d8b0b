import { type LineForm, protocolForm } from '../../shared/messages/line-form.ts';
import type { DeviceLive, IronLive, ProbeLive } from '../../shared/messages/live.ts';
import type { ProbeSettings } from '../../shared/thermometer/probe.ts';

/** Whether a probe's device seems to count in another unit than it is read in: a cold iron tells. */

/** A room, and so a cold plate, is from 59 to 86 °F. Read as degC that is far too warm for a plate that is cold. */
const ROOM_AS_F = { low: 59, high: 86 };
/** A room from 10 to 35 °C, read as degF, would be frost. */
const ROOM_AS_C = { low: 10, high: 35 };
/** A plate that has been hotter than this on this page is no cold one, degC. */
const HAS_BEEN_HOT_C = 100;

export interface UnitQuestion {
  readonly probe: ProbeSettings;
  /** The number as the device sends it. */
  readonly number: string;
  readonly instead: ProbeSettings['unit'];
}

export interface UnitFacts {
  readonly settings: ProbeSettings;
  readonly now: ProbeLive;
  readonly iron: Pick<IronLive, 'phase'>;
  readonly device: Pick<DeviceLive, 'id' | 'lastLine'> | null;
  /** In which its device's lines are; our own protocol's where left out. */
  readonly form?: LineForm | undefined;
  /** The hottest that this page has seen it, degC. */
  readonly hottestC: number;
}

/** Null where nothing seems wrong. Only a plate that stands still is looked at, and only one that may be cold. */
export function unitQuestion({
  settings,
  now,
  iron,
  device,
  form,
  hottestC,
}: UnitFacts): UnitQuestion | null {
  const { plateC, quality, trend } = now;
  if (quality !== 'ok' || plateC === null || trend !== 'steady' || hottestC > HAS_BEEN_HOT_C) return null;
  if (iron.phase === 'warming' || iron.phase === 'cooling') return null;
  // Microvolts have no unit to be wrong about.
  if (device === null || !sendsDegrees(form ?? protocolForm, settings.id, device.lastLine)) return null;
  if (settings.unit === 'degC' && isIn(ROOM_AS_F, plateC))
    return { probe: settings, number: plateC.toFixed(0), instead: 'degF' };
  const sent = (plateC * 9) / 5 + 32;
  if (settings.unit === 'degF' && isIn(ROOM_AS_C, sent))
    return { probe: settings, number: sent.toFixed(0), instead: 'degC' };
  return null;
}

/** Whether a probe's device sends degrees, as far as its last line and the form of its lines tell. */
function sendsDegrees(form: LineForm, probe: string, lastLine: string): boolean {
  switch (form.kind) {
    case 'protocol':
      return /(^|\s)t=|^\s*[+-]?\d/.test(lastLine);
    case 'columns':
      return form.columns.some((column) => column.is === 't' && probe.endsWith(`/${column.probe}`));
    case 'pattern':
      return form.pattern.includes('<t>');
  }
}

const isIn = ({ low, high }: { readonly low: number; readonly high: number }, value: number): boolean =>
  value >= low && value <= high;
