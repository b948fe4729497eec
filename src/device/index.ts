/**
 * The device room's public surface. `connectHead(transport, clock)` gives a typed head; transports are the serial
 * port (serial/), WebSerial (webserial/) and the practice instrument (practice/). Raw counts only: no calibration.
 */
export type { Clock, Cancel } from './clock.ts';
export type { ByteLink, LineTransport } from './transport.ts';
export { DeviceFault, FAULT_KINDS, isDeviceFault } from './fault.ts';
export type { FaultDetails, FaultKind } from './fault.ts';
export { connectHead } from './head/connect.ts';
export type { ConnectOptions } from './head/connect.ts';
export { Head } from './head/head.ts';
export { HeadLink } from './head/head-link.ts';
export type { LinkOptions, LinkState, WantedHead } from './head/head-link.ts';
export type { HeadCondition } from './head/condition.ts';
export type { ButtonReading, HeadEvents } from './head/events.ts';
export type { HeadGeometry, HeadKind } from './head/handshake.ts';
export type { HeadIdentity } from './head/identity.ts';
export type { Channel, ChannelResponse } from './head/channels.ts';
export type { HeadReading } from './head/reading.ts';
export type { HeadLimits, HeadSettings, WantedSettings } from './head/settings.ts';
export type { TristimulusReading } from './head/tristimulus.ts';
export { LineLink } from './framing/line-link.ts';
export { PracticeHead, practiceHead } from './practice/practice-head.ts';
export { PracticeInstrument } from './practice/practice-instrument.ts';
export type { PracticeOptions } from './practice/practice-instrument.ts';
export type { PracticeTraits } from './practice/light.ts';
export type { PracticeVariant } from './practice/sensor.ts';
export type { PracticeSurface } from './practice/surfaces.ts';
export { PRACTICE_BLACK_TRAP, PRACTICE_CHECK_TILE, PRACTICE_WHITE_TILE } from './practice/surfaces.ts';
