import type { ComponentChildren } from 'preact';
import { isConfirmed } from '../../shared/heat/schedule.ts';
import type { Session } from '../../shared/messages/sessions.ts';
import type { SettingsFrom, Trace } from '../../shared/messages/trace.ts';
import { formatDuration } from '../../shared/units/time.ts';
import { handIronWords, seatWords } from '../../shared/words/checks.ts';
import { pageWords } from '../../shared/words/page.ts';
import { endWords, factWords, recordWords, startWords, traceWords } from '../../shared/words/records.ts';
import { type SessionTimes, sessionTimes } from '../parts/session-times.ts';
import { difference, temperature } from '../parts/unit.ts';
import { continuesText } from './session-list.tsx';

interface FactsProps {
  readonly session: Session;
  readonly all: readonly Session[];
  readonly trace: Trace | null;
}

/** What is known of a session beside its readings. */
export function Facts({ session, all, trace }: FactsProps) {
  const times = sessionTimes(session.zone);
  const { endedAt, endedBecause, continues } = session;
  const settings = trace?.settings ?? [];
  return (
    <section aria-labelledby="facts-title">
      <h3 id="facts-title" class="records-part">
        {factWords.title}
      </h3>
      <dl class="facts">
        <Fact name={factWords.iron}>
          {session.iron.name} {session.simulated ? <span class="tag">{pageWords.simulated}</span> : null}
        </Fact>
        <Fact name={factWords.began}>
          {times.dateTime(Date.parse(session.startedAt))}: {startWords[session.startedBecause]}
          {continues === null ? '' : `; ${continuesText(continues, all)}`}
        </Fact>
        <Fact name={factWords.ended}>
          {endedAt === null || endedBecause === null
            ? recordWords.running
            : `${times.dateTime(Date.parse(endedAt))}: ${endWords[endedBecause]}`}
        </Fact>
        <Fact name={factWords.length}>{formatDuration(session.lengthMs)}</Fact>
        <Fact name={factWords.peak}>
          {session.peakC === null ? recordWords.noPeak : temperature(session.peakC)}
        </Fact>
        <Fact name={factWords.samples}>{session.samples}</Fact>
        {settings.map((one) => (
          <Settled key={`${one.fromMs} ${one.schedule.version}`} settings={one} times={times} />
        ))}
        <Fact name={factWords.program}>
          {factWords.programVersion(session.programVersion, session.foldVersion)}
        </Fact>
        <Fact name={factWords.seal}>
          <code data-testid="seal">{session.seal}</code>
          <br />
          {factWords.sealMeans}
        </Fact>
      </dl>
      {times.otherZone ? <p class="quiet">{factWords.zone(session.zone)}</p> : null}
    </section>
  );
}

const Fact = ({ name, children }: { readonly name: string; readonly children: ComponentChildren }) => (
  <>
    <dt>{name}</dt>
    <dd>{children}</dd>
  </>
);

interface SettledProps {
  readonly settings: SettingsFrom;
  readonly times: SessionTimes;
}

/** The heat schedule and probes of a stretch of the session. */
function Settled({ settings: { schedule, probes }, times }: SettledProps) {
  const { source, fabricLimitC, cementLimitC, limitStanding } = schedule;
  return (
    <>
      <Fact name={factWords.schedule}>
        {factWords.version(schedule.name, schedule.version)}:{' '}
        {source !== null && isConfirmed(schedule) ? (
          factWords.confirmed(source.manual, source.page)
        ) : (
          <b>{factWords.unconfirmed}</b>
        )}
      </Fact>
      <Fact name={factWords.limits}>
        {traceWords.fabricLimit(temperature(fabricLimitC))} ({limitStanding});{' '}
        {cementLimitC === null ? factWords.cementUnset : traceWords.cementLimit(temperature(cementLimitC))}
      </Fact>
      <Fact name={factWords.probes}>
        {probes.length === 0 ? handIronWords.none : null}
        {probes.map(({ id, label, seat, guardBandK, calibration }) => (
          <div key={id} data-testid="probe-fact">
            {factWords.probe(label, id, difference(guardBandK))}, {seatWords[seat]};{' '}
            {calibration === null
              ? factWords.notCalibrated
              : factWords.calibration(calibration.version, times.dateTime(Date.parse(calibration.madeAt)))}
          </div>
        ))}
      </Fact>
    </>
  );
}
