import './hatch.css';

/** State is carried by hatching: one pattern a meaning, drawn once and used everywhere by its name. */

export const hatches = [
  /** A stage's band. */
  'band',
  /** The band of the stage being worked. */
  'working',
  /** Beyond the fabric limit. */
  'beyond',
  /** The allowance under a limit. */
  'allowance',
  /** Priorities of alarms: 3 act now, 2 act soon, 1 know. */
  'act-now',
  'act-soon',
  'know',
  /** Simulated, not real. */
  'simulated',
  /** Something is missing: no reading, not kept. */
  'missing',
  /** Stages reached, the hotter the denser. */
  'stage-1',
  'stage-2',
  'stage-3',
  'stage-4',
  /** Wet cement, and a coat that dries. */
  'wet',
  /** A coat that may be ready, one whose latest time is past, one that nothing dries in this air. */
  'coat-may-be-ready',
  'coat-due',
  'coat-stands',
] as const;
export type HatchName = (typeof hatches)[number];

/** A square of `size` with strokes; lines run past its edges so that tiles join. */
interface Tile {
  readonly size: number;
  readonly path: string;
}

export const tiles: Readonly<Record<HatchName, Tile>> = {
  band: { size: 10, path: 'M-2 12 L12 -2 M-2 2 L2 -2 M8 12 L12 8' },
  working: { size: 6, path: 'M-2 8 L8 -2 M-2 2 L2 -2 M4 8 L8 4' },
  beyond: { size: 8, path: 'M-2 10 L10 -2 M-2 2 L2 -2 M6 10 L10 6 M-2 -2 L10 10 M6 -2 L10 2 M-2 6 L2 10' },
  allowance: { size: 8, path: 'M4 -1 V9' },
  'act-now': { size: 24, path: 'M-6 30 L30 -6 M-6 6 L6 -6 M18 30 L30 18' },
  'act-soon': { size: 16, path: 'M-4 20 L20 -4 M-4 4 L4 -4 M12 20 L20 12' },
  know: { size: 12, path: 'M-1 6 H13' },
  simulated: { size: 28, path: 'M-7 -7 L35 35 M-7 21 L7 35 M21 -7 L35 7' },
  missing: { size: 14, path: 'M7 3 V11 M3 7 H11' },
  'stage-1': { size: 20, path: 'M-5 25 L25 -5 M-5 5 L5 -5 M15 25 L25 15' },
  'stage-2': { size: 9, path: 'M-2 11 L11 -2 M-2 2 L2 -2 M7 11 L11 7' },
  'stage-3': { size: 9, path: 'M-2 11 L11 -2 M-2 2 L2 -2 M7 11 L11 7 M-2 -2 L11 11 M7 -2 L11 2 M-2 7 L2 11' },
  wet: { size: 20, path: 'M-5 5 Q0 1 5 5 T15 5 T25 5 M-10 15 Q-5 11 0 15 T10 15 T20 15 T30 15' },
  'coat-may-be-ready': { size: 16, path: 'M4 1 V9 M12 9 V17 M12 -7 V1' },
  'coat-due': { size: 12, path: 'M3 -1 V13 M9 2 V8' },
  'coat-stands': { size: 16, path: 'M-1 5 H17 M-1 11 H17' },
  'stage-4': { size: 5, path: 'M-1 6 L6 -1 M-1 1 L1 -1 M4 6 L6 4 M-1 -1 L6 6 M4 -1 L6 1 M-1 4 L1 6' },
};

/** The patterns themselves; stands once on the page, takes no room. */
export const HatchPatterns = () => (
  <svg class="hatch-patterns" aria-hidden="true" focusable="false">
    <defs>
      {hatches.map((name) => {
        const { size, path } = tiles[name];
        return (
          <pattern key={name} id={`hatch-${name}`} width={size} height={size} patternUnits="userSpaceOnUse">
            <path class={`hatch-lines hatch-lines--${name}`} d={path} />
          </pattern>
        );
      })}
    </defs>
  </svg>
);

export const hatchFill = (name: HatchName): string => `url(#hatch-${name})`;

/** Fills its positioned parent with a hatching. */
export const Hatch = ({ name }: { readonly name: HatchName }) => (
  <svg class="hatch" aria-hidden="true" focusable="false">
    <rect width="100%" height="100%" fill={hatchFill(name)} />
  </svg>
);
