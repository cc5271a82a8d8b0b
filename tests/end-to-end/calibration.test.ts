import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { probeCalibrationsSchema } from '../../shared/messages/calibration.ts';
import { cToF } from '../../shared/units/temperature.ts';
import { type Api, refusalOf } from './support/api.ts';
import { Board } from './support/board.ts';
import { freshFolder } from './support/folder.ts';
import { expectNothingInTheWay } from './support/in-the-way.ts';
import { launchBrowser, openPage, part, plateNumber } from './support/page.ts';
import { type Program, startProgram } from './support/program.ts';
import { shooting } from './support/shots.ts';
import { until } from './support/until.ts';

let browser: Browser;
beforeAll(async () => {
  browser = await launchBrowser();
});
afterAll(() => browser.close());

interface Bench {
  readonly program: Program;
  readonly board: Board;
  /** Address of the probe's calibrations in the API. */
  readonly path: string;
}

async function begin(plateC: number): Promise<Bench> {
  const folder = freshFolder();
  const board = new Board(join(folder, 'port'), { plateC });
  await board.plug();
  const program = await startProgram({ data: join(folder, 'data'), args: ['--serial', board.path] });
  const probe = await until('the probe is heard', () => program.api.probe());
  return { program, board, path: `/api/probes/${encodeURIComponent(probe.id)}/calibrations` };
}

async function toProbe(page: Page): Promise<void> {
  await page.getByRole('link', { name: 'Setup' }).click();
  await page.getByRole('link', { name: 'Irons and probes' }).click();
  await part(page, 'calibrate').waitFor();
}

const button = (page: Page, name: string | RegExp) => page.getByRole('button', { name, exact: true });

/** A window of steady readings, and some. */
const STEADY_WITHIN_MS = 60_000;

const untilSteady = (page: Page): Promise<void> =>
  part(page, 'waiting-state')
    .getByText('Steady: this point can be kept.')
    .waitFor({ timeout: STEADY_WITHIN_MS });

/** A plate that is brought up so fast heads for the limit, and is told so. */
async function acknowledgeAll(api: Api): Promise<void> {
  for (const { iron, kind, probe } of (await api.live()).alarms)
    await api.post('/api/alarms/acknowledge', { iron, kind, probe });
}

const shoot = shooting('cal', 'calibration');

const shows = (page: Page) => page.getByLabel('The thermometer shows');

describe('a fitted probe', () => {
  it('is compared at two working temperatures: from the first tap to the corrected number with the smaller ±', async () => {
    const { program, board, path } = await begin(130);
    const page = await openPage(browser, program.address);
    await plateNumber(page, 'uncorrected', (f) => Math.abs(f - cToF(130)) <= 1);
    const before = await program.api.probe();
    expect(before?.measured).toBe(false);
    await toProbe(page);
    await part(page, 'in-force').getByText('Not calibrated').waitFor();
    await shoot(page, 'none');
    await part(page, 'calibrate').click();
    await part(page, 'water-caution').getByText('A mains iron and water never meet.').waitFor();
    await shoot(page, 'caution');
    await part(page, 'begin-fitted').click();
    await part(page, 'wait-contact').waitFor();
    expect(await part(page, 'wait-ice').count()).toBe(0);
    const wet = await program.api.post(`${path}/wait`, { kind: 'ice' });
    expect([wet.status, refusalOf(wet)]).toEqual([422, expect.stringContaining('never meet')]);
    await shoot(page, 'begun');
    await part(page, 'wait-contact').click();
    // What was pressed is gone: whoever has no mouse goes on from here.
    await expect.poll(() => page.evaluate(() => document.activeElement?.textContent)).toBe('Calibrating');

    await shows(page).fill('hot');
    await part(page, 'keep-point').click();
    await page.getByText('Write a number, for example 350').waitFor();
    // 133 degC, with a decimal comma.
    await shows(page).fill('271,4');
    await page.getByLabel('Its accuracy ±').fill('2');
    await page.getByLabel('Which thermometer').fill('bench thermometer 7');
    await part(page, 'keep-point').click();
    await part(page, 'calibration-why')
      .getByText(/has held for \d+ of 20 seconds/)
      .waitFor();
    await shoot(page, 'waiting');

    await page.reload();
    await part(page, 'waiting').waitFor();
    expect(await shows(page).inputValue()).toBe('271,4');
    expect(await page.getByLabel('Which thermometer').inputValue()).toBe('bench thermometer 7');
    await untilSteady(page);
    await expectNothingInTheWay(page);
    await shoot(page, 'steady');
    await part(page, 'keep-point').click();
    await part(page, 'outcome').getByText('an offset, from one point').waitFor();
    await shoot(page, 'one-point');

    await part(page, 'wait-contact').click();
    await board.bring(165);
    expect(await shows(page).inputValue()).toBe('');
    // 169 degC.
    await shows(page).fill('336.2');
    await untilSteady(page);
    await acknowledgeAll(program.api);
    await part(page, 'keep-point').click();
    await part(page, 'outcome').getByText('a straight line through two points').waitFor();
    await part(page, 'residuals').getByText('Two points are met exactly').waitFor();
    await page.getByLabel('Who made it').fill('A. Tester');
    await expectNothingInTheWay(page);
    await shoot(page, 'two-points');
    await part(page, 'save-calibration').click();
    await part(page, 'said').getByText('Calibration 1 is in force now.').waitFor();
    await part(page, 'in-force').getByText('A. Tester').waitFor();
    await shoot(page, 'in-force');
    await expectNothingInTheWay(page);

    await page.getByRole('link', { name: 'Iron', exact: true }).click();
    await plateNumber(page, 'corrected to 169 °C', (f) => Math.abs(f - cToF(169)) <= 1);
    const after = await program.api.probe();
    expect(after?.measured).toBe(true);
    expect(after?.guardBandK).toBeLessThan(before?.guardBandK ?? 0);
    await part(page, 'trust')
      .getByText(/^Why ±/)
      .click();
    await part(page, 'trust').getByText('it was compared in place').waitFor();
    await part(page, 'trust').getByText('JCGM 100:2008').waitFor();
    await shoot(page, 'trust', 'trust');
    await expectNothingInTheWay(page);

    await page.getByRole('link', { name: 'Records' }).click();
    const session = await until('a session is recorded', () => program.api.running());
    await page.goto(`${program.address}#records/${session}`);
    await part(page, 'probe-fact')
      .getByText(/calibration 1, made /)
      .waitFor();
    await part(page, 'probe-fact').getByText('not calibrated').waitFor();
  }, 240_000);
});

describe('a loose probe', () => {
  it('is taken to ice and boiling water by altitude; given up, nothing that was saved is lost', async () => {
    const { program, board, path } = await begin(0.6);
    const page = await openPage(browser, program.address);
    await toProbe(page);
    await part(page, 'calibrate').click();
    await part(page, 'begin-loose').click();
    await part(page, 'wait-ice').click();
    await untilSteady(page);
    await shoot(page, 'ice');
    await part(page, 'keep-point').click();
    await part(page, 'points').waitFor();
    await part(page, 'wait-boiling').click();
    await board.bring(95.6);
    await untilSteady(page);
    await acknowledgeAll(program.api);
    await part(page, 'keep-point').click();
    await part(page, 'calibration-why').getByText('Where water boils depends on the air pressure.').waitFor();
    await page.getByLabel('Altitude here', { exact: true }).fill('1500');
    await button(page, 'm').click();
    await shoot(page, 'boiling');
    await expectNothingInTheWay(page);
    await part(page, 'keep-point').click();
    await part(page, 'outcome').getByText('a straight line through two points').waitFor();
    await part(page, 'save-calibration').click();
    await part(page, 'in-force').getByText('Calibration 1').waitFor();
    // By ISO 2533 and IAPWS-IF97 water boils at 95.0 degC there.
    await until('the reading is corrected', async () => {
      const probe = await program.api.probe();
      return Math.abs((probe?.plateC ?? 0) - 95) < 0.3;
    });

    await part(page, 'calibrate').click();
    await part(page, 'begin-loose').click();
    await part(page, 'wait-boiling').click();
    await part(page, 'leave-point').click();
    await part(page, 'give-up').click();
    await part(page, 'in-force').getByText('Calibration 1').waitFor();
    const answer = await fetch(program.address + path);
    const { versions, procedure } = probeCalibrationsSchema.parse(await answer.json());
    expect([versions.length, procedure]).toEqual([1, null]);
    expect(versions[0]?.calibration.points.map(({ kind, altitudeM }) => [kind, altitudeM])).toEqual([
      ['ice', null],
      ['boiling', 1500],
    ]);
  }, 180_000);
});

describe('a calibration of three points', () => {
  it('is drawn with what it leaves of each; past its due date, Setup and the Iron view say so', async () => {
    const { program, board, path } = await begin(130);
    const page = await openPage(browser, program.address);
    await toProbe(page);
    const step = async (name: string, body: unknown): Promise<void> => {
      const answer = await program.api.post(`${path}/${name}`, body);
      if (answer.status !== 200) throw new Error(refusalOf(answer));
    };
    // The page may still show what was steady a moment ago.
    const isSteady = async (): Promise<boolean> => {
      const answer = await fetch(program.address + path);
      return probeCalibrationsSchema.parse(await answer.json()).procedure?.waiting?.steady === true;
    };
    await part(page, 'calibrate').click();
    await part(page, 'begin-fitted').click();
    await part(page, 'wait-contact').waitFor();
    for (const [readC, plateC] of [
      [130, 133],
      [150, 153.8],
      [165, 168],
    ] as const) {
      await board.bring(readC);
      await step('wait', { kind: 'contact' });
      await until('the reading is steady', isSteady, STEADY_WITHIN_MS);
      await acknowledgeAll(program.api);
      const stated = { k: 2, as: 'limits' };
      await step('keep', { kind: 'contact', plateC, stated, instrument: 'bench thermometer 7' });
    }
    await part(page, 'residuals')
      .getByText(/Point 2 lies furthest off: by (0.9|1.0) °F/)
      .waitFor();
    expect(await part(page, 'residuals').getByRole('img').getAttribute('aria-label')).toContain(
      'The dashed lines',
    );
    await shoot(page, 'three-points', 'residuals');
    await expectNothingInTheWay(page);
    // Due in a moment: what follows comes later.
    const dueUtcMs = Date.now() + 3000;
    await step('save', { by: 'A. Tester', dueUtcMs });
    await part(page, 'in-force').getByText('A. Tester').waitFor();
    expect(await part(page, 'calibration-due').count()).toBe(0);
    await until('its due date has passed', () => Date.now() > dueUtcMs);
    await page.reload();
    await part(page, 'in-force').getByText('This calibration was due on').waitFor();
    await part(page, 'its-points').locator('summary').click();
    await part(page, 'its-points').getByText('Point 2 lies furthest off').waitFor();
    await shoot(page, 'due');
    await expectNothingInTheWay(page);
    await page.getByRole('link', { name: 'Iron', exact: true }).click();
    const why = part(page, 'trust').getByText('calibration past its date');
    await why.waitFor();
    await why.click();
    await part(page, 'calibration-due').getByText('It still counts; make a new one when you can').waitFor();
    await shoot(page, 'due-trust', 'trust');
    await expectNothingInTheWay(page);
  }, 240_000);
});
