import { browserPortRoutes } from './browser-ports.ts';
import { buttonRoutes } from './button.ts';
import { checkRoutes } from './checks.ts';
import { eventRoutes } from './events.ts';
import { fitRoutes } from './fits.ts';
import { headRecordRoutes } from './head-record.ts';
import { importRoutes } from './imports.ts';
import { instrumentRoutes } from './instrument.ts';
import { ladderRoutes } from './ladders.ts';
import { mixAdviceRoutes } from './mix-advice.ts';
import { mixRoutes } from './mix.ts';
import { pairingRoutes } from './pairing.ts';
import { paletteRoutes } from './palettes.ts';
import { profileRoutes } from './profiles.ts';
import { renewRoutes } from './renew.ts';
import { stateRoutes } from './state.ts';
import { tileRoutes } from './tiles.ts';
import { tubeFactsRoutes } from './tube-facts.ts';
import { tubeRoutes } from './tubes.ts';

/** Every route of the program by name: method, path, what it takes and what it answers. */
export const ROUTES = {
  ...stateRoutes,
  ...eventRoutes,
  ...paletteRoutes,
  ...tubeRoutes,
  ...tubeFactsRoutes,
  ...instrumentRoutes,
  ...headRecordRoutes,
  ...tileRoutes,
  ...browserPortRoutes,
  ...ladderRoutes,
  ...importRoutes,
  ...fitRoutes,
  ...profileRoutes,
  ...renewRoutes,
  ...checkRoutes,
  ...mixRoutes,
  ...mixAdviceRoutes,
  ...pairingRoutes,
  ...buttonRoutes,
} as const;
export type RouteName = keyof typeof ROUTES;
