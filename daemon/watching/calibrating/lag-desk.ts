import { goesOnWith, type MadeWith } from '../../../shared/calibration/procedure.ts';
import type { LagAct, ProbeLag } from '../../../shared/messages/lag.ts';
import { beginLag, type LagProcedure, waitForStep } from '../../../shared/thermometer/lag/procedure.ts';
import { stopStep } from '../../../shared/thermometer/lag/step-watch.ts';
import type { ProbeSettings } from '../../../shared/thermometer/probe.ts';
import type { TemperatureUnit } from '../../../shared/units/temperature.ts';
import { procedureRefusals } from '../../../shared/words/calibrating.ts';
import { lagRefusals } from '../../../shared/words/lag.ts';
import { Refusal } from '../../refusal.ts';
import { probeOf, withProbe } from '../../settings/change.ts';
import { sitsOn } from '../../settings/moved.ts';
import type { LagDesk as Asked } from '../../web/desk.ts';
import type { Program } from '../program.ts';
import { lagShown } from './lag-shown.ts';
import { madeWith } from './shown.ts';

/** What the desk does about the lag of probes: tells how it stands, and takes one step of measuring it after the other. */
export class LagDesk implements Asked {
  readonly #program: Program;

  constructor(program: Program) {
    this.#program = program;
  }

  /** @throws Refusal where there is no such probe */
  lag(id: string, unit: TemperatureUnit): ProbeLag {
    const probe = this.#probe(id);
    const procedure = this.#program.procedures.lags.get(id) ?? null;
    return lagShown({ probe, procedure, now: this.#madeWith(probe), nowMs: this.#nowMs() }, unit);
  }

  /** @throws Refusal with what was seen and what to do; nothing that was measured is lost by it */
  async measureLag(id: string, act: LagAct, unit: TemperatureUnit): Promise<ProbeLag> {
    const probe = this.#probe(id);
    const { lags } = this.#program.procedures;
    if (act.act === 'keep') await this.#keep(probe);
    else if (act.act === 'give-up') lags.delete(id);
    else lags.set(id, this.#next(probe, act));
    // The watch has to know of a probe that is off its plate, and when it is back.
    await this.#program.applySettings();
    return this.lag(id, unit);
  }

  #next(probe: ProbeSettings, act: Exclude<LagAct, { act: 'keep' | 'give-up' }>): LagProcedure {
    const { lags, calibrations } = this.#program.procedures;
    if (act.act === 'begin') {
      if (lags.has(probe.id)) throw new Refusal('conflict', lagRefusals.already);
      if (calibrations.has(probe.id)) throw new Refusal('conflict', lagRefusals.calibrating);
      return beginLag(act.mounting, this.#madeWith(probe));
    }
    const procedure = this.#sound(probe);
    if (act.act === 'step') {
      const next = waitForStep(procedure, act.kind, this.#nowMs());
      if (next === null) throw new Refusal('invalid', lagRefusals.waterOnFitted, 'kind');
      return next;
    }
    const { step } = procedure;
    if (step === null) throw new Refusal('conflict', lagRefusals.noStep);
    return { ...procedure, step: stopStep(step) };
  }

  /** It is over before it is written, so that a second tap writes nothing twice; what can't be written goes on. */
  async #keep(probe: ProbeSettings): Promise<void> {
    const procedure = this.#sound(probe);
    const { step } = procedure;
    if (step?.end?.kind !== 'found') throw new Refusal('conflict', lagRefusals.nothingToKeep);
    const { tauS, standardS } = step.end.found;
    const lag = { tauS, standardS, measuredAt: this.#program.utcOf(this.#nowMs()) };
    const { options, procedures } = this.#program;
    procedures.lags.delete(probe.id);
    try {
      await options.settings.change((settings) => {
        const { id, ...draft } = settings.probes.find((p) => p.id === probe.id) ?? probe;
        return withProbe(settings, id, { ...draft, lag });
      });
    } catch (error) {
      procedures.lags.set(probe.id, procedure);
      throw error;
    }
  }

  /** The procedure, where the probe is still read as it was. */
  #sound(probe: ProbeSettings): LagProcedure {
    const procedure = this.#program.procedures.lags.get(probe.id);
    if (procedure === undefined) throw new Refusal('conflict', lagRefusals.none);
    if (!goesOnWith(procedure, this.#madeWith(probe)))
      throw new Refusal('conflict', procedureRefusals.changed);
    return procedure;
  }

  #probe(id: string): ProbeSettings {
    return probeOf(this.#program.options.settings.current, id);
  }

  #madeWith(probe: ProbeSettings): MadeWith {
    const { irons } = this.#program.options.settings.current;
    return madeWith(probe, sitsOn(irons, probe.id)?.id ?? null);
  }

  #nowMs(): number {
    return this.#program.options.clock.nowMs();
  }
}
