/**
 * The ear is told as well as the eye: a tone for kept and for sent back, and the step said aloud. Both are off until
 * chosen, and nothing depends on them.
 */
import { settings } from './settings.ts';

export type Sound = 'kept' | 'sent back' | 'full';

/** Hertz, and when each begins, s. Two octaves apart from a room's hum; told apart by number and direction. */
const TONES: Readonly<Record<Sound, readonly (readonly [hertz: number, start: number])[]>> = {
  kept: [[880, 0]],
  'sent back': [
    [262, 0],
    [262, 0.16],
  ],
  full: [
    [660, 0],
    [990, 0.14],
  ],
};

let audio: AudioContext | undefined;

/** Sounds a tone, if tones are on. A browser without sound stays silent. */
export function sound(which: Sound): void {
  if (!settings().tone || typeof AudioContext === 'undefined') return;
  audio ??= new AudioContext();
  const now = audio.currentTime + 0.01;
  for (const [hertz, start] of TONES[which]) {
    const tone = audio.createOscillator();
    const loud = audio.createGain();
    tone.frequency.value = hertz;
    loud.gain.setValueAtTime(0, now + start);
    loud.gain.linearRampToValueAtTime(0.2, now + start + 0.01);
    loud.gain.linearRampToValueAtTime(0, now + start + 0.13);
    tone.connect(loud).connect(audio.destination);
    tone.start(now + start);
    tone.stop(now + start + 0.14);
  }
}

/** Says something aloud, if speech is on; what was being said before is cut short. */
export function speak(text: string): void {
  if (!settings().speech || !('speechSynthesis' in window) || !text) return;
  speechSynthesis.cancel();
  const said = new SpeechSynthesisUtterance(text);
  said.lang = settings().language;
  speechSynthesis.speak(said);
}
