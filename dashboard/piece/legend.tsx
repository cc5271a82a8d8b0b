import type { HeatSchedule } from '../../shared/heat/schedule.ts';
import { pieceCoatWords } from '../../shared/words/coats.ts';
import { areaWords, legendWords, pieceWords } from '../../shared/words/pieces.ts';
import { Hatch } from '../parts/hatch.tsx';
import { Opening } from '../parts/opening.tsx';
import { levelHatch, levelsOf } from './levels.ts';

/** What hatchings, frames and words on the sheets mean. */
export const Legend = ({ schedule }: { readonly schedule: HeatSchedule }) => (
  <Opening summary={pieceWords.legend} testId="legend">
    {() => (
      <>
        <dl class="legend">
          <Sample class="" means={legendWords.none} />
          {levelsOf(schedule).map(({ number, stages }) => (
            <Sample
              key={number}
              class=""
              level={number}
              means={legendWords.level(number, stages.join(', '))}
            />
          ))}
          <Sample class="area--presumed" word={areaWords.presumedShort} means={legendWords.presumed} />
          <Sample class="area--bonded" means={legendWords.bonded} />
          <Sample class="" wet word={pieceCoatWords.wet} means={pieceCoatWords.legend} />
          <Sample class="area--here" word={areaWords.here} means={legendWords.here} />
          <Sample class="area--next" word={areaWords.next} means={legendWords.next} />
        </dl>
        <p>{areaWords.keys}</p>
      </>
    )}
  </Opening>
);

interface SampleProps {
  readonly class: string;
  readonly means: string;
  readonly level?: number;
  readonly word?: string;
  readonly wet?: boolean;
}

function Sample({ class: name, means, level = 0, word, wet = false }: SampleProps) {
  const hatch = wet ? 'wet' : levelHatch(level);
  return (
    <>
      <dt class={`legend-sample ${name}`}>
        {hatch === null ? null : <Hatch name={hatch} />}
        {level === 0 && word === undefined ? null : <span class="area-stage">{word ?? level}</span>}
      </dt>
      <dd>{means}</dd>
    </>
  );
}
