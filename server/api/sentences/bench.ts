/** What the bench answers where something asked for is not there, or not allowed. */
import { type Say, catalogue } from '../../../src/sentence/catalogue.ts';

export const BENCH = catalogue('bench', {
  'no-route': 'There is no {request}; /api/openapi.json lists what there is.',
  'nothing-at': 'There is nothing at {path}; open the first page at /.',
  failed: 'The program failed at this; nothing you measured is lost, and the log has the details.',
  'answers-to': 'The bench answers to {names:list} alone; open the address that the program printed.',
  'another-site': 'Another site may not use the bench; open the address that the program printed.',
  'search-too-long': 'The search took longer than two minutes and was stopped; name fewer tubes with "only".',
  stopping: 'The program is stopping.',
  'worker-failed': 'The mixing worker failed at this request.',
  'pages-not-built':
    'The pages are not built; stop the program, run "npm start" in the project folder and open this address again.',
  'not-paired':
    'This phone is not paired with the bench; ask the computer for a code, under "This screen", and open the address beside it.',
  'computer-alone': 'Phones are let in and let go on the computer alone.',
  'pages-not-built-pair':
    'The pages are not built; stop the program, run "npm start -- --pair" in the project folder and try again.',
  'wrong-code': 'That is not the code on the computer; look again and type it once more.',
  'five-tries': 'Five wrong tries ended that code; ask the computer for a new one.',
  'code-over': 'That code was good for five minutes and they are over; ask the computer for a new one.',
  'no-code':
    'The computer shows no code now; ask it for one first, under "This screen". A code opens only once.',
  'no-phone': 'There is no paired phone "{id}"; it was let go already.',
  'pairing-off': 'Pairing is off; stop the program and start it with "npm start -- --pair".',
  'computer-itself': 'This is the computer itself; open the address beside the code on the phone.',
  'percent-code': 'The address holds a broken percent code; mend it.',
  'not-as-described': 'not as described',
  'not-as-described-at':
    'The {what:word}{place:said} cannot be taken: {why:said}; see /api/openapi.json for what is allowed.',
  'not-as-described-more':
    'The {what:word}{place:said} cannot be taken: {why:said} (and {count:figure} more); see /api/openapi.json for what is allowed.',
  'at-place': '\'s "{place}"',
  'body-large': 'The body is larger than this request may be; send a smaller file.',
  'body-not-json': 'The body is not JSON; send a JSON document.',
  'body-encoding': 'The body is in an encoding this program does not read; send UTF-8.',
  'body-unreadable': 'The body cannot be read; send it again.',
  'fit-not-running': 'This fit is not running, so there is nothing to stop.',
  'no-palette-yet': 'There is no palette yet; begin one on the Rack.',
  'no-palette': 'There is no palette "{id}"; choose one on the Rack.',
  alone: '{tube} is {status:word}.',
  'tubes-compared': '{both} tubes in both, {gone} gone, {added} new.',
  'no-profile': 'There is no profile "{id}"; choose one on the Profile screen.',
  'no-constants': 'This palette has no constants yet; measure its ladders and fit them, or import a profile.',
  'tube-of-other': '"{id}" is a tube of another palette on this bench; give the new tube another id.',
  'not-a-set': '"{file}" is a palette profile; a swatch set is needed here, with what was read.',
  'no-tube': 'There is no tube "{id}"; choose one on the Rack.',
  'is-the-white-other':
    '"{tube}" is the white that the ladders of this palette are made with; begin another palette for another white.',
  'no-practice-paint': 'There is no practice paint "{id}"; use one of {known}.',
  'is-the-white': '"{tube}" is the white that the ladders of this palette are made with; it stays the white.',
  'was-measured': '"{tube}" was measured, and readings are never thrown away; put it away instead.',
  'store-not-opened': 'The store {file} cannot be opened ({cause}); choose another folder with --data.',
  'store-not-used':
    'The store {file} cannot be used ({cause:said}); restore a backup or choose another folder with --data.',
  'store-mode':
    'The store {file} opened as {mode}/{synchronous} where wal/2 is needed so that readings survive a power cut; move it to a local disk with --data.',
  'other-database': 'it is a database of another program',
  'newer-schema': 'its schema is number {number} and this program knows {known}; use the newer program',
  caution:
    '{pigments}: paint of this name may hold {what:list}. Wear gloves, do not sand dry films, do not eat or smoke at work; the safety data sheet of your tube and local rules come first.',
  'data-folder': 'The data folder {folder} cannot be made ({cause}); choose another with --data.',
});
export const say: Say<typeof BENCH.templates> = BENCH.say;
