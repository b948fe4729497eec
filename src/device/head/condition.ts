import { DeviceFault } from '../fault.ts';
import { parseNaturalNumber } from '../framing/number.ts';
import type { Conversation } from '../scpi/ask.ts';
import { say } from '../sentences.ts';

/** What the head says about itself right now: SCPI's two condition registers. */
export interface HeadCondition {
  readonly settling: boolean;
  readonly measuring: boolean;
  readonly waitingForButton: boolean;
  readonly temperatureDoubtful: boolean;
  readonly calibrationDoubtful: boolean;
  readonly saturated: boolean;
  readonly lowSignal: boolean;
  readonly lampUnstable: boolean;
  readonly ambientLight: boolean;
}

const bit = (register: number, n: number): boolean => ((register >> n) & 1) === 1;

export function readCondition(talk: Conversation): Promise<HeadCondition> {
  return talk.ask({
    send: 'STAT:OPER:COND?;:STAT:QUES:COND?',
    read: (answer) => {
      const units = answer.split(';').map((unit) => parseNaturalNumber(unit));
      const [operation, questionable] = units;
      if (units.length !== 2 || operation === undefined || questionable === undefined) {
        throw new DeviceFault('frame', { asked: say('its-condition'), seen: `"${answer.slice(0, 40)}"` });
      }
      return {
        settling: bit(operation, 1),
        measuring: bit(operation, 4),
        waitingForButton: bit(operation, 5),
        temperatureDoubtful: bit(questionable, 4),
        calibrationDoubtful: bit(questionable, 8),
        saturated: bit(questionable, 9),
        lowSignal: bit(questionable, 10),
        lampUnstable: bit(questionable, 11),
        ambientLight: bit(questionable, 12),
      };
    },
  });
}
