import type { AirAnswer, AirProbeAnswer } from '../../shared/messages/cure.ts';
import { clocksGoByText, refusedText, airProbesWords as words } from '../../shared/words/air-probes.ts';
import { clockTime } from '../parts/clock-time.ts';
import { Note } from '../parts/note.tsx';
import { unit } from '../parts/unit.ts';
import { airAgo } from './air.ts';
import { coatsNowMs } from './clock.ts';

/** The time of day of a moment; empty where the daemon's time isn't known yet. */
export const airTime = (utc: string): string =>
  coatsNowMs.value === null ? '' : clockTime(Date.parse(utc), coatsNowMs.value);

/** What is wrong with the probes that tell the air, and what the clocks go by instead. */
export function AirNotes({ now, probes, chosen }: Pick<AirAnswer, 'now' | 'probes' | 'chosen'>) {
  const refused = probes.flatMap((one) =>
    one.refused.map((part) => refusedText(one.probe, part, airTime(part.at), unit.value)),
  );
  const silent = probes.filter((one) => one.probe === chosen && one.silent).map(silentText);
  const texts = [...refused, ...silent];
  if (texts.length === 0) return null;
  return (
    <Note hatch="missing" testId="air-notes">
      {texts.map((text) => (
        <p key={text}>
          <strong>{text}</strong>
        </p>
      ))}
      <p>{clocksGoByText(now, unit.value, airAgo.value)}</p>
    </Note>
  );
}

/** The probe that the clocks go by, or are to go by; all while they go by none. */
export function counting({ probes, chosen }: Pick<AirAnswer, 'probes' | 'chosen'>): AirAnswer['probes'] {
  const ones = probes.filter(({ probe, heard }) => heard || probe === chosen);
  return ones.length === 0 ? probes : ones;
}

const silentText = ({ probe, told }: AirProbeAnswer): string =>
  told === null ? words.chosenNever(probe) : words.chosenSilent(probe, airTime(told.at));
