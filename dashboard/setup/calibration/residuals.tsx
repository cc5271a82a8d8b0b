import type { CalibrationPoint } from '../../../shared/calibration/calibration.ts';
import { formatTemperatureDifference } from '../../../shared/units/temperature.ts';
import { residualWords } from '../../../shared/words/calibrating.ts';
import { temperature, unit } from '../../parts/unit.ts';
import { type ResidualsShown, residualsLayout } from './residuals-layout.ts';
import './residuals.css';

interface ResidualsProps extends Pick<ResidualsShown, 'residualsK' | 'along'> {
  readonly points: readonly CalibrationPoint[];
}

/** What the correction leaves of each point, drawn within how far it can be trusted; and the same in words. */
export function Residuals({ points, residualsK, along }: ResidualsProps) {
  const drawn = residualsLayout({ readingsC: points.map((p) => p.readingC), residualsK, along });
  const said = inWords(residualsK, along);
  return (
    <figure class="residuals" data-testid="residuals">
      <div class="residuals-frame" role="img" aria-label={said}>
        <svg class="residuals-lines" viewBox="0 0 1 1" preserveAspectRatio="none" aria-hidden="true">
          <path class="residuals-none" d="M0 0.5H1" />
          <path class="residuals-band" d={pathOf(drawn.upper)} />
          <path class="residuals-band" d={pathOf(drawn.lower)} />
        </svg>
        <span class="residuals-edge residuals-edge--over">+{by(drawn.tallK)}</span>
        <span class="residuals-edge residuals-edge--under">−{by(drawn.tallK)}</span>
        {drawn.points.map(({ x, y }, i) => (
          <span
            key={points[i]?.takenAt}
            class="residuals-point"
            style={{ insetInlineStart: `${100 * x}%`, insetBlockStart: `${100 * y}%` }}
          >
            {i + 1}
          </span>
        ))}
      </div>
      <p class="residuals-ends" aria-hidden="true">
        <span>{temperature(drawn.fromC)}</span>
        <span>{residualWords.across}</span>
        <span>{temperature(drawn.toC)}</span>
      </p>
      <figcaption>{said}</figcaption>
    </figure>
  );
}

const pathOf = (places: readonly { readonly x: number; readonly y: number }[]): string =>
  places.map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x} ${y}`).join('');

const by = (k: number): string => formatTemperatureDifference(k, unit.value, 1);

/** The drawing in sentences: which point lies furthest off, and how wide the band is. */
function inWords(residualsK: readonly number[], along: ResidualsShown['along']): string {
  const bandsK = along.map((a) => a.bandK);
  const band = residualWords.band(by(Math.min(...bandsK)), by(Math.max(...bandsK)));
  if (residualsK.length < 3) return `${residualWords.exact(residualsK.length)} ${band}`;
  const sizesK = residualsK.map(Math.abs);
  const mostK = Math.max(...sizesK);
  return `${residualWords.furthest(sizesK.indexOf(mostK) + 1, by(mostK))} ${band}`;
}
