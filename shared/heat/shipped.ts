import { fToC } from '../units/temperature.ts';
import type { HeatSchedule, HeatStage } from './schedule.ts';

/**
 * The schedule that the program starts with: a starting point, unconfirmed until the user enters the manual and page.
 * FAA-H-8083-31 vol. 1 ch. 3 gives stages typically from 225 to 350 degF.
 */
const stage = (id: string, name: string, targetF: number, standing: string): HeatStage => ({
  id,
  name,
  lowC: fToC(targetF - 15),
  targetC: fToC(targetF),
  highC: fToC(targetF + 15),
  standing: `${standing}; the band of 15 °F to either side is our own starting point`,
});

export const shippedSchedule: HeatSchedule = {
  id: 'shipped',
  version: 1,
  madeAt: '2026-11-25T00:00:00Z',
  name: 'Starting point: polyester fabric',
  fabric: 'heat-shrink polyester fabric',
  stages: [
    stage('tack', 'tack', 250, 'common practice, no source'),
    stage('initial', 'initial shrink', 250, 'common practice, no source'),
    stage(
      'intermediate',
      'intermediate shrink',
      300,
      'FAA-H-8083-31 vol. 1 ch. 3: stages typically 225 to 350 °F',
    ),
    stage('final', 'final shrink', 350, 'FAA-H-8083-31 vol. 1 ch. 3: stages typically 225 to 350 °F'),
    stage('tape', 'tape smoothing', 250, 'common practice, no source'),
  ],
  fabricLimitC: fToC(375),
  cementLimitC: null,
  limitStanding: 'from memory: set it from your process manual',
  source: null,
};
