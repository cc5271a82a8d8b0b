/** Where the iron is, as far as the user said. `off-work`: lifted off it, and not on its rest. */
export const places = ['unknown', 'on-work', 'off-work', 'on-rest'] as const;
export type Place = (typeof places)[number];
