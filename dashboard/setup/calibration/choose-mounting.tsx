import { useEffect, useRef } from 'preact/hooks';
import type { Mounting } from '../../../shared/calibration/calibration.ts';
import { calibratingWords } from '../../../shared/words/calibrating.ts';
import { Note } from '../../parts/note.tsx';
import { Target } from '../../parts/target.tsx';

interface ChooseMountingProps {
  readonly caution: string;
  readonly begin: (mounting: Mounting) => void;
  readonly end: () => void;
}

/** Before anything else the caution; then how the probe is mounted, which decides what may be done with it. */
export function ChooseMounting({ caution, begin, end }: ChooseMountingProps) {
  const title = useRef<HTMLHeadingElement>(null);
  useEffect(() => title.current?.focus(), []);
  return (
    <div class="calibration-step" data-testid="choose-mounting">
      <h5 class="calibration-step-title" tabIndex={-1} ref={title}>
        {calibratingWords.first}
      </h5>
      <Note hatch="beyond" testId="water-caution">
        <strong>{caution}</strong>
      </Note>
      <p>{calibratingWords.which}</p>
      <div class="choice-row">
        <Target main testId="begin-fitted" onPress={() => begin('fitted')}>
          <span>{calibratingWords.fitted}</span>
          <small>{calibratingWords.fittedMeans}</small>
        </Target>
        <Target main testId="begin-loose" onPress={() => begin('loose')}>
          <span>{calibratingWords.loose}</span>
          <small>{calibratingWords.looseMeans}</small>
        </Target>
        <Target onPress={end}>{calibratingWords.neverMind}</Target>
      </div>
    </div>
  );
}
