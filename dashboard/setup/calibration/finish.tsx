import { calibratingWords } from '../../../shared/words/calibrating.ts';
import { stream } from '../../link/daemon.ts';
import { daemonUtcMs } from '../../link/stream.ts';
import { pageMs } from '../../parts/now.ts';
import { Target } from '../../parts/target.tsx';
import { sayOf } from '../changing.ts';
import { Field, Pick } from '../fields/field.tsx';
import { take } from './calibrations.ts';
import { dueUtcMs, endDraft, type, typedOf } from './drafts.ts';

interface FinishProps {
  readonly id: string;
  /** The version that it will be. */
  readonly version: number;
}

const dues = ['none', '3', '6', '12'] as const;

/** Who made it, when it is due again, and the tap that puts it in force. */
export function Finish({ id, version }: FinishProps) {
  const draft = typedOf(id);
  const save = async (): Promise<void> => {
    // Days are counted by the daemon's clock, where that is known.
    const now = daemonUtcMs(stream.peek(), pageMs()) ?? Date.now();
    const body = { by: draft.by, dueUtcMs: dueUtcMs(draft, now) };
    if (!(await take(id, 'save', body))) return;
    endDraft(id);
    sayOf(`probe ${id}`, calibratingWords.saved(version));
  };
  return (
    <div class="calibration-step" data-testid="finish">
      <h5 class="calibration-step-title">{calibratingWords.finish}</h5>
      <Field
        id={`calibration-${encodeURIComponent(id)}-by`}
        label={calibratingWords.who}
        text={draft.by}
        means={calibratingWords.whoMeans}
        onText={(by) => type(id, { by })}
      />
      <Pick
        label={calibratingWords.due}
        options={dues.map((one) => [one, calibratingWords.dues[one]] as const)}
        chosen={draft.due}
        onPick={(due) => type(id, { due })}
      />
      <div class="choice-row">
        <Target main testId="save-calibration" onPress={() => void save()}>
          {calibratingWords.save(version)}
        </Target>
      </div>
    </div>
  );
}
