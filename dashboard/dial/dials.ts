import { type IronDial, ironDialSchema } from '../../shared/messages/dial.ts';
import { byIron } from '../link/by-iron.ts';

/** What is charted of irons' dials, by iron. */
const dials = byIron<IronDial>((iron) => `/api/irons/${encodeURIComponent(iron)}/dial`, ironDialSchema);

export const dialPath = dials.path;
export const takeDial = dials.take;
export const useDial = dials.use;
