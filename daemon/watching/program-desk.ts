import type { AlarmKey } from '../../shared/alarm/record.ts';
import type { HeatSchedule, HeatScheduleDraft } from '../../shared/heat/schedule.ts';
import type { Iron, IronDraft } from '../../shared/iron/iron.ts';
import type { SpotPlace } from '../../shared/iron/spots.ts';
import type { CalibrationAct, ProbeCalibrations } from '../../shared/messages/calibration.ts';
import type { ChooseSource, Outcome } from '../../shared/messages/command.ts';
import type { IronDial, TypedPoint } from '../../shared/messages/dial.ts';
import type { IronEvenness, SpotDraft } from '../../shared/messages/evenness.ts';
import type { LagAct, ProbeLag } from '../../shared/messages/lag.ts';
import type { LineForm, LinesRead } from '../../shared/messages/line-form.ts';
import type { Live } from '../../shared/messages/live.ts';
import type { DeviceSettings } from '../../shared/messages/settings.ts';
import type { PlaceDraft, ProbePlace } from '../../shared/thermometer/place.ts';
import type { ProbeDraft, ProbeSettings } from '../../shared/thermometer/probe.ts';
import type { TemperatureUnit } from '../../shared/units/temperature.ts';
import type { IronMark, WatchInput } from '../../shared/watch/input.ts';
import { commandWords } from '../../shared/words/commands.ts';
import type { Book, BookReader, ItemClosing, SuspectItem } from '../book/book.ts';
import type { ProbeSource } from '../probe/source.ts';
import { Refusal } from '../refusal.ts';
import {
  deviceSettings,
  withDeviceName,
  withIron,
  withoutIron,
  withProbe,
  withSchedule,
} from '../settings/change.ts';
import { ironOf, withAcceptedDial, withoutPoint, withTypedPoint } from '../settings/dials.ts';
import type { SettingsKeeper } from '../settings/keeper.ts';
import { withPlace } from '../settings/places.ts';
import { currentSchedules, type Settings, scheduleVersions } from '../settings/settings.ts';
import type { Desk, LiveChange } from '../web/desk.ts';
import { AttendedDesk } from './attended-desk.ts';
import { CalibrationDesk } from './calibrating/calibration-desk.ts';
import { LagDesk } from './calibrating/lag-desk.ts';
import { MotionDesk } from './calibrating/motion-desk.ts';
import { closeItem } from './close-item.ts';
import { CommandLog } from './command-log.ts';
import { deviceLines, putDeviceForm } from './device-forms.ts';
import { dialAnswer } from './dials.ts';
import { CureDesk } from './drying/cure-desk.ts';
import type { IronWatch } from './iron-watch.ts';
import { PlateDesk } from './plate-desk.ts';
import type { Program } from './program.ts';
import { giveMark } from './shop/give-mark.ts';
import { PieceDesk } from './shop/piece-desk.ts';
import { refuseUnseen } from './unseen.ts';

export interface DeskParts {
  readonly program: Program;
  readonly reader: BookReader;
  readonly book: Pick<Book, 'closeItem' | 'addNote'>;
  readonly sourceFor: (choice: ChooseSource) => Promise<ProbeSource>;
  /** Settles once the sessions that broke off are gone on with: a page is quicker to be back than they are. */
  readonly ready: () => Promise<void>;
}

/** The desk at which the web side asks: reads and commands go from here to the program. */
export class ProgramDesk implements Desk {
  readonly reader: BookReader;
  readonly log = new CommandLog();
  readonly pieces: PieceDesk;
  readonly cure: CureDesk;
  readonly attended: AttendedDesk;
  readonly motions: MotionDesk;
  readonly #program: Program;
  readonly #settings: SettingsKeeper;
  readonly #book: DeskParts['book'];
  readonly #sourceFor: DeskParts['sourceFor'];
  readonly #ready: () => Promise<void>;
  readonly #calibrating: CalibrationDesk;
  readonly #lags: LagDesk;
  readonly #plates: PlateDesk;

  constructor({ program, reader, book, sourceFor, ready }: DeskParts) {
    this.#program = program;
    this.#settings = program.options.settings;
    this.#calibrating = new CalibrationDesk(program);
    this.#lags = new LagDesk(program);
    this.#plates = new PlateDesk(program);
    this.motions = new MotionDesk(program);
    this.attended = new AttendedDesk(program);
    this.pieces = new PieceDesk({ program, reader, book, once: (id, run) => this.#once(id, run) });
    this.cure = new CureDesk({ program, once: (id, run) => this.#once(id, run) });
    this.#book = book;
    this.#sourceFor = sourceFor;
    this.#ready = ready;
    this.reader = reader;
  }

  live(): Live {
    return this.#program.live();
  }

  listen(listener: (change: LiveChange) => void): () => void {
    return this.#program.listen(listener);
  }

  hearing(armedPages: number): void {
    this.#program.setArmedPages(armedPages);
  }

  presence(): void {
    this.#program.presence.sign();
  }

  startSession(ironId: string, commandId: string): Promise<Outcome> {
    return this.#once(commandId, async () => {
      const watch = this.#watchOf(ironId);
      if (watch.session !== null)
        throw new Refusal('conflict', commandWords.alreadyRecording(watch.session), 'iron');
      watch.start('by-hand', this.#nowMs(), commandId);
      return { commandId, session: watch.session, kept: await watch.kept() };
    });
  }

  stopSession(session: string, commandId: string): Promise<Outcome> {
    return this.#once(commandId, async () => {
      const watch = this.#watchOfSession(session);
      return {
        commandId,
        session: watch.session,
        kept: await watch.stop('by-hand', this.#nowMs(), commandId),
      };
    });
  }

  mark(session: string, mark: IronMark, commandId: string): Promise<Outcome> {
    return this.#command(commandId, () => this.#watchOfSession(session), { kind: 'mark', commandId, mark });
  }

  acknowledge(ironId: string, alarm: AlarmKey, commandId: string): Promise<Outcome> {
    return this.#command(commandId, () => this.#watchOf(ironId), { kind: 'acknowledge', commandId, alarm });
  }

  silence(ironId: string, alarm: AlarmKey, forMs: number, commandId: string): Promise<Outcome> {
    return this.#command(commandId, () => this.#watchOf(ironId), {
      kind: 'silence',
      commandId,
      alarm,
      forMs,
    });
  }

  closeItem(id: string, said: Pick<ItemClosing, 'by' | 'found' | 'commandId'>): Promise<SuspectItem> {
    const nowUtc = (): string => this.#program.utcOf(this.#nowMs());
    return closeItem({ reader: this.reader, book: this.#book, nowUtc }, id, said);
  }

  async choose(choice: ChooseSource): Promise<void> {
    await this.#ready();
    const found = this.#program.choice;
    if (found === null) throw new Refusal('conflict', commandWords.chosenAlready);
    if (choice.kind === 'serial' && !found.some((p) => p.path === choice.path)) {
      throw new Refusal('unknown', commandWords.noSuchPort(choice.path), 'path');
    }
    // Taken off the page at once: a second tap while the first is carried out finds nothing to choose.
    this.#program.setChoice(null);
    try {
      this.#program.addSource(await this.#sourceFor(choice));
    } catch (error) {
      this.#program.setChoice(found);
      throw error;
    }
  }

  schedules(): readonly HeatSchedule[] {
    return currentSchedules(this.#settings.current);
  }

  scheduleVersions(id: string): readonly HeatSchedule[] {
    return scheduleVersions(this.#settings.current, id);
  }

  devices(): readonly DeviceSettings[] {
    return this.#settings.current.devices;
  }

  deviceLines(id: string, form: LineForm | null): Promise<LinesRead> {
    const settings = this.#settings.current;
    return deviceLines(this.#program.devices, settings, id, form ?? deviceSettings(settings, id).form);
  }

  irons(): readonly Iron[] {
    return this.#settings.current.irons;
  }

  probes(): readonly ProbeSettings[] {
    return this.#settings.current.probes;
  }

  async putSchedule(id: string, draft: HeatScheduleDraft, basedOn: number): Promise<HeatSchedule> {
    const madeAt = this.#program.utcOf(this.#nowMs());
    return (await this.#change((s) => withSchedule(s, draft, { id, basedOn, madeAt }))).schedule;
  }

  async putIron(id: string, draft: IronDraft): Promise<Iron> {
    const change = (s: Settings) => {
      const made = withIron(s, id, draft);
      refuseUnseen(this.#program.watches.all, made.settings);
      return made;
    };
    return (await this.#change(change)).iron;
  }

  async putProbe(id: string, draft: ProbeDraft): Promise<ProbeSettings> {
    return (await this.#change((s) => withProbe(s, id, draft))).probe;
  }

  async putPlace(probe: string, place: PlaceDraft): Promise<ProbePlace> {
    const toldAt = this.#program.utcOf(this.#nowMs());
    return (await this.#change((s) => withPlace(s, probe, place, toldAt))).place;
  }

  addTypedReading(ironId: string, plateC: number, commandId: string): Promise<Outcome> {
    return this.#once(commandId, () =>
      giveMark(this.#watchOf(ironId), { kind: 'typed', plateC }, { commandId, nowMs: this.#nowMs() }),
    );
  }

  async removeIron(id: string): Promise<void> {
    await this.#change((s) => {
      const made = withoutIron(s, id);
      refuseUnseen(this.#program.watches.all, made.settings);
      return made;
    });
  }

  calibrations(probe: string, unit: TemperatureUnit): ProbeCalibrations {
    return this.#calibrating.calibrations(probe, unit);
  }

  calibrate(probe: string, act: CalibrationAct, unit: TemperatureUnit): Promise<ProbeCalibrations> {
    return this.#calibrating.calibrate(probe, act, unit);
  }

  lag(probe: string, unit: TemperatureUnit): ProbeLag {
    return this.#lags.lag(probe, unit);
  }

  measureLag(probe: string, act: LagAct, unit: TemperatureUnit): Promise<ProbeLag> {
    return this.#lags.measureLag(probe, act, unit);
  }

  async putDeviceName(id: string, name: string): Promise<DeviceSettings> {
    return (await this.#change((s) => withDeviceName(s, id, name))).device;
  }

  putDeviceForm(id: string, form: LineForm): Promise<DeviceSettings> {
    return putDeviceForm(this.#program.devices, this.#settings, id, form);
  }

  dial(ironId: string): IronDial {
    const settings = this.#settings.current;
    const leader = this.#program.watches.of(ironId)?.state.leader ?? null;
    return dialAnswer(settings, ironOf(settings, ironId), leader);
  }

  addTypedPoint(ironId: string, typed: TypedPoint): Promise<IronDial> {
    const at = this.#program.utcOf(this.#nowMs());
    return this.#changeDial(ironId, (s) => withTypedPoint(s, ironId, typed, at));
  }

  removeDialPoint(ironId: string, mark: number): Promise<IronDial> {
    return this.#changeDial(ironId, (s) => withoutPoint(s, ironId, mark));
  }

  acceptDial(ironId: string): Promise<IronDial> {
    return this.#changeDial(ironId, (s) => withAcceptedDial(s, ironId));
  }

  evenness(ironId: string): IronEvenness {
    return this.#plates.evenness(ironId);
  }

  addSpot(ironId: string, spot: SpotDraft): Promise<IronEvenness> {
    return this.#plates.addSpot(ironId, spot);
  }

  removeSpot(ironId: string, place: SpotPlace): Promise<IronEvenness> {
    return this.#plates.removeSpot(ironId, place);
  }

  forgetSpots(ironId: string): Promise<IronEvenness> {
    return this.#plates.forget(ironId);
  }

  async #changeDial(
    ironId: string,
    make: (settings: Settings) => { readonly settings: Settings },
  ): Promise<IronDial> {
    await this.#change(make);
    return this.dial(ironId);
  }

  async #change<T extends { readonly settings: Settings }>(make: (settings: Settings) => T): Promise<T> {
    const made = await this.#settings.change(make);
    await this.#program.applySettings();
    return made;
  }

  #once(commandId: string, run: () => Promise<Outcome>): Promise<Outcome> {
    this.presence();
    return this.log.once(commandId, async () => {
      await this.#ready();
      return run();
    });
  }

  /** Gives one input to a watch, and answers once it is kept; what the watch refuses is refused here. */
  #command(commandId: string, find: () => IronWatch, input: WatchInput): Promise<Outcome> {
    return this.#once(commandId, async () => {
      const watch = find();
      for (const { finding } of watch.take(input, this.#nowMs())) {
        if (finding.kind === 'refused' && finding.commandId === commandId)
          throw new Refusal('conflict', finding.reason);
      }
      const { session } = watch;
      return { commandId, session, kept: session !== null && (await watch.kept()) };
    });
  }

  #watchOf(ironId: string): IronWatch {
    const watch = this.#program.watches.of(ironId);
    if (watch === undefined) throw new Refusal('unknown', commandWords.noIron(ironId), 'iron');
    return watch;
  }

  #watchOfSession(session: string): IronWatch {
    const watch = this.#program.watches.ofSession(session);
    if (watch === undefined) throw new Refusal('unknown', commandWords.notRunning(session), 'session');
    return watch;
  }

  #nowMs(): number {
    return this.#program.options.clock.nowMs();
  }
}
