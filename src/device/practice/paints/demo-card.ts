/**
 * The card under the demo drawdowns: INVENTED, like the paints. Reflectances are internal, as the film sees them; a
 * head sees the bare card through its sealing coat (`bareCardReflectance`).
 */
import { below, drawn, flat } from './shapes.ts';

export const DEMO_CARD_BLACK = drawn(flat(0.02));
export const DEMO_CARD_WHITE = drawn(flat(0.915), below(-0.12, 405, 9));
