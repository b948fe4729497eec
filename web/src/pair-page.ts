/**
 * The phone's side of pairing, without the frame and its parts: an unpaired phone gets this page's own files and no
 * others. The code comes behind `#` from the camera, or is typed. The token comes as a cookie that no script can read.
 */
import { pairingWords } from './text/pairing.ts';
import { said, saidReady } from './text/said.ts';

const t = pairingWords();

function made<K extends keyof HTMLElementTagNameMap>(
  tag: K,
  members: Partial<HTMLElementTagNameMap[K]>,
): HTMLElementTagNameMap[K] {
  return Object.assign(document.createElement(tag), members);
}

document.title = t.pageTitle;
const field = made('input', {
  name: 'code',
  autocapitalize: 'characters',
  autocomplete: 'off',
  spellcheck: false,
  maxLength: 12,
  required: true,
});
const label = made('label', { textContent: t.pageCode });
label.append(field);
const button = made('button', { type: 'submit', textContent: t.pagePair });
const refusal = made('p', { role: 'alert' });
const form = made('form', { noValidate: true });
form.append(label, button, refusal);
document
  .querySelector('main')!
  .append(
    made('h1', { textContent: t.pageHeading }),
    made('p', { textContent: t.pageLead }),
    form,
    made('p', { textContent: t.caution }),
  );

async function pair(): Promise<void> {
  const code = field.value.replace(/[\s-]/g, '');
  if (code.length !== 8) {
    refusal.textContent = t.pageShort(String(code.length));
    field.focus();
    return;
  }
  refusal.textContent = '';
  button.disabled = true;
  button.textContent = t.pageWorking;
  try {
    const answer = await fetch('/api/pairing/phones', {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: JSON.stringify({ code }),
    });
    if (answer.ok) {
      location.replace('/#/ladder');
      return;
    }
    const { detail } = (await answer.json()) as { detail?: string };
    await saidReady();
    refusal.textContent = detail ? said(detail) : t.pageAway;
  } catch {
    refusal.textContent = t.pageAway;
  }
  button.disabled = false;
  button.textContent = t.pagePair;
}

form.addEventListener('submit', (event) => {
  event.preventDefault();
  void pair();
});

const given = location.hash.slice(1);
// The code leaves the address before anything else: neither history nor a picture of the screen keeps it.
if (given) history.replaceState(null, '', location.pathname);
field.value = given.slice(0, 12);
if (given) void pair();
