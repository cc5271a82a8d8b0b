import type { FindingAnswer } from '../../shared/messages/sessions.ts';
import type { Trace } from '../../shared/messages/trace.ts';
import { formatDuration } from '../../shared/units/time.ts';
import { alarmWords } from '../../shared/words/alarms.ts';
import { checkWords, typedWords } from '../../shared/words/checks.ts';
import { findingWords } from '../../shared/words/records.ts';
import { phaseWords } from '../../shared/words/standing.ts';
import { visitFoundWords } from '../../shared/words/visits.ts';
import { gapText } from '../chart/gap-text.ts';

/** One line of what was found or noted, as text and as a mark on the trace. */
export interface Found {
  readonly id: string;
  readonly atMs: number;
  readonly text: string;
  /** An alarm was raised. */
  readonly strong: boolean;
}

/** How temperatures and differences are worded, in the unit shown. */
export interface Wording {
  readonly temperature: (c: number) => string;
  readonly difference: (k: number) => string;
}

/** Findings and notes of a trace in the order of time. */
export function foundIn(trace: Trace, wording: Wording): readonly Found[] {
  const labels = new Map(trace.settings.flatMap(({ probes }) => probes.map(({ id, label }) => [id, label])));
  const labelOf = (probe: string): string => labels.get(probe) ?? probe;
  const lastTold = new Map(trace.findings.flatMap((f, i) => (f.kind === 'visit' ? [[f.n, i]] : [])));
  const found = trace.findings.flatMap((finding, i): Found[] => {
    // Of a visit that went on only its last telling is shown.
    if (finding.kind === 'visit' && lastTold.get(finding.n) !== i) return [];
    const text = textOf(finding, labelOf, wording);
    if (text === '') return [];
    const strong = finding.kind === 'alarm' && finding.change === 'raised';
    return [{ id: `${finding.seq} ${i}`, atMs: finding.at.sessionMs, text, strong }];
  });
  const notes = trace.notes.map(({ atMs, text }, i): Found => {
    return { id: `note ${i} ${atMs}`, atMs, text: findingWords.note(text), strong: false };
  });
  return [...found, ...notes].sort((a, b) => a.atMs - b.atMs);
}

function textOf(
  finding: FindingAnswer,
  labelOf: (probe: string) => string,
  { temperature, difference }: Wording,
): string {
  switch (finding.kind) {
    case 'alarm': {
      const { alarm, change } = finding;
      const peak =
        alarm.peakC === null || change === 'raised' ? '' : findingWords.peak(temperature(alarm.peakC));
      const words = [`${alarmWords[alarm.kind].title}: ${findingWords.alarm(change)}`, peak];
      return words.filter((part) => part !== '').join(', ');
    }
    case 'quality':
      return finding.quality === 'ok'
        ? findingWords.readsAgain(labelOf(finding.probe))
        : findingWords.quality(labelOf(finding.probe), gapText(finding.quality));
    case 'phase':
      return capitalised(phaseWords[finding.phase]);
    case 'heat':
      return finding.change === 'hot' ? findingWords.hot : findingWords.cold;
    case 'refused':
      return findingWords.refused(finding.reason);
    case 'stretch': {
      const { mark, figures } = finding;
      return findingWords.stretch(
        String(mark),
        temperature(figures.meanC),
        temperature(figures.peakC),
        figures.cycles,
      );
    }
    case 'load':
      return findingWords.load(String(finding.mark), difference(finding.troughDropK));
    case 'check': {
      const { hottestC, lowestC, settled, ended, guardBandK } = finding;
      if (settled === null || lowestC === null)
        return checkWords.missed(temperature(hottestC), ended ?? 'lost');
      const value = checkWords.value(temperature(hottestC), difference(guardBandK));
      return ended === null ? checkWords.settled(value) : checkWords.over(value, temperature(lowestC), ended);
    }
    case 'typed':
      return typedWords.found(temperature(finding.plateC), difference(finding.guardBandK), finding.over);
    case 'visit':
      return finding.takenBack ? '' : visitText(finding, temperature);
    case 'cycle':
      return '';
  }
}

type VisitFound = Extract<FindingAnswer, { kind: 'visit' }>;

const visitText = (
  { placeName, lapDone, presumed, peakC, reached, contactMs }: VisitFound,
  temperature: Wording['temperature'],
): string =>
  visitFoundWords.found({
    place: placeName,
    lapDone,
    presumed,
    peak: peakC === null ? null : temperature(peakC),
    reached: reached?.name ?? null,
    time: formatDuration(contactMs),
  });

const capitalised = (text: string): string => text.charAt(0).toUpperCase() + text.slice(1);
