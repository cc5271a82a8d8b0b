import { type IronEvenness, ironEvennessSchema } from '../../shared/messages/evenness.ts';
import { byIron } from '../link/by-iron.ts';

/** What is known of how evenly irons' plates are hot, by iron. */
const evennesses = byIron<IronEvenness>(
  (iron) => `/api/irons/${encodeURIComponent(iron)}/evenness`,
  ironEvennessSchema,
);

export const evennessPath = evennesses.path;
export const takeEvenness = evennesses.take;
export const useEvenness = evennesses.use;
