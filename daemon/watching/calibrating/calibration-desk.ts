import type { Calibration } from '../../../shared/calibration/calibration.ts';
import type { Correction } from '../../../shared/calibration/correction.ts';
import type { ReferenceFacts } from '../../../shared/calibration/points.ts';
import {
  beginProcedure,
  dropPoint,
  goesOnWith,
  keepPoint,
  outcomeOf,
  type Procedure,
  waitAt,
} from '../../../shared/calibration/procedure.ts';
import { type CalibrationRefusal, isRefusal } from '../../../shared/calibration/refusals.ts';
import type {
  CalibrationAct,
  CalibrationKeep,
  ProbeCalibrations,
} from '../../../shared/messages/calibration.ts';
import type { TemperatureUnit } from '../../../shared/units/temperature.ts';
import { procedureRefusals } from '../../../shared/words/calibrating.ts';
import { pointWords, refusalText } from '../../../shared/words/calibration.ts';
import { newId } from '../../ids.ts';
import { Refusal } from '../../refusal.ts';
import { probeOf, withCalibration } from '../../settings/change.ts';
import { sitsOn } from '../../settings/moved.ts';
import { calibrationVersions, placed } from '../../settings/settings.ts';
import type { CalibrationDesk as Asked } from '../../web/desk.ts';
import type { Program } from '../program.ts';
import { type Known, madeNow, shown } from './shown.ts';

type SaveAct = Extract<CalibrationAct, { act: 'save' }>;

/** What the desk does about calibrations: tells how they stand, and takes one step after the other. */
export class CalibrationDesk implements Asked {
  readonly #program: Program;

  constructor(program: Program) {
    this.#program = program;
  }

  /** @throws Refusal where there is no such probe */
  calibrations(id: string, unit: TemperatureUnit): ProbeCalibrations {
    return shown(this.#known(id), unit);
  }

  /** @throws Refusal with what was seen and what to do; nothing that was kept is lost by it */
  async calibrate(id: string, act: CalibrationAct, unit: TemperatureUnit): Promise<ProbeCalibrations> {
    const known = this.#known(id);
    const { procedures } = this.#program;
    if (act.act === 'save') await this.#save(known, act, unit);
    else if (act.act === 'give-up') procedures.calibrations.delete(id);
    else procedures.calibrations.set(id, this.#step(known, act, unit));
    // From its beginning to its end a loose probe is off its iron, and the watch has to know.
    if (act.act === 'begin' || act.act === 'give-up') await this.#program.applySettings();
    return this.calibrations(id, unit);
  }

  #step(
    known: Known,
    act: Exclude<CalibrationAct, { act: 'save' | 'give-up' }>,
    unit: TemperatureUnit,
  ): Procedure {
    if (act.act === 'begin') {
      if (known.procedure !== null) throw new Refusal('conflict', procedureRefusals.already);
      if (this.#program.procedures.lags.has(known.probe.id))
        throw new Refusal('conflict', procedureRefusals.lagUnderWay);
      return beginProcedure(act.mounting, madeNow(known));
    }
    if (act.act === 'drop') {
      const left = dropPoint(begun(known), act.point);
      if (left === null) throw new Refusal('unknown', procedureRefusals.noPoint(act.point), 'point');
      return left;
    }
    const procedure = sound(known);
    if (act.act === 'wait') return taken(waitAt(procedure, act.kind), unit, 'kind');
    return this.#keep(procedure, act.taken, unit);
  }

  #keep(procedure: Procedure, { instrument, ...facts }: CalibrationKeep, unit: TemperatureUnit): Procedure {
    const kind = procedure.waiting?.kind;
    if (kind === undefined) throw new Refusal('conflict', procedureRefusals.notWaiting);
    if (kind !== facts.kind) {
      const words = procedureRefusals.otherKind(pointWords[kind].name, pointWords[facts.kind].name);
      throw new Refusal('conflict', words, 'kind');
    }
    const nowMs = this.#nowMs();
    const takenAt = this.#program.utcOf(nowMs);
    return taken(
      keepPoint(procedure, { facts: facts satisfies ReferenceFacts, instrument, takenAt, nowMs }),
      unit,
    );
  }

  async #save(known: Known, { by, dueUtcMs }: SaveAct, unit: TemperatureUnit): Promise<void> {
    const procedure = sound(known);
    const { mounting, points, madeWith: made } = procedure;
    const correction = taken<Correction>(outcomeOf(procedure), unit);
    if (dueUtcMs !== null && dueUtcMs <= known.nowUtcMs)
      throw new Refusal('invalid', procedureRefusals.duePast, 'dueUtcMs');
    const calibration: Omit<Calibration, 'version'> = {
      id: newId(),
      probe: known.probe.id,
      by,
      mounting,
      iron: mounting === 'fitted' ? made.iron : null,
      points: [...points],
      dueUtcMs,
      madeAt: this.#program.utcOf(this.#nowMs()),
      correction,
    };
    await this.#write(calibration, procedure);
    await this.#program.applySettings();
  }

  /** It is over before it is written, so that a second tap makes no second version; what can't be written goes on. */
  async #write(calibration: Omit<Calibration, 'version'>, procedure: Procedure): Promise<void> {
    const { options, procedures } = this.#program;
    procedures.calibrations.delete(calibration.probe);
    try {
      await options.settings.change((settings) => withCalibration(settings, calibration));
    } catch (error) {
      procedures.calibrations.set(calibration.probe, procedure);
      throw error;
    }
  }

  #known(id: string): Known {
    const { options, procedures, watches } = this.#program;
    const settings = options.settings.current;
    const probe = probeOf(settings, id);
    const iron = sitsOn(settings.irons, id);
    const nowMs = this.#nowMs();
    return {
      probe: placed(settings, probe),
      versions: calibrationVersions(settings, id),
      procedure: procedures.calibrations.get(id) ?? null,
      sits: iron === undefined ? null : this.#program.settingsOf(iron),
      thermometer: watches.withProbe(id)?.state.thermometers[id] ?? null,
      nowMs,
      nowUtcMs: options.originUtcMs + nowMs,
    };
  }

  #nowMs(): number {
    return this.#program.options.clock.nowMs();
  }
}

function begun({ procedure }: Known): Procedure {
  if (procedure === null) throw new Refusal('conflict', procedureRefusals.none);
  return procedure;
}

/** The procedure, where its points still go together. */
function sound(known: Known): Procedure {
  const procedure = begun(known);
  if (!goesOnWith(procedure, madeNow(known))) throw new Refusal('conflict', procedureRefusals.changed);
  return procedure;
}

/** What was asked for, or its refusal as a sentence. */
function taken<T extends object>(answer: T | CalibrationRefusal, unit: TemperatureUnit, where = ''): T {
  if (!isRefusal(answer)) return answer;
  const { seen, action } = refusalText(answer, unit);
  throw new Refusal('invalid', `${seen} ${action}`, where);
}
