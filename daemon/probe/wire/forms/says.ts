import type { ProbeId, Sample } from '../../../../shared/thermometer/sample.ts';
import { understoodWords } from '../../../../shared/words/line-forms.ts';
import { rejectWords } from '../../../../shared/words/source.ts';
import type { ProbeSample } from '../keys.ts';
import type { ParsedLine } from '../line.ts';

/** What was understood of a line, or why it was not taken, in words. */
export function says(line: ParsedLine, unitOf: (probe: ProbeId) => string): string {
  switch (line.kind) {
    case 'rejected':
      return understoodWords.notUsed(rejectWords[line.cause] ?? line.cause, line.why ?? '');
    case 'hello':
      return understoodWords.hello(
        Object.entries(line.hello)
          .map(([key, value]) => `${key} ${value}`)
          .join(', '),
      );
    case 'sample':
      return [line, ...(line.others ?? [])].map((one) => ofProbe(one, unitOf)).join('; ');
  }
}

/** Whether a line was taken that carries a checksum. */
export const isChecked = (line: ParsedLine): boolean => line.kind !== 'rejected' && line.check !== 'none';

function ofProbe({ sample, name, seq }: ProbeSample, unitOf: (probe: ProbeId) => string): string {
  const { deviceMs, motionG, button, airC, rhPct, faults } = sample;
  const words = understoodWords;
  const parts = [
    ...heat(sample, unitOf),
    ...faults.map((fault) => words.faults[fault]),
    deviceMs === null ? null : words.clock(String(deviceMs / 1000)),
    seq === null ? null : words.number(seq),
    motionG === null ? null : words.motion(String(motionG)),
    button === null ? null : words.button[button],
    airC === null ? null : words.air(String(airC)),
    rhPct === null ? null : words.humidity(String(rhPct)),
  ].filter((part) => part !== null);
  return words.probe(name, parts.length === 0 ? [words.nothing] : parts);
}

function heat({ probe, tC, emfUv, coldJunctionC }: Sample, unitOf: (probe: ProbeId) => string): string[] {
  if (tC !== null) return [understoodWords.plate(String(tC), unitOf(probe))];
  if (emfUv === null) return [];
  return [understoodWords.emf(String(emfUv), String(coldJunctionC))];
}
