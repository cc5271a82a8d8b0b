import type { Outcome } from './study.ts';

/** What many sessions came to, a rule a row. */
export interface Row {
  readonly name: string;
  readonly hours: number;
  readonly crossings: number;
  readonly missed: number;
  /** Of the missed: told of by the limit's own alarm before they came true. */
  readonly toldByLimit: number;
  /** Lead over the crossings that were warned of, s: lowest, 10 %, 50 %, 90 %. */
  readonly leadS: readonly [number, number, number, number];
  /** Warnings an hour after which the plate stayed under the limit and out of its guard band. */
  readonly falsePerHour: number;
  /** Of these, before a peak of the setting was known; after that. */
  readonly falseUnknownPerHour: number;
  readonly falseKnownPerHour: number;
  /** Warnings an hour after which the plate came into the guard band but not over the limit. */
  readonly guardBandPerHour: number;
  /** Warnings an hour of contacts that had stuck but came free before the limit. */
  readonly cameFreePerHour: number;
}

export function tally(outcomes: readonly (readonly Outcome[])[], hours: number): readonly Row[] {
  const names = outcomes[0]?.map((o) => o.name) ?? [];
  return names.map((name) => {
    const own = outcomes.flat().filter((o) => o.name === name);
    const leads = own.flatMap((o) => o.leadsS);
    const told = leads.filter((s) => s !== null);
    const warnings = own.flatMap((o) => o.falseWarnings);
    const untrue = warnings.filter((w) => !w.inGuardBand && !w.stuck);
    const cameFree = warnings.filter((w) => w.stuck && !w.inGuardBand).length;
    const unknown = untrue.filter((w) => w.peakUnknown).length;
    return {
      name,
      hours,
      crossings: leads.length,
      missed: leads.length - told.length,
      toldByLimit: own.reduce((sum, o) => sum + o.toldByLimit, 0),
      leadS: [quantile(told, 0), quantile(told, 0.1), quantile(told, 0.5), quantile(told, 0.9)],
      falsePerHour: untrue.length / hours,
      falseUnknownPerHour: unknown / hours,
      falseKnownPerHour: (untrue.length - unknown) / hours,
      guardBandPerHour: (warnings.length - untrue.length - cameFree) / hours,
      cameFreePerHour: cameFree / hours,
    };
  });
}

function quantile(values: readonly number[], share: number): number {
  const sorted = values.toSorted((a, b) => a - b);
  return sorted[Math.floor(share * (sorted.length - 1))] ?? Number.NaN;
}

export function tableText(rows: readonly Row[]): string {
  const head =
    'rule | hours | crossings | missed (of these told by the limit’s alarm) | lead s: least, 10 %, 50 %, 90 % | false/h (peak unknown + known) | into guard band/h | stuck, came free/h';
  const lines = rows.map((r) =>
    [
      r.name,
      r.hours.toFixed(0),
      r.crossings,
      `${r.missed} (${r.toldByLimit})`,
      r.leadS.map((s) => s.toFixed(1)).join(', '),
      `${r.falsePerHour.toFixed(3)} (${r.falseUnknownPerHour.toFixed(3)} + ${r.falseKnownPerHour.toFixed(3)})`,
      r.guardBandPerHour.toFixed(3),
      r.cameFreePerHour.toFixed(3),
    ].join(' | '),
  );
  return [head, ...lines].join('\n');
}
