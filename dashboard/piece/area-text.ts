import type { PieceHeat } from '../../shared/messages/piece.ts';
import type { Area } from '../../shared/piece/piece.ts';
import { areaKindWords, areaWords } from '../../shared/words/pieces.ts';
import { temperature } from '../parts/unit.ts';

export type AreaHeatAnswer = PieceHeat['areas'][string];

/** What marks an area out on the drawing. */
export interface AreaMarks {
  readonly isHere: boolean;
  readonly isNext: boolean;
}

/** An area in words, for those who don't see its hatching, and for what is too small to be written in. */
export function areaText(
  area: Area,
  heat: AreaHeatAnswer | undefined,
  { isHere, isNext }: AreaMarks,
): string {
  const reached = heat?.reached ?? null;
  const parts = [
    area.name,
    areaKindWords[area.kind],
    reached === null ? areaWords.none : reached.name,
    heat?.presumed === true ? areaWords.presumed : '',
    heat === undefined || heat.laps === 0 ? '' : areaWords.laps(Math.round(heat.laps)),
    heat === undefined || heat.peakC === null ? '' : areaWords.peak(temperature(heat.peakC)),
    isHere ? areaWords.hereFull : '',
    isNext ? areaWords.nextFull : '',
  ];
  return parts.filter((part) => part !== '').join(', ');
}
