import type { ProbeCalibrations } from '../../../shared/messages/calibration.ts';
import { calibrationWords } from '../../../shared/words/calibration.ts';
import { day } from '../../parts/day.ts';
import { Note } from '../../parts/note.tsx';

/** That the calibration in force is past its due date, where it is. */
export function DueNote({ all: { due, versions } }: { readonly all: ProbeCalibrations }) {
  const dueUtcMs = versions[0]?.calibration.dueUtcMs ?? null;
  return due && dueUtcMs !== null ? (
    <Note hatch="missing" testId="calibration-due">
      {calibrationWords.due(day(dueUtcMs))}
    </Note>
  ) : null;
}
