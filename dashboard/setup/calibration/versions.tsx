import type { ProbeCalibrations } from '../../../shared/messages/calibration.ts';
import { calibratingWords } from '../../../shared/words/calibrating.ts';
import { calibrationWords, methodWords } from '../../../shared/words/calibration.ts';
import { dayAndTime } from '../../parts/day.ts';
import { PointsTable } from './points-table.tsx';
import { Residuals } from './residuals.tsx';

/** The points of the calibration in force, and the ones before it. */
export function Versions({ all: { versions } }: { readonly all: ProbeCalibrations }) {
  const [newest, ...earlier] = versions;
  if (newest === undefined) return null;
  return (
    <div>
      <details data-testid="its-points">
        <summary>{calibratingWords.pointsOf}</summary>
        <Points of={newest} />
      </details>
      {earlier.length === 0 ? null : (
        <details data-testid="earlier-calibrations">
          <summary>{calibratingWords.versions}</summary>
          <p class="quiet">{calibrationWords.superseded}</p>
          <ul class="calibration-earlier">
            {earlier.map((one) => (
              <li key={one.calibration.id}>
                <Points of={one} />
              </li>
            ))}
          </ul>
        </details>
      )}
    </div>
  );
}

const Points = ({
  of: { calibration, residualsK, along },
}: {
  readonly of: ProbeCalibrations['versions'][number];
}) => {
  const { version, madeAt, by, correction, points } = calibration;
  return (
    <div class="calibration-step">
      <p>
        {calibratingWords.inForce(version, dayAndTime(madeAt))}
        {by === '' ? '' : `, ${calibratingWords.by(by)}`}: {methodWords[correction.method]}
      </p>
      <Residuals points={points} residualsK={residualsK} along={along} />
      <PointsTable title={calibratingWords.pointsOf} points={points} residualsK={residualsK} drop={null} />
    </div>
  );
};
