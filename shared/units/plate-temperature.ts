import { z } from 'zod';
import { ABSOLUTE_ZERO_C } from './temperature.ts';

/** A temperature in degC that a plate or a limit can have; above 400 degC polyester is long gone. */
export const plateTemperatureC = z.number().min(ABSOLUTE_ZERO_C).max(400);
