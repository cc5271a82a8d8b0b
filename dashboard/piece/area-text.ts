import type { PieceHeat } from '../../shared/messages/piece.ts';
import type { Area } from '../../shared/piece/piece.ts';
import { areaKindWords, areaWords } from '../../shared/words/pieces.ts';
import { temperature } from '../parts/unit.ts';

export type AreaHeatAnswer = PieceHeat['areas'][string];

/** What marks an area out on the drawing. */
export interface AreaMarks {
  readonly isHere: boolean;
  readonly isNext: boolean;
  /** Where cement on it is wet. */
  readonly wet?: WetMark | undefined;
}

/** Wet cement on an area, as written on it and in full. */
export interface WetMark {
  readonly short: string;
  readonly full: string;
}

/**
 * An area in words, for those who don't see its hatching, and for what is too small to be written in. It begins with what
 * is written in it, so that it can be called by that.
 */
export function areaText(
  area: Area,
  heat: AreaHeatAnswer | undefined,
  level: number,
  marks: AreaMarks,
): string {
  const written = [
    marks.isHere ? areaWords.here : marks.isNext ? areaWords.next : '',
    marks.wet?.short ?? '',
    area.name,
    level === 0 ? '' : `${level} ${heat?.reached?.name ?? ''}`,
  ];
  const parts = [
    written.filter((word) => word !== '').join(' '),
    level === 0 ? areaWords.none : '',
    heat?.presumed === true ? areaWords.presumed : '',
    marks.wet?.full ?? '',
    areaKindWords[area.kind],
    heat === undefined || heat.laps === 0 ? '' : areaWords.laps(Math.round(heat.laps)),
    heat === undefined || heat.peakC === null ? '' : areaWords.peak(temperature(heat.peakC)),
    marks.isHere ? areaWords.hereFull : '',
    marks.isNext ? areaWords.nextFull : '',
  ];
  return parts.filter((part) => part !== '').join(', ');
}
