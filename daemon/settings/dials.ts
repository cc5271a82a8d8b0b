import type { ChartPoint } from '../../shared/iron/dial/chart.ts';
import { accepted, type KeptDial, noDial, withoutMark, withTyped } from '../../shared/iron/dial/kept.ts';
import type { Iron } from '../../shared/iron/iron.ts';
import type { TypedPoint } from '../../shared/messages/dial.ts';
import { settingsWords } from '../../shared/words/settings.ts';
import { Refusal } from '../refusal.ts';
import { checked } from './change.ts';
import { dialOf, type Settings } from './settings.ts';

/** Changes of what is kept of irons' dials. */

type Change = { readonly settings: Settings };

export function ironOf(settings: Settings, id: string): Iron {
  const iron = settings.irons.find((i) => i.id === id);
  if (iron === undefined) throw new Refusal('unknown', settingsWords.noIron(id), 'id');
  return iron;
}

/** Puts what is kept of one iron's dial in the place of what was. */
export const withDial = (settings: Settings, dial: KeptDial): Settings => {
  const others = settings.dials.filter((d) => d.iron !== dial.iron || d.simulated !== dial.simulated);
  return { ...settings, dials: [...others, dial] };
};

function changed(
  settings: Settings,
  id: string,
  make: (dial: KeptDial) => KeptDial | null,
  refusal: () => Refusal,
): Change {
  const iron = ironOf(settings, id);
  const dial = make(dialOf(settings, iron) ?? noDial(iron));
  if (dial === null) throw refusal();
  return { settings: checked(withDial(settings, dial)) };
}

/** Adds what was read from a hand thermometer at `at`. */
export function withTypedPoint(settings: Settings, id: string, typed: TypedPoint, at: string): Change {
  const { mark, meanC, peakC, troughC } = typed;
  if ((troughC ?? meanC) > meanC || (peakC ?? meanC) < meanC)
    throw new Refusal('invalid', settingsWords.typedOrder, 'meanC');
  const point: ChartPoint = {
    mark,
    kind: 'typed',
    meanC,
    peakC,
    troughC,
    cycles: 0,
    peakSpreadK: null,
    meanSpreadK: null,
    lagAllowanceK: 0,
    at,
    madeWith: null,
  };
  const refusal = () => new Refusal('conflict', settingsWords.markMeasured(mark), 'mark');
  return changed(settings, id, (dial) => withTyped(dial, point), refusal);
}

/** Takes a wrong point out of the chart. */
export const withoutPoint = (settings: Settings, id: string, mark: number): Change =>
  changed(
    settings,
    id,
    (dial) => withoutMark(dial, mark),
    () => new Refusal('conflict', settingsWords.markNotCharted(mark), 'mark'),
  );

/** Makes what was measured since a drift began the iron's chart. */
export const withAcceptedDial = (settings: Settings, id: string): Change =>
  changed(settings, id, accepted, () => new Refusal('conflict', settingsWords.notDrifted));
