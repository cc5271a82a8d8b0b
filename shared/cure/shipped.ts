import type { Cement, DryingStage, DryingStageKind } from './cement.ts';

/** Cements that the program starts with: examples of their kinds, DEMO DATA, none of them a product. */

const STANDING = 'demo value, not from any instructions';
const MINUTE_S = 60;
const HOUR_S = 3600;

const stage = (kind: DryingStageKind, fromS: number, toS: number): DryingStage => ({ kind, fromS, toS });

const example = (own: Pick<Cement, 'id' | 'name' | 'kind' | 'stages' | 'flammable'>): Cement => ({
  ...own,
  version: 1,
  madeAt: '2026-11-25T00:00:00Z',
  atC: 23,
  atRhPct: 50,
  airLimits: { lowC: null, highC: null, lowRhPct: null, highRhPct: null },
  cementLimitC: null,
  energyKJPerMol: null,
  batch: '',
  expiresOn: null,
  source: null,
  standing: STANDING,
  archived: false,
});

export const shippedCements: readonly Cement[] = [
  example({
    id: 'example-water-borne',
    name: 'Example: water-borne fabric cement',
    kind: 'water-borne',
    flammable: false,
    stages: [
      stage('set-to-touch', 20 * MINUTE_S, 30 * MINUTE_S),
      stage('ready-for-iron', HOUR_S, 2 * HOUR_S),
      stage('ready-for-overlay', 2 * HOUR_S, 4 * HOUR_S),
      stage('cured', 24 * HOUR_S, 48 * HOUR_S),
    ],
  }),
  example({
    id: 'example-solvent-borne',
    name: 'Example: solvent-borne fabric cement',
    kind: 'solvent-borne',
    flammable: true,
    stages: [
      stage('set-to-touch', 5 * MINUTE_S, 10 * MINUTE_S),
      stage('ready-for-iron', 30 * MINUTE_S, HOUR_S),
      stage('ready-for-overlay', HOUR_S, 2 * HOUR_S),
      stage('cured', 24 * HOUR_S, 24 * HOUR_S),
    ],
  }),
  example({
    id: 'example-two-part',
    name: 'Example: two-part cement',
    kind: 'two-part',
    flammable: false,
    stages: [
      stage('set-to-touch', HOUR_S, 2 * HOUR_S),
      stage('ready-for-iron', 8 * HOUR_S, 12 * HOUR_S),
      stage('cured', 3 * 24 * HOUR_S, 7 * 24 * HOUR_S),
    ],
  }),
];
