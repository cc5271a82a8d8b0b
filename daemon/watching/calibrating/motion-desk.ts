import type { MotionLevels } from '../../../shared/iron/motion/check.ts';
import {
  heardInTrial,
  type MotionTrial,
  startTrial,
  trialAsks,
  trialLeftMs,
} from '../../../shared/iron/motion/trial.ts';
import type { ProbeMotion, TrialShown } from '../../../shared/messages/motion.ts';
import type { ProbeSettings } from '../../../shared/thermometer/probe.ts';
import { lagRefusals } from '../../../shared/words/lag.ts';
import { trialRefusals } from '../../../shared/words/motion.ts';
import { Refusal } from '../../refusal.ts';
import { probeOf, withProbe } from '../../settings/change.ts';
import type { MotionDesk as Asked } from '../../web/desk.ts';
import type { Program } from '../program.ts';

/** What the desk does about still and moving: tells how it stands, leads the check, and keeps what came of it. */
export class MotionDesk implements Asked {
  readonly #program: Program;
  /** Why what a check has found could not be kept, by its probe. */
  readonly #troubles = new Map<string, string>();

  constructor(program: Program) {
    this.#program = program;
    program.procedures.onMotionFound((probe, levels) => void this.#keep(probe, levels));
  }

  /** @throws Refusal where there is no such probe */
  motion(id: string): ProbeMotion {
    const probe = this.#probe(id);
    const { trials, motionHeard } = this.#program.procedures;
    const trial = trials.get(id);
    return {
      probe: id,
      check: probe.motion ?? null,
      onLine: motionHeard.has(id),
      trial: trial === undefined ? null : this.#shown(id, trial),
    };
  }

  /** @throws Refusal where another procedure goes on with this probe */
  begin(id: string): ProbeMotion {
    const probe = this.#probe(id);
    const { trials, calibrations, lags } = this.#program.procedures;
    if (calibrations.has(probe.id)) throw new Refusal('conflict', lagRefusals.calibrating);
    if (lags.has(probe.id)) throw new Refusal('conflict', trialRefusals.measuringLag);
    const before = trials.get(id);
    if (before !== undefined && this.#now(before).end === null)
      throw new Refusal('conflict', trialRefusals.already);
    this.#troubles.delete(id);
    trials.set(id, startTrial(this.#nowMs()));
    return this.motion(id);
  }

  /** @throws Refusal where there is no such probe */
  giveUp(id: string): ProbeMotion {
    this.#troubles.delete(id);
    this.#program.procedures.trials.delete(id);
    return this.motion(id);
  }

  #shown(id: string, before: MotionTrial): TrialShown {
    const trial = this.#now(before);
    const nowMs = this.#nowMs();
    return {
      asks: trialAsks(trial, nowMs),
      leftS: trialLeftMs(trial, nowMs) / 1000,
      refused: trial.end?.kind === 'refused' ? trial.end.reason : null,
      trouble: this.#troubles.get(id) ?? '',
    };
  }

  /** A line that has fallen silent ends its check too. */
  #now(trial: MotionTrial): MotionTrial {
    return heardInTrial(trial, this.#nowMs(), null);
  }

  async #keep(id: string, levels: MotionLevels): Promise<void> {
    const { options, procedures } = this.#program;
    const trial = procedures.trials.get(id);
    const motion = { ...levels, checkedAt: this.#program.utcOf(this.#nowMs()) };
    try {
      await options.settings.change((settings) => {
        const { id: _id, ...draft } = settings.probes.find((p) => p.id === id) ?? this.#probe(id);
        return withProbe(settings, id, { ...draft, motion });
      });
    } catch (error) {
      // It stays as it is, with the reason: nobody is waiting for an answer here.
      if (!(error instanceof Refusal)) throw error;
      this.#troubles.set(id, error.message);
      return;
    }
    if (procedures.trials.get(id) === trial) procedures.trials.delete(id);
    await this.#program.applySettings();
  }

  #probe(id: string): ProbeSettings {
    return probeOf(this.#program.options.settings.current, id);
  }

  #nowMs(): number {
    return this.#program.options.clock.nowMs();
  }
}
