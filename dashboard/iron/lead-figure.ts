import { figureOf } from './figure.tsx';
import { lead } from './irons.ts';

/** The plate temperature of the iron that stands large. */
export const leadFigure = figureOf(lead);
