import { heardIn, type Procedure } from '../../../shared/calibration/procedure.ts';
import { temperatureOf } from '../../../shared/thermometer/convert.ts';
import type { ProbeSettings } from '../../../shared/thermometer/probe.ts';
import type { ProbeId, Sample } from '../../../shared/thermometer/sample.ts';

/**
 * The calibrations that are being made, one a probe at most. They are held here and not by a page, so that a reload or
 * another page goes on where the last one was.
 */
export class Procedures {
  readonly #byProbe = new Map<ProbeId, Procedure>();

  of(probe: ProbeId): Procedure | null {
    return this.#byProbe.get(probe) ?? null;
  }

  put(probe: ProbeId, procedure: Procedure): void {
    this.#byProbe.set(probe, procedure);
  }

  end(probe: ProbeId): void {
    this.#byProbe.delete(probe);
  }

  /** Whether a probe is being calibrated off its iron. */
  readonly isDipped = (probe: ProbeId): boolean => this.#byProbe.get(probe)?.mounting === 'loose';

  /**
   * Follows the uncorrected readings straight from the samples: that a plunged probe jumps, or holds one value in ice, is
   * a doubt elsewhere and what is waited for here.
   */
  heard(sample: Sample, probes: readonly ProbeSettings[], tMs: number): void {
    const procedure = this.#byProbe.get(sample.probe);
    const settled = procedure?.waiting ? probes.find((p) => p.id === sample.probe) : undefined;
    if (procedure === undefined || settled === undefined) return;
    const readC = temperatureOf(sample, settled);
    if (typeof readC === 'number') this.#byProbe.set(sample.probe, heardIn(procedure, tMs, readC));
  }
}
