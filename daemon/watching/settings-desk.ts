import type { HeatSchedule, HeatScheduleDraft } from '../../shared/heat/schedule.ts';
import type { Iron, IronDraft } from '../../shared/iron/iron.ts';
import type { PlaceDraft, ProbePlace } from '../../shared/thermometer/place.ts';
import type { ProbeDraft, ProbeSettings } from '../../shared/thermometer/probe.ts';
import { withIron, withoutIron, withProbe, withSchedule } from '../settings/change.ts';
import { withPlace } from '../settings/places.ts';
import { currentSchedules, type Settings, scheduleVersions } from '../settings/settings.ts';
import type { SettingsDesk as Asked } from '../web/desk.ts';
import type { Program } from './program.ts';
import { settle } from './settle.ts';
import { refuseUnseen } from './unseen.ts';

/** The part of the desk where heat schedules, irons and probes are settled. */
export class SettingsDesk implements Asked {
  readonly #program: Program;

  constructor(program: Program) {
    this.#program = program;
  }

  schedules(): readonly HeatSchedule[] {
    return currentSchedules(this.#now());
  }

  scheduleVersions(id: string): readonly HeatSchedule[] {
    return scheduleVersions(this.#now(), id);
  }

  irons(): readonly Iron[] {
    return this.#now().irons;
  }

  probes(): readonly ProbeSettings[] {
    return this.#now().probes;
  }

  async putSchedule(id: string, draft: HeatScheduleDraft, basedOn: number): Promise<HeatSchedule> {
    const madeAt = this.#nowUtc();
    return (await settle(this.#program, (s) => withSchedule(s, draft, { id, basedOn, madeAt }))).schedule;
  }

  async putIron(id: string, draft: IronDraft): Promise<Iron> {
    return (await this.#settleIrons((s) => withIron(s, id, draft))).iron;
  }

  async removeIron(id: string): Promise<void> {
    await this.#settleIrons((s) => withoutIron(s, id));
  }

  async putProbe(id: string, draft: ProbeDraft): Promise<ProbeSettings> {
    return (await settle(this.#program, (s) => withProbe(s, id, draft))).probe;
  }

  async putPlace(probe: string, place: PlaceDraft): Promise<ProbePlace> {
    const toldAt = this.#nowUtc();
    return (await settle(this.#program, (s) => withPlace(s, probe, place, toldAt))).place;
  }

  #settleIrons<T extends { readonly settings: Settings }>(make: (settings: Settings) => T): Promise<T> {
    return settle(this.#program, (s) => {
      const made = make(s);
      refuseUnseen(this.#program.watches.all, made.settings);
      return made;
    });
  }

  #now(): Settings {
    return this.#program.options.settings.current;
  }

  #nowUtc(): string {
    return this.#program.utcOf(this.#program.options.clock.nowMs());
  }
}
