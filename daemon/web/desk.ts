import type { AlarmKey } from '../../shared/alarm/record.ts';
import type { AirFrom } from '../../shared/cure/air.ts';
import type { Cement, CementDraft } from '../../shared/cure/cement.ts';
import type { HeatSchedule, HeatScheduleDraft } from '../../shared/heat/schedule.ts';
import type { Iron, IronDraft } from '../../shared/iron/iron.ts';
import type { SpotPlace } from '../../shared/iron/spots.ts';
import type { CalibrationAct, ProbeCalibrations } from '../../shared/messages/calibration.ts';
import type { ChooseSource, Outcome } from '../../shared/messages/command.ts';
import type {
  AirAnswer,
  AirSaid,
  CementList,
  CoatAct,
  CoatsAnswer,
  Forecast,
} from '../../shared/messages/cure.ts';
import type { IronDial, TypedPoint } from '../../shared/messages/dial.ts';
import type { IronEvenness, SpotDraft } from '../../shared/messages/evenness.ts';
import type { LagAct, ProbeLag } from '../../shared/messages/lag.ts';
import type { LineForm, LinesRead } from '../../shared/messages/line-form.ts';
import type { AlarmLive, Live, ProbeLive, Situation } from '../../shared/messages/live.ts';
import type { ProbeMotion } from '../../shared/messages/motion.ts';
import type { PieceHeat, WorkCommand } from '../../shared/messages/piece.ts';
import type { DeviceSettings } from '../../shared/messages/settings.ts';
import type { ToldChange } from '../../shared/messages/stream.ts';
import type { Piece, PieceDraft } from '../../shared/piece/piece.ts';
import type { PieceNoteDraft } from '../../shared/shop/note.ts';
import type { PlaceDraft, ProbePlace } from '../../shared/thermometer/place.ts';
import type { ProbeDraft, ProbeSettings } from '../../shared/thermometer/probe.ts';
import type { TemperatureUnit } from '../../shared/units/temperature.ts';
import type { UnattendedAfter } from '../../shared/watch/attended.ts';
import type { IronMark } from '../../shared/watch/input.ts';
import type { BookReader, ItemClosing, SuspectItem } from '../book/book.ts';

/** What the web side may ask of the program, and how it hears of changes. The web side knows nothing else of it. */
export interface Desk {
  /** How things stand; built at the call. */
  live(): Live;
  /**
   * Tells every change from now on, in order, each at the moment from which `live` shows it; returns a function that
   * ends it. A probe that joins an iron is told in `readings` too; one that no iron of the situation has is gone.
   */
  listen(listener: (change: LiveChange) => void): () => void;
  /** Takes note of how many pages have their sound armed and running, whenever that changes. */
  hearing(armedPages: number): void;
  readonly reader: BookReader;
  startSession(ironId: string, commandId: string): Promise<Outcome>;
  stopSession(sessionId: string, commandId: string): Promise<Outcome>;
  mark(sessionId: string, mark: IronMark, commandId: string): Promise<Outcome>;
  acknowledge(ironId: string, alarm: AlarmKey, commandId: string): Promise<Outcome>;
  silence(ironId: string, alarm: AlarmKey, forMs: number, commandId: string): Promise<Outcome>;
  /** Closes an open item with what a named person found. Asking again with the same id gives the same answer. */
  closeItem(id: string, said: Pick<ItemClosing, 'by' | 'found' | 'commandId'>): Promise<SuspectItem>;
  choose(choice: ChooseSource): Promise<void>;
  /** What a hand thermometer read on an iron's plate, at the time of the call. */
  addTypedReading(ironId: string, plateC: number, commandId: string): Promise<Outcome>;
  /** Somebody is there. */
  presence(): void;
  /** Heat schedules, irons and probes. */
  readonly settings: SettingsDesk;
  /** Names of devices, and the form of their lines. */
  readonly devices: DeviceDesk;
  /** Calibrations of probes. */
  readonly calibrations: CalibrationDesk;
  /** How far probes trail their plates. */
  readonly lags: LagDesk;
  /** What irons do at the marks of their dials. */
  readonly dials: DialDesk;
  /** How evenly irons' plates are hot. */
  readonly plates: PlateDesk;
  /** Pieces, and the work on them. */
  readonly pieces: PieceDesk;
  /** Whether lines tell still from moving. */
  readonly motions: MotionDesk;
  /** After how long a hot iron that is left alone is told of. */
  readonly attended: AttendedDesk;
  /** Cements, coats that dry, and the air. */
  readonly cure: CureDesk;
}

/** The part of the desk that is about heat schedules, irons and probes. */
export interface SettingsDesk {
  schedules(): readonly HeatSchedule[];
  /** Every version of one schedule, the newest first; empty where there is no such schedule. */
  scheduleVersions(id: string): readonly HeatSchedule[];
  irons(): readonly Iron[];
  probes(): readonly ProbeSettings[];
  /** A new version of a schedule, or a new schedule; `basedOn` is the version that the writer saw, 0 for a new one. */
  putSchedule(id: string, draft: HeatScheduleDraft, basedOn: number): Promise<HeatSchedule>;
  putIron(id: string, draft: IronDraft): Promise<Iron>;
  /** Takes away an iron that has no probe. */
  removeIron(id: string): Promise<void>;
  putProbe(id: string, draft: ProbeDraft): Promise<ProbeSettings>;
  /** Says where a probe is, on the iron that it sits on now. */
  putPlace(probe: string, place: PlaceDraft): Promise<ProbePlace>;
}

/** The part of the desk that is about devices. */
export interface DeviceDesk {
  /** Devices that something was settled about. */
  devices(): readonly DeviceSettings[];
  putName(id: string, name: string): Promise<DeviceSettings>;
  /** The last lines of a device, read in the form that is given; else in the one that is in use. */
  lines(id: string, form: LineForm | null): Promise<LinesRead>;
  /** Takes effect at once, on an open connection too. */
  putForm(id: string, form: LineForm): Promise<DeviceSettings>;
}

/** The part of the desk that is about calibrations of probes. */
export interface CalibrationDesk {
  /** A probe's calibrations, and the one that is being made; sentences give temperatures in `unit`. */
  calibrations(probe: string, unit: TemperatureUnit): ProbeCalibrations;
  /** Takes one step of a calibration that is being made, and tells how things stand after it. */
  calibrate(probe: string, act: CalibrationAct, unit: TemperatureUnit): Promise<ProbeCalibrations>;
}

/** The part of the desk that is about how far probes trail their plates. */
export interface LagDesk {
  /** A probe's lag, and how far its measuring is; sentences give temperatures in `unit`. */
  lag(probe: string, unit: TemperatureUnit): ProbeLag;
  /** Takes one step of measuring it, and tells how things stand after it. */
  measureLag(probe: string, act: LagAct, unit: TemperatureUnit): Promise<ProbeLag>;
}

/** The part of the desk that is about irons' dials. */
export interface DialDesk {
  /** An iron's dial chart with what it says. */
  dial(ironId: string): IronDial;
  /** What was read from a hand thermometer; at the time of the call. */
  addTypedPoint(ironId: string, typed: TypedPoint): Promise<IronDial>;
  removePoint(ironId: string, mark: number): Promise<IronDial>;
  /** What was measured since the iron drifted becomes its chart. */
  accept(ironId: string): Promise<IronDial>;
}

/** The part of the desk that is about how evenly plates are hot. */
export interface PlateDesk {
  /** By the iron's probes and by spots that were typed. */
  evenness(ironId: string): IronEvenness;
  /** A spot read by hand at the time of the call: it is held against what the probe reads then. */
  addSpot(ironId: string, spot: SpotDraft): Promise<IronEvenness>;
  removeSpot(ironId: string, place: SpotPlace): Promise<IronEvenness>;
  forget(ironId: string): Promise<IronEvenness>;
}

/** The part of the desk that is about pieces. */
export interface PieceDesk {
  /** Each in its newest version. */
  pieces(): readonly Piece[];
  /** A new version of a piece, or a new piece; `basedOn` is the version that the writer saw, 0 for a new one. */
  putPiece(id: string, draft: PieceDraft, basedOn: number): Promise<Piece>;
  heat(id: string): Promise<PieceHeat>;
  /** Keeps what a named person says of a piece. Asking again with the same id changes nothing. */
  note(id: string, note: PieceNoteDraft, commandId: string): Promise<void>;
  act(said: Omit<WorkCommand, 'commandId'>, commandId: string): Promise<Outcome>;
}

/** The part of the desk that is about cements, coats that dry, and the air of the shop. */
export interface CureDesk {
  cements(): CementList;
  /** A new version of a cement, or a new one; `basedOn` is the version that the writer saw, 0 for a new one. */
  putCement(id: string, draft: CementDraft, basedOn: number): Promise<Cement>;
  learnAnew(id: string, commandId: string): Promise<Outcome>;
  coats(): CoatsAnswer;
  act(act: CoatAct, commandId: string): Promise<Outcome>;
  air(): AirAnswer;
  /** What was read in the shop, at the time of the call. */
  sayAir(air: AirSaid, commandId: string): Promise<Outcome>;
  sayForecast(forecast: Forecast, commandId: string): Promise<Outcome>;
  /** Which probe tells the air from now on. */
  putAirFrom(from: AirFrom): Promise<AirFrom>;
}

/** The part of the desk that is about still and moving, as a probe's line tells it. */
export interface MotionDesk {
  motion(probe: string): ProbeMotion;
  /** Begins the check; what it finds is kept by itself. */
  begin(probe: string): ProbeMotion;
  giveUp(probe: string): ProbeMotion;
}

/** The part of the desk that is about irons that are left alone. */
export interface AttendedDesk {
  after(): UnattendedAfter;
  put(after: UnattendedAfter): Promise<UnattendedAfter>;
}

export type LiveChange =
  | { readonly kind: 'readings'; readonly probes: readonly ProbeLive[] }
  | { readonly kind: 'alarm'; readonly change: ToldChange; readonly alarm: AlarmLive }
  | { readonly kind: 'mark'; readonly iron: string; readonly mark: IronMark }
  | { readonly kind: 'situation'; readonly situation: Situation };
