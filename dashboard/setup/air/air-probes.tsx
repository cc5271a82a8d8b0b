import { airFromSchema } from '../../../shared/cure/air.ts';
import type { AirAnswer } from '../../../shared/messages/cure.ts';
import { airProbeText, airProbesWords as words } from '../../../shared/words/air-probes.ts';
import { setupWords } from '../../../shared/words/setup.ts';
import { readAir } from '../../cure/air.ts';
import { airTime } from '../../cure/air-notes.tsx';
import { viewOnly } from '../../link/daemon.ts';
import { unit } from '../../parts/unit.ts';
import { put } from '../ask-daemon.ts';
import { sayOf } from '../changing.ts';
import { Pick } from '../fields/field.tsx';
import { SaidLine } from '../said-line.tsx';

const SUBJECT = 'air-from';
/** In place of a probe's id: none was chosen. */
const WHICHEVER = '';

type AirProbesProps = Readonly<globalThis.Pick<AirAnswer, 'probes' | 'chosen'>>;

/** The probes that tell the air with their values, and which of them is to tell it. */
export const AirProbes = ({ probes, chosen }: AirProbesProps) => (
  <section class="air-form air-probes" aria-label={words.title} data-testid="air-probes">
    <h3>{words.title}</h3>
    <ul class="air-probe-list">
      {probes.map((one) => (
        <li key={one.probe} data-testid="air-probe" data-heard={one.heard}>
          {airProbeText(one, one.told === null ? '' : airTime(one.told.at), unit.value)}
        </li>
      ))}
    </ul>
    {viewOnly.value ? null : (
      <Pick
        label={words.choose}
        options={[
          [WHICHEVER, words.whichever],
          ...probes.map(({ probe }): readonly [string, string] => [probe, probe]),
        ]}
        chosen={chosen ?? WHICHEVER}
        onPick={(picked) => void choose(picked === WHICHEVER ? null : picked, chosen)}
      />
    )}
    <p class="quiet">{chosen === null ? words.whicheverMeans : words.chosenMeans}</p>
    <SaidLine subject={SUBJECT} />
  </section>
);

/** @param before what is put back by undoing it; undefined: it is being undone */
async function choose(probe: string | null, before?: string | null): Promise<void> {
  const answer = await put('/api/air/from', { probe }, airFromSchema);
  if (answer.kind !== 'done') {
    sayOf(SUBJECT, setupWords.notSaved(answer.why));
    return;
  }
  await readAir();
  if (before === undefined) sayOf(SUBJECT, setupWords.undone);
  else sayOf(SUBJECT, probe === null ? words.isWhichever : words.isChosen(probe), () => void choose(before));
}
