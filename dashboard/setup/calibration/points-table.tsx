import type { CalibrationPoint } from '../../../shared/calibration/calibration.ts';
import { formatTemperatureDifference, temperatureFigure } from '../../../shared/units/temperature.ts';
import { calibratingWords } from '../../../shared/words/calibrating.ts';
import { pointWords } from '../../../shared/words/calibration.ts';
import { Target } from '../../parts/target.tsx';
import { unit } from '../../parts/unit.ts';

interface PointsTableProps {
  readonly title: string;
  readonly points: readonly CalibrationPoint[];
  /** Null while the points give nothing. */
  readonly residualsK: readonly number[] | null;
  /** Null where they can't be changed any more. */
  readonly drop: ((place: number) => void) | null;
}

/** The points one by one: what each is, what was read there, and what the correction leaves of the difference. */
export const PointsTable = ({ title, points, residualsK, drop }: PointsTableProps) => (
  <div class="calibration-step" data-testid="points">
    <table class="calibration-table">
      <caption>{title}</caption>
      <thead>
        <tr>
          <th scope="col">{calibratingWords.point}</th>
          <th scope="col">
            {calibratingWords.reference} °{unit.value}
          </th>
          <th scope="col">
            {calibratingWords.read} °{unit.value}
          </th>
          <th scope="col">{calibratingWords.leftOver}</th>
        </tr>
      </thead>
      <tbody>
        {points.map((point, i) => (
          <tr key={point.takenAt}>
            <th scope="row">{i + 1}</th>
            <td>{temperatureFigure(point.referenceC, unit.value, 1)}</td>
            <td>{temperatureFigure(point.readingC, unit.value, 1)}</td>
            <td>{leftOver(residualsK?.[i] ?? null)}</td>
          </tr>
        ))}
      </tbody>
    </table>
    <ol class="calibration-how">
      {points.map((point) => (
        <li key={point.takenAt}>
          {pointWords[point.kind].name}
          {point.instrument === '' ? '' : `, ${point.instrument}`}
        </li>
      ))}
    </ol>
    <p class="quiet">{calibratingWords.leftOverMeans}</p>
    {drop === null ? null : (
      <div class="choice-row">
        {points.map((point, i) => (
          <Target key={point.takenAt} onPress={() => drop(i)}>
            {calibratingWords.dropPoint(i + 1)}
          </Target>
        ))}
      </div>
    )}
  </div>
);

function leftOver(k: number | null): string {
  if (k === null) return '–';
  const text = formatTemperatureDifference(k, unit.value, 1);
  return k > 0 && !text.startsWith('0.0 ') ? `+${text}` : text;
}
