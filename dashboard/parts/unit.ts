import { signal } from '@preact/signals';
import {
  formatTemperature,
  formatTemperatureDifference,
  type TemperatureUnit,
  temperatureFigure,
} from '../../shared/units/temperature.ts';
import { keep } from './browser.ts';

/** The unit in which the page shows temperatures, as last chosen in this browser. */

const NAME = 'unit';

export const unit = signal<TemperatureUnit>(keep.read(NAME) === 'C' ? 'C' : 'F');
/** False once this browser has refused to keep the choice. */
export const unitKept = signal(!keep.refused);

export function chooseUnit(chosen: TemperatureUnit): void {
  unit.value = chosen;
  unitKept.value = keep.write(NAME, chosen);
}

export const figure = (c: number): string => temperatureFigure(c, unit.value);
export const temperature = (c: number): string => formatTemperature(c, unit.value);
export const difference = (k: number): string => formatTemperatureDifference(k, unit.value);
