import type { Desk } from '../desk.ts';
import { calibrationRoutes } from './calibrations.ts';
import { commandRoutes } from './commands.ts';
import { cureRoutes } from './cure.ts';
import { deviceRoutes } from './devices.ts';
import { dialRoutes } from './dial.ts';
import { evennessRoutes } from './evenness.ts';
import { itemRoutes } from './items.ts';
import { lagRoutes } from './lag.ts';
import { motionRoutes } from './motion.ts';
import { pieceRoutes } from './pieces.ts';
import { placeRoutes } from './places.ts';
import type { Route } from './route.ts';
import { sessionRoutes } from './sessions.ts';
import { settingsRoutes } from './settings.ts';
import { type Program, statusRoutes } from './status.ts';
import { traceRoutes } from './trace.ts';
import { unattendedRoutes } from './unattended.ts';

/** Every address of the program but those of the page. */
export const routeTable = (desk: Desk, program: Program): Route[] => [
  ...statusRoutes(desk, program),
  ...sessionRoutes(desk.reader),
  ...traceRoutes(desk.reader),
  ...itemRoutes(desk),
  ...commandRoutes(desk),
  ...settingsRoutes(desk),
  ...deviceRoutes(desk),
  ...calibrationRoutes(desk),
  ...lagRoutes(desk),
  ...motionRoutes(desk),
  ...dialRoutes(desk),
  ...evennessRoutes(desk),
  ...placeRoutes(desk),
  ...pieceRoutes(desk),
  ...unattendedRoutes(desk),
  ...cureRoutes(desk),
];
