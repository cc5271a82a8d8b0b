import { faults } from '../../shared/thermometer/reading.ts';
import { uncounted } from '../../shared/watch/counted.ts';
import { uncountedWords } from '../../shared/words/checks.ts';
import { faultWords } from '../../shared/words/faults.ts';
import { traceWords } from '../../shared/words/records.ts';

/** In place of a fault: nothing was heard of the daemon. */
export const LOST = 'lost';

/** Why there is no reading, in words. */
export function gapText(name: string): string {
  const fault = faults.find((one) => one === name);
  if (fault !== undefined) return faultWords[fault].name;
  const of = uncounted.find((one) => one === name);
  if (of !== undefined) return uncountedWords[of];
  return name === LOST ? traceWords.lost : name;
}
