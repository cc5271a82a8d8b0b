import type { AlarmKey } from '../../shared/alarm/record.ts';
import type { ChooseSource, Outcome } from '../../shared/messages/command.ts';
import type { Live } from '../../shared/messages/live.ts';
import type { IronMark, WatchInput } from '../../shared/watch/input.ts';
import { commandWords } from '../../shared/words/commands.ts';
import type { Book, BookReader, ItemClosing, SuspectItem } from '../book/book.ts';
import type { ProbeSource } from '../probe/source.ts';
import { Refusal } from '../refusal.ts';
import type { Desk, LiveChange } from '../web/desk.ts';
import { AttendedDesk } from './attended-desk.ts';
import { CalibrationDesk } from './calibrating/calibration-desk.ts';
import { LagDesk } from './calibrating/lag-desk.ts';
import { MotionDesk } from './calibrating/motion-desk.ts';
import { closeItem } from './close-item.ts';
import { CommandLog } from './command-log.ts';
import { DeviceDesk } from './device-desk.ts';
import { DialDesk } from './dial-desk.ts';
import { CureDesk } from './drying/cure-desk.ts';
import type { IronWatch } from './iron-watch.ts';
import { PlateDesk } from './plate-desk.ts';
import type { Program } from './program.ts';
import { SettingsDesk } from './settings-desk.ts';
import { giveMark } from './shop/give-mark.ts';
import { PieceDesk } from './shop/piece-desk.ts';

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
  readonly settings: SettingsDesk;
  readonly devices: DeviceDesk;
  readonly calibrations: CalibrationDesk;
  readonly lags: LagDesk;
  readonly dials: DialDesk;
  readonly plates: PlateDesk;
  readonly pieces: PieceDesk;
  readonly cure: CureDesk;
  readonly attended: AttendedDesk;
  readonly motions: MotionDesk;
  readonly #program: Program;
  readonly #book: DeskParts['book'];
  readonly #sourceFor: DeskParts['sourceFor'];
  readonly #ready: () => Promise<void>;

  constructor({ program, reader, book, sourceFor, ready }: DeskParts) {
    this.#program = program;
    this.settings = new SettingsDesk(program);
    this.devices = new DeviceDesk(program);
    this.calibrations = new CalibrationDesk(program);
    this.lags = new LagDesk(program);
    this.dials = new DialDesk(program);
    this.plates = new PlateDesk(program);
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

  addTypedReading(ironId: string, plateC: number, commandId: string): Promise<Outcome> {
    return this.#once(commandId, () =>
      giveMark(this.#watchOf(ironId), { kind: 'typed', plateC }, { commandId, nowMs: this.#nowMs() }),
    );
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
