import type { AirAnswer, AirProbeAnswer } from '../../shared/messages/cure.ts';
import { clocksGoByText, refusedText, airProbesWords as words } from '../../shared/words/air-probes.ts';
import { clockTime } from '../coats/range-text.ts';
import { Note } from '../parts/note.tsx';
import { unit } from '../parts/unit.ts';
import { airAgo } from './air.ts';
import { coatsNowMs } from './clock.ts';

/** The time of day of a moment; empty where the daemon's time isn't known yet. */
export const airTime = (utc: string): string =>
  coatsNowMs.value === null ? '' : clockTime(Date.parse(utc), coatsNowMs.value);

/** What is wrong with the probes that tell the air, and what the clocks go by instead; the same wherever the air is told. */
export function AirNotes({ answer: { now, probes, chosen } }: { readonly answer: AirAnswer }) {
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

const silentText = ({ probe, told }: AirProbeAnswer): string =>
  told === null ? words.chosenNever(probe) : words.chosenSilent(probe, airTime(told.at));
