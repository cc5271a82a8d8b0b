import { type Clock, monotonicClock, SteppedClock } from '../../../daemon/clock.ts';
import { simulatedSource } from '../../../daemon/probe/simulated/source.ts';
import { type SourceUnderTest, sourceContract } from '../../source-contract.ts';

const make = (clock: Clock, speed: number) => async (): Promise<SourceUnderTest> => ({
  source: simulatedSource({ clock, speed }),
  yieldUntil: async (enough) => {
    while (!enough()) await new Promise((resolve) => setTimeout(resolve, 5));
  },
});

sourceContract('the simulated iron by the clock', () => make(monotonicClock(), 1)());
sourceContract('the simulated iron at 100 times the speed', () => make(new SteppedClock(), 100)());
